"""The mailer that is chosen and how the parts lie, against a checker and against trying all."""

import random
from itertools import product

import pytest

from station.packs.choose import choose_mailer
from station.packs.messages import PackAnswer, PackMailer, PackPart, PackProblem
from station.packs.stack import has_between, is_steady

MAILERS = (
    PackMailer("Flat 250 × 180", 250, 180, 25, 22),
    PackMailer("Flat 350 × 250", 350, 250, 35, 45),
    PackMailer("Flat 450 × 320", 450, 320, 45, 80),
    PackMailer("Long 650 × 150", 650, 150, 45, 95),
    PackMailer("Long 800 × 300", 800, 300, 160, 160),
)


def problem(*parts: PackPart, mailers: tuple[PackMailer, ...] = MAILERS) -> PackProblem:
    """These parts and the mailers of the demo shop, with its allowance and gap."""
    return PackProblem(parts=parts, mailers=mailers, allowance_mm=10, gap_mm=1)


def find_faults(asked: PackProblem, answer: PackAnswer) -> list[str]:
    """Lists what is wrong with an answer, by geometry alone."""
    faults, counts = [], dict.fromkeys((p.name for p in asked.parts), 0)
    sizes = {p.name: p for p in asked.parts}
    length, width, thick = answer.size_mm
    for layer in answer.layers:
        for n, pile in enumerate(layer.piles):
            part = sizes[pile.part]
            counts[pile.part] += pile.pieces
            sides = {(part.length_mm, part.width_mm), (part.width_mm, part.length_mm)}
            if (pile.length_mm, pile.width_mm) not in sides or pile.pieces < 1:
                faults.append(f"{pile} is not its part")
            if pile.pieces * part.thick_mm > layer.height_mm + 1e-6:
                faults.append(f"{pile} is higher than its layer")
            if not (
                -1e-6 <= pile.x_mm <= length - pile.length_mm + 1e-6
                and -1e-6 <= pile.y_mm <= width - pile.width_mm + 1e-6
            ):
                faults.append(f"{pile} sticks out")
            faults += [f"{pile} on {o}" for o in layer.piles[:n] if cross(pile, o)]
    if counts != {p.name: p.pieces for p in asked.parts}:
        faults.append(f"{counts} pieces")
    if answer.mailer:
        mailer = next(m for m in asked.mailers if m.name == answer.mailer)
        if not mailer.takes(length, width, thick, asked.allowance_mm):
            faults.append("the mailer does not close")
        if not answer.loose:
            faults += find_untidy(asked, answer)
    return faults


def cross(a, b) -> bool:
    """Whether two piles lie where the other lies."""
    return (
        a.x_mm < b.x_mm + b.length_mm - 1e-6
        and b.x_mm < a.x_mm + a.length_mm - 1e-6
        and a.y_mm < b.y_mm + b.width_mm - 1e-6
        and b.y_mm < a.y_mm + a.width_mm - 1e-6
    )


def find_untidy(asked: PackProblem, answer: PackAnswer) -> list[str]:
    """Lists which rule of a stack is not kept."""
    faults = [] if is_steady(answer.layers) else ["a tower"]
    small = {p.name for p in asked.parts if p.small}
    if has_between(asked.parts):
        outside = [p.part for i in (0, -1) for p in answer.layers[i].piles]
        faults += [f"{name} lies outside" for name in outside if name in small]
    return faults


def test_sticks_lie_side_by_side_and_not_as_a_tower():
    """16 of 298 × 45 and 8 of 398 × 45, 6.5 mm thick: four layers of six, 26 mm."""
    asked = problem(PackPart("PS-300", 298, 45, 6.5, 16), PackPart("SS-400", 398, 45, 6.5, 8))
    answer = choose_mailer(asked)
    assert (answer.mailer, answer.loose) == ("Flat 450 × 320", False)
    assert answer.size_mm[2] == 26.0
    assert [sum(p.pieces for p in layer.piles) for layer in answer.layers] == [6, 6, 6, 6]
    assert find_faults(asked, answer) == []


PRICES = (0.22, 0.34, 0.48, 0.62, 1.1)


