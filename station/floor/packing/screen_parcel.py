"""Shows how a pack is packed: the stack in its mailer, what it should weigh."""

from itertools import groupby
from typing import NamedTuple

from station.floor.packing.in_two import find_two, say_why
from station.floor.packing.work import PackingHand
from station.packs.messages import PackLayer, PackPile
from station.queries.damage import count_of_stack
from station.queries.mailers import Parcel, Stack, plan_open_pack, plan_parcel
from station.queries.orders import Need
from station.queries.supplies import count_left, is_used_up
from station.queries.two_packs import Contents, TwoPacks
from station.shop.faces import Block, Hint, Layer, MailerDrawing, Pairs, Remark, Tone
from station.shop.facts import Mailer, Order, Part
from station.shop.views import View
from station.shop.words import Say, figure, length, mass, metres, name_first, say

NAMED = 3  # parts that show on the scale, or do not
MOST_ASSUMED = 2  # parts whose density is assumed, beside the weight

Pair = tuple[Say | str, Say | str]


class Planned(NamedTuple):
    """A pack as it is planned: its pieces; what of the open pack it is, none told: all of it."""

    parcel: Parcel
    pieces: list[tuple[Part, int]]
    share: Contents = ()


def show_parcel(hand: PackingHand, found: tuple[Need, ...], view: View) -> tuple[Block, ...]:
    """Shows how the whole order is packed: the stack in the smallest mailer that takes it."""
    pieces = [(w.part, w.wanted) for w in found if w.wanted]
    order = view.get(Order, hand.subject)
    if not pieces or order is None:
        return ()
    names = {w.part.id: w.part.name for w in found}
    if two := find_two(hand, order, view):
        share = dict(two.first)
        pieces = [(part, n) for part, _ in pieces if (n := share.get(part.id, 0))]
        first = Planned(two.parcels[0], pieces, two.first)
        return (_tell_two(order, two), *_show_one(hand, first, names, view))
    return _show_one(hand, Planned(plan_parcel(view, pieces), pieces), names, view)


def _tell_two(order: Order, two: TwoPacks) -> Hint:
    """Tells that an order goes in two packs, and why; the first of them is shown."""
    title = say("Two packs: {why}", why=say_why(two))
    note = say("this is pack {n}", n=len(order.packs) + 1)
    return Hint(title=title, note=note)


def _show_one(
    hand: PackingHand, planned: Planned, names: dict[str, str], view: View
) -> tuple[Block, ...]:
    """Shows one pack: its mailer, the stack in it, what it should weigh."""
    parcel = planned.parcel
    weights = _compare_weights(hand, planned, view)
    chosen = view.get(Mailer, hand.work.mailer) or parcel.mailer
    if chosen:
        weights = (*weights, *_tell_damaged(view, chosen, planned.pieces))
    if chosen == parcel.mailer:
        weights = (*weights, *_tell_postage(parcel))
    named = _name_mailer(view, chosen, parcel) if chosen and not parcel.stack.guessed else ()
    is_named = bool(named) and chosen == parcel.mailer
    return (*named, *draw_parcel(parcel, names, weights, is_named=is_named))


def _name_mailer(view: View, mailer: Mailer, parcel: Parcel) -> tuple[Block, ...]:
    """Names the mailer that is taken, where it is and how many are left, in large."""
    left, is_out = count_left(view, mailer.id), is_used_up(view, mailer.id)
    place, there = say("place {place}", place=mailer.hangs), say("{n} left", n=left)
    note: Say | str = place if mailer.hangs else ""
    if left or mailer.mark or is_out:
        note = say("{place} · {left}", place=place, left=there) if mailer.hangs else there
    low = left < mailer.mark or is_out
    if out := parcel.used_up:
        what = say("no other takes it: order it, or count again")
        if out != mailer:
            what = say("{name}: 0 left, order it", name=out.name)
        note = say("{note} · {what}", note=note, what=what) if note else what
    tone: Tone = "stop" if is_out else "attention" if low or out else ""
    return (Hint(title=mailer.name, note=note, tone=tone),)


def _tell_used_up(parcel: Parcel) -> tuple[Pair, ...]:
    """Tells which mailer would be taken, were any left."""
    out = parcel.used_up
    return ((out.name, say("0 left: order it, or count again")),) if out else ()


def _tell_postage(parcel: Parcel) -> tuple[Pair, ...]:
    """Tells how it goes, for how much, where the shop's postage is known."""
    if not parcel.is_rated:
        return ()
    if parcel.sent is None:
        return ((say("goes as"), say("nothing takes it, not even in two: close it by parts")),)
    price = figure(parcel.sent.price, 2)
    return ((say("goes as"), say("{name} · {price}", name=parcel.sent.name, price=price)),)


def _tell_damaged(view: View, mailer: Mailer, pieces: list[tuple[Part, int]]) -> tuple[Pair, ...]:
    """Tells how many packs of just these pieces were damaged in this mailer."""
    n = count_of_stack(view, mailer.id, [(part.id, count) for part, count in pieces])
    return (
        ((say("damaged, packed so"), say("{n} {n|pack|packs}: wrap it well", n=n)),) if n else ()
    )


