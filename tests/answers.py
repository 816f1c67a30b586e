"""``python -m tests.answers OUT [TREE]``: all that a tree answers, as text to compare.

Plays the days in ``scenarios`` and 20 random walks on the small shop, and at the command line
one walk on the demo shop, with the program of TREE (this one unless told). Into the folder OUT:

- ``answers.txt``: to every line its level, what happened, what to do and the moves, every text
  and code of the screen after it; in the end what lies where; of the demo shop codes and state
- ``files.txt``: the facts and entries as the shops' files hold them

Two trees that behave alike leave the same files, byte for byte:

    python -m tests.answers old ../before
    python -m tests.answers new
    python -m tests.answers --differ old new

The last line tells what differs: each way in which lines differ once, with how often, and
the texts of it that are gone and that are new. It ends with 1 where any does.

So nothing here may lean on how a tree is built inside: days and walks are played by the tree's
own `tests.replay`, the demo shop by ``python -m station``, and files are read as what they are.
The walks are this file's, the same for both.
"""

import json
import os
import random
import re
import sqlite3
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from difflib import SequenceMatcher
from hashlib import sha256
from itertools import zip_longest
from pathlib import Path
from typing import TextIO

HERE = Path(__file__).resolve()
NOW = "2026-11-25T10:42:00"
WALKS, ERRANDS = 20, 18  # walks, and errands in each
RANDOM = re.compile(r"\$argon2id\$[^\"\\]*|\b[0-9a-f]{16}\b")  # hashes of PINs, a ledger's own ids
PARTED = re.compile(r' · |,(?=")| \| ')  # texts of a screen, fields of a fact, parts of an answer
MOST = 600  # characters that are printed of what differs
LONG = 600  # characters of a body; of what follows, only that it differs
INSIDE = ("code", "minus", "plus", "style", "state", "tone", "revision", "part", "shape")

# --- what a screen says


def words(shown: object) -> Iterator[str]:
    """Every text of a face in its order, and every code that a touch on it sends."""
    if isinstance(shown, str) or hasattr(shown, "template"):
        yield str(shown)
    elif is_dataclass(shown):
        for field in fields(shown):
            value = getattr(shown, field.name)
            if field.name == "code" and value:
                yield f"[{value}]"
            elif field.name not in INSIDE:
                yield from words(value)
    elif isinstance(shown, tuple):
        for one in shown:
            yield from words(one)


def screen(face: object) -> list[str]:
    """What a screen says, empty texts left out."""
    return [text for text in words(face) if text]


# --- the walks

SEEN = re.compile(r"\b(batch|pack) (\d{5})", re.IGNORECASE)  # in answers: what there is by now
BATCHES = ("?batch", "?batch", "?batch", "00900", "00901")  # one seen so far; ``?new``: the newest
ORDERS = ("3306", "3307", "3308", "3309")
PARTS = ("014", "021", "032", "045", "051", "061", "062")
REASONS = ("01", "03", "05", "11", "13", "21", "22", "31", "32", "34", "41", "43", "51", "54")
BEFORE = ("button held_down", "button bit_good", "button file_right", "button zeroed",
          "button rehomed", "button first_off_good", "button told", "button day_done")  # fmt: skip
AFTER = ("button bit_out", "button bed_clear", "button held_down", "button nobody_near",
         "button rehomed", "button zeroed")  # fmt: skip
LISTS = ("order", "cutfile", "part", "product", "rack", "material", "lot", "router", "bit",
         "mailer", "cart", "worker", "reason", "revision", "shop")  # fmt: skip
ODD = ("7", "B00001", "B00001AX", "12.5.1", "-3", "999999", "hello", "O9999", "'", "@fly")


def supervisor(dice: random.Random) -> tuple[str, ...]:
    """Badge and PIN, now and then not."""
    return ("worker 07", "2468") if dice.random() < 0.9 else ("button put_down",)


def errand(dice: random.Random) -> Iterator[str]:
    """The lines of one errand."""
    yield from dice.choice(ERRAND)(dice)
    if dice.random() < 0.2:
        yield dice.choice(("button undo", "button put_down", "restart", "button handover"))


