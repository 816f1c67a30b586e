"""Which printer gets which paper, and what is said when none does."""

import logging
import sys

import pytest

from station import bootstrap
from station.commands import main
from station.printing import printers
from station.printing.pdf_files import Papers
from tests.papers import samples

A4, LABEL = "Office printer", "Label printer"


class Bench:
    """Printers with everything outside the program replaced."""

    def __init__(self, ledger, names, answer=""):
        self.told, self.sent, self.viewed, self.asked = [], [], [], []
        self.works = True
        self.printers = printers.Printers(
            ledger,
            None,
            self.told.append,
            attached=lambda: names,
            ask=lambda _parent, size, _names: self.asked.append(size) or answer,
            send=lambda page, name: self.sent.append((page.title, name)) or self.works,
            view=self.viewed.append,
        )


@pytest.fixture
def ledger(tmp_path):
    with bootstrap.open_ledger(tmp_path) as made:
        bootstrap.set_up_shop(made, samples.NOW)
        yield made


@pytest.mark.parametrize(
    ("name", "size"), [("traveller", "A4"), ("badges", "A4"), ("pack label", "label")]
)
def test_each_paper_has_its_size(name, size):
    assert printers.find_size(samples.papers("A4")[name][0]) == size
    if size == "A4":
        assert printers.find_size(samples.papers("A5")[name][0]) == "A5"


def test_the_question_is_asked_once_for_each_size(ledger, tmp_path):
    bench = Bench(ledger, [A4, LABEL], answer=A4)
    for name in ("traveller", "badges", "pack label", "cart list"):
        bench.printers(samples.papers("A4")[name][0], tmp_path / "it.pdf")
    assert bench.asked == ["A4", "label"]
    assert [name for _, name in bench.sent] == [A4] * 4
    assert (bench.viewed, bench.told) == ([], [])
    assert printers.find_chosen(ledger, "A4") == A4


@pytest.mark.parametrize(
    ("kept", "names", "answer", "works", "viewed", "told"),
    [
        ("", [], "", True, 2, ["No printer is attached to this PC"]),
        ("", [A4], "", True, 2, []),  # the question was closed: asked again next time
        ("", [A4], "pdf", True, 2, []),
        ("pdf", [], "", True, 2, []),
        (A4, [LABEL], "", True, 0, [f"Printer {A4} is not attached"] * 2),
        (A4, [], "", True, 0, [f"Printer {A4} is not attached"] * 2),
        (A4, [A4], "", False, 0, [f"Printer {A4} did not print"] * 2),
        (A4, [A4], "", True, 0, []),
    ],
)
def test_what_is_said_when_it_does_not_print(
    ledger, tmp_path, kept, names, answer, works, viewed, told
):
    printers.keep_choice(ledger, "A4", kept)
    bench = Bench(ledger, names, answer)
    bench.works = works
    file = tmp_path / "papers" / "traveller-00412.pdf"
    for _ in range(2):
        bench.printers(samples.a_traveller(), file)
    assert len(bench.viewed) == viewed
    assert [str(answer.said) for answer in bench.told] == told
    for said in bench.told:
        assert "traveller-00412.pdf" in str(said.do)
        assert "papers" in str(said.do)
        assert not said.refused


def test_where_a_paper_went_is_told_each_time_that_only_it_was_asked_for(ledger, tmp_path):
    bench, file = Bench(ledger, []), tmp_path / "papers" / "card-014.pdf"
    for alone in (False, False, True, True):
        bench.printers.try_to_print(samples.a_traveller(), file, alone=alone)
    assert len(bench.told) == 3, "an act's papers once; a card asked for by itself each time"
    assert str(file.parent) in str(bench.told[-1].do)


def test_the_pdf_is_kept_before_anything_is_sent(ledger, tmp_path):
    def broken(_page, file):
        assert file.read_bytes().startswith(b"%PDF")
        raise OSError

    papers = Papers(ledger, tmp_path / "papers", lambda: samples.NOW, broken)
    with pytest.raises(OSError):  # noqa: PT011 - any
        papers("badges", "")
    assert (tmp_path / "papers" / "badges.pdf").exists()


def test_the_question_offers_every_printer_and_the_file(qapp):
    question = printers.PrinterQuestion(None, "label", [A4, LABEL])
    assert question.box.count() == 3
    question.box.setCurrentIndex(1)
    assert question.answer() == LABEL
    question.box.setCurrentIndex(2)
    assert question.answer() == printers.OPENED


def test_no_print_support_is_no_printer(monkeypatch):
    monkeypatch.setitem(sys.modules, "PySide6.QtPrintSupport", None)
    assert printers.list_attached() == []


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        ([], 0, "A4: asks once"),
        (["A4", "pdf"], 0, "A4: pdf"),
        (["A4", "No such printer"], 1, "There is no printer No such printer. There is:"),
        (["B7"], 1, "B7 is no size: A4, A5, Letter, label."),
    ],
)
def test_the_command_lists_and_keeps(qapp, ledger, tmp_path, capsys, words, code, said):
    ledger.close()
    assert main.main(["printer", "--data", str(tmp_path), *words]) == code
    told = capsys.readouterr()
    assert said in told.out + told.err


def test_whatever_goes_wrong_on_the_way_to_a_printer_is_told(ledger, tmp_path, caplog):
    bench = Bench(ledger, [LABEL])
    printers.keep_choice(ledger, "label", LABEL)

    def broken(_page, _name):
        raise RuntimeError("a bug of ours")

    bench.printers.send = broken
    with caplog.at_level(logging.ERROR):
        bench.printers.try_to_print(samples.papers("A4")["pack label"][0], tmp_path / "it.pdf")
    assert [str(t.said) for t in bench.told] == ["it.pdf was not printed"]
    assert "a bug of ours" in caplog.text
