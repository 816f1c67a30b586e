"""The demo shop's days and people are loaded as a shop's of eight are.

No source but what a visitor would believe: a day like another, work that is shared, few recounts.
"""

from datetime import datetime, timedelta

import pytest

from demo_db.build import BREAKS, HOURS, breaks, hours
from station.bootstrap import load_rules
from station.ledger.ledger import Ledger
from station.shop.facts import Shop, Worker
from tests.demo_db.conftest import NOW
from tests.demo_db.loads import MEASURES, find_ratio, find_recounted, list_waiting, read_loads

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def shop(demo_file):
    ledger = Ledger(demo_file, load_rules())
    yield ledger
    ledger.close()


@pytest.fixture(scope="module")
def days(shop):
    """Every day with its load, today too."""
    return read_loads(shop)


@pytest.mark.parametrize("measure", MEASURES)
def test_no_day_is_twice_another(days, measure):
    assert find_ratio(days[:-1], measure) < 2


def test_half_of_today_is_no_more_than_a_whole_day(days):
    for measure in MEASURES:
        assert days[-1].done[measure] <= max(day.done[measure] for day in days[:-1])


def test_packing_keeps_pace_with_cutting(days):
    usual = sum(day.done["cut"] for day in days) / len(days)
    assert max(list_waiting(days[:-2])) < 1.5 * usual  # the last two days fill the rack for a fair
    for week in range(0, 30, 5):
        cut, packed = (
            sum(day.done[m] for day in days[week : week + 5]) for m in ("cut", "packed")
        )
        assert 0.8 < packed / cut < 1.2


def test_few_pieces_are_recounted(days):
    assert 0 < find_recounted(days) < 0.01
    assert all(day.done["recounted"] < 0.02 * day.done["cut"] for day in days)


def test_eight_people_work_every_day(shop, days):
    people = {worker.id for worker in shop.facts(Worker)}
    assert len(people) == 8
    assert all(set(day.times) == people for day in days)


def test_nobody_works_in_a_break_or_long_after_the_day(shop, days):
    opens, closes = hours(NOW)
    set_up = shop.view.get(Shop, "shop")
    assert [b[0] for b in set_up.breaks] == ["08:30", "12:00"]
    assert HOURS - sum(long for _, long in BREAKS) == 8.25
    for day in days:
        date = datetime.fromisoformat(day.date)
        rests = breaks(datetime.combine(date, opens))
        latest = datetime.combine(date, closes) + timedelta(minutes=30)
        acted = [at for times in day.times.values() for at in times]
        assert max(acted) <= latest
        assert not [at for at in acted if any(begins < at < ends for begins, ends in rests)]


@pytest.mark.parametrize(("one", "other"), [("02", "03"), ("05", "07"), ("06", "08")])
def test_two_who_do_the_same_share_it(days, one, other):
    whole = [sum(day.people()[who].pieces for day in days) for who in (one, other)]
    assert max(whole) < 1.3 * min(whole)


def test_a_day_of_a_worker_is_no_longer_than_the_shops(days):
    for day in days:
        assert all(acted.hours <= HOURS + 0.5 for acted in day.people().values())
