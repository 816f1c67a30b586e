"""From the ledger to papers: gathers what a paper shows and has it drawn."""

from collections.abc import Callable
from pathlib import Path

from station.app import new_id
from station.ledger.ledger import Ledger
from station.shop.acts import Act
from station.shop.facts import (
    KINDS,
    Batch,
    Cart,
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
    Shop,
    Worker,
)


def paper(ledger: Ledger, kind: str, name: str, now: str) -> bytes | None:
    """The PDF of one paper, or None when what it is about is not there."""
    draw = _PAPERS.get(kind)
    return draw(ledger, name, now) if draw else None


def shop_of(ledger: Ledger) -> Shop:
    """The shop's settings."""
    return ledger.view.get(Shop, "shop") or Shop(id="shop")


def parts_of(ledger: Ledger) -> dict[str, Part]:
    """Every part by its id."""
    return {p.id: p for p in ledger.facts(Part)}


def next_copy(ledger: Ledger, batch: str, at: str) -> None:
    """Makes the next copy of a traveller; the one before is void."""
    ledger.record(
        Act(id=new_id(), kind="new_copy", at=at, subject=f"batch/{batch}", station=ledger.station)
    )


def _traveller(ledger: Ledger, name: str, now: str) -> bytes | None:
    batch = ledger.view.get(Batch, name)
    return traveller_of(ledger, batch, now) if batch else None


def traveller_of(ledger: Ledger, batch: Batch, now: str) -> bytes | None:
    """A batch's traveller; None where its cut file is not known."""
    from station.papers.traveller import traveller  # noqa: PLC0415 - reportlab is heavy

    view = ledger.view
    cut_file = view.get(CutFile, batch.cut_file)
    revision = view.get(Revision, f"{batch.cut_file}.{batch.revision}")
    if cut_file is None or revision is None:
        return None
    wants = [o for o in view.shelf(Order, "open", 500) if o.id == batch.order]
    return traveller(
        batch,
        cut_file,
        revision,
        view.get(Material, revision.material),
        view.get(Router, batch.router),
        parts_of(ledger),
        orders=len(wants),
        first_due=wants[0].due if wants else batch.due,
        printed=now,
        paper=shop_of(ledger).paper,
        shop=shop_of(ledger),
    )


def _label(ledger: Ledger, name: str, now: str) -> bytes | None:
    from station.papers.packing import pack_label  # noqa: PLC0415

    pack = ledger.view.get(Pack, name)
    order = ledger.view.get(Order, pack.order) if pack else None
    if pack is None or order is None:
        return None
    return pack_label(pack, order, parts_of(ledger), printed=now)


def _cart_list(ledger: Ledger, name: str, now: str) -> bytes | None:
    from station.papers.packing import cart_list  # noqa: PLC0415

    cart = ledger.view.get(Cart, name)
    if cart is None:
        return None
    packs = ledger.view.shelf(Pack, f"cart/{cart.id}", 500)
    if not packs:  # it has left: the list of what it left with
        past = ledger.view.last(cart.key, "leave")
        packs = tuple(w.after for w in past.sets if isinstance(w.after, Pack)) if past else ()
    return cart_list(cart, packs, printed=now, paper=shop_of(ledger).paper)


def _card(ledger: Ledger, name: str, _now: str) -> bytes | None:
    """One thing's own card, by its key (``bit/14``)."""
    from station.papers.cards import thing_cards  # noqa: PLC0415

    kind, _, number = name.partition("/")
    fact: Fact | None = ledger.view.get(KINDS[kind], number) if kind in KINDS else None
    return thing_cards((fact,), paper=shop_of(ledger).paper) if fact else None


def _badges(ledger: Ledger, _name: str, _now: str) -> bytes:
    from station.papers.cards import badges  # noqa: PLC0415

    return badges(tuple(ledger.facts(Worker)), paper=shop_of(ledger).paper)


def _part_cards(ledger: Ledger, _name: str, _now: str) -> bytes:
    from station.papers.cards import part_cards  # noqa: PLC0415

    parts = parts_of(ledger)
    rows = tuple((parts[r.part], r) for r in ledger.facts(RackPlace) if r.part in parts)
    return part_cards(rows, paper=shop_of(ledger).paper)


def _button_cards(ledger: Ledger, name: str, _now: str) -> bytes:
    from station.papers.cards import button_cards  # noqa: PLC0415

    return button_cards(name, tuple(ledger.facts(Reason)), paper=shop_of(ledger).paper)


_PAPERS: dict[str, Callable[[Ledger, str, str], bytes | None]] = {
    "traveller": _traveller,
    "label": _label,
    "cart_list": _cart_list,
    "card": _card,
    "badges": _badges,
    "part_cards": _part_cards,
    "button_cards": _button_cards,
}


class Papers:
    """Where a station's papers go: PDF files in its folder, in the order printed."""

    def __init__(
        self,
        ledger: Ledger,
        folder: Path,
        clock: Callable[[], str],
        show: Callable[[Path], object] = lambda _file: None,
    ) -> None:
        self.ledger, self.folder, self.clock, self.show = ledger, folder, clock, show
        self.made: list[Path] = []

    def __call__(self, kind: str, name: str) -> None:
        """Prints one paper."""
        pdf = paper(self.ledger, kind, name, self.clock())
        if pdf is None:
            return
        self.folder.mkdir(parents=True, exist_ok=True)
        file = self.folder / f"{kind}-{name.replace('/', '-')}.pdf"
        file.write_bytes(pdf)
        self.made.append(file)
        self.show(file)
