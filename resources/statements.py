"""``python -m resources.statements``: compiles the ledger's statements ahead.

Writes station/ledger/statements.py from the definitions in tables.py; a test holds the two equal.
"""

import subprocess
import sys
from pathlib import Path

from station.ledger import tables

FILE = Path(__file__).resolve().parent.parent / "station" / "ledger" / "statements.py"
HEAD = '''"""What tables.py defines, compiled: the statements as the driver takes them.

Never changed by hand: ``python -m resources.statements`` makes it, a test compares.
"""
'''
WRITE = "Write it anew with: python -m resources.statements"


def list_statements() -> dict[str, object]:
    """Gives everything in capitals that tables.py defines."""
    named = vars(tables).items()
    return {name: value for name, value in named if name.isupper() and name[0] != "_"}


def lay_out() -> str:
    """Gives the whole module as text, laid out by the project's formatter."""
    lines = [HEAD, *(f"{name} = {value!r}" for name, value in list_statements().items())]
    command = [sys.executable, "-m", "ruff", "format", "-", "--stdin-filename", str(FILE)]
    done = subprocess.run(  # noqa: S603 - our own Python
        command, input="\n".join(lines) + "\n", capture_output=True, text=True, check=True
    )
    return done.stdout


if __name__ == "__main__":
    FILE.write_text(lay_out(), encoding="utf-8")
