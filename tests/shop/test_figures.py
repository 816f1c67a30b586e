"""Every figure that decides something has its source, or the mark and a setting that decides.

The figures themselves are common practice, no source, each of them: what a shop begins with.
"""

import re
from dataclasses import replace
from pathlib import Path

import pytest

import station
from station.cutting.analyse.hold_downs import find_hold_downs
from station.cutting.analyse.popping import find_flying_pieces
from station.cutting.model import Setting
from station.floor.loading.screen import screen as loading_screen
from station.floor.office.lists import LISTS
from station.queries.mailers import closes_over, plan_parcel
from station.queries.routers import list_worn_bits
from station.queries.weights import weigh_parts
from station.shop.faces import Remark
from station.shop.facts import Bed, Bit, Mailer, Part, Router, Shape, Shop
from station.shop.fields import fields_by_name
from station.shop.moves import WEAR, Move, Spot
from tests.cutting.reading import box, found
from tests.fakes import FakeView
from tests.floor.shop_small import DAY, batch, hand, small_shop

STATION = Path(station.__file__).parent
MARK = "no source"
SHAPE = Shape(outline=((0.0, 0.0), (100.0, 0.0), (100.0, 50.0), (0.0, 50.0)))
PLATE = Part(id="1", name="P", words="P", thickness_mm=6.0, shape=SHAPE)
WEIGHED = replace(PLATE, mass_g=200.0)
BIT = Bit(id="11", words="", diameter_mm=6, life_m=100, router="1")
CUT = Move(WEAR, 85_000, Spot("wear", "1"), Spot("bit/11", "1"))  # 85 of its 100 m
LOADING = (Bed(id="1", day=DAY, bits=((0, "11"),), batch="00412"), batch())


def tell(kind, body, bit=6.0):
    """Whether reading a text for a shop tells of this."""

    def decide(shop):
        setting = Setting(thickness_mm=6.0, bit_mm={1: bit}, shop=shop)
        return kind in {p.kind for p in found(body, setting).problems}

    return decide  # fmt: skip


def lift(shop):
    care = [b for b in loading_screen(hand("loading", router="1"), small_shop(*LOADING, shop)).side
            if isinstance(b, Remark)]  # fmt: skip
    return "13.2 kg: two people" in str(care[-1].text)


def plus(part):
    return lambda shop: weigh_parts(small_shop(shop), [(part, 3)], None).plus


def fly(shop):
    setting = Setting(thickness_mm=6.0, bit_mm={1: 6.0}, shop=shop)
    return find_flying_pieces(found(box(20, 20, 36, 36), setting))


def reach(shop):
    return find_hold_downs(found(box(500, 300, 800, 500, tab=12)), 4, shop.clamp_reach_mm)


def close(shop):
    mailer = Mailer(id="9", name="9", length_mm=220, width_mm=60, thick_mm=20)
    return closes_over(FakeView.of(shop), mailer, 200.0, 40.0, 5.0)


def gap(shop):
    return plan_parcel(small_shop(shop), [(replace(PLATE, small=False), 9)]).stack.lies.size_mm


PLUNGE = "G0 X200 Y20\nG1 Z-3 F1500\nX250 F3000\nG0 Z5\n"
SMALL = box(20, 20, 36, 36)
# by setting: what the shop begins with, another value, and what it decides
FIGURES = {
    "two_people_kg": (12.0, 14.0, lift),
    "small_piece_mm2": (600.0, 1000.0, tell("small-piece", SMALL)),
    "tab_width_mm": (1.0, 20.0, tell("thin-tab", box(20, 20, 106, 86, tab=12))),
    "tab_height_mm": (0.5, 4.0, tell("thin-tab", box(20, 20, 106, 86, tab=12))),
    "clamp_reach_mm": (20.0, 300.0, reach),
    "plunge_mm_min": (2000.0, 1000.0, tell("plunge-fast", PLUNGE)),
    "deepest_pass": (3.0, 0.5, tell("pass-deep", box(20, 20, 106, 86, tab=12))),
    "chip_low_mm": (0.02, 0.1, tell("chip-load", box(20, 20, 106, 86, tab=12))),
    "chip_high_mm": (0.8, 0.05, tell("chip-load", box(20, 20, 106, 86, tab=12))),
    "bit_told_at": (80.0, 90.0, lambda s: len(list_worn_bits(
        FakeView.of(Router(id="1", name="1"), BIT, s, moves=(CUT,))))),
    "weighed_off": (4.0, 10.0, plus(WEIGHED)),
    "worked_out_off": (15.0, 20.0, plus(replace(PLATE, thickness_mm=6.5))),
    "lot_off": (4.0, 8.0, plus(WEIGHED)),
    "piece_off": (0.5, 5.0, plus(WEIGHED)),
    "false_alarms": (1.0, 5.0, plus(WEIGHED)),
    "scale_off_g": (5.0, 100.0, plus(WEIGHED)),
    "mailer_spare_mm": (10.0, 25.0, close),
    "part_gap_mm": (1.0, 9.0, gap),
}  # fmt: skip
# how far a count may be off before a supervisor is asked: tests/floor/test_recounts.py; how much
# the plan and packing keep ready: tests/planning, tests/floor
ELSEWHERE = {
    "recount_limit", "service_percent", "short_notice_percent", "wrap_mark_m", "label_mark",
}  # fmt: skip


