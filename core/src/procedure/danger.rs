//! Forbidden states: what no step may bring about, whatever a pack says.
//!
//! [`dangers`] looks at the facts as they are, [`dangers_of_change`] also at the way from one state to the next.
//! `decide` and the pack checker call the same functions. Not known counts as not safe.

use serde::{Deserialize, Serialize};

use super::pack::Act;
use crate::visit::fact::{Fact, Facts, Holds, Value};

macro_rules! dangers {
    ($( $(#[$doc:meta])* $variant:ident = $name:literal ),+ $(,)?) => {
        /// A state that can injure, harm the unit or the drinking water. Words: `danger-<name>` with `.do`.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
        #[serde(rename_all = "kebab-case")]
        pub enum Danger { $( $(#[$doc])* $variant, )+ }

        impl Danger {
            /// Every danger.
            pub const ALL: &'static [Danger] = &[ $( Danger::$variant, )+ ];

            /// The name in words and events.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $( Danger::$variant => $name, )+ }
            }
        }
    };
}

dangers! {
    /// Acid in the loop with valves not proved shut.
    AcidPastValves = "acid-past-valves",
    /// Acid goes in before water: into the vessel or the loop.
    AcidBeforeWater = "acid-before-water",
    /// Acid, spent acid or neutraliser in a loop that cannot vent.
    AcidUnvented = "acid-unvented",
    /// Acid handled without eye, hand and body protection and an eyewash.
    AcidUnprotected = "acid-unprotected",
    /// Acid in a hot loop, or with a heat source that may start.
    AcidHot = "acid-hot",
    /// Acid on a material that is unknown or must not meet it.
    AcidMaterial = "acid-material",
    /// Acid beside hypochlorite or alkali.
    AcidBesideAlkali = "acid-beside-alkali",
    /// The drinking-water valve opens before the rinse is proved.
    DrinkingWaterUnproved = "drinking-water-unproved",
    /// The loop or the system is filled with no protection against backflow.
    BackflowUnprotected = "backflow-unprotected",
    /// A pump runs on a loop that is empty or whose content is not known.
    PumpDry = "pump-dry",
    /// The loop is shut at both ends with heat and no relief.
    LoopShutWithHeat = "loop-shut-with-heat",
    /// The water circuit is opened hot.
    OpenedHot = "opened-hot",
    /// The liquid in the loop is changed while power can start something.
    LiquidChangedLive = "liquid-changed-live",
    /// Covers off with a supply not proved dead or a charge not waited out.
    CoversOffLive = "covers-off-live",
    /// Power on with covers or earth off, guard off or electrics damp.
    PowerOnUnready = "power-on-unready",
    /// Power on after a flammable alarm, or switched on without a clear reading.
    PowerOnGas = "power-on-gas",
    /// A heating element may be under power with the cylinder not full.
    ElementTankNotFull = "element-tank-not-full",
    /// The compressor may run without water.
    CompressorNoWater = "compressor-no-water",
    /// Spray while power is on.
    SprayLive = "spray-live",
    /// Spray on bare electrics.
    SprayBare = "spray-bare",
    /// Spray on a hot coil.
    SprayHot = "spray-hot",
    /// Insulation test with electronics connected or the supply not proved dead.
    InsulationTestUnready = "insulation-test-unready",
    /// Handed over with the scald and legionella checks open.
    HandOverUnchecked = "hand-over-unchecked",
    /// Anode, drain, strainer or vessel opened hot or under pressure.
    FittingOpenedUnready = "fitting-opened-unready",
    /// The refrigerant circuit opened by a person without the certificate.
    CircuitUncertified = "circuit-uncertified",
    /// The compressor may run without air.
    CompressorNoAir = "compressor-no-air",
    /// Fan guard off while the fan may start again.
    GuardOffLive = "guard-off-live",
    /// A cover opened in a zone that the detector does not call clear, or with sources of ignition in it.
    OpenedInGas = "opened-in-gas",
    /// Handed over running with a finding that makes it unsafe.
    HandOverUnsafe = "hand-over-unsafe",
    /// Left with the power off and no lock and tag on the isolator.
    LeftUntagged = "left-untagged",
}

/// What a loop can hold that no machine may run on.
const NO_WORKING_LIQUID: &[Value] = &[Value::Empty, Value::Acid, Value::Spent, Value::Neutraliser, Value::Rinse];

fn holds(facts: &Facts, fact: Fact, value: Value) -> bool {
    facts.get(&fact) == Some(&value)
}

fn any(facts: &Facts, fact: Fact, values: &[Value]) -> bool {
    facts.get(&fact).is_some_and(|value| values.contains(value))
}

/// Is this a condition that stays until something ends it? A mark taken back by mistake makes no acid go away, so what
/// lingers is believed until it is known to be over.
#[must_use]
pub const fn lingers(holds: Holds) -> bool {
    matches!(
        (holds.fact, holds.value),
        (Fact::Loop, Value::Acid | Value::Spent | Value::Neutraliser)
            | (Fact::Vessel, Value::AcidMix | Value::AlkaliMix)
            | (Fact::RinseCheck, Value::Unproved)
            | (Fact::AlkaliResidue, Value::Present)
            | (Fact::StoredCharge, Value::Present)
    )
}

/// The forbidden states that the facts are in.
#[must_use]
pub fn dangers(facts: &Facts) -> Vec<Danger> {
    let mut found = Vec::new();
    let mut forbid = |danger, is| {
        if is {
            found.push(danger);
        }
    };
    // Spent acid still burns, corrodes and gasses: only neutralising and draining end it.
    let acid = any(facts, Fact::Loop, &[Value::Acid, Value::Spent]);
    let acid_about = acid || holds(facts, Fact::Vessel, Value::AcidMix);
    let gasses = acid || holds(facts, Fact::Loop, Value::Neutraliser);
    let powered = holds(facts, Fact::Supply, Value::On);
    let may_heat = powered && !holds(facts, Fact::HeatSources, Value::LockedOut);
    let pump = holds(facts, Fact::UnitPump, Value::Running) || holds(facts, Fact::ServicePump, Value::Running);
    let shut = any(facts, Fact::Valves, &[Value::Shut, Value::ProvedShut]);

    forbid(Danger::AcidPastValves, acid && !holds(facts, Fact::Valves, Value::ProvedShut));
    forbid(Danger::AcidUnvented, gasses && !holds(facts, Fact::LoopVent, Value::Vented));
    forbid(
        Danger::AcidUnprotected,
        acid_about
            && !(holds(facts, Fact::Eyes, Value::Protected)
                && holds(facts, Fact::Hands, Value::Protected)
                && holds(facts, Fact::Body, Value::Protected)
                && holds(facts, Fact::Eyewash, Value::AtHand)),
    );
    forbid(Danger::AcidHot, acid && (!holds(facts, Fact::LoopHeat, Value::Cold) || may_heat));
    forbid(Danger::AcidMaterial, acid && !holds(facts, Fact::ExchangerAcid, Value::Allowed));
    forbid(Danger::AcidBesideAlkali, acid_about && !holds(facts, Fact::AlkaliResidue, Value::None));
    // A proof is of the rinse that was measured. It says nothing of acid or neutraliser that came in afterwards, so
    // these may not stand beside one: it would outlast them.
    let stale = gasses && holds(facts, Fact::RinseCheck, Value::Proved);
    let unproved = holds(facts, Fact::RinseCheck, Value::Unproved)
        || holds(facts, Fact::Loop, Value::Rinse) && !holds(facts, Fact::RinseCheck, Value::Proved);
    forbid(Danger::DrinkingWaterUnproved, stale || (gasses || unproved) && !shut);
    forbid(Danger::PumpDry, pump && matches!(facts.get(&Fact::Loop), None | Some(Value::Empty)));
    forbid(Danger::LoopShutWithHeat, shut && may_heat && !holds(facts, Fact::LoopVent, Value::Vented));
    forbid(
        Danger::CoversOffLive,
        holds(facts, Fact::Covers, Value::Off)
            && !(holds(facts, Fact::Supply, Value::ProvedDead)
                && any(facts, Fact::FurtherSupplies, &[Value::None, Value::ProvedDead])
                && holds(facts, Fact::StoredCharge, Value::WaitedOut)),
    );
    forbid(
        Danger::PowerOnUnready,
        powered
            && (holds(facts, Fact::Covers, Value::Off)
                || holds(facts, Fact::Earth, Value::Off)
                || holds(facts, Fact::FanGuard, Value::Off)
                || holds(facts, Fact::Dampness, Value::Damp)),
    );
    forbid(
        Danger::GuardOffLive,
        holds(facts, Fact::FanGuard, Value::Off) && !holds(facts, Fact::Supply, Value::ProvedDead),
    );
    forbid(Danger::CompressorNoAir, may_heat && holds(facts, Fact::AirPath, Value::Blocked));
    forbid(Danger::PowerOnGas, powered && holds(facts, Fact::Gas, Value::Alarm));
    let element = may_heat || holds(facts, Fact::FurtherSupplies, Value::On);
    forbid(Danger::ElementTankNotFull, element && holds(facts, Fact::Tank, Value::NotFull));
    forbid(Danger::CompressorNoWater, may_heat && any(facts, Fact::Loop, NO_WORKING_LIQUID));
    found
}

/// Dangers that nobody may walk away from as if the work were done.
#[must_use]
pub fn dangers_left(facts: &Facts) -> Vec<Danger> {
    let mut open = dangers(facts);
    let acid_left = any(facts, Fact::Loop, &[Value::Acid, Value::Spent]) && !open.contains(&Danger::AcidPastValves);
    if acid_left {
        open.push(Danger::DrinkingWaterUnproved);
    }
    open
}

/// The dangers that a change brings: those of the new state that were not there before, and those of the way itself.
#[must_use]
pub fn dangers_of_change(before: &Facts, after: &Facts, acts: &[Act]) -> Vec<Danger> {
    let old = dangers(before);
    let becomes = |fact, value| holds(after, fact, value) && !holds(before, fact, value);
    // A danger that stands already is no reason to do once more what brings it about; the way out of it stays open.
    let again = |danger: Danger| brought_by(danger).iter().any(|(fact, value)| becomes(*fact, *value));
    let mut found: Vec<_> =
        dangers(after).into_iter().filter(|danger| !old.contains(danger) || again(*danger)).collect();

    if becomes(Fact::Valves, Value::Open) && !after.contains_key(&Fact::Loop) {
        found.push(Danger::DrinkingWaterUnproved);
    }
    if becomes(Fact::Loop, Value::Acid) && !any(before, Fact::Loop, &[Value::Water, Value::Spent])
        || becomes(Fact::Vessel, Value::AcidMix) && !holds(before, Fact::Vessel, Value::Water)
    {
        found.push(Danger::AcidBeforeWater);
    }
    let liquid_changes = before.get(&Fact::Loop).is_some() && before.get(&Fact::Loop) != after.get(&Fact::Loop);
    let dead = any(after, Fact::Supply, &[Value::ProvedDead, Value::Off]);
    if liquid_changes && !dead && !holds(after, Fact::HeatSources, Value::LockedOut) {
        found.push(Danger::LiquidChangedLive);
    }
    let filled = liquid_changes && any(after, Fact::Loop, &[Value::Water, Value::Rinse, Value::Glycol]);
    if filled && !holds(after, Fact::Backflow, Value::Protected) {
        found.push(Danger::BackflowUnprotected);
    }
    let burns = !holds(after, Fact::Gas, Value::Clear) || holds(after, Fact::IgnitionSources, Value::Present);
    if becomes(Fact::Covers, Value::Off) && burns {
        found.push(Danger::OpenedInGas);
    }
    for act in acts {
        found.extend(dangers_of_act(*act, before, after));
    }
    found
}

/// What a person does to bring a state about, or to make it worse.
const fn brought_by(danger: Danger) -> &'static [(Fact, Value)] {
    match danger {
        Danger::AcidPastValves | Danger::DrinkingWaterUnproved => {
            &[(Fact::Loop, Value::Acid), (Fact::Valves, Value::Open)]
        }
        Danger::AcidUnvented => {
            &[(Fact::Loop, Value::Acid), (Fact::Loop, Value::Neutraliser), (Fact::LoopVent, Value::Closed)]
        }
        Danger::AcidUnprotected | Danger::AcidBesideAlkali => {
            &[(Fact::Loop, Value::Acid), (Fact::Vessel, Value::AcidMix)]
        }
        Danger::AcidHot => &[(Fact::Loop, Value::Acid), (Fact::Supply, Value::On), (Fact::HeatSources, Value::Enabled)],
        Danger::AcidMaterial => &[(Fact::Loop, Value::Acid)],
        Danger::PumpDry => &[(Fact::UnitPump, Value::Running), (Fact::ServicePump, Value::Running)],
        Danger::LoopShutWithHeat => &[
            (Fact::Valves, Value::Shut),
            (Fact::LoopVent, Value::Closed),
            (Fact::Supply, Value::On),
            (Fact::HeatSources, Value::Enabled),
        ],
        Danger::CoversOffLive => &[(Fact::Covers, Value::Off)],
        Danger::PowerOnUnready => &[
            (Fact::Supply, Value::On),
            (Fact::Covers, Value::Off),
            (Fact::FanGuard, Value::Off),
            (Fact::Earth, Value::Off),
        ],
        Danger::GuardOffLive => &[(Fact::FanGuard, Value::Off), (Fact::Supply, Value::On)],
        Danger::PowerOnGas | Danger::CompressorNoWater | Danger::CompressorNoAir => {
            &[(Fact::Supply, Value::On), (Fact::HeatSources, Value::Enabled)]
        }
        Danger::ElementTankNotFull => {
            &[(Fact::Supply, Value::On), (Fact::FurtherSupplies, Value::On), (Fact::HeatSources, Value::Enabled)]
        }
        // Those of the moment itself: they are judged at every act.
        Danger::AcidBeforeWater
        | Danger::BackflowUnprotected
        | Danger::OpenedHot
        | Danger::LiquidChangedLive
        | Danger::SprayLive
        | Danger::SprayBare
        | Danger::SprayHot
        | Danger::InsulationTestUnready
        | Danger::HandOverUnchecked
        | Danger::FittingOpenedUnready
        | Danger::CircuitUncertified
        | Danger::OpenedInGas
        | Danger::HandOverUnsafe
        | Danger::LeftUntagged => &[],
    }
}

fn dangers_of_act(act: Act, before: &Facts, after: &Facts) -> Vec<Danger> {
    let mut found = Vec::new();
    match act {
        Act::Spray => {
            if !holds(before, Fact::Supply, Value::ProvedDead) {
                found.push(Danger::SprayLive);
            }
            if !holds(before, Fact::Electrics, Value::Covered) {
                found.push(Danger::SprayBare);
            }
            if !holds(before, Fact::Coil, Value::Cold) {
                found.push(Danger::SprayHot);
            }
        }
        Act::Energise => {
            let ready = holds(before, Fact::Covers, Value::On)
                && holds(before, Fact::Earth, Value::On)
                && holds(before, Fact::FanGuard, Value::On)
                && holds(before, Fact::Dampness, Value::Dry);
            if !ready {
                found.push(Danger::PowerOnUnready);
            }
            if !holds(before, Fact::Gas, Value::Clear) {
                found.push(Danger::PowerOnGas);
            }
        }
        Act::InsulationTest => {
            if !holds(before, Fact::Electronics, Value::Disconnected) || !holds(before, Fact::Supply, Value::ProvedDead)
            {
                found.push(Danger::InsulationTestUnready);
            }
        }
        Act::HandOver => {
            let checked = any(after, Fact::ScaldCheck, &[Value::Done, Value::NotNeeded]);
            let reheated = any(after, Fact::Reheat, &[Value::Reached, Value::HandedOver, Value::NotNeeded]);
            if !checked || !reheated {
                found.push(Danger::HandOverUnchecked);
            }
        }
        Act::OpenFitting => {
            let ready =
                holds(before, Fact::FittingPressure, Value::Relieved) && holds(before, Fact::FittingHeat, Value::Cold);
            if !ready {
                found.push(Danger::FittingOpenedUnready);
            }
        }
        Act::OpenCircuit => {
            if !holds(before, Fact::Certificate, Value::Held) {
                found.push(Danger::CircuitUncertified);
            }
        }
        Act::OpenWater => {
            if !holds(before, Fact::LoopHeat, Value::Cold) {
                found.push(Danger::OpenedHot);
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn facts(held: &[&str]) -> Facts {
        held.iter().map(|text| text.parse::<Holds>().unwrap()).map(|holds| (holds.fact, holds.value)).collect()
    }

    #[test]
    fn spent_acid_without_gloves_is_as_forbidden_as_fresh_acid() {
        let bare = facts(&["loop=spent", "eyes=protected", "body=protected", "eyewash=at-hand"]);
        assert!(dangers(&bare).contains(&Danger::AcidUnprotected));
    }

    #[test]
    fn neutraliser_in_a_loop_that_cannot_vent_is_forbidden() {
        assert!(dangers(&facts(&["loop=neutraliser", "valves=proved-shut"])).contains(&Danger::AcidUnvented));
    }

    #[test]
    fn an_old_proof_of_the_rinse_does_not_open_the_valves_on_spent_acid() {
        for valves in ["valves=open", "valves=proved-shut"] {
            let state = facts(&["loop=spent", "rinse-check=proved", valves]);
            assert!(dangers(&state).contains(&Danger::DrinkingWaterUnproved), "{valves}");
        }
        let rinsed = facts(&["loop=rinse", "rinse-check=proved", "valves=open"]);
        assert!(!dangers(&rinsed).contains(&Danger::DrinkingWaterUnproved));
    }

    #[test]
    fn power_is_not_switched_on_without_a_clear_reading_for_gas() {
        let mut before = facts(&["covers=on", "earth=on", "fan-guard=on", "dampness=dry", "supply=off"]);
        let after_of = |before: &Facts| {
            let mut after = before.clone();
            after.insert(Fact::Supply, Value::On);
            after
        };
        let unread = dangers_of_change(&before, &after_of(&before), &[Act::Energise]);
        assert_eq!(unread, [Danger::PowerOnGas]);
        before.insert(Fact::Gas, Value::Clear);
        assert_eq!(dangers_of_change(&before, &after_of(&before), &[Act::Energise]), []);
    }

    #[test]
    fn a_further_supply_is_not_on_with_the_cylinder_not_full() {
        let state = facts(&["further-supplies=on", "tank=not-full"]);
        assert!(dangers(&state).contains(&Danger::ElementTankNotFull));
    }
}
