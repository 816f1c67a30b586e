"""Carries out recipes of the guide in a copy of the program, word for word.

A step of a recipe is a line that ends with a colon, and the code below it:

    1. A new file `station/floor/drying/rules.py`:
    2. In `station/shop/areas.py`, below `Area("office", …),`:
    3. In `pyproject.toml`, instead of `"loading | office",`:
    4. At the end of `station/floor/cart/acts.py`:
    5. Run:

A line that is named stands in its file just once; blanks before it do not count.
"""

import os
import re
import shlex
import shutil
import subprocess
import sys
import textwrap
from pathlib import Path
from typing import NamedTuple

HOME = Path(__file__).resolve().parents[2]
PAGE = HOME / "resources" / "guide" / "recipes.md"
COPIED = ("station", "resources", "tests", "demo_db")
STEP = re.compile(
    r"\b(?P<how>A new file|At the end of|In|Run)(?:\s+`(?P<file>[^`\n]+)`)?"
    r"(?:,\s+(?P<where>below|above|instead of)\s+`(?P<line>[^`\n]+)`)?:\n\n"
    r"(?P<code> *```\w+\n.*?\n) *```$",
    re.MULTILINE | re.DOTALL,
)
EMPTY = re.compile(r"an empty file `([^`\n]+)`")


class Step(NamedTuple):
    """One step: what is done with which file, beside which line, and the code."""

    how: str
    file: str
    where: str
    line: str
    code: str


def steps_of(title: str) -> list[Step]:
    """The steps of the recipe under a heading. Every block of code must belong to one."""
    section = PAGE.read_text(encoding="utf-8").partition(f"\n## {title}\n")[2]
    section = section.partition("\n## ")[0]
    found = list(STEP.finditer(section))
    assert found, title
    assert len(found) == section.count("```") / 2, f"{title}: code that no step names"
    empty = [Step("A new file", file, "", "", "") for file in EMPTY.findall(section)]
    return empty + [
        Step(m["how"], m["file"] or "", m["where"] or "", m["line"] or "", _code(m["code"]))
        for m in found
    ]


def _code(block: str) -> str:
    """The code without its fence and without what indents it in the list."""
    return textwrap.dedent(block).partition("\n")[2]


class Copy:
    """A copy of the program in a folder of its own."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.touched: list[str] = []  # the files of the steps that were carried out
        for name in COPIED:
            shutil.copytree(
                HOME / name, folder / name, ignore=shutil.ignore_patterns("__pycache__")
            )
        shutil.copy(HOME / "pyproject.toml", folder)

    def carry_out(self, title: str) -> None:
        """Does all that a recipe says."""
        for step in steps_of(title):
            self.touched += [step.file] if step.file.endswith(".py") else []
            if step.how == "Run":
                for line in step.code.splitlines():
                    program, *given = shlex.split(line)
                    assert program == "python", line
                    self.run(*given)
            elif step.how == "A new file":
                self._make(step)
            elif step.how == "At the end of":
                with (self.folder / step.file).open("a", encoding="utf-8") as file:
                    file.write(f"\n\n{step.code}")
            else:
                self._change(step)

    def _make(self, step: Step) -> None:
        file = self.folder / step.file
        assert not file.exists(), step.file
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(step.code, encoding="utf-8")

    def _change(self, step: Step) -> None:
        file = self.folder / step.file
        lines = file.read_text(encoding="utf-8").splitlines(keepends=True)
        at = [n for n, line in enumerate(lines) if line.strip() == step.line]
        assert len(at) == 1, f"{step.line!r} stands {len(at)} times in {step.file}"
        first, last = {"below": (1, 1), "above": (0, 0), "instead of": (0, 1)}[step.where]
        lines[at[0] + first : at[0] + last] = [step.code]
        file.write_text("".join(lines), encoding="utf-8")

    def run(self, *given: str, fails: bool = False, **environment: str) -> str:
        """Runs Python in the copy; gives what it prints."""
        done = subprocess.run(
            [sys.executable, *given],
            cwd=self.folder,
            env={**os.environ, "PYTHONPATH": str(self.folder), **environment},
            capture_output=True,
            text=True,
            check=False,
        )
        assert bool(done.returncode) == fails, done.stdout + done.stderr
        return done.stdout

    def look(self, code: str) -> str:
        """Runs a few lines of Python in the copy; gives what they print."""
        return self.run("-c", textwrap.dedent(code)).strip()

    def check(self) -> None:
        """What every change must pass: the linter, the formatter, the import contract."""
        self.run("-m", "ruff", "check", "--no-cache", *self.touched)
        self.run("-m", "ruff", "format", "--check", "--no-cache", *self.touched)
        lint = "from importlinter.cli import lint_imports_command as c; c()"
        self.run("-c", lint, "--no-cache")
