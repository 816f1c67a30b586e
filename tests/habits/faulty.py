"""Cut files with one fault each, put in on a known line."""

from collections.abc import Callable
from dataclasses import replace

from tests.habits.cutting import SAFE, Job, Manner
from tests.habits.loops import Step, make_box, make_ring, move, turn_round
from tests.habits.parts import Shape
from tests.habits.pen import Style

BOX = Shape(120.0, 80.0)
MANNER = Manner()
SPOT = {
    "lower": Style(lower=True, numbers=True),
    "inch": Style(inch=True),
    "board": Style(spoilboard=True),
}


def _begin(name: str, style: Style, **of: object) -> Job:
    """Begins a file with two good boxes."""
    job = Job(name, style, **of).open()  # type: ignore[arg-type]
    for x in (120.0, 320.0):
        job.cut_part(BOX, x, 120.0, MANNER)
    return job


def gouge(style: Style) -> Job:
    """Cuts a third box over the edge of the second."""
    job = _begin("gouge", style)
    loop = turn_round(move(make_box(126.0, 86.0), 438.0, 130.0))
    job.approach(loop[0].start)
    with job.fault("gouge"):
        for z in (-6.0, -12.3):
            job.pen.plunge(z)
            job.pen.cut_all(loop, z)
    return job.close()


def late_inside(style: Style) -> Job:
    """Cuts a hole in a part that is free."""
    job = _begin("late inside", style)
    way = make_ring(24.0, 320.0, 120.0)
    with job.fault("late-inside"):
        job.cut_loop(way, MANNER)
    return job.close()


def outside_first(style: Style) -> Job:
    """Cuts all outlines over tabs, then the holes."""
    job = _begin("outside first", style)
    job.cut_outline(
        move(make_box(126.0, 86.0), 540.0, 120.0), Manner(tabs=2), lambda way: way, BOX
    )
    with job.fault("outside-first"):
        job.cut_loop(make_ring(24.0, 540.0, 120.0), MANNER)
    return job.close()


def thin_tab(style: Style) -> Job:
    """Leaves tabs of half a millimetre."""
    job = _begin("thin tab", style)
    with job.fault("thin-tab"):
        job.cut_part(BOX, 540.0, 120.0, Manner(tabs=3, tab_wide=0.5))
    return job.close()


def low_tab(style: Style) -> Job:
    """Leaves tabs of 0.3 mm height."""
    job = _begin("low tab", style)
    with job.fault("thin-tab"):
        job.cut_part(BOX, 540.0, 120.0, Manner(tabs=3, tab_high=0.3))
    return job.close()


def tab_cut(style: Style) -> Job:
    """Goes round over tabs, then once more without them."""
    job = _begin("tab cut through", style)
    job.cut_outline(
        move(make_box(126.0, 86.0), 540.0, 120.0), Manner(tabs=3), lambda way: way, BOX
    )
    with job.fault("tab-cut-through"):
        job.cut_outline(
            move(make_box(126.0, 86.0), 540.0, 120.0), Manner(passes=1), lambda way: way, BOX
        )
    return job.close()


def too_deep(style: Style) -> Job:
    """Cuts 4 mm into the spoilboard."""
    job = _begin("too deep", style)
    job.approach((477.0, 77.0))
    job.pen.plunge(-6.0)
    job.pen.cut_all(move(make_box(126.0, 86.0), 540.0, 120.0), -6.0)
    with job.fault("too-deep"):
        job.pen.plunge(-16.0)
    job.pen.cut_all(move(make_box(126.0, 86.0), 540.0, 120.0), -16.0)
    return job.close()


def plunge_fast(style: Style) -> Job:
    """Goes down as fast as along."""
    job = _begin("plunge fast", style)
    job.approach((540.0, 77.0))
    with job.fault("plunge-fast"):
        job.pen.plunge(-6.0, 2400.0)
    job.pen.cut_all(move(make_box(126.0, 86.0), 540.0, 120.0), -6.0)
    job.pen.plunge(-12.3, 600.0)
    job.pen.cut_all(move(make_box(126.0, 86.0), 540.0, 120.0), -12.3)
    return job.close()


def pass_deep(style: Style) -> Job:
    """Cuts 18 mm in one pass of a bit of 6 mm."""
    job = Job("pass deep", style, thick=18.0).open()
    job.cut_part(BOX, 120.0, 120.0, Manner(passes=4))
    job.approach((320.0, 77.0))
    job.pen.plunge(-18.3)
    with job.fault("pass-deep"):
        job.pen.cut_all(move(make_box(126.0, 86.0), 320.0, 120.0), -18.3)
    return job.close()