def draw_parcel(
    parcel: Parcel,
    names: dict[str, str],
    weights: tuple[Pair, ...] = (),
    *,
    is_named: bool = False,
) -> tuple[Block, ...]:
    """Draws a stack in its mailer, with what is to be known of it; `names` of parts by number.

    `is_named`: the mailer's name stands above already.
    """
    stack, mailer = parcel.stack, parcel.mailer
    if stack.guessed:
        text = say("{part} has no outline in the book. Choose by eye.", part=stack.guessed)
        remark = Remark(tone="attention", title=say("Which mailer: can't tell"), text=text)
        return (remark, Pairs(rows=weights)) if weights else (remark,)
    thick, wrap = _say_thick(stack)
    long, wide = (
        length(side, 0) for side in stack.find_inside(mailer.form if mailer else "mailer")
    )
    if mailer is None:
        text = say("It needs {l} × {w} mm flat. Split it, or wrap it by hand.", l=long, w=wide)
        remark = Remark(tone="attention", title=say("No mailer is large enough"), text=text)
        return (remark, Pairs(rows=(thick, wrap, *weights)))
    drawing = MailerDrawing(
        name=mailer.name,
        length_mm=mailer.length_mm,
        width_mm=mailer.width_mm,
        layers=_draw_layers(stack, names),
    )
    how: Pair = (say("stack"), _say_how(stack))
    needs = say("it needs, inside") if mailer.form == "box" else say("it needs, flat")
    flat: Pair = (needs, say("{l} × {w} mm", l=long, w=wide))
    name = Say() if is_named else say("Mailer {name}", name=mailer.name)
    out = () if is_named else _tell_used_up(parcel)
    return (drawing, Pairs(title=name, rows=(*out, *weights, how, flat, thick, wrap)))


def _say_thick(stack: Stack) -> tuple[Pair, Pair]:
    """Says how thick a stack is, and how much wrap goes around it."""
    return (
        (say("thick"), say("{t} mm", t=length(stack.thick_mm, 1))),
        (say("wrap"), say("one turn, {m} m", m=metres(stack.wrap_m, 1))),
    )


def _say_how(stack: Stack) -> Say:
    """Says what to look for in a stack, beside the drawing."""
    layers = len(stack.lies.layers)
    if stack.lies.loose:  # a tower, or small parts outside
        return say("{n} {n|layer|layers}: wrap it well", n=layers)
    return say("{n} {n|layer|layers}, large parts outermost", n=layers)


def _draw_layers(stack: Stack, names: dict[str, str]) -> tuple[Layer, ...]:
    """Draws the layers from the bottom up; equal ones on each other are drawn once."""
    levels = [list(same) for _, same in groupby(stack.lies.layers, key=_list_counts)]
    return tuple(
        Layer(
            label=_name_layers(same, names) if n == 0 else "",
            x_mm=pile.x_mm,
            y_mm=pile.y_mm,
            length_mm=pile.length_mm,
            width_mm=pile.width_mm,
            level=number,
            piece=_name_pile(pile, names),
        )
        for number, same in enumerate(levels)
        for n, pile in enumerate(same[0].piles)
    )


def _name_pile(pile: PackPile, names: dict[str, str]) -> str:
    """Names the part of a pile, and how many lie on each other."""
    name = names.get(pile.part, pile.part)
    return f"{pile.pieces} × {name}" if pile.pieces > 1 else name


def _list_counts(layer: PackLayer) -> tuple[tuple[str, int], ...]:
    """Lists how many of each part a layer has."""
    counts: dict[str, int] = {}
    for pile in layer.piles:
        counts[pile.part] = counts.get(pile.part, 0) + pile.pieces
    return tuple(counts.items())


def _name_layers(same: list[PackLayer], names: dict[str, str]) -> str:
    """Names what lies in a layer, or in so many equal ones."""
    inside = " + ".join(f"{n} {names.get(part, part)}" for part, n in _list_counts(same[0]))
    return f"{len(same)} × ({inside})" if len(same) > 1 else inside


def _compare_weights(hand: PackingHand, planned: Planned, view: View) -> tuple[Pair, ...]:
    """Shows what the whole pack should weigh, and what the scale shows of it so far."""
    weight = planned.parcel.weight
    should = say("{g} ± {p} g", g=mass(weight.grams),
                 p=mass(weight.plus, weight.grams))  # fmt: skip
    if weight.unknown:
        should = say("can't tell: {part}", part=weight.unknown)
    read = hand.work.scale
    shown: Say | str = "—"
    if read:
        agrees = plan_open_pack(view, hand.subject, planned.share).weight.agrees(read)
        shown = say("{g} g: look again", g=mass(read))
        if agrees is None:
            shown = say("{g} g: can't tell", g=mass(read))
        elif agrees:
            shown = say("{g} g, as it should be", g=mass(read))
    seen: list[Pair] = []
    if weight.shows and not weight.unknown:
        seen.append((say("scale misses none of"), name_first(list(weight.shows), NAMED)))
    if weight.hides and not weight.unknown:
        seen.append((say("scale may miss one of"), name_first(list(weight.hides), NAMED)))
    assumed = tuple(
        (say("{part}: density as", part=part), good)
        for part, good in weight.assumed[:MOST_ASSUMED]
    )
    return ((say("should weigh, no wrap"), should), *seen, *assumed, (say("on the scale"), shown))
