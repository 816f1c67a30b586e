"""A sheet before it is written: faults are put into it here."""

from dataclasses import dataclass
from random import Random

from tests.sheets.laying import Laying
from tests.sheets.lines import CutLine
from tests.sheets.manners import Manner
from tests.sheets.models import Means
from tests.sheets.strokes import Heights, RouterStep


@dataclass
class SheetDraft:
    """A sheet before it is written; faults are put into it."""

    rng: Random
    manner: Manner
    means: Means
    size: tuple[float, float]
    laying: Laying
    lines: list[CutLine]
    heights: Heights
    steps: list[RouterStep]
