"""Every sentence with a figure that a screen may say, and what it must say by the books.

A rule names a block by kind and title, and a text by how it reads; it gives the texts that
may stand there. What stands in a list as a whole is compared in `screens`.
"""

import re
from collections.abc import Iterable
from functools import cache

from tests.recount import lives, loading, orders_said, pages, parcels, plans, tallies
from tests.recount.read import Row, Shown
from tests.recount.rules import At, Look, Rule

RULES: tuple[Rule, ...] = (
    *tallies.RULES,
    *parcels.RULES,
    *loading.RULES,
    *orders_said.RULES,
    *pages.RULES,
    *lives.RULES,
    *plans.RULES,
)


@cache
def _rules_of(kind: str, title: str) -> tuple[Rule, ...]:
    """The rules of a block."""
    return tuple(r for r in RULES if re.fullmatch(r.kind, kind) and re.match(r.title, title))


def compare_text(look: Look, shown: Shown, row: Row, k: int, text: str) -> tuple[bool, str]:
    """Says whether a text is one that is counted again, and how it differs."""
    for rule in _rules_of(shown.kind, shown.title):
        found = re.fullmatch(rule.says, text)
        if found and (rule.of == "title") == (k < 0):
            may = rule.count(At(look, shown, row, k, found))
            if may is None:
                continue
            if text in _gather(may):
                return True, ""
            return True, f"{shown.kind} {shown.title!r}: {text!r} stands there, counted {may!r}"
    return False, ""


def _gather(may: str | Iterable[str]) -> Iterable[str]:
    return (may,) if isinstance(may, str) else tuple(may)
