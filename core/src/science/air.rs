//! Moist air: from a hygrometer or a wet bulb to everything else.
//!
//! ```text
//! W = 0.621945 pw / (p − pw)                                   pw = humidity · vapour pressure at the dry bulb
//! W = ((2501 − 2.326 t*) Ws* − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*)         wet bulb t* at or above 0 °C
//! W = ((2830 − 0.24 t*) Ws* − 1.006 (t − t*)) / (2830 + 1.86 t − 2.1 t*)            below, an iced bulb
//! h = 1.006 t + W (2501 + 1.86 t) kJ/kg       v = 287.042 T (1 + 1.607858 W) / p
//! ```
//! Range: −50…60 °C, humidity 0.001…1, 50 000…120 000 Pa. Humidity is over ice below 0.01 °C.
//! Accuracy: an ideal gas; real air holds 0.3 to 0.7 % more water. Just around a wet bulb of 0 °C a wet and an iced bulb differ
//! by up to 1 K, most in dry air; one of the two is given.
//! Source: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 20, 24, 26, 30, 33, 35; constants as in the PyPI package PsychroLib 2.5.0.

use super::error::{ScienceError, within};
use super::quantity::{celsius, to_celsius, within_c, within_temperatures};
use super::water::{saturation_temperature, vapour_pressure_pa};
use uom::si::available_energy::joule_per_kilogram;
use uom::si::f64::{AvailableEnergy, Pressure, Ratio, SpecificVolume, ThermodynamicTemperature};
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::specific_volume::cubic_meter_per_kilogram;
use uom::si::thermodynamic_temperature::kelvin;

const HUMIDITY_LEAST: f64 = 0.001;
/// Molar mass of water over that of dry air.
const WATER_TO_AIR: f64 = 0.621945;
const DRY_AIR_J_KG_K: f64 = 287.042;

/// Moist air in one state.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// Temperature of a dry thermometer.
    pub dry_bulb: ThermodynamicTemperature,
    /// Relative humidity, 0.001…1.
    pub humidity: Ratio,
    /// Water in each kilogram of dry air.
    pub humidity_ratio: Ratio,
    /// Where water or frost begins to settle.
    pub dew_point: ThermodynamicTemperature,
    /// Temperature of a wetted thermometer in moving air.
    pub wet_bulb: ThermodynamicTemperature,
    /// For each kilogram of dry air, from dry air at 0 °C.
    pub enthalpy: AvailableEnergy,
    /// For each kilogram of dry air.
    pub volume: SpecificVolume,
}

/// How a hand instrument gives the state of air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hygrometer<'a> {
    /// What the temperature is called if it is refused.
    pub dry_bulb_name: &'a str,
    /// What the humidity is called if it is refused.
    pub humidity_name: &'a str,
}

impl Hygrometer<'_> {
    /// Air of a temperature (−50…60 °C) and relative humidity (0.001…1) at an absolute pressure (50 000…120 000 Pa).
    pub fn air(
        &self,
        dry_bulb: ThermodynamicTemperature,
        humidity: f64,
        pressure: Pressure,
    ) -> Result<Air, ScienceError> {
        within_c(self.dry_bulb_name, dry_bulb, -50.0, 60.0)?;
        within(self.humidity_name, humidity, HUMIDITY_LEAST, 1.0)?;
        let p = checked_pascal(pressure)?;
        let t_c = to_celsius(dry_bulb);
        let vapour_pa = humidity * vapour_pressure_pa(dry_bulb.get::<kelvin>());
        let w = WATER_TO_AIR * vapour_pa / (p - vapour_pa);
        // Saturated air's may round to a hair above the dry bulb.
        let dew_point = saturation_temperature("humidity_rh", Pressure::new::<pascal>(vapour_pa))?.min(dry_bulb);
        Ok(Air {
            dry_bulb,
            humidity: Ratio::new::<ratio>(humidity),
            humidity_ratio: Ratio::new::<ratio>(w),
            dew_point,
            wet_bulb: celsius(wet_bulb_c(t_c, to_celsius(dew_point), w, p)),
            enthalpy: enthalpy(dry_bulb, Ratio::new::<ratio>(w)),
            volume: SpecificVolume::new::<cubic_meter_per_kilogram>(
                DRY_AIR_J_KG_K * dry_bulb.get::<kelvin>() * (1.0 + 1.607858 * w) / p,
            ),
        })
    }
}

/// Air from its temperature and relative humidity; see [`Hygrometer::air`].
pub fn from_humidity(
    dry_bulb: ThermodynamicTemperature,
    humidity: f64,
    pressure: Pressure,
) -> Result<Air, ScienceError> {
    let names = Hygrometer { dry_bulb_name: "dry_bulb_c", humidity_name: "humidity_rh" };
    names.air(dry_bulb, humidity, pressure)
}

