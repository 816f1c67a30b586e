"""The compiled reader's loop over the lines of a text."""

from __future__ import annotations

import numba

from station.cutting.compiled import entry, inner
from station.cutting.read.controller_compiled import MOVES, NOTES, PAUSES, RECORD, Record, Row
from station.cutting.read.cycles_plain import BACK_BORE, MOST_REPEATS
from station.cutting.read.execute_compiled import obey
from station.cutting.read.line_compiled import NEWLINE, RETURN, scan
from station.cutting.read.reader_plain import LINE_LETTERS, LONGEST

DONE, ODD, FULL = range(3)
MOVES_ROOM, PAUSES_ROOM, NOTES_ROOM = 8, MOST_REPEATS + 2, 8  # a line's; cycles' moves aside


@inner
def _letters(s: Row, after: int) -> int:
    """How many letters the line at hand has, without what ends it."""
    while s.byte < after and s.text[after - 1] in (NEWLINE, RETURN):
        after -= 1
    return after - s.byte


@entry(numba.void(numba.from_dtype(RECORD)[::1], numba.int64))
def run(record: Record, stop: int) -> None:
    """Runs the lines in the record's text until byte `stop`, where one ends.

    ``why`` says whether a line is odd or a table full. Such a line is left as if never begun.
    """
    s: Row = record[0]
    s.why, s.need = DONE, 0
    while s.byte < stop:
        if (
            s.moves > MOVES - MOVES_ROOM
            or s.pauses > PAUSES - PAUSES_ROOM
            or s.notes > NOTES - NOTES_ROOM
        ):
            s.why = FULL
            return
        after = scan(s.byte, s)
        if s.odd or s.motion == BACK_BORE or after - s.byte > LONGEST:
            s.why = ODD
            return
        if after - s.byte > LINE_LETTERS and not s.long:
            s.long = s.line if _letters(s, after) > LINE_LETTERS else 0
        if s.worded and not (s.deleted and s.skip_deleted):
            paused, noted = s.pauses, s.notes
            obey(s)
            if s.need:
                s.why, s.pauses, s.notes = FULL, paused, noted
                return
        s.byte = after
        s.line += 1
