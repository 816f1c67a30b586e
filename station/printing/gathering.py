"""What each paper shows, gathered from the ledger and laid out."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from station.ledger.ledger import Ledger
from station.queries.batches import find_revision
from station.queries.orders import list_needs
from station.queries.routers import list_beds, list_worn_bits
from station.queries.runs import LASER, WORK, find_work, list_runs, name_run
from station.queries.settings import find_shop
from station.queries.underway import list_with_paper
from station.shop.facts import (
    KINDS,
    Batch,
    Bed,
    Cart,
    Concern,
    CutFile,
    Fact,
    Material,
    Order,
    Pack,
    Part,
    RackPlace,
    Reason,
    Revision,
    Router,
    Slip,
    Worker,
)
from station.shop.views import View, by_batch, by_part, total
from station.shop.words import say

if TYPE_CHECKING:
    from station.papers.page import Page


def paper(ledger: Ledger, kind: str, name: str, now: str) -> "Page | None":
    """One paper, or None when what it is about is not there."""
    draw = _PAPERS.get(kind)
    return draw(ledger, name, now) if draw else None


def parts_of(ledger: Ledger) -> dict[str, Part]:
    """Every part by its id."""
    return {p.id: p for p in ledger.facts(Part)}


def _traveller(ledger: Ledger, name: str, now: str) -> "Page | None":
    batch = ledger.view.get(Batch, name)
    return traveller_of(ledger, batch, now) if batch else None


def traveller_of(ledger: Ledger, batch: Batch, now: str) -> "Page | None":
    """A batch's traveller; None where its cut file is not known."""
    from station.papers.traveller import traveller  # noqa: PLC0415 - reportlab is heavy

    view = ledger.view
    cut_file = view.get(CutFile, batch.cut_file)
    revision = find_revision(view, batch)
    if cut_file is None or revision is None:
        return None
    order = view.get(Order, batch.order)
    order = order if order and order.to_pack else None
    return traveller(
        batch,
        cut_file,
        revision,
        view.get(Material, revision.material),
        view.get(Router, batch.router),
        parts_of(ledger),
        pieces=pieces_of(ledger, batch),
        orders=1 if order else 0,
        first_due=order.due if order else batch.due,
        runs=_runs(view, revision),
        laser=any(find_work(view, run) == LASER for run in list_runs(view, revision)),
        printed=now,
        paper=find_shop(ledger.view).paper,
        shop=find_shop(ledger.view),
    )


def _runs(view: View, revision: Revision) -> list[str]:
    """The runs of a sheet as its traveller tells them; none where it is only one."""
    runs = list_runs(view, revision)
    if len(runs) < 2:
        return []
    return [
        f"{WORK[find_work(view, run)]}: {name_run(view, run)}"
        + (f" on router {', '.join(run.routers)}" if run.routers else "")
        for run in runs
    ]


def pieces_of(ledger: Ledger, batch: Batch) -> dict[str, int]:
    """A batch's pieces by part that wait for someone, not those on the rack or gone."""
    return by_part(list_with_paper(ledger.view, batch.id))


def _label(ledger: Ledger, name: str, now: str) -> "Page | None":
    from station.papers.packing import pack_label  # noqa: PLC0415 - only when it is used

    pack = ledger.view.get(Pack, name)
    order = ledger.view.get(Order, pack.order) if pack else None
    if pack is None or order is None:
        return None
    return pack_label(pack, order, parts_of(ledger), printed=now)


def _cart_list(ledger: Ledger, name: str, now: str) -> "Page | None":
    from station.papers.packing import cart_list  # noqa: PLC0415 - only when it is used

    cart = ledger.view.get(Cart, name)
    if cart is None:
        return None
    packs = ledger.view.shelf(Pack, f"cart/{cart.id}", 500)
    if not packs:  # it has left: the list of what it left with
        past = ledger.view.last(cart.key, "leave")
        packs = tuple(w.after for w in past.sets if isinstance(w.after, Pack)) if past else ()
    return cart_list(cart, packs, printed=now, paper=find_shop(ledger.view).paper)


