"""What the tests of rooms, desk and screens stand on: a small shop, played by codes."""

import pytest

from station.cutting import prepare
from tests.replay import Stage


@pytest.fixture
def stage(tmp_path):
    """A station of the small shop; in the end its ledger must agree with its history."""
    made = Stage(tmp_path)
    yield made
    assert made.ledger.check() == []
    made.ledger.close()


@pytest.fixture(scope="session")
def compiled():
    """The cut file reader, compiled once."""
    prepare.prepare_reader()
