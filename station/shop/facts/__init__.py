"""What the shop knows, as frozen facts. A rule never changes one: it sets it anew.

A fact has an `id` unique in its kind and may stand on one shelf, the only kind of list
there is: ``shelf`` gives the list's name and the rank in it. Counts are not kept in
facts; they are sums of moves (`station.shop.moves`).

Lengths are millimetres, masses grams, times shop-local ``YYYY-MM-DDTHH:MM:SS`` unless
a name says otherwise.
"""

from station.shop.facts.base import Fact, Gone, Shelf
from station.shop.facts.machines import Bed, BedKind, BedState, Bit, BitState, Notice, Pace, Router
from station.shop.facts.material import Lot, Material
from station.shop.facts.orders import (
    Cart,
    CartState,
    Line,
    Mailer,
    Order,
    OrderState,
    Pack,
    PackState,
    Product,
)
from station.shop.facts.parts import (
    BitUse,
    CutFile,
    CutWork,
    Loop,
    Part,
    Placed,
    RackPlace,
    Revision,
    Shape,
    Size,
    SizeKind,
)
from station.shop.facts.settings import (
    Numbers,
    Paper,
    Reason,
    ReasonUse,
    Shop,
    Spent,
    Units,
    Worker,
)
from station.shop.facts.work import (
    Batch,
    BatchRole,
    BatchState,
    Concern,
    ConcernTone,
    Doubt,
    Pile,
    PileArea,
    Ran,
    Slip,
    SlipState,
)

__all__ = [
    "KINDS",
    "Batch",
    "BatchRole",
    "BatchState",
    "Bed",
    "BedKind",
    "BedState",
    "Bit",
    "BitState",
    "BitUse",
    "Cart",
    "CartState",
    "Concern",
    "ConcernTone",
    "CutFile",
    "CutWork",
    "Doubt",
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
    "OrderState",
    "Pace",
    "Pack",
    "PackState",
    "Paper",
    "Part",
    "Pile",
    "PileArea",
    "Placed",
    "Product",
    "RackPlace",
    "Ran",
    "Reason",
    "ReasonUse",
    "Revision",
    "Router",
    "Shape",
    "Shelf",
    "Shop",
    "Size",
    "SizeKind",
    "Slip",
    "SlipState",
    "Spent",
    "Units",
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
