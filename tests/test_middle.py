"""Who stands in between learns nothing: of ``python -m tests.middle``."""

import shutil

import pytest

from tests import middle

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(not shutil.which("openssl"), reason="nothing makes a certificate here"),
]


def test_nothing_secret_comes_to_who_stands_in_between(monkeypatch):
    monkeypatch.setattr(middle.secret, "_in_keyring", lambda *_: False)
    tried, wrong = middle.run(every=11)
    assert wrong == []
    assert tried > 40