def release(dice: random.Random) -> Iterator[str]:
    yield from ("@worker 07", "@area office", "button put_down", "button list_cutfile")
    yield f"button row_{dice.randint(1, 5)}"
    router = dice.randint(1, 5)
    yield from ("button release_batch", f"router {router}", str(dice.randint(1, 3)))
    yield from supervisor(dice)
    for sheet in range(1, dice.randint(2, 3)):
        yield from cut(dice, router, "?new", sheet)
    yield from (*pop(dice, "?new"), *trim(dice, "?new"))


def load(dice: random.Random) -> Iterator[str]:
    yield from cut(dice, dice.randint(1, 5), dice.choice(BATCHES), dice.randint(1, 3))


def cut(dice: random.Random, router: int, batch: str, sheet: int) -> Iterator[str]:
    """One sheet, from its lot to what became of it."""
    yield from ("@worker 02", "@area loading", f"@router R{router}", f"traveller {batch}")
    yield dice.choice(("300", "200", "90", "100", "560", "100.5"))  # of a first-off, if one is due
    yield f"lot {dice.choice(('0931',) * 5 + ('0940',))}"
    yield dice.choice(("6.4",) * 6 + ("9.0", "5.8"))
    yield from dice.sample(BEFORE, len(BEFORE)) if dice.random() < 0.2 else BEFORE
    yield "button start"
    if dice.random() < 0.1:
        yield from (*supervisor(dice), "reason 41")
    yield f"@after {dice.choice((2, 25, 60))}"
    end = dice.random()
    if end < 0.7:
        yield from (f"slip {batch} {sheet}", "button yes")
    elif end < 0.85:
        yield from ("button sheet_spoiled", f"reason {dice.choice(REASONS)}", "7")
        yield from ("button sheet_spoiled", "button one_more_sheet")
    else:
        yield from ("button stop", f"reason {dice.choice(REASONS)}", "@after 9")
        yield from dice.sample(AFTER, dice.choice((2, len(AFTER), len(AFTER))))
        yield "button stop_over"


def bits(dice: random.Random) -> Iterator[str]:
    yield from ("@worker 02", "@area loading", f"@router R{dice.randint(1, 5)}")
    yield dice.choice(("button bit_broken", "button resurfaced", "button first_off_bad"))
    yield f"bit {dice.randint(11, 18)}"
    yield dice.choice(("button first_off_good", "button next_router", "router 3"))


def count(dice: random.Random) -> Iterator[str]:
    """What is not good, in some order."""
    for _ in range(dice.randint(0, 3)):
        yield dice.choice((f"reason {dice.choice(REASONS)}", "button missing", "button more",
                           "button fewer", "button uncut", "button rework"))  # fmt: skip
        yield str(dice.randint(1, 6))
    if dice.random() < 0.3:
        yield dice.choice(("zone 53", "@place 300 200", f"part {dice.choice(PARTS)}"))


def pop(dice: random.Random, batch: str = "?batch") -> Iterator[str]:
    yield from ("@worker 03", "@area popping", "@bench 1")
    yield f"traveller {batch}" if dice.random() < 0.5 else f"slip {batch} {dice.randint(1, 3)}"
    yield from count(dice)
    if dice.random() < 0.3:
        yield from ("button some", str(dice.randint(1, 30)))
    yield "button pass_on"


def trim(dice: random.Random, batch: str = "") -> Iterator[str]:
    yield from ("@worker 04", "@area trimming", "@bench 2")
    yield f"traveller {batch or dice.choice(BATCHES)}"
    yield from dice.sample(("button master_agrees", "button master_differs", "200.1"), 1)
    yield from count(dice)
    if dice.random() < 0.3:
        yield from ("button some_trimmed", str(dice.randint(1, 30)))
    yield "button on_rack"


def anywhere(dice: random.Random) -> Iterator[str]:
    yield from (f"@worker 0{dice.randint(2, 6)}", dice.choice(("@area popping", "@area trimming")))
    yield f"traveller {dice.choice(BATCHES)}"
    yield "button " + dice.choice(
        ("split", "found", "recount", "hold", "release", "reprint", "lost_paper", "menu")
    )
    yield dice.choice((f"traveller {dice.choice(BATCHES)}", f"part {dice.choice(PARTS)}", "5"))
    yield str(dice.randint(0, 12))
    yield dice.choice(("reason 51", "worker 07", "button put_down"))


