"""Drives README's first day on an empty shop, three times: by touch, by keyboard, by scanner.

The windows are real ones. By touch nothing is pressed on the keyboard: what is typed is typed on
the keys of the screen. By keyboard nothing is clicked. By scanner whatever has a code that is
printed is scanned; names have none, and are typed.
"""

import re
import shutil
from collections import Counter
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path

from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from station import bootstrap
from station.clock import Clock
from station.jobs.process import ProcessJob
from station.look import inspect
from station.look.language import translate
from station.look.scanner import KEY, SETTLE_MS
from station.look.widgets import Touch
from station.look.window import Window
from station.papers.marks import TextMark
from station.printing import gathering, pdf_files
from station.printing.codes import list_codes
from station.shop import cards, codes
from station.shop.cards import button
from station.shop.facts import Order, Part
from station.tour.drive import TourFailed, TourWindow
from station.tour.first_day import PART_NAMES, PIN, STEPS
from station.window import first_run
from station.window.session import Session
from station.window.show import find_application

AT = "2026-11-25T07:30:00"
WAYS = ("touch", "keyboard", "scanner")
NOT_IN = {  # how a length or a weight is written in the unit that the shop does not have
    "mm": re.compile(r"\d in$|, in$|\bin(²|/min)|\bft\b|\boz\b|\blb\b"),
    "inch": re.compile(r"\bmm\b|mm²|\d m\b|, m$|\bm²|[\d ]k?g\b|\bg,|\bcm³"),
}
OFTEN = 400  # Tabs until what is looked for must have come
FILLED = {
    "mm": {"units": "millimetres", "paper": "A4", "material": "6.5 mm birch plywood",
           "thickness": "6.5", "diameter": "6"},
    "inch": {"units": "inches", "paper": "Letter", "material": "1/4 in birch plywood",
             "thickness": "0.25", "diameter": "0.23622"},
}  # fmt: skip


