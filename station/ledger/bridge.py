"""What stands in the history where work is missing: so that what comes after it fits again.

Each act says which states it found. Where acts are missing, one entry sets the facts to the
states that the acts behind it found, and brings the pieces that they took. So a loss of one act
costs that one, and not all that rest on it; and somebody has to look.
"""

from collections.abc import Iterable, Sequence
from typing import ClassVar

import msgspec

from station.ledger.books import Books
from station.ledger.codec import Body, Change, State, keep_act, lay_say, lift_say, state_of
from station.ledger.effects import SpotKey, net
from station.shop.acts import Act, Args
from station.shop.conflicts import left_out, missing_work
from station.shop.moves import Move, Spot
from station.shop.places import balances
from station.shop.words import Say, moment, say

ALTERED = say("its digest does not match")
FROM = "recount"  # where pieces come from that nobody knows any more how they came


class MendHistory(Args, frozen=True, kw_only=True):
    """Work is missing behind a damage: of when, and how many acts; -1: nobody knows."""

    kind: ClassVar[str] = "mend_history"

    since: str = ""
    until: str = ""
    lost: int = -1


def bridge(
    act: Act[MendHistory], books: Books, behind: Sequence[Body], *, verdict: str = ""
) -> Body:
    """The entry in the place of what is missing, so that those behind it fit.

    `verdict`: where it is an act that is not shared yet, it is not to be decided again.
    """
    said = tell(act.args)
    concern = missing_work(act, said, act.args.since)
    return Body(
        act=keep_act(act),
        tone="stop",
        said=lay_say(said),
        moves=tuple(_moves(books, behind)),
        sets=(*_sets(books, behind), Change(concern.key, None, state_of(concern))),
        verdict=verdict,
    )


def ask_about(act: Act[MendHistory], body: Body) -> Body:
    """The entry in the place of one whose digest proves that it was another: a look alone."""
    concern = left_out(body.act, lift_say(body.said), ALTERED, body.moves)
    sets = (Change(concern.key, None, state_of(concern)),)
    return Body(act=keep_act(act), tone="stop", said=lay_say(ALTERED), sets=sets)


def tell(args: MendHistory) -> Say:
    """Says what is missing."""
    when = {"since": moment(args.since), "until": moment(args.until)}
    if args.lost > 0:
        return say(
            "{n} {n|act|acts} of {since} to {until} {n|is|are} missing", n=args.lost, **when
        )
    if not args.until:
        return say("Work since {since} may be missing", since=when["since"])
    return say("Work of {since} to {until} may be missing", **when)


def _sets(books: Books, behind: Iterable[Body]) -> Iterable[Change]:
    """The facts as those behind it found them first."""
    touched = set[str]()
    for body in behind:
        for change in body.sets:
            if change.key in touched:
                continue
            touched.add(change.key)
            now, before = books.row(change.key), change.before
            if (now[3] if now else None) != (before.entry if before else None):
                yield Change(change.key, _state(now), before)


def _state(row: tuple[str, str | None, str, str] | None) -> State | None:
    return State(msgspec.Raw(row[0].encode()), *row[1:]) if row else None


def _moves(books: Books, behind: Iterable[Body]) -> Iterable[Move]:
    """The pieces that those behind it take and that do not lie there."""
    sums, least = dict[SpotKey, int](), dict[SpotKey, int]()
    for body in behind:
        for key, more in net(body.moves).items():
            if not balances(key[2]):
                sums[key] = sums.get(key, books.balance.get(key, 0)) + more
                least[key] = min(least.get(key, 0), sums[key])
    for (batch, part, place), short in least.items():
        if short < 0:
            yield Move(part, -short, Spot(FROM, batch), Spot(place, batch))
