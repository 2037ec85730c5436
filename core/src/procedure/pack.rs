//! A pack: what the service of one kind of equipment consists of, as data.
//!
//! A pack holds no code and no expressions. Its words lie beside it, one Fluent file a language.

use serde::{Deserialize, Serialize};

use crate::id::{ConditionId, ExcursionId, PhaseId, ReadingId, Slot, StepId};
use crate::visit::fact::{Fact, Holds};

/// A whole pack as it is written in `pack.toml`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Pack {
    /// The pack's name, lower case with hyphens.
    pub pack: String,
    /// The version of the format: 1.
    pub format: u32,
    /// The version of this pack's content.
    pub version: String,
    /// Questions about the unit that decide which steps apply.
    #[serde(default, rename = "condition")]
    pub conditions: Vec<Condition>,
    /// The technician's instruments.
    #[serde(default, rename = "instrument")]
    pub instruments: Vec<Instrument>,
    /// What is measured or read off.
    #[serde(default, rename = "reading")]
    pub readings: Vec<Reading>,
    /// Photographs.
    #[serde(default, rename = "shot")]
    pub shots: Vec<Shot>,
    /// What is used up in the work by litres or grams.
    #[serde(default, rename = "chemical")]
    pub chemicals: Vec<Chemical>,
    /// What is built in and stays there.
    #[serde(default, rename = "part")]
    pub parts: Vec<Part>,
    /// What comes along and goes home again: protection, pumps, hoses, tools.
    #[serde(default, rename = "gear")]
    pub gear: Vec<Gear>,
    /// Dilutions.
    #[serde(default, rename = "mix")]
    pub mixes: Vec<Mix>,
    /// Controller settings that are changed for the work.
    #[serde(default, rename = "excursion")]
    pub excursions: Vec<Excursion>,
    /// The work, in order.
    #[serde(rename = "phase")]
    pub phases: Vec<Phase>,
}

/// A question about the unit. Its words: `condition-<id>`, `condition-<id>-<option>`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Condition {
    /// Its name.
    pub id: ConditionId,
    /// The answers, at least two.
    #[serde(rename = "option")]
    pub options: Vec<ConditionOption>,
    /// What the core makes of the answer, where it does: `exchanger-metal`, `descaler-acid`.
    #[serde(default)]
    pub role: Option<String>,
}

/// An answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct ConditionOption {
    /// Its name.
    pub id: String,
    /// Facts that the answer sets.
    #[serde(default)]
    pub sets: Vec<Holds>,
}

/// An instrument with its maker's stated error. Its words: `instrument-<id>`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Instrument {
    /// Its name.
    pub id: String,
    /// Half width of the error limits, in the unit of the reading's quantity, a decimal number as text.
    pub error_limit: String,
}

/// What kind of quantity a reading is; it settles the units.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Quantity {
    /// °C; °F in US customary units.
    Temperature,
    /// Percent of saturation.
    RelativeHumidity,
    /// Litres a minute; US gallons a minute.
    Flow,
    /// Litres; US gallons.
    Volume,
    /// Kilopascal above the atmosphere; psi.
    Pressure,
    /// Volt.
    Voltage,
    /// Ampere.
    Current,
    /// Watt.
    Power,
    /// Microfarad.
    Capacitance,
    /// Megohm.
    Insulation,
    /// pH.
    Acidity,
    /// Microsiemens a centimetre.
    Conductivity,
    /// Milligrams of calcium carbonate a litre.
    Hardness,
    /// Percent of a mix by volume.
    Share,
    /// Millilitres (grams of a powder) to a litre of water; fluid ounces to a US gallon.
    Dose,
    /// Minutes.
    Minutes,
    /// A plain number: parts, hours, counts.
    Count,
    /// Minutes and the like are counts; text is for serial numbers and read-backs.
    Text,
}

