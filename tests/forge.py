"""``python -m tests.forge 2000``: forges entries that look sound, and shows every screen.

At the end of a day in the shop, one to three fields of a fact are bent to other values of their
own types, as an entry from elsewhere may hold them. What is judged sound is taken in, ten at a
time, and then no screen of any room may fail, and nothing that can be touched on one. Given is
how many and, if wanted, the seed; told is how many were left out, and every failure with what was
bent.

Then a station's password is stolen for an hour (``tests/thief.py``), with a try for every ten
entries: it changes nothing but what its own station may.
"""

import contextlib
import dataclasses
import json
import logging
import os
import sys
import tempfile
from collections.abc import Iterable
from concurrent.futures import ProcessPoolExecutor
from itertools import repeat
from pathlib import Path
from random import Random
from typing import Any

from station.ledger.sound import taken_in
from station.shop.areas import AREAS
from station.shop.facts import KINDS, Fact
from station.shop.fields import choices, field_types
from station.shop.plain import to_plain
from tests import replay
from tests.measured import note
from tests.touch import list_touches

AT = "2026-11-25T15:00:00"
DAYS = ("01_ordinary_batch", "16_order_cancelled")
AFRESH = 50  # forged entries that one shop takes in, one on top of the other
TOGETHER = 10  # of them between two looks at the screens: a look takes as long as 100 entries
TEXTS = (
    "", "0", "1", "C", "00900", "061", "x" * 1999, "{n}", "{", "%s", "\u202e", "a/b", "a\nb",
    AT, "1999-01-01T00:00:00", "2199-12-31T23:59:59", "2026-11-25", "12:00", "00:00", "23:59",
    "stop", "99999999999999999999", "-1", "½",
)  # fmt: skip
WHOLE = (0, 1, -1, 2, 7, 100, 9999, 10**6, 10**9 - 1, 1 - 10**9)
NUMBERS = (0.0, 1.0, -1.0, 0.5, 1e-9, 1e6, 999_999_999.0, -999_999_999.0)


class Told(logging.Handler):
    """Keeps what the program writes down as mistakes of its own."""

    def __init__(self) -> None:
        super().__init__(logging.ERROR)
        self.said: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.said.append(self.format(record))


def bend(hint: Any, value: Any, chance: Random) -> Any:
    """Gives another plain value of the same type, which may or may not be one that can be."""
    if words := choices(hint):
        return chance.choice(words)
    if isinstance(value, bool):
        return not value
    if isinstance(value, str):
        return chance.choice(TEXTS)
    if isinstance(value, int):
        return chance.choice(WHOLE)
    if isinstance(value, float):
        return chance.choice(NUMBERS)
    if isinstance(value, list):
        return _bend_list(value, chance)
    if isinstance(value, dict) and value:
        name = chance.choice(sorted(value))
        kind = field_types(hint)[name] if dataclasses.is_dataclass(hint) else None
        return {**value, name: bend(kind, value[name], chance)}
    return value


def _bend_list(value: list[Any], chance: Random) -> list[Any]:
    if not value or chance.random() < 0.2:
        return []
    if chance.random() < 0.2:
        return [*value, *value]
    at = chance.randrange(len(value))
    return [*value[:at], bend(None, value[at], chance), *value[at + 1 :]]


def forge(fact: Fact, id: str, chance: Random) -> str:
    """Gives the text of an entry that sets the fact with some fields bent."""
    value, hints = to_plain(fact), field_types(type(fact))
    names = sorted(name for name in value if name != "id")
    for name in chance.sample(names, min(len(names), chance.randint(1, 3))):
        value[name] = bend(hints[name], value[name], chance)
    return write_entry(fact, value, id)


def write_entry(fact: Fact, value: dict[str, Any], id: str) -> str:
    """Gives the text of an entry that sets the fact to these plain values, shelved as it was."""
    state = [value, fact.shelf and f"{fact.kind}/{fact.shelf[0]}", (fact.shelf or ("", ""))[1]]
    act = {"id": id, "kind": "save_fact", "at": AT}
    return json.dumps({"act": act, "tone": "good", "sets": [[fact.key, None, state]]})


def look_around(desk: Any) -> None:
    """Shows every room, and touches each thing that can be touched there once."""
    for area in AREAS:
        desk.at(area=area.id, router="1")
        desk.sign_in("07")
        desk.unlocked = "07"
        for code in dict.fromkeys(code for code, _ in list_touches(desk.face())):
            desk.at(area=area.id, router="1")
            desk.take(code)
            desk.face()


