//! Isolators, valves and cylinders belong to the visit, not to one unit: work on one unit makes what it shares with
//! another not known there, until somebody has looked at it again.
//!
//! Where the assignment writes down what the units share, that holds, and what would put another unit into danger is
//! refused. Where nothing is written down they are taken to share supply, valves, cylinder and lock: then nothing is
//! refused on a guess, but what changed is asked about again. An empty list says that they share nothing.

use super::{Circumstances, Refusal};
use crate::id::Letter;
use crate::procedure::danger::{Danger, dangers_of_change};
use crate::procedure::gate::Missing;
use crate::round::Shared;
use crate::visit::apply::apply_to_run;
use crate::visit::event::Body;
use crate::visit::fact::{Fact, Facts, Value};
use crate::visit::state::{Run, Visit};

/// What units are taken to share where nobody wrote it down.
const SUPPOSED: &[Fact] = &[Fact::Supply, Fact::FurtherSupplies, Fact::Valves, Fact::Tank, Fact::Tag];

fn shared(shares: Option<&[Shared]>, one: &Letter, other: &Letter) -> Vec<Fact> {
    let Some(shares) = shares else { return SUPPOSED.to_vec() };
    let has = |share: &Shared, unit: &Letter| share.units.is_empty() || share.units.contains(&unit.0);
    shares
        .iter()
        .filter(|share| has(share, one) && has(share, other))
        .flat_map(|share| share.facts.iter().filter_map(|name| name.parse().ok()))
        .collect()
}

/// Can both be true of one thing? Off and proved dead can, as can shut and proved shut.
fn agree(one: Value, other: Value) -> bool {
    let off = |value| matches!(value, Value::Off | Value::ProvedDead | Value::None);
    let shut = |value| matches!(value, Value::Shut | Value::ProvedShut);
    one == other || off(one) && off(other) || shut(one) && shut(other)
}

/// What the events of one unit make not known at the others, to be written after them.
///
/// # Errors
/// Where a step would put another unit into danger through what the assignment says that they share.
pub(super) fn lapses(visit: &Visit, events: &[Body], around: &Circumstances<'_>) -> Result<Vec<Body>, Refusal> {
    let Some(before) = visit.run(around.unit).filter(|_| visit.runs.len() > 1) else { return Ok(Vec::new()) };
    // Whoever looked and found it unchanged although another unit changed says that they do not share it after all.
    let looked = |body: &Body| matches!(body, Body::FactRechecked { .. });
    if around.shares.is_none() && events.iter().all(looked) {
        return Ok(Vec::new());
    }
    let mut after = before.clone();
    for body in events {
        apply_to_run(&mut after, body, around.now);
    }
    let mut found = Vec::new();
    for (unit, run) in visit.runs.iter().filter(|(unit, _)| *unit != around.unit) {
        let lapsed: Facts = shared(around.shares, around.unit, unit)
            .into_iter()
            .filter(|fact| before.facts.get(fact) != after.facts.get(fact))
            .filter_map(|fact| Some((fact, *run.facts.get(&fact)?)))
            .filter(|(fact, value)| !after.facts.get(fact).is_some_and(|is| agree(*is, *value)))
            .collect();
        if lapsed.is_empty() {
            continue;
        }
        if around.shares.is_some() {
            refuse_danger(unit, run, &lapsed, &after, events)?;
        }
        found.push(Body::FactsLapsed { unit: unit.clone(), facts: lapsed, pause_s: 0, by: Some(around.unit.clone()) });
    }
    Ok(found)
}

/// A step that is only now to be done is turned down. What happened already is written down all the same.
fn refuse_danger(unit: &Letter, run: &Run, lapsed: &Facts, after: &Run, events: &[Body]) -> Result<(), Refusal> {
    let step = events.iter().find_map(|body| match body {
        Body::StepStarted { step, .. } | Body::StepDone { step, .. } => Some(step),
        _ => None,
    });
    let Some(step) = step else { return Ok(()) };
    let mut facts = run.facts;
    for fact in lapsed.keys() {
        match after.facts.get(fact) {
            Some(value) => facts.insert(*fact, *value),
            None => facts.remove(fact),
        };
    }
    let dangers: Vec<Danger> = dangers_of_change(&run.facts, &facts, &[]);
    if dangers.is_empty() {
        return Ok(());
    }
    let missing = dangers.into_iter().map(|danger| Missing::OtherUnit { unit: unit.clone(), danger }).collect();
    Err(Refusal::Gate { step: step.clone(), missing })
}
