"""Mending a damaged file: a new one with all that can still be read takes its place.

The damaged file, its log and every copy stay beside it. A single PC's history goes on behind what
is missing: what comes after it is taken in, and a look is asked for. Where PCs share, entries
that are missing come from the shop; only acts that it does not have yet can be lost.
"""

from collections.abc import Iterable
from pathlib import Path
from secrets import token_hex

from station.ledger import closing, statements
from station.ledger.books import Books, instead
from station.ledger.bridge import MendHistory, ask_about, bridge, tell
from station.ledger.chaining import Chain
from station.ledger.codec import Body, digest, read_body, write_body
from station.ledger.effects import entry_row, list_text, rests_on
from station.ledger.faults import Mended
from station.ledger.history import SHOP, pending_row
from station.ledger.last_recorded import Newest, read_newest
from station.ledger.numbers import LEAP, LEAPING
from station.ledger.progress import Progress
from station.ledger.rebuild import fill
from station.ledger.salvage import FoundEntry, Salvage, Unshared, gather, list_backups, read_backup
from station.ledger.sound import taken_in
from station.ledger.store import LAYOUT_NAME, MENDED, Store
from station.ledger.supply import ASKED, OWN, SPARE
from station.shop.acts import Act


def save(path: Path, new: Path, station: str, site: str, progress: Progress) -> Mended:
    """Saves what can be read of a file and of what lies beside it into a new one.

    `site`: the shop that this PC shares with, as far as that is known beside the file.
    """
    found = gather(path, new, progress)
    chain = Chain(found)
    chain.go_on()
    for backup in list_backups(path):
        read_backup(found, backup, chain.number, chain.link)
        if not chain.kept and found.begin.number:
            chain = Chain(found)
        chain.go_on()
    new.unlink(missing_ok=True)
    store = Store(new)
    try:
        with store.writing():
            mended = Saving(store, found, chain, read_newest(path), station).save(site)
    finally:
        store.close()
    return mended


