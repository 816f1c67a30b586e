"""The demo shop at 10:42, built once for the files of this folder."""

from datetime import datetime

import pytest

from demo_db.build import build

NOW = datetime(2026, 11, 25, 10, 42)


@pytest.fixture(scope="session")
def demo_file(tmp_path_factory):
    """The file of a whole demo shop; nobody writes into it."""
    path = tmp_path_factory.mktemp("demo") / "shop.db"
    build(path, NOW)
    return path
