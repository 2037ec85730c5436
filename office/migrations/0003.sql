-- What the office vouches for, so that a record can be believed elsewhere; and what records need beside photographs.

-- The office's signed word that this device's key joined it.
ALTER TABLE device ADD COLUMN certificate TEXT;

-- The office's signed word that a seal came: over which events, and when.
CREATE TABLE receipt (
    visit       TEXT    NOT NULL REFERENCES visit (id),
    covers      INTEGER NOT NULL,
    jws         TEXT    NOT NULL,
    PRIMARY KEY (visit, covers)
) STRICT, WITHOUT ROWID;

-- Seals over addenda, after the first one.
CREATE TABLE later_seal (
    visit       TEXT    NOT NULL REFERENCES visit (id),
    covers      INTEGER NOT NULL,
    last        BLOB    NOT NULL CHECK (length(last) = 32),
    jws         TEXT    NOT NULL,
    received_ms INTEGER NOT NULL,
    PRIMARY KEY (visit, covers)
) STRICT, WITHOUT ROWID;

-- The bytes of packs, by their SHA-256: a visit's record encloses those that its runs pinned, also when the office has
-- gone on to newer ones.
CREATE TABLE pack (
    digest      BLOB    PRIMARY KEY CHECK (length(digest) = 32),
    bytes       BLOB    NOT NULL
) STRICT, WITHOUT ROWID;

-- Visits that came in a record file: what other offices vouch for (JSON, as in the record), and whether one of them was
-- known here when it came.
CREATE TABLE imported (
    visit       TEXT    PRIMARY KEY REFERENCES visit (id),
    offices     TEXT    NOT NULL,
    anchored    INTEGER NOT NULL,
    imported_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
