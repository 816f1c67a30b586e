"""The text station: a line in, a JSON line out, through the same desk as the screen."""

import logging
from collections.abc import Callable, Iterator
from queue import Empty, SimpleQueue
from threading import Thread
from time import monotonic, sleep
from typing import TYPE_CHECKING, TextIO

from station.clock import Clock
from station.commands.common import pin_clock
from station.desk.desk import Desk, Given
from station.desk.mishaps import tell_own_bug
from station.desk.replies import line
from station.ledger.faults import Fault
from station.shop.acts import Answer, good, refuse
from station.shop.areas import AREAS
from station.shop.facts import Worker
from station.shop.words import say

if TYPE_CHECKING:
    from station.sharing.loop import Loop

log = logging.getLogger(__name__)
LAST_WORDS = 3.0  # seconds
MOVED_AFTER = 1.0  # seconds: so often the log is moved into the file, as the window does


def run_text_station(
    desk: Desk,
    clock: Clock,
    lines: TextIO,
    out: Callable[[str], None],
    beside: Callable[[str], None],
    loop: "Loop | None" = None,
    keep_house: Callable[[], None] = lambda: None,
) -> bool:
    """Takes a line at a time and prints one JSON line for each, after its commit.

    Our own mistake ends none of the other lines; gives whether there was none.

    A station that shares goes on with that between the lines, and a moment after the last.
    What keeps it from sharing is said `beside`: no line asked for it. `keep_house` does what the
    window does by itself, as the evening's backup.
    """
    if loop is not None:
        loop.trouble = lambda fault: beside(
            str(fault) if loop.state == "twin" else f"{fault} Sharing tries again by itself."
        )
    taker, moved = TakingLines(desk, clock), monotonic()
    for raw in lines if loop is None else _read_and_share(lines, loop, beside):
        if given := taker.take(raw):
            out(line(given.answer, given.entry, given.moves))
            if loop is not None:
                loop.kick()
        if monotonic() - moved >= MOVED_AFTER:
            desk.ledger.idle()
            keep_house()
            moved = monotonic()
    return taker.sound


class TakingLines:
    """Takes lines at a desk; `sound`: there was no mistake of our own so far."""

    def __init__(self, desk: Desk, clock: Clock) -> None:
        self.desk, self.clock, self.sound = desk, clock, True

    def take(self, raw: str) -> Given | None:
        """Takes one line; None where it says nothing: it is empty, or a remark."""
        text = raw.strip()
        if not text or text.startswith("#"):
            return None
        told = "" if self.desk.secret else text
        return self.try_to(lambda: take_line(self.desk, self.clock, text), told)

    def try_to(self, do: Callable[[], Given], told: str) -> Given:
        """Does what a line asks for; our own mistake is written down, and the rest goes on."""
        self.desk.recorded = None
        try:
            return do()
        except Exception:
            log.exception("line %r", told)
            self.sound = False
            return _tell_own_bug(self.desk)


def _read_and_share(lines: TextIO, loop: "Loop", beside: Callable[[str], None]) -> Iterator[str]:
    """Gives the lines as they come; while none comes, the talk with the shop goes on."""
    come: SimpleQueue[str | None] = SimpleQueue()

    def read() -> None:
        try:
            for raw in lines:
                come.put(raw)
        except OSError as fault:  # of a terminal that is gone, say
            beside(f"No more lines come: {fault.strerror or fault}.")
        finally:
            come.put(None)

    Thread(target=read, daemon=True).start()
    while True:
        try:
            raw = come.get(timeout=0.01)
        except Empty:
            _step_sharing(loop, beside)
            continue
        if raw is None:
            break
        _step_sharing(loop, beside)
        yield raw
    _share_the_rest(loop, beside)


def _share_the_rest(loop: "Loop", beside: Callable[[str], None]) -> None:
    """Shares what is not shared yet, for a moment; the rest waits for the next start."""
    end, ledger = monotonic() + LAST_WORDS, loop.ledger
    # a question in between would put off what is half taken in
    while monotonic() < end and (ledger.is_taking_in or ledger.not_shared()):
        _step_sharing(loop, beside)
        sleep(0.005)
    loop.close()


def _step_sharing(loop: "Loop", beside: Callable[[str], None]) -> None:
    """Goes a step on with the talk with the shop; says why it is away, and when it works again."""
    failed, away = loop.fault, loop.why if loop.state == "away" else ""
    loop.step()
    if loop.state == "away" and loop.why and not loop.fault and loop.why != away:
        beside(f"{loop.why} Sharing tries again by itself.")
    if (failed and not loop.fault) or (away and loop.state == "shared" and not failed):
        beside("Sharing goes on again.")


def _tell_own_bug(desk: Desk) -> Given:
    """Tells what the line of a mistake of our own has recorded all the same."""
    done = desk.recorded
    if done is None:
        return Given(tell_own_bug(None))
    return done._replace(answer=tell_own_bug(done.answer))


def take_line(desk: Desk, clock: Clock, text: str) -> Given:
    """Takes one line: an order to the station (``@…``) or an input."""
    if not text.startswith("@"):
        return desk.take(text)
    try:
        return _obey(desk, clock, text)
    except Fault as fault:  # where the station stands cannot be kept: it stays there
        return Given(
            refuse(say("{what}", what=str(fault)), say("The work in hand stays as it was."))
        )


def _obey(desk: Desk, clock: Clock, text: str) -> Given:
    """Does what an order to the station says."""
    word, _, rest = text[1:].partition(" ")
    rest = rest.strip()
    if word == "at":
        return _set_clock(clock, rest)
    if word == "place":
        return _touch_sheet(desk, rest)
    if word in ("area", "router", "bench", "worker"):
        return _stand(desk, word, rest)
    return Given(
        refuse(
            say("There is no order @{word}", word=word),
            say("Use @area, @router, @bench, @worker, @at or @place."),
        )
    )


def _set_clock(clock: Clock, text: str) -> Given:
    try:
        pin_clock(clock, text)
    except ValueError:
        return Given(
            refuse(say("{text} is no time", text=text), say("Write it as 2026-11-25T10:42:00."))
        )
    return Given(_answer(f"The clock says {clock()}"))


def _touch_sheet(desk: Desk, text: str) -> Given:
    try:
        x, y = (float(part) for part in text.split())
    except ValueError:
        return Given(refuse(say("A place is two numbers in mm"), say("Write @place 1200 300.")))
    return desk.touch(x, y)


def _stand(desk: Desk, word: str, value: str) -> Given:
    if word == "area" and value not in {area.id for area in AREAS}:
        return Given(refuse(say("There is no work area {area}", area=value)))
    if word == "worker":
        if desk.ledger.view.get(Worker, value) is None:
            return Given(refuse(say("There is no worker {id}", id=value)))
        desk.sign_in(value)
    else:
        _move_desk(desk, word, value)
    return Given(_answer(f"{word} {value}"))


def _move_desk(desk: Desk, word: str, value: str) -> None:
    """Puts the desk at an area, a router or a bench."""
    if word == "area":
        desk.at(area=value)
    elif word == "router":
        desk.at(router=value.upper().removeprefix("R"))
    else:
        desk.at(bench=value)


def _answer(text: str) -> Answer:
    return good(say("{text}", text=text))
