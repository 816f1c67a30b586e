"""A push takes the server less time, and nothing is judged in another way.

To begin a query costs the server more than what it finds in a body: loops and paths read bodies
now. And what others wrote since is sought in a range of numbers with both its ends: with one end
alone the server read the whole history for it, once it knew how long that is.
"""

from alembic import context, op

revision = "4"
down_revision = "3"

# As before, but for two values of one name, which are refused wherever they stand. Of two such
# values `jsonb` keeps the last, and so loses a colon, of which each name has one. It would gain
# one only where a text has it in disguise, as no station writes it.
READ = r"""
CREATE OR REPLACE FUNCTION shop.read_body(body text) RETURNS jsonb
LANGUAGE plpgsql IMMUTABLE SET search_path = pg_catalog, pg_temp
SET standard_conforming_strings = on AS $$
DECLARE
    plain text := replace(replace(body, '\\', '\u005c'), '\u0000', '\ufffd');
    found jsonb := plain::jsonb;
BEGIN
    IF jsonb_typeof(found -> 'act') IS DISTINCT FROM 'object' THEN
        RAISE EXCEPTION 'a body names an act' USING ERRCODE = 'data_exception';
    END IF;
    IF strpos(plain, '\u003a') > 0 OR strpos(plain, '\u003A') > 0
        OR octet_length(plain) - octet_length(replace(plain, ':', ''))
        <> octet_length(found::text) - octet_length(replace(found::text, ':', ''))
    THEN
        RAISE EXCEPTION 'a body says one thing twice' USING ERRCODE = 'data_exception';
    END IF;
    RETURN found;
END $$;
"""

# As `effects.writes` on a station: the names of all that an entry changes, each once: among few
# the next one is looked for; of more than 60 those named twice are dropped at the end.
WRITTEN = """
CREATE OR REPLACE FUNCTION shop.written(body jsonb) RETURNS text[]
LANGUAGE plpgsql IMMUTABLE SET search_path = pg_catalog, pg_temp AS $$
DECLARE
    moves jsonb := body -> 'moves';
    sets jsonb := body -> 'sets';
    spot jsonb;
    name text;
    names text[] := ARRAY[
        'act/' || (body #>> '{act,id}'), 'about/' || coalesce(body #>> '{act,subject}', '')];
BEGIN
    FOR n IN 0 .. coalesce(jsonb_array_length(moves), 0) - 1 LOOP
        FOR side IN 2 .. 3 LOOP
            spot := moves -> n -> side;
            FOREACH name IN ARRAY ARRAY[
                'at/' || (spot ->> 0) || '/' || (spot ->> 1), 'stock/' || (spot ->> 1),
                'place/' || (spot ->> 0)]
            LOOP
                IF cardinality(names) > 60 OR name <> ALL (names) THEN
                    names := names || name;
                END IF;
            END LOOP;
        END LOOP;
    END LOOP;
    FOR n IN 0 .. coalesce(jsonb_array_length(sets), 0) - 1 LOOP
        FOREACH name IN ARRAY ARRAY[
            sets -> n ->> 0, 'shelf/' || (sets -> n -> 1 ->> 1),
            'shelf/' || (sets -> n -> 2 ->> 1)]
        LOOP
            IF cardinality(names) > 60 OR name <> ALL (names) THEN
                names := names || name;
            END IF;
        END LOOP;
    END LOOP;
    IF body ? 'readings' THEN
        names := names || ARRAY(
            SELECT DISTINCT 'series/' || subject || '/' || (reading ->> 'kind')
            FROM jsonb_array_elements(body -> 'readings') reading,
                LATERAL unnest(ARRAY[
                    reading ->> 'subject', 'part/' || nullif(reading ->> 'part', ''),
                    'router/' || nullif(reading ->> 'router', ''),
                    'bit/' || nullif(reading ->> 'bit', '')]) subject
        );
    END IF;
    IF cardinality(names) > 60 THEN
        names := ARRAY(SELECT DISTINCT unnest(names));
    END IF;
    RETURN array_remove(names, NULL);
END $$;
"""

