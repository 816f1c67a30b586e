"""Asks on the first opening where a PC stands, in which units and on what paper; once."""

from dataclasses import replace

from PySide6.QtWidgets import QComboBox, QDialog, QFormLayout, QLabel, QPushButton, QWidget

from station.bootstrap import Where, make_id
from station.floor.office.acts import SetFact
from station.ledger.ledger import Ledger
from station.look import style
from station.queries.settings import find_shop
from station.shop.acts import Act
from station.shop.areas import AREAS
from station.shop.facts import Paper, Router, Shop, Units
from station.shop.plain import to_plain

KEPT = ("area", "router", "bench")


def find_where(ledger: Ledger, parent: QWidget | None, at: str) -> Where | None:
    """Finds where this PC stands: as kept, else as asked; None when the question is closed."""
    kept = {name: ledger.local(name) or "" for name in KEPT}
    if kept["area"]:
        return Where(**kept)
    question = FirstRun(ledger, parent, at)
    if question.exec() != QDialog.DialogCode.Accepted:
        return None
    return question.keep()


def keep_where(ledger: Ledger, where: Where) -> None:
    """Keeps where this PC stands, unless it is kept already: the demo asks nothing."""
    if not ledger.local("area"):
        for name in KEPT:
            ledger.set_local(name, getattr(where, name))


class FirstRun(QDialog):
    """Asks four questions with answers that suit most shops already chosen."""

    def __init__(self, ledger: Ledger, parent: QWidget | None, at: str) -> None:
        super().__init__(parent)
        self.ledger, self.at = ledger, at
        self.setWindowTitle("This PC's station")
        self.setMinimumWidth(640)
        self.setFont(style.make_font(19))
        form = QFormLayout(self)
        form.setVerticalSpacing(16)
        form.addRow(QLabel("Where does this PC stand? All of this can be changed later."))
        self.area = self._choice(form, "Work area", [str(area.title) for area in AREAS])
        routers = [f"{r.name}" for r in ledger.facts(Router)]
        self.router = self._choice(form, "Router", routers or ["Router 1"])
        self.units = self._choice(form, "Lengths", ["millimetres", "inches"])
        self.paper = self._choice(form, "Paper", ["A4", "A5"])
        shop = find_shop(ledger.view)  # of a shop that was joined, say
        self.units.setCurrentIndex(int(shop.units == "inch"))
        self.paper.setCurrentText(shop.paper)
        done = QPushButton("Open the station")
        done.setMinimumHeight(60)
        done.clicked.connect(self.accept)
        form.addRow(done)

    def _choice(self, form: QFormLayout, words: str, choices: list[str]) -> QComboBox:
        box = QComboBox()
        box.addItems(choices)
        box.setMinimumHeight(60)
        box.setAccessibleName(words)
        form.addRow(words, box)
        return box

    def keep(self) -> Where:
        """Keeps the answers; gives where the PC stands."""
        area = AREAS[self.area.currentIndex()].id
        numbers = [r.id for r in self.ledger.facts(Router)] or ["1"]
        router = numbers[max(0, self.router.currentIndex())] if area == "loading" else ""
        found = Where(area=area, router=router, bench="1")
        keep_where(self.ledger, found)
        self._set_shop()
        return found

    def _set_shop(self) -> None:
        shop = self.ledger.view.get(Shop, "shop")
        units: Units = "inch" if self.units.currentIndex() else "mm"
        paper: Paper = "A5" if self.paper.currentText() == "A5" else "A4"
        if shop is None or (shop.units, shop.paper) == (units, paper):
            return
        value = to_plain(replace(shop, units=units, paper=paper))
        args = SetFact(of=Shop.kind, value=value, approved="first run")
        self.ledger.record(
            Act(
                id=make_id(),
                kind=args.kind,
                at=self.at,
                subject="shop/shop",
                args=args,
                station=self.ledger.station,
            )
        )
