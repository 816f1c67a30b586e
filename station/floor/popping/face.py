"""What the popping screen shows: the slips in hand, counted by exception."""

from station.floor.popping import dialogue
from station.shop import counting
from station.shop.cards import button
from station.shop.codes import usable, write
from station.shop.count_steps import asked, faults_line
from station.shop.counting import Tally
from station.shop.faces import (
    Block,
    Cards,
    Cell,
    Entry,
    Face,
    Header,
    Hint,
    Listing,
    Press,
    Remark,
    Row,
    SheetDrawing,
    Steps,
    Table,
)
from station.shop.facts import Batch, CutFile, Material, Part, Reason, Revision, Router, Shop, Slip
from station.shop.rooms import Hand
from station.shop.views import View, total
from station.shop.words import Say, clock, say, several

MANY = 2  # up to so many parts the sheet is drawn beside the count


def face(hand: Hand, view: View) -> Face:
    """The screen at popping."""
    batch = view.get(Batch, hand.subject) if hand.subject else None
    if batch is None:
        return _empty(hand, view)
    tallies = counting.tally(hand, dialogue.here(hand, view))
    where = _where(hand)
    return Face(
        title=say("Popping"),
        where=where,
        main=(
            _header(batch, hand, view),
            _steps(batch, view),
            _table(tallies, hand, view),
            *_remarks(hand, view),
        ),
        presses=_presses(tallies),
        side=(
            *asked(hand),
            *_drawing(batch, tallies, view),
            _waiting(hand, view, 2),
            _care(batch, view),
        ),
    )


def _where(hand: Hand) -> Say:
    return say("Bench {bench}", bench=hand.bench) if hand.bench else Say()


def _empty(hand: Hand, view: View) -> Face:
    """Nothing in hand: what waits, oldest first."""
    return Face(
        title=say("Popping"),
        where=_where(hand),
        main=(
            Hint(title=say("Scan a slip"), note=say("or a traveller for all its sheets here")),
            _waiting(hand, view, 4),
        ),
        side=(_passed(hand, view), _care(None, view)),
    )


def _header(batch: Batch, hand: Hand, view: View) -> Header:
    cut_file = view.get(CutFile, batch.cut_file)
    sheets = several([s.rpartition("-")[2] for s in dialogue.slips_of(hand)])
    router = view.get(Router, batch.router)
    return Header(
        label=say("Batch"),
        number=batch.id,
        title=cut_file.words if cut_file else "",
        note=say(
            "slips for sheets {sheets} of {all} · cut on {router}",
            sheets=sheets,
            all=batch.sheets or sheets,
            router=router.name if router else "",
        ),
    )


def _steps(batch: Batch, view: View) -> Steps:
    held = view.stock(batch=batch.id)
    return Steps(
        items=(
            (say("Loading"), say("{n} {n|sheet|sheets} cut", n=batch.cut), "done"),
            (say("Popping"), say("{n} to count", n=total(held, place="popping")), "now"),
            (say("Trimming"), _count(total(held, place="trimming")), "next"),
            (say("Packing"), _count(total(held, place="packing")), "next"),
            (say("Cart"), "", "next"),
        )
    )


def _count(n: int) -> Say:
    return say("{n} there", n=n) if n else Say()


def _table(tallies: tuple[Tally, ...], hand: Hand, view: View) -> Table:
    return Table(
        columns=(
            say("part"),
            say("cut"),
            say("good"),
            say("spoiled"),
            say("missing"),
            say("rework"),
        ),
        rows=tuple(_row(t, hand, view) for t in tallies),
    )


def _row(t: Tally, hand: Hand, view: View) -> Row:
    part = view.get(Part, t.part)
    code = write("part", t.part)
    chosen = hand.work.get("part") == t.part
    tabs = part.tabs if part else 0
    return Row(
        title=part.name if part else t.part,
        note=say("{words} · {tabs} {tabs|tab|tabs}", words=part.words if part else "", tabs=tabs),
        shape=part.shape if part else None,
        code=code,
        selected=chosen,
        cells=(
            Cell(text=say("{n}", n=t.here)),
            Cell(text=say("{n}", n=t.good), bold=True),
            Cell(text=say("{n}", n=t.spoiled), tone="stop" if t.spoiled else ""),
            Cell(text=say("{n}", n=t.missing), tone="attention" if t.missing else ""),
            Cell(text=say("{n}", n=t.rework), tone="attention" if t.rework else ""),
        ),
        counter=2,
        minus=f"{code}|{button('fewer')}" if not chosen else button("fewer"),
        plus=f"{code}|{button('more')}" if not chosen else button("more"),
    )


def _remarks(hand: Hand, view: View) -> tuple[Block, ...]:
    line = faults_line(hand, view)
    reasons = view.shelf(Reason, "spoiled", 6)
    picks: tuple[Block, ...] = ()
    if hand.work.get("part"):
        entries = [Entry(big=r.words, code=write("reason", r.id)) for r in reasons[:4]]
        entries += [
            Entry(big=say("missing"), code=button("missing")),
            Entry(big=say("to rework"), code=button("uncut")),
        ]
        picks = (Cards(title="", entries=tuple(entries)),)
    said = Listing(title="", rows=(((Cell(text=line, tone="stop"),), ""),))
    return (*((said,) if line else ()), *picks)


