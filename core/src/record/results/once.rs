//! Results that are measured once in a visit: insulation, the running capacitor, the water's tendency to leave scale.

use core::f64::consts::{LN_2, LN_10};

use uom::si::electrical_resistance::megaohm;
use uom::si::f64::ElectricalResistance;

use super::read::Readings;
use super::{COVERAGE, Kind, Measured, Outcome, Stage};
use crate::science::electrical::insulation_at_40c;
use crate::science::quantity::celsius;
use crate::science::scaling::TapWater;
use crate::science::uncertainty::{Cause, Doubted, from_limits};
use crate::science::verdict::Limits;

/// The least insulation of a circuit up to 500 V, MΩ: IEC 60364-6, from memory. The maker's figure comes first.
const INSULATION_LEAST_MOHM: f64 = 1.0;
/// How far off its label a running capacitor may be: common practice, no source.
const CAPACITOR_SHARE: f64 = 0.1;
/// How much of the hardness is calcium, the rest being magnesium, and how far that may be off: common practice, no source.
const CALCIUM_SHARE: (f64, f64) = (0.8, 0.2);
/// Dissolved solids, mg/l, for each µS/cm, and how far that may be off: common practice, no source.
const SOLIDS_PER_CONDUCTIVITY: (f64, f64) = (0.65, 0.1);
/// How far the short formula lies from a full model of the water, see `science::scaling`.
const FORMULA_LIMIT: f64 = 0.25;

pub(super) fn outcomes(readings: &Readings<'_>) -> Vec<Outcome> {
    [insulation(readings), insulation_40(readings), capacitor(readings), scaling(readings)]
        .into_iter()
        .flatten()
        .collect()
}

fn outcome(kind: Kind, value: &Doubted, beside: Option<f64>, limits: Option<Limits>) -> Outcome {
    let judge = |limits: Limits| limits.judge(value.value(), value.standard_u(), COVERAGE).ok();
    let measured = vec![Measured::of(Stage::Once, value)];
    Outcome { kind, measured, change: None, verdict: limits.and_then(judge), beside, last: None }
}

fn insulation(readings: &Readings<'_>) -> Option<Outcome> {
    let measured = readings.of("insulation", Stage::Once)?;
    let limits = Limits::new(Some(INSULATION_LEAST_MOHM), None).ok()?;
    Some(outcome(Kind::Insulation, &measured, Some(INSULATION_LEAST_MOHM), Some(limits)))
}

fn insulation_40(readings: &Readings<'_>) -> Option<Outcome> {
    let measured = readings.of("insulation", Stage::Once)?;
    let winding = readings.of("winding", Stage::Once)?;
    let resistance = ElectricalResistance::new::<megaohm>(measured.value());
    let at_40 = insulation_at_40c(resistance, celsius(winding.value())).ok()?.get::<megaohm>();
    // R40 = R · 2^((T − 40) / 10): its slope toward R is R40/R, toward T it is R40 · ln 2 / 10.
    let by_resistance = if measured.value() > 0.0 { at_40 / measured.value() } else { 0.0 };
    let value = Doubted::from_slopes(at_40, &[(by_resistance, &measured), (at_40 * LN_2 / 10.0, &winding)]);
    Some(outcome(Kind::InsulationAt40, &value, None, None))
}

fn capacitor(readings: &Readings<'_>) -> Option<Outcome> {
    let (measured, label) =
        (readings.of("capacitor", Stage::Once)?, readings.of("capacitor-label", Stage::Once)?.value());
    let limits = Limits::new(Some(label * (1.0 - CAPACITOR_SHARE)), Some(label * (1.0 + CAPACITOR_SHARE))).ok()?;
    Some(outcome(Kind::Capacitor, &measured, Some(label), Some(limits)))
}

fn scaling(readings: &Readings<'_>) -> Option<Outcome> {
    let limits = Limits::new(None, Some(0.0)).ok()?;
    Some(outcome(Kind::Scaling, &scaling_index(readings)?, Some(0.0), Some(limits)))
}

/// Langelier's index for the water where it leaves the unit hottest: as left, or as found where that was not measured.
pub(super) fn scaling_index(readings: &Readings<'_>) -> Option<Doubted> {
    let ph = readings.of("supply-ph", Stage::Once)?;
    let hot = readings.of("water-out", Stage::Left).or_else(|| readings.of("water-out", Stage::Found))?;
    let calcium = times(&readings.of("supply-hardness", Stage::Once)?, "calcium share", CALCIUM_SHARE)?;
    let alkalinity = readings.of("supply-alkalinity", Stage::Once)?;
    let solids = times(&readings.of("supply-conductivity", Stage::Once)?, "solids", SOLIDS_PER_CONDUCTIVITY)?;
    let water = TapWater {
        ph: ph.value(),
        temperature: celsius(hot.value()),
        calcium_mg_l_caco3: calcium.value(),
        alkalinity_mg_l_caco3: alkalinity.value(),
        tds_mg_l: solids.value(),
    };
    let index = water.langelier().ok()?;
    // From the formula at the head of `science::scaling`; lg x has the slope 1 / (x ln 10).
    let of_lg = |value: &Doubted| 1.0 / (LN_10 * value.value());
    let slopes = [
        (1.0, &ph),
        (13.12 / (LN_10 * (hot.value() + 273.0)), &hot),
        (of_lg(&calcium), &calcium),
        (of_lg(&alkalinity), &alkalinity),
        (-0.1 * of_lg(&solids), &solids),
    ];
    let formula = Cause::new("the short formula");
    Doubted::from_slopes(index, &slopes).because("formula", formula, from_limits(FORMULA_LIMIT).ok()?).ok()
}

/// A reading times a factor that is itself in doubt, by rectangular limits.
fn times(reading: &Doubted, name: &'static str, (factor, limit): (f64, f64)) -> Option<Doubted> {
    let factor = Doubted::new(name, factor).ok()?.because(name, Cause::new(name), from_limits(limit).ok()?).ok()?;
    let value = reading.value() * factor.value();
    Some(Doubted::from_slopes(value, &[(factor.value(), reading), (reading.value(), &factor)]))
}
