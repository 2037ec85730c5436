//! Everything that a pack names is there, and there once.

use std::collections::BTreeSet;

use super::fault::Found;
use super::unknown;
use crate::procedure::pack::{Mix, Pack, Step};

/// The names of one kind, with the kind's name in the document.
struct Known<'a> {
    kind: &'static str,
    ids: Vec<&'a str>,
}

impl Known<'_> {
    /// A finding where `id`, named at `path`, is not there.
    fn asked(&self, id: &str, path: String, by: &str) -> Option<Found> {
        if self.ids.contains(&id) {
            return None;
        }
        let values = vec![("kind", self.kind.to_owned()), ("id", id.to_owned()), ("by", by.to_owned())];
        Some(unknown(("not-there", "not-there-near"), values, id, &self.ids, path))
    }
}

/// Every mix's readings with the fields that name them.
pub(super) fn readings_of(mix: &Mix) -> impl Iterator<Item = (&'static str, &str)> {
    let optional = [
        ("parts-water", &mix.parts_water),
        ("percent", &mix.percent),
        ("dose", &mix.dose),
        ("cups", &mix.cups),
        ("bucket", &mix.bucket),
        ("loop", &mix.fills),
        ("vessel", &mix.vessel),
    ];
    let optional = optional.into_iter().filter_map(|(field, id)| Some((field, id.as_ref()?.as_str())));
    optional.chain([("total", mix.total.as_str())])
}

/// Names that are not there, or are there twice.
pub(in crate::procedure) fn check(pack: &Pack) -> Vec<Found> {
    let mut found = Vec::new();
    macro_rules! known {
        ($kind:literal, $list:expr) => {
            once(
                $kind,
                $list.iter().map(|one| one.id.as_str()).collect(),
                |number| format!("{}[{number}].id", $kind),
                &mut found,
            )
        };
    }
    let conditions = known!("condition", pack.conditions);
    let instruments = known!("instrument", pack.instruments);
    let readings = known!("reading", pack.readings);
    let shots = known!("shot", pack.shots);
    let chemicals = known!("chemical", pack.chemicals);
    let parts = known!("part", pack.parts);
    let gear = known!("gear", pack.gear);
    let mixes = known!("mix", pack.mixes);
    let excursions = known!("excursion", pack.excursions);
    let phases = known!("phase", pack.phases);
    let places: Vec<String> = paths(pack).map(|(path, _)| path).collect();
    let steps = once(
        "step",
        pack.steps().map(|(_, step)| step.id.as_str()).collect(),
        |number| places.get(number).map(|path| format!("{path}.id")).unwrap_or_default(),
        &mut found,
    );

    for (number, condition) in pack.conditions.iter().enumerate() {
        let ids = condition.options.iter().map(|option| option.id.as_str()).collect();
        once("option", ids, |option| format!("condition[{number}].option[{option}].id"), &mut found);
    }
    for (number, reading) in pack.readings.iter().enumerate() {
        let by = format!("reading '{}'", reading.id);
        let at = |field: &str| format!("reading[{number}].{field}");
        found.extend(reading.instrument.iter().filter_map(|id| instruments.asked(id, at("instrument"), &by)));
        found.extend(reading.as_found.iter().filter_map(|id| readings.asked(id.as_str(), at("as-found"), &by)));
        let plates = reading.plates.iter().enumerate();
        found.extend(plates.filter_map(|(nth, id)| shots.asked(id.as_str(), at(&format!("plates[{nth}]")), &by)));
    }
    for (number, shot) in pack.shots.iter().enumerate() {
        let by = format!("shot '{}'", shot.id);
        let at = format!("shot[{number}].before");
        found.extend(shot.before.iter().filter_map(|id| shots.asked(id.as_str(), at.clone(), &by)));
    }
    for (number, mix) in pack.mixes.iter().enumerate() {
        let by = format!("mix '{}'", mix.id);
        for (field, id) in readings_of(mix) {
            found.extend(readings.asked(id, format!("mix[{number}].{field}"), &by));
        }
        let at = format!("mix[{number}].chemical");
        found.extend(mix.chemical.iter().filter_map(|id| chemicals.asked(id, at.clone(), &by)));
    }
    for (number, excursion) in pack.excursions.iter().enumerate() {
        let by = format!("excursion '{}'", excursion.id);
        let at = format!("excursion[{number}].shot");
        found.extend(excursion.shot.iter().filter_map(|id| shots.asked(id.as_str(), at.clone(), &by)));
    }
    for (number, phase) in pack.phases.iter().enumerate() {
        let by = format!("phase '{}'", phase.id);
        for (nth, id) in phase.after.iter().enumerate() {
            found.extend(phases.asked(id.as_str(), format!("phase[{number}].after[{nth}]"), &by));
        }
    }
    for (path, step) in paths(pack) {
        let by = format!("step '{}'", step.id);
        let mut each = |known: &Known<'_>, field: &str, ids: &mut dyn Iterator<Item = &str>| {
            let asked = ids.enumerate().filter_map(|(nth, id)| known.asked(id, format!("{path}.{field}[{nth}]"), &by));
            found.extend(asked);
        };
        each(&steps, "after", &mut step.after.iter().map(|id| id.as_str()));
        each(&readings, "readings", &mut step.readings.iter().map(|id| id.as_str()));
        each(&shots, "shots", &mut step.shots.iter().map(|id| id.as_str()));
        each(&conditions, "asks", &mut step.asks.iter().map(|id| id.as_str()));
        each(&parts, "parts", &mut step.parts.iter().map(String::as_str));
        each(&gear, "gear", &mut step.gear.iter().map(String::as_str));
        each(&conditions, "when", &mut step.when.iter().map(|when| when.condition.as_str()));
        found.extend(step.mix.iter().filter_map(|id| mixes.asked(id, format!("{path}.mix"), &by)));
        for (field, id) in [("opens", &step.opens), ("homes", &step.homes)] {
            found.extend(id.iter().filter_map(|id| excursions.asked(id.as_str(), format!("{path}.{field}"), &by)));
        }
        found.extend(answers(pack, step, &path));
    }
    found
}

