"""Questions about a shop that is set up: what its first sheet and first pack still want."""

from collections.abc import Iterator
from typing import Literal, NamedTuple

from station.queries.batches import find_approved
from station.queries.routers import list_beds, list_routers
from station.queries.settings import has_pin, list_supervisors
from station.queries.stock import count_in_store
from station.shop.facts import (
    Bit,
    Cart,
    CutFile,
    Lot,
    Mailer,
    Material,
    Order,
    Pace,
    Part,
    Product,
    Revision,
    Router,
)
from station.shop.views import View

# In the order in which a shop is set up: nothing asks for what comes below it.
StepName = Literal[
    "pin", "router", "material", "lot", "bit", "cutfile", "approved", "rack",
    "mailer", "cart", "product", "order",
]  # fmt: skip
BEFORE_PACK: tuple[StepName, ...] = ("mailer", "cart", "product", "order")
FEW = 20  # cut files, parts and lots that are looked at: a shop that has more is set up
ORDERS = ("open", "packed", "shipped", "cancelled")


class SetUpStep(NamedTuple):
    """One thing that a shop needs: whether it is there, and which fact to open for it."""

    name: StepName
    done: bool
    about: str = ""  # the key of what is begun and not complete: ``cutfile/001``


def list_set_up(view: View) -> tuple[SetUpStep, ...]:
    """Lists every step of setting a shop up, in order; empty once all is done.

    What a sheet needs is not asked for again after the first one was cut: a store that is empty
    or a bit that broke is told at loading.
    """
    return view.once("set up", _list_steps)


def list_missing(view: View) -> tuple[SetUpStep, ...]:
    """Lists what the first sheet still wants; empty: it can be cut, or was."""
    return tuple(s for s in list_set_up(view) if not s.done and s.name not in BEFORE_PACK)


def _list_steps(view: View) -> tuple[SetUpStep, ...]:
    cut = _has_cut(view)
    steps = tuple(
        step if not cut or step.name in BEFORE_PACK else step._replace(done=True)
        for step in (*_ask_for_sheet(view), *_ask_for_pack(view))
    )
    return () if all(step.done for step in steps) else steps


def _has_cut(view: View) -> bool:
    """Tells whether a sheet was ever cut, or is."""
    return any(bed.sheet or view.get(Pace, router.id) for router, bed in list_beds(view))


def _ask_for_sheet(view: View) -> Iterator[SetUpStep]:
    """Asks for what a sheet needs."""
    supervisors = list_supervisors(view)
    yield SetUpStep("pin", has_pin(view), supervisors[0].key if supervisors else "")
    yield SetUpStep("router", bool(list_routers(view)))
    materials = view.shelf(Material, "all", FEW)
    yield SetUpStep("material", bool(materials))
    lots = [lot for m in materials for lot in view.shelf(Lot, m.id, FEW)]
    stocked = any(count_in_store(view, lot.id) for lot in lots)
    yield SetUpStep("lot", stocked, lots[-1].key if lots else "")
    yield SetUpStep("bit", _has_bit(view))
    files = [f for f in view.shelf(CutFile, "all", FEW) if f.active and f.work == "parts"]
    read = [f for f in files if view.shelf(Revision, f.id, 1)]
    yield SetUpStep("cutfile", bool(read), files[0].key if files else "")
    approved = [r for f in read if (r := find_approved(view, f))]
    yield SetUpStep("approved", bool(approved), read[0].key if read else "")
    yield SetUpStep("rack", any(_has_places(view, revision) for revision in approved))


def _has_bit(view: View) -> bool:
    """Tells whether a good bit is in a router or in the drawer."""
    inside = (b for r in view.shelf(Router, "all") for b in view.shelf(Bit, f"router/{r.id}"))
    return bool(view.shelf(Bit, "good", 1)) or any(b.state == "good" for b in inside)


def _has_places(view: View, revision: Revision) -> bool:
    """Tells whether every part that a revision makes has its rack place."""
    parts = (view.get(Part, p) for p in revision.makes())
    return all(p.rack for p in parts if p)


def _ask_for_pack(view: View) -> Iterator[SetUpStep]:
    """Asks for what a pack that leaves needs."""
    yield SetUpStep("mailer", bool(view.shelf(Mailer, "all", 1)))
    yield SetUpStep("cart", bool(view.shelf(Cart, "all", 1)))
    yield SetUpStep("product", bool(view.shelf(Product, "all", 1)))
    yield SetUpStep("order", any(view.shelf(Order, shelf, 1) for shelf in ORDERS))
