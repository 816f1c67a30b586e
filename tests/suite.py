"""``python3 -m tests``: everything that must hold, on a fresh clone as on a used one.

``--quick`` leaves out the tests that are marked slow: what a developer runs after each change.
A test that is not marked so must not take longer than `LIMIT_S` there. ``--coverage`` measures
how much of the program the tests run, which takes more than twice the time.
``python -m tests.measured suite …`` runs the same and writes down what it took.
"""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from pathlib import Path

from station.setting_up import ready
from tests.measured import note

HOME = Path(__file__).resolve().parent.parent

CHECKS = (
    ("ruff", ["-m", "ruff", "check", "."]),
    ("ruff format", ["-m", "ruff", "format", "--check", "."]),
    ("import contract", ["-c", "from importlinter.cli import lint_imports_command as c; c()"]),
    ("mypy", ["-m", "mypy"]),
)
# Compiled once before: two workers of the tests would both do it.
COMPILE = ["-c", "from station.cutting.prepare import prepare_reader; prepare_reader()"]
# One process more than cores: a test often waits for a program or a server that it has started.
PROCESSES = (os.cpu_count() or 1) + 1
TESTS = ["-m", "pytest", "--numprocesses", str(PROCESSES), "--dist", "worksteal"]
LIMIT_S = 2.0  # of processor time; four times what is a reason to mark a test slow
QUICK = ["-m", "not slow", "--limit", str(LIMIT_S)]
COVERAGE = ["--cov=station", "--cov-report=term:skip-covered"]
TOTAL = ["-m", "coverage", "report", "--format=total"]
MEMORY = Path("/dev/shm")
ROOM_BYTES = 8_000_000_000  # six times what all tests leave there
WANTED_S = {"--quick": 60, "": 720}  # on two cores with nothing else running


def run_quietly(command: list[str]) -> tuple[int, str]:
    """Runs one check; gives its exit code and all that it said."""
    with tempfile.TemporaryFile("w+", encoding="utf-8", errors="replace") as said:
        code = subprocess.call([sys.executable, *command], cwd=HOME, stdout=said, stderr=said)
        said.seek(0)
        return code, said.read()


def run_all(tests: list[str]) -> list[str]:
    """Runs the checks beside the tests; gives the names of what failed."""
    with ThreadPoolExecutor(max_workers=1) as beside:
        checks = [(name, beside.submit(run_quietly, command)) for name, command in CHECKS]
        print("== tests", flush=True)
        subprocess.call([sys.executable, *COMPILE], cwd=HOME)
        failed = ["tests"] if subprocess.call([sys.executable, *tests], cwd=HOME) else []
        for name, check in checks:
            code, said = check.result()
            print(f"== {name}\n{said}", end="", flush=True)
            failed += [name] if code else []
    return failed


@contextmanager
def in_memory() -> Iterator[None]:
    """Has tests write to memory where there is room: else they wait for the disk at each act."""
    if not MEMORY.is_dir() or shutil.disk_usage(MEMORY).free < ROOM_BYTES:
        yield
        return
    with tempfile.TemporaryDirectory(dir=MEMORY, ignore_cleanup_errors=True) as folder:
        Path(folder).chmod(0o1777)  # some tests and the database's server are another user's
        os.environ["TMPDIR"] = folder
        yield


def main() -> int:
    """Runs everything, says what it took and what failed, and ends with 1 if anything did."""
    ready(tests=True)
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    # Else each of the many processes that tests start compiles every module anew.
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    quick, coverage = ("--quick" in sys.argv[1:], "--coverage" in sys.argv[1:])
    warm = (HOME / ".mypy_cache").exists()
    began = os.times()
    with in_memory():
        failed = run_all([*TESTS, *(QUICK if quick else []), *(COVERAGE if coverage else [])])
    if not failed:
        if coverage:
            total = run_quietly(TOTAL)[1].strip()
            note("statements of `station` that the tests run", f"{total} %")
        else:
            note_time(began, "--quick" if quick else "", warm=warm)
    print(f"Failed: {', '.join(failed)}" if failed else "All steps passed.", flush=True)
    return 1 if failed else 0


def note_time(began: os.times_result, which: str, *, warm: bool) -> None:
    """Says and notes what a run that began then has taken, beside what is wanted."""
    now = os.times()
    processor = now.children_user + now.children_system
    processor -= began.children_user + began.children_system
    cores, mypy = os.cpu_count() or 1, "warm" if warm else "cold"
    took = f"{now.elapsed - began.elapsed:.0f} s on {cores} cores"
    took += f"; {processor:.0f} s of processor time, mypy's cache {mypy}"
    print(f"This took {took}.", flush=True)
    what = "all tests that are not marked slow" if which else "all tests"
    note(f"{what}, with lint, types and import contract", took, f"≤ {WANTED_S[which]} s")


if __name__ == "__main__":
    sys.exit(main())