def change_low(style: Style) -> Job:
    """Changes the bit in the sheet."""
    job = _begin("change low", style)
    job.approach((540.0, 77.0))
    job.pen.plunge(-6.0)
    job.pen.cut_all(move(make_box(126.0, 86.0), 540.0, 120.0), -6.0)
    with job.fault("change-low"):
        job.pen.say("T2 M6")
    job.pen.say("S18000 M3")
    job.cut_part(BOX, 540.0, 120.0, MANNER)
    return job.close()


def twice(style: Style) -> Job:
    """Cuts one contour twice."""
    job = _begin("twice", style)
    job.cut_part(BOX, 540.0, 120.0, MANNER)
    with job.fault("twice"):
        job.cut_outline(move(make_box(126.0, 86.0), 540.0, 120.0), MANNER, lambda way: way, BOX)
    return job.close()


def thickness(style: Style) -> Job:
    """Is written for a sheet of 9 mm, and meets one of 12."""
    job = Job("thickness", style, thick=9.0, given={"thickness_mm": 12.0}).open()
    # from the spoilboard it goes through, but its rapids lie in the thicker sheet
    with job.fault("rapid-in-sheet" if style.spoilboard else "thickness"):
        for x in (120.0, 320.0):
            job.cut_part(BOX, x, 120.0, MANNER)
    job.pieces.clear()
    return job.close()


def rapid_low(style: Style) -> Job:
    """Goes to the next part in rapid, in the sheet."""
    job = _begin("rapid low", style)
    job.pen.plunge(-5.0)
    with job.fault("rapid-in-sheet"):
        job.pen.jump((540.0, 77.0))
    job.pen.cut_all(move(make_box(126.0, 86.0), 540.0, 120.0), -5.0)
    job.pen.plunge(-12.3)
    job.pen.cut_all(move(make_box(126.0, 86.0), 540.0, 120.0), -12.3)
    return job.close()


def spindle_off(style: Style) -> Job:
    """Stops the spindle between two parts and does not start it again."""
    job = _begin("spindle off", style)
    job.pen.lift(SAFE)
    job.pen.say("M5")
    job.approach((540.0, 77.0))
    with job.fault("spindle-off"):
        job.pen.plunge(-6.0)
    job.pen.cut_all(move(make_box(126.0, 86.0), 540.0, 120.0), -6.0)
    job.pen.plunge(-12.3)
    job.pen.cut_all(move(make_box(126.0, 86.0), 540.0, 120.0), -12.3)
    return job.close()


def block_deleted(style: Style) -> Job:
    """Has a part whose lines are deleted by a slash."""
    job = _begin("block deleted", style)
    first = len(job.pen.lines)
    with job.fault("block-deleted"):
        job.cut_part(BOX, 540.0, 120.0, MANNER)
    job.pieces.pop()
    job.pen.lines[first:] = ["/" + line for line in job.pen.lines[first:]]
    return job.close()


def no_feed(style: Style) -> Job:
    """Gives no feed before the first cut."""
    job = Job("no feed", style).open()
    job.approach((120.0, 77.0))
    with job.fault("no-feed"):
        job.pen.plunge(-12.3, 0.0)
    for step in move(make_box(126.0, 86.0), 120.0, 120.0):
        job.pen.cut(step, -12.3, 0.0)
    return job.close()


def gouge_in_halves(style: Style) -> Job:
    """Cuts neighbours in halves, one over the other's edge."""
    job = _begin("gouge in halves", style)
    with job.fault("gouge"):
        for part in (slice(0, 3), slice(3, None)):
            for x in (540.0, 658.0):
                job.cut_open(move(make_box(126.0, 86.0)[part], x, 120.0), -12.3, 2)
    return job.close()


def cut_across(style: Style) -> Job:
    """Cuts a diagonal through the two boxes, which are held by tabs."""
    job = Job("cut across", style).open()
    for x in (120.0, 320.0):
        job.cut_part(BOX, x, 120.0, Manner(tabs=2))
    with job.fault("gouge"):
        job.cut_open((Step((40.0, 100.0), (400.0, 140.0)),), -12.3, 2)
    return job.close()


FAULTS: tuple[Callable[[Style], Job], ...] = (
    gouge,
    late_inside,
    outside_first,
    thin_tab,
    low_tab,
    tab_cut,
    too_deep,
    plunge_fast,
    pass_deep,
    change_low,
    twice,
    thickness,
    rapid_low,
    spindle_off,
    block_deleted,
    no_feed,
    gouge_in_halves,
    cut_across,
)
STYLES = (Style(), SPOT["inch"], SPOT["board"], replace(SPOT["lower"], centre=True))


def make_faulty() -> list[Job]:
    """Makes all faulty files, each in four styles."""
    return [make(style) for make in FAULTS for style in STYLES]
