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

/// Where a unit's work stands, as far as order and facts go: a run in the field, or a state of the pack checker. Both
/// are judged by the same gates.
pub trait Standing {
    /// What is known.
    fn facts(&self) -> &Facts;
    /// The answer to a question, where it is answered.
    fn answer(&self, condition: &ConditionId) -> Option<&str>;
    /// Done, left out or happened. `number` is the step's place in the pack, for those that count.
    fn is_behind(&self, number: usize, step: &Step) -> bool;
    /// Its waiting time runs.
    fn is_running(&self, number: usize, step: &Step) -> bool;
}

impl Standing for Run {
    fn facts(&self) -> &Facts {
        &self.facts
    }

    fn answer(&self, condition: &ConditionId) -> Option<&str> {
        self.conditions.get(condition).map(String::as_str)
    }

    fn is_behind(&self, _: usize, step: &Step) -> bool {
        Run::is_behind(self, step.id.as_str())
    }

    fn is_running(&self, _: usize, step: &Step) -> bool {
        matches!(self.steps.get(&step.id), Some(Mark::Running { .. }))
    }
}

/// A step with its place in the pack.
type Numbered<'a> = (usize, &'a Step);

/// A step with everything that must be behind before it, found once in the pack.
pub struct Turn<'a> {
    /// The step, and its place in the pack.
    pub step: Numbered<'a>,
    phases: Vec<(&'a PhaseId, Vec<Numbered<'a>>)>,
    steps: Vec<Numbered<'a>>,
}

impl<'a> Turn<'a> {
    /// The turn of a step of this phase of this pack.
    #[must_use]
    pub fn of(pack: &'a Pack, phase: &'a Phase, step: &'a Step) -> Turn<'a> {
        let all = || pack.steps().enumerate().map(|(number, (phase, step))| (number, phase, step));
        let steps_of = |id: &PhaseId| {
            let inside = all().filter(|(_, phase, _)| phase.id == *id);
            inside.map(|(number, _, step)| (number, step)).collect::<Vec<_>>()
        };
        let find = |id: &StepId| all().find(|(_, _, step)| step.id == *id).map(|(number, _, step)| (number, step));
        let number = all().find(|(_, _, other)| other.id == step.id).map_or(usize::MAX, |(number, _, _)| number);
        Turn {
            step: (number, step),
            phases: phase.after.iter().map(|id| (id, steps_of(id))).collect(),
            steps: step.after.iter().filter_map(find).collect(),
        }
    }

    /// Every step that has to be behind, or of no concern.
    pub fn earlier(&self) -> impl Iterator<Item = Numbered<'a>> {
        self.phases.iter().flat_map(|(_, steps)| steps).chain(&self.steps).copied()
    }

    /// What is not behind yet, in order.
    fn waits_for<'b, S: Standing>(&'b self, standing: &'b S) -> impl Iterator<Item = Lack<'a>> + 'b {
        let open = |(number, step): &Numbered<'a>| {
            !standing.is_behind(*number, step) && applies(step, standing) != Applies::No
        };
        let phases = self.phases.iter().filter(move |(_, steps)| steps.iter().any(open)).map(|(id, _)| Lack::Phase(id));
        phases.chain(self.steps.iter().filter(move |step| open(step)).map(|(_, step)| Lack::Step(&step.id)))
    }

    /// Has its turn come? What the step itself needs is another question.
    pub fn has_come<S: Standing>(&self, standing: &S) -> bool {
        let (number, step) = self.step;
        !standing.is_behind(number, step)
            && applies(step, standing) == Applies::Yes
            && (standing.is_running(number, step) || self.waits_for(standing).next().is_none())
    }

    /// Would its gates let it through, leaving aside what is asked, read, photographed and waited for inside it, and
    /// the dangers that the core itself guards against?
    pub fn is_open<S: Standing>(&self, standing: &S, passage: Passage) -> bool {
        let (number, step) = self.step;
        let running = standing.is_running(number, step);
        let begun = match passage {
            Passage::Start => step.dwell.is_some() && !running,
            Passage::Done => step.dwell.is_none() || running,
        };
        begun && self.has_come(standing) && (running || lacks(step, standing.facts()).next().is_none())
    }
}

/// What stands before a step.
enum Lack<'a> {
    Phase(&'a PhaseId),
    Step(&'a StepId),
    Fact(Holds, Option<Value>),
}

impl From<Lack<'_>> for Missing {
    fn from(lack: Lack<'_>) -> Missing {
        match lack {
            Lack::Phase(phase) => Missing::Phase { phase: phase.clone() },
            Lack::Step(step) => Missing::Step { step: step.clone() },
            Lack::Fact(needs, is) => Missing::Fact { needs, is },
        }
    }
}

