"""Questions about readings."""

from station.queries.readings import list_size
from station.shop.acts import Act, good
from station.shop.readings import Reading, name_size
from station.shop.words import say
from tests.fakes import FakeView


def measured(size, value, router, bit):
    return Reading(
        subject="part/014",
        kind=name_size(size),
        value=value,
        unit="mm",
        batch="00412",
        sheet=3,
        router=router,
        bit=bit,
    )


def test_one_size_of_a_part_is_listed_with_what_it_came_from():
    view = FakeView()
    days = [("A", 30.1, "1", "07"), ("A", 30.2, "2", "08"), ("B", 9.0, "2", "08")]
    for n, day in enumerate(days, start=1):
        act = Act(id=f"a{n}", kind="check_master", at=f"2026-11-2{n}T10:00:00")
        view.apply(act, good(say("x"), readings=(measured(*day),)))
    first, second = list_size(view, "014", "A")
    read = first.reading
    assert (first.at, first.act) == ("2026-11-21T10:00:00", "a1")
    assert (read.value, read.batch, read.sheet, read.router) == (30.1, "00412", 3, "1")
    assert list_size(view, "014", "A", "2026-11-22") == (second,)
    assert list_size(view, "014", "A", router="1") == (first,)
    assert list_size(view, "014", "A", bit="08") == (second,)
    assert list_size(view, "015", "A") == ()
