"""Each decision of a morning, by touch, by card and as text: queues and Needs a look follow.

The screen's words are what a supervisor looks for; the card beside them is the one that a scanner
reads for the same. Thinking is done at once, for what is thought is tested elsewhere.
"""

from collections.abc import Iterator

import pytest
from msgspec import structs
from PySide6.QtWidgets import QApplication

from station.look import inspect
from station.look.panes import ColumnScroll
from station.planning.messages import Besides, BringForward
from station.queries.buying import list_coming
from station.queries.looks import list_raised
from station.queries.underway import list_queue, list_queued
from station.shop.cards import button
from station.shop.facts import Batch, Part
from tests.floor.shop_small import FRAME, SHUTTLE
from tests.lived import WAITS, LivedStage
from tests.touch import find_touch, list_texts
from tests.window.ways import Screen, on_screen

BLOCKS = "Blocks 1 order, 1 of them late: HC-300"


@pytest.fixture
def lived(tmp_path):
    made = LivedStage(tmp_path)
    yield made
    assert made.check() == []
    made.close()


@pytest.fixture
def screen(lived, qtbot) -> Iterator[Screen]:
    yield from on_screen(lived, qtbot)


@pytest.fixture(params=["touch", "card", "text"])
def decide(request, screen, lived):
    """Does a step by touching its words, by scanning its card, or as a line of text."""

    def step(words: str, card: str) -> str:
        if request.param == "touch":
            screen.touch(find_touch(screen.session.desk.face(), words))
        elif request.param == "card":
            screen.scan(card)
        else:
            said = str(lived.send(card).answer.said)
            screen.session.repaint()
            return said
        return screen.said

    return step


def looks(screen):
    """What stands under Needs a look by itself."""
    desk = screen.session.desk
    return [str(one.words) for one in list_raised(desk.ledger.view, desk.clock())]


def queue(screen, router):
    """The batches that wait at a router: (number, cut file, sheets)."""
    view = screen.session.desk.ledger.view
    return [(b.id, b.cut_file, b.sheets) for b in list_queue(view, router)]


def shown(screen):
    """All that stands on the screen."""
    return list(list_texts(screen.session.desk.face()))


def agree(screen):
    """The supervisor's badge and PIN."""
    screen.scan("worker 07", "2468")


def test_what_blocks_is_found_under_needs_a_look_and_under_way_by_one_touch(screen, decide):
    screen.at("today", worker="07")
    assert BLOCKS in looks(screen)
    decide(BLOCKS, "button area_plan")
    assert BLOCKS in shown(screen)
    first = screen.session.desk.ahead.thought.blocked[0].release
    before = queue(screen, first.router)
    said = decide(f"Release {first.sheets}, print", "button release_first")
    assert said == "Supervisor's work"
    agree(screen)
    (new,) = [b for b in queue(screen, first.router) if b not in before]
    assert new[1:] == (first.file, first.sheets)
    assert BLOCKS not in looks(screen)
    assert BLOCKS not in shown(screen)
    view = screen.session.desk.ledger.view
    assert view.get(Batch, new[0]).why == "1 order waits for HC-300"
    screen.scan("button undo")
    assert queue(screen, first.router) == before
    assert BLOCKS in looks(screen)


def test_what_nobody_needs_is_taken_back_by_one_touch(screen, decide):
    screen.at("plan", worker="07")
    screen.session.tick()
    assert (WAITS, "015", 2) in queue(screen, "2")
    decide(f"Take back {WAITS}", f"traveller {WAITS}")
    agree(screen)
    assert screen.said == f"Batch {WAITS}: no more sheets"
    assert queue(screen, "2") == []
    assert not any(WAITS in text for text in shown(screen))
    screen.scan("button undo")
    assert (WAITS, "015", 2) in queue(screen, "2")


def test_what_else_is_cut_today_is_looked_at_and_released(screen, decide):
    screen.at("plan", worker="07")
    screen.session.tick()
    first = screen.session.desk.ahead.thought.then[0]
    assert (first.part, first.because) == (SHUTTLE, "mark")
    decide(first.name, f"cutfile {first.file}")
    said = shown(screen)
    for figure in ("router minutes", "at the bed", "days of stock", "pieces beyond need"):
        assert figure in said
    assert f"{first.material} left" in said
    before = queue(screen, first.router)
    label = f"Release {first.sheets} of {first.name}, print"
    decide(label, "button release_line")
    agree(screen)
    (new,) = [b for b in queue(screen, first.router) if b not in before]
    assert new[1:] == (first.file, first.sheets)
    assert first.name not in shown(screen)


