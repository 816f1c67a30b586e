"""Shows Shop today: each area's figures, the flow, the routers' day, what needs a look."""

from station.floor.today import figures, looks
from station.floor.today.figures import Day, RouterToday
from station.floor.today.work import TodayHand
from station.queries.carts import find_next_cart, is_loaded, say_when
from station.queries.handing_over import when_exactly
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
from station.shop.facts import Concern, Shop
from station.shop.views import View
from station.shop.words import Say, figure, say


def screen(hand: TodayHand, view: View) -> Face:
    """Shows the whole screen, or one concern with its choices."""
    concern = view.get(Concern, hand.subject) if hand.subject else None
    if concern:
        return looks.show_one(concern, view, together=hand.work.together)
    if hand.work.shown == "concerns":
        return looks.show_all(hand, view)
    shop = find_shop(view)
    day = figures.count_day(view, hand.now, shop)
    return Face(
        title=say("Shop today"),
        where=shop.name,
        top=(Places(items=_list_places(day, view, hand.now)),),
        main=(_draw_flow(day, shop, hand.now),),
        side=(_draw_bands(view, shop, hand.now), looks.list_worst(view, hand.now)),
        presses=(
            Press(label=say("What needs a look"), code=button("show_concerns"), style="primary"),
        ),
        weights=(66, 0, 34),
    )


def _say_rate(pieces: int, day: Day) -> Say:
    return say("{rate} an hour", rate=round(pieces / day.hours))


def _say_plan(plan: int) -> Say:
    """Says what there is to do today, done and still to do."""
    return say("of {n} {n|part|parts}", n=plan)


def _list_places(day: Day, view: View, now: str) -> tuple[Place, ...]:
    return (
        Place(
            name=say("Loading"),
            done=say("{n}", n=day.sheets),
            unit=say("of {n} {n|sheet|sheets}", n=day.planned),
            rate=say("{rate} an hour", rate=figure(day.sheets / day.hours, 1)),
        ),
        _make_place(say("Popping"), "popped", day, waits="popping"),
        _make_place(say("Trimming"), "trimmed", day, waits="trimming"),
        _make_place(say("Packing"), "packed", day),
        Place(
            name=say("Cart"),
            done=say("{n}", n=day.packs),
            unit=say("{n|pack sent|packs sent}", n=day.packs),
            rate=_say_cart(view, now),
            waiting=day.packs_waiting,
        ),
    )


def _say_cart(view: View, now: str) -> Say | str:
    """Says when the next cart goes, or should have gone; nothing once all are gone."""
    cart = find_next_cart(view, now)
    return say_when(cart, now, loaded=is_loaded(view, cart)) if cart else ""


def _make_place(name: Say, through: str, day: Day, waits: str = "") -> Place:
    """Makes the figures of an area whose work is counted in parts."""
    done = day.through[through]
    return Place(
        name=name,
        done=say("{n}", n=done),
        unit=_say_plan(done + day.to_do[through]),
        rate=_say_rate(done, day),
        waiting=day.waiting[waits] if waits else None,
        holding_up=bool(waits) and figures.find_holding_up(day) == waits,
    )


def _draw_flow(day: Day, shop: Shop, now: str) -> Flow:
    start, end, now_h = day.start, figures.read_end(shop), figures.read_hours(now)
    lines = tuple(
        (
            say("{name} {count}", name=Say(name), count=day.through[name]),
            figures.add_up(day.by_hour[name], start, max(now_h, start)),
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


def _say_doing(doing: RouterToday, now: str) -> tuple[Say, str]:
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
            "stopped since {at}: {why}", at=when_exactly(bed.stopped, now), why=doing.reason
        ), "attention"
    return (say("loading {batch}", batch=bed.batch) if bed.batch else say("free")), "quiet"


def _draw_bands(view: View, shop: Shop, now: str) -> Bands:
    start = figures.read_start(shop)
    items = []
    for doing in figures.list_routers_today(view, now):
        words, tone = _say_doing(doing, now)
        items.append(
            Band(
                name=doing.router.name,
                state=words,
                tone=tone,  # type: ignore[arg-type]
                spans=_list_spans(view, doing, now),
            )
        )
    return Bands(
        title=say("Routers"),
        items=tuple(items),
        start_h=start,
        end_h=max(figures.read_end(shop), figures.read_hours(now)),
    )


def _list_spans(view: View, doing: RouterToday, now: str) -> tuple[tuple[float, float, str], ...]:
    """Lists today's cutting as spans, from the sheets that came off the bed.

    What began before midnight is drawn from there on.
    """
    spans = []
    for slip in list_cut(view, doing.router.id, now[:10]):
        off = figures.read_hours(slip.at)
        spans.append((max(0.0, off - slip.minutes / 60), off, "cutting"))
    bed = doing.bed
    since = bed.stopped if bed.state == "stopped" else bed.started
    if bed.state in ("cutting", "stopped"):
        first = figures.read_hours(since) if since[:10] == now[:10] else 0.0
        spans.append((first, figures.read_hours(now), bed.state))
    return tuple(spans)
