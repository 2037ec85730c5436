//! Water, atmosphere, place, calendar and trends over the years.

use crate::science::place::{self, Place};
use crate::science::quantity::{celsius, to_celsius};
use crate::science::{ScienceError, atmosphere, calendar, trend, water};
use uom::si::f64::Length;
use uom::si::length::meter;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::pascal;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;

/// Liquid water at one temperature.
#[derive(Debug, Clone, uniffi::Record)]
pub struct WaterValues {
    /// Density.
    pub density_kg_m3: f64,
    /// Specific heat at constant pressure.
    pub specific_heat_j_kg_k: f64,
}

/// [`atmosphere::pressure`].
#[uniffi::export]
pub fn atmospheric_pressure_pa(altitude_m: f64) -> Result<f64, ScienceError> {
    Ok(atmosphere::pressure(Length::new::<meter>(altitude_m))?.get::<pascal>())
}

/// [`water::boiling`].
#[uniffi::export]
pub fn water_boiling_c(altitude_m: f64) -> Result<f64, ScienceError> {
    Ok(to_celsius(water::boiling(Length::new::<meter>(altitude_m))?))
}

/// [`water::liquid`].
#[uniffi::export]
pub fn water(temperature_c: f64) -> Result<WaterValues, ScienceError> {
    let water = water::liquid("temperature_c", celsius(temperature_c))?;
    Ok(WaterValues {
        density_kg_m3: water.density.get::<kilogram_per_cubic_meter>(),
        specific_heat_j_kg_k: water.specific_heat.get::<joule_per_kilogram_kelvin>(),
    })
}

/// [`water::vapour_pressure`].
#[uniffi::export]
pub fn water_vapour_pressure_pa(temperature_c: f64) -> Result<f64, ScienceError> {
    Ok(water::vapour_pressure("temperature_c", celsius(temperature_c))?.get::<pascal>())
}

/// [`place::distance`].
#[uniffi::export]
pub fn distance_m(lat1: f64, lon1: f64, lat2: f64, lon2: f64) -> Result<f64, ScienceError> {
    let place = |latitude, longitude| Place { latitude, longitude };
    Ok(place::distance(place(lat1, lon1), place(lat2, lon2))?.get::<meter>())
}

/// [`calendar::add_months`], on dates such as `2025-01-31`.
#[uniffi::export]
pub fn add_months(date: String, months: i32) -> Result<String, ScienceError> {
    Ok(calendar::add_months(calendar::parse_date(&date)?, months)?.to_string())
}

/// [`calendar::add_days`], on dates such as `2025-01-31`.
#[uniffi::export]
pub fn add_days(date: String, days: i32) -> Result<String, ScienceError> {
    Ok(calendar::add_days(calendar::parse_date(&date)?, days)?.to_string())
}

/// [`calendar::days_between`], as a whole number.
#[uniffi::export]
pub fn days_between(date: String, until_date: String) -> Result<f64, ScienceError> {
    Ok(calendar::days_between(calendar::parse_date(&date)?, calendar::parse_date(&until_date)?) as f64)
}

/// A point of a trend.
#[derive(Debug, Clone, uniffi::Record)]
pub struct TrendPoint {
    /// To the right: mostly years.
    pub x: f64,
    /// The reading.
    pub y: f64,
}

/// [`trend::TheilSen`].
#[derive(Debug, Clone, uniffi::Record)]
pub struct TrendValues {
    /// The median slope.
    pub slope: f64,
    /// Where the line crosses x = 0.
    pub intercept: f64,
    /// The least slope of the 95 % range.
    pub least: f64,
    /// The greatest.
    pub most: f64,
}

/// [`trend::theil_sen`].
#[uniffi::export]
pub fn theil_sen(points: Vec<TrendPoint>) -> Result<TrendValues, ScienceError> {
    let points: Vec<(f64, f64)> = points.iter().map(|point| (point.x, point.y)).collect();
    let trend::TheilSen { slope, intercept, least, most } = trend::theil_sen(&points)?;
    Ok(TrendValues { slope, intercept, least, most })
}
