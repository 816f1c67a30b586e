"""Shows what to cut next: what blocks, what else, what can wait, and the figures behind each."""

from station.floor.plan import words
from station.floor.plan.lines import PlanLine, find_chosen, find_plan, list_lines, list_order_rows
from station.floor.plan.work import PlanHand
from station.planning.messages import (
    Blocked,
    BringForward,
    CuttingPlan,
    MarkAdvice,
    OverFull,
    Release,
    TakeQueuedBack,
)
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
from station.shop.words import Say, day, figure, length, moment, say

CERTAINTY = 0.95
TITLE = say("What to cut")
ROWS = 4  # of what else there is to cut
WAITING = 2  # of what can wait
FEW = 2  # rows of what else there is to cut, below which there is room for more
SEVERAL = 3  # lines of what is only told, where there is room


def screen(hand: PlanHand, view: View) -> Face:
    """Shows the plan; before the first thought, that it is thought about."""
    plan = find_plan(hand)
    if plan is None:
        hint = Hint(title=say("Looking at orders, rack, queues and history"),
                    note=say("What to cut next stands here in a moment."))  # fmt: skip
        return Face(title=TITLE, where=say("today and tomorrow"), main=(hint,))
    lines = list_lines(hand, view)
    chosen = find_chosen(hand, lines)
    then = _list_then(lines, chosen, hand)
    roomy = sum(len(table.rows) for table in then) <= FEW
    marks = _list_marks(plan, SEVERAL if roomy else 1)
    sums = Pairs(title=say("If you do this"), rows=words.list_sums(plan, hand.now))
    beside = (sums, *_list_forward(plan, 1), *_list_waiting(lines), *_list_orders(plan),
              *(() if roomy else marks), *_list_over(plan, WAITING if roomy else 1))  # fmt: skip
    if hand.work.chosen and chosen and chosen.release:
        beside = (_show_reasons(chosen.release), sums)
    return Face(
        title=TITLE,
        where=say("today and tomorrow"),
        main=(_show_first(lines, hand), *then, *(marks if roomy else ())),
        side=beside,
        presses=(*_list_presses(lines, chosen), *_offer_order_list(plan)),
        weights=(66, 0, 34),
    )


def _show_first(lines: tuple[PlanLine, ...], hand: PlanHand) -> Block:
    """Shows the part that blocks most, with its one button."""
    first = lines[0].blocked if lines else None
    if first is None:
        return Hint(title=say("No order waits for a part that is not under way"),
                    note=say("What follows fills the rack."), tone="good")  # fmt: skip
    release = first.release
    if release is None:
        why = words.WHY_NOT.get(first.why_not, words.NOT_YET)
        return Decision(title=words.say_blocked(first), matter=words.say_matter(first),
                        notes=(why,))  # fmt: skip
    return Decision(
        title=words.say_blocked(first),
        matter=words.say_matter(first),
        offer=words.say_offer(release),
        notes=_note_offer(first, hand),
        press=Press(
            label=say("Release {n}, print", n=release.sheets),
            code=button("release_first"),
            style="primary" if release.router else "off",
        ),
    )


def _note_offer(blocked: Blocked, hand: PlanHand) -> tuple[Say, ...]:
    """Says when it is cut, whether it is enough, and what is free in the store."""
    release = blocked.release
    assert release is not None
    rests = say("{enough} {store}", enough=words.say_enough(release, CERTAINTY),
                store=words.say_store(release))  # fmt: skip
    if blocked.why_not:
        return (words.WHY_NOT[blocked.why_not], rests)
    return (words.say_when(release, hand.now), rests)


def _list_then(
    lines: tuple[PlanLine, ...], chosen: PlanLine | None, hand: PlanHand
) -> tuple[Table, ...]:
    """Lists what else blocks, then all other sheets."""
    rows = [
        _make_row(line, n, chosen, hand)
        for n, line in enumerate(lines, 1)
        if not line.take_back and not (n == 1 and line.blocked)
    ]
    if not rows:
        return ()
    title = say("And then")
    if len(rows) > ROWS:
        title = say("And then, and {n} more", n=len(rows) - ROWS)
    heads = (say("cut file"), say("sheets"), say("days of stock"), say("because"),
             say("router, ends"))  # fmt: skip
    return (Table(title=title, columns=heads, rows=tuple(rows[:ROWS])),)


def _make_row(line: PlanLine, number: int, chosen: PlanLine | None, hand: PlanHand) -> Row:
    row = f"row_{number}"
    code, selected = button(row) if row in BUTTONS else "", line == chosen
    release, blocked = line.release, line.blocked
    if release is None:
        assert blocked is not None
        cells = (Cell(text=""), Cell(text=""), Cell(text=words.say_blocked(blocked)),
                 Cell(text=""))  # fmt: skip
        return Row(title=blocked.name, cells=cells, code=code, selected=selected)
    because = words.say_blocked(blocked) if blocked else words.say_because(release, hand.now)
    return Row(
        title=release.name,
        note=say("for {part}", part=release.part_name),
        code=code,
        selected=selected,
        cells=(
            Cell(text=say("{n}", n=release.sheets), bold=True),
            Cell(text=words.say_stock(release)),
            Cell(text=because, tone="attention" if blocked else ""),
            Cell(
                text=say("R{id} · {ends}", id=release.router,
                         ends=words.say_time(release.ends, hand.now)),
                tone="quiet",
            ) if release.router else Cell(text=say("none free"), tone="attention"),
        ),
    )  # fmt: skip


