"""Draws packing problems from the trade: flat parts, mailers, sleeves and boxes, services."""

import random

import msgspec

from station.commands.pack import PackingProblem

KINDS = (1, 2, 3, 4, 5, 6, 2, 3, 8, 12, 16, 40)  # part types of the problems, one after another
THICK = (3, 4, 6, 6.5, 9, 12)  # mm, of sheet goods
DENSITY = 0.00065  # g a mm³: plywood, common practice, no source
STEPS_G = (500, 1000, 2000, 5000, 10000, 20000, 31500)


def draw_problem(chance: random.Random, kinds: int) -> PackingProblem:
    """Draws a problem of so many part types and twelve containers."""
    return msgspec.convert(
        {
            "parts": _draw_parts(chance, kinds),
            "containers": [_draw_container(chance, n) for n in range(12)],
            "services": [_draw_service(chance, n) for n in range(chance.randint(1, 3))],
            "max_packs": chance.choice((1, 2)),
        },
        PackingProblem,
    )


def draw_few(chance: random.Random) -> PackingProblem:
    """Draws a problem of one to six pieces of one to four parts, in containers that are narrow."""
    kinds = chance.randint(1, 4)
    problem = draw_problem(chance, kinds)
    pieces = chance.choices(range(kinds), k=chance.randint(1, 6))
    for n, part in enumerate(problem.parts):
        part.count = pieces.count(n)
        part.small = part.small or chance.random() < 0.2
    problem.parts = [part for part in problem.parts if part.count]
    longest = max(part.length for part in problem.parts)
    for container in problem.containers[::2]:  # just as long as the longest needs, or hardly so
        container.length = round(longest + chance.randrange(0, 160))
        container.width = min(container.width, container.length)
        container.thickness = chance.choice((12, 20, 30, 45))
    return problem


def _draw_parts(chance: random.Random, kinds: int) -> list[dict[str, object]]:
    many = kinds > 12
    thick = chance.sample(THICK, chance.randint(1, 3))
    parts = []
    for n in range(kinds):
        sides = chance.randrange(60, 600), chance.randrange(20, 250)
        length, width = (round(side * (0.4 if many else 1)) for side in (max(sides), min(sides)))
        high = chance.choice(thick)
        parts.append(
            {
                "part": f"p{n}",
                "length": length,
                "width": width,
                "thickness": high,
                "mass": round(length * width * high * DENSITY, 1),
                "count": chance.choice((1, 1, 2, 3) if many else (1, 1, 2, 2, 3, 4, 6, 8, 12, 24)),
                "small": length * width < 9000 and chance.random() < 0.5,
            }
        )
    return parts


def _draw_container(chance: random.Random, number: int) -> dict[str, object]:
    kind = chance.choice(("mailer", "mailer", "sleeve", "box"))
    length = chance.randrange(200, 900)
    width = chance.randrange(150, min(length, 600) + 1)
    thick = chance.choice((20, 30, 45, 60, 80, 120, 160, 250))
    price = 0.3 + length * width * 6e-6 + thick * 0.004 + chance.random() * 0.3
    return {
        "container": f"c{number}",
        "kind": kind,
        "length": length,
        "width": width,
        "thickness": thick,
        "flap": 30 if kind == "mailer" and chance.random() < 0.5 else 0,
        "allowance": chance.choice((0, 5, 10)),
        "mass": round(length * width * 0.0006 + 30),
        "price": round(price, 2),
    }


def _draw_service(chance: random.Random, number: int) -> dict[str, object]:
    price, steps = chance.uniform(2, 4), []
    for to in STEPS_G:
        steps.append({"to_g": to, "price": round(price, 2)})
        price += chance.uniform(0.5, 3)
    return {
        "service": f"s{number}",
        "length": chance.choice((None, 1200, 600)),
        "width": chance.choice((None, 600)),
        "thickness": chance.choice((None, None, 50, 150)),
        "length_girth": chance.choice((None, 2000, 3000)),
        "divisor": chance.choice((None, 5000, 6000, None)),
        "steps": steps,
    }