# As before; gives the body, so that all that is asked of it is one expression.
JUDGE = """
DROP FUNCTION shop.judge(shop.site, shop.station, text, jsonb);
CREATE FUNCTION shop.judge(
    id text, body jsonb, mine text, in_office boolean, brings_back boolean
) RETURNS jsonb
LANGUAGE plpgsql IMMUTABLE SET search_path = pg_catalog, pg_temp AS $$
BEGIN
    IF body #>> '{act,id}' IS DISTINCT FROM id THEN
        RAISE EXCEPTION 'the body is that of another act' USING ERRCODE = 'data_exception';
    END IF;
    IF body #>> '{act,station}' IS DISTINCT FROM mine THEN
        IF brings_back IS NOT TRUE THEN
            RAISE EXCEPTION 'that is an act of another station' USING ERRCODE = 'SH001';
        END IF;
    ELSIF jsonb_path_exists(
        body, '$.sets[*][0] ? (@ starts with "station/" && @ != $mine)',
        jsonb_build_object('mine', 'station/' || mine))
    THEN
        RAISE EXCEPTION 'that tells how another station is' USING ERRCODE = 'SH001';
    END IF;
    IF in_office IS NOT TRUE AND jsonb_path_exists(
        body, '$.sets[*][0] ? (@ like_regex "^(shop|worker|reason)/")')
    THEN
        RAISE EXCEPTION 'people, PINs, reasons and settings come from the office'
            USING ERRCODE = 'SH002';
    END IF;
    RETURN body;
END $$;
"""

# As `push` did it. That a row is there already is asked where others wrote since: who knows the
# history to its end has it, and is held off by the key.
APPEND = """
CREATE FUNCTION shop.append(
    at_head bigint, at_digest bytea, with_format integer, has_read text[],
    ids text[], verdicts text[], bodies text[],
    OUT outcome text, OUT number bigint, OUT digest bytea, OUT format integer
) LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
#variable_conflict use_variable
DECLARE
    home text;
    mine text;
    in_office boolean;
    was_put_back boolean;
    is_cut_off boolean;
    before bytea;
    found text[] := '{}';
BEGIN
    IF current_setting('transaction_isolation') <> 'read committed' THEN
        RAISE EXCEPTION 'push wants read committed' USING ERRCODE = 'active_sql_transaction';
    END IF;
    IF (cardinality(ids) BETWEEN 1 AND 1000) IS NOT TRUE
       OR cardinality(verdicts) <> cardinality(ids)
       OR cardinality(bodies) <> cardinality(ids) THEN
        RAISE EXCEPTION 'a push takes 1 to 1000 whole entries' USING ERRCODE = 'data_exception';
    END IF;
    SELECT s.number, s.number = ANY (t.office) OR t.office = '{}',
        t.put_back_at > clock_timestamp() - interval '7 days',
        t.held_by = s.number AND t.held_at > clock_timestamp() - interval '1 min'
    INTO STRICT mine, in_office, was_put_back, is_cut_off
    FROM shop.site t, shop.station s WHERE s.role = session_user;
    IF is_cut_off THEN
        RAISE EXCEPTION 'this station held sharing up and is cut off for a minute'
            USING ERRCODE = 'SH003';
    END IF;
    FOR n IN 1 .. cardinality(ids) LOOP
        IF (length(ids[n]) BETWEEN 1 AND 80) IS NOT TRUE OR length(verdicts[n]) > 4000
           OR octet_length(bodies[n]) > 16777216 THEN
            RAISE EXCEPTION 'an id of 1 to 80 signs, a verdict of 4000, a body of 16 MB at most'
                USING ERRCODE = 'data_exception';
        END IF;
        found := found || shop.written(shop.judge(
            ids[n], shop.read_body(bodies[n]), mine, in_office, in_office AND was_put_back))::text;
    END LOOP;
    SELECT t.id, t.number, t.digest, t.format INTO STRICT home, number, digest, format
    FROM shop.site t FOR UPDATE;
    IF with_format < format THEN
        outcome := 'too old'; RETURN;
    END IF;
    IF at_head = number THEN
        before := digest;
    ELSIF at_head = 0 THEN
        before := '';
    ELSE
        SELECT e.digest INTO before FROM shop.entry e WHERE e.site = home AND e.number = at_head;
    END IF;
    IF before IS DISTINCT FROM at_digest THEN
        outcome := 'differs'; RETURN;
    END IF;
    IF number > at_head THEN
        IF number - at_head > 1000 OR EXISTS (
            SELECT FROM shop.entry e
            WHERE e.site = home AND e.number BETWEEN at_head + 1 AND number
                AND e.writes && has_read
        ) OR EXISTS (SELECT FROM shop.entry e WHERE e.site = home AND e.id = ANY (ids)) THEN
            outcome := 'behind'; RETURN;
        END IF;
    END IF;
    FOR n IN 1 .. cardinality(ids) LOOP
        number := number + 1;
        digest := sha256(digest || convert_to(ids[n] || E'\\n' || bodies[n], 'UTF8'));
        INSERT INTO shop.entry VALUES (
            home, number, ids[n], verdicts[n], found[n]::text[], bodies[n], digest,
            session_user, clock_timestamp()
        );
    END LOOP;
    UPDATE shop.site SET number = append.number, digest = append.digest;
    outcome := 'pushed';
END $$;
"""

