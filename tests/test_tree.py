"""The tests' tree mirrors the program's: who changes a package finds its tests by its name."""

from pathlib import Path

import pytest

import station

HOME = Path(station.__file__).parent
TESTS = Path(__file__).parent
PACKAGES = sorted(p.parent.relative_to(HOME) for p in HOME.glob("*/__init__.py"))


@pytest.mark.parametrize("package", PACKAGES, ids=str)
def test_each_package_has_its_folder_of_tests(package):
    assert list((TESTS / package).rglob("test_*.py")), f"tests/{package} has no tests"
