"""``station cut-file``: what cut files hold, as JSON."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from station.cutting.prepare import prepare, prepared
from station.cutting.read.dialects import DIALECTS, dialect_of
from station.shop.facts import Bit, Part, Router

if TYPE_CHECKING:
    from station.cutting.model import Setting


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The options of ``station cut-file``."""
    parser.add_argument("files", nargs="+", metavar="FILE")
    parser.add_argument("--json", action="store_true", help="one JSON object (the default)")
    parser.add_argument("--router", metavar="R")
    parser.add_argument("--thickness", type=_thickness, metavar="MM")
    parser.add_argument("--sheet", type=_sheet, metavar="WxL", default=(2440.0, 1220.0))
    parser.add_argument(
        "--bit-diameter", type=_bit, action="append", default=[], metavar="MM or N=MM"
    )
    parser.add_argument("--origin", choices=("lower-left", "centre"))
    parser.add_argument("--zero", choices=("face", "spoilboard"))
    parser.add_argument("--spoilboard", type=_depth, metavar="MM")
    parser.add_argument("--units", choices=("mm", "inch"))
    parser.add_argument(
        "--dialect", type=_dialect, metavar="NAME", help=f"{', '.join(DIALECTS)}; several by +"
    )


def _sheet(text: str) -> tuple[float, float]:
    first, _, second = text.lower().partition("x")
    try:
        size = float(first), float(second)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text}: write a sheet as 2440x1220") from None
    if not (0 < size[0] < 1e6 and 0 < size[1] < 1e6):
        raise argparse.ArgumentTypeError(f"{text}: a sheet has sizes above zero")
    return size


def _bit(text: str) -> tuple[int, float]:
    number, equals, size = text.rpartition("=")
    try:
        found = (int(number) if equals else -1), float(size)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text}: write a bit as 6 or as 2=6") from None
    if not 0 < found[1] < 1000:
        raise argparse.ArgumentTypeError(f"{text}: a bit's diameter is above zero")
    return found


def _thickness(text: str) -> float:
    return _length(text, "a sheet's thickness is above zero", above=0.0)


def _depth(text: str) -> float:
    return _length(text, "a depth in the spoilboard is zero or more", above=-1e-9)


def _length(text: str, rule: str, *, above: float) -> float:
    try:
        size = float(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text}: write a length in mm, as 6.5") from None
    if not above < size < 1000:
        raise argparse.ArgumentTypeError(f"{text}: {rule}")
    return size


def _dialect(text: str) -> str:
    try:
        return dialect_of(text).name
    except ValueError as error:
        raise argparse.ArgumentTypeError(str(error)) from None


def setting_of(
    options: argparse.Namespace,
    router: Router | None = None,
    pockets: Mapping[int, Bit] | None = None,
) -> Setting:
    """The setting that the options give, and the router with the bits in its changer."""
    from station.cutting.model import Setting  # noqa: PLC0415 - keeps numpy out of the start

    pockets = pockets or {}
    return Setting(
        router=router,
        thickness_mm=options.thickness,
        sheet=options.sheet,
        bit_mm={n: b.diameter_mm for n, b in pockets.items()} | dict(options.bit_diameter),
        flutes_of={n: b.flutes for n, b in pockets.items()},
        bits_there=frozenset(pockets) or None,
        hold_downs=router.hold_downs if router else (),
        origin=options.origin,
        zero=options.zero,
        spoilboard_mm=options.spoilboard,
        units=options.units,
        dialect=options.dialect or "report",
    )


def run(
    files: Sequence[str],
    options: argparse.Namespace,
    *,
    router: Router | None = None,
    known: Mapping[str, Part] | None = None,
    pockets: Mapping[int, Bit] | None = None,
) -> tuple[str, int]:
    """The JSON text and the exit code; for a file that cannot be read, a sentence and 2."""
    if not prepared():
        print("Preparing to read cut files, once on this computer …", file=sys.stderr)  # noqa: T201 - a command prints
        prepare()
    from station.cutting.report import analyse, as_json, read  # noqa: PLC0415 - compiled by now

    setting = setting_of(options, router, pockets)
    results: list[dict[str, object]] = []
    for name in files:
        try:
            data = Path(name).read_bytes()
        except OSError as error:
            return f"{name} cannot be read: {error.strerror}.", 2
        program = read(data, setting)
        if program.refused:
            return f"{name}: {program.refused}", 2
        results.append(as_json(analyse(program, setting, known=known)))
    if len(results) == 1:
        return json.dumps(results[0]), 0
    named = [{"file": n, **r} for n, r in zip(files, results, strict=True)]
    return json.dumps({"files": named}), 0
