"""The usual cautions, in one table: what is done, and the one line that stands where it is done.

Each is common practice, no source of its own, unless its `source` says otherwise. A shop's local
rules, its safety lead and licensed practice come first: its own words stand beside every line.
"""

from typing import NamedTuple

from station.shop.words import Say, say

COMMON = "common practice, no source"


class Caution(NamedTuple):
    """One thing that can hurt: in which work area, at which act, and what is said at it."""

    area: str
    at: Say
    line: Say
    source: str = COMMON


CAUTIONS: dict[str, Caution] = {
    "lift": Caution(
        "loading",
        say("lifting a sheet"),
        say("Two people or a lift if it is heavy; gloves on for it, off at the spindle."),
    ),
    "dust": Caution(
        "loading",
        say("dust"),
        say("Extraction on; a mask when it is emptied; vacuum dust up, never blow it."),
    ),
    "bit": Caution(
        "loading",
        say("changing a bit"),
        say("Spindle switched off and locked first. The bit is hot, its edges are sharp."),
    ),
    "changer": Caution(
        "loading",
        say("the tool changer"),
        say("It moves by itself: switched off and locked before hands go in."),
    ),
    "home": Caution(
        "loading",
        say("homing"),
        say("It moves by itself, to its ends: hands, hair and sleeves clear."),
    ),
    "surface": Caution(
        "loading",
        say("surfacing the board"),
        say("No screw or clamp in its way, extraction on, nobody at the bed."),
    ),
    "cutting": Caution(
        "loading",
        say("while it cuts"),
        say("Eyes and ears protected. Nobody reaches over the bed or into what moves."),
    ),
    "vacuum": Caution(
        "loading",
        say("vacuum lost"),
        say("The router's own stop; never hold parts by hand."),
    ),
    "laser": Caution(
        "loading",
        say("the laser"),
        say("Covers shut, eyes covered for its wavelength, fumes drawn off, never left alone."),
        source="classes of lasers: IEC 60825-1 (PUBLISHED); the rest common practice, no source",
    ),
    "restart": Caution(
        "loading",
        say("running on"),
        say("Bit out of the wood, bed clear, sheet held, nobody at the bed."),
    ),
    "off_bed": Caution(
        "loading",
        say("off the bed"),
        say("Spindle at rest first. Edges cut, splinters stick: gloves for sheet and offcuts."),
    ),
    "part_out": Caution(
        "loading",
        say("taking a part out"),
        say("Spindle at rest. Cut its tabs away from the hand; mind splinters and edges."),
    ),
}


def list_cautions(area: str) -> tuple[Caution, ...]:
    """Lists the cautions of a work area, in the order of its work."""
    return tuple(c for c in CAUTIONS.values() if c.area == area)
