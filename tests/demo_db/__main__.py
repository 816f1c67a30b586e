"""``python -m tests.demo_db [FILE]``: how the demo shop's days and people are loaded.

Of the shop's file that is named, else of one that is built for it, timed.
"""

import sys
import tempfile
from pathlib import Path
from time import process_time

from demo_db.build import build
from station.bootstrap import FILE, load_rules
from station.ledger.ledger import Ledger
from tests.demo_db.conftest import NOW
from tests.demo_db.loads import MEASURES, find_ratio, find_recounted, read_loads, tell
from tests.measured import note

COMMAND = "python -m tests.demo_db"


def main() -> None:
    """Prints it."""
    if sys.argv[1:]:
        look(Path(sys.argv[1]))
        return
    with tempfile.TemporaryDirectory() as folder:
        file, began = Path(folder) / FILE, process_time()
        build(file, NOW)
        took = process_time() - began
        entries = look(file)
        print(f"built in {took:.1f} s of processor time")
        note("the demo shop", f"{entries:,} entries in {took:.0f} s of processor time", "30 s",
             COMMAND)  # fmt: skip


def look(file: Path) -> int:
    """Prints how a shop was loaded; gives how many entries it has."""
    ledger = Ledger(file, load_rules())
    days, entries = read_loads(ledger), ledger.count()
    ledger.close()
    print("\n".join(tell(days)))
    print(f"{entries:,} entries")
    worst = max(find_ratio(days[:-1], measure) for measure in MEASURES)
    note("the demo shop's fullest day against its emptiest, the largest of sheets and pieces "
         "cut, popped, trimmed, packed", f"{worst:.2f}", "< 2", COMMAND)  # fmt: skip
    note("of the pieces cut there, recounted", f"{find_recounted(days):.2%}", "< 2 %", COMMAND)
    return entries


if __name__ == "__main__":
    main()
