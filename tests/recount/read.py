"""Reads a screen as a person does: each block under its title, each row as its texts."""

from collections.abc import Iterator
from typing import NamedTuple

from station.shop.faces import (
    Block,
    Cards,
    Cell,
    Face,
    Flow,
    Header,
    Listing,
    Meter,
    Pairs,
    Places,
    Steps,
    Table,
    Text,
)
from station.shop.words import Say

Row = tuple[str, ...]


class Shown(NamedTuple):
    """A block: its kind, its title without figures, its rows, how many more it says there are."""

    kind: str
    title: str
    rows: list[Row]
    more: int = 0
    whole: str = ""  # the title as it is read
    total: int | None = None  # how many there are in all, where the title says it


def read_face(face: Face) -> Iterator[Shown]:
    """Every block of a face that says figures."""
    for block in (*face.top, *face.main, *face.beside, *face.middle, *face.side):
        yield from _read(block)


def _read(block: Block) -> Iterator[Shown]:
    match block:
        case Cards():
            rows = [_texts(e.big, e.right, e.line1, e.line2) for e in block.entries]
            yield _titled("cards", block.title, rows)
        case Listing():
            rows = [_texts(*(c.text for c in cells)) for cells, _ in block.rows]
            yield _titled("list", block.title, rows)
        case Table():
            rows = [_texts(r.title, r.note, *(_cell(c) for c in r.cells)) for r in block.rows]
            heads = " | ".join(str(c) for c in block.columns)
            shown = _titled("table", block.title, rows)
            yield shown._replace(title=shown.title or heads)
        case Pairs():
            yield _titled("pairs", block.title, [_texts(*row) for row in block.rows])
        case Places():
            rows = [
                _texts(
                    p.name,
                    p.done,
                    p.unit,
                    p.rate,
                    p.plan,
                    "" if p.waiting is None else str(p.waiting),
                )
                for p in block.items
            ]
            yield Shown("places", "", rows)
        case Header():
            rows = [_texts(block.number, block.title, block.note, block.right, block.right_small)]
            yield Shown("header", str(block.label), rows, whole=str(block.right_label))
        case _:
            yield from _read_figures(block)


def _read_figures(block: Block) -> Iterator[Shown]:
    match block:
        case Meter():
            yield Shown(
                "meter", template(block.title), [_texts(block.title, block.left, block.right)]
            )
        case Flow():
            for label, points in block.lines:
                ends: list[Row] = [(f"{at:.4f}", str(n)) for at, n in points]
                yield Shown("flow", template(label), ends, whole=str(label))
            yield Shown("flow", "plan", [(str(block.plan),)])
        case Steps():
            yield Shown("steps", "", [_texts(a, b) for a, b, _ in block.items])


def _titled(kind: str, title: Text, rows: list[Row]) -> Shown:
    """A block under a title that may say how many more there are."""
    more, words = 0, template(title)
    if isinstance(title, Say) and words.endswith("{n} more"):
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
    return Shown(kind, words, rows, more, str(title), total)


def template(text: Text) -> str:
    """A text without its values."""
    return text.template if isinstance(text, Say) else text


def _cell(cell: Cell) -> Text:
    return cell.text


def _texts(*texts: Text) -> Row:
    return tuple(str(t) for t in texts)
