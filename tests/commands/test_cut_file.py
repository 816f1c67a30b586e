"""The command's text in and out."""

import argparse
import json
import os

import pytest

from station.commands import main
from station.commands.cut_file import CutFileMachine, add_arguments, analyse_files
from station.shop.facts import Bit, Router
from tests.cutting.layouts import make

FIELDS = {"feed_mm", "rapid_mm", "time_s", "bits", "parts", "tab_count", "bounds_mm", "waste_mm2",
          "scrap_mm2", "skeleton_mm2", "kerf_mm2", "closed_cuts", "slugs", "assumed",
          "problems"}  # fmt: skip


def options(*words):
    parser = argparse.ArgumentParser()
    add_arguments(parser)
    return parser.parse_args(list(map(str, words)))


@pytest.fixture
def file(tmp_path):
    path = tmp_path / "a.nc"
    path.write_text(make(0).text)
    return path


@pytest.mark.slow
def test_one_file_gives_one_object_with_the_fields(file):
    given = options(file, "--json", "--bit-diameter", "1=3")
    text, wrong = analyse_files(given)
    got = json.loads(text)
    assert (wrong, set(got), got["time_s"]) == ([], FIELDS, None)
    assert set(got["bounds_mm"]) == {"xmin", "ymin", "zmin", "xmax", "ymax", "zmax"}
    part = {
        "name",
        "count",
        "mirrored",
        "width_mm",
        "length_mm",
        "area_mm2",
        "perimeter_mm",
        "tabs",
        "holes",
        "hollows",
    }
    assert all(set(p) == part for p in got["parts"])


def test_a_router_gives_the_time(file):
    given = options(file)
    text, _ = analyse_files(given, CutFileMachine(router=Router(id="1", name="Router 1")))
    assert json.loads(text)["time_s"] > 10


def kinds(text):
    return {p["kind"] for p in json.loads(text)["problems"]}


@pytest.mark.slow
def test_the_routers_hold_downs_are_looked_at(file):
    given = options(file)
    piece = json.loads(analyse_files(given)[0])["bounds_mm"]
    on_path = ((piece["xmin"] + piece["xmax"]) / 2, (piece["ymin"] + piece["ymax"]) / 2)
    grid = tuple((x, y) for x in range(0, 2440, 20) for y in range(0, 1220, 20))
    for places, hit in (((), False), ((on_path, *grid), True), (((-500.0, -500.0),), False)):
        router = Router(id="1", name="Router 1", hold_downs=places)
        assert (
            "hold-down" in kinds(analyse_files(given, CutFileMachine(router=router))[0])
        ) == hit


def test_the_changers_bits_are_looked_at(tmp_path):
    path = tmp_path / "a.nc"
    path.write_text("G21 T2 M6\nS18000 M3\nG1 Z-3 F900\nX50 F3000\nG0 Z5\nM30\n")
    given = options(path)
    router = Router(id="5", name="Router 5", changer=True)
    for number, missing in ((1, True), (2, False)):
        bit = Bit(id="12", words="", diameter_mm=3.0, flutes=1)
        text, _ = analyse_files(given, CutFileMachine(router=router, pockets={number: bit}))
        assert ("bit-missing" in kinds(text)) == missing
    assert json.loads(text)["bits"][0]["diameter_mm"] == 3.0
    given = options(path, "--bit-diameter", "2=4")
    text, _ = analyse_files(given, CutFileMachine(router=router, pockets={2: bit}))
    assert json.loads(text)["bits"][0]["diameter_mm"] == 4.0


def test_what_tells_a_bit_is_asked_in_turn_and_said(tmp_path):
    path = tmp_path / "a.nc"
    cut = "G21\nS18000 M3\nG1 Z-3 F900\nX50 F3000\nG0 Z5\nM30\n"
    router = Router(id="1", name="Router 1", usual_bit_mm=8.0)
    bit = Bit(id="12", words="", diameter_mm=4.0)
    for head, machine, size, why in (
        ("(3.175 mm straight bit)\n", CutFileMachine(router, spindle=bit), 3.175, "as line 1"),
        ("", CutFileMachine(router, spindle=bit), 4.0, "in the spindle"),
        ("", CutFileMachine(router), 8.0, "as usual on this router"),
        ("", CutFileMachine(), 6.0, "only assumed"),
    ):
        path.write_text(head + cut)
        told = json.loads(analyse_files(options(path), machine)[0])
        assert told["bits"][0]["diameter_mm"] == size
        assert any(why in line for line in told["assumed"])
        assert ("bit-differs" in kinds(json.dumps(told))) == (size == 3.175)


