"""Lists as CSV files, and a copy of the whole history: work with files, done by the station.

`hand.work` holds `files` (names found, newest first), `folder` (where) and `problems` (what is
wrong in the file that was read, by line). Touch lists the files; nothing is typed.
"""

from station.floor.office.state import ROWS, list_of, page_of, pressed, row_of
from station.shop.acts import refuse
from station.shop.file_requests import BackUp, FindLists, ReadList, WriteList
from station.shop.rooms import Do, FileJob, Hand, Input, Took
from station.shop.views import View
from station.shop.words import say


def texts(hand: Hand, name: str) -> list[str]:
    """A list of texts in the hand's work."""
    found = hand.work.get(name)
    return [str(f) for f in found] if isinstance(found, list | tuple) else []


def find(hand: Hand) -> FileJob:
    """Looks which CSV files lie in the shop's folder."""
    return FileJob(FindLists(), hand.with_work(ask="files", page=0, problems=None))


def write(hand: Hand) -> FileJob:
    """The open list into a new file."""
    return FileJob(WriteList(kind=list_of(hand).kind.kind), hand)


def backup(hand: Hand) -> FileJob:
    """A copy of the whole history into a new file."""
    return FileJob(BackUp(), hand)


def handle_input(hand: Hand, given: Input, _view: View) -> Do | Took | FileJob | None:
    """A row is a file to take in."""
    row = row_of(pressed(given))
    if row is None:
        return None
    names, place = texts(hand, "files"), page_of(hand) * ROWS + row
    if texts(hand, "problems") or place >= len(names):
        return Took(hand, refuse(say("There is no file in that row"), say("Touch a file.")))
    return FileJob(ReadList(file=names[place]), hand)
