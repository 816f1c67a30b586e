"""Decides what a code means at popping, with slips in hand and exceptions counted so far."""

from dataclasses import replace

from station.floor.popping.acts import PassOn
from station.floor.popping.rules import list_lying, read_sheet, refuse_empty
from station.floor.popping.work import PoppingHand, PoppingWork
from station.floor.shared import counting
from station.floor.shared.counting import CountingHand
from station.floor.shared.first_offs import (
    CheckFirstOff,
    MeasureFirstOff,
    find_measured,
    list_open,
    take_reading,
)
from station.floor.shared.reasons import find_counter, press_counter
from station.queries.batches import find_revision, refuse_held, refuse_wrong_paper
from station.queries.first_offs import Unmeasured, find_unmeasured
from station.queries.underway import explain_last
from station.shop.acts import Answer, attention, good, notice, refuse
from station.shop.cards import BY_NUMBER, ZONES, middle_of, zone_of
from station.shop.codes import Code
from station.shop.counts import has_rework
from station.shop.facts import Batch, Placed, Revision, Slip
from station.shop.moves import head, tail
from station.shop.rooms import Do, Input, Number, Point, Took
from station.shop.views import View, by_part
from station.shop.words import MM, Say, say, several

# what the room's own buttons count
COUNTS = {"missing": "missing", "spoil": "spoiled", "uncut": "rework"}
MOST_SIZES = 3  # of a first-off that the screen has room for


def handle_input(hand: PoppingHand, given: Input, view: View) -> Do | Took | None:
    """Takes one input at popping."""
    if isinstance(given, Code):
        return _scan_code(hand, given, view)
    if not hand.subject:
        return None
    if isinstance(given, Number):
        return _enter_number(hand, given, view)
    return _touch_point(hand, given, view) if isinstance(given, Point) else None


def _enter_number(hand: PoppingHand, given: Number, view: View) -> Do | Took:
    """Takes a reading of a first-off that is due, or a count for the counter chosen last.

    What has a point is never a count; a whole number is a reading until a counter is chosen.
    """
    waits = find_first(hand, view)
    if waits is None or (hand.work.asks != "size" and given.whole is not None):
        return counting.take_number(hand, given, count_here(hand, view), view)
    asked = find_measured(view, waits.first, hand.work.measured)
    taken = take_reading(waits.first, asked, given)
    if isinstance(taken, MeasureFirstOff):
        return Do(f"router/{waits.bed.id}", taken, hand)
    return Took(hand, taken)


def find_first(hand: PoppingHand, view: View) -> Unmeasured | None:
    """Finds the first-off that is open of a sheet in hand: it is measured before all else."""
    found = (find_unmeasured(view, hand.subject, read_sheet(slip)) for slip in hand.work.slips)
    return next((waits for waits in found if waits), None)


def _judge_first(hand: PoppingHand, view: View, *, agrees: bool) -> Do | None:
    """Says of a first-off that is due that it agrees by eye, or that it is wrong."""
    waits = find_first(hand, view)
    if waits is None:
        return None
    args = CheckFirstOff(good=agrees, file=waits.first.file)
    return Do(f"router/{waits.bed.id}", args, hand)


def _choose_size(hand: PoppingHand, number: int, view: View) -> Took | None:
    """Chooses the size of the first-off that is measured next, by its row."""
    waits = find_first(hand, view)
    sizes = list_open(view, waits.first)[:MOST_SIZES] if waits else ()
    if not 0 < number <= len(sizes):
        return None
    chosen = sizes[number - 1]
    work = replace(hand.work, measured=chosen.name, asks="size", counter="")
    said = say("{part}, {size}", part=chosen.part.name, size=chosen.size.in_words)
    do = say("Measure it, enter the {unit}.", unit=MM)
    return Took(replace(hand, work=work, digits=""), good(said, do))


def count_here(hand: PoppingHand, view: View) -> dict[str, int]:
    """Counts the pieces of each part that wait on the slips in hand."""
    return by_part(list_lying(view, hand.subject, hand.work.slips))


def _scan_code(hand: PoppingHand, code: Code, view: View) -> Do | Took | None:
    if code.kind == "batch":
        return _pick_up(hand, code, view)
    if not hand.subject:
        return None
    if code.kind == "part":
        return counting.choose_part(hand, code.number, count_here(hand, view), view)
    if code.kind == "reason":
        return counting.count_reason(hand, code.number, count_here(hand, view), view)
    if code.kind == "zone":
        return _scan_zone(hand, code.number, view) if code.number in ZONES else None
    card = BY_NUMBER.get(code.number) if code.kind == "button" else None
    return _press_button(hand, card.name, view) if card else None


