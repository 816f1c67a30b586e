"""Shows a cut file that is taken in: which files there are, then what was read of one."""

from dataclasses import replace

from station.floor.office.hold_downs_face import show_holding
from station.floor.office.lists import LEAVE, PAGES, ROWS, find_chosen, make_face
from station.floor.office.looking import PAGE, find_page
from station.floor.office.read_as import list_asked
from station.floor.office.read_as_face import SURE, say_taken, show_how
from station.floor.office.work import OfficeHand, ReadText, say_size
from station.queries.batches import find_approved
from station.queries.pace import expect_minutes, find_fit
from station.queries.revisions import list_differences
from station.queries.shapes import find_near, list_shape_differences
from station.shop.cards import button
from station.shop.codes import write
from station.shop.cut_text import TextProblem
from station.shop.faces import (
    Block,
    Cards,
    Cell,
    Entry,
    Face,
    Hint,
    Keys,
    Letters,
    Listing,
    NumberMark,
    Pairs,
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
from station.shop.words import Say, figure, large_area, length, say

TOLD = 7  # lines of differences
FEW = 3  # lines of what was taken as usual
SHAPES = (7, 5, 4, 3, 2)  # rows of shapes over so many problems
KNOWN = 8  # parts to choose from


def show_intake(hand: OfficeHand, view: View) -> Face:
    """Shows which material, which file, or what was read."""
    held = hand.work.intake
    if held.read and held.material:
        if held.how:
            return show_how(hand, held.read, view)
        if held.holding:
            return show_holding(hand, held.read, view)
        return _show_path(hand, held.read) if held.drawn else _show_read(hand, held.read, view)
    if held.which:
        return _show_units(hand)
    return _show_files(hand) if held.material else _show_materials(hand, view)


def _make_face(
    hand: OfficeHand, *main: Block, side: tuple[Block, ...] = (), presses: tuple[Press, ...]
) -> Face:
    weights = (56, 0, 44) if side else (1, 0, 0)
    return make_face(hand, *main, side=side, presses=presses, weights=weights)


def show_progress(hand: OfficeHand, doing: Doing) -> Face:
    """Shows how far the work beside the screen is, and the way to stop it."""
    so_far = Progress(
        big=say("{n} %", n=int(doing.share * 100)), note=doing.what, fraction=doing.share
    )
    hint = Hint(title=doing.title, note=doing.note)
    stop = Press(label=doing.stop, code=button("stop_reading"), style="primary")
    return _make_face(hand, hint, so_far, presses=(stop,))


def _show_materials(hand: OfficeHand, view: View) -> Face:
    rows = tuple(
        Row(title=m.name, note=say("{mm} mm", mm=length(m.thickness_mm)), code=button(f"row_{n}"))
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
        style="off" if unnamed else "plain" if revision.stops else "primary",
    )
    drawing = SheetDrawing(
        revision=revision,
        chosen=unnamed[:1],
        marks=() if unnamed else mark_problems(hand, read),
        slugs=read.laying.slugs,
        touch=bool(read.told),
        note=_say_in_short(read, view),
    )
    side: list[Block] = [drawing]
    if unnamed:
        side.append(Letters(question=say("Name of a new part"), note=say("1 to 24 characters.")))
    else:
        side += [_show_books(read), *_list_taken(read)]
        if old := _find_approved(hand, view):
            side.append(compare_revisions(old, revision, view, read.parts))
    new = Press(label=say("A new part"), code=button("new"), style="primary")
    look = Press(label=say("Show the path"), code=button("show_path"))
    hold = Press(label=say("Hold-downs"), code=button("hold_downs"))
    holds = (hold,) if read.laying.proposed or revision.hold_downs else ()
    presses = (take, *((new,) if unnamed else ()), look, *holds, LEAVE)
    return _make_face(hand, *blocks, side=tuple(side), presses=presses)


def _show_books(read: ReadText) -> Pairs:
    """Shows that everything cut is explained: what the cuts free, and where the area is."""
    books = read.books
    if not books.cuts:
        return Pairs(rows=())
    freed = say("{a} closed {a|cut|cuts}, {b} {b|part|parts}", a=books.cuts, b=books.parts)
    if books.slugs:
        freed = say("{freed}, {c} loose {c|slug|slugs}", freed=freed, c=books.slugs)
    area = say("parts {parts}, loose {waste}, skeleton {rest}, kerf {kerf} m²",
               parts=large_area(books.parts_mm2), waste=large_area(books.waste_mm2),
               rest=large_area(books.skeleton_mm2),
               kerf=large_area(books.kerf_mm2))  # fmt: skip
    return Pairs(rows=((say("All cuts"), freed), (say("Sheet"), area)))


def _say_in_short(read: ReadText, view: View) -> Say:
    """Says what a sheet makes and takes: by the text, and on the router that it was read for."""
    revision = read.revision
    short = say(
        "{n} {n|part|parts} a sheet, {minutes} min, {bits} {bits|bit|bits}.",
        n=len(revision.placed),
        minutes=figure(revision.minutes, 1),
        bits=len(revision.bits),
    )
    known = view.get(Router, read.router)
    if known is None:
        return short
    real = figure(expect_minutes(view, revision, known.id), 1)
    if found := find_fit(view, known.id):
        spread = figure(found.spread_s / 60, 1)
        return say("{short} On {router}: {real} ± {spread} min.", short=short,
                   router=known.name, real=real, spread=spread)  # fmt: skip
    return say("{short} On {router}: {real} min.", short=short, router=known.name, real=real)


def _show_path(hand: OfficeHand, read: ReadText) -> Face:
    """Shows the path alone, and what could go wrong beside it."""
    path, revision = read.path, read.revision
    thick, off = path.thickness_mm or 0.0, length(path.off_mm, 1)
    drawn = say("Drawn within {mm} mm, each cut as wide as its bit, the stronger the deeper. "
                "Numbers on pieces: in which order they are cut.", mm=off)  # fmt: skip
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
        marks=mark_problems(hand, read),
        note=drawn,
        asked=hand.work.intake.asked,
        revision=revision,
        slugs=read.laying.slugs,
        numbers=tuple(range(1, len(revision.placed) + 1)),
        layers=hand.work.intake.layers,
        comes_off=hand.work.intake.comes_off,
    )
    back = Press(label=say("Back to the list"), code=button("show_path"), style="primary")
    on = Press(label=say("Next problem"), code=button("next_problem"))
    told = _list_problems(hand, read)
    presses = (back, *((on,) if told else ()))
    face = _make_face(hand, block, side=(_make_keys(hand), *told), presses=presses)
    return replace(face, weights=(76, 0, 24))


