"""The work areas: one more line in their table, and everything offers it."""

import subprocess
import sys
from pathlib import Path

import pytest

from station.shop.areas import AREAS, button_of
from station.shop.cards import BUTTONS, BY_NUMBER, unprintable

ROOT = Path(__file__).parent.parent.parent
ADDED = """
import argparse, sys
from pathlib import Path
from types import ModuleType

from station.shop import areas
from station.shop.areas import Area
from station.shop.words import Say

added = Area("gluing", Say("Gluing"), 60, Say("Work at gluing"), Say("Scan a slip."))
areas.AREAS = (*areas.AREAS, added)

from station.shop.faces import Face
from station.shop.rooms import Work
for name in ("rules", "work", "dialogue", "screen"):
    sys.modules[f"station.floor.gluing.{name}"] = ModuleType(name)
sys.modules["station.floor.gluing.rules"].RULES = {}
sys.modules["station.floor.gluing.work"].WORK = Work
sys.modules["station.floor.gluing.dialogue"].handle_input = lambda hand, given, view: None
sys.modules["station.floor.gluing.screen"].screen = lambda hand, view: Face(title=added.title)

from resources.translations.templates import templates
from station import bootstrap
from station.clock import Clock
from station.commands import scan
from station.commands.text_station import take_line
from station.look import inspect
from station.papers.cards import make_button_cards
from station.look.window import Window
from station.printing.codes import list_codes
from station.shop.cards import button
from station.window.first_run import FirstRun
from station.window.show import find_application
from tests.touch import find_touch

NOW, CODE = "2026-11-25T07:00:00", button("area_gluing")
with bootstrap.open_ledger(Path(sys.argv[1])) as ledger:
    bootstrap.set_up_shop(ledger, NOW)
    assert CODE in {row["code"] for row in list_codes(ledger)}, "the codes"

    desk = bootstrap.make_desk(ledger, bootstrap.Where(area="popping", worker="01"), Clock(NOW))
    desk.take(button("menu"))
    entries = [entry for block in desk.face().side for entry in block.entries]
    assert ("Work at gluing", CODE) in [(str(e.big), e.code) for e in entries], "the menu More"
    given = desk.take(CODE)
    assert str(given.answer.said) == "Here now: Gluing", "its button"
    assert desk.hand.area == "gluing" and str(desk.face().title) == "Gluing", "its screen"
    assert take_line(desk, Clock(NOW), "@area popping").answer.tone == "good", "the text station"
    assert take_line(desk, Clock(NOW), "@area gluing").answer.tone == "good", "the text station"

    application = find_application()  # stays, or its windows go
    question = FirstRun(ledger, Window(), NOW)
    for words in ("Work area", "Gluing"):
        question.take(find_touch(question.make_face(), words))
    assert question.keep().area == "gluing", "the first run"
    assert ledger.local("area") == "gluing", "the first run"

marks = [getattr(m, "code", "") for page in make_button_cards("all", ()).pages for m in page]
assert CODE in marks, "the printed cards"

parser = argparse.ArgumentParser()
scan.add_arguments(parser)
assert parser.parse_args(["--area", "gluing"]).area == "gluing", "station scan"

assert {"Gluing", "Work at gluing"} <= set(templates(Path(sys.argv[2]))), "translation"
"""


@pytest.mark.slow
def test_a_work_area_in_the_table_is_offered_everywhere(tmp_path):
    """In a process of its own: the table is longer before anything is made from it."""
    done = subprocess.run(
        [sys.executable, "-c", ADDED, str(tmp_path), str(ROOT)],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr


def test_the_numbers_on_printed_cards_stay():
    assert {a.id: a.number for a in AREAS} == {
        "loading": 18, "popping": 19, "trimming": 20, "packing": 21, "cart": 22, "today": 23,
        "plan": 27, "office": 24,
    }  # fmt: skip
    assert [BUTTONS[button_of(a)].number for a in AREAS] == [f"0{a.number}" for a in AREAS]
    assert len(BY_NUMBER) == len(BUTTONS)
    assert unprintable() == []


def test_every_work_area_has_its_room():
    for area in AREAS:
        folder = ROOT / "station" / "floor" / area.id
        assert {"rules.py", "dialogue.py", "screen.py"} <= {f.name for f in folder.iterdir()}
