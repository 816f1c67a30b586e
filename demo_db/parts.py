"""The parts of the demo shop: tools for hand weaving, all of our own invention.

Each design is drawn once here; the part's shape, its sizes, the drawing of every sheet and
the text of every cut file follow from it.
"""

from dataclasses import dataclass
from functools import cache
from math import hypot

from demo_db.geometry import Corner, Corners, Point, circle, loop, rectangle
from station.shop.facts import Fact, Part, RackPlace, Recess, Shape, Size, SizeKind

BIRCH, THICK_BIRCH, THIN_MDF, MDF = "1", "2", "3", "4"  # materials of the first morning
THICKNESS = {BIRCH: 6.5, THICK_BIRCH: 9.0, THIN_MDF: 3.0, MDF: 6.0}
DENSITY = {BIRCH: 680.0, THICK_BIRCH: 680.0, THIN_MDF: 780.0, MDF: 760.0}  # kg a cubic metre


@dataclass(frozen=True, kw_only=True)
class Pocket:
    """A pocket, its floor `depth_mm` below the face, cleared by the large bit."""

    corners: Corners
    depth_mm: float


@dataclass(frozen=True, kw_only=True)
class Design:
    """A part as drawn: outline and slots counter-clockwise, holes at (x, y).

    `tabs` are (x, y) on straight edges of the outline. Slots with tight corners and holes
    of 3 mm are cut by the small bit, everything else by the large one.
    """

    part: str
    name: str
    words: str
    rack: str
    mark: int
    material: str
    outline: Corners
    tabs: tuple[Point, ...]
    slots: tuple[Corners, ...] = ()
    holes: tuple[Point, ...] = ()
    pockets: tuple[Pocket, ...] = ()
    hole_mm: float = 6.0
    pitch: float = 0.0  # from slot to slot, where it is a size of the part
    small: bool = False
    ramped: bool = False  # tabs rise and fall at a slope

    @property
    def box(self) -> Point:
        """Length and width, mm."""
        return _box(self.outline)


@cache
def _box(outline: Corners) -> Point:
    drawn = loop(outline)
    return max(x for x, _ in drawn), max(y for _, y in drawn)


def _mid(length: float, width: float) -> tuple[Point, ...]:
    """Four tabs, one in the middle of each edge."""
    return (length / 2, 0.0), (length, width / 2), (length / 2, width), (0.0, width / 2)


def _pair(length: float, width: float) -> tuple[Point, ...]:
    """Two tabs, in the middle of the long edges."""
    return (length / 2, 0.0), (length / 2, width)


def _comb(part: str, name: str, words: str, rack: str, *, length: float, slots: int) -> Design:
    """A heddle comb: slots side by side, an eye in each dent between them."""
    pitch, width = 20.0, 120.0
    first = (length - (slots - 1) * pitch) / 2
    at = [first + n * pitch for n in range(slots)]
    return Design(
        part=part, name=name, words=words, rack=rack, mark=24, material=BIRCH,
        outline=rectangle(0, 0, length, width, 8), tabs=_mid(length, width),
        slots=tuple(rectangle(x - 4, 28, 8, 64, 4) for x in at),
        holes=tuple((x + pitch / 2, width / 2) for x in at[:-1]), pitch=pitch,
    )  # fmt: skip


def _shuttle(part: str, name: str, words: str, rack: str, *, length: float) -> Design:
    """A stick shuttle: a flat stick with a notch for the yarn at both ends."""
    w, deep = 40.0, 22.0
    outline = (
        Corner(0, 0, 6), Corner(length, 0, 6), Corner(length, 12, 4),
        Corner(length - deep, 14, 5), Corner(length - deep, 26, 5), Corner(length, 28, 4),
        Corner(length, w, 6), Corner(0, w, 6), Corner(0, 28, 4), Corner(deep, 26, 5),
        Corner(deep, 14, 5), Corner(0, 12, 4),
    )  # fmt: skip
    return Design(
        part=part, name=name, words=words, rack=rack, mark=96, material=BIRCH,
        outline=outline, tabs=_pair(length, w), ramped=True,
    )  # fmt: skip


