"""Shows what needs a look: in short beside the day, all of it, one thing with its story."""

from typing import Any

from station.floor.today import figures
from station.floor.today.dialogue import count_all, list_open, list_page
from station.floor.today.versions import compare_versions, say_move
from station.floor.today.work import TodayHand
from station.queries.looks import OPEN, Raised, list_alike, list_raised
from station.shop.beginning import not_here
from station.shop.cards import button
from station.shop.faces import (
    Cards,
    Cell,
    Entry,
    Face,
    Hint,
    Listing,
    Pairs,
    Press,
    Row,
    Table,
)
from station.shop.facts import Batch, Concern
from station.shop.views import Past, View, total
from station.shop.words import Say, clock, day, moment, say

BESIDE = 3  # that stand beside the day
SETTLED = 7  # of today
MOVES = 4  # of an entry that are shown
BACK = Press(label=say("Show the flow"), code=button("show_flow"))


def say_age(since: str, now: str) -> Say:
    """Says how long ago, in the largest whole unit."""
    if since[:10] != now[:10]:
        return say("since {day}", day=day(since))
    minutes = max(0, round((figures.read_hours(now) - figures.read_hours(since)) * 60))
    return say("{n} min", n=minutes) if minutes < 90 else say("{n} h", n=round(minutes / 60))


def list_worst(view: View, now: str) -> Listing:
    """Lists the first of all that needs a look, to touch."""
    raised, found = list_raised(view, now), list_open(view)
    above = raised[: BESIDE - min(1, len(found))]
    first = tuple(
        (
            (Cell(text=r.words, tone="attention"), Cell(text=_say_since(r, now), tone="quiet")),
            button(r.press),
        )
        for r in above
    )
    rows = tuple(
        (
            (
                Cell(text=c.text, tone="attention" if c.tone == "attention" else "stop"),
                Cell(text=say_age(c.since, now), tone="quiet"),
            ),
            button(f"row_{n}"),
        )
        for n, c in enumerate(found[: BESIDE - len(above)], 1)
    )
    more = len(found) - len(rows) + sum(r.things for r in raised[len(above) :])
    title = say("Needs a look, and {n} more", n=more) if more > 0 else say("Needs a look")
    return Listing(title=title, rows=(*first, *rows), empty=say("Nothing: all is well."))


def _say_since(raised: Raised, now: str) -> Say:
    return say_age(raised.since, now) if raised.since else say("now")


def show_all(hand: TodayHand, view: View) -> Face:
    """Shows everything that needs a look, a page at a time, and what was settled today."""
    raised, found, pages = list_page(hand, view)
    above = tuple(
        Row(
            title=r.words,
            cells=(Cell(text=_say_since(r, hand.now), tone="attention"),),
            code=button(r.press),
        )
        for r in raised
    )
    rows = tuple(
        Row(
            title=c.text,
            note=name_subject(c),
            cells=(Cell(text=say_age(c.since, hand.now), tone="attention"),),
            code=button(f"row_{n}"),
        )
        for n, c in enumerate(found, 1)
    )
    title = say(
        "Needs a look: {count}, page {page} of {pages}",
        count=count_all(view, hand.now),
        page=hand.work.page + 1,
        pages=pages,
    )
    turn = (
        Press(label=say("Page back"), code=button("back_page")),
        Press(label=say("Next page"), code=button("next_page")),
    )
    return Face(
        title=say("Shop today"),
        where=say("Needs a look"),
        main=(Table(columns=(say("what"), say("since")), rows=(*above, *rows), title=title),),
        side=(_list_settled(view, hand.now),),
        presses=(BACK, *(turn if pages > 1 else ())),
        weights=(62, 0, 38),
    )


def _list_settled(view: View, now: str) -> Cards:
    """Lists what was settled today: how, why, by whom."""
    done = view.shelf(Concern, f"settled/{now[:10]}", OPEN)[-SETTLED:]
    return Cards(
        title=say("Settled today"),
        entries=tuple(
            Entry(
                big=Say(c.settled),
                right=clock(c.settled_at),
                line1=c.text,
                line2=say("supervisor {by}: {why}", by=c.by, why=c.reason),
            )
            for c in reversed(done)
        ),
        empty=say("Nothing yet."),
    )


def name_subject(concern: Concern) -> Say:
    """Names what it is about: ``batch 00412``."""
    kind, _, number = concern.about.partition("/")
    return say("{kind} {id}", kind=Say(kind), id=number) if kind else Say()


def show_one(concern: Concern, view: View, *, together: bool = False) -> Face:
    """Shows one concern: what happened, where, by whom, and the ways to settle it."""
    choices = tuple(
        Entry(big=Say(choice), line1=say("settle it this way"), code=button(f"row_{n}"))
        for n, choice in enumerate(concern.choices, 1)
    )
    alike = list_alike(view, concern)
    label = say("It alone") if together else say("All like it: {n}", n=len(alike))
    more = (Press(label=label, code=button("all_alike")),) if len(alike) > 1 else ()
    settle = Press(
        label=say("Settle it"), code=button("settle"), wide=2,
        style="primary" if len(choices) == 1 else "off",
    )  # fmt: skip
    return Face(
        title=say("Shop today"),
        where=say("Needs a look"),
        main=(
            Hint(
                title=concern.text,
                note=say(
                    "{n} {n|more like it is|more like it are} settled with it.", n=len(alike) - 1
                )
                if together
                else say("A supervisor settles it with badge, PIN and a reason."),
                tone="attention",
            ),
            Pairs(title=say("What happened"), rows=_tell_story(concern, view)),
            *compare_versions(concern, view),
        ),
        side=(Cards(title=say("How is it settled?"), entries=choices),),
        presses=(settle, *more, Press(label=say("Leave it"), code=button("put_down"))),
        weights=(62, 0, 38),
    )


def _tell_story(concern: Concern, view: View) -> tuple[tuple[Say | str, Say | str], ...]:
    """Tells when, where, by whom, about what, and what was moved."""
    pairs: list[tuple[Say | str, Say | str]] = [(say("when"), moment(concern.since))]
    past = view.past(concern.id)
    if concern.now:
        pairs.append((say("why"), concern.now))
    elif past:
        pairs += _tell_who(past)
    elif concern.worker:
        pairs.append((say("by"), say("worker {id}", id=concern.worker)))
        pairs.append((say("at"), say("station {id}", id=concern.station)))
    elif older := not_here(view.begins()):
        pairs.append((say("by"), older))
    if concern.about:
        pairs.append((say("about"), name_subject(concern)))
    batch = view.get(Batch, concern.about.partition("/")[2])
    if batch and concern.about.startswith("batch/"):
        pieces = total(view.stock(batch=batch.id))
        pairs.append((say("its pieces"), say("{n}", n=pieces)))
    if past:
        pairs += [(say("moved"), say_move(m, view)) for m in past.moves[:MOVES]]
        if past.undone:
            pairs.append((say("since then"), say("taken back")))
    return tuple(pairs)


def _tell_who(past: Past[Any]) -> list[tuple[Say | str, Say | str]]:
    act = past.act
    found: list[tuple[Say | str, Say | str]] = []
    if act.worker:
        found.append((say("by"), say("worker {id}", id=act.worker)))
    if act.station:
        found.append((say("at"), say("station {id}", id=act.station)))
    return found
