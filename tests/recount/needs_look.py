"""What needs a look, counted from the books: late orders, and what persons are to settle."""

import re
from collections.abc import Iterator

from station.shop.facts import Concern, Order
from tests.recount import benches
from tests.recount.books import Books
from tests.recount.read import Shown

LATE = re.compile(r"(\S+) orders? (?:is|are) late: (.*)")
BLOCKS = re.compile(r"Blocks (\S+) orders?(?:, (?:(\S+) of them|all) late)?: ([^,]+)")
CART = re.compile(r"(.+) should have gone at (\d\d:\d\d)")
HELD = re.compile(r"(\S+) batch(?:es)? (?:is|are) held")
IN_HOUSE = ("open", "packing", "waiting", "packed")
FIGURE = re.compile(r"\d+")


def late_orders(books: Books, now: str) -> list[str]:
    """Orders in the house, packed ones too, whose time has gone; the one due first at first."""
    late = [o for o in books.all(Order) if o.state in IN_HOUSE and o.due < now]
    return [o.id for o in sorted(late, key=lambda o: (o.due, o.id))]


def tell_raised(books: Books, now: str, words: str) -> Iterator[str]:
    """Tells what a sentence that raised itself says wrongly."""
    late = late_orders(books, now)
    if found := LATE.fullmatch(words):
        named = FIGURE.findall(found[2])
        if found[1] != str(len(late)) or named != late[: len(named)]:
            yield f"{words!r}, counted {len(late)}: {late[:4]}"
    elif found := BLOCKS.match(words):
        who = benches.blocked_in_turn(books).get(found[3], set())
        told = found[2] or (found[1] if "all late" in words else "0")
        of_them = sum(1 for order in late if order in who)
        if int(found[1]) > len(who) or int(told) > of_them:
            yield f"{words!r}, counted {len(who)} that lack it, {of_them} of them late"
    elif (found := CART.fullmatch(words)) and found[2] > now[11:16]:
        yield f"{words!r} at {now[11:16]}"


def open_concerns(books: Books) -> list[Concern]:
    """What persons are to settle."""
    return [c for c in books.all(Concern) if not c.settled]


def compare(books: Books, now: str, shown: Shown) -> Iterator[str]:
    """Tells what the list of concerns says wrongly: their sentences, and how many there are."""
    concerns = [str(c.text) for c in open_concerns(books)]
    raised = [row[0] for row in shown.rows if row[0] not in concerns]
    for words in raised:
        yield from (f"needs a look: {told}" for told in tell_raised(books, now, words))
    late = late_orders(books, now)
    count = re.search(r": (\d+)", shown.whole)
    if count and int(count[1]) < len(concerns) + bool(late):
        yield f"needs a look: {shown.whole}, counted {len(concerns)} and the late orders"
