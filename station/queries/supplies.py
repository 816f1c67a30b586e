"""Questions about what packs take: mailers, wrap, labels; how many are left, which run low."""

from typing import NamedTuple

from station.queries.settings import find_shop
from station.shop.facts import Mailer
from station.shop.lengths import are_in_inches, name_unit, to_kept, to_shown
from station.shop.moves import SUPPLY, Move, move
from station.shop.views import View, total
from station.shop.words import Say, say

MOST = 100  # mailers that are looked through
WRAP, LABELS = "wrap", "labels"
TENTHS = 10  # of a metre: wrap is moved by them


class Supply(NamedTuple):
    """Something that packs take: its number, what it is called, the mark, how many are left.

    Wrap is counted in whole metres, or feet in a shop of inches.
    """

    id: str
    name: Say | str
    mark: int
    left: int

    @property
    def is_low(self) -> bool:
        """Whether new ones are to be bought."""
        return self.left < self.mark


def list_supplies(view: View) -> tuple[Supply, ...]:
    """Lists mailers in use, wrap and labels."""
    shop = find_shop(view)
    mailers = [
        Supply(m.id, m.name, m.mark, count_left(view, m.id))
        for m in view.shelf(Mailer, "all", MOST)
        if m.active
    ]
    wrap = Supply(
        WRAP,
        say("wrap, {unit}", unit=name_unit("m")),
        round(to_shown(shop.wrap_mark_m, "m")),
        _show_wrap(count_left(view, WRAP)),
    )
    labels = Supply(LABELS, say("labels"), shop.label_mark, count_left(view, LABELS))
    return (*mailers, wrap, labels)


def _show_wrap(tenths: int) -> int:
    """Gives tenths of a metre in whole metres, begun ones left out; in the nearest feet."""
    return round(to_shown(tenths / TENTHS, "m")) if are_in_inches() else tenths // TENTHS


def to_tenths(wrap: int) -> int:
    """Gives whole metres of wrap, or feet in a shop of inches, in tenths of a metre."""
    return round(to_kept(wrap, "m") * TENTHS)


def find_supply(view: View, number: str) -> Supply | None:
    """Finds a mailer, wrap or labels by its number; None: packs take no such thing."""
    return next((s for s in list_supplies(view) if s.id == number), None)


def name_supply(number: str) -> str:
    """Names what stands for the batch where a supply lies."""
    return f"supply-{number}"


def count_left(view: View, number: str) -> int:
    """Counts what is left of a mailer or of labels; of wrap in tenths of a metre."""
    return total(view.stock(batch=name_supply(number), place="supplies"), part=SUPPLY)


def is_used_up(view: View, number: str) -> bool:
    """Tells whether none of a mailer or of labels is left; what was never counted may be there."""
    if count_left(view, number):
        return False
    known = bool(view.stock(batch=name_supply(number)))  # what was used or counted off
    return known or view.last(f"mailer/{number}", "count_supplies") is not None


def use_up(view: View, number: str, quantity: int) -> tuple[Move, ...]:
    """Uses up what a pack takes, as far as the book has it: what was never counted stays so."""
    taken = min(quantity, count_left(view, number))
    return (move(SUPPLY, taken, "supplies", "used", name_supply(number)),) if taken > 0 else ()
