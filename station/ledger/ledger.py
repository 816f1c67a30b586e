"""The ledger: one station's history, and all that is derived from it."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from secrets import token_hex
from types import MappingProxyType
from typing import Any

from station.ledger import (
    backup,
    check,
    closing,
    kept_backups,
    pruning,
    rebuild,
    reports,
    statements,
)
from station.ledger.absorb import FOREVER
from station.ledger.history import History, Recorded, rule_for
from station.ledger.opening import disk_faults, open_sound
from station.ledger.private import make_folder
from station.ledger.progress import tell_nobody
from station.ledger.rebase import Turned
from station.ledger.reports import Chained, HistoryEntry, MovedPieces
from station.ledger.sharing import DATABASE, HELD, LEVEL, OLDER_AT, TWIN, Sharing, Verdict
from station.ledger.shop_link import SharedEntry
from station.ledger.supply import Supply
from station.ledger.talk import News, Offer
from station.ledger.undo import undo
from station.ledger.view import OpenView
from station.shop.acts import Act, Args
from station.shop.moves import Held
from station.shop.views import F, Passed, Rules, View
from station.shop.words import Say

__all__ = ["HistoryEntry", "Ledger", "Recorded"]

DRAFT = "draft"


def _random_id() -> str:
    return token_hex(8)


class Ledger:
    """The history in one file, held by this program alone.

    Opening creates the file when there is none. `site` is the shop that this PC shares with, as
    is known beside the file; `tell` is told how far mending is. Raises a `faults.Fault` with a
    sentence for the person when the surroundings do not allow it.
    """

    def __init__(
        self,
        path: Path,
        rules: Rules,
        *,
        station: str = "1",
        site: str = "",
        ids: Callable[[], str] = _random_id,
        tell: Callable[[Say], None] = tell_nobody,
    ) -> None:
        self.path = path
        self.rules = rules
        self.station = station
        self._ids = ids
        self._store = open_sound(path, station, site, tell)
        try:
            self._history = History(self._store, rules)
        except BaseException:
            self._store.close()
            raise
        # the shop for dialogues and faces
        self.view: View = OpenView(self._history.reader)
        self._handed: dict[str, str] = {}  # local values to be written with the next commit
        self._supply = Supply(self._history, station, ids, self._handed)
        self._sharing = Sharing(self._history, rules, station)
        self._sharing.renumber()
        self._is_level = False  # whether all of the shop was here once since it was opened

    # --- recording

    def record(
        self,
        act: Act[Args],
        draft: bytes | str | None = None,
        kept: Mapping[str, str] = MappingProxyType({}),
        own: str = "",
    ) -> Recorded:
        """Decides on an act and records it in one transaction with the draft and what is `kept`.

        `own` parts what one hand of this station keeps from what another does.

        A refusal records nothing. The same act again gives the same answer and no second
        entry. Raises a Fault with nothing recorded, or an OwnBug.
        """
        local = {**self._handed, **kept}
        if draft is not None:
            local[own + DRAFT] = draft if isinstance(draft, str) else draft.decode()
        rule = rule_for(self.rules, act.kind)
        done = self._history.record(act, rule, local)
        kept = self._store.values
        for key in [k for k, v in self._handed.items() if kept.get(k) == v]:
            del self._handed[key]
        return done

    def undo(self, id: str, act: Act[Any]) -> Recorded:
        """Takes an entry back by a reversing one, or answers why not."""
        with self._store.faults():
            return undo(self._history, id, act)

    def not_shared(self) -> int:
        """Acts that the shop's database has not taken yet; none on a single PC."""
        with self._store.faults():
            return int(self._store.run("SELECT COUNT(*) FROM pending").fetchone()[0])

    # --- what is this station's own

    def draft(self, own: str = "") -> str:
        """The work in hand as it was kept; empty at first."""
        return self._store.values.get(own + DRAFT, "")

    def keep(self, draft: str, own: str = "") -> None:
        """Keeps the work in hand through a power cut."""
        self.set_local(own + DRAFT, draft)

    def local(self, key: str) -> str | None:
        """A value that is this station's own."""
        return self._store.values.get(key)

    def set_local(self, key: str, value: str) -> None:
        """Sets a value that is this station's own; it is never shared."""
        self._write_local({key: value})

    def _write_local(self, changed: dict[str, str]) -> None:
        values = {**self._handed, **changed}
        with self._store.writing():
            for name, text in values.items():
                self._store.put(name, text)
        self._store.values.update(values)
        self._handed.clear()

    def take_number(self, kind: str) -> str:
        """The next number of a kind of code that prints and is not taken."""
        return self._supply.take(kind)

    # --- reading

    def facts(self, kind: type[F]) -> Iterator[F]:
        """All facts of a kind, by id."""
        return iter(self._history.reader.facts(kind))

    def balances(self) -> Iterator[Held]:
        """Every spot's quantity, the places that balance the books below zero."""
        return map(Held._make, self._store.rows(statements.BALANCES))

    def entries(self, *, after: int = 0, subject: str = "") -> Iterator[HistoryEntry]:
        """Entries in order, from behind a number, about one subject where given."""
        return reports.entries(self._store, self._history.reader, after, subject)

    def count(self) -> int:
        """How many entries there are, those not shared yet included."""
        return self._history.number + (self.not_shared() if self.shared else 0)

    def tally(self, since_hour: str, until_hour: str) -> list[Passed]:
        """Pieces moved by hour (``2026-11-25T10``, both ends included), place and part."""
        return list(self.view.passed(since_hour, until_hour))

    def flow(self, since: str, until: str) -> list[MovedPieces]:
        """Moves between two times, what was taken back left out."""
        return reports.flow(self._store, self._history.reader, since, until)

    # --- sharing

    @property
    def shared(self) -> bool:
        """Whether this station shares with others."""
        return self._history.shared

    def share_with(self, site: str) -> None:
        """From now on acts wait until the shop of this site has them."""
        self._sharing.start(site)

    def offer(self) -> Offer:
        """Where this station stands, and its oldest acts that are not shared yet."""
        return self._sharing.offer()

    @property
    def office(self) -> tuple[str, ...]:
        """The stations where people, PINs, reasons and settings are changed; none: every one."""
        return self._history.office

    def has_to_share(self) -> bool:
        """Tells whether there is an act that this station may share now."""
        return self._sharing.has_to_share()

    def hear(self, news: News) -> list[Turned]:
        """Hears what the shop tells of its stations; gives acts that do not hold any more."""
        return self._sharing.hear(news)

    @property
    def held(self) -> tuple[str, str]:
        """The station that held sharing up last and was cut off, and when; or nothing."""
        by, _, at = (self.local(HELD) or "").partition(" ")
        return by, at

    @property
    def database(self) -> str:
        """How the shop's database was last: ``old`` or ``new`` to this program; or not heard."""
        return self.local(DATABASE) or ""

    def take_news(self, news: News) -> list[Turned]:
        """Takes in what came from the shop; gives the acts that do not hold any more."""
        turned = self.take_news_until(news, FOREVER)
        assert turned is not None
        return turned

    @property
    def is_taking_in(self) -> bool:
        """Whether news is half taken in: whatever else the file is asked for puts that off."""
        return self._sharing.is_taking

    def take_news_until(
        self, news: News, until: float, *, by_groups: bool = False
    ) -> list[Turned] | None:
        """Takes in what came from the shop, until a time of `perf_counter`, as `take_news` does.

        None: it has to be called with the same news again. A scan in between finds all as it was
        before, and this begins anew. `by_groups`: acts that wait may be shared in between
        (`offer_ahead`), and what comes of that is taken in as well (`take_more`).
        """
        heard = list[Turned]()
        if not self.is_taking_in:
            self._give_up_foreign(news)
            heard = self.hear(news)
        turned = self._sharing.take(news, until, by_groups=by_groups)
        if turned is None:
            return None
        turned = heard + turned
        if news.state == "shared" and not news.more and not self._is_level:
            self._is_level = True
            if self.local(LEVEL) != self.station:
                self.set_local(LEVEL, self.station)
        self._history.note_newest()
        if changed := self._supply.settle():
            self._write_local(changed)
        return turned

    def offer_ahead(self) -> Offer | None:
        """What may be shared of news half taken in by groups; None: there are none such."""
        return self._sharing.offer_ahead()

    def take_more(self, entries: Sequence[SharedEntry]) -> bool:
        """Has news that are half taken in by groups go on with entries behind them.

        False: they are not, or are put off. Raises HistoryBroken where they do not follow.
        """
        return self._sharing.take_more(entries, self.station)

    def _give_up_foreign(self, news: News) -> None:
        """Gives numbers up that others may have, before what shows why is taken in.

        Later it would not be noticed once more.
        """
        foreign = self._sharing.foreign_of_mine(news, self.station)
        if foreign or news.state == "put back":
            told = {TWIN: self.station} if foreign and self._is_level else {}
            if foreign and not self._is_level and self.local(LEVEL) == self.station:
                told = {OLDER_AT: foreign}  # a PC that has just joined has a right not to know
            self._write_local({**self._supply.give_up(), **told})

    @property
    def older_at(self) -> str:
        """When the newest own act was done (shop-local) that this file did not know at a start.

        It is an older one that was put back, or two PCs work in turn with copies of one folder.
        """
        return self.local(OLDER_AT) or ""

    @property
    def has_twin(self) -> bool:
        """Whether another PC works under this one's number: both came of one folder.

        An older file finds acts of its own that it does not know once, at its start.
        """
        return self.local(TWIN) == self.station

    def forget_twin(self) -> None:
        """Forgets it where this PC has joined anew: no other has the password any more."""
        if self.has_twin:
            self.set_local(TWIN, "")

    def start_from(self, given: closing.Closing) -> None:
        """Begins an empty history behind a closing. Raises ClosingWrong with nothing written."""
        assert not self.count()
        begin, books = closing.opened(given)
        with self._store.writing() as connection:
            closing.keep(self._store, begin, given.books)
            rebuild.fill(connection, books)
        self._store.bound_log()
        self._history.reload()
        self._history.note_newest()

    def begins(self) -> tuple[int, str]:
        """The number and time of the entry that this history begins behind; 0: all is here."""
        number, _, at = closing.begin_of(self._store)
        return number, at

    def ask_ahead(self) -> None:
        """Asks the shop for spare numbers, where there are none."""
        self._supply.ask_ahead()

    def verdict(self, id: str) -> Verdict:
        """What became of an act: ``asking`` the shop, ``holds``, or needs a ``look``."""
        return self._sharing.verdict(id)

    def oldest_not_shared(self) -> str:
        """When the oldest act was done that is not shared yet; empty when all is shared."""
        return self._sharing.oldest()

    def chain(self, after: int) -> Iterator[Chained]:
        """Entries as they are shared, in order, from behind a number."""
        return reports.chain(self._store, after)

    def holds(self, number: int, digest: bytes) -> bool:
        """Whether this history has that digest at that number."""
        return reports.holds(self._store, number, digest)

    # --- care

    def check(self) -> list[str]:
        """What is not sound: digests, balances, derived tables. Empty: all is."""
        return check.check(self._store)

    def rebuild(self) -> None:
        """Derives every table anew from the history."""
        rebuild.rebuild(self._store)
        self._history.reload()

    def older_than(self, time: str) -> tuple[int, bytes]:
        """The last entry, with its digest, before the first of this time or later."""
        with self._store.faults():
            return pruning.older_than(self._store, time)

    def drop_until(self, number: int) -> None:
        """Drops the entries up to a number; a closing takes their place. Takes a while."""
        pruning.drop_until(self._store, number)
        self._history.reload()

    def backup(self, file: Path) -> None:
        """Writes the whole history into one file that can be restored, and proves it."""
        backup.backup(self._store, file, self._history.number, self._history.digest)

    def keep_backup(self, at: str) -> Path:
        """Keeps a backup of that time (shop-local) beside the file, and drops what is too many."""
        folder = kept_backups.folder_of(self.path)
        with disk_faults(folder):
            make_folder(folder)
        file = folder / kept_backups.name_kept(at, self.witness())
        self.backup(file)
        kept_backups.drop_too_many(folder, at)
        return file

    def hold_still(self) -> tuple[int, bytes] | None:
        """Lets the file be as it is until `go_on`, so that another process can copy it.

        Work goes on in its log. Gives where the history in the file ends; None: it cannot be, or
        is so already.
        """
        self._store.settle()
        if self.is_still or not self._store.hold_still():
            return None
        return self._history.number, self._history.digest

    @property
    def is_still(self) -> bool:
        """Whether the file is let be, for somebody who copies it."""
        return self._store.is_still

    def go_on(self) -> None:
        """Moves the log into the file again."""
        self._store.go_on()

    def list_backups(self) -> list[kept_backups.Kept]:
        """Lists the backups that are kept beside the file, the newest first."""
        return kept_backups.list_kept(kept_backups.folder_of(self.path))

    def find_backup(self, now: str) -> kept_backups.Kept | None:
        """Finds the newest backup beside the file; one of a later time proves nothing."""
        return next((one for one in self.list_backups() if one.at <= now), None)

    def newest_at(self) -> str:
        """When the newest act was done (shop-local), one that is not shared yet too; or empty."""
        return self._history.at

    def witness(self) -> str:
        """The witness of this history's end, as papers and backups bear it."""
        return kept_backups.write_witness(self._history.number, self._history.digest)

    def bears_out(self, witness: tuple[int, str]) -> bool | None:
        """Whether this history is the one that a witness is of; None where it is too old."""
        return kept_backups.bears_out(self._store, witness)

    @staticmethod
    def restore(file: Path, path: Path, site: str = "", *, another: bool = False) -> None:
        """Puts a backup in the place of a station's file, which is set aside.

        `site` is the shop that this PC shares with, if it does; `another` says that another
        shop's backup is meant. Raises NoBackup, and AnotherShop where it is not.
        """
        backup.restore(file, path, site, another=another)

    def idle(self) -> None:
        """Nothing is asked for now: moves the log into the file."""
        self._store.checkpoint()

    def hurry(self, *, on: bool) -> None:
        """Does not wait for the disk while a demo shop is built; never while people work."""
        self._store.run(f"PRAGMA synchronous={'OFF' if on else 'FULL'}")

    def close(self) -> None:
        """Closes the file."""
        try:
            if self._handed:
                self._write_local({})
        finally:
            self._store.close()
