"""The statements that run are the ones that tables.py defines."""

import subprocess
import sys
from pathlib import Path

import pytest

from resources.statements import WRITE, list_statements
from station.ledger import statements

OPENS = """
import sys
from pathlib import Path
from station import bootstrap
with bootstrap.open_ledger(Path(sys.argv[1])):
    print(*sorted({"sqlalchemy", "numpy", "reportlab"} & set(sys.modules)))
"""


@pytest.mark.parametrize("name", sorted(list_statements()))
def test_is_what_tables_defines(name: str) -> None:
    assert getattr(statements, name) == list_statements()[name], WRITE


def test_has_nothing_more() -> None:
    assert {name for name in vars(statements) if name.isupper()} == set(list_statements()), WRITE


@pytest.mark.slow
def test_a_station_opens_without_the_heavy_libraries(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-c", OPENS, str(tmp_path)], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == ""
