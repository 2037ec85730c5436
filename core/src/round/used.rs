//! What a visit used up: chemicals and parts from its mixes and steps, time from its log; corrected by hand where the
//! technician knows better. For the van's stock and the office's billing.

use super::amount::{Measure, concentrate, preset};
use crate::id::Letter;
use crate::procedure::pack::{Form, Pack};
use crate::visit::state::{Mark, Run, Visit};

/// The item that stands for the time on site, and the letter under which it lies: time belongs to no unit.
pub const TIME: &str = "time";

/// Something used up.
#[derive(Clone, Debug, PartialEq)]
pub struct Used {
    /// Of which unit; none for time.
    pub unit: Option<Letter>,
    /// What: `chemical-<id>`, `part-<id>` (also the keys of their words), or [`TIME`].
    pub item: String,
    /// In what the amounts are.
    pub measure: Measure,
    /// By mixes, steps and the clock.
    pub worked: f64,
    /// As corrected by hand.
    pub corrected: Option<f64>,
}

impl Used {
    /// What counts.
    #[must_use]
    pub fn amount(&self) -> f64 {
        self.corrected.unwrap_or(self.worked)
    }
}

/// Everything that a visit used, also what it could have used and did not (0), so that it can be corrected.
/// `pack_of` gives the pack of a run.
#[must_use]
pub fn used<'a>(visit: &Visit, pack_of: &dyn Fn(&Run) -> Option<&'a Pack>) -> Vec<Used> {
    let mut all = Vec::new();
    for (unit, run) in &visit.runs {
        let Some(pack) = pack_of(run) else { continue };
        all.extend(of_run(visit, unit, run, pack));
    }
    all.push(time(visit));
    all
}

/// What one unit's run used: its chemicals and parts in the pack's order.
#[must_use]
pub fn of_run(visit: &Visit, unit: &Letter, run: &Run, pack: &Pack) -> Vec<Used> {
    let corrected = |item: &str, measure: Measure| {
        let corrected = visit.corrected.get(unit)?.get(item)?;
        (corrected.measure == measure.code()).then(|| corrected.amount.parse().ok())?
    };
    let done = |id: &str| matches!(run.steps.get(id), Some(Mark::Done { .. } | Mark::Happened { .. }));
    let value = |reading: &str| run.number(reading).or_else(|| preset(pack, reading));
    let steps = || pack.steps().map(|(_, step)| step).filter(|step| done(step.id.as_str()));
    let chemicals = pack.chemicals.iter().flat_map(|chemical| {
        let mixes = steps().filter_map(|step| pack.mix(step.mix.as_ref()?));
        let poured: Vec<(f64, Measure)> = mixes
            .filter(|mix| mix.chemical.as_ref() == Some(&chemical.id))
            .filter_map(|mix| concentrate(pack, mix, &value))
            .collect();
        let item = format!("chemical-{}", chemical.id);
        let usual = if chemical.form == Form::Powder { Measure::Gram } else { Measure::Millilitre };
        let mut measures: Vec<Measure> = poured.iter().map(|(_, measure)| *measure).collect();
        measures.sort_unstable();
        measures.dedup();
        if measures.is_empty() {
            measures.push(usual);
        }
        let of = move |measure: Measure| Used {
            unit: Some(unit.clone()),
            corrected: corrected(&item, measure),
            item: item.clone(),
            measure,
            worked: poured.iter().filter(|(_, of)| *of == measure).map(|(amount, _)| amount).sum(),
        };
        measures.into_iter().map(of).collect::<Vec<_>>()
    });
    let parts = pack.parts.iter().map(|part| {
        let item = format!("part-{}", part.id);
        let built_in = if part.spare { 0 } else { steps().filter(|step| step.parts.contains(&part.id)).count() };
        Used {
            unit: Some(unit.clone()),
            corrected: corrected(&item, Measure::Piece),
            item,
            measure: Measure::Piece,
            worked: built_in as f64 * f64::from(part.count),
        }
    });
    chemicals.chain(parts).collect()
}

/// Time on site: from the first event to the seal, to the end of what was stopped, or to the last event so far.
#[must_use]
pub fn time(visit: &Visit) -> Used {
    let ended = visit.sealing.as_ref().map(|sealing| &sealing.at).or(visit.last.as_ref());
    let ms = visit.opened.as_ref().zip(ended).map_or(0, |(from, to)| to.since(from).longest_ms);
    // A clock that went backwards over a restart proves no time at all.
    let minutes = if ms == i64::MAX { 0 } else { (ms.max(0) + 30_000) / 60_000 };
    let corrected = visit.corrected.get(nobody()).and_then(|of| of.get(TIME));
    Used {
        unit: None,
        item: TIME.to_owned(),
        measure: Measure::Minute,
        worked: minutes as f64,
        corrected: corrected.and_then(|corrected| corrected.amount.parse().ok()),
    }
}

/// The letter of what belongs to no unit.
const NOBODY: &str = "-";

fn nobody() -> &'static str {
    NOBODY
}

/// The item of a field of the screen (`used:<item>`), and in what it is counted. None where the visit has no such thing.
#[must_use]
pub fn item_of<'a>(field: &'a str, visit: &Visit, unit: &Letter, pack: &Pack) -> Option<(Letter, &'a str, Measure)> {
    let item = field.strip_prefix("used:")?;
    if item == TIME {
        return Some((Letter(NOBODY.to_owned()), item, Measure::Minute));
    }
    let run = visit.runs.get(unit)?;
    let known = of_run(visit, unit, run, pack).into_iter().find(|used| used.item == item)?;
    Some((unit.clone(), item, known.measure))
}
