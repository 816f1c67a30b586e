"""What the office shows while a cut file is taken in: files, then what was read of one."""

from dataclasses import replace

from station.floor.office import intake
from station.floor.office.files import texts
from station.floor.office.state import ROWS, chosen, list_of, page_of
from station.queries.batches import find_approved
from station.queries.pace import expect_minutes, find_fit
from station.queries.revisions import list_differences
from station.shop.cards import button
from station.shop.codes import write
from station.shop.faces import (
    Block,
    Cards,
    Cell,
    Entry,
    Face,
    Hint,
    Listing,
    PartDrawing,
    PathDrawing,
    Press,
    Progress,
    Row,
    SheetDrawing,
    Table,
    Text,
    Tone,
)
from station.shop.facts import CutFile, Material, Part, Revision, Router
from station.shop.rooms import Doing, Hand
from station.shop.strokes import BANDS, unpack
from station.shop.views import View
from station.shop.words import Say, say

LEAVE = Press(label=say("Leave it"), code=button("put_down"))
TOLD = 7  # lines of what to look at, and of differences
FEW = 4  # lines of what was taken as usual
SHAPES = 5  # rows of shapes
KNOWN = 8  # parts to choose from


def face(hand: Hand, view: View) -> Face:
    """Which material, which file, or what was read."""
    if intake.cut_of(hand):
        return _read(hand, view)
    if "which" in hand.work:
        return _units(hand)
    if not hand.work.get("material"):
        return _materials(hand, view)
    return _files(hand)


def _face(
    hand: Hand, *main: Block, side: tuple[Block, ...] = (), presses: tuple[Press, ...]
) -> Face:
    return Face(
        title=say("Office"),
        where=list_of(hand).words,
        main=main,
        side=side,
        presses=presses,
        weights=(52, 0, 48) if side else (1, 0, 0),
    )


def being_read(hand: Hand, doing: Doing) -> Face:
    """How far it is, and the way to stop it."""
    so_far = Progress(
        big=say("{n} %", n=int(doing.share * 100)), note=doing.what, fraction=doing.share
    )
    note = say("Nothing is taken in before you have looked it over. Esc stops it as well.")
    hint = Hint(title=say("A cut file is being read"), note=note)
    stop = Press(label=say("Stop reading"), code=button("stop_reading"), style="primary")
    return _face(hand, hint, so_far, presses=(stop,))


def _materials(hand: Hand, view: View) -> Face:
    rows = tuple(
        Row(title=m.name, note=say("{mm} mm", mm=m.thickness_mm), code=button(f"row_{n}"))
        for n, m in enumerate(view.shelf(Material, "all", ROWS), 1)
    )
    table = Table(columns=(say("material"),), rows=rows, title=say("Cut from which material?"))
    return _face(hand, table, presses=(LEAVE,))


def _units(hand: Hand) -> Face:
    """In which units a text is written that does not say so."""
    rows = (
        Row(title=say("Millimetres"), note=say("as most files here"), code=button("row_1")),
        Row(title=say("Inches"), note=say("one is 25.4 mm"), code=button("row_2")),
    )
    table = Table(columns=(say("units"),), rows=rows, title=say("The text is written in"))
    note = say("Look into the program that wrote it. Sizes that come out wrong are not cut.")
    hint = Hint(title=say("The text does not name its units"), note=note)
    return _face(hand, hint, table, presses=(LEAVE,))


def _files(hand: Hand) -> Face:
    names, first = texts(hand, "files"), page_of(hand) * ROWS
    table = Table(
        columns=(say("file"),),
        title=say("Cut files in {folder}", folder=str(hand.work.get("folder", ""))),
        rows=tuple(
            Row(title=name, code=button(f"row_{n}"))
            for n, name in enumerate(names[first : first + ROWS], 1)
        ),
    )
    again = Press(label=say("Look again"), code=button("read_file"))
    pages = (
        Press(label=say("Page back"), code=button("back_page")),
        Press(label=say("Next page"), code=button("next_page")),
    )
    note = say("The text that the router runs. It is only read, never changed.")
    hint = Hint(title=say("Which file?") if names else say("No cut file lies there"), note=note)
    presses = (again, *(pages if len(names) > ROWS else ()), LEAVE)
    return _face(hand, hint, table, presses=presses)


