"""Every code that cards and papers carry now."""

from collections.abc import Callable, Iterator

from station.ledger.ledger import Ledger
from station.shop.cards import BUTTONS, DIGITS, ZONES
from station.shop.codes import has_code, usable, write
from station.shop.facts import (
    Batch,
    Bit,
    Cart,
    CutFile,
    Fact,
    Lot,
    Mailer,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Reason,
    Router,
    Worker,
)

Json = dict[str, object]


def list_codes(ledger: Ledger) -> list[Json]:
    """Lists every code that can be scanned now: cards, things and travellers."""
    return list(_list_cards()) + list(_list_things(ledger)) + list(_list_travellers(ledger))


def _describe_code(
    kind: str,
    number: str,
    meaning: str,
    *,
    area: str = "",
    copy: str = "",
    sheet: int = 0,
    named: str = "",
) -> Iterator[Json]:
    if usable(kind, number, copy, sheet) if kind == "batch" else has_code(kind, number):
        row: Json = {
            "code": write(kind, number, copy, sheet),
            "kind": named or kind,
            "meaning": meaning,
        }
        yield row | ({"area": area} if area else {})


def _list_cards() -> Iterator[Json]:
    for card in BUTTONS.values():
        yield from _describe_code("button", card.number, card.words, area=card.area)
    for char in DIGITS:
        yield from _describe_code("digit", char, char)
    for zone, words in ZONES.items():
        yield from _describe_code("zone", zone, words)


_MEANINGS: tuple[tuple[type[Fact], str, Callable[[Fact], str]], ...] = (
    (Worker, "worker", lambda f: "supervisor" if getattr(f, "supervisor", False) else "worker"),
    (Part, "part", lambda f: f"{getattr(f, 'name', '')} {getattr(f, 'words', '')}"),
    (RackPlace, "rack", lambda f: f"{getattr(f, 'name', '')}"),
    (Order, "order", lambda f: f"due {getattr(f, 'due', '')}"),
    (Product, "product", lambda f: f"{getattr(f, 'words', '')}"),
    (Pack, "pack", lambda f: f"order {getattr(f, 'order', '')}"),
    (Cart, "cart", lambda f: f"{getattr(f, 'name', '')}"),
    (Router, "router", lambda f: f"{getattr(f, 'name', '')}"),
    (Bit, "bit", lambda f: f"{getattr(f, 'words', '')}"),
    (Lot, "lot", lambda f: f"material {getattr(f, 'material', '')}"),
    (Reason, "reason", lambda f: f"{getattr(f, 'use', '')}: {getattr(f, 'words', '')}"),
    (CutFile, "cutfile", lambda f: f"{getattr(f, 'name', '')}"),
    (Mailer, "mailer", lambda f: f"{getattr(f, 'name', '')}"),
)


def _list_things(ledger: Ledger) -> Iterator[Json]:
    for kind, name, meaning in _MEANINGS:
        for fact in ledger.facts(kind):
            yield from _describe_code(name, fact.id, meaning(fact))


def _list_travellers(ledger: Ledger) -> Iterator[Json]:
    """Lists travellers of batches still under way, and a slip for each of their sheets."""
    for batch in ledger.facts(Batch):
        if batch.state == "cancelled":
            continue
        meaning = f"traveller of batch {batch.id}, copy {batch.copy}"
        yield from _describe_code("batch", batch.id, meaning, copy=batch.copy)
        for sheet in range(1, batch.sheets + 1):
            yield from _describe_code(
                "batch",
                batch.id,
                f"batch {batch.id}, sheet {sheet}",
                copy=batch.copy,
                sheet=sheet,
                named="slip",
            )
