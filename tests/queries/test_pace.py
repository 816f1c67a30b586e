"""A router's own correction, from sheets cut by real acts to what the screens expect."""

import json
import re
from datetime import datetime, timedelta
from pathlib import Path
from types import SimpleNamespace

import pytest

import demo_db
from station.commands import main
from station.cutting import prepare
from station.queries.pace import LEAST, MOST, expect_minutes, extend_pace, find_fit, fit_pace
from station.shop.faces import Pairs, Progress
from station.shop.facts import Batch, CutFile, Pace, Revision
from tests.first_offs import list_answers
from tests.floor.shop_small import COMBS, FRAMES, GAUGES, SHUTTLES, SPACERS
from tests.replay import PIN, Stage

PACE, EXTRA_S = 1.08, 40
TEXT = Path(demo_db.__file__).parent / "cut_files" / "ST120-SET-A.nc"


def sent(stage, *lines):
    for line in lines:
        given = stage.send(line)
    return given.answer


def later(stage, seconds):
    at = datetime.fromisoformat(stage.clock()) + timedelta(seconds=round(seconds))
    stage.send(f"@at {at.isoformat()}")


def started(stage, cut_file):
    """One sheet of a new batch of this cut file lies on router 1 and is cut."""
    name = stage.ledger.view.get(CutFile, cut_file).name
    sent(stage, "@worker 07", "@area office", "button list_cutfile")
    stage.desk.take(name)
    sent(stage, "button release_batch", "router 1", "2", "worker 07", PIN)
    batch = max(b.id for b in stage.ledger.facts(Batch) if b.cut_file == cut_file and not b.cut)
    sent(stage, "@worker 02", "@area loading", "@router R1", f"traveller {batch}")
    thick = cut_file == FRAMES
    sent(stage, "lot 0940" if thick else "lot 0931", "9.0" if thick else "6.4")
    sent(stage, "button held_down", "button bit_good", "button file_right", "button zeroed")
    answer = sent(stage, "button start")
    assert str(answer.said).startswith("Sheet 1 started"), str(answer.said)
    return batch


def cut(stage, cut_file, real_s):
    """A sheet is cut in so many seconds, and its batch given up after it."""
    batch = started(stage, cut_file)
    later(stage, real_s)
    answer = sent(stage, f"slip {batch} 1")
    if "expected" in str(answer.said):
        later(stage, 5)
        answer = sent(stage, f"slip {batch} 1")
    assert "is off the bed" in str(answer.said), str(answer.said)
    later(stage, 300)
    first = list_answers(stage.ledger.view, "1")
    sent(stage, *first, "@worker 07", "@area office", f"traveller {batch}")
    answer = sent(stage, "button cancel_it", "worker 07", PIN)
    assert answer.tone == "good", str(answer.said)


def file_s(stage, cut_file):
    letter = stage.ledger.view.get(CutFile, cut_file).approved
    return stage.ledger.view.get(Revision, f"{cut_file}.{letter}").minutes * 60


def real_s(stage, cut_file):
    return PACE * file_s(stage, cut_file) + EXTRA_S


def page(stage):
    """What the office shows on router 1's page, by name."""
    sent(stage, "@worker 07", "@area office", "button list_router")
    stage.desk.take("Router 1")
    pairs = next(b for b in stage.desk.face().side if isinstance(b, Pairs))
    return {str(name): str(value) for name, value in pairs.rows}


def number(text):
    return float(re.search(r"\d+(\.\d+)?", text)[0])


@pytest.mark.slow
def test_recorded_times_come_back_on_the_screens_and_in_the_command(stage, tmp_path, capsys):
    told = page(stage)["Time over the file's"]
    assert told == f"can't tell yet: 0 of {LEAST} sheets; as typed till then"
    for cut_file in (COMBS, SPACERS, FRAMES, GAUGES):
        cut(stage, cut_file, real_s(stage, cut_file))
    shown = page(stage)
    assert number(shown["Time over the file's"]) == pytest.approx(PACE, rel=0.01)
    assert number(shown["Added a sheet"]) == pytest.approx(EXTRA_S, abs=1)
    assert number(shown["Spread"]) <= 1
    assert shown["Told by"] == "4 sheets"

    started(stage, SHUTTLES)
    later(stage, 60)
    block = next(b for b in stage.desk.face().main + stage.desk.face().beside
                 if isinstance(b, Progress))  # fmt: skip
    wanted = real_s(stage, SHUTTLES)
    minutes, seconds = re.search(r"here (\d+):(\d+) ± ", str(block.right)).groups()
    assert int(minutes) * 60 + int(seconds) == pytest.approx(wanted, rel=0.01)
    assert number(str(block.big)) == pytest.approx(wanted / 60 - 1, abs=0.5)
    assert block.fraction == pytest.approx(60 / wanted, rel=0.01)

    plain, learnt = (time_of(stage, tmp_path, capsys, forget=forget) for forget in (True, False))
    assert learnt == pytest.approx(PACE * plain + EXTRA_S, rel=0.01)


