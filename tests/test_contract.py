"""The import contract holds, and can fail."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

HOME = Path(__file__).resolve().parent.parent
LINT = "from importlinter.cli import lint_imports_command as c; c()"


@pytest.mark.parametrize(
    ("file", "line", "broken"),
    [
        ("station/shop/words.py", "import sqlalchemy", "The shop's words know nothing else"),
        (
            "station/queries/batches.py",
            "import station.floor.today.figures",
            "Questions about the shop know only the shop",
        ),
        (
            "station/printing/pdf_files.py",
            "from station.bootstrap import new_id",
            "The composition root sees what it composes, and only what stands above sees it",
        ),
        (
            "station/floor/today/screen.py",
            "import station.ledger.ledger",
            "Rules, dialogues and faces know only the shop",
        ),
        (
            "station/queries/batches.py",
            "import station.floor.cart.rules",
            "Questions about the shop know only the shop",
        ),
        (
            "station/floor/today/screen.py",
            "import station.floor.office.rules",
            "Rooms do not know each other, and what they share knows no room",
        ),
        (
            "station/floor/shared/counting.py",
            "import station.floor.trimming.rules",
            "Rooms do not know each other, and what they share knows no room",
        ),
        (
            "station/cutting/read/line_plain.py",
            "import station.cutting.geometry.moves",
            "A cut file is read, then its geometry found, then analysed",
        ),
    ],
)
@pytest.mark.slow
def test_an_arrow_the_wrong_way_is_seen(tmp_path, file, line, broken):
    shutil.copytree(
        HOME / "station", tmp_path / "station", ignore=shutil.ignore_patterns("__pycache__")
    )
    shutil.copy(HOME / "pyproject.toml", tmp_path)
    target = tmp_path / file
    target.write_text(f"{target.read_text(encoding='utf-8')}\n{line}\n", encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-c", LINT, "--no-cache"],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode != 0
    assert f"{broken} BROKEN" in done.stdout
