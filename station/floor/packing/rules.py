"""Every act of packing with its rule."""

from station.floor.packing.rules_claim import claim_order, put_order_down, wait_for
from station.floor.packing.rules_close import close_pack, open_pack, print_label
from station.floor.packing.rules_short import recount_place, send_short
from station.floor.packing.rules_take import correct_pick, pick, take_back
from station.shop.facts import (
    Batch,
    Bed,
    Concern,
    Mailer,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Revision,
    Router,
    Slip,
)
from station.shop.views import Rule, Rules

_READS = frozenset(
    {Batch, Bed, Concern, Mailer, Order, Pack, Part, Product, RackPlace, Revision, Router, Slip}
)

RULES: Rules = {
    decide.__name__: Rule(_READS, decide)
    for decide in (
        claim_order,
        put_order_down,
        wait_for,
        pick,
        correct_pick,
        take_back,
        recount_place,
        send_short,
        close_pack,
        open_pack,
        print_label,
    )
}
