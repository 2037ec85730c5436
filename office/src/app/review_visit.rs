//! Somebody at the office looks at a visit: it is in order, or the technician is asked something. The device is told.

use crate::ids::VisitId;
use crate::store::news::{self, Kind};
use crate::store::reviews::{self, Outcome, Review};
use crate::store::{Store, StoreError, events};

/// The most characters of what is written beside an outcome.
pub(crate) const WORDS_CHARS_MAX: usize = 2000;

/// What was said and not kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum NotSaid {
    /// There is no such visit.
    NoVisit,
    /// A question without words, or with too many.
    Words,
}

/// Keeps what was said about a visit, and tells its device.
pub(crate) fn say(
    store: &Store,
    visit: &VisitId,
    outcome: Outcome,
    words: &str,
    now_ms: i64,
) -> Result<Result<(), NotSaid>, StoreError> {
    let words = words.trim().replace("\r\n", "\n");
    if words.chars().count() > WORDS_CHARS_MAX || (outcome == Outcome::Question && words.is_empty()) {
        return Ok(Err(NotSaid::Words));
    }
    store.write(|db| {
        let Some(head) = events::head(db, visit)? else { return Ok(Err(NotSaid::NoVisit)) };
        let number = reviews::add(db, &Review { visit: visit.clone(), outcome, words, at_ms: now_ms })?;
        news::add(db, Kind::Review, &number.to_string(), Some(head.device), None)?;
        Ok(Ok(()))
    })
}
