"""Shows which router needs a person next, and what to bring along."""

from itertools import repeat

from station.floor.loading.needs import name_material
from station.floor.loading.preparing import Now
from station.queries.tending import BitToBring, Tended, list_tended
from station.shop.cards import button
from station.shop.codes import write_touch
from station.shop.faces import (
    Band,
    Bands,
    Block,
    Cards,
    Cell,
    Entry,
    Face,
    Header,
    Hint,
    Listing,
    Press,
    Row,
    Table,
    Tone,
)
from station.shop.words import Say, length, say, say_more, together

TITLE = say("Who needs me next")
NOTHING = say("nothing to bring")
MOST = 6  # routers besides the first that the screen has room for
DRAWN = 5  # routers whose next hour is drawn


def show_tended(here: Now) -> Face:
    """Shows the router that is free first or waits, what to bring, then all others."""
    first, *others = list_tended(here.view, here.served, here.hand.now)
    entries = tuple(_show_other(here, one) for one in others[:MOST])
    return Face(
        title=TITLE,
        where=say("{n} {n|router|routers}", n=len(here.served)),
        main=(
            Header(label=say("Go first to"), number=first.name, title=say_standing(first),
                   note=_say_sheet(first)),
            _list_bring(here, first),
            *_draw_hour(here, (first, *others)),
        ),
        side=(Cards(title=say_more(say("Then"), len(others) - MOST), entries=entries,
                    empty=say("No other router.")),),
        presses=(
            Press(label=say("Go to {router}", router=first.name),
                  code=write_touch("router", first.router), style="primary", wide=2),
            Press(label=say("Back to the work"), code=button("who_next")),
        ),
        weights=(60, 0, 40),
    )  # fmt: skip


def hint_tended(here: Now) -> tuple[Block, ...]:
    """Tells a person whose hands are free which other router needs them, and what to bring."""
    if len(here.served) < 2:
        return ()
    first = list_tended(here.view, here.served, here.hand.now)[0]
    if first.router == here.bed.id or first.standing not in ("waits", "cuts"):
        return ()
    title = say("{router} needs you next", router=first.name)
    return (Hint(title=title, right=say_standing(first), note=say_bring(here, first)),)


def say_standing(one: Tended) -> Say:
    """Says whether a router waits, or in how many minutes its bed is free."""
    if one.standing == "stopped":
        return say("stopped")
    if one.standing == "idle":
        return say("nothing waits for it")
    if one.standing == "waits" or one.minutes < 1:
        return say("waits for you")
    return say("free in {n} min", n=round(one.minutes))


def say_bring(here: Now, one: Tended) -> Say:
    """Says in one line what to bring along."""
    if not one.batch:
        return NOTHING
    bits = [_say_bit(bit) for bit in one.bits]
    return say("Bring {what}", what=together([_say_from(here, one), *bits]))


def _say_sheet(one: Tended) -> Say:
    if not one.batch:
        return NOTHING
    return say("batch {batch}, sheet {n} of {sheets}", batch=one.batch, n=one.sheet,
               sheets=one.sheets)  # fmt: skip


def _say_from(here: Now, one: Tended) -> Say:
    """Says which sheet, and from where."""
    if one.run > 1:
        return say("sheet {n} with its slip, from beside the routers", n=one.sheet)
    material = name_material(here.view, one.material)
    if not one.lot:
        return say("a sheet of {material}: the store has none by the book", material=material)
    return say("a sheet of {material} from lot {lot}", material=material, lot=one.lot)


def _say_bit(bit: BitToBring) -> Say:
    size = length(bit.diameter_mm)
    if not bit.bit:
        return say("a {size} mm bit: none is ready in the drawer", size=size)
    return say("bit no. {bit}, {size} mm, from the drawer", bit=bit.bit, size=size)


def _list_bring(here: Now, one: Tended) -> Block:
    """Lists what to bring along, a row each; what is not there is marked."""
    title = say("Bring along")
    if not one.batch:
        return Listing(title=title, rows=(), empty=NOTHING)
    rows = [
        Row(title=say("the traveller of batch {batch}", batch=one.batch)),
        _make_bring_row(_say_from(here, one), there=bool(one.lot or one.run > 1)),
        *(_make_bring_row(_say_bit(bit), there=bool(bit.bit)) for bit in one.bits),
    ]
    return Table(title=title, columns=(), rows=tuple(rows))


def _make_bring_row(words: Say, *, there: bool) -> Row:
    cells = () if there else (Cell(text=say("not there"), tone="attention"),)
    return Row(title=words, cells=cells)


def _draw_hour(here: Now, tended: tuple[Tended, ...]) -> tuple[Bands, ...]:
    """Draws how long each router still cuts, over the next hour; those that wait have no line."""
    now = _read_hour(here.hand.now)
    drawn = [one for one in tended if one.standing in ("cuts", "stopped")][:DRAWN]
    if not drawn:
        return ()
    items = tuple(map(_draw_router, drawn, repeat(now)))
    return (Bands(title=say("The next hour"), items=items, start_h=now, end_h=now + 1),)


def _draw_router(one: Tended, now: float) -> Band:
    tones: dict[str, Tone] = {"stopped": "stop"}
    free = now + min(60.0, max(0.0, one.minutes)) / 60
    spans = {"cuts": ((now, free, "cutting"),), "stopped": ((now, now + 1, "stopped"),)}
    return Band(name=one.name, state=say_standing(one), tone=tones.get(one.standing, ""),
                spans=spans.get(one.standing, ()))  # fmt: skip


def _read_hour(at: str) -> float:
    return int(at[11:13]) + int(at[14:16]) / 60


def _show_other(here: Now, one: Tended) -> Entry:
    return Entry(
        big=one.name,
        right=say_standing(one),
        tone="stop" if one.standing == "stopped" else "",
        line1=_say_sheet(one) if one.batch else "",
        line2=say_bring(here, one) if one.batch else "",
        code=write_touch("router", one.router),
    )
