"""Random and mutated programs: no crash, no hang, both readers agree."""

from tests.fuzz import fuzz


def test_a_few_thousand_inputs():
    tally = fuzz(2500)
    assert tally.past_20 >= 0.3 * tally.tried
    assert tally.slowest < 5
