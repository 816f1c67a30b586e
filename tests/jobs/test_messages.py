"""What goes to work beside the screen and comes back: the same values on both sides."""

import os
from typing import get_args

import msgspec
import pytest

from station.jobs import messages, process
from station.jobs.messages import (
    AlreadyTaken,
    BackupKept,
    CopyHistory,
    CutFileRead,
    Failed,
    GetReady,
    GotReady,
    HistoryCopied,
    KeepBackup,
    Message,
    NothingCutOut,
    Pocket,
    Progress,
    ReadCutFile,
    UnitsMissing,
    Unreadable,
)
from station.jobs.wire import encode
from station.shop.cut_text import CutBooks, Laying, TakenAs, TextProblem
from station.shop.facts import Part, ReadAs, Revision, Router, Shape, Shop
from station.shop.strokes import PackedPath
from tests.floor.shop_small import GAUGES, small_facts

PART = Part(id="014", name="A", words="a part", shape=Shape(outline=((0.0, 0.0), (9.0, 0.0))))
REVISION = next(f for f in small_facts() if isinstance(f, Revision))
REQUEST = ReadCutFile(
    path="a.nc", cut_file=GAUGES, material="1", thickness_mm=6.5, sheet=(2440.0, 1220.0),
    router=Router(id="1", name="Router 1", hold_downs=((5.0, 6.0),)), pockets=(Pocket(1, 6.0, 2),),
    read_as=ReadAs(bits=((2, 3.175),), zero="face"), parts=(PART,), taken={"d1": "A"},
    cuts_out=True, hold_downs=((5.0, 6.0),), shop=Shop(id="shop", chip_high_mm=0.5),
)  # fmt: skip
BACKUP = KeepBackup(
    path="shop.db", at="2026-11-25T16:00:00", number=7, digest="3fa9", away="/stick"
)
COPY = CopyHistory(path="shop.db", to="copy.db", number=7, digest="3fa9", keep=BACKUP)
OUTCOMES = (
    CutFileRead(
        file="a.nc", revision=REVISION, sizes={"new0": (9.0, 9.0)}, unnamed=["new0"],
        found=1, problems=[TextProblem(3, "x", "stop", (1.5, 2.0))],
        taken=[TakenAs("bit", "6", "remark", 2)], router="1", books=CutBooks(cuts=2, parts=1),
        laying=Laying(slugs=(((0.0, 0.0), (9.0, 0.0), (0.0, 9.0)),), popping=(1, 0)),
        path=PackedPath(strokes="x", seconds=3.0, off_mm=0.1, share=1.0, thickness_mm=None),
    ),
    GotReady(), AlreadyTaken(letter="A"), Unreadable(why="it is empty"), UnitsMissing(),
    NothingCutOut(), BackupKept(), HistoryCopied(trouble="no room"),
    Failed(file="a.nc", why="No such file"),
)  # fmt: skip


def test_every_message_is_tried_here():
    others = GetReady(), Progress(stage="read", share=0.5)
    tried = {type(m) for m in (REQUEST, BACKUP, COPY, *others, *OUTCOMES)}
    assert tried == set(Message.__subclasses__())


@pytest.mark.parametrize("request_", [REQUEST, BACKUP, COPY], ids=["read", "backup", "copy"])
def test_a_request_arrives_as_it_was_sent(request_):
    assert process.REQUESTS.decode(encode(request_)) == request_


def test_a_folder_whose_name_is_no_text_arrives_as_it_is(tmp_path):
    """Another system wrote it in its own bytes: reading and copying there broke off."""
    path = os.fsdecode(bytes(tmp_path) + b"/\xe9")
    asked = msgspec.structs.replace(COPY, path=path)
    assert process.REQUESTS.decode(encode(asked)) == asked
    told = Failed(file=path, why="No such file")
    assert process.ANSWERS.decode(encode(told)) == told


@pytest.mark.parametrize("answer", [Progress(stage="draw", share=0.7), *OUTCOMES], ids=repr)
def test_an_answer_arrives_as_it_was_sent(answer):
    assert process.ANSWERS.decode(encode(answer)) == answer


def test_what_nobody_asks_for_is_refused():
    with pytest.raises(msgspec.ValidationError):
        process.REQUESTS.decode(b'{"type": "Other"}')


def test_a_file_that_is_not_there_is_an_outcome(tmp_path):
    asked = msgspec.structs.replace(REQUEST, path=str(tmp_path / "none.nc"))
    done = process.DoneJob(asked)
    assert done.is_over()
    assert done.outcome() == Failed(file=asked.path, why="No such file or directory")


def test_every_request_has_its_job():
    assert set(process.JOBS) == set(get_args(messages.Request))
