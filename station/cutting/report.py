"""Read a cut file, analyse it, and hand on what was found."""

from __future__ import annotations

import gc
from collections.abc import Mapping
from dataclasses import replace

import numpy as np
import shapely

from station.cutting.analyse.inference import Inferred, infer_setting
from station.cutting.analyse.notes import sum_up_arcs
from station.cutting.analyse.pass_problems import find_pass_problems
from station.cutting.analyse.path_problems import find_path_problems
from station.cutting.analyse.piece_problems import find_piece_problems
from station.cutting.analyse.thickness import find_wrong_sheet
from station.cutting.analyse.time import time_path
from station.cutting.geometry.compensation import compensate
from station.cutting.geometry.moves import Geometry, find_geometry, list_values
from station.cutting.geometry.shapes import group_pieces
from station.cutting.geometry.sheet import (
    Sheet,
    count_closed,
    find_sheet,
    list_slugs,
    measure_areas,
)
from station.cutting.model import (
    LOOK,
    RAPID,
    Analysis,
    BitWork,
    Cancelled,
    Floats,
    Ints,
    Moves,
    Piece,
    Problem,
    Program,
    Progress,
    Setting,
    ShapeFound,
)
from station.cutting.read.calls import write_out
from station.cutting.read.dialects import find_dialect, turn_skipping
from station.cutting.read.reader_compiled import read_compiled
from station.cutting.read.remarks import (
    find_bits_said,
    find_zero_said,
    number_bits,
    says_left_hand,
)
from station.cutting.read.sheet_remarks import find_origin_said, find_thickness_said
from station.cutting.read.text import find_backward, find_other_zero, find_skipped
from station.shop.facts import Part
from station.shop.words import Say, say

gc.freeze()  # what is loaded by now stays: it is not looked through again with every file