def _read(hand: Hand, view: View) -> Face:
    revision, cut = intake.revision_of(hand), intake.cut_of(hand)
    if revision is None:
        return _face(hand, Hint(title=say("Nothing could be drawn of it")), presses=(LEAVE,))
    if (path := cut.get("path")) and hand.work.get("path"):
        return _path(hand, revision, cut, dict(path) if isinstance(path, dict) else {})
    open_shapes = intake.unnamed(hand)
    blocks: list[Block] = []
    if open_shapes:
        blocks += _which(hand, revision, open_shapes[0], view)
    else:
        blocks.append(_shapes(hand, revision, cut, view))
        blocks += _to_look_at(hand, cut)
    take = Press(
        label=say("Take it in"),
        code=button("save"),
        wide=2,
        style="off" if open_shapes else "primary",
    )
    drawing = SheetDrawing(
        revision=revision,
        chosen=tuple(open_shapes[:1]),
        spots=_spots(cut),
        note=_in_short(revision, str(cut.get("router", "")), view),
    )
    side: list[Block] = [drawing, *_taken_as(cut)]
    if changes := _changes(hand, revision, view):
        side.append(changes)
    new = Press(label=say("A new part"), code=button("new"), style="primary")
    look = (Press(label=say("Show the path"), code=button("show_path")),) if path else ()
    presses = (take, *((new,) if open_shapes else ()), *look, LEAVE)
    return _face(hand, *blocks, side=tuple(side), presses=presses)


def _in_short(revision: Revision, router: str, view: View) -> Say:
    """What a sheet makes and takes: by the text, and on the router that it was read for."""
    short = say(
        "{n} {n|part|parts} a sheet, {minutes} min, {bits} {bits|bit|bits}.",
        n=len(revision.placed),
        minutes=f"{revision.minutes:.1f}",
        bits=len(revision.bits),
    )
    known = view.get(Router, router)
    if known is None:
        return short
    real = f"{expect_minutes(view, revision, router):.1f}"
    if found := find_fit(view, router):
        spread = f"{found.spread_s / 60:.1f}"
        return say("{short} On {router}: {real} ± {spread} min.", short=short,
                   router=known.name, real=real, spread=spread)  # fmt: skip
    return say("{short} On {router}: {real} min.", short=short, router=known.name, real=real)


def _path(hand: Hand, revision: Revision, cut: dict[str, object], path: dict[str, object]) -> Face:
    """The path alone, and what could go wrong beside it."""
    share, thick = float(str(path["share"])), float(str(path["thickness_mm"]))
    off, seconds = float(str(path["off_mm"])), float(str(path["seconds"]))
    drawn = say("Drawn within {mm} mm. Touch a layer to hide it.", mm=f"{off:.1f}")
    if share < 1:
        drawn = say("Only the first {n} % can be drawn, within {mm} mm.",
                    n=int(share * 100), mm=f"{off:.1f}")  # fmt: skip
    block = PathDrawing(
        length_mm=revision.length_mm,
        width_mm=revision.width_mm,
        strokes=unpack(str(path["strokes"])),
        bits=tuple((b.number, b.diameter_mm) for b in revision.bits),
        bands=tuple(round(thick * n / BANDS, 2) for n in range(1, BANDS + 1)),
        seconds=seconds,
        spots=_spots(cut),
        note=drawn,
        asked=_asked(hand),
    )
    back = Press(label=say("Back to the list"), code=button("show_path"), style="primary")
    side = (*_to_look_at(hand, cut), *_taken_as(cut))
    face = _face(hand, block, side=side, presses=(back, LEAVE))
    return replace(face, weights=(72, 0, 28)) if side else face


def _asked(hand: Hand) -> tuple[int, str]:
    """What a card asked of the path last, and the how-manieth it is."""
    asked = hand.work.get("asked")
    return (int(asked[0]), str(asked[1])) if isinstance(asked, list | tuple) else (0, "")


def _spots(cut: dict[str, object]) -> tuple[tuple[float, float, Tone], ...]:
    found = cut.get("spots")
    return tuple((float(x), float(y), "stop") for x, y in found) if isinstance(found, list) else ()


def _which(hand: Hand, revision: Revision, shape: str, view: View) -> list[Block]:
    """A shape that the shop does not know: its drawing, and the parts it could be."""
    outline = dict(revision.shapes).get(shape)
    drawn = PartDrawing(
        part=Part(id=shape, name="", words="", shape=outline),
        note=say("{size}, {n} a sheet", size=intake.sizes(hand)[shape], n=revision.makes()[shape]),
    )
    could_be = _could_be(hand, revision, view)
    cards = Cards(
        title=say("Which part is this? Touch it, or type the name of a new one"),
        entries=tuple(
            Entry(big=p.name, line1=p.words, code=write("part", p.id)) for p in could_be
        ),
    )
    return [drawn, cards]


