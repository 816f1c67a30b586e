"""The figures of a count as an act keeps them: part → counter → pieces.

A counter is ``good``, ``missing``, ``spoiled/<reason>`` or ``rework/<reason>``.
"""

from collections.abc import Mapping

from station.shop.moves import head

Counts = dict[str, dict[str, int]]
FATES = ("good", "spoiled", "missing", "rework")  # what a piece can be counted as


def read_counts(value: object) -> Counts:
    """Reads an act's figures; whatever is not a count above zero is left out."""
    if not isinstance(value, Mapping):
        return {}
    return {
        str(part): {str(c): n for c, n in row.items() if _is_count(c, n)}
        for part, row in value.items()
        if isinstance(row, Mapping)
    }


def _is_count(counter: object, count: object) -> bool:
    return head(str(counter)) in FATES and type(count) is int and count > 0


def sum_by_fate(*rows: Mapping[str, int]) -> dict[str, int]:
    """Sums the pieces of parts by what they were counted as, in the order of FATES."""
    sums = dict.fromkeys(FATES, 0)
    for row in rows:
        for counter, count in row.items():
            sums[head(counter)] += count
    return sums


def has_rework(counts: Mapping[str, Mapping[str, int]]) -> bool:
    """Says whether anything goes to rework."""
    return any(head(c) == "rework" for row in counts.values() for c in row)