def _gauge(part: str, name: str, words: str, rack: str, *, window: float, r: float) -> Design:
    """A sett gauge: threads are counted in its window; a hole to hang it by."""
    return Design(
        part=part, name=name, words=words, rack=rack, mark=60, material=BIRCH,
        outline=rectangle(0, 0, 100, 60, 5), tabs=_pair(100, 60),
        slots=(rectangle((100 - window) / 2, 20, window, 20, r),), holes=((50, 51),),
        hole_mm=6.0 if r > 3 else 3.0,
    )  # fmt: skip


def _stick(part: str, name: str, words: str, rack: str, *, length: float, width: float) -> Design:
    """A long stick with one pointed end."""
    point = width * 1.2
    tip = 4 * (hypot(1.2, 0.5) / 0.5 - 1)  # what its radius takes off the point
    outline = (
        Corner(0, 0, 5), Corner(length - point, 0, 4), Corner(length + tip, width / 2, 4),
        Corner(length - point, width, 4), Corner(0, width, 5),
    )  # fmt: skip
    return Design(
        part=part, name=name, words=words, rack=rack, mark=40, material=BIRCH,
        outline=outline, tabs=_pair(length * 0.8, width), holes=((15, width / 2),),
    )  # fmt: skip


def _bobbin() -> Design:
    """A flat bobbin with a waist for the yarn."""
    outline = (
        Corner(0, 0, 5), Corner(28, 0, 5), Corner(34, 12, 6), Corner(76, 12, 6),
        Corner(82, 0, 5), Corner(110, 0, 5), Corner(110, 50, 5), Corner(82, 50, 5),
        Corner(76, 38, 6), Corner(34, 38, 6), Corner(28, 50, 5), Corner(0, 50, 5),
    )  # fmt: skip
    return Design(
        part="063", name="BB-110", words="Flat bobbin 110", rack="B 11", mark=80, material=MDF,
        outline=outline, tabs=((55, 12), (55, 38)), small=True,
    )  # fmt: skip


def _others() -> tuple[Design, ...]:
    """Frame sides, spacers, cards, keys, wheels."""
    return (
        Design(part="032", name="WS-90", words="Warp spacer 90", rack="B 02", mark=120,
               material=BIRCH, outline=rectangle(0, 0, 90, 40, 4), tabs=_pair(90, 40),
               slots=(rectangle(20, 16, 50, 8, 4),), holes=((10, 20), (80, 20)), small=True),
        Design(part="051", name="FS-600", words="Frame side 600", rack="D 01", mark=32,
               material=THICK_BIRCH, outline=rectangle(0, 0, 600, 80, 10),
               tabs=((150, 0), (450, 0), (450, 80), (150, 80)), ramped=True,
               slots=(rectangle(250, 34, 100, 12, 6),), holes=((20, 20), (20, 60), (580, 20),
                                                             (580, 60)),
               pockets=(Pocket(corners=rectangle(40, 25, 60, 30, 5), depth_mm=4.5),
                        Pocket(corners=rectangle(500, 25, 60, 30, 5), depth_mm=4.5))),
        Design(part="062", name="TK-60", words="Tension key 60", rack="B 09", mark=100,
               material=MDF, outline=rectangle(0, 0, 60, 36, 8), tabs=((30, 0), (30, 36)),
               slots=(rectangle(8, 12, 12, 12, 2),), small=True,
               hole_mm=3.0, holes=((25, 18),),
               pockets=(Pocket(corners=rectangle(30, 10, 20, 16, 4), depth_mm=3.0),)),
        Design(part="071", name="TB-140", words="Tapestry beater 140", rack="C 03", mark=20,
               material=BIRCH, outline=rectangle(0, 0, 140, 60, 14), tabs=_pair(140, 60),
               slots=tuple(rectangle(32 + 18 * n, 14, 4, 32, 2) for n in range(5)), pitch=18.0),
        Design(part="073", name="WC-70", words="Weaving card 70", rack="B 13", mark=200,
               material=THIN_MDF, outline=rectangle(0, 0, 70, 70, 7), tabs=_pair(70, 70),
               slots=tuple(circle(x, y, 8) for x in (14, 56) for y in (14, 56)), small=True),
        Design(part="074", name="BW-45", words="Bobbin wheel 45", rack="B 14", mark=150,
               material=THIN_MDF, outline=rectangle(0, 0, 45, 45, 19), small=True,
               tabs=_pair(45, 45), slots=(circle(22.5, 22.5, 10),)),
    )  # fmt: skip


