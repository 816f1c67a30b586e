"""The cut files of the demo shop: what lies where on the sheet, revision by revision."""

import hashlib
from dataclasses import dataclass
from functools import cache

from demo_db.geometry import Point, turned
from demo_db.parts import BIRCH, MDF, THICK_BIRCH, THIN_MDF, designs, shape
from demo_db.write_cut import Cut, Job, write
from station.shop.facts import CutFile, Fact, Placed, Revision

LENGTH, WIDTH = 2440.0, 1220.0


@dataclass(frozen=True, kw_only=True)
class Block:
    """Pieces of one part in rows: `along` × `across` of them from x, y, so far apart."""

    part: str
    x: float
    y: float
    along: int
    across: int
    dx: float
    dy: float
    turn: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Layout:
    """One revision of a cut file: its blocks, and how its text is written."""

    cut_file: str
    letter: str
    material: str
    blocks: tuple[Block, ...]
    routers: tuple[str, ...] = ()
    inch: bool = False
    radius_arcs: bool = False  # arcs by R instead of I and J
    more_tabs: bool = False  # a tab at both thirds of the long edges instead of the middle
    note: str = ""


def _even(part: str, along: int, across: int) -> Block:
    """Pieces spread evenly over the whole sheet."""
    box = designs()[part].box
    dx = (LENGTH - 60 - box[0]) / (along - 1)
    dy = (WIDTH - 60 - box[1]) / (across - 1)
    return Block(part=part, x=30, y=30, along=along, across=across,
                 dx=round(dx, 1) - 0.1, dy=round(dy, 1) - 0.1)  # fmt: skip


NAMES: dict[str, tuple[str, str, str]] = {  # number: name, words, the approved revision
    "008": ("HC300-SET", "Heddle combs 300", "C"),
    "009": ("ST200-SET", "Stick shuttles 200", "C"),
    "011": ("WS090-SET", "Warp spacers 90", "C"),
    "012": ("SG010-SET", "Sett gauges 10", "C"),
    "015": ("FS600-SET", "Frame sides 600", "C"),
    "021": ("HC300-ST", "Heddle comb 300 + shuttles", "B"),
    "022": ("CARDS-SET", "Weaving cards + bobbin wheels", "A"),
    "023": ("KEYS-SET", "Tension keys + flat bobbins", "B"),
    "024": ("STICK-SET", "Pick-up sticks + shed sticks", "A"),
    "025": ("HC4050-SET", "Heddle combs 40 + 50", "A"),
    "027": ("ST120-SET", "Stick shuttles 120", "A"),
    "026": ("SG012-TB", "Sett gauges 12 + tapestry beaters", "A"),
}


def _mixed(*, shuttles_low: int = 6) -> tuple[Block, ...]:
    """Combs above at the left, shuttles beside and below, spacers in the corner."""
    return (
        Block(part="014", x=28, y=620, along=6, across=4, dx=320, dy=145),
        Block(part="021", x=1960, y=620, along=2, across=8, dx=225, dy=72),
        Block(part="032", x=28, y=40, along=10, across=3, dx=60, dy=185, turn=90),
        Block(part="021", x=650, y=40, along=8, across=shuttles_low, dx=221, dy=92),
    )


def _frames(rows: int = 10) -> tuple[Block, ...]:
    """Three across and two more standing at the right end."""
    return (
        Block(part="051", x=30, y=30, along=3, across=rows, dx=620, dy=119),
        Block(part="051", x=1960, y=30, along=2, across=1, dx=200, dy=0, turn=90),
    )


def _plain() -> tuple[Layout, ...]:
    """The files of one part each."""
    return (
        Layout(cut_file="008", letter="B", material=BIRCH, blocks=(_even("014", 5, 4),)),
        Layout(cut_file="008", letter="C", material=BIRCH, blocks=(_even("014", 6, 4),)),
        Layout(cut_file="008", letter="D", material=BIRCH, blocks=(_even("014", 6, 4),),
               more_tabs=True, note="tabs moved off the middle"),
        Layout(cut_file="009", letter="B", material=BIRCH, blocks=(_even("021", 8, 11),)),
        Layout(cut_file="009", letter="C", material=BIRCH, blocks=(_even("021", 8, 12),)),
        Layout(cut_file="011", letter="C", material=BIRCH, blocks=(_even("032", 20, 12),)),
        Layout(cut_file="012", letter="B", material=BIRCH, blocks=(_even("045", 15, 10),)),
        Layout(cut_file="012", letter="C", material=BIRCH, blocks=(_even("045", 16, 10),)),
        Layout(cut_file="015", letter="B", material=THICK_BIRCH, blocks=_frames(9)),
        Layout(cut_file="015", letter="C", material=THICK_BIRCH, blocks=_frames()),
    )  # fmt: skip


