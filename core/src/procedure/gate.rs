//! Gates: may this step start, or be marked done, as things are? The field and the pack checker both ask here.

use serde::Serialize;

use super::danger::{Danger, dangers_of_change};
use super::pack::{Act, Pack, Phase, Step, When};
use super::proof::unproved;
use crate::id::{ConditionId, ExcursionId, Letter, PhaseId, ReadingId, Slot, StepId};
use crate::now::Now;
use crate::science::materials::Reason;
use crate::visit::fact::{Fact, Facts, Holds, Value};
use crate::visit::state::{ExcursionEnd, Mark, Run};

/// Beginning a waiting time, or marking a step done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Passage {
    /// The waiting time begins.
    Start,
    /// The step is done.
    Done,
}

/// What a step lacks.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum Missing {
    /// It is already behind.
    AlreadyDone,
    /// It does not apply to this unit.
    NotForThisUnit,
    /// Whether it applies depends on a question that is not answered.
    Answer { condition: ConditionId },
    /// A question that this step asks is not answered.
    Question { condition: ConditionId },
    /// An earlier phase is not finished.
    Phase { phase: PhaseId },
    /// An earlier step is not behind.
    Step { step: StepId },
    /// A fact is otherwise, or not known.
    Fact { needs: Holds, is: Option<Value> },
    /// A reading is neither taken nor answered for.
    Reading { reading: ReadingId },
    /// A photograph is neither taken nor answered for.
    Shot { slot: Slot },
    /// The waiting time has not begun.
    NotStarted,
    /// The waiting time is not over.
    Wait { left_ms: i64 },
    /// The setting was not noted as changed.
    SettingNotNoted { excursion: ExcursionId },
    /// The setting is not brought home, nor answered for.
    SettingAway { excursion: ExcursionId },
    /// The loop was not measured cold.
    LoopNotCold { reading: ReadingId },
    /// The water behind the fitting was not measured cold.
    FittingNotCold { reading: ReadingId },
    /// Neither pH nor conductivity of rinse and supply were measured.
    RinseNotMeasured,
    /// The rinse does not equal the supply.
    RinseDiffers,
    /// It would bring a forbidden state.
    Danger { danger: Danger },
    /// It would bring one to another unit, through what they share.
    OtherUnit { unit: Letter, danger: Danger },
    /// The table of materials forbids this acid on this metal.
    AcidForbidden { acid: When, metal: When, reason: Reason },
    /// Which acid it is, or which metal it meets, is not known.
    AcidUnknown,
}

/// What a passage changes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// Facts that hold then.
    pub sets: Facts,
    /// Facts that are not known then.
    pub clears: Vec<Fact>,
    /// Its waiting time went past the most.
    pub late: bool,
}

/// Does a step concern this unit?
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum Applies {
    /// It does.
    Yes,
    /// It does not.
    No,
    /// A question comes first.
    Ask { condition: ConditionId },
}

/// Does the step concern this unit, by the answers so far? Several answers to one condition are alternatives.
#[must_use]
pub fn applies(step: &Step, run: &Run) -> Applies {
    let mut open = None;
    for when in &step.when {
        match run.conditions.get(&when.condition) {
            None => open = open.or(Some(&when.condition)),
            Some(answer) => {
                let any = step.when.iter().any(|other| other.condition == when.condition && other.option == *answer);
                if !any {
                    return Applies::No;
                }
            }
        }
    }
    open.map_or(Applies::Yes, |condition| Applies::Ask { condition: condition.clone() })
}

/// Is every step of the phase behind, or of no concern?
#[must_use]
pub fn phase_is_behind(phase: &Phase, run: &Run) -> bool {
    phase.steps.iter().all(|step| run.is_behind(step.id.as_str()) || applies(step, run) == Applies::No)
}

/// What the passage changes, without asking whether it is allowed.
#[must_use]
pub fn change(step: &Step, run: &Run, passage: Passage, now: &Now) -> Change {
    let (holds, clears) = match passage {
        Passage::Start => (&step.starts, Vec::new()),
        Passage::Done => (&step.sets, step.clears.clone()),
    };
    let mut sets: Facts = holds.iter().map(|holds| (holds.fact, holds.value)).collect();
    if sets.get(&Fact::Loop) == Some(&Value::Acid) {
        // Whatever a pack says: a loop that has met acid is not rinsed until that is proved again.
        sets.insert(Fact::RinseCheck, Value::Unproved);
    }
    let late = match run.steps.get(&step.id) {
        Some(mark @ Mark::Running { most_s, .. }) => {
            mark.waited(now).is_some_and(|waited| waited.longest_ms > i64::from(*most_s) * 1000)
        }
        _ => false,
    };
    Change { sets, clears, late }
}

/// The facts after a change.
#[must_use]
pub fn facts_after(facts: &Facts, change: &Change) -> Facts {
    let mut after = facts.clone();
    after.retain(|fact, _| !change.clears.contains(fact));
    after.extend(change.sets.iter().map(|(fact, value)| (*fact, *value)));
    after
}

