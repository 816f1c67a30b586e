"""Whatever looks sound is taken in, and no screen fails: a sample of ``python -m tests.forge``."""

import pytest

from tests import forge

pytestmark = pytest.mark.slow


def test_no_screen_fails_on_what_is_taken_in(monkeypatch):
    monkeypatch.setattr(forge, "AFRESH", 8)
    _, wrong = forge.run(16, seed=7)
    assert wrong == []
