"""Shows what to cut next: what blocks, what else, what can wait, and the figures behind each."""

from collections.abc import Sequence

from station.floor.plan import words
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
)
from station.floor.plan.work import PlanHand
from station.planning.messages import (
    CERTAINTY,
    Blocked,
    BringForward,
    CuttingPlan,
    Release,
)
from station.queries.stock import name_part
from station.shop.cards import BUTTONS, button
from station.shop.codes import write_touch
from station.shop.faces import (
    Block,
    Cell,
    Decision,
    Face,
    Hint,
    Listing,
    Pairs,
    Press,
    Row,
    Table,
)
from station.shop.file_requests import OrderRow
from station.shop.views import View
from station.shop.words import Say, day, length, say, say_more

TITLE = say("What to cut")
MOST, LESS, LEAST = 4, 3, 1  # rows of what else to cut; by how many tables of queued batches
WAITING = 2  # of what can wait, where there is much else to cut
ORDERED = 2  # rows of what to order
CROWDED = 2  # rows of what else there is to cut, beyond which less of what waits is shown
LINES = 4  # of what is only told, where nothing else is to be cut


def screen(hand: PlanHand, view: View) -> Face:
    """Shows the plan; before the first thought, that it is thought about."""
    plan = find_plan(hand)
    if plan is None:
        return Face(title=TITLE, where=say("today and tomorrow"), main=(_show_none(hand),),
                    presses=(_offer_look(hand),))  # fmt: skip
    lines = list_lines(hand, view)
    chosen = find_chosen(hand, lines)
    then = [line for line in lines[bool(lines and lines[0].blocked) :] if line.release or
            line.blocked]  # fmt: skip
    sums = _show_sums(plan, lines, hand)
    sooner = find_forward(hand, view)
    beside = (*sums, *_list_marks(lines, chosen), *_list_orders(plan))
    if hand.work.chosen and chosen and chosen.release:
        beside = (_show_reasons(chosen.release, hand), *sums)
    return Face(
        title=TITLE,
        where=words.say_age(plan, hand.doing),
        main=(_show_first(lines, hand), *_list_then(lines, then, chosen, hand, sooner),
              *_list_sooner(sooner), *_list_waiting(lines, chosen, len(then), sooner),
              *_tell_more(plan, lines, len(then), view, sooner)),
        side=beside,
        presses=(*_list_presses(lines, chosen), *_offer_order_list(plan, hand), _offer_look(hand)),
        weights=(66, 0, 34),
    )  # fmt: skip


def _show_sums(
    plan: CuttingPlan, lines: tuple[PlanLine, ...], hand: PlanHand
) -> tuple[Pairs, ...]:
    """Shows what comes of doing all of it; nothing where there is nothing to do."""
    if not any(line.release for line in lines):
        return ()
    return (Pairs(title=say("If you do this"), rows=words.list_sums(plan, hand.now)),)


def _show_none(hand: PlanHand) -> Block:
    """Shows that nothing was thought yet."""
    if hand.doing:
        return Hint(title=say("Looking at orders, rack, queues and history"),
                    right=say("{n} %", n=int(hand.doing.share * 100)),
                    note=say("What to cut next stands here in a moment."))  # fmt: skip
    return Hint(title=say("Nothing is looked at"), note=say("Touch “Look again”."))


def _offer_look(hand: PlanHand) -> Press:
    """Offers to stop looking, or to look anew: one place for both."""
    label = say("Stop looking") if hand.doing else say("Look again")
    return Press(label=label, code=button("think"))


def _show_first(lines: tuple[PlanLine, ...], hand: PlanHand) -> Block:
    """Shows the part that blocks most, with its one button."""
    first = lines[0].blocked if lines else None
    if first is None:
        return Hint(title=say("No order waits for a part that is not under way"),
                    note=say("What follows fills the rack.") if lines
                    else say("Nothing has to be cut now."), tone="good")  # fmt: skip
    release = first.release
    if release is None:
        return Decision(title=words.say_blocked(first), matter=words.say_matter(first),
                        notes=(words.say_why_not(first),))  # fmt: skip
    return Decision(
        title=words.say_blocked(first),
        matter=words.say_matter(first),
        offer=words.say_offer(release),
        notes=_note_offer(first, release, hand),
        press=Press(
            label=say("Release {n}, print", n=release.sheets),
            code=button("release_first"),
            style="primary" if release.router else "off",
        ),
    )


