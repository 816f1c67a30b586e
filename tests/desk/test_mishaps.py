"""What was recorded is never said to be not counted, whatever goes wrong after it."""

import errno
import io
import json
import logging

import pytest

from station.commands import scan, text_station
from station.commands.main import main
from station.ledger.faults import DiskFull
from station.ledger.ledger import Ledger
from station.shop.cards import button
from tests.replay import Stage

FULL = OSError(errno.ENOSPC, "No space left on device")


def at_trimming(stage: Stage) -> None:
    """Batch 00900 is picked up."""
    for line in ("@worker 05", "@area trimming", "batch 00900"):
        stage.send(line)


def refusing(error: Exception):
    """A printer that takes nothing."""

    def printer(_kind: str, _name: str) -> None:
        raise error

    return printer


@pytest.mark.parametrize(
    ("error", "paper"),
    [(FULL, "traveller {} (No space left on device)"), (RuntimeError("a bug"), "traveller {}")],
)
def test_a_paper_that_is_not_made_is_said_beside_what_was_recorded(
    stage, caplog, error, paper
) -> None:
    at_trimming(stage)
    stage.desk.printer = refusing(error)
    with caplog.at_level(logging.ERROR):
        given = stage.send("button reprint")
    assert given.entry
    assert stage.ledger.view.past(given.entry)
    assert str(given.answer.said) == f"It is recorded. Not printed: {paper.format('00900')}"
    assert str(given.answer.do) == (
        "Copy A is void: throw it away. Print it again: “More”, then “Print a new copy”."
    )
    assert given.answer.tone == "attention"
    assert "paper traveller 00900" in caplog.text
    assert str(error) in caplog.text
    assert stage.desk.last == given.entry  # it can be taken back as any other


def test_a_label_is_printed_again_at_packing(stage) -> None:
    for line in ("@worker 05", "@area packing", "order 3307", "part 045"):
        stage.send(line)
    stage.desk.printer = refusing(FULL)
    given = stage.send("button close_pack")
    assert given.entry
    assert str(given.answer.said).startswith("It is recorded. Not printed: label of pack ")
    assert str(given.answer.do).endswith("Print it again at packing: “Label again”.")


def test_a_paper_that_records_nothing_is_only_not_printed(stage) -> None:
    stage.send("@worker 05")
    stage.send("button menu")
    stage.desk.printer = refusing(FULL)
    given = stage.send("button print_page")
    assert given.entry is None
    assert str(given.answer.said) == (
        "Not printed: handover sheet of worker 05 (No space left on device)"
    )
    assert str(given.answer.do) == "Print it again."


def test_a_disk_that_fails_after_an_undo_leaves_it_undone(stage, monkeypatch) -> None:
    at_trimming(stage)
    put = stage.send("button on_rack")

    def full(_self, _text, _own):
        raise DiskFull(stage.ledger.path)

    monkeypatch.setattr(Ledger, "keep", full)
    given = stage.send("button undo")
    monkeypatch.undo()
    assert given.entry
    assert stage.ledger.view.past(put.entry).undone
    assert str(given.answer.do) == (
        "It is recorded. Then the disk failed: look after it, then go on."
    )
    assert stage.desk.last == ""


class BrokenDesk:
    """The desk of a stage, with a bug before or after it takes an input."""

    def __init__(self, stage: Stage, *, after: bool) -> None:
        self.take, self.after = stage.desk.take, after

    def __call__(self, text: str):
        if self.after:
            self.take(text)
        raise RuntimeError("a bug of ours")


def lines_of(stage: Stage, *texts: str) -> tuple[list[dict[str, object]], bool]:
    """What the text station prints to these lines, and whether it met no mistake of ours."""
    out: list[str] = []
    given = io.StringIO("\n".join(texts))
    sound = text_station.run_text_station(stage.desk, stage.clock, given, out.append, out.append)
    return [json.loads(text) for text in out], sound


@pytest.mark.parametrize("after", [True, False], ids=["after recording", "before"])
def test_the_text_station_tells_our_own_bug_and_goes_on(stage, monkeypatch, caplog, after) -> None:
    at_trimming(stage)
    with monkeypatch.context() as patch, caplog.at_level(logging.ERROR):
        patch.setattr(stage.desk, "take", BrokenDesk(stage, after=after))
        (told,), sound = lines_of(stage, button("on_rack"))
    assert not sound
    assert "a bug of ours" in caplog.text
    newest = list(stage.ledger.entries())[-1]
    if after:
        assert told["entry"] == newest.id
        assert told["happened"] == "It is recorded, then something went wrong in the program"
        assert str(told["next"]).startswith("Do not scan it again: Batch 00900: 160 good.")
        assert told["moves"]
    else:
        assert told["entry"] is None
        assert told["happened"] == "Something is wrong in the program; nothing was counted"
        assert newest.kind != "put_on_rack"
    (again,), sound = lines_of(stage, "@worker 02")
    assert (again["level"], sound) == ("good", True)


def test_a_mistake_of_ours_is_the_exit_code_of_a_scan(tmp_path, monkeypatch) -> None:
    stage = Stage(tmp_path)
    stage.close()
    monkeypatch.setattr(scan, "run_text_station", lambda *_: False)
    assert main(["--data", str(tmp_path), "scan"]) == 70
