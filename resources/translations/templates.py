"""Every sentence template that the program can show, read from its source."""

import ast
from collections.abc import Iterator
from pathlib import Path

from station.floor.office.lists import LISTS
from station.floor.today.figures import THROUGH
from station.shop.areas import AREAS
from station.shop.cards import BUTTONS, REASON_USES, ZONES
from station.shop.codes import KINDS
from station.shop.facts import Shop
from station.shop.fields import fields_by_name
from station.shop.first_facts import first_reasons, list_for_units

STATES = ("free", "cutting", "stopped")  # of a router's bed
MAKERS = ("say", "Say")
YES_NO = ("yes", "no")  # what a field holds that is either


def templates(root: Path) -> list[str]:
    """The templates in ``station`` below a folder, sorted; each once."""
    cards = (card.words for card in BUTTONS.values())
    reasons = (reason.words for reason in first_reasons())
    found: set[str] = {*(area.title.template for area in AREAS), *STATES, *KINDS.values(), *cards}
    found |= {*ZONES.values(), *REASON_USES.values(), *reasons, Shop(id="shop").caution}
    fields = (field for entry in LISTS for field in fields_by_name(entry.kind).values())
    found |= {word for field in fields for word in (*field.choices, *YES_NO)}
    found |= {name for name, *_ in THROUGH}
    found |= {fact.name for units in ("mm", "inch") for fact in list_for_units(units)}
    for file in sorted((root / "station").rglob("*.py")):
        found.update(_said(ast.parse(file.read_text(encoding="utf-8"))))
    return sorted(found - {""})


def _said(tree: ast.Module) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.keyword) and node.arg == "choices":  # ways to settle something
            yield from _list_texts(node.value)
        if isinstance(node, ast.Call) and _name(node.func) in MAKERS and node.args:
            first = node.args[0]
            if isinstance(first, ast.Constant) and isinstance(first.value, str):
                yield first.value


def _list_texts(value: ast.expr) -> Iterator[str]:
    for one in ast.walk(value):
        if isinstance(one, ast.Constant) and isinstance(one.value, str):
            yield one.value


def _name(function: ast.expr) -> str:
    return function.id if isinstance(function, ast.Name) else ""
