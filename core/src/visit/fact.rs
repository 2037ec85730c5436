//! The physical facts that make the work safe or dangerous. A closed set: packs use them, only the core defines them.
//!
//! Every fact is three-valued at heart: it holds one of its values, or it is not known (absent from [`Facts`]).
//! Not known never opens a gate.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

pub use super::facts::Facts;

macro_rules! facts {
    ($( $(#[$doc:meta])* $variant:ident = $name:literal : $( $value:ident ),+ ; )+) => {
        /// What can be known about the machine and the place.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
        #[serde(into = "String", try_from = "String")]
        pub enum Fact { $( $(#[$doc])* $variant, )+ }

        impl Fact {
            /// Every fact, in the order of the canon.
            pub const ALL: &'static [Fact] = &[ $( Fact::$variant, )+ ];

            /// The name in packs, events and words.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $( Fact::$variant => $name, )+ }
            }

            /// The values that this fact can have.
            #[must_use]
            pub const fn values(self) -> &'static [Value] {
                match self { $( Fact::$variant => &[ $( Value::$value, )+ ], )+ }
            }
        }

        impl FromStr for Fact {
            type Err = FactError;
            fn from_str(name: &str) -> Result<Self, FactError> {
                match name { $( $name => Ok(Fact::$variant), )+ _ => Err(FactError::NoSuchFact(name.to_owned())) }
            }
        }
    };
}

macro_rules! values {
    ($( $variant:ident = $word:literal ),+ $(,)?) => {
        /// A value of a fact.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(into = "String", try_from = "String")]
        #[allow(missing_docs, reason = "each value is its own word")]
        pub enum Value { $( $variant, )+ }

        impl Value {
            /// The word in packs, events and words.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self { $( Value::$variant => $word, )+ }
            }
        }

        impl FromStr for Value {
            type Err = FactError;
            fn from_str(word: &str) -> Result<Self, FactError> {
                match word { $( $word => Ok(Value::$variant), )+ _ => Err(FactError::NoSuchValue(word.to_owned())) }
            }
        }
    };
}

values! {
    On = "on", Off = "off", ProvedDead = "proved-dead", None = "none",
    Present = "present", WaitedOut = "waited-out",
    Stopped = "stopped", Running = "running",
    Protected = "protected", Bare = "bare", Open = "open", Shut = "shut", ProvedShut = "proved-shut",
    Enabled = "enabled", LockedOut = "locked-out",
    Empty = "empty", Water = "water", Acid = "acid", Spent = "spent", Neutraliser = "neutraliser", Rinse = "rinse",
    Glycol = "glycol",
    Closed = "closed", Vented = "vented", Hot = "hot", Cold = "cold",
    Unproved = "unproved", Proved = "proved",
    Covered = "covered", Damp = "damp", Dry = "dry",
    AtHand = "at-hand", Absent = "absent", Ventilated = "ventilated", Clear = "clear", Alarm = "alarm",
    AcidMix = "acid-mix", AlkaliMix = "alkali-mix", Cleaner = "cleaner",
    Allowed = "allowed", Forbidden = "forbidden",
    Full = "full", NotFull = "not-full", Reached = "reached", HandedOver = "handed-over",
    Done = "done", Tagged = "tagged", Untagged = "untagged",
    Connected = "connected", Disconnected = "disconnected",
    Relieved = "relieved", Blocked = "blocked", KeptAway = "kept-away", Held = "held",
    NotNeeded = "not-needed",
}

facts! {
    /// The unit's own supply. Off is not isolated: only a test proves it dead.
    Supply = "supply": On, Off, ProvedDead;
    /// Element, off-peak supply, solar diverter: any second way for power to come in.
    FurtherSupplies = "further-supplies": None, On, Off, ProvedDead;
    /// Charge in capacitors and drives.
    StoredCharge = "stored-charge": Present, WaitedOut;
    /// The unit's own circulation pump.
    UnitPump = "unit-pump": Stopped, Running;
    /// The technician's separate pump for the loop.
    ServicePump = "service-pump": Stopped, Running;
    /// The service pump's supply is protected by a residual-current device.
    ServiceSupply = "service-supply": Protected, Bare;
    /// Compressor and heaters: may they start by themselves?
    HeatSources = "heat-sources": Enabled, LockedOut;
    /// The valves between the exchanger and what it heats: the cylinder with its drinking water, the heating, the pool.
    Valves = "valves": Open, Shut, ProvedShut;
    /// What the exchanger's loop holds.
    Loop = "loop": Empty, Water, Acid, Spent, Neutraliser, Rinse, Glycol;
    /// The loop can breathe: gas and pressure have a way out.
    LoopVent = "loop-vent": Closed, Vented;
    /// The loop's temperature.
    LoopHeat = "loop-heat": Hot, Cold;
    /// The rinse water equals the supply's by pH or conductivity.
    RinseCheck = "rinse-check": Unproved, Proved;
    /// The air coil's temperature.
    Coil = "coil": Hot, Cold;
    /// The unit's covers over live and moving parts.
    Covers = "covers": On, Off;
    /// Are the electrics covered against spray?
    Electrics = "electrics": Covered, Bare;
    /// Are the electrics damp?
    Dampness = "dampness": Damp, Dry;
    /// The fan's guard.
    FanGuard = "fan-guard": On, Off;
    /// Protective earth.
    Earth = "earth": On, Off;
    /// Eye protection.
    Eyes = "eyes": Protected, Bare;
    /// Hand protection.
    Hands = "hands": Protected, Bare;
    /// Body protection.
    Body = "body": Protected, Bare;
    /// Clean water for the eyes.
    Eyewash = "eyewash": AtHand, Absent;
    /// The room or zone.
    Room = "room": Ventilated, Closed;
    /// The detector's reading for flammable refrigerant.
    Gas = "gas": Clear, Alarm;
    /// What the mixing vessel holds.
    Vessel = "vessel": Empty, Water, AcidMix, AlkaliMix, Cleaner;
    /// May the exchanger's material meet this acid at all (material, maker, double wall)?
    ExchangerAcid = "exchanger-acid": Allowed, Forbidden;
    /// Hypochlorite or alkali, or what is left of it, near the acid.
    AlkaliResidue = "alkali-residue": None, Present;
    /// Protection of the drinking water against backflow: air gap or protected filling.
    Backflow = "backflow": Protected, Open;
    /// The cylinder is full.
    Tank = "tank": Full, NotFull;
    /// The store is back at the disinfecting temperature, or the owner was told that it is pending, or no drinking water
    /// hangs at the unit.
    Reheat = "reheat": Reached, HandedOver, NotNeeded;
    /// The hot water at the tap was checked against scalding, or none comes from the unit.
    ScaldCheck = "scald-check": Done, Open, NotNeeded;
    /// A lock and tag hang at the isolator.
    Tag = "tag": Tagged, Untagged;
    /// Electronics and drives for the insulation test.
    Electronics = "electronics": Connected, Disconnected;
    /// The pressure behind a fitting that is to be opened: anode, drain, strainer, expansion vessel.
    FittingPressure = "fitting-pressure": Present, Relieved;
    /// The water behind that fitting.
    FittingHeat = "fitting-heat": Hot, Cold;
    /// The way of the air through the unit: ducts, filter, sheets laid over it.
    AirPath = "air-path": Clear, Blocked;
    /// Phone, torch, vacuum cleaner and whatever else can light a flammable refrigerant.
    IgnitionSources = "ignition-sources": KeptAway, Present;
    /// The certificate for work on a refrigerant circuit, of the person who is at it.
    Certificate = "certificate": Held, None;
}

/// A fact with the value that it has, or must have. Written `loop=water`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(into = "String", try_from = "String")]
pub struct Holds {
    /// Of what.
    pub fact: Fact,
    /// Its value: always one of [`Fact::values`].
    pub value: Value,
}

/// Why a fact could not be read.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum FactError {
    /// The name is not in the canon.
    #[error("there is no fact '{0}'; use one of the facts of the core")]
    NoSuchFact(String),
    /// The word is nobody's value.
    #[error("there is no value '{0}' of any fact")]
    NoSuchValue(String),
    /// The fact has other values.
    #[error("the fact '{fact}' has no value '{value}'; it can be {choices}")]
    NotItsValue {
        /// Of what.
        fact: String,
        /// What was written.
        value: String,
        /// What could be written.
        choices: String,
    },
    /// There is no `=`.
    #[error("'{0}' is not of the form fact=value")]
    NoEquals(String),
}

impl FromStr for Holds {
    type Err = FactError;
    fn from_str(text: &str) -> Result<Self, FactError> {
        let (name, word) = text.split_once('=').ok_or_else(|| FactError::NoEquals(text.to_owned()))?;
        let fact: Fact = name.trim().parse()?;
        let value: Value = word.trim().parse()?;
        if fact.values().contains(&value) {
            return Ok(Holds { fact, value });
        }
        let choices: Vec<_> = fact.values().iter().map(|v| v.word()).collect();
        Err(FactError::NotItsValue { fact: fact.name().into(), value: word.trim().into(), choices: choices.join(", ") })
    }
}

impl fmt::Display for Holds {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}={}", self.fact.name(), self.value.word())
    }
}