class Saving:
    """What is saved, while it is written into the new file."""

    def __init__(
        self, store: Store, found: Salvage, chain: Chain, newest: Newest, station: str
    ) -> None:
        self._store, self._found, self._chain = store, found, chain
        self._newest, self._station = newest, station
        self._books = Books()
        self._number, self._link, self._at = found.begin

    def save(self, site: str) -> Mended:
        """Writes all of it; gives what came of it."""
        begin, books = self._found.begin, self._found.books
        if begin.number:
            _, self._books = closing.opened(closing.Closing(begin.number, begin.digest, books))
            closing.keep(self._store, begin, books)
        for piece in self._chain.kept:
            self._add(piece)
        self._put_local()
        site = self._found.local.get(SHOP) or site
        mended = self._save_shared() if site else self._save_rest()
        fill(self._store.connection, self._books)
        return mended

    def _put_local(self) -> None:
        """Local values as they were; papers may bear later numbers than they tell."""
        for key, value in self._found.local.items():
            if not key.startswith((OWN, SPARE, ASKED)):
                self._store.put(key, value)
        self._store.put(LEAP, ",".join(LEAPING))
        self._store.put(MENDED, "yes")
        self._store.put(LAYOUT_NAME, str(statements.LAYOUT))

    def _add(self, piece: FoundEntry) -> None:
        """Takes an entry in; one that does not hold or fit keeps its place and needs a look."""
        self._found.progress.save_one(len(self._found.pieces))
        body, why = taken_in(piece.id, piece.text, self._at)
        self._at = body.act.at
        if piece.altered and not why:  # its text says what nobody did, maybe
            body = ask_about(self._make_act(MendHistory(until=self._at, lost=0)), body)
            piece = piece._replace(text=write_body(body))
        if why := self._books.take(body, why):
            body = instead(body, why)
        self._write(body, piece.text)

    def _write(self, body: Body, text: str) -> None:
        self._number, self._link = self._number + 1, digest(self._link, body.act.id, text)
        row = entry_row(self._number, body, text, self._link)
        self._store.run(statements.ADD_ENTRY, row)

    # --- a PC of its own

    def _save_rest(self) -> Mended:
        """Goes on behind what is missing, as often as anything is."""
        first, kept = self._number, len(self._chain.kept)
        runs = self._chain.list_rest()
        counted = max(self._newest.entries, *(run[-1].number for run in runs), 0)
        lost = max(counted - first - sum(map(len, runs)), 0) if counted else -1
        gap = MendHistory()
        for run in runs:
            bodies = [taken_in(piece.id, piece.text, self._at)[0] for piece in run]
            since = gap.since or self._at
            gap = MendHistory(since=since, until=bodies[0].act.at, lost=lost)
            if not run[0].altered:
                self._bridge(gap, bodies)
            for piece in run:
                self._add(piece)
                kept += 1
        if lost and not (gap.since and self._is_there(self._newest.id, runs)):
            gap = MendHistory(since=gap.since or self._at, until=self._newest.at, lost=lost)
            self._bridge(gap, [])
        lost = gap.lost if gap.since or gap.until else 0
        return Mended(self._found.begin.number + kept, lost, gap.since, gap.until)

    def _is_there(self, id: str, runs: list[list[FoundEntry]]) -> bool:
        """Tells whether an act is among those that were saved."""
        saved = (piece.id for pieces in (self._chain.kept, *runs) for piece in pieces)
        return bool(id) and id in saved

    def _bridge(self, args: MendHistory, behind: list[Body]) -> None:
        body = bridge(self._make_act(args), self._books, behind)
        assert not self._books.take(body), "a bridge fits"
        self._write(body, write_body(body))

    def _make_act(self, args: MendHistory) -> Act[MendHistory]:
        at = args.until or args.since or "2000-01-01T00:00:00"
        return Act(id=token_hex(8), kind=args.kind, at=at, station=self._station, args=args)

    # --- one that shares

    def _save_shared(self) -> Mended:
        """Keeps the acts that the shop may not have yet; all else comes from it."""
        known = {piece.id for piece in self._chain.kept}
        waiting = [w for w in self._list_waiting() if w.id not in known]
        newest, there = self._newest, known | {w.id for w in waiting}
        recent = [w for w in waiting if read_body(w.text).act.at >= newest.oldest]
        lost = max(newest.pending - len(recent), 0)
        if not lost and newest.id not in there:
            lost = -1
        for kept in waiting:
            self._wait(read_body(kept.text), kept.text, kept.reads)
        if not lost:
            return Mended(self._number + len(waiting))
        since = newest.oldest or self._at
        args = MendHistory(since=min(since, newest.at or since), until=newest.at, lost=lost)
        act = self._make_act(args)
        body = bridge(act, self._books, [], verdict=str(tell(args)))
        self._wait(body, write_body(body), "[]")
        return Mended(self._number + len(waiting), lost, args.since, args.until)

    def _list_waiting(self) -> Iterable[Unshared]:
        """Lists the acts of this station that may not be shared, rows first, each once."""
        acts = dict(self._found.waiting)
        rest = (piece for run in self._chain.list_rest() for piece in run if not piece.altered)
        for piece in rest:
            body, why = taken_in(piece.id, piece.text)
            if not why and body.act.station == self._station:
                names = list_text(sorted(rests_on(body)))
                acts.setdefault(piece.id, Unshared(piece.id, names, piece.text))
        return [act for act in acts.values() if not taken_in(act.id, act.text)[1]]

    def _wait(self, body: Body, text: str, reads: str) -> None:
        """Lets an act wait for the shop; what it stands on may be missing, so all is trusted."""
        self._books.take(body, trusted=True)
        row = pending_row(None, body, text, frozenset())
        self._store.run(statements.ADD_PENDING, (*row[:3], reads, row[4]))
