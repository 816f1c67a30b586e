"""The commands. Bad input gives one sentence on standard error and a non-zero exit."""

import argparse
import json
import logging
import os
import sys
import tempfile
from collections.abc import Callable, Sequence
from pathlib import Path

from station import bootstrap
from station.bootstrap import AREAS, Where
from station.clock import Clock
from station.ledger.faults import Fault
from station.shop.facts import Bed, Bit, Fact, Part, Router
from station.shop.pace import corrected

Command = Callable[[argparse.Namespace], int]


class Wrong(Exception):  # noqa: N818 - it is the person's mistake, said in one sentence
    """What a person did wrong, as one sentence."""


def main(argv: Sequence[str] | None = None) -> int:
    """Runs one command; gives its exit code."""
    for stream in (sys.stdout, sys.stderr, sys.stdin):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    options = parser().parse_args(argv, argparse.Namespace(data=None, now=""))
    run: Command = options.run
    try:
        return run(options)
    except (Wrong, Fault) as fault:
        print(fault, file=sys.stderr)
        return 1
    except OSError as fault:
        print(f"{fault.strerror or fault}: {fault.filename or 'this machine'}", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        return 130
    except Exception as bug:  # noqa: BLE001 - our own mistake must be kept, whatever it is
        return own_bug(options, bug)


def own_bug(options: argparse.Namespace, bug: Exception) -> int:
    """Our own mistake: kept with what is needed to mend it, told in one sentence."""
    folder = data_of(options)
    log = (folder if folder.is_dir() else Path(tempfile.gettempdir())) / "errors.log"
    logging.basicConfig(filename=log, encoding="utf-8", format="%(asctime)s %(message)s")
    logging.getLogger(__name__).error("command %s", " ".join(sys.argv[1:]), exc_info=bug)
    print(
        f"Something is wrong in the program itself. It is written down in {log}.", file=sys.stderr
    )
    return 70


def parser() -> argparse.ArgumentParser:
    """Every command with its options."""
    common = argparse.ArgumentParser(add_help=False)
    # Not given is not set, so that what stands before the command's name counts too.
    common.add_argument(
        "--data", type=Path, metavar="DIR", default=argparse.SUPPRESS, help="the data folder"
    )
    common.add_argument(
        "--now", metavar="ISO-TIME", default=argparse.SUPPRESS, help="pins the clock"
    )
    top = argparse.ArgumentParser(
        prog="station", parents=[common], description="A station of the workshop."
    )
    top.set_defaults(run=run_open)
    commands = top.add_subparsers(title="commands", metavar="")

    def add(name: str, run: Command, words: str) -> argparse.ArgumentParser:
        command = commands.add_parser(name, parents=[common], help=words, description=words)
        command.set_defaults(run=run)
        return command

    _station_commands(add)
    _paper_and_file_commands(add)
    return top


Add = Callable[[str, Command, str], argparse.ArgumentParser]


def _station_commands(add: Add) -> None:
    """The demo, the tour, the text station, state and codes."""
    demo = add("demo", run_demo, "builds the demo shop and opens it")
    demo.add_argument("--build-only", action="store_true", help="builds it and stops")
    tour = add("tour", run_tour, "drives the real screens through one demo day")
    tour.add_argument("out", type=Path, metavar="OUT")
    tour.add_argument("--scanner-only", action="store_true", help="printed codes alone")
    scan = add("scan", run_scan, "the text station: codes in, JSON lines out")
    scan.add_argument("--area", default="loading", choices=[a for a in AREAS if a != "anywhere"])
    scan.add_argument("--router", default="")
    scan.add_argument("--bench", default="")
    scan.add_argument("--worker", default="")
    for name, run, words in (
        ("state", run_state, "the shop as JSON"),
        ("codes", run_codes, "every code as JSON"),
    ):
        add(name, run, words).add_argument("--json", action="store_true", help="the only form")


def _paper_and_file_commands(add: Add) -> None:
    """Papers, the history's care, the office's lists, cut files."""
    traveller = add("traveller", run_traveller, "prints a batch's traveller")
    traveller.add_argument("batch")
    traveller.add_argument("--pdf", type=Path, required=True, metavar="FILE")
    traveller.add_argument("--copy", action="store_true", help="makes the next copy first")
    printer = add("printer", run_printer, "which printer of this PC prints which paper")
    printer.add_argument("size", nargs="?", default="", help="A4, A5 or label")
    printer.add_argument("name", nargs="?", default="", help="a printer, or pdf: open the file")
    add("check", run_check, "digests, invariants, derived tables against a rebuild")
    add("backup", run_backup, "a copy of the whole history").add_argument("file", type=Path)
    add("restore", run_restore, "takes a backup back").add_argument("file", type=Path)
    add("pin", run_pin, "sets a supervisor's PIN").add_argument("worker")
    for name, run, words in (
        ("list-out", run_list_out, "writes one of the office's lists as CSV"),
        ("list-in", run_list_in, "takes one of the office's lists in from CSV"),
    ):
        table = add(name, run, words)
        table.add_argument("list", help="part, order, material, worker …")
        table.add_argument("file", type=Path)
        table.add_argument("--worker", default="01", help="the supervisor who does it")
    _database_commands(add)
    cut = add("cut-file", run_cut_file, "what a cut file makes and takes")
    from station.cutting.command import add_arguments  # noqa: PLC0415 - keeps numpy out

    add_arguments(cut)


def _database_commands(add: Add) -> None:
    """Many stations of one shop."""
    share = add("share", run_share, "shares this PC's shop through a PostgreSQL database")
    share.add_argument("url", metavar="URL", help="postgresql://user@host/database, no password")
    share.add_argument("--stations", type=int, default=3, help="how many other PCs (3)")
    share.add_argument("--card", metavar="STATION", help="only a new join card for this station")
    share.add_argument("--block", metavar="STATION", help="only shuts this station out")
    share.add_argument(
        "--put-back", action="store_true", help="confirms that an older day was put back"
    )
    share.add_argument(
        "--close", action="store_true", help="only a closing: new PCs begin with it"
    )
    share.add_argument("--pdf", type=Path, metavar="FILE", help="where the join cards go")
    join = add("join", run_join, "makes this PC a station of a shop")
    join.add_argument("host", nargs="?", default="", help="host of the shop's database")
    add("drop-old", run_drop_old, "drops what is older than 13 months from this PC alone")
    update = add("update-shop", run_update_shop, "brings the shop's database up to date")
    update.add_argument("url", metavar="URL")


def data_of(options: argparse.Namespace) -> Path:
    """The data folder of a command."""
    return options.data or bootstrap.data_folder()


def clock_of(options: argparse.Namespace) -> Clock:
    """The clock of a command, pinned where asked."""
    clock = Clock()
    if options.now:
        try:
            clock.pin(options.now)
        except ValueError:
            raise Wrong(f"{options.now} is no time: write 2026-11-25T10:42:00.") from None
    return clock


def there(options: argparse.Namespace) -> Path:
    """The data folder, which must hold a shop already."""
    data = data_of(options)
    if not (data / bootstrap.FILE).exists():
        raise Wrong(f"There is no shop in {data}. Open it once with: station --data {data}")
    return data


def say_json(value: object) -> None:
    """One JSON value on standard output."""
    print(json.dumps(value, ensure_ascii=False), flush=True)


def run_scan(options: argparse.Namespace) -> int:
    """The text station."""
    from station.commands.text_station import text_station  # noqa: PLC0415 - only what a command needs

    clock = clock_of(options)
    with bootstrap.opened(there(options)) as ledger:
        where = Where(
            area=options.area, router=options.router, bench=options.bench, worker=options.worker
        )
        desk = bootstrap.new_desk(ledger, where, clock)
        loop = bootstrap.new_loop(ledger, there(options))
        text_station(
            desk,
            clock,
            sys.stdin,
            lambda text: print(text, flush=True),
            lambda text: print(text, file=sys.stderr, flush=True),
            loop,
        )
    return 0


def run_state(options: argparse.Namespace) -> int:
    """The shop as JSON."""
    from station.commands.text_station import state  # noqa: PLC0415 - only when it is used

    with bootstrap.opened(there(options)) as ledger:
        say_json(state(ledger, clock_of(options)()))
    return 0


def run_codes(options: argparse.Namespace) -> int:
    """Every code as JSON."""
    from station.commands.text_station import codes_list  # noqa: PLC0415 - only when it is used

    with bootstrap.opened(there(options)) as ledger:
        say_json(codes_list(ledger))
    return 0


def run_traveller(options: argparse.Namespace) -> int:
    """Prints a traveller into a PDF."""
    from station.printing import gathering, pdf_files  # noqa: PLC0415 - only when it is used

    with bootstrap.opened(there(options)) as ledger:
        now = clock_of(options)()
        if options.copy:
            pdf_files.next_copy(ledger, options.batch, now)
        paper = gathering.paper(ledger, "traveller", options.batch, now)
        if paper is None:
            raise Wrong(f"There is no batch {options.batch}.")
        options.pdf.write_bytes(paper.pdf())
    print(options.pdf)
    return 0


def run_printer(options: argparse.Namespace) -> int:
    """Lists this PC's printers and what each size goes to; keeps a choice."""
    from station.printing import printers  # noqa: PLC0415 - Qt
    from station.window.show import application_of  # noqa: PLC0415 - only when it is used

    application_of()
    names = printers.attached()
    if options.size and options.size not in printers.PAPERS:
        raise Wrong(f"{options.size} is no size: {', '.join(printers.PAPERS)}.")
    if options.name not in ("", printers.OPENED, *names):
        raise Wrong(f"There is no printer {options.name}. There is: {', '.join(names) or 'none'}.")
    with bootstrap.opened(there(options)) as ledger:
        if options.size:
            printers.choose(ledger, options.size, options.name)
        for size in printers.PAPERS:
            print(f"{size}: {printers.chosen(ledger, size) or 'asks once'}")
    print(f"printers: {', '.join(names) or 'none'}")
    return 0


def run_check(options: argparse.Namespace) -> int:
    """Says what is not sound, or that all is."""
    with bootstrap.opened(there(options)) as ledger:
        problems = ledger.check()
    for problem in problems:
        print(problem)
    if not problems:
        print("Sound: the history is whole and every count follows from it.")
    return 1 if problems else 0


def run_backup(options: argparse.Namespace) -> int:
    """A copy of the history in one file."""
    with bootstrap.opened(there(options)) as ledger:
        ledger.backup(options.file)
    print(f"Backed up to {options.file}")
    return 0


def run_restore(options: argparse.Namespace) -> int:
    """A backup back into the data folder; what is there now is kept aside."""
    from station.ledger.ledger import Ledger  # noqa: PLC0415 - only when it is used

    data = data_of(options)
    data.mkdir(parents=True, exist_ok=True)
    Ledger.restore(options.file, data / bootstrap.FILE)
    print(f"Restored from {options.file}")
    return 0


def run_share(options: argparse.Namespace) -> int:
    """Shares this PC's shop, or prints one station's new join card."""
    from station.commands import sharing  # noqa: PLC0415 - only when it is used

    if options.put_back:
        sharing.put_back(options.url, print)
    elif options.block:
        sharing.block(options.url, options.block, print)
    elif options.close:
        sharing.close(options.url, clock_of(options)(), print)
    elif options.card:
        pdf = options.pdf or Path(sharing.CARDS)
        sharing.card(options.url, options.card, pdf, clock_of(options)(), print)
    else:
        data, now = there(options), clock_of(options)()
        sharing.share(data, options.url, options.stations, options.pdf, now, print)
    return 0


def run_join(options: argparse.Namespace) -> int:
    """Makes this PC a station of a shop."""
    from station.commands import sharing  # noqa: PLC0415 - only when it is used

    sharing.join(data_of(options), options.host, print)
    return 0


def run_drop_old(options: argparse.Namespace) -> int:
    """Drops old entries from this PC's file."""
    from station.commands import sharing  # noqa: PLC0415 - only when it is used

    sharing.drop_old(there(options), clock_of(options)(), print)
    return 0


def run_update_shop(options: argparse.Namespace) -> int:
    """Brings the shop's database up to date."""
    from station.commands import sharing  # noqa: PLC0415 - only when it is used

    sharing.update(options.url, print)
    return 0


def run_pin(options: argparse.Namespace) -> int:
    """Sets a supervisor's PIN, asked for without showing it."""
    from station.commands import people  # noqa: PLC0415 - only when it is used

    with bootstrap.opened(there(options)) as ledger:
        print(people.ask_and_set_pin(ledger, options.worker, clock_of(options)()))
    return 0


def run_list_out(options: argparse.Namespace) -> int:
    """A list of the office as CSV."""
    from station.files import lists  # noqa: PLC0415 - only when it is used

    kind = list_named(options.list)
    with bootstrap.opened(there(options)) as ledger:
        options.file.write_text(lists.write(ledger, kind), encoding="utf-8", newline="")
    print(options.file)
    return 0


def run_list_in(options: argparse.Namespace) -> int:
    """A list of the office from CSV, once a supervisor has given the PIN."""
    from station.commands import people  # noqa: PLC0415 - only when it is used
    from station.files import lists  # noqa: PLC0415 - only when it is used

    kind = list_named(options.list)
    with bootstrap.opened(there(options)) as ledger:
        if not people.supervisor(ledger, options.worker):
            raise Wrong("That is supervisor's work: the PIN is not right.")
        problems = lists.read(
            ledger, kind, options.file, options.worker, clock_of(options)(), bootstrap.new_id()
        )
    for problem in problems:
        print(problem, file=sys.stderr)
    if not problems:
        print(f"Taken in: {options.file}")
    return 1 if problems else 0


def list_named(name: str) -> type[Fact]:
    """The kind of fact that a list holds."""
    from station.files import lists  # noqa: PLC0415 - only when it is used

    if name not in lists.NAMES:
        raise Wrong(f"There is no list {name}. There are: {', '.join(sorted(lists.NAMES))}.")
    return lists.NAMES[name]


def run_cut_file(options: argparse.Namespace) -> int:
    """What a cut file makes and takes; with a shop at hand, timed for its router."""
    from station.cutting.command import run  # noqa: PLC0415 - only when it is used

    router, known, pockets = machine_of(options)
    text, code = run(options.files, options, router=router, known=known, pockets=pockets)
    print(text, file=sys.stderr if code else sys.stdout)
    return code


def machine_of(
    options: argparse.Namespace,
) -> tuple[Router | None, dict[str, Part], dict[int, Bit]]:
    """The router that a cut file is asked about, the shop's parts, and the changer's bits."""
    data = data_of(options)
    asked = str(options.router or "").upper().removeprefix("R")
    if not (data / bootstrap.FILE).exists():
        if asked:
            raise Wrong(f"There is no shop in {data}, so router {asked} is not known.")
        return None, {}, {}
    with bootstrap.opened(data) as ledger:
        router = ledger.view.get(Router, asked) if asked else None
        if asked and router is None:
            raise Wrong(f"There is no router {asked}.")
        router = corrected(ledger.view, router) if router else None
        bed = ledger.view.get(Bed, asked) if router and router.changer else None
        held = ((n, ledger.view.get(Bit, bit)) for n, bit in (bed.bits if bed else ()))
        pockets = {n: bit for n, bit in held if n and bit}
        return router, {part.id: part for part in ledger.facts(Part)}, pockets


def run_demo(options: argparse.Namespace) -> int:
    """Builds the demo shop where it is not there yet, and opens it."""
    from station.window import show  # noqa: PLC0415 - only when it is used

    data = options.data or Path(tempfile.mkdtemp(prefix="demo-shop-"))
    build_demo(data, clock_of(options)())
    if options.build_only:
        print(data)
        return 0
    if no_display():
        out = data / "tour"
        print(f"There is no display here, so the tour runs; its pictures go to {out}")
        return run_tour(
            argparse.Namespace(
                **{**vars(options), "data": data, "out": out, "scanner_only": False}
            )
        )
    from station.window.first_run import settle  # noqa: PLC0415 - only when it is used

    with bootstrap.opened(data) as ledger:
        settle(ledger, Where(area="loading", router="1", bench="1"))
    return show.open_station(data, clock_of(options))


def build_demo(data: Path, now: str) -> None:
    """The demo shop in a folder, unless it is there already."""
    from datetime import datetime  # noqa: PLC0415 - only when it is used

    from demo_db.build import build  # noqa: PLC0415 - only when it is used

    if (data / bootstrap.FILE).exists():
        return
    data.mkdir(parents=True, exist_ok=True)
    print("Building the demo shop …", flush=True)
    build(data / bootstrap.FILE, datetime.fromisoformat(now))


def no_display() -> bool:
    """Whether this machine has no screen to open a window on."""
    if sys.platform in ("win32", "darwin"):
        return False
    return not (
        os.environ.get("DISPLAY")
        or os.environ.get("WAYLAND_DISPLAY")
        or os.environ.get("QT_QPA_PLATFORM")
    )


def run_tour(options: argparse.Namespace) -> int:
    """Drives the real screens through one demo day, on no screen where there is none."""
    if no_display():
        os.environ["QT_QPA_PLATFORM"] = "offscreen"
    from station.tour import drive  # noqa: PLC0415 - only when it is used

    return drive.run(options.out, scanner_only=options.scanner_only, now=options.now)


def run_open(options: argparse.Namespace) -> int:
    """Opens this PC's station."""
    if no_display():
        raise Wrong("There is no display here. For the text station: station scan --help")
    from station.window import show  # noqa: PLC0415 - only when it is used

    return show.open_station(data_of(options), clock_of(options))


if __name__ == "__main__":
    sys.exit(main())
