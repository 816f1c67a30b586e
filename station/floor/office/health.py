"""Shows this shop's health: how each PC is, its backup, one more, and the way back to one."""

from dataclasses import replace

from station.floor.office.acts import RestoreBackup
from station.floor.office.lists import LEAVE, PAGES, ROWS, make_face, name_press, read_row
from station.floor.office.work import FilesFound, OfficeHand, OfficeWork, OwnPc
from station.queries.health import is_full, is_older, is_silent, list_stations, list_troubles
from station.shop.acts import good, refuse
from station.shop.cards import button
from station.shop.faces import Cell, Face, Hint, Listing, Pairs, Press, Row, Table, Text
from station.shop.facts import Station
from station.shop.file_requests import FindBackups, LookAtPc
from station.shop.rooms import Do, FileJob, Input, Took
from station.shop.views import View
from station.shop.words import Say, figure, moment, say

HEALTH = say("This shop's health")


def open_health(hand: OfficeHand, _view: View) -> FileJob:
    """Has it looked how this PC is; then each PC is shown."""
    work = OfficeWork(list=hand.work.list, ask="health")
    return FileJob(LookAtPc(), replace(hand, work=work))


def show_pc(hand: OfficeHand, pc: OwnPc, view: View) -> Took:
    """Shows how this PC is, and what the others told."""
    after = replace(hand, work=replace(hand.work, own_pc=pc))
    next_ = say("Mend what is told there.") if list_troubles(view) else say("All is well.")
    return Took(after, good(HEALTH, next_))


def find_backups(hand: OfficeHand, _view: View) -> FileJob:
    """Finds the backups that are kept on this PC."""
    work = OfficeWork(list=hand.work.list, ask="restore", found=FilesFound())
    return FileJob(FindBackups(), replace(hand, work=work))


def handle_health(hand: OfficeHand, given: Input, view: View) -> FileJob | None:
    """Takes the key that goes on to the backups."""
    return find_backups(hand, view) if name_press(given) == "restore" else None


def handle_restore(hand: OfficeHand, given: Input, _view: View) -> Do | Took | None:
    """Takes the row of a backup; the rule asks whether that is meant, and for a supervisor."""
    name, names = name_press(given), hand.work.found.names
    if name in ("next_page", "back_page"):
        last = max(0, (len(names) - 1) // ROWS)
        page = min(last, max(0, hand.work.page + (1 if name == "next_page" else -1)))
        after = replace(hand, work=replace(hand.work, page=page))
        return Took(after, good(say("Page {page}", page=page + 1)))
    if (row := read_row(name)) is None:
        return None
    place = hand.work.page * ROWS + row
    if place >= len(names):
        return Took(hand, refuse(say("There is no backup in that row"), say("Touch a backup.")))
    after = replace(hand, work=OfficeWork(list=hand.work.list))
    return Do("shop/shop", RestoreBackup(file=names[place]), after)


def show_health(hand: OfficeHand, view: View) -> Face:
    """Shows each PC in a row, and beside it what is not well."""
    stations = list_stations(view)
    heads = (say("station"), say("program"), say("told"), say("not shared"), say("disk"),
             say("backup"))  # fmt: skip
    rows = tuple(_show_station(station, stations) for station in stations)
    table = Table(columns=heads, rows=rows, title=HEALTH)
    troubles = tuple(((Cell(text=t.words, tone="attention"),), "") for t in list_troubles(view))
    beside = Listing(title=say("Needs a look"), rows=troubles, empty=say("Nothing: all is well."))
    own = (_show_own(hand.work.own_pc),) if hand.work.own_pc else ()
    one_more = Press(label=say("Back up"), code=button("backup"))
    back = Press(label=say("Restore a backup"), code=button("restore"), wide=2)
    face = make_face(hand, table, side=(*own, beside), presses=(one_more, back, LEAVE))
    return replace(face, where=HEALTH)


def _show_own(pc: OwnPc) -> Pairs:
    """Shows this PC: what a person looks for who asks whether all is kept."""
    checked = say("not yet: each backup is read again")
    if pc.backup_at:
        checked = say("with its backup, {at}", at=moment(pc.backup_at))
    rows: tuple[tuple[Text, Text], ...] = (
        (say("program"), pc.version),
        (say("disk"), _say_free(pc.free_mb)),
        (say("backup"), moment(pc.backup_at) if pc.backup_at else say("none yet")),
        (say("last recorded"), moment(pc.newest_at) or say("nothing yet")),
        (say("entries"), say("{n}", n=pc.entries)),
        (say("history checked"), checked),
    )
    return Pairs(title=say("This PC"), rows=rows)


def _say_free(mb: int) -> Say:
    return say("{n} GB free", n=figure(mb / 1000, 1))


def _show_station(station: Station, stations: tuple[Station, ...]) -> Row:
    """Shows one PC; what is not well with it stands out."""
    backup = moment(station.backup_at) if station.backup_at else say("none")
    cells = (
        (station.version, is_older(station, stations)),
        (moment(station.seen), is_silent(station, stations)),
        (str(station.unshared), bool(station.unshared)),
        (_say_free(station.free_mb), is_full(station)),
        (backup, not station.backup_at or bool(station.trouble)),
    )
    shown = tuple(Cell(text=text, tone="attention" if wrong else "") for text, wrong in cells)
    return Row(title=station.id, cells=shown)


def show_restore(hand: OfficeHand, _view: View) -> Face:
    """Shows the backups that are kept on this PC, to touch one."""
    names, first = hand.work.found.names, hand.work.page * ROWS
    rows = tuple(
        Row(
            title=_say_backup(name),
            note=name,
            code=button(f"row_{n}"),
            cells=(Cell(text=_find_entries(name)),),
        )
        for n, name in enumerate(names[first : first + ROWS], 1)
    )
    title = say("Which backup?") if names else say("No backup is kept on this PC yet")
    note = say("What was done since is set aside, not deleted. Close the station afterwards.")
    heads = (say("backup of"), say("entries"))
    table = Table(columns=heads, rows=rows, title=say("Kept on this PC"))
    turns = PAGES if len(names) > ROWS else ()
    hint = Hint(title=title, note=note, tone="attention")
    face = make_face(hand, hint, table, presses=(*turns, LEAVE))
    return replace(face, where=say("Restore a backup"))


def _say_backup(name: str) -> Say:
    """Says when a backup was made, as its name tells."""
    at = name.removeprefix("shop-")
    when = f"{at[6:8]}.{at[4:6]}.{at[:4]} {at[9:11]}:{at[11:13]}"
    return say("{when}", when=when)


def _find_entries(name: str) -> str:
    """Finds how many entries of the history a backup holds, as its name tells."""
    return name.split("-")[3]
