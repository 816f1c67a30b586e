"""Check characters against an independent implementation (`check_characters.py`)."""

import itertools
import random

import pytest
from stdnum.iso7064 import mod_37_2

from station.shop import codes
from station.shop.codes import Unread, check_character, read, write
from tests.outside import check_characters
from tests.outside.value import values

WHOLE = (write("batch", "00412", "A", 3), write("worker", "07"), write("pack", "00077"), "X101I")
LETTERS = codes.ALPHABET[:36]


@values(check_characters.CHECKS)
def test_check_characters(given, expected):
    assert check_character(given) == expected


def test_they_agree_with_an_independent_implementation():
    chance = random.Random(1)
    for _ in range(2000):
        text = "".join(chance.choices(LETTERS, k=chance.randint(1, 12)))
        assert check_character(text) == mod_37_2.calc_check_digit(text)


def slips(whole, kind):
    """Every word that a slip of this kind makes of a whole code."""
    if kind == "one character is another":
        for at, char in itertools.product(range(len(whole)), LETTERS):
            yield whole[:at] + char + whole[at + 1 :]
        return
    for at in range(len(whole) - 1):
        yield whole[:at] + whole[at + 1] + whole[at] + whole[at + 2 :]


@values(check_characters.FOUND)
@pytest.mark.parametrize("whole", WHOLE)
def test_single_slips_are_seen(whole, given, expected):
    wrong = [slip for slip in slips(whole, given) if slip != whole]
    seen = sum(isinstance(read(slip), Unread) for slip in wrong)
    assert seen / len(wrong) == expected
