"""Where the points of a part's shape lie on a sheet."""

import math
from collections.abc import Sequence

from station.shop.facts import Placed, Shape

Points = Sequence[tuple[float, float]]


class OnSheet:
    """Places the points of a shape as its piece lies: mirrored, turned, moved; all in mm."""

    def __init__(self, piece: Placed, shape: Shape) -> None:
        angle = math.radians(piece.turn_deg)
        self.cos, self.sin, self.piece = math.cos(angle), math.sin(angle), piece
        corners = [self._turn(p) for p in shape.outline] or [(0.0, 0.0)]
        self.left, self.low = min(x for x, _ in corners), min(y for _, y in corners)

    def _turn(self, point: tuple[float, float]) -> tuple[float, float]:
        x, y = point
        x = -x if self.piece.mirrored else x
        return x * self.cos - y * self.sin, x * self.sin + y * self.cos

    def place(self, points: Points) -> list[tuple[float, float]]:
        """Gives the points on the sheet; the piece's box has its lower left at x_mm, y_mm."""
        return [
            (self.piece.x_mm + x - self.left, self.piece.y_mm + y - self.low)
            for x, y in map(self._turn, points)
        ]