/// The acts of a step that fall into this passage: what is done in a waiting time begins with it.
#[must_use]
pub fn acts(step: &Step, passage: Passage) -> &[Act] {
    if step.dwell.is_none() || passage == Passage::Start { &step.acts } else { &[] }
}

/// The danger of an act for what was found: nobody hands over running what must not be run.
#[must_use]
pub fn danger_of_findings(run: &Run, acts: &[Act]) -> Option<Danger> {
    (acts.contains(&Act::HandOver) && run.is_unsafe()).then_some(Danger::HandOverUnsafe)
}

/// What the passage would change, or everything that it lacks.
///
/// # Errors
/// The list of what is missing, never empty.
pub fn allowed(
    pack: &Pack,
    phase: &Phase,
    step: &Step,
    run: &Run,
    passage: Passage,
    now: &Now,
) -> Result<Change, Vec<Missing>> {
    match applies(step, run) {
        Applies::No => return Err(vec![Missing::NotForThisUnit]),
        Applies::Ask { condition } => return Err(vec![Missing::Answer { condition }]),
        Applies::Yes => {}
    }
    let running = matches!(run.steps.get(&step.id), Some(Mark::Running { .. }));
    if run.is_behind(step.id.as_str()) || (running && passage == Passage::Start) {
        return Err(vec![Missing::AlreadyDone]);
    }
    let mut missing = Vec::new();
    if !running {
        missing.extend(missing_before(pack, phase, step, run));
    }
    if passage == Passage::Done {
        missing.extend(missing_inside(pack, step, run, now));
        missing.extend(unproved(pack, step, run));
    }
    let change = change(step, run, passage, now);
    let dangers = dangers_of_change(&run.facts, &facts_after(&run.facts, &change), acts(step, passage));
    let dangers = dangers.into_iter().chain(danger_of_findings(run, acts(step, passage)));
    missing.extend(dangers.map(|danger| Missing::Danger { danger }));
    if missing.is_empty() { Ok(change) } else { Err(missing) }
}

fn missing_before(pack: &Pack, phase: &Phase, step: &Step, run: &Run) -> Vec<Missing> {
    let mut missing = Vec::new();
    for id in &phase.after {
        let earlier = pack.phases.iter().find(|phase| phase.id == *id);
        if earlier.is_some_and(|earlier| !phase_is_behind(earlier, run)) {
            missing.push(Missing::Phase { phase: id.clone() });
        }
    }
    for id in &step.after {
        let earlier = pack.step(id.as_str());
        if earlier.is_some_and(|(_, earlier)| !run.is_behind(id.as_str()) && applies(earlier, run) != Applies::No) {
            missing.push(Missing::Step { step: id.clone() });
        }
    }
    for needs in &step.needs {
        let is = run.facts.get(&needs.fact).copied();
        if is != Some(needs.value) {
            missing.push(Missing::Fact { needs: *needs, is });
        }
    }
    missing
}

fn missing_inside(pack: &Pack, step: &Step, run: &Run, now: &Now) -> Vec<Missing> {
    let mut missing = Vec::new();
    for condition in &step.asks {
        if !run.conditions.contains_key(condition) {
            missing.push(Missing::Question { condition: condition.clone() });
        }
    }
    for id in &step.readings {
        let optional = pack.reading(id.as_str()).is_none_or(|reading| reading.optional || reading.preset.is_some());
        if !optional && !run.readings.contains_key(id) && !run.missed.contains_key(id) {
            missing.push(Missing::Reading { reading: id.clone() });
        }
    }
    for slot in &step.shots {
        let required = pack.shot(slot.as_str()).is_some_and(|shot| shot.required);
        let taken = run.photos.get(slot).is_some_and(|photos| !photos.is_empty());
        if required && !taken && !run.shots_missed.contains_key(slot) {
            missing.push(Missing::Shot { slot: slot.clone() });
        }
    }
    if step.dwell.is_some() {
        match run.steps.get(&step.id) {
            Some(mark @ Mark::Running { least_s, .. }) => {
                let proven_ms = mark.waited(now).map_or(0, |waited| waited.proven_ms);
                let left_ms = i64::from(*least_s) * 1000 - proven_ms;
                if left_ms > 0 {
                    missing.push(Missing::Wait { left_ms });
                }
            }
            _ => missing.push(Missing::NotStarted),
        }
    }
    if let Some(excursion) = &step.opens
        && !run.excursions.contains_key(excursion)
    {
        missing.push(Missing::SettingNotNoted { excursion: excursion.clone() });
    }
    if let Some(id) = &step.homes
        && run.excursions.get(id).is_some_and(|excursion| excursion.end == ExcursionEnd::Open)
    {
        missing.push(Missing::SettingAway { excursion: id.clone() });
    }
    missing
}
