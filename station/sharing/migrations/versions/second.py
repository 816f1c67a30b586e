"""A stolen station password does as little as it can: what comes is held against who pushes.

A station shares its own acts alone; what an act writes the server works out of its body; people,
PINs, reasons and the shop's settings come from the office's PCs, which the owner names; and who
holds the site's row is cut off.
"""

from alembic import context, op

revision = "2"
down_revision = "1"

COLUMNS = """
ALTER TABLE shop.site
    ADD COLUMN office text[] NOT NULL DEFAULT '{}',
    ADD COLUMN put_back_at timestamptz,
    ADD COLUMN held_by text,
    ADD COLUMN held_at timestamptz;
"""

# Of a shop of before, the office is where such things have been set up to now; the PC that
# brought the history along is known by the words that stand for its role.
OFFICE_OF_BEFORE = """
UPDATE shop.site SET office = ARRAY(
    SELECT s.number FROM shop.station s WHERE EXISTS (
        SELECT FROM shop.entry e
        WHERE e.pushed_by = 'station ' || s.number OR e.pushed_by = s.role AND EXISTS (
            SELECT FROM unnest(e.writes) name WHERE name ~ '^(shop|worker|reason)/'
        )
    ) ORDER BY length(s.number), s.number
);
"""

# A body as the server reads it. NUL, which it cannot hold, is read as another sign; two values
# of one name are refused, so that nobody can read another one than is judged here.
READ = r"""
CREATE FUNCTION shop.read_body(body text) RETURNS jsonb
LANGUAGE plpgsql IMMUTABLE SET search_path = pg_catalog, pg_temp
SET standard_conforming_strings = on AS $$
DECLARE
    plain json := replace(replace(body, '\\', '\u005c'), '\u0000', '\ufffd')::json;
    found jsonb := plain::jsonb;
BEGIN
    IF jsonb_typeof(found) <> 'object' OR jsonb_typeof(found -> 'act') <> 'object' THEN
        RAISE EXCEPTION 'a body names an act' USING ERRCODE = 'data_exception';
    END IF;
    IF (SELECT count(*) FROM json_object_keys(plain))
        + (SELECT count(*) FROM json_object_keys(plain -> 'act'))
        <> (SELECT count(*) FROM jsonb_object_keys(found))
        + (SELECT count(*) FROM jsonb_object_keys(found -> 'act'))
    THEN
        RAISE EXCEPTION 'a body says one thing twice' USING ERRCODE = 'data_exception';
    END IF;
    RETURN found;
END $$;
"""

# As `effects.writes` on a station: the names of all that an entry changes.
WRITTEN = """
CREATE FUNCTION shop.written(body jsonb) RETURNS text[]
LANGUAGE sql IMMUTABLE SET search_path = pg_catalog, pg_temp AS $$
    SELECT array_agg(DISTINCT name) FROM (
        SELECT 'act/' || (body #>> '{act,id}') AS name
        UNION ALL SELECT 'about/' || coalesce(body #>> '{act,subject}', '')
        UNION ALL
        SELECT unnest(ARRAY['at/' || place || '/' || batch, 'stock/' || batch, 'place/' || place])
        FROM jsonb_array_elements(coalesce(body -> 'moves', '[]')) move,
            LATERAL (VALUES (move -> 2), (move -> 3)) spots (spot),
            LATERAL (SELECT spot ->> 0, spot ->> 1) ends (place, batch)
        UNION ALL
        SELECT unnest(ARRAY[
            change ->> 0, 'shelf/' || (change #>> '{1,1}'), 'shelf/' || (change #>> '{2,1}')])
        FROM jsonb_array_elements(coalesce(body -> 'sets', '[]')) change
        UNION ALL
        SELECT 'series/' || subject || '/' || (reading ->> 'kind')
        FROM jsonb_array_elements(coalesce(body -> 'readings', '[]')) reading,
            LATERAL unnest(ARRAY[
                reading ->> 'subject', 'part/' || nullif(reading ->> 'part', ''),
                'router/' || nullif(reading ->> 'router', ''),
                'bit/' || nullif(reading ->> 'bit', '')]) subject
    ) names WHERE name IS NOT NULL
$$;
"""