def _note_offer(blocked: Blocked, release: Release, hand: PlanHand) -> tuple[Say, ...]:
    """Says when it is cut, whether it is enough, and what is free in the store, a line each."""
    when = words.WHY_NOT.get(blocked.why_not) or words.say_when(release, hand.now)
    return (when, words.say_enough(release, CERTAINTY), words.say_store(release))


def _list_then(
    lines: tuple[PlanLine, ...],
    then: Sequence[PlanLine],
    chosen: PlanLine | None,
    hand: PlanHand,
    sooner: BringForward | None,
) -> tuple[Table, ...]:
    """Lists what else blocks, then all other sheets."""
    if not then:
        return ()
    title = say("And then")
    most = (MOST, LESS, LEAST)[any(line.take_back for line in lines) + (sooner is not None)]
    if len(then) > most:
        title = say("And then, and {n} more", n=len(then) - most)
    heads = (say("cut file"), say("sheets"), say("days of stock"), say("because"),
             say("router, ends"))  # fmt: skip
    rows = tuple(_make_row(line, lines, chosen, hand) for line in then[:most])
    return (Table(title=title, columns=heads, rows=rows, thin=True),)


def _touch_row(line: PlanLine, lines: tuple[PlanLine, ...]) -> str:
    """Gives the code of a line's row; beyond the last row card it cannot be touched."""
    row = f"row_{lines.index(line) + 1}"
    return button(row) if row in BUTTONS else ""


def _make_row(
    line: PlanLine, lines: tuple[PlanLine, ...], chosen: PlanLine | None, hand: PlanHand
) -> Row:
    code, selected = _touch_row(line, lines), line == chosen
    release, blocked = line.release, line.blocked
    if release is None:
        assert blocked is not None
        lacks = words.LACKS.get(blocked.why_not, words.NOT_YET)
        cells = (Cell(text="–", tone="quiet"), Cell(text="–", tone="quiet"),
                 Cell(text=words.say_blocks(blocked), tone="attention"),
                 Cell(text=lacks, tone="stop"))  # fmt: skip
        note = say("{n} wanted", n=blocked.wanted)
        return Row(title=blocked.name, note=note, cells=cells, code=code, selected=selected)
    because = words.say_because(release, hand.now)
    if blocked:  # its name is read in the same row where the sheets are cut for it
        own = blocked.name == release.part_name
        because = words.say_blocks(blocked) if own else words.say_blocked(blocked)
    return Row(
        title=release.name,
        note=say("for {part}", part=release.part_name),
        code=code,
        selected=selected,
        cells=(
            Cell(text=_say_sheets(line, lines), bold=True),
            Cell(text=words.say_stock(release)),
            Cell(text=because, tone="attention" if blocked else ""),
            Cell(
                text=words.say_end(release, hand.now),
                tone="quiet" if release.router else "attention",
            ),
        ),
    )


def _say_sheets(line: PlanLine, lines: tuple[PlanLine, ...]) -> Say:
    """Says how many sheets a line is; a file that makes several parts is cut once for them."""
    before = lines[: lines.index(line)]
    if line.blocked and any(earlier.release == line.release for earlier in before):
        return say("the same")
    return say("{n}", n=line.release.sheets if line.release else 0)


def _list_sooner(forward: BringForward | None) -> tuple[Table, ...]:
    """Lists the queued batch that an order wants sooner, with its button."""
    if forward is None:
        return ()
    what, why = words.say_forward(forward)
    press = Press(label=say("Cut {batch} sooner", batch=forward.batch),
                  code=write_touch("batch", forward.batch))  # fmt: skip
    return (Table(columns=(), rows=(Row(title=what, note=why, press=press),)),)


def _list_waiting(
    lines: tuple[PlanLine, ...],
    chosen: PlanLine | None,
    then: int,
    sooner: BringForward | None,
) -> tuple[Table, ...]:
    """Lists the queued batches that nobody needs yet, each with its button."""
    backs = [line for line in lines if line.take_back]
    if not backs:
        return ()
    most = 1 if then > CROWDED or (then and sooner) else WAITING
    title = say("Can wait: queued, but nobody needs it yet")
    if len(backs) > most:
        title = say("Can wait: queued, but nobody needs it yet; and {n} more", n=len(backs) - most)
    rows = tuple(_make_back_row(line, lines, chosen) for line in backs[:most])
    return (Table(title=title, columns=(), rows=rows),)


