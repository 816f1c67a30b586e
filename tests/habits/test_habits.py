"""Cut files in other programmers' habits are read as their truth says: a sample of them."""

import pytest

from tests.habits.clean import make_clean
from tests.habits.comparing import compare, read_job
from tests.habits.cutting import Fault
from tests.habits.faulty import make_faulty

FAULTY = {f"{n} {job.name}": job for n, job in enumerate(make_faulty())}
pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def clean():
    """All clean files by name; made where a test of them runs, for it takes its time."""
    return {job.name: job for job in make_clean()}


@pytest.mark.parametrize("name", ["absolute centres", "combs", "six passes", "mostly engraved"])
def test_clean_files_are_read_as_they_are(clean, name, tmp_path):
    assert compare(clean[name], read_job(clean[name], tmp_path)) == []


@pytest.mark.parametrize(
    "name", [name for name in FAULTY if "cut across" in name or "low" in name]
)
def test_faults_are_told_at_their_lines(name, tmp_path):
    assert compare(FAULTY[name], read_job(FAULTY[name], tmp_path)) == []


def test_a_wrong_truth_is_noticed(tmp_path):
    job = next(job for job in make_clean() if job.name == "combs")
    report = read_job(job, tmp_path)
    job.pieces[0] = job.pieces[1]
    assert len(compare(job, report)) == 2
    job.faults.append(Fault(("gouge",), 1, 9))
    assert "not told" in compare(job, report)[0]
