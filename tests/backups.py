"""``python -m tests.backups 365``: so many evenings of one shop, each with its backup.

On most days a few acts are recorded; each evening a backup is kept and what is too many is
dropped, on a second folder as well. Told is which are kept and how much room they take; each that
is kept is restored and must hold what the shop had that evening. 1 where one does not.
"""

import shutil
import sys
from datetime import datetime, timedelta
from pathlib import Path
from random import Random

from station.files.backups import keep_away
from station.ledger.kept_backups import DAYS, MONTHS, WEEKS, list_kept
from station.ledger.ledger import Ledger
from tests.ledger.toy import RULES, act, opened
from tests.measured import note
from tests.power.layer import in_memory

FIRST = datetime(2026, 1, 1, 18, 5)  # a Thursday; the shop's own clock


def live(folder: Path, evenings: int) -> tuple[dict[str, int], list[str]]:
    """Lets a shop work so many days; gives how many entries it had by evening, and what failed."""
    chance, ledger = Random(evenings), opened(folder)
    had, wrong = dict[str, int](), list[str]()
    for n in range(evenings):
        evening = FIRST + timedelta(days=n)
        at = evening.isoformat(timespec="seconds")
        if evening.weekday() < 5:
            for m in range(chance.randint(1, 6)):
                done = act(f"{n}-{m}", at=f"{at[:10]}T10:0{m}:00", batch=f"{n % 50:05d}")
                ledger.record(done)
        file = ledger.keep_backup(at)
        keep_away(file, folder / "stick", at)
        had[at[:16]] = ledger.count()
    ledger.close()
    return had, wrong


def restore_each(folder: Path, had: dict[str, int]) -> list[str]:
    """Restores every kept backup of both folders; says which does not hold what there was."""
    wrong = []
    for kept in (*list_kept(folder / "backups"), *list_kept(folder / "stick")):
        again = folder / "again"
        again.mkdir()
        Ledger.restore(kept.file, again / "shop.station")
        ledger = Ledger(again / "shop.station", RULES)
        if (ledger.count(), ledger.check()) != (had[kept.at[:16]], []):
            wrong.append(f"{kept.file.name}: {ledger.count()} entries, not {had[kept.at[:16]]}")
        if not ledger.bears_out((int(kept.witness.split("-")[0]), kept.witness.split("-")[1])):
            wrong.append(f"{kept.file.name}: its witness is of another history")
        ledger.close()
        shutil.rmtree(again)
    return wrong


def run(evenings: int) -> tuple[list[str], list[str], float]:
    """Lives and restores; gives the days kept, what is wrong, and the megabytes they take."""
    with in_memory() as folder:
        had, wrong = live(folder, evenings)
        kept = list_kept(folder / "backups")
        size = sum(one.file.stat().st_size for one in kept) / 2**20
        if [k.file.name for k in kept] != [k.file.name for k in list_kept(folder / "stick")]:
            wrong.append("the second folder does not hold the same")
        if len(kept) > DAYS + WEEKS + MONTHS:
            wrong.append(f"{len(kept)} are kept")
        newest = [FIRST + timedelta(days=evenings - 1 - n) for n in range(min(DAYS, evenings))]
        if [k.at[:10] for k in kept[:DAYS]] != [f"{day:%Y-%m-%d}" for day in newest]:
            wrong.append("the newest days are not all there")
        return [k.at[:10] for k in kept], wrong + restore_each(folder, had), size


def main() -> int:
    """Runs the campaign and prints what came of it."""
    evenings = int(sys.argv[1]) if len(sys.argv) > 1 else 365
    days, wrong, size = run(evenings)
    for why in wrong:
        print(why)
    came = f"{len(days)} kept in {size:.1f} MB, {2 * len(days)} restored, {len(wrong)} problems"
    print(f"{evenings} evenings: {came}: {', '.join(days)}")
    note(f"{evenings} evenings of backups", came, "0 problems")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
