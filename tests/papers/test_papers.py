"""Whole pages at 203 dpi in one bit: the codes that should be there and no other, once each."""

import itertools
from dataclasses import replace

import pypdfium2
import pytest
import zxingcpp
from PIL import Image

from station.papers import bars, cards, drawing, handover, packing, picking, rack
from station.papers.marks import TextMark
from station.papers.page import LEGIBLE, say_day, shorten_text
from station.shop import lengths
from station.shop.codes import usable, write
from station.shop.facts import BitUse, Lot, Order, Reason, Shop, Size
from tests import readback
from tests.outside.code_128 import QUIET
from tests.papers import samples


def one_bit(paper):
    return [Image.fromarray(dots) for dots in readback.rendered(paper)]


def words(paper, page=None):
    document = pypdfium2.PdfDocument(paper.write_pdf())
    some = document if page is None else [document[page]]
    text = " ".join(page.get_textpage().get_text_range() for page in some)
    document.close()
    return " ".join(text.split())


@pytest.fixture(scope="module", params=["A4", "A5"])
def papers(request):
    return samples.papers(request.param)


@pytest.mark.parametrize("name", list(samples.papers("A4")))
@pytest.mark.slow
def test_a_page_carries_its_codes_and_no_other(papers, name):
    paper, codes = papers[name]
    seen = [code.text for page in one_bit(paper) for code in zxingcpp.read_barcodes(page)]
    assert sorted(seen) == sorted(codes)


