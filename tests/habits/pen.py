"""Writes moves of a bit as lines of a cut file, in one post-processor's habits."""

from dataclasses import dataclass, field

from tests.habits.loops import Loop, Point, Step


@dataclass(frozen=True)
class Style:
    """Says how one post-processor writes, and where its zeroes are."""

    inch: bool = False
    numbers: bool = False
    lower: bool = False
    percent: bool = False
    semicolon: bool = False
    radii: bool = False
    absolute_centres: bool = False
    repeat_words: bool = False
    tight: bool = False
    centre: bool = False
    spoilboard: bool = False
    digits: int = 4


@dataclass
class Pen:
    """Writes a file: x, y in mm from the sheet's lower left, z in mm above its face."""

    style: Style
    sheet: Point
    thick: float
    lines: list[str] = field(default_factory=list)
    at: Point | None = None
    z: float | None = None
    word: str = ""
    fed: float = 0.0

    @property
    def next_line(self) -> int:
        """Gives the number, from 1, of the line that comes next."""
        return len(self.lines) + 1

    def note(self, text: str) -> None:
        """Writes a remark."""
        self.lines.append(f"; {text}" if self.style.semicolon else f"({text})")

    def say(self, text: str) -> None:
        """Writes a line of words as they are."""
        number = f"N{10 * len(self.lines) + 10} " if self.style.numbers else ""
        text = number + (text.replace(" ", "") if self.style.tight else text)
        self.lines.append(text.lower() if self.style.lower else text)

    def format(self, value: float) -> str:
        """Writes a length in the file's units."""
        text = f"{value / 25.4 if self.style.inch else value:.{self.style.digits}f}".rstrip("0")
        return text if text not in ("-0.", "-.") else "0."

    def _write(self, word: str, words: str, feed: float = 0.0) -> None:
        if self.style.repeat_words or word != self.word or word in ("G2", "G3"):
            words = f"{word} {words}"
        self.word = word
        if feed and feed != self.fed:
            words += f" F{self.format(feed)}"
            self.fed = feed
        self.say(words)

    def _place(self, p: Point) -> str:
        shift = self.sheet if self.style.centre else (0.0, 0.0)
        return f"X{self.format(p[0] - shift[0] / 2)} Y{self.format(p[1] - shift[1] / 2)}"

    def _height(self, z: float) -> str:
        return f"Z{self.format(z + (self.thick if self.style.spoilboard else 0.0))}"

    def jump(self, p: Point) -> None:
        """Goes to a place in rapid."""
        self._write("G0", self._place(p))
        self.at = p

    def lift(self, z: float) -> None:
        """Goes to a height in rapid."""
        self._write("G0", self._height(z))
        self.z = z

    def plunge(self, z: float, feed: float = 600.0) -> None:
        """Goes straight down."""
        self._write("G1", self._height(z), feed)
        self.z = z

    def cut(self, step: Step, z: float, feed: float = 2400.0) -> None:
        """Cuts one step, with the height changing evenly to z."""
        words = self._place(step.end)
        if self.z is None or abs(z - self.z) > 1e-9:
            words += f" {self._height(z)}"
        self.z, self.at = z, step.end
        if not step.centre:
            self._write("G1", words, feed)
            return
        word = "G3" if step.left else "G2"
        if self.style.radii and step.turn < 3.1:
            self._write(word, f"{words} R{self.format(step.radius)}", feed)
            return
        cx, cy = step.centre
        if not self.style.absolute_centres:
            cx, cy = cx - step.start[0], cy - step.start[1]
        elif self.style.centre:
            cx, cy = cx - self.sheet[0] / 2, cy - self.sheet[1] / 2
        self._write(word, f"{words} I{self.format(cx)} J{self.format(cy)}", feed)

    def cut_all(self, way: Loop, z: float, feed: float = 2400.0) -> None:
        """Cuts a way at one height, or down to it evenly along its length."""
        start, whole, done = self.z, sum(s.length for s in way), 0.0
        for step in way:
            done += step.length
            self.cut(step, z if start is None else start + (z - start) * done / whole, feed)
