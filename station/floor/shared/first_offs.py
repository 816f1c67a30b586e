"""Measures a first-off, at the bed or where its pieces are popped: the acts, and what is next."""

from station.queries.first_offs import Measured, list_open_sizes, list_sizes
from station.shop.acts import Answer, Args, refuse
from station.shop.facts import FirstOff
from station.shop.rooms import Number
from station.shop.views import View
from station.shop.words import MM, length, say


class CheckFirstOff(Args, frozen=True, kw_only=True):
    """Notes that the first-off agrees with the master, or is wrong."""

    kind = "check_first_off"

    good: bool
    batch: str = ""  # as older programs wrote it: the one on the router
    file: str = ""  # whose first-off: id of the revision; empty: what is due


class MeasureFirstOff(Args, frozen=True, kw_only=True):
    """Takes a reading of one size of a part on the first sheet."""

    kind = "measure_first_off"

    part: str
    size: str  # its name
    reading_mm: float
    file: str = ""  # whose first-off: id of the revision; empty: what is due


def list_open(view: View, first: FirstOff) -> tuple[Measured, ...]:
    """Lists the sizes of a first-off that are not settled yet."""
    return list_open_sizes(first, list_sizes(view, first))


def find_measured(view: View, first: FirstOff, chosen: str) -> Measured | None:
    """Finds the size that is measured next: the chosen one until it is settled, else the first."""
    open_ = list_open(view, first)
    return next((m for m in open_ if m.name == chosen), open_[0] if open_ else None)


def take_reading(
    first: FirstOff, asked: Measured | None, given: Number
) -> MeasureFirstOff | Answer:
    """Takes a number as a reading of the size that is asked for; or says why it is none."""
    if asked is None:
        said = say("Nothing of it is measured")
        return refuse(said, say("Compare it by eye: it agrees, or it is wrong."))
    if given.length is None:
        said = say("{typed} is no reading", typed=given.text)
        return refuse(
            said, say("Enter the {unit}, such as {example}.", unit=MM, example=length(399.8))
        )
    return MeasureFirstOff(
        part=asked.part.id, size=asked.size.name, reading_mm=given.length, file=first.file
    )
