"""What each button of the loading room means with the work in hand."""

from collections.abc import Callable
from dataclasses import replace

from station.floor.loading.before import Now, bare, counts, off, routers, start, tick, ticks
from station.floor.loading.codes import choose_part, look_at
from station.queries.routers import find_bit_in
from station.shop.acts import notice, refuse
from station.shop.facts import Router
from station.shop.rooms import Do, Hand, Run, Took
from station.shop.words import clock, say


def _off_button(here: Now) -> Do | Took:
    if not here.bed.sheet:
        return Took(here.hand, refuse(say("No sheet is on the bed"), say("Start a sheet first.")))
    return off(here)


def _spoil_button(here: Now) -> Do | Took:
    """Opens the question; pressed again, with a reason, it is done."""
    bed = here.bed
    if not bed.sheet:
        return Took(here.hand, refuse(say("No sheet is on the bed"), say("Nothing is spoiled.")))
    if here.mode != "spoil":
        hand = bare(here.hand).with_work(mode="spoil")
        said = say("Why is sheet {n} spoiled?", n=bed.sheet)
        return Took(hand, notice(said, say("Scan or touch the reason.")))
    args = {
        "router": bed.id,
        "reason": str(here.hand.work.get("reason") or ""),
        "survived": counts(here.hand),
    }
    left = [t for t in ticks(here.hand) if t != "bit"]
    after = bare(here.hand).with_work(ticks=left or None)
    after = _holding(after, bed.batch)
    return Do("spoil_sheet", f"batch/{bed.batch}", args, after)


def _holding(hand: Hand, batch: str) -> Hand:
    """The hand with a batch in it."""
    return replace(hand, subject=batch, digits="")


def _survived_button(here: Now) -> Took | None:
    """The next part of the sheet whose survivors are counted."""
    makes = list(here.revision.makes()) if here.revision else []
    if here.mode != "spoil" or not makes:
        return None
    chosen = here.hand.work.get("part")
    place = makes.index(str(chosen)) + 1 if chosen in makes else 0
    return choose_part(here, makes[place % len(makes)])


def _stop_button(here: Now) -> Took:
    if here.bed.state == "stopped":
        return Took(
            here.hand,
            notice(
                say("Stopped since {at} already", at=clock(here.bed.stopped)),
                say("When it runs again: “The stop is over”."),
            ),
        )
    hand = bare(here.hand).with_work(mode="stop")
    return Took(
        hand,
        notice(
            say("This does not stop the router: use its own stop"),
            say("Then scan or touch the reason. Hands off the bed."),
        ),
    )


def _broken_button(here: Now) -> Do | Took:
    inside = [b for _, b in here.bed.bits]
    if len(inside) == 1:
        return Do("bit_broken", here.subject, {"bit": inside[0]}, _untick(here))
    hand = bare(here.hand).with_work(mode="broken")
    return Took(hand, notice(say("Which bit broke?"), say("Scan the bit or touch its row.")))


def _untick(here: Now) -> Hand:
    """The hand without the tick for the bit."""
    left = [t for t in ticks(here.hand) if t not in ("bit", "zero")]
    return bare(here.hand).with_work(ticks=left or None)


def _more_button(here: Now) -> Do | Took:
    if here.batch is None:
        return Took(here.hand, refuse(say("No batch in hand yet"), say("Scan a traveller first.")))
    args = {"router": here.bed.id}
    return Do("add_sheet", here.batch.key, args, _holding(bare(here.hand), here.batch.id))


def _next_router(here: Now) -> Took:
    served = routers(here.hand, here.view)
    if len(served) < 2:
        return Took(
            here.hand, notice(say("This screen serves one router"), say("Go on with your work."))
        )
    place = served.index(here.bed.id) if here.bed.id in served else -1
    return look_at(here, served[(place + 1) % len(served)])


def _plain(kind: str, **args: object) -> Callable[[Now], Do]:
    """A button that is one act about the router and leaves the hand as it is."""

    def press(here: Now) -> Do:
        return Do(kind, here.subject, args, bare(here.hand))

    return press


def _first_off(*, agrees: bool) -> Callable[[Now], Do]:
    def press(here: Now) -> Do:
        args = {"good": agrees, "batch": here.batch.id if here.batch else ""}
        return Do("check_first_off", here.subject, args, bare(here.hand))

    return press


def _ticks(name: str) -> Callable[[Now], Took]:
    return lambda here: tick(here, name)


def _bit_tick(here: Now) -> Took:
    """The bit is ticked by hand, when the right one is in."""
    run = here.preparing
    for use in run.bits[:1] if run else ():
        bit = find_bit_in(here.view, here.bed, use)
        if bit is None or bit.state != "good" or bit.diameter_mm != use.diameter_mm:
            size = f"{use.diameter_mm:g}"
            return Took(
                here.hand,
                refuse(say("A {size} mm bit is needed", size=size), say("Put it in and scan it.")),
            )
    return tick(here, "bit")


def _file_tick(here: Now) -> Took | Run:
    """A tick alone proves nothing: where the router's folder is known, its texts are read."""
    ticked, revision = tick(here, "file"), here.preparing
    router = here.view.get(Router, here.bed.id)
    if ticked.answer.tone != "good" or not (router and router.folder and revision):
        return ticked
    if not revision.digest:
        return ticked
    args = {
        "folder": router.folder,
        "digest": revision.digest,
        "letter": revision.letter,
        "work": dict(ticked.hand.work),
        "next": ticked.answer.do,
    }
    return Run("prove_file", args, here.hand)


BUTTON_STEPS: dict[str, Callable[[Now], Do | Took | Run | None]] = {
    "start": start,
    "off_bed": _off_button,
    "sheet_spoiled": _spoil_button,
    "survived": _survived_button,
    "stop": _stop_button,
    "stop_over": _plain("end_stop"),
    "held_down": _ticks("held_down"),
    "bit_good": _bit_tick,
    "file_right": _file_tick,
    "zeroed": _ticks("zero"),
    "first_off_good": _first_off(agrees=True),
    "first_off_bad": _first_off(agrees=False),
    "day_done": _plain("start_day"),
    "resurfaced": _plain("resurface"),
    "rehomed": _plain("rehome"),
    "told": _plain("read_notice"),
    "bit_broken": _broken_button,
    "one_more_sheet": _more_button,
    "next_router": _next_router,
}
