-- Visits that the office lets this device go on with, and their events as they come, until all of them are here.
CREATE TABLE handed (
    visit TEXT PRIMARY KEY,
    next INTEGER NOT NULL,
    head TEXT NOT NULL
) WITHOUT ROWID;
CREATE TABLE handed_event (
    visit TEXT NOT NULL,
    seq INTEGER NOT NULL,
    bytes BLOB NOT NULL,
    PRIMARY KEY (visit, seq)
) WITHOUT ROWID;

-- A large photograph's small picture went ahead of it, or the office wants none.
ALTER TABLE outbox ADD COLUMN previewed INTEGER NOT NULL DEFAULT 0;

-- Another device goes on with the visit.
ALTER TABLE visit ADD COLUMN elsewhere INTEGER NOT NULL DEFAULT 0;

-- What this device wrote of a visit while another one went on with it, once it came back: the office keeps the same beside the
-- record. An event leaves the log only if it stands here.
CREATE TABLE branch (
    visit TEXT NOT NULL,
    seq INTEGER NOT NULL,
    bytes BLOB NOT NULL,
    PRIMARY KEY (visit, seq, bytes)
) WITHOUT ROWID;
CREATE TABLE branch_seal (
    visit TEXT NOT NULL,
    jws TEXT NOT NULL,
    PRIMARY KEY (visit, jws)
) WITHOUT ROWID;
DROP TRIGGER event_is_never_removed;
CREATE TRIGGER event_is_never_removed BEFORE DELETE ON event
WHEN NOT EXISTS (
    SELECT 1 FROM branch WHERE branch.visit = OLD.visit AND branch.seq = OLD.seq AND branch.bytes = OLD.bytes)
BEGIN SELECT RAISE(ABORT, 'an event is never removed'); END;
