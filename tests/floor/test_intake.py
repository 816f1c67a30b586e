"""A cut file's text taken in by the office: read, named, kept, approved, and read again."""

import copy
import hashlib
import os
import shutil
from dataclasses import replace
from pathlib import Path

import msgspec
import pytest
from msgspec import structs

import demo_db
from station.floor.office.acts import SetFact
from station.floor.office.looking import PAGE
from station.floor.office.work import say_size
from station.jobs import read_cut_file
from station.jobs.messages import Outcome
from station.queries.revisions import list_differences
from station.shop import lengths
from station.shop.acts import Act
from station.shop.faces import Listing, PathDrawing, Table
from station.shop.facts import CutFile, Material, Part, Revision, Router
from station.shop.plain import to_plain
from station.shop.words import Say
from tests.floor.shop_small import GAUGES
from tests.replay import PIN
from tests.touch import NO_ROW

TEXTS = Path(demo_db.__file__).parent / "cut_files"


BIRCH, ST120, ODD = "touch 6.5 mm birch plywood", "touch ST120-SET-A.nc", "touch odd.nc"
pytestmark = [pytest.mark.slow, pytest.mark.usefixtures("compiled", "read_once")]
READ: dict[bytes, Outcome] = {}


@pytest.fixture
def read_once(monkeypatch):
    """The same text read for the same setting is worked out once for all these tests."""
    whole = read_cut_file._work_out

    def work_out(request, program, setting, digest, report):
        asked = structs.replace(request, path=Path(request.path).name)
        key = msgspec.json.encode((asked, digest))
        if key not in READ:
            READ[key] = whole(request, program, setting, digest, report)
        return copy.deepcopy(READ[key])

    monkeypatch.setattr(read_cut_file, "_work_out", work_out)


def office(stage, *lines):
    """Codes and typed texts, one after the other; the last answer."""
    for line in lines:
        given = stage.desk.take(line[1:]) if line.startswith("'") else stage.send(line)
    return given.answer.tone, str(given.answer.said)


def folder_with(stage, *names):
    """The shop's folder with these demo texts in it, the last one the newest."""
    folder = stage.ledger.path.parent / "files"
    folder.mkdir(exist_ok=True)
    for age, name in enumerate(names):
        shutil.copy(TEXTS / name, folder / name)
        os.utime(folder / name, (age, age))
    return folder


def new_cut_file(stage):
    """A cut file NEW-SET without a revision, its form open."""
    office(stage, "@worker 07", "@area office", "button list_cutfile", "button new")
    office(stage, "'NEW-SET", "touch description", "'Something new", "button save", "worker 07")
    office(stage, PIN, "'NEW-SET")
    return stage.desk.hand.work.chosen


def test_from_a_text_to_an_approved_revision(stage):
    folder_with(stage, "SG010-SET-C.nc", "ST120-SET-A.nc")
    number = new_cut_file(stage)
    thick = ("stop", "ST120-SET-A.nc cuts no part out of 9 mm")
    assert office(stage, "button read_file", "touch 9 mm birch plywood", ST120) == thick
    assert office(stage, BIRCH) == ("good", "2 cut files")
    assert office(stage, ST120) == ("good", "ST120-SET-A.nc is read")
    assert office(stage, "button save") == ("stop", "A shape has no name yet")
    assert office(stage, "'ST-120") == ("good", "That is ST-120")
    assert office(stage, "button save") == ("good", "Revision A of NEW-SET is in")
    made = stage.ledger.view.get(Revision, f"{number}.A")
    (part,) = [p for p in stage.ledger.facts(Part) if p.name == "ST-120"]
    assert sorted(part.shape.box) == pytest.approx([40, 120], abs=0.01)
    assert made.makes() == {part.id: len(made.placed)}
    assert made.material == stage.ledger.view.shelf(Material, "all", 9)[0].id
    assert stage.ledger.view.get(CutFile, number).approved == ""
    office(stage, "button approve")
    assert stage.ledger.view.get(CutFile, number).approved == "A"


