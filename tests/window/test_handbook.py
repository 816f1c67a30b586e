"""The handbook is opened by More, at the chapter of the work area; every chapter fits a screen."""

import re
from pathlib import Path

import pytest

from station.look import inspect
from station.shop.areas import AREAS
from station.shop.cards import button
from station.shop.handbook import read_chapters
from tests.touch import find_touch

PAGE = Path(__file__).parents[2] / "resources" / "guide" / "shop.md"


@pytest.mark.parametrize("area", [area.id for area in AREAS])
def test_more_opens_the_chapter_of_the_area(screen, area):
    screen.at(area, worker="07")
    screen.touch(button("menu"))
    assert inspect.list_problems(screen.window) == []
    screen.touch(button("handbook"))
    own = {"office": "Setting up", "today": "Shop today and what to cut"}
    own["plan"] = own["today"]
    assert screen.said == f"Handbook: {own.get(area, area.capitalize())}"


def test_every_chapter_fits_and_is_a_touch_away(screen):
    screen.at("popping", worker="07")
    screen.touch(button("menu"))
    screen.touch(button("handbook"))
    for chapter in read_chapters():
        screen.touch(find_touch(screen.session.desk.face().side, chapter.title))
        assert screen.said == f"Handbook: {chapter.title}"
        assert inspect.list_problems(screen.window) == []
        assert chapter.lines[0] in inspect.list_texts(screen.window)
    screen.touch(button("put_down"))
    assert "Chapters" not in inspect.list_texts(screen.window)


def test_its_pictures_are_there():
    pictures = re.findall(r"!\[[^\]]+\]\(([^)]+)\)", PAGE.read_text("utf-8"))
    assert len(pictures) >= 4
    assert [name for name in pictures if not (PAGE.parent / name).exists()] == []