def _several() -> tuple[Layout, ...]:
    """The files of several parts."""
    return (
        Layout(cut_file="021", letter="A", material=BIRCH, blocks=_mixed(shuttles_low=5)),
        Layout(cut_file="021", letter="B", material=BIRCH, blocks=_mixed(), radius_arcs=True),
        Layout(cut_file="022", letter="A", material=THIN_MDF, routers=("5",),
               blocks=(Block(part="073", x=30, y=30, along=16, across=13, dx=92, dy=88),
                       Block(part="074", x=1530, y=30, along=13, across=17, dx=67, dy=67)),
               note="vacuum bed only: the cards are thin and small"),
        Layout(cut_file="023", letter="A", material=MDF, routers=("5",),
               blocks=(Block(part="062", x=30, y=30, along=14, across=19, dx=80, dy=60),)),
        Layout(cut_file="023", letter="B", material=MDF, routers=("5",),
               blocks=(Block(part="062", x=30, y=30, along=14, across=19, dx=80, dy=60),
                       Block(part="063", x=1170, y=30, along=9, across=15, dx=138, dy=74)),
               note="vacuum bed with changer: pockets and slots"),
        Layout(cut_file="024", letter="A", material=BIRCH, inch=True,
               blocks=(Block(part="061", x=30, y=30, along=3, across=24, dx=325, dy=48),
                       Block(part="072", x=1010, y=30, along=3, across=17, dx=430, dy=68))),
        Layout(cut_file="027", letter="A", material=BIRCH, blocks=(_even("022", 14, 16),)),
        Layout(cut_file="025", letter="A", material=BIRCH,
               blocks=(Block(part="015", x=30, y=30, along=5, across=8, dx=225, dy=145),
                       Block(part="016", x=1170, y=30, along=4, across=8, dx=275, dy=145))),
        Layout(cut_file="026", letter="A", material=BIRCH, routers=("5",),
               blocks=(Block(part="046", x=30, y=30, along=12, across=13, dx=122, dy=88),
                       Block(part="071", x=1500, y=30, along=5, across=13, dx=165, dy=88))),
    )  # fmt: skip


def layouts() -> tuple[Layout, ...]:
    """Every revision of every cut file."""
    return (*_plain(), *_several())


def placed(layout: Layout) -> tuple[Placed, ...]:
    """The pieces of a layout in the order in which they are cut."""
    return tuple(
        Placed(part=b.part, x_mm=round(b.x + n * b.dx, 3), y_mm=round(b.y + m * b.dy, 3),
               turn_deg=b.turn, tabs=_moved_tabs(b, n, m) if layout.more_tabs else ())
        for b in layout.blocks
        for m in range(b.across)
        for n in range(b.along)
    )  # fmt: skip


def _moved_tabs(block: Block, n: int, m: int) -> tuple[Point, ...]:
    """Tabs at both thirds of the long edges and in the middle of the short ones."""
    box = designs()[block.part].box
    length, width = box
    spots = (
        (length / 3, 0.0), (length * 2 / 3, 0.0), (length, width / 2),
        (length * 2 / 3, width), (length / 3, width), (0.0, width / 2),
    )  # fmt: skip
    turned_spots = (turned(s, block.turn, box) for s in spots)
    return tuple(
        (round(x + block.x + n * block.dx, 3), round(y + block.y + m * block.dy, 3))
        for x, y in turned_spots
    )


HOLD_DOWNS: tuple[Point, ...] = tuple(
    (x, y) for y in (9.0, WIDTH - 9.0) for x in (100.0, 500.0, 900.0, 1300.0, 1700.0, 2300.0)
)


@cache
def cut(cut_file: str, letter: str) -> Cut:
    """The text of a revision, with what it asks of bits and time."""
    layout = next(v for v in layouts() if (v.cut_file, v.letter) == (cut_file, letter))
    name = NAMES[cut_file][0]
    job = Job(name=name, letter=letter, material=layout.material, placed=placed(layout),
              inch=layout.inch, radius_arcs=layout.radius_arcs)  # fmt: skip
    return write(job)


def revision(layout: Layout) -> Revision:
    """The revision as the shop knows it, with the digest of its text."""
    text = cut(layout.cut_file, layout.letter)
    pieces = placed(layout)
    parts = dict.fromkeys(p.part for p in pieces)
    return Revision(
        id=Revision.id_of(layout.cut_file, layout.letter), cut_file=layout.cut_file,
        letter=layout.letter, material=layout.material, minutes=text.minutes,
        routers=layout.routers,
        length_mm=LENGTH, width_mm=WIDTH, shapes=tuple((p, shape(p)) for p in parts),
        placed=pieces, bits=text.bits, hold_downs=() if layout.routers == ("5",) else HOLD_DOWNS,
        digest=hashlib.sha256(text.text.encode()).hexdigest(), note=layout.note,
    )  # fmt: skip


@cache
def sheet_facts() -> tuple[Fact, ...]:
    """Every cut file and revision."""
    files = (
        CutFile(id=number, name=name, words=words, approved=approved)
        for number, (name, words, approved) in NAMES.items()
    )
    return (*files, *map(revision, layouts()))


def file_name(layout: Layout) -> str:
    """Under which name its text lies in ``cut_files``."""
    return f"{NAMES[layout.cut_file][0]}-{layout.letter}.nc"
