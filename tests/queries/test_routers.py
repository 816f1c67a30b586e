"""Questions about routers."""

from dataclasses import replace

import pytest

from station.floor.loading.screen import screen
from station.floor.loading.work import LoadingWork
from station.floor.today import figures
from station.queries import routers
from station.queries.routers import say_why
from station.shop.faces import Cards
from station.shop.facts import Batch, Bed, Bit, BitUse, Revision, Router
from station.shop.moves import BOARD, WEAR, Move, Spot, move
from station.shop.rooms import Hand
from station.shop.words import Say
from tests.fakes import FakeView
from tests.floor.shop_small import small_shop

ONE = Router(id="1", name="Router 1")
LATE = "2026-11-25T23:50:00"
BED = Bed(id="1", state="cutting", batch="00412", sheet=2, started=LATE, minutes=40)


def test_a_router_that_nobody_entered_has_a_name_and_a_free_bed():
    view = FakeView.of(ONE)
    assert [routers.name_router(view, r) for r in ("1", "7")] == ["Router 1", "Router 7"]
    bed = routers.find_bed(view, "7")
    assert (bed.state, bed.zero) == ("free", "a new router"), "nobody has set its zero"


def test_only_routers_in_use_are_offered_but_every_bed_is_told():
    view = FakeView.of(ONE, Router(id="2", name="Router 2", active=False), BED)
    assert [r.id for r in routers.list_routers(view)] == ["1"]
    assert [(r.id, b.state) for r, b in routers.list_beds(view)] == [
        ("1", "cutting"),
        ("2", "free"),
    ]


@pytest.mark.parametrize(
    ("bed", "now", "minutes"),
    [
        (BED, "2026-11-25T23:50:00", 40),
        (BED, "2026-11-26T00:10:00", 20),  # past midnight it is still the same sheet
        (BED, "2026-11-26T00:40:00", -10),
        (replace(BED, paused_s=300), "2026-11-26T00:10:00", 25),
        (replace(BED, state="stopped", stopped="2026-11-26T00:00:00"), "2026-11-26T09:00:00", 30),
        (replace(BED, state="free", sheet=0), "2026-11-26T00:10:00", 0),
    ],
)
def test_minutes_left_count_what_was_really_cut(bed, now, minutes):
    assert routers.count_minutes_left(bed, now) == pytest.approx(minutes)


def test_shop_today_and_loading_tell_the_same_minutes_past_midnight():
    view, now = small_shop(), "2026-11-26T00:10:00"
    view.facts["bed/1"] = BED
    today = {d.router.id: d.free_in for d in figures.list_routers_today(view, now)}
    served = Hand(area="loading", router="1,2", facing="2", now=now, work=LoadingWork())
    cards = [b for b in screen(served, view).side if isinstance(b, Cards)]
    loading = {e.big: str(e.right) for block in cards for e in block.entries}
    assert (today["1"], loading["Router 1"]) == (20, "20 min left")


def test_what_runs_on_a_bed_is_the_run_that_its_sheet_is_at():
    first = Revision(id="008.C", cut_file="008", letter="C", material="1", minutes=20,
                     runs=("008.C", "009.A"))  # fmt: skip
    second = Revision(id="009.A", cut_file="009", letter="A", material="1", minutes=5)
    batch = Batch(id="00412", cut_file="008", revision="C")
    view = FakeView.of(first, second, batch)
    assert routers.find_running(view, BED) == first
    assert routers.find_running(view, replace(BED, run=2)) == second
    assert routers.find_running(view, replace(BED, run=3)) is None
    assert routers.find_running(view, replace(BED, batch="00413")) is None


@pytest.mark.parametrize(("changer", "bit"), [(False, "11"), (True, "12")])
def test_a_bit_is_found_in_the_spindle_or_its_pocket(changer, bit):
    view = FakeView.of(
        replace(ONE, changer=changer),
        *(Bit(id=b, words="", diameter_mm=6) for b in ("11", "12")),
    )
    bed = replace(BED, bits=((0, "11"), (3, "12")))
    found = routers.find_bit_in(view, bed, BitUse(number=3, diameter_mm=6, cut_mm=1))
    assert found
    assert found.id == bit


def test_a_bit_s_metres_are_counted_on_every_router():
    bit = Bit(id="11", words="", diameter_mm=6, life_m=100, router="1")
    worn = tuple(
        Move(WEAR, metres * 1000, Spot("wear", r), Spot("bit/11", r))
        for r, metres in (("1", 50), ("2", 30))
    )
    view = FakeView.of(ONE, bit, moves=worn)
    assert routers.count_metres_cut(view, bit) == 80
    assert routers.count_metres_left(view, bit) == 20
    assert routers.list_worn_bits(view) == ((bit, 0.8),)
    assert routers.list_worn_bits(FakeView.of(ONE, bit)) == ()


def test_passes_are_counted_by_spoilboard():
    view = FakeView.of(moves=(move(BOARD, 7, "wear", "spoilboard/1", ""),))
    assert [routers.count_passes(view, r) for r in ("1", "2")] == [7, 0]


@pytest.mark.parametrize(("kept", "said"), [
    ("a new router", "this router was never set"),
    ("new bit 11", "new bit 11"),
    ("bit F-03 broke", "bit F-03 broke"),
    ("first sheet of COMBS C", "first sheet of COMBS C"),
    ("zero set anew", "zero was set anew"),
])  # fmt: skip
def test_why_a_zero_is_due_is_a_sentence_that_can_be_translated(kept, said):
    found = say_why(kept)
    assert isinstance(found, Say)
    assert str(found) == said
    assert not any(word in found.template for word in ("11", "F-03", "COMBS"))


def test_what_an_older_program_kept_of_it_is_shown_as_it_is():
    assert say_why("stop at 10:40, vacuum") == "stop at 10:40, vacuum"
