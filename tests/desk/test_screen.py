"""Dark, sounds and language: switched by a card, kept on this PC, no act of the shop."""

import pytest

from station.desk.appearance import LANGUAGES, Screen, screen
from station.shop.cards import button


@pytest.mark.parametrize(
    ("name", "after", "said"),
    [
        ("dark", Screen(dark=True), "The screen is dark now"),
        ("sounds", Screen(muted=True), "Sounds are off now"),
        ("language", Screen(language="de"), "This screen speaks Deutsch now"),
    ],
)
def test_a_card_switches_and_switches_back(stage, name, after, said) -> None:
    assert screen(stage.ledger) == Screen()
    given = stage.desk.take(button(name))
    assert (str(given.answer.said), given.entry) == (said, None)
    assert screen(stage.ledger) == after
    for _ in range(len(LANGUAGES) - 1 if name == "language" else 1):
        stage.desk.take(button(name))
    assert screen(stage.ledger) == Screen()


def test_the_work_in_hand_stays(stage) -> None:
    stage.send("@area popping")
    stage.send("@worker 02")
    before = stage.desk.hand.subject, stage.desk.hand.area
    stage.desk.take(button("dark"))
    assert (stage.desk.hand.subject, stage.desk.hand.area) == before


def test_a_language_that_is_gone_is_english(stage) -> None:
    stage.ledger.set_local("language", "xx")
    assert screen(stage.ledger).language == ""
