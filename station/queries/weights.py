"""Questions about what a pack weighs: by the book, by area and density, or not to be told.

How far a mass may be off are settings of the shop: wood is more or less dry, and plywood is not
as thick as its maker says; a lot of sheets is off as a whole. Packs that were weighed tell more
(`station.packs.weighing`).
"""

from collections.abc import Iterable
from typing import NamedTuple

from station.packs.weighing import Heap, Known, WeighedPack
from station.queries.readings import find_source
from station.queries.settings import find_shop
from station.shop.facts import Mailer, Material, Pack, Part
from station.shop.moves import Held
from station.shop.readings import WEIGHT, Reading
from station.shop.views import View, by_part
from station.shop.words import Say, mass, say

LEARNT = 12  # weighed packs that are learnt from, the newest
SHOWS = 0.9  # chance to be noticed from which on a missing piece shows
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
    `assumed` are the parts whose density is assumed, and the sheet good that it is; `notices`
    the chance of each part that one of it missing is noticed.
    """

    grams: float
    plus: float
    unknown: str
    light: str
    light_g: float
    assumed: tuple[tuple[str, str], ...] = ()
    notices: tuple[tuple[str, float], ...] = ()

    def agrees(self, scale_g: float) -> bool | None:
        """Tells whether a reading is as it should be; None: it can't be told."""
        return None if self.unknown else abs(scale_g - self.grams) <= self.plus

    def words(self, scale_g: float) -> Say:
        """Says a reading against what was expected."""
        if self.unknown:
            return say("{g} g on the scale: can't tell", g=mass(scale_g))
        if self.agrees(scale_g):
            return say("{g} g on the scale: as it should be", g=mass(scale_g))
        return say(
            "{g} g on the scale, {grams} ± {plus} g expected",
            g=mass(scale_g),
            grams=mass(self.grams),
            plus=mass(self.plus, self.grams),
        )

    @property
    def shows(self) -> tuple[str, ...]:
        """The parts of which one missing shows."""
        return tuple(name for name, chance in self.notices if chance >= SHOWS)

    @property
    def hides(self) -> tuple[str, ...]:
        """The parts of which one missing may not show, what shows least first."""
        rising = sorted(self.notices, key=lambda notice: notice[1])
        return tuple(name for name, chance in rising if chance < SHOWS)

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


def weigh_parts(
    view: View, pieces: Pieces, mailer: Mailer | None, inside: tuple[Held, ...] = ()
) -> Weight:
    """Weighs so many of each part and their mailer, without wrap, by all that is known of them.

    `inside` are the pieces themselves, by batch; without them nobody knows their lots. The
    tolerance is such that of right packs only the set share is doubted, at the least what a
    scale may be off.
    """
    found = [(part, count, find_mass(view, part)) for part, count in pieces]
    known = [(part, count, mass) for part, count, mass in found if mass]
    lightest = min(known, key=lambda k: k[2].grams, default=None)
    heaps = tuple(h for k in known for h in _heap_up(view, *k, inside))
    shop = find_shop(view)
    learnt, alarms = _learn(view, tuple(k[0] for k in known)), shop.false_alarms / 100
    expected = learnt.expect(heaps, alarms)
    plus = max(shop.scale_off_g, expected.tolerance)
    return Weight(
        expected.grams + (mailer.mass_g if mailer else 0.0),
        plus,
        next((part.name for part, _, mass in found if mass is None), ""),
        lightest[0].name if lightest else "",
        lightest[2].grams if lightest else 0.0,
        tuple((p.name, mass.density.name) for p, _, mass in known if mass.density),
        _tell_notices(learnt, heaps, [(p.id, p.name) for p, n, _ in known if n], alarms),
    )


def _heap_up(
    view: View, part: Part, count: int, mass: PartMass, inside: tuple[Held, ...]
) -> list[Heap]:
    """Heaps the pieces of a part up by their lots."""
    lots: dict[str, int] = {}
    for held in inside:
        if held.part == part.id:
            lot = find_source(view, held.batch).lot
            lots[lot] = lots.get(lot, 0) + held.qty
    if sum(lots.values()) != count:
        lots = {"": count} if count > 0 else {}
    return [Heap(part.id, lot, n, mass.grams, mass.share) for lot, n in lots.items()]


def _tell_notices(
    learnt: Known, heaps: tuple[Heap, ...], parts: list[tuple[str, str]], alarms: float
) -> tuple[tuple[str, float], ...]:
    """Tells for each part the chance that the scale shows one of it missing."""
    places = {heap.part: n for n, heap in reversed(list(enumerate(heaps)))}
    return tuple(
        (name, learnt.tell_chance(heaps, places[part], alarms))
        for part, name in parts
        if part in places
    )


def _learn(view: View, parts: tuple[Part, ...]) -> Known:
    """Learns from the newest packs that were weighed with any of these parts in them."""
    acts: dict[str, str] = {}
    for part in parts:
        acts |= {noted.act: noted.at for noted in view.series(part.key, WEIGHT)[-LEARNT:]}
    newest = sorted(acts, key=lambda act: (acts[act], act))[-LEARNT:]
    shop = find_shop(view)
    known = Known(shop.lot_off / 100, shop.piece_off / 100)
    known.learn_all(pack for act in newest if (pack := _recall_pack(view, act)))
    return known


def _recall_pack(view: View, act: str) -> WeighedPack | None:
    """Recalls what was in a pack and what it weighed, from the entry that closed it."""
    past = view.past(act)
    pack = next((w.after for w in past.sets if isinstance(w.after, Pack)), None) if past else None
    if past is None or pack is None or not pack.scale_g:
        return None
    inside = tuple(Held(*m.to, m.part, m.qty) for m in past.moves)
    heaps: list[Heap] = []
    for number, count in by_part(inside).items():
        part = view.get(Part, number)
        mass = find_mass(view, part) if part else None
        if part is None or mass is None:
            return None
        heaps += _heap_up(view, part, count, mass, inside)
    mailer = view.get(Mailer, pack.mailer)
    return WeighedPack(tuple(heaps), pack.scale_g - (mailer.mass_g if mailer else 0.0))


def note_weights(
    view: View, inside: tuple[Held, ...], mailer: Mailer | None, scale_g: float
) -> tuple[Reading, ...]:
    """Notes what one piece of each part weighed, as far as a whole pack tells it."""
    masses = {
        h.part: mass
        for h in inside
        if (part := view.get(Part, h.part)) and (mass := find_mass(view, part))
    }
    book = sum(masses[h.part].grams * h.qty for h in inside if h.part in masses)
    if not book or any(h.part not in masses for h in inside):
        return ()
    share = (scale_g - (mailer.mass_g if mailer else 0.0)) / book
    return tuple(
        Reading(
            subject=f"part/{part}",
            kind=WEIGHT,
            value=round(mass.grams * share, 2),
            unit="g",
            part=part,
        )
        for part, mass in masses.items()
    )