def test_the_first_button_has_its_key_as_every_large_one(screen):
    screen.at("plan", worker="07")
    screen.session.tick()
    keyed = {b.code: b.number for b in screen.window.body.list_buttons()}
    assert keyed[button("release_first")] == 1
    assert len(set(keyed.values())) == len(keyed)
    before = list_queued(screen.session.desk.ledger.view)
    screen.press(1)
    agree(screen)
    assert len(list_queued(screen.session.desk.ledger.view)) == len(before) + 1


def test_who_needs_me_next_leads_to_the_router(screen, decide):
    screen.at("loading", worker="02", router="1,2")
    screen.scan("button put_down")
    decide("More", "button menu")
    decide("Who needs me next", "button who_next")
    said = shown(screen)
    assert "Router 1" in said
    assert any("Bring" in text for text in said)
    assert any("the traveller of batch" in text for text in said)
    decide("Go to Router 1", "router 1")
    desk = screen.session.desk
    assert (desk.hand.facing, desk.hand.work.mode) == ("1", "")


def test_what_to_order_is_listed_and_once_it_is_ordered_on_its_way(screen, decide):
    screen.at("plan", worker="07")
    screen.session.tick()
    assert "9 mm birch plywood" in shown(screen)
    desk = screen.session.desk
    wanted = next(o for o in desk.ahead.thought.order if o.name == "9 mm birch plywood")
    said = decide("Order list", "button order_list")
    assert said == "The order list is written: 2 lines"
    decide("All is ordered", "button ordered")
    agree(screen)
    coming = {p.material: p.quantity for p in list_coming(desk.ledger.view)}
    assert coming[wanted.id] == wanted.quantity
    assert "9 mm birch plywood" not in shown(screen)
    screen.scan("button undo")
    assert list_coming(desk.ledger.view) == ()
    assert "9 mm birch plywood" in shown(screen)


def test_a_mark_that_is_off_is_set_by_one_touch(screen, decide):
    screen.at("plan", worker="07")
    screen.session.tick()
    mark = next(m for m in screen.session.desk.ahead.thought.marks if m.part == FRAME)
    decide(f"Set {mark.should}", f"part {FRAME}")
    agree(screen)
    assert screen.said == f"FS-600: minimum {mark.mark} → {mark.should}"
    assert screen.session.desk.ledger.view.get(Part, FRAME).mark == mark.should
    assert f"Set {mark.should}" not in shown(screen)


@pytest.mark.parametrize("language", ["", "de"])
@pytest.mark.parametrize(("chosen", "files"), [("", 0), ("", 1), ("", 2), ("", 3), ("", 6),
                                               ("row_2", 6), ("row_8", 6)])  # fmt: skip
def test_a_full_screen_fits(screen, language, chosen, files):
    """Files to cut, two batches that can wait, marks, things to order: nothing scrolls."""
    desk = screen.session.desk
    desk.ledger.set_local("language", language)
    screen.at("plan", worker="07")
    screen.type(button("put_down"))
    plan = desk.ahead.thought
    then = tuple(
        structs.replace(plan.then[0], file=f"9{n}", name=f"HC4050-SET-{n}", days_before=14.5 + n,
                        days_after=22.0, mark=1234)
        for n in range(files)
    )  # fmt: skip
    order = tuple(structs.replace(plan.order[0], name=f"{o} plywood, phenolic") for o in range(4))
    over = (*plan.over_full, *plan.over_full)
    forward = BringForward(
        batch=WAITS, file="015", name="FS600-SET", router="2", sheets=2, part=FRAME,
        part_name="FS-600", order="3309", due=plan.at, was="", by=plan.at,
    )  # fmt: skip
    full = structs.replace(
        plan, then=then, order=order, over_full=over, put_off=12, under_way=5170,
        besides=tuple(Besides(f"HC-{n}00", 200) for n in range(4)), forward=(forward,),
    )  # fmt: skip
    desk.ahead.thought = full
    if chosen:
        screen.type(button(chosen))
        desk.ahead.thought = full
    screen.session.repaint()
    QApplication.processEvents()
    assert inspect.list_problems(screen.window) == []
    columns = [c for c in screen.window.findChildren(ColumnScroll) if c.isVisible()]
    assert [c.verticalScrollBar().maximum() for c in columns] == [0] * len(columns)
    screen.window.set_language("")


@pytest.mark.parametrize("language", ["", "de"])
def test_who_needs_me_next_fits(screen, language):
    desk = screen.session.desk
    desk.ledger.set_local("language", language)
    screen.at("loading", worker="02", router="1,2,3,4,5")
    screen.type(button("who_next"))
    assert inspect.list_problems(screen.window) == []
    columns = [c for c in screen.window.findChildren(ColumnScroll) if c.isVisible()]
    assert [c.verticalScrollBar().maximum() for c in columns] == [0] * len(columns)
    screen.window.set_language("")
