"""Every list of the office, the form of its first row and each of its fields fit the screen."""

import pytest
from PySide6.QtTest import QTest

from station.floor.office.lists import LISTS, list_facts
from station.look import inspect
from station.look.style import Style
from station.shop.cards import button
from station.shop.facts import Reason
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


@pytest.mark.parametrize(
    ("size", "rows"), [((1366, 768), 12), ((1920, 1080), 16), ((2560, 1440), 18)]
)
def test_a_larger_screen_lists_more(screen, size, rows):
    """The reasons of every shop are more than fit: one page follows the other without a gap."""
    screen.window.resize(*size)
    for _ in range(20):  # the window waits until nobody drags its corner any more
        QTest.qWait(50)
    screen.at("office", worker="07")
    screen.type(button("list_reason"))

    def list_numbers():
        table = screen.session.desk.face().main[0]
        return [row.title for row in table.rows]

    first = list_numbers()
    assert len(first) == rows
    assert inspect.list_problems(screen.window) == []
    screen.type(button("next_page"))
    known = [r.id for r in list_facts(Reason, screen.stage.ledger.view)]
    assert [*first, *list_numbers()][: 2 * rows] == known[: 2 * rows]
    screen.type(button("back_page"))
    screen.type(button(f"row_{rows}"))
    assert screen.session.desk.hand.work.chosen == known[rows - 1]
    Style.scale = 1.0
