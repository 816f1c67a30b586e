"""The demo day that the tour drives: what is scanned, step by step, in words.

`find` turns words into the code to scan, choosing from the shop as it stands: the first
batch that waits at trimming, the first order that can be packed whole.
"""

from collections.abc import Callable
from dataclasses import dataclass

from station.desk.desk import Desk
from station.ledger.ledger import Ledger
from station.queries.batches import find_revision
from station.queries.first_offs import find_unsettled, list_sizes
from station.queries.mailers import plan_open_pack
from station.queries.orders import count_wanted
from station.queries.routers import find_bed
from station.queries.stock import list_on_rack
from station.queries.underway import list_with_paper
from station.shop import cards, codes
from station.shop.facts import (
    Batch,
    Bed,
    Lot,
    Material,
    Order,
    Pack,
    Part,
    Slip,
)
from station.shop.views import View, by_part, total

CLOSE = cards.button("close_pack")


@dataclass(frozen=True, kw_only=True)
class TourStep:
    """Scans codes in a row, then takes a picture; `tone` is what the last answer must be."""

    name: str
    scans: tuple[str, ...]
    tone: str = ""
    shot: bool = True

    def codes(self, words: str, ledger: Ledger, desk: Desk) -> list[str]:
        """Lists the codes for these words; a number is its digit cards and “That is it”."""
        kind, _, rest = words.partition(" ")
        if kind == "number":
            found = {"thickness": choose_thickness, "weight": choose_weight}.get(rest)
            return write_number(found(ledger.view, desk) if found else rest)
        if words == "first-off":
            return [key for mm in list_readings(ledger.view, desk) for key in write_number(mm)]
        if words == "part-to-go" and self.find("next-part", ledger, desk) == CLOSE:
            return []  # all of it is in
        return [self.find(words, ledger, desk)]

    def find(self, words: str, ledger: Ledger, desk: Desk) -> str:
        """Finds the one code to scan for these words."""
        kind, _, rest = words.partition(" ")
        if kind == "button":
            return cards.button(rest)
        if kind == "digit":
            return cards.digit(rest)
        if kind in FINDERS:
            return FINDERS[kind](ledger.view, rest, desk)
        return codes.write(kind, rest) if kind in codes.LETTERS else words


def write_number(text: str) -> list[str]:
    """Writes a number as its digit cards and “That is it”."""
    keys = [cards.button("point") if c == "." else cards.digit(c) for c in text]
    return [*keys, cards.button("enter")]


def list_readings(view: View, desk: Desk) -> list[str]:
    """Lists a right reading of each size of the first-off that is due on this router."""
    first = find_unsettled(find_bed(view, desk.hand.router))
    return [f"{m.size.nominal_mm:g}" for m in list_sizes(view, first)] if first else []


def _write_traveller(batch: Batch | None) -> str:
    assert batch is not None, "the demo shop has no such batch"
    return codes.write("batch", batch.id, batch.copy)


def find_queued(view: View, _rest: str, desk: Desk) -> str:
    """Finds the first batch in this router's queue."""
    return _write_traveller(next(iter(view.shelf(Batch, f"queue/{desk.hand.router}")), None))


def find_waiting_part(view: View, _rest: str, _desk: Desk) -> str:
    """Finds a part that lies at trimming in the most batches; any part where none lies there."""
    batches: dict[str, set[str]] = {p.id: set() for p in view.shelf(Part, "all", 1)}
    for held in view.stock(place="trimming"):
        batches.setdefault(held.part, set()).add(held.batch)
    return codes.write("part", max(batches, key=lambda p: len(batches[p])))


def find_right_lot(view: View, router: str, desk: Desk) -> str:
    """Finds a lot of the material that the batch in hand wants, with sheets left."""
    bed = view.get(Bed, desk.hand.router or router)
    batch = view.get(Batch, desk.hand.subject or (bed.batch if bed else ""))
    revision = find_revision(view, batch) if batch else None
    lots = view.shelf(Lot, revision.material if revision else "", 50)
    return codes.write(
        "lot", next(lot.id for lot in lots if view.stock(place="store", batch=lot.id))
    )


def choose_thickness(view: View, desk: Desk) -> str:
    """Chooses a reading within the limits of the material of the batch in hand."""
    bed = view.get(Bed, desk.hand.router)
    batch = view.get(Batch, desk.hand.subject or (bed.batch if bed else ""))
    revision = find_revision(view, batch) if batch else None
    material = view.get(Material, revision.material) if revision else None
    return f"{(material.low_mm + material.high_mm) / 2:.1f}" if material else "6.4"


