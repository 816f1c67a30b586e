"""What to cut: a plan that thinks by itself, lines that are released and taken back by codes."""

from dataclasses import replace

import pytest
from msgspec import structs

from station.desk.draft import Draft
from station.desk.draft import read as read_draft
from station.desk.draft import write as write_draft
from station.floor.plan import dialogue, screen, words
from station.floor.plan.acts import Bought, CutSooner, NotePurchases, SetMark
from station.floor.plan.lines import list_lines
from station.floor.plan.rules import RULES
from station.floor.plan.work import PlanWork
from station.planning.messages import CuttingPlan, LeadSeen, Release
from station.planning.think import run
from station.queries.buying import list_coming
from station.queries.looks import list_raised
from station.shop import lengths
from station.shop.acts import Act, Args, add_known
from station.shop.cards import BUTTONS, F_KEYS, button
from station.shop.codes import read, write
from station.shop.faces import Decision, Hint, Listing, Pairs, Table
from station.shop.facts import (
    Batch,
    BitSize,
    CutFile,
    Line,
    Order,
    Part,
    Product,
    Purchase,
    Revision,
)
from station.shop.moves import SHEET, move
from station.shop.rooms import Do, Took
from tests.floor.shop_small import (
    COMB,
    COMBS,
    DAY,
    FRAME,
    FRAMES,
    SHUTTLE,
    SHUTTLES,
    batch,
    hand,
    small_shop,
)
from tests.floor.test_today import today_lines
from tests.planning.test_gather import done, gather_plan
from tests.queries.test_shortage import COMB_ONLY, on_rack, order
from tests.touch import NO_ROW, find_touch, touch

SIDES = Product(id="033", name="SIDE", words="One side", parts=((FRAME, 1),))


def shop(*facts, moves=()):
    """Twenty steady days of four frame sides; sixty combs wanted, ten of them late."""
    wants = (order("3301", 10, f"{DAY}T09:00:00"), order("3302", 50))
    view = small_shop(COMB_ONLY, SIDES, *wants, *facts, moves=(on_rack(FRAME, 200), *moves))
    for n in range(1, 21):
        done(view, f"2026-11-{n:02d}T09:00:00", move(FRAME, 4, "packing/1", "pack/1", "00390"))
    return view


def think(view, now="10:42", **work):
    """A hand at what to cut that has thought."""
    asked = gather_plan(view, f"{DAY}T{now}:00")
    held = hand("plan", now, worker="07", work=PlanWork(**work))
    return replace(held, thought=run(asked, lambda _stage, _share: None))


def take(hand_, code, view):
    return dialogue.handle_input(hand_, read(code), view)


def texts(face):
    """All that a face says, in English."""
    found = []
    for block in (*face.main, *face.side):
        if isinstance(block, Decision):
            found += [block.title, block.matter, block.offer, *block.notes]
        if isinstance(block, Hint):
            found += [block.title]
        if isinstance(block, Table):
            found += [row.title for row in block.rows]
            found += [cell.text for row in block.rows for cell in row.cells]
        if isinstance(block, Pairs):
            found += [value for pair in block.rows for value in pair]
        if isinstance(block, Listing):
            found += [cell.text for cells, _ in block.rows for cell in cells]
    return [str(text) for text in found]


@pytest.mark.parametrize(("more", "said"), [
    (0, "8 × 10 less 2.0 % for loss: enough in 10 of 100 cases."),
    (1, "8 × 10 less 2.0 % for loss: 1 more sheet of it follows."),
    (16, "8 × 10 less 2.0 % for loss: 16 more sheets of it follow."),
])  # fmt: skip
def test_a_batch_that_others_follow_says_how_many_more_sheets_come(more, said):
    release = Release(file="8", name="A", sheets=8, each=10, loss=0.02, certainty=0.1, more=more,
                      orders=1, serves=1)  # fmt: skip
    assert str(words.say_enough(release, 0.95)) == said
    assert ("enough with" in [str(name) for name, _ in words.list_reasons(release, DAY)]) == (
        not more
    )


def test_before_the_first_thought_it_says_so():
    face = screen.screen(hand("plan", "10:42", worker="07"), shop())
    assert [type(block) for block in face.main] == [Hint]


