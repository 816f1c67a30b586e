"""Questions about what a pack weighs: by the book, by area and density, or not to be told.

How far a mass may be off are settings of the shop: wood is more or less dry, and plywood is not
as thick as its maker says.
"""

from collections.abc import Iterable
from typing import NamedTuple

from station.queries.settings import find_shop
from station.shop.facts import Mailer, Material, Part
from station.shop.views import View
from station.shop.words import Say, say

LIKE_MM = 0.25  # a sheet good as thick as the part, within this
MOST = 100  # sheet goods that are looked through

Pieces = Iterable[tuple[Part, int]]  # so many of each part


class PartMass(NamedTuple):
    """What one piece weighs, g, and the share that it may be off.

    `density` is the sheet good whose density is assumed; None: the mass is the book's.
    """

    grams: float
    share: float
    density: Material | None = None


class Weight(NamedTuple):
    """What the scale should show: grams, their uncertainty, and what limits it.

    `unknown` is the name of a part without a weight: then nothing can be told. `light`
    and `light_g` are the lightest part: where one piece more or less would not show.
    `assumed` are the parts whose density is assumed, and the sheet good that it is.
    """

    grams: float
    plus: float
    unknown: str
    light: str
    light_g: float
    assumed: tuple[tuple[str, str], ...] = ()

    def agrees(self, scale_g: float) -> bool | None:
        """Tells whether a reading is as it should be; None: it can't be told."""
        return None if self.unknown else abs(scale_g - self.grams) <= self.plus

    def words(self, scale_g: float) -> Say:
        """Says a reading against what was expected."""
        if self.unknown:
            return say("{g} g on the scale: can't tell", g=round(scale_g))
        if self.agrees(scale_g):
            return say("{g} g on the scale: as it should be", g=round(scale_g))
        return say(
            "{g} g on the scale, {grams} ± {plus} g expected",
            g=round(scale_g),
            grams=round(self.grams),
            plus=round(self.plus),
        )

    @property
    def blind(self) -> int:
        """Pieces of the lightest part more or less that stay within the tolerance."""
        return int(self.plus / self.light_g) if self.light_g else 0


def find_mass(view: View, part: Part) -> PartMass | None:
    """Finds what a piece weighs: by the book, else by its area, thickness and density.

    The density is that of the shop's sheet good that is as thick; None: it can't be told.
    """
    shop = find_shop(view)
    if part.mass_g > 0:
        return PartMass(part.mass_g, shop.weighed_off / 100)
    if part.shape is None:
        return None
    goods = view.shelf(Material, "all", MOST)
    nearest = min(goods, key=lambda m: abs(m.thickness_mm - part.thickness_mm), default=None)
    if nearest is None or abs(nearest.thickness_mm - part.thickness_mm) > LIKE_MM:
        return None
    volume_mm3 = part.shape.area_mm2 * part.thickness_mm
    return PartMass(volume_mm3 * nearest.density_kg_m3 * 1e-6, shop.worked_out_off / 100, nearest)


def weigh_parts(view: View, pieces: Pieces, mailer: Mailer | None) -> Weight:
    """Weighs so many of each part and their mailer by the book, without wrap.

    The uncertainty is a share of the wood's mass (k = 1), at the least what a scale may be off.
    """
    found = [(part, count, find_mass(view, part)) for part, count in pieces]
    known = [(part, count, mass) for part, count, mass in found if mass]
    lightest = min(known, key=lambda k: k[2].grams, default=None)
    return Weight(
        sum(mass.grams * n for _, n, mass in known) + (mailer.mass_g if mailer else 0.0),
        max(find_shop(view).scale_off_g, sum(mass.grams * n * mass.share for _, n, mass in known)),
        next((part.name for part, _, mass in found if mass is None), ""),
        lightest[0].name if lightest else "",
        lightest[2].grams if lightest else 0.0,
        tuple((p.name, mass.density.name) for p, _, mass in known if mass.density),
    )
