"""``python3 -m tests``: everything that must hold, on a fresh clone as on a used one."""

import os
import subprocess
import sys
from pathlib import Path

from station.setting_up import ready

HOME = Path(__file__).resolve().parent.parent

STEPS = (
    ("ruff", ["-m", "ruff", "check", "."]),
    ("mypy", ["-m", "mypy"]),
    ("import contract", ["-c", "from importlinter.cli import lint_imports_command as c; c()"]),
    ("tests", ["-m", "pytest", "--cov=station", "--cov-report=term:skip-covered"]),
)


def main() -> int:
    """Runs every step, says which failed, and ends with their worst exit code."""
    ready(tests=True)
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    failed = []
    for name, command in STEPS:
        print(f"== {name}", flush=True)
        if subprocess.run([sys.executable, *command], cwd=HOME, check=False).returncode:
            failed.append(name)
    print(f"Failed: {', '.join(failed)}" if failed else "All steps passed.", flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