def test_what_blocks_stands_first_with_its_one_touch():
    view = shop()
    held = think(view)
    face = screen.screen(held, view)
    said = texts(face)
    assert said[:3] == [
        "Blocks 2 orders, 1 of them late: HC-300",
        "60 wanted, none on the rack, none under way",
        "HC300-SET on Router 1, 3 sheets",
    ]
    at = said.index("starts 10:42 · off the bed 12:03")
    assert said[at + 1 : at + 3] == [
        "3 × 24 come off; how many are lost can't be told yet.",
        "40 sheets of 6.5 mm birch plywood in the store are free.",
    ]
    press = face.main[0].press
    asked = take(held, press.code, view)
    assert isinstance(asked, Do)
    assert (asked.subject, asked.kind, asked.numbers) == (
        f"cutfile/{COMBS}",
        "release_batch",
        ("batch",),
    )
    assert (asked.args.router, asked.args.sheets, asked.args.due) == ("1", 3, f"{DAY}T09:00:00")
    assert asked.args.why == "2 orders wait for HC-300"


def test_what_is_released_is_not_offered_again():
    view = shop()
    held = think(view)
    view.facts["batch/00500"] = batch(id="00500", sheets=3, released=f"{DAY}T10:42:00")
    assert list_lines(held, view) == ()
    again = take(held, button("release_first"), view)
    assert isinstance(again, Took)
    assert again.answer.refused
    assert think(view).thought.blocked == ()


def test_a_double_touch_before_the_next_thought_releases_once():
    view = shop()
    held = think(view)
    view.facts["batch/00500"] = batch(id="00500", sheets=1, released=f"{DAY}T10:42:00")
    again = take(held, button("release_first"), view)  # it still blocks, with one sheet of three
    assert str(again.answer.said) == "HC300-SET was released just now"


@pytest.mark.parametrize("code", [write("batch", "00646", "A"), "row", "card"])
def test_a_batch_that_can_wait_is_taken_back_by_its_paper_its_row_or_its_card(code):
    waits = batch(FRAMES, "00646", router="2", sheets=2, due="2026-11-30T15:00:00")
    view = shop(waits)
    held = think(view)
    (back,) = held.thought.take_back
    assert (back.batch, back.part_name, back.there, back.wanted) == ("00646", "FS-600", 200, 0)
    if code == write("batch", "00646", "A"):
        asked = take(held, code, view)
    else:
        chosen = take(held, button("row_2"), view)
        assert str(chosen.answer.said) == "Batch 00646 of FS600-SET can wait"
        asked = take(chosen.hand, button("take_back_line"), view)
    assert (asked.subject, asked.kind) == ("batch/00646", "cancel_batch")
    view.facts["batch/00646"] = batch(FRAMES, "00646", state="cancelled")
    assert all(line.take_back is None for line in list_lines(held, view))


def test_a_batch_that_is_needed_is_not_taken_back():
    view = shop(batch(sheets=1, due=f"{DAY}T08:00:00"))
    assert take(think(view), write("batch", "00412", "A"), view) is None  # a question, answered


def test_what_an_order_has_wanted_since_is_not_taken_back():
    """The order comes in before it is thought about anew."""
    view = shop(batch(FRAMES, "00646", router="2", sheets=2, due="2026-11-30T15:00:00"))
    held = think(view)
    assert held.thought.take_back
    big = replace(order("3390", 1), lines=(Line(product="033", quantity=210),))
    view.facts[big.key] = big
    assert all(line.take_back is None for line in list_lines(held, view))
    assert take(held, write("batch", "00646", "A"), view) is None


def test_a_row_shows_what_it_rests_on():
    view = shop()
    chosen = take(think(view), write("cutfile", COMBS), view).hand
    said = texts(screen.screen(chosen, view))
    at = said.index("cut for")
    assert said[at : at + 6] == ["cut for", "HC-300", "good ones wanted", "60", "pieces cut", "72"]
    assert "can't tell yet" in said


def test_a_row_that_is_not_there_says_so():
    view = shop()
    for code in (button(NO_ROW), button("take_back_line")):
        assert take(think(view), code, view).answer.refused
    assert take(think(view), write("cutfile", "099"), view) is None
    calm = small_shop()  # nothing blocks; the rack is below its minimums
    assert take(think(calm), button("release_first"), calm).answer.refused
    filled = take(think(calm), button("release_line"), calm)
    assert (filled.kind, filled.args.due) == ("release_batch", "")
    assert take(replace(think(calm), thought=None), button("release_line"), calm).answer.refused


