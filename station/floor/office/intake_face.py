"""Shows a cut file that is taken in: which files there are, then what was read of one."""

from dataclasses import replace

from station.floor.office.lists import LEAVE, PAGES, ROWS, find_chosen, make_face
from station.floor.office.work import OfficeHand, ReadText
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
from station.shop.rooms import Doing
from station.shop.strokes import BANDS, unpack
from station.shop.views import View
from station.shop.words import Say, say

TOLD = 7  # lines of what to look at, and of differences
FEW = 4  # lines of what was taken as usual
SHAPES = 5  # rows of shapes
KNOWN = 8  # parts to choose from


def show_intake(hand: OfficeHand, view: View) -> Face:
    """Shows which material, which file, or what was read."""
    held = hand.work.intake
    if held.read:
        return _show_path(hand, held.read) if held.drawn else _show_read(hand, held.read, view)
    if held.which:
        return _show_units(hand)
    return _show_files(hand) if held.material else _show_materials(hand, view)


def _make_face(
    hand: OfficeHand, *main: Block, side: tuple[Block, ...] = (), presses: tuple[Press, ...]
) -> Face:
    weights = (52, 0, 48) if side else (1, 0, 0)
    return make_face(hand, *main, side=side, presses=presses, weights=weights)


def show_progress(hand: OfficeHand, doing: Doing) -> Face:
    """Shows how far the reading is, and the way to stop it."""
    so_far = Progress(
        big=say("{n} %", n=int(doing.share * 100)), note=doing.what, fraction=doing.share
    )
    note = say("Nothing is taken in before you have looked it over. Esc stops it as well.")
    hint = Hint(title=say("A cut file is being read"), note=note)
    stop = Press(label=say("Stop reading"), code=button("stop_reading"), style="primary")
    return _make_face(hand, hint, so_far, presses=(stop,))


def _show_materials(hand: OfficeHand, view: View) -> Face:
    rows = tuple(
        Row(title=m.name, note=say("{mm} mm", mm=m.thickness_mm), code=button(f"row_{n}"))
        for n, m in enumerate(view.shelf(Material, "all", ROWS), 1)
    )
    table = Table(columns=(say("material"),), rows=rows, title=say("Cut from which material?"))
    return _make_face(hand, table, presses=(LEAVE,))


def _show_units(hand: OfficeHand) -> Face:
    """Asks in which units a text is written that does not say so."""
    rows = (
        Row(title=say("Millimetres"), note=say("as most files here"), code=button("row_1")),
        Row(title=say("Inches"), note=say("one is 25.4 mm"), code=button("row_2")),
    )
    table = Table(columns=(say("units"),), rows=rows, title=say("The text is written in"))
    note = say("Look into the program that wrote it. Sizes that come out wrong are not cut.")
    hint = Hint(title=say("The text does not name its units"), note=note)
    return _make_face(hand, hint, table, presses=(LEAVE,))


def _show_files(hand: OfficeHand) -> Face:
    found, first = hand.work.found, hand.work.page * ROWS
    table = Table(
        columns=(say("file"),),
        title=say("Cut files in {folder}", folder=found.folder),
        rows=tuple(
            Row(title=name, code=button(f"row_{n}"))
            for n, name in enumerate(found.names[first : first + ROWS], 1)
        ),
    )
    again = Press(label=say("Look again"), code=button("read_file"))
    note = say("The text that the router runs. It is only read, never changed.")
    title = say("Which file?") if found.names else say("No cut file lies there")
    presses = (again, *(PAGES if len(found.names) > ROWS else ()), LEAVE)
    return _make_face(hand, Hint(title=title, note=note), table, presses=presses)


def _show_read(hand: OfficeHand, read: ReadText, view: View) -> Face:
    """Shows the sheet, and the next shape without a name, or all that was found."""
    revision, unnamed = read.revision, read.unnamed
    blocks: list[Block] = []
    if unnamed:
        blocks += _ask_which(hand, read, view)
    else:
        blocks.append(_list_shapes(read, view))
        blocks += _list_problems(hand, read)
    take = Press(
        label=say("Take it in"),
        code=button("save"),
        wide=2,
        style="off" if unnamed else "primary",
    )
    drawing = SheetDrawing(
        revision=revision,
        chosen=unnamed[:1],
        spots=_mark_spots(read),
        note=_say_in_short(read, view),
    )
    side: list[Block] = [drawing, *_list_taken_as(read)]
    if old := _find_approved(hand, view):
        side.append(compare_revisions(old, revision, view, read.parts))
    new = Press(label=say("A new part"), code=button("new"), style="primary")
    look = Press(label=say("Show the path"), code=button("show_path"))
    presses = (take, *((new,) if unnamed else ()), look, LEAVE)
    return _make_face(hand, *blocks, side=tuple(side), presses=presses)


def _say_in_short(read: ReadText, view: View) -> Say:
    """Says what a sheet makes and takes: by the text, and on the router that it was read for."""
    revision = read.revision
    short = say(
        "{n} {n|part|parts} a sheet, {minutes} min, {bits} {bits|bit|bits}.",
        n=len(revision.placed),
        minutes=f"{revision.minutes:.1f}",
        bits=len(revision.bits),
    )
    known = view.get(Router, read.router)
    if known is None:
        return short
    real = f"{expect_minutes(view, revision, known.id):.1f}"
    if found := find_fit(view, known.id):
        spread = f"{found.spread_s / 60:.1f}"
        return say("{short} On {router}: {real} ± {spread} min.", short=short,
                   router=known.name, real=real, spread=spread)  # fmt: skip
    return say("{short} On {router}: {real} min.", short=short, router=known.name, real=real)