def test_a_known_part_is_found_again_by_its_shape(stage):
    folder_with(stage, "ST120-SET-A.nc", "SG010-SET-C.nc")
    new_cut_file(stage)
    office(stage, "button read_file", BIRCH, ST120)
    office(stage, "'ST-120", "button save", "button read_file", ST120)
    assert stage.desk.hand.work.intake.read is None  # the very text is known
    folder = folder_with(stage, "ST120-SET-A.nc")
    text = (folder / "ST120-SET-A.nc").read_text(encoding="utf-8")
    (folder / "again.nc").write_text("(written once more)\n" + text, encoding="utf-8")
    assert office(stage, "button read_file", "touch again.nc")[1] == "again.nc is read"
    assert stage.desk.hand.work.intake.read.unnamed == ()


def test_a_shape_is_named_by_touch_after_its_size(stage):
    folder_with(stage, "ST120-SET-A.nc")
    new_cut_file(stage)
    office(stage, "button read_file", BIRCH, ST120)
    assert office(stage, "button new") == ("good", "That is 120.0 × 40.0")


def test_what_differs_is_told_against_the_approved_revision(stage):
    folder_with(stage, "ST120-SET-A.nc")
    number = new_cut_file(stage)
    office(stage, "button read_file", BIRCH, ST120, "'ST-120", "button save")
    office(stage, "button approve")
    first = stage.ledger.view.get(Revision, f"{number}.A")
    later = replace(first, letter="B", placed=first.placed[1:], minutes=first.minutes * 2)
    found = [str(s) for s in list_differences(first, later, {})]
    was = len(first.placed)
    assert f"{was - 1} instead of {was} a sheet." in found[0]
    assert f"{later.minutes:.1f} min a sheet instead of {first.minutes:.1f}." in found
    assert list_differences(first, first, {}) == []


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (b"", "The file is empty"),
        (b"\x00\xfe\x00hello", "No line of it moves the router"),
        (b"\xff\xfeh\x00i\x00", "Save it as plain text"),
        (b"O100 WHILE [1]\nM30\n", "cannot be read"),
    ],
)
def test_a_text_that_is_no_cut_file(stage, text, said):
    (folder_with(stage) / "odd.nc").write_bytes(text)
    new_cut_file(stage)
    office(stage, "button read_file", BIRCH)
    answer = stage.send(ODD).answer
    assert (answer.tone, said in str(answer.said)) == ("stop", True), str(answer.said)
    assert isinstance(answer.said.values["why"], Say)  # a sentence of ours: it is translated


# in inches the path is as much larger, and the 6 mm of the bit are not
@pytest.mark.parametrize(("row", "along"), [("Millimetres", 120.0), ("Inches", 126 * 25.4 - 6)])
def test_a_text_without_units_is_asked_about(stage, row, along):
    text = (TEXTS / "ST120-SET-A.nc").read_text(encoding="utf-8")
    assert "G21" in text
    text = text.replace("G21", "")
    (folder_with(stage) / "odd.nc").write_text(text, encoding="utf-8")
    new_cut_file(stage)
    office(stage, "button read_file", BIRCH)
    asked = ("attention", "odd.nc does not say whether it is in mm or in inches")
    assert office(stage, ODD) == asked
    rows = next(b for b in stage.desk.face().main if isinstance(b, Table)).rows
    assert [str(r.title) for r in rows] == ["Millimetres", "Inches"]
    assert office(stage, f"button {NO_ROW}") == ("attention", "There is nothing in that row")
    office(stage, f"touch {row}")
    assert stage.desk.hand.work.intake.read.sizes["new0"][0] == pytest.approx(along, abs=0.05)
    assert stage.desk.hand.work.intake.which is None


