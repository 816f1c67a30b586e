"""What must hold of every plan."""

import subprocess
import sys
from collections import defaultdict
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from station.jobs.process import DoneJob, ProcessJob
from station.planning.chances import find_chance_enough
from station.planning.learnt import learn_parts
from station.planning.lots import LONG_MIN
from station.planning.messages import CuttingPlan, MaterialNow, Passage
from station.planning.think import run
from tests.planning.small import IN_FIVE_DAYS, TODAY, TOMORROW, file, part, queued, shop

WANTS = st.lists(
    st.tuples(st.integers(1, 40), st.sampled_from((TODAY, TOMORROW, IN_FIVE_DAYS))), max_size=3
)
LOSS = st.sampled_from(({}, {"cut": Passage(good=940, lost=60)}, {"popping": Passage(good=90)}))
USE = st.sampled_from(((), (9,) * 20, (0, 0, 30, 0) * 6))


@st.composite
def shops(draw):
    ids = ("a", "b", "c")
    parts = [
        part(name, sorted(draw(WANTS), key=lambda w: w[1]), draw(st.integers(0, 60)),
             mark=draw(st.sampled_from((0, 20))), passed=draw(LOSS), use=draw(USE))
        for name in ids
    ]  # fmt: skip
    makes = st.dictionaries(st.sampled_from(ids), st.integers(1, 30), min_size=1, max_size=3)
    files = [file(f"F{n}", draw(makes)) for n in range(draw(st.integers(1, 3)))]
    queue = [queued(f"q{f.name}", f.name, f.makes, draw(st.integers(1, 2))) for f in files]
    store = (MaterialNow(id="ply", name="plywood", sheets=1000),)
    waiting = queue if draw(st.booleans()) else ()
    return shop(*parts, files=files, queue=waiting, materials=store)


def think(asked) -> CuttingPlan:
    return run(asked, lambda _stage, _share: None)


def count_planned(asked, plan, *, for_orders=False):
    """Pieces planned of each part."""
    makes = {f.id: f.makes for f in asked.files}
    releases = {b.release for b in plan.blocked if b.release} | set(plan.then)
    made = {}
    for release in releases:
        if release.due or not for_orders:
            for name, each in makes[release.file].items():
                made[name] = made.get(name, 0) + each * release.sheets
    return made


@settings(max_examples=60, deadline=None)
@given(shops())
@pytest.mark.slow
def test_what_is_planned_is_enough_for_every_order(asked):
    plan = think(asked)
    made = count_planned(asked, plan, for_orders=True)
    makeable = {name for f in asked.files for name in f.makes}
    for known in learn_parts(asked).values():
        name = known.now.id
        if name not in makeable:
            assert not known.lacking or name in plan.uncovered
            continue
        whole = made.get(name, 0) + int(known.coming)
        assert whole >= known.lacking
        if known.chance and known.lacking:
            assert find_chance_enough(whole, known.lacking, known.chance) >= 0.95 - 1e-9


@settings(max_examples=40, deadline=None)
@given(shops())
@pytest.mark.slow
def test_each_release_has_a_router_and_its_time_and_every_sum_agrees(asked):
    plan = think(asked)
    releases = {b.release for b in plan.blocked if b.release} | set(plan.then)
    lots = defaultdict(list)
    for release in releases:
        lots[release.file, release.due].append(release.minutes + release.people_minutes)
    assert all(len(m) == 1 or sum(m) > LONG_MIN for (_, due), m in lots.items() if due)
    for release in releases:
        assert release.router
        assert plan.at <= release.starts < release.ends
    assert plan.people_minutes == pytest.approx(5 * sum(r.sheets for r in releases))
    assert plan.beyond == sum(r.beyond for r in releases)
    assert plan.lower_bound <= plan.objective + 1e-6
    assert plan.late <= plan.orders


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 80), st.integers(0, 60), st.integers(1, 20), st.integers(1, 25))
def test_more_on_the_rack_never_asks_for_more_sheets(wanted, there, more, each):
    def count(free):
        asked = shop(part("a", [(wanted, TODAY)], free, mark=15), files=(file("A", {"a": each}),))
        return count_planned(asked, think(asked)).get("a", 0)

    assert count(there + more) <= count(there)


@pytest.mark.slow
@settings(max_examples=30, deadline=None)
@given(shops())
def test_what_is_taken_back_leaves_enough_for_its_mark(asked):
    parts = learn_parts(asked)
    back = {b.batch for b in think(asked).take_back}
    gone = {}
    for batch in asked.queued:
        for name, each in batch.makes.items() if batch.id in back else ():
            gone[name] = gone.get(name, 0) + each * batch.sheets
    for name, pieces in gone.items():
        known = parts[name]
        assert known.left - pieces * known.mean >= known.level
        assert known.now.free + known.now.under_way - pieces >= known.now.wanted


def test_an_empty_shop_has_nothing_to_do():
    plan = think(shop(files=()))
    assert (plan.blocked, plan.then, plan.take_back, plan.uncovered) == ((), (), (), ())
    assert plan.done_by == plan.at


@pytest.mark.slow
def test_beside_the_screen_it_thinks_the_same():
    asked = shop(part("a", [(46, TODAY)], passed={"cut": Passage(good=940, lost=60)}),
                 part("b", [(3, TOMORROW)]), files=(file("A", {"a": 24, "b": 2}),))  # fmt: skip
    job = ProcessJob(asked)
    job._listener.join(60)
    assert job.is_over()
    assert job.outcome() == DoneJob(asked).outcome() == think(asked)


def test_the_time_it_may_take_is_no_part_of_the_answer():
    asked = shop(part("a", [(46, TODAY)]), files=(file("A", {"a": 24}),))
    assert think(replace(asked, seconds=9.0)) == think(asked)


@pytest.mark.slow
def test_a_stations_start_loads_nothing_of_the_thinking():
    code = (
        "import sys; from station.bootstrap import load_rooms; load_rooms();"
        "print(sorted({'highspy', 'numpy', 'station.planning.think'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True,
                          cwd=Path(__file__).resolve().parents[2])  # fmt: skip
    assert done.stdout.strip() == "[]"