def time_of(stage, tmp_path, capsys, *, forget):
    """What ``station cut-file`` says of a text on router 1, with its sheets known or not."""
    prepare.prepare_reader()
    folder = tmp_path / f"copy {forget}"
    folder.mkdir()
    if forget:
        Stage(folder).close()
    else:
        stage.ledger.backup(folder / "shop.db")
    assert main.main(["cut-file", str(TEXT), "--router", "1", "--data", str(folder)]) == 0
    return json.loads(capsys.readouterr().out)["time_s"]


def test_too_few_sheets_tell_nothing_and_what_was_typed_holds(stage):
    for n, cut_file in enumerate((COMBS, SPACERS), 1):
        cut(stage, cut_file, real_s(stage, cut_file))
        assert page(stage)["Time over the file's"].startswith(f"can't tell yet: {n} of {LEAST}")
    assert expect_minutes(stage.ledger.view, revision(stage, GAUGES), "1") == 18.0


def revision(stage, cut_file):
    return stage.ledger.view.get(Revision, f"{cut_file}.C")


def test_a_sheet_that_was_taken_off_too_soon_or_taken_back_tells_nothing(stage):
    batch = started(stage, COMBS)
    later(stage, 60)
    sent(stage, f"slip {batch} 1")
    later(stage, 5)
    assert sent(stage, f"slip {batch} 1").tone == "good"
    assert stage.ledger.view.get(Pace, "1") is None
    later(stage, 60)
    sent(stage, "button undo")
    later(stage, real_s(stage, COMBS))
    assert sent(stage, f"traveller {batch}", f"slip {batch} 1").tone == "good"
    assert len(stage.ledger.view.get(Pace, "1").sheets) == 1
    sent(stage, "button undo")
    known = stage.ledger.view.get(Pace, "1")
    assert known is None or known.sheets == ()


def test_a_stop_is_no_part_of_the_time(stage):
    batch = started(stage, COMBS)
    later(stage, 300)
    sent(stage, "button stop", "reason 33")
    later(stage, 900)
    sent(stage, "button bit_out", "button bed_clear", "button held_down", "button nobody_near")
    sent(stage, "button stop_over")
    later(stage, real_s(stage, COMBS) - 300)
    assert sent(stage, f"slip {batch} 1").tone == "good"
    ((_, real),) = stage.ledger.view.get(Pace, "1").sheets
    assert real == pytest.approx(real_s(stage, COMBS), abs=1)


LINE = [(f, PACE * f + EXTRA_S) for f in (300, 500, 700, 900, 1100, 1300, 1500)]

UNEVEN = [(600, 650), (700, 900), (650, 640), (620, 800), (680, 700)]


@pytest.mark.parametrize(
    ("recorded", "pace", "extra", "left_out"),
    [
        (LINE, PACE, EXTRA_S, 0),
        ([*LINE, (800, 9000)], PACE, EXTRA_S, 1),  # left on the bed over a break
        ([*LINE, (800, 9000), (400, 4000)], PACE, EXTRA_S, 2),
        ([(600, 690)] * 5, 1.15, 0, 0),
        ([(600, 690)] * 5 + [(600, 3000)], 1.15, 0, 1),
        ([(600, 690), (605, 700), (595, 680)], 1.15, 0, 0),  # of one length
        (UNEVEN, 3690 / 3250, 0, 0),  # too uneven for both
    ],
)
def test_a_line_through_recorded_times(recorded, pace, extra, left_out):
    got = fit_pace(recorded)
    assert got.pace == pytest.approx(pace, rel=0.01)
    assert got.extra_s == pytest.approx(extra, abs=0.5)
    assert got.left_out == left_out


def test_only_the_newest_sheets_are_kept():
    known = None
    for n in range(MOST + 10):
        known = extend_pace(known, "1", 600 + n, 700)
    assert len(known.sheets) == MOST
    assert known.sheets[-1] == (600 + MOST + 9, 700)


def test_only_the_newest_sheets_are_looked_at_however_many_stand_there():
    """A list that another station has shared may be long: every pair of sheets is compared."""
    far, near = ((60.0, 6000.0),) * 2000, ((60.0 + n, 66.0 + n * 1.1) for n in range(MOST))
    pace = Pace(id="1", sheets=(*far, *near))
    fit = find_fit(SimpleNamespace(get=lambda _kind, _id: pace), "1")
    assert (round(fit.pace, 3), fit.count) == (1.1, MOST)
