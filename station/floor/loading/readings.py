"""Gives as readings what is measured or seen at loading."""

from station.floor.loading.acts import StartSheet
from station.queries.first_offs import Measured
from station.shop.acts import Act
from station.shop.facts import Batch, Bed, FirstOff, Material, Revision, Slip
from station.shop.readings import FIRST_OFF, MINUTES, NO, THICKNESS, YES, Reading, name_size
from station.shop.views import View


def give_thickness(
    act: Act[StartSheet], view: View, batch: Batch, sheet: int, file: Revision
) -> Reading:
    """Gives the thickness that was read of a sheet, with the limits of its material."""
    material = view.get(Material, file.material)
    return Reading(
        subject=f"lot/{act.args.lot}",
        kind=THICKNESS,
        value=act.args.reading,
        unit="mm",
        low=material.low_mm if material else None,
        high=material.high_mm if material else None,
        batch=batch.id,
        sheet=sheet,
        router=act.args.router,
        lot=act.args.lot,
        revision=file.id,
    )


def give_minutes(slip: Slip, run: Revision) -> Reading:
    """Gives how long a sheet was really cut in one run, by its slip."""
    return Reading(
        subject=f"router/{slip.router}",
        kind=MINUTES,
        value=slip.minutes,
        unit="min",
        batch=slip.batch,
        sheet=slip.sheet,
        router=slip.router,
        bit=slip.bit,
        lot=slip.lot,
        revision=run.id,
    )


def give_first_off(bed: Bed, first: FirstOff, *, agrees: bool) -> Reading:
    """Gives whether a router's first-off agrees with the master."""
    return Reading(
        subject=f"router/{bed.id}",
        kind=FIRST_OFF,
        value=YES if agrees else NO,
        batch=first.batch,
        sheet=first.sheet,
        router=bed.id,
        bit=_find_one_bit(first),
        revision=first.file,
    )


def give_size(bed: Bed, first: FirstOff, one: Measured, mm: float) -> Reading:
    """Gives what was read of one size of a part on a first sheet, in mm."""
    return Reading(
        subject=one.part.key,
        kind=name_size(one.size.name),
        value=mm,
        unit="mm",
        low=one.size.low_mm,
        high=one.size.high_mm,
        batch=first.batch,
        sheet=first.sheet,
        router=bed.id,
        bit=_find_one_bit(first),
        revision=first.file,
    )


def _find_one_bit(first: FirstOff) -> str:
    """Finds the bit that has cut it; where there were several, none is said."""
    return first.bits[0] if len(first.bits) == 1 else ""
