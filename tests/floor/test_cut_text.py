"""What the office does with a text that was read: said otherwise, looked at, held down."""

import pytest

from station.shop.faces import Listing, Pairs, PartDrawing, PathDrawing, SheetDrawing, Table
from station.shop.facts import CutFile, Part, ReadAs, Revision
from tests.floor.test_intake import folder_with, new_cut_file, office
from tests.look_at_sheets import Text

BIRCH, ODD = "touch 6.5 mm birch plywood", "touch odd.nc"
pytestmark = pytest.mark.usefixtures("compiled")


def read_text(stage, text, name="odd.nc"):
    """A cut file whose text is read, of the 6.5 mm material; its number."""
    (folder_with(stage) / name).write_text(text, encoding="ascii")
    number = new_cut_file(stage)
    assert office(stage, "button read_file", BIRCH, ODD)[0] != "stop"
    return number


def read(stage):
    return stage.desk.hand.work.intake.read


def plate(*extra):
    """Two plates with tabs, cut by a bit of 6 mm; then what else there is."""
    text = Text().take_bit(1).cut_out(100, 100, 300, 200, tabs=4)
    text.cut_out(600, 100, 300, 200, tabs=4)
    text.lines += extra
    return text.write()


def test_a_bit_said_otherwise_is_read_again_and_kept_for_the_next_revision(stage):
    number = read_text(stage, plate())
    assert read(stage).sizes["new0"] == (300.0, 200.0)
    office(stage, "button how_read", "button how_read", "button how_read")
    assert office(stage, "touch Bit 1", "'5") == ("good", "odd.nc is read")
    assert read(stage).sizes["new0"] == (301.0, 201.0)
    shown = next(b for b in stage.desk.face().main if isinstance(b, Table)).rows[0]
    assert (str(shown.title), str(shown.note), str(shown.cells[0].text)) == (
        "Bit 1", "said here", "5 mm")  # fmt: skip
    office(stage, "button how_read", "button new", "button save")
    made = stage.ledger.view.get(Revision, f"{number}.A")
    assert made.read_as == ReadAs(bits=((1, 5.0),))
    (folder_with(stage) / "odd.nc").write_text(plate("(once more)"), encoding="ascii")
    office(stage, "button read_file", ODD)
    assert read(stage).revision.read_as == ReadAs(bits=((1, 5.0),))
    assert read(stage).unnamed == ()  # the same plate, by the same bit


def test_what_shapes_were_called_stays_when_a_bit_is_said_otherwise(stage):
    text = Text().take_bit(1).cut_out(100, 400, 180, 140, tabs=4)
    text.cut_out(100, 100, 180.5, 140, tabs=4).cut_out(600, 100, 200, 150, tabs=4)
    read_text(stage, text.write())
    office(stage, "'Heart", "part 061", "'Plate")
    called = {name: size for name, size in read(stage).sizes.items() if name != "new1"}
    office(stage, "button how_read")
    office(stage, "touch Bit 1", "'5")
    assert read(stage).unnamed == ()
    assert list(read(stage).parts.values()) == ["Heart", "Plate"]
    wider = {name: (a + 1, b + 1) for name, (a, b) in called.items()}
    assert {n: read(stage).sizes[n] for n in wider} == wider
    assert read(stage).chosen == ("061",)


def test_another_text_has_its_shapes_named_anew(stage):
    read_text(stage, plate())
    office(stage, "'Plate")
    folder = folder_with(stage)
    (folder / "odd.nc").write_text(plate("(once more)"), encoding="ascii")
    office(stage, "button how_read")
    office(stage, "touch Bit 1", "'5")
    assert read(stage).unnamed == ("new0",)


@pytest.mark.parametrize(
    ("words", "rows", "kept"),
    [
        ("Z is zero", ["touch at the face of the sheet"], ReadAs(zero="face")),
        ("X and Y are zero", ["touch at its centre"], ReadAs(origin="centre")),
        ("X and Y are zero", ["touch at its lower left corner"], ReadAs(origin="lower-left")),
        ("X and Y are zero", ["touch at its upper left corner"], ReadAs(origin="upper-left")),
        ("Deepest into", ["'1.2"], ReadAs(spoilboard_mm=1.2)),
        ("Manner of", ["touch P of a dwell is milliseconds"], ReadAs(dialect="milliseconds")),
    ],
)
def test_each_thing_that_was_assumed_can_be_said(stage, words, rows, kept):
    read_text(stage, plate())
    office(stage, "button how_read")
    office(stage, f"touch {words}", *rows)
    assert read(stage).revision.read_as == kept


def test_what_is_said_is_taken_back_as_the_text_shows(stage):
    read_text(stage, plate())
    office(stage, "button how_read")
    office(stage, "touch Z is zero", "touch at the face of the sheet")
    assert read(stage).revision.read_as == ReadAs(zero="face")
    office(stage, "touch Z is zero", "touch As the text shows")
    assert read(stage).revision.read_as == ReadAs()
    assert next(t for t in read(stage).taken if t.what == "zero").source == "assumed"