def read_program(
    data: bytes,
    setting: Setting,
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Program:
    """Reads the program that a cut file's text stands for. What is wrong is told in its problems.

    `progress` gets the part done, 0 to 1. Raises Cancel once `cancelled` says so, and
    ValueError for a dialect that is not known.
    """
    skipped = find_skipped(data)
    program = _read_text(data, setting, skipped, progress=progress, cancelled=cancelled)
    if skipped and not program.refused:
        turned = replace(setting, dialect=turn_skipping(setting.dialect))
        program = replace(program, otherwise=_read_text(data, turned, skipped))
    return program


def _read_text(
    data: bytes,
    setting: Setting,
    skipped: tuple[tuple[int, int], ...],
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Program:
    """Reads a text in one way, its calls written out; `skipped`: lines that begin with a slash."""
    text = write_out(data, find_dialect(setting.dialect))
    program = read_compiled(text.data, setting, progress=progress, cancelled=cancelled)
    inches = program.units == "inch"
    program = replace(
        program,
        bits_said=find_bits_said(text.data, inches=inches),
        skipped=skipped,
        zero_said=find_zero_said(data),
        origin_said=find_origin_said(data),
        thickness_said=find_thickness_said(data, inches=inches),
        other_zero=find_other_zero(text.data),
        backward=0 if says_left_hand(data) else find_backward(text.data),
    )
    return text.find_lines(number_bits(program))


def refuse_program(program: Program) -> Say:
    """Says why what was read is no cut file; empty: it may be one."""
    runs = len(program.moves) or program.pauses or (program.otherwise and program.otherwise.moves)
    if program.refused or runs:
        return program.refused
    return say("No line of it moves the router. Choose another.")


def analyse_program(
    program: Program,
    setting: Setting,
    *,
    known: Mapping[str, Part] | None = None,
    progress: Progress | None = None,
) -> Analysis:
    """Works out all that follows from a program: lengths, time, bits, pieces, what could go wrong.

    `progress` gets the part done, 0 to 1.
    """
    tell = progress or (lambda _share: None)
    geo = find_geometry(program.moves)
    tell(0.2)
    inferred = infer_setting(program, setting, geo)
    if program.sides:
        program, geo = _move_aside(program, inferred)
    file_s, bits = _time_bits(program, setting, geo, inferred)
    sheet = _find_sheet(program, setting, geo, inferred)
    tell(0.5)
    pieces, shapes = group_pieces(sheet.pieces, known or {})
    tell(0.6)
    problems = _list_problems(program, setting, geo, inferred, sheet, pieces)
    tell(0.9)
    found = replace(
        _make_analysis(program, setting, geo, inferred, pieces, shapes, problems),
        file_s=file_s,
        time_s=_correct_time(file_s, setting),
        bits=bits,
    )
    areas = measure_areas(sheet, _draw_edge(inferred))
    return replace(
        found,
        parts_mm2=areas.parts,
        waste_mm2=areas.waste,
        skeleton_mm2=areas.skeleton,
        kerf_mm2=areas.kerf,
        closed_cuts=count_closed(sheet),
        slugs=list_slugs(sheet),
    )


def _move_aside(program: Program, inferred: Inferred) -> tuple[Program, Geometry]:
    """Moves the path as the router does under G41 and G42."""
    program = compensate(program, inferred.bits)
    return program, find_geometry(program.moves)


def _list_problems(
    program: Program,
    setting: Setting,
    geo: Geometry,
    inferred: Inferred,
    sheet: Sheet,
    pieces: list[Piece],
) -> list[Problem]:
    """Lists what could go wrong: in the program, the cuts, the passes, and on the sheet."""
    return [
        *find_path_problems(program, geo, inferred, setting),
        *find_piece_problems(sheet, pieces, inferred.levels, setting),
        *find_pass_problems(program, sheet, geo, inferred.levels, setting),
        *_check_sheet(program, setting, geo, inferred, sheet),
        *_check_skipped(program, setting, len(pieces)),
    ]


def _check_sheet(
    program: Program, setting: Setting, geo: Geometry, inferred: Inferred, sheet: Sheet
) -> list[Problem]:
    """Lists what tells that the file is for another sheet; a remark's thickness is less sure than
    one that is given.
    """
    found = list(inferred.heights.asked)
    if setting.cuts_out:
        found += find_wrong_sheet(program, sheet, geo, inferred.levels)
    given = setting.thickness_mm is not None
    return found if given else [replace(problem, graded=LOOK) for problem in found]


def _find_sheet(program: Program, setting: Setting, geo: Geometry, inferred: Inferred) -> Sheet:
    """Finds what is cut out of the sheet."""
    edge = _draw_edge(inferred) if setting.sheet is not None else None
    return find_sheet(program.moves, geo, inferred.bits, inferred.levels, edge)


def _draw_edge(inferred: Inferred) -> shapely.Geometry:
    """Draws the sheet's edge in the file's frame."""
    (x, y), (long, wide) = inferred.corner, inferred.sheet
    return shapely.box(x, y, x + long, y + wide)


def _check_skipped(program: Program, setting: Setting, pieces: int) -> list[Problem]:
    """Tells what comes out where lines that begin with a slash are run, and where they are not."""
    other = program.otherwise
    if other is None or len(other.moves) == len(program.moves):
        return []
    geo = find_geometry(other.moves)
    count = len(_find_sheet(other, setting, geo, infer_setting(other, setting, geo)).pieces)
    runs, skips = (count, pieces) if len(other.moves) > len(program.moves) else (pieces, count)
    first, last = program.skipped[0][0], program.skipped[-1][1]
    text = say(
        "Lines between {first} and {last} begin with a slash: {runs} {runs|part|parts} where the "
        "router runs them, {skips} where it skips them.",
        first=first,
        last=last,
        runs=runs,
        skips=skips,
    )
    return [Problem(first, "block-deleted", text)]


def _make_analysis(
    program: Program,
    setting: Setting,
    geo: Geometry,
    inferred: Inferred,
    pieces: list[Piece],
    shapes: list[ShapeFound],
    problems: list[Problem],
) -> Analysis:
    """Puts together what was found, with the lengths that follow from it."""
    moves = program.moves
    rapid = moves.kind == RAPID
    area = sum(s.area_mm2 * len(s.pieces) for s in shapes)
    order = sorted((*sum_up_arcs(program.problems), *problems), key=lambda p: p.line)
    z = moves.points[:, 2]
    down = ~rapid & (z[1:] < z[:-1]) & (z[1:] < inferred.face - 0.01) & (z[:-1] >= inferred.face)
    return Analysis(
        program=program,
        feed_mm=float(geo.length[~rapid].sum()),
        rapid_mm=float(geo.length[rapid].sum()),
        plunges=int(down.sum()),
        time_s=None,
        file_s=None,
        bounds_mm=geo.bounds,
        bits=(),
        pieces=tuple(pieces),
        shapes=tuple(shapes),
        scrap_mm2=max(0.0, inferred.sheet[0] * inferred.sheet[1] - area),
        thickness_mm=inferred.thickness,
        sheet_mm=inferred.sheet,
        corner_mm=inferred.corner,
        face_z=inferred.face,
        assumed=(*program.assumed, *inferred.assumed),
        problems=tuple(order),
        small_mm2=setting.shop.small_piece_mm2,
    )


def _time_bits(
    program: Program, setting: Setting, geo: Geometry, inferred: Inferred
) -> tuple[float | None, tuple[BitWork, ...]]:
    """Finds the seconds of the whole path, where a router is known, and what each bit does; the
    times of single moves take room, and are not kept.
    """
    router, moves = setting.router, program.moves
    times = time_path(moves, program.pauses, router, geo) if router else None
    work = _find_bit_work(moves, geo, inferred, setting, times.moves if times else None)
    return (times.total_s if times else None), work


def _correct_time(file_s: float | None, setting: Setting) -> float | None:
    """Corrects a path's time by the router's own pace."""
    router = setting.router
    return None if file_s is None or router is None else file_s * router.pace + router.extra_s


def _find_bit_work(
    moves: Moves, geo: Geometry, inferred: Inferred, setting: Setting, seconds: Floats | None
) -> tuple[BitWork, ...]:
    """Finds what each bit does: how long it cuts, how far, and its chip load."""
    feed = moves.kind != RAPID
    z = moves.points[:, 2]
    cut = feed & (np.minimum(z[:-1], z[1:]) < inferred.face - 1e-6)
    works = []
    for number in list_values(moves.tool[feed]):
        mine = feed & (moves.tool == number)
        busy = np.flatnonzero(mine & cut)
        spent = _find_minutes(moves, geo, busy) if seconds is None else seconds[busy] / 60
        rpm, teeth = moves.rpm[busy], setting.count_teeth(number)
        with np.errstate(divide="ignore", invalid="ignore"):
            chips = (moves.feed[busy] / rpm)[(geo.flat[busy] > 1e-9) & (rpm > 0)]
        low, high = (chips.min() / teeth, chips.max() / teeth) if len(chips) else (0.0, 0.0)
        works.append(
            BitWork(
                number=number,
                diameter_mm=inferred.bits.get(number, 0.0),
                cut_mm=float(geo.length[busy].sum()),
                feed_mm=float(geo.length[mine].sum()),
                seconds=float(spent.sum()) * 60,
                revolutions=float(np.nansum(spent * rpm)),
                chip_mm=(float(low), float(high)),
            )
        )
    return tuple(works)


def _find_minutes(moves: Moves, geo: Geometry, some: Ints) -> Floats:
    """Finds the minutes of some moves by their feed alone, or as inverse time feed says."""
    feed, fixed = moves.feed[some], moves.minutes[some]
    with np.errstate(divide="ignore", invalid="ignore"):
        minutes = np.where(feed > 0, geo.length[some] / feed, 0.0)
    return np.where(np.isnan(fixed), minutes, fixed)


def make_report(analysis: Analysis) -> dict[str, object]:
    """Makes what ``station cut-file --json`` prints: plain lists, texts and numbers."""
    names = ("xmin", "ymin", "zmin", "xmax", "ymax", "zmax")
    return {
        "feed_mm": _round_off(analysis.feed_mm),
        "rapid_mm": _round_off(analysis.rapid_mm),
        "time_s": None if analysis.time_s is None else _round_off(analysis.time_s),
        "bits": [
            {"number": b.number, "diameter_mm": b.diameter_mm, "cut_mm": _round_off(b.cut_mm)}
            for b in analysis.bits
        ],
        "parts": [_report_part(analysis, shape) for shape in analysis.shapes],
        "tab_count": sum(len(p.tabs) for p in analysis.pieces),
        "bounds_mm": dict(zip(names, map(_round_off, analysis.bounds_mm), strict=True)),
        "scrap_mm2": _round_off(analysis.scrap_mm2),
        "waste_mm2": _round_off(analysis.waste_mm2),
        "skeleton_mm2": _round_off(analysis.skeleton_mm2),
        "kerf_mm2": _round_off(analysis.kerf_mm2),
        "closed_cuts": analysis.closed_cuts,
        "slugs": len(analysis.slugs),
        "assumed": list(analysis.assumed),
        "problems": [
            {"line": p.line, "kind": p.kind, "grade": p.grade, "text": str(p.text)}
            for p in analysis.problems
        ],
    }


def _round_off(value: float) -> float:
    """Rounds a number to what the report prints."""
    return round(value, 6)


def _report_part(analysis: Analysis, shape: ShapeFound) -> dict[str, object]:
    """Makes what the report prints of one shape."""
    counts = [len(analysis.pieces[i].tabs) for i in shape.pieces]
    return {
        "name": shape.name,
        "count": len(shape.pieces),
        "mirrored": shape.mirrored,
        "width_mm": _round_off(shape.width_mm),
        "length_mm": _round_off(shape.length_mm),
        "area_mm2": _round_off(shape.area_mm2),
        "holes": len(shape.holes),
        "hollows": [h.depth_mm for h in shape.hollows],
        "perimeter_mm": _round_off(shape.perimeter_mm),
        "tabs": counts[0] if len(set(counts)) == 1 else counts,
    }
