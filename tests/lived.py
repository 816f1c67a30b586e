"""A small shop that has lived: twenty worked days behind it, full of decisions to make.

At 7:05 combs lack for an order, queued frame sides can wait, of shuttles less lies there than a
day takes, birch of 9 mm runs out, and routers 1 and 2 have work waiting.
"""

import itertools
from pathlib import Path

from station import bootstrap
from station.clock import Clock
from station.ledger.ledger import Ledger
from station.shop.acts import Act, Answer, Args, good
from station.shop.facts import Batch, Line, Order, Product
from station.shop.moves import SHEET, move
from station.shop.views import Rule, View
from station.shop.words import say
from tests.floor.shop_small import COMB, FRAME, FRAMES, GAUGES, SHUTTLE
from tests.replay import OPENS, Stage, make_shop_file

NOW = "2026-11-25T07:05:00"
DAYS = 20  # worked, up to yesterday
USED = ((FRAME, 20), (SHUTTLE, 1200))  # pieces of each part packed on each of them
WAITS = "00646"  # frame sides that can wait
LATE = "2026-11-25T06:30:00"


class BeLived(Args, frozen=True, kw_only=True):
    """A day of the past, or with `last` what lies there and is wanted today."""

    kind = "be_lived"

    last: bool = False


def live(act: Act[BeLived], _view: View) -> Answer:
    """Lives one day."""
    if not act.args.last:
        ways = (("found", "packing/1"), ("packing/1", "pack/1"))
        moves = (move(part, n, a, b, "00390") for part, n in USED for a, b in ways)
        return good(say("A day"), moves=tuple(moves))
    return good(
        say("Today"),
        moves=(move(FRAME, 400, "found", f"rack/{FRAME}", "00390"),
               move(SHEET, 35, "store", "used", "0940")),
        sets=(
            Product(id="034", name="COMB-300", words="One comb", parts=((COMB, 1),)),
            Order(id="3320", due=LATE, lines=(Line(product="034", quantity=40),)),
            Batch(id=WAITS, cut_file=FRAMES, revision="C", router="2", sheets=2,
                  due="2026-11-30T15:00:00", released=LATE),
            Batch(id="00647", cut_file=GAUGES, revision="C", router="1", sheets=3, due=LATE,
                  released=LATE),
        ),
    )  # fmt: skip


LIVE = Rule(args=BeLived, reads=frozenset[type]({Batch}), decide=live)


class LivedStage(Stage):
    """A station of that shop."""

    def __init__(self, folder: Path) -> None:
        self.clock = Clock(OPENS)
        self.count = itertools.count(2)
        file = folder / bootstrap.FILE
        file.write_bytes(make_shop_file())
        rules = {**bootstrap.load_rules(), BeLived.kind: LIVE}
        self.ledger = Ledger(file, rules, station="1")
        days = (f"2026-{month}-{day:02d}" for month, day in list_worked())
        for day in days:
            self.live(f"{day}T09:00:00")
        self.live("2026-11-25T06:55:00", last=True)
        self.clock.pin(NOW)
        self.desk = self.new_desk()

    def live(self, at: str, *, last: bool = False) -> None:
        act: Act[Args] = Act(id=self.new_id(), kind=BeLived.kind, at=at, args=BeLived(last=last))
        assert not self.ledger.record(act).answer.refused


def list_worked() -> list[tuple[int, int]]:
    """The days from Monday to Friday before today: month and day."""
    october = [(10, day) for day in (28, 29, 30)]
    november = [(11, day) for day in range(1, 25) if day % 7 not in (0, 1)]
    return [*october, *november]
