"""What a new shop still wants: in order, until it is there."""

import pytest

from station.queries.first_sheet import list_missing, list_set_up
from station.shop.facts import Bed, Pace
from station.shop.first_facts import first_facts
from tests.fakes import FakeView
from tests.floor.shop_small import sheets, small_facts


def shop(*kinds, moves=()):
    """The small shop's facts of these kinds, over what every shop begins with."""
    begun = first_facts()
    return FakeView.of(*begun, *(f for f in small_facts() if f.kind in kinds), moves=moves)


def names(view):
    return [step.name for step in list_missing(view)]


def test_a_new_shop_wants_everything_it_does_not_begin_with():
    assert names(shop()) == ["pin", "router", "lot", "bit", "cutfile", "approved", "rack"]


@pytest.mark.parametrize(
    ("kinds", "gone"),
    [
        (("router",), "router"),
        (("router", "bit"), "bit"),
        (("cutfile", "revision"), "approved"),
    ],
)
def test_what_is_there_is_not_asked_for(kinds, gone):
    assert gone not in names(shop(*kinds))


def test_a_lot_counts_once_its_sheets_are_in_the_store():
    assert "lot" in names(shop("lot"))
    assert "lot" not in names(shop("lot", moves=(sheets("0931", 5),)))


def test_a_cut_file_that_is_not_read_is_the_one_to_open():
    steps = {step.name: step for step in list_set_up(shop("cutfile"))}
    assert not steps["cutfile"].done
    assert steps["cutfile"].about.startswith("cutfile/")


@pytest.mark.parametrize("fact", [Bed(id="1", sheet=1), Pace(id="1", sheets=((1.0, 1.0),))])
def test_after_the_first_sheet_nothing_is_asked_for_it_again(fact):
    view = shop("router")
    assert names(view)
    view.facts[fact.key] = fact
    assert names(view) == []
    assert [s.name for s in list_set_up(view) if not s.done] == ["cart", "product", "order"]
