"""What one station shares: its side of the talk with the shop, on the file's own thread."""

import logging
from collections.abc import Sequence
from dataclasses import replace
from itertools import takewhile
from typing import Literal

from msgspec import structs

from station.ledger import closing, effects, rebase, statements
from station.ledger.absorb import Absorbing, absorb, decide_anew
from station.ledger.codec import read_body, write_body
from station.ledger.groups import AbsorbingByGroups
from station.ledger.history import OFFICE, SHOP, History, pending_row
from station.ledger.rebase import Turned
from station.ledger.rebuild import closed, fill
from station.ledger.shop_link import SharedEntry, SharedRow
from station.ledger.sound import LEFT_OUT, taken_in
from station.ledger.store import MENDED
from station.ledger.talk import ROWS, Mark, News, Offer, steps_back
from station.shop.views import Rules

log = logging.getLogger(__name__)
Verdict = Literal["", "asking", "holds", "look"]
WORKED_AS = "worked as"  # local: the number that this PC had when it was opened last
TWIN = "twin"  # local: the number under which another PC works too
LEVEL = "level"  # local: the number under which this file had all of the shop's history once
OLDER_AT = "older"  # local: the newest own act that this file did not know as it was opened
HELD = "held"  # local: the station that held sharing up last, and when
DATABASE = "database"  # local: whether the shop's is ``old`` or ``new`` to this program
GROUP = 50  # acts that are shared at once ahead of the rest
EPOCH = "epoch"  # local: how often an older day of the shop's database was put back