def test_where_every_mailer_has_a_price_the_cheapest_is_taken():
    """16 picks of 300 × 25 and 8 sheds of 400 × 45: four layers of four picks and two sheds.

    424 × 294 of room at 26 mm: 2 × 45 + 4 × 25 and five gaps are 195. By flat area alone the
    long one takes them, 39 mm high; so it does while one mailer has no price.
    """
    parts = PackPart("PS-300", 300, 25, 6.5, 16), PackPart("SS-400", 400, 45, 6.5, 8)
    priced = tuple(m._replace(price=p) for m, p in zip(MAILERS, PRICES, strict=True))
    asked = problem(*parts, mailers=priced)
    answer = choose_mailer(asked)
    assert (answer.mailer, answer.size_mm[2], answer.loose) == ("Flat 450 × 320", 26.0, False)
    each = [{p.part: 0 for p in layer.piles} for layer in answer.layers]
    for counts, layer in zip(each, answer.layers, strict=True):
        for pile in layer.piles:
            counts[pile.part] += pile.pieces
    assert each == [{"PS-300": 4, "SS-400": 2}] * 4
    assert find_faults(asked, answer) == []
    unknown = (priced[0], priced[1]._replace(price=0.0), *priced[2:])
    assert choose_mailer(problem(*parts, mailers=unknown)).mailer == "Long 650 × 150"


# Worked out by hand: the room is the mailer's inside less thickness and 10 mm, each way.
@pytest.mark.parametrize(
    ("parts", "mailer", "thick"),
    [
        # 234 × 164 of room at 6: one of 230 × 160 lies in it
        ([PackPart("A", 230, 160, 6, 1)], "Flat 250 × 180", 6),
        # 228 × 158 at 12: not two on each other; turned, 321 × 230 beside each other in 334 × 234
        ([PackPart("A", 230, 160, 6, 2)], "Flat 350 × 250", 6),
        # 234 × 164: 8 rows of 20 with 7 gaps are 167, so 7 a layer; two layers, 228 × 158
        ([PackPart("A", 220, 20, 6, 8)], "Flat 250 × 180", 12),
        # thin ones in piles of two beside the thick one
        ([PackPart("A", 100, 100, 6, 1), PackPart("B", 100, 50, 3, 4)], "Flat 250 × 180", 6),
        # only the long one is long enough
        ([PackPart("A", 600, 100, 9, 2)], "Long 650 × 150", 18),
        # 325 × 225 at 9: one strip
        ([PackPart("A", 300, 20, 9, 1)], "Flat 350 × 250", 9),
        # 228 × 158 at 12: two layers, each of 2 × 70 and 1 × 60 in rows of 200
        ([PackPart("A", 200, 35, 6, 4), PackPart("B", 200, 60, 6, 2)], "Flat 250 × 180", 12),
        # 322 × 222 at 18: two of 160 × 200 beside each other are 321 × 200; three layers
        ([PackPart("A", 200, 160, 6, 6)], "Flat 350 × 250", 18),
    ],
)
def test_worked_out_by_hand(parts, mailer, thick):
    asked = problem(*parts)
    answer = choose_mailer(asked)
    assert (answer.mailer, answer.size_mm[2]) == (mailer, thick)
    assert find_faults(asked, answer) == []


def test_small_parts_lie_between_larger_ones():
    asked = problem(PackPart("A", 200, 100, 6, 2), PackPart("B", 60, 20, 6, 9, small=True))
    answer = choose_mailer(asked)
    assert [{p.part for p in layer.piles} for layer in answer.layers] == [{"A"}, {"B"}, {"A"}]
    assert find_faults(asked, answer) == []


def test_a_tower_is_built_only_where_nothing_else_closes():
    one = PackMailer("narrow", 340, 100, 80)
    answer = choose_mailer(problem(PackPart("A", 250, 20, 10, 6), mailers=(one,)))
    assert (answer.mailer, answer.loose) == ("narrow", False)
    answer = choose_mailer(problem(PackPart("A", 250, 20, 10, 7), mailers=(one,)))
    assert answer.mailer == "narrow"


def test_nothing_and_too_much():
    assert choose_mailer(problem()) == PackAnswer()
    too_long = problem(PackPart("A", 900, 100, 6, 2))
    answer = choose_mailer(too_long)
    assert (answer.mailer, answer.size_mm) == ("", (900, 100, 12))
    assert find_faults(too_long, answer) == []


