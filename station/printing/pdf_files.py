"""A station's papers on their way out: numbered copies, PDF files."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from station.ledger.ledger import Ledger
from station.ledger.renaming import write_whole
from station.printing.gathering import make_paper

if TYPE_CHECKING:
    from station.papers.page import Page


class Papers:
    """Where a station's papers go: PDF files in its folder, in the order printed."""

    def __init__(
        self,
        ledger: Ledger,
        folder: Path,
        clock: Callable[[], str],
        out: "Callable[[Page, Path], object]" = lambda _page, _file: None,
    ) -> None:
        self.ledger, self.folder, self.clock, self.out = ledger, folder, clock, out
        self.made: list[Path] = []

    def __call__(self, kind: str, name: str) -> None:
        """Prints one paper."""
        made = make_paper(self.ledger, kind, name, self.clock())
        if made is None:
            return
        self.folder.mkdir(parents=True, exist_ok=True)
        about = name.replace("/", "-")
        file = self.folder / f"{'-'.join(filter(None, (kind, about)))}.pdf"
        write_whole(file, made.write_pdf())
        self.made.append(file)
        self.out(made, file)
