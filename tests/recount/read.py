"""Reads a screen as a person does: each block under its title, each row as its texts.

What is drawn and no text (bars, lines, spans) is read as a text of its own kind, so that no
figure of a screen is passed over.
"""

import re
from collections.abc import Iterator
from typing import NamedTuple, Self

from station.shop.faces import (
    Asked,
    Bands,
    Block,
    Cards,
    Checks,
    Decision,
    Face,
    Flow,
    Header,
    Hint,
    Listing,
    MailerDrawing,
    Meter,
    Pairs,
    PartDrawing,
    PathDrawing,
    Places,
    Progress,
    Remark,
    SheetDrawing,
    Steps,
    Table,
    Text,
)
from station.shop.words import Say

Row = tuple[str, ...]
FIGURE = re.compile(r"\d+")


class Said(str):
    """A text as it is read, which still knows its template; plain words are their own."""

    __slots__ = ("template",)

    def __new__(cls, text: Text) -> Self:
        """Fills the text in."""
        said = super().__new__(cls, str(text))
        said.template = spread(text)
        return said


class Shown(NamedTuple):
    """A block: its kind, its title without figures, its rows, how many more it says there are."""

    kind: str
    title: str
    rows: list[Row]
    more: int = 0
    whole: str = ""  # the title as it is read
    total: int | None = None  # how many there are in all, where the title says it


def read_face(face: Face) -> Iterator[Shown]:
    """Every block of a face, then its buttons."""
    for block in (*face.top, *face.main, *face.beside, *face.middle, *face.side):
        yield from _read(block)
    yield Shown("buttons", "", [_texts(p.label) for p in face.presses])
    yield Shown("where", "", [_texts(face.where)])


def spread(text: Text) -> str:
    """A text without its values, those that are sentences themselves spread out in it."""
    if not isinstance(text, Say):
        return FIGURE.sub("#", text)
    inner = {name: spread(v) for name, v in text.values.items() if isinstance(v, Say)}
    return re.sub(r"\{(\w+)\}", lambda found: inner.get(found[1], found[0]), text.template)


def _read(block: Block) -> Iterator[Shown]:
    match block:
        case Cards():
            rows = [_texts(e.big, e.right, e.line1, e.line2) for e in block.entries]
            yield _titled("cards", block.title, rows)
        case Listing():
            rows = [_texts(*(c.text for c in cells)) for cells, _ in block.rows]
            yield _titled("list", block.title, rows)
        case Table():
            yield from _read_table(block)
        case Pairs():
            yield _titled("pairs", block.title, [_texts(*row) for row in block.rows])
        case Places():
            yield from _read_places(block)
        case Header():
            rows = [_texts(block.number, block.title, block.note, block.right, block.right_small)]
            yield Shown("header", str(block.label), rows, whole=str(block.right_label))
        case _:
            yield from _read_figures(block)


def _read_table(table: Table) -> Iterator[Shown]:
    rows = [_texts(r.title, r.note, *(c.text for c in r.cells)) for r in table.rows]
    heads = " | ".join(str(c) for c in table.columns)
    shown = _titled("table", table.title, rows)
    yield shown._replace(title=shown.title or heads)
    if any(r.fraction is not None for r in table.rows):
        bars = [_texts(r.title, f"{r.fraction or 0:.3f}") for r in table.rows]
        yield Shown("bars", shown.title or heads, bars)
    presses = [_texts(r.press.label) for r in table.rows if r.press]
    if presses:
        yield Shown("row buttons", shown.title or heads, presses)


def _read_places(places: Places) -> Iterator[Shown]:
    rows = [
        _texts(p.name, p.done, p.unit, p.rate, p.plan, "" if p.waiting is None else str(p.waiting))
        for p in places.items
    ]
    yield Shown("places", "", rows)


