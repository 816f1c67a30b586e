"""Says what codes mean at what to cut: a line is looked at, released, or taken back."""

from dataclasses import replace

from station.floor.plan.acts import CutSooner, NotePurchases, SetMark
from station.floor.plan.lines import (
    MARKS,
    PlanLine,
    find_chosen,
    find_forward,
    find_plan,
    list_bought,
    list_lines,
    list_on_list,
    list_order_rows,
    list_released_since,
)
from station.floor.plan.words import say_lacks, say_mark_why, say_why_cut, say_why_not
from station.floor.plan.work import PlanHand, PlanWork
from station.floor.shared.no_row import NO_ROW
from station.floor.shared.queue import CancelBatch, ReleaseBatch
from station.planning.gather import gather_plan
from station.planning.messages import MarkAdvice, Release
from station.planning.past import PastReading
from station.shop.acts import attention, good, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.file_requests import WriteOrderList
from station.shop.rooms import Do, FileJob, Input, RoomMemory, Took
from station.shop.views import View
from station.shop.words import Say, say

MOST_SHEETS = 99  # of a batch


def think_ahead(hand: PlanHand, view: View, memory: RoomMemory) -> object:
    """Gives what is thought about by itself while this screen is shown; None: read on."""
    past = memory.kept
    if not isinstance(past, PastReading) or not past.is_of(view, hand.now):
        past = memory.kept = PastReading(view, hand.now)
    if not past.read_on(view, memory.is_time_up):
        return None
    return gather_plan(view, hand.now, past.tell())


def handle_input(hand: PlanHand, given: Input, view: View) -> Do | Took | FileJob | None:
    """Takes one input: a row, a traveller or a cut file's card chooses; a button decides."""
    if not isinstance(given, Code):
        return None
    lines = list_lines(hand, view)
    if given.kind == "batch":
        sooner = find_forward(hand, view)
        if sooner and sooner.batch == given.number:
            after = replace(hand, work=replace(hand.work, chosen=""))
            return Do(f"batch/{sooner.batch}", CutSooner(due=sooner.by), after)
        waits = is_waiting(given.number, lines)
        return _take_back_batch(hand, given.number, lines) if waits else None
    if given.kind == "part":
        return _take_mark(hand, given.number, lines)
    if given.kind == "cutfile":
        key = next((n.key for n in lines if n.release and n.release.file == given.number), "")
        return _choose(hand, key, lines) if key else None
    card = BY_NUMBER.get(given.number) if given.kind == "button" else None
    return _press(hand, card.name if card else "", lines, view)


def _press(
    hand: PlanHand, name: str, lines: tuple[PlanLine, ...], view: View
) -> Do | Took | FileJob | None:
    """Does what a button says."""
    if name.startswith("row_"):
        row = int(name[4:]) - 1
        return _choose(hand, lines[row].key if row < len(lines) else "", lines)
    if name == "order_list":
        return _write_orders(hand)
    if name == "ordered":
        return _note_ordered(hand)
    if name == "release_first":
        first = lines[0] if lines and lines[0].blocked else None
        return _release(hand, first, view)
    if name == "take_mark":
        marks = [line.mark for line in lines if line.mark]
        chosen = find_chosen(hand, lines)
        mark = chosen.mark if chosen and chosen.mark else next(iter(marks), None)
        return _set_mark(hand, mark)
    if name == "release_line":
        return _release(hand, find_chosen(hand, lines), view)
    if name == "take_back_line":
        chosen = find_chosen(hand, lines)
        back = chosen.take_back if chosen else None
        return _take_back_batch(hand, back.batch if back else "", lines)
    return None


def _write_orders(hand: PlanHand) -> FileJob | Took:
    """Asks for the order list as a page and as a file."""
    plan = find_plan(hand)
    rows = list_order_rows(plan) if plan else ()
    if plan is None or not rows:
        return Took(hand, refuse(say("Nothing is to be ordered soon"), say("Go on here.")))
    after = replace(hand, work=replace(hand.work, on_list=list_bought(plan)))
    return FileJob(WriteOrderList(rows=rows, at=plan.at), after)


