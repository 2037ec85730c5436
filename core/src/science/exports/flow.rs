//! Flow, heat and time by other ways than meter and thermometers in a loop; airflow and frost.

use super::reading::{DoubtedValue, ReadingValue};
use crate::science::airflow::CoilBalance;
use crate::science::flow::{Bucket, Counted, MeterError};
use crate::science::frost::{Coldest, frost};
use crate::science::heating_curve::{self, HeatingCurve};
use crate::science::instrument::Instrument;
use crate::science::uncertainty::{Cause, Doubted};
use crate::science::{ScienceError, heat};
use uom::si::f64::Pressure;
use uom::si::pressure::pascal;

/// One filling of a bucket.
#[derive(Debug, Clone, uniffi::Record)]
pub struct BucketFilling {
    /// Volume filled.
    pub volume_l: f64,
    /// It lies within ± this.
    pub volume_limit_l: f64,
    /// Time taken.
    pub time_s: f64,
    /// Starting and stopping each lie within ± this.
    pub reaction_limit_s: f64,
}

impl From<BucketFilling> for Bucket {
    fn from(filling: BucketFilling) -> Self {
        Self {
            volume_l: filling.volume_l,
            volume_limit_l: filling.volume_limit_l,
            time_s: filling.time_s,
            reaction_limit_s: filling.reaction_limit_s,
        }
    }
}

/// [`Bucket::flow`] in l/min.
#[uniffi::export]
pub fn bucket_flow(filling: BucketFilling) -> Result<DoubtedValue, ScienceError> {
    Ok(Bucket::from(filling).flow("bucket", "filling")?.l_min().into())
}

/// [`heat::once_through_w`].
#[uniffi::export]
pub fn once_through_heat(
    filling: BucketFilling,
    inlet_c: ReadingValue,
    outlet_c: ReadingValue,
) -> Result<DoubtedValue, ScienceError> {
    let flow = Bucket::from(filling).flow("bucket", "filling")?;
    let heat = heat::once_through_w(&flow, &inlet_c.doubted("inlet_c")?, &outlet_c.doubted("outlet_c")?)?;
    Ok((&heat).into())
}

/// [`MeterError::stated`] of a flow in l/min.
#[uniffi::export]
pub fn meter_flow(
    reading_l_min: f64,
    percent_of_reading: f64,
    digits: f64,
    step_l_min: f64,
) -> Result<DoubtedValue, ScienceError> {
    let stated = MeterError { percent_of_reading, digits, step: step_l_min }.stated(reading_l_min)?;
    Ok((&Instrument::named("meter").reads("reading_l_min", stated)?).into())
}

/// A counter read twice.
#[derive(Debug, Clone, uniffi::Record)]
pub struct CountedPeriod {
    /// At the start.
    pub start: f64,
    /// At the end.
    pub end: f64,
    /// Time between.
    pub time_s: f64,
    /// It lies within ± this.
    pub time_limit_s: f64,
    /// Percent of what is counted.
    pub percent_of_count: f64,
    /// Smallest step that can be read.
    pub step: f64,
}

impl From<CountedPeriod> for Counted {
    fn from(period: CountedPeriod) -> Self {
        Self {
            start: period.start,
            end: period.end,
            time_s: period.time_s,
            time_limit_s: period.time_limit_s,
            percent_of_count: period.percent_of_count,
            step: period.step,
        }
    }
}

/// [`Counted::litres`] in l/min.
#[uniffi::export]
pub fn counted_flow(litres: CountedPeriod) -> Result<DoubtedValue, ScienceError> {
    Ok(Counted::from(litres).litres(&Instrument::named("counter"), "period")?.l_min().into())
}

/// [`Counted::kilowatt_hours`] in W.
#[uniffi::export]
pub fn counted_power(kilowatt_hours: CountedPeriod) -> Result<DoubtedValue, ScienceError> {
    Ok((&Counted::from(kilowatt_hours).kilowatt_hours(&Instrument::named("counter"), "period")?).into())
}

/// [`HeatingCurve::heat_w`].
#[uniffi::export]
pub fn heating_curve_heat(
    volume_l: ReadingValue,
    start_c: ReadingValue,
    end_c: ReadingValue,
    stratification_limit_k: f64,
    time_s: ReadingValue,
    standing_loss_w: ReadingValue,
) -> Result<DoubtedValue, ScienceError> {
    let curve = HeatingCurve {
        volume_l: volume_l.doubted("volume_l")?,
        start_c: start_c.doubted("start_c")?,
        end_c: end_c.doubted("end_c")?,
        stratification_limit_k,
        time_s: time_s.doubted("time_s")?,
        standing_loss_w: standing_loss_w.doubted("standing_loss_w")?,
    };
    Ok((&curve.heat_w("curve")?).into())
}

