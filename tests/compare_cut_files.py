"""``python -m tests.compare_cut_files [COMMIT] [--sheets N] [--seed S] [--folder F …]``.

The same cut files are analysed by this program and by the program of a commit (the one before,
unless told): N sheets of other workshops, as many random layouts, long sheets, the cut files in
the tests' own folders and in each F. What the command prints, with each problem and its line,
must be the same to the letter; every other value (each corner of each edge, tabs, problems'
places, the drawing) may differ by rounding alone. The exit code is 1 where one differs more.
"""

import argparse
import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from tests.compare_packs import unpack_program
from tests.cutting.layouts import make
from tests.cutting.sheets import outlines, sheet
from tests.sheets.making import make_sheet

HERE = Path(__file__).resolve().parent
ROUNDING = 1e-7  # mm, mm², seconds: a ten-thousandth of what anybody can measure


def main() -> int:
    """Compares, and tells it a line for each file that differs."""
    reader = argparse.ArgumentParser(prog="python -m tests.compare_cut_files")
    reader.add_argument("commit", nargs="?", default="HEAD~1")
    reader.add_argument("--sheets", type=int, default=100)
    reader.add_argument("--seed", type=int, default=0)
    reader.add_argument("--folder", type=Path, action="append", default=[])
    given = reader.parse_args()
    files = list(list_files(given.sheets, given.seed, [HERE, *given.folder]))
    with tempfile.TemporaryDirectory(prefix="cut-files-") as folder:
        unpack_program(given.commit, Path(folder))
        both = zip(answer(files, Path(folder)), answer(files, HERE.parent), strict=True)
        return tell(files, list(both))


def tell(files: list[dict[str, object]], both: list[tuple[dict, dict]]) -> int:
    """Tells what differs, and the time that both took; 1 where anything does but by rounding."""
    wrong, exact, most = 0, 0, 0.0
    for file, (old, new) in zip(files, both, strict=True):
        off = measure_off(old["values"], new["values"])
        most = max(most, off if off < ROUNDING else 0.0)
        exact += off == 0.0 and old["printed"] == new["printed"]
        if old["printed"] != new["printed"] or off >= ROUNDING:
            wrong += 1
            print(f"{file['name']}: values differ by {off:g}; {find_unlike(old, new)}")
    then, now = (sum(each[n]["seconds"] for each in both) for n in (0, 1))
    print(f"{len(files)} cut files, {exact} the same to the last bit, {wrong} differently, "
          f"the others differ by {most:.1g} at most")  # fmt: skip
    print(f"analysed in {then:.1f} s then, {now:.1f} s now")
    return min(wrong, 1)


def list_files(count: int, seed: int, folders: list[Path]) -> Iterator[dict[str, object]]:
    """Lists the cut files, each with what is known beside its text."""
    for n in range(seed, seed + count):
        made = make_sheet(n)
        zero = "face" if made.zero == "top" else "spoilboard"
        known = {"thickness_mm": made.thickness, "sheet": made.size, "zero": zero,
                 "origin": "lower-left", "spindle_mm": made.bit}  # fmt: skip
        yield {"name": f"sheet {n}", "text": made.text, "known": known}
        layout = make(n)
        known = {"thickness_mm": 6.0, "bit_mm": dict(layout.setting.bit_mm)}
        yield {"name": f"layout {n}", "text": layout.text, "known": known}
    for lines in (2_000, 30_000):
        for name, text in (("long sheet", sheet(lines, seed)), ("outlines", outlines(lines))):
            yield {"name": f"{name}, {lines}", "text": text, "known": {"thickness_mm": 6.0}}
    for file in sorted(f for folder in folders for f in folder.rglob("*.nc")):
        text = file.read_text(encoding="utf-8", errors="replace")
        yield {"name": file.name, "text": text, "known": {"thickness_mm": 6.0}}
        yield {"name": f"{file.name}, alone", "text": text, "known": {}}


def answer(files: list[dict[str, object]], program: Path) -> list[dict]:
    """Answers the cut files with the program of a folder."""
    done = subprocess.run(
        [sys.executable, str(HERE / "cutting" / "answers.py")],
        input=json.dumps(files).encode(),
        env={**os.environ, "PYTHONPATH": str(program)},
        check=True,
        capture_output=True,
    )
    return [json.loads(line) for line in done.stdout.splitlines()]


def measure_off(one: object, other: object) -> float:
    """Measures by how much two values differ at most; infinite where they are not alike."""
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return max(map(measure_off, one, other), default=0.0)
    if one == other or (one != one and other != other):  # noqa: PLR0124 - not a number
        return 0.0
    real = isinstance(one, float | int) and isinstance(other, float | int)
    return abs(one - other) if real else float("inf")


def find_unlike(old: dict, new: dict) -> str:
    """Finds what of the printed answer differs first."""
    one, other = old["printed"], new["printed"]
    if not isinstance(one, dict) or not isinstance(other, dict):
        return f"{one} / {other}"
    names = [name for name in one if one[name] != other.get(name)]
    return "; ".join(f"{name}: {one[name]} / {other.get(name)}"[:400] for name in names[:2])


if __name__ == "__main__":
    sys.exit(main())