def test_said_so_that_nothing_is_cut_out_it_stays_as_it_was(stage):
    read_text(stage, plate())
    before = read(stage)
    office(stage, "button how_read")
    tone, said = office(stage, "touch Material", "touch 9 mm birch plywood")
    assert (tone, said) == ("stop", "odd.nc cuts no part out of 9 mm")
    assert read(stage) == before
    office(stage, "button how_read")
    assert office(stage, "touch Bit 1", "'5") == ("good", "odd.nc is read")
    assert read(stage).revision.material == before.revision.material


@pytest.mark.parametrize("typed", ["0", "101", "-1"])
def test_a_bit_that_cannot_be_is_refused(stage, typed):
    read_text(stage, plate())
    office(stage, "button how_read")
    assert office(stage, "touch Bit 1", f"'{typed}") == ("stop", "That is no such length")


def test_another_material_reads_the_text_again(stage):
    read_text(stage, plate().replace("Z-6.8", "Z-9.3"))
    before = read(stage).revision
    office(stage, "button how_read")
    office(stage, "touch Material", "touch 9 mm birch plywood")
    now = read(stage).revision
    assert now.material != before.material
    assert stage.desk.hand.work.intake.material == now.material


def test_everything_cut_is_explained(stage):
    read_text(stage, plate())
    books = read(stage).books
    assert (books.parts, books.slugs) == (2, 0)
    shared = books.parts_mm2 + books.waste_mm2 + books.skeleton_mm2 + books.kerf_mm2
    assert shared == pytest.approx(2440 * 1220, rel=1e-6)
    office(stage, "button new")
    pairs = {str(a): str(b) for a, b in shown(stage, Pairs).rows}
    assert pairs["All cuts"] == f"{books.cuts} closed cuts, 2 parts"
    assert pairs["Sheet"].startswith("parts 0.120, loose 0.000, skeleton")


FAULTS = ("M771", "M772", "G0 X2300 Y300 Z5", "G1 Z-6.8 F1200", "X2318", "Y318", "X2300", "Y300",
          "G0 Z5")  # fmt: skip


def shown(stage, kind):
    return next(b for b in (*stage.desk.face().main, *stage.desk.face().side)
                if isinstance(b, kind))  # fmt: skip


def test_a_row_of_a_problem_leads_to_its_place_and_its_mark_back_to_the_row(stage):
    read_text(stage, plate(*FAULTS))
    office(stage, "button new", "button new")
    told = read(stage).told
    number = next(n for n, p in enumerate(told, 1) if p.at)
    office(stage, f"touch {number} · Line")
    marks = shown(stage, SheetDrawing).marks
    assert [m.number for m in marks if m.chosen] == [number]
    assert [m.number for m in marks] == [n for n, p in enumerate(told, 1) if p.at]
    office(stage, "button show_path", "button next_problem")
    x, y = told[number - 1].at
    stage.desk.touch(x + 20, y)
    drawing = shown(stage, PathDrawing)
    assert [m.number for m in drawing.marks if m.chosen] == [number]
    lines = shown(stage, Listing).rows
    assert [cells[1].bold for cells, _ in lines][: len(told)].index(True) == number - 1
    assert office(stage, "button next_problem")[0] == "attention"


def test_a_touch_where_no_problem_lies_says_so(stage):
    read_text(stage, plate(*FAULTS))
    office(stage, "button new", "button new")
    assert str(stage.desk.touch(1000, 900).answer.said) == "No problem lies there"
    x, y = next(p.at for p in read(stage).told if p.at)
    assert str(stage.desk.touch(x + 20, y, 15).answer.said) == "No problem lies there"
    assert str(stage.desk.touch(x + 20, y, 25).answer.said) != "No problem lies there"


def test_what_must_be_mended_is_not_approved_by_one_touch(stage):
    off_the_bed = ("G0 Z5", "G0 X9000 Y300", "G1 Z-6.8 F1200", "G1 X9100", "G0 Z5")
    number = read_text(stage, plate(*off_the_bed))
    office(stage, "button new")
    assert read(stage).revision.stops
    take = next(p for p in stage.desk.face().presses if str(p.label) == "Take it in")
    assert take.style == "plain"
    assert office(stage, "button save") == ("good", "Revision A of NEW-SET is in")
    assert office(stage, "button approve")[1].endswith("in its file must be mended first")
    assert office(stage, "button yes")[0] == "ask", "a reason is asked for, too"
    assert not stage.ledger.view.get(CutFile, number).approved
    office(stage, "reason 43")
    assert stage.ledger.view.get(CutFile, number).approved == "A"


