"""``python -m tests.replay``: the days in the shop, as readable text files, by text station.

A scenario file holds, line by line:

    # a remark                          kept for the reader
    @area popping                       an order to the text station, passed on as it is
    slip 00001 3                        a code by what it is; see `code_of`
    touch HC300-SET                     what on the screen says so; see `tests.touch`
    32                                  a number
    point 120 60                        a touch on the drawn sheet, mm from its corner
    list-in worker / id;active / 07;no   a list as CSV: its columns, then its lines
    list-in --worker 08 1357 order / …  the same as the command takes it, by that PIN
    scan --worker 77                  the text station begins anew, with this worker
    > good | 384 parts … | Pass on …    the answer that must come: level | happened | next
    = rack ST-200 379                   what the state must hold afterwards; see `holds`
    * 23 have other tabs                what stands on the screen now

What a day keeps from coming back stands at its head, behind ``Once seen:``
(``grep "Once seen" -A1 tests/scenarios -r``); what takes two stations is in ``two/``.

``--write`` fills in the answers that come, to be read before they are kept. Each file runs
on a fresh small shop with the clock it sets itself; every act goes through desk, rules and
ledger as at a real station, and at the end the ledger checks itself.
"""

import contextlib
import io
import itertools
import sys
import tempfile
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path
from unittest.mock import patch

from argon2 import PasswordHasher

from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.commands.list_in import NO_PIN
from station.commands.pin import ask_for_supervisor
from station.commands.state import describe_shop
from station.commands.text_station import take_line
from station.desk.desk import Desk, Given
from station.files import lists
from station.ledger.ledger import Ledger
from station.shop import cards, codes
from station.shop.acts import Answer, good, refuse
from station.shop.faces import Face
from station.shop.facts import (
    KINDS,
    Batch,
    BitUse,
    CutFile,
    Fact,
    Line,
    Order,
    Part,
    Pile,
    Placed,
    Product,
    RackPlace,
    Revision,
    Size,
    Worker,
)
from station.shop.moves import SHEET, WEAR, head
from station.shop.words import say
from tests.floor.shop_small import COMBS, FRAME, FRAMES, GAUGE, GAUGES, small_facts
from tests.measured import note
from tests.touch import find_touch, list_texts

HERE = Path(__file__).resolve().parent / "scenarios"
OPENS = "2026-11-25T07:00:00"
PIN = "2468"
# By the least work that argon2 takes: every test of a day begins with this supervisor.
HASH = PasswordHasher(time_cost=1, memory_cost=8, parallelism=1).hash(PIN)


class Mismatch(AssertionError):  # noqa: N818 - the scenario and the shop do not match
    """A line whose answer or state is not what the file says."""


def code_of(words: str, ledger: Ledger, face: Callable[[], Face] | None = None) -> str:
    """A code's text from words: ``traveller 00001``, ``slip 00001 3``, ``button start``,
    ``part 021``, ``digit 5``, ``copy 00001 A``, and ``touch WORDS`` for what on the screen
    says so; anything else is passed on as it stands.
    """
    kind, *rest = words.split()
    if kind == "touch" and face:
        return find_touch(face(), words.removeprefix("touch "))
    if kind == "button":
        return cards.button(rest[0])
    if kind in ("traveller", "slip", "copy"):
        batch = ledger.view.get(Batch, rest[0])
        letter = rest[1] if kind == "copy" else (batch.copy if batch else "A")
        sheet = int(rest[1]) if kind == "slip" else 0
        return codes.write("batch", rest[0], letter, sheet)
    if kind in codes.LETTERS and rest:
        return codes.write(kind, rest[0])
    return words


