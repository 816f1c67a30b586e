"""README's first day, played on an empty shop: from nothing to its first sheet.

Everything is touched by its words on the screen, typed, or scanned from what was printed.
"""

import shutil
from pathlib import Path

import pytest

import demo_db
from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.ledger.ledger import Ledger
from station.papers.marks import BarsMark
from station.printing import gathering
from station.queries.first_sheet import list_missing, list_set_up
from station.shop.codes import write
from station.shop.facts import Bed, Part
from tests.touch import find_touch

TEXT = Path(demo_db.__file__).parent / "cut_files" / "STICK-SET-A.nc"
PIN = "2468"
pytestmark = [pytest.mark.slow, pytest.mark.usefixtures("compiled")]


class Day:
    """An empty shop and one screen in it, worked by words."""

    def __init__(self, folder: Path) -> None:
        (folder / "files").mkdir()
        shutil.copy(TEXT, folder / "files" / "first.nc")
        self.ledger = Ledger(folder / bootstrap.FILE, bootstrap.load_rules(), station="1")
        self.printed: list[tuple[str, str]] = []
        bootstrap.set_up_shop(self.ledger, "2026-11-25T07:00:00")
        self.desk = bootstrap.make_desk(
            self.ledger, Where(area="office"), Clock("2026-11-25T07:30:00"),
            printer=lambda *paper: self.printed.append(paper),
        )  # fmt: skip

    def take(self, *codes: str) -> str:
        """Scans or types each, and gives a supervisor's badge and PIN where they are asked for."""
        for code in codes:
            given = self.desk.take(code)
            if self.desk.question() == "supervisor":
                self.desk.take(write("worker", "01"))
            if self.desk.question() == "pin":
                given = self.desk.take(PIN)
            assert given.answer.tone != "stop", f"{code}: {given.answer.said} {given.answer.do}"
        return str(given.answer.said)

    def touch(self, *words: str) -> str:
        """Touches what says each of these; what begins with an apostrophe is typed."""
        for one in words:
            typed = one.startswith("'")
            said = self.take(one[1:] if typed else find_touch(self.desk.face(), one))
        return said


@pytest.fixture
def day(tmp_path):
    shop = Day(tmp_path)
    yield shop
    assert shop.ledger.check() == []
    shop.ledger.close()


def list_names(day):
    return [step.name for step in list_missing(day.ledger.view)]


def test_a_step_that_is_opened_says_what_to_do_in_its_list(day):
    day.touch("01")
    given = day.desk.take(find_touch(day.desk.face(), "A supervisor with a PIN"))
    assert str(given.answer.do) == "Open the worker, touch “A new PIN”."


def set_up(day):
    """The office, step by step as it asks."""
    day.touch("01", "A supervisor with a PIN", "01", "A new PIN", f"'{PIN}", f"'{PIN}", "Leave")
    assert list_names(day) == ["lot", "bit", "cutfile", "approved", "rack"]
    day.touch("Still missing", "Sheets in the store", "A new one", "material", "'1", "Save")
    day.touch("Receive sheets", "'20", "Leave")
    day.touch("Still missing", "A bit", "A new one", "description", "'6 mm compression", "'6")
    day.touch("router", "'1", "Save", "Leave")
    assert day.ledger.view.get(Bed, "1").bits
    take_file_in(day)
    day.touch("Still missing", "A rack place for each part")
    for part in day.ledger.facts(Part):
        day.touch("A new one", "name", f"'A {part.id}", "part", f"'{part.id}", "Save", "Leave")
    assert list_names(day) == []
    day.touch("Still missing", "A cart", "A new one", "name", "'Cart 1", "Save", "Leave")
    day.touch("Still missing", "A product", "A new one", "name", "'ST", "description", "'Sticks")
    day.touch("parts", "'001", "'2", "List complete", "Save", "Leave")
    day.touch("Still missing", "An order", "A new one", "'ST", "'1", "List complete")
    day.touch("due", "'2026-11-25 16:00", "Save", "Leave")


def take_file_in(day):
    """The cut file: its text read, each shape named once, taken in, approved."""
    day.touch("Still missing", "A cut file that was read", "A new one", "name", "'STICKS")
    day.touch(
        "description", "'Sticks", "Save", "Read its file", "6.5 mm birch plywood", "first.nc"
    )
    names = 0
    while "A new part" in [str(press.label) for press in day.desk.face().presses]:
        names += 1
        day.touch(f"'Stick {names}")
    day.touch("Take it in", "Approve the newest", "Leave")


def test_an_empty_shop_is_set_up_by_what_the_office_asks_for(day):
    set_up(day)
    assert list_set_up(day.ledger.view) == ()
    assert "Orders: 1" in str(day.desk.face().main[0].title)
    day.touch("All cards")
    for kind, name in day.printed:
        assert gathering.make_paper(day.ledger, kind, name, day.desk.clock()), kind
    cards = gathering.make_paper(day.ledger, "thing_cards", "", day.desk.clock())
    codes = {m.code for page in cards.pages for m in page if isinstance(m, BarsMark)}
    things = ("router/1", "bit/001", "lot/001", "cart/001", "mailer/01", "cutfile/001")
    assert {write(*thing.split("/")) for thing in things} <= codes


def test_a_shop_that_lacks_nothing_cuts_its_first_sheet(day):
    set_up(day)
    day.touch("Cut files", "001", "Release and print", "Router 1", "'2")
    assert day.printed[-1] == ("traveller", "00001")
    day.touch("More", "Work at loading", "Start of day done", "Take batch 00001")
    day.touch("001", "'6.5", "Hold-down", "Bit", "Cut file", "Zero", "Start sheet 1")
    day.desk.clock.pin("2026-11-25T08:15:00")
    said = day.touch("Sheet 1 is off the bed")
    assert said == "Sheet 1 is off the bed: 123 parts"
