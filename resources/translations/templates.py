"""Every sentence template that the program can show, read from its source."""

import ast
from collections.abc import Iterator
from pathlib import Path

from station.shop.areas import AREAS
from station.shop.cards import BUTTONS, REASON_USES, ZONES
from station.shop.codes import KINDS
from station.shop.facts import Shop
from station.shop.first_facts import first_reasons, list_for_units

STATES = ("free", "cutting", "stopped")  # of a router's bed
MAKERS = ("say", "Say")


def templates(root: Path) -> list[str]:
    """The templates in ``station`` below a folder, sorted; each once."""
    cards = (card.words for card in BUTTONS.values())
    reasons = (reason.words for reason in first_reasons())
    found: set[str] = {*(area.title.template for area in AREAS), *STATES, *KINDS.values(), *cards}
    found |= {*ZONES.values(), *REASON_USES.values(), *reasons, Shop(id="shop").caution}
    found |= {fact.name for units in ("mm", "inch") for fact in list_for_units(units)}
    for file in sorted((root / "station").rglob("*.py")):
        found.update(_said(ast.parse(file.read_text(encoding="utf-8"))))
    return sorted(found - {""})


def _said(tree: ast.Module) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and _name(node.func) in MAKERS and node.args:
            first = node.args[0]
            if isinstance(first, ast.Constant) and isinstance(first.value, str):
                yield first.value


def _name(function: ast.expr) -> str:
    return function.id if isinstance(function, ast.Name) else ""
