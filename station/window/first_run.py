"""Asks on the first opening where a PC stands, its language, units and paper; once.

It is a screen as every other: touched, typed, or scanned from the cards of rows and digits. The
first answers are the system's own.
"""

from dataclasses import replace
from typing import NamedTuple

from PySide6.QtCore import QEventLoop, QLocale

from station.bootstrap import Where, make_id
from station.desk.appearance import LANGUAGES
from station.floor.office.acts import GivenList, SetFact, SetLists
from station.ledger.ledger import Ledger
from station.look.language import translate
from station.look.window import Window
from station.queries.settings import find_shop
from station.shop import lengths
from station.shop.acts import Act, Answer, Args, good, refuse
from station.shop.areas import AREAS
from station.shop.cards import BY_NUMBER, button, digit
from station.shop.codes import Code, read
from station.shop.faces import Cards, Cell, Entry, Face, Press, Row, Table, Text
from station.shop.facts import Fact, Mailer, Material, Reason, Router, Shop
from station.shop.facts.settings import INCH_LABEL, LABEL, PAPERS, UNITS
from station.shop.fields import list_starts
from station.shop.first_facts import first_reasons, list_for_units
from station.shop.plain import to_plain
from station.shop.words import Say, say

KEPT = ("area", "router", "bench")
HERE = "first run"  # who approves it
NAMED = (Material, Mailer)
# where paper is Letter, not A4: the Unicode locale data (CLDR, paperSize), from memory
LETTER = ("BZ", "CA", "CL", "CO", "CR", "GT", "MX", "NI", "PA", "PH", "PR", "SV", "US", "VE")


class Question(NamedTuple):
    """One question: its name, its words, and what can be answered, by what is kept."""

    name: str
    words: Say
    answers: dict[str, Text]


def find_where(ledger: Ledger, window: Window, at: str) -> Where | None:
    """Finds where this PC stands: as kept, else as asked; None when the window is closed."""
    kept = {name: ledger.local(name) or "" for name in KEPT}
    if kept["area"]:
        return Where(**kept)
    question = FirstRun(ledger, window, at)
    return question.keep() if question.ask() else None


def keep_where(ledger: Ledger, where: Where) -> None:
    """Keeps where this PC stands, unless it is kept already: the demo asks nothing."""
    if not ledger.local("area"):
        for name in KEPT:
            ledger.set_local(name, getattr(where, name))


