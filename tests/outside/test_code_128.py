"""Printed symbols against what is published of Code 128 (`code_128.py`)."""

import itertools

import pytest
from barcode.charsets import code128

from station.papers import bars
from tests.outside import code_128
from tests.outside.value import values

PER_CHARACTER, EVEN, STARTS, STOP = (value.expected for value in code_128.STRUCTURE)


@values(code_128.LENGTHS)
def test_the_length_of_a_symbol(given, expected):
    assert len(bars.encode_modules(given)) <= expected
    assert (len(bars.encode_modules(given)) - 35) % PER_CHARACTER == 0


@pytest.mark.parametrize("text", ["B00412AA", "W012", "B00412A12X", "MASTER-01"])
def test_quiet_zone_and_height(text):
    narrow = bars.DOTS * bars.DOT
    least, share = code_128.HEIGHT.expected
    assert narrow >= 0.33
    symbol = len(bars.encode_modules(text)) * narrow
    assert bars.measure_length(text) == pytest.approx(
        symbol + 2 * code_128.QUIET.expected * narrow
    )
    assert bars.find_least_height(text) >= max(least, share * symbol)


@values(code_128.SIZES)
def test_a_symbols_size(given, expected):
    text, narrow = given
    ours = bars.DOTS * bars.DOT
    symbol = len(bars.encode_modules(text)) * ours
    assert (symbol * narrow / ours, bars.measure_length(text) * narrow / ours) == pytest.approx(
        expected
    )


@pytest.mark.parametrize("text", ["MASTER-01", "PJJ123C", "HI345678", "B00412AA"])
def test_a_symbol_starts_and_stops(text):
    widths = "".join(
        str(len(list(run))) for _, run in itertools.groupby(bars.encode_modules(text))
    )
    assert widths.endswith(STOP)
    assert widths.startswith(STARTS)
    for first in range(0, len(widths) - 7, 6):
        character = [int(width) for width in widths[first : first + 6]]
        assert sum(character) == PER_CHARACTER
        assert (sum(character[::2]) % 2 == 0) == (EVEN == "even")


def check_value(values):
    """(start + Σ i·vᵢ) mod 103 of a symbol's values, its start first."""
    return (values[0] + sum(n * v for n, v in enumerate(values[1:], 1))) % 103


@values(code_128.CHECKS)
def test_the_rule_for_check_characters(given, expected):
    start, rest = given
    assert check_value([start, *rest]) == expected


def values_of(text):
    """The values of a printed symbol but its stop: a pattern's place in the encoder's table."""
    bits = bars.encode_modules(text)[:-13]
    return [code128.CODES.index(bits[n : n + 11]) for n in range(0, len(bits), 11)]


@pytest.mark.parametrize(
    "text", ["HI345678", "PJJ123C", "MASTER-01", "RACK1234567", "B00412AA", "B00412A12T", "W07R"]
)
def test_the_check_character_of_a_symbol(text):
    *rest, check = values_of(text)
    assert check_value(rest) == check
