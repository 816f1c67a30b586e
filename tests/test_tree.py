"""The tests' tree mirrors the program's: who changes a package finds its tests by its name."""

import re
from collections import Counter
from pathlib import Path

import pytest

import station

HOME = Path(station.__file__).parent
TESTS = Path(__file__).parent
ROW = re.compile(r"row_[0-9{]")  # a row's place; `tests.touch` finds it by what it says
CARD = "the printed card of a row is what is tested"
ANY = "a walk at random takes any row"
PAINTED = "a screen made up for the painter: its codes are only sent"
BY_PLACE = {  # files with lines that name a row's place: how many lines, and why
    "answers.py": (6, ANY),
    "bench_wide.py": (4, "any row of either shop is timed alike"),
    "commands/test_outputs.py": (1, "a text station is sent the card of a row"),
    "floor/test_cart.py": (4, CARD),
    "floor/test_intake.py": (2, CARD),
    "floor/test_loading_walk.py": (1, ANY),
    "floor/test_packing_close.py": (1, CARD),
    "floor/test_packing_hand.py": (2, CARD),
    "floor/test_popping_first.py": (2, "the card of a row is taken where a screen has none"),
    "floor/test_packing_walk.py": (2, ANY),
    "floor/test_plan.py": (1, CARD),
    "ledger/kept/day.txt": (4, "played by the program of then, whose words were others"),
    "ledger/kept/hands.json": (1, "kept by the program of then"),
    "ledger/kept/hands.txt": (3, "played by the program of then, whose words were others"),
    "ledger/test_before.py": (1, "a code that a screen of then did not have"),
    "look/samples.py": (10, PAINTED),
    "look/test_window.py": (2, PAINTED),
    "machine/test_held_walks.py": (1, ANY),
    "machine/test_machine.py": (1, ANY),
    "many_errands.py": (1, ANY),
    "queries/test_looks.py": (1, "every row of every page is touched"),
    "sharing/test_malformed_fuzz.py": (1, "whatever stands there: it must be shown"),
    "simulate/errands.py": (2, ANY),
    "simulate/world.py": (1, "whatever stands there: it must be shown"),
    "window/test_decisions.py": (1, "whatever row is chosen, the screen must fit"),
    "window/test_office_fits.py": (1, "the last row of a longer page is what is tested"),
    "touch.py": (1, "the card of a row that is not there"),
}
PACKAGES = sorted(p.parent.relative_to(HOME) for p in HOME.glob("*/__init__.py"))


@pytest.mark.parametrize("package", PACKAGES, ids=str)
def test_each_package_has_its_folder_of_tests(package):
    assert list((TESTS / package).rglob("test_*.py")), f"tests/{package} has no tests"


def test_rows_are_found_by_what_they_say():
    """Longer lists break no test; what names a row's place is known, with its reason."""
    found: Counter[str] = Counter()
    for file in sorted(f for f in TESTS.rglob("*") if f.suffix in {".py", ".txt", ".json"}):
        lines = file.read_text(encoding="utf-8").splitlines() if file != Path(__file__) else ()
        found[file.relative_to(TESTS).as_posix()] += sum(1 for line in lines if ROW.search(line))
    by_place = {name: lines for name, (lines, _) in BY_PLACE.items()}
    assert {name: lines for name, lines in found.items() if lines} == by_place


def test_the_top_level_holds_what_the_project_is_made_of_and_no_more():
    """What a command writes there by a slip is committed by the next slip."""
    named = {path.name for path in TESTS.parent.iterdir()}
    made = {"build", "dist", "__pycache__", "station.egg-info"}
    seen = {name for name in named - made if not name.startswith(".")}
    assert seen == {
        "README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml",
        "station", "resources", "tests", "demo_db",
    }  # fmt: skip
