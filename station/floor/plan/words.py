"""Says in words what planning answers in figures: what blocks, what is offered, and why."""

from station.planning.messages import (
    Blocked,
    BringForward,
    CuttingPlan,
    MarkAdvice,
    Release,
    TakeQueuedBack,
)
from station.queries import why_cut
from station.queries.shortage import say_blocking
from station.shop.rooms import Doing
from station.shop.words import Say, clock, figure, moment, say, several, together, when_ahead

NOT_YET = say("can't tell yet")
FEW_DAYS = 10.0  # below it a tenth of a day counts
VARIES = 0.1  # share of its days by which a lead must vary to be told as two figures
FEW_LACK = 0.0005  # share of pieces; fewer are told as none
OVER = 3  # parts that lie for long that are named

Pair = tuple[Say | str, Say | str]


def say_blocked(blocked: Blocked) -> Say:
    """Says which part blocks how many orders."""
    return say_blocking(blocked.name, len(blocked.orders), blocked.late)


def say_blocks(blocked: Blocked) -> Say:
    """Says the same beside the part's name."""
    n, late = len(blocked.orders), blocked.late
    if not late:
        return say("Blocks {n} {n|order|orders}", n=n)
    return say("Blocks {n} {n|order|orders}, {late} late", n=n, late=late)


def say_matter(blocked: Blocked) -> Say:
    """Says what is wanted, what is there, what is under way, what is kept back."""
    words = [
        say("{n} wanted", n=blocked.wanted),
        say("{n} on the rack", n=blocked.there) if blocked.there else say("none on the rack"),
    ]
    if blocked.kept_back:
        words.append(say("{n} kept back", n=blocked.kept_back))
    words.append(
        say("{n} under way", n=blocked.under_way) if blocked.under_way else say("none under way")
    )
    if blocked.unsettled:
        words.append(say("{n} {n|recount|recounts} of it not settled", n=blocked.unsettled))
    *before, last = words
    first = before[0]
    for phrase in before[1:]:
        first = say("{first}, {next}", first=first, next=phrase)
    return say("{first}, {next}", first=first, next=last)


WHY_NOT = {
    "no file": say("No approved cut file makes it: approve one in the office."),
    "none runs it": say("No router in use runs its file: enter one in the office."),
    "no router": say("Every router that runs its file stands still: end a stop at loading."),
    "no sheets": say("Too few sheets in the store: receive some, or order them."),
}
LACKS = {  # the same in a row of the list
    "no file": say("no approved file"),
    "none runs it": say("no router runs it"),
    "no router": say("all routers stopped"),
    "no sheets": say("too few sheets"),
}


def say_why_not(blocked: Blocked) -> Say:
    """Says why a part cannot be cut now, and what to do."""
    return WHY_NOT.get(blocked.why_not, NOT_YET)


def say_offer(release: Release) -> Say:
    """Says which file on which router, and how many sheets."""
    if not release.router:
        return say("{file}, {n} {n|sheet|sheets}", file=release.name, n=release.sheets)
    return say("{file} on {router}, {n} {n|sheet|sheets}", file=release.name,
               router=release.router_name, n=release.sheets)  # fmt: skip


def say_when(release: Release, now: str) -> Say:
    """Says when it starts and when its last sheet is off the bed, short enough for one line."""
    starts: Say | str = when_ahead(release.starts, now)
    if release.behind:
        starts = say("{at} behind {n} {n|batch|batches}", at=starts, n=release.behind)
    return say("starts {starts} · off the bed {ends}", starts=starts,
               ends=when_ahead(release.ends, now))  # fmt: skip


def say_enough(release: Release, asked: float) -> Say:
    """Says whether what comes out good is enough, or that nobody can tell yet."""
    all_ = say("{n} × {each}", n=release.sheets, each=release.each)
    if release.loss is None or release.certainty is None:
        return say("{all} come off; how many are lost can't be told yet.", all=all_)
    loss = say_share(release.loss)
    if release.certainty >= asked - 1e-9 and release.serves < release.orders:
        return say("{cut} less {loss} for loss: for the first {few} of {all} {all|order|orders}.",
                   cut=all_, loss=loss, few=release.serves, all=release.orders)  # fmt: skip
    if release.certainty >= asked - 1e-9:
        return say("{cut} less {loss} for loss: enough with {sure} % certainty.", cut=all_,
                   loss=loss, sure=round(asked * 100))  # fmt: skip
    if release.more:
        return say("{cut} less {loss} for loss: {more} more {more|sheet|sheets} of it "
                   "{more|follows|follow}.", cut=all_, loss=loss, more=release.more)  # fmt: skip
    return say("{cut} less {loss} for loss: enough in {sure} of 100 cases.", cut=all_, loss=loss,
               sure=int(release.certainty * 100))  # fmt: skip


