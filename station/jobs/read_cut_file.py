"""Reads a cut file for the office: from its text to the revision that it would be.

It runs beside the screen (`station.jobs.process`) and knows no ledger.
"""

import hashlib
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

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
from station.shop.cut_text import CutBooks, Laying, TextProblem
from station.shop.facts import Clear, Router
from station.shop.strokes import PackedPath, pack
from station.shop.words import say, take_apart

if TYPE_CHECKING:
    from station.cutting.model import Analysis, Problem, Program, Setting

GRAVEST = ("stop", "look", "know")  # how grave a problem is, in the order that they are told
TOLD = 200  # problems that are kept to be shown
HOLD_DOWNS = 8  # places that are proposed: common practice for a full sheet, no source
SLUG_OFF_MM = 0.2  # how far a slug may be drawn off its true edge
STAGES = {
    "read": say("Reading the text"),
    "ready": say("This PC gets ready to read cut files, once"),
    "work_out": say("Working out time, parts and what could go wrong"),
    "draw": say("Drawing the path"),
}
READY_SHARE = 0.8  # of the whole, where this PC has to get ready first: about as it takes
SPANS = {"read": (0.0, 0.3), "work_out": (0.3, 0.7), "draw": (0.7, 1.0)}  # of the whole


def run(request: ReadCutFile, report: Report) -> Outcome:
    """Reads the text, unless it is a revision already. Raises OSError where it cannot be read."""
    begun = 0.0 if is_prepared() else READY_SHARE

    def report_whole(stage: str, share: float) -> None:
        """Reports the part of all done: what makes ready comes first, and it never falls."""
        if stage == "ready":
            report(stage, share * begun)
            return
        start, end = SPANS[stage]
        report(stage, begun + (1 - begun) * (start + share * (end - start)))

    data = Path(request.path).read_bytes()
    digest = hashlib.sha256(data).hexdigest()
    if letter := request.taken.get(digest):
        return AlreadyTaken(letter=letter)
    if begun:
        prepare_reader(lambda share: report_whole("ready", share))
    report_whole("read", 0.0)
    from station.cutting.report import read_program  # noqa: PLC0415 - compiled by now

    setting = _make_setting(request)
    program = read_program(data, setting, progress=lambda share: report_whole("read", share))
    del data  # a large text would stay beside all that is worked out of it
    return _work_out(request, program, setting, digest, report_whole)


def _work_out(
    request: ReadCutFile, program: "Program", setting: "Setting", digest: str, report: Report
) -> Outcome:
    """Works out what a text makes and takes that is not known yet."""
    from station.cutting.report import analyse_program, refuse_program  # noqa: PLC0415 - compiled by now

    if refused := refuse_program(program):
        return Unreadable(why=refused.template, values=take_apart(refused)[0])
    unsaid = any(p.kind == "no-units" for p in program.problems) and len(program.moves)
    if unsaid and not request.read_as.units:
        return UnitsMissing()
    known = {part.id: part for part in request.parts}
    analysis = analyse_program(
        program, setting, known=known, progress=lambda share: report("work_out", share)
    )
    if not analysis.pieces and request.cuts_out:
        return NothingCutOut()
    path = _draw_path(analysis, request.router, report)
    return _describe(request, analysis, setting, digest, path)


def _make_setting(request: ReadCutFile) -> "Setting":
    from station.cutting.model import Setting  # noqa: PLC0415 - numpy only where it is used

    router, pockets, said = request.router, request.pockets, request.read_as
    return Setting(
        router=router,
        thickness_mm=request.thickness_mm,
        sheet=request.sheet,
        bit_mm=dict(said.bits),
        zero=said.zero or None,
        origin=said.origin or None,
        spoilboard_mm=said.spoilboard_mm,
        units=said.units or None,
        dialect=said.dialect or "report",
        changer_mm={p.number: p.diameter_mm for p in pockets},
        spindle_mm=request.spindle_mm,
        usual_mm=(router.usual_bit_mm or None) if router else None,
        flutes_of={p.number: p.flutes for p in pockets},
        bits_there=frozenset(p.number for p in pockets) or None,
        hold_downs=request.hold_downs,
        cuts_out=request.cuts_out,
        shop=request.shop,
    )