def find_waiting_slip(view: View, _rest: str, _desk: Desk) -> str:
    """Finds the traveller of the batch that has waited longest at popping and may go on."""
    batches = (view.get(Batch, slip.batch) for slip in view.shelf(Slip, "popping"))
    return _write_traveller(next((b for b in batches if b and not b.holds), None))


def find_at_trimming(view: View, _rest: str, _desk: Desk) -> str:
    """Finds the traveller of a batch at trimming that goes to the rack."""
    for held in view.stock(place="trimming"):
        batch = view.get(Batch, held.batch)
        if batch and not batch.holds:
            return _write_traveller(batch)
    return _write_traveller(None)


def find_part_in_hand(view: View, number: str, desk: Desk) -> str:
    """Finds the first (or n-th, or last) part of the batch in hand."""
    parts = list(by_part(list_with_paper(view, desk.hand.subject)))
    return codes.write("part", parts[: int(number or 1)][-1])


def find_packable(view: View, _rest: str, _desk: Desk) -> str:
    """Finds the first open order whose every part lies on the rack."""
    for order in view.shelf(Order, "open"):
        if order.state == "open" and all(
            _count_on_rack(view, part) >= count
            for part, count in count_wanted(view, order).items()
        ):
            return codes.write("order", order.id)
    raise AssertionError("no order can be packed whole")


def _count_on_rack(view: View, part: str) -> int:
    found = view.get(Part, part)
    return total(list_on_rack(view, found)) if found else 0


def find_next_part(view: View, _rest: str, desk: Desk) -> str:
    """Finds the next part that the order in hand still wants."""
    order = view.get(Order, desk.hand.subject)
    assert order is not None, "no order is in hand"
    inside = by_part(view.stock(place=f"packing/{order.id}"))
    for part, count in count_wanted(view, order).items():
        if inside.get(part, 0) < count:
            return codes.write("part", part)
    return CLOSE


def choose_weight(view: View, desk: Desk) -> str:
    """Chooses what the pack in hand should weigh, in whole grams."""
    return f"{plan_open_pack(view, desk.hand.subject).weight.grams:.0f}"


def find_wrong_part(view: View, _rest: str, desk: Desk) -> str:
    """Finds a part that the order in hand does not want."""
    order = view.get(Order, desk.hand.subject)
    wanted = count_wanted(view, order) if order else {}
    return codes.write(
        "part", next(p.id for p in view.shelf(Part, "all", 99) if p.id not in wanted)
    )


def find_new_pack(view: View, _rest: str, _desk: Desk) -> str:
    """Finds a pack that waits for a cart."""
    return codes.write("pack", view.shelf(Pack, "packed", 500)[-1].id)


def find_on_cart(view: View, rest: str, _desk: Desk) -> str:
    """Finds the n-th pack on a cart."""
    cart, _, number = rest.partition(" ")
    packs = view.shelf(Pack, f"cart/{cart}", 500)
    return codes.write("pack", packs[min(int(number), len(packs)) - 1].id)


FINDERS: dict[str, Callable[[View, str, Desk], str]] = {
    "queued": find_queued,
    "right-lot": find_right_lot,
    "waiting": find_waiting_slip,
    "waiting-part": find_waiting_part,
    "at-trimming": find_at_trimming,
    "part-in-hand": find_part_in_hand,
    "packable": find_packable,
    "next-part": find_next_part,
    "part-to-go": find_next_part,
    "wrong-part": find_wrong_part,
    "new-pack": find_new_pack,
    "on-cart": find_on_cart,
}

READY = (
    "button held_down",
    "button bit_good",
    "button file_right",
    "button zeroed",
    "button rehomed",
    "button told",
    "button day_done",
)

RESTART = (
    "button bit_out",
    "button rehomed",
    "button bed_clear",
    "button held_down",
    "button nobody_near",
)