def test_a_part_that_no_file_makes_says_what_to_do():
    lost = Product(id="034", name="LOST", words="A lost one", parts=(("099", 1),))
    wants = Order(id="3309", lines=(Line(product="034", quantity=2),), due=f"{DAY}T08:00:00")
    view = small_shop(lost, Part(id="099", name="XX-1", words="x"), wants)
    held = think(view)
    said = texts(screen.screen(held, view))
    assert "No approved cut file makes it: approve one in the office." in said
    assert take(held, button("release_first"), view).answer.refused


def test_a_part_below_its_mark_that_no_file_makes_is_named():
    view = shop(Part(id="099", name="XX-1", words="x", mark=20))
    said = texts(screen.screen(think(view), view))
    assert said[said.index("No approved cut file makes") + 1] == "XX-1"


def test_all_is_well_says_so():
    view = small_shop()
    said = texts(screen.screen(think(view), view))
    assert said[0] == "No order waits for a part that is not under way"


def test_it_stands_under_needs_a_look_until_it_is_under_way():
    view = shop()
    assert today_lines(view)[0] == ("Blocks 2 orders, 1 of them late: HC-300", button("area_plan"))
    view.facts["batch/00500"] = batch(id="00500", sheets=3)
    assert today_lines(view) == [("1 order is late: 3301", button("area_packing"))]


# --- marks


def with_low_mark(*facts):
    """Forty frame sides a day and a mark of 20: what lies there lasts half a day."""
    view = small_shop(SIDES, *facts, moves=(on_rack(FRAME, 2000),))
    for n in range(1, 21):
        done(view, f"2026-11-{n:02d}T09:00:00", move(FRAME, 40, "packing/1", "pack/1", "00390"))
    return view


def rows_of(face, title):
    """The rows of the table with this title."""
    return next(
        b.rows for b in (*face.main, *face.side) if isinstance(b, Table) and title in str(b.title)
    )


def test_a_mark_that_is_off_says_why_and_what_it_should_be():
    view = with_low_mark()
    (row,) = rows_of(screen.screen(think(view), view), "Minimums that are wrong")
    assert str(row.title) == "FS-600: 20"
    # three days of forty: two until more is there, one until tomorrow's look; use never varies
    assert str(row.note) == "40 used a day · 3 days until more is there · 95 % of uses"
    assert 138 <= int(str(row.press.label)[4:]) <= 141  # Poisson of 120 at 95 and 97 %


def test_a_mark_says_how_long_it_takes_where_that_varies_and_what_lacks():
    view = with_low_mark()
    asked = structs.replace(gather_plan(view, f"{DAY}T10:42:00"), lead_seen=LeadSeen(2.0, 0.5))
    held = replace(hand("plan", "10:42", worker="07"), thought=run(asked, lambda _w, _s: None))
    (row,) = rows_of(screen.screen(held, view), "Minimums that are wrong")
    assert str(row.note) == "40 used a day · 2.5 to 3.5 days until more is there · 95 % of uses"
    (should,) = (mark.should for mark in held.thought.marks)
    words_ = str(take(held, row.code, view).answer.do)
    assert words_.startswith("With 20, 83 % of the pieces lack until more is there; with ")
    assert f"with {should}: " in words_


@pytest.mark.parametrize("way", ["touch", "part's card", "row and card", "card"])
def test_a_mark_is_taken_over_by_one_touch_or_by_a_card(way):
    view = with_low_mark()
    held = think(view)
    (row,) = rows_of(screen.screen(held, view), "Minimums that are wrong")
    (should,) = (mark.should for mark in held.thought.marks)
    if way == "row and card":
        chosen = take(held, row.code, view)
        assert str(chosen.answer.said) == f"FS-600: minimum 20 → {should}"
        held = chosen.hand
    codes = {"touch": row.press.code, "part's card": write("part", FRAME)}
    asked = take(held, codes.get(way, button("take_mark")), view)
    assert (asked.subject, asked.kind, asked.args.mark) == (f"part/{FRAME}", "set_mark", should)
    answer = view.do(RULES, Act(id="m", kind=asked.kind, at=f"{DAY}T10:42:00",
                                subject=asked.subject, args=asked.args))  # fmt: skip
    assert answer.asks == "supervisor"
    agreed = add_known(asked.args, Args(approved="07"))
    answer = view.do(RULES, Act(id="m", kind=asked.kind, at=f"{DAY}T10:42:00",
                                subject=asked.subject, args=agreed))  # fmt: skip
    assert str(answer.said) == f"FS-600: minimum 20 → {should}"
    assert view.get(Part, FRAME).mark == should
    assert all(line.mark is None for line in list_lines(held, view))  # it is off no more
    assert take(held, button("take_mark"), view).answer.refused