def _describe(
    request: ReadCutFile, analysis: "Analysis", setting: "Setting", digest: str, path: PackedPath
) -> CutFileRead:
    """Describes the revision as it would be taken in."""
    from station.cutting.analyse.revision import make_revision  # noqa: PLC0415 - only when it is used
    from station.cutting.analyse.taken import list_taken  # noqa: PLC0415 - only when it is used

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
    laying, clear = _lay_out(analysis, request)
    held = request.hold_downs or laying.proposed
    problems = sorted(analysis.problems, key=lambda p: GRAVEST.index(p.grade))[:TOLD]
    return CutFileRead(
        file=Path(request.path).name,
        revision=replace(made, read_as=request.read_as, hold_downs=held, clear=clear),
        sizes={names[s.index]: (s.length_mm, s.width_mm) for s in shapes},
        unnamed=[names[s.index] for s in shapes if s.part is None],
        found=len(analysis.problems),
        problems=[_tell_problem(p, analysis) for p in problems],
        taken=list(list_taken(analysis, setting)),
        router=request.router.id if request.router else "",
        path=path,
        books=_keep_books(analysis) if request.cuts_out else CutBooks(),
        laying=laying,
    )


def _keep_books(analysis: "Analysis") -> CutBooks:
    """Counts what the cuts make, and shares the sheet's area out."""
    return CutBooks(
        cuts=analysis.closed_cuts,
        parts=len(analysis.pieces),
        slugs=len(analysis.slugs),
        parts_mm2=analysis.parts_mm2,
        waste_mm2=analysis.waste_mm2,
        skeleton_mm2=analysis.skeleton_mm2,
        kerf_mm2=analysis.kerf_mm2,
    )


def _lay_out(analysis: "Analysis", request: ReadCutFile) -> tuple[Laying, Clear]:
    """Finds how a sheet of it is held where it is clamped, what flies, how it is popped, and where
    a hold-down may stand.
    """
    from station.cutting.analyse.hold_downs import (  # noqa: PLC0415 - only when it is used
        GRID_MM,
        find_free_cells,
        find_hold_downs,
    )
    from station.cutting.analyse.popping import (  # noqa: PLC0415 - the same
        find_flying_pieces,
        order_for_popping,
    )
    from station.cutting.analyse.revision import (  # noqa: PLC0415 - the same
        order_cutting,
        thin_ring,
    )

    vacuum = not request.cuts_out or (request.router and request.router.bed == "vacuum")
    free = find_free_cells(analysis, request.shop.clamp_reach_mm)
    place = {piece: n for n, piece in enumerate(order_cutting(analysis))}
    laying = Laying(
        slugs=tuple(
            tuple(
                _place_on_sheet((float(x), float(y)), analysis)
                for x, y in thin_ring(s, SLUG_OFF_MM)
            )
            for s in analysis.slugs
        ),
        flying=() if vacuum else tuple(place[n] for n in find_flying_pieces(analysis)),
        popping=tuple(place[n] for n in order_for_popping(analysis)),
    )
    clear = Clear.pack(free.T.tobytes(), GRID_MM, len(free))
    own = request.router.hold_downs if request.router else ()
    proposed = [p for p in own if clear.has_room(p)] or find_hold_downs(
        analysis, HOLD_DOWNS, request.shop.clamp_reach_mm, free
    )
    held = laying if vacuum else msgspec.structs.replace(laying, proposed=tuple(proposed))
    return held, clear


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


def _tell_problem(problem: "Problem", analysis: "Analysis") -> TextProblem:
    """Tells a problem, its place on the sheet."""
    at = _place_on_sheet(problem.at, analysis) if problem.at else None
    values, lengths = take_apart(problem.text)
    return TextProblem(problem.line, problem.text.template, problem.grade, at, values, lengths)
