"""Every large button has a name and a number of its own: a card once printed keeps its meaning."""

from collections import Counter

from station.shop import cards

ROWS = [row for _, rows in cards._TABLE for row in rows]


def test_no_name_and_no_number_stands_twice():
    for at in (0, 1):
        counts = Counter(row[at] for row in ROWS)
        assert [value for value, n in counts.items() if n > 1] == []
