"""What each paper shows, gathered from the ledger and laid out."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from station.desk.appearance import screen
from station.ledger.ledger import Ledger
from station.look.language import CONTEXT, FIND_TEMPLATE, Text, find_language, load_translator
from station.papers.spoken import speak
from station.queries.batches import find_revision
from station.queries.handing_over import list_left_beds, list_open_packs
from station.queries.looks import OPEN, list_raised
from station.queries.orders import list_needs
from station.queries.routers import list_worn_bits
from station.queries.runs import LASER, WORK, find_work, list_runs, name_run
from station.queries.settings import find_shop
from station.queries.stock import count_in_store
from station.queries.underway import list_with_paper
from station.shop import lengths
from station.shop.facts import (
    KINDS,
    Batch,
    Bit,
    Cart,
    Concern,
    CutFile,
    Fact,
    Lot,
    Mailer,
    Material,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Reason,
    Revision,
    Router,
    Slip,
    Worker,
)
from station.shop.views import View, by_batch, by_part, total
from station.shop.words import Say, say

if TYPE_CHECKING:
    from station.papers.page import Page

THINGS: tuple[type[Fact], ...] = (Router, Bit, Lot, Cart, Mailer, CutFile)


def make_paper(ledger: Ledger, kind: str, name: str, now: str) -> "Page | None":
    """Makes one paper; None when what it is about is not there."""
    shop = find_shop(ledger.view)
    lengths.use_units(shop.units, fractions=shop.fractions)
    draw = _PAPERS.get(kind)
    with _speaking_as(ledger):
        return draw(ledger, name, now) if draw else None


@contextmanager
def _speaking_as(ledger: Ledger) -> Iterator[None]:
    """Has papers speak the language of this PC, with a window open or without.

    What is said beside them goes on in the language in use: a figure has its decimal sign.
    """
    language = screen(ledger).language
    if language == find_language():
        speak(FIND_TEMPLATE)
        yield
        return
    found = load_translator(language) if language else None
    speak(lambda template: (found and found.translate(CONTEXT, template)) or template)
    lengths.use_decimals(language)
    try:
        yield
    finally:
        lengths.use_decimals(find_language())


def map_parts(ledger: Ledger) -> dict[str, Part]:
    """Maps every part by its id."""
    return {p.id: p for p in ledger.facts(Part)}


def map_materials(ledger: Ledger) -> dict[str, str]:
    """Maps the name of every material by its id."""
    return {m.id: m.name for m in ledger.facts(Material)}


def _find_traveller(ledger: Ledger, name: str, now: str) -> "Page | None":
    batch = ledger.view.get(Batch, name)
    return gather_traveller(ledger, batch, now) if batch else None


def gather_traveller(ledger: Ledger, batch: Batch, now: str) -> "Page | None":
    """Gathers a batch's traveller; None where its cut file is not known."""
    from station.papers.traveller import make_traveller  # noqa: PLC0415 - reportlab is heavy

    view = ledger.view
    cut_file = view.get(CutFile, batch.cut_file)
    revision = find_revision(view, batch)
    if cut_file is None or revision is None:
        return None
    order = view.get(Order, batch.order)
    order = order if order and order.to_pack else None
    return make_traveller(
        batch,
        cut_file,
        revision,
        view.get(Material, revision.material),
        view.get(Router, batch.router),
        map_parts(ledger),
        pieces=count_waiting(ledger, batch),
        orders=1 if order else 0,
        first_due=order.due if order else batch.due,
        runs=_describe_runs(view, revision),
        racks={place.part: place.name for place in ledger.facts(RackPlace)},
        laser=any(find_work(view, run) == LASER for run in list_runs(view, revision)),
        printed=now,
        paper=find_shop(ledger.view).paper,
        shop=find_shop(ledger.view),
    )


def _describe_runs(view: View, revision: Revision) -> list[Say]:
    """Describes the runs of a sheet as its traveller tells them; none where it is only one."""
    runs = list_runs(view, revision)
    if len(runs) < 2:
        return []
    return [_describe_run(view, run) for run in runs]


def _describe_run(view: View, run: Revision) -> Say:
    """Describes one run: what is done, its name, the routers where it is not any of them."""
    named = say("{work}: {run}", work=WORK[find_work(view, run)], run=name_run(view, run))
    routers = ", ".join(run.routers)
    return say("{run} on router {routers}", run=named, routers=routers) if routers else named


def count_waiting(ledger: Ledger, batch: Batch) -> dict[str, int]:
    """Counts a batch's pieces by part that wait for someone, not those on the rack or gone."""
    return by_part(list_with_paper(ledger.view, batch.id))


def _gather_label(ledger: Ledger, name: str, now: str) -> "Page | None":
    from station.papers.packing import (  # noqa: PLC0415 - only when it is used
        make_pack_label,
        make_shelf_card,
    )

    size, pack = find_shop(ledger.view).label, ledger.view.get(Pack, name)
    ahead = ledger.view.get(Product, pack.product) if pack and pack.state == "shelf" else None
    if pack and ahead:
        return make_shelf_card(pack, ahead, map_parts(ledger), printed=now, size=size)
    order = ledger.view.get(Order, pack.order) if pack else None
    if pack is None or order is None:
        return None
    return make_pack_label(pack, order, map_parts(ledger), printed=now, size=size)


def _gather_cart_list(ledger: Ledger, name: str, now: str) -> "Page | None":
    from station.papers.packing import make_cart_list  # noqa: PLC0415 - only when it is used

    cart = ledger.view.get(Cart, name)
    if cart is None:
        return None
    packs = ledger.view.shelf(Pack, f"cart/{cart.id}", 500)
    if not packs:  # it has left: the list of what it left with
        past = ledger.view.last(cart.key, "leave")
        packs = tuple(w.after for w in past.sets if isinstance(w.after, Pack)) if past else ()
    shop = find_shop(ledger.view)
    return make_cart_list(cart, packs, printed=now, shop=shop, paper=shop.paper)