class FirstDay:
    """One empty shop, worked in one way alone."""

    def __init__(self, out: Path, folder: Path, way: str, units: str) -> None:
        self.out, self.folder, self.way, self.units = out, folder, way, units
        self.clock = Clock()
        self.clock.pin(AT)
        self.application = find_application()
        self.did: Counter[str] = Counter()
        self.problems: list[str] = []
        self.shots = 0
        self.printed: list[tuple[str, str]] = []
        self.typed: dict[str, str] = {}  # the first text of each question of the office

    def run(self) -> None:
        """Runs the day. Raises TourFailed where a step can't be done."""
        self.out.mkdir(parents=True, exist_ok=True)
        with bootstrap.open_ledger(self.folder) as ledger:
            self.ledger = ledger
            bootstrap.set_up_shop(ledger, self.clock())
            self.window = Window()
            self.window.resize(*TourWindow().size)
            self.window.show()
            QTest.qWaitForWindowExposed(self.window)
            opening, *steps = STEPS
            self._open(opening.does)
            for number, step in enumerate(steps, 2):
                for line in step.does:
                    self._take(f"step {number}, {step.title}", line)
                self._take_picture(f"{number:02d}-{step.title.split(',')[0].replace(' ', '-')}")
            self.session.stop()
            self.window.close()
            self._read_papers()
            if not ledger.view.shelf(Order, "shipped", 1):
                raise TourFailed("no order has left")
            if wrong := ledger.check():
                raise TourFailed(f"the history is not whole: {wrong[0]}")

    def _open(self, lines: tuple[str, ...]) -> None:
        """Answers the first run, then opens the station."""
        question = first_run.FirstRun(self.ledger, self.window, self.clock())
        QTimer.singleShot(0, lambda: self._answer(lines))
        if not question.ask():
            raise TourFailed(f"step 1: {self.problems[-1]}")
        papers = pdf_files.Papers(self.ledger, self.out / "papers", self.clock)

        def printer(kind: str, name: str) -> None:
            self.printed.append((kind, name))
            papers(kind, name)

        self.desk = bootstrap.make_desk(
            self.ledger, question.keep(), self.clock, printer=printer, begin=ProcessJob
        )
        self.session = Session(self.window, self.desk)
        self.session.start()

    def _answer(self, lines: tuple[str, ...]) -> None:
        try:
            for line in lines[:-1]:
                self.touch(self._fill(line))
            self._take_picture("01-Open-it")
            self.touch(lines[-1])
        except TourFailed as failed:
            self.problems.append(str(failed))
            self.window.close()

    def _fill(self, line: str) -> str:
        """Fills in what differs between a shop of inches and one of mm."""
        part = next((p.name for p in self.ledger.facts(Part)), "")
        return line.format(**FILLED[self.units], part=part)

    def _take(self, step: str, line: str) -> None:
        """Takes one line, and gives a supervisor's badge and PIN where they are asked for."""
        try:
            self._do(self._fill(line))
            if self.desk.question() == "supervisor":
                self.scan(codes.write("worker", "01"))
            if self.desk.question() == "pin" and PIN not in line and line != "A new PIN":
                self.type(PIN)
        except TourFailed as failed:
            self._take_picture("stopped")
            raise TourFailed(f"{self.way}, {step}, “{line}”: {failed}") from failed
        self._read_lengths(f"{step}, “{line}”", inspect.list_texts(self.window))
        answer = self.session.answered
        if answer.tone == "stop":
            self._take_picture("stopped")
            raise TourFailed(f"{self.way}, {step}, “{line}”: {answer.said} {answer.do}")

    def _do(self, line: str) -> None:
        word, _, rest = line.partition(" ")
        if line.startswith("@"):
            self._pass_on(word, rest)
        elif line.startswith("'"):
            self.type(line[1:])
        elif word == "scan":
            kind, number = rest.split()
            self.scan(codes.write(kind, number))
        else:
            self.touch(line)

    def _read_lengths(self, at: str, texts: list[str]) -> None:
        """Notes every length that is not in the shop's unit."""
        other = NOT_IN[self.units]
        self.problems += [f"{self.way}, {at}: “{text}”" for text in texts if other.search(text)]

    def _read_papers(self) -> None:
        """Makes every paper that was printed once more, and reads its lengths."""
        for kind, name in dict.fromkeys(self.printed):
            paper = gathering.make_paper(self.ledger, kind, name, self.clock())
            marks = [mark for page in paper.pages for mark in page] if paper else []
            texts = [mark.words for mark in marks if isinstance(mark, TextMark)]
            self._read_lengths(f"paper {kind} {name}", texts)

    # --- what is done in each way

    def touch(self, words: str) -> None:
        """Touches what says these words, reaches it by keys, or scans its card."""
        found = self._find(words)
        if self.way == "scanner" and self._has_card(found.code):
            self._type_keys(found.code)
            self.did["scanned"] += 1
        elif self.way == "touch":
            QTest.mouseClick(found, Qt.MouseButton.LeftButton)
            self.did["touched"] += 1
        else:
            self._press(found)
            self.did["keys"] += 1
        self.application.processEvents()

    def type(self, text: str) -> None:
        """Types a text: on the keys of the screen, on the keyboard, by digit cards."""
        if self.way == "touch":
            self._type_on_screen(text)
        elif self.way == "scanner" and text.replace(".", "").isdecimal():
            for char in text:
                self._type_keys(button("point") if char == "." else cards.digit(char))
            self._type_keys(button("enter"))
            self.did["scanned"] += len(text) + 1
        else:
            self._type_keys(text)
            self.did["typed"] += 1
        self.application.processEvents()

    def scan(self, code: str) -> None:
        """Scans a code, or touches what sends it where a touch alone is allowed."""
        if self.way != "touch":
            self._type_keys(code)
            self.did["scanned" if self.way == "scanner" else "typed"] += 1
            return
        shown = next((t for t in self._list_touches() if t.code == code), None)
        if shown is None:
            raise TourFailed(f"nothing on the screen sends {code}")
        QTest.mouseClick(shown, Qt.MouseButton.LeftButton)
        self.did["touched"] += 1
        self.application.processEvents()

    def _type_keys(self, text: str) -> None:
        QTest.keyClicks(self.window, text)
        QTest.keyClick(self.window, Qt.Key.Key_Return)

    def _type_on_screen(self, text: str) -> None:
        """Types on the keys of the screen: a number's, or those with letters."""
        digits = {cards.digit(c): c for c in "0123456789"} | {button("point"): "."}
        keys = {t.code: t for t in self._list_touches()}
        numbers = {sign: keys[code] for code, sign in digits.items() if code in keys}
        if button("enter") in keys and all(char in numbers for char in text):
            pressed = [numbers[char] for char in text] + [keys[button("enter")]]
            for key in pressed:
                QTest.mouseClick(key, Qt.MouseButton.LeftButton)
            self.did["touched"] += len(pressed)
            return
        for char in text:
            self._press_letter(char)
        if self.typed.setdefault(self.desk.hand.work.ask, text) == text:
            self._take_picture(f"{self.shots:02d}-typing-{text[:3]}")
        self._press_letter("enter")

    def _press_letter(self, char: str) -> None:
        keys = {t.code.removeprefix(KEY): t for t in self._list_touches()}
        turned = char not in keys and char.swapcase() in keys
        if turned:
            QTest.mouseClick(keys["shift"], Qt.MouseButton.LeftButton)
            keys = {t.code.removeprefix(KEY): t for t in self._list_touches()}
        if char not in keys:
            raise TourFailed(f"no key of the screen types {char}")
        QTest.mouseClick(keys[char], Qt.MouseButton.LeftButton)
        if turned:
            QTest.mouseClick(keys["shift"], Qt.MouseButton.LeftButton)
        self.did["touched"] += 1 + 2 * turned

    def _press(self, found: Touch) -> None:
        """Presses what stands there by its F key, or by Tab and Enter."""
        if found in self.window.body.list_buttons():
            QTest.keyClick(self.window, Qt.Key(int(Qt.Key.Key_F1) + found.number - 1))
            return
        self.window.activateWindow()
        QTest.qWait(SETTLE_MS + 20)
        for _ in range(OFTEN):
            QTest.keyClick(QApplication.focusWidget() or self.window, Qt.Key.Key_Tab)
            if QApplication.focusWidget() is found:
                QTest.keyClick(found, Qt.Key.Key_Return)
                return
        raise TourFailed("Tab does not reach it")

    def _has_card(self, code: str) -> bool:
        return code in {str(row["code"]) for row in list_codes(self.ledger)}

    def _list_touches(self) -> list[Touch]:
        self.application.processEvents()
        each = self.window.findChildren(Touch)
        return [t for t in each if t.isVisible() and t.isEnabled() and t.code]

    def _find(self, words: str) -> Touch:
        """Finds what says these words: as a whole text of its own, else within its texts."""
        said = {
            t: [w.text for w in t.list_words()] + [translate(t.accessibleName())]
            for t in self._list_touches()
        }
        named = [t for t, texts in said.items() if texts[0] == words]
        whole = named or [t for t, texts in said.items() if words in texts]
        found = whole or [t for t, texts in said.items() if words in " · ".join(texts)]
        if len({t.code for t in found}) != 1:
            shown = "; ".join(" · ".join(texts[:-1]) for texts in said.values())
            raise TourFailed(f"{len(found)} things to touch say so. Shown: {shown}")
        return found[0]

    # --- what passes without a hand, and what depends on the shop

    def _pass_on(self, word: str, rest: str) -> None:
        if word == "@after":
            later = datetime.fromisoformat(self.clock()) + timedelta(minutes=int(rest))
            self.clock.pin(later.isoformat())
            self.session.repaint()
        elif word == "@file":
            copy_text(self.folder / "files")
        elif word == "@done":
            while self.desk.underway is not None:
                QTest.qWait(50)
        else:
            ALONE[f"{word[1:]} {rest}".strip()](self)

    def name_shapes(self) -> None:
        """Each new shape gets a name once."""
        for name in PART_NAMES:
            self.type(name)

    def give_rack_places(self) -> None:
        """Each part gets its rack place."""
        for part in self.ledger.facts(Part):
            for line in ("A new one", "name", f"'A {part.id}", "part", part.name, "Save", "Leave"):
                self._take("rack place", line)

    def _take_picture(self, name: str) -> None:
        self.application.processEvents()
        self.problems += [f"{self.way} {name}: {p}" for p in inspect.list_problems(self.window)]
        self.shots += 1
        self.window.grab().save(str(self.out / f"{name}.png"))