def test_a_part_whose_mark_is_right_is_a_question_as_everywhere():
    view = with_low_mark()
    assert take(think(view), write("part", "021"), view) is None


@pytest.mark.parametrize(("mark", "part", "tone"), [(-1, FRAME, "stop"), (5, "099", "stop"),
                                                   (20, FRAME, "attention")])  # fmt: skip
def test_a_mark_that_cannot_be_or_is_so_already_is_said(mark, part, tone):
    view = with_low_mark()
    args = SetMark(mark=mark, approved="07")
    act = Act(id="m", kind="set_mark", at=f"{DAY}T10:42:00", subject=f"part/{part}", args=args)
    answer = view.do(RULES, act)
    assert (answer.tone, answer.sets) == (tone, ())


# --- what is cut sooner


def test_a_queued_batch_that_an_order_wants_sooner_comes_forward_by_one_touch():
    # ten combs are wanted at nine; their batch stands at the end of the queue
    view = shop(batch(COMBS, "00650", due=f"{DAY[:8]}30T09:00:00"))
    held = think(view)
    (forward,) = held.thought.forward
    face = screen.screen(held, view)
    asked = dialogue.handle_input(held, touch(face, "Cut 00650 sooner"), view)
    assert (asked.subject, asked.args) == ("batch/00650", CutSooner(due=forward.by))
    act = Act(
        id="f", kind=asked.kind, at=f"{DAY}T10:42:00", subject=asked.subject, args=asked.args
    )
    assert view.do(RULES, act).asks == "supervisor"
    agreed = replace_args(act, add_known(asked.args, Args(approved="07")))
    assert not view.do(RULES, agreed).refused
    assert view.get(Batch, "00650").due == forward.by
    assert not any("sooner" in text for text in texts(screen.screen(held, view)))
    assert view.do(RULES, replace_args(act, agreed.args)).tone == "attention"  # it is so already


@pytest.mark.parametrize("number", ["00650", "09999"])
def test_only_a_batch_that_waits_in_a_queue_comes_forward(number):
    view = shop(batch(COMBS, "00650", state="cutting"))
    args = CutSooner(due=f"{DAY}T09:00:00", approved="07")
    act = Act(id="f", kind=args.kind, at=f"{DAY}T10:42:00", subject=f"batch/{number}", args=args)
    assert view.do(RULES, act).refused


# --- what to order


def thin_store(*facts):
    """Twenty frame sides a day at 32 a sheet, and one sheet left of the 40: soon none."""
    view = small_shop(SIDES, *facts, moves=(on_rack(FRAME, 2000),
                      move(SHEET, 39, "store", "used", "0940")))  # fmt: skip
    for n in range(1, 21):
        done(view, f"2026-11-{n:02d}T09:00:00", move(FRAME, 20, "packing/1", "pack/1", "00390"))
    return view


def test_once_the_list_is_written_a_touch_notes_all_of_it_as_on_its_way():
    view = thin_store()
    held = think(view)
    (sheets,) = [o for o in held.thought.order if o.of == "material"]
    assert (sheets.name, sheets.by) == ("9 mm birch plywood", DAY)
    assert button("order_list") in list_codes(screen.screen(held, view))
    asked = take(held, button("order_list"), view)
    written = screen.screen(replace(asked.hand, thought=held.thought), view)
    assert touch(written, "All is ordered").number == BUTTONS["ordered"].number
    do = take(replace(asked.hand, thought=held.thought), button("ordered"), view)
    assert (do.kind, [(b.of, b.quantity) for b in do.args.rows]) == (
        "note_purchases", [(o.of, o.quantity) for o in held.thought.order],
    )  # fmt: skip
    act = Act(id="n", kind=do.kind, at=f"{DAY}T10:42:00", subject=do.subject, args=do.args)
    assert view.do(RULES, act).asks == "supervisor"
    agreed = replace_args(act, add_known(do.args, Args(approved="07")))
    assert not view.do(RULES, agreed).refused
    noted = list_coming(view)
    assert [(p.id, p.material, p.quantity) for p in noted if p.material] == [
        ("20261125-1", "2", sheets.quantity)
    ]
    assert think(view).thought.order == ()  # it is on its way
    empty = replace(held, thought=replace_order(held.thought))
    assert take(empty, button("order_list"), view).answer.refused


