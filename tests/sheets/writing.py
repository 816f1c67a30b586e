"""Writes steps as RS-274 text in one post-processor's habits, and notes each step's lines."""

import re
from collections.abc import Container, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import acos, ceil, pi, tau
from random import Random

from tests.sheets.manners import Manner
from tests.sheets.shapes import Seg, cut_seg, measure_seg
from tests.sheets.strokes import Heights, RouterStep

SPEEDS = (16000, 18000, 20000, 22000, 24000)


@dataclass
class Text:
    """The text of a cut file, and for each step its first and last line (from 1)."""

    text: str
    lines: list[tuple[int, int]]


@dataclass
class TextWriter:
    """Writes blocks; knows what the router would know: where it stands and what is modal."""

    rng: Random
    manner: Manner
    thickness: float
    size: tuple[float, float]
    bits: Sequence[float]
    heights: Heights
    rows: list[str] = field(default_factory=list)
    at: tuple[int | None, int | None] = (None, None)  # in the file's smallest steps
    z: int | None = None
    motion: str = ""
    rate: str = ""
    cycle: bool = False
    bottom: str = ""  # Z of the cycle that is on
    relative: bool = False
    skipping: bool = False
    shown: dict[int, str] = field(default_factory=dict)
    rates: dict[float, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        manner = self.manner
        self.inch = manner.units == "inch"
        self.unit = 25.4 if self.inch else 1.0
        self.places = self.rng.choice([4, 5]) if self.inch else self.rng.choice([3, 3, 4, 6])
        if manner.arcs == "chords" and not self.inch and self.rng.random() < 0.4:
            self.places = 2
        self.scale = 10**self.places / self.unit
        self.raised = self.thickness if manner.zero == "bed" else 0.0
        self.speed = self.rng.choice(SPEEDS)
        self.tools = self.rng.sample(range(1, 13), 3) if self.rng.random() < 0.4 else [1, 2, 3]
        self.number = 0
        self.chord = self.rng.choice([0.01, 0.02, 0.05])

    # --- blocks

    def block(self, *words: str) -> None:
        """Writes one block of words."""
        manner = self.manner
        made = words
        if manner.words == "G01 X":
            made = [f"{w[0]}0{w[1:]}" if w[0] in "GM" and len(w) == 2 else w for w in made]
        if manner.words == "G1 X 0":
            made = [f"{w[0]} {w[1:]}" if w[0] in "XYZ" else w for w in made]
        row = ("" if manner.words == "G1X" else " ").join(made)
        if manner.case == "lower":
            row = row.lower()
        step = {"by 1": 1, "by 10": 10}.get(manner.numbers, 0)
        if step:
            self.number += step
            row = ("n" if manner.case == "lower" else "N") + f"{self.number % 100000} {row}"
        self.rows.append(f"/{row}" if self.skipping else row)
        if manner.breaks == "blank lines" and self.rng.random() < 0.06:
            self.rows.append("")

    def remark(self, text: str) -> None:
        """Writes a remark in the file's own way."""
        self.rows.append(f"; {text}" if self.manner.remark == "; straight" else f"({text})")

    def show(self, count: int) -> str:
        """Gives a number of the file's smallest steps in the file's decimals."""
        text = self.shown.get(count)
        if text is None:
            text = f"{count / 10**self.places:.{self.places}f}"
            if self.manner.decimals != "fixed":
                text = text.rstrip("0")
                text = text.rstrip(".") if self.manner.decimals == "trimmed" else text
            if self.manner.decimals == "no zero":
                text = re.sub(r"^(-?)0\.(?=\d)", r"\1.", text)
            self.shown[count] = text
        return text

    def count(self, mm: float) -> int:
        """Gives a length in the file's smallest steps."""
        return round(mm * self.scale)

    def value(self, mm: float) -> str:
        """Gives a length as it is written."""
        return self.show(round(mm * self.scale))

    def rate_word(self, feed: float) -> str:
        """Gives the word of a feed in mm/min."""
        return f"F{self.show(round(feed / self.unit, 1 if self.inch else 0) * 10**self.places)}"

    # --- moves

    def move(self, code: str, to: complex | None, z: float | None, feed: float = 0.0,
             centre: complex | None = None, radius: float = 0.0) -> None:  # fmt: skip
        """Writes one move, as far as something changes."""
        x, y, up = self.at[0], self.at[1], self.z
        i, j = x or 0, y or 0
        if to is not None:
            x, y = round(to.real * self.scale), round(to.imag * self.scale)
        if z is not None:
            up = round((z + self.raised) * self.scale)
        if centre is None and (x, y) == self.at and up == self.z:
            return
        words = self._axes(x, y, up, always=centre is not None and not radius)
        if radius:
            words.append(f"R{self.value(radius)}")
        elif centre is not None:
            words += self._centre(centre, i, j)
        if feed:
            rate = self.rates.get(feed) or self.rates.setdefault(feed, self.rate_word(feed))
            again = self.manner.modal != "modal" and self.rng.random() < 0.3
            if rate != self.rate or again:
                words.append(rate)
            self.rate = rate
        if self.manner.modal != "modal" or code != self.motion:
            words.insert(0, code)
        self.motion = code
        self.block(*words)
        self.at, self.z = (x, y), up

    def _centre(self, centre: complex, i: int, j: int) -> list[str]:
        """Gives the words of an arc's centre, from where it begins."""
        pairs = (
            ("I", round(centre.real * self.scale) - i),
            ("J", round(centre.imag * self.scale) - j),
        )
        return [a + self.show(n) for a, n in pairs if n or self.manner.modal != "modal"]

    def _axes(self, x: int | None, y: int | None, z: int | None, *, always: bool) -> list[str]:
        """Gives the axis words of a move; `always` gives X and Y that stay too."""
        words = []
        every = self.manner.modal == "all axes"
        old = (*self.at, self.z)
        for letter, new, before in zip("XYZ", (x, y, z), old, strict=True):
            if new is not None and (new != before or every or (always and letter != "Z")):
                words.append(letter + self.show(new - (before or 0) if self.relative else new))
        return words

    def rapid(self, to: complex, z: float) -> None:
        """Writes a rapid: up before across, across before down."""
        if self.z is None or (z + self.raised) * self.scale < self.z - 0.5:
            self.move("G0", to, None)
            self.move("G0", None, z)
        else:
            self.move("G0", None, z)
            self.move("G0", to, None)

    def cut(self, step: RouterStep, begin: complex, above: float) -> None:
        """Writes a line or an arc at feed."""
        if not step.sweep:
            self.move("G1", step.to, step.z, step.feed)
            return
        whole, radius = Seg(begin, step.to, step.centre, step.sweep), abs(begin - step.centre)
        pieces = self._split_arc(whole)
        count = len(pieces)
        for k, piece in enumerate(pieces):
            z = above + (step.z - above) * (k + 1) / count
            if self.manner.arcs == "chords":
                self.move("G1", piece.b, z, step.feed)
            else:
                code = "G3" if step.sweep > 0 else "G2"
                r = radius if self.manner.arcs == "radius" else 0.0
                self.move(code, piece.b, z, step.feed, centre=step.centre, radius=r)

    def split(self, whole: Seg) -> list[Seg]:
        """Gives the segments that a segment is written as, their ends as they are rounded."""
        if self.manner.arcs != "chords":
            return [whole]
        pieces = self._split_arc(whole) if whole.sweep else [whole]
        return [Seg(self._round(piece.a), self._round(piece.b)) for piece in pieces]

    def _round(self, point: complex) -> complex:
        x, y = self.count(point.real), self.count(point.imag)
        return complex(x, y) / self.scale

    def _split_arc(self, whole: Seg) -> list[Seg]:
        length = measure_seg(whole)
        count = self._count_pieces(whole.sweep, abs(whole.a - whole.centre))
        return [cut_seg(whole, length * k / count, length * (k + 1) / count) for k in range(count)]

    def _count_pieces(self, sweep: float, radius: float) -> int:
        turn = abs(sweep)
        if self.manner.arcs == "centre":
            return 1 if turn < tau + 1e-6 else 2
        if self.manner.arcs == "two halves":
            return ceil(turn / pi - 1e-6)
        if self.manner.arcs == "quarters":
            return ceil(turn / (pi / 2) - 1e-6)
        if self.manner.arcs == "radius":
            return ceil(turn / (tau / 3) - 1e-6)
        most = 2 * acos(max(1 - self.chord / max(radius, 0.1), 0.5))
        quarters = max(1, ceil(turn / (pi / 2) - 1e-6))
        return quarters * max(1, ceil(turn / quarters / most))

    def drill(self, step: RouterStep) -> None:
        """Writes a drilled hole: a cycle, or its moves."""
        low, back = 1.0, self.heights.between
        if self.z is not None:
            back = self.z / self.scale - self.raised
        if self.manner.cycles == "moves" or self.z is None:
            self.rapid(step.to, back)
            self.move("G0", None, low)
            self.move("G1", None, step.z, step.feed)
            self.move("G0", None, back)
            return
        x, y = self.count(step.to.real), self.count(step.to.imag)
        words = self._axes(x, y, None, always=True)
        self.at = (x, y)
        z, r = (self.value(v + self.raised) for v in (step.z, low))
        if self.cycle:
            self.block(*words, *([f"Z{z}"] if z != self.bottom else []))  # a deeper hole says so
            self.bottom = z
            return
        self.bottom = z
        peck = [f"Q{self.value(2.0)}"] if self.manner.cycles == "G83" else []
        self.rate, self.motion, self.cycle = self.rate_word(step.feed), self.manner.cycles, True
        self.block("G98", self.manner.cycles, *words, f"Z{z}", f"R{r}", *peck, self.rate)

    def end_cycle(self) -> None:
        """Ends a drilling cycle."""
        if self.cycle:
            self.block("G80")
            self.cycle, self.motion = False, ""

    # --- words around the moves

    def begin(self) -> None:
        """Writes the head of the file."""
        manner = self.manner
        if manner.head in {"percent", "number"}:
            self.rows.append("%")
        if manner.head == "number":
            self.rows.append(f"O{self.rng.randint(1, 9999):04d}")
        if manner.head == "talkative" and manner.remark != "none":
            self._tell()
        if manner.told == "list of bits":
            for wide, tool in zip(self.bits, self.tools, strict=False):
                self.remark(self._name(wide, tool))
        self.block("G20" if self.inch else "G21", "G90", "G17")
        if self.rng.random() < 0.5:
            self.block(*self.rng.choice([("G40", "G49", "G80"), ("G54",), ("G94",), ("G64",)]))
        self._retract()

    def _name(self, wide: float, tool: int) -> str:
        if self.manner.bits == "three, V" and tool == self.tools[2]:
            return self.rng.choice([f"T{tool} 60 DEG V {wide:g} MM", f"V bit 60 deg, {wide:g}mm"])
        return name_bit(self.rng, self.manner.remark, wide, tool)

    def _tell(self) -> None:
        self.remark(self.rng.choice(["WEAVING TOOLS", "shuttles and combs", "order of the week"]))
        w, h = self.size
        told = [f"SHEET {w:g} X {h:g} X {self.thickness:g} MM", f"{self.thickness:g} mm birch ply"]
        self.remark(self.rng.choice(told))
        self.remark(f"Z0 {'ON SPOILBOARD' if self.manner.zero == 'bed' else 'ON TOP FACE'}")

    def change(self, step: RouterStep, *, first: bool) -> None:
        """Has the next bit put in."""
        if not first:
            self.block("M5")
            if step.text != "low":
                self._retract()
        wide, tool = self.bits[step.bit], self.tools[step.bit]
        told = self._name(wide, tool)
        how = self.manner.change
        if told and self.manner.told != "list of bits" and not (how == "message" and not first):
            self.remark(told)
        if how in {"T M6", "next T", "G43"}:
            self.block(f"T{tool}", "M6")
            if how == "next T" and step.bit:
                self.block(f"T{self.tools[step.bit - 1]}")
        elif how == "M6 T":
            self.block("M6", f"T{tool}")
        elif not first:
            if how == "message":
                self.rows.append(f"(MSG, {told or 'next bit'})")
            self.block("M0")

    def _retract(self) -> None:
        if self.manner.retract == "safe":
            return
        if self.manner.retract == "G53":
            self.block("G53", "G0", "Z0")
            self.motion = "G0"
        else:
            self.block("G91", self.manner.retract, "Z0")
            self.block("G90")
            self.motion = ""
        self.z = None

    def start(self) -> None:
        """Starts the spindle."""
        habit, speed = self.manner.spindle, f"S{self.speed}"
        self.block(*((speed, "M3") if habit == "S M3" else ("M3", speed)))
        if habit == "dwell":
            self.block("G4", "P" + self.rng.choice(["2", "3.", "5"]))
        if habit == "extraction":
            self.block(self.rng.choice(["M7", "M8"]))

    def halt(self) -> None:
        """Writes the end of the file."""
        self.end_cycle()
        if self.relative:
            self.block("G90")
            self.relative = False
        if self.manner.spindle == "extraction":
            self.block("M9")
        self.block("M5")
        if self.manner.end == "/M1":
            self.rows.append("/M1")
        self._retract()
        if self.manner.end == "home M30":
            self.block("G0", "X0", "Y0")
        self.block("M2" if self.manner.end == "M2" else "M30")
        if self.manner.head in {"percent", "number"}:
            self.rows.append("%")
        if self.manner.end == "rubbish":
            self.rows += ["", "end of the file - 3 sheets of it", "X1 Y1 Z-30"][
                : self.rng.randint(1, 2)
            ]

    # --- all of it

    def write(self, steps: Sequence[RouterStep], skipped: Container[int | None] = ()) -> Text:
        """Writes all steps; those of skipped lines behind a slash."""
        self.begin()
        spans: list[tuple[int, int]] = []
        here, z, changed, told = 0j, self.heights.safe, False, None
        for step in steps:
            if self.manner.told == "operations" and step.line != told:
                self._tell_line(step)
            told = step.line
            first = len(self.rows) + 1
            self._skip(step.line in skipped)
            if step.kind != "drill":
                self.end_cycle()
            if step.kind == "feed":
                self.cut(step, here, z)
            else:
                self._write_other(step, first=not changed)
            changed = changed or step.kind == "change"
            if step.kind in {"rapid", "feed"}:
                here, z = step.to, step.z
            spans.append((min(first, len(self.rows)), len(self.rows)))
        end = "\r\n" if self.manner.breaks == "CRLF" else "\n"
        return Text(end.join(self.rows) + end, spans)

    def _write_other(self, step: RouterStep, *, first: bool) -> None:
        """Writes a step that is no cut; `first` is before the first bit is in."""
        if step.kind == "rapid":
            self.rapid(step.to, step.z)
        elif step.kind == "drill":
            self.drill(step)
        elif step.kind == "change":
            self.change(step, first=first)
        elif step.kind == "halt":
            self.halt()
        elif step.kind == "start":
            if step.text != "off":
                self.start()
            self._go_up()

    def _tell_line(self, step: RouterStep) -> None:
        """Writes what is cut next, at times with a size that is no bit's."""
        if step.line is not None and self.rng.random() < 0.5:
            deep = f"{self.rng.choice([1, 1.5, 2, 4])} mm deep"
            names = [f"contour {step.line + 1}", "profile", f"part {step.line}", deep]
            self.remark(self.rng.choice([*names, "lead 5 mm", "tabs 8 x 2 mm", "stepdown 3mm"]))

    def _skip(self, skipping: bool) -> None:  # noqa: FBT001
        """Begins or ends what the router may skip: nothing said in it holds after it."""
        if skipping != self.skipping:
            self.end_cycle()
            self.at, self.z, self.motion, self.rate = (None, None), None, "", ""
        self.skipping = skipping

    def _go_up(self) -> None:
        """Goes to the safe height, from wherever the spindle stands."""
        if self.relative:
            self.block("G90")
            self.relative = False
        self.z = None
        if self.manner.change == "G43":
            z = self.value(self.heights.safe + self.raised)
            self.block("G0", "G43", f"Z{z}", "H1")
            self.motion, self.z = "G0", self.count(self.heights.safe + self.raised)
        if self.manner.retract == "safe":
            self.move("G0", None, self.heights.safe)
        if self.manner.distance == "relative":
            self.move("G0", 0j, None)
            self.block("G91")
            self.relative = True


def name_bit(rng: Random, remark: str, wide: float, tool: int) -> str:
    """Gives what a file says about a bit, in its own way."""
    inches = wide / 25.4
    if remark == "(D=)":
        return rng.choice([f"T{tool} D={wide:g}", f"T{tool} D={wide:g} MM FLAT END MILL"])
    if remark == "(DIA IN)":
        return rng.choice([f"DIA {inches:.4g} IN", f"TOOL DIA. {inches:.4f} IN"])
    if remark == "; straight":
        return rng.choice([f"{wide:g}MM straight", f"{wide:g} mm straight, 2 flutes"])
    if remark == "(D CR)":
        shown = f"{wide:g}" if wide % 1 else f"{wide:.0f}."
        return f"T{tool} D{shown} CR0. - flat end mill"
    if remark == "(mm compression)":
        part = Fraction(inches).limit_denominator(16)
        if abs(float(part) - inches) < 1e-6 and rng.random() < 0.5:
            return rng.choice([f'{part}" compression', f"{part} inch compression"])
        return f" {wide:g}mm compression "
    if remark == "(Ø)":
        return rng.choice([f"Ø{wide:g} VHM", f"Schaftfräser Ø {wide:g} mm", f"FRAESER D{wide:g}"])
    if remark == "(BIT x MM)":
        return rng.choice([f"BIT {wide:g} MM", f"cutter {wide:.2f} mm upcut"])
    return ""
