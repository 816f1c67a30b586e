"""Questions about a pack: which mailer it goes into, how its parts lie.

Which mailer and how is worked out by `station.packs` from the parts' boxes. Nothing here is
measured: the crew's hands decide.
"""

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from station.packs.choose import choose_mailer
from station.packs.messages import PackAnswer, PackMailer, PackPart, PackProblem
from station.queries.postage import Sent, find_postage, list_sendable, list_services
from station.queries.settings import find_shop
from station.queries.stock import take_in_order
from station.queries.supplies import is_used_up
from station.queries.weights import Pieces, Weight, weigh_parts
from station.shop.facts import Habit, Mailer, MailerForm, Part, Product
from station.shop.moves import Held
from station.shop.views import View, by_part

ASSUMED_MM = (100.0, 50.0)  # a part whose outline nobody has entered
OFTEN = 2  # times that people chose another mailer, from which on it is taken
OVERLAP_MM = 50.0  # of the wrap's ends
MOST = 100  # mailers that are looked through


class Stack(NamedTuple):
    """Parts that lie flat on each other, in layers.

    `guessed` is the name of a part without an outline: its size is only assumed. `spare_mm` a
    mailer is larger than it, in each direction.
    """

    lies: PackAnswer
    guessed: str
    spare_mm: float

    @property
    def thick_mm(self) -> float:
        """How thick it is."""
        return self.lies.size_mm[2]

    def find_inside(self, form: MailerForm) -> tuple[float, float]:
        """Finds the length and width that it needs inside; a mailer and a sleeve lie flat."""
        length, width, thick = self.lies.size_mm
        along, around = PackMailer("", 0, 0, 0, kind=form).find_room(thick, self.spare_mm)
        return (length - along, width - around)

    @property
    def wrap_m(self) -> float:
        """Metres of wrap for one turn around the length, the ends overlapping.

        Rounded up to a tenth of a metre; common practice, no source.
        """
        length, _, thick = self.lies.size_mm
        return math.ceil((2 * (length + thick) + OVERLAP_MM) / 100) / 10


class Parcel(NamedTuple):
    """Parts as they are packed: how they are stacked, the mailer, what both should weigh.

    The mailer is None where none is large enough. `used_up` is the one that would be taken, were
    any left: another stands for it; it stays where no other takes it. `sent` is the cheapest
    postage; None: no service takes it, or `is_rated` is False: nobody knows the shop's postage,
    or the weight.
    """

    stack: Stack
    mailer: Mailer | None
    weight: Weight
    sent: Sent | None = None
    is_rated: bool = False
    used_up: Mailer | None = None

    @property
    def price(self) -> float:
        """What it costs: its mailer and its postage, as far as they are known."""
        mailer = self.mailer.price if self.mailer else 0.0
        return mailer + (self.sent.price if self.sent else 0.0)


def plan_parcel(view: View, pieces: Pieces, lying: tuple[Held, ...] = ()) -> Parcel:
    """Plans how so many of each part are packed, in the cheapest mailer left that takes them.

    `lying` are the pieces themselves, by batch, where they are known.
    """
    inside = [(part, count) for part, count in pieces if count > 0]
    every = list_mailers(view)
    best = _plan_in(view, every, inside, lying)
    if best.mailer is None or not is_used_up(view, best.mailer.id):
        return best
    left = tuple(m for m in every if not is_used_up(view, m.id))
    other = _plan_in(view, left, inside, lying)
    return (other if other.mailer else best)._replace(used_up=best.mailer)


def _plan_in(
    view: View, every: tuple[Mailer, ...], inside: list[tuple[Part, int]], lying: tuple[Held, ...]
) -> Parcel:
    """Plans how parts are packed in the cheapest of these mailers."""
    mailers = {m.id: m for m in every}
    weight, services = weigh_parts(view, inside, None, lying), list_services(view)
    is_rated = bool(services) and not weight.unknown
    measured = tuple(measure_mailer(m) for m in mailers.values())
    lies = PackAnswer()
    if is_rated:
        rated = (o for m in measured for o in list_sendable(services, m, weight.grams))
        lies = _lay(view, inside, tuple(rated))
    if not lies.mailer:
        lies = _lay(view, inside, measured)
    guessed = next((part.name for part, _ in inside if not _has_size(part)), "")
    stack = Stack(lies, guessed, find_shop(view).mailer_spare_mm)
    habit = mailers.get(_find_habit(view, inside))
    mailer = habit or mailers.get(lies.mailer)
    if mailer is None:
        return Parcel(stack, mailer, weight)
    whole = weight._replace(grams=weight.grams + mailer.mass_g)
    if not is_rated:
        return Parcel(stack, mailer, whole)
    sent = find_postage(services, measure_mailer(mailer), weight.grams, stack.thick_mm)
    return Parcel(stack, mailer, whole, sent, is_rated)


