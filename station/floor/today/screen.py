"""Shop today: each area's figures, the flow, the routers' day, what needs a look."""

from station.floor.today import figures, looks
from station.floor.today.figures import Day, Doing
from station.queries.settings import find_shop
from station.queries.underway import list_cut
from station.shop.cards import button
from station.shop.faces import (
    Band,
    Bands,
    Face,
    Flow,
    Place,
    Places,
    Press,
)
from station.shop.facts import Cart, Concern, Shop
from station.shop.rooms import Hand
from station.shop.views import View
from station.shop.words import Say, clock, say


def screen(hand: Hand, view: View) -> Face:
    """The whole screen, or one concern with its choices."""
    concern = view.get(Concern, hand.subject) if hand.subject else None
    if concern:
        return looks.one(concern, view)
    if hand.work.get("shown") == "concerns":
        return looks.all_of_them(hand, view)
    shop = find_shop(view)
    day = figures.day(view, hand.now, shop)
    return Face(
        title=say("Shop today"),
        where=shop.name,
        top=(Places(items=_places(day, view)),),
        main=(_flow(day, shop, hand.now),),
        side=(_bands(view, shop, hand.now), looks.beside(view, hand.now)),
        presses=(
            Press(label=say("What needs a look"), code=button("show_concerns"), style="primary"),
        ),
        weights=(66, 0, 34),
    )


def _rate(pieces: int, day: Day) -> Say:
    return say("{rate} an hour", rate=round(pieces / day.hours))


def _of(plan: int) -> Say:
    """What there is to do today, done and still to do."""
    return say("of {n} {n|part|parts}", n=plan)


def _places(day: Day, view: View) -> tuple[Place, ...]:
    cart = next(iter(view.shelf(Cart, "all")), None)
    return (
        Place(
            name=say("Loading"),
            done=say("{n}", n=day.sheets),
            unit=say("of {n} {n|sheet|sheets}", n=day.planned),
            rate=say("{rate} an hour", rate=round(day.sheets / day.hours, 1)),
        ),
        _parts_place(say("Popping"), "popped", day, waits="popping"),
        _parts_place(say("Trimming"), "trimmed", day, waits="trimming"),
        _parts_place(say("Packing"), "packed", day),
        Place(
            name=say("Cart"),
            done=say("{n}", n=day.packs),
            unit=say("{n|pack left|packs left}", n=day.packs),
            rate=say("goes {at}", at=cart.goes) if cart and cart.goes else "",
            waiting=day.packs_waiting,
        ),
    )


def _parts_place(name: Say, through: str, day: Day, waits: str = "") -> Place:
    """An area whose work is counted in parts."""
    done = day.through[through]
    return Place(
        name=name,
        done=say("{n}", n=done),
        unit=_of(done + day.to_do[through]),
        rate=_rate(done, day),
        waiting=day.waiting[waits] if waits else None,
        holding_up=bool(waits) and figures.holding_up(day) == waits,
    )


def _flow(day: Day, shop: Shop, now: str) -> Flow:
    start, end, now_h = figures.start_of(shop), figures.end_of(shop), figures.hours(now)
    lines = tuple(
        (
            say("{name} {count}", name=name, count=day.through[name]),
            figures.cumulative(day.by_hour[name], start, max(now_h, start)),
        )
        for name, _, _ in figures.THROUGH[:4]
    )
    return Flow(
        title=say("Parts through the shop"),
        note=say("height between two lines: parts waiting · width: how long they wait"),
        lines=lines,
        start_h=start,
        end_h=max(end, now_h),
        now_h=now_h,
        plan=day.through["cut"] + day.to_do["cut"],
    )


def _doing(doing: Doing) -> tuple[Say, str]:
    bed = doing.bed
    if bed.state == "cutting" and not doing.free_in:
        words = say("{batch}, sheet {sheet}: should be off", batch=bed.batch, sheet=bed.sheet)
        return words, "attention"
    if bed.state == "cutting":
        return say(
            "cutting {batch}, sheet {sheet}, free in {left} min",
            batch=bed.batch,
            sheet=bed.sheet,
            left=doing.free_in,
        ), "good"
    if bed.state == "stopped":
        return say(
            "stopped since {at}: {why}", at=clock(bed.stopped), why=doing.reason
        ), "attention"
    return (say("loading {batch}", batch=bed.batch) if bed.batch else say("free")), "quiet"


def _bands(view: View, shop: Shop, now: str) -> Bands:
    start = figures.start_of(shop)
    items = []
    for doing in figures.routers(view, now):
        words, tone = _doing(doing)
        items.append(
            Band(
                name=doing.router.name,
                state=words,
                tone=tone,  # type: ignore[arg-type]
                spans=_spans(view, doing, now),
            )
        )
    return Bands(
        title=say("Routers"),
        items=tuple(items),
        start_h=start,
        end_h=max(figures.end_of(shop), figures.hours(now)),
    )


def _spans(view: View, doing: Doing, now: str) -> tuple[tuple[float, float, str], ...]:
    """Today's cutting as spans, from the sheets that came off the bed."""
    spans = []
    for slip in list_cut(view, doing.router.id, now[:10]):
        off = figures.hours(slip.at)
        spans.append((off - slip.minutes / 60, off, "cutting"))
    bed = doing.bed
    if bed.state == "cutting" and bed.started[:10] == now[:10]:
        spans.append((figures.hours(bed.started), figures.hours(now), "cutting"))
    if bed.state == "stopped" and bed.stopped[:10] == now[:10]:
        spans.append((figures.hours(bed.stopped), figures.hours(now), "stopped"))
    return tuple(spans)
