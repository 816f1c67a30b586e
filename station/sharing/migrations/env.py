"""Runs the steps of the shop's database on the connection that is handed in, as its owner."""

from alembic import context
from sqlalchemy import text

connection = context.config.attributes["connection"]
owner = context.config.attributes["owner"]

context.configure(connection=connection, version_table="step", version_table_schema="shop")
connection.execute(text(f'SET LOCAL ROLE "{owner}"'))
context.run_migrations()
connection.execute(text("RESET ROLE"))
