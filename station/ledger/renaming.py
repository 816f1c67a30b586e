"""Puts a file in the place of another, whole, though somebody looks at one of them just then.

Windows refuses to rename a file that any program has open, and a virus scanner or the search for
files opens each new one for a moment.
"""

import time
from contextlib import suppress
from pathlib import Path

PAUSES = (0.01, 0.05, 0.2, 0.5)  # seconds between the tries


def replace_file(file: Path, target: Path) -> None:
    """Renames a file to a name that may be taken, and tries again for a moment. Raises OSError."""
    for pause in PAUSES:
        try:
            file.replace(target)
        except PermissionError:
            time.sleep(pause)
        else:
            return
    file.replace(target)


def write_whole(file: Path, content: bytes) -> None:
    """Writes a file anew; what stood there stays until all of it is written.

    Raises OSError, which names the file.
    """
    target = file.resolve()  # what a link names is written where it lies
    partial = target.with_name(f"{target.name}.partial")
    try:
        partial.write_bytes(content)
        replace_file(partial, target)
    except OSError as fault:
        raise OSError(fault.errno, fault.strerror, str(file)) from fault
    finally:
        with suppress(OSError):
            partial.unlink(missing_ok=True)
