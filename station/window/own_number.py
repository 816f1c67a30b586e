"""A PC that works under another's number joins under one of its own: a new join card is scanned.

Both came of one folder, and the second has stopped sharing. What it has not shared yet is shared
once it has a number of its own.
"""

import logging
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import replace
from typing import TYPE_CHECKING

from station.ledger.faults import Fault
from station.ledger.ledger import Ledger
from station.shop.acts import Answer, good, notice, refuse
from station.shop.faces import Face, Remark
from station.shop.words import say

if TYPE_CHECKING:
    from station.sharing.membership import Membership

log = logging.getLogger(__name__)
AGAIN = say("Scan the card once more, or ask who owns the database for another.")


class OwnNumber:
    """Asks for a join card where the talk with the shop has stopped, and joins with it."""

    def __init__(self, ledger: Ledger) -> None:
        self._ledger, self._folder = ledger, ledger.path.parent
        self._joining: Future[Membership] | None = None
        self._number = ""  # that this PC has from its next start

    def offer(self, face: Face) -> Face:
        """Puts what is the matter, and what mends it, above all that the screen shows."""
        if self._number:
            title = say("This PC is station {id} from its next start", id=self._number)
            remark = Remark(tone="good", title=title, text=REOPEN)
        else:
            title = say("Another PC works as this station: nothing of this one is shared")
            text = say("Scan a new join card here: it gives this PC a number of its own.")
            remark = Remark(tone="stop", title=title, text=text)
        return replace(face, main=(remark, *face.main))

    def join(self, text: str) -> Answer | None:
        """Joins where the text is the code of a join card, beside the screen; None: it is none."""
        from station.sharing import joining, membership, roles  # noqa: PLC0415 - seldom used

        known = membership.of(self._folder)
        if known is None or len(roles.tidy_code(text)) != roles.SIGNS_OF_CODE:
            return None
        if self._joining is None:
            pool = ThreadPoolExecutor(1, "joining")
            self._joining = pool.submit(
                joining.join, self._folder, known.address, text, known.site
            )
            pool.shutdown(wait=False)
        return notice(say("This PC joins the shop"), say("Go on: it is said here once it has."))

    def find_outcome(self) -> Answer | None:
        """Finds what came of joining, once; None: nothing new."""
        if self._joining is None or not self._joining.done():
            return None
        done, self._joining = self._joining, None
        try:
            number = done.result().station
        except Fault as fault:
            return refuse(say("{what}", what=str(fault)), AGAIN)
        except Exception:  # our own bug must not end the window
            log.exception("joining")
            return refuse(say("This PC could not join"), AGAIN)
        if number == self._ledger.station:  # the owner has chosen this one of the two
            self._ledger.forget_twin()
            return good(say("This PC alone is station {id} now", id=number), say("Work on."))
        self._number = number
        return good(say("This PC is station {id} from its next start", id=self._number), REOPEN)


REOPEN = say("Close this window and open the station again.")
