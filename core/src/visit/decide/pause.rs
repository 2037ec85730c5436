//! Pauses: after half an hour, or on another day, supply, valves and zone are not known any more.

use super::{Circumstances, Decision, Refusal};
use crate::id::Letter;
use crate::now::Now;
use crate::visit::event::Body;
use crate::visit::fact::{Fact, Facts};
use crate::visit::state::{Mark, Run, Visit};

/// A pause longer than this lets facts lapse, milliseconds.
const PAUSE_MS: i64 = 30 * 60_000;

/// What a pause until now makes not known, unit by unit: to be written before anything else is.
#[must_use]
pub fn lapses(visit: &Visit, now: &Now) -> Vec<Body> {
    visit.runs.iter().filter_map(|(unit, run)| lapse(visit, unit, run, now)).collect()
}

/// The visit with the facts that a pause until now makes not known already gone. What is decided and what is shown
/// both go by this, not by the facts as they were before the pause.
#[must_use]
pub fn rested(visit: &Visit, now: &Now) -> Visit {
    let mut rested = visit.clone();
    for body in lapses(visit, now) {
        if let Body::FactsLapsed { unit, facts, by, .. } = body
            && let Some(run) = rested.runs.get_mut(&unit)
        {
            run.lapse(&facts, by.as_ref());
        }
    }
    rested
}

/// The facts that lapse because of the pause since the last event, where there was one. A waiting time that runs is no
/// pause until its most is over: the person stands beside it.
fn lapse(visit: &Visit, unit: &Letter, run: &Run, now: &Now) -> Option<Body> {
    let elapsed = now.since(visit.last.as_ref()?).longest_ms;
    let waits = run.steps.values().any(|mark| {
        matches!(mark, Mark::Running { most_s, .. }
            if mark.waited(now).is_some_and(|waited| waited.longest_ms <= i64::from(*most_s) * 1000))
    });
    if elapsed <= PAUSE_MS || waits {
        return None;
    }
    let facts: Facts =
        run.facts.iter().filter(|(fact, _)| fact.lapses()).map(|(fact, value)| (*fact, *value)).collect();
    let pause_s = u64::try_from(elapsed / 1000).unwrap_or(0).min(1 << 52);
    (!facts.is_empty()).then(|| Body::FactsLapsed { unit: unit.clone(), facts, pause_s, by: None })
}

pub(super) fn recheck(run: &Run, name: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let no_such = || Refusal::NoSuch { name: name.to_owned() };
    let fact: Fact = name.parse().map_err(|_| no_such())?;
    let value = *run.lapsed.get(&fact).ok_or_else(no_such)?;
    Ok(Decision { events: vec![Body::FactRechecked { unit: around.unit.clone(), fact, value }], ..Decision::default() })
}
