"""``station cut-file``: what a cut file makes and takes, as JSON."""

import argparse
import json
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from station import bootstrap
from station.commands.common import CommandError, find_data, read_plain_file
from station.cutting.prepare import is_prepared, prepare_reader
from station.cutting.read.dialects import DIALECTS, find_dialect
from station.ledger.faults import InUse
from station.queries.pace import correct_router
from station.shop.cut_text import ORIGINS
from station.shop.facts import Bed, Bit, Part, Router

if TYPE_CHECKING:
    from station.cutting.model import Setting


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="cut files, one or several")
    parser.add_argument("--json", action="store_true", help="one JSON object (the default)")
    parser.add_argument("--router", metavar="R", help="a router of the shop: its time, its bits")
    parser.add_argument("--thickness", type=_read_thickness, metavar="MM", help="of the sheet")
    parser.add_argument(
        "--sheet",
        type=_read_sheet,
        metavar="WxL",
        default=(2440.0, 1220.0),
        help="width and length of the sheet in mm (2440x1220)",
    )
    parser.add_argument(
        "--bit-diameter",
        type=_read_bit,
        action="append",
        default=[],
        metavar="MM or N=MM",
        help="of the bit that cuts the outline, or of bit N; may repeat",
    )
    parser.add_argument("--origin", choices=tuple(ORIGINS), help="where x and y are 0")
    parser.add_argument("--zero", choices=("face", "spoilboard"), help="where z is 0")
    parser.add_argument(
        "--spoilboard",
        type=_read_depth,
        metavar="MM",
        help="how deep a cut may go into the spoilboard",
    )
    parser.add_argument("--units", choices=("mm", "inch"), help="where the file does not say it")
    parser.add_argument(
        "--dialect",
        type=_read_dialect,
        metavar="NAME",
        help=f"{', '.join(DIALECTS)}; several by +",
    )


def _read_sheet(text: str) -> tuple[float, float]:
    first, _, second = text.lower().partition("x")
    try:
        size = float(first), float(second)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text}: write a sheet as 2440x1220") from None
    if not (0 < size[0] < 1e6 and 0 < size[1] < 1e6):
        raise argparse.ArgumentTypeError(f"{text}: a sheet has sizes above zero")
    return size


def _read_bit(text: str) -> tuple[int, float]:
    number, equals, size = text.rpartition("=")
    try:
        found = (int(number) if equals else -1), float(size)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text}: write a bit as 6 or as 2=6") from None
    if not 0 < found[1] < 1000:
        raise argparse.ArgumentTypeError(f"{text}: a bit's diameter is above zero")
    return found


def _read_thickness(text: str) -> float:
    return _read_length(text, "a sheet's thickness is above zero", above=0.0)


def _read_depth(text: str) -> float:
    return _read_length(text, "a depth in the spoilboard is zero or more", above=-1e-9)


def _read_length(text: str, rule: str, *, above: float) -> float:
    try:
        size = float(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text}: write a length in mm, as 6.5") from None
    if not above < size < 1000:
        raise argparse.ArgumentTypeError(f"{text}: {rule}")
    return size


def _read_dialect(text: str) -> str:
    try:
        return find_dialect(text).name
    except ValueError as error:
        raise argparse.ArgumentTypeError(str(error)) from None


def make_setting(
    options: argparse.Namespace,
    router: Router | None = None,
    pockets: Mapping[int, Bit] | None = None,
    spindle: Bit | None = None,
) -> "Setting":
    """Makes the setting of the options, and the router with the bits in its changer."""
    from station.cutting.model import Setting  # noqa: PLC0415 - numpy only where it is used

    pockets = pockets or {}
    return Setting(
        router=router,
        thickness_mm=options.thickness,
        sheet=options.sheet,
        bit_mm=dict(options.bit_diameter),
        changer_mm={n: b.diameter_mm for n, b in pockets.items()},
        spindle_mm=spindle.diameter_mm if spindle else None,
        usual_mm=(router.usual_bit_mm or None) if router else None,
        flutes_of={n: b.flutes for n, b in pockets.items()},
        bits_there=frozenset(pockets) or None,
        hold_downs=router.hold_downs if router else (),
        origin=options.origin,
        zero=options.zero,
        spoilboard_mm=options.spoilboard,
        units=options.units,
        dialect=options.dialect or "report",
    )


