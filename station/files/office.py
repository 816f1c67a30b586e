"""What the office asks of this station's own files: lists as CSV, and copies.

Every file lies in the folder that the shop sets, else in ``files`` beside the data.
"""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from station.ledger.ledger import Ledger
from station.queries.settings import find_shop
from station.shop.acts import good, refuse
from station.shop.rooms import Do, Hand, Job, Long, Run, Took, plain_do
from station.shop.words import Say, say

MOST = 60  # files that are offered, newest first


def jobs(ledger: Ledger, clock: Callable[[], str]) -> Mapping[str, Job]:
    """Every job by name, bound to this station's ledger."""
    from station.files.cut_files import CutFiles  # noqa: PLC0415 - it stands on this module

    office = Files(ledger, clock)
    cut_files = CutFiles(ledger, office)
    return {
        "backup": _guarded(office.backup),
        "find_lists": _guarded(office.find),
        "write_list": _guarded(office.write),
        "read_list": _guarded(office.read),
        "find_cut_files": _guarded(cut_files.find),
        "look_at_dropped": _guarded(cut_files.look_at, say("Drop a file that is there.")),
        "read_cut_file": _guarded(cut_files.read),
        "prove_file": _guarded(cut_files.prove, say("Set its folder right in the office.")),
    }


def _guarded(job: Job, mend: Say = say("Set another folder under “This shop”.")) -> Job:
    """A folder or file that this PC refuses is said in one sentence; nothing was changed."""

    def run(given: Run) -> Do | Took | Long | Run:
        try:
            return job(given)
        except OSError as fault:
            why = fault.strerror or str(fault)
            return not_there(given.hand.with_work(ask=None), str(fault.filename or ""), why, mend)

    return run


def not_there(hand: Hand[Any], file: str, why: str, mend: Say) -> Took:
    """What this PC refuses to do with a file, in its own words."""
    return Took(hand, refuse(say("{file}: {why}", file=file, why=why), mend))


class Files:
    """The office's files on this PC."""

    def __init__(self, ledger: Ledger, clock: Callable[[], str]) -> None:
        self.ledger, self.clock = ledger, clock

    @property
    def folder(self) -> Path:
        """Where lists and copies lie."""
        named = find_shop(self.ledger.view).folder.strip()
        return Path(named).expanduser() if named else self.ledger.path.parent / "files"

    def _new(self, name: str, ending: str) -> Path:
        """A name with the time in it that is not taken; the folder is made."""
        self.folder.mkdir(parents=True, exist_ok=True)
        stem = f"{name}-{self.clock()[:16].replace('T', '-').replace(':', '')}"
        names = (stem, *(f"{stem}-{n}" for n in range(2, 100)))
        return next(f for n in names if not (f := self.folder / f"{n}.{ending}").exists())

    def backup(self, run: Run) -> Took:
        """The whole history into a new file. Raises a Fault where that cannot be."""
        file = self._new("copy", "db")
        self.ledger.backup(file)
        return Took(
            run.hand,
            good(
                say("The whole history is copied"),
                say("{file}. Keep a copy away from this PC.", file=file),
            ),
        )

    def write(self, run: Run) -> Took:
        """A list into a new CSV file."""
        from station.files import lists  # noqa: PLC0415 - the csv module only where it is used

        kind = str(run.args["kind"])
        file = self._new(kind, "csv")
        text = lists.write(self.ledger, lists.NAMES[kind])
        file.write_text(text, encoding="utf-8-sig", newline="")  # so that spreadsheets see UTF-8
        return Took(run.hand, good(say("The list is written"), say("{file}", file=file)))

    def find(self, run: Run) -> Took:
        """The CSV files in the folder, newest first."""
        self.folder.mkdir(parents=True, exist_ok=True)
        found = sorted(self.folder.glob("*.csv"), key=lambda f: f.stat().st_mtime, reverse=True)
        names = [f.name for f in found][:MOST]
        return Took(
            run.hand.with_work(files=names, folder=str(self.folder)),
            good(
                say("{n} CSV {n|file|files}", n=len(names)),
                say("Touch one to take it in.")
                if names
                else say("Put a file there, then look again."),
            ),
        )

    def read(self, run: Run) -> Do | Took:
        """One file, whole, or what is wrong in it by line."""
        from station.files import lists  # noqa: PLC0415 - only when it is used

        name = Path(str(run.args["file"])).name
        found = lists.read_file(self.ledger.view, self.folder / name)
        if found.problems or found.kind is None:
            problems = [str(p) for p in found.problems]
            return Took(
                run.hand.with_work(problems=problems),
                refuse(
                    say("{file}: {n} {n|problem|problems}", file=name, n=len(problems)),
                    say("Nothing was taken in. {first}", first=found.problems[0]),
                ),
            )
        kind = found.kind.kind
        args = {"kind": kind, "values": list(found.values), "file": name}
        after = run.hand.with_work(ask=None, files=None, folder=None, page=0)
        return plain_do("set_list", f"list/{kind}", args, after)