def _pick_up(hand: PoppingHand, code: Code, view: View) -> Took | None:
    """Picks up a slip, or for a traveller every slip of it that waits here.

    With free hands one of which nothing waits is a question where it is.
    """
    batch = view.get(Batch, code.number)
    left = counting.let_go_of_other(hand, code.number)
    if wrong := _refuse_pick_up(hand, code, batch):
        return Took(left, wrong)
    assert batch is not None
    waiting = _list_waiting(view, batch.id)
    wanted = tuple(s for s in waiting if not code.sheet or s == f"{batch.id}-{code.sheet}")
    held = refuse_held(view, batch.id)
    if held and not any(find_unmeasured(view, batch.id, read_sheet(s)) for s in wanted):
        return Took(left, held)
    if not wanted and hand.is_free:
        return None
    if not wanted:
        return Took(left, _refuse_none_waiting(view, batch, code.sheet))
    base = hand if hand.subject == batch.id else hand.empty()
    slips = tuple(dict.fromkeys((*base.work.slips, *wanted)))
    parts = by_part(list_lying(view, batch.id, slips))
    part = next(iter(parts)) if len(parts) == 1 else base.work.part
    work = replace(base.work, slips=slips, seen=parts, part=part)
    picked = replace(base, subject=batch.id, work=work)
    if waits := find_first(picked, view):
        measures = replace(picked, work=replace(work, asks="size", counter=""))
        return Took(measures, _say_first(waits, view))
    return Took(picked, _say_in_hand(batch, picked.work, parts, view))


def _say_first(waits: Unmeasured, view: View) -> Answer:
    """Says that a sheet in hand is a first-off, and what is measured of it now."""
    said = say("Sheet {n} is a first-off: {why}", n=waits.first.sheet, why=waits.first.why)
    if waits.first.state == "wrong":
        said = say("The first-off of sheet {n} is wrong", n=waits.first.sheet)
    asked = find_measured(view, waits.first, "")
    if asked is None:
        return attention(said, say("Compare a piece with its master by eye: right or wrong?"))
    name, size = asked.part.name, asked.size.in_words
    return attention(said, say("Measure one piece: {part}, {size}.", part=name, size=size))


def _refuse_pick_up(hand: PoppingHand, code: Code, batch: Batch | None) -> Answer | None:
    if wrong := refuse_wrong_paper(code, batch):
        return wrong
    assert batch is not None
    if hand.subject and hand.subject != batch.id and hand.work.counts:
        return refuse(
            say("Batch {batch} is in hand", batch=hand.subject),
            say("Pass it on or put it down first."),
        )
    return None


def _list_waiting(view: View, batch: str) -> tuple[str, ...]:
    """Lists the slips of a batch whose pieces wait here."""
    sheets = sorted(
        {int(tail(h.place)) for h in view.stock(batch=batch) if head(h.place) == "popping"}
    )
    return tuple(f"{batch}-{n}" for n in sheets)


def _refuse_none_waiting(view: View, batch: Batch, sheet: int) -> Answer:
    if sheet and view.get(Slip, f"{batch.id}-{sheet}") is None:
        return refuse(
            say("Sheet {sheet} is not off the bed yet", sheet=sheet),
            say("Loading scans its slip first."),
        )
    return refuse_empty(view, batch)


def _say_in_hand(batch: Batch, work: PoppingWork, parts: dict[str, int], view: View) -> Answer:
    """Names the parts, so that a wrong traveller is seen at once, or what is counted already."""
    slips, counted = work.slips, work.tell_counted(view)
    sheets = several([s.rpartition("-")[2] for s in slips])
    said = say("Sheet {sheets} of batch {batch} in hand", sheets=sheets, batch=batch.id)
    if len(slips) > 1:
        said = say("Sheets {sheets} of batch {batch} in hand", sheets=sheets, batch=batch.id)
    names = counting.name_parts(view, parts)
    if counted:
        return good(said, say("{counted} so far. Go on from there.", counted=counted))
    if lately := explain_last(view, batch) if _is_begun(batch, slips, view) else Say():
        return notice(said, say("{parts} left: {who}.", parts=names, who=lately))
    return good(said, say("{parts}: say what is not good, pass on.", parts=names))


def _is_begun(batch: Batch, slips: tuple[str, ...], view: View) -> bool:
    """Says whether the newest act on the batch took pieces of one of these slips."""
    past, places = view.last(batch.key), {f"popping/{s.rpartition('-')[2]}" for s in slips}
    return past is not None and any(m.frm.place in places for m in past.moves)


def _press_button(hand: PoppingHand, name: str, view: View) -> Do | Took | None:
    parts = count_here(hand, view)
    if name == "pass_on":
        open_ = counting.refuse_open(hand)
        return Took(hand, open_) if open_ else _pass_on(hand, parts, view)
    if name == "some":
        return counting.ask_some(hand, parts, view)
    if name in ("first_off_good", "first_off_bad"):
        return _judge_first(hand, view, agrees=name == "first_off_good")
    if name.startswith("row_"):
        return _choose_size(hand, int(name.removeprefix("row_")), view)
    return press_counter(hand, name, parts, view, COUNTS)


