"""Puts found entries in order again: by their digests as far as these hold, then as they come."""

from bisect import bisect_left
from collections.abc import Iterable

from station.ledger.codec import digest
from station.ledger.salvage import Piece, Salvage
from station.ledger.sound import taken_in

NEAR = 64  # texts around the time of an entry that may come next


class Chain:
    """Entries that follow on each other, from where the history begins."""

    def __init__(self, found: Salvage) -> None:
        self.found, self.kept = found, list[Piece]()
        self.number, self.link, self.at = found.begin
        timed = sorted((_time_of(piece), piece) for piece in found.loose)
        self._times, self._loose = [at for at, _ in timed], [piece for _, piece in timed]

    def go_on(self) -> None:
        """Goes on as long as the next entry is found; each is the one that its digest proves."""
        while (piece := self._find_next()) is not None:
            self.number, self.link = self.number + 1, digest(self.link, piece.id, piece.text)
            self.at = _time_of(piece) or self.at
            self.kept.append(piece._replace(number=self.number, link=self.link))

    def _find_next(self) -> Piece | None:
        for piece in self.found.pieces.get(self.number + 1, ()):
            if self._proves(self.number + 1, digest(self.link, piece.id, piece.text), piece):
                return piece
        first = max(bisect_left(self._times, self.at) - NEAR, 0)
        for piece in self._loose[first : first + 3 * NEAR]:
            if self._proves(self.number + 1, digest(self.link, piece.id, piece.text), piece):
                return piece
        return None

    def _proves(self, number: int, made: bytes, piece: Piece) -> bool:
        """Whether a digest stands beside the entry, or the next entry goes on from it."""
        after = self.found.pieces.get(number + 1, ())
        return made == piece.link or any(digest(made, p.id, p.text) == p.link for p in after)

    def list_rest(self) -> list[list[Piece]]:
        """Lists what is found behind the end, in runs without a gap; each act once."""
        known, runs = {piece.id for piece in self.kept}, list[list[Piece]]()
        last, links = self.number, {self.link}
        for number in sorted(n for n in self.found.pieces if n > self.number):
            here = [p for p in self.found.pieces[number] if p.id not in known]
            if here:
                follows = number == last + 1
                piece = self._choose(number, links if follows else set(), here)
                known.add(piece.id)
                if not (follows and runs) or piece.altered or runs[-1][-1].altered:
                    runs.append([])
                runs[-1].append(piece)
                made = {digest(link, piece.id, piece.text) for link in links if follows}
                last, links = number, {p.link for p in here} | made
        return _merged(runs, [p for p in self._loose if p.id not in known])

    def _choose(self, number: int, links: set[bytes], here: list[Piece]) -> Piece:
        """The entry that its digest proves; where none is proved, the first, as an altered one."""
        ids = {piece.id for piece in here}
        for piece in (*here, *(p for p in self._loose if p.id in ids)):
            if not links or self._carried(number, links, piece):
                return piece
        return here[0]._replace(altered=True)

    def _carried(self, number: int, links: Iterable[bytes], piece: Piece) -> bool:
        return any(
            self._proves(number, digest(link, piece.id, piece.text), piece) for link in links
        )


def _time_of(piece: Piece) -> str:
    return taken_in(piece.id, piece.text)[0].act.at


def _merged(runs: list[list[Piece]], loose: list[Piece]) -> list[list[Piece]]:
    """The runs with loose entries between them, where their times put them; each once."""
    starts, between = [_time_of(run[0]) for run in runs], dict[int, dict[str, Piece]]()
    for piece in loose:
        between.setdefault(bisect_left(starts, _time_of(piece)), {}).setdefault(piece.id, piece)
    merged = list[list[Piece]]()
    for n in range(len(runs) + 1):
        merged += [list(between[n].values())] if n in between else []
        merged += runs[n : n + 1]
    return merged
