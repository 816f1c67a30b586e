"""Histories of a wanted length for benches: real entries, written in bulk, sound to check.

Each batch takes twelve acts (three sheets started, cut, passed on, put away), so a short
and a long history are of the same density. `build` is what other benches use.
"""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import msgspec

from station.ledger import effects, statements
from station.ledger.books import Books
from station.ledger.codec import (
    Body,
    Change,
    State,
    digest,
    full_shelf,
    lay_say,
    write_body,
    write_fact,
)
from station.ledger.store import Store
from station.shop.acts import Act, Answer, Args, good
from station.shop.facts import Batch, Bed, Fact, Pile, Slip
from station.shop.moves import SHEET, WEAR, Move, Spot, move
from station.shop.readings import MINUTES, Reading
from station.shop.views import Rule, View
from station.shop.words import say

PARTS = tuple(f"{n:03d}" for n in range(1, 7))
ROUTER, LOT, BIT = "1", "0001", "01"
CARRIED = {f"bed/{ROUTER}", LOT, ""}  # what later batches read again


def off_the_bed(batch: Batch, bed: Bed, sheet: int, at: str) -> Answer:
    """The effects of a sheet off the bed of a six-part file."""
    slip = Slip(
        id=f"{batch.id}-{sheet}", batch=batch.id, sheet=sheet, router=ROUTER, at=at, lot=LOT
    )
    parts = tuple(move(p, 4, "cut", f"popping/{sheet}", batch.id) for p in PARTS)
    sheets = Move(SHEET, 1, Spot(f"bed/{ROUTER}", LOT), Spot("used", LOT))
    worn = Move(WEAR, 9300, Spot("wear", ""), Spot(f"bit/{BIT}", ""))
    minutes = Reading(
        subject=f"router/{ROUTER}",
        kind=MINUTES,
        value=18.5,
        unit="min",
        batch=batch.id,
        sheet=sheet,
        router=ROUTER,
        bit=BIT,
        lot=LOT,
        revision="001.A",
    )
    done = good(
        say("Sheet {sheet} of batch {id} is off the bed", sheet=sheet, id=batch.id),
        say("Put slip {sheet} with its parts.", sheet=sheet),
        moves=(*parts, sheets, worn),
        sets=(slip, replace(batch, cut=sheet), replace(bed, state="free", sheet=0)),
        readings=(minutes,),
    )
    return replace(done, router=ROUTER)


class BenchOffBed(Args, frozen=True, kw_only=True):
    """A sheet comes off the bed."""

    kind = "bench_off_bed"

    batch: str
    sheet: int


def bench_off_bed(act: Act[BenchOffBed], view: View) -> Answer:
    """The same as a rule, reading what it needs."""
    batch, bed = view.get(Batch, act.args.batch), view.get(Bed, ROUTER)
    assert batch is not None
    assert bed is not None
    return off_the_bed(batch, bed, act.args.sheet, act.at)


OFF_BED = Rule(args=BenchOffBed, reads=frozenset({Batch, Bed}), decide=bench_off_bed)


def clock(number: int) -> str:
    """The time of the n-th entry: 48 an hour, 10 hours a day, 28 days a month."""
    hours, minute = divmod(number * 75, 3600)[0], number * 75 % 3600
    day, hour = divmod(hours, 10)
    month, day = divmod(day, 28)
    year, month = divmod(month, 12)
    date = f"{2026 + year}-{month + 1:02d}-{day + 1:02d}"
    return f"{date}T{7 + hour:02d}:{minute // 60:02d}:{minute % 60:02d}"


