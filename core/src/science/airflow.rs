//! Airflow through the coil, from the heat that must have come out of the air.
//!
//! ```text
//! heat from air = heat to water − share · electric power        V' = v(on) · heat from air / (h(on) − h(off))
//! ```
//! `share` is the part of the electric power that ends in the refrigerant: what the compressor's shell, the fan and
//! the electronics give away is missing from it. 0.9 with limits ± 0.1 for a hermetic compressor (common practice, no
//! source); fan power in the reading lowers it.
//!
//! Range: that of moist air; heat from air 1…10⁶ W; enthalpy drop 200…10⁵ J/kg; share 0…1; airflow as it comes, at
//! the state of arrival. Only with settled running: while the coil frosts or defrosts the balance does not close.
//! Accuracy: a humidity read 0.03 wrong moves the enthalpy by some 1 kJ/kg; a drop of 5 kJ/kg is then known to a
//! fifth or worse, and says so.
//! Source: energy balance; ASHRAE Handbook Fundamentals 2017, ch. 1 (moist air); doubt JCGM 100:2008, 5.1.2.

use super::air::Hygrometer;
use super::error::{ScienceError, within};
use super::quantity::celsius;
use super::uncertainty::Doubted;
use uom::si::available_energy::joule_per_kilogram;
use uom::si::f64::Pressure;
use uom::si::specific_volume::cubic_meter_per_kilogram;

/// What the balance is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct CoilBalance {
    /// Heat given to the water, W.
    pub heat_w: Doubted,
    /// Electric power taken, W.
    pub power_w: Doubted,
    /// Part of it that ends in the refrigerant, 0…1.
    pub share_to_refrigerant: Doubted,
    /// Air that arrives, °C.
    pub air_on_c: Doubted,
    /// Its relative humidity, 0.001…1.
    pub air_on_rh: Doubted,
    /// Air that leaves, °C.
    pub air_off_c: Doubted,
    /// Its relative humidity, 0.001…1.
    pub air_off_rh: Doubted,
    /// Of the air.
    pub pressure: Pressure,
}

impl CoilBalance {
    /// Heat in watt that came out of the air.
    pub fn heat_from_air_w(&self) -> Result<Doubted, ScienceError> {
        within("share_to_refrigerant", self.share_to_refrigerant.value(), 0.0, 1.0)?;
        within("power_w", self.power_w.value(), 0.0, 1e6)?;
        let from_air = self.heat_w.less(&self.power_w.times(&self.share_to_refrigerant));
        within("heat_w less power_w", from_air.value(), 1.0, 1e6)?;
        Ok(from_air)
    }

    /// The airflow in m³/s, at the state in which the air arrives.
    pub fn airflow_m3_s(&self) -> Result<Doubted, ScienceError> {
        let on = Hygrometer { dry_bulb_name: "air_on_c", humidity_name: "air_on_rh" };
        let off = Hygrometer { dry_bulb_name: "air_off_c", humidity_name: "air_off_rh" };
        let readings = [&self.air_on_c, &self.air_on_rh, &self.air_off_c, &self.air_off_rh];
        // What a joule out of the air needs of it, m³/J.
        let each_joule = Doubted::through(readings, |[on_c, on_rh, off_c, off_rh]| {
            let on = on.air(celsius(on_c), on_rh, self.pressure)?;
            let off = off.air(celsius(off_c), off_rh, self.pressure)?;
            let drop = (on.enthalpy - off.enthalpy).get::<joule_per_kilogram>();
            within("enthalpy from air_on_c to air_off_c", drop, 200.0, 1e5)?;
            Ok(on.volume.get::<cubic_meter_per_kilogram>() / drop)
        })?;
        Ok(self.heat_from_air_w()?.times(&each_joule))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::coil;
    use proptest::prelude::*;
    use uom::si::f64::VolumeRate;
    use uom::si::power::watt;
    use uom::si::pressure::pascal;
    use uom::si::volume_rate::cubic_meter_per_second;

    fn exactly(value: f64) -> Doubted {
        Doubted::new("value", value).unwrap()
    }

    fn balance(heat: f64, power: f64, on: [f64; 2], off: [f64; 2]) -> CoilBalance {
        CoilBalance {
            heat_w: exactly(heat),
            power_w: exactly(power),
            share_to_refrigerant: exactly(0.9),
            air_on_c: exactly(on[0]),
            air_on_rh: exactly(on[1]),
            air_off_c: exactly(off[0]),
            air_off_rh: exactly(off[1]),
            pressure: Pressure::new::<pascal>(101_325.0),
        }
    }

    #[test]
    fn less_heat_than_the_compressor_puts_in_is_refused_by_name() {
        let refused = balance(500.0, 900.0, [20.0, 0.6], [15.0, 0.8]).airflow_m3_s().unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument == "heat_w less power_w"));
    }

    #[test]
    fn air_that_leaves_as_it_came_is_refused_by_name() {
        let refused = balance(3000.0, 900.0, [20.0, 0.6], [20.0, 0.6]).airflow_m3_s().unwrap_err();
        assert!(
            matches!(refused, ScienceError::OutOfRange { argument, .. } if argument == "enthalpy from air_on_c to air_off_c")
        );
    }

    proptest! {
        #[test]
        fn the_airflow_carries_the_heat_that_it_was_made_from(heat in 1500.0..5000.0f64, power in 100.0..1000.0f64, t in 5.0..35.0f64, rh in 0.5..0.95f64, drop in 3.0..10.0f64) {
            let one = balance(heat, power, [t, rh], [t - drop, rh]);
            let flow = one.airflow_m3_s().unwrap().value();
            let pressure = one.pressure;
            let [on, off] = [t, t - drop].map(|t| crate::science::air::from_humidity(celsius(t), rh, pressure).unwrap());
            let coil = coil::heat(&on, &off, VolumeRate::new::<cubic_meter_per_second>(flow)).unwrap();
            prop_assert!((coil.total.get::<watt>() / (heat - 0.9 * power) - 1.0).abs() < 1e-9);
        }
    }
}