/// A measured or read-off value. Its words: `reading-<id>` with `.hint`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Reading {
    /// Its name.
    pub id: ReadingId,
    /// What it is.
    pub quantity: Quantity,
    /// Decimals that make sense.
    #[serde(default)]
    pub decimals: u8,
    /// Below this it cannot be: refused. In the metric unit, as text.
    #[serde(default)]
    pub least: Option<String>,
    /// Above this it cannot be: refused.
    #[serde(default)]
    pub most: Option<String>,
    /// Outside of this it is unusual: asked back. Two numbers as text.
    #[serde(default)]
    pub usual: Option<[String; 2]>,
    /// With what it is measured.
    #[serde(default)]
    pub instrument: Option<String>,
    /// The reading of the same thing as found, where this one is 'as left'.
    #[serde(default)]
    pub as_found: Option<ReadingId>,
    /// A part in a computation of the core: `air-on`, `air-off`, `water-in`, `water-out`, `flow`, `power`, `supply-ph`, `rinse-ph`, …
    /// Those that begin with `circuit-` are asked for only where the assignment names the refrigerant.
    #[serde(default)]
    pub role: Option<String>,
    /// What is used until another value is read (label values of mixes).
    #[serde(default)]
    pub preset: Option<String>,
    /// The shots of the plates whose code may tell it, of a text.
    #[serde(default)]
    pub plates: Vec<Slot>,
    /// May be left out without a word.
    #[serde(default)]
    pub optional: bool,
}

/// The role of the reading that is compared with the register's serial number.
pub const SERIAL_ROLE: &str = "serial";
/// The role of the reading that is compared with the register's model.
pub const MODEL_ROLE: &str = "model";

/// A photograph that a step asks for. Its words: `shot-<id>` with `.show` (what must be visible, and why).
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Shot {
    /// Its slot.
    pub id: Slot,
    /// The slot of the same view before the work, where this one is 'after'.
    #[serde(default)]
    pub before: Option<Slot>,
    /// The record counts it as missing when it is not there.
    #[serde(default = "yes")]
    pub required: bool,
    /// What it shows, for the drawing on its card.
    #[serde(default)]
    pub view: Option<View>,
}

/// What a photograph shows, of the few things that are photographed again and again. Its words: `view-<name>`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum View {
    /// A plate with writing.
    Plate,
    /// The face of a coil, a filter or a screen, straight on.
    Face,
    /// Terminals behind an open lid.
    Wiring,
    /// A display that can be read.
    Display,
    /// The whole unit.
    Whole,
    /// Feet, bolts and what it stands on.
    Feet,
    /// A surface from near.
    Surface,
    /// Ports, hoses and vessel.
    Hoses,
    /// A test strip beside its scale.
    Strip,
    /// An isolator, locked, with its tag.
    Lock,
    /// A part that was taken out.
    Part,
}

impl View {
    /// All of them, as [`VIEWS`](crate::procedure::shape::VIEWS) names them.
    pub const ALL: [View; 11] = [
        View::Plate,
        View::Face,
        View::Wiring,
        View::Display,
        View::Whole,
        View::Feet,
        View::Surface,
        View::Hoses,
        View::Strip,
        View::Lock,
        View::Part,
    ];

    /// As packs and words write it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            View::Plate => "plate",
            View::Face => "face",
            View::Wiring => "wiring",
            View::Display => "display",
            View::Whole => "whole",
            View::Feet => "feet",
            View::Surface => "surface",
            View::Hoses => "hoses",
            View::Strip => "strip",
            View::Lock => "lock",
            View::Part => "part",
        }
    }
}

/// Something used up by litres or grams. Its words: `chemical-<id>`, as it stands in the load list.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Chemical {
    /// Its name.
    pub id: String,
    /// What it must be kept apart from follows from this.
    pub kind: ChemicalKind,
    /// Measured by volume or by weight.
    pub form: Form,
}

/// What a chemical is to its neighbours in the van.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ChemicalKind {
    /// Descalers. Apart from alkalis and hypochlorite.
    Acid,
    /// Degreasers and neutralisers. Apart from acids.
    Alkali,
    /// Bleach and pool chlorine. Apart from acids.
    Hypochlorite,
    /// Neutral cleaners, inhibitors, glycol.
    Neutral,
}

/// How a chemical is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Form {
    /// By volume.
    Liquid,
    /// By weight.
    Powder,
}

/// Something that is built in. Its words: `part-<id>`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Part {
    /// Its name.
    pub id: String,
    /// How many a unit takes.
    #[serde(default = "one")]
    pub count: u32,
    /// Only taken along in case it is needed, and used up only where the technician says so.
    #[serde(default)]
    pub spare: bool,
}

/// Something that comes along and goes home again. Its words: `gear-<id>`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Gear {
    /// Its name.
    pub id: String,
}

