"""Cut files from a folder on this PC into the office: found, read, and told as a revision."""

import hashlib
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from station.cutting.prepare import prepared
from station.ledger.ledger import Ledger
from station.office_files import MOST, Files
from station.shop.acts import Answer, attention, good, notice, refuse
from station.shop.facts import CutFile, Material, Part, Revision, Router
from station.shop.plain import to_plain
from station.shop.rooms import Run, Took
from station.shop.words import Say, say

if TYPE_CHECKING:
    from station.cutting.model import Analysis, ShapeFound

ENDINGS = (".nc", ".ngc", ".cnc", ".gcode", ".tap", ".txt", ".min", ".eia")
PREPARE = "from station.cutting.prepare import prepare; prepare()"
TOLD = 40  # problems that are kept to be shown


class CutFiles:
    """The jobs on cut files, for one station's ledger."""

    def __init__(self, ledger: Ledger, files: Files) -> None:
        self.ledger, self.files = ledger, files
        self._digests: dict[tuple[str, int, int], str] = {}
        self._preparing: subprocess.Popen[bytes] | None = None

    def find(self, run: Run) -> Took:
        """The cut files in the shop's folder, newest first."""
        folder = self.files.folder
        folder.mkdir(parents=True, exist_ok=True)
        self._ready()
        names = [f.name for f in newest_first(folder)][:MOST]
        next_ = say("Touch one to read it.") if names else say("Put one there, then look again.")
        return Took(
            run.hand.with_work(files=names, folder=str(folder)),
            good(say("{n} cut {n|file|files}", n=len(names)), next_),
        )

    def read(self, run: Run) -> Took:
        """One file, read for its material; what it makes and takes stands in the hand."""
        if not self._ready():
            return Took(
                run.hand,
                notice(
                    say("This PC gets ready to read cut files, once"),
                    say("Touch the file again in half a minute."),
                ),
            )
        name, view = Path(str(run.args["file"])).name, self.ledger.view
        cut_file = view.get(CutFile, str(run.args["cut_file"]))
        material = view.get(Material, str(run.args["material"]))
        assert cut_file is not None
        assert material is not None
        data = (self.files.folder / name).read_bytes()
        digest = hashlib.sha256(data).hexdigest()
        for old in view.shelf(Revision, cut_file.id, 50):
            if old.digest == digest:
                return _is_known(run, old)
        return self._analysed(run, cut_file, material, name, data, digest)

    def _analysed(
        self,
        run: Run,
        cut_file: CutFile,
        material: Material,
        name: str,
        data: bytes,
        digest: str,
    ) -> Took:
        """What a text that is not known yet makes and takes, or why it cannot be told."""
        from station.cutting.model import Setting  # noqa: PLC0415 - numpy only where it is used
        from station.cutting.report import analyse, read  # noqa: PLC0415 - only when it is used

        setting = Setting(
            router=self._router(cut_file),
            thickness_mm=material.thickness_mm,
            sheet=(material.length_mm, material.width_mm),
        )
        program = read(data, setting)
        if program.refused:
            return Took(
                run.hand,
                refuse(
                    say("{file} cannot be read: {why}", file=name, why=program.refused),
                    say("Mend the file, then read it again."),
                ),
            )
        known = {p.id: p for p in self.ledger.view.shelf(Part, "all", 999) if p.shape}
        analysis = analyse(program, setting, known=known)
        if not analysis.pieces:
            return Took(
                run.hand.with_work(material=None),
                refuse(
                    say("{file} cuts no part out of {mm} mm", file=name, mm=material.thickness_mm),
                    say("Choose its material, or another file."),
                ),
            )
        took = _told(run, cut_file, material, analysis, name, digest)
        return _with_path(took, analysis, setting.router)

    def _ready(self) -> bool:
        """Whether a file is read at once; else a process beside this one sees to it.

        Compiling in this one would stop the screen for half a minute.
        """
        if prepared():
            return True
        if self._preparing is None or self._preparing.poll() is not None:
            # our own Python and our own words: nothing of it comes from outside
            self._preparing = subprocess.Popen([sys.executable, "-c", PREPARE])  # noqa: S603 - our own Python
        return False

    def prove(self, run: Run) -> Took:
        """Whether the folder that a router runs its texts from holds the approved one."""
        folder = Path(str(run.args["folder"])).expanduser()
        digest, letter = str(run.args["digest"]), str(run.args["letter"])
        for file in newest_first(folder):
            if self._digest(file) == digest:
                work, next_ = run.args["work"], run.args["next"]
                assert isinstance(work, Mapping)
                assert isinstance(next_, Say)
                said = say("{file} is revision {letter}", file=file.name, letter=letter)
                return Took(replace(run.hand, work=work), good(said, next_))
        return Took(
            run.hand,
            refuse(
                say("The router's folder has no text of revision {letter}", letter=letter),
                say("Do not cut. Copy the approved file to {folder}.", folder=folder),
            ),
        )

    def _digest(self, file: Path) -> str:
        """The digest of a file's text, kept while its size and time stay the same."""
        found = file.stat()
        key = (str(file), found.st_size, found.st_mtime_ns)
        if key not in self._digests:
            with file.open("rb") as text:
                self._digests[key] = hashlib.file_digest(text, "sha256").hexdigest()
        return self._digests[key]

    def _router(self, cut_file: CutFile) -> Router | None:
        """The router that its time is worked out for: one that ran it, else the first."""
        view = self.ledger.view
        approved = view.get(Revision, f"{cut_file.id}.{cut_file.approved}")
        routers = [r for r in view.shelf(Router, "all") if r.active]
        mine = [r for r in routers if approved and r.id in approved.routers]
        return next(iter(mine or routers), None)


