"""``python -m tests.any_code [SCANS] [SEED]``: how many of random scans with free hands are red.

Plays a day on the small shop, then scans codes of `station codes` at random at every work area
with nothing in hand, and prints each kind of refusal with how often it came.
"""

import random
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from station.desk.desk import Desk, Given
from station.printing.codes import list_codes
from station.shop.areas import AREAS
from station.shop.cards import button
from tests.measured import note
from tests.replay import HERE, Stage

DAY = "01_ordinary_batch.txt"
PACKED = ("@area packing", "@worker 05", "order 3307", "part 045", "button close_pack",
          "@area cart", "cart 2", "pack 00001", "button at_door", "pack 00001",
          "button leave")  # fmt: skip
WORKER = "02"
APART = ("worker", "digit")  # who works here, and a number that is not complete


class Scanned(NamedTuple):
    """A code of the list as it was scanned, and what was answered."""

    row: dict[str, object]
    area: str
    given: Given


def play_day(folder: Path) -> Stage:
    """Gives the small shop at the end of a day."""
    stage = Stage(folder)
    for line in (HERE / DAY).read_text(encoding="utf-8").splitlines():
        if line and line[0] not in "#>=":
            stage.send(line.strip())
    for line in PACKED:
        stage.send(line)
    return stage


def free_hands(desk: Desk, area: str) -> None:
    """Stands at an area with nothing in hand."""
    if desk.hand.area != area:
        desk.at(area=area)
    desk.sign_in(WORKER)
    desk.take(button("put_down"))  # a page, or a question
    desk.take(button("put_down"))
    assert desk.hand.is_free, desk.hand


def list_rows(stage: Stage) -> list[dict[str, object]]:
    """Lists the codes that are scanned."""
    return [row for row in list_codes(stage.ledger) if row["kind"] not in APART]


def scan(stage: Stage, desk: Desk, row: dict[str, object], area: str) -> Scanned:
    """Scans one code with free hands; an act of the room is taken back."""
    free_hands(desk, area)
    given = desk.take(str(row["code"]))
    scanned = Scanned(row, area, given)
    if given.entry:
        desk.take(button("undo"))
    return scanned


def scan_at_random(stage: Stage, count: int, seed: int) -> Iterator[Scanned]:
    """Scans so many codes, each at an area of its own."""
    chance, rows = random.Random(seed), list_rows(stage)
    desks = {a.id: stage.new_desk(a.id) for a in AREAS}
    for _ in range(count):
        area = chance.choice(list(desks))
        yield scan(stage, desks[area], chance.choice(rows), area)


def main() -> int:
    """Prints the share of red answers; 1 where more than one in twenty is red."""
    count, seed = (int(a) for a in (*sys.argv[1:], *("2000", "1")[len(sys.argv) - 1 :]))
    with tempfile.TemporaryDirectory() as folder:
        stage = play_day(Path(folder))
        reds = Counter(
            f"{s.area}, {s.row['kind']}: {s.given.answer.said}"
            for s in scan_at_random(stage, count, seed)
            if s.given.answer.tone == "stop"
        )
        stage.close()
    for said, n in reds.most_common():
        print(f"{n:5} {said}")
    red = sum(reds.values())
    print(f"{red} of {count} scans red: {red / count:.1%}")
    figure = f"{red} of {count}, {red / count:.1%}"
    command = f"python -m tests.any_code {count} {seed}"
    note("random scans with free hands that are answered red", figure, "5 %", command)
    return int(red / count > 0.05)


if __name__ == "__main__":
    sys.exit(main())