def _lay(
    view: View, inside: Sequence[tuple[Part, int]], mailers: tuple[PackMailer, ...]
) -> PackAnswer:
    """Lays parts in the cheapest of some mailers."""
    shop = find_shop(view)
    return choose_mailer(
        PackProblem(
            parts=tuple(lay_out(part, count) for part, count in inside),
            mailers=mailers,
            allowance_mm=shop.mailer_spare_mm,
            gap_mm=shop.part_gap_mm,
        )
    )


def _find_habit(view: View, inside: Sequence[tuple[Part, int]]) -> str:
    """Finds the mailer that people took again and again for such a pack instead of another."""
    habit = view.get(Habit, name_contents([(part.id, count) for part, count in inside]))
    return habit.mailer if habit and habit.times >= OFTEN else ""


def name_contents(contents: Iterable[tuple[str, int]]) -> str:
    """Names what is in a pack, part by part in their order, whatever order they came in."""
    return " ".join(f"{part}:{count}" for part, count in sorted(contents))


def list_mailers(view: View) -> tuple[Mailer, ...]:
    """Lists the mailers in use."""
    return tuple(m for m in view.shelf(Mailer, "all", MOST) if m.active)


def list_left_mailers(view: View) -> tuple[Mailer, ...]:
    """Lists the mailers in use of which some are left; all in use where none is."""
    every = list_mailers(view)
    return tuple(m for m in every if not is_used_up(view, m.id)) or every


def lay_out(part: Part, count: int) -> PackPart:
    """Gives a part's box lying flat, the longer side first."""
    x, y = part.shape.box if part.shape and _has_size(part) else ASSUMED_MM
    return PackPart(part.id, max(x, y), min(x, y), part.thickness_mm, count, part.small)


def _has_size(part: Part) -> bool:
    """Whether the part has an outline, and one that goes around something."""
    return part.shape is not None and min(part.shape.box) > 0


def measure_mailer(mailer: Mailer) -> PackMailer:
    """Gives a mailer as packing measures it."""
    return PackMailer(
        mailer.id, mailer.length_mm, mailer.width_mm, mailer.thick_mm, mailer.mass_g,
        kind=mailer.form, price=mailer.price,
    )  # fmt: skip


def closes_over(view: View, mailer: Mailer, length: float, width: float, thick: float) -> bool:
    """Tells whether a mailer closes over a stack of that length, width and thickness."""
    spare = find_shop(view).mailer_spare_mm
    return mailer.active and measure_mailer(mailer).takes(length, width, thick, spare)


def take_share(view: View, order: str, share: Iterable[tuple[str, int]]) -> tuple[Held, ...]:
    """Takes a share of what lies in an order's open pack, by part; all of it where none is told.

    What lies first is taken first; fewer where there are not so many.
    """
    lying = view.stock(place=f"packing/{order}")
    each = [take_in_order(tuple(h for h in lying if h.part == p), n) for p, n in share]
    return tuple(h for taken in each for h in taken) if each else lying


def plan_product(view: View, product: Product) -> Parcel:
    """Plans how one set of a product is packed."""
    return plan_parcel(view, [(p, n) for part, n in product.parts if (p := view.get(Part, part))])


def plan_open_pack(view: View, order: str, share: Iterable[tuple[str, int]] = ()) -> Parcel:
    """Plans how what lies in an order's open pack now is packed; or only a `share` of it."""
    lying = take_share(view, order, share)
    pieces = [(p, n) for part, n in by_part(lying).items() if (p := view.get(Part, part))]
    return plan_parcel(view, pieces, lying)