class Sharing:
    """Makes offers and takes news for one history."""

    def __init__(self, history: History, rules: Rules, station: str) -> None:
        self._history, self._rules, self._station = history, rules, station
        self._store = history.store
        self._taking: Absorbing | None = None  # news that were begun to be taken in
        self._found: tuple[Mark, ...] = ()  # the marks of the newest offer

    def start(self, site: str, epoch: int = 1) -> None:
        """From now on acts wait until the shop has them."""
        values = {SHOP: site, EPOCH: str(epoch), WORKED_AS: self._station}
        with self._store.writing():
            for key, value in values.items():
                self._store.put(key, value)
        self._store.values.update(values)
        self._history.share(shared=True)

    def offer(self, limit: int = ROWS) -> Offer:
        """Where this station stands, and its oldest acts that are not shared yet."""
        mended = self._store.values.get(MENDED)  # they are decided again first
        acts = [] if mended else rebase.waiting(self._history, limit)
        head = Mark(self._history.number, self._history.digest)
        return self._offer(head, acts)._replace(marks=self._marks())

    def offer_ahead(self) -> Offer | None:
        """What may be shared of news half taken in by groups; None: there are none such.

        It asks the file for nothing, so it puts nothing off.
        """
        taking = self._taking
        if not isinstance(taking, AbsorbingByGroups) or taking.is_put_off:
            return None
        last = taking.entries[-1]
        return self._offer(Mark(last.number, last.digest), taking.list_ready(GROUP))

    def _offer(self, head: Mark, acts: Sequence[rebase.Waiting]) -> Offer:
        """These acts, behind a place of the history."""
        rows = self._rows(acts)
        return Offer(
            site=self._store.values.get(SHOP, ""),
            epoch=self._epoch(),
            format=statements.FORMAT,
            head=head,
            reads=tuple(sorted(frozenset[str]().union(*(a.reads for a in acts[: len(rows)])))),
            rows=rows,
        )

    def _rows(self, acts: Sequence[rebase.Waiting]) -> tuple[SharedRow, ...]:
        """The acts as they are pushed, up to the first of another station.

        After an older day was put back that one is brought again by its own, or by the office.
        """
        office = self._history.office
        brings_all = not office or self._station in office
        return tuple(
            SharedRow(act.id, act.body.verdict, tuple(effects.writes(act.body)), act.text)
            for act in takewhile(lambda a: brings_all or self._is_own(a), acts)
        )

    def _is_own(self, act: rebase.Waiting) -> bool:
        return act.body.act.station == self._station

    def has_to_share(self) -> bool:
        """Tells whether there is an act that this station may share now."""
        return bool(self._rows(rebase.waiting(self._history, 1)))

    def renumber(self) -> None:
        """What is not shared yet goes along where this PC has joined under another number."""
        was = self._store.values.get(WORKED_AS)
        if not self._history.shared or was == self._station:
            return
        with self._store.writing():
            for act in rebase.waiting(self._history) if was else ():
                if act.body.act.station == was:
                    mine = replace(act.body.act, station=self._station)
                    body = structs.replace(act.body, act=mine)
                    self._store.run(statements.DROP_PENDING, (act.seq,))
                    row = pending_row(act.seq, body, write_body(body), act.reads)
                    self._store.run(statements.ADD_PENDING, row)
            self._store.put(WORKED_AS, self._station)
            self._store.put(TWIN, "")
        self._store.values |= {WORKED_AS: self._station, TWIN: ""}
        self._history.reader.forget()

    def hear(self, news: News) -> list[Turned]:
        """Hears which stations are the office's, which was cut off, and how old the database is.

        Gives the acts that do not hold any more.
        """
        if news.office is None:
            return []
        told = {
            OFFICE: " ".join(news.office),
            HELD: " ".join(news.held).strip(),
            DATABASE: "old" if news.is_old else "new",
        }
        values = self._store.values
        if all(values.get(key, "") == value for key, value in told.items()):
            return []
        same = news.office == self._history.office
        with self._store.writing():
            for key, value in told.items():
                self._store.put(key, value)
        values.update(told)
        self._history.reload()
        return [] if same else decide_anew(self._history, self._rules)

    @property
    def is_taking(self) -> bool:
        """Whether news was begun to be taken in, and nothing has put that off."""
        return self._taking is not None and not self._taking.is_put_off

    def take_more(self, entries: Sequence[SharedEntry], station: str) -> bool:
        """Has news that are half taken in by groups go on with entries behind them.

        Not where there are acts of this station that it does not know: all is begun anew then.
        Raises HistoryBroken where they do not follow.
        """
        taking = self._taking
        if not isinstance(taking, AbsorbingByGroups) or taking.is_put_off:
            return False
        if any(e.id not in taking.known for e in _find_mine(entries, station)):
            self._store.settle()
            return False
        taking.grow(entries)
        return True

    def take(self, news: News, until: float, *, by_groups: bool = False) -> list[Turned] | None:
        """Takes the news in, until a time of `perf_counter`; None: it has to go on.

        Gives the acts of this station that do not hold any more. `by_groups`: those that hold
        may be shared ahead of the rest.
        """
        self._history.reached = news.state in ("shared", "behind", "put back", "refused")
        if news.state == "put back":
            self._step_back(news.common, news.epoch)
            return []
        if not self._store.values.get(MENDED):
            return self._take_by(news.entries, until, by_groups=by_groups)
        absorb(self._history, self._rules, news.entries, trusted=True)
        return [] if news.more or news.state not in ("shared", "behind") else self._mended()

    def _take_by(
        self, entries: Sequence[SharedEntry], until: float, *, by_groups: bool
    ) -> list[Turned] | None:
        """Takes entries in a step further, or begins to."""
        taking, self._taking = self._taking, None  # where it fails, it is over
        if taking is not None and not taking.is_put_off and taking.entries != entries:
            taking.put_off()
        if taking is None or taking.is_put_off:
            kind = AbsorbingByGroups if by_groups else Absorbing
            taking = kind(self._history, self._rules, entries)
        turned = taking.step(until)
        if turned is None:
            self._taking = taking
        return turned

    def _mended(self) -> list[Turned]:
        """All that was missing after a damage is here again: everything is derived anew."""
        with self._store.writing():
            turned = self._derive_again()
            self._store.put(MENDED, "")
        self._store.values[MENDED] = ""
        return turned

    def foreign_of_mine(self, news: News, station: str) -> str:
        """When the newest act of this station was done that comes and that it does not know.

        Empty: it knows all. Else its file is an older one, or another PC has a copy of it.
        """
        if not news.entries or not self._history.shared:
            return ""
        mine = _find_mine(news.entries, station)
        known = {act.id for act in rebase.waiting(self._history)} if mine else set[str]()
        strange = (e for e in mine if e.id not in known)
        return max((taken_in(e.id, e.body)[0].act.at for e in strange), default="")

    def verdict(self, id: str) -> Verdict:
        """What became of an act; nothing where none was recorded."""
        body = self._history.reader.body(id)
        if body is None:
            return ""
        if body.verdict:
            return "look"
        return "asking" if self._store.rows(statements.PENDING_BY_ID, (id,)) else "holds"

    def oldest(self) -> str:
        """When the oldest act was done that is not shared yet; empty when all is shared."""
        acts = rebase.waiting(self._history, 1)
        return acts[0].body.act.at if acts else ""

    def _epoch(self) -> int:
        return int(self._store.values.get(EPOCH, "1"))

    def _marks(self) -> tuple[Mark, ...]:
        """Older places of this history, the newest first, down to where it begins.

        Read anew only when an end has moved: a digest stands for all before it.
        """
        head = Mark(self._history.number, self._history.digest)
        begin = Mark(*closing.begin_of(self._store)[:2])
        if (self._found[:1], self._found[-1:]) != ((head,), (begin,)):
            found = [(n, self._store.rows(statements.LINK, (n,))) for n in self._numbers()]
            self._found = (*(Mark(n, rows[0][0]) for n, rows in found if rows), begin)
        return self._found

    def _numbers(self) -> list[int]:
        head = self._history.number
        return [head, *steps_back(head)] if head else []

    def _step_back(self, common: Mark, epoch: int) -> None:
        """Entries behind a common place become acts to be shared again; the tables stay."""
        acts = rebase.waiting(self._history)
        rows = self._store.rows(statements.AFTER, (common.number,))
        with self._store.writing():
            self._store.run(statements.DROP_AFTER, (common.number,))
            for act in acts:
                self._store.run(statements.DROP_PENDING, (act.seq,))
            back = [(text, effects.writes(read_body(text))) for k, text in rows if k != LEFT_OUT]
            for text, reads in (*back, *((act.text, act.reads) for act in acts)):
                row = pending_row(None, read_body(text), text, set(reads))
                self._store.run(statements.ADD_PENDING, row)
            if len(back) < len(rows):
                self._derive_again()
            self._store.put(EPOCH, str(epoch))
        self._store.values[EPOCH] = str(epoch)
        self._history.reload()
        log.warning(
            "the shop was put back to entry %s; %s are shared again", common.number, len(rows)
        )

    def _derive_again(self) -> list[Turned]:
        """What was left out is gone, and with it what was said of it: all stands on the rest."""
        fill(self._store.connection, closed(self._store))
        self._history.reader.forget()
        acts = rebase.waiting(self._history)
        return rebase.run_out(rebase.decide_again(self._history, self._rules, acts))


def _find_mine(entries: Sequence[SharedEntry], station: str) -> list[SharedEntry]:
    """Finds the entries that name a station as their own."""
    named = f'"station":"{station}"'
    found = [e for e in entries if named in e.body]
    return [e for e in found if taken_in(e.id, e.body)[0].act.station == station]
