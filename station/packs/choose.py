"""Chooses the mailer of a pack at packing: the cheapest that closes over the pieces as they lie.

Cheapest is the one with the lowest price; as long as a mailer has none, the smallest flat area
stands for it, then the mass. The stack is not higher than the shorter side of its first layer,
which covers half of its box or more; only where no mailer takes such a stack is this let go. Where
the same mailer can have them so, several parts lie in layers that are all the same, which are
counted at a glance, and small pieces lie between two larger ones (common practice, no source).
"""

from functools import lru_cache

from station.packs.messages import PackAnswer, PackMailer, PackPile, PackProblem
from station.packs.stack import (
    Layers,
    Patience,
    StackAsk,
    find_equal_layers,
    find_stack,
    has_between,
    lay_single,
)

KEPT = 512  # answers that are kept: a screen asks again at every scan
WORK = 3000  # rooms that are filled for a problem, before only a few ways are tried
MANY_WORK = 4500  # the same for an order of many parts
MANY_PARTS = 7


@lru_cache(maxsize=KEPT)
def choose_mailer(problem: PackProblem) -> PackAnswer:
    """Chooses the mailer and lays the pieces; without a mailer they are stacked as they can."""
    parts = tuple(p for p in problem.parts if p.pieces > 0)
    if not parts:
        return PackAnswer()
    patience = Patience(WORK if len(parts) < MANY_PARTS else MANY_WORK)
    priced = all(mailer.price > 0 for mailer in problem.mailers)
    mailers = sorted(problem.mailers, key=lambda mailer: _rate_mailer(mailer, priced=priced))
    between = has_between(parts)
    rules = ((True, True), (False, True)) if between else ((False, True),)
    steady = [(mailer, *rule) for mailer in mailers for rule in rules]
    for mailer, inside, firm in (*steady, *((mailer, False, False) for mailer in mailers)):
        ask = StackAsk(
            parts=parts,
            mailer=mailer,
            allowance_mm=problem.allowance_mm,
            gap_mm=problem.gap_mm,
            between=inside,
            steady=firm,
        )
        equal = find_equal_layers(ask) if firm else None
        if layers := equal or find_stack(ask, mailer.thick_mm, patience):
            loose = (inside, firm) != rules[0]
            return PackAnswer(layers=_centre(layers), mailer=mailer.name, loose=loose)
    return PackAnswer(layers=_centre(lay_single(parts, problem.gap_mm)))


def _rate_mailer(mailer: PackMailer, *, priced: bool) -> tuple[float, float, float, str]:
    area = mailer.length_mm * mailer.width_mm
    return (mailer.price if priced else area, area, mailer.mass_g, mailer.name)


def _centre(layers: Layers) -> Layers:
    """Moves each layer to the middle of the stack."""
    length, width, _ = PackAnswer(layers=layers).size_mm
    moved = []
    for layer in layers:
        own = layer.size_mm
        left, low = min(p.x_mm for p in layer.piles), min(p.y_mm for p in layer.piles)
        dx, dy = (length - own[0]) / 2 - left, (width - own[1]) / 2 - low
        piles: tuple[PackPile, ...] = tuple(
            p._replace(x_mm=p.x_mm + dx, y_mm=p.y_mm + dy) for p in layer.piles
        )
        moved.append(layer._replace(piles=piles))
    return tuple(moved)
