"""Contrasts of the palettes, as WCAG 2.2 defines them (`contrast.py`)."""

import pytest

from station.look.style import DARK, LIGHT, STRIP_GROUNDS, Palette
from tests.outside import contrast as published

TEXT, SHAPE = published.TEXT.expected, published.SHAPE.expected
GROUNDS = ("paper", "bench", "tint", "care", "row")


def light(colour: str) -> float:
    parts = [int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5)]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return sum(w * c for w, c in zip(published.SHARES.expected, linear, strict=True))


def contrast(a: str, b: str) -> float:
    low, high = sorted((light(a), light(b)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("ground", GROUNDS)
@pytest.mark.parametrize("ink", ["ink", "good", "ochre_text", "stop", "quiet"])
def test_text_can_be_read(palette: Palette, ground: str, ink: str) -> None:
    assert contrast(getattr(palette, ink), getattr(palette, ground)) >= TEXT


@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
def test_bars_and_buttons_can_be_seen(palette: Palette) -> None:
    assert contrast(palette.on_bar, palette.bar) >= TEXT
    assert contrast(palette.on_bar, palette.act) >= TEXT
    assert contrast(palette.fill, palette.paper) >= SHAPE
    assert all(contrast(name, palette.paper) >= TEXT for name in palette.names)


@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("tone", STRIP_GROUNDS)
def test_the_strip_can_be_read(palette: Palette, tone: str) -> None:
    assert contrast(palette.on_bar, STRIP_GROUNDS[tone]) >= TEXT
