//! Where an act or a fact can hurt, the step shows the caution for it.

use super::fault::Found;
use super::names::paths;
use crate::procedure::pack::{Act, ChemicalKind, Hazard, Pack, Step};
use crate::procedure::shape::HAZARDS;
use crate::visit::fact::{Fact, Value};

/// The step does it: by which it can hurt, and one of which cautions it shows.
type Call = (String, &'static [Hazard]);

/// Cautions that are called for and not there.
pub(super) fn check(pack: &Pack) -> Vec<Found> {
    let mut found = Vec::new();
    for (path, step) in paths(pack) {
        for (by, wants) in calls(pack, step) {
            if !wants.iter().any(|hazard| step.cautions.contains(hazard)) {
                let names: Vec<_> = wants.iter().filter_map(|hazard| name(*hazard)).collect();
                let values = vec![
                    ("step", step.id.to_string()),
                    ("by", by),
                    ("hazard", names.first().cloned().unwrap_or_default()),
                ];
                let at = if step.cautions.is_empty() { format!("{path}.id") } else { format!("{path}.cautions") };
                found.push(Found::new(at, "caution-missing", values));
            }
        }
    }
    found
}

fn name(hazard: Hazard) -> Option<String> {
    let word = serde_json::to_value(hazard).ok()?;
    let word = word.as_str()?;
    HAZARDS.iter().find(|known| **known == word).map(|known| (*known).to_owned())
}

fn calls(pack: &Pack, step: &Step) -> Vec<Call> {
    let mut calls: Vec<Call> = Vec::new();
    for act in &step.acts {
        let (word, wants): (&str, &'static [Hazard]) = match act {
            Act::Spray => ("spray", &[Hazard::Spray]),
            Act::Energise => ("energise", &[Hazard::Shock]),
            Act::InsulationTest => ("insulation-test", &[Hazard::Shock, Hazard::StoredEnergy]),
            Act::OpenWater => ("open-water", &[Hazard::Hot]),
            Act::OpenFitting => ("open-fitting", &[Hazard::Hot]),
            Act::OpenCircuit => ("open-circuit", &[Hazard::Refrigerant, Hazard::HighPressure]),
            Act::HandOver => continue,
        };
        calls.push((word.to_owned(), wants));
    }
    let holds = step.starts.iter().chain(&step.sets);
    for holds in holds {
        let wants: &'static [Hazard] = match (holds.fact, holds.value) {
            (Fact::Loop, Value::Acid | Value::Spent) | (Fact::Vessel, Value::AcidMix) => &[Hazard::Acid],
            (Fact::Loop, Value::Neutraliser) | (Fact::Vessel, Value::AlkaliMix) => &[Hazard::Alkali],
            // The core lets covers off only on a unit that is proved dead: what is left are edges and charges.
            (Fact::Covers, Value::Off) => &[Hazard::Sharp, Hazard::StoredEnergy, Hazard::Shock],
            (Fact::FanGuard, Value::Off) => &[Hazard::Fan, Hazard::Sharp],
            (Fact::ScaldCheck, Value::Done) => &[Hazard::Scald],
            _ => continue,
        };
        calls.push((holds.to_string(), wants));
    }
    let chemical = step.mix.as_ref().and_then(|mix| pack.mix(mix)).and_then(|mix| mix.chemical.as_ref());
    if let Some(chemical) = chemical.and_then(|id| pack.chemicals.iter().find(|chemical| chemical.id == *id)) {
        let wants: &'static [Hazard] = match chemical.kind {
            ChemicalKind::Acid => &[Hazard::Acid],
            ChemicalKind::Alkali => &[Hazard::Alkali],
            ChemicalKind::Hypochlorite => &[Hazard::Chlorine],
            ChemicalKind::Neutral => return calls,
        };
        calls.push((format!("chemical '{}'", chemical.id), wants));
    }
    calls
}
