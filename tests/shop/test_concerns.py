"""What needs a look is kept as template and values, so that every language can say it."""

import ast
from pathlib import Path

import pytest

HOME = Path(__file__).resolve().parent.parent.parent


@pytest.mark.slow
def test_no_text_of_a_concern_is_joined_in_english() -> None:
    joined = [
        f"{file.relative_to(HOME)}:{value.lineno}"
        for file in sorted((HOME / "station").rglob("*.py"))
        for call in ast.walk(ast.parse(file.read_text("utf-8")))
        if isinstance(call, ast.Call) and getattr(call.func, "id", "") == "Concern"
        for value in (k.value for k in call.keywords if k.arg == "text")
        if any(isinstance(part, ast.JoinedStr) for part in ast.walk(value))
    ]
    assert joined == []