def test_what_is_noted_as_ordered_is_what_stands_on_the_written_list():
    """The plan is thought anew while somebody is on the phone with the list in hand."""
    view = thin_store()
    held = think(view)
    assert take(held, button("ordered"), view).answer.refused, "no list is written yet"
    listed = take(held, button("order_list"), view).hand
    looked = take(listed, find_touch(screen.screen(listed, view), "FS-600: 20"), view).hand
    assert looked.work.chosen
    more = [structs.replace(o, quantity=o.quantity + 7) for o in held.thought.order]
    later = structs.replace(held.thought, at=f"{DAY}T11:05:00", order=tuple(more))
    anew = replace(looked, thought=later)
    assert {button("ordered"), button("order_list")} <= set(list_codes(screen.screen(anew, view)))
    assert F_KEYS["ordered"] != F_KEYS["order_list"]
    do = take(anew, button("ordered"), view)
    assert [b.quantity for b in do.args.rows] == [o.quantity for o in held.thought.order]
    assert do.after.work.on_list == ()
    noted = replace(looked, thought=replace_order(held.thought))  # another station was faster
    assert button("ordered") not in list_codes(screen.screen(noted, view))
    assert take(noted, button("ordered"), view).answer.refused


def test_what_stands_on_the_list_is_kept_through_a_power_cut(stage):
    rows = (Bought("material", "2", 40, "2026-12-02"), Bought("bit_size", "", 6, "", 3.175))
    kept = replace(stage.desk.hand, area="plan", work=PlanWork(on_list=rows))
    assert read_draft(write_draft(Draft(hand=kept)), stage.desk.rooms).hand.work.on_list == rows


def test_a_row_stays_chosen_when_it_is_thought_about_anew():
    """Where frame sides stand in a queue follows from the time, and so is another one then."""
    view = thin_store()
    view.facts[f"part/{FRAME}"] = replace(view.get(Part, FRAME), mark=2040)
    held = think(view)
    (row,) = [line for line in list_lines(held, view) if line.release]
    later = replace(think(view, "11:20"), work=PlanWork(chosen=row.key))
    (same,) = [line for line in list_lines(later, view) if line.key == row.key]
    assert same.release.file == row.release.file
    assert same.release.by > row.release.by


def test_bits_that_nobody_has_entered_get_a_size_of_their_own():
    view = small_shop()
    rows = (Bought("bit_size", "", 6, "2026-12-02", 6.0), Bought("mailer", "01", 50, ""))
    args = NotePurchases(rows=rows, approved="07")
    act = Act(id="n", kind="note_purchases", at=f"{DAY}T10:42:00", subject="shop/shop", args=args)
    view.do(RULES, act)
    bits, mailers = view.get(Purchase, "20261125-1"), view.get(Purchase, "20261125-2")
    size = view.get(BitSize, bits.bit_size)
    assert (size.name, size.diameter_mm, bits.expected) == ("6 mm bit", 6.0, "2026-12-02")
    assert (mailers.mailer, mailers.quantity) == ("01", 50)
    again = view.do(RULES, act)  # a second order on the same day has numbers of its own
    assert [f.id for f in again.sets if isinstance(f, Purchase)] == ["20261125-3", "20261125-4"]
    thin = NotePurchases(rows=(Bought("bit_size", "", 2, "", 3.0),), approved="07")
    later = view.do(RULES, replace_args(act, thin))  # another size has a number of its own
    other = next(f for f in later.sets if isinstance(f, BitSize))
    assert (other.diameter_mm, view.get(Purchase, "20261125-5").bit_size) == (3.0, other.id)
    assert other.id != size.id
    lengths.use_units("inch", fractions=False)
    eighth = NotePurchases(rows=(Bought("bit_size", "", 2, "", 3.175),), approved="07")
    named = view.do(RULES, replace_args(act, eighth))
    assert next(f.name for f in named.sets if isinstance(f, BitSize)) == "0.125 in bit"
    none = replace_args(act, NotePurchases(rows=(), approved="07"))
    assert view.do(RULES, none).refused


def list_codes(face):
    """The codes of the large buttons."""
    return [press.code for press in face.presses]


