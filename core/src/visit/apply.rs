//! What an event means: state and event in, state out. Total: an event that does not fit changes what it can.

use super::event::{Body, ChainEnd, ChainError, Event};
use super::fact::{Fact, Facts};
use super::state::{
    Addendum, BrokenOff, Corrected, Excursion, ExcursionEnd, Finding, Mark, Mended, Mixed, Photo, Place, Run, Sealing,
    Taken, Visit,
};
use crate::id::{Letter, StepId, VisitId};
use crate::now::Now;

/// The visit after one more event.
#[must_use]
pub fn apply(mut visit: Visit, event: &Event) -> Visit {
    visit.opened.get_or_insert_with(|| event.time.clone());
    visit.last = Some(event.time.clone());
    let marks = visit.runs.values_mut().flat_map(|run| run.steps.values_mut());
    marks.for_each(|mark| mark.witness(&event.time));
    match &event.body {
        Body::VisitOpened { device_key, assignment, personal, .. } => {
            visit.id = event.visit.clone();
            visit.device_key.clone_from(device_key);
            visit.assignment.clone_from(assignment);
            visit.personal.clone_from(personal);
        }
        Body::RunStarted { unit, asset, label, pack, pack_digest, .. } => {
            let run = visit.runs.entry(unit.clone()).or_default();
            run.asset.clone_from(asset);
            run.label.clone_from(label);
            run.pack.clone_from(pack);
            run.pack_digest.clone_from(pack_digest);
        }
        Body::PlaceFixed { latitude, longitude, accuracy_m, .. } => {
            visit.place = Some(Place {
                latitude: latitude.clone(),
                longitude: longitude.clone(),
                accuracy_m: accuracy_m.clone(),
            });
        }
        Body::BrokenOff { reason, dangers } => {
            visit.broken_off =
                Some(BrokenOff { reason: reason.clone(), dangers: dangers.clone(), at: event.time.clone() });
        }
        Body::SealPrepared { complete, missing } => {
            visit.sealing = Some(Sealing { complete: *complete, missing: missing.clone(), at: event.time.clone() });
        }
        Body::SealCancelled {} => visit.sealing = None,
        Body::CustomerNoted { present, unsigned, shown } => {
            visit.customer_present = Some(*present);
            visit.customer_unsigned = *unsigned;
            visit.shown.clone_from(shown);
            visit.shown_files.extend(shown.clone());
        }
        Body::AddendumAdded { text } => {
            visit.addenda.push(Addendum { text: text.clone(), at: event.time.clone() });
        }
        Body::UsedCorrected { unit, item, amount, measure, .. } => {
            let corrected = Corrected { amount: amount.clone(), measure: measure.clone(), at: event.time.clone() };
            visit.corrected.entry(unit.clone()).or_default().insert(item.clone(), corrected);
        }
        Body::CoverJudged { unit, judgement } => {
            visit.cover.insert(unit.clone(), judgement.clone());
        }
        Body::DeviceChanged { device_key } => visit.device_key.clone_from(device_key),
        Body::PlaceMissing { .. } | Body::DeviceRestarted {} | Body::Unknown { .. } => {}
        body => {
            if let Some(run) = unit_of(body).and_then(|unit| visit.runs.get_mut(unit)) {
                apply_to_run(run, body, &event.time);
            }
        }
    }
    visit
}

/// The unit that an event is about.
#[must_use]
pub fn unit_of(body: &Body) -> Option<&Letter> {
    match body {
        Body::RunStarted { unit, .. }
        | Body::ConditionSet { unit, .. }
        | Body::StepStarted { unit, .. }
        | Body::StepDone { unit, .. }
        | Body::StepSkipped { unit, .. }
        | Body::StepUndone { unit, .. }
        | Body::StepHappened { unit, .. }
        | Body::ReadingTaken { letter: unit, .. }
        | Body::ReadingMissed { unit, .. }
        | Body::MixMade { unit, .. }
        | Body::PhotoTaken { unit, .. }
        | Body::ShotMissed { unit, .. }
        | Body::ExcursionOpened { unit, .. }
        | Body::ExcursionHome { unit, .. }
        | Body::ExcursionLeft { unit, .. }
        | Body::FactsLapsed { unit, .. }
        | Body::FactRechecked { unit, .. }
        | Body::FindingAdded { unit, .. }
        | Body::FindingMended { unit, .. } => Some(unit),
        _ => None,
    }
}