def _make_back_row(line: PlanLine, lines: tuple[PlanLine, ...], chosen: PlanLine | None) -> Row:
    back = line.take_back
    assert back is not None
    return Row(
        title=say("{file}, {n} {n|sheet|sheets}", file=back.name, n=back.sheets),
        note=words.say_waiting(back),
        code=_touch_row(line, lines),
        selected=line == chosen,
        press=Press(label=say("Take back {batch}", batch=back.batch),
                    code=write_touch("batch", back.batch)),
    )  # fmt: skip


def _tell_more(
    plan: CuttingPlan,
    lines: tuple[PlanLine, ...],
    then: int,
    view: View,
    sooner: BringForward | None,
) -> tuple[Pairs, ...]:
    """Tells what there is room for: what is put off, ahead, or lies for long."""
    waits = any(line.take_back for line in lines)
    nobody = tuple(name_part(view, part) for part in plan.uncovered)
    rows = (
        *words.say_uncovered(nobody),
        *words.say_put_off(plan),
        *words.say_besides(plan),
        *words.say_over_full(plan),
    )
    room = LINES if not then else LINES - 1 if not waits else int(then == 1)
    if sooner is not None:  # its row takes the place of three lines, or of all beside other rows
        room = 0 if then else LINES - 3 * waits
    rows = rows[:room]
    return (Pairs(rows=rows),) if rows else ()


def _show_reasons(release: Release, hand: PlanHand) -> Block:
    """Shows what the line that is looked at rests on."""
    return Pairs(title=say("{file}: why", file=release.name),
                 rows=words.list_reasons(release, hand.now))  # fmt: skip


def _list_marks(lines: tuple[PlanLine, ...], chosen: PlanLine | None) -> tuple[Table, ...]:
    """Lists the marks that are far off, each with the button that takes the suggested one over."""
    off = [line for line in lines if line.mark]
    if not off:
        return ()
    title = say_more(say("Minimums that are wrong"), len(off) - MARKS)
    rows = tuple(_make_mark_row(line, lines, chosen) for line in off[:MARKS])
    return (Table(title=title, columns=(), rows=rows),)


def _make_mark_row(line: PlanLine, lines: tuple[PlanLine, ...], chosen: PlanLine | None) -> Row:
    mark = line.mark
    assert mark is not None
    return Row(
        title=say("{part}: {mark}", part=mark.name, mark=mark.mark),
        note=words.say_mark_why(mark),
        code=_touch_row(line, lines),
        selected=line == chosen,
        press=Press(label=say("Set {n}", n=mark.should), code=write_touch("part", mark.part)),
    )


def _list_orders(plan: CuttingPlan) -> tuple[Block, ...]:
    """Lists the sheets, bits and mailers to order soon."""
    orders = list_order_rows(plan)
    rows = tuple(map(_make_order_row, orders[:ORDERED]))
    return (Listing(title=_title_order(orders), rows=rows),) if rows else ()


def _title_order(orders: tuple[OrderRow, ...]) -> Say | str:
    known = all(order.lead_known for order in orders)
    title = say("Order soon") if known else say("Order soon; lead time not known")
    return say_more(title, len(orders) - ORDERED)


def _make_order_row(order: OrderRow) -> tuple[tuple[Cell, ...], str]:
    return (
        Cell(
            text=say("{size} mm bit", size=length(order.bit_mm)) if order.bit_mm else order.what,
            bold=True,
        ),
        Cell(text=say("{n}", n=order.quantity), bold=True),
        Cell(text=say("by {day}", day=day(order.by))),
    ), ""


def _offer_order_list(plan: CuttingPlan, hand: PlanHand) -> tuple[Press, ...]:
    """Offers what to order as a page and a file; once it is written, to note it as ordered.

    Where more or less is to be ordered by now, a new list is offered beside it.
    """
    if not plan.order:
        return ()
    listed, presses = list_on_list(hand), []
    if listed:
        presses.append(Press(label=say("All is ordered"), code=button("ordered")))
    if listed != list_bought(plan):
        presses.append(Press(label=say("Order list"), code=button("order_list")))
    return tuple(presses)


def _list_presses(lines: tuple[PlanLine, ...], chosen: PlanLine | None) -> tuple[Press, ...]:
    """Gives the button of the line that is looked at, where it is not the first one's own."""
    if chosen is None or chosen.release is None or (chosen == lines[0] and chosen.blocked):
        return ()
    release = chosen.release
    return (
        Press(
            label=say("Release {n} of {file}, print", n=release.sheets, file=release.name),
            code=button("release_line"),
            style="primary" if release.router else "off",
        ),
    )
