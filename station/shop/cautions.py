"""The usual cautions, in one table: what is done, and the one line that stands where it is done.

Each is common practice, no source of its own, unless its `source` says otherwise. A shop's local
rules, its safety lead and licensed practice come first: its own words stand beside every line.
"""

from typing import NamedTuple

from station.shop.facts import Shop
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
    "pop": Caution(
        "popping",
        say("popping parts"),
        say("Eyes protected. Pry and cut away from the hand; mind splinters and edges."),
    ),
    "pop_dust": Caution(
        "popping",
        say("dust"),
        say("Vacuum dust, never blow it; a mask where it flies."),
    ),
    "pop_sheet": Caution(
        "popping",
        say("a heavy sheet"),
        say("Two people or a lift; gloves for sheets and offcuts only."),
    ),
    "table": Caution(
        "trimming",
        say("the router table"),
        say("Eyes and ears protected, hair and sleeves tied back, gloves off, extraction on."),
    ),
    "table_feed": Caution(
        "trimming",
        say("feeding a part"),
        say("Against the bit's rotation, guard on; never between bit and fence."),
    ),
    "table_small": Caution(
        "trimming",
        say("a small part"),
        say("In a holder or against the starting pin."),
    ),
    "table_bit": Caution(
        "trimming",
        say("changing the table's bit"),
        say("Unplugged or locked first. The bit is hot, its edges are sharp."),
    ),
    "pack": Caution(
        "packing",
        say("packing"),
        say("Knife away from the other hand; mind splinters."),
    ),
    "pack_lift": Caution(
        "packing",
        say("lifting a pack"),
        say("With the legs, close to the body; a heavy one by two."),
    ),
    "cart": Caution(
        "cart",
        say("the cart"),
        say("Push the cart, never pull it. See over the load. Heavy packs low."),
    ),
    "hold_downs": Caution(
        "office",
        say("where a sheet is held"),
        say(
            "No hold-down stands within the bit's way. Set the clamps low and look once "
            "more at the first sheet."
        ),
    ),
    "flying": Caution(
        "office",
        say("small pieces"),
        say(
            "Small pieces without tabs come loose and may fly: they are drawn in red. "
            "Give them tabs."
        ),
    ),
    "paper_bed": Caution(
        "paper",
        say("at the bed"),
        say(
            "Eye and ear protection, dust extraction on. Guards on; spindle isolated before "
            "hands go near the bit."
        ),
    ),
    "paper_laser": Caution(
        "paper",
        say("at the laser"),
        say("Laser: eyes covered for its wavelength, fume drawn off, never left alone."),
        source="classes of lasers: IEC 60825-1 (PUBLISHED); the rest common practice, no source",
    ),
    "paper_bit": Caution(
        "paper",
        say("on a bit's card"),
        say("Spindle switched off and locked first."),
    ),
    "paper_shift": Caution(
        "paper",
        say("on the handover sheet"),
        say("Hands to a router only when its spindle is switched off and locked."),
    ),
    "paper_table": Caution(
        "paper",
        say("at the router table"),
        say(
            "Eye and ear protection, dust extraction on. Guard on; feed against the bit's "
            "rotation; small parts in a holder; never between bit and fence."
        ),
    ),
}


def say_local(shop: Shop) -> Say | str:
    """Says the shop's own words; those that every shop starts with are translated."""
    return Say(shop.caution) if shop.caution == Shop(id=shop.id).caution else shop.caution


def say_cautions(names: tuple[str, ...], shop: Shop) -> Say:
    """Says some cautions in a row, and the shop's own words last."""
    said = CAUTIONS[names[0]].line
    for name in names[1:]:
        said = say("{first} {next}", first=said, next=CAUTIONS[name].line)
    return say("{said} {local}", said=said, local=say_local(shop))


def list_cautions(area: str) -> tuple[Caution, ...]:
    """Lists the cautions of a work area, in the order of its work."""
    return tuple(c for c in CAUTIONS.values() if c.area == area)
