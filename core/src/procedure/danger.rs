//! Forbidden states: what no step may bring about, whatever a pack says.
//!
//! [`dangers`] looks at the facts as they are, [`dangers_of_change`] also at the way from one state to the next.
//! `decide` and the pack checker call the same functions. Not known counts as not safe.

use serde::{Deserialize, Serialize};

use super::pack::Act;
use crate::visit::fact::{Fact, Facts, Value};

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
    /// Acid in a loop that cannot vent.
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
    /// Power on after a flammable alarm.
    PowerOnGas = "power-on-gas",
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
}

fn holds(facts: &Facts, fact: Fact, value: Value) -> bool {
    facts.get(&fact) == Some(&value)
}

fn any(facts: &Facts, fact: Fact, values: &[Value]) -> bool {
    facts.get(&fact).is_some_and(|value| values.contains(value))
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
    let acid = holds(facts, Fact::Loop, Value::Acid);
    let acid_about = acid || holds(facts, Fact::Vessel, Value::AcidMix);
    let treated = any(facts, Fact::Loop, &[Value::Acid, Value::Spent, Value::Neutraliser, Value::Rinse]);
    let powered = holds(facts, Fact::Supply, Value::On);
    let may_heat = powered && !holds(facts, Fact::HeatSources, Value::LockedOut);
    let pump = holds(facts, Fact::UnitPump, Value::Running) || holds(facts, Fact::ServicePump, Value::Running);
    let shut = any(facts, Fact::Valves, &[Value::Shut, Value::ProvedShut]);

    forbid(Danger::AcidPastValves, acid && !holds(facts, Fact::Valves, Value::ProvedShut));
    forbid(Danger::AcidUnvented, acid && !holds(facts, Fact::LoopVent, Value::Vented));
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
    let unproved = treated || holds(facts, Fact::RinseCheck, Value::Unproved);
    forbid(Danger::DrinkingWaterUnproved, unproved && !shut && !holds(facts, Fact::RinseCheck, Value::Proved));
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
    forbid(Danger::PowerOnGas, powered && holds(facts, Fact::Gas, Value::Alarm));
    forbid(Danger::CompressorNoWater, may_heat && facts.get(&Fact::Loop).is_some_and(|loop_| *loop_ != Value::Water));
    found
}

/// The dangers that a change brings: those of the new state that were not there before, and those of the way itself.
#[must_use]
pub fn dangers_of_change(before: &Facts, after: &Facts, acts: &[Act]) -> Vec<Danger> {
    let old = dangers(before);
    let mut found: Vec<_> = dangers(after).into_iter().filter(|danger| !old.contains(danger)).collect();
    let becomes = |fact, value| holds(after, fact, value) && !holds(before, fact, value);

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
    let filled = liquid_changes && any(after, Fact::Loop, &[Value::Water, Value::Rinse]);
    if filled && !holds(after, Fact::Backflow, Value::Protected) {
        found.push(Danger::BackflowUnprotected);
    }
    for act in acts {
        found.extend(dangers_of_act(*act, before, after));
    }
    found
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
            if !ready && !found.contains(&Danger::PowerOnUnready) {
                found.push(Danger::PowerOnUnready);
            }
        }
        Act::InsulationTest => {
            if !holds(before, Fact::Electronics, Value::Disconnected) || !holds(before, Fact::Supply, Value::ProvedDead)
            {
                found.push(Danger::InsulationTestUnready);
            }
        }
        Act::HandOver => {
            let reheated = any(after, Fact::Reheat, &[Value::Reached, Value::HandedOver]);
            if !holds(after, Fact::ScaldCheck, Value::Done) || !reheated {
                found.push(Danger::HandOverUnchecked);
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
