"""What is written is what was planned, whatever the habits: each step ends where it should."""

from random import Random

import pytest

from tests.sheets.faults import put_fault
from tests.sheets.making import make_draft
from tests.sheets.rereading import PlainReader
from tests.sheets.writing import TextWriter


def write(seed):
    """A draft, with a fault on odd seeds; its text, as read again, and its last decimal in mm."""
    draft = make_draft(seed, small=True)
    marked = put_fault(draft, Random(f"fault {seed}")) if seed % 2 else None
    means = draft.means
    writer = TextWriter(
        draft.rng, draft.manner, means.thickness, draft.size, means.bits, draft.heights
    )
    written = writer.write(draft.steps, marked.skipped if marked else ())
    return draft, written, PlainReader().read(written.text), 1 / writer.scale


@pytest.mark.parametrize("seed", range(8))
def test_each_step_ends_where_it_was_planned(seed):
    draft, written, moves, finest = write(seed)
    raised = draft.means.thickness if draft.manner.zero == "bed" else 0.0
    ends = {move.line: move for move in moves}
    here = None
    for step, (first, last) in zip(draft.steps, written.lines, strict=True):
        here = next((ends[n] for n in range(last, first - 1, -1) if n in ends), here)
        if step.kind in {"rapid", "feed"}:
            off = (here.x - step.to.real, here.y - step.to.imag, here.z - step.z - raised)
            assert max(map(abs, off)) < finest * 0.51 + 1e-6, (first, step, here)


@pytest.mark.parametrize("seed", range(8))
def test_the_ends_of_an_arc_are_equally_far_from_its_centre(seed):
    _, _, moves, finest = write(seed)
    assert max(move.wrong for move in moves) < finest * 3


@pytest.mark.parametrize("seed", [0, 2, 4])
def test_arcs_turn_as_planned(seed):
    draft, written, moves, _ = write(seed)
    if draft.manner.arcs == "chords":
        return
    for step, (first, last) in zip(draft.steps, written.lines, strict=True):
        if step.sweep:
            turned = sum(move.turned for move in moves if first <= move.line <= last)
            assert turned == pytest.approx(step.sweep, abs=0.02)
