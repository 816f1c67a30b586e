"""What needs a look because stations share: what is said of it, and the ways to settle it."""

from dataclasses import replace

from station.shop.acts import Act
from station.shop.facts import Concern
from station.shop.moves import Move
from station.shop.places import balances
from station.shop.views import View
from station.shop.words import Say, say

NO_LONGER = "no-longer"  # an act that did not hold any more when it was shared
LEFT_OUT = "left-out"  # an entry that does not fit what came before it, or cannot be read
SHARED = (NO_LONGER, LEFT_OUT)
NEW_COPY = "new_copy"  # the kind of act that prints a traveller anew
MISSING = "work-missing"  # what a damage of this shop's file has cost

LEAVE = "leave it out"
BOOK = "book what is there"
RENEW = "give the paper another number and print it"
BOTH = "both meant the same"  # settled by itself


def no_longer(
    act: Act[object],
    first: Say,
    now: Say,
    meant: tuple[Move, ...],
    before: tuple[str, Say] = ("", Say()),
    *,
    twice: bool = False,
) -> Concern:
    """An act that holds no longer: what was said then, what would be said now.

    `before`: the id of the act that was first, and what was said to it. `twice`: its paper bears
    what another paper bears. Then nothing is booked under that number.
    """
    who = {"by": act.worker or "?", "why": str(now) or "somebody was first"}
    text = say("“{first}” does not hold: {why}, worker {by}", first=str(first), **who)
    if meant:
        pieces = sum(m.qty for m in meant)
        text = say("{why}: {n} {n|piece|pieces} of worker {by} not counted", n=pieces, **who)
    concern = _concern(act, NO_LONGER, text, (first, now), meant)
    if twice:
        ways = (RENEW, LEAVE) if _can_renew(act, meant) else (LEAVE,)
        concern = replace(concern, choices=ways)
    return replace(concern, before=before[0], other=flat(before[1]))


def _can_renew(act: Act[object], meant: tuple[Move, ...]) -> bool:
    """Whether the paper is a traveller of pieces that are known: a new copy, or a child's own."""
    return any(into_child(m) for m in meant) or (not meant and act.kind == NEW_COPY)


def into_child(move: Move) -> bool:
    """Whether pieces go into a batch of their own with a move."""
    return move.to.batch != move.frm.batch


def left_out(act: Act[object], first: Say, why: Say, meant: tuple[Move, ...]) -> Concern:
    """An entry whose effects are left out, at every station alike."""
    text = say(
        "An entry of station {station} was left out: {why}",
        station=act.station or "?",
        why=str(why),
    )
    return _concern(act, LEFT_OUT, text, (first, why), meant)


def missing_work(act: Act[object], said: Say, since: str) -> Concern:
    """Work that is missing behind a damage: what lies in the shop must be counted."""
    text = say("{what}: a file was damaged. Count what lies there, then go on", what=said)
    return Concern(
        id=act.id, what=MISSING, text=flat(text), since=since or act.at, station=act.station,
        tone="stop",
    )  # fmt: skip


def _concern(
    act: Act[object], what: str, text: Say, versions: tuple[Say, Say], meant: tuple[Move, ...]
) -> Concern:
    """What needs a look, with both versions and the ways to settle it."""
    first, now = versions
    return Concern(
        id=act.id,
        what=what,
        text=text,
        since=act.at,
        about=act.subject,
        choices=(LEAVE, BOOK) if meant else (LEAVE,),
        station=act.station,
        worker=act.worker,
        first=flat(first),
        now=flat(now),
        meant=meant,
    )


def flat(words: Say) -> Say:
    """A sentence whose values are plain: a fact keeps no sentence inside a sentence."""
    plain = {k: str(v) if isinstance(v, Say) else v for k, v in words.values.items()}
    return Say(words.template, plain)


def bookable(view: View, concern: Concern) -> tuple[Move, ...]:
    """What was meant to move, as far as it still lies there."""
    left: dict[tuple[str, str, str], int] = {}
    moves = []
    for m in concern.meant:
        spot = (m.frm.place, m.frm.batch, m.part)
        if not balances(m.frm.place) and spot not in left:
            held = view.stock(batch=m.frm.batch, place=m.frm.place)
            left[spot] = sum(h.qty for h in held if (h.batch, h.part) == (m.frm.batch, m.part))
        qty = m.qty if balances(m.frm.place) else min(m.qty, left[spot])
        if qty > 0:
            moves.append(m._replace(qty=qty))
            left[spot] = left.get(spot, 0) - qty
    return tuple(moves)
