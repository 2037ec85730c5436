//! Electricity for hot water in a year with the coefficient of performance of before and of after the work, as if every day were
//! like the day of the visit. Only where the work changed that coefficient beyond its doubt.

use super::pair::cop_compared;
use super::read::Readings;
use super::told::place;
use super::{Measured, Stage};
use crate::science::change::Difference;
use crate::science::uncertainty::{Cause, Doubted, from_limits};
use crate::science::year::{hot_water_kwh, year};
use crate::words::{Words, number};

/// How far off an owner's estimate of the daily use may be, as a share of it: common practice, no source.
const USE_LIMIT_SHARE: f64 = 0.3;
/// Cold water over a year and how far off that may be, °C: common practice, no source.
const COLD_C: (f64, f64) = (12.0, 6.0);

/// A year's electricity, kWh.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Yearly {
    /// With the coefficient as found, at the conditions as left.
    pub found: Measured,
    /// With the coefficient as left.
    pub left: Measured,
    /// The one less the other; below zero the unit takes more than before.
    pub saved: Measured,
}

/// Where the water's use and temperature are known and the change can be told.
pub(super) fn yearly(readings: &Readings<'_>) -> Option<Yearly> {
    let cop = cop_compared(readings).filter(|cop| cop.verdict != Difference::NoDifference)?;
    let told = readings.of("water-use", Stage::Once)?;
    let estimate = from_limits(USE_LIMIT_SHARE * told.value()).ok()?;
    let litres = told.because("water_use", Cause::new("the owner's estimate"), estimate).ok()?;
    let (cold, limit) = COLD_C;
    let cold = Doubted::new("cold_c", cold).ok()?;
    let cold = cold.because("cold_c", Cause::new("cold water, not read"), from_limits(limit).ok()?).ok()?;
    let heat = hot_water_kwh(&litres, &cold, &readings.of("tap-hot", Stage::Once)?).ok()?;
    // No price is read: only the electricity is told.
    let year = year(&heat, &cop, &Doubted::new("price_a_kwh", 0.0).ok()?).ok()?;
    Some(Yearly {
        found: Measured::of(Stage::Found, &year.found_kwh),
        left: Measured::of(Stage::Left, &year.left_kwh),
        saved: Measured::of(Stage::Once, &year.saved_kwh),
    })
}

/// The year in one sentence for the technician and the office.
#[must_use]
pub fn yearly_told(year: &Yearly, words: &Words) -> String {
    let kwh = |value: f64, doubt: f64| {
        let place = place(doubt, 0);
        let shown = |value| number::write(place.round(value), place.decimals, words.language());
        let value = words.fill("result-value", &[("value", &shown(value)), ("doubt", &shown(doubt))]);
        format!("{value}\u{a0}kWh")
    };
    let of = |measured: &Measured| kwh(measured.value, measured.expanded_u);
    let key = if year.saved.value > 0.0 { "result-year.less" } else { "result-year.more" };
    let saved = kwh(year.saved.value.abs(), year.saved.expanded_u);
    words.fill(key, &[("found", &of(&year.found)), ("left", &of(&year.left)), ("saved", &saved)])
}
