"""Read a cut file, analyse it, and hand on what was found."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from station.cutting.analyse.inference import THROUGH_MM, Settled, settle
from station.cutting.analyse.problems import find_problems
from station.cutting.analyse.time import timing
from station.cutting.geometry.moves import Geometry, bounds, geometry, kinds_of
from station.cutting.geometry.parts import find_pieces
from station.cutting.geometry.shapes import group
from station.cutting.model import (
    RAPID,
    Analysis,
    BitWork,
    Cancelled,
    Floats,
    Moves,
    Piece,
    Problem,
    Program,
    Progress,
    Setting,
    ShapeFound,
)
from station.cutting.read.reader_compiled import read_fast
from station.shop.facts import Part


def read(
    data: bytes,
    setting: Setting,
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Program:
    """The program that a cut file's text stands for. What is wrong is told in its problems.

    `progress` gets the part done, 0 to 1. Raises Cancel once `cancelled` says so, and
    ValueError for a dialect that is not known.
    """
    return read_fast(data, setting, progress=progress, cancelled=cancelled)


def analyse(
    program: Program,
    setting: Setting,
    *,
    known: Mapping[str, Part] | None = None,
    progress: Progress | None = None,
) -> Analysis:
    """All that follows from a program: lengths, time, bits, pieces, what could go wrong.

    `progress` gets the part done, 0 to 1.
    """
    tell = progress or (lambda _share: None)
    moves = program.moves
    geo = geometry(moves)
    tell(0.2)
    settled = settle(program, setting, geo)
    found = find_pieces(
        moves,
        geo,
        settled.bits,
        face=settled.face,
        bottom=settled.bottom,
        through_z=settled.through_z,
    )
    tell(0.5)
    pieces, shapes = group(found, known or {})
    tell(0.6)
    problems = find_problems(moves, geo, settled, setting, pieces)
    left = settled.through_z - settled.bottom - THROUGH_MM
    if pieces and setting.thickness_mm and left > 0.01:
        text = f"The deepest cut leaves {left:.2f} mm of the sheet."
        problems.append(Problem(0, "not-through", text))
    tell(0.9)
    return _analysis(program, setting, geo, settled, pieces, shapes, problems)


def _analysis(
    program: Program,
    setting: Setting,
    geo: Geometry,
    settled: Settled,
    pieces: list[Piece],
    shapes: list[ShapeFound],
    problems: list[Problem],
) -> Analysis:
    moves = program.moves
    rapid = moves.kind == RAPID
    router = setting.router
    times = timing(moves, program.pauses, router, geo) if router else None
    file_s = times.total_s if times else None
    area = sum(s.area_mm2 * len(s.pieces) for s in shapes)
    order = sorted((*program.problems, *problems), key=lambda p: p.line)
    z = moves.points[:, 2]
    down = ~rapid & (z[1:] < z[:-1]) & (z[1:] < settled.face - 0.01) & (z[:-1] >= settled.face)
    return Analysis(
        program=program,
        feed_mm=float(geo.length[~rapid].sum()),
        rapid_mm=float(geo.length[rapid].sum()),
        plunges=int(down.sum()),
        time_s=None if file_s is None or router is None else file_s * router.pace + router.extra_s,
        file_s=file_s,
        bounds_mm=bounds(geo, moves.sure),
        bits=_bit_work(moves, geo, settled, setting, times.moves if times else None),
        pieces=tuple(pieces),
        shapes=tuple(shapes),
        scrap_mm2=max(0.0, settled.sheet[0] * settled.sheet[1] - area),
        thickness_mm=settled.thickness,
        sheet_mm=settled.sheet,
        corner_mm=settled.corner,
        face_z=settled.face,
        assumed=(*program.assumed, *settled.assumed),
        problems=tuple(order),
    )


def _bit_work(
    moves: Moves, geo: Geometry, settled: Settled, setting: Setting, seconds: Floats | None
) -> tuple[BitWork, ...]:
    feed = moves.kind != RAPID
    z = moves.points[:, 2]
    cut = feed & (np.minimum(z[:-1], z[1:]) < settled.face - 1e-6)
    with np.errstate(divide="ignore", invalid="ignore"):
        minutes = np.where(moves.feed > 0, geo.length / moves.feed, 0.0)
        turn = moves.feed / moves.rpm
    minutes = np.where(np.isnan(moves.minutes), minutes, moves.minutes)
    if seconds is not None:
        minutes = seconds / 60
    works = []
    for number in kinds_of(moves.tool[feed]):
        mine = feed & (moves.tool == number)
        busy = mine & cut
        chips = turn[busy & (geo.flat > 1e-9) & (moves.rpm > 0)] / setting.teeth(number)
        works.append(
            BitWork(
                number=number,
                diameter_mm=settled.bits.get(number, 0.0),
                cut_mm=float(geo.length[busy].sum()),
                feed_mm=float(geo.length[mine].sum()),
                seconds=float(minutes[busy].sum()) * 60,
                revolutions=float((minutes[busy] * moves.rpm[busy]).sum()),
                chip_mm=(float(chips.min()), float(chips.max())) if len(chips) else (0.0, 0.0),
            )
        )
    return tuple(works)


def as_json(analysis: Analysis) -> dict[str, object]:
    """What ``station cut-file --json`` prints: plain lists, texts and numbers."""
    names = ("xmin", "ymin", "zmin", "xmax", "ymax", "zmax")
    return {
        "feed_mm": _r(analysis.feed_mm),
        "rapid_mm": _r(analysis.rapid_mm),
        "time_s": None if analysis.time_s is None else _r(analysis.time_s),
        "bits": [
            {"number": b.number, "diameter_mm": b.diameter_mm, "cut_mm": _r(b.cut_mm)}
            for b in analysis.bits
        ],
        "parts": [_part_json(analysis, shape) for shape in analysis.shapes],
        "tab_count": sum(len(p.tabs) for p in analysis.pieces),
        "bounds_mm": dict(zip(names, map(_r, analysis.bounds_mm), strict=True)),
        "scrap_mm2": _r(analysis.scrap_mm2),
        "assumed": list(analysis.assumed),
        "problems": [{"line": p.line, "kind": p.kind, "text": p.text} for p in analysis.problems],
    }


def _r(value: float) -> float:
    return round(value, 6)


def _part_json(analysis: Analysis, shape: ShapeFound) -> dict[str, object]:
    counts = [len(analysis.pieces[i].tabs) for i in shape.pieces]
    return {
        "name": shape.name,
        "count": len(shape.pieces),
        "mirrored": shape.mirrored,
        "width_mm": _r(shape.width_mm),
        "length_mm": _r(shape.length_mm),
        "area_mm2": _r(shape.area_mm2),
        "perimeter_mm": _r(shape.perimeter_mm),
        "tabs": counts[0] if len(set(counts)) == 1 else counts,
    }


__all__ = ["analyse", "as_json", "read"]