# Common practice, no source: a narrow bar is a whole number of printer dots.
@pytest.mark.parametrize("name", list(samples.papers("A4")))
def test_quiet_zones_are_white_and_bars_whole_dots(papers, name):
    paper, _ = papers[name]
    for marks, dots in zip(paper.pages, readback.rendered(paper), strict=True):
        for mark in readback.codes(marks):
            part = readback.alone(dots, mark)
            assert len({row.tobytes() for row in part[2:-2]}) == 1, (mark.code, "every row alike")
            runs = [(v, len(list(run))) for v, run in itertools.groupby(part[len(part) // 2])]
            bits = itertools.groupby(bars.encode_modules(mark.code))
            assert [n for _, n in runs[1:-1]] == [mark.dots * len(list(run)) for _, run in bits]
            for value, quiet in (runs[0], runs[-1]):
                assert value == 255
                assert quiet >= mark.dots * QUIET.expected - 1, (
                    mark.code,
                    "ink in the quiet zone",
                )


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


def test_a_child_shows_its_own_parts_and_counts():
    text = words(samples.a_traveller(samples.CHILD))
    for said in ("6 × HC-300", "12 × SH-180", "HC-300 rack C 14 · Heddle comb 300 4 6"):
        assert said in text
    assert "WS-12" not in text


def test_a_slip_that_cannot_print_is_named():
    batch = next(
        replace(samples.BATCH, id=f"{n:05d}")
        for n in range(100, 999)
        if usable("batch", f"{n:05d}", "A") and not usable("batch", f"{n:05d}", "A", 3)
    )
    paper = samples.a_traveller(batch)
    assert "No slip prints for sheet 3: print a new copy." in words(paper)
    assert len(readback.codes(paper.pages[0])) == 2 + 7


LONG = "Warp beam end plate with an extra long name that nobody shortened"


# LEGIBLE and FAR are common practice, no source: see beside them.
@pytest.mark.parametrize("size", ["A4", "A5"])
@pytest.mark.parametrize("long", [LONG, LONG.replace(" ", "")])
def test_long_names_stay_legible_and_inside(size, long):
    part = replace(samples.PARTS["014"], name=long, words=long)
    place = replace(samples.RACK, name=long)
    takes = [picking.PickRow(part, long, 12, 3)]
    made = (
        (rack.make_part_cards([(part, place)], paper=size), rack.FAR),
        (picking.make_pick_list(samples.ORDER, takes, printed=samples.NOW, paper=size), 0),
        (cards.make_thing_cards([replace(samples.PARTS["014"], name=long)], {}, paper=size), 0),
        (
            packing.make_cart_list(
                replace(samples.CART, name=long), (), printed="", shop=samples.SHOP, paper=size
            ),
            0,
        ),
        (samples.a_traveller(cut_file=replace(samples.CUT_FILE, words=long), paper=size), 0),
    )
    for paper, bold in made:
        for mark in itertools.chain(*paper.pages):
            if isinstance(mark, TextMark):
                wide = paper.measure_text(mark.words, mark.size, bold=mark.bold)
                left = mark.x - {"left": 0, "right": wide, "middle": wide / 2}[mark.side]
                assert 0 <= left <= left + wide <= paper.width, mark
                assert mark.size >= (drawing.NUMBER if mark.words.isdigit() else LEGIBLE), mark
                assert mark.size >= bold or not mark.bold, mark


@pytest.mark.parametrize(
    ("words", "width", "shown"),
    [
        ("Heddle comb", 60, "Heddle comb"),
        ("Heddle comb 300 for a wide loom", 20, "Heddle comb…"),
        ("Heddle comb 300 for a wide loom", 25, "Heddle comb 300…"),
        ("Heddlecomb300forawideloom", 23.2, "Heddlecomb300…"),
        ("", 20, ""),
        ("W", 0.1, "W…"),
    ],
)
def test_what_does_not_fit_is_cut_off(words, width, shown):
    assert shorten_text(words, width, 8) == shown


def test_a_pick_list_goes_along_the_rack():
    text = words(samples.a_pick_list())
    assert text.index("A 3") < text.index("C 14") < text.index("D 2")
    for said in ("46 to take", "12 ×", "4 ×", "30 ×", "only 18 there"):
        assert said in text


def test_a_long_handover_goes_on():
    left = samples.LEFT._replace(looks=[("08:00", f"look {n}") for n in range(60)])
    paper = handover.make_handover(
        left, worker="03", printed=samples.NOW, shop=samples.SHOP, paper="A5"
    )
    assert len(paper.pages) > 2
    text = words(paper)
    assert all(f"look {n}" in text for n in range(60))
    assert text.count("takes over") == 1


def test_a_full_label_says_what_it_leaves_out():
    order = Order(id="3306", lines=(), due=samples.NOW)
    contents = tuple((str(n), 12) for n in range(1000, 1060))
    pack = replace(samples.PACKS[0], contents=contents)
    text = words(packing.make_pack_label(pack, order, {}, printed=samples.NOW))
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
    text = words(cards.make_button_cards(area, (reason,), paper="A4"))
    assert (bars.space_code(write("reason", "31")) in text) is there


def test_a_day_reads_the_same_in_every_country():
    assert str(say_day("2026-11-25T07:12:00")) == "Wed 25 Nov"
    assert str(say_day("")) == ""


SIZED = replace(
    samples.PARTS["014"],
    sizes=(Size(name="A along", nominal_mm=300.0, low_mm=299.7, high_mm=300.3),),
)
TOLD = replace(
    samples.REVISION, file="heddle.nc", bits=(BitUse(number=1, diameter_mm=6.35, cut_mm=9000.0),)
)


@pytest.mark.parametrize(
    ("units", "said"),
    [
        ("mm", ("open heddle.nc · bits 1: 6.35 mm", "Check, mm: HC-300 A along 299.7 to 300.3")),
        ("inch", ("bits 1: 0.25 in", "Check, in: HC-300 A along 11.799 to 11.823")),
    ],
)
def test_a_traveller_says_which_file_bits_rack_places_and_sizes(units, said, monkeypatch):
    lengths.use_units(units, fractions=False)
    monkeypatch.setitem(samples.PARTS, "014", SIZED)
    text = words(samples.a_traveller(revision=TOLD))
    assert [each for each in (*said, "rack C 14") if each not in text] == []


@pytest.mark.parametrize(("held", "said"), [("014", True), ("045", False)])
def test_the_paper_of_a_few_pieces_says_their_sizes_and_no_others(held, said, monkeypatch):
    monkeypatch.setitem(samples.PARTS, "014", SIZED)
    child = samples.a_traveller(batch=samples.CHILD, pieces={held: 3})
    assert ("HC-300 A along" in words(child)) is said


def test_a_card_says_what_it_is():
    named = {"01": "6 mm birch plywood"}
    lot = Lot(id="0931", material="01", received="2026-11-25")
    text = words(cards.make_thing_cards((*samples.THINGS, lot), named))
    for said in ("6 mm birch plywood · 25 Nov 2026", "Bit 14 · 6.0 mm compression",
                 "router, clamped", "mailer, 300 × 200 mm", "Lot 0931"):  # fmt: skip
        assert said in text