/// Answers that no question has.
fn answers(pack: &Pack, step: &Step, path: &str) -> Vec<Found> {
    let mut found = Vec::new();
    for (nth, when) in step.when.iter().enumerate() {
        let Some(condition) = pack.condition(when.condition.as_str()) else { continue };
        let options: Vec<_> = condition.options.iter().map(|option| option.id.as_str()).collect();
        if !options.contains(&when.option.as_str()) {
            let values = vec![
                ("step", step.id.to_string()),
                ("condition", when.condition.to_string()),
                ("option", when.option.clone()),
            ];
            let rule = ("answer-not-there", "answer-not-there-near");
            found.push(unknown(rule, values, &when.option, &options, format!("{path}.when[{nth}]")));
        }
    }
    found
}

/// The names of a kind; each that is there again is a finding.
fn once<'a>(
    kind: &'static str,
    ids: Vec<&'a str>,
    path: impl Fn(usize) -> String,
    found: &mut Vec<Found>,
) -> Known<'a> {
    let mut seen = BTreeSet::new();
    for (number, id) in ids.iter().enumerate() {
        if !seen.insert(*id) {
            let values = vec![("kind", kind.to_owned()), ("id", (*id).to_owned())];
            found.push(Found::new(path(number), "twice", values));
        }
    }
    Known { kind, ids: seen.into_iter().collect() }
}

/// Every step with its path in the document.
pub(super) fn paths(pack: &Pack) -> impl Iterator<Item = (String, &Step)> {
    pack.phases.iter().enumerate().flat_map(|(phase, of)| {
        of.steps.iter().enumerate().map(move |(step, it)| (format!("phase[{phase}].step[{step}]"), it))
    })
}
