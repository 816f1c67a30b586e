"""Questions about a batch: its revision, the one that may be cut, whether its pieces may go on."""

from station.shop.acts import Answer, refuse
from station.shop.facts import Batch, CutFile, Revision
from station.shop.moves import Held
from station.shop.views import View
from station.shop.words import say


def find_revision(view: View, batch: Batch) -> Revision | None:
    """Finds the revision that a batch was released with."""
    return view.get(Revision, Revision.id_of(batch.cut_file, batch.revision))


def find_approved(view: View, cut_file: CutFile) -> Revision | None:
    """Finds the revision of a cut file that may be cut now; None: none may."""
    return view.get(Revision, Revision.id_of(cut_file.id, cut_file.approved))


def find_hold(view: View, number: str) -> Batch | None:
    """Finds the batch whose hold keeps the pieces of a batch: itself, or one it came from.

    What was split off or is made good is of the same wood, bit and hands as its parent, so
    a hold on the parent keeps it as well. None: the pieces may go on.
    """
    asked: set[str] = set()
    while number and number not in asked:
        batch = view.get(Batch, number)
        if batch is None or batch.holds:
            return batch
        asked.add(number)
        number = batch.parent
    return None


def refuse_held(view: View, number: str) -> Answer | None:
    """Refuses what would move a held batch onward. None: it may go on."""
    hold = find_hold(view, number)
    if hold is None:
        return None
    if hold.id == number:
        said = say("Batch {batch} is held: {why}", batch=number, why=hold.holds[0])
    else:
        said = say(
            "Batch {batch} is held with batch {parent}: {why}",
            batch=number,
            parent=hold.id,
            why=hold.holds[0],
        )
    return refuse(said, say("Put it aside. A supervisor lets it go on."))


def keep_free(view: View, lying: tuple[Held, ...]) -> tuple[Held, ...]:
    """Keeps the pieces that may go on, in their order."""
    return tuple(h for h in lying if find_hold(view, h.batch) is None)


def keep_held(view: View, lying: tuple[Held, ...]) -> tuple[Held, ...]:
    """Keeps the pieces that may not go on, in their order."""
    return tuple(h for h in lying if find_hold(view, h.batch))
