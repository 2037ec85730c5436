//! Rows of the list of visits, worked out from the events and always rebuildable.