def pack(dice: random.Random) -> Iterator[str]:
    yield from ("@worker 05", "@area packing", "@bench 4")
    yield dice.choice(("button next_order", f"order {dice.choice(ORDERS)}", "button row_1"))
    for _ in range(dice.randint(1, 4)):
        part = dice.choice(PARTS)
        yield dice.choice(
            (f"part {part}", f"rack {part}", "button all_of_it", "2", "button row_1")
        )
    more = dice.random()
    if more < 0.3:
        yield from ("button part_missing", str(dice.randint(0, 9)))
        yield from (dice.choice(("button wait", "button send_short")), *supervisor(dice))
    elif more < 0.5:
        yield from ("button take_back", "1", f"part {dice.choice(PARTS)}")
    elif more < 0.6:
        yield from ("button scale", str(dice.randint(50, 900)))
    yield dice.choice(("button close_pack", "button close_pack", "button put_down"))
    if dice.random() < 0.2:
        yield from ("button label_again", "pack ?pack")


def cart(dice: random.Random) -> Iterator[str]:
    yield from ("@area cart", f"cart {dice.randint(1, 2)}", *["pack ?pack"] * 3)
    if dice.random() < 0.3:
        yield from ("button off_cart", "pack ?pack")
    yield "button at_door"
    yield from ["pack ?pack"] * dice.randint(0, 4)
    yield dice.choice(("button leave", "button not_yet", "button cart_list"))


def look(dice: random.Random) -> Iterator[str]:
    yield from ("@worker 07", "@area today", "button show_flow", "button show_concerns")
    yield from (f"button row_{dice.randint(1, 4)}", f"button row_{dice.randint(1, 2)}")
    yield from (*supervisor(dice), f"reason {dice.choice(REASONS)}", "button put_down")


def office(dice: random.Random) -> Iterator[str]:
    yield from ("@worker 07", "@area office", "button put_down")
    yield f"button list_{dice.choice(LISTS)}"
    yield dice.choice(("button row_1", "button row_2", "button new", "button next_page"))
    for _ in range(dice.randint(1, 4)):
        yield dice.choice(("button next_field", "button more", "button fewer", "3", "6.2",
                           "'Of our own", "button row_3", "button lines_done"))  # fmt: skip
    yield dice.choice(("button save", "button cancel_it", "button approve", "button receive",
                       "button correct", "button new_pin", "button print_cards"))  # fmt: skip
    yield from (str(dice.randint(1, 40)), *supervisor(dice), f"reason {dice.choice(REASONS)}")


def odd(dice: random.Random) -> Iterator[str]:
    for _ in range(4):
        yield dice.choice((*ODD, "worker 03", "worker 99", "button sign_out", "button lock",
                           "button dark", "digit 4", "button enter", "button clear",
                           f"part {dice.choice(PARTS)}", "mailer 01", "product 031"))  # fmt: skip


ERRAND = (release, release, load, load, load, bits, pop, pop, trim, trim, anywhere, anywhere,
          pack, pack, cart, look, office, office, odd)  # fmt: skip


def walk(seed: int) -> list[str]:
    """The lines of one walk; the clock goes on by some minutes between two errands."""
    dice, lines = random.Random(seed), ["@at 2026-11-25T07:00:00"]
    for _ in range(ERRANDS):
        lines += [*errand(dice), f"@after {dice.randint(1, 12)}"]
    return lines


# --- played inside a tree, by its own `tests.replay`


def played(file: Path) -> None:
    """Prints the days and the walks of the tree that this process stands in."""
    from tests import replay  # noqa: PLC0415 - the tree's, which need not be this one's

    days = {
        day.name: [x for line in day.read_text("utf-8").splitlines()
                   if (x := line.strip()) and x[0] not in "#>="]
        for day in sorted(replay.HERE.glob("*.txt"))
    }  # fmt: skip
    with file.open("w", encoding="utf-8") as files:
        for name, lines in (days | {f"walk {n}": walk(n) for n in range(WALKS)}).items():
            print(f"\n## {name}")
            files.write(f"\n## {name}\n")
            play(replay, lines, files)


