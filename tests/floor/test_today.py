"""Shop today: figures, faces and settling."""

from dataclasses import replace

import pytest

from station.floor.today import dialogue, figures, looks, screen
from station.floor.today.rules import RULES
from station.floor.today.versions import compare_versions
from station.shop.acts import Act, Args, add_known
from station.shop.faces import Bands, Flow, Places
from station.shop.facts import Batch, Bed, Concern, Shop
from station.shop.moves import move
from station.shop.views import Passed, Past
from tests.floor.shop_small import COMB, DAY, batch, hand, off_bed, small_shop
from tests.touch import touch


@pytest.mark.parametrize(
    ("rows", "by_hour"),
    [
        ([("10", "popping", "trimming", "014", 24)], {10: 24}),
        (
            [("10", "popping", "trimming", "014", 24), ("11", "trimming", "popping", "014", 24)],
            {10: 24, 11: -24},
        ),
        ([("10", "popping", "spoiled", "014", 2)], {}),
        ([("10", "bed", "used", "sheet", 1)], {}),
    ],
)
def test_pieces_through_an_area_by_hour(rows, by_hour):
    passed = tuple(Passed(f"{DAY}T{h}", *way, "", "", qty) for h, *way, qty in rows)
    _, frm, to = figures.THROUGH[1]
    assert figures._sum_by_hour(passed, frm, to) == by_hour


def test_the_longest_wait_over_an_hour_holds_up():
    day = figures.Day(
        start=7.0,
        hours=4.0,
        through={"cut": 0, "popped": 400, "trimmed": 100, "packed": 0},
        by_hour={},
        sheets=0,
        planned=0,
        waiting={"popping": 50, "trimming": 200},
        packs=0,
        packs_waiting=0,
        to_do={},
    )
    assert figures.find_holding_up(day) == "trimming"
    assert figures.find_holding_up(day._replace(waiting={"popping": 50, "trimming": 5})) == ""


def test_the_flow_adds_up_to_now():
    assert figures.add_up({7: 10, 9: 5}, 7.0, 9.5) == ((7.0, 0), (8, 10), (9, 10), (9.5, 15))


def test_work_before_the_day_starts_counts_from_its_first_hour():
    view = small_shop(batch())
    act = Act(id="n", kind="put_on_rack", at=f"{DAY}T01:20:00", subject="batch/00412")
    moves = (move(COMB, 60, "trimming", f"rack/{COMB}", "00412"),)
    view.entries.append(Past(act, moves, (), undone=False))
    shown = screen.screen(hand("today", "03:00"), view)
    flow = shown.main[0]
    assert str(shown.top[0].items[2].rate) == "30 an hour"  # 60 pieces since one o'clock
    assert flow.start_h == 1
    assert {str(label): points[-1] for label, points in flow.lines}["trimmed 60"] == (3, 60)


@pytest.mark.parametrize(
    ("first", "now", "starts", "rate"),
    [
        ("10:20", "12:00", "07:00", "30 an hour"),  # 60 pieces since ten
        ("07:40", "09:30", "07:30", "30 an hour"),  # since the day started, half past seven
        ("17:10", "19:00", "07:00", "30 an hour"),  # when the day was over
    ],
)
def test_a_rate_counts_from_the_first_work(first, now, starts, rate):
    view = small_shop(batch(), Shop(id="shop", day_starts=starts))
    act = Act(id="n", kind="put_on_rack", at=f"{DAY}T{first}:00", subject="batch/00412")
    moves = (move(COMB, 60, "trimming", f"rack/{COMB}", "00412"),)
    view.entries.append(Past(act, moves, (), undone=False))
    assert str(screen.screen(hand("today", now), view).top[0].items[2].rate) == rate


def test_what_began_before_midnight_bears_its_day_and_is_drawn_from_midnight_on():
    night = f"{int(DAY[:4])}{DAY[4:8]}{int(DAY[8:]) - 1:02}T23:20:00"
    stopped = Bed(id="1", state="stopped", sheet=1, batch="00412", started=night, stopped=night)
    cutting = Bed(id="2", state="cutting", sheet=2, batch="00412", started=night, minutes=90.0)
    shown = screen.screen(hand("today", "00:30"), small_shop(batch(), stopped, cutting))
    first, second, *_ = shown.side[0].items
    assert str(first.state).startswith("stopped since 24 Nov 23:20")
    assert [first.spans, second.spans] == [((0.0, 0.5, "stopped"),), ((0.0, 0.5, "cutting"),)]


