"""${message}"""

from alembic import op

revision = ${repr(up_revision)}
down_revision = ${repr(down_revision)}


def upgrade() -> None:
    """Says what this step does."""
    ${upgrades if upgrades else "raise NotImplementedError"}
