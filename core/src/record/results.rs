//! What the readings come to: heat given to the water and coefficient of performance, as found and as left, with doubt.

use crate::procedure::pack::Pack;
use crate::science::heat::{HeatTest, Reading};
use crate::science::uncertainty::{Doubted, from_limits};
use crate::visit::state::Run;
use crate::words::{Words, number};

/// The results of a unit's run. Empty where a reading is missing or out of range.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Results {
    /// Heat given to the water, W: as found, as left.
    pub heat_w: Vec<Measured>,
    /// Coefficient of performance: as found, as left.
    pub cop: Vec<Measured>,
    /// What the work changed, where both are there.
    pub heat_change: Option<Change>,
}

/// A result with its doubt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// As left, or as found.
    pub as_left: bool,
    /// The value.
    pub value: f64,
    /// Expanded uncertainty, k = 2.
    pub expanded_u: f64,
}

impl Measured {
    /// What changed since another result.
    #[must_use]
    pub fn change_from(&self, earlier: &Measured) -> Change {
        Change::of(self.value - earlier.value, earlier.expanded_u + self.expanded_u)
    }

    /// The value with its doubt and unit, in words.
    #[must_use]
    pub fn text(&self, words: &Words, unit: &str, decimals: u8) -> String {
        let shown = |value| number::write(value, decimals, words.language());
        let (value, doubt) = (shown(self.value), shown(self.expanded_u));
        words.fill("result-value", &[("value", &value), ("doubt", &doubt), ("unit", unit)]).trim().to_owned()
    }
}

/// Whether a change can be told. Ambient and water may differ between the two: this is no comparison at like conditions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// More than the doubt of both.
    More,
    /// Less by more than the doubt of both.
    Less,
    /// No difference that can be told.
    None,
}

impl Change {
    /// What a change comes to, beside the doubt of both values counted in full: how much of it one instrument shares
    /// between both is not known.
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

    /// The key of the technician's words about heat.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Change::More => "result-more",
            Change::Less => "result-less",
            Change::None => "result-none",
        }
    }
}

/// Works out what the readings of a run come to.
#[must_use]
pub fn results(pack: &Pack, run: &Run) -> Results {
    let mut results = Results::default();
    for as_left in [false, true] {
        let Some((heat, cop)) = test(pack, run, as_left) else { continue };
        let measured =
            |doubted: &Doubted| Measured { as_left, value: doubted.value(), expanded_u: 2.0 * doubted.standard_u() };
        results.heat_w.push(measured(&heat));
        results.cop.push(measured(&cop));
    }
    if let [found, left] = results.heat_w.as_slice() {
        results.heat_change = Some(left.change_from(found));
    }
    results
}

fn test(pack: &Pack, run: &Run, as_left: bool) -> Option<(Doubted, Doubted)> {
    let reading = |role: &str| {
        let reading = pack
            .readings
            .iter()
            .find(|reading| reading.role.as_deref() == Some(role) && reading.as_found.is_some() == as_left)?;
        let taken = run.readings.get(&reading.id)?;
        let limit: f64 = if taken.error_limit.is_empty() { 0.0 } else { taken.error_limit.parse().ok()? };
        Some(Reading { value: taken.value.parse().ok()?, standard_u: from_limits(limit).ok()? })
    };
    let result = HeatTest {
        flow_l_min: reading("flow")?,
        inlet_c: reading("water-in")?,
        outlet_c: reading("water-out")?,
        shared_thermometer_u: 0.0,
        power_w: reading("power")?,
    }
    .result()
    .ok()?;
    Some((result.heat_w, result.cop))
}
