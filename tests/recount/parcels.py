"""What must stand about how an order is packed: its stack, its mailer, its wrap, its weight.

The rules are those of the trade, common practice, no source: a mailer lying flat is as long as
the stack is long and thick together, and a little more; wrap goes once around and laps over.
"""

import math
import re

from station.shop.facts import Mailer, Material, Order, Pack, Part, Product, Shop
from tests.recount import figures as fig
from tests.recount import trade
from tests.recount.books import Books
from tests.recount.read import Shown
from tests.recount.rules import At, Look, Rule

MORE_MM, LAP_MM = 10.0, 50.0  # that a mailer must be larger, that the ends of the wrap lap
LIKE_MM = 0.25  # a sheet good as thick as the part
NEAR_MM, ROUND_MM = 0.01, 0.06  # what is as near is the same; what is told is rounded
GROUP = re.compile(r"(?:(\d+) × \((.*)\)|(.*))")


def _order(look: Look) -> Order | None:
    return look.books.get(Order, look.hand.subject)


def _wants(look: Look) -> dict[str, int]:
    """Pieces of each part that are packed: of the order in hand, of a set for the shelf."""
    order, work = _order(look), look.hand.work
    product = look.books.get(Product, getattr(work, "shelf", ""))
    if order is None and product:
        return dict(product.parts)
    wanted = {p: n for p, n in trade.want_open(look.books, order).items() if n} if order else {}
    return _find_first(look, wanted) if look.find("hint", "Two packs") else wanted


def _find_first(look: Look, wanted: dict[str, int]) -> dict[str, int]:
    """Pieces of the first of two packs as it is drawn; no more than are wanted."""
    drawn: dict[str, int] = {}
    for many, counts, _ in _find_layers(look):
        for name, n in counts.items():
            part = trade.find_part(look.books, name)
            drawn[part] = min(wanted.get(part, 0), drawn.get(part, 0) + many * n)
    return drawn


Layers = list[tuple[int, dict[str, int], list[tuple[float, ...]]]]


def _find_layers(look: Look) -> Layers:
    """Each group of layers: how many alike, pieces of each part in one, its rectangles."""
    return look.once("layers", lambda: _read_layers(look))


def _read_layers(look: Look) -> Layers:
    shown = look.find("mailer", "layers")
    found: dict[str, tuple[int, dict[str, int], list[tuple[float, ...]]]] = {}
    for label, x, y, length, width, level in shown.rows if shown else ():
        if label:
            read = GROUP.fullmatch(label)
            assert read
            counts: dict[str, int] = {}
            for each in (read[2] or read[3]).split(" + "):
                n, _, name = each.partition(" ")
                counts[name] = counts.get(name, 0) + int(n)
            found[level] = (int(read[1] or 1), counts, [])
        found[level][2].append((float(x), float(y), float(length), float(width)))
    return list(found.values())


def _size(look: Look) -> tuple[float, float]:
    """Length and width of the stack as it is drawn, mm."""
    boxes = [box for _, _, boxes in _find_layers(look) for box in boxes]
    return max(x + long for x, _, long, _ in boxes), max(y + wide for _, y, _, wide in boxes)


def _is_right(at: At) -> str:
    """The drawing: all pieces of the order and no other, none on another in its layer."""
    return at.look.once("drawn wrong", lambda: _find_wrong(at.look)) or at.row[at.k]


def _find_wrong(look: Look) -> str:
    groups, books = _find_layers(look), look.books
    inside: dict[str, int] = {}
    for many, counts, boxes in groups:
        for name, n in counts.items():
            inside[name] = inside.get(name, 0) + many * n
        for k, a in enumerate(boxes):
            if any(_overlap(a, b) for b in boxes[:k]):
                return f"pieces on each other: {a}"
    wanted = {trade.name(books, p): n for p, n in _wants(look).items()}
    return "" if inside == wanted else f"{inside} drawn, wanted {wanted}"


