"""The office's lists as CSV: out, changed, in again; and what is wrong, by line."""

import pytest

from station.commands import pin as pins
from station.files import lists
from station.shop.facts import Material, Part, RackPlace, Reason, Worker
from tests.replay import PIN, Stage

AT = "2026-11-25T07:00:00"


@pytest.fixture
def ledger(tmp_path):
    stage = Stage(tmp_path)
    yield stage.ledger
    assert stage.ledger.check() == []
    stage.ledger.close()


@pytest.mark.parametrize("kind", lists.NAMES.values(), ids=lists.NAMES)
def test_every_list_goes_out_and_in_unchanged(ledger, tmp_path, kind):
    file = tmp_path / "list.csv"
    before = list(ledger.facts(kind))
    file.write_text(lists.write(ledger, kind), encoding="utf-8")
    assert lists.read(ledger, kind, file, "07", AT, "t1") == []
    assert list(ledger.facts(kind)) == before


def test_a_changed_value_and_a_new_row_are_taken_in(ledger, tmp_path):
    file = tmp_path / "materials.csv"
    text = lists.write(ledger, Material).replace("6.5 mm birch plywood", "Birch of 6.5 mm")
    file.write_text(
        "\ufeff" + text + "5,MDF 3 mm,3.0,2.9,3.1,2440,1220,750,0,0,0,yes\n", encoding="utf-8"
    )
    assert lists.read(ledger, Material, file, "07", AT, "t1") == []
    assert ledger.view.get(Material, "1").name == "Birch of 6.5 mm"
    assert ledger.view.get(Material, "5").high_mm == 3.1
    assert ledger.view.get(Part, "014").shape is not None


