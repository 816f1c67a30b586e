"""Clean cut files: forty habits, nothing wrong in any of them."""

from collections.abc import Callable
from dataclasses import replace
from math import pi

from tests.habits.cutting import SAFE, Job, Manner
from tests.habits.loops import Loop, Step, join, make_box, make_ring, move
from tests.habits.parts import Hole, Shape
from tests.habits.pen import Style

PLATE = Shape(180.0, 120.0, holes=(Hole(-50.0, 20.0, 30.0), Hole(40.0, -20.0, 40.0, 24.0)))
ROUNDED = Shape(160.0, 90.0, 12.0)
DISC = Shape(110.0)
BAR = Shape(220.0, 40.0, rolled=True)
RAIL = Shape(200.0, 60.0, holes=(Hole(-80.0, 10.0, 16.0), Hole(60.0, -12.0, 16.0)))
PLACES = (
    (160.0, 120.0),
    (420.0, 120.0),
    (680.0, 120.0),
    (160.0, 330.0),
    (420.0, 330.0),
    (680.0, 330.0),
)


def _lay(
    name: str,
    style: Style,
    manner: Manner,
    shapes: tuple[Shape, ...],
    remark: str | None = None,
    **of: object,
) -> Job:
    job = Job(name, style, **of)  # type: ignore[arg-type]
    job.open(manner.bit, remark=remark)
    for shape, (x, y) in zip(shapes * 2, PLACES, strict=False):
        job.cut_part(shape, x, y, replace(manner, tabs=0 if not shape.length else manner.tabs))
    return job.close()


MIXED = (PLATE, ROUNDED, DISC)
SQUARE = (PLATE, BAR, RAIL)
LAID: dict[str, tuple[Style, Manner, tuple[Shape, ...], str | None]] = {
    "plain": (Style(), Manner(), MIXED, None),
    "inch with decimals": (Style(inch=True), Manner(bit=6.35), MIXED, None),
    "inch, radii": (
        Style(inch=True, radii=True),
        Manner(bit=6.35, tabs=3),
        MIXED,
        "1/4 IN END MILL",
    ),
    "line numbers": (Style(numbers=True, percent=True), Manner(tabs=4), MIXED, None),
    "lower case, semicolons": (Style(lower=True, semicolon=True), Manner(passes=3), MIXED, None),
    "no blanks": (
        Style(tight=True, percent=True, repeat_words=True),
        Manner(passes=3),
        MIXED,
        None,
    ),
    "radii": (Style(radii=True, percent=True), Manner(passes=4), MIXED, None),
    "absolute centres": (Style(absolute_centres=True), Manner(), MIXED, None),
    "absolute centres about the middle": (
        Style(absolute_centres=True, centre=True),
        Manner(),
        MIXED,
        None,
    ),
    "zero in the middle": (Style(centre=True), Manner(tabs=2), MIXED, None),
    "zero on the spoilboard": (Style(spoilboard=True), Manner(tabs=2), MIXED, None),
    "middle, spoilboard, inch": (
        Style(centre=True, spoilboard=True, inch=True),
        Manner(bit=6.35),
        MIXED,
        None,
    ),
    "three digits": (Style(digits=3), Manner(passes=6), MIXED, None),
    "helix into the outline": (Style(), Manner(entry="helix", passes=3), MIXED, None),
    "helix over tabs": (Style(), Manner(entry="helix", passes=4, tabs=3), SQUARE, None),
    "ramp into the outline": (Style(), Manner(entry="ramp", passes=3), MIXED, None),
    "ramp, radii, tabs": (Style(radii=True), Manner(entry="ramp", passes=3, tabs=4), SQUARE, None),
    "leads on arcs": (Style(), Manner(lead="arc", passes=2), MIXED, None),
    "leads on arcs with overlap": (Style(), Manner(lead="arc", overlap=5.0), MIXED, None),
    "leads on arcs, anticlockwise": (Style(), Manner(lead="arc", climb=False), MIXED, None),
    "straight leads": (Style(), Manner(lead="straight", tabs=3), MIXED, None),
    "straight leads with a gap": (Style(), Manner(lead="straight", gap=0.1), MIXED, None),
    "overlap of 2": (Style(), Manner(overlap=2.0, passes=3), MIXED, None),
    "overlap of 8 with tabs": (Style(), Manner(overlap=8.0, tabs=3), SQUARE, None),
    "gap of 0.02": (Style(), Manner(gap=0.02), MIXED, None),
    "gap of 0.3": (Style(numbers=True), Manner(gap=0.3, tabs=2), MIXED, None),
    "triangles": (Style(), Manner(tabs=3, triangles=True), SQUARE, None),
    "triangles in inch": (
        Style(inch=True),
        Manner(bit=6.35, tabs=2, triangles=True, passes=3),
        SQUARE,
        None,
    ),
    "tabs only in the last pass": (
        Style(),
        Manner(tabs=3, tabs_last_only=True, passes=3),
        SQUARE,
        None,
    ),
    "six passes": (Style(), Manner(passes=6, tabs=2, tab_wide=8.0), SQUARE, None),
    "finishing pass": (Style(), Manner(finish=0.4, passes=3), MIXED, None),
    "finishing pass over tabs": (Style(), Manner(finish=0.4, passes=3, tabs=3), SQUARE, None),
    "skin, then through": (Style(), Manner(skin=0.4, passes=2), MIXED, None),
    "skin, then over tabs": (Style(), Manner(skin=0.4, passes=2, tabs=2), SQUARE, None),
    "bit in a remark only": (
        Style(),
        Manner(bit=3.175, passes=4),
        MIXED,
        "Tool: 3.175 mm straight",
    ),
    "bit in a table": (Style(), Manner(bit=8.0), MIXED, "TOOL LIST|T1, DIA 8.0, LEN 32, CARBIDE"),
    "starts in a corner": (Style(), Manner(start=93.0, overlap=3.0), SQUARE, None),
    "six passes with overlap, tabs in the last": (
        Style(inch=True, spoilboard=True),
        Manner(bit=6.35, passes=6, overlap=4.0, tabs=3, tabs_last_only=True),
        SQUARE,
        None,
    ),
}


