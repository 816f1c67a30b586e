"""What is no input of this shop gets one clear sentence, and nothing is lost or counted."""

import pytest

from station.shop import codes
from tests.replay import Stage

FOREIGN = (
    "5901234123457",  # an EAN-13 by its form
    "01234565",
    "]E05901234123457",
    "https://example.org/a?b=1",
    "WIFI:T:WPA;S:shop;P:none;;",
    "BEGIN:VCARD\tEND:VCARD",
    "äöü",
    "\x00\x1d",
    "1e999",
    "nan",
    "٣",
    "W" * 5000,
)
NUMBERS = ("-1", "0", "1.5", "1000000000", "-0", "00", "999999999999999999999999")
DIALOGUES = {
    "popping": ("button lost_paper",),
    "split": ("traveller 00900", "button split"),
    "found": ("button found", "part 014"),
    "recount": ("button recount", "rack 014"),
    "trimming": ("traveller 00900",),
    "trimming spoiled": ("traveller 00900", "reason 03"),
    "packing": ("@area packing", "order 3307"),
    "thickness": ("@area loading", "@router 1", "lot 0931"),
}


@pytest.fixture
def stage(tmp_path):
    made = Stage(tmp_path)
    made.send("@worker 02")
    made.send("@area trimming")
    yield made
    made.ledger._store.run("PRAGMA query_only=OFF")
    assert made.ledger.check() == []
    made.ledger.close()


@pytest.mark.parametrize("text", FOREIGN)
def test_a_foreign_code_is_refused_in_words(stage, text):
    before = stage.ledger.count()
    given = stage.desk.take(text)
    assert given.answer.refused
    assert str(given.answer.said)
    assert str(given.answer.do)
    assert stage.ledger.count() == before


@pytest.mark.parametrize("kind", sorted(set(codes.LETTERS) - {"batch"}))
def test_a_wrong_character_is_seen_in_every_kind_of_code(stage, kind):
    number = next(n for w in (2, 3, 4, 5, 1) for n in [("1" * w)] if _written(kind, n))
    text = codes.write(kind, number)
    wrong = text[:-1] + ("A" if text[-1] != "A" else "B")
    given = stage.desk.take(wrong)
    assert given.answer.tone == "stop"
    assert "wrong" in str(given.answer.said) or "no code" in str(given.answer.said)


def _written(kind, number):
    try:
        return bool(codes.write(kind, number))
    except ValueError:
        return False


@pytest.mark.parametrize("number", NUMBERS)
@pytest.mark.parametrize("dialogue", DIALOGUES)
def test_an_impossible_number_counts_nothing(stage, dialogue, number):
    for line in DIALOGUES[dialogue]:
        stage.send(line)
    before = {(h.place, h.batch, h.part): h.qty for h in stage.ledger.balances()}
    given = stage.send(number)
    assert str(given.answer.said)
    if number not in ("0", "00", "-0") or dialogue != "recount":
        after = {(h.place, h.batch, h.part): h.qty for h in stage.ledger.balances()}
        assert after == before


def test_a_read_only_file_is_said_and_the_hand_stays(stage):
    hand = stage.desk.hand
    stage.ledger._store.run("PRAGMA query_only=ON")
    given = stage.send("worker 03")
    assert given.answer.tone == "stop"
    assert "written" in str(given.answer.said)
    assert stage.desk.hand.worker == hand.worker
    stage.ledger._store.run("PRAGMA query_only=OFF")
    assert stage.send("worker 03").answer.tone == "good"


def test_a_full_disk_is_said_and_work_goes_on_after(stage):
    stage.desk.at(bench="2" * 100_000)  # a draft so long that it needs pages of its own
    stage.ledger.keep("")
    stage.ledger._store.run("VACUUM")
    pages = stage.ledger._store.run("PRAGMA page_count").fetchone()[0]
    stage.ledger._store.run(f"PRAGMA max_page_count={pages}")
    given = stage.send("worker 03")
    assert given.answer.tone == "stop"
    assert "is full" in str(given.answer.said)
    assert stage.desk.hand.worker == "02"
    stage.ledger._store.run("PRAGMA max_page_count=100000")
    assert stage.send("worker 03").answer.tone == "good"