class FirstRun:
    """Asks a few questions with answers that suit this PC already chosen."""

    def __init__(self, ledger: Ledger, window: Window, at: str) -> None:
        self.ledger, self.window, self.at = ledger, window, at
        self.answered = _choose_first(ledger)
        self.chosen, self.done = "language", False
        self._loop = QEventLoop()

    def ask(self) -> bool:
        """Asks on the window; False where it is closed."""
        self.window.sent.connect(self.take)
        self.window.closed.connect(self._loop.quit)
        self._show(good(FIRST, HOW))
        self._loop.exec()
        self.window.sent.disconnect(self.take)
        return self.done

    def take(self, text: str) -> None:
        """Takes one input: a question's row, an answer's number, or that all is said."""
        code = read(text)
        kind, number = (code.kind, code.number) if isinstance(code, Code) else ("", text.strip())
        name = BY_NUMBER[number].name if kind == "button" and number in BY_NUMBER else ""
        questions = self.list_questions()
        if name == "save":
            self.done = True
            self._loop.quit()
        elif name.startswith("row_") and int(name[4:]) <= len(questions):
            self.chosen = questions[int(name[4:]) - 1].name
            self._show(good(self._find_chosen().words, HOW))
        elif kind in ("", "digit") and number.isdecimal():
            self._answer(int(number))
        else:
            self._show(refuse(say("That is no answer"), HOW))

    def _answer(self, number: int) -> None:
        """Takes the n-th answer of the chosen question, and goes to the next one."""
        question = self._find_chosen()
        if not 1 <= number <= len(question.answers):
            self._show(refuse(say("There is no answer {n}", n=number), HOW))
            return
        kept = list(question.answers)[number - 1]
        self.answered[question.name] = kept
        if kept == "inch" and question.name == "units" and self.ledger.count() == 1:
            self.answered["paper"] = "Letter"  # goes with inches, until it is said otherwise
        told = say("{question}: {answer}", question=question.words, answer=question.answers[kept])
        names = [q.name for q in self.list_questions()]
        place = names.index(question.name) + 1
        self.chosen = names[place] if place < len(names) else question.name
        self._show(good(told, HOW))

    def _find_chosen(self) -> Question:
        return next(q for q in self.list_questions() if q.name == self.chosen)

    def list_questions(self) -> tuple[Question, ...]:
        """Lists what is asked; a router only where loading is worked."""
        areas: dict[str, Text] = {area.id: area.title for area in AREAS}
        routers: dict[str, Text] = {r.id: r.name for r in self.ledger.facts(Router)}
        papers: dict[str, Text] = {paper: paper for paper in PAPERS}
        asked = (
            Question("language", say("Language"), dict(LANGUAGES)),
            Question("area", say("Work area of this PC"), areas),
            Question("router", say("Router"), routers),
            Question("units", say("Lengths"), dict(UNITS)),
            Question("paper", say("Paper"), papers),
        )
        return tuple(q for q in asked if q.name != "router" or self.answered["area"] == "loading")

    def _show(self, answer: Answer) -> None:
        self.window.set_language(self.answered["language"])
        self.window.show_top(
            area=say("Station"), where=say("First run"), worker="", clock=self.at[11:16],
            shared="", shared_ok=True,
        )  # fmt: skip
        self.window.show_face(self.make_face())
        self.window.show_answer(answer, "")

    def make_face(self) -> Face:
        """Makes the screen: every question with its answer, beside it what can be answered."""
        chosen = self._find_chosen()
        rows = tuple(
            Row(title=q.words, code=button(f"row_{n}"), selected=q.name == chosen.name,
                cells=(Cell(text=q.answers.get(self.answered[q.name], ""), bold=True),))
            for n, q in enumerate(self.list_questions(), 1)
        )  # fmt: skip
        entries = tuple(
            Entry(big=words, chosen=kept == self.answered[chosen.name],
                  code=digit(str(n)) if n < 10 else str(n))
            for n, (kept, words) in enumerate(chosen.answers.items(), 1)
        )  # fmt: skip
        table = Table(columns=(say("question"), say("answer")), rows=rows, title=FIRST)
        start = Press(label=say("Open the station"), code=button("save"), style="primary")
        return Face(
            title=say("Station"), main=(table,), presses=(start,),
            side=(Cards(title=chosen.words, entries=entries),), weights=(56, 0, 44),
        )  # fmt: skip

    def keep(self) -> Where:
        """Keeps the answers; gives where the PC stands."""
        area = self.answered["area"]
        router = self.answered["router"] if area == "loading" else ""
        found = Where(area=area, router=router, bench="1")
        keep_where(self.ledger, found)
        self.ledger.set_local("language", self.answered["language"])
        self._set_shop()
        return found

    def _set_shop(self) -> None:
        shop = self.ledger.view.get(Shop, "shop")
        units, paper = self.answered["units"], self.answered["paper"]
        if shop is None:
            return
        same = (shop.units, shop.paper) == (units, paper)
        if same and not (self.answered["language"] and self.ledger.count() == 1):
            return
        lengths.use_units(units, fractions=shop.fractions)
        begins = self.ledger.count() == 1  # nobody has changed anything yet
        first = self._list_first(shop, units) if begins else ()
        changed = to_plain(shop) | {"units": units, "paper": paper}
        if begins:
            changed |= list_starts(Shop)
            changed["label"] = INCH_LABEL if units == "inch" else LABEL
        self._record(SetFact(of="shop", value=changed, approved=HERE), shop.key)
        if first:
            self._record(SetLists(lists=first, approved=HERE), "list/several")

    def _list_first(self, shop: Shop, units: str) -> tuple[GivenList, ...]:
        """Lists what a shop of these units and this language starts with, where it is other.

        Sheets and mailers as it buys them, reasons and names in its words: its own from then on.
        """
        facts: list[Fact] = []
        if shop.units != units or self.answered["language"]:
            facts += list_for_units(units)
        if self.answered["language"]:
            facts += first_reasons()
        if shop.units != units or self.answered["language"]:
            facts += [replace(r, **list_starts(Router)) for r in self.ledger.facts(Router)]
        kinds = dict.fromkeys(fact.kind for fact in facts)
        return tuple(
            GivenList(
                of=kind, values=tuple(to_plain(_translate(f)) for f in facts if f.kind == kind)
            )
            for kind in kinds
        )

    def _record(self, args: Args, subject: str) -> None:
        self.ledger.record(
            Act(
                id=make_id(),
                kind=args.kind,
                at=self.at,
                subject=subject,
                args=args,
                station=self.ledger.station,
            )
        )


def _translate(fact: Fact) -> Fact:
    """Gives a first fact with its words in the language of the screen."""
    if isinstance(fact, Router):
        return replace(fact, name=translate(say("Router {id}", id=fact.id)))
    if isinstance(fact, Reason):
        return replace(fact, words=translate(Say(fact.words)))
    return replace(fact, name=translate(Say(fact.name))) if isinstance(fact, NAMED) else fact


FIRST = say("This PC's station")
HOW = say("Touch an answer; it can be changed later.")


def _choose_first(ledger: Ledger) -> dict[str, str]:
    """Chooses the first answers: the shop's own where it has any, else this system's."""
    shop, system = find_shop(ledger.view), QLocale.system()
    language = system.name().split("_")[0]
    units, paper = shop.units, shop.paper
    if ledger.count() == 1:  # an empty shop: nobody has said anything yet
        inches = system.measurementSystem() == QLocale.MeasurementSystem.ImperialUSSystem
        units = "inch" if inches else "mm"
        paper = "Letter" if system.name().split("_")[-1] in LETTER else "A4"
    routers = [r.id for r in ledger.facts(Router)] or ["1"]
    area = "office" if ledger.count() == 1 else "loading"
    return {
        "language": language if language in LANGUAGES else "",
        "area": area, "router": routers[0], "units": units, "paper": paper,
    }  # fmt: skip
