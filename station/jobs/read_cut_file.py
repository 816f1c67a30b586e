"""Reads a cut file for the office: from its text to the revision that it would be.

It runs beside the screen (`station.jobs.process`) and knows no ledger.
"""

import hashlib
from pathlib import Path
from typing import TYPE_CHECKING

from station.cutting.prepare import is_prepared, prepare_reader
from station.jobs.messages import (
    AlreadyTaken,
    CutFileRead,
    NothingCutOut,
    Outcome,
    ReadCutFile,
    Report,
    UnitsMissing,
    Unreadable,
)
from station.shop.facts import Router
from station.shop.strokes import PackedPath, pack
from station.shop.words import say

if TYPE_CHECKING:
    from station.cutting.model import Analysis, Setting, ShapeFound

GRAVEST = ("stop", "look", "know")  # how grave a problem is, in the order that they are told
TOLD = 200  # problems that are kept to be shown
STAGES = {
    "read": say("Reading the text"),
    "ready": say("This PC gets ready to read cut files, once"),
    "work_out": say("Working out time, parts and what could go wrong"),
    "draw": say("Drawing the path"),
}
SPANS = {"read": (0.0, 0.3), "work_out": (0.3, 0.7), "draw": (0.7, 1.0)}  # of the whole


def run(request: ReadCutFile, report: Report) -> Outcome:
    """Reads the text, unless it is a revision already. Raises OSError where it cannot be read."""

    def report_whole(stage: str, share: float) -> None:
        start, end = SPANS.get(stage, (0.0, 1.0))
        report(stage, start + share * (end - start))

    report_whole("read", 0.0)
    data = Path(request.path).read_bytes()
    digest = hashlib.sha256(data).hexdigest()
    if letter := request.taken.get(digest):
        return AlreadyTaken(letter=letter)
    if not is_prepared():
        prepare_reader(lambda share: report_whole("ready", share))
    return _read(request, data, digest, report_whole)


def _read(request: ReadCutFile, data: bytes, digest: str, report: Report) -> Outcome:
    """Works out what a text makes and takes that is not known yet."""
    from station.cutting.report import analyse_program, read_program  # noqa: PLC0415 - compiled by now

    setting = _make_setting(request)
    program = read_program(data, setting, progress=lambda share: report("read", share))
    if program.refused:
        return Unreadable(why=program.refused)
    unsaid = any(p.kind == "no-units" for p in program.problems) and len(program.moves)
    if unsaid and request.units is None:
        return UnitsMissing()
    known = {part.id: part for part in request.parts}
    analysis = analyse_program(
        program, setting, known=known, progress=lambda share: report("work_out", share)
    )
    if not analysis.pieces and request.cuts_out:
        return NothingCutOut()
    path = _draw_path(analysis, request.router, report)
    return _describe(request, analysis, digest, path)


def _make_setting(request: ReadCutFile) -> "Setting":
    from station.cutting.model import Setting  # noqa: PLC0415 - numpy only where it is used

    router, pockets = request.router, request.pockets
    return Setting(
        router=router,
        thickness_mm=request.thickness_mm,
        sheet=request.sheet,
        units=request.units,
        changer_mm={p.number: p.diameter_mm for p in pockets},
        spindle_mm=request.spindle_mm,
        usual_mm=(router.usual_bit_mm or None) if router else None,
        flutes_of={p.number: p.flutes for p in pockets},
        bits_there=frozenset(p.number for p in pockets) or None,
        hold_downs=router.hold_downs if router else (),
        cuts_out=request.cuts_out,
    )


def _describe(
    request: ReadCutFile, analysis: "Analysis", digest: str, path: PackedPath
) -> CutFileRead:
    """Describes the revision as it would be taken in."""
    from station.cutting.analyse.revision import make_revision  # noqa: PLC0415 - only when it is used

    shapes = analysis.shapes if request.cuts_out else ()
    names = {s.index: s.part or f"new{s.index}" for s in shapes}
    made = make_revision(
        analysis,
        id=f"{request.cut_file}.NEW",
        cut_file=request.cut_file,
        letter="NEW",
        material=request.material,
        names=names,
        digest=digest,
    )
    problems = sorted(analysis.problems, key=lambda p: GRAVEST.index(p.grade))[:TOLD]
    return CutFileRead(
        file=Path(request.path).name,
        revision=made,
        sizes={names[s.index]: _write_size(s) for s in shapes},
        unnamed=[names[s.index] for s in shapes if s.part is None],
        found=len(analysis.problems),
        problems=[_write_problem(p.line, p.text, stop=p.grade == "stop") for p in problems],
        spots=[_place_on_sheet(p.at, analysis) for p in problems if p.at],
        assumed=[str(a) for a in analysis.assumed],
        router=request.router.id if request.router else "",
        path=path,
        explained=_explain(analysis) if request.cuts_out else "",
    )


def _explain(analysis: "Analysis") -> str:
    """Says what the cuts make, in one line."""
    cuts, parts, slugs = analysis.closed_cuts, len(analysis.pieces), len(analysis.slugs)
    text = say("{a} closed {a|cut|cuts}, {b} {b|part|parts}", a=cuts, b=parts)
    if slugs:
        more = say("{c} loose {c|slug|slugs}", c=slugs)
        return f"{text}, {more}"
    return str(text)


def _draw_path(analysis: "Analysis", router: Router | None, report: Report) -> PackedPath:
    from station.cutting.analyse.drawing import draw_path  # noqa: PLC0415 - only when it is used

    path = draw_path(analysis, router, progress=lambda share: report("draw", share))
    return PackedPath(
        strokes=pack(path.strokes),
        seconds=path.seconds,
        off_mm=path.off_mm,
        share=path.share,
        thickness_mm=analysis.thickness_mm,
    )


def _place_on_sheet(at: tuple[float, float], analysis: "Analysis") -> tuple[float, float]:
    """Places a point of the text's own frame on the sheet."""
    return at[0] - analysis.corner_mm[0], at[1] - analysis.corner_mm[1]


def _write_size(shape: "ShapeFound") -> str:
    return f"{shape.length_mm:.1f} × {shape.width_mm:.1f} mm"


def _write_problem(line: int, text: object, *, stop: bool) -> str:
    words = str(text)
    words = str(say("Line {line}: {what}", line=line, what=words)) if line else words
    return str(say("Stop. {what}", what=words)) if stop else words
