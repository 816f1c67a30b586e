"""Makes files and folders their user's own: the hashes of PINs lie in them, and what was done.

Who may write to one may read it too, and was let in by somebody on purpose: that stays.
"""

import logging
import os
import subprocess
import sys
from contextlib import suppress
from pathlib import Path

log = logging.getLogger(__name__)
OTHERS, OTHERS_WRITE = 0o077, 0o022  # what may be done by who is not the owner
SYSTEM = "*S-1-5-18"  # Windows itself, by the number that it has in every language


def make_folder(folder: Path) -> None:
    """Makes a folder that is private to this user, where there is none. Raises OSError."""
    there = folder.is_dir()
    folder.mkdir(parents=True, exist_ok=True)
    if sys.platform != "win32":
        make_private(folder)
    elif not there:
        _close_on_windows(folder)


def make_private(path: Path) -> None:
    """Lets nobody but the owner read a file or folder, where that is ours to say.

    On Windows a file has the rights of its folder.
    """
    if sys.platform != "win32":
        with suppress(OSError):
            mode = path.stat().st_mode
            if mode & OTHERS and not mode & OTHERS_WRITE:
                path.chmod(mode & 0o7777 & ~OTHERS)


def _close_on_windows(folder: Path) -> None:
    """Takes away what a new folder has of the rights of the one that it lies in."""
    user = f"{os.environ.get('USERDOMAIN', '.')}\\{os.environ.get('USERNAME', '')}"
    allowed = [f"{who}:(OI)(CI)F" for who in (user, SYSTEM)]
    command = ["icacls", str(folder), "/inheritance:r", "/grant:r", *allowed]
    try:
        # the system's own tool, on a folder that was just made
        subprocess.run(command, check=True, capture_output=True)  # noqa: S603
    except (OSError, subprocess.SubprocessError):
        log.exception("%s is not private", folder)