def _make_keys(hand: OfficeHand) -> Keys:
    """Makes the keys that bring the path closer, play it, and choose what is drawn of it."""
    held = hand.work.intake
    chosen = {"path_layers": held.layers, "path_pieces": held.comes_off}
    return Keys(
        presses=tuple(
            Press(label=label, code=button(name), style="chosen" if chosen.get(name) else "plain")
            for name, label in PATH_KEYS.items()
        )
    )


PATH_KEYS: dict[str, Text] = {
    "path_in": say("Closer"),
    "path_out": say("Farther"),
    "path_all": say("Whole sheet"),
    "path_play": say("Play, pause"),
    "path_back": say("Back"),
    "path_on": say("Onward"),
    "path_speed": say("Speed"),
    "path_layers": say("Layers"),
    "path_pieces": say("As it comes off"),
}
TONES: dict[str, Tone] = {"stop": "stop", "look": "attention", "know": "quiet"}


def mark_problems(hand: OfficeHand, read: ReadText) -> tuple[NumberMark, ...]:
    """Marks each problem that has a place, with its number in the list."""
    looked_at = hand.work.intake.problem
    return tuple(
        NumberMark(number=n, x_mm=p.at[0], y_mm=p.at[1], tone=TONES.get(p.grade, "attention"),
             chosen=n == looked_at)
        for n, p in enumerate(read.told, 1)
        if p.at
    )  # fmt: skip


def _ask_which(hand: OfficeHand, read: ReadText, view: View) -> list[Block]:
    """Asks which part a shape is that the shop does not know: its drawing, what it could be."""
    shape, revision = read.unnamed[0], read.revision
    n = revision.makes()[shape]
    outline = dict(revision.shapes).get(shape)
    near = find_near(outline, view.shelf(Part, "all", 999)) if outline else None
    note = say("{size}, {n} a sheet", size=say_size(read.sizes[shape]), n=n)
    if near and near.shape and outline:
        what = list_shape_differences(near.shape, outline)
        note = say("{size}, {n} a sheet. Against {part}: {what}", n=n,
                   size=say_size(read.sizes[shape]), part=near.name, what=_join(what))  # fmt: skip
    drawn = PartDrawing(
        part=Part(id=shape, name="", words="", shape=outline),
        note=note,
        beside=near,
        names=(say("As it is cut now"), near.name) if near else ("", ""),
    )
    could_be = [p for p in _list_could_be(hand, revision, view) if near is None or p.id != near.id]
    cards = Cards(
        title=say("Which part is this? Touch it, or name a new one"),
        entries=tuple(
            Entry(big=p.name, line1=p.words, code=write("part", p.id),
                  right=say("differs a little") if p is near else "")
            for p in (*((near,) if near else ()), *could_be)[:KNOWN]
        ),
    )  # fmt: skip
    return [drawn, cards]


