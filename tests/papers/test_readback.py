"""Every printed code is read back by an independent decoder, from a poor print.

Each page is rendered at 203 dpi in one bit; each code on it is turned 2°, blurred half a
module wide (σ a quarter) and speckled by 2 %, then read with zxing-cpp, which must read just
that code.
"""

import itertools
import random
import re
from collections import Counter
from dataclasses import replace

import pypdfium2
import pytest
import zxingcpp
from barcode.charsets import code128
from PIL import Image, ImageFilter

from station import printing
from station.papers import bars, cards, packing
from station.papers import page as printing_page
from station.shop.codes import write
from station.shop.facts import Batch, Shop
from tests.papers import samples
from tests.replay import Stage

NOW = "2026-11-25T10:42:00"
MODULE = 2  # dots of the narrowest bar on any paper


@pytest.fixture(scope="module")
def stage(tmp_path_factory):
    made = Stage(tmp_path_factory.mktemp("shop"))
    lines = [
        "@worker 07",
        "@area office",
        "button next_kind",
        "button row_2",
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


def poor(image, seed):
    """A code as a bad printer and a hurried hand give it; `image` is one bit at 203 dpi.

    Worked on at three pixels a dot, so that turning and blurring are finer than a dot. A
    speck is one such pixel: specks of whole dots at 2 % are more than the decoder stands.
    """
    image = image.resize((image.width * 3, image.height * 3), Image.Resampling.NEAREST)
    image = image.rotate(2, expand=True, fillcolor=255, resample=Image.Resampling.BILINEAR)
    image = image.filter(ImageFilter.GaussianBlur(MODULE * 3 / 4))  # half a module wide
    chance, dots = random.Random(seed), image.load()
    for _ in range(image.width * image.height // 50):  # 2 % of the pixels, each turned over
        at = chance.randrange(image.width), chance.randrange(image.height)
        dots[at] = 255 - dots[at]
    return image


def drawn(monkeypatch, make):
    """The PDF, and every code drawn on it: (page, text, box in points from the lower left)."""
    codes, pages = [], [0]
    real, turn = bars.draw, printing_page.Page.turn

    def noting(canvas, text, x, y, *, dots=2, height=0.0):
        high = max(height, bars.least_height(text, dots))
        codes.append((pages[0], text, (x, y, bars.length(text, dots), high)))
        return real(canvas, text, x, y, dots=dots, height=height)

    def turning(page):
        pages[0] += 1
        turn(page)

    monkeypatch.setattr(bars, "draw", noting)
    monkeypatch.setattr(printing_page.Page, "turn", turning)
    return make(), codes


def read(pdf, codes):
    """What the decoder reads at each drawn code, looked at alone as a scanner does."""
    document = pypdfium2.PdfDocument(pdf)
    pages = [
        page.render(scale=203 / 72).to_pil().convert("L").point(lambda v: 255 * (v > 127))
        for page in document
    ]
    document.close()
    found = []
    for n, (number, _, (x, y, wide, high)) in enumerate(codes):
        page, dot = pages[number], 203 / 72
        box = (x * dot, page.height - (y + high) * dot, (x + wide) * dot, page.height - y * dot)
        seen = zxingcpp.read_barcodes(poor(page.crop(tuple(map(round, box))), n))
        found.append([code.text for code in seen])
    return found


@pytest.mark.parametrize(
    ("kind", "name"),
    [
        ("traveller", "00001"),
        ("traveller", "00900"),
        ("label", "00001"),
        ("cart_list", "2"),
        ("badges", ""),
        ("part_cards", ""),
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
def test_every_code_reads_back(stage, monkeypatch, kind, name):
    if kind == "label":
        name = next(stage.ledger.facts(printing.Pack)).id
    pdf, codes = drawn(monkeypatch, lambda: printing.paper(stage.ledger, kind, name, NOW))
    assert codes, "a paper carries codes"
    assert read(pdf, codes) == [[text] for _, text, _ in codes]


@pytest.mark.parametrize(
    "make",
    [
        lambda: samples.a_traveller(paper="A5"),
        lambda: samples.a_traveller(samples.CHILD),
        lambda: samples.a_traveller(replace(samples.BATCH, sheets=40)),
        lambda: cards.thing_cards(samples.THINGS, paper="A5"),
        lambda: cards.badges(samples.WORKERS, paper="A5"),
        lambda: packing.cart_list(samples.CART, samples.PACKS, printed=NOW, paper="A5"),
    ],
    ids=["A5 traveller", "child", "40 sheets", "things", "A5 badges", "A5 cart list"],
)
def test_every_code_of_the_samples_reads_back(monkeypatch, make):
    pdf, codes = drawn(monkeypatch, make)
    assert read(pdf, codes) == [[text] for _, text, _ in codes]


def test_a_traveller_carries_its_code_twice_and_a_slip_a_sheet(stage, monkeypatch):
    _, codes = drawn(monkeypatch, lambda: printing.paper(stage.ledger, "traveller", "00001", NOW))
    texts = Counter(text for _, text, _ in codes)
    assert texts[write("batch", "00001", "A")] == 2
    slips = {write("batch", "00001", "A", n) for n in range(1, 10)}
    assert set(texts) == slips | {write("batch", "00001", "A")}


def test_a_long_batch_has_its_slips_on_further_pages(stage, monkeypatch):
    batch = next(b for b in stage.ledger.facts(Batch) if b.id == "00001")
    made = printing.traveller_of(stage.ledger, Batch(**{**batch.__dict__, "sheets": 40}), NOW)
    document = pypdfium2.PdfDocument(made)
    assert len(document) == 2
    document.close()


@pytest.mark.parametrize("paper", ["A4", "A5"])
def test_nothing_lies_off_the_page(stage, paper, monkeypatch):
    monkeypatch.setattr(printing, "shop_of", lambda _l: Shop(id="shop", paper=paper))
    pdf = printing.paper(stage.ledger, "traveller", "00001", NOW)
    document = pypdfium2.PdfDocument(pdf)
    page = document[0]
    width, height = page.get_size()
    for char in page.get_objects():
        left, low, right, high = char.get_bounds()
        assert -1 <= left <= right <= width + 1
        assert -1 <= low <= high <= height + 1
    document.close()


# PUBLISHED+RECOMPUTED, ISO/IEC 15417 as read in secondary transcriptions: a symbol of n data
# characters (start and check not counted) is 11·n + 35 modules long.
@pytest.mark.parametrize(("text", "most"), [("MASTER-01", 134), ("PJJ123C", 112), ("123456", 68)])
def test_the_length_of_a_symbol(text, most):
    assert len(bars.modules(text)) <= most
    assert (len(bars.modules(text)) - 35) % 11 == 0


# PUBLISHED (tutorial pages): quiet zone 10 X at both ends, height the greater of 5 mm or 15 %.
@pytest.mark.parametrize("text", ["B00412AA", "W012", "B00412A12X"])
def test_quiet_zone_and_height(text):
    mm = 72 / 25.4
    narrow = 2 * bars.DOT
    assert narrow >= 0.25 * mm
    symbol = len(bars.modules(text)) * narrow
    assert bars.length(text) == pytest.approx(symbol + 20 * narrow)
    assert bars.least_height(text) >= max(5 * mm, 0.15 * symbol) - 1e-9


def test_words_under_the_bars():
    assert bars.spaced("B00412AA") == "B 00412 A A"
    assert re.fullmatch(r"W 01 .", bars.spaced("W012"))


# PUBLISHED+RECOMPUTED, ISO/IEC 15417 as read in secondary transcriptions: six elements and
# 11 modules a character, bar modules even; starts 211412, 211214, 211232; stop 2331112.
@pytest.mark.parametrize("text", ["MASTER-01", "PJJ123C", "HI345678", "B00412AA"])
def test_a_symbol_starts_checks_and_stops(text):
    bits = bars.modules(text)
    widths = [len(list(run)) for _, run in itertools.groupby(bits)]
    assert widths[-7:] == [2, 3, 3, 1, 1, 1, 2]
    assert widths[:6] in ([2, 1, 1, 4, 1, 2], [2, 1, 1, 2, 1, 4], [2, 1, 1, 2, 3, 2])
    for first in range(0, len(widths) - 7, 6):
        character = widths[first : first + 6]
        assert sum(character) == 11
        assert sum(character[::2]) % 2 == 0


# COMPUTED, ISO/IEC 15417: (start + Σ i·vᵢ) mod 103 is 94 and 55 in set B, 85 in set C (1115
# mod 103). The place of a pattern in the encoder's table is its value.
@pytest.mark.parametrize(
    ("text", "check"), [("MASTER-01", 94), ("PJJ123C", 55), ("1234567890", 85)]
)
def test_the_check_character_of_a_symbol(text, check):
    assert code128.CODES.index(bars.modules(text)[-24:-13]) == check


def words_on(stage, monkeypatch, paper, batch="00001", **shop):
    """All words on a traveller's first page, as they run."""
    monkeypatch.setattr(printing, "shop_of", lambda _l: Shop(id="shop", paper=paper, **shop))
    document = pypdfium2.PdfDocument(printing.paper(stage.ledger, "traveller", batch, NOW))
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
