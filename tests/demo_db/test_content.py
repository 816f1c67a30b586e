"""The demo shop is whole: every number points somewhere, every piece lies on its sheet."""

import hashlib
from datetime import datetime
from functools import cache
from itertools import combinations

import pytest

from demo_db.content import facts
from demo_db.geometry import turned
from demo_db.machines import PIN_HASH
from demo_db.parts import designs
from demo_db.sheets import LENGTH, WIDTH, cut, file_name, layouts, placed
from demo_db.write_cut import FOLDER
from station.desk.pin import agrees
from station.shop.codes import LETTERS, usable
from station.shop.facts import (
    CutFile,
    Lot,
    Material,
    Order,
    Part,
    Product,
    RackPlace,
    Revision,
    Router,
    Worker,
)
from station.shop.plain import build, to_plain

NOW = datetime(2026, 11, 25, 11, 30)
PER_SHEET = {"008.C": 24, "009.C": 96, "011.C": 240, "012.C": 160, "015.C": 32, "021.B": 118}
GAP_MM = 8.0  # a 6 mm bit and something that stays standing


@cache
def known():
    """All facts that the demo shop begins with."""
    return facts(NOW)


@pytest.fixture(scope="module", autouse=True)
def made_once():
    """The facts take a second to make: no one test has to answer for it."""
    known()


def of(kind):
    return {f.id: f for f in known() if isinstance(f, kind)}


def test_counts():
    assert len(of(Part)) >= 14
    assert len(of(CutFile)) >= 8
    assert len(of(Router)) == 5
    assert len(of(Worker)) == 8
    assert len(of(Order)) == 40
    assert len({f.key for f in known()}) == len(known())


def test_every_number_can_be_printed():
    assert [f.key for f in known() if f.kind in LETTERS and not usable(f.kind, f.id)] == []


def test_facts_can_be_recorded():
    assert [f.key for f in known() if build(f.kind, to_plain(f)) != f] == []


@pytest.mark.parametrize(("id", "count"), PER_SHEET.items())
def test_pieces_a_sheet(id, count):
    assert len(of(Revision)[id].placed) == count


def test_everything_points_somewhere():
    parts, files = of(Part), of(CutFile)
    assert all(p.rack in of(RackPlace) for p in parts.values())
    assert all(r.part in parts for r in of(RackPlace).values())
    assert all(part in parts for p in of(Product).values() for part, _ in p.parts)
    assert all(line.product in of(Product) for o in of(Order).values() for line in o.lines)
    assert all(lot.material in of(Material) for lot in of(Lot).values())
    assert all(f"{f.id}.{f.approved}" in of(Revision) for f in files.values())
    for r in of(Revision).values():
        assert r.cut_file in files
        assert r.material in of(Material)
        assert {p.part for p in r.placed} == {part for part, _ in r.shapes}


def test_every_part_can_be_cut_and_fits_its_material():
    cut_by = {}
    for r in of(Revision).values():
        for part in r.makes():
            cut_by.setdefault(part, set()).add(r.material)
    assert cut_by.keys() == of(Part).keys()
    for part, materials in cut_by.items():
        (material,) = materials
        assert of(Part)[part].thickness_mm == of(Material)[material].thickness_mm


def box(piece):
    length, width = designs()[piece.part].box
    corner = turned((length, width), piece.turn_deg, (length, width))
    if round(piece.turn_deg) % 180:
        corner = (width, length)
    return piece.x_mm, piece.y_mm, piece.x_mm + corner[0], piece.y_mm + corner[1]


@pytest.mark.parametrize("layout", layouts(), ids=file_name)
def test_pieces_lie_on_the_sheet_and_apart(layout):
    boxes = [box(p) for p in placed(layout)]
    assert all(x0 >= 10 and y0 >= 10 and x1 <= LENGTH - 10 and y1 <= WIDTH - 10
               for x0, y0, x1, y1 in boxes)  # fmt: skip
    too_near = [
        (a, b)
        for a, b in combinations(boxes, 2)
        if a[0] < b[2] + GAP_MM and b[0] < a[2] + GAP_MM
        and a[1] < b[3] + GAP_MM and b[1] < a[3] + GAP_MM
    ]  # fmt: skip
    assert too_near == []


@pytest.mark.parametrize("layout", layouts(), ids=file_name)
def test_hold_downs_are_clear_of_every_cut(layout):
    revision = of(Revision)[Revision.id_of(layout.cut_file, layout.letter)]
    for x, y in revision.hold_downs:
        for x0, y0, x1, y1 in map(box, revision.placed):
            assert not (x0 - 14 < x < x1 + 14 and y0 - 14 < y < y1 + 14)


@pytest.mark.parametrize("layout", layouts(), ids=file_name)
def test_the_committed_text_is_the_one_that_is_written(layout):
    lying = (FOLDER / file_name(layout)).read_bytes()
    assert lying == cut(layout.cut_file, layout.letter).text.encode()
    assert b"\r" not in lying
    assert len(lying) < 1_000_000
    revision = of(Revision)[f"{layout.cut_file}.{layout.letter}"]
    assert hashlib.sha256(lying).hexdigest() == revision.digest


def test_the_texts_hold_what_a_reader_must_know():
    texts = {file_name(v): cut(v.cut_file, v.letter).text for v in layouts()}
    for word in ("G2 ", "G3 ", "G81 ", "G80", "T1 M6", "T2 M6", " R"):
        assert any(word in t for t in texts.values()), word
    assert sum("G20 " in t for t in texts.values()) == 1


def test_tabs_stand_on_the_outline():
    for d in designs().values():
        shape = of(Part)[d.part].shape
        edges = list(zip(shape.outline, (*shape.outline[1:], shape.outline[0]), strict=True))
        for tab in d.tabs:
            assert any(on_edge(tab, *e) for e in edges), (d.name, tab)


def on_edge(tab, a, b):
    along = ((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2) ** 0.5
    cross = abs((b[0] - a[0]) * (tab[1] - a[1]) - (b[1] - a[1]) * (tab[0] - a[0]))
    dot = (b[0] - a[0]) * (tab[0] - a[0]) + (b[1] - a[1]) * (tab[1] - a[1])
    return cross / along < 0.01 and 0 < dot / along < along


def test_the_supervisor_has_the_demo_pin():
    assert agrees(PIN_HASH, "2468")
    assert not agrees(PIN_HASH, "2469")


def test_no_order_is_empty_and_due_times_follow_now():
    dues = [datetime.fromisoformat(o.due) for o in of(Order).values()]
    assert sum(d < NOW for d in dues) == 2
    assert all(o.lines and o.state == "open" for o in of(Order).values())