def deeds(batch: Batch, number: int) -> Iterator[tuple[str, str, Answer]]:
    """The twelve acts of one batch: kind, subject and answer."""
    bed = Bed(id=ROUTER, batch=batch.id)
    pile = Pile(id=f"trimming/{batch.id}", area="trimming", batch=batch.id, since="")
    for sheet in (1, 2, 3):
        at = clock(number + 4 * sheet - 3)
        onto = (Move(SHEET, 1, Spot("bought", LOT), Spot(f"bed/{ROUTER}", LOT)),)
        bed = replace(bed, state="cutting", sheet=sheet, started=at)
        begun = replace(batch, state="cutting")
        yield "start_sheet", f"bed/{ROUTER}", good(say("Cutting"), moves=onto, sets=(bed, begun))
        off = off_the_bed(batch, bed, sheet, at)
        yield "off_bed", f"slip/{batch.id}-{sheet}", off
        popped = tuple(move(p, 4, f"popping/{sheet}", "trimming", batch.id) for p in PARTS)
        slip = off.sets[0]
        assert isinstance(slip, Slip)
        done = (replace(slip, state="popped"), replace(pile, since=at))
        yield "pass_on", slip.key, good(say("Passed on"), moves=popped, sets=done)
        away = tuple(move(p, 4, "trimming", "shipped", batch.id) for p in PARTS)
        gone = (replace(pile, since=at, done=sheet == 3),)
        yield "put_away", batch.key, good(say("Put away"), moves=away, sets=gone)


class Writer:
    """Writes entries in bulk and keeps the books beside them."""

    def __init__(self, store: Store) -> None:
        self.store = store
        self.books = Books()
        self.link, self.number = b"", 0
        self.rows: list[tuple[object, ...]] = []

    def add(self, kind: str, subject: str, answer: Answer) -> None:
        self.number += 1
        act = Act(
            id=f"{self.number * 2654435761 % 2**32:08x}{self.number:08x}",
            kind=kind,
            at=clock(self.number),
            worker="01",
            station="1",
            subject=subject,
        )
        body = Body(
            act=act,
            tone=answer.tone,
            said=lay_say(answer.said),
            do=lay_say(answer.do),
            moves=answer.moves,
            sets=tuple(map(self._change, answer.sets)),
            router=answer.router,
            readings=answer.readings,
        )
        text = write_body(body)
        self.link = digest(self.link, act.id, text)
        self.rows.append(effects.entry_row(self.number, body, text, self.link))
        assert not self.books.take(body)

    def _change(self, fact: Fact) -> Change:
        row = self.books.fact.get(fact.key)
        before = State(msgspec.Raw(row[0]), *row[1:]) if row else None
        return Change(fact.key, before, State(msgspec.Raw(write_fact(fact)), *full_shelf(fact)))

    def flush(self, *, last: bool = False) -> None:
        """Writes what is complete; what later batches read again stays in the books."""
        run = self.store.connection.executemany
        run(statements.ADD_ENTRY, self.rows)
        self.rows.clear()
        books = self.books
        facts = [k for k in books.fact if last or k not in CARRIED]
        run(statements.FILL["fact"], [(k, *books.fact.pop(k)) for k in facts])
        spots = [k for k in books.balance if last or k[0] not in CARRIED]
        run(statements.FILL["balance"], [(*k, books.balance.pop(k)) for k in spots])
        run(statements.FILL["reading"], list(books.rows("reading")))
        books.reading.clear()
        if last:
            run(statements.FILL["tally"], [(*k, q) for k, q in books.tally.items()])


def build(path: Path, entries: int) -> None:
    """A sound history of about so many entries (whole batches of twelve)."""
    store = Store(path)
    store.run("PRAGMA synchronous=OFF")
    store.run("PRAGMA cache_size=-300000")
    with store.writing():
        writer = Writer(store)
        for n in range(1, entries // 12 + 1):
            batch = Batch(id=f"{n:05d}", cut_file="001", revision="A", router=ROUTER, sheets=3)
            for kind, subject, answer in deeds(batch, writer.number):
                writer.add(kind, subject, answer)
            if n % 1000 == 0:
                writer.flush()
        ready = (Move(SHEET, 100_000, Spot("bought", LOT), Spot(f"bed/{ROUTER}", LOT)),)
        writer.add("make_ready", f"bed/{ROUTER}", good(say("Ready"), moves=ready))
        writer.flush(last=True)
    store.close()
