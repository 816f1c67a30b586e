"""The sentences behind the numbers that the compiled reader notes."""

from __future__ import annotations

from station.cutting.read.controller_plain import ends_apart, radii_differ

UNDRILLED = "nothing is drilled here."
# in the order of the numbers in write.py: kind and sentence, with its value where it has one
SENTENCES = (
    ("cutter-comp", "The controller moves this path sideways by the bit; sizes may differ."),
    ("no-motion", "No G0 to G3 stands before; read as a feed move."),
    ("no-feed", "Under G93 every feed move needs its own F."),
    ("no-feed", "This move has no feed."),
    ("no-feed", "This cycle has no feed."),
    ("arc-radii", ""),
    ("arc-radii", ""),
    ("arc-bad", "This arc has no centre; read as a straight move."),
    ("arc-bad", "This arc ends at its own centre; read as a straight move."),
    ("arc-bad", "A radius arc must end elsewhere than it starts; read as a straight move."),
    ("cycle", f"A cycle needs X, Y or Z; {UNDRILLED}"),
    ("cycle", "L must be a whole number above zero; read as 1."),
    ("cycle", f"A cycle needs X and R; {UNDRILLED}"),
    ("cycle", f"A cycle needs Y and R; {UNDRILLED}"),
    ("cycle", f"A cycle needs Z and R; {UNDRILLED}"),
    ("cycle", f"A cycle cannot run under G93; {UNDRILLED}"),
    ("cycle", f"A cycle cannot run with cutter compensation on; {UNDRILLED}"),
    ("cycle", f"G83 needs Q above zero; {UNDRILLED}"),
    ("cycle", f"Q is too small for this depth; {UNDRILLED}"),
    ("cycle", f"R lies below the hole's bottom; {UNDRILLED}"),
    ("arc-bad", "This arc has a centre and a radius; the radius is used."),
)
RADII, APART = 5, 6


def sentence(which: int, value: float) -> tuple[str, str]:
    """The kind and the sentence of a note."""
    kind, text = SENTENCES[which]
    if which == RADII:
        text = radii_differ(value)
    elif which == APART:
        text = ends_apart(value)
    return kind, text
