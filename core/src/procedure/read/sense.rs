//! What a pack says must not contradict itself: numbers, quantities, facts, settings.

use std::collections::BTreeMap;

use super::fault::Found;
use super::names::{paths, readings_of};
use crate::procedure::pack::{Pack, Quantity, Reading, Step};
use crate::procedure::shape::decimal;
use crate::visit::fact::{Fact, Holds, Value};

/// Everything that contradicts itself.
pub(super) fn check(pack: &Pack) -> Vec<Found> {
    let mut found = Vec::new();
    for (number, instrument) in pack.instruments.iter().enumerate() {
        if decimal(&instrument.error_limit).is_some_and(|limit| limit <= 0.0) {
            let values = vec![("id", instrument.id.clone())];
            found.push(Found::new(format!("instrument[{number}].error-limit"), "error-limit-none", values));
        }
    }
    for (number, reading) in pack.readings.iter().enumerate() {
        bounds(reading, &format!("reading[{number}]"), &mut found);
        let before = reading.as_found.as_ref().and_then(|id| pack.reading(id.as_str()));
        if let Some(before) = before.filter(|before| before.quantity != reading.quantity) {
            let values = vec![
                ("id", reading.id.to_string()),
                ("is", quantity(reading.quantity)),
                ("found", before.id.to_string()),
                ("wants", quantity(before.quantity)),
            ];
            found.push(Found::new(format!("reading[{number}].quantity"), "as-found-quantity", values));
        }
    }
    for (number, mix) in pack.mixes.iter().enumerate() {
        let path = format!("mix[{number}]");
        if mix.parts_water.is_none() && mix.percent.is_none() && mix.dose.is_none() {
            found.push(Found::new(path.clone(), "mix-without-label", vec![("id", mix.id.clone())]));
        }
        for (field, id) in readings_of(mix) {
            let wants = match field {
                "parts-water" | "cups" => Quantity::Count,
                "percent" => Quantity::Share,
                "dose" => Quantity::Dose,
                _ => Quantity::Volume,
            };
            if let Some(reading) = pack.reading(id).filter(|reading| reading.quantity != wants) {
                let values = vec![
                    ("mix", mix.id.clone()),
                    ("field", field.to_owned()),
                    ("id", id.to_owned()),
                    ("is", quantity(reading.quantity)),
                    ("wants", quantity(wants)),
                ];
                found.push(Found::new(format!("{path}.{field}"), "mix-quantity", values));
            }
        }
    }
    for (path, step) in paths(pack) {
        of_step(step, &path, &mut found);
    }
    acid(pack, &mut found);
    settings(pack, &mut found);
    asked(pack, &mut found);
    found
}

/// A quantity as packs write it.
fn quantity(quantity: Quantity) -> String {
    let word = serde_json::to_value(quantity).ok();
    word.and_then(|word| word.as_str().map(str::to_owned)).unwrap_or_default()
}

fn bounds(reading: &Reading, path: &str, found: &mut Vec<Found>) {
    let id = || ("id", reading.id.to_string());
    let number = |text: &Option<String>| text.as_deref().and_then(decimal);
    let (least, most, preset) = (number(&reading.least), number(&reading.most), number(&reading.preset));
    let usual = reading.usual.as_ref().and_then(|[from, to]| Some((decimal(from)?, decimal(to)?)));
    if reading.quantity == Quantity::Text {
        let fields = [
            ("least", reading.least.is_some()),
            ("most", reading.most.is_some()),
            ("usual", reading.usual.is_some()),
            ("preset", reading.preset.is_some()),
            ("decimals", reading.decimals > 0),
        ];
        for (field, _) in fields.into_iter().filter(|(_, is)| *is) {
            found.push(Found::new(format!("{path}.{field}"), "text-with-numbers", vec![id(), ("field", field.into())]));
        }
        return;
    }
    if least.zip(most).is_some_and(|(least, most)| least > most) {
        found.push(Found::new(format!("{path}.least"), "least-above-most", vec![id()]));
        return;
    }
    let inside = |value: f64| least.is_none_or(|least| value >= least) && most.is_none_or(|most| value <= most);
    if let Some((from, to)) = usual {
        if from > to {
            found.push(Found::new(format!("{path}.usual"), "usual-turned", vec![id()]));
        } else if !inside(from) || !inside(to) {
            found.push(Found::new(format!("{path}.usual"), "usual-outside", vec![id()]));
        }
    }
    if preset.is_some_and(|preset| !inside(preset)) {
        found.push(Found::new(format!("{path}.preset"), "preset-outside", vec![id()]));
    }
}

