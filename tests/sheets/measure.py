"""Has the program read many written sheets, and counts how it does for each habit and fault."""

import time
from collections import Counter, defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from tests.sheets.comparing import Verdict, judge
from tests.sheets.making import make_sheet
from tests.sheets.truth import Found, WrittenSheet

Reader = Callable[[str, float, tuple[float, float], str, float | None], Found]
CHECKS = ("parts", "groups", "features", "tabs")


@dataclass
class SheetTally:
    """What was counted over sheets that have something in common."""

    sheets: int = 0
    judged: int = 0
    fell: int = 0
    clean: int = 0
    alarmed: int = 0
    right: Counter[str] = field(default_factory=Counter)
    sizes: list[float] = field(default_factory=list)
    faults: Counter[str] = field(default_factory=Counter)

    def add(self, sheet: WrittenSheet, verdict: Verdict | None) -> None:
        """Counts one sheet in; None where the reader fell over."""
        self.sheets += 1
        if verdict is None:
            self.fell += 1
            return
        self.clean += sheet.fault is None
        self.alarmed += bool(verdict.alarms)
        self.judged += verdict.parts is not None
        for check in CHECKS:
            self.right[check] += bool(getattr(verdict, check))
        self.sizes += verdict.sizes
        if verdict.fault:
            self.faults[verdict.fault] += 1

    def row(self) -> str:
        """Gives the counts as a row of the table."""
        wrong = [self.judged - self.right[check] for check in CHECKS]
        sizes = sorted(self.sizes)
        size = f"{sizes[int(len(sizes) * 0.99)]:9.3f}" if sizes else "        -"
        missed = self.faults.total() - self.faults["found"]
        return (
            f"{self.sheets:6d} {self.fell:5d} {self.judged:7d}"
            + "".join(f"{n or '.':>9}" for n in wrong)
            + f"{size} {missed or '.':>6}/{self.faults.total():<4d}"
            + f" {self.alarmed or '.':>5}/{self.clean}"
        )


HEAD = "sheets  fell  judged    parts   groups features     tabs  size p99  missed/of   alarms/of"


@dataclass
class SheetTable:
    """All that was counted, and in words what was wrong with which sheet."""

    whole: SheetTally = field(default_factory=SheetTally)
    by_habit: dict[tuple[str, str], SheetTally] = field(
        default_factory=lambda: defaultdict(SheetTally)
    )
    by_fault: dict[str, SheetTally] = field(default_factory=lambda: defaultdict(SheetTally))
    alarms: Counter[str] = field(default_factory=Counter)
    weak: list[str] = field(default_factory=list)
    wholly: int = 0
    spent: float = 0.0

    def add(self, sheet: WrittenSheet, read: Reader) -> None:
        """Has one sheet read and counts it in."""
        began = time.process_time()
        verdict, why = read_and_judge(sheet, read)
        self.spent += time.process_time() - began
        for tally in [self.whole, *(self.by_habit[row] for row in sheet.habits)]:
            tally.add(sheet, verdict)
        self.by_fault[sheet.fault.kind if sheet.fault else "clean"].add(sheet, verdict)
        if verdict:
            self.alarms.update(set(verdict.alarms))
        self.wholly += not why
        self.weak += [f"{sheet.seed}: {line}" for line in why]

    def rows(self) -> Iterator[str]:
        """Gives the table: all sheets, by habit, by fault, then what to look at first."""
        yield f"{'':34s}{HEAD}"
        yield f"{'all':34s}{self.whole.row()}"
        for (habit, choice), tally in sorted(self.by_habit.items()):
            yield f"{habit + ': ' + choice:34s}{tally.row()}"
        yield ""
        for kind, tally in sorted(self.by_fault.items()):
            told = ", ".join(f"{n} {how}" for how, n in tally.faults.most_common())
            yield f"{kind:34s}{tally.row()}   {told}"
        count = self.whole.sheets
        yield ""
        yield f"wholly right: {self.wholly} of {count}"
        yield f"false alarms on clean sheets: {dict(self.alarms.most_common())}"
        yield f"reading took {1000 * self.spent / max(count, 1):.1f} ms a sheet"
        yield from self.weak[:60]

    def figures(self) -> Iterator[tuple[str, str, str]]:
        """Gives what is worth keeping: of what, the figure, what is wanted."""
        whole = self.whole
        for check in CHECKS:
            wrong = whole.judged - whole.right[check]
            yield f"sheets of other workshops: {check} wrong", f"{wrong} of {whole.judged}", "none"
        missed = whole.faults.total() - whole.faults["found"]
        yield (
            "sheets of other workshops: faults missed",
            f"{missed} of {whole.faults.total()}",
            "none",
        )
        yield "clean sheets with a false alarm", f"{whole.alarmed} of {whole.clean}", "none"
        if sizes := sorted(whole.sizes):
            size = f"{sizes[int(len(sizes) * 0.99)]:.4f} mm"
            yield "sheets of other workshops: sizes off, 99 of 100", size, "≤ 0.01 mm"


def measure(count: int, first: int, read: Reader) -> SheetTable:
    """Has many sheets read."""
    table = SheetTable()
    for seed in range(first, first + count):
        table.add(make_sheet(seed), read)
    return table


def read_and_judge(sheet: WrittenSheet, read: Reader) -> tuple[Verdict | None, list[str]]:
    """Has one sheet read; what is wrong is told in words."""
    try:
        found = read(sheet.text, sheet.thickness, sheet.size, sheet.zero, sheet.bit)
    except NotImplementedError:
        raise
    except Exception as fell:  # noqa: BLE001
        return None, [f"fell over: {fell!r}"]
    verdict = judge(sheet, found)
    told = verdict.told[:3]
    if verdict.fault not in {"", "found"}:
        assert sheet.fault
        told.append(f"{sheet.fault.kind} {verdict.fault}: {sheet.fault.lines[:3]}")
    return verdict, told + [f"alarm {kind}" for kind in sorted(set(verdict.alarms))]
