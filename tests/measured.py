"""``python -m tests.measured COMMAND …``: runs a command and writes down what it measured.

``python -m tests.measured bench record`` runs ``python -m tests.bench record``. Each figure that
the command notes becomes a row of ``resources/guide/measured.md``, with its date and commit, in
the place of the rows that the same command wrote before. Nobody writes that page by hand, nor
the figures under *How fast* in README.md: they are taken from it.
"""

import json
import os
import re
import subprocess
import sys
import tempfile
from datetime import datetime
from pathlib import Path
from typing import NamedTuple

HOME = Path(__file__).resolve().parent.parent
PAGE = HOME / "resources" / "guide" / "measured.md"
INTO = "MEASURED_INTO"  # the file that a command notes its figures in, while somebody asks
HEAD = """# Measured

Only commands write this page: `python -m tests.measured COMMAND …` runs
`python -m tests.COMMAND …` and puts what it measured in the place of what the same command
measured before. Ratios are taken within one run, so that a slow or busy machine moves both
sides; in brackets stand the smallest and the largest of several rounds. All was measured on two
cores; where other work ran beside it, the row says so. What is wanted stands beside each figure,
and what is missed or not held is told as such.

Rows of before 29 November 2026 were moved here from the page for developers: their commit is the
one that wrote them down there, and `FIRST` stands for the first seed of each range.
"""
COLUMNS = ("what", "figure", "wanted", "command", "date", "commit")
README = HOME / "README.md"
# what README says of speed; in braces what a row of the page is called
SPEED = """\
With a million entries in the history, from a scan to its painted answer: \
{scan to painted answer, 1,000,000 entries, median} in the middle, \
{scan to painted answer, 99 of 100} for the slowest of a hundred. Recording a sheet takes \
{sheet off the bed, 1,000,000 entries: median over bare rows} times what the bare database takes \
for the same rows, a first window {first window over a bare window} times a bare one, and ready \
for a scan {ready for a scan over a bare window} times. With fifty stations at an act a second \
each, an act is in the shop's database after \
{50 stations, an act a second: recorded to shared, median} in the middle, \
{50 stations, an act a second: recorded to shared, 99 of 100} for the slowest of a hundred. \
`python -m tests.bench` prints these and more; \
[what was measured](resources/guide/measured.md) tells the spread.
"""


class Row(NamedTuple):
    """One figure: what it is of, what is wanted, and which command measured it when."""

    what: str
    figure: str
    wanted: str
    command: str
    date: str
    commit: str

    @property
    def campaign(self) -> str:
        """The command's own name, that its table stands under."""
        return re.sub(r"^python -m (tests\.)?", "", self.command).split()[0]


def note(what: str, figure: str, wanted: str = "–", command: str = "") -> None:
    """Notes a figure of the command that runs, or of a part of it; nothing where nobody asks."""
    if into := os.environ.get(INTO):
        with Path(into).open("a", encoding="utf-8") as noted:
            noted.write(json.dumps([what, figure, wanted, command]) + "\n")


def read_page(text: str) -> list[Row]:
    """Reads the rows of a page."""
    lines = [line for line in text.splitlines() if line.startswith("| ")]
    cells = [[cell.strip() for cell in line.strip("|").split(" | ")] for line in lines]
    return [
        Row(what, figure, wanted, command.strip("`"), when, commit)
        for what, figure, wanted, command, when, commit in cells
        if (what, when) != (COLUMNS[0], COLUMNS[4])
    ]


def lay_page(rows: list[Row]) -> str:
    """Lays out the whole page: a table for each campaign, in the order of their first rows."""
    parts = [HEAD]
    for campaign in dict.fromkeys(row.campaign for row in rows):
        parts += [f"## {campaign}", ""]
        parts += [f"| {' | '.join(COLUMNS)} |", "|" + "---|" * len(COLUMNS)]
        parts += [
            f"| {' | '.join(row._replace(command=f'`{row.command}`'))} |"
            for row in rows
            if row.campaign == campaign
        ]
        parts += [""]
    return "\n".join(parts)


def write_speed(readme: str, rows: list[Row]) -> str:
    """Gives README with the newest figures under *How fast*; as it was where one is missing."""
    figures = {row.what: row.figure for row in rows}
    if not figures.keys() >= set(re.findall(r"\{(.+?)\}", SPEED)):
        return readme

    def shorten(name: re.Match[str]) -> str:
        value, unit, *_ = figures[name[1]].split(" ")
        number = f"{float(value):.2g}" if unit != "×" else value
        return number if unit == "×" else f"{number} {unit.rstrip(';')}"

    said = re.sub(r"\{(.+?)\}", shorten, SPEED)
    return re.sub(r"(?<=## How fast\n\n).+?\n", lambda _: said, readme, count=1)


def merge(old: list[Row], new: list[Row]) -> list[Row]:
    """Puts new rows in the place of those that the same commands wrote before; each once."""
    mine = {row.command for row in new}
    at = next((n for n, row in enumerate(old) if row.command in mine), len(old))
    kept = [row for row in old if row.command not in mine]
    before = sum(row.command not in mine for row in old[:at])
    return kept[:before] + list(dict.fromkeys(new)) + kept[before:]


def commit() -> str:
    """Names the commit that is measured; a plus where files differ from it."""
    git = ["git", "describe", "--always", "--exclude=*", "--dirty=+"]
    done = subprocess.run(git, cwd=HOME, capture_output=True, text=True, check=True)
    return done.stdout.strip()


def main() -> int:
    """Runs the command and writes its rows; ends with the command's own exit code."""
    given = sys.argv[1:]
    if not given:
        print("Which command? For example: python -m tests.measured bench record")
        return 2
    command, measured = [sys.executable, "-m", f"tests.{given[0]}", *given[1:]], commit()
    with tempfile.TemporaryDirectory() as folder:
        noted = Path(folder) / "noted"
        noted.touch()
        code = subprocess.call(command, cwd=HOME, env={**os.environ, INTO: str(noted)})
        figures = [json.loads(line) for line in noted.read_text("utf-8").splitlines()]
    words = " ".join(["python -m", f"tests.{given[0]}", *given[1:]])
    today = f"{datetime.now():%Y-%m-%d}"
    rows = [
        Row(what, figure, wanted, part or words, today, measured)
        for what, figure, wanted, part in figures
    ]
    rows = merge(read_page(PAGE.read_text("utf-8")), rows)
    PAGE.write_text(lay_page(rows), encoding="utf-8")
    README.write_text(write_speed(README.read_text("utf-8"), rows), encoding="utf-8")
    print(f"{len(figures)} rows written into {PAGE.relative_to(HOME)}.")
    return code


if __name__ == "__main__":
    sys.exit(main())
