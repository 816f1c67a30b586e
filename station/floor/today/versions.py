"""Compares where stations were of two minds: what one did, and what counts instead."""

from typing import Any

from station.queries.stock import name_part, name_place
from station.shop.beginning import not_here
from station.shop.faces import Cell, Row, Table
from station.shop.facts import Concern
from station.shop.moves import WEAR, Move
from station.shop.views import Past, View
from station.shop.words import Say, clock, metres, say

MOVES = 2  # of a version that are shown
Version = tuple[Say | str, Say | str, tuple[Move, ...]]  # who, said, moves


def compare_versions(concern: Concern, view: View) -> tuple[Table, ...]:
    """Compares the two versions in one table; none where nobody was before anybody."""
    if not concern.now:
        return ()
    mine, other = _describe_lost(concern), _describe_counted(concern, view)
    rows = [
        (say("by"), mine[0], other[0]),
        (say("said"), mine[1], other[1]),
        *_pair_moves(mine[2], other[2], view),
    ]
    return (
        Table(
            columns=(say("not counted"), say("counted")),
            rows=tuple(
                Row(title=one, note=name, cells=(Cell(text=two),)) for name, one, two in rows
            ),
        ),
    )


def _describe_lost(concern: Concern) -> Version:
    """Describes what did not hold."""
    who = say_who(concern.worker, concern.station, concern.since)
    return who, concern.first or say("nothing"), concern.meant


def _describe_counted(concern: Concern, view: View) -> Version:
    """Describes what counts: the act that was first; or else what all stations say now."""
    past: Past[Any] | None = view.past(concern.before) if concern.before else None
    if past:
        act = past.act
        return say_who(act.worker, act.station, act.at), concern.other, past.moves
    who = not_here(view.begins()) if concern.before else Say()
    return who or say("every station"), concern.other or concern.now, ()


def say_who(worker: str, station: str, at: str) -> Say:
    """Says a worker, a station and a time of day."""
    return say("worker {by} at station {station}, {at}", by=worker, station=station, at=clock(at))


def _pair_moves(
    one: tuple[Move, ...], two: tuple[Move, ...], view: View
) -> list[tuple[Say, Say | str, Say | str]]:
    """Pairs the moves of both, line by line."""
    lines = range(min(MOVES, max(len(one), len(two))))
    return [(say("moved"), _say_line(one, n, view), _say_line(two, n, view)) for n in lines]


def _say_line(moves: tuple[Move, ...], n: int, view: View) -> Say:
    if n >= len(moves):
        return Say() if n else say("nothing")
    line, more = say_move(moves[n], view), len(moves) - MOVES
    return say("{what}, and {n} more", what=line, n=more) if n == MOVES - 1 and more > 0 else line


def say_move(move: Move, view: View) -> Say:
    """Says which pieces went from where to where; of a bit how far it has cut, in m."""
    if move.part == WEAR:
        return say(
            "from {here} to {there}: {cut} m",
            cut=metres(move.qty / 1000),
            here=name_place(view, move.frm.place),
            there=name_place(view, move.to.place),
        )
    return say(
        "from {here} to {there}: {n} {part}",
        n=move.qty,
        part=name_part(view, move.part),
        here=name_place(view, move.frm.place),
        there=name_place(view, move.to.place),
    )
