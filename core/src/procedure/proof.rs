//! Facts that a measurement must bear out: ticking a box does not make a loop cold, or a rinse clean.

use std::collections::BTreeSet;

use super::gate::Missing;
use super::pack::{Condition, Pack, Reading, Step, When};
use crate::science::acids::Acid;
use crate::science::materials::{Metal, Reason, Suits, suits};
use crate::visit::fact::{Fact, Value};
use crate::visit::state::Run;

/// A loop or a fitting at or below this may be opened and treated, °C. Common practice, no source; the label of the descaler first.
const COLD_C_MAX: f64 = 30.0;
/// Rinse and supply count as equal within this, pH. Common practice, no source: what test strips can tell.
const PH_EQUAL: f64 = 0.5;
/// Rinse and supply count as equal within this share of the supply's conductivity. Common practice, no source.
const CONDUCTIVITY_EQUAL: f64 = 0.1;

/// What the step's own readings leave unproved of the facts that it sets.
pub(super) fn unproved(pack: &Pack, step: &Step, run: &Run) -> Vec<Missing> {
    let sets = |fact, value| step.sets.iter().any(|holds| (holds.fact, holds.value) == (fact, value));
    let mut missing = Vec::new();
    let not_cold = |fact, role| {
        let reading = own(pack, step, role).filter(|_| sets(fact, Value::Cold))?;
        let cold = run.number(reading.id.as_str()).is_some_and(|value_c| value_c <= COLD_C_MAX);
        (!cold).then(|| reading.id.clone())
    };
    let loop_not_cold = not_cold(Fact::LoopHeat, "loop-temperature");
    missing.extend(loop_not_cold.map(|reading| Missing::LoopNotCold { reading }));
    let fitting_not_cold = not_cold(Fact::FittingHeat, "fitting-temperature");
    missing.extend(fitting_not_cold.map(|reading| Missing::FittingNotCold { reading }));
    if sets(Fact::RinseCheck, Value::Proved) && own(pack, step, "rinse-ph").is_some() {
        let ph = pair(pack, run, "rinse-ph", "supply-ph").map(|(rinse, supply)| (rinse - supply).abs() <= PH_EQUAL);
        let conductivity = pair(pack, run, "rinse-conductivity", "supply-conductivity")
            .map(|(rinse, supply)| (rinse - supply).abs() <= CONDUCTIVITY_EQUAL * supply);
        match (ph, conductivity) {
            (None, None) => missing.push(Missing::RinseNotMeasured),
            (Some(false), _) | (_, Some(false)) => missing.push(Missing::RinseDiffers),
            _ => {}
        }
    }
    missing.extend(acid_unproved(pack, step, run));
    missing
}

/// The facts that a step sets and that nothing bears out: words alone do not make them so either.
pub(crate) fn unproved_facts(pack: &Pack, step: &Step, run: &Run) -> BTreeSet<Fact> {
    let fact = |missing: &Missing| match missing {
        Missing::LoopNotCold { .. } => Some(Fact::LoopHeat),
        Missing::FittingNotCold { .. } => Some(Fact::FittingHeat),
        Missing::RinseNotMeasured | Missing::RinseDiffers => Some(Fact::RinseCheck),
        Missing::AcidUnknown | Missing::AcidForbidden { .. } => Some(Fact::ExchangerAcid),
        _ => None,
    };
    unproved(pack, step, run).iter().filter_map(fact).collect()
}

/// What the table of materials says of the acid and the metal of a unit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AcidOnMetal {
    /// One of them is not answered, or is none that the table knows.
    Unknown,
    /// Both are known.
    Known {
        /// The answer that names the acid.
        acid: When,
        /// The answer that names the metal.
        metal: When,
        /// The verdict.
        suits: Suits,
        /// Why.
        reason: Reason,
    },
}

