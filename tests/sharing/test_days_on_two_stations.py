"""Days in the shop with the work spread over two stations, through the real server.

Every answer must be the one of a single PC; twelve and thirteen need two stations by themselves.
"""

import pytest

from tests import replay
from tests.sharing.two_stage import TwoStations

pytestmark = pytest.mark.slow

SPREAD = {
    "01_ordinary_batch": "trimming packing cart",
    "04_bit_breaks": "popping",
    "07_rework": "loading popping",
    "08_split": "popping",
    "09_lost_paper": "trimming",
    "10_wrong_traveller": "popping",
    "11_double_scan": "loading",
    "16_order_cancelled": "trimming",
    "17_two_missing": "trimming",
}


@pytest.mark.parametrize("name", SPREAD)
def test_a_day_over_two_stations(shop, name):
    second = frozenset(SPREAD[name].split())
    stages = []

    def staged(folder):
        stages.append(TwoStations(folder, shop, second))
        return stages[0]

    lines = replay.play(replay.HERE / f"{name}.txt", staged=staged)
    assert any(line.startswith(">") for line in lines)
    assert stages[0].turned == {"1": [], "2": []}


@pytest.mark.parametrize("file", sorted((replay.HERE / "two").glob("*.txt")), ids=lambda f: f.stem)
def test_a_day_that_needs_two(shop, file):
    replay.play(file, staged=lambda folder: TwoStations(folder, shop))
