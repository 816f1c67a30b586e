"""What the papers show is what the shop knows: through the desk, from codes to words."""

from dataclasses import replace

import pypdfium2
import pytest

from station.printing import gathering
from station.printing.pdf_files import Papers
from station.shop.facts import Batch
from tests.full_disk import fill_disk
from tests.replay import Stage

NOW = "2026-11-25T10:42:00"


@pytest.fixture
def stage(tmp_path):
    made = Stage(tmp_path)
    made.papers = Papers(made.ledger, tmp_path / "papers", lambda: NOW)
    made.desk.printer = made.papers
    yield made
    made.ledger.close()


def words(file):
    document = pypdfium2.PdfDocument(file)
    text = " ".join(page.get_textpage().get_text_range() for page in document)
    document.close()
    return " ".join(text.split())


def test_the_pick_list_is_printed_by_its_button(stage):
    for line in ("@area packing", "@worker 05", "order 3306", "button menu", "button print_page"):
        given = stage.send(line)
    assert str(given.answer.said) == "The pick list of order 3306 is printed"
    assert stage.papers.made[-1].name == "pick_list-3306.pdf"
    text = words(stage.papers.made[-1])
    order = gathering.make_paper(stage.ledger, "pick_list", "3306", NOW)
    assert "to take" in text
    assert order.write_pdf() == stage.papers.made[-1].read_bytes()


def test_what_is_in_the_pack_is_not_to_be_taken_again(stage):
    for line in ("@area packing", "@worker 05", "order 3306", "rack 062", "button print_page"):
        stage.send(line)
    assert "Nothing is left to take" in words(stage.papers.made[-1])


def test_the_handover_sheet_is_printed_from_its_page(stage):
    for line in ("@area packing", "@worker 05", "order 3307", "part 045", "button put_down",
                 "button handover", "button print_page"):  # fmt: skip
        given = stage.send(line)
    assert str(given.answer.said) == "The handover sheet is printed"
    text = words(stage.papers.made[-1])
    wanted = ("by worker 05", "Routers", "At popping", "00900", "Order 3307", "6 of 6 in it")
    for said in (*wanted, "Needs a look"):
        assert said in text


def test_a_child_that_was_split_off_shows_its_own_pieces(stage):
    held = gathering.count_waiting(stage.ledger, Batch(id="00900", cut_file="", revision="A"))
    part, count = next(iter(held.items()))
    assert count > 10
    for line in ("@area trimming", "@worker 05", "traveller 00900", "button split"):
        stage.send(line)
    for line in (f"part {part}", "10"):
        stage.send(line)
    child = next(b for b in stage.ledger.facts(Batch) if b.parent == "00900")
    assert gathering.count_waiting(stage.ledger, child) == {part: 10}
    assert gathering.count_waiting(stage.ledger, replace(child, id="00900"))[part] == count - 10
    text = words(stage.papers.made[-1])
    assert f"10 × {gathering.map_parts(stage.ledger)[part].name}" in text


def test_a_full_disk_leaves_the_paper_of_before(stage, monkeypatch):
    """It is told, and printed again once there is room."""
    stage.papers("traveller", "00900")
    (file,) = stage.papers.made
    before = file.read_bytes()
    fill_disk(monkeypatch)
    with pytest.raises(OSError, match="No space left"):
        stage.papers("traveller", "00900")
    assert file.read_bytes() == before
    assert list(file.parent.iterdir()) == [file]
    monkeypatch.undo()
    stage.papers("traveller", "00900")
    assert "00900" in words(file)