@cache
def make_shop_file() -> bytes:
    """Founds the small shop and gives its file: once a process, for all stages begin alike."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / bootstrap.FILE
        with contextlib.closing(Ledger(file, bootstrap.load_rules(), station="1")) as ledger:
            founding = iter(["t000001"])
            bootstrap.seed_shop(
                ledger, small_shop(), OPENS, stock=START, ids=lambda: next(founding)
            )
        return file.read_bytes()


class Stage:
    """A small shop for one scenario, with one desk a station name."""

    def __init__(self, folder: Path) -> None:
        self.clock = Clock(OPENS)
        self.count = itertools.count(2)  # the founding was the first act
        file = folder / bootstrap.FILE
        file.write_bytes(make_shop_file())
        self.ledger = Ledger(file, bootstrap.load_rules(), station="1")
        self.desk = self.new_desk()

    def new_id(self) -> str:
        return f"t{next(self.count):06d}"

    def new_desk(self, area: str = "loading", worker: str = "") -> Desk:
        where = Where(area=area, worker=worker)
        return bootstrap.make_desk(self.ledger, where, self.clock, ids=self.new_id)

    def take_list_in(self, words: str, *lines: str) -> Answer:
        """Takes a list in as the command does; says what is wrong.

        Where no worker is named the PIN of 07 was given.
        """
        of, worker = words.rsplit(maxsplit=1)[-1], "07"
        if words.startswith("--worker "):
            worker, typed = words.split()[1:3]
            with patch("sys.stdin", io.StringIO(f"{typed}\n")):
                if not ask_for_supervisor(self.ledger, worker, self.clock()):
                    return refuse(say(NO_PIN))
        with tempfile.TemporaryDirectory() as folder:
            file = Path(folder) / f"{of}.csv"
            file.write_text("\n".join(lines), encoding="utf-8")
            found = lists.read(self.ledger, KINDS[of], file, worker, self.clock(), self.new_id())
        return refuse(say(found[0])) if found else good(say("Taken in"))

    def check(self) -> list[str]:
        """What is not sound in the end."""
        return self.ledger.check()

    def close(self) -> None:
        self.ledger.close()

    def send(self, text: str) -> Given:
        """One line of a scenario; ``restart`` is a power cut."""
        if text == "restart":
            self.desk = self.new_desk(self.desk.hand.area)
            return Given(self.desk.greeting())
        if text.startswith("scan --worker "):
            self.desk = self.new_desk(self.desk.hand.area, text.rsplit(maxsplit=1)[-1])
            return Given(self.desk.greeting())
        if text.startswith("list-in "):
            return Given(self.take_list_in(*text.removeprefix("list-in ").split(" / ")))
        if text.startswith("point "):
            return self.desk.touch(*map(float, text.split()[1:]))
        words = text if text.startswith("@") else code_of(text, self.ledger, self.desk.face)
        return take_line(self.desk, self.clock, words)


START = [
    (SHEET, 40, "bought", "store", "0931"),
    (SHEET, 40, "bought", "store", "0940"),
    (WEAR, 1_130_000, "wear", "bit/12", ""),  # 220 m below nine tenths of its life
    # What lay on the rack before the books began, and three batches that wait at trimming.
    ("061", 5, "found", "rack/061", "00000"),
    ("062", 5, "found", "rack/062", "00000"),
    (GAUGE, 10, "found", f"rack/{GAUGE}", "00000"),
    (GAUGE, 160, "cut", "trimming", "00900"),
    (FRAME, 40, "cut", "trimming", "00901"),
    (FRAME, 24, "cut", "spoiled/05", "00901"),
    ("063", 240, "cut", "trimming", "00902"),
]
DUE = "2026-11-25T14:00:00"


def orders() -> tuple[Fact, ...]:
    """Combs of two lengths, bars of two sizes, products, orders, the batches at trimming."""
    bar = (Size(name="A along", nominal_mm=600.0, low_mm=599.7, high_mm=600.3),
           Size(name="B across", nominal_mm=45.0, low_mm=44.8, high_mm=45.2))  # fmt: skip
    return (
        Part(id="063", name="TB-600", words="Treadle bar 600", rack="063", sizes=bar),
        RackPlace(id="063", name="D 02", part="063"),
        CutFile(id="073", name="TB600-SET", words="Treadle bars 600", approved="A"),
        Revision(
            id="073.A",
            cut_file="073",
            letter="A",
            material="1",
            minutes=20.0,
            placed=tuple(Placed(part="063", x_mm=20.0, y_mm=20.0 + 4.0 * n) for n in range(240)),
        ),
        Batch(id="00902", cut_file="073", revision="A", sheets=1, cut=1, state="cut", due=DUE),
        Pile(id="trimming/00902", area="trimming", batch="00902", since=DUE, due=DUE),
        Part(id="061", name="HC-40", words="Heddle comb 40", rack="061"),
        Part(id="062", name="HC-50", words="Heddle comb 50", rack="062"),
        RackPlace(id="061", name="C 01", part="061"),
        RackPlace(id="062", name="C 02", part="062"),
        Product(id="031", name="COMB-50", words="Comb 50", parts=(("062", 1),)),
        Product(
            id="032", name="GAUGE", words="Sett gauge", parts=((GAUGE, 1),), mark=3, place="F 2"
        ),
        Product(id="033", name="SIDE", words="Frame side", parts=((FRAME, 1),)),
        Order(id="3306", due=DUE, lines=(Line(product="031", quantity=1),)),
        Order(id="3307", due=DUE, lines=(Line(product="032", quantity=6),)),
        Order(id="3308", due=DUE, lines=(Line(product="033", quantity=12),)),
        Order(id="3309", due=DUE, lines=(Line(product="033", quantity=40),)),
        Batch(id="00900", cut_file=GAUGES, revision="C", sheets=1, cut=1, state="cut", due=DUE),
        Batch(
            id="00901",
            cut_file=FRAMES,
            revision="C",
            sheets=2,
            cut=2,
            state="cut",
            due=DUE,
            order="3309",
        ),
        Pile(id="trimming/00900", area="trimming", batch="00900", since=DUE, due=DUE),
        Pile(id="trimming/00901", area="trimming", batch="00901", since=DUE, due=DUE),
    )


def small_shop() -> list[Fact]:
    """The small shop's facts, a supervisor with a PIN, and a newer revision of the combs:

    23 of its 24 have other tabs.
    """
    facts = {f.key: f for f in small_facts()}
    facts["worker/07"] = Worker(id="07", supervisor=True, pin=HASH)
    comb = facts[f"revision/{COMBS}.C"]
    assert isinstance(comb, Revision)
    facts[f"revision/{COMBS}.D"] = replace(
        comb, id=f"{COMBS}.D", letter="D", placed=_set_tabs_apart(comb.placed)
    )
    return [*facts.values(), *orders(), *runs()]


def _set_tabs_apart(placed: tuple[Placed, ...]) -> tuple[Placed, ...]:
    """Gives every comb but the first tabs at a quarter of its long edges, not in the middle."""
    first, *others = placed
    at_half = ((first.x_mm + 150.0, first.y_mm), (first.x_mm + 150.0, first.y_mm + 120.0))
    return (
        replace(first, tabs=at_half),
        *(replace(p, tabs=((p.x_mm + 75.0, p.y_mm), (p.x_mm + 75.0, p.y_mm + 120.0)))
          for p in others),
    )  # fmt: skip


def runs() -> tuple[Fact, ...]:
    """A pocket in the back, and a laser's marks: runs on sheets of other cut files."""
    return (
        CutFile(id="071", name="POCKET-B", words="Pockets, back", work="second", approved="A"),
        Revision(id="071.A", cut_file="071", letter="A", material="1", minutes=6.0,
                 bits=(BitUse(number=2, diameter_mm=6.0, cut_mm=9000.0),)),
        CutFile(id="072", name="MARK-L", words="Marks by laser", work="laser", approved="A"),
        Revision(id="072.A", cut_file="072", letter="A", material="1", minutes=4.0,
                 routers=("5",)),
    )  # fmt: skip


