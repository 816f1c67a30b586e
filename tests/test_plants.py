"""Every broken line that is planted stands in the program just once."""

import pytest

from tests.plant import ROOT, planted
from tests.plants import AT_DESK, LEDGER, PLANTS, RULES
from tests.plants_counts import COUNTS
from tests.plants_cutting import CUTTING
from tests.plants_holds import HOLDS
from tests.plants_planning import PLANNING
from tests.plants_sharing import CLOSINGS, OTHERS, SHARING, SIMULATED, STOLEN_PASSWORDS

EVERY = [*PLANTS, *SHARING, *CLOSINGS, *STOLEN_PASSWORDS, *CUTTING, *HOLDS, *COUNTS, *PLANNING]


@pytest.mark.parametrize("plant", EVERY, ids=lambda plant: plant.why)
def test_the_line_stands_just_once(plant):
    sound = (ROOT / plant.file).read_text(encoding="utf-8")
    assert planted(sound, plant) != sound
    assert all((ROOT / t).exists() for t in plant.tests if ":" not in t)


def test_there_are_thirty_one():
    assert [len(RULES), len(LEDGER), len(AT_DESK)] == [12, 10, 9]
    assert [len(SIMULATED), len(OTHERS), len(CLOSINGS), len(CUTTING), len(PLANNING)] == [
        38, 9, 7, 25, 34,
    ]  # fmt: skip


def test_a_line_that_moved_is_an_error():
    with pytest.raises(ValueError, match="stands 0 times"):
        planted("another text", PLANTS[0])
