"""Has a written file read as ``station cut-file`` reads it, and compares with its truth."""

import argparse
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from station.commands.cut_file import add_arguments, analyse_files
from tests.habits.cutting import Job, Piece

SIZE_MM = 0.02
# what may be told of a clean file without being a false alarm: it asks nobody to act
GRADES = ("stop", "look")


def read_job(job: Job, folder: Path) -> dict[str, Any]:
    """Reads a file with its sheet given, and its thickness."""
    file = folder / "sheet.nc"
    file.write_text("\n".join(job.pen.lines) + "\n", encoding="ascii")
    parser = argparse.ArgumentParser()
    add_arguments(parser)
    thick = job.given.get("thickness_mm", job.thick)
    sheet = f"{job.sheet[0]:g}x{job.sheet[1]:g}"
    options = parser.parse_args([str(file), "--sheet", sheet, "--thickness", str(thick)])
    text, wrong = analyse_files(options)
    return dict(json.loads(text)) if text else {"parts": [], "problems": [], "refused": wrong}


def compare(job: Job, report: dict[str, Any]) -> list[str]:
    """Says in sentences what differs from the truth; nothing where all is right."""
    said = [f"refused: {text}" for text in report.get("refused", ())]
    told = [(p["line"], p["kind"], p["grade"], p["text"]) for p in report["problems"]]
    if not job.faults:
        said += [f"false alarm: {p}" for p in told if p[2] in GRADES]
        said += _compare_pieces(job, report)
    for fault in job.faults:
        here = [p for p in told if p[1] in fault.kinds]
        if not here:
            said.append(f"not told: {fault}, but {[p[:2] for p in told]}")
        elif not any(fault.first <= p[0] <= fault.last for p in here):
            said.append(f"at a wrong line: {fault}, but {[p[:2] for p in here]}")
    return said


def _compare_pieces(job: Job, report: dict[str, Any]) -> Iterator[str]:
    left = list(job.pieces)
    for row in report["parts"]:
        tabs = row["tabs"] if isinstance(row["tabs"], list) else [row["tabs"]] * row["count"]
        for held in tabs:
            near = [p for p in left if _is_same(p, row, held)]
            if near:
                left.remove(near[0])
            else:
                sizes = row["width_mm"], row["length_mm"], row["area_mm2"]
                yield f"not in the truth: {sizes} with {held} tabs"
    yield from (f"not found: {piece}" for piece in left)


def _is_same(piece: Piece, row: dict[str, Any], tabs: int) -> bool:
    return (
        abs(piece.width - row["width_mm"]) < SIZE_MM
        and abs(piece.length - row["length_mm"]) < SIZE_MM
        and abs(piece.area - row["area_mm2"]) < SIZE_MM * row["perimeter_mm"]
        and piece.tabs == tabs
    )
