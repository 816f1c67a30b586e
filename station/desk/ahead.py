"""What a room thinks about by itself, beside the screen, and anew once the shop has changed."""

import logging
from collections.abc import Callable

from station.shop.rooms import Begin, RunningJob

log = logging.getLogger(__name__)


class ThinkingAhead:
    """The newest thought of the room that is shown, and the job that thinks the next one.

    A thought that breaks off is written down and begun again only once the shop has changed.
    """

    def __init__(self, begin: Begin | None) -> None:
        self.thought: object = None
        self._begin = begin
        self.running: RunningJob | None = None
        self._area = ""
        self._state: tuple[object, ...] = ()  # of the shop, that was thought about last

    @property
    def is_thinking(self) -> bool:
        """Whether a thought is on its way."""
        return self.running is not None

    def look(
        self, area: str, state: tuple[object, ...], make_request: Callable[[], object] | None
    ) -> bool:
        """Takes in what is thought, or begins to think; True where there is a new thought.

        `state` tells one state of the shop from another; without `make_request` the room of this
        area thinks about nothing.
        """
        if area != self._area or make_request is None:
            self.stop()
            self._area, self.thought = area, None
        if make_request is None:
            return False
        if self.running is None and state != self._state:
            assert self._begin is not None, f"nothing can think at {area}"
            self._state = state
            self.running = self._begin(make_request())
        return self._take_in()

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

    def stop(self) -> None:
        """Stops thinking."""
        if self.running is not None:
            self.running.stop()
        self.running, self._state = None, ()
