"""The shop as JSON, in a shop of any size."""

from station.commands.state import describe_shop
from station.shop.facts import Order, Pack


def test_packs_are_read_once_however_many_orders_there_are(stage, monkeypatch):
    asked, read = [], stage.ledger.facts
    monkeypatch.setattr(stage.ledger, "facts", lambda kind: (asked.append(kind), read(kind))[1])
    orders = describe_shop(stage.ledger, stage.clock())["orders"]
    assert len(orders) > 1
    assert (asked.count(Order), asked.count(Pack)) == (1, 1)


def test_the_day_is_told_as_shop_today_shows_it(stage):
    for line in ("@worker 04", "@area trimming", "traveller 00900", "button on_rack"):
        stage.send(line)
    today = describe_shop(stage.ledger, stage.clock())["today"]
    assert today["packs_left"] == 0
    assert today["parts"]["trimmed"] > 0
    assert set(today["parts"]) == {"cut", "popped", "trimmed", "packed", "shipped"}