def _presses(tallies: tuple[Tally, ...]) -> tuple[Press, ...]:
    good = sum(t.good for t in tallies)
    said = say("Pass on: {good} good", good=good)
    spoiled, missing = sum(t.spoiled for t in tallies), sum(t.missing for t in tallies)
    rework = sum(t.rework for t in tallies)
    faults = [
        f"{n} {word}"
        for n, word in ((spoiled, "spoiled"), (missing, "missing"), (rework, "rework"))
        if n
    ]
    if faults:
        said = say("Pass on: {good} good, {faults}", good=good, faults=", ".join(faults))
    return (
        Press(label=said, code=button("pass_on"), style="primary", wide=2),
        Press(label=say("Only some of it"), code=button("some")),
        Press(label=say("Put it down"), code=button("put_down")),
    )


def _drawing(batch: Batch, tallies: tuple[Tally, ...], view: View) -> tuple[Block, ...]:
    revision = view.get(Revision, f"{batch.cut_file}.{batch.revision}")
    if revision is None or not revision.placed:
        return ()
    return (
        SheetDrawing(
            revision=revision,
            cut=1.0,
            touch=True,
            chosen=tuple(t.part for t in tallies),
            note=say("Touch a piece to count it spoiled there."),
        ),
    )


def _waiting(hand: Hand, view: View, most: int) -> Cards:
    """Batches that wait here, the longest wait first; those in hand left out."""
    by_batch: dict[str, list[Slip]] = {}
    for slip in view.shelf(Slip, "popping", 60):
        if slip.id not in dialogue.slips_of(hand):
            by_batch.setdefault(slip.batch, []).append(slip)
    entries = [_entry(view, slips, hand.now) for slips in list(by_batch.values())[:most]]
    more = len(by_batch) - len(entries)
    title = say("Waiting here: {n} more", n=more) if more > 0 else say("Waiting here")
    return Cards(title=title, entries=tuple(entries), empty=say("Nothing else waits."))


def _entry(view: View, slips: list[Slip], now: str) -> Entry:
    batch = view.get(Batch, slips[0].batch)
    cut_file = view.get(CutFile, batch.cut_file) if batch else None
    waited = minutes_between(slips[0].at, now)
    sheets = several([str(s.sheet) for s in slips[:6]])
    copy = batch.copy if batch and usable("batch", slips[0].batch, batch.copy) else ""
    return Entry(
        big=slips[0].batch,
        right=say("{n} min", n=waited)
        if waited < 600
        else say("since {at}", at=clock(slips[0].at)),
        tone="attention" if waited >= 45 else "",
        line1=say(
            "{words} · sheets {sheets}", words=cut_file.words if cut_file else "", sheets=sheets
        ),
        code=write("batch", slips[0].batch, copy),
    )


def _waited(minutes: int, since: str) -> Say:
    return say("{n} min", n=minutes) if minutes < 600 else say("since {at}", at=clock(since))


def minutes_between(since: str, now: str) -> int:
    """Whole minutes between two shop times of one day; a day apart counts as 600 at least."""

    def minute(at: str) -> int:
        return int(at[11:13]) * 60 + int(at[14:16]) if len(at) >= 16 else 0

    return max(0, minute(now) - minute(since)) if since[:10] == now[:10] else 600


def _passed(hand: Hand, view: View) -> Listing:
    """What was passed on today, newest first, from the slips that are popped."""
    rows: dict[str, tuple[str, int]] = {}
    for router in view.shelf(Router, "all"):
        for slip in view.shelf(Slip, f"cut/{router.id}/{hand.now[:10]}", 60):
            past = view.last(f"batch/{slip.batch}", "pass_on")
            if past and slip.batch not in rows:
                good = sum(m.qty for m in past.moves if m.to.place == "trimming")
                rows[slip.batch] = (past.act.at, good)
    newest = sorted(rows.items(), key=lambda r: r[1][0], reverse=True)[:5]
    return Listing(
        title=say("Passed on today"),
        rows=tuple(
            (
                (
                    Cell(text=clock(at), tone="quiet"),
                    Cell(text=batch, bold=True),
                    Cell(text=say("{n} good", n=good)),
                ),
                "",
            )
            for batch, (at, good) in newest
        ),
        empty=say("Nothing yet."),
    )


def _care(batch: Batch | None, view: View) -> Remark:
    """Hands, eyes, lungs and backs, briefly."""
    shop = view.get(Shop, "shop") or Shop(id="shop")
    revision = view.get(Revision, f"{batch.cut_file}.{batch.revision}") if batch else None
    material = view.get(Material, revision.material) if revision else None
    text = say(
        "Eye protection while popping; gloves for sheets only. "
        "Vacuum dust, never blow it. {local}",
        local=shop.caution,
    )
    if material and material.sheet_kg >= shop.two_people_kg:
        text = say(
            "Sheet {kg} kg: two people or a lift. Eye protection while popping; gloves for "
            "sheets only. Vacuum dust, never blow it. {local}",
            kg=f"{material.sheet_kg:.1f}",
            local=shop.caution,
        )
    return Remark(tone="attention", title=say("Take care"), text=text)
