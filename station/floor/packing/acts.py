"""Writes down what is done at packing, as it is kept for ever.

The subject is the order, its pack, the part whose rack place is counted, or the product that is
packed ahead.
"""

from station.shop.acts import Args


class ClaimOrder(Args, frozen=True, kw_only=True):
    """Takes an order for this station: nobody else packs it."""

    kind = "claim_order"

    leaving: str = ""  # the order that was in hand here


class BeginWalk(Args, frozen=True, kw_only=True):
    """Takes several orders for this station, to be fetched on one walk.

    The subject is the first of them.
    """

    kind = "begin_walk"

    orders: tuple[str, ...]


class LeaveWalk(Args, frozen=True, kw_only=True):
    """Frees the orders of a walk for which nothing was fetched. The subject is the first."""

    kind = "leave_walk"

    orders: tuple[str, ...]


class PickForWalk(Args, frozen=True, kw_only=True):
    """Takes pieces of a part from the rack for the orders of a walk. The subject is the part."""

    kind = "pick_for_walk"

    orders: tuple[str, ...]
    quantity: int | None = None  # None: all that they want


class PutOrderDown(Args, frozen=True, kw_only=True):
    """Puts an order down that has nothing in its pack."""

    kind = "put_order_down"


class WaitForPart(Args, frozen=True, kw_only=True):
    """Lets the order wait for a part that is under way."""

    kind = "wait_for"

    part: str


class PickPart(Args, frozen=True, kw_only=True):
    """Takes pieces of a part from the rack into the pack."""

    kind = "pick"

    part: str
    quantity: int | None = None  # None: all that is wanted


class PickSet(Args, frozen=True, kw_only=True):
    """Takes whole sets of a product from the rack into the pack: one bag each."""

    kind = "pick_set"

    product: str
    quantity: int = 1


class CorrectPick(Args, frozen=True, kw_only=True):
    """Tells that the pick that was just made really was another number."""

    kind = "correct_pick"

    part: str
    was: int  # pieces that the pick took
    quantity: int  # that it really was


class PutPartsBack(Args, frozen=True, kw_only=True):
    """Puts pieces from the open pack back on the rack."""

    kind = "take_back"

    part: str = ""  # empty: all of them
    quantity: int | None = None  # None: all of it


class TakeFromOrder(Args, frozen=True, kw_only=True):
    """Takes pieces of a part out of the open pack of an order that is due later."""

    kind = "take_from_order"

    part: str
    other: str


class AskForSheet(Args, frozen=True, kw_only=True):
    """Asks for a sheet with a part that is not under way; the order waits for it."""

    kind = "ask_for_sheet"

    part: str


class SendShort(Args, frozen=True, kw_only=True):
    """Lets an order go with pieces of a part owed."""

    kind = "send_short"

    part: str


class ClosePack(Args, frozen=True, kw_only=True):
    """Closes the pack: it gets its number and its label."""

    kind = "close_pack"

    scale_g: float | None = None  # what the scale showed; None: it was not weighed
    mailer: str = ""  # that was worked out for it; empty: none closes over it
    length_mm: float = 0.0  # of the stack in it
    width_mm: float = 0.0
    thick_mm: float = 0.0
    shelf: str = ""  # the pack from the shelf that becomes it
    next: str = ""  # the order that is claimed by the same scan
    instead: str = ""  # the mailer that was worked out, where a person chose another
    wrap_m: float = 0.0
    # part, quantity: what goes in it, where the rest of the order goes in another pack
    share: tuple[tuple[str, int], ...] = ()


class MakeShelfPack(Args, frozen=True, kw_only=True):
    """Packs one set of a product ahead: its pieces go from the rack into a pack on the shelf."""

    kind = "make_shelf_pack"

    mailer: str = ""  # that was worked out for it; empty: none closes over it


class TakeShelfPack(Args, frozen=True, kw_only=True):
    """Takes what lies in a pack from the shelf into the open pack of an order."""

    kind = "take_shelf_pack"

    order: str


class SpoilPacked(Args, frozen=True, kw_only=True):
    """Counts pieces out of the open pack that are spoiled, for a reason."""

    kind = "spoil_packed"

    part: str
    quantity: int = 1


class CountSupplies(Args, frozen=True, kw_only=True):
    """Says how many of a mailer, labels, or metres of wrap there really are.

    The subject is ``mailer/`` with the mailer's number, ``wrap`` or ``labels``.
    """

    kind = "count_supplies"

    counted: int  # of wrap: in the unit that it was counted in
    tenths: int | None = None  # of wrap: the same in tenths of a metre; None: whole metres


class PrintLabel(Args, frozen=True, kw_only=True):
    """Prints a pack's label once more."""

    kind = "print_label"
