"""The shop as JSON, in a shop of any size."""

from station.commands.state import describe_shop
from station.shop.facts import Order, Pack


def test_packs_are_read_once_however_many_orders_there_are(stage, monkeypatch):
    asked, read = [], stage.ledger.facts
    monkeypatch.setattr(stage.ledger, "facts", lambda kind: (asked.append(kind), read(kind))[1])
    orders = describe_shop(stage.ledger, stage.clock())["orders"]
    assert len(orders) > 1
    assert (asked.count(Order), asked.count(Pack)) == (1, 1)
