"""A list as a file says the unit of each column, and is read by what its columns say."""

import pytest

from station import bootstrap
from station.files import lists
from station.floor.office.acts import SetFact
from station.shop import lengths
from station.shop.acts import Act
from station.shop.facts import Material, Shop
from station.shop.plain import to_plain

AT = "2026-11-25T07:00:00"


@pytest.fixture
def ledger(tmp_path):
    with bootstrap.open_ledger(tmp_path) as made:
        bootstrap.set_up_shop(made, AT)
        yield made


def test_a_list_of_an_inch_shop_comes_in_again_as_it_went_out(ledger):
    lengths.use_units("inch", fractions=False)
    text = lists.write(ledger, Material)
    assert "length_in,width_in" in text.splitlines()[0]
    assert "0.255906" in text  # 6.5 mm: as short as gives 6.5 mm again
    found = lists.read_text(ledger.view, text)
    assert found.problems == ()
    kept = {m.id: m for m in ledger.facts(Material)}
    assert [Material(**value) for value in found.values] == [kept[v["id"]] for v in found.values]


@pytest.mark.parametrize("units", ["mm", "inch"])
def test_a_column_that_says_its_unit_is_read_in_it_whatever_the_shop_has(ledger, units):
    lengths.use_units(units, fractions=False)
    text = "id,thickness_in,low_mm,high_in\n1,0.25,6.2,0.26\n"
    (value,) = lists.read_text(ledger.view, text).values
    assert (value["thickness_mm"], value["low_mm"], value["high_mm"]) == (6.35, 6.2, 6.604)


def test_a_column_that_stands_there_in_both_units_is_refused(ledger):
    text = "id,low_mm,low_in\n1,6.2,0.25\n"
    assert "stands there twice" in str(lists.read_text(ledger.view, text).problems[0])


def test_the_shop_sets_its_units(ledger):
    shop = to_plain(ledger.view.get(Shop, "shop")) | {"units": "inch", "fractions": True}
    args = SetFact(of="shop", value=shop, approved="01")
    ledger.record(Act(id="a", kind=args.kind, at=AT, subject="shop/shop", args=args))
    bootstrap.make_desk(ledger, bootstrap.Where(area="office"), lambda: AT).face()
    assert lengths.write(9.525) == "3/8"
