//! What the owner must mind.

use super::Sources;
use crate::visit::fact::{Fact, Value};

/// Hot water at a tap can scald, and lukewarm water can carry legionella: said wherever taps hang at a unit. That a tap
/// is let run after days away is common practice, no source.
pub(super) fn cautions(from: &Sources<'_>) -> Vec<String> {
    let runs = || from.visit.runs.values();
    let no_tap = runs().all(|run| run.facts.get(&Fact::ScaldCheck) == Some(&Value::NotNeeded));
    let rinsed = runs().any(|run| run.facts.get(&Fact::RinseCheck) == Some(&Value::Proved));
    let said = [
        ("summary-caution-scald", !no_tap),
        ("summary-caution-legionella", !no_tap),
        ("summary-caution-flushed", rinsed),
        ("summary-caution-first", true),
    ];
    said.into_iter().filter(|(_, holds)| *holds).map(|(key, _)| from.words.text(key)).collect()
}
