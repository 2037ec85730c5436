-- Which units a visit served, in which procedure, for how long: what the next assignment of a unit is filled with.
-- Worked out with the list's row, like it always rebuildable.
CREATE TABLE listed_unit (
    visit   TEXT    NOT NULL REFERENCES listing (visit) ON DELETE CASCADE,
    letter  TEXT    NOT NULL,
    asset   TEXT    NOT NULL,
    pack    TEXT    NOT NULL,
    -- The unit's share of the time on site; 0 where it is not known.
    minutes INTEGER NOT NULL,
    -- What the visit says about the unit (JSON); none where the office cannot vouch for it.
    past    TEXT,
    PRIMARY KEY (visit, letter)
) STRICT, WITHOUT ROWID;
CREATE INDEX listed_unit_asset ON listed_unit (asset);
CREATE INDEX listed_unit_pack ON listed_unit (pack);
