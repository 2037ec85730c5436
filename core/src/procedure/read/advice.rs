//! What harms nobody and could be better: things that nothing uses, and numbers that the day's planning misses.

use super::fault::Found;
use super::names::{paths, readings_of};
use crate::procedure::pack::Pack;
use crate::procedure::shape::decimal;

/// Advice about a pack that is sound.
pub(super) fn check(pack: &Pack) -> Vec<Found> {
    let mut found = unused(pack);
    for (number, reading) in pack.readings.iter().enumerate() {
        let usual = reading.usual.as_ref().and_then(|[from, to]| Some((decimal(from)?, decimal(to)?)));
        let preset = reading.preset.as_deref().and_then(decimal);
        if usual.zip(preset).is_some_and(|((from, to), preset)| preset < from || preset > to) {
            let values = vec![("id", reading.id.to_string())];
            found.push(Found::new(format!("reading[{number}].preset"), "preset-unusual", values));
        }
    }
    for (number, mix) in pack.mixes.iter().enumerate() {
        if mix.chemical.is_none() {
            found.push(Found::new(format!("mix[{number}]"), "mix-without-chemical", vec![("id", mix.id.clone())]));
        }
    }
    let without: Vec<_> = paths(pack).filter(|(_, step)| step.minutes == 0).collect();
    if let Some((path, _)) = without.first() {
        let values = vec![("count", without.len().to_string())];
        found.push(Found::new(path.clone(), "minutes-missing", values));
    }
    found
}

fn unused(pack: &Pack) -> Vec<Found> {
    let mut found = Vec::new();
    let mut look = |kind: &str, number: usize, id: &str, used: bool| {
        if !used {
            let values = vec![("kind", kind.to_owned()), ("id", id.to_owned())];
            found.push(Found::new(format!("{kind}[{number}].id"), "unused", values));
        }
    };
    let steps = || pack.steps().map(|(_, step)| step);
    for (number, one) in pack.conditions.iter().enumerate() {
        let used = one.role.is_some()
            || one.options.iter().any(|option| !option.sets.is_empty())
            || steps().any(|step| step.when.iter().any(|when| when.condition == one.id));
        look("condition", number, one.id.as_str(), used && steps().any(|step| step.asks.contains(&one.id)));
    }
    for (number, one) in pack.instruments.iter().enumerate() {
        look(
            "instrument",
            number,
            &one.id,
            pack.readings.iter().any(|reading| reading.instrument.as_ref() == Some(&one.id)),
        );
    }
    for (number, one) in pack.readings.iter().enumerate() {
        let of_mix = pack.mixes.iter().any(|mix| readings_of(mix).any(|(_, id)| id == one.id.as_str()));
        look("reading", number, one.id.as_str(), of_mix || steps().any(|step| step.readings.contains(&one.id)));
    }
    for (number, one) in pack.shots.iter().enumerate() {
        let of_setting = pack.excursions.iter().any(|excursion| excursion.shot.as_ref() == Some(&one.id));
        look("shot", number, one.id.as_str(), of_setting || steps().any(|step| step.shots.contains(&one.id)));
    }
    for (number, one) in pack.chemicals.iter().enumerate() {
        look("chemical", number, &one.id, pack.mixes.iter().any(|mix| mix.chemical.as_ref() == Some(&one.id)));
    }
    for (number, one) in pack.parts.iter().enumerate() {
        look("part", number, &one.id, one.spare || steps().any(|step| step.parts.contains(&one.id)));
    }
    for (number, one) in pack.gear.iter().enumerate() {
        look("gear", number, &one.id, steps().any(|step| step.gear.contains(&one.id)));
    }
    for (number, one) in pack.mixes.iter().enumerate() {
        look("mix", number, &one.id, steps().any(|step| step.mix.as_ref() == Some(&one.id)));
    }
    for (number, one) in pack.excursions.iter().enumerate() {
        look("excursion", number, one.id.as_str(), steps().any(|step| step.opens.as_ref() == Some(&one.id)));
    }
    found
}
