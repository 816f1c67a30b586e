"""What `tests.compare` tells of two folders of pictures and papers."""

import sys

import pytest
from PIL import Image
from reportlab.pdfgen.canvas import Canvas

from tests import compare


@pytest.fixture
def folders(tmp_path):
    """Old and new, each with two equal pictures and a paper of two pages."""
    for name in ("old", "new"):
        folder = tmp_path / name
        (folder / "papers").mkdir(parents=True)
        for picture in ("one", "two"):
            Image.new("RGB", (40, 20), "white").save(folder / f"{picture}.png")
        paper(folder, "slip 1", "slip 2")
    return tmp_path / "old", tmp_path / "new"


def paper(folder, *pages):
    canvas = Canvas(str(folder / "papers" / "slip.pdf"), pagesize=(100, 60), invariant=True)
    for text in pages:
        canvas.drawString(10, 30, text)
        canvas.showPage()
    canvas.save()


def run(monkeypatch, folders, *more):
    monkeypatch.setattr(sys, "argv", ["compare", *map(str, folders), *more])
    return compare.main()


def test_equal_folders(folders, monkeypatch, capsys):
    assert run(monkeypatch, folders) == 0
    assert capsys.readouterr().out == "3 compared, 0 differ, 0 of them not listed\n"


def test_a_dot_is_found_and_shown_side_by_side(folders, monkeypatch, capsys):
    new = folders[1]
    with Image.open(new / "two.png") as picture:
        picture.putpixel((7, 5), (0, 0, 0))
        picture.save(new / "two.png")
    assert run(monkeypatch, folders) == 1
    assert "two.png: 0.125% of the pixels, within (7, 5, 8, 6)" in capsys.readouterr().out
    with Image.open(new / "compared" / "two.png") as shown:
        assert shown.size == (3 * 40 + 2 * compare.GAP, 20)
    assert run(monkeypatch, folders) == 1
    assert "3 compared" in capsys.readouterr().out  # what it wrote itself is no picture


def test_a_page_of_a_paper_differs(folders, monkeypatch, capsys):
    paper(folders[1], "slip 1", "slip 3")
    assert run(monkeypatch, folders) == 1
    assert "papers/slip.pdf: " in capsys.readouterr().out
    made = [f.name for f in (folders[1] / "compared").iterdir()]
    assert made == ["papers-slip.pdf-page-2.png"]


def test_what_is_missing_and_what_has_another_size(folders, monkeypatch, capsys):
    old, new = folders
    (new / "one.png").unlink()
    Image.new("RGB", (41, 20), "white").save(new / "two.png")
    paper(new, "slip 1")
    assert run(monkeypatch, folders) == 1
    out = capsys.readouterr().out
    assert f"one.png: only in {old}" in out
    assert "two.png: 100.000% of the pixels" in out
    assert "papers/slip.pdf: 2 pages were 1" in out


def test_what_is_listed_may_differ_and_must(folders, monkeypatch, capsys, tmp_path):
    (folders[1] / "one.png").unlink()
    may = tmp_path / "may.txt"
    may.write_text("# picture, reason\none.png its room is gone\n", encoding="utf-8")
    assert run(monkeypatch, folders, "--listed", str(may)) == 0
    assert "(listed: its room is gone)" in capsys.readouterr().out
    may.write_text("one.png its room is gone\ntwo.png larger\n", encoding="utf-8")
    assert run(monkeypatch, folders, "--listed", str(may)) == 1
    assert "two.png: listed, but equal" in capsys.readouterr().out
