"""Why a batch is cut: what is written on it is read again, and said in the screen's language."""

import pytest

from station.look import language
from station.queries import why_cut


@pytest.mark.parametrize(
    ("why", "german"),
    [
        (why_cut.wait_for("WC-70", 10), "10 Aufträge warten auf WC-70"),
        (why_cut.wait_for("WC-70", 1), "1 Auftrag wartet auf WC-70"),
        (why_cut.lack_of_mark("SG: 1", 1200), "SG: 1 unter seinem Mindestbestand von 1200"),
        (why_cut.ahead_of_orders("HC-300"), "HC-300 für Vorrat gepackt und eigene Anläufe"),
        (why_cut.used_a_day("ST-200", 261.6), "ST-200: 261,6 am Tag gebraucht"),
    ],
)
def test_what_is_written_is_read_again_and_said_in_german(qapp, why, german):
    again = why_cut.read_why(str(why))
    assert str(again) == str(why)
    language.set_language("de")
    assert language.translate(again) == german
    language.set_language("")


@pytest.mark.parametrize("text", ["", "for the fair", "WC-70 below its minimum", "10 orders wait"])
def test_what_somebody_wrote_stays_as_it_is(text):
    assert why_cut.read_why(text) == text


def test_what_was_written_in_older_words_is_read_too():
    assert str(why_cut.read_why("SG-10 below its mark of 1200")) == str(
        why_cut.lack_of_mark("SG-10", 1200)
    )
