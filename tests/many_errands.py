"""What people do in the shop of `tests.many`: the simulated shop's errands, and the cutting.

A batch is released to the router that stands beside each station, its sheets are loaded and
come off the bed; from there on the errands are those of `tests.simulate`.
"""

from collections.abc import Iterator
from random import Random

from station.ledger.ledger import Ledger
from station.shop.facts import Batch, Bed, Bit, Fact, Notice, Revision, Router
from tests.first_offs import list_answers
from tests.floor.shop_small import DAY
from tests.simulate import errands

SHEETS = ("1", "2", "3")  # of a batch
OTHERS = 0.15  # of the times somebody goes to another station's router
LOTS = {"1": ("lot 0931", "6.4"), "2": ("lot 0940", "9.0")}  # by material


def machines(stations: list[str]) -> list[Fact]:
    """A clamped router beside each station, of the station's number."""
    found: list[Fact] = []
    for n in stations:
        bit = f"4{n}"
        found += [
            Router(id=n, name=f"Router {n}", bed="clamped"),
            Bed(id=n, day=DAY, bits=((0, bit),)),
            Bit(id=bit, words="6.0 mm compression", diameter_mm=6.0, router=n),
        ]
    return found


def errand(random: Random, ledger: Ledger) -> Iterator[str]:
    """The scans of one errand; which one is left to chance."""
    kind = random.choices(list(ERRANDS), [weight for weight, _ in ERRANDS.values()])[0]
    yield from ERRANDS[kind][1](random, ledger)


def _router(random: Random, ledger: Ledger) -> str:
    """Mostly the one that stands here."""
    if random.random() < OTHERS:
        return random.choice([b.id for b in ledger.facts(Bed)])
    return ledger.station


def _release(random: Random, ledger: Ledger) -> Iterator[str]:
    yield "@area office"
    yield from ("button next_kind", f"button row_{random.randint(1, 5)}", "button release_batch")
    yield from (f"router {_router(random, ledger)}", random.choice(SHEETS))


def _load(random: Random, ledger: Ledger) -> Iterator[str]:
    """The next sheet is loaded and started, unless one is on the bed; it comes off."""
    router = _router(random, ledger)
    yield from ("@area loading", f"@router {router}")
    bed = _bed(ledger, router)
    queue = ledger.view.shelf(Batch, f"queue/{router}", 1)
    if not bed.sheet and not queue:
        yield from _release(random, ledger)
        return
    if not bed.sheet:
        yield f"traveller {queue[0].id}"
        yield from _checks(queue[0], router, ledger)
        bed = _bed(ledger, router)
    if not bed.sheet:  # it did not start: others were first, or it waits for something
        return
    yield f"slip {bed.batch} {bed.sheet}"
    yield from list_answers(ledger.view, router)


def _bed(ledger: Ledger, router: str) -> Bed:
    return ledger.view.get(Bed, router) or Bed(id=router)


def _checks(batch: Batch, router: str, ledger: Ledger) -> Iterator[str]:
    """All that is read and ticked before a sheet starts."""
    if ledger.view.shelf(Notice, f"router/{router}"):
        yield "button told"
    yield from list_answers(ledger.view, router)
    revision = ledger.view.get(Revision, f"{batch.cut_file}.{batch.revision}")
    yield from LOTS[revision.material if revision else "1"]
    yield from ("button held_down", "button bit_good", "button file_right", "button zeroed")
    yield "button start"


ERRANDS = {
    **errands.ERRANDS,
    "claim": (4, errands.ERRANDS["claim"][1]),
    "release": (2, _release),
    "load": (8, _load),
}