def test_a_part_without_a_shape_gets_the_one_that_is_cut(stage):
    folder_with(stage, "ST120-SET-A.nc")
    new_cut_file(stage)
    assert stage.ledger.view.get(Part, "061").shape is None
    office(stage, "button read_file", BIRCH, ST120, "part 061", "button save")
    box = stage.ledger.view.get(Part, "061").shape.box
    assert sorted(box) == pytest.approx([40, 120], abs=0.01)


@pytest.fixture
def at_bed(stage, tmp_path):
    """Router 1 with a batch of a revision whose text is known, and the folder it runs from."""
    folder = tmp_path / "router 1"
    folder.mkdir()
    text = (TEXTS / "SG010-SET-C.nc").read_bytes()
    digest = hashlib.sha256(text).hexdigest()
    view = stage.ledger.view
    revision = replace(view.get(Revision, f"{GAUGES}.C"), digest=digest)
    router = replace(view.get(Router, "1"), folder=str(folder))
    for n, fact in enumerate((revision, router)):
        args = SetFact(of=fact.kind, value=to_plain(fact), approved="07")
        act = Act(id=f"set{n}", kind=args.kind, at=stage.clock(), subject=fact.key, args=args)
        assert stage.ledger.record(act).entry
    office(stage, "@worker 07", "@area office", "button list_cutfile", "'SG010-SET")
    office(stage, "button release_batch", "router 1", "1", "worker 07", PIN)
    stage.desk.at(area="loading", router="1")
    office(stage, "traveller 00001")
    return folder, text


def test_the_text_that_is_run_is_looked_at(stage, at_bed):
    folder, text = at_bed
    other = ("stop", "The router's folder has no text of revision C")
    assert office(stage, "button file_right") == other
    assert not stage.desk.hand.work.ticks
    (folder / "old name.nc").write_bytes(text)
    assert office(stage, "button file_right") == ("good", "old name.nc is revision C")
    assert stage.desk.hand.work.ticks == ("file",)
    (folder / "old name.nc").write_bytes(text.replace(b"G1", b"G0", 1))
    assert office(stage, "button file_right") == other


def test_a_folder_that_is_away_ticks_nothing(stage, at_bed):
    folder, _ = at_bed
    folder.rmdir()
    tone, said = office(stage, "button file_right")
    assert (tone, str(folder) in said) == ("stop", True)
    assert not stage.desk.hand.work.ticks


def test_the_path_is_shown_and_the_draft_stays_small(stage):
    folder_with(stage, "ST120-SET-A.nc")
    new_cut_file(stage)
    office(stage, "button read_file", BIRCH, ST120)
    path = stage.desk.hand.work.intake.read.path
    assert len(path.strokes) < 100_000
    assert office(stage, "button show_path") == ("good", "The path of the bit")
    (block,) = stage.desk.face().main
    assert isinstance(block, PathDrawing)
    assert max(x for s in block.strokes for x, _, _ in s.points) < block.length_mm
    assert block.strokes[-1].points[-1][2] == pytest.approx(block.seconds, abs=0.2)
    assert office(stage, "button show_path") == ("good", "What was read of it")
    assert not any(isinstance(b, PathDrawing) for b in stage.desk.face().main)


def test_every_problem_of_a_text_can_be_paged_to(stage):
    text = (TEXTS / "ST120-SET-A.nc").read_text(encoding="utf-8").splitlines()
    for n in range(20):
        text.insert(60 + 2 * n, f"M77{n}")
    (folder_with(stage) / "odd.nc").write_text("\n".join(text), encoding="utf-8")
    new_cut_file(stage)
    office(stage, "button read_file", BIRCH, ODD, "'ST-120")
    read = stage.desk.hand.work.intake.read
    assert read.found == len(read.told) > 2 * PAGE
    seen = []
    while len(seen) < len(read.told):
        told = next(b for b in stage.desk.face().main if isinstance(b, Listing))
        *rows, (_, code) = told.rows
        seen += [str(cells[1].text) for cells, _ in rows]
        assert str(told.title).startswith("To look at: ")
        stage.desk.take(code)
    assert seen == [f"Line {p.line}: {p.words!s}" for p in read.told]
    told = next(b for b in stage.desk.face().main if isinstance(b, Listing))
    assert str(told.rows[0][0][1].text) == seen[0]  # round again


