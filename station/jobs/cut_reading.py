"""A cut file read for the office: from its text to the revision that it would be.

It runs beside the screen (`station.jobs.process`): what goes in and out is plain JSON, no ledger.
"""

import hashlib
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, cast

from station.cutting.prepare import is_prepared, prepare_reader
from station.shop.facts import Part, Router
from station.shop.plain import build, to_plain
from station.shop.words import say

if TYPE_CHECKING:
    from station.cutting.model import Analysis, Setting, ShapeFound
    from station.jobs.process import Tell

TOLD = 200  # problems that are kept to be shown
STAGES = {
    "read": say("Reading the text"),
    "ready": say("This PC gets ready to read cut files, once"),
    "work_out": say("Working out time, parts and what could go wrong"),
    "draw": say("Drawing the path"),
}


SPANS = {"read": (0.0, 0.3), "work_out": (0.3, 0.7), "draw": (0.7, 1.0)}  # of the whole


def work(asked: Mapping[str, object], tell_all: "Tell") -> dict[str, object]:
    """What came of a text: `cut`, or `taken` (a letter), `refused` (why), `units` or `nothing`.

    `asked`: `path`, `cut_file` and `material` (ids), `thickness_mm`, `sheet` (along x, along
    y), `router` (None: not known), `pockets` (of its changer: number, mm, flutes), `units` (for
    a text that does not say; None: then it is asked), `parts` (those with a
    shape), `taken` (letter by digest), `cuts_out` (False: a run on the sheets of another
    file, which cuts no parts out).
    """

    def tell(stage: str, share: float) -> None:
        start, end = SPANS.get(stage, (0.0, 1.0))
        tell_all(stage, start + share * (end - start))

    path, taken = Path(str(asked["path"])), asked["taken"]
    assert isinstance(taken, Mapping)
    tell("read", 0.0)
    data = path.read_bytes()
    digest = hashlib.sha256(data).hexdigest()
    if digest in taken:
        return {"taken": taken[digest]}
    if not is_prepared():
        prepare_reader(lambda share: tell("ready", share))
    return _read(asked, path.name, data, digest, tell)


def _read(
    asked: Mapping[str, object], name: str, data: bytes, digest: str, tell: "Tell"
) -> dict[str, object]:
    """What a text that is not known yet makes and takes, or why it cannot be told."""
    from station.cutting.report import analyse_program, read_program  # noqa: PLC0415 - compiled by now

    setting = _setting(asked)
    program = read_program(data, setting, progress=lambda share: tell("read", share))
    if program.refused:
        return {"refused": program.refused}
    unsaid = any(p.kind == "no-units" for p in program.problems) and len(program.moves)
    if unsaid and asked["units"] is None:
        return {"units": True}
    known = {part.id: part for part in map(_part, cast("list[object]", asked["parts"]))}
    analysis = analyse_program(
        program, setting, known=known, progress=lambda share: tell("work_out", share)
    )
    if not analysis.pieces and asked["cuts_out"]:
        return {"nothing": True}
    cut = _told(asked, analysis, name, digest)
    cut["router"] = setting.router.id if setting.router else ""
    return {"cut": cut | {"path": _path(analysis, setting.router, tell)}}


def _setting(asked: Mapping[str, object]) -> "Setting":
    from station.cutting.model import Setting  # noqa: PLC0415 - numpy only where it is used

    router = asked["router"]
    along, across = cast("list[float]", asked["sheet"])
    made = cast("Router", build("router", router)) if isinstance(router, dict) else None
    pockets = cast("list[tuple[int, float, int]]", asked["pockets"])
    return Setting(
        router=made,
        thickness_mm=cast("float", asked["thickness_mm"]),
        sheet=(along, across),
        units=cast("str | None", asked["units"]),
        bit_mm={n: mm for n, mm, _ in pockets},
        flutes_of={n: flutes for n, _, flutes in pockets},
        bits_there=frozenset(n for n, _, _ in pockets) or None,
        hold_downs=made.hold_downs if made else (),
    )


def _part(plain: object) -> Part:
    made = build("part", cast("dict[str, object]", plain))
    assert isinstance(made, Part)
    return made


def _told(
    asked: Mapping[str, object], analysis: "Analysis", name: str, digest: str
) -> dict[str, object]:
    """The revision as it would be taken in, its new shapes still without a name."""
    from station.cutting.analyse.revision import make_revision  # noqa: PLC0415 - only when it is used

    shapes = analysis.shapes if asked["cuts_out"] else ()
    names = {s.index: s.part or f"new{s.index}" for s in shapes}
    made = make_revision(
        analysis,
        id=f"{asked['cut_file']}.NEW",
        cut_file=str(asked["cut_file"]),
        letter="NEW",
        material=str(asked["material"]),
        names=names,
        digest=digest,
    )
    return {
        "file": name,
        "revision": to_plain(made),
        "sizes": {names[s.index]: _size(s) for s in shapes},
        "unnamed": [names[s.index] for s in shapes if s.part is None],
        "parts": {},
        "found": len(analysis.problems),
        "problems": [_problem(p.line, p.text) for p in analysis.problems[:TOLD]],
        "spots": [_on_sheet(p.at, analysis) for p in analysis.problems[:TOLD] if p.at],
        "assumed": [str(a) for a in analysis.assumed],
    }


def _path(analysis: "Analysis", router: Router | None, tell: "Tell") -> dict[str, object]:
    """The path beside it, packed: a draft with it is written at every scan."""
    from station.cutting.analyse.drawing import draw_path  # noqa: PLC0415 - only when it is used
    from station.shop.strokes import pack  # noqa: PLC0415 - only when it is used

    path = draw_path(analysis, router, progress=lambda share: tell("draw", share))
    return {
        "strokes": pack(path.strokes),
        "seconds": path.seconds,
        "off_mm": path.off_mm,
        "share": path.share,
        "thickness_mm": analysis.thickness_mm,
    }


def _on_sheet(at: tuple[float, float], analysis: "Analysis") -> list[float]:
    """A place of the text's own frame as it lies on the sheet."""
    return [at[0] - analysis.corner_mm[0], at[1] - analysis.corner_mm[1]]


def _size(shape: "ShapeFound") -> str:
    return f"{shape.length_mm:.1f} × {shape.width_mm:.1f} mm"


def _problem(line: int, text: object) -> str:
    words = str(text)
    return str(say("Line {line}: {what}", line=line, what=words)) if line else words
