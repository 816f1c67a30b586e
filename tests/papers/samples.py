"""A small invented shop's facts, and every paper made of them."""

from dataclasses import replace

from station.papers import cards, handover, join_cards, packing, picking, rack
from station.papers.order_list import make_order_list
from station.papers.traveller import make_traveller
from station.shop.cards import BUTTONS, DIGITS, ZONES
from station.shop.codes import usable, write
from station.shop.facts import (
    Batch,
    Bit,
    Cart,
    CutFile,
    Line,
    Lot,
    Mailer,
    Material,
    Order,
    Pack,
    Part,
    Placed,
    Product,
    RackPlace,
    Revision,
    Router,
    Shape,
    Shop,
    Worker,
)
from station.shop.file_requests import OrderRow
from station.shop.first_facts import first_reasons

LEFT = handover.ShiftLeft(
    routers=[("Router 1", "cutting batch 00412, sheet 3"), ("Router 2", "free, zero due")],
    popping=[("00412", f"sheet {n}, 12 pieces") for n in range(1, 31)],
    trimming=[("00409", "200 pieces"), ("00418", "7 pieces, to be made good")],
    packs=[("Order 3307", "4 of 6 in it, at station 2")],
    bits=[("Bit 12", "6.0 mm compression, 90% of its life")],
    looks=[("Wed 25 Nov 07:02", "Batch 00398: 4 pieces fewer than the cut file says")],
)
NOW = "2026-11-25T07:12:00"


def _oblong(length, width):
    return ((0.0, 0.0), (length, 0.0), (length, width), (0.0, width))


COMB = Shape(
    outline=_oblong(300.0, 120.0),
    holes=tuple(tuple((20 + n * 15 + x, 20 + y) for x, y in _oblong(6, 80)) for n in range(16)),
    tabs=((0, 60), (300, 60), (120, 0), (200, 120)),
)
SHUTTLE = Shape(outline=_oblong(180.0, 40.0), tabs=((90, 0), (90, 40)))
PARTS = {
    "014": Part(id="014", name="HC-300", words="Heddle comb 300", rack="014", shape=COMB),
    "045": Part(id="045", name="SH-180", words="Stick shuttle 180", rack="045", shape=SHUTTLE),
    "062": Part(id="062", name="WS-12", words="Warp spacer 12", rack="062", shape=SHUTTLE),
}
PLACED = tuple(
    Placed(part=part, x_mm=40 + n * step, y_mm=y, turn_deg=turn)
    for part, step, y, turn in (("014", 330, 900, 0), ("045", 210, 500, 0), ("062", 60, 100, 90))
    for n in range(6)
)
REVISION = Revision(
    id="008.A",
    cut_file="008",
    letter="A",
    material="01",
    minutes=20,
    shapes=(("014", COMB), ("045", SHUTTLE), ("062", SHUTTLE)),
    placed=PLACED,
    hold_downs=((120, 15), (2320, 1205)),
)
# Twenty parts more, so that the table to count in needs a further page.
MANY = replace(
    REVISION, placed=PLACED + tuple(Placed(part=str(n), x_mm=0, y_mm=0) for n in range(100, 120))
)
MATERIAL = Material(id="01", name="6 mm birch plywood", thickness_mm=6.0, low_mm=5.5, high_mm=6.5)
CUT_FILE = CutFile(id="008", name="HC300-SET", words="Heddle comb 300 + shuttles", approved="A")
ROUTER = Router(id="3", name="Router 3")
BATCH = Batch(id="00412", cut_file="008", revision="A", router="3", sheets=8)
CHILD = replace(BATCH, id="00418", sheets=0, parent="00412", role="rework", tries=1)
ORDER = Order(id="3306", lines=(Line(product="021", quantity=2, short=1),), due=NOW)
PACKS = tuple(
    Pack(id=f"{n:05d}", order="3306", mailer="01", mass_g=412, contents=(("014", 3),))
    for n in range(70, 100)
    if usable("pack", f"{n:05d}")
)
LOOM_KIT = Product(id="021", name="LK-1", words="Loom kit", parts=(("014", 1),), place="F 12")
SHELVED = replace(PACKS[0], order="", product="021", state="shelf")
CART = Cart(id="2", name="Cart 2")
WORKERS = tuple(Worker(id=f"{n:02d}") for n in range(1, 30) if usable("worker", f"{n:02d}"))
RACK = RackPlace(id="014", name="C 14", part="014")
THINGS = (
    ROUTER,
    Bit(id="14", words="6.0 mm compression", diameter_mm=6.0),
    Lot(id="0931", material="01"),
    CART,
    CUT_FILE,
    ORDER,
    LOOM_KIT,
    PACKS[0],
    Mailer(id="01", name="Mailer M", length_mm=300, width_mm=200),
    WORKERS[2],
    PARTS["014"],
    RACK,
)