def _join(sentences: list[Say]) -> Say:
    first, *rest = sentences
    for each in rest:
        first = say("{first} {next}", first=first, next=each)
    return first


def _list_could_be(hand: OfficeHand, revision: Revision, view: View) -> list[Part]:
    """Lists parts of the approved revision that are not in this one, then those without shape."""
    old, makes = _find_approved(hand, view), revision.makes()
    gone = [view.get(Part, p) for p in (old.makes() if old else ()) if p not in makes]
    without = [p for p in view.shelf(Part, "all", 99) if p.shape is None and p.active]
    return [p for p in (*gone, *without) if p][:KNOWN]


def _list_shapes(read: ReadText, view: View) -> Table:
    makes = read.revision.makes()
    rows = []
    for n, (shape, outline) in enumerate(read.revision.shapes[: _count_rows(read)], PAGE + 1):
        part = view.get(Part, shape)
        rows.append(
            Row(
                title=read.parts.get(shape) or (part.name if part else shape),
                note=say_size(read.sizes.get(shape, "")),
                shape=outline,
                code=button(f"row_{n}"),
                cells=(
                    Cell(text=say("{n}", n=makes.get(shape, 0)), bold=True),
                    Cell(text=say("{n}", n=len(outline.tabs))),
                ),
            )
        )
    return Table(
        columns=(say("part"), say("a sheet"), say("tabs")),
        rows=tuple(rows),
        title=_say_shapes(read),
    )


def _count_rows(read: ReadText) -> int:
    """Counts the rows of shapes that there is room for, over the problems."""
    return SHAPES[min(len(read.told), PAGE + 1)]


def _say_shapes(read: ReadText) -> Say:
    """Says which file it is, and how many of its shapes are not in the rows."""
    more = len(read.revision.shapes) - _count_rows(read)
    if more > 0:
        return say("{file}: {n} more {n|shape|shapes} not listed", file=read.file, n=more)
    return say("{file}", file=read.file)


def _list_problems(hand: OfficeHand, read: ReadText) -> tuple[Listing, ...]:
    """Lists what could go wrong, a page at a time; a touch on the last row shows the next.

    A touch on a problem shows it in the drawing.
    """
    told, looked_at = read.told, hand.work.intake.problem
    if not told:
        return ()
    page, pages = find_page(hand, read), -(-len(told) // PAGE)
    first = page * PAGE
    rows = [
        (
            (
                Cell(text=say("{n}", n=n), bold=True, tone=TONES.get(p.grade, "attention")),
                Cell(text=_say_problem(p), bold=n == looked_at),
            ),
            _code_problem(hand, p, n - first),
        )
        for n, p in enumerate(told[first : first + PAGE], first + 1)
    ]
    if pages < 2:
        return (Listing(title=say("To look at"), rows=tuple(rows)),)
    last = first + len(rows)
    title = say("To look at: {a} to {b} of {n}", a=first + 1, b=last, n=read.found)
    on: Text = say("The next ones") if page + 1 < pages else say("Back to the first")
    if page + 1 == pages and (left := read.found - len(told)) > 0:
        on = say("{n} more are not listed. Back to the first", n=left)
    more = ((Cell(text=""), Cell(text=on, bold=True)), button("next_page"))
    return (Listing(title=title, rows=(*rows, more)),)


def _say_problem(problem: TextProblem) -> Text:
    """Says a problem with its line; the gravest ones say stop."""
    words: Text = problem.words
    if problem.line:
        words = say("Line {line}: {what}", line=problem.line, what=words)
    return say("Stop. {what}", what=words) if problem.grade == "stop" else words


def _code_problem(hand: OfficeHand, problem: TextProblem, row: int) -> str:
    """Gives what a touch on a problem sends: its row, or its place where rows are layers."""
    held = hand.work.intake
    if not (held.drawn and held.layers):
        return button(f"row_{row}")
    return f"@place {problem.at[0]:.1f} {problem.at[1]:.1f}" if problem.at else ""


def _list_taken(read: ReadText) -> tuple[Listing, ...]:
    """Lists what was taken of the text that a person may know better; a touch shows all of it."""
    if not read.taken:  # read by a program of before
        return ()
    every = tuple(say_taken(t) for t in list_asked(read))
    rows = tuple(
        ((Cell(text=name), Cell(text=value, bold=source != SURE)), button("how_read"))
        for name, value, source in every[:FEW]
    )
    left = len(every) - FEW
    last = say("Say it otherwise")
    if left > 0:
        last = say("{n} more; say it otherwise", n=left)
    touch = ((Cell(text=last, bold=True),), button("how_read"))
    return (Listing(title=say("Taken as"), rows=(*rows, touch)),)


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
        empty=say("The same parts, places, tabs, time and bits."),
    )
