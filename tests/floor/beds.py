"""Router 1 of the small shop in each state, with batch 00412 on it."""

from dataclasses import replace

from station.shop.facts import Bed, FirstOff
from station.shop.moves import WEAR, Move, Spot, move
from tests.floor.shop_small import DAY, GAUGES, at

WHOLE = ("held_down", "bit", "file")
BED = Bed(id="1", day=DAY, bits=((0, "11"),), batch="00412")
CUTTING = replace(BED, state="cutting", sheet=1, lot="0931", started=at("09:00"), minutes=18.0,
                  by="02")  # fmt: skip
FIRST = FirstOff(file=f"{GAUGES}.C", bits=("11",), zero_since="", batch="00412", sheet=1,
                 why="first sheet of SG010-SET C")  # fmt: skip
AGREED = replace(FIRST, state="agreed")
STOPPED = replace(CUTTING, state="stopped", stop="33", stopped=at("09:05"))
ON_BED = (move("sheet", 1, "store", "bed/1", "0931"),)


def worn(bit: str, metres: int, router: str = "") -> Move:
    """So many metres cut by a bit on a router."""
    return Move(WEAR, metres * 1000, Spot("wear", router), Spot(f"bit/{bit}", router))
