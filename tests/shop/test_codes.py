"""Codes: check characters against published and independent values, and reading."""

import itertools
import random

import pytest
from stdnum.iso7064 import mod_37_2

from station.shop import cards, codes
from station.shop.codes import Code, Unread, check_character, read, write


# COMPUTED (python-stdnum 2.2, equal to an own implementation), ISO/IEC 7064 MOD 37-2; the
# first is the ISBT 128 example.
@pytest.mark.parametrize(
    ("text", "check"),
    [
        ("G123498654321", "H"),
        ("A999914123456", "N"),
        ("A999522123459", "U"),
        ("A000123", "V"),
        ("MDF0001", "F"),
        ("B7", "H"),
        ("P0007", "1"),
        ("ZZZZZZ", "V"),
        ("0", "1"),
        ("B00412", "Y"),
        ("W01", "2"),
    ],
)
def test_check_characters(text, check):
    assert check_character(text) == check


def test_check_characters_agree_with_an_independent_implementation():
    chance = random.Random(1)
    for _ in range(2000):
        text = "".join(chance.choices(codes.ALPHABET[:36], k=chance.randint(1, 12)))
        assert check_character(text) == mod_37_2.calc_check_digit(text)


# COMPUTED: MOD 37-2 detects every single substitution and every transposition of neighbours.
@pytest.mark.parametrize(
    "whole",
    [write("batch", "00412", "A", 3), write("worker", "07"), write("pack", "00077"), "X101I"],
)
def test_single_slips_are_seen(whole):
    for place, char in itertools.product(range(len(whole)), codes.ALPHABET[:36]):
        wrong = whole[:place] + char + whole[place + 1 :]
        assert wrong == whole or isinstance(read(wrong), Unread), wrong
    for place in range(len(whole) - 1):
        wrong = whole[:place] + whole[place + 1] + whole[place] + whole[place + 2 :]
        assert wrong == whole or isinstance(read(wrong), Unread), wrong


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("W012", Code("worker", "01")),
        ("w 01 2", Code("worker", "01")),
        ("]C0W012", Code("worker", "01")),
        ("B00412Y", Code("batch", "00412")),
        (write("batch", "00412", "A"), Code("batch", "00412", "A")),
        (write("batch", "00412", "A", 12), Code("batch", "00412", "A", 12)),
        ("B 00412 a-" + write("batch", "00412", "A")[-1], Code("batch", "00412", "A")),
    ],
)
def test_reading(text, code):
    assert read(text) == code


@pytest.mark.parametrize("kind", sorted(codes.LETTERS))
def test_every_kind_is_written_and_read(kind):
    number = next(f"{n:03d}" for n in range(1, 99) if codes.usable(kind, f"{n:03d}"))
    assert read(write(kind, number)) == Code(kind, number)


def test_a_shops_own_prefix_is_taken_off():
    assert read("##W012", "##") == Code("worker", "01")


@pytest.mark.parametrize(
    "text",
    [
        "",
        "W",
        "W0",
        "5901234123457",
        "https://example.invalid",
        "Q012",
        "W0ä2",
        "B00412A3K" * 9,
        "\x00\x01",
    ],
)
def test_foreign_codes_are_foreign(text):
    assert read(text) == Unread("foreign", text)


def test_a_wrong_check_character_is_said():
    assert read("W013") == Unread("check", "W013")


def test_a_number_without_a_printable_check_is_skipped():
    starred = next(f"{n:05d}" for n in range(99_999) if not codes.usable("batch", f"{n:05d}"))
    with pytest.raises(ValueError, match="no printable check"):
        write("batch", starred)


def test_copies_follow_until_z():
    letters = ["A"]
    while letter := codes.next_copy("00412", letters[-1], 4):
        letters.append(letter)
    assert letters == sorted(letters)
    assert letters[-1] <= "Z"
    assert len(letters) > 20


def test_every_card_has_a_printable_code():
    assert cards.unprintable() == []
    numbers = [card.number for card in cards.BUTTONS.values()]
    assert len(set(numbers)) == len(numbers)


@pytest.mark.parametrize(
    ("x", "y", "words"),
    [
        (10, 1210, "top left"),
        (1220, 610, "middle"),
        (2440, 0, "bottom right"),
        (-5, 5000, "top left"),
    ],
)
def test_a_point_lies_in_its_zone(x, y, words):
    assert cards.ZONES[cards.zone_of(x, y, 2440, 1220)] == words
