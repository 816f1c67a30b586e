"""Every list of the office, the form of its first row and each of its fields fit the screen."""

import pytest

from station.floor.office.lists import LISTS
from station.look import inspect
from station.shop.cards import button
from tests.touch import list_touches

pytestmark = pytest.mark.slow  # shows every form in two languages


@pytest.mark.parametrize("language", ["", "de"])
def test_lists_forms_and_fields_fit(screen, language):
    screen.at("office", worker="07")
    screen.stage.ledger.set_local("language", language)

    def look(code):
        screen.type(code)
        wrong = inspect.list_problems(screen.window)
        return [f"{screen.said}: {problem}" for problem in wrong]

    found = []
    for one in LISTS:
        found += look(button(f"list_{one.kind.kind}"))
        rows = [code for code, _ in list_touches(screen.session.desk.face().main)]
        found += look(rows[0]) if rows else []
        for code, _ in list_touches(screen.session.desk.face().main):
            found += look(code)
        screen.type(button("put_down"))
        screen.type(button("put_down"))
    screen.window.set_language("")
    assert found == []