# Who pushes what is not its own gets no place in the history. After an older day was put back
# the office brings again what other stations did.
JUDGE = """
CREATE FUNCTION shop.judge(here shop.site, mine shop.station, id text, body jsonb) RETURNS void
LANGUAGE plpgsql SET search_path = pg_catalog, pg_temp AS $$
DECLARE
    in_office boolean := mine.number = ANY (here.office) OR here.office = '{}';
BEGIN
    IF here.held_by = mine.number AND here.held_at > clock_timestamp() - interval '1 min' THEN
        RAISE EXCEPTION 'this station held sharing up and is cut off for a minute'
            USING ERRCODE = 'SH003';
    END IF;
    IF body #>> '{act,id}' IS DISTINCT FROM id THEN
        RAISE EXCEPTION 'the body is that of another act' USING ERRCODE = 'data_exception';
    END IF;
    IF body #>> '{act,station}' IS DISTINCT FROM mine.number AND NOT (
        in_office AND here.put_back_at > clock_timestamp() - interval '7 days') IS TRUE
    THEN
        RAISE EXCEPTION 'that is an act of another station' USING ERRCODE = 'SH001';
    END IF;
    IF body #>> '{act,station}' = mine.number AND EXISTS (
        SELECT FROM jsonb_array_elements(coalesce(body -> 'sets', '[]')) change
        WHERE change ->> 0 ~ '^station/' AND change ->> 0 <> 'station/' || mine.number)
    THEN
        RAISE EXCEPTION 'that tells how another station is' USING ERRCODE = 'SH001';
    END IF;
    IF NOT in_office AND EXISTS (
        SELECT FROM jsonb_array_elements(coalesce(body -> 'sets', '[]')) change
        WHERE change ->> 0 ~ '^(shop|worker|reason)/')
    THEN
        RAISE EXCEPTION 'people, PINs, reasons and settings come from the office'
            USING ERRCODE = 'SH002';
    END IF;
END $$;
"""

# As before; but for who pushes what, and what it writes. What a caller says of that (`written`)
# counts for nothing: older programs go on saying it. All is read before the row is locked.
PUSH = """
CREATE OR REPLACE FUNCTION shop.push(
    at_head bigint, at_digest bytea, with_format integer, has_read text[],
    ids text[], verdicts text[], written text[], bodies text[]
) RETURNS TABLE (outcome text, number bigint, digest bytea, format integer)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
#variable_conflict use_column
DECLARE
    here shop.site;
    mine shop.station;
    before bytea;
    body jsonb;
    found text[] := '{}';
BEGIN
    IF current_setting('transaction_isolation') <> 'read committed' THEN
        RAISE EXCEPTION 'push wants read committed' USING ERRCODE = 'active_sql_transaction';
    END IF;
    IF (cardinality(ids) BETWEEN 1 AND 1000) IS NOT TRUE
       OR cardinality(verdicts) <> cardinality(ids)
       OR cardinality(written) <> cardinality(ids)
       OR cardinality(bodies) <> cardinality(ids) THEN
        RAISE EXCEPTION 'a push takes 1 to 1000 whole entries' USING ERRCODE = 'data_exception';
    END IF;
    SELECT * INTO STRICT here FROM shop.site;
    SELECT * INTO STRICT mine FROM shop.station s WHERE s.role = session_user;
    FOR n IN 1 .. cardinality(ids) LOOP
        IF (length(ids[n]) BETWEEN 1 AND 80) IS NOT TRUE OR length(verdicts[n]) > 4000
           OR octet_length(bodies[n]) > 16777216 THEN
            RAISE EXCEPTION 'an id of 1 to 80 signs, a verdict of 4000, a body of 16 MB at most'
                USING ERRCODE = 'data_exception';
        END IF;
        body := shop.read_body(bodies[n]);
        PERFORM shop.judge(here, mine, ids[n], body);
        found := found || to_json(shop.written(body))::text;
    END LOOP;
    SELECT * INTO STRICT here FROM shop.site FOR UPDATE;
    number := here.number; digest := here.digest; format := here.format;
    IF with_format < here.format THEN
        outcome := 'too old'; RETURN NEXT; RETURN;
    END IF;
    IF at_head = here.number THEN
        before := here.digest;
    ELSIF at_head = 0 THEN
        before := '';
    ELSE
        SELECT e.digest INTO before FROM shop.entry e
        WHERE e.site = here.id AND e.number = at_head;
    END IF;
    IF before IS DISTINCT FROM at_digest THEN
        outcome := 'differs'; RETURN NEXT; RETURN;
    END IF;
    IF here.number > at_head THEN
        IF here.number - at_head > 1000 OR EXISTS (
            SELECT FROM shop.entry e
            WHERE e.site = here.id AND e.number > at_head AND e.writes && has_read
        ) THEN
            outcome := 'behind'; RETURN NEXT; RETURN;
        END IF;
    END IF;
    IF EXISTS (SELECT FROM shop.entry e WHERE e.site = here.id AND e.id = ANY (ids)) THEN
        outcome := 'behind'; RETURN NEXT; RETURN;
    END IF;
    FOR n IN 1 .. cardinality(ids) LOOP
        number := number + 1;
        digest := sha256(digest || convert_to(ids[n] || E'\\n' || bodies[n], 'UTF8'));
        INSERT INTO shop.entry VALUES (
            here.id, number, ids[n], verdicts[n],
            ARRAY(SELECT json_array_elements_text(found[n]::json)),
            bodies[n], digest, session_user, clock_timestamp()
        );
    END LOOP;
    UPDATE shop.site SET number = push.number, digest = push.digest;
    outcome := 'pushed'; RETURN NEXT;
END $$;
"""

