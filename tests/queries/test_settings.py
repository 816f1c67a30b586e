"""Questions about the shop itself."""

from station.queries import settings
from station.shop.facts import Reason, Shop, Worker
from tests.fakes import FakeView


def test_a_shop_that_is_not_set_up_has_the_defaults():
    assert settings.find_shop(FakeView.of()) == Shop(id="shop")
    inches = Shop(id="shop", units="inch")
    assert settings.find_shop(FakeView.of(inches)) == inches


def test_reasons_come_by_number_and_of_one_use():
    facts = [
        Reason(id=f"{n:02d}", words="", use="stop" if n % 2 else "sheet") for n in range(1, 9)
    ]
    found = settings.list_reasons(FakeView.of(*reversed(facts)), "stop")
    assert [r.id for r in found] == ["01", "03", "05", "07"]


def test_a_reason_of_another_use_is_none():
    view, stop = FakeView.of(Reason(id="32", words="", use="stop")), settings.find_reason
    assert stop(view, "32", "stop") == Reason(id="32", words="", use="stop")
    assert stop(view, "32", "sheet") is None
    assert stop(view, "33", "stop") is None


def test_only_people_who_work_here_count():
    view = FakeView.of(
        Worker(id="03", supervisor=True, pin="hash", active=False),
        Worker(id="02"),
        Worker(id="01", supervisor=True),
    )
    assert [w.id for w in settings.list_workers(view)] == ["01", "02"]
    assert [w.id for w in settings.list_supervisors(view)] == ["01"]
    assert not settings.has_pin(view)
    view.facts["worker/02"] = Worker(id="02", pin="hash")
    assert settings.has_pin(view)


def test_who_was_switched_off_works_here_no_more():
    view = FakeView.of(
        Worker(id="01", supervisor=True, active=False), Worker(id="02", supervisor=True)
    )
    assert settings.find_worker(view, "01") is None
    assert settings.find_supervisor(view, "01") is None
    assert settings.find_supervisor(view, "02")
    assert settings.find_worker(view, "77") is None
