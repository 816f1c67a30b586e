"""Puts found entries in order again: by their digests as far as these hold, then as they come."""

from bisect import bisect_left
from collections.abc import Iterable

from station.ledger.codec import digest
from station.ledger.salvage import FoundEntry, Salvage
from station.ledger.sound import taken_in

NEAR = 64  # texts around the time of an entry that may come next


class Chain:
    """Entries that follow on each other, from where the history begins."""

    def __init__(self, found: Salvage) -> None:
        self.found, self.kept = found, list[FoundEntry]()
        self.number, self.link, self.at = found.begin
        timed = sorted((_time_of(piece), piece) for piece in found.loose)
        self._times, self._loose = [at for at, _ in timed], [piece for _, piece in timed]

    def go_on(self) -> None:
        """Goes on as long as the next entry is found; each is the one that its digest proves."""
        while (piece := self._find_next()) is not None:
            self.number, self.link = self.number + 1, digest(self.link, piece.id, piece.text)
            self.at = _time_of(piece) or self.at
            self.kept.append(piece._replace(number=self.number, link=self.link))

    def _find_next(self) -> FoundEntry | None:
        for piece in self.found.pieces.get(self.number + 1, ()):
            if self._proves(self.number + 1, digest(self.link, piece.id, piece.text), piece):
                return piece
        first = max(bisect_left(self._times, self.at) - NEAR, 0)
        for piece in self._loose[first : first + 3 * NEAR]:
            if self._proves(self.number + 1, digest(self.link, piece.id, piece.text), piece):
                return piece
        return None

    def _proves(self, number: int, made: bytes, piece: FoundEntry) -> bool:
        """Whether a digest stands beside the entry, or the next entry goes on from it."""
        after = self.found.pieces.get(number + 1, ())
        return made == piece.link or any(digest(made, p.id, p.text) == p.link for p in after)

    def list_rest(self) -> list[list[FoundEntry]]:
        """Lists what is found behind the end, in runs without a gap; each act once.

        An entry is an altered one where the digest before it is known and does not lead to it.
        Where that digest may be lost as well, the entry stands as behind a gap.
        """
        known, runs = {piece.id for piece in self.kept}, list[list[FoundEntry]]()
        last, links, sure = self.number, {self.link}, True
        for number in sorted(n for n in self.found.pieces if n > self.number):
            here = [p for p in self.found.pieces[number] if p.id not in known]
            if here:
                links, sure = (links, sure) if number == last + 1 else (set(), False)
                proved = self._find_carried(number, links, here)
                piece = proved or here[0]._replace(altered=sure)
                known.add(piece.id)
                if not (proved and runs) or runs[-1][-1].altered:
                    runs.append([])
                runs[-1].append(piece)
                made = {digest(link, piece.id, piece.text) for link in links}
                last, links, sure = number, {p.link for p in here} | made, proved is not None
        return _merged(runs, [p for p in self._loose if p.id not in known])

    def _find_carried(
        self, number: int, links: set[bytes], here: list[FoundEntry]
    ) -> FoundEntry | None:
        """Finds the entry that its digest proves behind one of these links."""
        ids = {piece.id for piece in here}
        every = (*here, *(p for p in self._loose if p.id in ids))
        return next((p for p in every if self._carried(number, links, p)), None)

    def _carried(self, number: int, links: Iterable[bytes], piece: FoundEntry) -> bool:
        return any(
            self._proves(number, digest(link, piece.id, piece.text), piece) for link in links
        )


def _time_of(piece: FoundEntry) -> str:
    return taken_in(piece.id, piece.text)[0].act.at


def _merged(runs: list[list[FoundEntry]], loose: list[FoundEntry]) -> list[list[FoundEntry]]:
    """The runs with loose entries between them, where their times put them; each once."""
    starts, between = [_time_of(run[0]) for run in runs], dict[int, dict[str, FoundEntry]]()
    for piece in loose:
        between.setdefault(bisect_left(starts, _time_of(piece)), {}).setdefault(piece.id, piece)
    merged = list[list[FoundEntry]]()
    for n in range(len(runs) + 1):
        merged += [list(between[n].values())] if n in between else []
        merged += runs[n : n + 1]
    return merged