def _note_ordered(hand: PlanHand) -> Do | Took:
    """Notes all that stands on the written order list as ordered."""
    rows = list_on_list(hand)
    if not rows:
        return Took(hand, refuse(say("No order list is open"), say("Write one first.")))
    return Do("shop/shop", NotePurchases(rows=rows), replace(hand, work=PlanWork()))


def _choose(hand: PlanHand, key: str, lines: tuple[PlanLine, ...]) -> Took:
    line = next((line for line in lines if line.key == key), None)
    if line is None:
        return Took(hand, NO_ROW)
    after = replace(hand, work=replace(hand.work, chosen=key))
    if line.take_back:
        back = line.take_back
        return Took(after, good(
            say("Batch {batch} of {file} can wait", batch=back.batch, file=back.name),
            say("Take it back, or leave it.")))  # fmt: skip
    if line.mark:
        mark = line.mark
        return Took(after, good(
            say("{part}: minimum {before} → {after}", part=mark.name, before=mark.mark,
                after=mark.should),
            say("{why}. Set it, or leave it.", why=say_lacks(mark))))  # fmt: skip
    if line.release is None:
        assert line.blocked is not None
        said = say("{part} cannot be cut yet", part=line.blocked.name)
        return Took(after, attention(said, say_why_not(line.blocked)))
    if not line.release.router:
        return Took(after, attention(*_say_standing(line.release)))
    said = say("{file}, {n} {n|sheet|sheets}", file=line.release.name, n=line.release.sheets)
    return Took(after, good(said, say("Release it, or touch another row.")))


def _take_mark(hand: PlanHand, part: str, lines: tuple[PlanLine, ...]) -> Do | Took | None:
    """Takes a part's card for its suggested mark, where that stands on the screen."""
    shown = [line.mark for line in lines if line.mark][:MARKS]
    mark = next((m for m in shown if m.part == part), None)
    return _set_mark(hand, mark) if mark else None


def _set_mark(hand: PlanHand, mark: MarkAdvice | None) -> Do | Took:
    """Sets a part's mark as it is suggested."""
    if mark is None:
        return Took(hand, refuse(say("No minimum is wrong"), say("Go on here.")))
    why = str(say_mark_why(mark))
    return Do(f"part/{mark.part}", SetMark(mark=mark.should, why=why),
              replace(hand, work=replace(hand.work, chosen="")))  # fmt: skip


def _release(hand: PlanHand, line: PlanLine | None, view: View) -> Do | Took:
    """Releases a line's sheets: the office's rule looks at them once more."""
    release, plan = line.release if line else None, find_plan(hand)
    if release is None or plan is None:
        return Took(hand, refuse(say("There is nothing to release here"), say("Touch a row.")))
    if release.file in list_released_since(plan, view):
        return Took(hand, refuse(
            say("{file} was released just now", file=release.name),
            say("Wait a moment: it is thought about anew.")))  # fmt: skip
    if not release.router:
        return Took(hand, refuse(*_say_standing(release)))
    args = ReleaseBatch(
        cut_file=release.file,
        router=release.router,
        sheets=min(release.sheets, MOST_SHEETS),
        due=release.by,
        why=str(say_why_cut(release)),
    )
    after = replace(hand, work=replace(hand.work, chosen=""))
    return Do(f"cutfile/{release.file}", args, after, ("batch",))


def _say_standing(release: Release) -> tuple[Say, Say]:
    """Says that no router runs a file now, and what to do."""
    return (say("Every router that runs {file} stands still", file=release.name),
            say("Get one of them going first."))  # fmt: skip


def is_waiting(number: str, lines: tuple[PlanLine, ...]) -> bool:
    """Says whether the plan has found that a batch can wait."""
    return any(line.take_back and line.take_back.batch == number for line in lines)


def _take_back_batch(hand: PlanHand, number: str, lines: tuple[PlanLine, ...]) -> Do | Took:
    """Takes a batch out of its queue, where the plan says that nobody needs it."""
    if not is_waiting(number, lines):
        return Took(hand, refuse(
            say("Batch {batch} is needed, or begun", batch=number) if number
            else say("No batch is chosen"),
            say("Touch one that can wait.")))  # fmt: skip
    return Do(f"batch/{number}", CancelBatch(), replace(hand, work=replace(hand.work, chosen="")))
