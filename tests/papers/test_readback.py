"""Every printed code is read back by an independent decoder, from a poor picture of a print.

A code must read when it is rendered at 203 dpi in one bit, turned 2°, blurred half a module,
with 2 % speckle. Taken at its hardest (`tests.readback` tells exactly): σ is half a
module, a speck is a whole dot, it comes sharp on top of the blur, and the page is read whole.
"""

import re
from collections import Counter
from dataclasses import replace

import numpy as np
import pypdfium2
import pytest

from station.papers import bars
from station.printing import gathering
from station.shop.codes import write
from station.shop.facts import Batch, Pack, Shop
from tests import readback
from tests.papers import samples
from tests.readback import Way
from tests.replay import Stage

NOW = "2026-11-25T10:42:00"
HARDEST = Way(specks_on="picture", box=False, bit=True)


@pytest.fixture(scope="module")
def stage(tmp_path_factory):
    made = Stage(tmp_path_factory.mktemp("shop"))
    lines = [
        "@worker 07",
        "@area office",
        "button next_kind",
        "touch ST200-SET",
        "button release_batch",
        "router 2",
        "9",
        "worker 07",
        "2468",
        "@worker 05",
        "@area packing",
        "order 3306",
        "rack 062",
        "button close_pack",
        "order 3307",
        "rack 045",
        "button close_pack",
        "@area cart",
        "cart 2",
    ]
    for line in lines:
        made.send(line)
    for pack in ("00001", "00002", "00003"):
        made.send(f"pack {pack}")
    yield made
    made.ledger.close()


def assert_read(there, found):
    """Every code as often as it is printed, and no other text."""
    assert there - found == Counter()
    assert readback.wrong(there, found) == []


@pytest.mark.parametrize(
    ("kind", "name"),
    [
        ("traveller", "00001"),
        ("traveller", "00900"),
        ("label", "00001"),
        ("pick_list", ""),
        ("cart_list", "2"),
        ("badges", ""),
        ("part_cards", ""),
        ("thing_cards", ""),
        ("card", "router/1"),
        ("card", "bit/12"),
        ("card", "lot/0931"),
        ("card", "order/3306"),
        ("card", "cutfile/008"),
        ("card", "cart/2"),
        *[
            ("button_cards", area)
            for area in (
                "anywhere",
                "loading",
                "popping",
                "trimming",
                "packing",
                "cart",
                "today",
                "office",
            )
        ],
    ],
)
@pytest.mark.slow
def test_every_code_reads_back(stage, kind, name):
    if kind in ("label", "pick_list"):
        pack = next(stage.ledger.facts(Pack))
        name = pack.id if kind == "label" else pack.order
    paper = gathering.make_paper(stage.ledger, kind, name, NOW)
    assert any(map(readback.codes, paper.pages)), "a paper carries codes"
    for there, found in readback.pages(paper, HARDEST, 0):
        assert_read(there, found)


@pytest.mark.parametrize("size", ["A4", "A5"])
@pytest.mark.parametrize("name", [n for n, (_, codes) in samples.papers("A4").items() if codes])
@pytest.mark.parametrize("seed", [1, 2])
@pytest.mark.slow
def test_every_code_of_the_samples_reads_back(name, size, seed):
    paper, codes = samples.papers(size)[name]
    seen = list(readback.pages(paper, HARDEST, seed))
    assert sum((there for there, _ in seen), Counter()) == Counter(codes)
    for there, found in seen:
        assert_read(there, found)


# In the order in which it happens: flaws are on the paper, blur is in the lens.
@pytest.mark.parametrize("box", [True, False])
@pytest.mark.parametrize("name", ["traveller", "badges", "pack label", "cart list"])
def test_a_flawed_print_reads_through_a_lens(name, box):
    paper, _ = samples.papers("A5")[name]
    for there, found in readback.singly(paper, Way("print", box, bit=True), 3):
        assert_read(there, found)


