"""Every value from outside says how sure it is and who says so."""

from importlib import import_module
from pathlib import Path

import pytest

from tests.outside.value import Status, Value

HERE = Path(__file__).parent
TABLES = sorted(f.stem for f in HERE.glob("*.py") if f.stem != "value" and "test_" not in f.stem)


def values_in(found):
    """All the values in a module's constants, however deep."""
    if isinstance(found, Value):
        return [found]
    return [v for each in found for v in values_in(each)] if isinstance(found, tuple) else []


@pytest.mark.parametrize("table", TABLES)
def test_each_value_has_its_status_and_its_source(table):
    named = vars(import_module(f"tests.outside.{table}"))
    found = values_in(tuple(value for name, value in named.items() if name.isupper()))
    assert found
    assert all(isinstance(v.status, Status) and len(v.source) > 10 for v in found)


@pytest.mark.parametrize("table", TABLES)
def test_each_table_is_read_by_its_test(table):
    assert f"import {table}" in (HERE / f"test_{table}.py").read_text(encoding="utf-8")