def say_store(release: Release) -> Say:
    """Says how many sheets lie in the store that no batch in a queue takes."""
    if release.in_store is None:
        return say("Nobody counts the sheets of {material}.", material=release.material)
    return say("{n} {n|sheet|sheets} of {material} in the store {n|is|are} free.",
               n=release.in_store, material=release.material)  # fmt: skip


def say_certainty(chance: float) -> Say:
    """Says a chance in per cent; nothing is certain."""
    return say("over 99 %") if chance > 0.99 else say("{n} %", n=int(chance * 100))


def say_share(share: float) -> Say:
    """Says a share in per cent, a small one with its tenth."""
    return say("{n} %", n=figure(share * 100, 1 if share < 0.0995 else 0))


def say_days(days: float | None) -> Say | str:
    """Says worked days; below zero orders lack it already."""
    if days is None:
        return "–"
    if days < 0:
        return "0"
    return figure(days, 1 if days < FEW_DAYS else 0)


def say_stock(release: Release) -> Say | str:
    """Says how long the part lasts before and after."""
    if release.days_after is None:
        return NOT_YET
    return say("{before} → {after}", before=say_days(release.days_before),
               after=say_days(release.days_after))  # fmt: skip


def say_because(release: Release, now: str) -> Say:
    """Says why it is cut, in a few words."""
    if release.due:
        return say("{n} {n|order|orders}, first due {due}", n=release.orders or 1,
                   due=when_ahead(release.due, now))  # fmt: skip
    if release.because == "mark":
        return say("below its minimum")
    if release.because == "ahead":
        return say("for packs ahead and own pushes")
    return say("its minimum {mark} is too low", mark=release.mark)


def say_why_cut(release: Release) -> Say:
    """Says why it is cut as it is written on the batch, and for ever."""
    if release.due:
        return why_cut.wait_for(release.part_name, release.orders or 1)
    if release.because == "mark":
        return why_cut.lack_of_mark(release.part_name, release.mark)
    if release.because == "ahead":
        return why_cut.ahead_of_orders(release.part_name)
    return why_cut.used_a_day(release.part_name, release.use or 0.0)


def say_end(release: Release, now: str) -> Say:
    """Says on which router, and when its last sheet is off the bed."""
    if not release.router:
        return LACKS["no router"]
    return say("R{id} · {ends}", id=release.router, ends=when_ahead(release.ends, now))


def say_age(plan: CuttingPlan, doing: Doing | None) -> Say:
    """Says of when the figures are, and how far newer ones are."""
    at = clock(plan.at)
    if doing is None:
        return say("as of {at}", at=at)
    return say("as of {at} · {what}, {n} %", at=at, what=doing.what, n=int(doing.share * 100))


def say_waiting(back: TakeQueuedBack) -> Say:
    """Says how long a queued batch's parts last without it."""
    if back.days is None:
        return say("{part} is not used: {n} there, {wanted} wanted", part=back.part_name,
                   n=back.there, wanted=back.wanted)  # fmt: skip
    return say("{days} days of {part}: {n} there, {wanted} wanted", days=say_days(back.days),
               part=back.part_name, n=back.there, wanted=back.wanted)  # fmt: skip


def say_forward(forward: BringForward) -> Pair:
    """Says which queued batch an order wants sooner than it is due."""
    return (
        say("{batch} on router {router} should be cut sooner", batch=forward.batch,
            router=forward.router),
        say("order {order} wants {part}, {at}", order=forward.order, part=forward.part_name,
            at=moment(forward.due)),
    )  # fmt: skip


def say_uncovered(names: tuple[str, ...]) -> tuple[Pair, ...]:
    """Says which parts are needed though no approved cut file makes them."""
    if not names:
        return ()
    return ((say("No approved cut file makes"), several(list(names[:OVER]))),)


def say_put_off(plan: CuttingPlan) -> tuple[Pair, ...]:
    """Says how many sheets for the rack are put off, and why; nothing where none are."""
    if not plan.put_off:
        return ()
    why = say("{n} {n|piece is|pieces are} under way: more would wait", n=plan.under_way)
    return ((say("{n} {n|sheet|sheets} for the rack put off", n=plan.put_off), why),)


