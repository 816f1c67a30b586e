"""Shows the page of a thing, the list of batches and what was done in the shop."""

from station.floor.anywhere.finding import BATCHES, cut_lines, read_page
from station.queries.batches import describe_batch
from station.queries.health import list_stations
from station.queries.life import PAGE, LifePage, LifeStep, list_history, list_life
from station.queries.stock import tell_where
from station.queries.things import AnswerLine
from station.queries.underway import list_all_batches
from station.shop.cards import button
from station.shop.codes import Code, Unread, read, write_touch
from station.shop.faces import Cell, Face, Header, Hint, Listing, Press, Text
from station.shop.facts import Batch, Pack
from station.shop.rooms import Hand, Work
from station.shop.views import View
from station.shop.words import clock, moment, say

LEAVE = Press(label=say("Leave it"), code=button("put_down"))
MORE = Press(label=say("More of the list"), code=button("next_page"))
SEVERAL = 2  # stations: then it is said at which one something was done
BACK = Press(label=say("Back in the list"), code=button("back_page"))


def show_thing(hand: Hand[Work], view: View) -> Face:
    """Shows what a thing is, where all of it is, what it came from, and its life."""
    thing = read_page(hand, view)
    if thing is None:
        gone = Hint(title=say("This shop does not know it any more"))
        return Face(title=say("What is it?"), main=(gone,), presses=(LEAVE,))
    life = list_life(view, thing, hand.aside.page)
    header = Header(label=thing.label, number=thing.number, title=thing.title, note=thing.note)
    middle: tuple[Listing | Hint, ...] = (*_list_lines(say("Promised and coming"), thing.promised),
              *_list_lines(say("What it came from"), thing.origin))  # fmt: skip
    if not middle:
        middle = (Hint(title=thing.said, note=thing.next),)
    where = Listing(
        title=say("Where it is"),
        rows=tuple(map(_make_row, cut_lines(thing.where))),
        empty=say("Nothing of it is in the shop."),
    )
    return Face(
        title=say("What is it?"),
        main=(header, where),
        middle=middle,
        side=(_list_steps(say("Its life, newest first"), life, hand.now, view),),
        presses=(*_list_acts(hand, view), *_list_turns(life), LEAVE),
        weights=(46, 24, 30),
    )


def _list_lines(title: Text, lines: tuple[AnswerLine, ...]) -> tuple[Listing, ...]:
    rows = tuple(map(_make_row, cut_lines(lines)))
    return (Listing(title=title, rows=rows),) if rows else ()


def _make_row(line: AnswerLine) -> tuple[tuple[Cell, ...], str]:
    return (Cell(text=line.what, bold=True), Cell(text=line.where)), line.code


def _list_steps(title: Text, life: LifePage, now: str, view: View) -> Listing:
    alone = len(list_stations(view)) < SEVERAL
    rows = tuple((_make_step(step, now, alone=alone), "") for step in life.steps)
    empty = say("Nothing was written down of it.")
    if begins := view.begins():
        empty = say("This PC knows what was done since {at}.", at=moment(begins))
    return Listing(title=title, rows=rows, empty=empty)


def _make_step(step: LifeStep, now: str, *, alone: bool) -> tuple[Cell, ...]:
    at = clock(step.at) if step.at[:10] == now[:10] else moment(step.at)
    said: Text = step.said or say("set up")
    if step.undone:
        said = say("{said} (taken back)", said=said)
    who: Text = step.worker
    if step.station and not alone:
        who = say("{worker} at {station}", worker=who, station=step.station)
    return Cell(text=at, bold=step.own), Cell(text=said), Cell(text=who, tone="quiet")


def _list_turns(life: LifePage) -> tuple[Press, ...]:
    return ((BACK,) if life.page else ()) + ((MORE,) if life.more else ())


ACTS: dict[str, tuple[str, ...]] = {  # by the kind of code: buttons that make sense from there
    "batch": ("split", "recount", "hold"),
    "part": ("returned", "lost_paper"),
    "product": ("returned",),
    "order": ("returned",),
    "rack": ("recount",),
}
LABELS = {
    "split": say("Split a part off"),
    "recount": say("Count again"),
    "hold": say("Hold this batch"),
    "release": say("Let it go on"),
    "returned": say("Something came back"),
    "lost_paper": say("Traveller lost"),
    "open_pack": say("Open it again"),
}


def _list_acts(hand: Hand[Work], view: View) -> tuple[Press, ...]:
    """Lists what may be done from the page."""
    code = read(hand.aside.code)
    if isinstance(code, Unread):
        return ()
    pack = view.get(Pack, code.number) if code.kind == "pack" else None
    names = _list_pack_acts(hand, pack) if pack else ACTS.get(code.kind, ())
    if _is_held(code, view):
        names = tuple("release" if name == "hold" else name for name in names)
    return tuple(Press(label=LABELS[name], code=button(name)) for name in names)


def _list_pack_acts(hand: Hand[Work], pack: Pack) -> tuple[str, ...]:
    """Lists what may be done with a pack: it is opened at packing, or comes back once it left."""
    if pack.state == "shipped":
        return ("returned",)
    closed = pack.state in ("packed", "shelf")
    return ("open_pack",) if closed and hand.area == "packing" else ()


def _is_held(code: Code, view: View) -> bool:
    batch = view.get(Batch, code.number) if code.kind == "batch" else None
    return bool(batch and batch.why_held)


def show_list(hand: Hand[Work], view: View) -> Face:
    """Shows a page of the batches, or of what was done in the shop."""
    if hand.aside.what == BATCHES:
        return _show_batches(hand, view)
    life = list_history(view, hand.aside.page)
    steps = _list_steps(say("Newest first"), life, hand.now, view)
    presses = (*_list_turns(life), LEAVE)
    return Face(title=say("What was done"), main=(steps,), presses=presses, weights=(100, 0, 0))


def _show_batches(hand: Hand[Work], view: View) -> Face:
    batches = list_all_batches(view)
    page = min(hand.aside.page, max(0, (len(batches) - 1) // PAGE))
    shown = batches[PAGE * page : PAGE * (page + 1)]
    half = PAGE // 2
    rest = _list_rows(view, shown[half:])
    life = LifePage((), page, len(batches) > PAGE * (page + 1))
    title = say("{n} {n|batch|batches}, newest first", n=len(batches))
    none = say("No batch was released yet.")
    return Face(
        title=say("The batches"),
        main=(Listing(title=title, rows=_list_rows(view, shown[:half]), empty=none),),
        side=(Listing(title=say("and"), rows=rest),) if rest else (),
        presses=(*_list_turns(life), LEAVE),
        weights=(50, 0, 50),
    )


def _list_rows(view: View, batches: tuple[Batch, ...]) -> tuple[tuple[tuple[Cell, ...], str], ...]:
    return tuple(
        (
            (
                Cell(text=b.id, bold=True),
                Cell(text=describe_batch(view, b)),
                Cell(text=tell_where(view, b.id, 2, gone=True) or b.state),
            ),
            write_touch("batch", b.id),
        )
        for b in batches
    )