def play(file: Path, *, write: bool = False, staged: Callable[[Path], Stage] = Stage) -> list[str]:
    """Plays one file; gives its lines with the answers that came. Raises Mismatch."""
    lines: list[str] = file.read_text(encoding="utf-8").splitlines()
    out: list[str] = []
    with tempfile.TemporaryDirectory() as folder:
        stage = staged(Path(folder))
        try:
            _act_out(stage, lines, out, file.name)
            problems = stage.check()
        finally:
            stage.close()
            if write and len(out) < len(lines):
                print("\n".join(out))
    if problems:
        raise Mismatch(f"{file.name}: {problems}")
    if not write:
        _same(file.name, lines, out)
    return out


def _act_out(stage: Stage, lines: list[str], out: list[str], name: str) -> None:
    """Every line in turn; `out` gets the lines with the answers that came."""
    for number, line in enumerate(lines, 1):
        text = line.strip()
        if text.startswith(">"):
            continue
        out.append(line)
        if text.startswith("="):
            _holds(stage, text, f"{name}:{number}")
        elif text.startswith("*"):
            _stands(stage, text.removeprefix("*").strip(), f"{name}:{number}")
        elif text and not text.startswith("#"):
            given = stage.send(text)
            if not text.startswith("@"):
                out.append(said(given))