def play(replay: object, lines: list[str], files: TextIO) -> None:
    """Plays lines on a fresh small shop; prints answers, moves, screens, and what lies where."""
    with tempfile.TemporaryDirectory() as folder:
        stage = replay.Stage(Path(folder))
        dice, seen = random.Random(len(lines)), {"batch": ["00900"], "pack": ["00001"]}
        for asked in lines:
            line = filled(asked, seen, dice)
            order, _, minutes = line.partition(" ")
            if order == "@after":
                stage.send(f"@at {later(stage.clock(), int(minutes))}")
                continue
            given = stage.desk.take(line[1:]) if line[:1] == "'" else stage.send(line)
            answer = given.answer
            for kind, number in SEEN.findall(str(answer.said)):
                seen[kind.lower()].append(number)
            print(f"{line}\n> {answer.tone} | {answer.said} | {answer.do} | {given.entry}")
            for move in given.moves:
                print(f"  {move.part} {move.qty} {tuple(move.frm)} {tuple(move.to)}")
            print(f"  = {painted(stage.desk)}".replace(folder, "FOLDER"))
        print("check", stage.check())
        stage.close()
        held(Path(folder) / "shop.db", files)


def filled(line: str, seen: dict[str, list[str]], dice: random.Random) -> str:
    """A line of a walk with a batch or pack that answers have named."""
    line = line.replace("?new", seen["batch"][-1])
    return re.sub(r"\?(batch|pack)", lambda kind: dice.choice(seen[kind[1]]), line)


def painted(desk: object) -> str:
    """What the screen says now, or how it cannot be shown."""
    try:
        return " · ".join(screen(desk.face()))
    except Exception as bug:  # noqa: BLE001 - a bug of a tree is what we want to see
        return f"{type(bug).__name__}: {bug}"


def held(file: Path, files: TextIO) -> None:
    """Prints where pieces lie, and writes the facts and entries of a shop's file."""
    shop = sqlite3.connect(file)
    for row in shop.execute("SELECT place, batch, part, qty FROM balance ORDER BY 1, 2, 3"):
        print(*row)
    for table, key in (("fact", "key"), ("entry", "id")):
        for name, body in shop.execute(f"SELECT {key}, body FROM {table} ORDER BY rowid"):
            text = RANDOM.sub("RANDOM", f"{name} {body}")
            if len(text) > LONG:
                text = f"{text[:LONG]}… {sha256(text.encode()).hexdigest()}"
            files.write(f"{text}\n")
    shop.close()


def later(at: str, minutes: int) -> str:
    """A time of the same day so many minutes later, at most its last minute."""
    whole = min(int(at[11:13]) * 60 + int(at[14:16]) + minutes, 24 * 60 - 1)
    return f"{at[:11]}{whole // 60:02d}:{whole % 60:02d}:00"


# --- the demo shop, at the command line


def demo(tree: Path) -> Iterator[str]:
    """What the text station says on the demo shop, and the shop's codes and state."""
    with tempfile.TemporaryDirectory() as folder:
        given = ["--data", folder, "--now", NOW]
        station(tree, "demo", "--build-only", *given)
        codes = station(tree, "codes", "--json", *given)
        yield from shown(json.loads(codes))
        lines = scans(random.Random(7), json.loads(codes))
        answers = station(tree, "scan", *given, "--area", "popping", text="\n".join(lines))
        for line, answer in zip(lines, answers.splitlines(), strict=True):
            yield line
            yield re.sub(r'"entry": "\w+"', '"entry": "one"', answer).replace(folder, "FOLDER")
        state = json.loads(station(tree, "state", "--json", *given))
        for kind, value in state.items():
            yield from (f"{kind} {one}" for one in shown(value))
        yield station(tree, "check", *given)


def shown(value: object) -> Iterator[str]:
    """JSON, a line each for what stands in a list; sorted, as some lists are by random ids."""
    listed = value if isinstance(value, list) else [value]
    yield from sorted(json.dumps(one, ensure_ascii=False, sort_keys=True) for one in listed)