@cache
def designs() -> dict[str, Design]:
    """Every design by part id."""
    made = (
        _comb("014", "HC-300", "Heddle comb 300", "C 14", length=300, slots=13),
        _comb("015", "HC-40", "Heddle comb 40", "C 15", length=200, slots=8),
        _comb("016", "HC-50", "Heddle comb 50", "C 16", length=250, slots=10),
        _shuttle("021", "ST-200", "Stick shuttle 200", "A 03", length=200),
        _shuttle("022", "ST-120", "Stick shuttle 120", "A 04", length=120),
        _gauge("045", "SG-10", "Sett gauge 10", "B 07", window=40, r=4),
        _gauge("046", "SG-12", "Sett gauge 12", "B 08", window=48, r=2),
        _stick("061", "PS-300", "Pick-up stick 300", "A 07", length=300, width=25),
        _stick("072", "SS-400", "Shed stick 400", "A 09", length=400, width=45),
        _bobbin(),
        *_others(),
    )
    return {d.part: d for d in sorted(made, key=lambda d: d.part)}


@cache
def shape(part: str) -> Shape:
    """The part's shape: true edges, arcs as chords."""
    d = designs()[part]
    holes = (*map(loop, d.slots), *(loop(circle(x, y, d.hole_mm)) for x, y in d.holes))
    pockets = (Recess(depth_mm=p.depth_mm, outline=loop(p.corners)) for p in d.pockets)
    return Shape(outline=loop(d.outline), holes=holes, tabs=d.tabs, recesses=tuple(pockets))


def _area(points: tuple[Point, ...]) -> float:
    """The area inside a loop, mm²."""
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return abs(sum(a[0] * b[1] - a[1] * b[0] for a, b in pairs)) / 2


def mass_g(part: str) -> float:
    """What one piece weighs, pockets taken off."""
    d, drawn = designs()[part], shape(part)
    net = _area(drawn.outline) - sum(_area(h) for h in drawn.holes)
    pockets = sum(_area(loop(p.corners)) * p.depth_mm for p in d.pockets)
    volume = net * THICKNESS[d.material] - pockets
    return round(volume * DENSITY[d.material] * 1e-6, 1)


def _sizes(d: Design) -> tuple[Size, ...]:
    """What is compared with the master: along, across, one slot, pitch, thickness."""
    thick = THICKNESS[d.material]
    sizes = [_size("A along", d.box[0], 0.3), _size("B across", d.box[1], 0.3)]
    if d.slots:
        xs = [c.x for c in d.slots[0]]
        sizes.append(_size("C slot", max(xs) - min(xs), 0.15, "inside"))
    if d.pitch:
        sizes.append(_size("D ten pitches", 10 * d.pitch, 0.2, "pitch"))
    return (*sizes, _size("T thickness", thick, 0.4, "thickness"))


def _size(name: str, nominal: float, give: float, kind: SizeKind = "outside") -> Size:
    return Size(name=name, nominal_mm=nominal, low_mm=round(nominal - give, 3),
                high_mm=round(nominal + give, 3), kind=kind)  # fmt: skip


def part_facts() -> tuple[Fact, ...]:
    """Every part with its rack place; a rack place has its part's number."""
    facts: list[Fact] = []
    for d in designs().values():
        facts += [
            Part(id=d.part, name=d.name, words=d.words, rack=d.part, mark=d.mark,
                 thickness_mm=THICKNESS[d.material], mass_g=mass_g(d.part),
                 shape=shape(d.part), sizes=_sizes(d), small=d.small),
            RackPlace(id=d.part, name=d.rack, part=d.part),
        ]  # fmt: skip
    return tuple(facts)
