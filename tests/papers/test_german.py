"""Papers in German: nothing English is left on them but the shop's own words."""

import re
from dataclasses import replace

import pytest

from station.look.language import CONTEXT, load_translator
from station.papers import spoken
from station.papers.marks import TextMark
from station.papers.page import say_moment
from station.printing import gathering
from station.shop import lengths
from station.shop.first_facts import first_reasons
from station.shop.words import say
from tests.papers import samples
from tests.replay import Stage

# of the shop: its names, what it wrote itself
OWN = re.compile(
    r"Heddle comb|Stick shuttle|Warp spacer|shuttles|Loom kit|birch plywood|Router \d|Mailer M|"
    r"Cart \d|compression"
)
# words that stand in English sentences, and in no German one
ENGLISH = re.compile(
    r"\b(the|of|and|to|with|for|from|each|is|are|it|its|by|on|only|this|sheet|sheets|batch|"
    r"order|pack|packs|part|parts|worker|printed|copy|cards?|nothing|waits?|reason|leaves|page|"
    r"place|rack|tabs|slip|scan|print|cut|more)\b",
    re.IGNORECASE,
)


@pytest.fixture
def german():
    found = load_translator("de")
    spoken.speak(lambda template: found.translate(CONTEXT, template) or template)
    lengths.use_decimals("de")
    yield
    spoken.speak()
    lengths.use_decimals("")


def list_words(page):
    return [m.words for marks in page.pages for m in marks if isinstance(m, TextMark)]


@pytest.mark.parametrize("name", samples.papers("A4"))
@pytest.mark.parametrize("size", ["A4", "A5"])
def test_a_paper_has_no_english_word_on_it(german, name, size):
    page, _ = samples.papers(size)[name]
    if name == "handover":
        return  # what stands in its lists is given to it; the next test makes one
    own = {reason.words for reason in first_reasons()}
    said = (OWN.sub("", words) for words in list_words(page) if words not in own)
    assert [words for words in said if ENGLISH.search(words)] == []


def test_a_german_station_prints_german_with_a_window_or_without(tmp_path):
    stage = Stage(tmp_path)
    stage.ledger.set_local("language", "de")
    for kind, number, said in (
        ("traveller", "00900", "Verputzen"),
        ("handover", "05", "Bitte ansehen"),
        ("thing_cards", "", "Fräse, Spannbett"),
        ("button_cards", "all", "oben links"),
    ):
        page = gathering.make_paper(stage.ledger, kind, number, samples.NOW)
        assert said in " ".join(list_words(page)), kind
        assert lengths.write_figure(6.5) == "6.5", "an English strip keeps its decimal sign"
    stage.ledger.set_local("language", "")
    page = gathering.make_paper(stage.ledger, "traveller", "00900", samples.NOW)
    assert "Trimming" in list_words(page)
    stage.close()


def test_a_day_and_a_figure_are_written_as_the_language_does(german):
    assert spoken.tell(say_moment("2026-11-25T07:12:00")) == "Mi 25.11. 07:12"
    heavy = replace(samples.MATERIAL, density_kg_m3=1000.0)
    shop = replace(samples.SHOP, two_people_kg=5.0)
    text = " ".join(list_words(samples.a_traveller(material=heavy, shop=shop)))
    assert "Platte 17,9 kg: zu zweit oder mit Hebehilfe." in text


def test_a_large_number_is_whole_in_the_type_of_papers(german):
    """The type has no narrow space: one of its own width stands there, and no line breaks."""
    assert spoken.tell(say("{n}", n=12000)) == "12\u00a0000"