# A picture that is too poor must fail, or the tests above say nothing.
@pytest.mark.parametrize(
    ("module", "specks"), [(6, 0.02), (3, 0.25)], ids=["out of focus", "all specks"]
)
def test_a_hopeless_picture_does_not_read(monkeypatch, module, specks):
    monkeypatch.setattr(readback, "SPECKS", specks)
    paper, _ = samples.papers("A4")["traveller"]
    dots = readback.rendered(paper)[0]
    assert not readback.read(readback.seen(dots, HARDEST, 1, module))


def test_bars_a_dot_too_wide_do_not_read():
    """What a renderer makes of bars that reach beyond their dots: three dots become four."""
    paper, _ = samples.papers("A4")["traveller"]
    dots = readback.rendered(paper)[0]
    wider = np.minimum(dots, np.roll(dots, 1, axis=1))
    assert not readback.read(readback.seen(wider, HARDEST, 1))


def test_a_traveller_carries_its_code_twice_and_a_slip_a_sheet(stage):
    paper = gathering.make_paper(stage.ledger, "traveller", "00001", NOW)
    texts = Counter(mark.code for page in paper.pages for mark in readback.codes(page))
    assert texts[write("batch", "00001", "A")] == 2
    slips = {write("batch", "00001", "A", n) for n in range(1, 10)}
    assert set(texts) == slips | {write("batch", "00001", "A")}


def test_a_long_batch_has_its_slips_on_further_pages(stage):
    batch = next(b for b in stage.ledger.facts(Batch) if b.id == "00001")
    made = gathering.gather_traveller(stage.ledger, replace(batch, sheets=40), NOW)
    assert len(made.pages) == 2


@pytest.mark.parametrize("paper", ["A4", "A5"])
def test_nothing_lies_off_the_page(stage, paper, monkeypatch):
    monkeypatch.setattr(gathering, "find_shop", lambda _v: Shop(id="shop", paper=paper))
    made = gathering.make_paper(stage.ledger, "traveller", "00001", NOW)
    document = pypdfium2.PdfDocument(made.write_pdf())
    page = document[0]
    width, height = page.get_size()
    for char in page.get_objects():
        left, low, right, high = char.get_bounds()
        assert -1 <= left <= right <= width + 1
        assert -1 <= low <= high <= height + 1
    document.close()


def test_words_under_the_bars():
    assert bars.space_code("B00412AA") == "B 00412 A A"
    assert re.fullmatch(r"W 01 .", bars.space_code("W012"))


def words_on(stage, monkeypatch, paper, batch="00001", **shop):
    """All words on a traveller's first page, as they run."""
    monkeypatch.setattr(gathering, "find_shop", lambda _v: Shop(id="shop", paper=paper, **shop))
    document = pypdfium2.PdfDocument(
        gathering.make_paper(stage.ledger, "traveller", batch, NOW).write_pdf()
    )
    words = " ".join(document[0].get_textpage().get_text_range().split())
    document.close()
    return words


@pytest.mark.parametrize("paper", ["A4", "A5"])
def test_the_whole_caution_is_printed_however_long(stage, monkeypatch, paper):
    caution = "Ask before you lift. " * 14 + "Local rules and your safety lead come first."
    words = words_on(stage, monkeypatch, paper, caution=caution)
    assert words.count("Ask before you lift.") == 14
    assert "Local rules and your safety lead come first." in words


@pytest.mark.parametrize("paper", ["A4", "A5"])
def test_the_revision_is_printed_whatever_the_names(stage, monkeypatch, paper):
    real = stage.ledger.view.get

    def long_names(kind, name):
        found = real(kind, name)
        if kind.kind == "material":
            return type(found)(**{**found.__dict__, "name": "Birch plywood of a long name " * 8})
        return found

    monkeypatch.setattr(stage.ledger.view, "get", long_names)
    assert "revision C of cut file ST200-SET" in words_on(stage, monkeypatch, paper)
