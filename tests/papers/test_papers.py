"""Whole pages at 203 dpi in one bit: the codes that should be there and no other, once each."""

from dataclasses import replace

import pypdfium2
import pytest
import zxingcpp

from station.papers import bars, cards, packing
from station.papers.page import day
from station.shop.codes import write
from station.shop.facts import Order, Reason, Shop
from tests.papers import samples

SCALE = 203 / 72


def one_bit(pdf):
    document = pypdfium2.PdfDocument(pdf)
    pages = [page.render(scale=SCALE).to_pil().convert("L") for page in document]
    document.close()
    return [page.point(lambda v: 255 * (v > 127)) for page in pages]


def words(pdf):
    document = pypdfium2.PdfDocument(pdf)
    text = " ".join(page.get_textpage().get_text_range() for page in document)
    document.close()
    return " ".join(text.split())


@pytest.fixture(scope="module", params=["A4", "A5"])
def papers(request):
    return samples.papers(request.param)


@pytest.mark.parametrize("name", list(samples.papers("A4")))
def test_a_page_carries_its_codes_and_no_other(papers, name):
    pdf, codes = papers[name]
    seen = [code.text for page in one_bit(pdf) for code in zxingcpp.read_barcodes(page)]
    assert sorted(seen) == sorted(codes)


# PUBLISHED (tutorial pages): a quiet zone of 10 X at both ends; common practice, no source:
# a narrow bar is a whole number of printer dots.
@pytest.mark.parametrize("name", list(samples.papers("A4")))
def test_quiet_zones_are_white_and_bars_whole_dots(papers, name):
    pages = [(page, zxingcpp.read_barcodes(page)) for page in one_bit(papers[name][0])]
    assert any(codes for _, codes in pages)
    for page, codes in pages:
        for code in codes:
            spot = code.position
            row = (spot.top_left.y + spot.bottom_left.y) // 2
            _check_row(page, row, spot.top_left.x, spot.top_right.x, code.text)


def _check_row(page, row, left, right, text):
    """The dots of one row through a code: its symbol, white for ten modules either side."""
    pixels = page.load()
    while left > 0 and not pixels[left, row]:
        left -= 1
    while pixels[left, row]:
        left += 1
    while not pixels[right, row]:
        right += 1
    while pixels[right, row]:
        right -= 1
    dots = (right - left + 1) / len(bars.modules(text))
    assert abs(dots - round(dots)) < 0.02, text
    assert round(dots) in (2, 3), text
    quiet = round(dots) * 10 - 1  # a bar may begin within a dot
    for x in (*range(left - quiet, left), *range(right + 1, right + 1 + quiet)):
        assert pixels[x, row], (text, "ink in the quiet zone")


@pytest.mark.parametrize("paper", ["A4", "A5"])
@pytest.mark.parametrize("revision", [samples.REVISION, samples.MANY])
def test_every_part_can_be_counted_by_hand(paper, revision):
    text = words(samples.a_traveller(revision=revision, paper=paper))
    for part in revision.makes():
        name = samples.PARTS[part].name if part in samples.PARTS else f"part {part}"
        assert text.count(name) == 1, name


def test_a_plain_a5_traveller_counts_on_its_first_page():
    assert "further page" not in words(samples.a_traveller(paper="A5"))


@pytest.mark.parametrize(
    ("limit", "said"), [(12.0, True), (12.6, False)]
)  # the sheet: 2440 × 1220 × 6 mm at 700 kg/m³ = 12.50 kg
def test_a_heavy_sheet_asks_for_two_people(limit, said):
    text = words(samples.a_traveller(shop=Shop(id="shop", two_people_kg=limit)))
    assert ("two people or a lift" in text) is said
    for always in ("Eye and ear protection", "Guards on", "spindle isolated", "Local rules"):
        assert always in text


@pytest.mark.parametrize(
    ("role", "tries", "said"),
    [
        ("rework", 1, "to be made good, try 1 of 2, from batch 00412"),
        ("split", 0, "split off from batch 00412"),
    ],
)
def test_a_child_names_its_parent(role, tries, said):
    text = words(samples.a_traveller(replace(samples.CHILD, role=role, tries=tries)))
    assert said in text
    assert "Tear a slip" not in text


def test_a_full_label_says_what_it_leaves_out():
    order = Order(id="3306", lines=(), due=samples.NOW)
    contents = tuple((str(n), 12) for n in range(1000, 1060))
    pack = replace(samples.PACKS[0], contents=contents)
    text = words(packing.pack_label(pack, order, {}, printed=samples.NOW))
    shown = text.count("12 × ")
    assert 0 < shown < 60
    assert f"and {60 - shown} more" in text


@pytest.mark.parametrize(
    ("area", "use", "there"),
    [
        ("loading", "stop", True),
        ("loading", "rework", False),
        ("trimming", "rework", True),
        ("office", "correct", True),
        ("all", "stop", True),
    ],
)
def test_reasons_stand_with_the_area_that_needs_them(area, use, there):
    reason = Reason(id="31", words="bit", use=use)
    text = words(cards.button_cards(area, (reason,), paper="A4"))
    assert (bars.spaced(write("reason", "31")) in text) is there


def test_a_day_reads_the_same_in_every_country():
    assert day("2026-11-25T07:12:00") == "Wed 25 Nov"
    assert day("") == ""