def _could_be(hand: Hand, revision: Revision, view: View) -> list[Part]:
    """Parts of the approved revision that are not in this one, then parts without a shape."""
    old, makes = _approved(hand, view), revision.makes()
    gone = [view.get(Part, p) for p in (old.makes() if old else ()) if p not in makes]
    without = [p for p in view.shelf(Part, "all", 99) if p.shape is None and p.active]
    return [p for p in (*gone, *without) if p][:KNOWN]


def _shapes(hand: Hand, revision: Revision, cut: dict[str, object], view: View) -> Table:
    new, makes, sizes = intake.named(hand), revision.makes(), intake.sizes(hand)
    rows = []
    for shape, outline in revision.shapes[:SHAPES]:
        part = view.get(Part, shape)
        rows.append(
            Row(
                title=new.get(shape) or (part.name if part else shape),
                note=sizes.get(shape, ""),
                shape=outline,
                cells=(
                    Cell(text=say("{n}", n=makes.get(shape, 0)), bold=True),
                    Cell(text=say("{n}", n=len(outline.tabs))),
                ),
            )
        )
    return Table(
        columns=(say("part"), say("a sheet"), say("tabs")),
        rows=tuple(rows),
        title=say("{file}", file=str(cut.get("file", ""))),
    )


def _to_look_at(hand: Hand, cut: dict[str, object]) -> tuple[Listing, ...]:
    """What could go wrong, a page at a time."""
    problems = _list(cut, "problems")
    count = int(str(cut.get("found", len(problems))))
    return (_problems(problems, page_of(hand), count),) if problems else ()


def _taken_as(cut: dict[str, object]) -> tuple[Listing, ...]:
    """What the text did not say and was taken as usual."""
    assumed = _list(cut, "assumed")
    return (Listing(title=say("Taken as"), rows=_lines(assumed, FEW)),) if assumed else ()


def _problems(problems: list[Text], page: int, count: int) -> Listing:
    """One page of what could go wrong; a touch on its last row shows the next."""
    pages = -(-len(problems) // TOLD)
    if pages < 2:
        return Listing(title=say("To look at"), rows=_lines(problems, TOLD))
    first = page % pages * TOLD
    rows = _lines(problems[first : first + TOLD], TOLD)
    title = say("To look at: {a} to {b} of {n}", a=first + 1, b=first + len(rows), n=count)
    on = say("The next ones") if first + TOLD < len(problems) else say("Back to the first")
    more = ((Cell(text=on, bold=True),), button("next_page"))
    return Listing(title=title, rows=(*rows, more))


def _lines(texts: list[Text], most: int) -> tuple[tuple[tuple[Cell, ...], str], ...]:
    """The first so many, and how many more there are."""
    shown = [((Cell(text=text),), "") for text in texts[:most]]
    more = len(texts) - most
    if more > 0:
        shown.append(((Cell(text=say("{n} more", n=more), tone="quiet"),), ""))
    return tuple(shown)


def _list(cut: dict[str, object], name: str) -> list[Text]:
    found = cut.get(name)
    return [str(f) for f in found] if isinstance(found, list | tuple) else []


def _changes(hand: Hand, revision: Revision, view: View) -> Listing | None:
    """What differs from the approved revision."""
    old = _approved(hand, view)
    return changes_from(old, revision, view, intake.named(hand)) if old else None


def _approved(hand: Hand, view: View) -> Revision | None:
    """The revision of this cut file that may be cut now."""
    cut_file = chosen(hand, view)
    return find_approved(view, cut_file) if isinstance(cut_file, CutFile) else None


def changes_from(
    old: Revision, new: Revision, view: View, named: dict[str, str] | None = None
) -> Listing:
    """What differs between two revisions, as a list to read."""
    parts = {**old.makes(), **new.makes()}
    names: dict[str, Text] = {n: say("A new shape") for n in parts}
    names |= {n: p.name for n in parts if (p := view.get(Part, n))} | (named or {})
    found = list_differences(old, new, names)
    title = say("Against approved revision {letter}", letter=old.letter)
    return Listing(
        title=title,
        rows=_lines([*found], TOLD),
        empty=say("The same parts, places, time and bits."),
    )
