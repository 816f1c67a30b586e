"""A push among many plans nothing anew, and gives what it gave.

Once the server knew how long the history is, it planned anew at every push how to look at what
others wrote since. That took longer than looking, and all that time the push held the site's row.
"""

from alembic import op

revision = "5"
down_revision = "4"

PLANNED_ONCE = "ALTER FUNCTION shop.append SET plan_cache_mode = force_generic_plan"


def upgrade() -> None:
    """Has each connection plan the statements of `append` once."""
    op.get_bind().exec_driver_sql(PLANNED_ONCE)


def downgrade() -> None:
    """There is no way back: the history is never deleted."""
    raise NotImplementedError
