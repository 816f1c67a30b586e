"""Two stations and the real server: what each does, both know; what collides is looked at."""

import pytest

from station.ledger.shop_link import Away
from station.sharing import loop
from station.sharing.loop import PAGE_AT_ONCE
from station.shop.facts import Batch, Concern
from tests.sharing.two import Station, healed

pytestmark = pytest.mark.slow  # asks a whole server


@pytest.fixture
def pair(tmp_path, shop):
    stations = [Station(tmp_path, shop, n) for n in "23"]
    yield stations
    for station in stations:
        station.close()


def test_what_one_does_the_other_knows(pair):
    one, two = pair
    one.do("a")
    two.do("b", batch="00413")
    assert one.ledger.not_shared() == 1
    assert one.ledger.oldest_not_shared() == "2026-11-25T10:42:07"
    healed(one, two)
    assert one.ledger.oldest_not_shared() == ""
    assert two.ledger.view.get(Batch, "00412").cut == 1


def test_an_act_counts_here_before_it_is_shared(pair):
    one, _ = pair
    assert one.do("a").answer.tone == "good"
    assert one.ledger.view.stock(batch="00412")[0].qty == 6
    assert one.ledger.view.last("batch/00412").act.id == "a"
    assert one.do("a").entry == "a"
    assert one.ledger.not_shared() == 1
    assert [f.qty for f in one.ledger.flow("2026-11-25", "2026-11-26")] == [6]


def test_the_same_batch_at_once_is_decided_again_and_holds(pair):
    one, two = pair
    one.do("a")
    two.do("b")
    healed(one, two)
    assert one.ledger.view.get(Batch, "00412").cut == 2
    assert one.ledger.view.stock(batch="00412")[0].qty == 12


def test_what_does_not_hold_any_more_needs_a_look_and_is_never_dropped(pair):
    one, two = pair
    one.do("a")
    healed(one, two)
    one.do("x", "pop")
    two.do("y", "pop")
    assert one.share().state == "shared"
    _, turned = two.talk()
    assert [(t.id, t.answer.tone, str(t.answer.said)) for t in turned] == [
        ("y", "attention", "Nothing waits")
    ]
    healed(one, two)
    for station in pair:
        concern = station.ledger.view.get(Concern, "y")
        assert "Nothing waits: 6 pieces of worker 03 not counted" in str(concern.text)
        assert station.ledger.view.stock(batch="00412", place="trimming")[0].qty == 6
    assert one.ids() == ["a", "x", "y"]


def test_many_acts_offline_come_together_in_order(pair):
    one, two = pair
    for n in range(30):
        one.do(f"one{n}", batch=f"{n % 4:05d}")
        two.do(f"two{n}", batch=f"{n % 4:05d}")
    healed(one, two)
    assert len(one.ids()) == 60
    assert [i for i in one.ids() if i.startswith("two")] == [f"two{n}" for n in range(30)]


def test_a_lost_reply_is_found_with_the_next_round(pair, monkeypatch):
    one, two = pair
    one.do("a")
    push = one.link.push

    def lost(*given):
        push(*given)
        raise Away("lost")

    monkeypatch.setattr(one.link, "push", lost)
    assert one.talk()[0].state == "away"
    monkeypatch.undo()
    healed(one, two)
    assert one.ids() == ["a"]


def test_taken_back_here_and_passed_on_there(pair):
    one, two = pair
    one.do("a")
    healed(one, two)
    two.do("p", "pop")
    assert one.undo("a", "u").entry == "u"
    healed(two, one)
    assert one.ids() == ["a", "p", "u"]
    assert "gone on" in str(two.ledger.view.get(Concern, "u").now)
    assert one.ledger.view.stock(batch="00412", place="trimming")[0].qty == 6


def test_both_take_back_the_same(pair):
    one, two = pair
    one.do("a")
    healed(one, two)
    one.undo("a", "u")
    two.undo("a", "v")
    healed(one, two)
    assert one.stock() == []
    assert "taken back already" in str(one.ledger.view.get(Concern, "v").now)


def test_undone_before_it_is_shared(pair):
    one, two = pair
    two.do("b")
    two.share()
    one.do("a")
    one.undo("a", "u")
    healed(one, two)
    assert one.ledger.view.stock(batch="00412")[0].qty == 6


def test_numbers_are_given_once_though_both_are_offline(pair):
    for station in pair:
        station.ledger.ask_ahead()
        station.share()
    given = [s.ledger.take_number("order") for s in pair for _ in range(15)]
    assert len(set(given)) == 30


def test_without_a_spare_no_number_is_given_away_from_the_shop(pair):
    one, _ = pair
    with pytest.raises(Exception, match="No cart numbers are left"):
        one.ledger.take_number("cart")
    one.share()
    assert one.ledger.take_number("cart") == "1"


def test_closed_and_opened_what_waits_still_waits(pair):
    one, two = pair
    one.do("a")
    one.ledger.close()
    one.open()
    assert one.ledger.not_shared() == 1
    healed(one, two)
    assert two.ids() == ["a"]


def test_rebuilt_while_acts_wait_nothing_changes(pair):
    one, two = pair
    one.do("a")
    one.share()
    one.do("b")
    before = one.stock()
    one.ledger.rebuild()
    assert one.stock() == before
    healed(one, two)


def test_the_shop_put_back_to_an_older_day(pair, shop):
    one, two = pair
    for n in range(6):
        one.do(f"a{n}")
    healed(one, two)
    two.do("late")
    put_back(shop, 3)
    assert one.talk()[0].state == "differs"
    assert two.talk()[0].state == "differs"
    one.do("meanwhile")
    shop.confirm_put_back()
    healed(one, two)
    assert sorted(one.ids()) == sorted([*(f"a{n}" for n in range(6)), "late", "meanwhile"])
    assert one.ledger.view.get(Batch, "00412").cut == 8


def put_back(shop, number):
    """As a backup from before would leave it."""
    with shop.admin() as admin:
        admin.execute("ALTER TABLE shop.entry DISABLE TRIGGER kept")
        admin.execute("DELETE FROM shop.entry WHERE number > %s", (number,))
        admin.execute("ALTER TABLE shop.entry ENABLE ALWAYS TRIGGER kept")
        admin.execute(
            "UPDATE shop.site SET (number, digest) ="
            " (SELECT number, digest FROM shop.entry ORDER BY number DESC LIMIT 1)"
        )


def test_a_gap_in_the_shops_history_is_told(pair, shop):
    """Only a superuser can make one; it is not taken for the end of the history."""
    one, two = pair
    for n in range(3):
        one.do(f"a{n}")
    one.share()
    with shop.admin() as admin:
        admin.execute("ALTER TABLE shop.entry DISABLE TRIGGER kept")
        admin.execute("DELETE FROM shop.entry")
    assert two.talk()[0].state == "differs"


def test_a_slow_network_is_asked_for_small_pages(pair, monkeypatch):
    one, two = pair
    for n in range(5):
        one.do(f"a{n}", batch=f"0042{n}")
    one.share()
    pull, asked, small = two.link.pull, [], 2
    monkeypatch.setattr(loop, "PAGE", small)

    def slow(after, limit):
        asked.append(limit)
        if limit > small:
            raise Away("it does not come in its time")
        return pull(after, limit)

    monkeypatch.setattr(two.link, "pull", slow)
    assert two.share().state == "shared"
    assert two.ids() == one.ids()
    assert asked[:2] == [small, PAGE_AT_ONCE]
    assert set(asked[2:]) == {small}
