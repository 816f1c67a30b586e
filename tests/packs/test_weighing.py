"""What a scale can tell of a pack: what is said of it against packs that are made up."""

import random

import pytest

from station.packs.weighing import Heap, Known, WeighedPack, find_deviate
from tests.measured import note

LOT, WITHIN, SCALE = 0.04, 0.005, 1.0
ALARMS = 0.01
# an order of large combs, shuttles and small keys; what one weighs is known, its lot is not
INSIDE = (("comb", 4, 151.0), ("shuttle", 6, 37.0), ("key", 10, 9.0))
HEAPS = tuple(Heap(part, "7", n, grams) for part, n, grams in INSIDE)


def learn_all(packs):
    """What is known after these packs."""
    known = Known(LOT, WITHIN)
    known.learn_all(packs)
    return known


def weigh(chance, off, *, without=None):
    """A pack on the scale, in g: its lot is `off`; one piece of a part may be missing."""
    total = chance.gauss(0.0, SCALE)
    for place, (_, n, grams) in enumerate(INSIDE):
        for _ in range(n - (place == without)):
            total += grams * (1 + off + chance.gauss(0.0, WITHIN))
    return total


def find_shares(learnt, *, packs=4000, seed=1):
    """The shares of packs that are doubted: whole ones, and one piece of each part missing.

    Each is of a lot of its own, of which `learnt` whole packs were weighed before.
    """
    chance, doubted, said = random.Random(seed), [0] * 4, [0.0] * 4
    for _ in range(packs):
        off = chance.gauss(0.0, LOT)
        known = learn_all(WeighedPack(HEAPS, weigh(chance, off)) for _ in range(learnt))
        expected = known.expect(HEAPS, ALARMS)
        for place in range(4):
            without = None if place == 3 else place
            shown = weigh(chance, off, without=without)
            doubted[place] += abs(shown - expected.grams) > expected.tolerance
            said[place] += ALARMS if place == 3 else known.tell_chance(HEAPS, place, ALARMS)
    return [n / packs for n in doubted], [n / packs for n in said]


@pytest.mark.slow
@pytest.mark.parametrize("learnt", [0, 1, 5])
def test_the_share_found_is_the_share_that_is_said(learnt):
    """Within three points for each part, by its weight, and for false alarms."""
    found, said = find_shares(learnt)
    far = 100 * max(abs(f - s) for f, s in zip(found, said, strict=True))
    note(f"Weighed packs, {learnt} learnt from: found against said", f"{far:.1f} points", "≤ 3",
         "python -m pytest tests/packs/test_weighing.py")  # fmt: skip
    assert found == pytest.approx(said, abs=0.03)
    assert found[3] == pytest.approx(ALARMS, abs=0.006)


def test_what_cannot_be_noticed_before_is_noticed_after_learning():
    """A shuttle of 37 g in 916 g: four per cent of the lot hide it, until packs were weighed."""
    chance, off = random.Random(2), 0.05
    before = Known(LOT, WITHIN).tell_chance(HEAPS, 1, ALARMS)
    known = learn_all(WeighedPack(HEAPS, weigh(chance, off)) for _ in range(3))
    after = known.tell_chance(HEAPS, 1, ALARMS)
    assert before < 0.1
    assert after > 0.99
    assert known.expect(HEAPS, ALARMS).grams == pytest.approx(916 * 1.05, abs=3)
    # another lot is as little known as before
    other = tuple(h._replace(lot="8") for h in HEAPS)
    assert known.tell_chance(other, 1, ALARMS) == pytest.approx(before)


def test_a_part_that_is_off_is_learnt_beside_its_lot():
    """A comb whose mass is only worked out, 10 % too light by the book, in packs of three lots."""
    packs = []
    for lot in "123":
        heaps = (Heap("comb", lot, 4, 100.0, 0.15), Heap("key", lot, 40, 10.0))
        packs.append(WeighedPack(heaps, 440.0 + 400.0))
    known = learn_all(packs)
    comb = known.expect((Heap("comb", "4", 10, 100.0, 0.15),), ALARMS)
    assert comb.grams == pytest.approx(1095, abs=20)
    assert known.expect((Heap("key", "4", 10, 10.0),), ALARMS).grams == pytest.approx(100)


# Two-sided quantiles of the normal distribution, from tables, from memory.
@pytest.mark.parametrize(("alarms", "deviate"), [(0.05, 1.960), (0.01, 2.576), (0.3173, 1.0)])
def test_the_tolerance_is_the_quantile_of_the_normal_distribution(alarms, deviate):
    assert find_deviate(alarms) == pytest.approx(deviate, abs=0.001)
