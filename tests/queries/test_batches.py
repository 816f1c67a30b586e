"""Questions about a batch."""

from dataclasses import replace

import pytest

from station.queries.batches import (
    describe_batch,
    find_approved,
    find_revision,
    list_family,
    make_child,
    make_rework,
    refuse_unapproved,
    refuse_uncuttable,
    refuse_wrong_paper,
    say_why,
)
from station.shop.acts import Act, Args
from station.shop.codes import Code
from station.shop.facts import Batch, CutFile, Revision
from tests.fakes import FakeView
from tests.floor.shop_small import batch

B = Revision(id="008.B", cut_file="008", letter="B", material="01", minutes=20)
C = Revision(id="008.C", cut_file="008", letter="C", material="01", minutes=22)
COMBS = CutFile(id="008", name="HC300-SET", words="Heddle comb 300", approved="C")


def test_a_revision_is_found_by_its_cut_file_and_letter():
    view, batch = FakeView.of(B, C), Batch(id="00412", cut_file="008", revision="B")
    assert Revision.id_of("008", "B") == B.id
    assert find_revision(view, batch) == B
    assert find_revision(view, Batch(id="00413", cut_file="009", revision="B")) is None


def test_the_approved_revision_is_the_one_that_may_be_cut():
    view, none = FakeView.of(B, C), CutFile(id="008", name="", words="")
    assert find_approved(view, COMBS) == C
    assert find_approved(view, none) is None


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({}, ""),
        ({"role": "split"}, "has no sheets of its own"),
        ({"state": "cancelled"}, "is cancelled"),
        ({"holds": ("why",)}, "is held: why"),
        ({"cut": 3}, "All 3 sheets"),
        ({"revision": "B"}, "Revision B offered, C is approved"),
        ({"cut_file": "009"}, "No revision of this cut file is approved"),
    ],
)
def test_a_batch_that_may_not_be_cut_says_why(fields, said):
    batch = replace(Batch(id="00412", cut_file="008", revision="C", sheets=3), **fields)
    view = FakeView.of(B, C, COMBS, batch)
    answer = refuse_uncuttable(view, batch) or refuse_unapproved(view, batch)
    assert said in (str(answer.said) if answer else "")
    assert bool(answer) == bool(said)


@pytest.mark.parametrize(
    ("copy", "there", "said"),
    [
        ("B", True, ""),
        ("", True, ""),  # typed by hand
        ("A", True, "Void: see copy B"),
        ("A", False, "There is no batch 00412"),
    ],
)
def test_only_the_valid_copy_is_picked_up(copy, there, said):
    batch = Batch(id="00412", cut_file="008", revision="C", copy="B", void=("A",))
    code = Code("batch", "00412", copy=copy)
    answer = refuse_wrong_paper(code, batch if there else None)
    assert (str(answer.said) if answer else "") == said


def test_a_child_has_no_sheets_and_a_paper_of_its_own():
    batch = Batch(id="00412", cut_file="008", revision="C", sheets=3, cut=2, spoiled=1, copy="B",
                  void=("A",), order="3306", holds=("why",), tries=1)  # fmt: skip
    act = Act(id="a", kind="split_batch", at="2026-11-26T00:10:00",
              args=Args(numbers={"batch": "00413"}))  # fmt: skip
    split, rework = make_child(act, batch, "split"), make_rework(act, batch)
    assert (split.id, split.parent, split.role, split.tries) == ("00413", "00412", "split", 1)
    assert (split.sheets, split.cut, split.copy, split.void, split.holds) == (0, 0, "A", (), ())
    assert (split.order, split.released) == ("3306", act.at)
    assert (rework.role, rework.tries) == ("rework", 2)


def test_a_batch_is_described_by_its_cut_file():
    batch = Batch(id="00412", cut_file="008", revision="C")
    assert describe_batch(FakeView.of(COMBS), batch) == "Heddle comb 300"
    assert describe_batch(FakeView.of(), batch) == "008"


def test_a_reason_bears_its_time_and_is_no_childs():
    plain = batch(why="59 HC-300 short of orders", released="2026-11-25T07:02:00")
    assert str(say_why(plain)) == "59 HC-300 short of orders (as of 25 Nov 07:02)"
    assert str(say_why(batch(why=""))) == ""
    act = Act(id="a", kind="split_batch", at="2026-11-25T10:00:00",
              args=Args(numbers={"batch": "00500"}))  # fmt: skip
    assert say_why(make_rework(act, plain)) == ""


def test_a_family_is_whole_however_many_came_of_a_batch():
    children = [Batch(id=f"1{n:04d}", cut_file="008", revision="C", parent="00412")
                for n in range(120)]  # fmt: skip
    view = FakeView.of(Batch(id="00412", cut_file="008", revision="C"), *children)
    assert len(list_family(view, "00412")) == 121
