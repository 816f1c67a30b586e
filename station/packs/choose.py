"""Chooses the mailer of a pack at packing: the smallest that closes over the pieces as they lie.

Smallest is the one with the smallest flat area, then the lightest. The stack is not higher than
the shorter side of its first layer, which covers half of its box or more; only where no mailer
takes such a stack is this let go. Where the same mailer can have them so, small pieces lie
between two larger ones (common practice, no source).
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache

from station.packs.layers import lay_layers, lay_single, split_evenly
from station.packs.messages import (
    NEAR,
    PackAnswer,
    PackLayer,
    PackMailer,
    PackPart,
    PackProblem,
)

Layers = tuple[PackLayer, ...]
Space = tuple[float, float, float]  # length, width and the most height
HALF = 0.5  # of its box, that a layer on the outside covers
TRIES = 4  # heights that are tried for a mailer, from the lowest that could do
KEPT = 512  # answers that are kept: a screen asks again at every scan


@lru_cache(maxsize=KEPT)
def choose_mailer(problem: PackProblem) -> PackAnswer:
    """Chooses the mailer and lays the pieces; without a mailer they are stacked as they can."""
    parts = [p for p in problem.parts if p.pieces > 0]
    if not parts:
        return PackAnswer()
    mailers = sorted(problem.mailers, key=_rate_mailer)
    between = has_between(parts)
    steady = [(mailer, strict) for mailer in mailers for strict in ((2, 1) if between else (1,))]
    for mailer, strict in (*steady, *((mailer, 0) for mailer in mailers)):
        if layers := _fill_mailer(problem, parts, mailer, strict):
            loose = strict < (2 if between else 1)
            return PackAnswer(layers=_centre(layers), mailer=mailer.name, loose=loose)
    return PackAnswer(layers=_centre(lay_single(_order_by_area(parts), problem.gap_mm)))


def _rate_mailer(mailer: PackMailer) -> tuple[float, float, str]:
    return (mailer.length_mm * mailer.width_mm, mailer.mass_g, mailer.name)


def has_between(parts: Sequence[PackPart]) -> bool:
    """Tells whether small pieces have larger ones to lie between."""
    large = sum(p.pieces for p in parts if not p.small)
    return large > 1 and any(p.small for p in parts)


def _fill_mailer(
    problem: PackProblem, parts: list[PackPart], mailer: PackMailer, strict: int
) -> Layers | None:
    """Lays the pieces so that a mailer closes over them, keeping the rules; None: it can't."""
    for layers in lay_ways(problem, parts, mailer, between=strict == 2):
        length, width, thick = PackAnswer(layers=layers).size_mm
        if mailer.takes(length, width, thick, problem.allowance_mm) and (
            not strict or is_steady(layers)
        ):
            return layers
    return None


def is_steady(layers: Layers) -> bool:
    """Tells whether a stack is no higher than its base is wide, on a base that is half covered."""
    thick = sum(layer.height_mm for layer in layers)
    return thick <= min(layers[0].size_mm) + NEAR and layers[0].covered >= HALF - NEAR


def lay_ways(
    problem: PackProblem, parts: list[PackPart], mailer: PackMailer, *, between: bool
) -> Iterator[Layers]:
    """Lays the pieces in every way that may do, the flattest first.

    A higher stack needs a smaller room in the same mailer: the room is made for a height, and
    where the pieces come out higher, anew for that height.
    """
    volume = sum(p.length_mm * p.width_mm * p.thick_mm * p.pieces for p in parts)
    longest, widest = (max(end(p[1:3]) for p in parts) for end in (max, min))
    step = min(p.thick_mm for p in parts)
    orders = {tuple(order(parts)) for order in (_order_by_area, _order_by_thickness)}
    for order in sorted(orders, reverse=True):
        thick = max(p.thick_mm for p in parts)
        tries = 0
        while thick <= mailer.thick_mm + NEAR and tries < TRIES:
            room = mailer.find_room(thick, problem.allowance_mm)
            if max(room) < longest - NEAR or min(room) < widest - NEAR:
                break
            if room[0] * room[1] * thick < volume - NEAR:
                thick += step
                continue
            layers = _lay_in_room(problem, order, (*room, mailer.thick_mm), between=between)
            if layers is None:
                break
            yield layers
            tries += 1
            thick = max(thick + step, sum(layer.height_mm for layer in layers))
    if not between:
        yield lay_single(_order_by_area(parts), problem.gap_mm)


def _order_by_area(parts: Sequence[PackPart]) -> list[PackPart]:
    return sorted(parts, key=lambda p: (-p.length_mm * p.width_mm, -p.thick_mm, p.name))


def _order_by_thickness(parts: Sequence[PackPart]) -> list[PackPart]:
    return sorted(parts, key=lambda p: (-p.thick_mm, -p.length_mm * p.width_mm, p.name))


def _lay_in_room(
    problem: PackProblem,
    parts: Sequence[PackPart],
    room: tuple[float, float, float],
    *,
    between: bool,
) -> Layers | None:
    """Lays the pieces in a room, the fullest layer at the bottom."""
    if between:
        return _lay_between(problem, parts, room)
    layers = lay_layers(parts, *room[:2], problem.gap_mm, room[2])
    return _sort_layers(layers) if layers else None


def _sort_layers(layers: Layers) -> Layers:
    """Sorts layers from the bottom: what covers most carries the others."""

    def cover(layer: PackLayer) -> float:
        return -sum(p.length_mm * p.width_mm for p in layer.piles)

    return tuple(sorted(layers, key=cover))


def _lay_between(problem: PackProblem, parts: Sequence[PackPart], room: Space) -> Layers | None:
    """Lays small pieces between a bottom and a top of larger ones, inside the box of both."""
    gap = problem.gap_mm
    length, width, most = room
    large = lay_layers([p for p in parts if not p.small], length, width, gap, most)
    if large and len(large) == 1:
        halves = split_evenly([p for p in parts if not p.small])
        both = [lay_layers(half, length, width, gap, most) for half in halves]
        large = both[0] + both[1] if both[0] and both[1] else None
    if not large or len(large) < 2:
        return None
    bottom, top, *others = _sort_layers(large)
    if min(bottom.covered, top.covered) < HALF - NEAR:
        return None
    (a, b), (c, d) = bottom.size_mm, top.size_mm
    small = lay_layers([p for p in parts if p.small], min(a, c), min(b, d), gap, most)
    return (bottom, *others, *small, top) if small else None


def _centre(layers: Layers) -> Layers:
    """Moves each layer to the middle of the stack."""
    length, width, _ = PackAnswer(layers=layers).size_mm
    moved = []
    for layer in layers:
        own = layer.size_mm
        dx, dy = (length - own[0]) / 2, (width - own[1]) / 2
        piles = tuple(p._replace(x_mm=p.x_mm + dx, y_mm=p.y_mm + dy) for p in layer.piles)
        moved.append(layer._replace(piles=piles))
    return tuple(moved)