class ForgedStage(replay.Stage):
    """A shop that is forged in once its day is over."""

    chance: Random
    wrong: list[str]
    left_out = 0

    def check(self) -> list[str]:
        problems = super().check()
        if not problems:
            self.ledger.hurry(on=True)  # a shop that is thrown away
            for first in range(0, AFRESH, TOGETHER):
                self.forge_some([f"forged {n}" for n in range(first, first + TOGETHER)])
        return problems

    def forge_some(self, ids: list[str]) -> None:
        """Forges an entry for each id, and shows what became of the shop."""
        self.show(self.take(each, self._forge(each)) for each in ids)

    def _forge(self, id: str) -> str:
        kinds = [found for kind in KINDS.values() if (found := [*self.ledger.facts(kind)])]
        return forge(self.chance.choice(self.chance.choice(kinds)), id, self.chance)

    def take(self, id: str, text: str) -> str:
        """Takes an entry in; gives its text, or nothing where it is left out."""
        body, why = taken_in(id, text)
        if why:
            self.left_out += 1
            return ""
        self.ledger._history.append(body, (), {})
        return text

    def show(self, entries: Iterable[str]) -> None:
        """Takes in what is forged one on top of the other, and shows every screen."""
        told, texts = Told(), list[str]()
        logging.getLogger().addHandler(told)
        try:
            texts += filter(None, entries)
            if texts:
                look_around(self.desk)
        except Exception as error:  # noqa: BLE001 - whatever a screen raises is what is looked for
            told.said.append(repr(error))
        finally:
            logging.getLogger().removeHandler(told)
        bent = "\n    ".join(text[:600] for text in texts)
        self.wrong += [f"{said}\n    {bent}" for said in told.said[:1]]


def run(many: int, seed: int, workers: int = 1) -> tuple[int, list[str]]:
    """Forges so many entries, or a few more; gives how many were left out, and what failed.

    Each shop is a work of its own: several go on at once where there are `workers`.
    """
    shops = range(-(-many // AFRESH))
    if workers == 1:
        found = [run_shop(n, seed) for n in shops]
    else:
        with ProcessPoolExecutor(workers, initializer=be_quiet) as pool:
            found = list(pool.map(run_shop, shops, repeat(seed)))
    return sum(left_out for left_out, _ in found), [one for _, wrong in found for one in wrong]


def run_shop(n: int, seed: int) -> tuple[int, list[str]]:
    """Forges the entries of one shop.

    Where a forged folder is a name, what is written there goes to a folder that is thrown away.
    """
    made, wrong = list[ForgedStage](), list[str]()

    def staged(folder: Path) -> ForgedStage:
        stage = ForgedStage(folder)
        stage.chance, stage.wrong = Random(seed * 100_003 + n), wrong
        made.append(stage)
        return stage

    with tempfile.TemporaryDirectory() as folder, contextlib.chdir(folder):
        replay.play(replay.HERE / f"{DAYS[n % len(DAYS)]}.txt", staged=staged)
    return made[0].left_out, wrong


def be_quiet() -> None:
    """What a forged entry warns of is no news."""
    logging.disable(logging.WARNING)


def main() -> int:
    """Forges as many entries as are asked for, and tells what failed."""
    from tests.thief import steal  # noqa: PLC0415 - it forges as this does

    many = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    be_quiet()
    left_out, wrong = run(many, seed, os.cpu_count() or 1)
    for one in wrong:
        print(one)
    came = f"{left_out} left out, {len(wrong)} made a screen fail"
    print(f"{many} forged entries: {came}")
    note(f"{many} forged entries, each thing touched on every screen", came, "0 fail")
    logging.disable(logging.ERROR)  # the thief's time-outs, and what the database refuses
    hour = steal(max(50, many // 10), seed)
    for one in hour.wrong[:40]:
        print(one)
    came = (
        f"{hour.tried} tried, {hour.taken} of its own taken, {len(hour.wrong)} changed anything "
        f"else; at most {hour.slowest:.1f} s until others shared while it held them up"
    )
    print(f"a password stolen for an hour: {came}")
    note("a station's password stolen for an hour", came, "0; 8 s")
    return 1 if wrong or hour.wrong else 0


if __name__ == "__main__":
    sys.exit(main())
