"""Gives as readings what is measured or seen at loading."""

from station.floor.loading.acts import StartSheet
from station.shop.acts import Act
from station.shop.facts import Batch, Bed, Material, Revision, Slip
from station.shop.readings import FIRST_OFF, MINUTES, NO, THICKNESS, YES, Reading
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


def give_first_off(bed: Bed, batch: Batch | None, *, agrees: bool) -> Reading:
    """Gives whether a router's first-off agrees with the master."""
    return Reading(
        subject=f"router/{bed.id}",
        kind=FIRST_OFF,
        value=YES if agrees else NO,
        batch=batch.id if batch else "",
        router=bed.id,
        revision=Revision.id_of(batch.cut_file, batch.revision) if batch else "",
    )
