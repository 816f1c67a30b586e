"""A push of one ordinary entry meets fewer expressions yet, and holds the site's row less long.

Whose act it is stands in the name of the role that pushes, so no table is asked for it. One
statement takes the row and counts it on; the next looks for what others wrote and adds the entry
together. That a connection plans its statements once, stations ask for themselves. It is judged,
kept and answered as before.
"""

from alembic import context, op

revision = "7"
down_revision = "6"

# What only some may set has names that begin with these words. Where a text in the body does, the
# entry is not ordinary: to look into the body costs more than `append` does for the few that have
# one. Where others wrote what was read, or have the same id, the count is taken back.
APPEND_ONE = r"""
CREATE OR REPLACE FUNCTION shop.append_one(
    at_head bigint, at_digest bytea, with_format integer, has_read text[],
    id text, verdict text, body text,
    OUT outcome text, OUT number bigint, OUT digest bytea, OUT format integer
) LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
#variable_conflict use_variable
DECLARE
    home text;
    mine text;
    said jsonb;
    part jsonb;
    name text;
    named text[];
    names text[] := '{}';
BEGIN
    IF verdict = '' AND octet_length(id) BETWEEN 1 AND 80
        AND octet_length(body) < 8192 AND strpos(body, E'\\') = 0
        AND strpos(body, '"shop/') = 0 AND strpos(body, '"worker/') = 0
        AND strpos(body, '"reason/') = 0 AND strpos(body, '"station/') = 0
        AND current_setting('transaction_isolation') = 'read committed'
    THEN
        said := body::jsonb;
        mine := said #>> '{act,station}';
        IF said #>> '{act,id}' = id AND session_user = 'role of ' || mine
            AND NOT said ? 'readings'
            AND cardinality(string_to_array(body, ':'))
                = cardinality(string_to_array(said::text, ':'))
        THEN
            named := ARRAY['act/' || id, 'about/' || coalesce(said #>> '{act,subject}', '')];
            IF said ? 'moves' THEN
                FOR n IN 0 .. jsonb_array_length(said -> 'moves') - 1 LOOP
                    FOR side IN 2 .. 3 LOOP
                        part := said -> 'moves' -> n -> side;
                        named := named || ARRAY[
                            'at/' || (part ->> 0) || '/' || (part ->> 1),
                            'stock/' || (part ->> 1), 'place/' || (part ->> 0)];
                    END LOOP;
                END LOOP;
            END IF;
            IF said ? 'sets' THEN
                FOR n IN 0 .. jsonb_array_length(said -> 'sets') - 1 LOOP
                    part := said -> 'sets' -> n;
                    named := named || ARRAY[
                        part ->> 0, 'shelf/' || (part -> 1 ->> 1), 'shelf/' || (part -> 2 ->> 1)];
                END LOOP;
            END IF;
            FOREACH name IN ARRAY named LOOP
                IF name <> ALL (names) THEN
                    names := names || name;
                END IF;
            END LOOP;
            BEGIN
                UPDATE shop.site t SET number = t.number + 1,
                    digest = sha256(t.digest || convert_to(id || E'\n' || body, 'UTF8'))
                WHERE t.held_by IS DISTINCT FROM mine AND t.format <= with_format
                    AND (t.number = at_head AND t.digest = at_digest
                        OR t.number - at_head BETWEEN 1 AND 1000 AND at_head > 0)
                RETURNING t.id, t.number, t.digest, t.format INTO home, number, digest, format;
                IF number = at_head + 1 THEN
                    INSERT INTO shop.entry VALUES (
                        home, number, id, verdict, names, body, digest,
                        session_user, clock_timestamp());
                ELSIF number IS NOT NULL THEN
                    INSERT INTO shop.entry SELECT
                        home, number, id, verdict, names, body, digest,
                        session_user, clock_timestamp()
                    WHERE NOT EXISTS (
                        SELECT FROM shop.entry e
                        WHERE e.site = home AND e.number BETWEEN at_head AND number
                            AND CASE WHEN e.number = at_head
                                THEN e.digest IS DISTINCT FROM at_digest
                                ELSE e.writes && has_read END);
                END IF;
                IF FOUND THEN
                    outcome := 'pushed';
                    RETURN;
                END IF;
                RAISE unique_violation;
            EXCEPTION WHEN unique_violation THEN
                NULL; -- it is not taken so, and `append` answers why
            END;
        END IF;
    END IF;
    SELECT a.outcome, a.number, a.digest, a.format INTO outcome, number, digest, format
    FROM shop.append(
        at_head, at_digest, with_format, has_read, ARRAY[id], ARRAY[verdict], ARRAY[body]) a;
END $$;
"""

# As before, by an expression where a statement was.
APPEND_ONE_AND_SETTLE = """
CREATE OR REPLACE PROCEDURE shop.append_one_and_settle(
    at_head bigint, at_digest bytea, with_format integer, has_read text[],
    id text, verdict text, body text,
    INOUT outcome text, INOUT number bigint, INOUT digest bytea, INOUT format integer
) LANGUAGE plpgsql AS $$
DECLARE
    until_settled text := set_config('synchronous_commit', 'off', true);
    done record;
    settled boolean;
BEGIN
    done := shop.append_one(at_head, at_digest, with_format, has_read, id, verdict, body);
    outcome := done.outcome; number := done.number; digest := done.digest; format := done.format;
    COMMIT;
    settled := shop.settle();
END $$;
"""


def upgrade() -> None:
    """Makes what is called for one entry anew."""
    append_one = APPEND_ONE.replace("role of ", context.config.attributes["station"])
    for part in (append_one, APPEND_ONE_AND_SETTLE):
        op.get_bind().exec_driver_sql(part)


def downgrade() -> None:
    """There is no way back: the history is never deleted."""
    raise NotImplementedError
