-- The log. Append-only by trigger as well as by code.
CREATE TABLE event (
    visit TEXT NOT NULL,
    seq INTEGER NOT NULL,
    bytes BLOB NOT NULL,
    PRIMARY KEY (visit, seq)
) WITHOUT ROWID;
CREATE TRIGGER event_is_never_changed BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;
CREATE TRIGGER event_is_never_removed BEFORE DELETE ON event BEGIN SELECT RAISE(ABORT, 'an event is never removed'); END;

-- A visit's state at some event; can always be rebuilt from the log.
CREATE TABLE snapshot (
    visit TEXT PRIMARY KEY,
    next INTEGER NOT NULL,
    state TEXT NOT NULL
) WITHOUT ROWID;

-- Which visits there are, without reading their logs.
CREATE TABLE visit (
    visit TEXT PRIMARY KEY,
    assignment TEXT NOT NULL,
    opened_utc_ms INTEGER NOT NULL,
    next INTEGER NOT NULL,
    sealed INTEGER NOT NULL DEFAULT 0
) WITHOUT ROWID;
CREATE INDEX visit_open ON visit (sealed, opened_utc_ms);

-- What the shell is asked; the first terminal outcome wins.
CREATE TABLE effect (
    visit TEXT NOT NULL,
    seq INTEGER NOT NULL,
    n INTEGER NOT NULL,
    request TEXT NOT NULL,
    outcome TEXT,
    PRIMARY KEY (visit, seq, n)
) WITHOUT ROWID;
CREATE INDEX effect_open ON effect (visit) WHERE outcome IS NULL;
CREATE TRIGGER effect_ends_once BEFORE UPDATE ON effect WHEN OLD.outcome IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'an effect ends once'); END;

-- What still has to reach the office. `first` and `count` for events, `digest` for photographs.
CREATE TABLE outbox (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    kind TEXT NOT NULL CHECK (kind IN ('events', 'photo', 'seal')),
    visit TEXT NOT NULL,
    first INTEGER NOT NULL DEFAULT 0,
    count INTEGER NOT NULL DEFAULT 0,
    digest TEXT NOT NULL DEFAULT '',
    media TEXT NOT NULL DEFAULT '',
    bytes INTEGER NOT NULL DEFAULT 0,
    state TEXT NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'stuck', 'safe')),
    why TEXT NOT NULL DEFAULT '',
    since_utc_ms INTEGER NOT NULL
);
CREATE INDEX outbox_open ON outbox (state, kind, id);
CREATE UNIQUE INDEX outbox_photo_once ON outbox (visit, digest) WHERE kind = 'photo';

-- The signature over a sealed record, outside of the chain.
CREATE TABLE seal (
    visit TEXT PRIMARY KEY,
    jws TEXT NOT NULL,
    utc_ms INTEGER NOT NULL
) WITHOUT ROWID;

-- The packs that runs pinned, to the byte.
CREATE TABLE pack (
    digest TEXT PRIMARY KEY,
    bytes BLOB NOT NULL
) WITHOUT ROWID;

-- What came down from the office; personal data lies here and not in events.
CREATE TABLE assignment (
    id TEXT PRIMARY KEY,
    due TEXT NOT NULL,
    body TEXT NOT NULL,
    salt TEXT NOT NULL
) WITHOUT ROWID;

-- Half-typed texts and where the person is: beside the log. One that was meant as it stands, and is not in the log, was refused.
CREATE TABLE draft (
    place TEXT NOT NULL,
    field TEXT NOT NULL,
    text TEXT NOT NULL,
    meant INTEGER NOT NULL,
    PRIMARY KEY (place, field)
) WITHOUT ROWID;
CREATE TABLE setting (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
) WITHOUT ROWID;

-- What each action came to, so that a repeated one is not done twice: its refusal, or the requests that it opened
-- (their ids, with spaces between).
CREATE TABLE acted (
    action TEXT PRIMARY KEY,
    at INTEGER NOT NULL,
    refusal TEXT,
    opened TEXT NOT NULL DEFAULT ''
) WITHOUT ROWID;