/// A dilution, worked out from the label. Labels say it in one of three ways, some in several that must then agree; at
/// least one of `parts-water`, `percent` and `dose` is there. Its words: `mix-<id>`, `.concentrate`, `.water`, `.order-1`,
/// `.order-2`, `.order-3` (what goes in first, second, third), `.gear`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Mix {
    /// Its name.
    pub id: String,
    /// What is diluted.
    #[serde(default)]
    pub chemical: Option<String>,
    /// The reading (a count) that gives the parts of water to one part of concentrate, from the label.
    #[serde(default)]
    pub parts_water: Option<ReadingId>,
    /// The reading (a share) that gives the concentrate's percentage of the ready mix, from the label.
    #[serde(default)]
    pub percent: Option<ReadingId>,
    /// The reading (a dose) that gives how much concentrate goes to one litre of water, from the label.
    #[serde(default)]
    pub dose: Option<ReadingId>,
    /// The reading (a volume) that gives how much is wanted in all.
    pub total: ReadingId,
    /// The readings (a count and a volume) of labels that add 'so many cups to a bucket': a witness, never the amount.
    #[serde(default)]
    pub cups: Option<ReadingId>,
    /// The bucket of those cups.
    #[serde(default)]
    pub bucket: Option<ReadingId>,
    /// The reading (a volume) of what fills the loop with its hoses: less than that is told.
    #[serde(default, rename = "loop")]
    pub fills: Option<ReadingId>,
    /// The reading (a volume) of what the vessel holds: more than that is told.
    #[serde(default)]
    pub vessel: Option<ReadingId>,
}

/// A controller setting that is changed for the work and put back. Its words: `excursion-<id>` with `.why`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Excursion {
    /// Its name.
    pub id: ExcursionId,
    /// The photograph of the settings as they were: taken, or answered for, before the change is noted.
    #[serde(default)]
    pub shot: Option<Slot>,
}

/// As found, the work, or as left.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Phase {
    /// Its name. Words: `phase-<id>`; for the owner's summary `.owner` (what was done) and `.matters` (why it matters),
    /// left out there when the phase has none.
    pub id: PhaseId,
    /// Phases of which every step must be done, left out or not applicable first.
    #[serde(default)]
    pub after: Vec<PhaseId>,
    /// The steps in the order in which they are offered.
    #[serde(rename = "step")]
    pub steps: Vec<Step>,
}

/// One thing to do. Its words: `step-<id>` (imperative, the title) with `.why` and, where the title is not enough,
/// `.how` (one to four short sentences).
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Step {
    /// Its name, unique in the pack.
    pub id: StepId,
    /// Applies only when each of these conditions has one of these answers: `coil=coated`, `first-service=yes`.
    /// A condition that stands twice may have either answer.
    #[serde(default)]
    pub when: Vec<When>,
    /// Steps (of any phase) that must be done, left out or not applicable first.
    #[serde(default)]
    pub after: Vec<StepId>,
    /// Facts needed before it may start.
    #[serde(default)]
    pub needs: Vec<Holds>,
    /// Facts that hold once it has started (only with a dwell).
    #[serde(default)]
    pub starts: Vec<Holds>,
    /// Facts that hold once it is done.
    #[serde(default)]
    pub sets: Vec<Holds>,
    /// Facts that are not known any more once it is done.
    #[serde(default)]
    pub clears: Vec<Fact>,
    /// Momentary acts that the core judges: `spray`, `energise`, `insulation-test`, `hand-over`.
    #[serde(default)]
    pub acts: Vec<Act>,
    /// Hazards to show here, of the core's list.
    #[serde(default)]
    pub cautions: Vec<Hazard>,
    /// A hazard step: shown one by one, not on a card with others.
    #[serde(default)]
    pub alone: bool,
    /// Conditions asked here.
    #[serde(default)]
    pub asks: Vec<ConditionId>,
    /// Readings taken here.
    #[serde(default)]
    pub readings: Vec<ReadingId>,
    /// Photographs taken here.
    #[serde(default)]
    pub shots: Vec<Slot>,
    /// The dilution prepared here.
    #[serde(default)]
    pub mix: Option<String>,
    /// The waiting time of this step.
    #[serde(default)]
    pub dwell: Option<DwellTime>,
    /// The setting changed here.
    #[serde(default)]
    pub opens: Option<ExcursionId>,
    /// The setting put back here.
    #[serde(default)]
    pub homes: Option<ExcursionId>,
    /// May be left out with a reason.
    #[serde(default)]
    pub may_skip: bool,
    /// Minutes of handwork beside the waiting time, for planning a day.
    #[serde(default)]
    pub minutes: u16,
    /// What is built in here.
    #[serde(default)]
    pub parts: Vec<String>,
    /// What must be at hand here.
    #[serde(default)]
    pub gear: Vec<String>,
}