def newest_first(folder: Path) -> list[Path]:
    """The cut files in a folder, by their endings."""
    found = [f for f in folder.iterdir() if f.is_file() and f.suffix.lower() in ENDINGS]
    return sorted(found, key=lambda f: -f.stat().st_mtime)


def _is_known(run: Run, old: Revision) -> Took:
    return Took(
        run.hand,
        refuse(
            say("That text is revision {letter} already", letter=old.letter),
            say("Read another file."),
        ),
    )


def _told(
    run: Run,
    cut_file: CutFile,
    material: Material,
    analysis: "Analysis",
    name: str,
    digest: str,
) -> Took:
    """The revision as it would be taken in, its new shapes still without a name."""
    from station.cutting.report import revision  # noqa: PLC0415 - only when it is used

    names = {s.index: s.part or f"new{s.index}" for s in analysis.shapes}
    made = revision(
        analysis,
        id=f"{cut_file.id}.NEW",
        cut_file=cut_file.id,
        letter="NEW",
        material=material.id,
        names=names,
        digest=digest,
    )
    work = {
        "file": name,
        "revision": to_plain(made),
        "sizes": {names[s.index]: _size(s) for s in analysis.shapes},
        "unnamed": [names[s.index] for s in analysis.shapes if s.part is None],
        "parts": {},
        "problems": [_problem(p.line, p.text) for p in analysis.problems[:TOLD]],
        "spots": [_on_sheet(p.at, analysis) for p in analysis.problems[:TOLD] if p.at],
        "assumed": [str(a) for a in analysis.assumed],
    }
    return Took(run.hand.with_work(ask="cut", cut=work, files=None, page=0), _answer(name, work))


def _with_path(took: Took, analysis: "Analysis", router: Router | None) -> Took:
    """The path beside it, packed: a draft with it is written at every scan."""
    from station.cutting.path import drawn  # noqa: PLC0415 - only when it is used
    from station.shop.strokes import pack  # noqa: PLC0415 - only when it is used

    path, cut = drawn(analysis, router), took.hand.work["cut"]
    assert isinstance(cut, Mapping)
    told = {
        "strokes": pack(path.strokes),
        "seconds": path.seconds,
        "off_mm": path.off_mm,
        "share": path.share,
        "thickness_mm": analysis.thickness_mm,
    }
    return took._replace(hand=took.hand.with_work(cut={**cut, "path": told}))


def _answer(name: str, work: Mapping[str, object]) -> Answer:
    problems, unnamed = work["problems"], work["unnamed"]
    assert isinstance(problems, list)
    assert isinstance(unnamed, list)
    do = (
        say("{n} {n|shape is|shapes are} new: say which {n|part it is|parts they are}.",
            n=len(unnamed))
        if unnamed
        else say("Look it over, then take it in.")
    )  # fmt: skip
    if problems:
        found = say("{file}: {n} {n|thing|things} to look at", file=name, n=len(problems))
        return attention(found, do)
    return good(say("{file} is read", file=name), do)


def _on_sheet(at: tuple[float, float], analysis: "Analysis") -> list[float]:
    """A place of the text's own frame as it lies on the sheet."""
    return [at[0] - analysis.corner_mm[0], at[1] - analysis.corner_mm[1]]


def _size(shape: "ShapeFound") -> str:
    return f"{shape.length_mm:.1f} × {shape.width_mm:.1f} mm"


def _problem(line: int, text: object) -> str:
    words = str(text)
    return str(say("Line {line}: {what}", line=line, what=words)) if line else words
