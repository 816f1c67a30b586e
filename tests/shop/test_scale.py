"""What scales send, and when a weight stands still."""

import pytest

from station.shop.scale import SteadyScale, find_weight, read_weight


@pytest.mark.parametrize(
    ("text", "grams"),
    [("390.5 g", 390.5), ("390,5g", 390.5), (" 1.25 kg ", 1250), ("-3 g", -3), ("0 g", 0),
     ("13.8 oz", 391.2234), ("13,8OZ", 391.2234), ("3.4 lb", 1542.2141), ("2 lbs", 907.1847),
     ("3 lb 4.5 oz", 1488.3500), ("390", None), ("g", None), ("W05K", None), ("390 g 2", None)],
)  # fmt: skip
def test_a_text_that_is_a_weight(text, grams):
    assert read_weight(text) == (grams if grams is None else pytest.approx(grams, abs=1e-3))


@pytest.mark.parametrize(
    ("line", "grams"),
    [("ST,GS,+  390.5 g", 390.5), ("N     +    0.390 kg", 390), ("S S     390.52 g", 390.52),
     ("US,NT,-  12 g", -12), ("ST,GS,+  13.80 oz", 391.2234), ("NET  3 lb  4.5 oz", 1488.35),
     ("Err 3", None), ("", None)],
)  # fmt: skip
def test_a_line_that_a_scale_sends(line, grams):
    assert find_weight(line) == pytest.approx(grams)


def test_a_weight_is_told_once_when_it_stands_still():
    scale = SteadyScale()
    shown = [0, 0, 0, 120, 388, 391, 390.4, 390.5, 390.5, 390.5, 391, 0, 0, 0, 390, 390, 390]
    told = [(n, g) for n, grams in enumerate(shown) if (g := scale.take(f"{grams} g"))]
    assert told == [(7, 390.5), (16, 390)]


def test_another_load_is_told_though_the_scale_was_never_empty():
    scale = SteadyScale()
    shown = [200, 200, 200, 200, 350, 500, 500, 500, 500]
    assert [g for grams in shown if (g := scale.take(f"{grams} g"))] == [200, 500]
