"""The figures of a count as an act keeps them."""

from station.shop.counts import has_rework, read_counts, sum_by_fate


def test_only_counts_above_zero_of_known_fates_are_read():
    given = {"014": {"good": 5, "spoiled/01": 0, "lost": 3, "missing": True, "rework/22": 2}}
    assert read_counts({**given, "021": 7}) == {"014": {"good": 5, "rework/22": 2}}
    assert read_counts(None) == {}


def test_pieces_are_summed_by_what_they_were_counted_as():
    rows = ({"good": 5, "spoiled/01": 1}, {"spoiled/03": 2, "missing": 4})
    assert sum_by_fate(*rows) == {"good": 5, "spoiled": 3, "missing": 4, "rework": 0}
    assert list(sum_by_fate()) == ["good", "spoiled", "missing", "rework"]


def test_rework_is_seen():
    assert has_rework({"014": {"good": 5}, "021": {"rework/22": 1}})
    assert not has_rework({"014": {"good": 5, "missing": 1}})
