"""The acts that this station can take back one by one, with the hand before each.

Each step is a value of this station's own in the ledger, written in the transaction of its act.
There are at most `MOST`; the oldest gives its place to the newest.
"""

import json
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, NamedTuple

from station.desk.aside import tell_counted
from station.desk.draft import Draft, held, read_hand, write_hand
from station.shop.rooms import Hand, Room
from station.shop.views import View

MOST = 200  # about a shift of one station


class Step(NamedTuple):
    """One act of this station: its entry, and the hand that asked for it."""

    entry: str
    hand: Hand[Any]


def lay_step(depth: int, entry: str, hand: Hand[Any]) -> dict[str, str]:
    """The value to keep for an act that has `depth` acts before it, by its key."""
    return {_key(depth): json.dumps([depth, entry, write_hand(hand)])}


def find_step(
    depth: int, kept: Callable[[str], str | None], rooms: Mapping[str, Room]
) -> Step | None:
    """Finds the act that has `depth` acts before it; None when it was kept no longer."""
    text = kept(_key(depth)) if depth >= 0 else None
    if not text:
        return None
    found, entry, hand = json.loads(text)
    return Step(entry, read_hand(hand, rooms)) if found == depth else None


def step_back(
    draft: Draft, view: View, kept: Callable[[str], str | None], rooms: Mapping[str, Room]
) -> Draft:
    """The draft once its newest act is taken back: the hand is as it was before that act.

    `kept` gives a value of this station's own. An act that another station has taken back is
    passed over.
    """
    depth, here = draft.depth - 1, draft.hand
    step = find_step(depth, kept, rooms)
    hand = replace(step.hand, worker=here.worker, station=here.station) if step else here.empty()
    older = find_step(depth - 1, kept, rooms)
    while older and (past := view.past(older.entry)) and past.undone:
        depth -= 1
        older = find_step(depth - 1, kept, rooms)
    return replace(
        draft.with_hand(hand),
        last=older.entry if older else "",
        after=held(hand),
        depth=max(depth, 0),
        counted_by=(step.hand.worker,) if step and tell_counted(hand, view) else (),
    )


def _key(depth: int) -> str:
    return f"step/{depth % MOST}"