def test_hold_downs_are_proposed_moved_and_kept(stage):
    number = read_text(stage, plate())
    proposed = read(stage).laying.proposed
    assert read(stage).revision.hold_downs == proposed
    office(stage, "button hold_downs")
    assert str(stage.desk.touch(250, 200).answer.said) == "A piece lies there"
    assert str(stage.desk.touch(80, 200).answer.said) == "The bit comes too near there"
    x, y = proposed[0]
    assert str(stage.desk.touch(x + 9, y).answer.said) == "Hold-down 1"
    assert str(stage.desk.touch(1500, 800).answer.said) == "Hold-down 1 is moved"
    assert read(stage).revision.hold_downs == ((1500.0, 800.0), *proposed[1:])
    assert str(stage.desk.touch(1530, 800, 20).answer.said) != "Hold-down 1"
    stage.desk.touch(1530, 800, 20)  # taken, and taken away
    stage.desk.touch(1530, 800, 20)
    for _ in range(2):
        stage.desk.touch(1500, 800, 20)
    assert read(stage).revision.hold_downs == proposed[1:]
    stage.desk.touch(1300, 900)
    office(stage, "button hold_downs", "button new", "button save")
    made = stage.ledger.view.get(Revision, f"{number}.A")
    assert made.hold_downs == (*proposed[1:], (1300.0, 900.0))
    assert all(made.clear.has_room(place) for place in made.hold_downs)
    assert not made.clear.has_room((80.0, 200.0))


def test_hold_downs_that_were_moved_stay_when_it_is_read_again(stage):
    read_text(stage, plate())
    office(stage, "button hold_downs")
    stage.desk.touch(1500, 800)
    moved = read(stage).revision.hold_downs
    office(stage, "button hold_downs", "button how_read")
    office(stage, "touch Bit 1", "'5")
    assert read(stage).revision.hold_downs == moved
    office(stage, "button hold_downs", "button as_proposed")
    assert read(stage).revision.hold_downs == read(stage).laying.proposed


def test_a_shape_that_differs_by_little_is_shown_beside_the_known_one(stage):
    read_text(stage, plate())
    office(stage, "button new", "button save")
    (known,) = [p for p in stage.ledger.facts(Part) if p.name == "300.0 × 200.0"]
    text = Text().take_bit(1).cut_out(100, 100, 301, 200, tabs=4)
    (folder_with(stage) / "odd.nc").write_text(text.write(), encoding="ascii")
    office(stage, "button read_file", ODD)
    drawing = shown(stage, PartDrawing)
    assert drawing.beside == known
    assert "301.00 × 200.00 mm instead of 300.00 × 200.00." in str(drawing.note)
    text = Text().take_bit(1).cut_out(100, 100, 600, 200)
    (folder_with(stage) / "odd.nc").write_text(text.write(), encoding="ascii")
    office(stage, "button put_down", "@area office", "button list_cutfile", "'NEW-SET")
    office(stage, "button read_file", ODD)
    assert shown(stage, PartDrawing).beside is None


def test_bits_stand_in_the_order_in_which_they_are_put_in(stage):
    text = Text().take_bit(2, "(D=3.0)").cut([(200, 150), (300, 150)], 1.0, closed=False)
    text.take_bit(1, "(D=6.0)").cut_out(100, 100, 300, 200)
    read_text(stage, text.write())
    assert [(b.number, b.diameter_mm) for b in read(stage).revision.bits] == [(2, 3.0), (1, 6.0)]


def two_bits():
    """A plate cut by bit 9, which nothing tells the width of, after bit 1 made a hole."""
    text = Text().take_bit(1).cut_out(100, 100, 300, 200, tabs=4)
    text.lines.append("T9 M6")
    return text.cut_out(600, 100, 300, 200, tabs=4).write()


def test_a_bit_that_nothing_tells_is_asked_before_anything_is_named(stage):
    (folder_with(stage) / "odd.nc").write_text(two_bits(), encoding="ascii")
    new_cut_file(stage)
    tone, said = office(stage, "button read_file", BIRCH, ODD)
    assert (tone, said) == ("ask", "How wide is bit 9? The file does not say")
    rows = next(b for b in stage.desk.face().main if isinstance(b, Table)).rows
    assert "6 mm" in [str(r.title) for r in rows]  # a bit of the shop's
    assert not any(r.selected for r in rows)
    assert "As the text shows" not in [str(r.title) for r in rows]
    assert office(stage, "touch 6 mm")[1].startswith("odd.nc")
    assert read(stage).revision.read_as == ReadAs(bits=((9, 6.0),))
    assert stage.desk.hand.work.intake.how == ""  # what was read is shown, its shapes are named


def test_a_file_is_not_taken_in_while_a_bit_is_not_known(stage):
    (folder_with(stage) / "odd.nc").write_text(two_bits(), encoding="ascii")
    number = new_cut_file(stage)
    office(stage, "button read_file", BIRCH, ODD, "button how_read", "button how_read")
    office(stage, *["button new"] * len(read(stage).unnamed))
    tone, said = office(stage, "button save")
    assert (tone, said) == ("ask", "How wide is bit 9? The file does not say")
    assert stage.ledger.view.get(Revision, f"{number}.A") is None
    office(stage, "'6", *["button new"] * 2, "button save")
    assert stage.ledger.view.get(Revision, f"{number}.A").read_as.bits == ((9, 6.0),)