# --- whatever is asked


def draw(rng: random.Random, kinds: int, pieces: int) -> PackProblem:
    """So many pieces of so many kinds, and twelve mailers, by chance."""
    counts = [1] * kinds
    for _ in range(pieces - kinds):
        counts[rng.randrange(kinds)] += 1
    parts = tuple(
        PackPart(str(k), rng.randint(30, 400), rng.randint(10, 120), rng.choice((3, 6, 6.5, 9)),
                 count, small=rng.random() < 0.3)
        for k, count in enumerate(counts)
    )  # fmt: skip
    mailers = tuple(
        PackMailer(str(n), rng.randint(200, 900), rng.randint(150, 500), rng.randint(20, 60))
        for n in range(12)
    )
    return problem(*parts, mailers=mailers)


@pytest.mark.slow
def test_every_answer_is_sound_and_the_same_again():
    rng = random.Random(17)
    for _ in range(150):
        asked = draw(rng, rng.randint(1, 6), rng.randint(6, 40))
        answer = choose_mailer(asked)
        assert find_faults(asked, answer) == []
        choose_mailer.cache_clear()
        assert choose_mailer(asked) == answer


# --- the twin: every way is tried


@pytest.mark.slow
def test_no_way_is_cheaper_than_what_is_chosen():
    """Up to five pieces, as thick as each other: what trying all finds, this finds too."""
    rng, dearer = random.Random(5), 0
    for _ in range(120):
        kinds = rng.randint(1, 3)
        pieces = rng.randint(kinds, 5)
        asked = draw(rng, kinds, pieces)
        parts = tuple(
            p._replace(width_mm=rng.randint(60, 120), length_mm=rng.randint(60, 300), thick_mm=6,
                       small=False)
            for p in asked.parts
        )  # fmt: skip
        asked = problem(*parts, mailers=asked.mailers)
        best = try_all(asked)
        found = choose_mailer(asked).mailer
        assert (not found) == (best is None)
        if best is not None:
            chosen = next(m for m in asked.mailers if m.name == found)
            assert chosen.length_mm * chosen.width_mm >= best - 1e-6
            dearer += chosen.length_mm * chosen.width_mm > best + 1e-6
    assert dearer == 0


def try_all(asked: PackProblem) -> float | None:
    """The flat area of the smallest mailer that any way of laying the pieces fits."""
    pieces = [(p.length_mm, p.width_mm) for p in asked.parts for _ in range(p.pieces)]
    for mailer in sorted(asked.mailers, key=lambda m: m.length_mm * m.width_mm):
        for layers in range(1, len(pieces) + 1):
            thick = layers * 6
            room = (mailer.length_mm - thick - 10, mailer.width_mm - thick - 10)
            if thick <= mailer.thick_mm and any(
                all(lies(tuple(p for p, n in zip(pieces, where, strict=True) if n == layer), room)
                    for layer in range(layers))
                for where in product(range(layers), repeat=len(pieces))
            ):  # fmt: skip
                return mailer.length_mm * mailer.width_mm
    return None


def lies(pieces, room, placed=()) -> bool:
    """Whether pieces fit beside each other in a room: each at a corner that others leave."""
    if not pieces:
        return True
    xs = {0.0, *(x + length + 1 for x, _, length, _ in placed)}
    ys = {0.0, *(y + width + 1 for _, y, _, width in placed)}
    for n, piece in enumerate(pieces):
        if piece in pieces[:n]:
            continue
        rest = pieces[:n] + pieces[n + 1 :]
        for (length, width), x, y in product({piece, piece[::-1]}, xs, ys):
            inside = x + length <= room[0] + 1e-6 and y + width <= room[1] + 1e-6
            if (
                inside
                and all(
                    x >= a + c + 1 - 1e-6
                    or a >= x + length + 1 - 1e-6
                    or y >= b + d + 1 - 1e-6
                    or b >= y + width + 1 - 1e-6
                    for a, b, c, d in placed
                )
                and lies(rest, room, (*placed, (x, y, length, width)))
            ):
                return True
    return False