def scans(dice: random.Random, codes: list[dict[str, str]]) -> list[str]:
    """Codes of the demo shop that follow each other as at work, or as nobody would."""
    of: dict[str, list[str]] = {}
    for code in codes:
        of.setdefault(code["kind"], []).append(code["code"])
    buttons = {c["code"]: c["area"] for c in codes if c["kind"] == "button"}
    lines: list[str] = []
    for area in ("popping", "trimming", "packing", "cart", "loading", "today", "office") * 5:
        near = [code for code, at in buttons.items() if at in (area, "anywhere")]
        lines += [f"@worker 0{dice.randint(1, 6)}", f"@area {area}"]
        lines.append(f"@router R{dice.randint(1, 5)}")
        for _ in range(10):
            kind = dice.choice(("batch", "slip", "order", "part", "reason", "pack", "lot", "bit"))
            lines += [dice.choice(of[kind][-40:]), dice.choice(near), str(dice.randint(1, 9))]
            lines.append(dice.choice(near))
    return lines


def station(tree: Path, *words_: str, text: str = "") -> str:
    """What a command of the tree prints."""
    return run(tree, "-m", "station", *words_, text=text)


def run(tree: Path, *words_: str, text: str = "") -> str:
    """What this Python prints with the tree as its folder."""
    done = subprocess.run(
        [sys.executable, *words_], cwd=tree, input=text, capture_output=True, encoding="utf-8",
        env={**os.environ, "PYTHONPATH": str(tree), "PYTHONIOENCODING": "utf-8"}, check=False,
    )  # fmt: skip
    if done.returncode:
        sys.exit(f"{' '.join(words_)} in {tree}:\n{done.stdout[-2000:]}\n{done.stderr[-4000:]}")
    return done.stdout


# --- what differs


def ways(old: list[str], new: list[str]) -> Counter[tuple[str, str]]:
    """Ways in which lines differ: what of them is gone, what is new; by how often."""
    found: Counter[tuple[str, str]] = Counter()
    for one, other in pairs(old, new):
        before, after = (Counter(PARTED.split(line)) for line in (one, other))
        gone, come = before - after, after - before
        found[" · ".join(gone.elements()), " · ".join(come.elements())] += 1
    return found


def pairs(old: list[str], new: list[str]) -> Iterator[tuple[str, str]]:
    """Lines that differ, each with what stands in its place."""
    if len(old) == len(new):
        yield from ((a, b) for a, b in zip(old, new, strict=True) if a != b)
        return
    for what, i, j, k, n in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        if what != "equal":
            yield from zip_longest(old[i:j], new[k:n], fillvalue="")


def differ(old: Path, new: Path) -> int:
    """Prints the ways in which two trees differ, the most frequent first."""
    wrong = 0
    for name in ("answers.txt", "files.txt"):
        lines = [(f / name).read_text(encoding="utf-8").splitlines() for f in (old, new)]
        found = ways(*lines)
        wrong += found.total()
        print(f"{name}: {found.total()} lines differ in {len(found)} ways")
        for (gone, come), count in found.most_common():
            print(f"  {count} ×\n    - {gone[:MOST]}\n    + {come[:MOST]}")
    return 1 if wrong else 0


def main() -> int:
    """Writes all answers of a tree, or tells how those of two trees differ."""
    if sys.argv[1] == "--played":
        played(Path(sys.argv[2]))
        return 0
    if sys.argv[1] == "--differ":
        return differ(*map(Path, sys.argv[2:4]))
    out, *of = map(Path, sys.argv[1:])
    tree = (of[0] if of else HERE.parent.parent).resolve()
    out.mkdir(parents=True, exist_ok=True)
    told = run(tree, str(HERE), "--played", str(out.resolve() / "files.txt"))
    whole = "\n".join((told, "## the demo shop", *demo(tree), ""))
    (out / "answers.txt").write_text(whole, encoding="utf-8")
    print(f"{told.count(chr(10) + '> ')} answers and those of the demo shop, in {out}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
