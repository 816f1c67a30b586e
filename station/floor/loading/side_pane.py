"""Shows the right pane: what comes next, the bits, what to take care of."""

from station.floor.loading.needs import (
    AT_ONCE,
    changes_by_hand,
    list_later_uses,
    list_restart_ticks,
    name_material,
    refuse_bit,
)
from station.floor.loading.preparing import Now, list_confirmed
from station.queries.batches import describe_batch, find_revision, say_why
from station.queries.pace import expect_minutes
from station.queries.routers import (
    count_metres_left,
    count_minutes_left,
    count_mm_each,
    count_passes,
    find_bed,
    find_bit_in,
    find_ready_bit,
    list_drawer,
    name_router,
)
from station.queries.runs import LASER, find_due, find_work
from station.queries.settings import find_shop
from station.queries.stock import list_stored_lots
from station.queries.underway import list_cut, list_queue
from station.shop.cards import button
from station.shop.cautions import CAUTIONS, say_local
from station.shop.codes import write_touch
from station.shop.faces import Block, Cards, Cell, Entry, Listing, Meter, Press, Remark, Text, Tone
from station.shop.facts import Batch, Bed, Bit, Material, Reason, Revision
from station.shop.words import Say, clock, kilograms, metres, say, say_more

AT_HAND = 3  # lots, and bits in the drawer, that are shown

NEARLY_MIN = 1.0  # so long before its end a sheet is taken for one that comes off next


def write_batch_touch(batch: Batch) -> str:
    """Writes the code of a batch's valid traveller, or its bare number."""
    return write_touch("batch", batch.id, batch.copy)


def show_side(here: Now) -> tuple[Block, ...]:
    """Shows what comes next, the bit, and what to take care of.

    Beside many routers what to take care of stands first, where nobody has to scroll for it.
    """
    served = show_routers(here)
    shown = show_queue(here, 1 if served else 2, say("Next on this router"))
    today = () if served or len(shown.entries) > 1 else (show_cut_today(here, 2),)
    told, meters, care = show_told(here), show_meters(here), show_care(here)
    if served:
        return (care, *served, *told, shown, *meters)
    return (*told, shown, *meters, care, *today)


def show_idle_side(here: Now) -> tuple[Block, ...]:
    """Shows the same where no sheet is to be cut: what was cut today stands for what comes."""
    served, meters, care = show_routers(here), show_meters(here), show_care(here)
    cut = show_cut_today(here, 5)
    return (care, *served, *meters, cut) if served else (*meters, cut, care)


def show_cut_today(here: Now, most: int) -> Listing:
    """Shows the sheets that came off this router today, newest first, with their minutes."""
    view, router, day = here.view, here.bed.id, here.hand.now[:10]
    slips = list_cut(view, router, day)
    return Listing(
        title=say("Cut today: {n} {n|sheet|sheets}", n=len(slips)),
        rows=tuple(
            (
                (
                    Cell(text=clock(s.at), tone="quiet"),
                    Cell(text=say("{batch}, sheet {n}", batch=s.batch, n=s.sheet)),
                    Cell(text=say("{n} min", n=round(s.minutes))),
                ),
                "",
            )
            for s in slips[::-1][:most]
        ),
        empty=say("Nothing yet."),
    )


def offer_other_router(here: Now) -> tuple[Press, ...]:
    """Offers the button to the next router, on a screen that serves several."""
    if len(here.served) < 2:
        return ()
    return (Press(label=say("Next router"), code=button("next_router")),)


def show_queue(here: Now, limit: int, title: Text) -> Cards:
    """Shows what comes next on this router, and why; says how many more wait."""
    waiting = [b for b in list_queue(here.view, here.bed.id) if b.id != here.bed.batch]
    return Cards(
        title=say_more(title, len(waiting) - limit),
        entries=tuple(show_queued(here, b) for b in waiting[:limit]),
        empty=say("Nothing waits for this router."),
    )


def show_queued(here: Now, batch: Batch) -> Entry:
    """Shows one batch in the queue."""
    revision = find_revision(here.view, batch)
    following = find_due(here.view, batch, revision, here.bed) if revision else None
    run = following.file if following else revision
    minutes = expect_minutes(here.view, run, here.bed.id) if run else 0
    held = bool(batch.holds)
    return Entry(
        big=batch.id,
        right=say("held") if held else say("{minutes} min a sheet", minutes=round(minutes)),
        tone="attention" if held else "",
        line1=say(
            "{words} · {left} of {sheets} {sheets|sheet|sheets} · {material}",
            words=describe_batch(here.view, batch),
            left=batch.sheets - batch.cut,
            sheets=batch.sheets,
            material=name_material(here.view, revision.material) if revision else "-",
        ),
        line2=batch.holds[-1] if held else say_why(batch),
        code=write_batch_touch(batch),
    )


