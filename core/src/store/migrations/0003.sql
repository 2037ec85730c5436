-- The outbox anew: rows that the office keeps aside for review ('aside'), and when a row became safe. What was stuck is tried
-- again: its reasons were the office's own words, and are kinds with words of ours from now on.
ALTER TABLE outbox RENAME TO outbox_before;
DROP INDEX outbox_open;
DROP INDEX outbox_photo_once;
CREATE TABLE outbox (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    kind TEXT NOT NULL CHECK (kind IN ('events', 'photo', 'seal')),
    visit TEXT NOT NULL,
    first INTEGER NOT NULL DEFAULT 0,
    count INTEGER NOT NULL DEFAULT 0,
    digest TEXT NOT NULL DEFAULT '',
    media TEXT NOT NULL DEFAULT '',
    bytes INTEGER NOT NULL DEFAULT 0,
    state TEXT NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'stuck', 'aside', 'safe')),
    why TEXT NOT NULL DEFAULT '',
    since_utc_ms INTEGER NOT NULL,
    safe_utc_ms INTEGER NOT NULL DEFAULT 0
);
INSERT INTO outbox (id, kind, visit, first, count, digest, media, bytes, state, since_utc_ms)
SELECT id, kind, visit, first, count, digest, media, bytes, iif(state = 'stuck', 'waiting', state), since_utc_ms
FROM outbox_before;
DROP TABLE outbox_before;
-- What is not safe is little, however long the device has worked.
CREATE INDEX outbox_open ON outbox (kind, id) WHERE state <> 'safe';
CREATE INDEX outbox_visit ON outbox (visit, kind, first);
CREATE INDEX outbox_safe ON outbox (safe_utc_ms);
CREATE UNIQUE INDEX outbox_photo_once ON outbox (visit, digest) WHERE kind = 'photo';

-- The office took an assignment back: it is not due any more, unless its visit has begun.
ALTER TABLE assignment ADD COLUMN withdrawn INTEGER NOT NULL DEFAULT 0;

-- What the office said of a visit after it had looked at it.
CREATE TABLE review (
    visit TEXT NOT NULL,
    utc_ms INTEGER NOT NULL,
    outcome TEXT NOT NULL,
    words TEXT NOT NULL,
    PRIMARY KEY (visit, utc_ms, outcome, words)
) WITHOUT ROWID;

-- Procedures that the office has, by the digest of their bytes; the bytes once they came, and by which version of this program
-- they were proved: another version proves them anew.
CREATE TABLE offered (
    digest TEXT PRIMARY KEY,
    id TEXT NOT NULL,
    bytes BLOB,
    proved_by TEXT NOT NULL DEFAULT ''
) WITHOUT ROWID;
