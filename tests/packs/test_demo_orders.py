"""The orders that the demo shop once had, in its mailers: what is chosen now against then.

`demo_orders.txt` keeps what was ordered and the mailer that the program took before parts lay side
by side: one stack on the box of the largest part. No mailer had a price then: flat area stands
for it.
"""

from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from station.packs.choose import choose_mailer
from station.packs.messages import NEAR, PackAnswer, PackMailer, PackPart, PackProblem
from tests.measured import note

FILE = Path(__file__).with_name("demo_orders.txt")
BY_THE_OLD_RULE = 1223  # orders that fitted a smaller mailer, as it was counted then

Order = tuple[int, str, PackProblem]  # so many of them, the mailer then, what is asked


@cache
def read_orders() -> list[Order]:
    """Reads what was ordered, each kind of order once."""
    mailers: list[PackMailer] = []
    parts: dict[str, PackPart] = {}
    orders: list[Order] = []
    for line in FILE.read_text().splitlines():
        first, second, *rest = line.split()
        if first == "mailer":
            mailers.append(PackMailer(second, *map(float, rest)))
        elif first == "part":
            parts[second] = PackPart(second, *map(float, rest[:3]), 0, "small" in rest)
        elif first != "#":
            counts = (pieces.split(":") for pieces in rest)
            inside = tuple(parts[p]._replace(pieces=int(n)) for p, n in counts)
            asked = PackProblem(
                parts=inside, mailers=tuple(mailers), allowance_mm=10.0, gap_mm=1.0
            )
            orders.append((int(first), second, asked))
    return orders


def judge(answer: PackAnswer, asked: PackProblem, then: str) -> str:
    """Says how the mailer is by its flat area: smaller than then, the same, larger, none."""
    area = {m.name: m.length_mm * m.width_mm for m in asked.mailers}
    if not answer.mailer:
        return "none"
    was, now = area.get(then, float("inf")), area[answer.mailer]
    return "smaller" if now < was else "larger" if now > was else "the same"


@pytest.mark.slow
def test_most_orders_go_in_a_smaller_mailer_than_then():
    said: Counter[str] = Counter()
    for many, then, asked in read_orders():
        answer = choose_mailer(asked)
        said[judge(answer, asked, then)] += many
        base = min(answer.layers[0].size_mm)
        assert answer.size_mm[2] <= base + NEAR, f"higher than wide: {asked.parts}"
    assert sum(said.values()) == 1707
    assert said["none"] == 0
    assert said["smaller"] >= BY_THE_OLD_RULE
    assert said["larger"] <= 4  # small parts lie between larger ones by now
    note("Orders of the demo shop in a smaller mailer than then, of 1,707", f"{said['smaller']:,}",
         "≥ 1,223", "python -m pytest tests/packs/test_demo_orders.py")  # fmt: skip