def _overlap(a: tuple[float, ...], b: tuple[float, ...]) -> bool:
    return all(min(a[i] + a[i + 2], b[i] + b[i + 2]) - max(a[i], b[i]) > NEAR_MM for i in (0, 1))


def find_mailer(look: Look) -> Mailer | None:
    """The mailer that a stack is drawn in: named over its figures, or in large above them."""
    if not look.find("mailer", "size"):
        return None
    titled = look.find("pairs", "Mailer")
    if titled:
        names = [titled.whole.removeprefix("Mailer ")]
    else:
        names = [shown.rows[0][0] for shown in look.face if shown.kind == "hint"]
    return next((m for m in look.books.all(Mailer) if m.name in names), None)


def _mailer(at: At) -> str | None:
    """The mailer that is drawn is as large as the one that is named."""
    mailer = find_mailer(at.look)
    return f"{(mailer.length_mm, mailer.width_mm)[at.k]:g}" if mailer else None


def _left_there(at: At) -> str | None:
    """How many are left of the mailer that is named in large, its place, and which is used up."""
    every = {m.name: m for m in at.books.all(Mailer)}
    mailer = every.get(at.row[0])
    if mailer is None:
        return None
    there = f"{fig.n(count_left(at.books, mailer.id))} left"
    there = f"place {mailer.hangs} · {there}" if mailer.hangs else there
    out = re.search(r" · (.+): 0 left, order it$", at[0])
    if out and out[1] in every and not count_left(at.books, every[out[1]].id):
        return there + out[0]
    return there


def _read_pair(shown: Shown, label: str) -> str:
    return next((row[1] for row in shown.rows if row[0] == label), "")


def _layers(at: At) -> str:
    return re.sub(r"^\d+ layers?", fig.of(sum(m for m, _, _ in _find_layers(at.look)), "layer"),
                  at[0])  # fmt: skip


def _needs_flat(at: At) -> str | None:
    """Length and width of the mailer that is needed, from the drawing and the thickness."""
    if not _find_layers(at.look) or at.row[0] != "it needs, flat":
        return None
    thick = float(_read_pair(at.shown, "thick").split()[0])
    length, width = (side + thick + MORE_MM for side in _size(at.look))
    mailer = find_mailer(at.look)
    if not mailer or thick > mailer.thick_mm + NEAR_MM:
        return f"{mailer} does not close over {thick}"
    if not any(a <= mailer.length_mm + ROUND_MM and b <= mailer.width_mm + ROUND_MM
               for a, b in ((length, width), (width, length))):  # fmt: skip
        return f"{length} × {width} mm, larger than {mailer.name}"
    return f"{round(length)} × {round(width)} mm"


def _thick(at: At) -> str | None:
    """The thickness of a stack: a sum of its parts' own, between the thickest and all of them."""
    groups, wants, told = _find_layers(at.look), _wants(at.look), float(at[1])
    parts = {p: fact.thickness_mm for p in wants if (fact := at.books.get(Part, p))}
    thicks = {trade.name(at.books, p): mm for p, mm in parts.items()}
    least = sum(many * max(thicks[name] for name in counts) for many, counts, _ in groups)
    most = sum(n * parts[p] for p, n in wants.items() if p in parts)
    if not least - ROUND_MM <= told <= most + ROUND_MM:
        return f"{least:.1f} mm at least, {most:.1f} mm at most"
    sums = {0.0}
    for mm in set(parts.values()):
        sums = {s + n * mm for s in sums for n in range(int((told - s + ROUND_MM) / mm) + 1)}
    return at[0] if any(abs(told - s) < ROUND_MM for s in sums) else "no sum of thicknesses"


def _wrap(at: At) -> str | None:
    """One turn of wrap around length and thickness, a lap, rounded up to a tenth of a metre."""
    thick = float(_read_pair(at.shown, "thick").split()[0])
    if _find_layers(at.look):
        lengths = [_size(at.look)[0]]
    else:
        needs = at.look.find("remark", "No mailer")
        read = re.search(r"(\d+) × (\d+) mm", needs.rows[0][1]) if needs else None
        if not read:
            return None
        lengths = [int(read[1]) - thick - MORE_MM + by for by in (-0.5, 0, 0.5)]
    around = (2 * (long + thick) + LAP_MM for long in lengths)
    turns = [math.ceil(round(mm / 100, 6)) / 10 for mm in around]
    return [f"one turn, {m:.1f} m" for m in turns]  # type: ignore[return-value]


