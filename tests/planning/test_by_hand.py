"""What a release by hand is decided by: need, rack, the ends of the queues, the store."""

from dataclasses import replace

from station.floor.office.release import show_release
from station.floor.office.work import OfficeWork, Releasing
from station.planning.by_hand import look_by_hand
from station.shop.faces import Cards, Pairs
from station.shop.facts import Bed, Revision, Shop
from tests.floor.shop_small import (
    COMB,
    COMBS,
    DAY,
    FRAMES,
    SHUTTLES,
    batch,
    hand,
    small_shop,
)
from tests.queries.test_shortage import COMB_ONLY, on_rack, order

NOW = f"{DAY}T10:00:00"


def shop(*facts):
    """Combs wanted and queued: one sheet on the bed of router 1, two more and shuttles wait."""
    return small_shop(
        COMB_ONLY, order("3301", 60), batch(sheets=3), batch(SHUTTLES, "00413", sheets=1),
        batch(FRAMES, "00414", router="2", sheets=2),
        Bed(id="1", day=DAY, state="cutting", batch="00412", sheet=1, minutes=22.0,
            started=f"{DAY}T09:50:00", bits=((0, "11"),)),
        *facts, moves=(on_rack(COMB, 4),),
    )  # fmt: skip


def look(view, file=COMBS):
    return look_by_hand(view, view.get(Revision, f"{file}.C"), NOW)


def test_need_rack_and_what_is_under_way_of_each_part():
    (stand,) = look(shop()).parts
    assert (stand.wanted, stand.free, stand.under_way, stand.lacking) == (60, 4, 72, 0)


def test_a_queue_ends_when_its_last_sheet_is_off_the_bed():
    queues = look(shop()).queues
    # 12 minutes are left on the bed; two sheets of 22, one of 20, five at the bed for each
    assert queues["1"].ends == f"{DAY}T11:31:00"
    assert queues["3"].ends == NOW
    stopped = Bed(id="2", day=DAY, state="stopped", stop="31", stopped=NOW)
    assert look(shop(stopped)).queues["2"].stopped
    pause = Shop(id="shop", breaks=(("11:00", "11:30"),))
    assert look(shop(pause)).queues["1"].ends == f"{DAY}T12:01:00"


def test_sheets_in_the_store_that_no_queue_takes():
    # 40 of each material; queued of birch 6.5 are two combs and one shuttles, of 9 mm two frames
    assert look(shop()).in_store == 37
    assert look(shop(), FRAMES).in_store == 38
    bare = shop()
    del bare.facts["lot/0931"]
    assert look(bare).in_store is None


def test_the_screen_of_a_release_shows_them():
    view = shop()
    held = replace(
        hand("office"),
        work=OfficeWork(list="cutfile", chosen=COMBS, ask="release", releasing=Releasing()),
    )
    face = show_release(held, view)
    (pairs,) = (block for block in face.side if isinstance(block, Pairs))
    assert [tuple(map(str, row)) for row in pairs.rows] == [
        ("HC-300, minimum 20", "60 wanted, 4 there, 72 coming"),
        ("6.5 mm birch plywood", "37 in the store are free"),
    ]
    routers = next(b for b in face.main if isinstance(b, Cards))
    assert [(str(e.big), str(e.right)) for e in routers.entries][:3] == [
        ("Router 1", "11:31"), ("Router 2", "11:32"), ("Router 3", "free now"),
    ]  # fmt: skip
