//! What a visit used up: chemicals and parts from its mixes and steps, time from its log; corrected by hand where the
//! technician knows better. For the van's stock and the office's billing.

use super::amount::{Measure, counted};
use crate::id::Letter;
use crate::procedure::mixing::{Concentrate, worked};
use crate::procedure::pack::Pack;
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
    let steps = || pack.steps().map(|(_, step)| step).filter(|step| done(step.id.as_str()));
    let chemicals = pack.chemicals.iter().map(|chemical| {
        let of_it = pack.mixes.iter().filter(|mix| mix.chemical.as_ref() == Some(&chemical.id));
        let measure = Measure::of(chemical.form);
        let item = format!("chemical-{}", chemical.id);
        let poured = of_it.map(|mix| {
            let made = run.mixes.get(&mix.id).and_then(|mixed| {
                let (amount, _) = counted(Concentrate::of(&mixed.concentrate, &mixed.measure)?);
                Some(amount * f64::from(mixed.times))
            });
            // A log from before mixes were written down tells it by its steps and the label's numbers.
            made.unwrap_or_else(|| {
                let times = steps().filter(|step| step.mix.as_ref() == Some(&mix.id)).count();
                worked(pack, run, mix).map_or(0.0, |mixed| counted(mixed.concentrate).0 * times as f64)
            })
        });
        Used { unit: Some(unit.clone()), corrected: corrected(&item, measure), measure, worked: poured.sum(), item }
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::now::Now;
    use crate::visit::state::{Corrected, Mixed, Sealing};

    const PACK: &str = r#"
        pack = "p"
        format = 1
        version = "1"
        chemical = [{ id = "acid", kind = "acid", form = "liquid" }, { id = "soda", kind = "alkali", form = "powder" }]
        part = [{ id = "gasket", count = 2 }, { id = "fuse", spare = true }]
        reading = [
            { id = "parts", quantity = "count", preset = "10" },
            { id = "total", quantity = "volume", preset = "2.2" },
        ]
        mix = [
            { id = "descaler", chemical = "acid", parts-water = "parts", total = "total" },
            { id = "neutraliser", chemical = "soda", parts-water = "parts", total = "total" },
        ]
        [[phase]]
        id = "work"
        step = [
            { id = "pour", mix = "descaler" },
            { id = "neutralise", mix = "neutraliser" },
            { id = "close", parts = ["gasket", "fuse"] },
        ]
    "#;

    fn at(minute: i64) -> Now {
        Now { utc_ms: minute * 60_000, offset_min: 0, mono_ms: minute * 60_000, mono_epoch: "a".into() }
    }

    fn done(run: &mut Run, step: &str) {
        run.steps.insert(step.into(), Mark::Done { at: at(0), sets: Default::default(), late: false });
    }

    fn amounts(visit: &Visit, pack: &Pack) -> Vec<(String, f64)> {
        used(visit, &|_| Some(pack)).into_iter().map(|used| (used.item.clone(), used.amount())).collect()
    }

    #[test]
    fn mixes_steps_and_the_clock_tell_and_the_hand_outranks_them() {
        let pack: Pack = toml::from_str(PACK).unwrap();
        let mut run = Run::default();
        // A log from before mixes were written down: by the step and the label, 2.2 L / 11 = 200 mL.
        done(&mut run, "pour");
        done(&mut run, "close");
        // One of today: poured twice as the screen told it, 100 g each time.
        let mixed = Mixed {
            chemical: "soda".into(),
            water_l: "2.000".into(),
            concentrate: "100".into(),
            measure: "g".into(),
            notes: vec![],
            at: at(1),
            times: 2,
        };
        run.mixes.insert("neutraliser".into(), mixed);
        let mut visit = Visit { opened: Some(at(0)), last: Some(at(95)), ..Visit::default() };
        visit.runs.insert("A".into(), run);
        let told = |item: &str, amount: f64| (item.to_owned(), amount);
        let all = amounts(&visit, &pack);
        assert!((all[0].1 - 200.0).abs() < 1e-9, "{all:?}");
        assert_eq!(
            all[1..],
            [told("chemical-soda", 200.0), told("part-gasket", 2.0), told("part-fuse", 0.0), told("time", 95.0)]
        );
        let correct =
            |amount: &str, measure: &str| Corrected { amount: amount.into(), measure: measure.into(), at: at(2) };
        let of_unit = [("part-fuse".to_owned(), correct("1", "1")), ("chemical-acid".to_owned(), correct("250", "mL"))];
        visit.corrected.insert("A".into(), of_unit.into());
        visit.corrected.insert("-".into(), [("time".to_owned(), correct("120", "min"))].into());
        let all = amounts(&visit, &pack);
        assert_eq!((all[0].1, all[3].1, all[4].1), (250.0, 1.0, 120.0));
    }

    #[test]
    fn time_ends_with_the_seal_and_a_clock_set_back_over_a_restart_proves_none() {
        let sealing = Sealing { complete: true, missing: vec![], at: at(60) };
        let visit = Visit { opened: Some(at(0)), last: Some(at(90)), sealing: Some(sealing), ..Visit::default() };
        assert!((time(&visit).worked - 60.0).abs() < 1e-9);
        let back = Now { mono_epoch: "b".into(), ..at(-30) };
        let visit = Visit { opened: Some(at(0)), last: Some(back), ..Visit::default() };
        assert!(time(&visit).worked.abs() < 1e-9);
    }
}
