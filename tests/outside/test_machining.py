"""What a cut file's analysis works out, against plain arithmetic (`machining.py`)."""

import pytest

from station.cutting.model import Setting
from station.cutting.report import analyse_program
from station.shop.facts import Shop
from tests.cutting.reading import HEAD, SETTING, both, box, found
from tests.outside import machining
from tests.outside.value import values

BAND_MM = (0.09, 0.11)


@values(machining.CHIP_LOADS)
def test_chip_load_by_the_bits_own_edges(given, expected):
    speed, edges, feed = given
    shop = Shop(id="shop", chip_low_mm=BAND_MM[0], chip_high_mm=BAND_MM[1])
    setting = Setting(thickness_mm=6.0, bit_mm=SETTING.bit_mm, flutes_of=edges, shop=shop)
    got = found(f"S{speed}\nG0 X0 Y10\nG1 Z-3 F600\nX180 F{feed}\nG0 Z5\n", setting)
    assert got.bits[0].chip_mm[0] == pytest.approx(expected)
    outside = not BAND_MM[0] <= expected <= BAND_MM[1]
    assert ("chip-load" in {p.kind for p in got.problems}) == outside


@values(machining.MASSES)
def test_mass_of_a_part(given, expected):
    length, width, thickness, density = given
    piece = box(20, 20, length + 6, width + 6, z=-thickness, tab=12)
    setting = Setting(thickness_mm=thickness, bit_mm={1: 6.0})
    got = analyse_program(both(f"{HEAD}{piece}M30"), setting)
    assert got.mass_g(got.shapes[0], density) == pytest.approx(expected, abs=1e-3)