def test_cards_ask_the_path_each_time_they_are_scanned(stage):
    folder_with(stage, "ST120-SET-A.nc")
    new_cut_file(stage)
    office(stage, "button read_file", BIRCH, ST120, "button show_path")
    office(stage, "button path_layers")
    asked = []
    for card in ("button path_in", "button path_in", "button row_2", "button path_play"):
        assert office(stage, card)[0] == "good"
        (block,) = stage.desk.face().main
        asked.append(block.asked)
    assert asked == [(1, "in"), (2, "in"), (3, "layer 2"), (4, "play")]


@pytest.mark.parametrize(
    ("card", "said", "do"),
    [
        ("path_play", "Play the path, or pause", "Look it over."),
        ("row_2", "Layer 2", "It is shown while its key is ticked."),
        ("path_in", "Closer", "Look it over."),
    ],
)
def test_the_answer_claims_no_more_than_the_screen_shows(stage, card, said, do):
    folder_with(stage, "ST120-SET-A.nc")
    new_cut_file(stage)
    office(stage, "button read_file", BIRCH, ST120, "button show_path", "button path_layers")
    for _ in range(2):
        answer = stage.send(f"button {card}").answer
        assert (str(answer.said), str(answer.do)) == (said, do)


def test_a_form_is_typed_down_and_stays_open_when_it_is_saved(stage):
    """A name, then its description: Enter goes on to the next field."""
    office(stage, "@worker 07", "@area office", "button list_cutfile", "button new")
    office(stage, "'KEY-SET", "'Keys of three sizes")
    assert stage.desk.hand.work.form["name"] == "KEY-SET"
    assert stage.desk.hand.work.form["words"] == "Keys of three sizes"
    office(stage, "button save", "worker 07")
    number = stage.desk.hand.work.form["id"]
    assert office(stage, PIN) == ("good", f"Cut file {number} is new")
    folder_with(stage, "ST120-SET-A.nc")
    assert office(stage, "button read_file")[0] == "good"


def test_the_text_of_a_run_is_taken_in_though_it_cuts_no_part_out(stage):
    text = "G21 G90 T1 M6\nM3 S18000\nG0 X50 Y50 Z5\nG1 Z-2 F900\nX90 F3000\nG0 Z5\nM30\n"
    (folder_with(stage) / "pocket.nc").write_text(text)
    office(stage, "@worker 07", "@area office", "button list_cutfile", "'POCKET-B")
    tone, words = office(stage, "button read_file", "touch pocket.nc")
    assert (tone, words) == ("good", "pocket.nc is read")
    office(stage, "button save", "worker 07", PIN)
    made = stage.ledger.view.get(Revision, "071.B")
    assert made is not None
    assert (made.placed, made.digest) == ((), hashlib.sha256(text.encode()).hexdigest())
    assert [(bit.number, bit.cut_mm) for bit in made.bits] == [(1, 47.0)]


def test_the_size_of_a_shape_is_told_from_its_true_size():
    """11 3/4 inches are 298.45 mm: a tenth of a mm less would be another inch."""
    assert str(say_size((298.45, 25.4))) == "298.4 × 25.4 mm"
    lengths.use_units("inch", fractions=False)
    assert str(say_size((298.45, 25.4))) == "11.75 × 1 in"
    assert str(say_size((300.04, 9.525))) == "11.813 × 0.375 in"
    assert say_size("298.1 × 25.0 mm") == "298.1 × 25.0 mm", "as an older program kept it"
