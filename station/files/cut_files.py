"""Cut files of this PC: found for the office, read as a revision, proven for a router."""

import hashlib
from dataclasses import replace
from pathlib import Path
from typing import Any

from station.files.folder import (
    MOST,
    ShopFolder,
    find_folder,
    has_plain_name,
    list_newest,
    refuse_file,
)
from station.floor.office import intake, read_as
from station.floor.office.naming import keep_names
from station.floor.office.work import FilesFound, OfficeHand, ReadText
from station.jobs.messages import (
    AlreadyTaken,
    CutFileRead,
    Failed,
    NothingCutOut,
    Pocket,
    ReadCutFile,
    UnitsMissing,
    Unreadable,
)
from station.jobs.read_cut_file import STAGES
from station.ledger.ledger import Ledger
from station.queries.batches import find_approved
from station.queries.pace import correct_router
from station.queries.routers import list_routers
from station.queries.settings import find_shop
from station.shop.acts import Answer, attention, good, refuse
from station.shop.facts import Bed, Bit, CutFile, Material, Part, ReadAs, Revision, Router
from station.shop.file_requests import FindCutFiles, LookAtDropped, OpenCutFile, ProveText
from station.shop.rooms import FileJob, Hand, LongJob, Took
from station.shop.words import Say, length, say

ENDINGS = (".nc", ".ngc", ".cnc", ".gcode", ".tap", ".txt", ".min", ".eia")


class CutFiles:
    """What is done with cut files, for one station's ledger."""

    def __init__(self, ledger: Ledger, folder: ShopFolder) -> None:
        self.ledger, self.folder = ledger, folder
        self._digests: dict[tuple[str, int, int], str] = {}

    def find(self, _request: FindCutFiles, hand: OfficeHand) -> Took:
        """Finds the cut files in the shop's folder, newest first."""
        folder = self.folder.make()
        files = list_cut_files(folder)
        names = tuple(f.name for f in files if has_plain_name(f))
        next_ = say("Touch one to read it.") if names else say("Put one there, then look again.")
        if left := len(files) - len(names):
            next_ = say(
                "{n} more: {n|its name is|their names are} no plain text. Rename, look again.",
                n=left,
            )
        names = names[:MOST]
        found = replace(hand.work.found, names=names, folder=str(folder))
        return Took(
            replace(hand, work=replace(hand.work, found=found)),
            good(say("{n} cut {n|file|files}", n=len(names)), next_),
        )

    def look_at_dropped(self, request: LookAtDropped, hand: OfficeHand) -> Took | FileJob:
        """Looks at a file that was dropped: the hand holds its path until it is read."""
        path = Path(request.path)
        if path.is_dir():
            said = say("{file} is a folder", file=path.name)
            return Took(hand, refuse(said, say("Open it, then drop one cut file.")))
        if path.suffix.lower() not in ENDINGS:
            said = say("{file} is no cut file by its name", file=path.name)
            ends = say("Drop one that ends in {endings}.", endings=" ".join(ENDINGS))
            return Took(hand, refuse(said, ends))
        path.stat()  # whether it is there, and this PC may look at it
        hand = replace(hand, work=replace(hand.work, dropped=str(path)))
        if hand.work.chosen:
            return intake.ask_intake(hand, self.ledger.view)
        here = say("{file} is here", file=path.name)
        return Took(hand, good(here, say("Touch the cut file that it belongs to, or a new one.")))

    def open(self, request: OpenCutFile, hand: OfficeHand) -> LongJob:
        """Has one file read beside the screen; what comes of it will stand in the hand."""
        path = Path(request.path) if request.path else self.folder.path / Path(request.file).name
        if request.read_as is None:
            request = replace(request, read_as=self._find_read_as(request.cut_file))
        material = self.ledger.view.get(Material, request.material)
        assert material is not None
        name = path.name
        return LongJob(
            request=self._ask_to_read(request, path, material),
            hand=hand,
            title=say("A cut file is being read"),
            note=say("Nothing is taken in before you have looked it over. Esc stops it as well."),
            stop=say("Stop reading"),
            begun=good(say("{file} is being read", file=name), say("The screen stays free.")),
            stopped=good(
                say("Reading {file} was stopped", file=name),
                say("Nothing was taken in. Read it again when you like."),
            ),
            stages=STAGES,
            end=lambda hand, outcome: _end_reading(hand, material, request, outcome),
        )

    def _ask_to_read(self, request: OpenCutFile, path: Path, material: Material) -> ReadCutFile:
        """Gathers all that reading a text needs of the shop."""
        view = self.ledger.view
        cut_file = view.get(CutFile, request.cut_file)
        assert cut_file is not None
        router = self._find_router(cut_file)
        router = correct_router(view, router) if router else None
        return ReadCutFile(
            path=str(path),
            cut_file=cut_file.id,
            material=material.id,
            thickness_mm=material.thickness_mm,
            sheet=(material.length_mm, material.width_mm),
            router=router,
            pockets=self._list_pockets(router) if router and router.changer else (),
            read_as=request.read_as or ReadAs(),
            hold_downs=request.hold_downs,
            parts=tuple(p for p in view.shelf(Part, "all", 999) if p.shape),
            cuts_out=cut_file.work == "parts",
            shop=find_shop(view),
            taken={r.digest: r.letter for r in view.shelf(Revision, cut_file.id, 50)},
            spindle_mm=self._find_spindle(router) if router and not router.changer else None,
        )

    def _find_read_as(self, cut_file: str) -> ReadAs:
        """Finds what was said of the text of a cut file's newest revision."""
        before = self.ledger.view.shelf(Revision, cut_file, 50)
        return before[-1].read_as if before else ReadAs()

    def prove(self, request: ProveText, hand: Hand[Any]) -> Took:
        """Looks whether the folder that a router runs its texts from has the approved one."""
        folder, letter = find_folder(request.folder), request.letter
        for file in list_cut_files(folder):
            if self._digest(file) == request.digest:
                said = say("{file} is revision {letter}", file=file.name, letter=letter)
                return Took(request.proven.hand, good(said, request.proven.answer.do))
        return Took(
            hand,
            refuse(
                say("The router's folder has no text of revision {letter}", letter=letter),
                say("Do not cut. Copy the approved file to {folder}.", folder=folder),
            ),
        )

    def _digest(self, file: Path) -> str:
        """Digests a file's text; kept while its size and time stay the same."""
        found = file.stat()
        key = (str(file), found.st_size, found.st_mtime_ns)
        if key not in self._digests:
            with file.open("rb") as text:
                self._digests[key] = hashlib.file_digest(text, "sha256").hexdigest()
        return self._digests[key]

    def _find_spindle(self, router: Router) -> float | None:
        """Finds the diameter of the bit in a router's spindle, mm; None where none is known."""
        bed = self.ledger.view.get(Bed, router.id)
        bit = self.ledger.view.get(Bit, dict(bed.bits).get(0, "")) if bed else None
        return bit.diameter_mm if bit else None

    def _list_pockets(self, router: Router) -> tuple[Pocket, ...]:
        """Lists the bits in a router's changer."""
        bed = self.ledger.view.get(Bed, router.id)
        held = ((n, self.ledger.view.get(Bit, bit)) for n, bit in (bed.bits if bed else ()))
        return tuple(Pocket(n, bit.diameter_mm, bit.flutes) for n, bit in held if n and bit)

    def _find_router(self, cut_file: CutFile) -> Router | None:
        """Finds the router that its time is worked out for: one that ran it, else the first."""
        view = self.ledger.view
        approved = find_approved(view, cut_file)
        routers = list_routers(view)
        mine = [r for r in routers if approved and r.id in approved.routers]
        return next(iter(mine or routers), None)


