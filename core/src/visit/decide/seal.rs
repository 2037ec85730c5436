//! The end of a visit: what is missing, the seal, and breaking off.

use super::{Circumstances, Decision, Refusal, customer, words};
use crate::id::{Letter, ReadingId, Slot, StepId};
use crate::procedure::danger::{Danger, dangers_left};
use crate::procedure::gate::{Applies, applies};
use crate::procedure::pack::Pack;
use crate::visit::event::Body;
use crate::visit::fact::{Fact, Value};
use crate::visit::state::{ExcursionEnd, Mark, Run, Visit};

/// Something that a complete record would have.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum Gap {
    /// A step that is not behind.
    StepOpen { step: StepId },
    /// A step that was left out, with the reason.
    StepSkipped { step: StepId, reason: String },
    /// A photograph that is not there; the reason where one was given.
    Shot { slot: Slot, reason: Option<String> },
    /// A reading that is not there; the reason where one was given.
    Reading { reading: ReadingId, reason: Option<String> },
    /// A setting that stays away, with the reason.
    SettingLeft { excursion: String, reason: String },
    /// Stopped, with the reason.
    BrokenOff { reason: String },
}

impl Gap {
    /// As one line of the sealed record: stable names, no language.
    #[must_use]
    pub fn line(&self, unit: &Letter) -> String {
        let with = |what: &str, name: &str, reason: &Option<String>| match reason {
            Some(reason) => format!("{unit} {what} {name}: {reason}"),
            None => format!("{unit} {what} {name}"),
        };
        match self {
            Gap::StepOpen { step } => with("step open", step.as_str(), &None),
            Gap::StepSkipped { step, reason } => with("step left out", step.as_str(), &Some(reason.clone())),
            Gap::Shot { slot, reason } => with("photograph missing", slot.as_str(), reason),
            Gap::Reading { reading, reason } => with("reading missing", reading.as_str(), reason),
            Gap::SettingLeft { excursion, reason } => with("setting left away", excursion, &Some(reason.clone())),
            Gap::BrokenOff { reason } => with("broken off", "visit", &Some(reason.clone())),
        }
    }
}

/// What a unit's record lacks, in the order of the work.
#[must_use]
pub fn gaps(pack: &Pack, run: &Run) -> Vec<Gap> {
    let mut gaps = Vec::new();
    for (_, step) in pack.steps() {
        if applies(step, run) == Applies::No {
            continue;
        }
        match run.steps.get(&step.id) {
            Some(Mark::Skipped { reason, .. }) => {
                gaps.push(Gap::StepSkipped { step: step.id.clone(), reason: reason.clone() });
                continue;
            }
            Some(Mark::Done { .. } | Mark::Happened { .. }) => {}
            _ => gaps.push(Gap::StepOpen { step: step.id.clone() }),
        }
        for slot in &step.shots {
            let required = pack.shot(slot.as_str()).is_some_and(|shot| shot.required);
            if required && run.photos.get(slot).is_none_or(Vec::is_empty) {
                gaps.push(Gap::Shot { slot: slot.clone(), reason: run.shots_missed.get(slot).cloned() });
            }
        }
        for id in &step.readings {
            let optional = pack.reading(id.as_str()).is_none_or(|reading| reading.optional || reading.preset.is_some());
            if !optional && !run.readings.contains_key(id) {
                gaps.push(Gap::Reading { reading: id.clone(), reason: run.missed.get(id).cloned() });
            }
        }
    }
    for (id, excursion) in &run.excursions {
        if let ExcursionEnd::Left { reason } = &excursion.end {
            gaps.push(Gap::SettingLeft { excursion: id.to_string(), reason: reason.clone() });
        }
    }
    gaps
}

/// Everything that the visit's record lacks, as lines of the record, and whether it is complete. A gap with a reason
/// is still a gap: it stands in the record, with its reason.
#[must_use]
pub fn completeness(visit: &Visit, pack: &Pack) -> (bool, Vec<String>) {
    let mut lines: Vec<String> =
        visit.runs.iter().flat_map(|(unit, run)| gaps(pack, run).into_iter().map(move |gap| gap.line(unit))).collect();
    if let Some(broken) = &visit.broken_off {
        lines.insert(0, Gap::BrokenOff { reason: broken.reason.clone() }.line(&Letter("-".into())));
    }
    (lines.is_empty(), lines)
}

pub(super) fn prepare(visit: &Visit, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    if visit.sealing.is_some() {
        // Sign again: the door asks once more for the signature over the same payload.
        return Ok(Decision::default());
    }
    if customer::waits(visit, around) {
        return Err(Refusal::SignatureWaits);
    }
    if visit.broken_off.is_none() {
        let open: Vec<_> = visit.runs.values().flat_map(left_dangerous).collect();
        if !open.is_empty() {
            return Err(Refusal::Dangers { dangers: open });
        }
        let away: Vec<_> =
            visit.runs.values().flat_map(|run| run.open_excursions().map(|(id, _)| id.clone())).collect();
        if !away.is_empty() {
            return Err(Refusal::SettingsAway { excursions: away });
        }
    }
    let (complete, missing) = completeness(visit, around.pack);
    Ok(Decision { events: vec![Body::SealPrepared { complete, missing }], ..Decision::default() })
}

/// Dangers that nobody may walk away from as if the work were done: those of the facts, and a unit that runs with something
/// that must not be run so.
fn left_dangerous(run: &Run) -> Vec<Danger> {
    let mut open = dangers_left(&run.facts);
    if run.is_unsafe() && run.last_known(Fact::Supply) == Some(Value::On) {
        open.push(Danger::HandOverUnsafe);
    }
    open
}

/// Was the power taken away and neither given back nor locked? Then whoever comes next may switch it on.
fn untagged(run: &Run) -> bool {
    let off = run.last_known(Fact::Supply).is_some_and(|supply| supply != Value::On);
    off && run.facts.get(&Fact::Tag) != Some(&Value::Tagged)
}

/// Stopping is always possible. What is dangerous is written down with it.
pub(super) fn break_off(visit: &Visit, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let reason = words("break-off", around)?;
    let mut found: Vec<Danger> = visit.runs.values().flat_map(left_dangerous).collect();
    if visit.runs.values().any(untagged) {
        found.push(Danger::LeftUntagged);
    }
    found.sort_unstable();
    found.dedup();
    Ok(Decision {
        events: vec![Body::BrokenOff { reason, dangers: found }],
        used: vec!["break-off".into()],
        go: Some("leaving".into()),
        ..Decision::default()
    })
}
