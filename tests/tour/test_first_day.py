"""README's first day: its steps are the script of a tour that works an empty shop."""

import re
from pathlib import Path

import pytest

from station.tour.empty_shop import WAYS, run_first_day
from station.tour.first_day import STEPS

README = Path(__file__).parents[2] / "README.md"


def list_readme_steps():
    """The numbered steps of README: their first words, and the words in italics in order."""
    day = README.read_text("utf-8").partition("## Your first day\n")[2].partition("\n## ")[0]
    steps = re.findall(r"^\d+\. \*\*(.+?)\.\*\* (.+)$", day, re.MULTILINE)
    return [(title, re.findall(r"(?<!\*)\*([^*]+)\*(?!\*)", text)) for title, text in steps]


def test_readme_and_the_tour_have_the_same_steps():
    assert [title for title, _ in list_readme_steps()] == [step.title for step in STEPS]


@pytest.mark.parametrize(("title", "words"), list_readme_steps())
def test_what_readme_touches_the_tour_touches_in_that_order(title, words):
    touched = iter(next(step.does for step in STEPS if step.title == title))
    told = [w for w in words if w not in ("More", "Still missing")]  # offered everywhere
    assert told
    assert [w for w in told if w not in touched] == []


@pytest.mark.slow
@pytest.mark.usefixtures("compiled")
@pytest.mark.parametrize(("way", "units"), [*((way, "mm") for way in WAYS), ("touch", "inch")])
def test_an_empty_shop_sends_its_first_pack(way, units, tmp_path, capsys):
    """Every text of every screen and paper is read: no length in the other unit."""
    assert run_first_day(tmp_path, units=units, ways=(way,)) == 0, capsys.readouterr().out
    did = capsys.readouterr().out
    assert ("typed" in did) == (way != "touch")  # not one key of the keyboard