/// The verdict on acid and metal, where the pack asks for both (roles `descaler-acid` and `exchanger-metal`); the answers
/// are named as in `science::acids` and `science::materials`. None where the pack does not ask.
#[must_use]
pub fn acid_on_metal(pack: &Pack, run: &Run) -> Option<AcidOnMetal> {
    let asked = |role: &str| pack.conditions.iter().find(|condition| condition.role.as_deref() == Some(role));
    let (acid, metal) = (asked("descaler-acid")?, asked("exchanger-metal")?);
    let answer = |of: &Condition| {
        let option = run.conditions.get(&of.id)?.clone();
        Some(When { condition: of.id.clone(), option })
    };
    let known = || {
        let (acid, metal) = (answer(acid)?, answer(metal)?);
        let (suits, reason) = suits(Acid::parse(&acid.option).ok()?, Metal::parse(&metal.option).ok()?);
        Some(AcidOnMetal::Known { acid, metal, suits, reason })
    };
    Some(known().unwrap_or(AcidOnMetal::Unknown))
}

/// A step may call the acid allowed only where the table of materials does not forbid it and both are known.
fn acid_unproved(pack: &Pack, step: &Step, run: &Run) -> Option<Missing> {
    if !step.sets.iter().any(|holds| (holds.fact, holds.value) == (Fact::ExchangerAcid, Value::Allowed)) {
        return None;
    }
    match acid_on_metal(pack, run)? {
        AcidOnMetal::Unknown => Some(Missing::AcidUnknown),
        AcidOnMetal::Known { acid, metal, suits: Suits::Forbidden, reason } => {
            Some(Missing::AcidForbidden { acid, metal, reason })
        }
        AcidOnMetal::Known { .. } => None,
    }
}

fn by_role<'a>(pack: &'a Pack, role: &str) -> Option<&'a Reading> {
    pack.readings.iter().find(|reading| reading.role.as_deref() == Some(role))
}

fn own<'a>(pack: &'a Pack, step: &Step, role: &str) -> Option<&'a Reading> {
    by_role(pack, role).filter(|reading| step.readings.contains(&reading.id))
}

