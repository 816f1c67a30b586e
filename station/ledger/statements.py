"""What tables.py defines, compiled: the statements as the driver takes them.

Never changed by hand: ``python -m resources.statements`` makes it, a test compares.
"""

FORMAT = 1
LAYOUT = 3
DERIVED = ("balance", "fact", "tally", "reading")
CREATION = (
    "CREATE TABLE balance ( batch TEXT NOT NULL, part TEXT NOT NULL, place TEXT NOT NULL, qty INTEGER NOT NULL, PRIMARY KEY (batch, part, place) ) WITHOUT ROWID, STRICT",
    "CREATE TABLE closing ( number INTEGER NOT NULL, digest BLOB NOT NULL, at TEXT NOT NULL, books BLOB NOT NULL, PRIMARY KEY (number) ) STRICT",
    "CREATE TABLE entry ( number INTEGER NOT NULL, id TEXT NOT NULL, at TEXT NOT NULL, kind TEXT NOT NULL, subject TEXT NOT NULL, verdict TEXT NOT NULL, body TEXT NOT NULL, digest BLOB NOT NULL, PRIMARY KEY (number), UNIQUE (id) ) STRICT",
    'CREATE TABLE fact ( "key" TEXT NOT NULL, body TEXT NOT NULL, shelf TEXT, rank TEXT NOT NULL, entry TEXT NOT NULL, PRIMARY KEY ("key") ) STRICT',
    'CREATE TABLE local ( "key" TEXT NOT NULL, value TEXT NOT NULL, PRIMARY KEY ("key") ) STRICT',
    "CREATE TABLE pending ( seq INTEGER NOT NULL, id TEXT NOT NULL, subject TEXT NOT NULL, reads TEXT NOT NULL, body TEXT NOT NULL, PRIMARY KEY (seq), UNIQUE (id) ) STRICT",
    "CREATE TABLE reading ( subject TEXT NOT NULL, kind TEXT NOT NULL, at TEXT NOT NULL, entry TEXT NOT NULL, n INTEGER NOT NULL, body TEXT NOT NULL, PRIMARY KEY (subject, kind, at, entry, n) ) WITHOUT ROWID, STRICT",
    'CREATE TABLE tally ( hour TEXT NOT NULL, frm TEXT NOT NULL, "to" TEXT NOT NULL, part TEXT NOT NULL, router TEXT NOT NULL, reason TEXT NOT NULL, qty INTEGER NOT NULL, PRIMARY KEY (hour, frm, "to", part, router, reason) ) WITHOUT ROWID, STRICT',
    "CREATE INDEX balance_place ON balance (place, part)",
    "CREATE INDEX entry_at ON entry (at)",
    "CREATE INDEX entry_subject ON entry (subject, number, kind)",
    "CREATE INDEX fact_shelf ON fact (shelf, rank) WHERE shelf IS NOT NULL",
)
RENEWAL = (
    "DROP TABLE IF EXISTS balance",
    "DROP TABLE IF EXISTS fact",
    "DROP TABLE IF EXISTS tally",
    "DROP TABLE IF EXISTS reading",
    "CREATE TABLE balance ( batch TEXT NOT NULL, part TEXT NOT NULL, place TEXT NOT NULL, qty INTEGER NOT NULL, PRIMARY KEY (batch, part, place) ) WITHOUT ROWID, STRICT",
    'CREATE TABLE fact ( "key" TEXT NOT NULL, body TEXT NOT NULL, shelf TEXT, rank TEXT NOT NULL, entry TEXT NOT NULL, PRIMARY KEY ("key") ) STRICT',
    'CREATE TABLE tally ( hour TEXT NOT NULL, frm TEXT NOT NULL, "to" TEXT NOT NULL, part TEXT NOT NULL, router TEXT NOT NULL, reason TEXT NOT NULL, qty INTEGER NOT NULL, PRIMARY KEY (hour, frm, "to", part, router, reason) ) WITHOUT ROWID, STRICT',
    "CREATE TABLE reading ( subject TEXT NOT NULL, kind TEXT NOT NULL, at TEXT NOT NULL, entry TEXT NOT NULL, n INTEGER NOT NULL, body TEXT NOT NULL, PRIMARY KEY (subject, kind, at, entry, n) ) WITHOUT ROWID, STRICT",
    "CREATE INDEX balance_place ON balance (place, part)",
    "CREATE INDEX fact_shelf ON fact (shelf, rank) WHERE shelf IS NOT NULL",
)
CREATE_CLOSING = "CREATE TABLE closing ( number INTEGER NOT NULL, digest BLOB NOT NULL, at TEXT NOT NULL, books BLOB NOT NULL, PRIMARY KEY (number) ) STRICT"
ADD_ENTRY = "INSERT INTO entry (number, id, at, kind, subject, verdict, body, digest) VALUES (?, ?, ?, ?, ?, ?, ?, ?)"
BODY_BY_ID = "SELECT entry.body FROM entry WHERE entry.id = ? AND entry.kind != 'left-out'"
NUMBER_BY_ID = "SELECT entry.number FROM entry WHERE entry.id = ?"
NEWEST = "SELECT entry.number, entry.digest, entry.at FROM entry ORDER BY entry.number DESC LIMIT 1 OFFSET 0"
ENTRIES = "SELECT entry.number, entry.body FROM entry WHERE entry.number > ? AND entry.kind != 'left-out' ORDER BY entry.number LIMIT 1000 OFFSET 0"
ENTRIES_ABOUT = "SELECT entry.number, entry.body FROM entry WHERE entry.subject = ? AND entry.number > ? ORDER BY entry.number LIMIT 1000 OFFSET 0"
LAST = "SELECT entry.body FROM entry WHERE entry.subject = ? ORDER BY entry.number DESC LIMIT 1 OFFSET 0"
LAST_OF_KIND = "SELECT entry.body FROM entry WHERE entry.subject = ? AND entry.kind = ? ORDER BY entry.number DESC LIMIT 1 OFFSET 0"
TOLD = "SELECT entry.number, entry.body FROM entry WHERE entry.kind != 'left-out' ORDER BY entry.number DESC LIMIT ? OFFSET 0"
TOLD_ABOUT = "SELECT entry.number, entry.body FROM entry WHERE entry.kind != 'left-out' AND entry.subject = ? ORDER BY entry.number DESC LIMIT ? OFFSET 0"
BETWEEN = "SELECT entry.id, entry.at, entry.body FROM entry WHERE entry.at >= ? AND entry.at < ? AND entry.kind != 'left-out' ORDER BY entry.at, entry.number"
CHAIN = "SELECT entry.number, entry.id, entry.body, entry.digest, entry.at, entry.kind, entry.subject FROM entry WHERE entry.number > ? ORDER BY entry.number LIMIT 1000 OFFSET 0"
CHAIN_FROM = "SELECT entry.number, entry.id, entry.body, entry.digest, entry.at, entry.kind, entry.subject FROM entry WHERE entry.number >= ? ORDER BY entry.number LIMIT 1000 OFFSET 0"
SHARED = "SELECT entry.number, entry.id, entry.verdict, entry.body, entry.digest FROM entry WHERE entry.number > ? ORDER BY entry.number LIMIT 1000 OFFSET 0"
LATELY = "SELECT entry.body FROM entry WHERE entry.kind != 'left-out' ORDER BY entry.number DESC LIMIT 200 OFFSET 0"
AFTER = "SELECT entry.kind, entry.body FROM entry WHERE entry.number > ? ORDER BY entry.number"
DROP_AFTER = "DELETE FROM entry WHERE entry.number > ?"
DROP_UP_TO = "DELETE FROM entry WHERE entry.number <= ?"
FIRST_SINCE = "SELECT min(entry.number) AS min_1 FROM entry WHERE entry.at >= ?"
PLACE = "SELECT entry.number, entry.digest, entry.at FROM entry WHERE entry.number = ?"
LINK = "SELECT entry.digest FROM entry WHERE entry.number = ?"
PENDING = "SELECT pending.body FROM pending ORDER BY pending.seq"
ALL_PENDING = "SELECT pending.seq, pending.id, pending.subject, pending.reads, pending.body FROM pending ORDER BY pending.seq"
ADD_PENDING = "INSERT INTO pending (seq, id, subject, reads, body) VALUES (?, ?, ?, ?, ?)"
COUNT_PENDING = "SELECT count(*) AS count_1 FROM pending"
PENDING_TOLD = (
    "SELECT pending.seq, pending.body FROM pending ORDER BY pending.seq DESC LIMIT ? OFFSET 0"
)
PENDING_TOLD_ABOUT = "SELECT pending.seq, pending.body FROM pending WHERE pending.subject = ? ORDER BY pending.seq DESC LIMIT ? OFFSET 0"
PENDING_BY_ID = "SELECT pending.body FROM pending WHERE pending.id = ?"
PENDING_ABOUT = (
    "SELECT pending.body FROM pending WHERE pending.subject = ? ORDER BY pending.seq DESC"
)
FIRST_PENDING = "SELECT pending.seq, pending.id, pending.subject, pending.reads, pending.body FROM pending ORDER BY pending.seq LIMIT ? OFFSET 0"
LAST_PENDING = "SELECT pending.seq, pending.id, pending.subject, pending.reads, pending.body FROM pending ORDER BY pending.seq DESC LIMIT ? OFFSET 0"
DROP_PENDING = "DELETE FROM pending WHERE pending.seq = ?"
SPOT = "SELECT balance.qty FROM balance WHERE balance.batch = ? AND balance.part = ? AND balance.place = ?"
SPOTS_OF = "SELECT balance.batch, balance.part, balance.place, balance.qty FROM balance WHERE balance.batch IN (SELECT anon_1.value FROM json_each(?) AS anon_1)"
SET_SPOT = (
    "UPDATE balance SET qty=? WHERE balance.batch = ? AND balance.part = ? AND balance.place = ?"
)
NEW_SPOT = "INSERT INTO balance (batch, part, place, qty) VALUES (?, ?, ?, ?)"
PUT_SPOT = "INSERT INTO balance (batch, part, place, qty) VALUES (?, ?, ?, ?) ON CONFLICT (batch, part, place) DO UPDATE SET qty = excluded.qty"
EMPTY_SPOT = (
    "DELETE FROM balance WHERE balance.batch = ? AND balance.part = ? AND balance.place = ?"
)
STOCK_BATCH = "SELECT balance.place, balance.batch, balance.part, balance.qty FROM balance WHERE balance.batch = ? AND balance.qty > 0 ORDER BY balance.batch, balance.place, balance.part"
STOCK_PLACE = "SELECT balance.place, balance.batch, balance.part, balance.qty FROM balance WHERE balance.place = ? AND balance.qty > 0 ORDER BY balance.batch, balance.place, balance.part"
STOCK_AT = "SELECT balance.place, balance.batch, balance.part, balance.qty FROM balance WHERE balance.batch = ? AND balance.place = ? AND balance.qty > 0 ORDER BY balance.batch, balance.place, balance.part"
BALANCES = "SELECT balance.place, balance.batch, balance.part, balance.qty FROM balance ORDER BY balance.batch, balance.place, balance.part"
FACT = 'SELECT fact."key", fact.body, fact.shelf, fact.rank, fact.entry FROM fact WHERE fact."key" = ?'
FACTS_OF = 'SELECT fact."key", fact.body, fact.shelf, fact.rank, fact.entry FROM fact WHERE fact."key" IN (SELECT anon_1.value FROM json_each(?) AS anon_1)'
FACTS = 'SELECT fact."key", fact.body, fact.shelf, fact.rank, fact.entry FROM fact WHERE fact."key" > ? AND fact."key" < ? ORDER BY fact."key"'
SHELF = 'SELECT fact."key", fact.body, fact.shelf, fact.rank, fact.entry FROM fact WHERE fact.shelf = ? ORDER BY fact.rank, fact."key" LIMIT ? OFFSET 0'
PUT_FACT = 'INSERT INTO fact ("key", body, shelf, rank, entry) VALUES (?, ?, ?, ?, ?) ON CONFLICT ("key") DO UPDATE SET body = excluded.body, shelf = excluded.shelf, rank = excluded.rank, entry = excluded.entry'
DROP_FACT = 'DELETE FROM fact WHERE fact."key" = ?'
ADD_TALLY = 'INSERT INTO tally (hour, frm, "to", part, router, reason, qty) VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT (hour, frm, "to", part, router, reason) DO UPDATE SET qty = (tally.qty + excluded.qty)'
DROP_EMPTY_TALLY = "DELETE FROM tally WHERE tally.qty = 0 AND tally.hour = ?"
TALLY = 'SELECT tally.hour, tally.frm, tally."to", tally.part, tally.router, tally.reason, tally.qty FROM tally WHERE tally.hour >= ? AND tally.hour <= ? ORDER BY tally.hour, tally.frm, tally."to", tally.part, tally.router, tally.reason'
PUT_READING = "INSERT INTO reading (subject, kind, at, entry, n, body) VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (subject, kind, at, entry, n) DO UPDATE SET body = excluded.body"
DROP_READING = "DELETE FROM reading WHERE reading.subject = ? AND reading.kind = ? AND reading.at = ? AND reading.entry = ? AND reading.n = ?"
SERIES = 'SELECT reading.at, reading.entry, reading.body FROM reading WHERE reading.subject = ? AND reading.kind = ? AND reading.at >= ? AND NOT (EXISTS (SELECT fact."key" FROM fact WHERE fact."key" = (\'undone/\' || reading.entry))) ORDER BY reading.at, reading.entry, reading.n'
CLOSED_AT = "SELECT closing.number, closing.digest, closing.at FROM closing"
CLOSED_BOOKS = "SELECT closing.books FROM closing"
PUT_CLOSING = "INSERT INTO closing (number, digest, at, books) VALUES (?, ?, ?, ?)"
DROP_CLOSING = "DELETE FROM closing"
LOCAL_ALL = 'SELECT local."key", local.value FROM local'
PUT_LOCAL = 'INSERT INTO local ("key", value) VALUES (?, ?) ON CONFLICT ("key") DO UPDATE SET value = excluded.value'
EVERY_CLOSING = "SELECT closing.number, closing.digest, closing.at, closing.books FROM closing"
EVERY_ENTRY = "SELECT entry.number, entry.id, entry.at, entry.kind, entry.subject, entry.verdict, entry.body, entry.digest FROM entry ORDER BY entry.number"
ALL_ROWS = {
    "balance": "SELECT balance.batch, balance.part, balance.place, balance.qty FROM balance",
    "fact": 'SELECT fact."key", fact.body, fact.shelf, fact.rank, fact.entry FROM fact',
    "tally": 'SELECT tally.hour, tally.frm, tally."to", tally.part, tally.router, tally.reason, tally.qty FROM tally',
    "reading": "SELECT reading.subject, reading.kind, reading.at, reading.entry, reading.n, reading.body FROM reading",
}
DROP_LOCAL = 'DELETE FROM local WHERE local."key" = ?'
EMPTY = {
    "balance": "DELETE FROM balance",
    "fact": "DELETE FROM fact",
    "tally": "DELETE FROM tally",
    "reading": "DELETE FROM reading",
}
FILL = {
    "balance": "INSERT INTO balance (batch, part, place, qty) VALUES (?, ?, ?, ?)",
    "fact": 'INSERT INTO fact ("key", body, shelf, rank, entry) VALUES (?, ?, ?, ?, ?)',
    "tally": 'INSERT INTO tally (hour, frm, "to", part, router, reason, qty) VALUES (?, ?, ?, ?, ?, ?, ?)',
    "reading": "INSERT INTO reading (subject, kind, at, entry, n, body) VALUES (?, ?, ?, ?, ?, ?)",
}