impl From<Holds> for String {
    fn from(holds: Holds) -> String {
        holds.to_string()
    }
}

impl TryFrom<String> for Holds {
    type Error = FactError;
    fn try_from(text: String) -> Result<Self, FactError> {
        text.parse()
    }
}

impl From<Fact> for String {
    fn from(fact: Fact) -> String {
        fact.name().to_owned()
    }
}

impl TryFrom<String> for Fact {
    type Error = FactError;
    fn try_from(name: String) -> Result<Self, FactError> {
        name.parse()
    }
}

impl From<Value> for String {
    fn from(value: Value) -> String {
        value.word().to_owned()
    }
}

impl TryFrom<String> for Value {
    type Error = FactError;
    fn try_from(word: String) -> Result<Self, FactError> {
        word.parse()
    }
}

impl Fact {
    /// Facts that a pause or another day makes not known: someone else may have been there.
    #[must_use]
    pub const fn lapses(self) -> bool {
        matches!(self, Fact::Supply | Fact::FurtherSupplies | Fact::HeatSources | Fact::Valves | Fact::Room | Fact::Gas)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fact_and_value_reads_back_as_it_is_written() {
        for &fact in Fact::ALL {
            for &value in fact.values() {
                let holds = Holds { fact, value };
                assert_eq!(holds.to_string().parse(), Ok(holds));
            }
        }
    }

    #[test]
    fn a_value_of_another_fact_is_refused_with_the_choices() {
        let error = "valves=acid".parse::<Holds>().unwrap_err();
        assert_eq!(error.to_string(), "the fact 'valves' has no value 'acid'; it can be open, shut, proved-shut");
    }
}
