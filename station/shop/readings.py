"""Readings: what was measured or seen at an act, to be asked for over time.

A rule gives them with its answer, and the ledger keeps them by what they are of. They are kept
for ever, so what they hold only grows (`tests/shop/kinds.txt`).
"""

from typing import Final

import msgspec

SIZE: Final = "size"  # one size of a part; the size's name follows, see `name_size`
MASTER: Final = "master"  # whether a part agrees with its master
FIRST_OFF: Final = "first-off"  # whether a router's first-off agrees
THICKNESS: Final = "thickness"  # of a sheet
MINUTES: Final = "minutes"  # that a sheet was cut
WEIGHT: Final = "weight"  # of one piece of a part, as far as a weighed pack tells it
SPOILED: Final = "spoiled"  # pieces that were not good off a router, for a reason
KINDS: Final = (SIZE, MASTER, FIRST_OFF, THICKNESS, MINUTES, SPOILED, WEIGHT)

YES, NO = 1.0, 0.0
MOST = 1e9  # of any unit


class Reading(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One thing measured or seen.

    `subject` is what it is of, as the key of a fact (``part/014``), and `kind` what was read
    there. `value` is in `unit`; what was seen has none and is `YES` or `NO`. `low` and `high`
    are the limits that it was to keep, where there are any. `why` is the number of a reason,
    `place` where on the sheet it was, in words. All the rest says where it comes
    from, by number, as far as it is known: `revision` is that of the cut file.
    """

    subject: str
    kind: str
    value: float
    unit: str = ""  # "mm", "min", "g"
    low: float | None = None
    high: float | None = None
    batch: str = ""
    sheet: int = 0
    router: str = ""
    bit: str = ""
    part: str = ""
    lot: str = ""
    revision: str = ""
    why: str = ""
    place: str = ""

    @property
    def subjects(self) -> tuple[str, ...]:
        """The keys that it is found under: its own, and those of its part, router and bit."""
        others = (f"part/{self.part}", f"router/{self.router}", f"bit/{self.bit}")
        named = (key for key in others if not key.endswith("/"))
        return tuple(dict.fromkeys((self.subject, *named)))

    @property
    def is_sound(self) -> bool:
        """Whether it is of something, and a number that can be."""
        numbers = (self.value, self.low or 0.0, self.high or 0.0)
        return bool(self.subject and self.kind) and all(-MOST <= n <= MOST for n in numbers)


def name_size(size: str) -> str:
    """Names the kind of reading that one size of a part is, by the size's own name."""
    return f"{SIZE}/{size}"
