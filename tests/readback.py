"""``python -m tests.readback [--seeds N] [--code]``: printed codes, read from poor pictures.

Every paper of the samples, on A4 and on A5, is rendered at 203 dpi in one bit and seen in
each of the ways below, whole pages or code by code. The table says how many of the codes
zxing-cpp read, and how many texts it read that are not on that page. (One code's bars read as
two pieces, each of them right, is no matter to a person who scans; the pieces are not counted.)

What a *way* means, exactly:

- **specks on the print**: 2 % of the page's 203-dpi dots, drawn by chance, are turned over.
  The print is then looked at by a camera with two pixels a dot, turned by 2° and out of
  focus. This is the order in which it happens: flaws are on the paper, blur is in the lens.
- **specks on the picture**: the page is turned by 2° and blurred at one pixel a dot; then 2 %
  of the picture's dots are turned over, sharp, on top of the blur. This is the order in which
  the flaws are named, and the harder one: nothing softens a speck.
- **out of focus by half a module**: a Gaussian with a standard deviation of half a module of
  the code (1.5 dots), which leaves 29 % of the contrast of the finest bars; or, milder, a box
  half a module wide.
- **grey** pictures go to the decoder as they are, **one bit** ones are split at half.
"""

import argparse
import sys
from collections import Counter
from typing import NamedTuple

import numpy as np
import pypdfium2
import zxingcpp
from PIL import Image, ImageFilter

from station.papers import bars
from station.papers.marks import BarsMark
from tests.measured import note
from tests.papers import samples

DPI = 203
TURN = 2.0  # degrees
SPECKS = 0.02
PIXELS = 2  # a camera's, a dot


class Way(NamedTuple):
    """One way to see a print badly; `box`: a box blur, else a Gaussian."""

    specks_on: str  # "print" or "picture"
    box: bool
    bit: bool

    def __str__(self):
        focus = "box half a module" if self.box else "σ half a module"
        return f"specks on the {self.specks_on}, {focus}, {'one bit' if self.bit else 'grey'}"


WAYS = tuple(
    Way(on, box, bit) for on in ("print", "picture") for box in (True, False) for bit in (0, 1)
)


def rendered(paper):
    """A paper's pages at 203 dpi in one bit, as arrays of 0 and 255."""
    document = pypdfium2.PdfDocument(paper.write_pdf())
    pages = [np.array(page.render(scale=DPI / 72).to_pil().convert("L")) for page in document]
    document.close()
    return [np.where(page > 127, 255, 0).astype(np.uint8) for page in pages]


def specked(dots, chance):
    """2 % of the dots turned over."""
    return np.where(chance.random(dots.shape) < SPECKS, 255 - dots, dots).astype(np.uint8)


def turned(image):
    return image.rotate(TURN, expand=True, fillcolor=255, resample=Image.Resampling.BICUBIC)


def blurred(image, module, *, box):
    """Out of focus by half a module; `module` in pixels."""
    if box:
        return image.filter(ImageFilter.BoxBlur((module / 2 - 1) / 2 if module > 2 else 0.25))
    return image.filter(ImageFilter.GaussianBlur(module / 2))


def split(image):
    return image.point(lambda v: 255 * (v > 127))


def seen(dots, way, seed, module=bars.DOTS):
    """What the decoder is given of a one-bit print, codes of `module` dots on it."""
    chance = np.random.default_rng(seed)
    if way.specks_on == "print":
        print_ = Image.fromarray(specked(dots, chance))
        wide, high = print_.size
        large = print_.resize((wide * PIXELS, high * PIXELS), Image.Resampling.NEAREST)
        picture = blurred(turned(large), module * PIXELS, box=way.box)
        return split(picture) if way.bit else picture
    picture = blurred(turned(Image.fromarray(dots)), module, box=way.box)
    if way.bit:
        picture = split(picture)
    return Image.fromarray(specked(np.array(picture), chance))


def read(image):
    """The codes that zxing-cpp finds, set to Code 128 alone as a shop's scanner is."""
    found = zxingcpp.read_barcodes(image, formats=zxingcpp.BarcodeFormat.Code128)
    return Counter(code.text for code in found)


def codes(marks):
    """The bars on a page."""
    return [mark for mark in marks if isinstance(mark, BarsMark)]


def alone(dots, mark):
    """A page's dots around one code: its quiet zones, and what stands right above and below."""
    dot = DPI / 25.4
    left = (mark.x - bars.measure_quiet(mark.dots)) * dot
    right = left + bars.measure_length(mark.code, mark.dots) * dot
    top, foot = mark.y * dot, (mark.y + mark.high) * dot
    return dots[round(top) : round(foot), max(0, round(left)) : round(right)]


def wrong(there, found):
    """What was read but is not there."""
    return sorted(found.keys() - there.keys())


def pages(paper, way, seed):
    """For each page with codes: those on it, and those read from the whole of it."""
    for n, (marks, dots) in enumerate(zip(paper.pages, rendered(paper), strict=True)):
        there = Counter(mark.code for mark in codes(marks))
        if there:
            yield there, read(seen(dots, way, seed * 1000 + n))


def singly(paper, way, seed):
    """For each code: itself, and what is read with only it in view."""
    for marks, dots in zip(paper.pages, rendered(paper), strict=True):
        for n, mark in enumerate(codes(marks)):
            part = alone(dots, mark)
            yield Counter([mark.code]), read(seen(part, way, seed * 1000 + n, mark.dots))


def main():
    parser = argparse.ArgumentParser(prog="python -m tests.readback", description=__doc__)
    parser.add_argument("--seeds", type=int, default=2, help="prints of each paper")
    parser.add_argument("--code", action="store_true", help="code by code too")
    options = parser.parse_args()
    papers = [p for size in ("A4", "A5") for p, _ in samples.papers(size).values()]
    print(f"{len(papers)} papers, {sum(len(p.pages) for p in papers)} pages, zxing-cpp")
    for words, look in (("whole pages", pages), ("code by code", singly)):
        if look is singly and not options.code:
            continue
        print(f"\n{words}{'':<{60 - len(words)}}read     of   wrong")
        for way in WAYS:
            whole = hit = astray = 0
            for seed in range(options.seeds):
                for paper in papers:
                    for there, found in look(paper, way, seed):
                        whole += there.total()
                        hit += (there & found).total()
                        astray += len(wrong(there, found))
            note(f"{words}: {way}", f"{hit} of {whole} codes read, {astray} wrong", "0 wrong")
            print(f"{way!s:<57}{hit:>7}{whole:>7}{astray:>8}", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
