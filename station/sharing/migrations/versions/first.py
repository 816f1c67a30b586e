"""The shop's database: one row for the site, the entries, the stations, and two functions.

Only a locked row, unique keys and polling: no advisory locks, no notices, no sequences, so
that managed, clustered and compatible engines serve as well.
"""

from alembic import context, op

revision = "1"
down_revision = None

TABLES = """
CREATE TABLE shop.site (
    id text PRIMARY KEY,
    epoch integer NOT NULL DEFAULT 1,
    number bigint NOT NULL DEFAULT 0,
    digest bytea NOT NULL DEFAULT '',
    format integer NOT NULL
);
CREATE UNIQUE INDEX one_site ON shop.site ((true));

CREATE TABLE shop.entry (
    site text NOT NULL,
    number bigint NOT NULL,
    id text NOT NULL,
    verdict text NOT NULL,
    writes text[] NOT NULL,
    body text NOT NULL,
    digest bytea NOT NULL,
    pushed_by text NOT NULL,
    pushed_at timestamptz NOT NULL,
    PRIMARY KEY (site, number),
    UNIQUE (site, id)
);

CREATE TABLE shop.closing (
    number bigint PRIMARY KEY,
    digest bytea NOT NULL,
    format integer NOT NULL,
    books bytea NOT NULL,
    closed_at timestamptz NOT NULL DEFAULT clock_timestamp()
);

CREATE TABLE shop.station (
    number text PRIMARY KEY,
    role text NOT NULL UNIQUE,
    card text UNIQUE,
    expires timestamptz,
    joined timestamptz
);
"""

# Nobody changes what was written, its owner neither; also not where triggers of the
# ordinary kind are passed over (session_replication_role).
KEPT = """
CREATE FUNCTION shop.never() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'entries are never changed or deleted'
        USING ERRCODE = 'insufficient_privilege';
END $$;

CREATE TRIGGER kept BEFORE UPDATE OR DELETE OR TRUNCATE ON shop.entry
    FOR EACH STATEMENT EXECUTE FUNCTION shop.never();
CREATE TRIGGER kept BEFORE DELETE OR TRUNCATE ON shop.site
    FOR EACH STATEMENT EXECUTE FUNCTION shop.never();
ALTER TABLE shop.entry ENABLE ALWAYS TRIGGER kept;
ALTER TABLE shop.site ENABLE ALWAYS TRIGGER kept;
"""

# The number comes from the locked row: a sequence would let a reader see 2 before 1 is
# committed. Read committed: a snapshot from before the lock would miss what was pushed
# while this push waited.
PUSH = """
CREATE FUNCTION shop.push(
    at_head bigint, at_digest bytea, with_format integer, has_read text[],
    ids text[], verdicts text[], written text[], bodies text[]
) RETURNS TABLE (outcome text, number bigint, digest bytea, format integer)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
#variable_conflict use_column
DECLARE
    here shop.site;
    before bytea;
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
    FOR n IN 1 .. cardinality(ids) LOOP
        IF (length(ids[n]) BETWEEN 1 AND 80) IS NOT TRUE OR length(verdicts[n]) > 4000
           OR octet_length(bodies[n]) > 16777216 OR octet_length(written[n]) > 16777216 THEN
            RAISE EXCEPTION 'an id of 1 to 80 signs, a verdict of 4000, a body of 16 MB at most'
                USING ERRCODE = 'data_exception';
        END IF;
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
            ARRAY(SELECT json_array_elements_text(written[n]::json)),
            bodies[n], digest, session_user, clock_timestamp()
        );
    END LOOP;
    UPDATE shop.site SET number = push.number, digest = push.digest;
    outcome := 'pushed'; RETURN NEXT;
END $$;
"""

# A card's code lets in once, to set the password of one station's role. Only the password's
# verifier comes over, so no log can hold the password.
JOIN = """
CREATE FUNCTION shop.join(verifier text)
RETURNS TABLE (site text, number text, role text)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, pg_temp AS $$
#variable_conflict use_column
DECLARE
    mine shop.station;
BEGIN
    IF verifier !~ '^SCRAM-SHA-256[$][0-9]+:[A-Za-z0-9+/]+=*[$][A-Za-z0-9+/=]+:[A-Za-z0-9+/=]+$'
    THEN
        RAISE EXCEPTION 'that is no verifier of a password' USING ERRCODE = 'data_exception';
    END IF;
    SELECT * INTO mine FROM shop.station s WHERE s.card = session_user FOR UPDATE;
    IF mine.expires IS NULL OR mine.expires < clock_timestamp() THEN
        RAISE EXCEPTION 'this card is not valid any more' USING ERRCODE = 'invalid_password';
    END IF;
    EXECUTE 'ALTER ROLE ' || quote_ident(mine.role)
        || ' LOGIN PASSWORD ' || quote_literal(verifier);
    EXECUTE 'ALTER ROLE ' || quote_ident(mine.card) || ' NOLOGIN PASSWORD NULL';
    UPDATE shop.station s SET card = NULL, expires = NULL, joined = clock_timestamp()
    WHERE s.number = mine.number;
    RETURN QUERY SELECT shop.id, mine.number, mine.role FROM shop.site shop;
END $$;
"""

RIGHTS = """
REVOKE ALL ON ALL FUNCTIONS IN SCHEMA shop FROM PUBLIC;
GRANT USAGE ON SCHEMA shop TO "{stations}", "{cards}";
GRANT SELECT ON shop.site, shop.entry, shop.closing TO "{stations}";
GRANT EXECUTE ON FUNCTION shop.push(
    bigint, bytea, integer, text[], text[], text[], text[], text[]) TO "{stations}";
GRANT EXECUTE ON FUNCTION shop.join(text) TO "{cards}";
"""


def upgrade() -> None:
    """Makes everything, and gives the stations' and the cards' group their few rights."""
    given = context.config.attributes
    rights = RIGHTS.format(stations=given["stations"], cards=given["cards"])
    for part in (TABLES, KEPT, PUSH, JOIN, rights):
        op.get_bind().exec_driver_sql(part)


def downgrade() -> None:
    """There is no way back: the history is never deleted."""
    raise NotImplementedError