/// [`heating_curve::heating_time_min`], with its doubt.
#[uniffi::export]
pub fn heating_time(
    volume_l: ReadingValue,
    from_c: ReadingValue,
    to_c: ReadingValue,
    heat_w: ReadingValue,
    standing_loss_w: ReadingValue,
) -> Result<DoubtedValue, ScienceError> {
    let minutes = heating_curve::heating_time_min(
        &volume_l.doubted("volume_l")?,
        &from_c.doubted("from_c")?,
        &to_c.doubted("to_c")?,
        &heat_w.doubted("heat_w")?,
        &standing_loss_w.doubted("standing_loss_w")?,
    )?;
    Ok((&minutes).into())
}

/// [`heating_curve::heating_time_min`] of numbers that are not in doubt.
#[uniffi::export]
pub fn heating_time_min(
    volume_l: f64,
    from_c: f64,
    to_c: f64,
    heat_w: f64,
    standing_loss_w: f64,
) -> Result<f64, ScienceError> {
    let [volume_l, from_c, to_c, heat_w, standing_loss_w] = [
        Doubted::new("volume_l", volume_l)?,
        Doubted::new("from_c", from_c)?,
        Doubted::new("to_c", to_c)?,
        Doubted::new("heat_w", heat_w)?,
        Doubted::new("standing_loss_w", standing_loss_w)?,
    ];
    Ok(heating_curve::heating_time_min(&volume_l, &from_c, &to_c, &heat_w, &standing_loss_w)?.value())
}

/// What the coil's balance is made of.
#[derive(Debug, Clone, uniffi::Record)]
pub struct CoilBalanceReadings {
    /// Heat given to the water, W.
    pub heat_w: ReadingValue,
    /// Electric power, W.
    pub power_w: ReadingValue,
    /// Part of it that ends in the refrigerant, 0…1.
    pub share_to_refrigerant: ReadingValue,
    /// Air arriving, °C.
    pub air_on_c: ReadingValue,
    /// Its relative humidity, 0…1.
    pub air_on_rh: ReadingValue,
    /// Air leaving, °C.
    pub air_off_c: ReadingValue,
    /// Its relative humidity, 0…1.
    pub air_off_rh: ReadingValue,
    /// Of the air.
    pub pressure_pa: f64,
}

/// [`CoilBalance::airflow_m3_s`].
#[uniffi::export]
pub fn airflow_by_balance(readings: CoilBalanceReadings) -> Result<DoubtedValue, ScienceError> {
    let balance = CoilBalance {
        heat_w: readings.heat_w.doubted("heat_w")?,
        power_w: readings.power_w.doubted("power_w")?,
        share_to_refrigerant: readings.share_to_refrigerant.doubted("share_to_refrigerant")?,
        air_on_c: readings.air_on_c.doubted("air_on_c")?,
        air_on_rh: readings.air_on_rh.doubted("air_on_rh")?,
        air_off_c: readings.air_off_c.doubted("air_off_c")?,
        air_off_rh: readings.air_off_rh.doubted("air_off_rh")?,
        pressure: Pressure::new::<pascal>(readings.pressure_pa),
    };
    Ok((&balance.airflow_m3_s()?).into())
}

/// Whether frost grows.
#[derive(Debug, Clone, uniffi::Record)]
pub struct FrostValues {
    /// "none", "possible" or "likely".
    pub risk: String,
    /// How far from it; below zero it is cold enough.
    pub margin_k: f64,
    /// Its standard uncertainty.
    pub margin_u: f64,
}

/// [`frost`]; every `_u` a standard uncertainty. `coldest` says what `coldest_c` is: "surface" or "evaporating".
#[uniffi::export]
pub fn frost_risk(
    coldest: String,
    coldest_c: f64,
    coldest_u: f64,
    dew_point_c: f64,
    dew_point_u: f64,
) -> Result<FrostValues, ScienceError> {
    let doubted = |name: &'static str, value, u| Doubted::new(name, value)?.because(name, Cause::new(name), u);
    let temperature = doubted("coldest_c", coldest_c, coldest_u)?;
    let known = match coldest.as_str() {
        "surface" => Coldest::Surface(temperature),
        "evaporating" => Coldest::Evaporating(temperature),
        other => return Err(ScienceError::word("coldest", other, "surface or evaporating")),
    };
    let frost = frost(&known, &doubted("dew_point_c", dew_point_c, dew_point_u)?)?;
    Ok(FrostValues {
        risk: frost.risk.as_str().to_owned(),
        margin_k: frost.margin_k.value(),
        margin_u: frost.margin_k.standard_u(),
    })
}
