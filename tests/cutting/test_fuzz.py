"""Random and mutated programs: no crash, no hang, both readers agree."""

from tests.fuzz import fuzz

CI = 100_000


def test_a_hundred_thousand_inputs():
    tally = fuzz(CI)
    assert tally.mutated >= tally.tried / 2
    assert tally.past_20 >= 0.3 * tally.mutated
    assert tally.slowest < 5
    assert tally.most_moves < 500_000