# For older programs.
PUSH = """
CREATE OR REPLACE FUNCTION shop.push(
    at_head bigint, at_digest bytea, with_format integer, has_read text[],
    ids text[], verdicts text[], written text[], bodies text[]
) RETURNS TABLE (outcome text, number bigint, digest bytea, format integer)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
BEGIN
    IF cardinality(written) <> cardinality(ids) THEN
        RAISE EXCEPTION 'a push takes 1 to 1000 whole entries' USING ERRCODE = 'data_exception';
    END IF;
    RETURN QUERY SELECT a.outcome, a.number, a.digest, a.format FROM shop.append(
        at_head, at_digest, with_format, has_read, ids, verdicts, bodies) a;
END $$;
"""

# As `share`, which older programs go on calling: it lets the row go before the disk has what is
# appended. It has the caller's own rights, for only so may it commit.
APPEND_AND_SETTLE = """
CREATE PROCEDURE shop.append_and_settle(
    at_head bigint, at_digest bytea, with_format integer, has_read text[],
    ids text[], verdicts text[], bodies text[],
    INOUT outcome text, INOUT number bigint, INOUT digest bytea, INOUT format integer
) LANGUAGE plpgsql AS $$
DECLARE
    done record;
    settled boolean;
BEGIN
    SET LOCAL synchronous_commit = off;
    done := shop.append(at_head, at_digest, with_format, has_read, ids, verdicts, bodies);
    outcome := done.outcome; number := done.number; digest := done.digest; format := done.format;
    COMMIT;
    settled := shop.settle();
END $$;
"""

RIGHTS = """
REVOKE ALL ON ALL ROUTINES IN SCHEMA shop FROM PUBLIC;
GRANT EXECUTE ON FUNCTION shop.append(
    bigint, bytea, integer, text[], text[], text[], text[]) TO "{stations}";
GRANT EXECUTE ON PROCEDURE shop.append_and_settle(
    bigint, bytea, integer, text[], text[], text[], text[], text, bigint, bytea, integer
) TO "{stations}";
"""


def upgrade() -> None:
    """Adds what is called now, and puts it behind `push`, which older programs go on calling."""
    rights = RIGHTS.format(stations=context.config.attributes["stations"])
    for part in (READ, WRITTEN, JUDGE, APPEND, PUSH, APPEND_AND_SETTLE, rights):
        op.get_bind().exec_driver_sql(part)


def downgrade() -> None:
    """There is no way back: the history is never deleted."""
    raise NotImplementedError
