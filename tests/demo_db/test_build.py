"""A short demo shop, built through the real rules: pieces balance and every state is there."""

from collections import Counter
from datetime import datetime, timedelta

import pytest

from demo_db.build import DAYS, build, hours, working_days
from station.bootstrap import load_rules
from station.ledger.ledger import Ledger
from station.queries.shortage import list_blocking
from station.shop.acts import plain_of
from station.shop.facts import Batch, Bed, Concern, Order, Revision, Shop, Slip
from station.shop.moves import NO_PIECES, head
from station.shop.places import balances

pytestmark = pytest.mark.slow

NOW = datetime(2026, 11, 25, 11, 30)


@pytest.fixture(scope="module")
def shop(tmp_path_factory):
    path = tmp_path_factory.mktemp("demo") / "shop.db"
    build(path, NOW, days=3)
    ledger = Ledger(path, load_rules())
    yield ledger
    ledger.close()


def test_the_history_is_sound(shop):
    assert shop.check() == []
    assert shop.count() > 500


def test_no_place_below_zero_but_those_that_balance_the_books(shop):
    assert [h for h in shop.balances() if h.qty < 0 and not balances(h.place)] == []


def test_every_piece_that_was_cut_is_somewhere(shop):
    cut, lying = Counter(), Counter()
    for held in shop.balances():
        if held.part in NO_PIECES:
            continue
        if head(held.place) in ("cut", "recount", "found"):
            cut[held.part] -= held.qty
        else:
            lying[held.part] += held.qty
    assert cut
    assert cut == lying


def test_cut_pieces_are_sheets_times_what_a_sheet_makes(shop):
    cut = {(h.batch, h.part): -h.qty for h in shop.balances() if h.place == "cut"}
    assert cut
    for batch in shop.facts(Batch):
        if batch.role != "cut":
            continue
        revision = shop.view.get(Revision, f"{batch.cut_file}.{batch.revision}")
        for part, n in revision.makes().items():
            assert cut.get((batch.id, part), 0) == n * batch.cut


def test_entries_are_in_the_order_of_their_times_and_end_before_now(shop):
    times = [e.at for e in shop.entries()]
    assert times == sorted(times)
    assert times[-1] <= NOW.isoformat()


def test_today_is_half_done(shop):
    day = shop.view.get(Shop, "shop")
    assert day.day_starts < "11:30" < day.day_ends
    beds = {b.id: b for b in shop.facts(Bed)}
    assert beds["4"].state == "stopped"
    assert beds["3"].state == "cutting"
    assert beds["2"].state == "free"
    assert shop.view.shelf(Batch, "queue/2")
    assert any(shop.view.shelf(Batch, f"queue/{r}") for r in beds)
    states = {o.state for o in shop.facts(Order)}
    assert states >= {"packed", "shipped"}
    assert states & {"open", "packing", "waiting"}
    cut = Counter(s.router for s in shop.facts(Slip) if s.at[:10] == "2026-11-25")
    assert set(cut) == set("12345")
    assert cut.total() >= 10  # a whole day has 12 to 23
    assert len([o for o in shop.facts(Order) if o.state == "open"]) >= 10
    assert any(not c.settled for c in shop.facts(Concern))


def test_the_same_seed_makes_the_same_shop(tmp_path):
    made = []
    for name in ("one.db", "two.db"):
        build(tmp_path / name, NOW, days=1)
        assert not list(tmp_path.glob("*.building*"))
        ledger = Ledger(tmp_path / name, load_rules())
        made.append([(e.at, e.kind, e.past.act.subject) for e in ledger.entries()])
        ledger.close()
    assert made[0] == made[1]


def test_a_shop_that_is_there_is_left_alone(tmp_path):
    path = tmp_path / "shop.db"
    path.write_bytes(b"mine")
    with pytest.raises(FileExistsError):
        build(path, NOW)
    assert path.read_bytes() == b"mine"


@pytest.mark.parametrize("hour", [0, 5, 9, 12, 17, 22])
def test_the_day_lies_around_now(hour):
    opens, closes = hours(datetime(2026, 11, 25, hour, 10))
    assert opens < closes
    assert opens.hour <= hour


def test_six_weeks_without_weekends():
    days = working_days(NOW.date(), DAYS)
    assert days[-1] == NOW.date()
    assert len(days) == 31
    assert all(d.weekday() < 5 for d in days)
    assert NOW.date() - days[0] == timedelta(days=42)


FAULTS = {
    "add_sheet", "bit_broken", "cancel_order", "change_bit", "end_stop", "find_parts",
    "hold_batch", "new_copy", "recount", "recount_place", "rehome", "release_hold", "report_stop",
    "send_short", "settle_concern", "spoil_sheet", "split_batch", "take_back", "undo", "wait_for",
}  # fmt: skip
SHEETS = {"11", "12", "13", "15"}  # bit broke, sheet moved, vacuum lost, router fault


def test_every_kind_of_fault_has_happened(demo_file):
    ledger = Ledger(demo_file, load_rules())
    acts = [e.past.act for e in ledger.entries()]
    assert FAULTS - {act.kind for act in acts} == set()
    assert {plain_of(a.args).get("reason") for a in acts if a.kind == "spoil_sheet"} >= SHEETS
    wrong = [a for a in acts if a.kind == "check_first_off" and not plain_of(a.args)["good"]]
    overruled = [a for a in acts if a.kind == "start_sheet" and plain_of(a.args).get("approved")]
    assert wrong
    assert overruled
    ledger.close()


def test_weaving_cards_are_what_the_shop_lacks(shop):
    """Ten orders want 504 and four are late, whatever chance made of the days before."""
    first = list_blocking(shop.view, NOW.isoformat())[0]
    assert first.standing.part.name == "WC-70"
    assert (first.standing.wanted, first.standing.under_way) == (504, 0)
    assert (len(first.orders), first.late) == (10, 4)
