"""Makes the tables and functions of the shop's database, and brings older ones up to date."""

from collections.abc import Callable
from pathlib import Path

from alembic import command
from alembic.config import Config
from sqlalchemy import create_engine
from sqlalchemy.pool import NullPool

from station.sharing.roles import Names, Session

STEPS = Path(__file__).resolve().parent / "migrations"


def up_to_date(connect: Callable[[], Session], names: Names) -> None:
    """Takes every step that the database has not taken yet, all in one transaction."""
    config = Config()
    config.set_main_option("script_location", str(STEPS).replace("%", "%%"))
    engine = create_engine("postgresql+psycopg://", creator=connect, poolclass=NullPool)
    with engine.begin() as connection:
        config.attributes.update(
            connection=connection,
            owner=names.owner,
            stations=names.stations,
            station=names.station(""),
            cards=names.cards,
        )
        command.upgrade(config, "head")