ARCHIVE = bytes(range(256)) * 4  # as what is packed: every byte about as often


def test_several_files(file):
    given = options(file, file)
    text, _ = analyse_files(given)
    assert [f["file"] for f in json.loads(text)["files"]] == [str(file)] * 2


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("none.nc", None),
        ("loop.nc", b"O100 SUB\n"),
        ("folder", "folder"),
        ("letter.nc", b"Dear shop,\nplease cut ten plates.\n"),
        ("mark.nc", b"%"),
        ("zeros.nc", b"\x00" * 50),
        ("units.nc", b"G21\n"),
        ("archive.nc", ARCHIVE),
    ],
)
def test_bad_input_is_a_sentence(tmp_path, name, data):
    path = tmp_path / name
    if data == "folder":
        path.mkdir()
    elif data:
        path.write_bytes(data)
    given = options(path)
    text, (wrong,) = analyse_files(given)
    assert text == ""
    assert wrong.endswith(".")
    assert ("no text but something else" in wrong) == (name == "archive.nc")


def test_a_text_that_cuts_nothing_is_told_beside_what_it_moves(tmp_path, capsys):
    path = tmp_path / "over.nc"
    path.write_text("G21 G90\nG0 X10 Y20\nG1 X30 F100\nM30\n", encoding="ascii")
    assert main.main(["cut-file", str(path), "--data", str(tmp_path / "no shop")]) == 0
    told = capsys.readouterr()
    assert json.loads(told.out)["feed_mm"] == 20
    assert "nothing-cut" in kinds(told.out)
    assert told.err == f"{path}: Nothing is cut into the sheet.\n"


def test_one_bad_file_costs_the_others_nothing(file, tmp_path, capsys):
    words = ["cut-file", str(file), str(tmp_path / "none.nc"), "--data", str(tmp_path / "no shop")]
    assert main.main(words) == 2
    told = capsys.readouterr()
    assert [one["file"] for one in json.loads(told.out)["files"]] == [str(file)]
    assert set(json.loads(told.out)["files"][0]) == FIELDS | {"file"}
    assert "none.nc cannot be read: No such file or directory." in told.err


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "pipe.nc")
    _, (wrong,) = analyse_files(options(tmp_path / "pipe.nc"))
    assert "it is no plain file" in wrong


@pytest.mark.parametrize(
    "words",
    [("--sheet", "big"), ("--sheet", "0x5"), ("--bit-diameter", "x"), ("--bit-diameter", "-1"),
     ("--dialect", "none"), ("--dialect", "report+none"), ("--thickness", "thick"),
     ("--thickness", "nan"), ("--thickness", "0"), ("--thickness", "-6"), ("--spoilboard", "nan"),
     ("--spoilboard", "-0.1"), ("--spoilboard", "inf")],
)  # fmt: skip
def test_bad_options_are_refused(words, file):
    with pytest.raises(SystemExit):
        options(file, *words)


def test_a_bare_diameter_is_for_every_bit(file):
    given = options(file, "--bit-diameter", "4")
    text, _ = analyse_files(given)
    assert {b["diameter_mm"] for b in json.loads(text)["bits"]} == {4.0}


@pytest.mark.parametrize("data", [b"", b"\n", b" \r\n\r\n"])
def test_an_empty_file_is_refused(tmp_path, data):
    path = tmp_path / "x.nc"
    path.write_bytes(data)
    (refused,) = analyse_files(options(path))[1]
    assert str(refused).endswith("The file is empty. Choose another.")


@pytest.mark.parametrize("data", [b"G21 G0 X1", b"G4 P1", b"G21\nG81 X1 Y1 Z-3 R1 F9"])
def test_hardly_any_file(tmp_path, data):
    path = tmp_path / "x.nc"
    path.write_bytes(data)
    given = options(path)
    assert analyse_files(given)[1] == []
