"""A bar runs on by the shop's clock, and no timer runs where nothing moves."""

import pytest
from PySide6.QtCore import QRect
from PySide6.QtWidgets import QApplication

from station.look.blocks.progress import ProgressBlock
from station.look.shop_time import SHOP_TIME, ShopTime
from station.shop.faces import Progress

UNTIL = ("2026-11-25T10:40:00", "2026-11-25T10:50:00")
FIFTH = Progress(big="8 min", fraction=0.2, until=UNTIL)


@pytest.fixture
def clock(monkeypatch):
    told = ["2026-11-25T10:42:00"]
    monkeypatch.setattr(SHOP_TIME, "clock", lambda: told[0])
    return told


@pytest.fixture
def bar(clock, qapp: QApplication):
    made = ProgressBlock(lambda _code: None)
    made.put_into(QRect(0, 0, 600, 60))
    made.show()
    yield made
    made.close()


@pytest.mark.parametrize(
    ("later", "share"),
    [("10:42:00", 0.2), ("10:46:00", 0.6), ("10:49:59", 0.998), ("10:50:00", 1.0),
     ("11:30:00", 1.0)],
)  # fmt: skip
def test_the_bar_runs_on_to_be_full_at_the_end(bar, clock, later, share) -> None:
    bar.show_block(FIFTH)
    clock[0] = f"2026-11-25T{later}"
    assert bar.find_share() == pytest.approx(share, abs=0.003)


def test_the_timer_runs_while_the_bar_moves_and_is_seen(bar, clock) -> None:
    bar.show_block(FIFTH)
    assert bar.timer.isActive()
    bar.hide()
    assert not bar.timer.isActive()
    bar.show()
    assert bar.timer.isActive()
    clock[0] = UNTIL[1]
    bar._go_on()
    assert not bar.timer.isActive()


@pytest.mark.parametrize("still", [Progress(big="8", fraction=0.2),
                                   Progress(big="8", fraction=1.0, until=UNTIL)])  # fmt: skip
def test_no_timer_runs_where_nothing_moves(bar, still) -> None:
    bar.show_block(FIFTH)
    bar.show_block(still)
    assert not bar.timer.isActive()
    assert bar.find_share() == still.fraction


def test_a_clock_that_stands_still_carries_the_bar_no_further(monkeypatch) -> None:
    shop_time = ShopTime()
    shop_time.clock = lambda: "2026-11-25T10:42:00"
    first = shop_time.now()
    monkeypatch.setattr(shop_time, "_since", Long())
    assert shop_time.now() - first < 1.0


class Long:
    def elapsed(self) -> int:
        return 3_600_000


def test_a_tour_sees_nothing_move_between_two_seconds(monkeypatch) -> None:
    shop_time = ShopTime()
    shop_time.clock = lambda: "2026-11-25T10:42:00"
    shop_time.smooth = False
    first = shop_time.now()
    monkeypatch.setattr(shop_time, "_since", Long())
    assert shop_time.now() == first
