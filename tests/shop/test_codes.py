"""Codes are written and read; their check characters: `tests/outside/check_characters.py`."""

import pytest

from station.shop import cards, codes
from station.shop.codes import Code, Unread, read, write


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


def test_a_touch_sends_a_code_that_prints():
    starred = next(n for n in (f"{n:05d}" for n in range(99_999)) if not codes.usable("batch", n))
    bare = next(n for n in (f"{n:05d}" for n in range(99_999))
                if codes.usable("batch", n) and not codes.usable("batch", n, "A"))  # fmt: skip
    assert codes.write_touch("batch", "00412", "A") == write("batch", "00412", "A")
    assert codes.write_touch("batch", bare, "A") == write("batch", bare)
    assert codes.write_touch("batch", starred) == ""
    assert read(codes.write_touch("order", "web-7")) == Code("order", "web-7")


@pytest.mark.parametrize("kind", sorted(set(codes.LETTERS) - {"batch"}))
@pytest.mark.parametrize(
    "number", ["489", "368", "HC-300", "a1", "Z", "ZA", "PJ-Zz", "00", "A" * 12]
)
def test_a_shops_own_number_is_printed_and_read_whatever_its_signs(kind, number):
    text = write(kind, number)
    assert len(text) <= codes.WIDEST
    assert read(text) == read(text.lower()) == Code(kind, number)


def test_every_number_of_three_digits_has_a_code_of_its_own():
    for kind in set(codes.LETTERS) - {"batch"}:
        written = {write(kind, f"{n:03d}") for n in range(1000)}
        assert len(written) == 1000
        assert {read(text).number for text in written} == {f"{n:03d}" for n in range(1000)}


def test_one_wrong_sign_of_a_spelled_code_is_found():
    text = write("part", "HC-300")
    for place in range(len(text)):
        for sign in codes.ALPHABET[:36]:
            wrong = text[:place] + sign + text[place + 1 :]
            assert wrong == text or isinstance(read(wrong), Unread), wrong


@pytest.mark.parametrize("number", ["", "ä1", "a b", "a/b", "A" * 30])
def test_what_cannot_be_spelled_has_no_code(number):
    assert not codes.has_code("part", number)
    with pytest.raises(ValueError, match="no printable"):
        write("part", number)


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