def _read_figures(block: Block) -> Iterator[Shown]:
    match block:
        case Meter():
            title = template(block.title)
            yield Shown("meter", title, [_texts(block.title, block.left, block.right)])
            yield Shown("bar", title, [_texts(block.title, f"{block.fraction:.3f}")])
        case Flow():
            for label, points in block.lines:
                ends: list[Row] = [(f"{at:.4f}", str(n)) for at, n in points]
                yield Shown("flow", template(label), ends, whole=str(label))
            yield Shown("flow", "plan", [(str(block.plan),)])
            yield Shown("flow", "ends", [_texts(block.title, block.note)])
        case Steps():
            yield Shown("steps", "", [_texts(a, b) for a, b, _ in block.items])
        case Bands():
            for band in block.items:
                spans = [(f"{a:.3f}", f"{b:.3f}", word) for a, b, word in band.spans]
                yield Shown("band", str(band.name), spans, whole=str(band.state))
                yield Shown("band", "state", [_texts(band.name, band.state)])
        case _:
            yield from _read_words(block)


def _read_words(block: Block) -> Iterator[Shown]:
    match block:
        case Hint():
            words = _texts(block.title, block.right, block.note)
            yield Shown("hint", template(block.title), [words])
        case Remark():
            yield Shown("remark", template(block.title), [_texts(block.title, block.text)])
        case Decision():
            words = _texts(block.title, block.matter, block.offer, *block.notes)
            yield Shown("decision", template(block.title), [words])
            yield Shown("buttons", "", [_texts(block.press.label)] if block.press else [])
        case Asked():
            yield Shown("asked", template(block.question), [_texts(block.question, block.unit)])
            yield Shown("typed", template(block.question), [_texts(block.typed)])
        case Checks():
            yield _titled("checks", block.title, [_texts(i.label, i.text) for i in block.items])
        case Progress():
            words = _texts(block.big, block.note, block.right)
            yield Shown("progress", template(block.big), [words])
            bar = _texts(f"{block.fraction:.3f}", *(block.until or ()))
            yield Shown("bar", template(block.big), [bar])
        case MailerDrawing():
            sizes = [_texts(f"{block.length_mm:g}", f"{block.width_mm:g}")]
            layers = [
                _texts(la.label, f"{la.x_mm:g}", f"{la.y_mm:g}", f"{la.length_mm:g}",
                       f"{la.width_mm:g}", str(la.level))
                for la in block.layers
            ]  # fmt: skip
            yield Shown("mailer", "size", sizes)
            yield Shown("mailer", "layers", layers)
        case SheetDrawing() | PartDrawing() | PathDrawing():
            yield from _read_drawing(block)


def _read_drawing(block: SheetDrawing | PartDrawing | PathDrawing) -> Iterator[Shown]:
    yield Shown("drawing", template(block.note), [_texts(block.note)])
    if isinstance(block, SheetDrawing):
        yield Shown("drawing", "share that is cut", [_texts(f"{block.cut:.3f}")])
    if not isinstance(block, PartDrawing):
        yield Shown("drawing", "marks", [_texts(str(m.number)) for m in block.marks])
    if isinstance(block, PathDrawing):
        yield Shown("drawing", "path", [_texts(f"{block.seconds:g}")])


def _titled(kind: str, title: Text, rows: list[Row]) -> Shown:
    """A block under a title that may say how many more there are."""
    more, words = 0, template(title)
    if isinstance(title, Say) and words.endswith(("{n} more", "{n} and more")):
        more = int(str(title.values["n"]))
        inner = title.values.get("title")
        words = (
            template(inner)
            if isinstance(inner, Say)
            else words.partition("{n} more")[0].strip(" :·,")
        )
    total = None
    if isinstance(title, Say) and not more and "n" in title.values:
        total = (
            int(str(title.values["n"])) if template(title).endswith(("{n}", "sheets}")) else None
        )
    return Shown(kind, words, rows, more, Said(title), total)


def template(text: Text) -> str:
    """A text without its values."""
    return text.template if isinstance(text, Say) else text


def _texts(*texts: Text) -> Row:
    return tuple(Said(t) for t in texts)