def test_the_whole_screen(tmp_path):
    view = off_bed(
        small_shop(
            batch(), Concern(id="c1", what="recount", text="Look", since=f"{DAY}T09:00:00")
        ),
        batch(),
        1,
    )
    shown = screen.screen(hand("today", "10:42"), view)
    assert isinstance(shown.top[0], Places)
    assert isinstance(shown.main[0], Flow)
    assert isinstance(shown.side[0], Bands)
    assert len(shown.side[0].items) == 5
    popping = shown.top[0].items[1]
    assert popping.waiting == 24
    assert str(popping.unit) == "of 96 parts"  # 24 that wait, and three sheets of 24 still queued
    assert shown.main[0].plan == 72


def test_a_concern_is_chosen_and_settled():
    held = batch(holds=("held by worker 03",))
    view = small_shop(
        held,
        Concern(
            id="c1",
            what="hold",
            text="Held",
            since=f"{DAY}T09:00:00",
            about="batch/00412",
            choices=("let it go on", "keep it"),
        ),
    )
    at = hand("today", "10:42", worker="07")
    chosen = dialogue.handle_input(at, touch(screen.screen(at, view), "Held"), view).hand
    assert screen.screen(chosen, view).main
    done = dialogue.handle_input(chosen, touch(screen.screen(chosen, view), "let it go on"), view)
    plain = Act(id="a", kind=done.kind, at="", subject=done.subject, args=done.args)
    assert view.do(RULES, plain).asks == "supervisor"
    view.do(
        RULES,
        Act(
            id="b",
            kind=done.kind,
            at="",
            subject=done.subject,
            args=add_known(done.args, Args(approved="07", reason="51")),
        ),
    )
    assert view.get(Batch, "00412").holds == ()
    assert view.get(Concern, "c1").settled == "let it go on"
    assert view.shelf(Concern, "open") == ()


@pytest.mark.parametrize(
    ("since", "words"),
    [
        (f"{DAY}T10:16:00", "26 min"),
        (f"{DAY}T07:42:00", "3 h"),
        ("2026-11-24T10:00:00", "since 24 Nov"),
    ],
)
def test_ages_are_short(since, words):
    assert str(looks.say_age(since, f"{DAY}T10:42:00")) == words


def test_hours_of_the_day():
    assert figures.read_start(Shop(id="shop")) == 7.0
    assert figures.read_end(Shop(id="shop")) == 16.0


def test_moves_count_once(tmp_path):
    assert move("014", 1, "cut", "popping/1", "00412").back().to.place == "cut"


def side_by_side(concern, *past):
    view = small_shop(batch())
    view.entries.extend(past)
    return [
        (str(row.note), str(row.title), str(row.cells[0].text))
        for table in compare_versions(concern, view)
        for row in table.rows
    ]


MEANT = tuple(move(part, 4, "popping/1", "trimming", "00412") for part in ("014", "021", "045"))
TURNED = Concern(
    id="x", what="no-longer", text="", since=f"{DAY}T09:00:00", station="2", worker="03",
    first="then", now="now", meant=MEANT, before="b", other="first",
)  # fmt: skip
BEFORE = Past(Act(id="b", kind="k", at=f"{DAY}T08:59:00", worker="02", station="1"), MEANT[:1], (),
              undone=False)  # fmt: skip
WENT = "from popping, sheet 1 to trimming: 4 HC-300"
MINE = "worker 03 at station 2, 09:00"


@pytest.mark.parametrize(
    ("concern", "past", "rows"),
    [
        (replace(TURNED, now=""), (), []),
        (
            TURNED,
            (BEFORE,),
            [
                ("by", MINE, "worker 02 at station 1, 08:59"),
                ("said", "then", "first"),
                ("moved", WENT, WENT),
                ("moved", "from popping, sheet 1 to trimming: 4 ST-200, and 1 more", ""),
            ],
        ),
        (
            replace(TURNED, meant=(), before="", other=""),
            (),
            [("by", MINE, "every station"), ("said", "then", "now")],
        ),
    ],
)  # fmt: skip
def test_two_versions_side_by_side(concern, past, rows):
    assert side_by_side(concern, *past) == rows


def today_lines(view):
    """What stands under Needs a look beside the day: the words, and what a touch sends."""
    face = screen.screen(hand("today", "10:42"), view)
    return [(str(cells[0].text), code) for cells, code in face.side[-1].rows]
