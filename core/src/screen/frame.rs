//! The strip of live facts: what could hurt, and what is away from home, in a few words.

use super::{Live, Tone, View, VisitView};
use crate::visit::fact::{Fact, Value};
use crate::words::number::unbroken;

/// The facts that a technician should always see.
const STRIP: &[Fact] = &[Fact::Supply, Fact::Loop, Fact::Valves, Fact::ServicePump, Fact::UnitPump, Fact::Electrics];

/// Uncovered electrics are worth a look only while the unit is open.
fn matters(fact: Fact, visit: &VisitView<'_>) -> bool {
    fact != Fact::Electrics || visit.run.facts.get(&Fact::Covers) == Some(&Value::Off)
}

/// The strip of a unit: known facts of the strip, lapsed ones, and settings that are away.
pub(super) fn strip(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Live> {
    let words = view.words;
    let mut strip = Vec::new();
    for fact in STRIP.iter().filter(|fact| matters(**fact, visit)) {
        let label = words.text(&format!("fact-{}", fact.name()));
        if let Some(value) = visit.run.facts.get(fact) {
            let value_text = words.text(&format!("fact-{}-{}", fact.name(), value.word()));
            strip.push(Live { label, value: value_text, tone: tone(*fact, *value) });
        } else if visit.run.lapsed.contains_key(fact) {
            strip.push(Live { label, value: words.text("fact-not-known"), tone: Tone::Attention });
        }
    }
    strip.extend(away(view, visit));
    strip
}

/// Settings of every unit that are away from home: on every screen, also on those that belong to no visit.
pub(super) fn away(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Live> {
    let words = view.words;
    if visit.sealed {
        return Vec::new();
    }
    let runs = visit.visit.runs.iter();
    runs.flat_map(|(letter, run)| run.open_excursions().map(move |(id, excursion)| (letter, id, excursion)))
        .map(|(letter, id, excursion)| {
            let setting = words.text(&format!("excursion-{id}"));
            let label = if letter == visit.unit {
                setting
            } else {
                words.fill("strip-other-unit", &[("letter", letter.as_str()), ("what", &setting)])
            };
            let (away, home) = (unbroken(&excursion.away), unbroken(&excursion.home));
            let value = words.fill("excursion-away", &[("away", &away), ("home", &home)]);
            Live { label, value, tone: Tone::Attention }
        })
        .collect()
}

fn tone(fact: Fact, value: Value) -> Tone {
    match (fact, value) {
        (Fact::Supply, Value::On) | (Fact::Electrics, Value::Bare) => Tone::Attention,
        (Fact::Loop, Value::Acid | Value::Spent) => Tone::Danger,
        (Fact::Loop, Value::Neutraliser | Value::Rinse) | (_, Value::Running) => Tone::Attention,
        (Fact::Supply, Value::ProvedDead) | (Fact::Valves, Value::ProvedShut) | (Fact::Electrics, Value::Covered) => {
            Tone::Good
        }
        _ => Tone::Plain,
    }
}
