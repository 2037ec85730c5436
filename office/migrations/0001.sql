-- The office's database, first version. Numbered files are never changed once a release wrote with them.

-- A field device. Only the SHA-256 of its token is kept, so a stolen database opens no door. `name` is whose it is, as
-- the office says; `calls_itself` and the key come from the device.
CREATE TABLE device (
    id           INTEGER PRIMARY KEY,
    name         TEXT    NOT NULL,
    token_hash   BLOB    NOT NULL UNIQUE CHECK (length(token_hash) = 32),
    public_key   BLOB    CHECK (length(public_key) = 65),
    calls_itself TEXT,
    joined_ms    INTEGER NOT NULL
) STRICT;

-- A visit as far as it has arrived. `head` is the SHA-256 of the last stored event.
CREATE TABLE visit (
    id                TEXT    PRIMARY KEY,
    device            INTEGER NOT NULL REFERENCES device (id),
    next              INTEGER NOT NULL,
    head              BLOB    NOT NULL CHECK (length(head) = 32),
    first_received_ms INTEGER NOT NULL,
    last_received_ms  INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Original bytes, keyed as they are read: all of one visit lie side by side.
CREATE TABLE event (
    visit       TEXT    NOT NULL REFERENCES visit (id),
    seq         INTEGER NOT NULL,
    bytes       BLOB    NOT NULL,
    hash        BLOB    NOT NULL CHECK (length(hash) = 32),
    received_ms INTEGER NOT NULL,
    PRIMARY KEY (visit, seq)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER event_is_never_changed BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;
CREATE TRIGGER event_is_never_removed BEFORE DELETE ON event
BEGIN SELECT RAISE(ABORT, 'an event is never removed'); END;

-- Events that contradict what is stored. They are evidence too, and are never dropped.
CREATE TABLE branch (
    visit       TEXT    NOT NULL REFERENCES visit (id),
    hash        BLOB    NOT NULL CHECK (length(hash) = 32),
    seq         INTEGER NOT NULL,
    bytes       BLOB    NOT NULL,
    device      INTEGER NOT NULL REFERENCES device (id),
    received_ms INTEGER NOT NULL,
    PRIMARY KEY (visit, hash)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER branch_is_never_changed BEFORE UPDATE ON branch
BEGIN SELECT RAISE(ABORT, 'a branch is never changed'); END;
CREATE TRIGGER branch_is_never_removed BEFORE DELETE ON branch
BEGIN SELECT RAISE(ABORT, 'a branch is never removed'); END;

-- The first seal that was verified. `covers` is how many events it fixes, `last` the hash of the last of them.
CREATE TABLE seal (
    visit       TEXT    PRIMARY KEY REFERENCES visit (id),
    jws         TEXT    NOT NULL,
    public_key  BLOB    NOT NULL CHECK (length(public_key) = 65),
    last        BLOB    NOT NULL CHECK (length(last) = 32),
    covers      INTEGER NOT NULL,
    complete    INTEGER NOT NULL,
    received_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- A photograph that is coming or has come. `safe_ms` is set only after its file and its folder are on disk.
CREATE TABLE photo (
    digest      BLOB    PRIMARY KEY CHECK (length(digest) = 32),
    length      INTEGER NOT NULL,
    media       TEXT    NOT NULL,
    visit       TEXT    NOT NULL,
    device      INTEGER NOT NULL REFERENCES device (id),
    announced_ms INTEGER NOT NULL,
    safe_ms     INTEGER
) STRICT, WITHOUT ROWID;

CREATE INDEX photo_by_visit ON photo (visit);

-- What is to be done, as the document that goes to the devices.
CREATE TABLE assignment (
    id      TEXT PRIMARY KEY,
    doc     TEXT NOT NULL,
    put_ms  INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Ways in: a link works once, a session for a while. Only hashes are kept.
CREATE TABLE entry_link (
    hash        BLOB PRIMARY KEY CHECK (length(hash) = 32),
    made_ms     INTEGER NOT NULL,
    used_ms     INTEGER
) STRICT, WITHOUT ROWID;

CREATE TABLE session (
    hash        BLOB PRIMARY KEY CHECK (length(hash) = 32),
    expires_ms  INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- The owner's page of a sealed visit. Its token is shown to the office, so it is kept as it is.
CREATE TABLE summary (
    visit   TEXT PRIMARY KEY REFERENCES visit (id),
    token   TEXT NOT NULL UNIQUE,
    made_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- What the list of visits shows, worked out from the events and always rebuildable. `at_…` and `maker` say from what.
CREATE TABLE listing (
    visit       TEXT PRIMARY KEY REFERENCES visit (id),
    at_next     INTEGER NOT NULL,
    at_sealed   INTEGER NOT NULL,
    at_branches INTEGER NOT NULL,
    maker       INTEGER NOT NULL,
    assignment  TEXT    NOT NULL,
    opened_ms   INTEGER NOT NULL,
    offset_min  INTEGER NOT NULL,
    site        TEXT    NOT NULL,
    place       TEXT    NOT NULL,
    units       TEXT    NOT NULL,
    technician  TEXT    NOT NULL,
    state       TEXT    NOT NULL,
    missing     INTEGER NOT NULL,
    trouble     INTEGER NOT NULL,
    searched    TEXT    NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE listed_photo (
    visit       TEXT NOT NULL REFERENCES listing (visit) ON DELETE CASCADE,
    digest      BLOB NOT NULL CHECK (length(digest) = 32),
    PRIMARY KEY (visit, digest)
) STRICT, WITHOUT ROWID;

-- Few things about the office itself: whom owners call.
CREATE TABLE setting (
    name  TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