def say_besides(plan: CuttingPlan) -> tuple[Pair, ...]:
    """Says what is wanted besides orders and marks."""
    if not plan.besides:
        return ()
    named = [say("{n} {part}", n=b.pieces, part=b.name) for b in plan.besides[:OVER]]
    return ((say("For packs ahead and own pushes"), together(named)),)


def say_over_full(plan: CuttingPlan) -> tuple[Pair, ...]:
    """Says of which parts far more lies there than is used, and how long they last."""
    last = [
        say("{part}: not used", part=p.name) if p.days is None
        else say("{part}: {days} days", part=p.name, days=say_days(p.days))
        for p in plan.over_full[:OVER]
    ]  # fmt: skip
    return ((say("On the rack for long"), together(last)),) if last else ()


def say_mark_why(mark: MarkAdvice) -> Say:
    """Says from what a suggested mark follows: use, how long until more is there, service."""
    use, service = figure(mark.use), figure(mark.service * 100)
    if mark.varies < VARIES * mark.days:
        return say("{use} used a day · {days} days until more is there · {service} % of uses",
                   use=use, days=figure(mark.days), service=service)  # fmt: skip
    return say("{use} used a day · {few} to {many} days until more is there · {service} % of uses",
               use=use, few=figure(max(0.0, mark.days - mark.varies), 1),
               many=figure(mark.days + mark.varies, 1), service=service)  # fmt: skip


def say_lacks(mark: MarkAdvice) -> Say:
    """Says what lacks until more is there with a mark as it is, and as it should be."""
    then = say_share(mark.lacks_then) if mark.lacks_then >= FEW_LACK else say("none")
    return say("With {mark}, {lacks} of the pieces lack until more is there; "
               "with {should}: {then}",
               mark=mark.mark, lacks=say_share(mark.lacks), should=mark.should,
               then=then)  # fmt: skip


def list_reasons(release: Release, now: str) -> tuple[Pair, ...]:
    """Lists what a release rests on, figure by figure."""
    pairs: list[Pair] = [
        (say("cut for"), release.part_name),
        (say("good ones wanted"), say("{n}", n=release.need)),
        (say("pieces cut"), say("{n}", n=release.each * release.sheets)),
        (say("usual loss"), NOT_YET if release.loss is None else say_share(release.loss)),
        (say("used a day"), NOT_YET if release.use is None else figure(release.use)),
        (say("days of stock"), say_stock(release)),
        (say("pieces beyond need"), say("{n}", n=release.beyond)),
        (say("router minutes"), say("{n}", n=round(release.minutes))),
        (say("at the bed"), say("{n} min", n=round(release.people_minutes))),
        (say("{material} left", material=release.material),
         NOT_YET if release.store_left is None else say("{n}", n=release.store_left)),
    ]  # fmt: skip
    if release.certainty is not None and not release.more:
        pairs.insert(3, (say("enough with"), say_certainty(release.certainty)))
    if release.besides:
        pairs.insert(2, (say("for packs ahead and own pushes"), say("{n}", n=release.besides)))
    if release.router:
        pairs.append(say_router(release, now))
    if release.bit_missing:
        pairs.append((say("a bit it takes"), say("is not in the router")))
    return tuple(pairs)


def say_router(release: Release, now: str) -> Pair:
    """Says why this router: it ends there first, or no other takes it.

    Where turns were changed for the orders' sake, another one may end it sooner at the cost of
    what waits there.
    """
    if not release.next_router:
        return (release.router_name, say("alone runs it now"))
    if release.next_ends < release.ends:
        return (release.router_name, say("others run it too"))
    return (
        say("{router} ends first", router=release.router_name),
        say(
            "then {router}, {at}",
            router=release.next_router,
            at=when_ahead(release.next_ends, now),
        ),
    )


def list_sums(plan: CuttingPlan, now: str) -> tuple[Pair, ...]:
    """Lists what comes of doing all of it."""
    return (
        (say("orders that wait for parts"), say("{before} → {after}", before=plan.waiting,
                                                after=plan.waiting_after)),
        (say("late now"), say("{n} of {all}", n=plan.late, all=plan.orders)),
        (say("all cut by"), when_ahead(plan.done_by, now)),
        (say("pieces beyond need"), say("{n}", n=plan.beyond)),
        (say("time to load"), say("{n} min", n=round(plan.people_minutes))),
    )  # fmt: skip
