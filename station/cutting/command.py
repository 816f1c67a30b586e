"""``station cut-file``: what cut files hold, as JSON."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from station.cutting.dialects import DIALECTS
from station.cutting.prepare import prepare, prepared
from station.shop.facts import Part, Router

if TYPE_CHECKING:
    from station.cutting.model import Setting


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The options of ``station cut-file``."""
    parser.add_argument("files", nargs="+", metavar="FILE")
    parser.add_argument("--json", action="store_true", help="one JSON object (the default)")
    parser.add_argument("--router", metavar="R")
    parser.add_argument("--thickness", type=float, metavar="MM")
    parser.add_argument("--sheet", type=_sheet, metavar="WxL", default=(2440.0, 1220.0))
    parser.add_argument(
        "--bit-diameter", type=_bit, action="append", default=[], metavar="MM or N=MM"
    )
    parser.add_argument("--origin", choices=("lower-left", "centre"))
    parser.add_argument("--zero", choices=("face", "spoilboard"))
    parser.add_argument("--spoilboard", type=float, metavar="MM")
    parser.add_argument("--units", choices=("mm", "inch"))
    parser.add_argument("--dialect", choices=tuple(DIALECTS))


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


def setting_of(options: argparse.Namespace, router: Router | None = None) -> Setting:
    """The setting that the options give."""
    from station.cutting.model import Setting  # noqa: PLC0415 - keeps numpy out of the start

    return Setting(
        router=router,
        thickness_mm=options.thickness,
        sheet=options.sheet,
        bit_mm=dict(options.bit_diameter),
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
) -> tuple[str, int]:
    """The JSON text and the exit code; for a file that cannot be read, a sentence and 2."""
    if not prepared():
        print("Preparing to read cut files, once on this computer …", file=sys.stderr)  # noqa: T201 - a command prints
        prepare()
    from station.cutting.report import analyse, as_json, read  # noqa: PLC0415 - compiled by now

    setting = setting_of(options, router)
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