@pytest.mark.parametrize(
    ("change", "problem"),
    [
        (lambda t: t.replace("id,", "number,", 1), "line 1: this list has no column number;"),
        (lambda t: "", "line 1: the column id is missing"),
        (lambda t: t.replace("name,", "id,", 1), "line 1: column id stands there twice"),
        (lambda t: t[: len(t) // 2], ", wanted: 12"),
        (lambda t: t.replace("6.9", "thick"), "line 2: high, mm must be a number"),
    ],
)
def test_what_is_wrong_is_told_by_line_and_nothing_is_taken_in(ledger, tmp_path, change, problem):
    file = tmp_path / "materials.csv"
    text = lists.write(ledger, Material).replace("6.5 mm birch plywood", "Birch of 6.5 mm")
    file.write_text(change(text), encoding="utf-8")
    problems = lists.read(ledger, Material, file, "07", AT, "t1")
    assert any(problem in one for one in problems), problems
    assert ledger.view.get(Material, "1").name == "6.5 mm birch plywood"


def test_what_an_older_system_wrote_is_read_and_no_text_is_refused(ledger, tmp_path):
    file = tmp_path / "materials.csv"
    file.write_bytes("id,name\n1,Bögen\n".encode("cp1252"))
    assert lists.read(ledger, Material, file, "07", AT, "t1") == []
    assert ledger.view.get(Material, "1").name == "Bögen"
    file.write_bytes("id,name\n1,Bögen\n".encode("utf-16"))
    assert "is no text" in lists.read(ledger, Material, file, "07", AT, "t2")[0]


@pytest.mark.parametrize(
    ("worker", "pin", "may"),
    [
        ("07", PIN, True),
        ("07", "1111", False),
        ("02", PIN, False),
        ("99", PIN, False),
    ],
)
def test_only_a_supervisor_takes_a_list_in(ledger, monkeypatch, worker, pin, may):
    monkeypatch.setattr(pins, "ask_pin", lambda _words: pin)
    assert pins.ask_for_supervisor(ledger, worker, "2026-11-25T07:00:00") is may
    assert ledger.view.get(Worker, "07").supervisor


def _parts(ledger, change):
    """The list of parts as a spreadsheet might hand it back."""
    return lists.read_text(ledger.view, change(lists.write(ledger, Part)))


@pytest.mark.parametrize("sign", [";", "\t"])
def test_a_spreadsheets_own_sign_between_columns_is_read(ledger, sign):
    text = lists.write(ledger, Material).replace(",", sign)
    found = lists.read_text(ledger.view, text)
    assert found.kind is Material
    assert not found.problems


def test_leading_zeros_that_were_lost_are_told_by_line(ledger):
    found = _parts(ledger, lambda t: t.replace("\n014,", "\n14,"))
    assert any("14 is 014 here: keep its zeros" in str(p) for p in found.problems)


def test_a_number_that_stands_twice_is_told_by_line(ledger):
    found = _parts(ledger, lambda t: t + t.splitlines()[1] + "\n")
    assert any("stands in line 2 already" in str(p) for p in found.problems)


def test_each_header_belongs_to_one_list():
    headers = [lists.list_names(kind) for kind in lists.NAMES.values()]
    assert len(set(headers)) == len(headers)


def test_a_list_taken_in_is_one_entry(ledger, tmp_path):
    file, before = tmp_path / "m.csv", ledger.count()
    text = lists.write(ledger, Material).replace("birch", "beech")
    file.write_text(text, encoding="utf-8")
    assert lists.read(ledger, Material, file, "07", AT, "t2") == []
    assert ledger.count() == before + 1


def test_a_file_of_before_a_field_came_is_read_and_the_field_stays(ledger, tmp_path):
    file = tmp_path / "reasons.csv"
    file.write_text("id,words,use,first_off,rehome\n03,cut too deep,spoiled,no,no\n")
    assert lists.read_text(ledger.view, file.read_text()).kind is Reason
    assert lists.read(ledger, Reason, file, "07", AT, "t1") == []
    known = ledger.view.get(Reason, "03")
    assert (known.words, known.areas) == ("cut too deep", ("trimming",))


def test_columns_may_stand_in_any_order(ledger, tmp_path):
    file = tmp_path / "materials.csv"
    file.write_text("high_mm;low_mm;thickness_mm;name;id\n3,2;2,8;3,0;MDF 3 mm;7\n")
    assert lists.read(ledger, Material, file, "07", AT, "t1") == []
    made = ledger.view.get(Material, "7")
    assert (made.name, made.high_mm, made.length_mm) == ("MDF 3 mm", 3.2, 2440.0)


def test_a_new_fact_without_a_column_that_it_needs_is_refused_by_line(ledger, tmp_path):
    file = tmp_path / "materials.csv"
    file.write_text("id,name,thickness_mm,low_mm\n7,MDF 3 mm,3.0,2.8\n")
    problems = lists.read(ledger, Material, file, "07", AT, "t1")
    assert problems == ["line 2: high, mm is missing"]


@pytest.mark.parametrize("turned", [False, True])
def test_lists_that_name_each_other_come_in_together_in_any_order(ledger, tmp_path, turned):
    parts, places = tmp_path / "parts.csv", tmp_path / "places.csv"
    parts.write_text("id,name,words,rack\nHC-7,HC,Comb,489\n", encoding="utf-8")
    places.write_text("id,name,part\n489,E 1,HC-7\n", encoding="utf-8")
    files = [(parts, Part), (places, RackPlace)]
    assert lists.read(ledger, Part, parts, "07", AT, "t1") != []
    assert lists.read_several(ledger, files[::-1] if turned else files, "07", AT, "t2") == []
    assert ledger.view.get(RackPlace, "489").part == "HC-7"
    assert ledger.view.get(Part, "HC-7").rack == "489"


def test_of_files_that_lie_there_the_newest_of_each_list_is_read(tmp_path):
    names = ("new.csv", "old.csv", "places.csv", "else.csv")
    heads = ("id,name,words,rack", "id,name,words,rack", "id,name,part", "sum,of,money")
    files = [tmp_path / name for name in names]
    for file, head in zip(files, heads, strict=True):
        file.write_text(f"{head}\n", encoding="utf-8")
    assert [f.name for f in lists.find_newest_lists(files)] == ["new.csv", "places.csv"]
