"""A real PostgreSQL for the whole session, and a fresh shop's database for each test."""

from collections.abc import Iterator

import pytest

from tests.server import Server
from tests.sharing.shop import Shop, found


@pytest.fixture(scope="session")
def server() -> Iterator[Server]:
    running = Server()
    yield running
    running.remove()


@pytest.fixture
def shop(server: Server) -> Iterator[Shop]:
    made = found(server)
    yield made
    server.drop(made.database)  # hundreds of them at the end took two minutes
