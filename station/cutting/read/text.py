"""What is looked for in a whole text before it is read line by line: units and messages."""

from __future__ import annotations

import re
from typing import NamedTuple

from station.cutting.model import MM_PER_INCH, Setting
from station.cutting.read.dialects import dialect_of
from station.cutting.read.expressions import clean

UNITS = re.compile(rb"G\s*0*\s*2\s*([01])(?!\s*\d)", re.IGNORECASE)
UNIT_WORD = re.compile(r"G0*2([01])(?:\.0*)?(?![\d.])")
REMARKS = re.compile(rb"\([^)\r\n]*\)?|;[^\r\n]*")
SCALED = re.compile(rb"[XYZIJKRQF]\s*[-+.\d\[#]", re.IGNORECASE)  # words that units scale
ENDS = re.compile(rb"\r\n|\r|\n")
MESSAGE = re.compile(rb"\(\s*MSG\s*,([^)\r\n]*)\)?([^\r\n]*)", re.IGNORECASE)
MOST_LETTERS, MOST_MESSAGES = 1000, 5


class Units(NamedTuple):
    """Whether the file names its units, mm per unit at its start, and the line if it is late.

    `late` is the line that names them after words that they scale; 0: none stands before.
    """

    said: bool
    scale: float
    late: int = 0

    @property
    def name(self) -> str:
        """Inch or mm."""
        return "inch" if self.scale == MM_PER_INCH else "mm"


def units_of(data: bytes, setting: Setting) -> Units:
    """The units that the first G20 or G21 names; remarks and deleted blocks name none."""
    dialect = dialect_of(setting.dialect)
    for found in UNITS.finditer(data):
        before = max(data.rfind(b"\n", 0, found.start()), data.rfind(b"\r", 0, found.start())) + 1
        after = ENDS.search(data, found.end())
        line = data[before : after.start() if after else len(data)][:MOST_LETTERS]
        text = clean(line.decode("latin-1"), semicolon=dialect.semicolon)
        word = UNIT_WORD.search(text)
        if word is None or (text.startswith("/") and dialect.skip_deleted):
            continue
        head = data[:before]
        late = SCALED.search(REMARKS.sub(b"", head)) is not None
        line_number = len(ENDS.findall(head)) + 1 if late else 0
        return Units(True, MM_PER_INCH if word[1] == "0" else 1.0, line_number)
    return Units(False, MM_PER_INCH if setting.units == "inch" else 1.0)


def messages(data: bytes) -> list[str]:
    """What the file tells whoever stands at the router; of several remarks in a line the last."""
    told = [m[1].decode("latin-1").strip() for m in MESSAGE.finditer(data) if b"(" not in m[2]]
    return [f"The file tells at the router: {text[:120]}" for text in told[:MOST_MESSAGES]]
