//! Steps: begin, done, left out, taken back, happened all the same; and the answers that decide which apply.

use super::{Circumstances, Decision, Refusal, reading, words};
use crate::effect::Request;
use crate::id::StepId;
use crate::procedure::danger::{dangers_of_change, lingers};
use crate::procedure::gate::{self, Missing, Passage, facts_after};
use crate::procedure::mixing;
use crate::procedure::pack::{Phase, Step};
use crate::procedure::proof;
use crate::visit::apply::apply_to_run;
use crate::visit::event::Body;
use crate::visit::fact::Facts;
use crate::visit::state::{Mark, Run, Visit};

/// The ring before a most-dwell ends comes this much earlier, milliseconds.
pub const WARNING_MS: i64 = 120_000;

fn find<'a>(step: &str, around: &Circumstances<'a>) -> Result<(&'a Phase, &'a Step), Refusal> {
    around.pack.step(step).ok_or_else(|| Refusal::NoSuch { name: step.to_owned() })
}

pub(super) fn start(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let (phase, step) = find(id, around)?;
    let change = gate::allowed(around.pack, phase, step, run, Passage::Start, around.now)
        .map_err(|missing| Refusal::Gate { step: step.id.clone(), missing })?;
    let Some(dwell) = step.dwell else {
        return Err(Refusal::NoSuch { name: format!("{id}: a waiting time") });
    };
    let ring = |in_ms: i64, what: &str| Request::WakeAt {
        utc_ms: around.now.utc_ms + in_ms,
        text: format!("{what}:{}", step.id),
    };
    let (least_ms, most_ms) = (i64::from(dwell.least_s) * 1000, i64::from(dwell.most_s) * 1000);
    let mut requests = vec![ring(least_ms, "ready")];
    if most_ms - WARNING_MS > least_ms {
        requests.push(ring(most_ms - WARNING_MS, "soon-over"));
    }
    let started = Body::StepStarted {
        unit: around.unit.clone(),
        step: step.id.clone(),
        sets: change.sets,
        least_s: dwell.least_s,
        most_s: dwell.most_s,
    };
    Ok(Decision {
        events: mix_made(run, step, around).into_iter().chain([started]).collect(),
        requests,
        ..Decision::default()
    })
}

/// The mix of a step as it is told on its screen, with what does not fit together about it: written before the step's own
/// mark. One of a waiting time is prepared before that begins.
fn mix_made(run: &Run, step: &Step, around: &Circumstances<'_>) -> Option<Body> {
    let mix = around.pack.mix(step.mix.as_ref()?)?;
    let worked = mixing::worked(around.pack, run, mix)?;
    Some(Body::MixMade {
        unit: around.unit.clone(),
        mix: mix.id.clone(),
        chemical: mix.chemical.clone().unwrap_or_default(),
        water_l: format!("{:.3}", worked.water_l),
        concentrate: worked.concentrate.number(),
        measure: worked.concentrate.code().to_owned(),
        notes: worked.notes,
    })
}

/// A step is done. What stands half typed in its readings is meant: it is taken first, as if it had been entered.
pub(super) fn done(visit: &Visit, run: &Run, id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let (phase, step) = find(id, around)?;
    let mut decision = Decision::default();
    for reading in &step.readings {
        let field = format!("read:{reading}");
        let Some(text) = around.drafts.get(&field).filter(|text| !text.trim().is_empty()) else { continue };
        let taken = reading::enter(visit, &field, text, false, around)?;
        decision.events.extend(taken.events);
        decision.used.extend(taken.used);
    }
    // The gates judge the values that are taken now, not those that they replace.
    let mut taken = run.clone();
    for body in &decision.events {
        apply_to_run(&mut taken, body, around.now);
    }
    let change = gate::allowed(around.pack, phase, step, &taken, Passage::Done, around.now)
        .map_err(|missing| Refusal::Gate { step: step.id.clone(), missing })?;
    if step.dwell.is_none() {
        decision.events.extend(mix_made(&taken, step, around));
    }
    decision.events.push(Body::StepDone {
        unit: around.unit.clone(),
        step: step.id.clone(),
        sets: change.sets,
        clears: change.clears,
        late: change.late,
    });
    Ok(decision)
}

