"""Many push at once: the site's row is let go before the disk has it, and nobody is told sooner.

A commit that waits for the disk holds the row as long, so stations that push at once waited for
the disk one after the other. Now a push commits without waiting, and then waits together with the
others. What is in the log before another commit is on the disk before it: so a power cut leaves
the history's beginning, of whatever length, and of what is gone nobody has been told anything.
Whoever reads entries waits for the same: until all that it saw is on the disk.
"""

from alembic import context, op

revision = "3"
down_revision = "2"

# A commit waits for the disk only if it wrote something. Here that is a lock on a row that nobody
# else waits for: one a station, and a lock of this kind bars no other of its kind.
SETTLE = """
CREATE TABLE shop.mark (role text PRIMARY KEY);

CREATE FUNCTION shop.settle() RETURNS boolean
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
BEGIN
    PERFORM FROM shop.mark m WHERE m.role = session_user FOR KEY SHARE;
    IF NOT FOUND THEN
        INSERT INTO shop.mark VALUES (session_user) ON CONFLICT DO NOTHING;
    END IF;
    RETURN true;
END $$;
"""

# It has the caller's own rights, for only so may it commit. Lists come as JSON.
SHARE = """
CREATE PROCEDURE shop.share(
    at_head bigint, at_digest bytea, with_format integer, has_read json,
    ids json, verdicts json, written json, bodies json,
    INOUT outcome text, INOUT number bigint, INOUT digest bytea, INOUT format integer
) LANGUAGE plpgsql AS $$
BEGIN
    SET LOCAL synchronous_commit = off;
    SELECT p.outcome, p.number, p.digest, p.format INTO outcome, number, digest, format
    FROM shop.push(
        at_head, at_digest, with_format,
        ARRAY(SELECT pg_catalog.json_array_elements_text(has_read)),
        ARRAY(SELECT pg_catalog.json_array_elements_text(ids)),
        ARRAY(SELECT pg_catalog.json_array_elements_text(verdicts)),
        ARRAY(SELECT pg_catalog.json_array_elements_text(written)),
        ARRAY(SELECT pg_catalog.json_array_elements_text(bodies))
    ) p;
    COMMIT;
    PERFORM shop.settle();
END $$;
"""

RIGHTS = """
REVOKE ALL ON ALL ROUTINES IN SCHEMA shop FROM PUBLIC;
GRANT EXECUTE ON FUNCTION shop.settle() TO "{stations}";
GRANT EXECUTE ON PROCEDURE shop.share(
    bigint, bytea, integer, json, json, json, json, json, text, bigint, bytea, integer
) TO "{stations}";
"""


def upgrade() -> None:
    """Adds the procedure beside `push`, which older programs go on calling."""
    rights = RIGHTS.format(stations=context.config.attributes["stations"])
    for part in (SETTLE, SHARE, rights):
        op.get_bind().exec_driver_sql(part)


def downgrade() -> None:
    """There is no way back: the history is never deleted."""
    raise NotImplementedError
