"""``python -m tests.sheets N [SEED]``: has the program read N cut files of other workshops.

``--save DIR SEED`` writes one sheet with its truth beside; ``--truth N [SEED]`` cuts N small
sheets in a grid of cells, to see whether the truth itself is true.
"""

import sys
from pathlib import Path

from tests.measured import note
from tests.sheets.making import make_draft, make_sheet
from tests.sheets.measure import measure
from tests.sheets.reading import read_sheet


def save(folder: Path, seed: int) -> None:
    """Writes a sheet's text and its truth."""
    sheet = make_sheet(seed)
    folder.mkdir(parents=True, exist_ok=True)
    (folder / f"{seed}.nc").write_text(sheet.text, encoding="utf-8", newline="")
    lines = [
        "sheet {:g} × {:g} × {:g} mm".format(*sheet.size, sheet.thickness),
        f"zero on {sheet.zero}",
        f"bits {sheet.bits}, in the spindle {sheet.bit}",
        f"fault: {sheet.fault}",
        *(f"{habit}: {choice}" for habit, choice in sheet.habits),
        *(str(group) for group in sheet.groups),
    ]
    (folder / f"{seed}.txt").write_text("\n".join(lines) + "\n", encoding="utf-8")


def check(count: int, first: int) -> int:
    """Cuts small sheets in cells; gives how many differ from their truth."""
    from tests.sheets.raster import check_truth  # noqa: PLC0415 - takes scipy

    wrong = 0
    for seed in range(first, first + count):
        told = check_truth(make_draft(seed, small=True), 0.1)
        wrong += bool(told)
        for line in told:
            print(f"{seed}: {line}")
    print(f"{count - wrong} of {count} sheets are as their truth says")
    note("written sheets that are not as their truth says", f"{wrong} of {count}", "none")
    return wrong


def main(words: list[str]) -> int:
    """Runs the command."""
    if words[:1] == ["--save"]:
        save(Path(words[1]), int(words[2]))
        return 0
    numbers = [int(word) for word in words if not word.startswith("--")]
    count, first = (numbers + [100, 0][len(numbers) :])[:2]
    if "--truth" in words:
        return min(check(count, first), 1)
    table = measure(count, first, read_sheet)
    print(*table.rows(), sep="\n")
    for figure in table.figures():
        note(*figure)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
