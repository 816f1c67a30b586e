"""A disk that takes the first half of each file that is written, and then is full."""

from errno import ENOSPC
from pathlib import Path

import pytest


def fill_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    """From now on no file is written whole, until the patch is undone."""
    write = Path.write_bytes

    def write_half(file: Path, content: bytes) -> int:
        write(file, content[: len(content) // 2])
        raise OSError(ENOSPC, "No space left on device")

    monkeypatch.setattr(Path, "write_bytes", write_half)
