"""A screen that cannot be made says so, is written down, and leaves every way out open."""

import pytest

from station.look import inspect
from station.shop.cards import button, digit
from station.shop.codes import write
from station.window import session, sharing_words
from tests.replay import PIN

WHY = "This screen cannot be shown: something is wrong in the program"


def texts(screen):
    return inspect.list_texts(screen.window)


@pytest.fixture
def broken(screen, monkeypatch, broken_screens):
    """Popping with a batch in hand, and a mistake of ours in what it shows."""
    screen.at("trimming", "05")
    screen.scan("batch 00900")

    def raises(_hand, _view):
        raise RuntimeError("a bug of ours")

    rooms = screen.session.desk.rooms
    monkeypatch.setattr(
        screen.session.desk,
        "rooms",
        {**rooms, "trimming": rooms["trimming"]._replace(screen=raises)},
    )
    screen.session.repaint()
    yield screen
    broken_screens.clear()


def test_it_says_so_and_is_written_down_once(broken, broken_screens):
    assert WHY in texts(broken)
    assert any("Leave what is in hand, or work elsewhere." in t for t in texts(broken))
    assert inspect.list_problems(broken.window) == []
    for _ in range(3):
        broken.session.tick()
    (told,) = broken_screens
    assert "a bug of ours" in told
    assert "subject='00900'" in told
    assert "Traceback" in told


def test_a_work_area_is_touched(broken):
    broken.touch(button("area_packing"))
    assert broken.said == "Here now: Packing"
    assert WHY not in texts(broken)
    broken.scan("button area_trimming")
    assert WHY in texts(broken)


def test_the_work_goes_on_by_scanner_and_keyboard(broken):
    broken.type(write("worker", "02"))
    assert broken.stage.desk.hand.worker == "02"
    assert broken.stage.desk.hand.subject == "00900"
    broken.press(8)
    assert broken.said == "Left; nothing was counted"
    broken.scan("batch 00900", "button on_rack")
    assert list(broken.stage.ledger.entries())[-1].kind == "put_on_rack"
    assert WHY in texts(broken)


def test_more_opens_over_it(broken):
    broken.touch(button("menu"))
    assert WHY not in texts(broken)
    broken.touch(button("put_down"))
    assert WHY in texts(broken)


def test_what_cannot_be_painted_is_told_alike(screen, monkeypatch, broken_screens):
    show_face = screen.window.show_face

    def raises(face):
        if str(face.presses[0].label) != "Leave it":
            raise RuntimeError("a bug of the painter")
        show_face(face)

    screen.at("trimming", "05")
    monkeypatch.setattr(screen.window, "show_face", raises)
    screen.session.repaint()
    assert WHY in texts(screen)
    (told,) = broken_screens
    assert "a bug of the painter" in told
    broken_screens.clear()


def test_no_pin_is_written_down(stage, screen, monkeypatch, broken_screens):
    screen.at("office", "07")
    screen.scan("button list_cart", "button new")
    screen.type("Cart 9")
    screen.scan("button save", "worker 07")

    def raises():
        raise RuntimeError(f"a bug of ours {len(stage.desk.hand.digits)}")

    monkeypatch.setattr(screen.session.desk, "face", raises)
    for char in PIN[:-1]:
        screen.type(digit(char))
    assert stage.desk.secret
    assert len(broken_screens) == len(PIN) - 1
    assert "digits=''" in broken_screens[-1]
    assert PIN[:-1] not in "".join(broken_screens)
    broken_screens.clear()


def test_what_runs_by_itself_and_fails_stops_neither_the_clock_nor_the_rest(
    screen, monkeypatch, caplog
):
    """Work is shown and done though nobody can tell how the shop's PCs are, or keep a backup."""

    def raises(*_any):
        raise RuntimeError("a bug of ours")

    done = []
    monkeypatch.setattr(sharing_words, "describe_health", raises)
    monkeypatch.setattr(session, "QUIET", -1)
    monkeypatch.setattr(screen.session, "when_quiet", lambda: (done.append(1), raises()))
    for minute in (10, 11):
        screen.stage.clock.pin(f"2026-11-25T09:{minute}:00")
        screen.session.tick()
    assert "09:11" in texts(screen)
    assert len(done) == 2
    assert [r.message.split("\n")[0][:9] for r in caplog.records] == ["by itself"] * 2  # once each
