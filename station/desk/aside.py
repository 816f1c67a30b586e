"""Counts that were left for other work: laid aside, told to whoever comes, and taken up again.

Pure: each gives the draft that it leaves. Nothing that somebody counted is lost by a touch.
"""

from dataclasses import replace
from typing import Any

from station.desk.draft import Draft, LaidAside
from station.shop.rooms import Hand, Work
from station.shop.views import View
from station.shop.words import Say, plain, say, several

MOST = 30  # counts laid aside; of more, the oldest are long settled elsewhere


def tell_counted(hand: Hand[Any], view: View) -> Say:
    """Tells what was counted in a hand and is recorded nowhere yet; empty: nothing was."""
    return hand.work.tell_counted(view) if isinstance(hand.work, Work) else Say()


def tell_by(counted: Say, by: tuple[str, ...]) -> Say:
    """Tells a count with the workers who made it."""
    if not by:
        return counted
    workers = several([plain(w) for w in by])
    if len(by) == 1:
        return say("{counted}: counted so far by worker {by}", counted=counted, by=by[0])
    return say("{counted}: counted so far by workers {workers}", counted=counted, workers=workers)


def note_counted(draft: Draft, hand: Hand[Any], view: View) -> Draft:
    """The draft with this hand, and who has counted in it."""
    counted, by = tell_counted(hand, view), keep_by(draft, hand, view)
    if counted and counted != tell_counted(draft.hand, view) and hand.worker not in by:
        by = (*by, hand.worker)
    return replace(draft.with_hand(hand), counted_by=by)


def keep_by(draft: Draft, hand: Hand[Any], view: View) -> tuple[str, ...]:
    """Who has counted what this hand still holds of the draft's work."""
    same = hand.subject == draft.hand.subject and tell_counted(hand, view)
    return draft.counted_by if same else ()


def lay_aside(draft: Draft, view: View, *, comes_back: bool) -> Draft:
    """Lays what was counted in the hand aside; the hand itself stays as it is."""
    if not tell_counted(draft.hand, view):
        return draft
    left = LaidAside(hand=draft.hand, by=draft.counted_by, comes_back=comes_back)
    others = [a for a in draft.aside if not _is_same(a.hand, draft.hand)]
    return replace(draft, aside=(*others, left)[-MOST:])


def find_for_area(draft: Draft, area: str) -> LaidAside | None:
    """Finds what was in hand when this area was left."""
    return next((a for a in draft.aside if a.hand.area == area and a.comes_back), None)


def find_for_hand(draft: Draft, hand: Hand[Any], view: View) -> LaidAside | None:
    """Finds what was counted before in the work that this hand has just picked up."""
    if not hand.subject or hand.subject == draft.hand.subject or tell_counted(hand, view):
        return None
    return next((a for a in draft.aside if _is_same(a.hand, hand)), None)


def take_up(draft: Draft, found: LaidAside) -> Draft:
    """Puts what was laid aside back into the hand of whoever works here now."""
    hand = replace(
        draft.hand, subject=found.hand.subject, work=found.hand.work, facing=found.hand.facing
    )
    others = tuple(a for a in draft.aside if a is not found)
    return replace(draft.with_hand(hand), counted_by=found.by, aside=others)


def _is_same(one: Hand[Any], other: Hand[Any]) -> bool:
    return (one.area, one.subject) == (other.area, other.subject)
