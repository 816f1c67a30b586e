"""What a room thinks about by itself, beside the screen, and anew once the shop has changed."""

import logging
import time
from collections.abc import Callable

from station.shop.rooms import Begin, Doing, RoomMemory, RunningJob
from station.shop.words import say

log = logging.getLogger(__name__)
HOLDS_UP_S = 0.015  # that the screen is held up at once by what is read for a thought
MakeRequest = Callable[[RoomMemory], object]


class ThinkingAhead:
    """The newest thought of the room that is shown, and the job that thinks the next one.

    What is thought about is read in slices, so that a scan is answered in between; with
    `at_once` there is no screen to wait for it. A thought that breaks off is written down and
    begun again only once the shop has changed.
    """

    def __init__(self, begin: Begin | None, *, at_once: bool) -> None:
        self.thought: object = None
        self.running: RunningJob | None = None
        self.is_reading = False  # what the next thought is about
        self._begin, self._at_once = begin, at_once
        self._memory = RoomMemory()
        self._area = ""
        self._state: tuple[object, ...] = ()  # of the shop, that was thought about last

    @property
    def is_thinking(self) -> bool:
        """Whether a thought is on its way."""
        return self.is_reading or self.running is not None

    def doing(self) -> Doing | None:
        """Tells how far the thought on its way is; None where there is none."""
        if not self.is_thinking:
            return None
        return Doing(say("looks anew"), self.running.progress()[1] if self.running else 0.0)

    def look(self, area: str, state: tuple[object, ...], make_request: MakeRequest | None) -> bool:
        """Takes in what is thought, or begins to think; True where there is a new thought.

        `state` tells one state of the shop from another; without `make_request` the room of this
        area thinks about nothing.
        """
        if area != self._area or make_request is None:
            self.stop()
            self._area, self.thought, self._memory = area, None, RoomMemory()
        if make_request is None:
            return False
        if self.is_reading or (self.running is None and state != self._state):
            self._state = state
            self._read(make_request)
        return self._take_in()

    def _read(self, make_request: MakeRequest) -> None:
        """Reads what to think about, as far as the screen allows, and begins once it is whole."""
        assert self._begin is not None, f"nothing can think at {self._area}"
        self.is_reading = False  # where it raises, it is not tried again and again
        until = time.perf_counter() + HOLDS_UP_S
        self._memory.is_time_up = lambda: not self._at_once and time.perf_counter() > until
        request = make_request(self._memory)
        self.is_reading = request is None
        if request is not None:
            self.running = self._begin(request)

    def _take_in(self) -> bool:
        """Takes the thought in once it is there."""
        running = self.running
        if running is None or not running.is_over():
            return False
        self.running = None
        try:
            self.thought = running.outcome()
        except RuntimeError:
            log.exception("a thought at %s broke off", self._area)
            return False
        return True

    def break_off(self) -> None:
        """Stops the thought on its way; the next one waits until the shop has changed."""
        state = self._state
        self.stop()
        self._state = state

    def forget_state(self) -> None:
        """Forgets what was thought about: the next look thinks anew."""
        self._state = ()

    def stop(self) -> None:
        """Stops thinking."""
        if self.running is not None:
            self.running.stop()
        self.running, self.is_reading, self._state = None, False, ()