def replace_args(act, args):
    """The same act with other arguments."""
    return Act(id=act.id, kind=act.kind, at=act.at, subject=act.subject, args=args)


def replace_order(plan):
    """The same plan with nothing to order."""
    return structs.replace(plan, order=())


# --- at a desk, through PIN and paper


def test_a_morning_by_touch(stage):
    """The station thinks by itself; one touch, badge and PIN; the next touch asks no more."""
    stage.send("@area plan")
    stage.send("@worker 07")
    stage.send("@at 2026-11-25T07:05:00")
    stage.send("button put_down")
    desk = stage.desk
    assert isinstance(desk.ahead.thought, CuttingPlan)
    first = desk.face().main[0]
    assert isinstance(first, Decision)
    name = desk.ahead.thought.blocked[0]
    assert str(first.title).startswith(f"Blocks {len(name.orders)} order")
    given = stage.send(first.press.code)
    assert given.answer.asks == "supervisor"
    stage.send("worker 07")
    given = stage.send("2468")
    assert given.entry, str(given.answer.said)
    made = [b for b in stage.ledger.facts(Batch) if b.state == "queued"]
    assert [b.sheets for b in made] == [name.release.sheets]
    assert desk.ahead.thought.seen == (made[0].id,)
    assert name.part not in {b.part for b in desk.ahead.thought.blocked}
    given = stage.send("button undo")
    assert given.entry
    assert name.part in {b.part for b in desk.ahead.thought.blocked}


def test_nothing_is_thought_at_another_area(stage):
    stage.send("@area popping")
    stage.send("@worker 02")
    stage.send("button put_down")
    assert stage.desk.ahead.thought is None


def send_all(stage, *codes):
    """Sends codes; gives what the last one came to."""
    given = [stage.send(code) for code in codes]
    return given[-1]


def release_first(stage):
    """The first line of a morning released by touch, with badge and PIN."""
    send_all(stage, "@area plan", "@worker 07", "@at 2026-11-25T07:05:00", "button put_down")
    first = stage.desk.ahead.thought.blocked[0]
    assert send_all(stage, "button release_first", "worker 07", "2468").entry
    return first


def test_after_a_fault_what_is_missing_stands_first_again(stage):
    """The sheet that was to free an order is spoiled: one look, one touch, and it is under way."""
    first = release_first(stage)
    assert first.part not in {b.part for b in stage.desk.ahead.thought.blocked}
    made = next(b.id for b in stage.ledger.facts(Batch) if b.state == "queued")
    send_all(stage, "@worker 02", "@area loading", f"@router R{first.release.router}",
             f"traveller {made}", "lot 0940", "9.0", "button held_down", "button bit_good",
             "button file_right", "button zeroed", "button start")  # fmt: skip
    spoiled = send_all(stage, "@at 2026-11-25T07:15:00", "button sheet_spoiled", "reason 12", "0",
                       "button sheet_spoiled")  # fmt: skip
    assert "spoiled" in str(spoiled.answer.said)
    assert f"Blocks {len(first.orders)} order: {first.name}" in looks(stage)
    send_all(stage, "@worker 07", "@area plan", "button put_down")
    again = stage.desk.ahead.thought.blocked[0]
    assert (again.part, again.wanted, again.under_way) == (
        first.part, first.wanted, first.under_way,
    )  # fmt: skip
    assert send_all(stage, "button release_first", "worker 07", "2468").entry
    assert not any(first.name in said for said in looks(stage))


def looks(stage):
    """What stands under Needs a look by itself."""
    return [str(raised.words) for raised in list_raised(stage.ledger.view, stage.desk.clock())]


def test_a_card_looks_anew_and_no_other_room_knows_it(stage):
    send_all(stage, "@area plan", "@worker 07", "button put_down")
    before = stage.desk.ahead.thought
    stage.clock.pin("2026-11-25T07:08:00")
    given = stage.send("button think")
    assert str(given.answer.said) == "It is looked at anew"
    assert stage.desk.ahead.thought.at > before.at
    assert str(stage.desk.face().where) == "as of 07:08"
    stage.send("@area popping")
    assert "is a card of" in str(stage.send("button think").answer.said)