def _show_path(hand: OfficeHand, read: ReadText) -> Face:
    """Shows the path alone, and what could go wrong beside it."""
    path, revision = read.path, read.revision
    thick, off = path.thickness_mm or 0.0, f"{path.off_mm:.1f}"
    drawn = say("Drawn within {mm} mm. Touch a layer to hide it.", mm=off)
    if path.share < 1:
        drawn = say("Only the first {n} % can be drawn, within {mm} mm.",
                    n=int(path.share * 100), mm=off)  # fmt: skip
    block = PathDrawing(
        length_mm=revision.length_mm,
        width_mm=revision.width_mm,
        strokes=unpack(path.strokes),
        bits=tuple((b.number, b.diameter_mm) for b in revision.bits),
        bands=tuple(round(thick * n / BANDS, 2) for n in range(1, BANDS + 1)),
        seconds=path.seconds,
        spots=_mark_spots(read),
        note=drawn,
        asked=hand.work.intake.asked,
    )
    back = Press(label=say("Back to the list"), code=button("show_path"), style="primary")
    side = (*_list_problems(hand, read), *_list_taken_as(read))
    face = _make_face(hand, block, side=side, presses=(back, LEAVE))
    return replace(face, weights=(72, 0, 28)) if side else face


def _mark_spots(read: ReadText) -> tuple[tuple[float, float, Tone], ...]:
    return tuple((x, y, "stop") for x, y in read.spots)


def _ask_which(hand: OfficeHand, read: ReadText, view: View) -> list[Block]:
    """Asks which part a shape is that the shop does not know: its drawing, what it could be."""
    shape, revision = read.unnamed[0], read.revision
    n = revision.makes()[shape]
    drawn = PartDrawing(
        part=Part(id=shape, name="", words="", shape=dict(revision.shapes).get(shape)),
        note=say("{size}, {n} a sheet", size=read.sizes[shape], n=n),
    )
    cards = Cards(
        title=say("Which part is this? Touch it, or type the name of a new one"),
        entries=tuple(
            Entry(big=p.name, line1=p.words, code=write("part", p.id))
            for p in _list_could_be(hand, revision, view)
        ),
    )
    return [drawn, cards]


def _list_could_be(hand: OfficeHand, revision: Revision, view: View) -> list[Part]:
    """Lists parts of the approved revision that are not in this one, then those without shape."""
    old, makes = _find_approved(hand, view), revision.makes()
    gone = [view.get(Part, p) for p in (old.makes() if old else ()) if p not in makes]
    without = [p for p in view.shelf(Part, "all", 99) if p.shape is None and p.active]
    return [p for p in (*gone, *without) if p][:KNOWN]


def _list_shapes(read: ReadText, view: View) -> Table:
    makes = read.revision.makes()
    rows = []
    for shape, outline in read.revision.shapes[:SHAPES]:
        part = view.get(Part, shape)
        rows.append(
            Row(
                title=read.parts.get(shape) or (part.name if part else shape),
                note=read.sizes.get(shape, ""),
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
        title=say("{file} · {what}", file=read.file, what=read.explained)
        if read.explained
        else say("{file}", file=read.file),
    )


def _list_problems(hand: OfficeHand, read: ReadText) -> tuple[Listing, ...]:
    """Lists what could go wrong, a page at a time; a touch on the last row shows the next."""
    problems = read.problems
    if not problems:
        return ()
    pages = -(-len(problems) // TOLD)
    if pages < 2:
        return (Listing(title=say("To look at"), rows=_list_lines(problems, TOLD)),)
    first = hand.work.page % pages * TOLD
    rows = _list_lines(problems[first : first + TOLD], TOLD)
    last = first + len(rows)
    title = say("To look at: {a} to {b} of {n}", a=first + 1, b=last, n=read.found)
    on = say("The next ones") if first + TOLD < len(problems) else say("Back to the first")
    more = ((Cell(text=on, bold=True),), button("next_page"))
    return (Listing(title=title, rows=(*rows, more)),)


def _list_taken_as(read: ReadText) -> tuple[Listing, ...]:
    """Lists what the text did not say and was taken as usual."""
    rows = _list_lines(read.assumed, FEW)
    return (Listing(title=say("Taken as"), rows=rows),) if rows else ()


def _list_lines(texts: tuple[Text, ...], most: int) -> tuple[tuple[tuple[Cell, ...], str], ...]:
    """Lists the first so many, and how many more there are."""
    shown = [((Cell(text=text),), "") for text in texts[:most]]
    more = len(texts) - most
    if more > 0:
        shown.append(((Cell(text=say("{n} more", n=more), tone="quiet"),), ""))
    return tuple(shown)


def _find_approved(hand: OfficeHand, view: View) -> Revision | None:
    """Finds the revision of this cut file that may be cut now."""
    cut_file = find_chosen(hand, view)
    return find_approved(view, cut_file) if isinstance(cut_file, CutFile) else None


def compare_revisions(
    old: Revision, new: Revision, view: View, named: dict[str, str] | None = None
) -> Listing:
    """Compares two revisions, as a list to read."""
    parts = {**old.makes(), **new.makes()}
    names: dict[str, Text] = {n: say("A new shape") for n in parts}
    names |= {n: p.name for n in parts if (p := view.get(Part, n))} | (named or {})
    found = list_differences(old, new, names)
    title = say("Against approved revision {letter}", letter=old.letter)
    return Listing(
        title=title,
        rows=_list_lines(tuple(found), TOLD),
        empty=say("The same parts, places, time and bits."),
    )