fn of_step(step: &Step, path: &str, found: &mut Vec<Found>) {
    let id = || ("id", step.id.to_string());
    if step.dwell.is_some_and(|dwell| dwell.least_s > dwell.most_s) {
        found.push(Found::new(format!("{path}.dwell.least-s"), "dwell-turned", vec![id()]));
    }
    if step.dwell.is_none() && !step.starts.is_empty() {
        found.push(Found::new(format!("{path}.starts"), "starts-without-dwell", vec![id()]));
    }
    for (field, list) in [("needs", &step.needs), ("starts", &step.starts), ("sets", &step.sets)] {
        for (nth, fact) in twice(list) {
            let values = vec![id(), ("field", field.to_owned()), ("fact", fact.name().to_owned())];
            found.push(Found::new(format!("{path}.{field}[{nth}]"), "fact-twice", values));
        }
    }
    for (nth, fact) in step.clears.iter().enumerate() {
        if step.sets.iter().any(|holds| holds.fact == *fact) {
            let values = vec![id(), ("fact", fact.name().to_owned())];
            found.push(Found::new(format!("{path}.clears[{nth}]"), "set-and-cleared", values));
        }
    }
}

/// Whether an acid may touch the exchanger is judged by the core's table of materials, from what the pack asks for; a step
/// says when. An answer that said so itself would pass the table by.
fn acid(pack: &Pack, found: &mut Vec<Found>) {
    let allows = |holds: &Holds| (holds.fact, holds.value) == (Fact::ExchangerAcid, Value::Allowed);
    for (nth, condition) in pack.conditions.iter().enumerate() {
        for (option, one) in condition.options.iter().enumerate() {
            if let Some(at) = one.sets.iter().position(allows) {
                let values = vec![("condition", condition.id.to_string()), ("id", one.id.clone())];
                let path = format!("condition[{nth}].option[{option}].sets[{at}]");
                found.push(Found::new(path, "acid-by-answer", values));
            }
        }
    }
    let asks = |role: &str| pack.conditions.iter().any(|condition| condition.role.as_deref() == Some(role));
    let lacks: Vec<&str> = ["exchanger-metal", "descaler-acid"].into_iter().filter(|role| !asks(role)).collect();
    for (path, step) in paths(pack) {
        if let Some(at) = step.sets.iter().position(allows).filter(|_| !lacks.is_empty()) {
            let values = vec![("id", step.id.to_string()), ("lacks", lacks.join(", "))];
            found.push(Found::new(format!("{path}.sets[{at}]"), "acid-without-table", values));
        }
    }
}

/// Facts that a list names again, with the place in the list.
fn twice(list: &[Holds]) -> Vec<(usize, Fact)> {
    let again = |nth: usize, fact: Fact| list.iter().take(nth).any(|holds| holds.fact == fact);
    list.iter()
        .enumerate()
        .filter(|(nth, holds)| again(*nth, holds.fact))
        .map(|(nth, holds)| (nth, holds.fact))
        .collect()
}

/// A setting that is changed must have its way home, and the other way round.
fn settings(pack: &Pack, found: &mut Vec<Found>) {
    let mut opened: BTreeMap<&str, String> = BTreeMap::new();
    let mut homed: BTreeMap<&str, String> = BTreeMap::new();
    for (path, step) in paths(pack) {
        if let Some(id) = &step.opens {
            opened.entry(id.as_str()).or_insert_with(|| format!("{path}.opens"));
        }
        if let Some(id) = &step.homes {
            homed.entry(id.as_str()).or_insert_with(|| format!("{path}.homes"));
        }
    }
    for (id, path) in homed.iter().filter(|(id, _)| !opened.contains_key(*id)) {
        found.push(Found::new(path.clone(), "homes-without-opens", vec![("id", (*id).to_owned())]));
    }
    for (id, path) in opened.iter().filter(|(id, _)| !homed.contains_key(*id)) {
        found.push(Found::new(path.clone(), "opens-without-homes", vec![("id", (*id).to_owned())]));
    }
}

/// A step that waits for an answer that nobody asks for would never come.
fn asked(pack: &Pack, found: &mut Vec<Found>) {
    for (path, step) in paths(pack) {
        for (nth, when) in step.when.iter().enumerate() {
            let asks = pack.steps().any(|(_, other)| other.asks.contains(&when.condition));
            if !asks && pack.condition(when.condition.as_str()).is_some() {
                let values = vec![("step", step.id.to_string()), ("condition", when.condition.to_string())];
                found.push(Found::new(format!("{path}.when[{nth}]"), "never-asked", values));
            }
        }
    }
}