fn pair(pack: &Pack, run: &Run, rinse: &str, supply: &str) -> Option<(f64, f64)> {
    let value = |role: &str| run.number(by_role(pack, role)?.id.as_str());
    Some((value(rinse)?, value(supply)?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::now::Now;
    use crate::procedure::library::built_in;
    use crate::visit::state::Taken;

    fn run(values: &[(&str, &str)]) -> Run {
        let at = Now { utc_ms: 0, offset_min: 0, mono_ms: 0, mono_epoch: "a".into() };
        let mut run = Run::default();
        for (id, value) in values {
            let taken = Taken {
                value: (*value).into(),
                measure: String::new(),
                instrument: String::new(),
                error_limit: String::new(),
                unusual: true,
                own: None,
                at: at.clone(),
                times: 1,
            };
            run.readings.insert((*id).into(), taken);
        }
        run
    }

    fn check(step_sets: (Fact, Value), values: &[(&str, &str)], expect: &[Missing]) {
        let packs = built_in().unwrap();
        let pack = &packs[0].pack;
        let sets = |step: &&Step| step.sets.iter().any(|holds| (holds.fact, holds.value) == step_sets);
        let proves = |step: &&Step| sets(step) && !unproved(pack, step, &Run::default()).is_empty();
        let (_, step) = pack.steps().find(|(_, step)| proves(step)).expect("a step of the pack proves it");
        assert_eq!(unproved(pack, step, &run(values)), expect);
    }

    #[test]
    fn a_rinse_that_differs_from_the_supply_proves_nothing() {
        let rinse = (Fact::RinseCheck, Value::Proved);
        check(rinse, &[("supply-ph", "7.4"), ("rinse-ph", "4.1")], &[Missing::RinseDiffers]);
        check(rinse, &[("supply-ph", "7.4"), ("rinse-ph", "7.1")], &[]);
        let salty = [("supply-conductivity", "500"), ("rinse-conductivity", "900")];
        check(rinse, &salty, &[Missing::RinseDiffers]);
    }

    #[test]
    fn a_rinse_that_was_not_measured_proves_nothing() {
        check((Fact::RinseCheck, Value::Proved), &[("supply-ph", "7.4")], &[Missing::RinseNotMeasured]);
    }

    const ACID_PACK: &str = r#"
        pack = "p"
        format = 1
        version = "1"
        [[condition]]
        id = "metal"
        role = "exchanger-metal"
        option = [{ id = "stainless" }, { id = "zinc" }, { id = "nobody-knows" }]
        [[condition]]
        id = "acid"
        role = "descaler-acid"
        option = [{ id = "citric" }, { id = "hydrochloric" }, { id = "other" }]
        [[phase]]
        id = "work"
        step = [{ id = "match", sets = ["exchanger-acid=allowed"] }, { id = "other", sets = ["loop-heat=cold"] }]
    "#;

    #[test]
    fn acid_is_allowed_only_where_the_table_of_materials_does_not_forbid_it_and_both_are_known() {
        let pack: Pack = toml::from_str(ACID_PACK).unwrap();
        let missing = |step: &str, answers: &[(&str, &str)]| {
            let mut run = Run::default();
            for (condition, option) in answers {
                run.conditions.insert((*condition).into(), (*option).into());
            }
            unproved(&pack, pack.step(step).unwrap().1, &run)
        };
        assert_eq!(missing("match", &[("metal", "stainless"), ("acid", "citric")]), []);
        let forbidden = missing("match", &[("metal", "stainless"), ("acid", "hydrochloric")]);
        assert!(
            matches!(forbidden[..], [Missing::AcidForbidden { reason: Reason::ChloridePits, .. }]),
            "{forbidden:?}"
        );
        let zinc = missing("match", &[("metal", "zinc"), ("acid", "citric")]);
        assert!(matches!(zinc[..], [Missing::AcidForbidden { reason: Reason::Dissolves, .. }]), "{zinc:?}");
        for unknown in [
            &[("metal", "nobody-knows"), ("acid", "citric")][..],
            &[("metal", "stainless"), ("acid", "other")],
            &[("metal", "stainless")],
            &[],
        ] {
            assert_eq!(missing("match", unknown), [Missing::AcidUnknown], "{unknown:?}");
        }
        assert_eq!(missing("other", &[]), [], "a step that claims nothing of acid is not asked");
    }

    #[test]
    fn a_fitting_of_forty_degrees_is_not_cold() {
        let packs = built_in().unwrap();
        let proves = |step: &Step| step.sets.iter().any(|holds| holds.fact == Fact::FittingHeat);
        let with = packs.iter().flat_map(|loaded| loaded.pack.steps().map(move |(_, step)| (&loaded.pack, step)));
        let cold: Vec<_> = with.filter(|(_, step)| proves(step)).collect();
        assert!(!cold.is_empty());
        for (pack, step) in cold {
            let reading = own(pack, step, "fitting-temperature").expect("a cold fitting is measured").id.clone();
            let not_cold = Missing::FittingNotCold { reading: reading.clone() };
            let lacks = |values: &[(&str, &str)]| unproved(pack, step, &run(values)).contains(&not_cold);
            assert!(lacks(&[(reading.as_str(), "40.0")]));
            assert!(lacks(&[]), "not measured is not cold");
            assert!(!lacks(&[(reading.as_str(), "24.0")]));
        }
    }

    #[test]
    fn a_loop_of_forty_degrees_is_not_cold() {
        let not_cold = Missing::LoopNotCold { reading: "loop-temperature".into() };
        check((Fact::LoopHeat, Value::Cold), &[("loop-temperature", "40.0")], &[not_cold]);
        check((Fact::LoopHeat, Value::Cold), &[("loop-temperature", "24.0")], &[]);
    }
}