def run(options: argparse.Namespace) -> int:
    """Prints what cut files make and take; with a shop at hand, timed for its router."""
    text, wrong = analyse_files(options, _find_machine(options))
    if text:
        print(text)
    for sentence in wrong:
        print(sentence, file=sys.stderr)
    return 2 if wrong else 0


@dataclass(frozen=True)
class CutFileMachine:
    """Holds the router that is asked about, the shop's parts, and the bits that are in."""

    router: Router | None = None
    known: Mapping[str, Part] = field(default_factory=dict)
    pockets: Mapping[int, Bit] = field(default_factory=dict)
    spindle: Bit | None = None


def _find_machine(options: argparse.Namespace) -> CutFileMachine:
    """Finds the router that is asked about, the shop's parts, and the bits that are in.

    A shop that the window has open is only needed for a router; reading takes too long there.
    """
    data = find_data(options)
    asked = str(options.router or "").upper().removeprefix("R")
    if not (data / bootstrap.FILE).exists():
        if asked:
            raise CommandError(f"There is no shop in {data}, so router {asked} is not known.")
        return CutFileMachine()
    try:
        return _read_machine(data, asked)
    except InUse:
        if asked:
            raise
    print("The shop's window is open: parts are read without their names.", file=sys.stderr)
    return CutFileMachine()


def _read_machine(data: Path, asked: str) -> CutFileMachine:
    """Reads them from the shop's file; `asked` is the router's number, or empty."""
    with bootstrap.open_ledger(data) as ledger:
        router = ledger.view.get(Router, asked) if asked else None
        if asked and router is None:
            raise CommandError(f"There is no router {asked}.")
        router = correct_router(ledger.view, router) if router else None
        bed = ledger.view.get(Bed, asked) if router else None
        held = {n: ledger.view.get(Bit, bit) for n, bit in (bed.bits if bed else ())}
        bits = {n: bit for n, bit in held.items() if bit}
        changer = router is not None and router.changer
        return CutFileMachine(
            router,
            {part.id: part for part in ledger.facts(Part)},
            {n: bit for n, bit in bits.items() if n} if changer else {},
            None if changer else bits.get(0),
        )


def analyse_files(
    options: argparse.Namespace, machine: CutFileMachine | None = None
) -> tuple[str, list[str]]:
    """Analyses cut files: gives the JSON text, and a sentence for each that cannot be read.

    The text is empty where none can be.
    """
    machine = machine or CutFileMachine()
    if not is_prepared():
        print("Preparing to read cut files, once on this computer …", file=sys.stderr)
        prepare_reader(_make_teller())
    from station.cutting.report import (  # noqa: PLC0415 - compiled by now
        analyse_program,
        make_report,
        read_program,
        refuse_program,
    )

    setting = make_setting(options, machine.router, machine.pockets, machine.spindle)
    results: list[dict[str, object]] = []
    wrong: list[str] = []
    for name in options.files:
        try:
            program = read_program(read_plain_file(Path(name)), setting)  # keeps no text
        except OSError as error:
            wrong.append(f"{name} cannot be read: {error.strerror}.")
            continue
        if refused := refuse_program(program):
            wrong.append(f"{name}: {refused}")
            continue
        analysis = analyse_program(program, setting, known=machine.known)
        for problem in analysis.problems:
            if problem.kind == "nothing-cut":
                print(f"{name}: {problem.text}", file=sys.stderr)
        report = make_report(analysis)
        results.append(report if len(options.files) == 1 else {"file": name, **report})
    if len(options.files) == 1:
        return json.dumps(results[0]) if results else "", wrong
    return json.dumps({"files": results}) if results else "", wrong


def _make_teller() -> Callable[[float], None]:
    """Makes what tells on standard error how far preparing is, by tenths."""
    told = 0

    def tell(share: float) -> None:
        nonlocal told
        if int(share * 10) > told:
            told = int(share * 10)
            print(f"{told * 10} %", file=sys.stderr, flush=True)

    return tell
