"""``python3 -m tests``: everything that must hold, on a fresh clone as on a used one.

``--quick`` leaves out the tests that are marked slow, and the coverage: what a developer runs
after each change.
"""

import os
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from station.setting_up import ready

HOME = Path(__file__).resolve().parent.parent

CHECKS = (
    ("ruff", ["-m", "ruff", "check", "."]),
    ("ruff format", ["-m", "ruff", "format", "--check", "."]),
    ("import contract", ["-c", "from importlinter.cli import lint_imports_command as c; c()"]),
    ("mypy", ["-m", "mypy"]),
)
# Compiled once before: two workers of the tests would both do it.
COMPILE = ["-c", "from station.cutting.prepare import prepare_reader; prepare_reader()"]
TESTS = ["-m", "pytest", "--numprocesses", "auto", "--dist", "worksteal"]
QUICK = ["-m", "not slow"]
WHOLE = ["--cov=station", "--cov-report=term:skip-covered"]


def run_quietly(command: list[str]) -> tuple[int, str]:
    """Runs one check; gives its exit code and all that it said."""
    with tempfile.TemporaryFile("w+", encoding="utf-8", errors="replace") as said:
        code = subprocess.call([sys.executable, *command], cwd=HOME, stdout=said, stderr=said)
        said.seek(0)
        return code, said.read()


def main() -> int:
    """Runs the checks beside the tests, says what failed, and ends with 1 if anything did."""
    ready(tests=True)
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    # Else each of the many processes that tests start compiles every module anew.
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    with ThreadPoolExecutor(max_workers=1) as beside:
        checks = [(name, beside.submit(run_quietly, command)) for name, command in CHECKS]
        print("== tests", flush=True)
        subprocess.call([sys.executable, *COMPILE], cwd=HOME)
        which = QUICK if "--quick" in sys.argv[1:] else WHOLE
        tests = subprocess.call([sys.executable, *TESTS, *which], cwd=HOME)
        failed = ["tests"] if tests else []
        for name, check in checks:
            code, said = check.result()
            print(f"== {name}\n{said}", end="", flush=True)
            failed += [name] if code else []
    print(f"Failed: {', '.join(failed)}" if failed else "All steps passed.", flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
