//! What the readings come to, each with its doubt: heat to the water, coefficient of performance, temperature rise and drop
//! as found and as left; insulation, capacitor and scaling index once; superheat, subcooling and the refrigerant cycle.

mod circuit;
mod descaling;
mod once;
mod pair;
mod read;
mod told;
mod yearly;

pub use circuit::Sketched;
pub use descaling::descaling_told;
pub use told::{Told, told};
pub use yearly::{Yearly, yearly_told};

use crate::procedure::pack::Pack;
use crate::round::{AssignedUnit, PastReading};
use crate::science::descaling::Advice;
use crate::science::refrigerant::Refrigerant;
use crate::science::uncertainty::Doubted;
use crate::science::verdict::Verdict;
use crate::visit::state::Run;

/// The results of a unit's run, in the order in which they are read. One whose readings are missing or out of range is
/// not there.
#[derive(Clone, Debug, PartialEq)]
pub struct Results {
    /// What could be worked out.
    pub outcomes: Vec<Outcome>,
    /// When to descale next.
    pub descaling: Option<Advice>,
    /// A year's electricity for hot water, before and after.
    pub yearly: Option<Yearly>,
    /// The refrigerant cycle, where pressures were read and the refrigerant is known.
    pub cycle: Option<Sketched>,
}

impl Results {
    /// The outcome of that kind.
    #[must_use]
    pub fn of(&self, kind: Kind) -> Option<&Outcome> {
        self.outcomes.iter().find(|outcome| outcome.kind == kind)
    }
}

/// Of what a result is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Heat given to the water, W.
    Heat,
    /// Coefficient of performance.
    Cop,
    /// Water out less water in, K.
    WaterRise,
    /// Air on less air off, K.
    AirDrop,
    /// Superheat of the suction gas, K.
    Superheat,
    /// Subcooling of the liquid, K.
    Subcooling,
    /// R744 above critical: absolute pressure in the gas cooler, kPa.
    GasCoolerPressure,
    /// R744 above critical: gas out of the gas cooler less water in, K.
    GasCoolerApproach,
    /// Insulation resistance as measured, MΩ.
    Insulation,
    /// The same as it would measure at 40 °C, MΩ.
    InsulationAt40,
    /// The running capacitor, µF.
    Capacitor,
    /// Langelier index of the supply water where it is heated.
    Scaling,
}

impl Kind {
    /// As it stands in the keys of words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Kind::Heat => "heat",
            Kind::Cop => "cop",
            Kind::WaterRise => "water-rise",
            Kind::AirDrop => "air-drop",
            Kind::Superheat => "superheat",
            Kind::Subcooling => "subcooling",
            Kind::GasCoolerPressure => "gas-cooler-pressure",
            Kind::GasCoolerApproach => "gas-cooler-approach",
            Kind::Insulation => "insulation",
            Kind::InsulationAt40 => "insulation-40",
            Kind::Capacitor => "capacitor",
            Kind::Scaling => "scaling",
        }
    }
}

/// When it was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Before the work.
    Found,
    /// After it.
    Left,
    /// Once in the visit.
    Once,
}

/// One result.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// Of what.
    pub kind: Kind,
    /// Its values, as found before as left.
    pub measured: Vec<Measured>,
    /// What the work changed, where both are there; heat and COP only where they can be brought to like conditions.
    pub change: Option<Changed>,
    /// What it says about its limit, where it has one.
    pub verdict: Option<Verdict>,
    /// What the verdict goes by, in the unit of the result: the limit, or the label.
    pub beside: Option<f64>,
    /// The last visit's value.
    pub last: Option<Last>,
}

impl Outcome {
    /// The value of a stage.
    #[must_use]
    pub fn at(&self, stage: Stage) -> Option<Measured> {
        self.measured.iter().copied().find(|measured| measured.stage == stage)
    }
}

/// A value with its doubt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// When.
    pub stage: Stage,
    /// The value.
    pub value: f64,
    /// Expanded uncertainty, k = 2, in the unit of the value.
    pub expanded_u: f64,
}

/// The coverage factor of every expanded uncertainty here: about 95 % (JCGM 100:2008, 6.3.3).
pub const COVERAGE: f64 = 2.0;

impl Measured {
    fn of(stage: Stage, doubted: &Doubted) -> Measured {
        Measured { stage, value: doubted.value(), expanded_u: COVERAGE * doubted.standard_u() }
    }
}

/// A value of the last visit, worked out from the readings that the assignment brought. Their doubt is not known here.
#[derive(Clone, Debug, PartialEq)]
pub struct Last {
    /// As found or as left then.
    pub stage: Stage,
    /// The value.
    pub value: f64,
    /// ISO 8601 day.
    pub date: String,
}

/// What the work changed: heat and COP at the conditions as left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Changed {
    /// As left less as found.
    pub value: f64,
    /// Expanded uncertainty of the difference, k = 2. Errors that both share cancel in it as far as they are common.
    pub expanded_u: f64,
    /// Whether it can be told.
    pub change: Change,
}

/// Whether a change can be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// More, by more than the doubt.
    More,
    /// Less, by more than the doubt.
    Less,
    /// No difference that can be told.
    None,
}

impl Change {
    /// What a difference comes to, beside its doubt.
    #[must_use]
    pub fn of(change: f64, doubt: f64) -> Change {
        match (change.abs() > doubt, change > 0.0) {
            (false, _) => Change::None,
            (true, true) => Change::More,
            (true, false) => Change::Less,
        }
    }

    /// The key of the owner's words.
    #[must_use]
    pub const fn owner_key(self) -> &'static str {
        match self {
            Change::More => "summary-higher",
            Change::Less => "summary-lower",
            Change::None => "summary-no-difference",
        }
    }
}

/// What is known of a unit beside what the visit read.
#[derive(Clone, Copy, Debug, Default)]
pub struct Known<'a> {
    /// Its readings of past visits.
    pub history: &'a [PastReading],
    /// What flows in its circuit.
    pub refrigerant: Option<Refrigerant>,
}

impl<'a> Known<'a> {
    /// From the assignment. A refrigerant of a name that is not known here counts as unknown.
    #[must_use]
    pub fn of(unit: &'a AssignedUnit) -> Self {
        let refrigerant = unit.refrigerant.as_deref().and_then(|name| Refrigerant::named(name).ok());
        Known { history: &unit.history, refrigerant }
    }
}

/// Works out what the readings of a run come to.
#[must_use]
pub fn results(pack: &Pack, run: &Run, known: &Known<'_>) -> Results {
    let readings = read::Readings { pack, run };
    let mut outcomes = pair::outcomes(&readings, known);
    outcomes.extend(once::outcomes(&readings));
    Results {
        outcomes,
        descaling: descaling::descaling(&readings),
        yearly: yearly::yearly(&readings),
        cycle: known.refrigerant.and_then(|refrigerant| circuit::sketched(&readings, refrigerant)),
    }
}
