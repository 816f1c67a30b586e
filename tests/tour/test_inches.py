"""Every length of the demo day, on every screen and every paper, as a shop of inches sees it."""

import re

import pytest

from station.look import inspect
from station.papers.marks import TextMark
from station.printing import gathering
from station.shop import lengths
from station.shop.facts import (
    Bit,
    Concern,
    CutFile,
    Lot,
    Mailer,
    Material,
    Part,
    Product,
    Router,
)
from station.tour import drive
from station.tour.empty_shop import NOT_IN

# what a lot is marked with and a concern tells was written down in the unit of its day
NAMED = (Bit, Concern, CutFile, Lot, Mailer, Material, Part, Product, Router)
PAPERS = (("traveller", ""), ("handover", "01"), ("thing_cards", ""), ("part_cards", ""))


class InchTour(drive.Tour):
    """The demo day, each of its screens painted once more with lengths in inches and read."""

    def look_over(self, name):
        super().look_over(name)
        self.read = getattr(self, "read", 0)
        with pytest.MonkeyPatch.context() as patch:
            use_units = lengths.use_units
            use_units("inch", fractions=False)
            patch.setattr(lengths, "use_units", lambda *_args, **_more: None)
            self.session.repaint()
            self.window.set_palette(dark=True)  # builds all of it anew
            self.application.processEvents()
            self.read_all(name, inspect.list_texts(self.window))
            for kind, number in PAPERS if name in ("loading-cutting", "office-released") else ():
                batch = self.desk.hand.subject or "00626"
                paper = gathering.make_paper(self.ledger, kind, number or batch, self.clock())
                marks = [mark for page in paper.pages for mark in page] if paper else []
                texts = [mark.words for mark in marks if isinstance(mark, TextMark)]
                self.read_all(f"{name}, {kind}", texts)
        use_units("mm", fractions=False)
        self.window.set_palette(dark=False)

    def read_all(self, name, texts):
        """Notes every length that is still in mm; the shop's own words stay its own."""
        self.read += len(texts)
        own = {
            words
            for kind in NAMED
            for fact in self.ledger.facts(kind)
            for words in (getattr(fact, name, "") for name in ("name", "words", "mark", "text"))
            if isinstance(words, str) and NOT_IN["inch"].search(words)
        }
        strange = re.compile("|".join(map(re.escape, sorted(own, key=len, reverse=True))) or "$^")
        for text in texts:
            if NOT_IN["inch"].search(strange.sub("", text)):
                self.problems.append(f"{name}: “{text}”")


@pytest.mark.long
@pytest.mark.slow
@pytest.mark.usefixtures("compiled")
def test_no_screen_and_no_paper_of_an_inch_shop_tells_a_length_in_mm(tmp_path):
    tour = InchTour(tmp_path, scanner_only=False, at="")
    tour.run()
    assert tour.read > 2000
    assert list(dict.fromkeys(tour.problems)) == []
