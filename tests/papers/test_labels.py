"""Labels of every size that thermal printers take: laid out for it, read back at 203 dpi."""

import itertools
from dataclasses import replace

import pytest

from station.papers import bars, packing, pdf
from station.papers.marks import BarsMark, TextMark
from station.papers.page import MM
from station.printing import gathering, printers
from station.shop.codes import write
from station.shop.facts import LABELS, Order, Shop
from tests import readback
from tests.papers import samples
from tests.papers.test_readback import HARDEST, assert_read
from tests.replay import Stage

FULL = replace(
    samples.PACKS[0],
    contents=tuple((str(n), 12) for n in range(1000, 1060)),
    copies=3,
    scale_g=12_345.0,
)
OWED = Order(id="300612", lines=samples.ORDER.lines, due=samples.NOW)


def make_labels(size):
    """Each label that there is in this size: plain, full, one of two, one for the shelf."""
    given = {"printed": samples.NOW, "size": size}
    return (
        packing.make_pack_label(samples.PACKS[0], samples.ORDER, samples.PARTS, **given),
        packing.make_pack_label(FULL, OWED, samples.PARTS, **given),
        packing.make_pack_label(replace(FULL, nth=1), OWED, samples.PARTS, **given),
        packing.make_pack_label(
            replace(samples.PACKS[0], nth=2, of=2), samples.ORDER, samples.PARTS, **given
        ),
        packing.make_shelf_card(samples.SHELVED, samples.LOOM_KIT, samples.PARTS, **given),
    )


def measure_box(mark):
    """Left, top, right and foot of a text or of bars, mm."""
    if isinstance(mark, BarsMark):
        wide = packing.measure_code(mark.code, mark.dots)
        left = mark.x - bars.measure_quiet(mark.dots)
        return left, mark.y, left + wide, mark.y + mark.high
    wide = pdf.measure_text(mark.words, mark.size, bold=mark.bold)
    left = mark.x - {"left": 0, "middle": wide / 2, "right": wide}[mark.side]
    return left, mark.y - 0.7 * mark.size / MM, left + wide, mark.y


@pytest.mark.parametrize("size", LABELS)
def test_nothing_lies_over_another_or_off_the_label(size):
    for label in make_labels(size):
        marks = [m for m in label.pages[0] if isinstance(m, TextMark | BarsMark) and m]
        boxes = [measure_box(m) for m in marks if not isinstance(m, TextMark) or m.words]
        for left, top, right, foot in boxes:
            assert left >= 0
            assert top >= 0
            assert right <= label.width
            assert foot <= label.height - 0.5
        for a, b in itertools.combinations(boxes, 2):
            apart = a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]
            assert apart, (size, a, b)


@pytest.mark.parametrize("size", LABELS)
def test_its_code_reads_back(size):
    for label in make_labels(size):
        for there, found in readback.pages(label, HARDEST, 1):
            assert list(there) == [write("pack", samples.PACKS[0].id)]
            assert_read(there, found)


def test_a_larger_label_lists_more_of_a_full_pack():
    def count(size):
        label = packing.make_pack_label(FULL, OWED, {}, printed=samples.NOW, size=size)
        return sum(m.words.count("12 × ") for m in label.pages[0] if isinstance(m, TextMark))

    assert count("3x2 in") < count("4x2 in") < count("4x3 in")
    assert count("4x6 in") == count("100x150 mm") == len(FULL.contents)


def test_the_shop_chooses_its_labels_and_each_goes_to_the_printer_of_labels(tmp_path):
    stage = Stage(tmp_path)
    for line in ("@worker 05", "@area packing", "order 3307", "rack 045", "button close_pack"):
        stage.send(line)
    shop = stage.ledger.view.get(Shop, "shop")
    assert (shop.label, LABELS[shop.label]) == ("100x50 mm", (100.0, 50.0))
    stage.send("@worker 07")
    stage.send("list-in shop / id;label / shop;4x6 in")
    page = gathering.make_paper(stage.ledger, "label", "00001", samples.NOW)
    assert (round(page.width), round(page.height)) == (102, 152)  # whole dots of the printer
    assert printers.find_size(page) == "label"
    stage.close()