def _same(name: str, lines: list[str], out: list[str]) -> None:
    """Every answer that came stands in the file, and no other."""
    for number, (expected, came) in enumerate(itertools.zip_longest(lines, out), 1):
        if expected != came:
            raise Mismatch(f"{name}:{number}: expected\n    {expected}\ncame\n    {came}")


def said(given: Given) -> str:
    """An answer as a scenario writes it."""
    return f"> {given.answer.tone} | {given.answer.said} | {given.answer.do}".rstrip(" |")


def _holds(stage: Stage, text: str, where: str) -> None:
    """Compares one state line with the state as the command gives it."""
    words = text[1:].split()
    now = found(stage, words[:-1])
    if str(now) != words[-1]:
        raise Mismatch(f"{where}: {text} — it is {now}")


def _stands(stage: Stage, words: str, where: str) -> None:
    """Looks for words on the screen."""
    shown = list(list_texts(stage.desk.face()))
    if not any(words in text for text in shown):
        raise Mismatch(f"{where}: nothing on the screen says “{words}”: {shown}")


# a word for a value of the state: its list, the key and the value of each row
LISTED = {"rack": ("rack", "part", "on_hand"), "router": ("routers", "router", "state")}


def found(stage: Stage, words: list[str]) -> object:
    """A value of the state: ``rack HC-300``, ``batch 00001 ST-200 spoiled`` (a kind of
    place, all sheets and reasons together), ``family 00001 ST-200 rack`` (with children),
    ``cut 00001``, ``sheets 00001``, ``order 3306``, ``packed 3306 NAME``, ``short 3306 NAME``,
    ``router R2``, ``look KIND`` (how many), ``waits`` (acts not shared yet),
    ``holds 00001`` (how many),
    ``undone`` (acts taken back), ``firsts`` (sizes that first-offs and doubts wait for).
    """
    what, *rest = words
    whole = describe_shop(stage.ledger, stage.clock())
    if what in LISTED:
        of, key, value = LISTED[what]
        return next(one[value] for one in whole[of] if one[key] == rest[0])
    if what in ("batch", "family"):
        return sum(
            _pieces(b, rest[1], rest[2])
            for b in whole["batches"]
            if b["batch"] == rest[0] or (what == "family" and b["parent"] == rest[0])
        )
    if what == "look":
        return sum(1 for c in whole["look"] if c["kind"] == rest[0])
    if what == "firsts":
        return len(whole["firsts"])
    if what == "waits":
        return stage.ledger.not_shared()
    if what in ("entries", "undone"):
        return sum(1 for e in stage.ledger.entries() if e.kind == (*rest, "undo")[0])
    if what == "order":
        order = stage.ledger.view.get(Order, rest[0])
        return order.state if order else "none"
    if what in ("packed", "short"):
        lines = next(o["lines"] for o in whole["orders"] if o["order"] == rest[0])
        return next(i[what] for i in lines if i["product"] == rest[1])
    batch = next((b for b in whole["batches"] if b["batch"] == rest[0]), None)
    if batch is None:
        return "no batch"
    return {
        "cut": batch["sheets"]["cut"],
        "sheets": batch["sheets"]["planned"],
        "holds": len(batch["holds"]),
        "copy": batch["copy"],
    }[what]


def _pieces(batch: dict, part: str, place: str) -> int:
    return sum(
        qty
        for p in batch["parts"]
        if p["part"] == part
        for spot, qty in p["places"].items()
        if head(spot) == place or place == "all"
    )


def main() -> int:
    """Plays every file; prints how many pass."""
    write = "--write" in sys.argv
    named = [a for a in sys.argv[1:] if not a.startswith("-")]
    files = sorted(f for f in HERE.glob("*.txt") if not named or any(n in f.name for n in named))
    passed = 0
    for file in files:
        try:
            lines = play(file, write=write)
        except Mismatch as wrong:
            print(f"FAIL {wrong}")
            continue
        passed += 1
        if write:
            file.write_text("\n".join(lines) + "\n", encoding="utf-8")
    print(f"{passed} of {len(files)} scenarios pass")
    note("days in the shop", f"{passed} of {len(files)}", "all")
    return 0 if passed == len(files) else 1


if __name__ == "__main__":
    sys.exit(main())
