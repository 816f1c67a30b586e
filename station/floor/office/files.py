"""Lists as CSV files, and a copy of the whole history: work with files, done by the station.

`hand.work` holds `files` (names found, newest first), `folder` (where) and `problems` (what is
wrong in the file that was read, by line). Touch lists the files; nothing is typed.
"""

from station.floor.office.state import ROWS, list_of, page_of, pressed, row_of
from station.shop.acts import refuse
from station.shop.rooms import Do, Hand, Input, Run, Took
from station.shop.views import View
from station.shop.words import say


def texts(hand: Hand, name: str) -> list[str]:
    """A list of texts in the hand's work."""
    found = hand.work.get(name)
    return [str(f) for f in found] if isinstance(found, list | tuple) else []


def find(hand: Hand) -> Run:
    """Looks which CSV files lie in the shop's folder."""
    return Run("find_lists", {}, hand.with_work(ask="files", page=0, problems=None))


def write(hand: Hand) -> Run:
    """The open list into a new file."""
    return Run("write_list", {"kind": list_of(hand).kind.kind}, hand)


def backup(hand: Hand) -> Run:
    """A copy of the whole history into a new file."""
    return Run("backup", {}, hand)


def handle_input(hand: Hand, given: Input, _view: View) -> Do | Took | Run | None:
    """A row is a file to take in."""
    row = row_of(pressed(given))
    if row is None:
        return None
    names, place = texts(hand, "files"), page_of(hand) * ROWS + row
    if texts(hand, "problems") or place >= len(names):
        return Took(hand, refuse(say("There is no file in that row"), say("Touch a file.")))
    return Run("read_list", {"file": names[place]}, hand)
