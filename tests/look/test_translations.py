"""Every template stands in each translation file, and a translation fits its template."""

import re
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication
from samples import packing

from resources.translations.templates import templates
from resources.translations.ts_file import CONTEXT, read
from station.desk.appearance import LANGUAGES
from station.look import inspect, language
from station.look.widgets import Key
from station.look.window import Window
from station.shop.acts import good
from station.shop.faces import Asked, Face
from station.shop.words import say

ROOT = Path(__file__).parent.parent.parent
FILES = sorted((ROOT / "resources" / "translations").glob("station_*.ts"))
VALUE = re.compile(r"\{(\w+)\}")
FORM = re.compile(r"\{(\w+)\|[^|{}]*\|[^|{}]*\}")
MOST_OPEN = 0.1  # share that may wait for a translator; it is shown in English meanwhile


@pytest.fixture(autouse=True)
def english_again(qapp: QApplication):
    yield
    language.set_language("")


def test_every_language_on_offer_has_its_file() -> None:
    assert {f.stem.removeprefix("station_") for f in FILES} | {""} == set(LANGUAGES)


def test_the_context_is_the_one_the_screen_asks_for() -> None:
    assert CONTEXT == language.CONTEXT


@pytest.mark.parametrize("file", FILES, ids=lambda f: f.stem)
@pytest.mark.slow
def test_every_template_is_in_the_file(file: Path) -> None:
    """``python -m resources.translations`` brings it up to date."""
    assert sorted(read(file)) == templates(ROOT)


@pytest.mark.parametrize("file", FILES, ids=lambda f: f.stem)
def test_a_translation_has_the_values_of_its_template(file: Path) -> None:
    done = {source: text for source, text in read(file).items() if text}
    wrong = [
        (source, text)
        for source, text in done.items()
        if sorted(VALUE.findall(source)) != sorted(VALUE.findall(text))
        or not set(FORM.findall(text)) <= set(FORM.findall(source))
        or VALUE.sub("", FORM.sub("", text)).count("{")
    ]
    assert wrong == []
    assert len(done) >= (1 - MOST_OPEN) * len(read(file))


@pytest.mark.parametrize("file", FILES, ids=lambda f: f.stem)
def test_the_compiled_file_says_the_same(file: Path) -> None:
    found = language.load_translator(file.stem.removeprefix("station_"))
    assert found
    for source, text in read(file).items():
        assert (found.translate(CONTEXT, source) or source) == (text or source)


def test_the_window_changes_its_language_with_what_it_showed(
    window: Window, qapp: QApplication
) -> None:
    window.show_face(packing())
    window.show_answer(
        good(say("Batch {batch} is held", batch="00412"), say("Scan your badge.")), ""
    )
    for name, said in (("de", "Los 00412 ist gesperrt"), ("", "Batch 00412 is held")):
        window.set_language(name)
        for _ in range(3):
            qapp.processEvents()
        assert window.strip.said.text() == said
        assert ("Wartet aufs Packen" in inspect.list_texts(window)) == (name == "de")
        assert inspect.list_problems(window) == []


def test_the_forms_are_chosen_in_the_other_language() -> None:
    language.set_language("de")
    parts = say("{n} {n|part|parts}", n=1), say("{n} {n|part|parts}", n=2)
    assert [language.translate(words) for words in parts] == ["1 Teil", "2 Teile"]


def test_a_language_without_a_file_stays_english(caplog) -> None:
    language.set_language("xx")
    assert language.translate(say("Scan your badge.")) == "Scan your badge."
    assert "no translation file for 'xx'" in caplog.text


def test_a_number_that_is_asked_for_has_the_sign_of_its_language(
    window: Window, qapp: QApplication
) -> None:
    window.show_face(Face(title=say("Loading"), main=(Asked(question=say("x"), typed="6.4"),)))
    for name, shown, key in (("de", "6,4", ","), ("", "6.4", ".")):
        window.set_language(name)
        qapp.processEvents()
        assert shown in inspect.list_texts(window)
        assert key in {found.sign for found in window.findChildren(Key)}
