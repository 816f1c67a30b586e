"""The command line: finds the command that is asked for, and says what is wrong in one sentence.

Bad input gives one sentence on standard error and an exit code other than zero.
"""

import argparse
import logging
import sys
import tempfile
from collections.abc import Callable, Sequence
from importlib import import_module
from pathlib import Path
from types import ModuleType

import station.started
from station.commands.common import ERRORS, OWN_BUG, CommandError, find_data
from station.files.logs import TurningLog
from station.ledger.faults import Fault, InUse

# A line each, in the order of the help. The command `list-out` is the module `list_out` here,
# with its `add_arguments` and its `run`. Only the one that is asked for is loaded.
COMMANDS = {
    "demo": "builds the demo shop and opens it",
    "tour": "drives the real screens through one demo day",
    "scale": "at which serial port of this PC the packing scale is",
    "scan": "the text station: codes in, JSON lines out",
    "state": "the shop as JSON",
    "codes": "every code as JSON",
    "traveller": "prints a batch's traveller",
    "printer": "which printer of this PC prints which paper",
    "check": "digests, invariants, derived tables against a rebuild",
    "backup": "a copy of the whole history",
    "restore": "takes a backup back",
    "pin": "sets a supervisor's PIN",
    "list-out": "writes one of the office's lists as CSV",
    "list-in": "takes one of the office's lists in from CSV",
    "share": "shares this PC's shop through a PostgreSQL database",
    "join": "makes this PC a station of a shop",
    "drop-old": "drops what is older than 13 months from this PC alone",
    "update-shop": "brings the shop's database up to date",
    "cut-file": "what a cut file makes and takes",
    "pack": "the cheapest way to pack and send what a file describes",
    "plan": "what to cut next",
}
OPEN = "open"  # what is run where no command is named
GONE = (
    "The program that has the shop open answers no more. Whether the newest line counted is not "
    "known: look at it before you scan it once more."
)


def main(argv: Sequence[str] | None = None) -> int:
    """Runs one command; gives its exit code."""
    for stream in (sys.stdout, sys.stderr, sys.stdin):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    return run_words(sys.argv[1:] if argv is None else argv, run_command)


def run_command(options: argparse.Namespace) -> int:
    """Runs the command that is asked for, to its end."""
    code: int = load_command(options.command).run(options)
    return code


def run_words(words: Sequence[str], run: Callable[[argparse.Namespace], int]) -> int:
    """Does what the words of a command line ask for; gives its exit code.

    What is wrong is said in one sentence on standard error.
    """
    options = argparse.Namespace(data=None, now="", command=OPEN)
    try:
        make_parser(words).parse_args(words, options)
        return run(options)
    except InUse as fault:
        return run_beside(options, words, fault)
    except (CommandError, Fault) as fault:
        print(fault, file=sys.stderr)
        return 1
    except OSError as fault:
        print(f"{fault.strerror or fault}: {fault.filename or 'this machine'}", file=sys.stderr)
        return 1
    except EOFError:
        print("Nobody typed what was asked for.", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        return 130
    except Exception as bug:  # noqa: BLE001 - our own mistake must be kept, whatever it is
        return keep_own_bug(options, bug)


def read_words(words: Sequence[str]) -> argparse.Namespace:
    """Reads the words of a command line; ends the command where they are wrong."""
    options = argparse.Namespace(data=None, now="", command=OPEN)
    make_parser(words).parse_args(words, options)
    return options


def run_beside(options: argparse.Namespace, words: Sequence[str], fault: InUse) -> int:
    """Lets the program that has the file open run the command, where it does so."""
    from station.window import beside  # noqa: PLC0415 - seldom used

    if options.command == beside.LINES:
        return hand_lines_in(find_data(options), words, fault)
    reply = beside.ask(find_data(options), words) if options.command in beside.MAY else None
    if reply is None:
        print(fault, file=sys.stderr)
        return 1
    print(reply.out, end="", flush=True)
    print(reply.told, end="", file=sys.stderr, flush=True)
    return reply.code


def hand_lines_in(data: Path, words: Sequence[str], fault: InUse) -> int:
    """Hands the lines of standard input to the program that has the file open."""
    from station.window import beside  # noqa: PLC0415 - seldom used

    codes, heard = [0], False
    for reply in beside.hand_in(data, words, sys.stdin):
        if reply is None:
            print(GONE if heard else fault, file=sys.stderr)
            return 1
        print(reply.out, end="", flush=True)
        print(reply.told, end="", file=sys.stderr, flush=True)
        codes.append(reply.code)
        heard = True
    return max(codes)


def make_parser(words: Sequence[str]) -> argparse.ArgumentParser:
    """Makes the parser: every command, and the arguments of those that `words` may name."""
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
    top.add_argument("--version", action="version", version=f"station {station.VERSION}")
    commands = top.add_subparsers(title="commands", metavar="")
    for name, does in COMMANDS.items():
        command = commands.add_parser(name, parents=[common], help=does, description=does)
        command.set_defaults(command=name)
        if name in words:
            load_command(name).add_arguments(command)
    return top


def load_command(name: str) -> ModuleType:
    """Loads the module of a command."""
    return import_module(f"station.commands.{name.replace('-', '_')}")


def keep_own_bug(options: argparse.Namespace, bug: Exception) -> int:
    """Keeps our own mistake with what is needed to mend it, and tells it in one sentence."""
    folder = find_data(options)
    log = (folder if folder.is_dir() else Path(tempfile.gettempdir())) / ERRORS
    handler = TurningLog(log)
    logging.getLogger().addHandler(handler)
    logging.getLogger(__name__).error("command %s", " ".join(sys.argv[1:]), exc_info=bug)
    logging.getLogger().removeHandler(handler)
    handler.close()
    print(
        f"Something is wrong in the program itself. It is written down in {log}.", file=sys.stderr
    )
    return OWN_BUG


if __name__ == "__main__":
    sys.exit(main())
