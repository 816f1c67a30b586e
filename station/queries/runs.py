"""The runs of a sheet: the cut files that run on it in turn before it goes to popping.

Between two runs a sheet lies beside the routers with its slip (state ``between``) and goes on
a bed again on its reference pins, perhaps on another router. A sheet that is begun goes on
before a fresh one is taken.
"""

from typing import Final, NamedTuple

from station.shop.acts import Answer, refuse
from station.shop.facts import Batch, Bed, CutFile, Revision, Slip
from station.shop.views import View
from station.shop.words import Say, say

MOST = 500
BETWEEN: Final = "between"  # where a sheet lies, and the state of its slip
LASER = "laser"
WORK: dict[str, Say] = {
    "parts": say("Cuts out"),
    "second": say("Second operation"),
    "engraving": say("Engraving"),
    LASER: say("Laser"),
}


class Due(NamedTuple):
    """What is cut next: which sheet, which of its runs (from 1) of how many, by which file."""

    sheet: int
    run: int
    of: int
    file: Revision


def list_runs(view: View, revision: Revision) -> tuple[Revision, ...]:
    """Lists the revisions that run on each sheet of one, in order."""
    if not revision.runs:
        return (revision,)
    found = (view.get(Revision, each) for each in revision.in_order)
    return tuple(one for one in found if one)


def list_between(view: View, batch: str) -> list[Slip]:
    """Lists the sheets of a batch that wait for their next run, by number."""
    waiting = [s for s in view.shelf(Slip, BETWEEN, MOST) if s.batch == batch]
    return sorted(waiting, key=lambda s: s.sheet)


def count_done(view: View, batch: Batch, revision: Revision) -> dict[int, int]:
    """Counts the runs that are done on each sheet of a batch that is begun and not whole."""
    if not revision.runs:
        return {}
    return {s.sheet: len(s.runs) for s in list_between(view, batch.id)}


def find_due(
    view: View, batch: Batch, revision: Revision, bed: Bed, chosen: int = 0,
    *, anywhere: bool = False,
) -> Due | None:  # fmt: skip
    """Finds what this router cuts next of a batch once its bed is free; None: nothing.

    `chosen` is the sheet that a person wants next. With `anywhere` it may be any router.
    """
    done = count_done(view, batch, revision)
    return find_next(batch, list_runs(view, revision), bed, done, chosen, anywhere=anywhere)


def find_next(
    batch: Batch, runs: tuple[Revision, ...], bed: Bed, done: dict[int, int], chosen: int = 0,
    *, anywhere: bool = False,
) -> Due | None:  # fmt: skip
    """Finds the same from how many runs are `done` on each sheet that is begun, not whole."""
    if batch.state == "cancelled":
        return None
    on_bed = bed.sheet if bed.batch == batch.id else 0
    begun = batch.cut + len({*done, *filter(None, [on_bed])})
    done = done | ({on_bed: bed.run} if on_bed else {})
    for sheet in sorted(done, key=lambda n: (n != chosen, n != on_bed, n)):
        run = done[sheet]
        if run < len(runs) and (anywhere or runs[run].takes(bed.id)):
            return Due(sheet, run + 1, len(runs), runs[run])
    several = len(runs) > 1
    if begun < batch.sheets and (anywhere or not several or runs[0].takes(bed.id)):
        return Due(begun + 1, 1, len(runs), runs[0])
    return None


def find_work(view: View, file: Revision) -> str:
    """Finds what a run is: a key of WORK."""
    cut_file = view.get(CutFile, file.cut_file)
    return cut_file.work if cut_file else "parts"


def name_run(view: View, file: Revision) -> str:
    """Names a run by its cut file and letter: ``HC300-SET C``."""
    cut_file = view.get(CutFile, file.cut_file)
    return f"{cut_file.name if cut_file else file.cut_file} {file.letter}"


def refuse_unapproved_run(view: View, batch: Batch, run: Revision) -> Answer | None:
    """Refuses a run of a batch's sheets that is not of its cut file's approved revision."""
    cut_file = view.get(CutFile, run.cut_file)
    if run.cut_file == batch.cut_file or (cut_file and cut_file.approved == run.letter):
        return None
    return refuse(
        say("{run} is to run, {letter} is approved", run=name_run(view, run),
            letter=cut_file.approved if cut_file and cut_file.approved else "-"),
        say("Put it aside; the office names the approved one."),
    )  # fmt: skip
