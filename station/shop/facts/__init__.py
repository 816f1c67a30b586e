"""What the shop knows, as frozen facts. A rule never changes one: it sets it anew.

A fact has an `id` unique in its kind and may stand on one shelf, the only kind of list
there is: ``shelf`` gives the list's name and the rank in it. Counts are not kept in
facts; they are sums of moves (`station.shop.moves`).

Lengths are millimetres, masses grams, times shop-local ``YYYY-MM-DDTHH:MM:SS`` unless
a name says otherwise.
"""

from station.shop.facts.base import Fact, Gone, Shelf
from station.shop.facts.machines import Bed, Bit, Notice, Pace, Router
from station.shop.facts.material import Lot, Material
from station.shop.facts.orders import Cart, Line, Mailer, Order, Pack, Product
from station.shop.facts.parts import (
    BitUse,
    CutFile,
    Loop,
    Part,
    Placed,
    RackPlace,
    Revision,
    Shape,
    Size,
)
from station.shop.facts.settings import Numbers, Reason, Shop, Spent, Worker
from station.shop.facts.work import Batch, Concern, Pile, Ran, Slip

__all__ = [
    "KINDS",
    "Batch",
    "Bed",
    "Bit",
    "BitUse",
    "Cart",
    "Concern",
    "CutFile",
    "Fact",
    "Gone",
    "Line",
    "Loop",
    "Lot",
    "Mailer",
    "Material",
    "Notice",
    "Numbers",
    "Order",
    "Pace",
    "Pack",
    "Part",
    "Pile",
    "Placed",
    "Product",
    "RackPlace",
    "Ran",
    "Reason",
    "Revision",
    "Router",
    "Shape",
    "Shelf",
    "Shop",
    "Size",
    "Slip",
    "Spent",
    "Worker",
]

KINDS: dict[str, type[Fact]] = {
    kind.kind: kind
    for kind in (
        Shop,
        Worker,
        Reason,
        Material,
        Lot,
        Part,
        RackPlace,
        CutFile,
        Revision,
        Router,
        Bed,
        Pace,
        Bit,
        Notice,
        Batch,
        Slip,
        Pile,
        Product,
        Order,
        Mailer,
        Pack,
        Cart,
        Concern,
        Numbers,
        Spent,
    )
}
