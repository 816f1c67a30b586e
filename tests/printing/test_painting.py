"""Papers through Qt's own print path, into its PDF output: codes read back, words in place."""

import numpy as np
import pypdfium2
import pytest
import zxingcpp
from PIL import Image
from PySide6.QtPrintSupport import QPrinter

from station.papers import bars
from station.printing.painting import print_page
from tests import readback
from tests.papers import samples
from tests.readback import Way

NAMES = ["traveller", "traveller of 40 sheets", "pack label", "part cards", "pick list"]


def printed(paper, file, dpi):
    """What Qt prints, rendered at the printer's own dots in one bit."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(file))
    printer.setResolution(dpi)
    assert print_page(paper, printer)
    document = pypdfium2.PdfDocument(file)
    pages = []
    for page in document:
        # A page that is no whole number of dots would be stretched to one: the rest is cut off.
        wide, high = (int(side * dpi / 72) / dpi * 72 - 0.01 for side in page.get_size())
        page.set_cropbox(0, page.get_height() - high, wide, page.get_height())
        pages.append(np.array(page.render(scale=dpi / 72).to_pil().convert("L")))
    document.close()
    return [np.where(page > 127, 255, 0).astype(np.uint8) for page in pages]


@pytest.mark.parametrize("size", ["A4", "A5"])
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.slow
def test_codes_printed_through_qt_read_from_a_poor_picture(qapp, tmp_path, name, size):
    paper, codes = samples.papers(size)[name]
    pages = printed(paper, tmp_path / "out.pdf", 203)
    assert len(pages) == len(paper.pages)
    seen = []
    for n, dots in enumerate(pages):
        found = readback.read(readback.seen(dots, Way("picture", box=False, bit=True), n))
        seen += found
        there = {mark.code for mark in readback.codes(paper.pages[n])}
        assert set(found) == there
    assert set(seen) == set(codes)


# 203 and 300 dpi label printers, 600 dpi office printers: common practice, no source.
@pytest.mark.parametrize(("dpi", "module"), [(203, 3), (300, 4), (600, 9)])
def test_a_module_is_whole_dots_of_any_printer(qapp, tmp_path, dpi, module):
    paper, _ = samples.papers("A4")["pack label"]
    dots = printed(paper, tmp_path / "out.pdf", dpi)[0]
    mark = readback.codes(paper.pages[0])[0]
    row = dots[round((mark.y + mark.high / 2) / 25.4 * dpi)]
    dark = np.flatnonzero(row[: round(75 / 25.4 * dpi)] == 0)
    symbol = row[dark[0] : dark[-1] + 1]
    bits = np.array([0 if bit == "1" else 255 for bit in bars.encode_modules(mark.code)])
    assert np.array_equal(symbol, np.repeat(bits, module))
    image = Image.fromarray(dots)
    assert [code.text for code in zxingcpp.read_barcodes(image)] == [mark.code]


def test_the_two_ways_to_print_agree(qapp, tmp_path):
    paper, _ = samples.papers("A4")["traveller"]
    qt = printed(paper, tmp_path / "out.pdf", 203)[0]
    pdf = readback.rendered(paper)[0]
    high, wide = min(qt.shape[0], pdf.shape[0]), min(qt.shape[1], pdf.shape[1])
    blocks = [
        (255 - page[: high // 40 * 40, : wide // 40 * 40].astype(float))
        .reshape(high // 40, 40, wide // 40, 40)
        .mean((1, 3))
        for page in (qt, pdf)
    ]
    assert np.corrcoef(blocks[0].ravel(), blocks[1].ravel())[0, 1] > 0.98