/// The facts that the step needs and that are otherwise, or not known.
fn lacks<'a>(step: &'a Step, facts: &'a Facts) -> impl Iterator<Item = Lack<'a>> + 'a {
    step.needs.iter().filter_map(|needs| {
        let is = facts.get(&needs.fact).copied();
        (is != Some(needs.value)).then_some(Lack::Fact(*needs, is))
    })
}

/// Does the step concern this unit, by the answers so far? Several answers to one condition are alternatives.
#[must_use]
pub fn applies<S: Standing>(step: &Step, standing: &S) -> Applies {
    let mut open = None;
    for when in &step.when {
        match standing.answer(&when.condition) {
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

/// What the passage makes of the facts, without asking whether it is allowed: what holds, and what is not known.
#[must_use]
pub fn effect(step: &Step, passage: Passage) -> (Facts, &[Fact]) {
    let (holds, clears): (_, &[Fact]) = match passage {
        Passage::Start => (&step.starts, &[]),
        Passage::Done => (&step.sets, &step.clears),
    };
    let mut sets: Facts = holds.iter().map(|holds| (holds.fact, holds.value)).collect();
    if sets.get(&Fact::Loop) == Some(&Value::Acid) {
        // Whatever a pack says: a loop that has met acid is not rinsed until that is proved again.
        sets.insert(Fact::RinseCheck, Value::Unproved);
    }
    (sets, clears)
}

/// What the passage changes, without asking whether it is allowed.
#[must_use]
pub fn change(step: &Step, run: &Run, passage: Passage, now: &Now) -> Change {
    let (sets, clears) = effect(step, passage);
    let late = match run.steps.get(&step.id) {
        Some(mark @ Mark::Running { most_s, .. }) => {
            mark.waited(now).is_some_and(|waited| waited.longest_ms > i64::from(*most_s) * 1000)
        }
        _ => false,
    };
    Change { sets, clears: clears.to_vec(), late }
}

/// The facts after a change: what is cleared first, then what is set.
#[must_use]
pub fn facts_after(facts: &Facts, sets: &Facts, clears: &[Fact]) -> Facts {
    let mut after = *facts;
    after.retain(|fact, _| !clears.contains(fact));
    after.extend(*sets);
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
    applies_or_why(step, run)?;
    let turn = Turn::of(pack, phase, step);
    let running = run.is_running(turn.step.0, step);
    if run.is_behind(step.id.as_str()) || (running && passage == Passage::Start) {
        return Err(vec![Missing::AlreadyDone]);
    }
    let mut missing: Vec<Missing> = Vec::new();
    if !running {
        missing.extend(turn.waits_for(run).chain(lacks(step, &run.facts)).map(Missing::from));
    }
    if passage == Passage::Done {
        missing.extend(missing_inside(pack, step, run, now));
        missing.extend(unproved(pack, step, run));
    }
    let change = change(step, run, passage, now);
    let after = facts_after(&run.facts, &change.sets, &change.clears);
    let dangers = dangers_of_change(&run.facts, &after, acts(step, passage));
    let dangers = dangers.into_iter().chain(danger_of_findings(run, acts(step, passage)));
    missing.extend(dangers.map(|danger| Missing::Danger { danger }));
    if missing.is_empty() { Ok(change) } else { Err(missing) }
}

/// May the step be left out now? Only in its turn: one left out early would let those behind it come before those in
/// front of it. What it needs does not matter, and one whose waiting time runs can be left out too: the unit tripped,
/// the rain came.
///
/// # Errors
/// The list of what is missing, never empty.
pub fn may_leave_out(pack: &Pack, phase: &Phase, step: &Step, run: &Run) -> Result<(), Vec<Missing>> {
    applies_or_why(step, run)?;
    let turn = Turn::of(pack, phase, step);
    if run.is_behind(step.id.as_str()) {
        return Err(vec![Missing::AlreadyDone]);
    }
    if turn.has_come(run) {
        return Ok(());
    }
    Err(turn.waits_for(run).map(Missing::from).collect())
}

fn applies_or_why(step: &Step, run: &Run) -> Result<(), Vec<Missing>> {
    match applies(step, run) {
        Applies::No => Err(vec![Missing::NotForThisUnit]),
        Applies::Ask { condition } => Err(vec![Missing::Answer { condition }]),
        Applies::Yes => Ok(()),
    }
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
