"""Which sheet may go on the bed: its lot, its material, its thickness."""

from station.queries.stock import count_in_store
from station.shop.acts import Answer, refuse
from station.shop.facts import Lot, Material, Revision
from station.shop.views import View
from station.shop.words import Say, say


def wrong_lot(view: View, revision: Revision, id: str) -> Answer | None:
    """A refusal when a lot is unknown, of the wrong material, or used up."""
    if not id:
        return refuse(say("Which lot is the sheet from?"), say("Scan the lot's code."))
    lot = view.get(Lot, id)
    if lot is None:
        return refuse(say("There is no lot {lot}", lot=id), say("Receive it in the office."))
    if lot.material != revision.material:
        return refuse(
            say("Lot {lot} is {got}", lot=id, got=material_name(view, lot.material)),
            say("This job takes {want}.", want=material_name(view, revision.material)),
        )
    if count_in_store(view, id) < 1:
        return refuse(
            say("Lot {lot} has no sheet left by the book", lot=id),
            say("Scan another lot, or have it counted."),
        )
    return None


def material_name(view: View, id: str) -> str:
    """The material's name, or its number when the shop does not know it."""
    material = view.get(Material, id)
    return material.name if material else f"material {id}"


def outside(view: View, revision: Revision, reading: float) -> Say | None:
    """What is wrong with a thickness reading, or None."""
    material = view.get(Material, revision.material)
    if material is None or material.low_mm <= reading <= material.high_mm:
        return None
    return say(
        "{reading} mm read, limits are {low} to {high}",
        reading=f"{reading:g}",
        low=f"{material.low_mm:.1f}",
        high=f"{material.high_mm:.1f}",
    )
