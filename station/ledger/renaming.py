"""Puts a file in the place of another, though somebody looks at one of them just then.

Windows refuses to rename a file that any program has open, and a virus scanner or the search for
files opens each new one for a moment.
"""

import time
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
