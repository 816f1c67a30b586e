"""Where stations were of two minds: what one did and what counts instead, side by side."""

from station.queries.stock import name_part, name_place
from station.shop.beginning import not_here
from station.shop.faces import Cell, Row, Table
from station.shop.facts import Concern
from station.shop.moves import Move
from station.shop.views import Past, View
from station.shop.words import Say, clock, say

MOVES = 2  # of a version that are shown
Version = tuple[Say | str, Say | str, tuple[Move, ...]]  # who, said, moves


def versions(concern: Concern, view: View) -> tuple[Table, ...]:
    """The two versions as one table; none where nobody was before anybody."""
    if not concern.now:
        return ()
    mine, other = _mine(concern), _other(concern, view)
    rows = [
        (say("by"), mine[0], other[0]),
        (say("said"), mine[1], other[1]),
        *_moves(mine[2], other[2], view),
    ]
    return (
        Table(
            columns=(say("not counted"), say("counted")),
            rows=tuple(
                Row(title=one, note=name, cells=(Cell(text=two),)) for name, one, two in rows
            ),
        ),
    )


def _mine(concern: Concern) -> Version:
    """What did not hold."""
    who = who_at(concern.worker, concern.station, concern.since)
    return who, concern.first or say("nothing"), concern.meant


def _other(concern: Concern, view: View) -> Version:
    """What counts: the act that was first; where none is known, what all stations say now."""
    past: Past | None = view.past(concern.before) if concern.before else None
    if past:
        act = past.act
        return who_at(act.worker, act.station, act.at), concern.other, past.moves
    who = not_here(view.begins()) if concern.before else Say()
    return who or say("every station"), concern.other or concern.now, ()


def who_at(worker: str, station: str, at: str) -> Say:
    """A worker, a station and a time of day."""
    return say("worker {by} at station {station}, {at}", by=worker, station=station, at=clock(at))


def _moves(
    one: tuple[Move, ...], two: tuple[Move, ...], view: View
) -> list[tuple[Say, Say | str, Say | str]]:
    """The moves of both, line by line."""
    lines = range(min(MOVES, max(len(one), len(two))))
    return [(say("moved"), _line(one, n, view), _line(two, n, view)) for n in lines]


def _line(moves: tuple[Move, ...], n: int, view: View) -> Say:
    if n >= len(moves):
        return Say() if n else say("nothing")
    line, more = moved(moves[n], view), len(moves) - MOVES
    return say("{what}, and {n} more", what=line, n=more) if n == MOVES - 1 and more > 0 else line


def moved(move: Move, view: View) -> Say:
    """Which pieces went from where to where."""
    return say(
        "from {here} to {there}: {n} {part}",
        n=move.qty,
        part=name_part(view, move.part),
        here=name_place(view, move.frm.place),
        there=name_place(view, move.to.place),
    )