/// What an event means for its unit's run.
pub(super) fn apply_to_run(run: &mut Run, body: &Body, at: &Now) {
    let at = at.clone();
    match body {
        Body::ConditionSet { condition, option, sets, .. } => {
            run.conditions.insert(condition.clone(), option.clone());
            set(run, sets);
        }
        Body::StepStarted { step, sets, least_s, most_s, .. } => {
            set(run, sets);
            let (seen, least_s, most_s) = (at.clone(), *least_s, *most_s);
            mark(run, step, Mark::Running { since: at, least_s, most_s, seen, proven_ms: 0, longest_ms: 0 });
        }
        Body::StepDone { step, sets, clears, late, .. } => {
            clear(run, clears);
            set(run, sets);
            mark(run, step, Mark::Done { at, sets: sets.keys().copied().collect(), late: *late });
        }
        Body::StepSkipped { step, reason, .. } => mark(run, step, Mark::Skipped { at, reason: reason.clone() }),
        Body::StepUndone { step, clears, .. } => {
            clear(run, clears);
            run.steps.remove(step);
            run.order.retain(|marked| marked != step);
        }
        Body::StepHappened { step, sets, clears, words, dangers, .. } => {
            clear(run, clears);
            set(run, sets);
            run.happened.extend(dangers);
            mark(run, step, Mark::Happened { at, words: words.clone() });
        }
        Body::ReadingTaken { reading, value, measure, instrument, error_limit, unusual, own, .. } => {
            run.missed.remove(reading);
            let times = run.readings.get(reading).map_or(1, |taken| taken.times.saturating_add(1));
            let taken = Taken {
                value: value.clone(),
                measure: measure.clone(),
                instrument: instrument.clone(),
                error_limit: error_limit.clone(),
                unusual: *unusual,
                own: own.clone(),
                at,
                times,
            };
            run.readings.insert(reading.clone(), taken);
        }
        Body::ReadingMissed { reading, reason, .. } => {
            run.readings.remove(reading);
            run.missed.insert(reading.clone(), reason.clone());
        }
        Body::MixMade { mix, chemical, water_l, concentrate, measure, notes, .. } => {
            let times = run.mixes.get(mix).map_or(1, |mixed| mixed.times.saturating_add(1));
            let mixed = Mixed {
                chemical: chemical.clone(),
                water_l: water_l.clone(),
                concentrate: concentrate.clone(),
                measure: measure.clone(),
                notes: notes.clone(),
                at,
                times,
            };
            run.mixes.insert(mix.clone(), mixed);
        }
        Body::PhotoTaken { slot, digest, bytes, media, facts, flags, .. } => {
            let photo = Photo {
                digest: digest.clone(),
                bytes: *bytes,
                media: media.clone(),
                facts: facts.clone(),
                flags: flags.clone(),
                at,
            };
            run.shots_missed.remove(slot);
            run.photos.entry(slot.clone()).or_default().push(photo);
        }
        Body::ShotMissed { slot, reason, .. } => {
            run.shots_missed.insert(slot.clone(), reason.clone());
        }
        Body::ExcursionOpened { excursion, home, away, reason, .. } => {
            let (home, away, reason) = (home.clone(), away.clone(), reason.clone());
            let opened = Excursion { home, away, reason, end: ExcursionEnd::Open };
            run.excursions.insert(excursion.clone(), opened);
        }
        Body::ExcursionHome { excursion, shows, answered, .. } => {
            if let Some(excursion) = run.excursions.get_mut(excursion) {
                excursion.end = ExcursionEnd::Home { shows: shows.clone(), answered: answered.clone() };
            }
        }
        Body::ExcursionLeft { excursion, reason, .. } => {
            if let Some(excursion) = run.excursions.get_mut(excursion) {
                excursion.end = ExcursionEnd::Left { reason: reason.clone() };
            }
        }
        Body::FactsLapsed { facts, by, .. } => run.lapse(facts, by.as_ref()),
        Body::FactRechecked { fact, value, .. } => {
            run.looked_at(*fact);
            run.facts.insert(*fact, *value);
        }
        Body::FindingAdded { severity, text, since, .. } => {
            let (text, since) = (text.clone(), since.clone());
            run.findings.push(Finding { severity: *severity, text, at, since, mended: None });
        }
        Body::FindingMended { finding, words, .. } => {
            let finding = usize::try_from(*finding).ok().and_then(|at| run.findings.get_mut(at));
            if let Some(finding) = finding.filter(|finding| finding.mended.is_none()) {
                finding.mended = Some(Mended { words: words.clone(), at });
            }
        }
        _ => {}
    }
}

fn mark(run: &mut Run, step: &StepId, mark: Mark) {
    run.order.retain(|marked| marked != step);
    run.order.push(step.clone());
    run.steps.insert(step.clone(), mark);
}

/// Also what lapsed: a second look does not bring back what a step has made not known.
fn clear(run: &mut Run, facts: &[Fact]) {
    for fact in facts {
        run.facts.remove(fact);
        run.lapsed.remove(fact);
    }
}

fn set(run: &mut Run, sets: &Facts) {
    for (fact, value) in sets.iter() {
        run.looked_at(*fact);
        run.facts.insert(*fact, *value);
    }
}

/// The visit that stored events mean.
///
/// # Errors
/// Where the chain breaks.
pub fn replay<'a>(id: &VisitId, stored: impl IntoIterator<Item = &'a [u8]>) -> Result<Visit, ChainError> {
    let mut visit = Visit { id: id.clone(), ..Visit::default() };
    let mut end = ChainEnd::default();
    for bytes in stored {
        let event = end.follow(id, bytes)?;
        visit = apply(visit, &event);
        visit.end = end.clone();
    }
    Ok(visit)
}
