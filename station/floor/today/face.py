"""Shop today: each area's figures, the flow, the routers' day, what needs a look."""

from station.floor.today import figures
from station.floor.today.figures import Day, Doing
from station.shop.cards import button
from station.shop.faces import (
    Band,
    Bands,
    Cards,
    Cell,
    Entry,
    Face,
    Flow,
    Hint,
    Listing,
    Pairs,
    Place,
    Places,
    Press,
)
from station.shop.facts import Batch, Cart, Concern, Shop, Slip
from station.shop.rooms import Hand
from station.shop.views import View, total
from station.shop.words import Say, clock, say


def face(hand: Hand, view: View) -> Face:
    """The whole screen, or one concern with its choices."""
    concern = view.get(Concern, hand.subject) if hand.subject else None
    if concern:
        return _concern(concern, view)
    shop = view.get(Shop, "shop") or Shop(id="shop")
    day = figures.day(view, hand.now, shop)
    return Face(
        title=say("Shop today"),
        where=shop.name,
        top=(Places(items=_places(day, view)),),
        main=(_flow(day, shop, hand.now),),
        side=(_bands(view, shop, hand.now), _concerns(view, hand.now)),
        weights=(66, 0, 34),
    )


def _rate(pieces: int, day: Day) -> Say:
    return say("{rate} an hour", rate=round(pieces / day.hours))


def _places(day: Day, view: View) -> tuple[Place, ...]:
    slow = figures.holding_up(day)
    cart = next(iter(view.shelf(Cart, "all")), None)
    return (
        Place(
            name=say("Loading"),
            done=say("{n}", n=day.sheets),
            unit=say("of {n} {n|sheet|sheets}", n=day.planned),
            rate=say("{rate} an hour", rate=round(day.sheets / day.hours, 1)),
        ),
        Place(
            name=say("Popping"),
            done=say("{n}", n=day.through["popped"]),
            unit=say("{n|part|parts}", n=day.through["popped"]),
            rate=_rate(day.through["popped"], day),
            waiting=day.waiting["popping"],
            holding_up=slow == "popping",
        ),
        Place(
            name=say("Trimming"),
            done=say("{n}", n=day.through["trimmed"]),
            unit=say("{n|part|parts}", n=day.through["trimmed"]),
            rate=_rate(day.through["trimmed"], day),
            waiting=day.waiting["trimming"],
            holding_up=slow == "trimming",
        ),
        Place(
            name=say("Packing"),
            done=say("{n}", n=day.through["packed"]),
            unit=say("{n|part|parts}", n=day.through["packed"]),
            rate=_rate(day.through["packed"], day),
        ),
        Place(
            name=say("Cart"),
            done=say("{n}", n=day.packs),
            unit=say("{n|pack left|packs left}", n=day.packs),
            rate=say("goes {at}", at=cart.goes) if cart and cart.goes else "",
            waiting=day.packs_waiting,
        ),
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
    popped = view.shelf(Slip, f"cut/{doing.router.id}/{now[:10]}", 100)
    fresh = [s for s in view.shelf(Slip, "popping", 100) if s.router == doing.router.id]
    for slip in (*popped, *(s for s in fresh if s.at[:10] == now[:10])):
        off = figures.hours(slip.at)
        spans.append((off - slip.minutes / 60, off, "cutting"))
    bed = doing.bed
    if bed.state == "cutting" and bed.started[:10] == now[:10]:
        spans.append((figures.hours(bed.started), figures.hours(now), "cutting"))
    if bed.state == "stopped" and bed.stopped[:10] == now[:10]:
        spans.append((figures.hours(bed.stopped), figures.hours(now), "stopped"))
    return tuple(spans)


def age(since: str, now: str) -> Say:
    """How long ago, in the largest whole unit."""
    if since[:10] != now[:10]:
        return say("since {day}", day=f"{since[8:10]}.{since[5:7]}.")
    minutes = max(0, round((figures.hours(now) - figures.hours(since)) * 60))
    return say("{n} min", n=minutes) if minutes < 90 else say("{n} h", n=round(minutes / 60))


def _concerns(view: View, now: str) -> Listing:
    rows = tuple(
        (
            (
                Cell(text=c.text, tone="attention" if c.tone == "attention" else "stop"),
                Cell(text=age(c.since, now), tone="quiet"),
            ),
            button(f"row_{n}"),
        )
        for n, c in enumerate(view.shelf(Concern, "open", 6), 1)
    )
    return Listing(title=say("Needs a look"), rows=rows, empty=say("Nothing: all is well."))


def _concern(concern: Concern, view: View) -> Face:
    """One concern: what happened, when, about what, and the ways to settle it."""
    batch = view.get(Batch, concern.about.partition("/")[2])
    pairs: list[tuple[Say | str, Say | str]] = [
        (say("since"), f"{concern.since[:10]} {clock(concern.since)}"),
        (say("about"), concern.about.replace("/", " ")),
    ]
    if batch:
        pairs.append((say("its pieces"), say("{n}", n=total(view.stock(batch=batch.id)))))
    choices = tuple(
        Entry(big=choice, line1=say("settle it this way"), code=button(f"row_{n}"))
        for n, choice in enumerate(concern.choices, 1)
    )
    return Face(
        title=say("Needs a look"),
        main=(
            Hint(title=concern.text, note=say("A supervisor settles it with badge and PIN.")),
            Pairs(rows=tuple(pairs)),
            Cards(title=say("Choose"), entries=choices),
        ),
        presses=(Press(label=say("Leave it"), code=button("put_down")),),
    )
