"""What this PC does with its files for a room, by the type of what is asked."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from station.files.copies import Copies
from station.files.cut_files import CutFiles
from station.files.folder import MOST, ShopFolder, has_plain_name, list_newest, refuse_file
from station.files.health import Health
from station.files.order_list import OrderLists
from station.floor.office.acts import SetList, SetLists
from station.floor.office.matching import (
    KINDS,
    ask_columns,
    find_would_be,
    guess_kind,
    propose_matched,
    show_would,
)
from station.floor.office.work import ColumnsAsked, FilesFound, OfficeHand, OfficeWork
from station.ledger.ledger import Ledger
from station.ledger.renaming import write_whole
from station.shop.acts import good, refuse
from station.shop.file_requests import (
    BackUp,
    FindBackups,
    FindCutFiles,
    FindLists,
    LookAtDropped,
    LookAtPc,
    OpenCutFile,
    ProveText,
    ReadList,
    ReadLists,
    WriteList,
    WriteOrderList,
)
from station.shop.rooms import Do, DoFileJob, FileJob, Hand, LongJob, Took
from station.shop.words import Say, say

if TYPE_CHECKING:  # the csv module only where it is used
    from station.files.lists import Read

MEND = say("Set another folder under “This shop”.")


def list_handlers(
    ledger: Ledger, clock: Callable[[], str], ids: Callable[[], str], *, beside: bool
) -> Mapping[type, DoFileJob]:
    """Lists what does each request, bound to this station's ledger.

    `beside`: there is a screen, beside which what takes long is done.
    """
    folder, health = ShopFolder(ledger, clock), Health(ledger, clock, ids)
    lists, cut_files = Lists(ledger, folder), CutFiles(ledger, folder)
    order_lists, copies = (
        OrderLists(ledger, folder),
        Copies(ledger, folder, clock, health, beside=beside),
    )
    return {
        BackUp: _guard(copies.back_up),
        LookAtPc: health.look_at_pc,
        FindBackups: _guard(copies.find_backups),
        FindLists: _guard(lists.find),
        WriteList: _guard(lists.write),
        WriteOrderList: _guard(order_lists.write),
        ReadList: _guard(lists.read),
        ReadLists: _guard(lists.read_all),
        FindCutFiles: _guard(cut_files.find),
        LookAtDropped: _guard(cut_files.look_at_dropped, say("Drop a file that is there.")),
        OpenCutFile: _guard(cut_files.open),
        ProveText: _guard(cut_files.prove, say("Set its folder right in the office.")),
    }


def _guard(job: DoFileJob, mend: Say = MEND) -> DoFileJob:
    """Says in one sentence what this PC refuses of a folder or file; nothing was changed."""

    def run(request: object, hand: Hand[Any]) -> Do | Took | LongJob | FileJob:
        try:
            return job(request, hand)
        except OSError as fault:
            why = fault.strerror or str(fault)
            if isinstance(hand.work, OfficeWork):  # its question is over
                hand = replace(hand, work=replace(hand.work, ask=""))
            return refuse_file(hand, str(fault.filename or ""), why, mend)

    return run


class Lists:
    """The office's lists as CSV files."""

    def __init__(self, ledger: Ledger, folder: ShopFolder) -> None:
        self.ledger, self.folder = ledger, folder

    def write(self, request: WriteList, hand: OfficeHand) -> Took:
        """Writes a list into a new CSV file."""
        from station.files import lists  # noqa: PLC0415 - the csv module only where it is used

        file = self.folder.name_new(request.kind, "csv")
        text = lists.write(self.ledger, lists.NAMES[request.kind])
        write_whole(file, text.encode("utf-8-sig"))  # so that spreadsheets see UTF-8
        return Took(hand, good(say("The list is written"), say("{file}", file=file)))

    def find(self, _request: FindLists, hand: OfficeHand) -> Took:
        """Finds the CSV files in the folder, newest first."""
        folder = self.folder.make()
        files = list_newest(folder.glob("*.csv"))
        names = tuple(f.name for f in files if has_plain_name(f))[:MOST]
        next_ = say("Touch one to take it in.")
        if not names:
            next_ = say("Put a file there, then look again.")
        found = replace(hand.work.found, names=names, folder=str(folder))
        return Took(
            replace(hand, work=replace(hand.work, found=found)),
            good(say("{n} CSV {n|file|files}", n=len(names)), next_),
        )

    def read_all(self, request: ReadLists, hand: OfficeHand) -> Do | Took:
        """Reads the newest file of every list together, or says what is wrong in them.

        What they would change is shown first, and taken in as it was shown.
        """
        from station.files import lists  # noqa: PLC0415 - only when it is used

        newest = list_newest(self.folder.make().glob("*.csv"))
        files = lists.find_newest_lists(f for f in newest if has_plain_name(f))
        if not files:
            return Took(
                hand,
                refuse(say("No list lies there"), say("Put a file there, then look again.")),
            )
        seen = lists.fingerprint(files)
        found = lists.read_together(self.ledger.view, ((file, None) for file in files))
        if wrong := lists.list_problems(found):
            told = replace(hand.work.found, problems=tuple(wrong), read="")
            return Took(
                replace(hand, work=replace(hand.work, found=told)),
                refuse(
                    say("{n} {n|problem|problems}", n=len(wrong)),
                    say("Nothing was taken in. {first}", first=wrong[0]),
                ),
            )
        given = lists.give_lists(found)
        if seen != request.seen:
            would = find_would_be(self.ledger.view, ((one.of, one.values) for one in given))
            return show_would(hand, ColumnsAsked(seen=seen), would)
        return Do("list/several", SetLists(lists=given), _close_files(hand))

    def read(self, request: ReadList, hand: OfficeHand) -> Do | Took:
        """Reads one file, whole, or says what is wrong in it by line.

        Which column is which is asked where nothing tells; what the file would change is shown
        first, and taken in as it was shown.
        """
        from station.files import lists  # noqa: PLC0415 - only when it is used

        file = self.folder.path / Path(request.file).name
        seen = lists.fingerprint((file,)) if file.is_file() else ""
        kind = lists.NAMES.get(request.kind)
        found = lists.read_file(self.ledger.view, file, kind, matched=request.matched)
        if found.header:
            return _ask_columns(hand, file.name, found)
        if found.problems or found.kind is None:
            return _tell_wrong(hand, file.name, found.problems)
        of = found.kind.kind
        if seen != request.seen:
            asked = ColumnsAsked(file=file.name, kind=of, matched=dict(found.matched), seen=seen)
            would = find_would_be(self.ledger.view, ((of, found.values),))
            return show_would(hand, asked, would)
        args = SetList(of=of, values=found.values, file=file.name, matched=found.matched)
        return Do(f"list/{of}", args, _close_files(hand))


def _ask_columns(hand: OfficeHand, file: str, found: "Read") -> Took:
    """Asks which column of a file is which: proposed as far as their names tell."""
    kind = guess_kind(found.header)
    asked = ColumnsAsked(file=file, kind=kind, header=found.header, rows=found.rows)
    if kind:
        asked = replace(asked, matched=propose_matched(KINDS[kind], found.header))
    return ask_columns(hand, asked)


def _tell_wrong(hand: OfficeHand, file: str, problems: tuple[Say, ...]) -> Took:
    """Tells what is wrong in a file, by line; nothing of it was taken in."""
    told = replace(hand.work.found, problems=problems, read=file)
    return Took(
        replace(hand, work=replace(hand.work, ask="files", found=told)),
        refuse(
            say("{file}: {n} {n|problem|problems}", file=file, n=len(problems)),
            say("Nothing was taken in. {first}", first=problems[0]),
        ),
    )


def _close_files(hand: OfficeHand) -> OfficeHand:
    """Gives the hand without the question which file."""
    return replace(
        hand, work=replace(hand.work, ask="", found=FilesFound(), columns=ColumnsAsked(), page=0)
    )