pub(super) fn skip(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let (phase, step) = find(id, around)?;
    if !step.may_skip {
        return Err(Refusal::NoSuch { name: format!("{id}: a way to leave it out") });
    }
    gate::may_leave_out(around.pack, phase, step, run)
        .map_err(|missing| Refusal::Gate { step: step.id.clone(), missing })?;
    let field = format!("skip:{id}");
    let reason = words(&field, around)?;
    Ok(Decision {
        events: vec![Body::StepSkipped { unit: around.unit.clone(), step: step.id.clone(), reason }],
        used: vec![field],
        go: Some("now".into()),
        ..Decision::default()
    })
}

/// A mark is taken back. Only facts that still are as the step set them become not known, and what lingers stays.
pub(super) fn undo(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let (_, step) = find(id, around)?;
    if run.order.last() != Some(&step.id) {
        return Err(Refusal::NoSuch { name: format!("{id}: a mark that is the last one") });
    }
    let clears = step
        .sets
        .iter()
        .chain(&step.starts)
        .filter(|holds| run.last_known(holds.fact) == Some(holds.value) && !lingers(**holds))
        .map(|holds| holds.fact)
        .collect();
    Ok(Decision {
        events: vec![Body::StepUndone { unit: around.unit.clone(), step: step.id.clone(), clears }],
        ..Decision::default()
    })
}

/// It happened although it was refused: the truth goes into the record with the dangers that it brought.
pub(super) fn happened(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let (_, step) = find(id, around)?;
    let field = format!("happened:{id}");
    let words = words(&field, around)?;
    let running = matches!(run.steps.get(&step.id), Some(Mark::Running { .. }));
    // Beginning and end both happened: what was dangerous only in between is told as well.
    let passages: &[Passage] =
        if step.dwell.is_some() && !running { &[Passage::Start, Passage::Done] } else { &[Passage::Done] };
    let (mut facts, mut sets, mut clears, mut dangers) = (run.facts, Facts::new(), Vec::new(), Vec::new());
    for passage in passages {
        let change = gate::change(step, run, *passage, around.now);
        let after = facts_after(&facts, &change.sets, &change.clears);
        dangers.extend(dangers_of_change(&facts, &after, gate::acts(step, *passage)));
        dangers.extend(gate::danger_of_findings(run, gate::acts(step, *passage)));
        facts = after;
        sets.extend(change.sets);
        clears.extend(change.clears);
    }
    sets.retain(|fact, _| facts.contains_key(fact));
    // Words make no acid suit a metal and no rinse clean: what no reading and no table bears out stays unknown.
    for fact in proof::unproved_facts(around.pack, step, run) {
        sets.remove(&fact);
        clears.push(fact);
    }
    dangers.sort_unstable();
    dangers.dedup();
    Ok(Decision {
        events: vec![Body::StepHappened {
            unit: around.unit.clone(),
            step: step.id.clone(),
            sets,
            clears,
            words,
            dangers,
        }],
        used: vec![field],
        go: Some("now".into()),
        ..Decision::default()
    })
}

pub(super) fn choose(run: &Run, field: &str, option: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let no_such = || Refusal::NoSuch { name: format!("{field}={option}") };
    let Some(id) = field.strip_prefix("condition:") else {
        // Not about the unit: a choice of the screen itself, kept as a draft by the door.
        return Ok(Decision::default());
    };
    let condition = around.pack.condition(id).ok_or_else(no_such)?;
    let chosen = condition.options.iter().find(|known| known.id == option).ok_or_else(no_such)?;
    if run.conditions.get(&condition.id).is_some_and(|answer| answer == option) {
        // Said again, it is no news: what it had set may have been worked on since.
        return Ok(Decision::default());
    }
    // An answer changed after work has begun on it could open a gate that the work has shut.
    let used = around.pack.steps().any(|(_, step)| {
        step.when.iter().any(|when| when.condition == condition.id) && run.steps.contains_key(&step.id)
    });
    if used && run.conditions.contains_key(&condition.id) {
        return Err(Refusal::Gate { step: StepId(id.to_owned()), missing: vec![Missing::AlreadyDone] });
    }
    Ok(Decision {
        events: vec![Body::ConditionSet {
            unit: around.unit.clone(),
            condition: condition.id.clone(),
            option: option.to_owned(),
            sets: chosen.sets.iter().map(|holds| (holds.fact, holds.value)).collect(),
        }],
        ..Decision::default()
    })
}