# Who holds the site's row waits for no lock. An honest push holds it for some milliseconds, and
# its own time-out ends it after four seconds; a thief sets none. The owner is a member of each
# station's role, or it could end nobody.
CUT_OFF = """
CREATE FUNCTION shop.cut_off() RETURNS text
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
DECLARE
    held shop.station;
BEGIN
    SELECT s.* INTO held
    FROM pg_locks l JOIN pg_stat_activity a USING (pid) JOIN shop.station s ON s.role = a.usename
    WHERE l.locktype = 'relation' AND l.relation = 'shop.site'::regclass AND l.granted
        AND l.database = (SELECT oid FROM pg_database WHERE datname = current_database())
        AND l.mode IN ('RowShareLock', 'RowExclusiveLock')
        AND a.pid <> pg_backend_pid() AND a.wait_event_type IS DISTINCT FROM 'Lock'
        AND (a.xact_start < clock_timestamp() - interval '4 s'
            OR a.state <> 'active' AND a.state_change < clock_timestamp() - interval '2 s')
    LIMIT 1;
    IF held.number IS NULL THEN
        RETURN '';
    END IF;
    PERFORM pg_terminate_backend(pid) FROM pg_stat_activity
    WHERE usename = held.role AND pid <> pg_backend_pid();
    UPDATE shop.site SET held_by = held.number, held_at = clock_timestamp();
    RETURN held.number;
END $$;
"""

RIGHTS = """
REVOKE ALL ON ALL FUNCTIONS IN SCHEMA shop FROM PUBLIC;
GRANT EXECUTE ON FUNCTION shop.cut_off() TO "{stations}";
"""
MEMBER = """
DO $$
DECLARE
    one text;
BEGIN
    FOR one IN SELECT role FROM shop.station LOOP
        EXECUTE 'GRANT ' || quote_ident(one) || ' TO ' || quote_ident(current_user);
    END LOOP;
END $$
"""


def upgrade() -> None:
    """Names the office of a shop of before, and makes the functions anew."""
    rights = RIGHTS.format(stations=context.config.attributes["stations"])
    for part in (COLUMNS, OFFICE_OF_BEFORE, READ, WRITTEN, JUDGE, PUSH, CUT_OFF, rights, MEMBER):
        op.get_bind().exec_driver_sql(part)


def downgrade() -> None:
    """There is no way back: the history is never deleted."""
    raise NotImplementedError