/// Air from a dry and a wet bulb. The wet bulb is not above the dry one, nor lower than air of humidity 0.001 cools it.
pub fn from_wet_bulb(
    dry_bulb: ThermodynamicTemperature,
    wet_bulb: ThermodynamicTemperature,
    pressure: Pressure,
) -> Result<Air, ScienceError> {
    let driest = from_humidity(dry_bulb, HUMIDITY_LEAST, pressure)?;
    within_temperatures("wet_bulb_c", wet_bulb, driest.wet_bulb, dry_bulb)?;
    let p = checked_pascal(pressure)?;
    let w = ratio_at_wet_bulb(to_celsius(dry_bulb), to_celsius(wet_bulb), p);
    let saturated_pa = vapour_pressure_pa(dry_bulb.get::<kelvin>());
    let humidity = p * w / (WATER_TO_AIR + w) / saturated_pa;
    // The bounds above hold it but for rounding, and for the step between a wet and an iced bulb.
    let air = from_humidity(dry_bulb, humidity.clamp(HUMIDITY_LEAST, 1.0), pressure)?;
    Ok(Air { wet_bulb, ..air })
}

/// Enthalpy for each kilogram of dry air.
pub(super) fn enthalpy(dry_bulb: ThermodynamicTemperature, humidity_ratio: Ratio) -> AvailableEnergy {
    let t_c = to_celsius(dry_bulb);
    AvailableEnergy::new::<joule_per_kilogram>(
        1006.0 * t_c + humidity_ratio.get::<ratio>() * (2_501_000.0 + 1860.0 * t_c),
    )
}

fn checked_pascal(pressure: Pressure) -> Result<f64, ScienceError> {
    let p = pressure.get::<pascal>();
    within("pressure_pa", p, 50_000.0, 120_000.0)?;
    Ok(p)
}

/// Humidity ratio of air in which a wet bulb shows `wet_c`.
fn ratio_at_wet_bulb(dry_c: f64, wet_c: f64, p: f64) -> f64 {
    let saturated_pa = vapour_pressure_pa(celsius(wet_c).get::<kelvin>());
    let saturated = WATER_TO_AIR * saturated_pa / (p - saturated_pa);
    let cooling = 1.006 * (dry_c - wet_c);
    if wet_c >= 0.0 {
        ((2501.0 - 2.326 * wet_c) * saturated - cooling) / (2501.0 + 1.86 * dry_c - 4.186 * wet_c)
    } else {
        ((2830.0 - 0.24 * wet_c) * saturated - cooling) / (2830.0 + 1.86 * dry_c - 2.1 * wet_c)
    }
}

/// Halves the span from dew point to dry bulb until the humidity ratio is met.
fn wet_bulb_c(dry_c: f64, dew_c: f64, w: f64, p: f64) -> f64 {
    let (mut low, mut high) = (dew_c.min(dry_c), dry_c);
    while high - low > 1e-9 {
        let middle = (low + high) / 2.0;
        if ratio_at_wet_bulb(dry_c, middle, p) > w {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn pa(p: f64) -> Pressure {
        Pressure::new::<pascal>(p)
    }

    #[test]
    fn a_wet_bulb_above_the_dry_one_is_refused_by_name() {
        let refused = from_wet_bulb(celsius(20.0), celsius(20.5), pa(101_325.0)).unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, most: 20.0, .. } if argument == "wet_bulb_c"));
    }

    #[test]
    fn a_wet_bulb_colder_than_dry_air_makes_it_is_refused() {
        assert!(from_wet_bulb(celsius(30.0), celsius(5.0), pa(101_325.0)).is_err());
    }

    proptest! {
        #[test]
        fn the_wet_bulb_leads_back_to_the_humidity(t in -50.0..60.0f64, rh in 0.01..1.0f64, p in 50_000.0..120_000.0f64) {
            let air = from_humidity(celsius(t), rh, pa(p)).unwrap();
            let back = from_wet_bulb(celsius(t), air.wet_bulb, pa(p)).unwrap();
            // At 0 °C the two bulbs' equations part; there is no way back there.
            if to_celsius(air.wet_bulb).abs() > 1e-6 {
                prop_assert!((back.humidity.get::<ratio>() - rh).abs() < 1e-6);
            }
        }

        #[test]
        fn the_wet_bulb_lies_between_dew_point_and_dry_bulb(t in -50.0..60.0f64, rh in 0.001..1.0f64) {
            let air = from_humidity(celsius(t), rh, pa(101_325.0)).unwrap();
            let hair = 1e-6;
            prop_assert!(air.dew_point.get::<kelvin>() <= air.wet_bulb.get::<kelvin>() + hair);
            prop_assert!(air.wet_bulb.get::<kelvin>() <= air.dry_bulb.get::<kelvin>() + hair);
        }
    }
}
