//! The water heat exchanger.

use crate::science::ScienceError;
use crate::science::exchanger::{self, Ends};
use crate::science::quantity::celsius;
use uom::si::area::square_meter;
use uom::si::f64::{Area, Power, ThermalConductance};
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin;
use uom::si::thermal_conductance::watt_per_kelvin;

fn ends(hot_in_c: f64, hot_out_c: f64, cold_in_c: f64, cold_out_c: f64) -> Ends {
    Ends {
        hot_in: celsius(hot_in_c),
        hot_out: celsius(hot_out_c),
        cold_in: celsius(cold_in_c),
        cold_out: celsius(cold_out_c),
    }
}

/// [`Ends::lmtd`].
#[uniffi::export]
pub fn lmtd_k(hot_in_c: f64, hot_out_c: f64, cold_in_c: f64, cold_out_c: f64) -> Result<f64, ScienceError> {
    Ok(ends(hot_in_c, hot_out_c, cold_in_c, cold_out_c).lmtd()?.get::<kelvin>())
}

/// [`Ends::ua`].
#[uniffi::export]
pub fn ua_w_k(
    heat_w: f64,
    hot_in_c: f64,
    hot_out_c: f64,
    cold_in_c: f64,
    cold_out_c: f64,
) -> Result<f64, ScienceError> {
    let ua = ends(hot_in_c, hot_out_c, cold_in_c, cold_out_c).ua(Power::new::<watt>(heat_w))?;
    Ok(ua.get::<watt_per_kelvin>())
}

/// [`exchanger::effectiveness`].
#[uniffi::export]
pub fn effectiveness(ntu: f64, capacity_ratio: f64) -> Result<f64, ScienceError> {
    exchanger::effectiveness(ntu, capacity_ratio)
}

/// [`exchanger::fouling_resistance`].
#[uniffi::export]
pub fn fouling_resistance_m2_k_w(area_m2: f64, ua_now_w_k: f64, ua_clean_w_k: f64) -> Result<f64, ScienceError> {
    let area = Area::new::<square_meter>(area_m2);
    let [now, clean] = [ua_now_w_k, ua_clean_w_k].map(ThermalConductance::new::<watt_per_kelvin>);
    exchanger::fouling_resistance(area, now, clean)
}