def show_routers(here: Now) -> tuple[Cards, ...]:
    """Shows each router of a screen that serves several, the next free first."""
    served = here.served
    if len(served) < 2:
        return ()
    beds = [find_bed(here.view, r) for r in served]
    left = {b.id: max(0.0, count_minutes_left(b, here.hand.now)) for b in beds}
    beds.sort(key=lambda b: (b.state == "stopped", left[b.id], b.id))
    entries = tuple(_show_router(here, b, left[b.id]) for b in beds)
    return (Cards(title=say("Which is free next"), entries=entries),)


def _show_router(here: Now, bed: Bed, left: float) -> Entry:
    tone: Tone = ""
    if bed.state == "stopped":
        right, tone = say("stopped"), "stop"
    elif bed.sheet:
        right = say("{minutes} min left", minutes=round(left))
    else:
        right, tone = say("free"), "good"
    on_it = say("batch {batch}", batch=bed.batch) if bed.batch else say("no batch on it")
    return Entry(
        big=name_router(here.view, bed.id),
        right=right,
        tone=tone,
        line1=on_it,
        line2=say("in front of you") if bed.id == here.bed.id else "",
        code=write_touch("router", bed.id),
    )


def show_meters(here: Now) -> tuple[Meter, ...]:
    """Shows the bit's metres: of each bit that the file uses, or of those that are in."""
    batch, revision = here.batch, here.running
    if batch and revision:
        used = [(find_bit_in(here.view, here.bed, u), u) for u in revision.bits]
        following = list_later_uses(here.view, here.bed, revision)
        if changes_by_hand(here.view, here.bed, revision):
            used = [(b, u) for b, u in used if b and b.diameter_mm == u.diameter_mm]
            used += [(find_ready_bit(here.view, here.bed, u), u) for u in following]
        found = {b.id: _show_bit_life(here, b, u.cut_mm / 1000, batch) for b, u in used if b}
        return (*tuple(found.values())[:2], *_show_spoilboard(here))
    inside = [here.view.get(Bit, b) for _, b in here.bed.bits]
    return (
        *(_show_bit_life(here, b, 0.0, None) for b in inside[:2] if b),
        *_show_spoilboard(here),
    )


def _show_spoilboard(here: Now) -> tuple[Meter, ...]:
    """Shows the sheets that were cut on the spoilboard since it was last flat."""
    router, done = here.router, count_passes(here.view, here.bed.id)
    if router is None or not router.flat_after:
        return ()
    left = router.flat_after - done
    right = say("{n} {n|sheet|sheets} left", n=left) if left > 0 else say("cut it flat again")
    return (
        Meter(
            title=say("Spoilboard: {n} {n|pass|passes}", n=done),
            left="",
            right=right,
            fraction=min(1.0, done / router.flat_after),
            tone="good" if left > 0 else "attention",
        ),
    )


def _show_bit_life(here: Now, bit: Bit, need: float, batch: Batch | None) -> Meter:
    worn = count_mm_each(here.view, bit)
    cut, here_m = sum(worn.values()) / 1000, worn.get(here.bed.id, 0) / 1000
    left, name = bit.life_m - cut, name_router(here.view, here.bed.id)
    right, tone = _say_lasts(bit, left, need, batch)
    return Meter(
        title=say(
            "Bit no. {bit}: {here} m on {router}", bit=bit.id, here=metres(here_m), router=name
        ),
        left=say("{metres} m in all", metres=metres(cut)),
        right=right,
        fraction=min(1.0, cut / bit.life_m) if bit.life_m > 0 else 1.0,
        tone=tone,
    )


def _say_lasts(bit: Bit, left: float, need: float, batch: Batch | None) -> tuple[Say, Tone]:
    """Says how long the bit lasts, in sheets of the batch where there is one."""
    if bit.state != "good":
        return say("{state}: change it", state=bit.state), "stop"
    last = batch.cut + int(max(0.0, left) / need) if batch and need > 0 else None
    if batch and last is not None and last <= batch.cut:
        return say("will not last a sheet"), "attention"
    if batch and last is not None and last < batch.sheets:
        return say("change after sheet {n}", n=last), "attention"
    return say("{metres} m left", metres=metres(max(0, left))), "good"


def show_care(here: Now) -> Remark:
    """Shows the caution of this moment, with the shop's own words; a touch shows the others."""
    names = list_moments(here)
    lines = [_say_caution(here, name) for name in names]
    said = lines[0] if len(lines) == 1 else say("{first} {next}", first=lines[0], next=lines[1])
    words = say("{said} {local}", said=said, local=say_local(find_shop(here.view)))
    title = say("Take care: {at}", at=CAUTIONS[names[-1]].at)
    return Remark(tone="attention", title=title, text=words, code=button("care"))


