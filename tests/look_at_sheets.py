"""``python -m tests.look_at_sheets OUT``: pictures of ten telling sheets, through the real window.

Each text below is read in the office of the small shop as a person would have it read, at the
smallest screen and at a large one; what is not fit on a screen is printed.
"""

import argparse
import math
import os
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from PySide6.QtTest import QTest

from station.look import inspect
from station.look.shop_time import SHOP_TIME
from station.look.style import Style, find_scale
from station.look.window import Window
from station.window.session import Session
from station.window.show import find_application
from tests.replay import PIN, Stage

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")  # no screen is needed
SIZES = ((1366, 768), (1920, 1080))
THICK, FEED = 6.5, 3000
Point = tuple[float, float]


class Text:
    """A cut file's text as it is written: zero at the face, one bit after the other."""

    def __init__(self, *head: str) -> None:
        self.lines = ["G21 G90 G17", *head]

    def take_bit(self, number: int, remark: str = "") -> "Text":
        """Takes a bit."""
        self.lines += [f"T{number} M6 {remark}".strip(), "M3 S18000"]
        return self

    def cut(self, points: list[Point], deep: float, *, closed: bool = True) -> "Text":
        """Cuts along points at one depth."""
        (x, y), *rest = points
        self.lines += [f"G0 X{x:.3f} Y{y:.3f} Z5", f"G1 Z{-deep:.3f} F1200"]
        for px, py in (*rest, *((points[0],) if closed else ())):
            self.lines.append(f"G1 X{px:.3f} Y{py:.3f} F{FEED}")
        self.lines.append("G0 Z5")
        return self

    def cut_out(self, x: float, y: float, wide: float, high: float, tabs: int = 2,
                bit: float = 6.0, deep: float = THICK + 0.3) -> "Text":  # fmt: skip
        """Cuts a rectangle out around its edge, over tabs along its two long sides."""
        r = bit / 2
        self.cut(box(x - r, y - r, wide + bit, high + bit), deep / 2)
        low, top = y - r, y + high + r
        self.lines += [f"G0 X{x - r:.3f} Y{low:.3f} Z5", f"G1 Z{-deep:.3f} F1200"]
        for side, (start, end) in ((low, (x - r, x + wide + r)), (top, (x + wide + r, x - r))):
            for n in range(tabs // 2):
                middle = start + (end - start) * (n + 1) / (tabs // 2 + 1)
                half = math.copysign(6.0, end - start)
                self.lines += [
                    f"G1 X{middle - half:.3f} Y{side:.3f} F{FEED}", "G1 Z-4.5 F1200",
                    f"G1 X{middle + half:.3f}", f"G1 Z{-deep:.3f} F1200",
                ]  # fmt: skip
            self.lines += [f"G1 X{end:.3f} Y{side:.3f} F{FEED}"]
            if side == low:
                self.lines += [f"G1 X{end:.3f} Y{top:.3f}"]
        self.lines += [f"G1 X{x - r:.3f} Y{low:.3f}", "G0 Z5"]
        return self

    def write(self) -> str:
        """Writes all of it."""
        return "\n".join([*self.lines, "M5", "M30", ""])


def box(x: float, y: float, wide: float, high: float) -> list[Point]:
    """Gives the corners of a rectangle, counter-clockwise."""
    return [(x, y), (x + wide, y), (x + wide, y + high), (x, y + high)]


def ring(x: float, y: float, radius: float, sides: int = 48) -> list[Point]:
    """Gives a circle as a polygon."""
    turn = 2 * math.pi / sides
    return [(x + radius * math.cos(n * turn), y + radius * math.sin(n * turn))
            for n in range(sides)]  # fmt: skip


def rows(across: int, up: int, dx: float, dy: float) -> Iterator[Point]:
    """Gives places in rows."""
    yield from ((60 + n * dx, 60 + m * dy) for m in range(up) for n in range(across))


def write_tabs() -> str:
    """Writes plates with tabs and a round hole whose slug comes loose."""
    text = Text().take_bit(1)
    for x, y in rows(7, 5, 330, 220):
        text.cut(ring(x + 60, y + 80, 25), 6.8).cut_out(x, y, 280, 160, tabs=4)
    return text.write()


def write_combs() -> str:
    """Writes combs: slots of a single stroke, open at the edge."""
    text = Text().take_bit(1, "(D=3.175)")
    for x, y in rows(6, 7, 390, 160):
        for n in range(12):
            text.cut([(x + 20 + n * 26, y + 30), (x + 20 + n * 26, y + 120)], 6.8, closed=False)
        text.cut_out(x, y, 340, 110, bit=3.175)
    return text.write()


def write_pockets() -> str:
    """Writes plates with a pocket, a groove and engraving, by two bits."""
    text = Text().take_bit(2, "(DIA 3.0 MM)")
    for x, y in rows(6, 4, 390, 270):
        for n in range(5):
            text.cut(box(x + 40 + n * 2.5, y + 40 + n * 2.5, 80 - n * 5, 60 - n * 5), 3.0)
        text.cut([(x + 160, y + 60), (x + 290, y + 60)], 1.0, closed=False)
        text.cut(ring(x + 220, y + 120, 20), 0.5)
    text.take_bit(1, "(6MM)")
    for x, y in rows(6, 4, 390, 270):
        text.cut_out(x, y, 330, 210)
    return text.write()


def write_faults() -> str:
    """Writes a gouge through a neighbour, a hole cut late, a cut that frees nothing."""
    text = Text().take_bit(1)
    for x, y in rows(6, 4, 390, 270):
        text.cut_out(x, y, 330, 210)
    text.cut(ring(225, 165, 30), 6.8)  # after its part is free
    text.cut([(380, 100), (620, 260)], 6.8, closed=False)  # into two parts
    text.cut([(60, 1180), (1200, 1180)], 6.8, closed=False)  # in the waste
    text.cut_out(2300, 60, 18, 18, tabs=0)
    return text.write()


def write_shared() -> str:
    """Writes strips that share their cut lines, nested and turned."""
    text = Text().take_bit(1)
    for n in range(9):
        text.cut([(100 + n * 120, 100), (100 + n * 120, 700)], 6.8, closed=False)
    for y in (100, 700):
        text.cut([(100, y), (1060, y)], 6.8, closed=False)
    for x, y in ((1250, 100), (1250, 420), (1250, 740)):
        text.cut(ring(x + 150, y + 140, 90), 6.8)
        text.cut(ring(x + 150, y + 140, 140), 6.8)
    return text.write()


def write_spoilboard() -> str:
    """Writes a text whose zero is on the spoilboard, one cut 1.9 mm too deep."""
    text = Text().take_bit(1)
    for n, (x, y) in enumerate(rows(5, 4, 460, 270)):
        text.cut(box(x - 3, y - 3, 386, 206), 1.9 if n == 7 else 0.2)
    lines = [line.replace("Z5", "Z12") for line in text.lines]
    return "\n".join([*lines, "M5", "M30", ""])


def write_skin() -> str:
    """Writes small parts that a skin of 0.4 mm holds, and small ones that nothing holds."""
    text = Text().take_bit(1)
    for x, y in rows(20, 8, 110, 130):
        text.cut(box(x - 3, y - 3, 86, 96), 6.1)
    for n in range(10):
        text.cut(ring(100 + n * 60, 1160, 11), 6.8)
    return text.write()


def write_changes() -> str:
    """Writes a text of three bits, the smallest first, for a router without a changer."""
    text = Text().take_bit(3, "(3MM STRAIGHT)")
    for x, y in rows(5, 3, 460, 360):
        text.cut(ring(x + 50, y + 50, 8), 6.8)
    text.take_bit(2, "(D=8.0)")
    for x, y in rows(5, 3, 460, 360):
        text.cut(box(x + 150, y + 100, 120, 60), 2.5)
    text.take_bit(1, "(D=6.0)")
    for x, y in rows(5, 3, 460, 360):
        text.cut_out(x, y, 400, 300, tabs=4)
    return text.write()


def write_many() -> str:
    """Writes four hundred small spacers with tabs."""
    text = Text().take_bit(1)
    for x, y in rows(28, 15, 80, 74):
        text.cut_out(x, y, 60, 40)
    return text.write()


def write_twin() -> str:
    """Writes the plates of the first sheet, 2 mm longer and without their hole."""
    text = Text().take_bit(1)
    for x, y in rows(7, 5, 330, 220):
        text.cut_out(x, y, 282, 160, tabs=4)
    return text.write()


SHEETS: dict[str, Callable[[], str]] = {
    "1-tabs": write_tabs,
    "2-combs": write_combs,
    "3-pockets": write_pockets,
    "4-faults": write_faults,
    "5-shared": write_shared,
    "6-spoilboard": write_spoilboard,
    "7-skin": write_skin,
    "8-changes": write_changes,
    "9-many": write_many,
    "10-twin": write_twin,
}
# what is looked at of each sheet, by the buttons that show it from what was read
LOOKS: dict[str, tuple[str, ...]] = {
    "read": (),
    "path": ("show_path",),
    "comes-off": ("path_pieces",),
    "problem": ("path_pieces", "next_problem"),
    "holds": ("hold_downs",),
    "how": ("how_read",),
}


class Looking:
    """The small shop's office in the real window."""

    def __init__(self, folder: Path, out: Path) -> None:
        self.stage, self.out = Stage(folder), out
        self.folder = self.stage.ledger.path.parent / "files"
        self.folder.mkdir(exist_ok=True)
        self.problems: list[str] = []
        self.shots = 0
        self.application = find_application()
        self.window = Window()
        self.session = Session(self.window, self.stage.desk)

    def open(self, size: tuple[int, int]) -> None:
        """Opens the window in a size, and waits until it is built in the scale of that."""
        self.window.resize(*size)
        self.window.show()
        QTest.qWaitForWindowExposed(self.window)
        while Style.scale != find_scale(*size):
            QTest.qWait(20)

    def send(self, *lines: str) -> None:
        """Sends codes by name, and typed texts."""
        for line in lines:
            if line.startswith("'"):
                self.stage.desk.take(line[1:])
            else:
                self.stage.send(line)

    def begin_cut_file(self, name: str) -> None:
        """Makes a cut file and has its text read."""
        (self.folder / f"{name}.nc").write_text(SHEETS[name](), "ascii")
        self.send("@worker 07", "@area office", "button list_cutfile", "button new")
        self.send(f"'{name}", "touch description", "'A sheet to look at", "button save")
        if not self.shots:  # from then on the supervisor has opened the office
            self.send("worker 07", PIN)
        self.send(f"'{name}", "button read_file", "touch 6.5 mm birch plywood")
        self.send(f"touch {name}.nc")

    def name_shapes(self) -> None:
        """Names every shape after its size."""
        while self.stage.desk.hand.work.intake.read.unnamed:
            self.send("button new")

    def take_picture(self, name: str) -> None:
        """Looks the screen over and keeps its picture."""
        self.session.repaint()
        for _ in range(3):
            self.application.processEvents()
        found = inspect.list_problems(self.window)
        self.problems += [f"{name}: {problem}" for problem in found]
        self.window.grab().save(str(self.out / f"{name}.png"))
        self.shots += 1

    def look_at(self, name: str, size: tuple[int, int]) -> None:
        """Takes every picture of a sheet in a size."""
        self.open(size)
        for look, buttons in LOOKS.items():
            self.send(*(f"button {each}" for each in buttons))
            self.take_picture(f"{name}-{look}-{size[0]}")
            if look == "problem":
                self.send("button show_path")
            if look == "holds":
                self.send("button hold_downs")
        self.send("button how_read")


def main() -> int:
    """Takes the pictures; 1 where something on a screen is not fit."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("out", type=Path)
    asked.add_argument("--only", default="", help="sheets whose names begin so")
    asked.add_argument("--dark", action="store_true", help="in the dark colours")
    options = asked.parse_args()
    options.out.mkdir(parents=True, exist_ok=True)
    with open_office(options.out) as looking:
        looking.window.set_palette(dark=options.dark)
        for name in SHEETS:
            if name.startswith(options.only):
                looking.begin_cut_file(name)
                if name == "10-twin":
                    looking.open(SIZES[0])
                    looking.take_picture(f"{name}-beside-{SIZES[0][0]}")
                looking.name_shapes()
                for size in SIZES:
                    looking.look_at(name, size)
                looking.send("button save", "button put_down")
        for problem in dict.fromkeys(looking.problems):
            print(problem)
        print(f"{looking.shots} pictures in {options.out}, {len(set(looking.problems))} problems")
        return 1 if looking.problems else 0


@contextmanager
def open_office(out: Path) -> Iterator[Looking]:
    """Opens the office of a new small shop, and closes it again."""
    SHOP_TIME.smooth = False
    with tempfile.TemporaryDirectory() as folder:
        looking = Looking(Path(folder), out)
        try:
            yield looking
        finally:
            looking.session.stop()
            looking.window.close()
            looking.stage.ledger.close()
            SHOP_TIME.smooth = True


if __name__ == "__main__":
    raise SystemExit(main())