def _list_waiting(lines: tuple[PlanLine, ...]) -> tuple[Block, ...]:
    """Lists the queued batches that nobody needs yet, each with its button."""
    backs = [line.take_back for line in lines if line.take_back]
    if not backs:
        return ()
    title = say("Can wait")
    if len(backs) > WAITING:
        title = say("Can wait, and {n} more", n=len(backs) - WAITING)
    head = say("queued, but nobody needs it yet")
    rows = tuple(map(_make_back_row, backs[:WAITING]))
    return (Table(title=title, columns=(head,), rows=rows),)


def _make_back_row(back: TakeQueuedBack) -> Row:
    days = say("not used") if back.days is None else words.say_days(back.days)
    return Row(
        title=say("{file}, {n} {n|sheet|sheets}", file=back.name, n=back.sheets),
        note=say("{days} days of {part}: {n} there, {wanted} wanted", days=days,
                 part=back.part_name, n=back.there, wanted=back.wanted),
        press=Press(label=say("Take back {batch}", batch=back.batch),
                    code=write_touch("batch", back.batch)),
    )  # fmt: skip


def _show_reasons(release: Release) -> Block:
    """Shows what the line that is looked at rests on."""
    return Pairs(title=say("{file}: why", file=release.name), rows=words.list_reasons(release))


def _list_marks(plan: CuttingPlan, most: int) -> tuple[Block, ...]:
    """Lists the marks that are far off."""
    rows = tuple(map(_make_mark_row, plan.marks[:most]))
    return (Listing(title=say("Marks that are off"), rows=rows),) if rows else ()


def _list_forward(plan: CuttingPlan, most: int) -> tuple[Block, ...]:
    """Lists the queued batches that orders want sooner than they are due in their queue."""
    rows = tuple(map(_make_forward_row, plan.forward[:most]))
    return (Listing(title=say("Cut sooner than queued"), rows=rows),) if rows else ()


def _make_forward_row(forward: BringForward) -> tuple[tuple[Cell, ...], str]:
    return (
        Cell(text=say("{batch} on router {router}", batch=forward.batch, router=forward.router),
             bold=True),
        Cell(text=say("order {order} wants {part}", order=forward.order, part=forward.part_name),
             tone="quiet"),
        Cell(text=moment(forward.by)),
    ), ""  # fmt: skip


def _list_over(plan: CuttingPlan, most: int) -> tuple[Block, ...]:
    """Lists the parts of which far more lies there than is used."""
    rows = tuple(map(_make_over_row, plan.over_full[:most]))
    return (Listing(title=say("On the rack for long"), rows=rows),) if rows else ()


def _list_orders(plan: CuttingPlan) -> tuple[Block, ...]:
    """Lists the sheets and bits to order soon."""
    orders = list_order_rows(plan)
    rows = tuple(map(_make_order_row, orders[:WAITING]))
    return (Listing(title=_title_order(orders), rows=rows),) if rows else ()


def _title_order(orders: tuple[OrderRow, ...]) -> Say:
    more = len(orders) - WAITING
    known = all(order.lead_known for order in orders)
    title = say("Order soon") if known else say("Order soon; lead time not known")
    return say("{title}: {n} more", title=title, n=more) if more > 0 else title


def _make_order_row(order: OrderRow) -> tuple[tuple[Cell, ...], str]:
    return (
        Cell(
            text=say("{size} mm bit", size=length(order.bit_mm)) if order.bit_mm else order.what,
            bold=True,
        ),
        Cell(text=say("{n}", n=order.quantity), bold=True),
        Cell(text=say("by {day}", day=day(order.by))),
    ), ""


def _make_mark_row(mark: MarkAdvice) -> tuple[tuple[Cell, ...], str]:
    return (
        Cell(text=mark.name, bold=True),
        Cell(text=say("{use} used a day", use=figure(mark.use)), tone="quiet"),
        Cell(text=say("{mark} → {should}", mark=mark.mark, should=mark.should)),
    ), ""


def _make_over_row(over: OverFull) -> tuple[tuple[Cell, ...], str]:
    days = (
        say("not used") if over.days is None
        else say("{days} days", days=words.say_days(over.days))
    )  # fmt: skip
    return (
        Cell(text=over.name, bold=True),
        Cell(text=say("{n}, {wanted} wanted", n=over.there, wanted=over.wanted), tone="quiet"),
        Cell(text=days),
    ), ""


def _offer_order_list(plan: CuttingPlan) -> tuple[Press, ...]:
    """Offers what to order as a page and a file, where there is anything."""
    if not list_order_rows(plan):
        return ()
    return (Press(label=say("Order list"), code=button("order_list")),)


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
