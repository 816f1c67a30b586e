"""Toy rules and a ledger for the tests of the ledger: no room's rules are needed."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path

from station.ledger.ledger import Ledger
from station.shop.acts import Act, Answer, Args, good, refuse
from station.shop.facts import KINDS, Batch, Fact
from station.shop.moves import move
from station.shop.readings import Reading
from station.shop.views import Rule, View
from station.shop.words import say

AT = "2026-11-25T10:42:07"
COUNTED = "counted"
EVERY = frozenset(KINDS.values())


class ToyArgs(Args, frozen=True, kw_only=True):
    """The arguments of every toy act."""

    batch: str = ""
    qty: int = 0


def cut(act: Act[ToyArgs], view: View) -> Answer:
    """So many pieces of a batch come off the bed."""
    batch, qty = view.get(Batch, act.args.batch) or new_batch(act.args.batch), act.args.qty
    if qty > 100:
        return refuse(say("{qty} is too many", qty=qty), say("Count again."))
    return good(
        say("{qty} cut, sheet {n}", qty=qty, n=batch.cut + 1),
        say("Pop them."),
        moves=(move("014", qty, "cut", "popping/1", batch.id),),
        sets=(replace(batch, cut=batch.cut + 1),),
        prints=(("slip", batch.id),),
        readings=(Reading(subject="part/014", kind=COUNTED, value=float(qty), batch=batch.id),),
    )


def pop(act: Act[ToyArgs], view: View) -> Answer:
    """All that waits goes on to trimming."""
    held = view.stock(batch=act.args.batch, place="popping/1")
    if not held:
        return refuse(say("Nothing waits"))
    return good(
        say("Passed on"),
        moves=tuple(move(h.part, h.qty, h.place, "trimming", h.batch) for h in held),
    )


def toy_rule(reads: frozenset[type[Fact]], decide: Callable[..., Answer]) -> Rule:
    """A rule on a toy act."""
    return Rule(args=ToyArgs, reads=reads, decide=decide)


def given(answers: Mapping[str, Answer]) -> Rule:
    """A rule that answers what was laid down for the act."""
    return toy_rule(EVERY, lambda act, _view: answers[act.id])


RULES = {"cut": toy_rule(frozenset({Batch}), cut), "pop": toy_rule(frozenset(), pop)}


def new_batch(number: str) -> Batch:
    return Batch(id=number, cut_file="001", revision="A", router="1", sheets=3)


def opened(folder: Path, **more: Rule) -> Ledger:
    return Ledger(folder / "shop.station", {**RULES, **more})


def act(id: str, kind: str = "cut", *, at: str = AT, batch: str = "00412", qty: int = 6) -> Act:
    return Act(
        id=id,
        kind=kind,
        at=at,
        worker="03",
        station="1",
        subject=f"batch/{batch}",
        args=ToyArgs(batch=batch, qty=qty),
    )


READINGS = (
    "SELECT * FROM reading WHERE NOT EXISTS"
    " (SELECT 1 FROM fact WHERE key = 'undone/' || reading.entry) ORDER BY 1, 2, 3, 4, 5"
)


def tables_of(ledger: Ledger) -> list[list[tuple[object, ...]]]:
    """The derived tables as they stand, what was taken back left out."""
    run = ledger._store.run
    return [
        run("SELECT * FROM balance ORDER BY 1, 2, 3").fetchall(),
        run("SELECT * FROM fact WHERE key NOT LIKE 'undone/%' ORDER BY 1").fetchall(),
        run("SELECT * FROM tally ORDER BY 1, 2, 3, 4, 5, 6").fetchall(),
        run(READINGS).fetchall(),
    ]
