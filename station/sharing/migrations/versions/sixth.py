"""A push of one ordinary entry takes the server half as much, and is judged as before.

Nearly every push brings one act, right after its scan. In each transaction the server sets up anew
every expression that it comes by, and looks up whether each function in it may be called: that
took it longer than what the expressions find. So an ordinary entry meets few of them, and its own
function; whatever is not ordinary goes to `append`, which judges, refuses and answers as ever.
"""

from alembic import context, op

revision = "6"
down_revision = "5"

# An entry is ordinary if it is short, says everything once and without disguise, is an act of the
# station that pushes, and sets nothing that only some may set. Only what is sure to be taken is
# written here: no refusal and no other answer comes from anywhere but `append`. Without a
# backslash each text stands in the body as it is, so of two values of one name a colon is lost
# (as in `read_body`). What is named as written is what `written` names.
APPEND_ONE = r"""
CREATE FUNCTION shop.append_one(
    at_head bigint, at_digest bytea, with_format integer, has_read text[],
    id text, verdict text, body text,
    OUT outcome text, OUT number bigint, OUT digest bytea, OUT format integer
) LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp
SET plan_cache_mode = force_generic_plan AS $$
#variable_conflict use_variable
DECLARE
    home text;
    mine text;
    found jsonb;
    part jsonb;
    name text;
    named text[];
    names text[] := '{}';
    fitting bigint;
BEGIN
    SELECT s.number INTO mine FROM shop.site t, shop.station s
    WHERE s.role = session_user AND t.held_by IS DISTINCT FROM s.number;
    IF mine IS NOT NULL AND current_setting('transaction_isolation') = 'read committed'
        AND verdict = '' AND octet_length(id) BETWEEN 1 AND 80
        AND octet_length(body) < 8192 AND strpos(body, E'\\') = 0
    THEN
        found := body;
        IF found #>> '{act,id}' = id AND found #>> '{act,station}' = mine
            AND jsonb_path_match(found, '!exists($.readings) && !exists($.sets[*][0] ? (
                @ starts with "shop/" || @ starts with "worker/" || @ starts with "reason/"
                || @ starts with "station/"))')
            AND cardinality(string_to_array(body, ':'))
                = cardinality(string_to_array(found::text, ':'))
        THEN
            named := ARRAY['act/' || id, 'about/' || coalesce(found #>> '{act,subject}', '')];
            IF found ? 'moves' THEN
                FOR n IN 0 .. jsonb_array_length(found -> 'moves') - 1 LOOP
                    FOR side IN 2 .. 3 LOOP
                        part := found -> 'moves' -> n -> side;
                        named := named || ARRAY[
                            'at/' || (part ->> 0) || '/' || (part ->> 1),
                            'stock/' || (part ->> 1), 'place/' || (part ->> 0)];
                    END LOOP;
                END LOOP;
            END IF;
            IF found ? 'sets' THEN
                FOR n IN 0 .. jsonb_array_length(found -> 'sets') - 1 LOOP
                    part := found -> 'sets' -> n;
                    named := named || ARRAY[
                        part ->> 0, 'shelf/' || (part -> 1 ->> 1), 'shelf/' || (part -> 2 ->> 1)];
                END LOOP;
            END IF;
            FOREACH name IN ARRAY named LOOP
                IF name <> ALL (names) THEN
                    names := names || name;
                END IF;
            END LOOP;
            SELECT t.id, t.number, t.digest, t.format INTO STRICT home, number, digest, format
            FROM shop.site t FOR UPDATE;
            IF number > at_head AND number - at_head <= 1000 THEN
                SELECT count(*) INTO fitting FROM shop.entry e
                WHERE e.site = home AND e.number BETWEEN at_head AND number
                    AND CASE WHEN e.number = at_head THEN e.digest = at_digest
                        ELSE (e.writes && has_read) IS NOT TRUE END;
            END IF;
            IF with_format >= format AND (
                at_head = number AND at_digest = digest OR fitting = number - at_head + 1)
            THEN
                number := number + 1;
                digest := sha256(digest || convert_to(id || E'\n' || body, 'UTF8'));
                BEGIN
                    INSERT INTO shop.entry VALUES (
                        home, number, id, verdict, names, body, digest,
                        session_user, clock_timestamp());
                    outcome := 'pushed';
                EXCEPTION WHEN unique_violation THEN
                    NULL; -- it is there already, and `append` answers that
                END;
                IF outcome = 'pushed' THEN
                    UPDATE shop.site SET number = append_one.number, digest = append_one.digest;
                    RETURN;
                END IF;
            END IF;
        END IF;
    END IF;
    SELECT a.outcome, a.number, a.digest, a.format INTO outcome, number, digest, format
    FROM shop.append(
        at_head, at_digest, with_format, has_read, ARRAY[id], ARRAY[verdict], ARRAY[body]) a;
END $$;
"""

# As `append_and_settle`, for one entry.
APPEND_ONE_AND_SETTLE = """
CREATE PROCEDURE shop.append_one_and_settle(
    at_head bigint, at_digest bytea, with_format integer, has_read text[],
    id text, verdict text, body text,
    INOUT outcome text, INOUT number bigint, INOUT digest bytea, INOUT format integer
) LANGUAGE plpgsql AS $$
DECLARE
    done record;
    settled boolean;
BEGIN
    SET LOCAL synchronous_commit = off;
    done := shop.append_one(at_head, at_digest, with_format, has_read, id, verdict, body);
    outcome := done.outcome; number := done.number; digest := done.digest; format := done.format;
    COMMIT;
    settled := shop.settle();
END $$;
"""

RIGHTS = """
REVOKE ALL ON ALL ROUTINES IN SCHEMA shop FROM PUBLIC;
GRANT EXECUTE ON FUNCTION shop.append_one(
    bigint, bytea, integer, text[], text, text, text) TO "{stations}";
GRANT EXECUTE ON PROCEDURE shop.append_one_and_settle(
    bigint, bytea, integer, text[], text, text, text, text, bigint, bytea, integer
) TO "{stations}";
"""


def upgrade() -> None:
    """Adds what is called for one entry, beside `append`, which is called for several."""
    rights = RIGHTS.format(stations=context.config.attributes["stations"])
    for part in (APPEND_ONE, APPEND_ONE_AND_SETTLE, rights):
        op.get_bind().exec_driver_sql(part)


def downgrade() -> None:
    """There is no way back: the history is never deleted."""
    raise NotImplementedError
