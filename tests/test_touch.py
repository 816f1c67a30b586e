"""What is touched is found by its words, and only where nothing else says them."""

import pytest

from station.shop.cards import button
from station.shop.faces import Cell, Decision, Face, Listing, Press, Row, Table
from station.shop.words import say
from tests.replay import code_of
from tests.touch import NotShown, find_touch

ONE, TWO, THREE, FOUR = (button(f"{name}") for name in ("save", "cancel_it", "more", "fewer"))
FACE = Face(
    title="Office",
    main=(
        Table(
            columns=("order",),
            rows=(
                Row(title="3306", note=say("{n} combs", n=6), code=ONE),
                Row(title="33", cells=(Cell(text="3306"),), code=""),
                Row(title="33061", code=TWO, press=Press(label="Release 33061", code=THREE)),
            ),
        ),
    ),
    side=(
        Listing(title="3307", rows=(((Cell(text="3307"), Cell(text="late")), FOUR),)),
        Decision(title="3308", press=Press(label="Do it", code=ONE)),
    ),
)


@pytest.mark.parametrize(
    ("words", "code"),
    [
        ("3306", ONE),  # the whole of a text goes before a part of one
        ("6 combs", ONE),
        ("Do it", ONE),
        ("33061", TWO),
        ("Release", THREE),
        ("late", FOUR),
        ("3307 · late", FOUR),
    ],
)
def test_it_is_found_by_its_words(words, code):
    assert find_touch(FACE, words) == code


@pytest.mark.parametrize("words", ["3309", "330", "order", "Office"])
def test_what_nothing_says_or_several_say_is_told(words):
    with pytest.raises(NotShown, match=f"things to touch say “{words}”"):
        find_touch(FACE, words)


def test_a_day_touches_words(stage):
    for line in ("@worker 07", "@area office", "button list_cutfile"):
        stage.send(line)
    given = stage.send("touch SG010-SET")
    assert (given.answer.tone, str(given.answer.said)) == ("good", "Cut file 012")
    assert code_of("touch SG010-SET", stage.ledger) == "touch SG010-SET"  # without a screen