def _gather_pick_list(ledger: Ledger, name: str, now: str) -> "Page | None":
    from station.papers.picking import PickRow, make_pick_list  # noqa: PLC0415 - only when it is used

    order = ledger.view.get(Order, name)
    if order is None:
        return None
    takes = [
        PickRow(n.part, str(n.place_name), n.to_go, n.on_rack)
        for n in list_needs(ledger.view, order)
        if n.to_go
    ]
    return make_pick_list(order, takes, printed=now, paper=find_shop(ledger.view).paper)


def _gather_handover(ledger: Ledger, name: str, now: str) -> "Page":
    """Gathers what one shift leaves to the next; `name` is the worker who hands over, if known."""
    from station.papers import handover  # noqa: PLC0415 - only when it is used
    from station.papers.page import say_moment  # noqa: PLC0415 - only when it is used

    view = ledger.view
    shift = handover.ShiftLeft(
        routers=[(left.router.name, left.words) for left in list_left_beds(view, now)],
        popping=_list_popping(ledger),
        trimming=_list_trimming(ledger),
        packs=[(say("Order {order}", order=p.order.id), p.words) for p in list_open_packs(view)],
        bits=[
            (
                say("Bit {bit}", bit=b.id),
                say("{bit}, {n} % of its life", bit=b.words, n=round(used * 100)),
            )
            for b, used in list_worn_bits(view)
        ],
        looks=[
            *((say_moment(r.since or now), r.words) for r in list_raised(view, now)),
            *((say_moment(c.since), c.text) for c in view.shelf(Concern, "open", OPEN)),
        ],
    )
    shop = find_shop(view)
    return handover.make_handover(
        shift,
        worker=name,
        printed=now,
        shop=shop,
        paper=shop.paper,
        witness=ledger.witness() if ledger.count() else "",
    )


def _count_pieces(count: int) -> Say:
    return say("{n} {n|piece|pieces}", n=count)


def _list_popping(ledger: Ledger) -> list[tuple[Text, Text]]:
    """Lists every slip whose pieces wait, oldest first."""
    rows: list[tuple[Text, Text]] = []
    for slip in ledger.view.shelf(Slip, "popping", 500):
        count = total(ledger.view.stock(batch=slip.batch, place=f"popping/{slip.sheet}"))
        if count:
            pieces = _count_pieces(count)
            rows.append((slip.batch, say("sheet {n}, {pieces}", n=slip.sheet, pieces=pieces)))
    return rows


def _list_trimming(ledger: Ledger) -> list[tuple[Text, Text]]:
    """Lists every batch with pieces at the router table, those to be made good named as such."""
    rows: list[tuple[Text, Text]] = []
    for batch, n in by_batch(ledger.view.stock(place="trimming")).items():
        rows.append((batch, _count_pieces(n)))
    for batch, n in by_batch(ledger.view.stock(place="rework")).items():
        rows.append((batch, say("{pieces}, to be made good", pieces=_count_pieces(n))))
    return rows


def _gather_card(ledger: Ledger, name: str, _now: str) -> "Page | None":
    """Gathers one thing's own card, by its key (``bit/14``)."""
    from station.papers.cards import make_thing_cards  # noqa: PLC0415 - only when it is used

    kind, _, number = name.partition("/")
    fact: Fact | None = ledger.view.get(KINDS[kind], number) if kind in KINDS else None
    paper, materials = find_shop(ledger.view).paper, map_materials(ledger)
    return make_thing_cards((fact,), materials, paper=paper) if fact else None


def _gather_badges(ledger: Ledger, _name: str, _now: str) -> "Page":
    from station.papers.cards import make_badges  # noqa: PLC0415 - only when it is used

    return make_badges(tuple(ledger.facts(Worker)), paper=find_shop(ledger.view).paper)


def _gather_part_cards(ledger: Ledger, _name: str, _now: str) -> "Page":
    from station.papers.rack import make_part_cards  # noqa: PLC0415 - only when it is used

    parts = map_parts(ledger)
    rows = tuple(
        (parts[r.part], r) for r in ledger.facts(RackPlace) if r.part in parts and r.in_use
    )
    return make_part_cards(rows, paper=find_shop(ledger.view).paper)


def _gather_thing_cards(ledger: Ledger, _name: str, _now: str) -> "Page | None":
    """Gathers a card for everything in use that has no card elsewhere; None: there is nothing."""
    from station.papers.cards import make_thing_cards  # noqa: PLC0415 - only when it is used

    things = (f for kind in THINGS for f in ledger.facts(kind) if f.in_use)
    facts = tuple(f for f in things if not isinstance(f, Lot) or count_in_store(ledger.view, f.id))
    paper, materials = find_shop(ledger.view).paper, map_materials(ledger)
    return make_thing_cards(facts, materials, paper=paper) if facts else None


def _gather_button_cards(ledger: Ledger, name: str, _now: str) -> "Page":
    from station.papers.cards import make_button_cards  # noqa: PLC0415 - only when it is used

    return make_button_cards(name, tuple(ledger.facts(Reason)), paper=find_shop(ledger.view).paper)


_PAPERS: dict[str, Callable[[Ledger, str, str], "Page | None"]] = {
    "traveller": _find_traveller,
    "label": _gather_label,
    "pick_list": _gather_pick_list,
    "handover": _gather_handover,
    "cart_list": _gather_cart_list,
    "card": _gather_card,
    "badges": _gather_badges,
    "part_cards": _gather_part_cards,
    "thing_cards": _gather_thing_cards,
    "button_cards": _gather_button_cards,
}