def test_one_sheet_that_two_parts_wait_for_is_told_as_one():
    pair = Product(id="040", name="PAIR", words="Both", parts=((COMB, 1), (SHUTTLE, 1)))
    view = small_shop(pair, Order(id="3301", lines=(Line(product="040", quantity=5),),
                                  due=f"{DAY}T15:00:00"))  # fmt: skip
    combs = view.get(Revision, f"{COMBS}.C")
    half = len(combs.placed) // 2
    placed = (*combs.placed[:half], *(replace(p, part=SHUTTLE) for p in combs.placed[half:]))
    shuttle = view.get(Part, SHUTTLE)
    view.facts[combs.key] = replace(
        combs, placed=placed, shapes=(*combs.shapes, (SHUTTLE, shuttle.shape))
    )
    alone = view.get(CutFile, SHUTTLES)
    view.facts[alone.key] = replace(alone, approved="")
    held = think(view)
    first, second = (line for line in list_lines(held, view) if line.blocked)
    assert first.release == second.release
    face = screen.screen(held, view)
    assert [str(row.cells[0].text) for row in rows_of(face, "And then")][:1] == ["the same"]


def test_each_batch_that_a_file_is_parted_into_is_chosen_by_its_own_touch():
    """Three of one file for the rack, two of them alike."""
    view = small_shop()
    held = think(view)
    release = Release(file=FRAMES, name="FS600-SET", sheets=5, part=FRAME, because="use",
                      router="2", ends=f"{DAY}T12:00:00")  # fmt: skip
    rest = structs.replace(release, sheets=4)
    plan = structs.replace(held.thought, then=(release, release, rest), take_back=(), marks=())
    held = replace(held, thought=plan)
    rows = rows_of(screen.screen(held, view), "And then")
    assert [str(row.cells[0].text) for row in rows] == ["5", "5", "4"]
    for at, (row, sheets) in enumerate(zip(rows, (5, 5, 4), strict=True)):
        chosen = take(held, row.code, view)
        assert str(chosen.answer.said) == f"FS600-SET, {sheets} sheets"
        after = rows_of(screen.screen(chosen.hand, view), "And then")
        assert [row.selected for row in after] == [n == at for n in range(3)]


def test_a_row_that_no_router_runs_now_says_so_where_it_is_read_and_where_it_is_touched():
    view = small_shop()
    held = think(view)
    release = Release(file=FRAMES, name="FS600-SET", sheets=5, part=FRAME, because="use")
    plan = structs.replace(held.thought, then=(release,), take_back=(), marks=())
    held = replace(held, thought=plan)
    (row,) = rows_of(screen.screen(held, view), "And then")
    assert str(row.cells[-1].text) == "all routers stopped"
    said = take(held, row.code, view).answer
    assert (said.tone, str(said.said), str(said.do)) == (
        "attention", "Every router that runs FS600-SET stands still",
        "Get one of them going first.",
    )  # fmt: skip


def test_a_row_names_its_part_once():
    view = shop()
    held = think(view)
    (blocked,) = held.thought.blocked
    plan = structs.replace(held.thought, blocked=(blocked, blocked))
    face = screen.screen(replace(held, thought=plan), view)
    row = rows_of(face, "And then")[0]
    assert (str(row.note), str(row.cells[2].text)) == ("for HC-300", "Blocks 2 orders, 1 late")


def test_a_part_that_cannot_be_cut_says_what_lacks_and_what_to_do():
    """Frame sides are lacking too, and their cut file is retired."""
    wants = replace(order("3390", 1), lines=(Line(product="033", quantity=500),))
    view = shop(wants)
    view.facts[f"cutfile/{FRAMES}"] = replace(view.get(CutFile, FRAMES), active=False)
    held = think(view)
    first, *_ = list_lines(held, view)
    assert first.release, "else it stands in the box above the rows"
    asked = take(held, find_touch(screen.screen(held, view), "no approved file"), view)
    assert (asked.answer.tone, str(asked.answer.said)) == (
        "attention", "FS-600 cannot be cut yet"
    )  # fmt: skip
    assert str(asked.answer.do) == "No approved cut file makes it: approve one in the office."


def test_with_nothing_to_do_nothing_is_said_to_come_of_it():
    view = shop()
    held = think(view)
    titles = [str(b.title) for b in screen.screen(held, view).side if isinstance(b, Pairs)]
    assert "If you do this" in titles
    view.facts["batch/00500"] = batch(id="00500", sheets=3, released=f"{DAY}T10:42:00")
    titles = [str(b.title) for b in screen.screen(held, view).side if isinstance(b, Pairs)]
    assert "If you do this" not in titles
