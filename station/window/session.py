"""Carries inputs from the window to the desk, and answers and faces back."""

import logging
import time
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from traceback import format_exc
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

from station.desk.appearance import screen
from station.desk.certain import CertainAct
from station.desk.desk import Desk, Given
from station.desk.mishaps import tell_own_bug
from station.floor.anywhere.finding import FIND
from station.ledger.faults import Fault
from station.ledger.rebase import Turned
from station.look.language import FIND_TEMPLATE
from station.look.shop_time import SHOP_TIME
from station.look.style import count_rows
from station.look.window import Window
from station.papers.spoken import speak
from station.shop.acts import Answer, refuse
from station.shop.cards import button
from station.shop.faces import Face
from station.shop.words import Say, clock, say
from station.window import sharing_words
from station.window.own_clock import OwnClock
from station.window.own_number import OwnNumber

if TYPE_CHECKING:
    from station.sharing.loop import Loop

PLACE = "@place "  # what a touch on a drawn sheet sends: x, y, how near, mm
LOOK_MS = 200  # between two looks at work beside the screen
QUIET = 60  # seconds without an input, until what may take a second is done
SOON = 8  # ms after an answer until it is shared: it is painted by then
LOG = logging.getLogger("station")


class Session(QObject):
    """Carries inputs from the window to the desk and the answers back."""

    def __init__(self, window: Window, desk: Desk, loop: "Loop | None" = None) -> None:
        super().__init__(window)
        self.window, self.desk, self.loop = window, desk, loop
        self.answered = NO_ANSWER  # the newest answer
        self.certain = CertainAct(desk.ledger, time.monotonic)
        self.own_number, self.own_clock = OwnNumber(desk.ledger), OwnClock(desk.ledger)
        self._broken = ""  # the trace of the screen that could not be shown
        self._went_wrong = set[str]()  # the traces of what ran by itself and went wrong
        self.took_ms = 0.0  # from the last input to its painted answer
        self.when_quiet: Callable[[], None] = lambda: None  # what waits until nobody scans
        self._unwell = Say()  # what is not well with the shop's PCs, looked at once a second
        self._asked_at = time.monotonic()  # when the last input came
        window.sent.connect(self.take)
        window.dropped.connect(lambda paths: self._take_input(lambda: desk.drop(tuple(paths))))
        window.scanner.left.connect(self.take_escape)
        SHOP_TIME.clock = desk.clock
        speak(FIND_TEMPLATE)
        self._follow_choices()
        self._tick = QTimer(self)
        self._tick.setInterval(1000)
        self._tick.timeout.connect(self.tick)
        self._often = QTimer(self)  # for the talk with the shop: a few milliseconds at most
        self._often.setInterval(25)
        self._beside = QTimer(self)  # while work runs beside the screen
        self._beside.setInterval(LOOK_MS)
        self._beside.timeout.connect(self.look_at_job)
        if loop is not None:
            self._often.timeout.connect(loop.step)
            self._often.timeout.connect(self.say_verdict)
            loop.turned, loop.trouble = self.say_turned, self.say_trouble

    def start(self) -> None:
        """Shows what was left in hand, or how to begin."""
        self.window.show_answer(self.desk.greeting(), "")
        self.repaint()
        self._tick.start()
        if self.loop is not None:
            self._often.start()

    def stop(self) -> None:
        """Stops all that runs on by itself: the ledger may be closed."""
        self._tick.stop()
        self._often.stop()
        self._beside.stop()
        if self.desk.underway is not None:
            self.desk.underway.stop()
        self.desk.ahead.stop()
        if self.loop is not None:
            self.loop.close()

    def say_turned(self, act: Turned) -> None:
        """Says that an act of this station does not hold in the shop any more."""
        self._say(act.answer)
        self.repaint()

    @property
    def _has_twin(self) -> bool:
        """Whether another PC works under this one's number, and this one has stopped sharing."""
        return self.loop is not None and self.loop.state == "twin"

    def say_trouble(self, fault: Fault) -> None:
        """Says why what came from the shop cannot be taken in, or that another PC is this one."""
        if self._has_twin:
            said = say("Another PC works as station {id} too", id=self.desk.ledger.station)
            self._say(refuse(said, say("Scan a new join card here.")))
            return
        self._say(refuse(say("{what}", what=str(fault)), say("Sharing tries again by itself.")))

    def say_news(self, news: Answer) -> None:
        """Says news of a paper: what was answered last stays, what to do now is said with it."""
        if self.answered.said:
            do = say("{what}. {next}", what=news.said, next=news.do)
            news = replace(news, said=self.answered.said, do=do)
        self._say(news)

    def _say(self, answer: Answer) -> None:
        self.answered = answer
        self.window.show_answer(answer, "")

    def say_verdict(self) -> None:
        """Says what became of an act that must be certain, as soon as the shop has said it."""
        answer = self.certain.find_verdict() or self.own_number.find_outcome()
        if answer:
            self._say(answer)
            self.repaint()

    def take(self, text: str) -> None:
        """Takes one input of a scanner, a touch or the keyboard."""
        joins = self.own_number.join(text) if self._has_twin else None
        if joins is not None:
            self._say(joins)
            return
        scanned = "" if self.window.is_touched else text
        self._take_input(lambda: self._decide(text), scanned)

    def take_escape(self) -> None:
        """Stops by Esc what runs beside the screen; else leaves the page of a thing."""
        if self.desk.underway is not None:
            self.take(button("stop_reading"))
        elif self.desk.ahead.is_thinking:
            self.take(button("think"))
        elif self.desk.hand.aside.what == FIND:
            decide = partial(self.desk.take, button("put_down"))
            self._take_input(decide)

    def look_at_job(self) -> None:
        """Looks how far the work beside the screen is, or what came of it."""
        if self.desk.ahead.is_thinking and self.desk.look_ahead():
            self.repaint()
        self._beside.setInterval(SOON if self.desk.ahead.is_reading else LOOK_MS)
        if self.desk.underway is None:
            if not self.desk.ahead.is_thinking:
                self._beside.stop()
        elif self.desk.has_ended():
            self._take_input(self.desk.went_on)
        else:
            self.repaint()

    def _take_input(self, decide: Callable[[], Given], text: str = "") -> None:
        """Decides, records, answers, repaints. Our own bug never loses the window."""
        began, self._asked_at = time.perf_counter(), time.monotonic()
        told = "" if self.desk.secret else text
        self.desk.recorded = None
        try:
            given = self.certain.ask_shop(decide())
        except Exception:  # the person's work goes on, the bug is written down
            LOG.exception("input %r at %s", told, self.desk.hand_told)
            done = self.desk.recorded
            given = tell_own_bug(done.answer if done else None)
        self.answered = given
        self._follow_choices()
        self.window.show_answer(given, told)
        self.repaint()
        self.took_ms = (time.perf_counter() - began) * 1000
        self._watch_jobs()
        if self.loop is not None:
            self.loop.kick()
            self._often.start()  # the answer is painted first
            QTimer.singleShot(SOON, self, self.loop.step)

    def _watch_jobs(self) -> None:
        """Looks at work beside the screen often, while there is any."""
        running = self.desk.underway is not None or self.desk.ahead.is_thinking
        if running and not self._beside.isActive():
            self._beside.start()

    def _decide(self, text: str) -> Given:
        if text.startswith(PLACE):
            return self.desk.touch(*(float(part) for part in text.split()[1:4]))
        return self.desk.take(text)

    def _follow_choices(self) -> None:
        """Lets the window look, sound and speak as was chosen on this PC."""
        wanted = screen(self.desk.ledger)
        self.window.sounds.muted = wanted.muted
        self.window.set_palette(dark=wanted.dark)
        self.window.set_language(wanted.language)
        self.desk.language = wanted.language

    def repaint(self) -> None:
        """Shows top bar and face as they are now; our own bug never loses the window."""
        try:
            self.desk.listed = count_rows()
            self._show_face(self.desk.face())
            self._broken = ""
        except Fault as fault:  # the disk cannot be read: what was shown stays
            self._say(refuse(say("{what}", what=str(fault)), say("Scan again once it works.")))
        except Exception:  # noqa: BLE001 - what the room shows is wrong; the rest works on
            self._note_broken(format_exc())
            self._show_face(self.desk.broken_face())

    def _show_face(self, face: Face) -> None:
        if self._has_twin:
            face = self.own_number.offer(face)
        self.show_top(face)
        self.window.secret = self.desk.secret
        self.window.show_face(face)

    def _note_broken(self, trace: str) -> None:
        """Writes down why a screen cannot be shown: once, though it is tried every second."""
        if trace != self._broken:
            LOG.error("screen at %s\n%s", self.desk.hand_told, trace)
        self._broken = trace

    def show_top(self, face: Face) -> None:
        """Shows the top bar."""
        hand, now = self.desk.hand, self.desk.clock()
        shared, ok = sharing_words.describe_sharing(self.desk.ledger, self.loop, now)
        if ok and self._unwell:
            shared, ok = self._unwell, False
        worker = say("Worker {id}", id=hand.worker) if hand.worker else say("Nobody signed in")
        self.window.show_top(
            area=face.title,
            where=face.where,
            worker=worker,
            clock=clock(now),
            shared=shared,
            shared_ok=ok,
        )

    def tick(self) -> None:
        """Keeps the clock, what runs on by itself, and the file, once a second.

        Not while news is half taken in: that would be put off each time.
        """
        if self.desk.ledger.is_taking_in:
            return
        self.desk.look_ahead()
        self._watch_jobs()
        self._try_to(self._look_how_all_is)
        self.repaint()
        self.desk.ledger.idle()
        if time.monotonic() - self._asked_at > QUIET:
            self._try_to(self.when_quiet)

    def _look_how_all_is(self) -> None:
        """Looks what is not well with this PC's clock, or with the shop's PCs."""
        clock_is = self.own_clock.look(self.desk.clock())
        self._unwell = clock_is or sharing_words.describe_health(self.desk.ledger)

    def _try_to(self, do: Callable[[], None]) -> None:
        """Does what runs on by itself; where it goes wrong it is written down, once."""
        try:
            do()
        except Exception:  # the clock and the rest go on
            if (trace := format_exc()) not in self._went_wrong:
                LOG.exception("by itself at %s", self.desk.hand_told)
                self._went_wrong.add(trace)


NO_ANSWER = Answer(tone="good", said=Say(), refused=True)
