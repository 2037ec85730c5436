-- Signatures over what was added after the seal, each over all events before `next`.
CREATE TABLE addendum_seal (
    visit TEXT NOT NULL,
    next INTEGER NOT NULL,
    jws TEXT NOT NULL,
    utc_ms INTEGER NOT NULL,
    PRIMARY KEY (visit, next)
) WITHOUT ROWID;
