"""Which printer of this PC prints which paper: asked once, kept on this PC, never in the way.

Every paper is a PDF file first. It is sent to the printer that was chosen for its size, or
opened in this PC's viewer where that was chosen or no printer is attached.
"""

import logging
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QComboBox, QDialog, QFormLayout, QLabel, QPushButton, QWidget

from station.ledger.ledger import Ledger
from station.look import style
from station.look.language import translate
from station.papers.page import SIZES, Page
from station.shop.acts import Answer, attention
from station.shop.words import say

LOG = logging.getLogger("station")
PAPERS = (*SIZES, "label")  # the sizes that a printer is chosen for
OPENED = "pdf"  # instead of a printer's name: open the file
SAVE_WORDS = say("Save as PDF and open it")


def find_size(page: Page) -> str:
    """Finds which of the sizes a paper has."""
    for name, (width, _) in SIZES.items():
        if abs(page.width - width) < 1:
            return name
    return "label"


def find_chosen(ledger: Ledger, size: str) -> str:
    """Finds the printer kept for a size, ``pdf``, or "" where nobody was asked."""
    return ledger.local(f"printer_{size}") or ""


def keep_choice(ledger: Ledger, size: str, name: str) -> None:
    """Keeps a printer for a size on this PC; "" asks again."""
    ledger.set_local(f"printer_{size}", name)


def list_attached() -> list[str]:
    """Lists the printers of this PC; none where Qt's print support cannot be loaded."""
    try:
        from PySide6.QtPrintSupport import QPrinterInfo  # noqa: PLC0415 - needs the print system
    except ImportError as fault:
        LOG.warning("no print support: %s", fault)
        return []
    return list(QPrinterInfo.availablePrinterNames())


def open_file(file: Path) -> bool:
    """Opens a paper in this PC's own viewer."""
    return QDesktopServices.openUrl(QUrl.fromLocalFile(str(file)))


def send_to_printer(page: Page, name: str) -> bool:
    """Sends a paper to a printer by name."""
    from PySide6.QtPrintSupport import QPrinter, QPrinterInfo  # noqa: PLC0415 - only when it is used

    from station.printing.painting import print_page  # noqa: PLC0415 - only when it is used

    printer = QPrinter(QPrinterInfo.printerInfo(name), QPrinter.PrinterMode.HighResolution)
    return print_page(page, printer)


class Printers:
    """Sends papers on; what went wrong is told in one sentence, the PDF is kept."""

    def __init__(
        self,
        ledger: Ledger,
        parent: QWidget | None,
        tell: Callable[[Answer], None],
        *,
        attached: Callable[[], list[str]] = list_attached,
        ask: Callable[[QWidget | None, str, list[str]], str] | None = None,
        send: Callable[[Page, str], bool] = send_to_printer,
        view: Callable[[Path], object] = open_file,
    ) -> None:
        self.ledger, self.parent, self.tell = ledger, parent, tell
        # that there is no printer: once is enough where an act has papers, which are not what it
        # is about
        self.told = False
        self.attached, self.ask, self.send, self.view = attached, ask or ask_printer, send, view

    def try_to_print(self, page: Page, file: Path, *, alone: bool = False) -> None:
        """Prints one paper; whatever goes wrong is told, and written down.

        `alone`: nothing but the paper was asked for, so where it went is always told.
        """
        self.told = self.told and not alone
        try:
            self(page, file)
        except Exception:
            LOG.exception("%s", file)
            self.tell(say_not_sent(file))

    def __call__(self, page: Page, file: Path) -> None:
        """Prints one paper, already saved in `file`."""
        size, names = find_size(page), self.attached()
        name = find_chosen(self.ledger, size)
        if not name and names:
            name = self.ask(self.parent, size, names)
            if name:
                keep_choice(self.ledger, size, name)
        if not name or name == OPENED:
            self.view(file)
            if not (name or names or self.told):
                self.told = True
                self.tell(say_none_attached(file))
        elif name not in names:
            self.tell(say_not_there(name, size, file))
        elif not self.send(page, name):
            self.tell(say_not_printed(name, file))


def say_none_attached(file: Path) -> Answer:
    """Says that there is no printer at all; nobody chose to do without."""
    return attention(
        say("No printer is attached to this PC"),
        say(
            "{file} is kept as PDF in {folder} and opened.",
            file=file.name,
            folder=str(file.parent),
        ),
    )


def say_not_there(name: str, size: str, file: Path) -> Answer:
    """Says that the printer that was chosen is not attached."""
    return attention(
        say("Printer {name} is not attached", name=name),
        say(
            "{file} is kept as PDF in {folder}. Plug the printer in and print it from there, or "
            "choose another: station printer {size}",
            file=file.name,
            folder=str(file.parent),
            size=size,
        ),
    )


def say_not_printed(name: str, file: Path) -> Answer:
    """Says that the printer took nothing."""
    return attention(
        say("Printer {name} did not print", name=name),
        say(
            "Look at its paper and its lamps. {file} is kept as PDF in {folder}.",
            file=file.name,
            folder=str(file.parent),
        ),
    )


def say_not_sent(file: Path) -> Answer:
    """Says that something went wrong on the way to the printer."""
    return attention(
        say("{file} was not printed", file=file.name),
        say("It is kept as PDF in {folder}: print it from there.", folder=str(file.parent)),
    )


def ask_printer(parent: QWidget | None, size: str, names: list[str]) -> str:
    """Asks once which printer has paper of a size; "" where the question is closed."""
    question = PrinterQuestion(parent, size, names)
    if question.exec() != QDialog.DialogCode.Accepted:
        return ""
    return question.answer()


class PrinterQuestion(QDialog):
    """Asks which printer prints papers of a size. No scan can answer it by accident."""

    def __init__(self, parent: QWidget | None, size: str, names: list[str]) -> None:
        super().__init__(parent)
        self.names = names
        self.setWindowTitle(translate(say("Printer")))
        self.setMinimumWidth(560)
        self.setFont(style.make_font(19))
        form = QFormLayout(self)
        form.setVerticalSpacing(16)
        what = say("the labels") if size == "label" else say("{size} paper", size=size)
        words = say("Which printer has {paper}? It is kept for this PC.", paper=what)
        form.addRow(QLabel(translate(words)))
        self.box = QComboBox()
        self.box.addItems([*names, translate(SAVE_WORDS)])
        self.box.setMinimumHeight(60)
        self.box.setAccessibleName(translate(say("Printer")))
        form.addRow(self.box)
        done = QPushButton(translate(say("Print there")))
        done.setMinimumHeight(60)
        done.setAutoDefault(False)  # the Enter of a scan must not press it
        done.clicked.connect(self.accept)
        form.addRow(done)

    def answer(self) -> str:
        """Gives the printer's name, or ``pdf``."""
        row = self.box.currentIndex()
        return self.names[row] if row < len(self.names) else OPENED