SHOP = Shop(id="shop")


def a_traveller(
    batch=BATCH,
    revision=REVISION,
    paper="A4",
    shop=SHOP,
    material=MATERIAL,
    cut_file=CUT_FILE,
    *,
    laser=False,
    pieces=None,
):
    return make_traveller(
        batch,
        cut_file,
        revision,
        material,
        ROUTER,
        PARTS,
        orders=12,
        first_due=NOW,
        printed=NOW,
        paper=paper,
        shop=shop,
        laser=laser,
        pieces=pieces or {"014": 6, "045": 12},
        racks={"014": "C 14"},
    )


def a_pick_list(paper="A4"):
    takes = [
        picking.PickRow(part, place, count, there)
        for part, place, count, there in zip(
            PARTS.values(), ("C 14", "A 3", "D 2"), (12, 4, 30), (40, 4, 18), strict=True
        )
    ]
    return picking.make_pick_list(ORDER, takes, printed=NOW, paper=paper)


def an_order_list(paper="A4"):
    row = OrderRow(what="6.5 mm birch plywood", quantity=40, by="2026-11-27", lasts_days=6.0,
                   lead_days=5, lead_known=False)  # fmt: skip
    return make_order_list((row,), at=NOW, paper=paper)


def sheet_codes(batch):
    """The codes on a traveller: its own twice, one for each slip."""
    own = write("batch", batch.id, "A")
    return [own, own] + [write("batch", batch.id, "A", n) for n in range(1, batch.sheets + 1)]


def _all_buttons():
    codes = [write("button", card.number) for card in BUTTONS.values()]
    codes += [write("digit", d) for d in DIGITS] + [write("zone", z) for z in ZONES]
    return codes + [write("reason", r.id) for r in first_reasons()]


JOINING = [
    join_cards.JoinCard(f"{n}", "" if n < 3 else ":5433/combs", code, code, "2026-11-27T15:06:00")
    for n, code in enumerate(("WBNWSRN4BPVXZQBM", "7K2M9XQ4TTWZ5HJ3", "ABCDEFGHJKLMNPQR"), 2)
]


def papers(paper):
    """Each paper by name, and the codes that stand on it."""
    long = replace(BATCH, sheets=40)
    rows = tuple((p, RackPlace(id=p.rack, name=p.rack, part=p.id)) for p in PARTS.values())
    return {
        "traveller": (a_traveller(paper=paper), sheet_codes(BATCH)),
        "traveller of 40 sheets": (a_traveller(long, paper=paper), sheet_codes(long)),
        "traveller of many parts": (a_traveller(revision=MANY, paper=paper), sheet_codes(BATCH)),
        "traveller of a child": (a_traveller(CHILD, paper=paper), sheet_codes(CHILD)),
        "badges": (
            cards.make_badges(WORKERS, paper=paper),
            [write("worker", w.id) for w in WORKERS],
        ),
        "part cards": (
            rack.make_part_cards(rows, paper=paper),
            [write(k, p) for p in PARTS for k in ("part", "rack")],
        ),
        "button cards": (
            cards.make_button_cards("all", first_reasons(), paper=paper),
            _all_buttons(),
        ),
        "thing cards": (
            cards.make_thing_cards(THINGS, {"1": "6.5 mm birch plywood"}, paper=paper),
            [write(f.kind, f.id) for f in THINGS],
        ),
        "pack label": (
            packing.make_pack_label(PACKS[0], ORDER, PARTS, printed=NOW),
            [write("pack", PACKS[0].id)],
        ),
        "shelf card": (
            packing.make_shelf_card(SHELVED, LOOM_KIT, PARTS, printed=NOW),
            [write("pack", SHELVED.id)],
        ),
        "pick list": (a_pick_list(paper), [write("order", ORDER.id)]),
        "order list": (an_order_list(paper), []),
        "handover": (
            handover.make_handover(LEFT, worker="03", printed=NOW, shop=SHOP, paper=paper),
            [],
        ),
        "cart list": (
            packing.make_cart_list(CART, PACKS, printed=NOW, shop=SHOP, paper=paper),
            [write("cart", "2")] + [write("pack", p.id) for p in PACKS],
        ),
        "join cards": (
            join_cards.make_join_cards(JOINING, paper=paper),
            [c.code for c in JOINING],
        ),
    }