/// A waiting time. Its words: the step's `.then` says what to do when it is over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct DwellTime {
    /// Not done before, seconds.
    pub least_s: u32,
    /// Done at the latest, seconds.
    pub most_s: u32,
}

/// A condition with one of its answers, written `coil=coated`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(into = "String", try_from = "String")]
pub struct When {
    /// Of what.
    pub condition: ConditionId,
    /// The answer.
    pub option: String,
}

/// Something done in a moment that the core judges by the facts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Act {
    /// Water or cleaner is sprayed at the unit.
    Spray,
    /// Power comes back.
    Energise,
    /// Insulation is tested with high voltage.
    InsulationTest,
    /// The unit is handed over running.
    HandOver,
    /// The loop's water circuit is opened (hose, service port).
    OpenWater,
    /// A fitting is opened behind which water stands: anode, drain, strainer, expansion vessel.
    OpenFitting,
    /// Gauges are connected, or the refrigerant circuit is opened in another way.
    OpenCircuit,
}

/// The hazards that the core has cautions for. Words: `caution-<name>` with `.text`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hazard {
    /// Electric shock.
    Shock,
    /// Stored energy in capacitors.
    StoredEnergy,
    /// Acids.
    Acid,
    /// Alkalis.
    Alkali,
    /// Pressure spray.
    Spray,
    /// Hot water and surfaces.
    Hot,
    /// Rotating fans.
    Fan,
    /// Flammable refrigerant.
    Flammable,
    /// Working at height.
    Height,
    /// Scalding and legionella.
    Scald,
    /// Drinking-water backflow.
    Backflow,
    /// Sharp fins and edges.
    Sharp,
    /// Refrigerant circuit: only the certified open it.
    Refrigerant,
    /// Spent chemicals: local rules.
    Disposal,
    /// Chlorine gas: acid and pool chemicals.
    Chlorine,
    /// A circuit above 100 bar.
    HighPressure,
    /// Gas that takes the place of the air in a small room: carbon dioxide, nitrogen.
    Suffocation,
}

const fn yes() -> bool {
    true
}

const fn one() -> u32 {
    1
}

impl TryFrom<String> for When {
    type Error = String;
    fn try_from(text: String) -> Result<Self, String> {
        let (condition, option) =
            text.split_once('=').ok_or_else(|| format!("'{text}' is not of the form condition=option"))?;
        Ok(When { condition: condition.trim().into(), option: option.trim().into() })
    }
}

impl From<When> for String {
    fn from(when: When) -> String {
        format!("{}={}", when.condition, when.option)
    }
}

impl Reading {
    /// Whether it is read at the refrigerant circuit, so that it says something only where the refrigerant is known.
    #[must_use]
    pub fn of_circuit(&self) -> bool {
        self.role.as_deref().is_some_and(|role| role.starts_with("circuit-"))
    }
}

impl Pack {
    /// Every step with its phase, in order.
    pub fn steps(&self) -> impl Iterator<Item = (&Phase, &Step)> {
        self.phases.iter().flat_map(|phase| phase.steps.iter().map(move |step| (phase, step)))
    }

    /// The step of that name.
    #[must_use]
    pub fn step(&self, id: &str) -> Option<(&Phase, &Step)> {
        self.steps().find(|(_, step)| step.id.as_str() == id)
    }

    /// The reading of that name.
    #[must_use]
    pub fn reading(&self, id: &str) -> Option<&Reading> {
        self.readings.iter().find(|reading| reading.id.as_str() == id)
    }

    /// The condition of that name.
    #[must_use]
    pub fn condition(&self, id: &str) -> Option<&Condition> {
        self.conditions.iter().find(|condition| condition.id.as_str() == id)
    }

    /// The shot of that slot.
    #[must_use]
    pub fn shot(&self, id: &str) -> Option<&Shot> {
        self.shots.iter().find(|shot| shot.id.as_str() == id)
    }

    /// The mix of that name.
    #[must_use]
    pub fn mix(&self, id: &str) -> Option<&Mix> {
        self.mixes.iter().find(|mix| mix.id == id)
    }
}
