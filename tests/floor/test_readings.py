"""What rooms measure and see is found over time, and each loss under its router."""

from dataclasses import replace

from station.floor.loading.rules import RULES as LOADING
from station.floor.popping.rules import RULES as POPPING
from station.floor.trimming.rules import RULES as TRIMMING
from station.queries.readings import find_source, list_size
from station.queries.spoiled import count_spoiled
from station.shop.acts import Act, Answer
from station.shop.facts import Fact, Part, Revision
from station.shop.readings import FIRST_OFF, MASTER, MINUTES, NO, THICKNESS, YES
from station.shop.views import Rules
from tests.fakes import FakeView
from tests.floor.beds import BED, CUTTING, FIRST, WHOLE
from tests.floor.shop_small import (
    COMB,
    COMBS,
    DAY,
    GAUGE,
    GAUGES,
    at,
    batch,
    off_bed,
    small_shop,
)

GOOD = batch(GAUGES)


def do(
    view: FakeView, rules: Rules, kind: str, subject: str = "batch/00412", **args: object
) -> Answer:
    made = Act(id=f"a{len(view.entries)}", kind=kind, at=at("10:00"), worker="02", station="s1",
               subject=subject, args=args)  # fmt: skip
    answer = view.do(rules, made)
    assert not answer.refused, str(answer.said)
    return answer


def start(view: FakeView, reading: float) -> None:
    do(view, LOADING, "start_sheet", router="1", lot="0931", reading=reading, ticks=WHOLE)


def take_off(view: FakeView) -> None:
    do(view, LOADING, "off_bed", router="1", sure=True)


def test_the_thickness_of_a_sheet_is_found_under_its_lot_and_router() -> None:
    view = small_shop(GOOD, BED)
    start(view, 6.4)
    (noted,) = view.series("lot/0931", THICKNESS)
    read = noted.reading
    assert (read.value, read.unit, read.low, read.high) == (6.4, "mm", 6.0, 6.9)
    assert (read.batch, read.sheet, read.router, read.lot) == ("00412", 1, "1", "0931")
    assert view.series("router/1", THICKNESS) == (noted,)
    assert (noted.at, noted.act) == (at("10:00"), "a0")


def test_a_sheets_minutes_are_found_under_router_and_bit() -> None:
    view = small_shop(GOOD, CUTTING)
    take_off(view)
    (noted,) = view.series("router/1", MINUTES)
    read = noted.reading
    assert (read.value, read.unit) == (60.0, "min")
    assert (read.batch, read.sheet, read.bit, read.revision) == ("00412", 1, "11", f"{GAUGES}.C")
    assert view.series("bit/11", MINUTES) == (noted,)


def test_each_run_of_a_sheet_has_its_own_minutes() -> None:
    first = small_shop().get(Revision, f"{GAUGES}.C")
    assert first
    second = replace(first, id=f"{COMBS}.C", cut_file=COMBS)
    both: tuple[Fact, ...] = (replace(first, runs=(first.id, second.id)), second)
    view = small_shop(GOOD, CUTTING, *both)
    take_off(view)
    view.facts["bed/1"] = replace(CUTTING, run=2)
    take_off(view)
    assert [n.reading.revision for n in view.series("router/1", MINUTES)] == [first.id, second.id]
    assert view.series("router/1", THICKNESS) == ()


def test_a_further_run_is_not_measured_again() -> None:
    first = small_shop().get(Revision, f"{GAUGES}.C")
    assert first
    second = replace(first, id=f"{COMBS}.C", cut_file=COMBS)
    view = small_shop(GOOD, CUTTING, replace(first, runs=(first.id, second.id)), second)
    take_off(view)
    do(view, LOADING, "start_sheet", router="1", ticks=WHOLE)
    assert view.series("router/1", THICKNESS) == ()


def test_a_first_off_that_agrees_or_not() -> None:
    view = small_shop(GOOD, replace(BED, firsts=(FIRST,)))
    for mm in (100.5, 100.1, 100.2):
        do(view, LOADING, "measure_first_off", "router/1", part=GAUGE, size="A along",
           reading_mm=mm)  # fmt: skip
    noted = view.series("router/1", FIRST_OFF)
    assert [n.reading.value for n in noted] == [NO, YES]
    read = list_size(view, GAUGE, "A along", router="1", bit="11")
    assert [n.reading.value for n in read] == [100.5, 100.1, 100.2]
    assert {(n.reading.batch, n.reading.sheet) for n in (*noted, *read)} == {("00412", 1)}