def list_moments(here: Now) -> tuple[str, ...]:
    """Lists what can hurt at this moment, names of CAUTIONS: one, with a laser's beside it."""
    router, run = here.router, here.running
    found = [_find_moment(here)]
    if found == ["bit"] and router and router.changer:
        found.append("changer")
    if found == ["cutting"] and router and router.bed == "vacuum":
        found.append("vacuum")
    if run and here.batch and find_work(here.view, run) == LASER:
        return ("laser", found[0])
    return tuple(found)


def _find_moment(here: Now) -> str:
    """Finds what is done at this moment."""
    bed = here.bed
    if here.mode in ("broken", "new_bit"):
        return "bit"
    if here.mode == "stop":
        return "cutting"
    if bed.state == "stopped":
        return _find_in_stop(here)
    if bed.sheet:
        broken = any(b.state == "broken" for b in _list_inside(here))
        changes = broken or (here.running and list_later_uses(here.view, bed, here.running))
        nearly = count_minutes_left(bed, here.hand.now) < NEARLY_MIN
        return "bit" if changes else "off_bed" if nearly else "cutting"
    if here.first:
        return "part_out"
    return "home" if bed.rehome else _find_before_sheet(here)


def _find_in_stop(here: Now) -> str:
    """Finds what is done while it stands still: sent home, a bit changed, or let run on."""
    reason = here.view.get(Reason, here.bed.stop)
    broken = any(b.state == "broken" for b in _list_inside(here))
    left = set(list_restart_ticks(here.view, here.bed)) - set(list_confirmed(here.hand, here.bed))
    if broken or (left and reason and reason.first_off and not reason.rehome):
        return "bit"
    return "home" if here.bed.rehome else "restart"


def _find_before_sheet(here: Now) -> str:
    """Finds what is done at a free bed: a bit, the spoilboard, the next sheet, or nothing yet."""
    router, run = here.router, here.next_run if here.batch else None
    if run and any(refuse_bit(here.view, here.bed, u) for u in run.bits[:1]):
        return "bit"
    if here.batch and here.hand.work.lot:
        return "lift"
    bears = router.flat_after if router else 0
    if bears and count_passes(here.view, here.bed.id) >= bears:
        return "surface"
    return "lift" if here.batch else "dust"


def _list_inside(here: Now) -> list[Bit]:
    """Lists the bits that are in the router."""
    return [b for _, name in here.bed.bits if (b := here.view.get(Bit, name))]


def _say_caution(here: Now, name: str) -> Say:
    """Says a caution; of a heavy sheet with its mass."""
    revision = here.revision
    material = here.view.get(Material, revision.material) if revision else None
    if name == "lift" and material and material.sheet_kg >= find_shop(here.view).two_people_kg:
        return say("Sheet {kg} kg: two people or a lift. Gloves on for it, off at the spindle.",
                   kg=kilograms(material.sheet_kg))  # fmt: skip
    return CAUTIONS[name].line


def show_told(here: Now) -> tuple[Remark, ...]:
    """Shows what popping told this router while a sheet is cut; else it stands first of all."""
    if here.bed.state != "cutting":
        return ()
    return tuple(
        Remark(tone="attention", title=say("Read before the next sheet"), text=n.text)
        for n in here.unread[:AT_ONCE]
    )


def show_lots(here: Now, revision: Revision) -> Cards:
    """Shows the lots of the right material that have sheets left, oldest first."""
    found = list_stored_lots(here.view, revision.material)
    title = say("Lots of {material}", material=name_material(here.view, revision.material))
    return Cards(
        title=say_more(title, len(found) - AT_HAND),
        entries=tuple(
            Entry(
                big=lot.id,
                right=say("{count} {count|sheet|sheets}", count=count),
                tone="attention" if lot.mark else "",
                line1=lot.mark,
                code=write_touch("lot", lot.id),
            )
            for lot, count in found[:AT_HAND]
        ),
        empty=say("No sheets of it are in the store."),
    )


def show_drawer(here: Now, revision: Revision) -> Cards:
    """Shows the good bits in the drawer that fit this cut file."""
    sizes = {u.diameter_mm for u in revision.bits}
    bits = [b for b in list_drawer(here.view, here.bed) if b.diameter_mm in sizes]
    title = say("Bits in the drawer") if bits else say("No bit of that size in the drawer")
    return Cards(
        title=say_more(title, len(bits) - AT_HAND),
        entries=(
            *(
                Entry(
                    big=b.id,
                    right=say(
                        "{metres} m left", metres=metres(max(0, count_metres_left(here.view, b)))
                    ),
                    line1=b.words,
                    code=write_touch("bit", b.id),
                )
                for b in bits[:AT_HAND]
            ),
            Entry(big=say("New bit"), line1=say("Not entered yet"), code=button("new_bit")),
        ),
    )