STORY: tuple[TourStep, ...] = (
    TourStep(name="good-morning", scans=()),
    TourStep(name="loading-queue", scans=("worker 02",), tone="good"),
    TourStep(name="loading-taken", scans=("queued",)),
    TourStep(
        name="loading-checks",
        scans=(
            *("first-off", "right-lot", "number thickness"),
            *("button held_down", "button bit_good"),
        ),
    ),
    TourStep(name="loading-ready", scans=READY),
    TourStep(name="loading-cutting", scans=("button start", "@after 6")),
    TourStep(name="loading-too-soon", scans=("button off_bed",), tone="ask"),
    TourStep(name="loading-stop-reason", scans=("button stop",)),
    TourStep(name="loading-stopped", scans=("reason 32",)),
    TourStep(
        name="loading-stop-over", scans=("@after 4", *RESTART, "button stop_over"), tone="good"
    ),
    TourStep(name="loading-off-the-bed", scans=("@after 60", "button off_bed"), tone="attention"),
    TourStep(name="popping-waiting", scans=("button area_popping",), tone="good"),
    TourStep(name="popping-in-hand", scans=("waiting",), tone="good"),
    TourStep(
        name="popping-counting",
        scans=("part-in-hand", "reason 01", "number 3", "zone 53", "button missing", "number 2"),
    ),
    TourStep(name="popping-on-the-drawing", scans=("part-in-hand 2", "reason 02", "@tap")),
    TourStep(name="popping-passed-on", scans=("button pass_on",)),
    TourStep(name="popping-taken-back", scans=("button undo",), tone="good"),
    TourStep(name="trimming-waiting", scans=("button area_trimming",), tone="good"),
    TourStep(name="trimming-in-hand", scans=("at-trimming",), tone="good"),
    TourStep(
        name="trimming-counting",
        scans=("part-in-hand", "button master_agrees", "reason 03", "number 2"),
    ),
    TourStep(name="trimming-rework", scans=("reason 22",)),
    TourStep(name="trimming-on-the-rack", scans=("button on_rack",)),
    TourStep(name="more", scans=("button menu",)),
    TourStep(name="lost-paper", scans=("button lost_paper", "waiting-part")),
    TourStep(name="handover", scans=("button put_down", "button handover")),
    TourStep(
        name="packing-waiting",
        scans=("button put_down", "worker 05", "button area_packing"),
        tone="good",
    ),
    TourStep(name="packing-claimed", scans=("packable",), tone="good"),
    TourStep(name="packing-wrong-item", scans=("wrong-part",), tone="stop"),
    TourStep(name="packing-taking", scans=("next-part",), tone="good"),
    TourStep(name="packing-missing", scans=("button part_missing",)),
    TourStep(name="packing-what-back", scans=("button put_down", "button take_back")),
    TourStep(
        name="packing-all-in",
        scans=("button put_down", "button put_down", "packable", *("part-to-go",) * 12),
        tone="good",
    ),
    TourStep(name="packing-weighing", scans=("button scale",)),
    TourStep(name="packing-packed", scans=("number weight",), tone="good"),
    TourStep(name="packing-label-again", scans=("button label_again",)),
    TourStep(name="packing-pack-asked", scans=("button put_down", "new-pack"), tone="good"),
    TourStep(name="packing-came-back", scans=("button put_down", "button returned")),
    TourStep(name="cart-which", scans=("button put_down", "button area_cart"), tone="good"),
    TourStep(name="cart-loading", scans=("cart 1", "new-pack", "new-pack"), tone="good"),
    TourStep(name="cart-at-the-door", scans=("button at_door", "on-cart 1 1"), tone="good"),
    TourStep(name="cart-not-all-seen", scans=("button leave",), tone="stop"),
    TourStep(name="today", scans=("worker 01", "button area_today"), tone="good"),
    TourStep(name="today-concern", scans=("button row_1",)),
    TourStep(name="what-to-cut", scans=("button put_down", "button area_plan", "@thought")),
    TourStep(name="what-to-cut-why", scans=("button row_1",), tone="good"),
    TourStep(name="office-orders", scans=("button put_down", "button area_office"), tone="good"),
    TourStep(name="office-cut-files", scans=("button list_cutfile",), tone="good"),
    TourStep(name="office-cut-file", scans=("button row_1",), tone="good"),
    TourStep(name="office-which-text", scans=("button read_file",), tone="good"),
    TourStep(name="office-reading", scans=("button row_1",)),
    TourStep(name="office-read", scans=("@done",), tone="attention"),
    TourStep(name="office-path", scans=("button show_path",), tone="good"),
    TourStep(name="office-path-closer", scans=("button path_in",) * 3, tone="good"),
    TourStep(
        name="office-path-played",
        scans=(
            "button path_all",
            "button path_layers",
            "button row_2",
            "button path_layers",
            "button path_speed",
            "button path_play",
            "@after 1",
            "@shown",
        ),
        tone="good",
    ),
    TourStep(
        name="office-against-approved",
        scans=("button put_down", "button list_revision", "button row_3"),
        tone="good",
    ),
    TourStep(name="office-bit", scans=("button put_down", "button list_bit", "button row_1")),
    TourStep(
        name="office-router", scans=("button put_down", "button list_router", "button row_1")
    ),
    TourStep(
        name="office-release",
        scans=(
            "button put_down",
            "button list_cutfile",
            "button row_1",
            "button release_batch",
            "router 1",
        ),
    ),
    TourStep(name="office-pin", scans=("number 2", "worker 01")),
    TourStep(name="office-released", scans=("number 2468",), tone="good"),
)
