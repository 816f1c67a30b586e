"""``python -m tests.statements --write``: the ledger's statements, compiled ahead.

Writes station/ledger/statements.py from the definitions in tables.py; a test holds the two equal.
"""

import subprocess
import sys
from pathlib import Path

from station.ledger import tables

FILE = Path(__file__).resolve().parent.parent / "station" / "ledger" / "statements.py"
HEAD = '''"""What tables.py defines, compiled: the statements as the driver takes them.

Never changed by hand: ``python -m tests.statements --write`` makes it, a test compares.
"""
'''
WRITE = """Write it anew with: python -m tests.statements --write"""


def constants() -> dict[str, object]:
    """Everything in capitals that tables.py defines."""
    named = vars(tables).items()
    return {name: value for name, value in named if name.isupper() and name[0] != "_"}


def text() -> str:
    """The whole module, laid out by the project's formatter."""
    lines = [HEAD, *(f"{name} = {value!r}" for name, value in constants().items())]
    done = subprocess.run(
        [sys.executable, "-m", "ruff", "format", "-", "--stdin-filename", str(FILE)],
        input="\n".join(lines) + "\n",
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout


def main() -> int:
    """Writes the module, or says whether it is as it should be."""
    if "--write" in sys.argv[1:]:
        FILE.write_text(text(), encoding="utf-8")
        return 0
    same = FILE.read_text(encoding="utf-8") == text()
    print("statements.py is as tables.py defines it." if same else WRITE)
    return 0 if same else 1


if __name__ == "__main__":
    sys.exit(main())