def mass_of(books: Books, part: Part) -> float | None:
    """What one piece weighs in g; None: nobody can tell."""
    if part.mass_g > 0:
        return part.mass_g
    if part.shape is None:
        return None
    goods = books.all(Material)
    near = min(goods, key=lambda m: abs(m.thickness_mm - part.thickness_mm), default=None)
    if near is None or abs(near.thickness_mm - part.thickness_mm) > LIKE_MM:
        return None
    litres = part.shape.area_mm2 * part.thickness_mm * 1e-6
    return litres * near.density_kg_m3


def _weight(at: At) -> str | None:
    """What the whole of it should weigh with its mailer, while no pack has told better.

    How far it may be off, and what weighed packs teach, `tests/packs` counts.
    """
    grams, wants = 0.0, _wants(at.look)
    if any(p.scale_g and wants.keys() & dict(p.contents).keys() for p in at.books.all(Pack)):
        return None
    for number, n in wants.items():
        part = at.books.get(Part, number)
        found = mass_of(at.books, part) if part else None
        if found is None:
            return f"can't tell: {part.name if part else number}"
        grams += found * n
    mailer = find_mailer(at.look)
    grams += mailer.mass_g if mailer else 0.0
    return f"{fig.n(grams)} ± {at[0].rpartition('± ')[2]}"


def weigh_pack(books: Books, pack: Pack) -> float | None:
    """What a pack should weigh in g, its mailer too; None: a part of it has no weight."""
    total = 0.0
    for number, n in pack.contents:
        part = books.get(Part, number)
        found = mass_of(books, part) if part else None
        if found is None:
            return None
        total += found * n
    mailer = books.get(Mailer, pack.mailer)
    return total + (mailer.mass_g if mailer else 0.0)


def count_left(books: Books, number: str) -> int:
    """What is left of a mailer or of labels; of wrap in tenths of a metre."""
    found: int = books.at.get("supplies", {}).get((f"supply-{number}", "supply"), 0)
    return found


def _supplies(at: At) -> list[str] | None:
    """What packs take: how many are left of it, and its mark."""
    shop = at.books.get(Shop, "shop") or Shop(id="shop")
    mailer = next((m for m in at.books.all(Mailer) if m.name == at.row[0]), None)
    if mailer:
        left, mark = count_left(at.books, mailer.id), mailer.mark
    elif at.row[0] == "wrap, m":
        left, mark = count_left(at.books, "wrap") // 10, round(shop.wrap_mark_m)
    elif at.row[0] == "labels":
        left, mark = count_left(at.books, "labels"), shop.label_mark
    else:
        return []
    if at.shown.title == "Running low":
        if not left:
            return ["0 left"]
        return [f"{fig.n(left)} of {fig.n(mark)}"] if left < mark else []
    return [f"{fig.n(left)} by the book", f"minimum {fig.n(mark)}"]


RULES = (
    Rule(
        "cards|list", "(What packs take|Running low)", r"(minimum )?[\d\u202f]+( .*)?", _supplies
    ),
    Rule("mailer", "size", r".*", _mailer),
    Rule("mailer", "layers", r".*", _is_right),
    Rule("pairs", "", r"\d+ layers?[:,].*", _layers),
    Rule("pairs", "", r"\d+ × \d+ mm", _needs_flat),
    Rule("hint", "", r"(place .* · )?[\d\u202f]+ left( · .*)?", _left_there),
    Rule("pairs", "", r"([^ ]+) mm", _thick),
    Rule("pairs", "", r"one turn, .*", _wrap),
    Rule("pairs", "", r"([^ ]+ ± [^ ]+ g|can't tell: .*)", _weight),
)