def _scan_zone(hand: PoppingHand, zone: str, view: View) -> Took:
    """Marks the fault counted last at a zone; the same card again takes it back."""
    revision = find_revision_in_hand(hand, view)
    part, counter = hand.work.part, hand.work.counter
    if revision is None or not counting.count_chosen(hand, counter):
        return Took(hand, refuse(say("Where was what?"), say("Count what is wrong first.")))
    size = (revision.length_mm, revision.width_mm)
    before = counting.get_marks(hand)
    spots = tuple(s for s in before if zone_of(*s, *size) != zone)
    if len(spots) == len(before):
        spots = (*before, middle_of(zone, *size))[-counting.count_chosen(hand, counter) :]
    marked = counting.set_marks(hand, spots)
    words = name_zones(marked, view).get(part, {}).get(counter, ())
    told = say("The router is told when you pass on.")
    if not words:
        return Took(marked, notice(say("Not {zone} any more", zone=Say(ZONES[zone])), told))
    return Took(marked, notice(say("On the sheet: {where}", where=several([*words])), told))


def find_revision_in_hand(hand: CountingHand, view: View) -> Revision | None:
    """Finds the revision that the batch in hand was cut from."""
    batch = view.get(Batch, hand.subject)
    return find_revision(view, batch) if batch else None


def name_zones(hand: CountingHand, view: View) -> dict[str, dict[str, tuple[str, ...]]]:
    """Names where on the sheet the faults lay: part → counter → zones in words, each once."""
    revision = find_revision_in_hand(hand, view)
    if revision is None:
        return {}
    size = (revision.length_mm, revision.width_mm)
    return {
        part: {c: tuple(dict.fromkeys(ZONES[zone_of(*s, *size)] for s in spots))
               for c, spots in row.items()}
        for part, row in hand.work.marks.items()
    }  # fmt: skip


def _touch_point(hand: PoppingHand, point: Point, view: View) -> Took | None:
    """Counts the piece that was touched on the drawn sheet: spoiled, if nothing is counted yet.

    A piece is counted once: touched again it is taken back. Where a number was said before, a
    touch only marks one of them.
    """
    revision, parts = find_revision_in_hand(hand, view), count_here(hand, view)
    if revision is None:
        return None
    piece = find_piece(revision, point)
    if piece is None or piece.part not in parts:
        zone = zone_of(point.x_mm, point.y_mm, revision.length_mm, revision.width_mm)
        return _scan_zone(hand, zone, view)
    counter = find_counter(hand, view)
    chosen = counting.set_counter(hand, piece.part, counter)
    marks = counting.get_marks(chosen)
    touched = [m for m in marks if is_on_piece(revision, piece, *m)]
    if len(touched) >= len(hand.work.slips):  # each sheet in hand has one piece there
        return _take_mark_back(chosen, touched[0], parts, view)
    more = 1 if counting.count_chosen(chosen, counter) <= len(marks) else 0
    done = counting.count_pieces(chosen, counter, parts, view, by=more)
    if done.answer.tone == "stop":
        return done
    return Took(counting.set_marks(done.hand, (*marks, (point.x_mm, point.y_mm))), done.answer)


def _take_mark_back(
    hand: CountingHand, mark: counting.Mark, parts: counting.Parts, view: View
) -> Took:
    """Takes the mark of one piece back, and the piece where all that is counted is marked."""
    left, counter = list(counting.get_marks(hand)), hand.work.counter
    fewer = -1 if counting.count_chosen(hand, counter) == len(left) else 0
    left.remove(mark)
    done = counting.count_pieces(hand, counter, parts, view, by=fewer)
    again = say("Touched twice: that piece is taken back.")
    return Took(counting.set_marks(done.hand, tuple(left)), replace(done.answer, do=again))


def find_piece(revision: Revision, point: Point) -> Placed | None:
    """Finds the piece whose box holds this point."""
    at = (point.x_mm, point.y_mm)
    return next((p for p in revision.placed if is_on_piece(revision, p, *at)), None)


def is_on_piece(revision: Revision, piece: Placed, x_mm: float, y_mm: float) -> bool:
    """Tells whether a point of the sheet lies in the box of a piece."""
    shape = dict(revision.shapes).get(piece.part)
    length, width = shape.box if shape else (0.0, 0.0)
    if round(piece.turn_deg) % 180 == 90:
        length, width = width, length
    inside_x = piece.x_mm <= x_mm <= piece.x_mm + length
    return inside_x and piece.y_mm <= y_mm <= piece.y_mm + width


def _pass_on(hand: PoppingHand, parts: counting.Parts, view: View) -> Do:
    """Passes the count on as it stands, every figure said."""
    counted, work = counting.list_figures(hand, parts), hand.work
    where = name_zones(hand, view)
    args = PassOn(slips=work.slips, parts=counted, where=where, seen=work.seen)
    numbers = ("batch",) if has_rework(counted) else ()
    return Do(f"batch/{hand.subject}", args, hand.empty(), numbers)