def list_cut_files(folder: Path) -> list[Path]:
    """Lists the cut files in a folder by their endings, newest first."""
    return list_newest(f for f in folder.iterdir() if f.is_file() and f.suffix.lower() in ENDINGS)


def _end_reading(
    hand: OfficeHand, material: Material, asked: OpenCutFile, outcome: object
) -> Took:
    """Says what came of reading: a revision to look over, or why there is none."""
    name = Path(asked.path or asked.file).name
    match outcome:
        case CutFileRead():
            read = keep_names(hand.work.intake.read, _to_work(outcome))
            held = replace(hand.work.intake, read=read, opened=asked, material=asked.material)
            work = replace(hand.work, ask="cut", intake=held, found=FilesFound(), page=0)
            after = replace(hand, work=work)
            return read_as.ask_guessed(after) or Took(after, _say_read(outcome, len(read.unnamed)))
        case AlreadyTaken(letter=letter):
            said = say("That text is revision {letter} already", letter=letter)
            return Took(hand, refuse(said, say("Read another file.")))
        case Unreadable(why=why, values=values):
            said = say("{file} cannot be read: {why}", file=name, why=Say(why, values))
            return Took(hand, refuse(said, say("Mend the file, then read it again.")))
        case UnitsMissing():
            said = say("{file} does not say whether it is in mm or in inches", file=name)
            do = say("Touch which. A wrong one is 25 times too large or too small.")
            held = replace(hand.work.intake, which=asked)
            work = replace(hand.work, ask="cut", intake=held)
            return Took(replace(hand, work=work), attention(said, do))
        case NothingCutOut():
            said = say(
                "{file} cuts no part out of {mm} mm", file=name, mm=length(material.thickness_mm)
            )
            if hand.work.intake.read:  # read once more, as somebody said
                do = say("It stays as it was read before. Say it otherwise.")
                return Took(hand, refuse(said, do))
            held = replace(hand.work.intake, material="")
            work = replace(hand.work, ask="cut", intake=held, dropped=asked.path)
            do = say("Choose its material, or another file.")
            return Took(replace(hand, work=work), refuse(said, do))
        case Failed(file=file, why=why):
            return refuse_file(hand, file or name, why, say("Look whether the file is whole."))
    raise TypeError(f"reading a cut file ends in no {type(outcome).__name__}")


def _to_work(read: CutFileRead) -> ReadText:
    """Turns what was read into work in hand."""
    return ReadText(
        file=read.file,
        revision=replace(read.revision, stops=sum(p.grade == "stop" for p in read.problems)),
        sizes=read.sizes,
        unnamed=tuple(read.unnamed),
        found=read.found,
        told=tuple(read.problems),
        taken=tuple(read.taken),
        router=read.router,
        path=read.path,
        books=read.books,
        laying=read.laying,
    )


def _say_read(read: CutFileRead, new: int) -> Answer:
    """Says what is to be done with a file that was read; `new`: shapes that are no part yet."""
    do = (
        say("{n} {n|shape is|shapes are} new: say which {n|part it is|parts they are}.", n=new)
        if new
        else say("Look it over, then take it in.")
    )
    stops = sum(p.grade == "stop" for p in read.problems)
    if stops and not new:
        do = say("{n} {n|stops|stop} it: mend the file. Do not cut it so.", n=stops)
    if read.problems:
        found = say("{file}: {n} {n|thing|things} to look at", file=read.file, n=read.found)
        return attention(found, do)
    return good(say("{file} is read", file=read.file), do)