def test_a_small_piece_is_told_where_it_is_popped_too():
    assert fly(Shop(id="shop", small_piece_mm2=1000.0)) != fly(Shop(id="shop"))


@pytest.mark.parametrize("name", FIGURES)
def test_a_figure_is_a_setting_and_the_setting_decides(name):
    begins, other, decide = FIGURES[name]
    shop = Shop(id="shop")
    assert getattr(shop, name) == begins
    assert decide(shop) != decide(replace(shop, **{name: other}))


def test_the_office_sets_each():
    assert Shop in {each.kind for each in LISTS}
    typed = {n for n, f in fields_by_name(Shop).items() if f.about.typed and f.of in (int, float)}
    assert typed == {*FIGURES, *ELSEWHERE}


def test_each_setting_bears_its_mark():
    text = (STATION / "shop" / "facts" / "settings.py").read_text(encoding="utf-8")
    for name in {*FIGURES, *ELSEWHERE}:
        assert MARK in text[: text.index(f"    {name}:")], name
    machines = (STATION / "shop" / "facts" / "machines.py").read_text(encoding="utf-8")
    for name in ("life_m", "flat_after"):  # of each bit, of each router
        above = machines[: machines.index(f"    {name}:")].splitlines()[-1]
        assert MARK in above, name


# Marked figures that are no setting of the shop, and why.
OTHERS = {
    "jobs/read_cut_file.py": "places proposed; the office sets each hold-down",
    "floor/shared/recounts.py": "asks whether a count is so",
    "floor/loading/needs.py": "asks for a reading again; what a reason asks for is its own",
    "floor/loading/rules_new_bit.py": "refuses a slip of the finger; the office sets the bit",
    "floor/loading/rules_off.py": "asks whether a sheet is done already",
    "queries/readings.py": "asks for a reading again",
    "queries/mailers.py": "metres of wrap, told",
    "desk/wrong_pins.py": "waiting after wrong PINs: no shop makes it weaker",
    "planning/routers.py": "minutes of a plan",
    "planning/order.py": "days of a plan",
    "planning/messages.py": "the certainty of a plan, said beside each release",
    "packs/messages.py": "how a mailer is chosen, no figure",
    "packs/choose.py": "how a mailer is chosen, no figure",
    "packs/weighing.py": "a gram of any scale; what decides are settings",
    "window/scale.py": "the speed of a serial port; the command sets it",
    "cutting/analyse/time.py": "time; a router's own is learnt",
    "cutting/analyse/inference.py": "taken where nothing tells, and said; each is set for a file",
    "cutting/analyse/path_problems.py": "asks whether a wait is meant",
    "cutting/analyse/thickness.py": "what is no plunge",
    "cutting/geometry/compensation.py": "how controls move a path aside, no figure",
    "cutting/geometry/lost_tabs.py": "what is no tab",
    "cutting/read/calls.py": "how subprograms are called, no figure",
    "cutting/read/dialects.py": "how far a peck draws back; the dialect of a file tells",
    "floor/office/matching.py": "how columns are called",
    "shop/facts/machines.py": "settings of a bit, a router",
    "shop/facts/settings.py": "the settings",
    "shop/first_facts.py": "lists that the office changes",
    "shop/cautions.py": "no figures",
    "papers/page.py": "sizes of letters",
    "papers/rack.py": "sizes of letters",
}


def test_what_is_marked_elsewhere_is_known():
    marked = {
        file.relative_to(STATION).as_posix()
        for file in STATION.rglob("*.py")
        if re.search(r"no\s+(#\s+)?source", file.read_text(encoding="utf-8"))
    }
    assert marked == set(OTHERS)
