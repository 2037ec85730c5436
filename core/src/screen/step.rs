//! One step as a block, with everything that belongs to it.

use super::fields::{choice, reading, shot};
use super::notices::{clock, missing_words, span};
use super::{Block, DwellState, StepState, Tone, View, VisitView, charge, excursion, materials, mix};
use crate::action::Action;
use crate::id::{ReadingId, Slot};
use crate::procedure::gate::{Applies, Missing, Passage, allowed, applies};
use crate::procedure::pack::{Hazard, Phase, Reading, Step};
use crate::round::OwnInstrument;
use crate::visit::decide::WARNING_MS;
use crate::visit::state::Mark;

/// The most steps on one card.
const CARD_MOST: usize = 5;

/// The card of now: the first step that is not behind, and, where it is no hazard, those that go with it.
pub(super) fn card<'a>(visit: &VisitView<'a>) -> Option<(&'a Phase, Vec<&'a Step>)> {
    let open = |step: &&Step| !visit.run.is_behind(step.id.as_str()) && applies(step, visit.run) != Applies::No;
    let (phase, first) = visit.pack.steps().find(|(_, step)| open(step))?;
    if first.alone || first.dwell.is_some() {
        return Some((phase, vec![first]));
    }
    let steps = phase
        .steps
        .iter()
        .skip_while(|step| step.id != first.id)
        .filter(open)
        .take_while(|step| !step.alone && step.dwell.is_none())
        .take(CARD_MOST)
        .collect();
    Some((phase, steps))
}

/// A step with its cautions, fields, photographs, waiting time, and what is missing. On a card of several, each has its
/// own box to tick.
pub(super) fn step_block(view: &View<'_>, visit: &VisitView<'_>, phase: &Phase, step: &Step, on_card: bool) -> Block {
    let words = view.words;
    let mark = visit.run.steps.get(&step.id);
    let passage = if step.dwell.is_some() && mark.is_none() { Passage::Start } else { Passage::Done };
    let gate = allowed(visit.pack, phase, step, visit.run, passage, view.now);
    // What stands inside the step is no reason to call it gated: it is what there is to do.
    let outside: Vec<&Missing> = match &gate {
        Ok(_) => Vec::new(),
        Err(missing) => missing.iter().filter(|missing| is_outside(missing)).collect(),
    };
    let state = match mark {
        Some(Mark::Done { .. } | Mark::Happened { .. }) => StepState::Done,
        Some(Mark::Skipped { .. }) => StepState::Skipped,
        Some(Mark::Running { .. }) => StepState::Running,
        None if outside.is_empty() => StepState::Open,
        None => StepState::Gated,
    };
    let key = format!("step-{}", step.id);
    let mut blocks = Vec::new();
    if !matches!(state, StepState::Done | StepState::Skipped) {
        for hazard in cautions(visit, step) {
            let name = super::hazard_name(hazard);
            blocks.push(Block::Caution {
                sign: name.to_owned(),
                title: words.text(&format!("caution-{name}")),
                text: words.text(&format!("caution-{name}.text")),
            });
        }
        blocks.extend(charge::warning(view, step, mark));
        if let Some(how) = words.get(&format!("{key}.how")) {
            blocks.push(Block::Text { text: how, level: 0, tone: Tone::Plain });
        }
    }
    blocks.extend(step.asks.iter().filter_map(|id| choice(view, visit, id.as_str())));
    // What is measured in a waiting time is asked for once it runs; label values, which are preset, come before it.
    let asked = |id: &&ReadingId| {
        passage == Passage::Done || visit.pack.reading(id.as_str()).is_some_and(|reading| reading.preset.is_some())
    };
    let asked = |id: &&ReadingId| asked(id) && (visit.knows_refrigerant() || !of_circuit(visit, id));
    blocks.extend(step.readings.iter().filter(asked).filter_map(|id| reading(view, visit, id.as_str())));
    blocks.extend(lapsed_instruments(view, visit, step));
    if let Some(mix) = step.mix.as_ref().and_then(|id| visit.pack.mix(id)) {
        blocks.extend(mix::blocks(view, visit, mix));
    }
    blocks.extend(materials::verdict(view, visit, step));
    // The settings are photographed before their change is noted.
    let (first, rest): (Vec<&Slot>, Vec<&Slot>) =
        step.shots.iter().partition(|slot| excursion::wants_first(visit, step, slot));
    blocks.extend(first.into_iter().filter_map(|slot| shot(view, visit, slot.as_str())));
    blocks.extend(excursion::blocks(view, visit, step));
    blocks.extend(rest.into_iter().filter_map(|slot| shot(view, visit, slot.as_str())));
    blocks.extend(dwell(view, visit, step));
    if state == StepState::Gated {
        // The verdict on acid and metal stands above already.
        for missing in outside.into_iter().filter(|missing| !matches!(missing, Missing::AcidForbidden { .. })) {
            let tone = if matches!(missing, Missing::Danger { .. }) { Tone::Danger } else { Tone::Attention };
            blocks.push(Block::Text { text: missing_words(missing, words), level: 0, tone });
        }
    }
    let several = on_card && !step.alone && step.dwell.is_none();
    let plain = !on_card && !step.alone && step.dwell.is_none();
    if (several || plain) && matches!(state, StepState::Open | StepState::Gated) {
        blocks.push(Block::Check {
            label: words.text("check-done"),
            done: false,
            press: Action::Done { step: step.id.0.clone() },
        });
    }
    Block::Step {
        id: step.id.0.clone(),
        title: words.text(&key),
        why: words.get(&format!("{key}.why")).unwrap_or_default(),
        state,
        state_text: state_text(view, state, mark),
        blocks,
    }
}