def _pick_list(ledger: Ledger, name: str, now: str) -> "Page | None":
    from station.papers.picking import Take, pick_list  # noqa: PLC0415 - only when it is used

    order = ledger.view.get(Order, name)
    if order is None:
        return None
    takes = [
        Take(n.part, str(n.place_name), n.to_go, n.on_rack)
        for n in list_needs(ledger.view, order)
        if n.to_go
    ]
    return pick_list(order, takes, printed=now, paper=find_shop(ledger.view).paper)


def _handover(ledger: Ledger, name: str, now: str) -> "Page":
    """What one shift leaves to the next; `name` is the worker who hands over, if known."""
    from station.papers import handover  # noqa: PLC0415 - only when it is used
    from station.papers.page import moment  # noqa: PLC0415 - only when it is used

    view = ledger.view
    left = handover.Left(
        routers=[(r.name, _doing(b)) for r, b in list_beds(view)],
        popping=_at_popping(ledger),
        trimming=_at_trimming(ledger),
        bits=[
            (f"Bit {b.id}", f"{b.words}, {used:.0%} of its life")
            for b, used in list_worn_bits(view)
        ],
        looks=[(moment(c.since), str(c.text)) for c in view.shelf(Concern, "open", 500)],
    )
    return handover.handover(left, worker=name, printed=now, paper=find_shop(ledger.view).paper)


def _doing(bed: Bed) -> str:
    """What a router does now, in words."""
    words = {"cutting": f"cutting batch {bed.batch}, sheet {bed.sheet}", "stopped": "stopped"}
    taken = f"free, batch {bed.batch} is taken on" if bed.batch else "free"
    due = [
        f"{what} due" for what, why in (("first-off", bed.first_off), ("zero", bed.zero)) if why
    ]
    return ", ".join([words.get(bed.state, taken), *due])


def _pieces(count: int) -> str:
    return str(say("{n} {n|piece|pieces}", n=count))


def _at_popping(ledger: Ledger) -> list[tuple[str, str]]:
    """Every slip whose pieces wait, oldest first."""
    rows = []
    for slip in ledger.view.shelf(Slip, "popping", 500):
        count = total(ledger.view.stock(batch=slip.batch, place=f"popping/{slip.sheet}"))
        if count:
            rows.append((slip.batch, f"sheet {slip.sheet}, {_pieces(count)}"))
    return rows


def _at_trimming(ledger: Ledger) -> list[tuple[str, str]]:
    """Every batch with pieces at the router table, those to be made good named as such."""
    rows = []
    for place, words in (("trimming", ""), ("rework", ", to be made good")):
        counts = by_batch(ledger.view.stock(place=place))
        rows += [(batch, _pieces(n) + words) for batch, n in counts.items()]
    return rows


def _card(ledger: Ledger, name: str, _now: str) -> "Page | None":
    """One thing's own card, by its key (``bit/14``)."""
    from station.papers.cards import thing_cards  # noqa: PLC0415 - only when it is used

    kind, _, number = name.partition("/")
    fact: Fact | None = ledger.view.get(KINDS[kind], number) if kind in KINDS else None
    return thing_cards((fact,), paper=find_shop(ledger.view).paper) if fact else None


def _badges(ledger: Ledger, _name: str, _now: str) -> "Page":
    from station.papers.cards import badges  # noqa: PLC0415 - only when it is used

    return badges(tuple(ledger.facts(Worker)), paper=find_shop(ledger.view).paper)


def _part_cards(ledger: Ledger, _name: str, _now: str) -> "Page":
    from station.papers.rack import part_cards  # noqa: PLC0415 - only when it is used

    parts = parts_of(ledger)
    rows = tuple((parts[r.part], r) for r in ledger.facts(RackPlace) if r.part in parts)
    return part_cards(rows, paper=find_shop(ledger.view).paper)


def _button_cards(ledger: Ledger, name: str, _now: str) -> "Page":
    from station.papers.cards import button_cards  # noqa: PLC0415 - only when it is used

    return button_cards(name, tuple(ledger.facts(Reason)), paper=find_shop(ledger.view).paper)


_PAPERS: dict[str, Callable[[Ledger, str, str], "Page | None"]] = {
    "traveller": _traveller,
    "label": _label,
    "pick_list": _pick_list,
    "handover": _handover,
    "cart_list": _cart_list,
    "card": _card,
    "badges": _badges,
    "part_cards": _part_cards,
    "button_cards": _button_cards,
}