ALONE: dict[str, Callable[[FirstDay], None]] = {
    "name shapes": FirstDay.name_shapes,
    "rack places": FirstDay.give_rack_places,
}


def copy_text(folder: Path) -> None:
    """Puts the text of a cut file where the router's texts lie."""
    import demo_db  # noqa: PLC0415 - the builder is heavy

    folder.mkdir(parents=True, exist_ok=True)
    shutil.copy(Path(demo_db.__file__).parent / "cut_files/STICK-SET-A.nc", folder / "first.nc")


def run_first_day(out: Path, *, units: str, ways: tuple[str, ...] = WAYS) -> int:
    """Runs the first day in each way; gives the exit code."""
    from station.tour.drive import make_shop_folder  # noqa: PLC0415

    wrong = 0
    for way in ways:
        with make_shop_folder() as folder:
            day = FirstDay(out / way, folder, way, units)
            try:
                day.run()
            except TourFailed as failed:
                print(f"The first day stopped: {failed}")  # noqa: T201 - a command prints
                wrong += 1
        for problem in dict.fromkeys(day.problems):
            print(problem)  # noqa: T201
        did = ", ".join(f"{n} {what}" for what, n in day.did.items())
        print(f"{way}: {did}; {day.shots} pictures in {day.out}")  # noqa: T201
        wrong += bool(day.problems)
    return int(bool(wrong))