/// The step's hazards, and that of the circuit where something is read at it.
fn cautions(visit: &VisitView<'_>, step: &Step) -> Vec<Hazard> {
    let at_circuit = visit.knows_refrigerant() && step.readings.iter().any(|id| of_circuit(visit, id));
    let added = at_circuit && !step.cautions.contains(&Hazard::Refrigerant);
    step.cautions.iter().copied().chain(added.then_some(Hazard::Refrigerant)).collect()
}

fn of_circuit(visit: &VisitView<'_>, id: &ReadingId) -> bool {
    visit.pack.reading(id.as_str()).is_some_and(Reading::of_circuit)
}

/// Instruments whose calibration lapsed, told once: until the first value was taken with one.
fn lapsed_instruments(view: &View<'_>, visit: &VisitView<'_>, step: &Step) -> Vec<Block> {
    let day = visit.visit.opened.as_ref().unwrap_or(view.now).day();
    let used = |serial: &str| {
        visit.run.readings.values().any(|taken| taken.own.as_ref().is_some_and(|own| own.serial == serial))
    };
    let mut lapsed: Vec<&OwnInstrument> = step
        .readings
        .iter()
        .filter_map(|id| visit.technician.instrument(visit.pack.reading(id.as_str())?.instrument.as_deref()?, &day))
        .filter(|own| own.lapsed_on(&day) && !used(&own.serial))
        .collect();
    lapsed.dedup();
    let text = |own: &OwnInstrument| {
        let parts = [("name", own.name.as_str()), ("serial", &own.serial), ("until", &own.calibrated_until)];
        view.words.fill("instrument-lapsed", &parts)
    };
    lapsed.into_iter().map(|own| Block::Text { text: text(own), level: 0, tone: Tone::Attention }).collect()
}

fn is_outside(missing: &Missing) -> bool {
    matches!(
        missing,
        Missing::Phase { .. }
            | Missing::Step { .. }
            | Missing::Fact { .. }
            | Missing::Danger { .. }
            | Missing::AcidForbidden { .. }
            | Missing::Answer { .. }
    )
}

fn state_text(view: &View<'_>, state: StepState, mark: Option<&Mark>) -> String {
    let words = view.words;
    let at = |now: &crate::now::Now| clock(now.utc_ms, now.offset_min);
    match mark {
        Some(Mark::Done { at: when, late: false, .. }) => words.fill("state-done", &[("clock", &at(when))]),
        Some(Mark::Done { at: when, late: true, .. }) => words.fill("state-done-late", &[("clock", &at(when))]),
        Some(Mark::Happened { at: when, words: said }) => {
            words.fill("state-happened", &[("clock", &at(when)), ("words", said)])
        }
        Some(Mark::Skipped { reason, .. }) => words.fill("state-skipped", &[("reason", reason)]),
        Some(Mark::Running { .. }) => words.text("state-running"),
        None if state == StepState::Gated => words.text("state-gated"),
        None => words.text("state-open"),
    }
}

fn dwell(view: &View<'_>, visit: &VisitView<'_>, step: &Step) -> Option<Block> {
    let time = step.dwell?;
    let words = view.words;
    let mark = visit.run.steps.get(&step.id);
    if matches!(mark, Some(Mark::Done { .. } | Mark::Skipped { .. } | Mark::Happened { .. })) {
        return None;
    }
    let (least_ms, most_ms) = (i64::from(time.least_s) * 1000, i64::from(time.most_s) * 1000);
    let (state, least_at, most_at, text) = match mark.and_then(|mark| mark.waited(view.now)) {
        Some(gone) => {
            let left = least_ms - gone.proven_ms;
            // Counted from now by what is proven, so that a wrong clock does not move the end.
            let least_at = view.now.utc_ms + left.max(0);
            let most_at = view.now.utc_ms + (most_ms - gone.longest_ms.min(most_ms)).max(0);
            if gone.longest_ms > most_ms {
                (DwellState::Over, least_at, most_at, words.text("dwell-over"))
            } else if left > 0 {
                (DwellState::Running, least_at, most_at, words.fill("dwell-running", &[("left", &span(left))]))
            } else if most_ms - gone.longest_ms <= WARNING_MS && most_ms - WARNING_MS > least_ms {
                let left = span(most_ms - gone.longest_ms);
                (DwellState::Ready, least_at, most_at, words.fill("dwell-soon-over", &[("left", &left)]))
            } else {
                (DwellState::Ready, least_at, most_at, words.text("dwell-ready"))
            }
        }
        None => {
            let (least, most) = (span(least_ms), span(most_ms));
            let text = words.fill("dwell-waiting", &[("least", &least), ("most", &most)]);
            (DwellState::Waiting, view.now.utc_ms + least_ms, view.now.utc_ms + most_ms, text)
        }
    };
    Some(Block::Dwell {
        title: words.text(&format!("step-{}", step.id)),
        state,
        state_text: text,
        least_at_utc_ms: least_at,
        most_at_utc_ms: most_at,
        least_clock: clock(least_at, view.now.offset_min),
        most_clock: clock(most_at, view.now.offset_min),
        least_ms,
        then: words.get(&format!("step-{}.then", step.id)).unwrap_or_default(),
    })
}