def test_a_person_says_that_a_first_off_is_wrong() -> None:
    view = small_shop(GOOD, replace(BED, firsts=(FIRST,)))
    do(view, LOADING, "check_first_off", "router/1", good=False)
    assert [n.reading.value for n in view.series("router/1", FIRST_OFF)] == [NO]


def compared(view: FakeView, **args: object) -> None:
    do(view, TRIMMING, "check_master", f"part/{GAUGE}", batch="00412", **args)


def test_a_piece_and_its_master() -> None:
    view = off_bed(small_shop(GOOD), GOOD, 3)
    compared(view, agrees=True)
    compared(view, agrees=False)
    part = view.get(Part, GAUGE)
    assert part
    low = part.sizes[0].low_mm
    compared(view, reading_mm=low)
    compared(view, reading_mm=low - 0.1)
    seen = view.series(f"part/{GAUGE}", MASTER)
    assert [n.reading.value for n in seen] == [YES, NO, YES, NO]
    sizes = list_size(view, GAUGE, "A along")
    assert [n.reading.value for n in sizes] == [low, low - 0.1]
    read = sizes[0].reading
    assert (read.unit, read.low, read.high) == ("mm", low, low + 0.6)
    assert (read.batch, read.sheet, read.router, read.bit) == ("00412", 3, "1", "11")
    assert list_size(view, GAUGE, "A along", bit="11") == sizes
    assert [n.reading.value for n in view.series("bit/11", MASTER)] == [YES, NO, YES, NO]


def test_of_a_batch_that_is_not_known_only_the_part_is() -> None:
    view = small_shop()
    compared(view, agrees=True)
    (noted,) = view.series(f"part/{GAUGE}", MASTER)
    assert (noted.reading.batch, noted.reading.router) == ("00412", "")


def test_what_was_spoiled_stands_under_the_router_that_cut_it() -> None:
    two = replace(batch(COMBS, "00500"), router="2")
    view = off_bed(small_shop(GOOD, two, CUTTING), two, 1)
    do(view, LOADING, "spoil_sheet", router="1", reason="11", survived={})
    args = {"slips": ("00500-1",), "parts": {COMB: {"good": 20, "spoiled/01": 4}}}
    do(view, POPPING, "pass_on", "batch/00500", **args)
    do(view, TRIMMING, "put_on_rack", "batch/00500", parts={COMB: {"good": 17, "spoiled/03": 3}})
    day = (f"{DAY}T00", f"{DAY}T24")
    lost = view.get(Revision, f"{GAUGES}.C").makes()[GAUGE]
    assert count_spoiled(view, *day, router="1") == {"11": lost}
    assert count_spoiled(view, *day, router="2") == {"01": 4, "03": 3}
    assert count_spoiled(view, *day, area="trimming") == {"03": 3}


def test_pieces_of_two_routers_counted_together_are_of_none() -> None:
    view = small_shop(GOOD)
    off_bed(view, GOOD, 1)
    off_bed(view, GOOD, 2, router="3")
    slips = ("00412-1", "00412-2")
    do(view, POPPING, "pass_on", slips=slips, parts={GAUGE: {"good": 1, "spoiled/01": 1}})
    day = (f"{DAY}T00", f"{DAY}T24")
    assert count_spoiled(view, *day) == {"01": 1}
    assert count_spoiled(view, *day, router="1") == {}


def test_where_a_batch_came_from() -> None:
    view = off_bed(small_shop(GOOD), GOOD, 1)
    child = replace(GOOD, id="00600", parent="00412", role="rework", sheets=0)
    view.facts[child.key] = child
    one = find_source(view, "00412")
    assert one == ("00412", 1, "1", "11", "0931", f"{GAUGES}.C")
    assert find_source(view, "00600") == one._replace(batch="00600")
    off_bed(view, GOOD, 2, router="3")
    assert find_source(view, "00412") == ("00412", 0, "", "", "0931", f"{GAUGES}.C")
    assert find_source(view, "00999") == ("00999", 0, "", "", "", "")


def test_a_batch_that_came_from_itself_ends() -> None:
    odd = replace(GOOD, parent="00600"), replace(GOOD, id="00600", parent="00412")
    assert find_source(small_shop(*odd), "00412").batch == "00412"


def test_a_router_sums_what_it_loads_and_cuts() -> None:
    view = small_shop(GOOD, BED)
    start(view, 6.4)
    take_off(view)
    assert {p.router for p in view.passed(f"{DAY}T00", f"{DAY}T24")} == {"1"}
