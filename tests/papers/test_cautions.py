"""Every paper that sends hands to a machine says what to take care of, and defers to the shop."""

import ast
import inspect
from pathlib import Path

import pytest

import station.papers
from station.papers import cards
from station.papers.marks import TextMark
from station.shop.cards import BUTTONS
from station.shop.cautions import CAUTIONS, list_cautions
from station.shop.codes import write
from tests.papers import samples

# by paper: what it says at which machine; nothing where it sends no hand to one, and why
PAPERS = {
    "traveller": ("paper_bed",),
    "traveller of 40 sheets": ("paper_bed",),
    "traveller of many parts": ("paper_bed",),
    "traveller of a child": ("paper_table",),
    "handover": ("paper_shift",),
    "cart list": ("cart",),
    "thing cards": ("paper_bit",),
    "button cards": (),  # each area's cards begin its cautions by one scan, see below
    "badges": (),  # who works here
    "part cards": (),  # where parts lie
    "pack label": (),  # what is in a pack, and its weight
    "shelf card": (),  # what is packed ahead, and where it lies
    "pick list": (),  # what is taken from the rack
    "order list": (),  # what is bought
    "join cards": (),  # a PC is joined
}
WITHOUT_LOCAL = ("thing cards",)  # of a card's size


def words(page):
    """All words of a paper, as they run."""
    lines = [m.words for each in page.pages for m in each if isinstance(m, TextMark)]
    return " ".join(" ".join(lines).split())


def test_every_paper_is_in_the_table():
    assert set(PAPERS) == set(samples.papers("A4"))
    made = {
        f.name
        for file in Path(station.papers.__path__[0]).glob("*.py")
        for f in ast.parse(file.read_text(encoding="utf-8")).body
        if isinstance(f, ast.FunctionDef)
        and f.name.startswith("make_")
        and getattr(f.returns, "id", "") == "Page"
    }
    drawn = inspect.getsource(samples)
    assert len(made) > 5
    assert [name for name in made if f"{name}(" not in drawn] == []


@pytest.mark.parametrize("paper", ["A4", "A5"])
@pytest.mark.parametrize("name", [name for name, said in PAPERS.items() if said])
def test_its_caution_is_on_it_whole(name, paper):
    page, _ = samples.papers(paper)[name]
    text = words(page)
    for each in PAPERS[name]:
        assert str(CAUTIONS[each].line) in text
    assert name in WITHOUT_LOCAL or samples.SHOP.caution in text


@pytest.mark.parametrize("paper", ["A4", "A5"])
def test_a_lasers_traveller_says_what_a_laser_needs(paper):
    text = words(samples.a_traveller(paper=paper, laser=True))
    assert str(CAUTIONS["paper_laser"].line) in text
    assert str(CAUTIONS["paper_bed"].line) in text


def test_every_caution_of_papers_is_on_one():
    said = {each for names in PAPERS.values() for each in names} | {"paper_laser"}
    assert said >= {name for name, c in CAUTIONS.items() if c.area == "paper"}


@pytest.mark.parametrize("area", ["loading", "popping", "trimming", "packing", "cart", "office"])
def test_the_cards_of_an_area_begin_its_cautions(area):
    page = cards.make_button_cards(area, ())
    codes = [getattr(m, "code", "") for each in page.pages for m in each]
    care = write("button", BUTTONS["care"].number)
    assert (care in codes) == bool(list_cautions(area))
