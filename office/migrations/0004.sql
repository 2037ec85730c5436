-- Devices join by a code, speak under tokens that end, can be revoked, and hand visits over. What comes down has numbers.

-- Since when the office hears this device no more, and when it last heard it.
ALTER TABLE device ADD COLUMN revoked_ms INTEGER;
ALTER TABLE device ADD COLUMN heard_ms INTEGER;
CREATE INDEX device_by_key ON device (public_key) WHERE public_key IS NOT NULL;

-- Codes with which a device joins. Only their hashes; `name` is whose device it will be.
CREATE TABLE join_code (
    hash        BLOB    PRIMARY KEY CHECK (length(hash) = 32),
    name        TEXT    NOT NULL,
    made_ms     INTEGER NOT NULL,
    used_ms     INTEGER
) STRICT, WITHOUT ROWID;

-- When a code was tried that does not hold: too many in a minute close the door for a while.
CREATE TABLE wrong_code (
    at_ms       INTEGER NOT NULL
) STRICT;

-- Tokens that end. Only their hashes.
CREATE TABLE token (
    hash        BLOB    PRIMARY KEY CHECK (length(hash) = 32),
    device      INTEGER NOT NULL REFERENCES device (id),
    expires_ms  INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Nonces that gave a token. The office signs nonces instead of keeping them, so that asking for one writes nothing.
CREATE TABLE used_nonce (
    hash        BLOB    PRIMARY KEY CHECK (length(hash) = 32),
    expires_ms  INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- How far a device's clock is behind the office's (negative: ahead), from this moment on by the office's clock.
CREATE TABLE device_clock (
    device      INTEGER NOT NULL REFERENCES device (id),
    noted_ms    INTEGER NOT NULL,
    behind_ms   INTEGER NOT NULL,
    PRIMARY KEY (device, noted_ms)
) STRICT, WITHOUT ROWID;

-- Photographs whose bytes have not all come, for those that are given up.
CREATE INDEX photo_unfinished ON photo (announced_ms) WHERE safe_ms IS NULL;

-- The office let another device go on with a visit: from event `next` on, after `head`.
CREATE TABLE handover (
    visit       TEXT    NOT NULL REFERENCES visit (id),
    number      INTEGER NOT NULL,
    from_device INTEGER NOT NULL REFERENCES device (id),
    to_device   INTEGER NOT NULL REFERENCES device (id),
    next        INTEGER NOT NULL,
    head        BLOB    NOT NULL CHECK (length(head) = 32),
    at_ms       INTEGER NOT NULL,
    PRIMARY KEY (visit, number)
) STRICT, WITHOUT ROWID;

-- A seal of a device that had handed its visit over: evidence beside the chain, like its events.
CREATE TABLE branch_seal (
    visit       TEXT    NOT NULL REFERENCES visit (id),
    device      INTEGER NOT NULL REFERENCES device (id),
    covers      INTEGER NOT NULL,
    jws         TEXT    NOT NULL,
    received_ms INTEGER NOT NULL,
    PRIMARY KEY (visit, device, covers)
) STRICT, WITHOUT ROWID;

-- What a person at the office said about a visit.
CREATE TABLE review (
    id          INTEGER PRIMARY KEY AUTOINCREMENT,
    visit       TEXT    NOT NULL REFERENCES visit (id),
    outcome     TEXT    NOT NULL CHECK (outcome IN ('accepted', 'question')),
    words       TEXT    NOT NULL,
    at_ms       INTEGER NOT NULL
) STRICT;
CREATE INDEX review_by_visit ON review (visit);

ALTER TABLE assignment ADD COLUMN withdrawn_ms INTEGER;

-- What devices are told, in the order in which it came up. A device asks for what stands after a number.
-- `subject` names what it is about; `device` whom it is for, nobody in particular where there is none. `content` is the
-- SHA-256 of what was told, where the same subject can change.
CREATE TABLE news (
    number      INTEGER PRIMARY KEY AUTOINCREMENT,
    kind        TEXT    NOT NULL CHECK (kind IN ('assignment', 'withdrawn', 'pack', 'review', 'handed')),
    subject     TEXT    NOT NULL,
    device      INTEGER REFERENCES device (id),
    content     BLOB    CHECK (length(content) = 32)
) STRICT;
CREATE INDEX news_by_subject ON news (kind, subject, number);