def lay_turned() -> Job:
    """Nests one part turned and mirrored."""
    job = Job("turned and mirrored").open()
    for i, (x, y) in enumerate(PLACES):
        job.cut_part(
            PLATE, x, y + (y > 200) * 40, Manner(tabs=2), angle=i * pi / 7, mirror=i % 2 == 1
        )
    return job.close()


def lay_in_holes() -> Job:
    """Cuts a disc out of the waste of a ring's hole, before the ring."""
    job = Job("parts in holes of others").open()
    for x in (200.0, 500.0, 800.0):
        job.cut_part(Shape(60.0), x, 250.0, Manner())
        job.cut_part(
            Shape(220.0, 220.0, 20.0, holes=(Hole(0.0, 0.0, 120.0),)), x, 250.0, Manner(tabs=4)
        )
    return job.close()


def lay_dog_bones() -> Job:
    """Cuts panels with dog-boned holes."""
    shape = Shape(
        200.0,
        140.0,
        holes=(Hole(-50.0, 0.0, 60.0, 30.0, True), Hole(50.0, 20.0, 18.0, 50.0, True)),
    )
    return _lay("dog-bones", Style(), Manner(tabs=4), (shape, BAR))


def lay_combs() -> Job:
    """Cuts combs whose slots are one stroke each, and a sister with one slot less."""
    slots = tuple(((x, -45.0), (x, -5.0)) for x in range(-72, 73, 24))
    comb = Shape(180.0, 70.0, strokes=slots)
    return _lay("combs", Style(), Manner(), (comb, replace(comb, strokes=slots[1:]), comb))


def lay_notches() -> Job:
    """Cuts plates with open notches of three strokes, and inner slots of one stroke."""
    notch = ((30.0, 50.0), (30.0, 20.0), (60.0, 20.0), (60.0, 50.0))
    fill = tuple(((x, 50.0), (x, 22.0)) for x in (35.0, 40.0, 45.0, 50.0, 55.0))
    shape = Shape(150.0, 90.0, strokes=(notch, *fill, ((-60.0, -20.0), (-30.0, -20.0))))
    return _lay(
        "notches and slots",
        Style(),
        Manner(tabs=2),
        (shape, replace(shape, strokes=shape.strokes[:-1])),
    )


def lay_pockets() -> Job:
    """Cuts plates with a pocket, without one, and with a deeper one."""
    ways = tuple(((-40.0, y), (40.0, y)) for y in (-8.0, -4.0, 0.0, 4.0, 8.0))
    plain = Shape(150.0, 90.0)
    pocketed = replace(plain, shallow=ways, depth=3.0)
    return _lay("pockets", Style(), Manner(), (plain, pocketed, replace(pocketed, depth=5.0)))


def lay_engraved() -> Job:
    """Engraves many strokes before few outlines: most of the file is shallow."""
    marks = tuple(((x, -20.0), (x, 20.0), (x + 8.0, 0.0)) for x in range(-60, 61, 15))
    shape = Shape(170.0, 90.0, 8.0, shallow=marks, depth=0.6)
    return _lay("mostly engraved", Style(), Manner(), (shape,), thick=9.0)


def lay_drilled() -> Job:
    """Drills holes by cycles, whole and pecked, before the outlines."""
    job = Job("drilled by cycles").open()
    shape = Shape(180.0, 100.0, drills=((-70.0, 30.0), (70.0, 30.0), (0.0, -20.0)))
    for n, (x, y) in enumerate(PLACES[:4]):
        job.pen.lift(SAFE)
        words = "G98 G81" if n % 2 else "G98 G83"
        for px, py in shape.drills:
            tail = " R2. F300." if n % 2 else " R2. Q4. F300."
            job.pen.say(f"{words} X{x + px:.3f} Y{y + py:.3f} Z-12.3{tail}")
        job.pen.say("G80")
        job.pen.word, job.pen.fed = "", 300.0
        bare = replace(shape, drills=())
        job.cut_outline(move(bare.draw_outline(6.0), x, y), Manner(), lambda way: way, bare)
        job.expect(shape)
    return job.close()


def lay_helix_holes() -> Job:
    """Cuts holes by a helix, two turns and a flat one."""
    job = Job("holes by helix").open()
    for x, y in PLACES[:4]:
        for dx in (-50.0, 50.0):
            job.cut_loop(make_ring(4.0, x + dx, y), Manner(entry="helix", passes=4))
        bare = Shape(180.0, 100.0)
        job.cut_outline(move(bare.draw_outline(6.0), x, y), Manner(), lambda way: way, bare)
        job.expect(replace(bare, holes=(Hole(-50.0, 0.0, 10.0), Hole(50.0, 0.0, 10.0))))
    return job.close()


def lay_subprogram() -> Job:
    """Cuts one part many times by a subprogram in steps."""
    job = Job("a subprogram for repeated parts").open()
    pen = job.pen
    for x, y in PLACES:
        pen.lift(SAFE)
        pen.jump((x, y))
        pen.say("M98 P1000")
        job.expect(Shape(120.0, 80.0))
    pen.lift(SAFE)
    pen.say("M5")
    pen.say("M30")
    pen.say("O1000")
    pen.say("G91")
    pen.say("G0 X-63. Y-43.")
    pen.say("Z-10.")
    for z in (-8.0, -6.3):
        pen.say(f"G1 Z{z} F600")
        for words in ("Y86. F2400", "X126.", "Y-86.", "X-126."):
            pen.say(words)
    pen.say("G0 Z24.3")
    pen.say("G90")
    pen.say("M99")
    return job


def lay_shared_lines() -> Job:
    """Cuts six boxes that share their lines: rows and columns right across."""
    job = Job("common lines").open()
    xs, ys = [100.0 + 126.0 * i for i in range(4)], [100.0, 186.0, 272.0]
    for x in xs:
        job.cut_open((Step((x, ys[0]), (x, ys[-1])),), -12.3, 2)
    for y in ys:
        job.cut_open((Step((xs[0], y), (xs[-1], y)),), -12.3, 2)
    for _ in range(6):
        job.expect(Shape(120.0, 80.0))
    return job.close()


def lay_two_bits() -> Job:
    """Drills with a small bit, engraves with a pointed one, cuts with a large one."""
    table = "T1 D=3. flat end mill|T2 D=6. flat end mill|T3 V-BIT 60 DEG D=12."
    job = Job("three bits").open(3.0, remark=table)
    shape = Shape(170.0, 110.0, drills=((-60.0, 30.0), (60.0, -30.0)))
    for x, y in PLACES:
        for px, py in shape.drills:
            job.approach((x + px, y + py))
            job.pen.plunge(-12.3, 300.0)
    for tool, spin in ((3, 16000), (2, 18000)):
        job.pen.lift(SAFE)
        job.pen.say("M5")
        job.pen.say(f"T{tool} M6")
        job.pen.say(f"S{spin} M3")
        for n, (x, y) in enumerate(PLACES):
            if tool == 3 and n % 2:
                job.cut_open(join([(x - 30, y), (x, y + 20), (x + 30, y)]), -0.8, 1)
            if tool == 2:
                job.cut_outline(
                    move(make_box(176.0, 116.0), x, y), Manner(tabs=2), lambda way: way, shape
                )
                job.expect(shape, 6.0, 2, 3.0)
    return job.close()


def lay_halves() -> Job:
    """Cuts outlines in two halves, all left sides first."""
    job = Job("outlines in halves").open()
    loop: Loop = make_box(126.0, 86.0)
    for part in (loop[:2] + loop[2:3], loop[3:]):
        for x, y in PLACES:
            job.cut_open(move(part, x, y), -12.3, 2)
    for _ in PLACES:
        job.expect(Shape(120.0, 80.0))
    return job.close()


OTHERS: tuple[Callable[[], Job], ...] = (
    lay_turned,
    lay_in_holes,
    lay_dog_bones,
    lay_combs,
    lay_notches,
    lay_pockets,
    lay_engraved,
    lay_drilled,
    lay_helix_holes,
    lay_subprogram,
    lay_shared_lines,
    lay_two_bits,
    lay_halves,
)


def make_clean() -> list[Job]:
    """Makes all clean files."""
    laid = [_lay(name, *of) for name, of in LAID.items()]
    return laid + [make() for make in OTHERS]
