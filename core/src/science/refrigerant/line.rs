//! What a gauge and a clamp on a pipe tell: superheat and subcooling.
//!
//! ```text
//! p = gauge + atmosphere(altitude)        superheat = T − dew(p)        subcooling = bubble(p) − T
//! ```

use super::Refrigerant;
use crate::science::atmosphere;
use crate::science::error::{ScienceError, within};
use crate::science::quantity::{warmer_by, within_c};
use uom::si::f64::{Length, Pressure, TemperatureInterval, ThermodynamicTemperature};
use uom::si::pressure::pascal;

const LINE_LEAST_C: f64 = -60.0;
const LINE_MOST_C: f64 = 180.0;

/// Readings at one place of the circuit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Above the local atmosphere, as a vented gauge reads.
    pub gauge_pressure: Pressure,
    /// Of the pipe, −60…180 °C.
    pub temperature: ThermodynamicTemperature,
    /// Of the site, −2000…11 000 m; gives the atmosphere.
    pub altitude: Length,
}

impl Line {
    /// How much warmer than its dew point the vapour is. Below zero there is liquid in it, or a reading is wrong.
    /// The absolute pressure lies in the range of [`Refrigerant::dew_temperature`].
    pub fn superheat(&self, refrigerant: Refrigerant) -> Result<TemperatureInterval, ScienceError> {
        let pressure = self.absolute(refrigerant.table().dew_pa)?;
        Ok(warmer_by(self.temperature, refrigerant.dew_temperature(pressure)?))
    }

    /// How much colder than its bubble point the liquid is. Below zero there is vapour in it, or a reading is wrong.
    /// The absolute pressure lies in the range of [`Refrigerant::bubble_temperature`].
    pub fn subcooling(&self, refrigerant: Refrigerant) -> Result<TemperatureInterval, ScienceError> {
        let pressure = self.absolute(refrigerant.table().bubble_pa)?;
        Ok(warmer_by(refrigerant.bubble_temperature(pressure)?, self.temperature))
    }

    /// The absolute pressure, which must lie between two; refused as the gauge would read them here.
    pub(super) fn absolute(&self, [least, most]: [f64; 2]) -> Result<Pressure, ScienceError> {
        within_c("line_temperature_c", self.temperature, LINE_LEAST_C, LINE_MOST_C)?;
        let air_pa = atmosphere::pressure(self.altitude)?.get::<pascal>();
        within("pressure_pa_gauge", self.gauge_pressure.get::<pascal>(), least - air_pa, most - air_pa)?;
        // Adding and taking away the atmosphere rounds, so an end of the range could fall a hair outside.
        Ok(Pressure::new::<pascal>((self.gauge_pressure.get::<pascal>() + air_pa).clamp(least, most)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::quantity::celsius;
    use uom::si::length::meter;
    use uom::si::temperature_interval::kelvin;

    fn line(gauge_pa: f64, c: f64, altitude_m: f64) -> Line {
        Line {
            gauge_pressure: Pressure::new::<pascal>(gauge_pa),
            temperature: celsius(c),
            altitude: Length::new::<meter>(altitude_m),
        }
    }

    #[test]
    fn wet_vapour_has_a_superheat_below_zero() {
        assert!(line(300_000.0, -10.0, 0.0).superheat(Refrigerant::R290).unwrap().get::<kelvin>() < 0.0);
    }

    #[test]
    fn a_pressure_near_critical_is_refused_with_the_gauge_s_own_range() {
        let refused = line(7_000_000.0, 25.0, 0.0).subcooling(Refrigerant::R744).unwrap_err();
        let most_pa = Refrigerant::R744.table().bubble_pa[1] - 101_325.0;
        assert!(matches!(refused, ScienceError::OutOfRange { argument, most, .. }
            if argument == "pressure_pa_gauge" && most == most_pa));
        assert!(line(most_pa, 25.0, 0.0).subcooling(Refrigerant::R744).is_ok());
    }

    #[test]
    fn the_same_gauge_reading_is_more_superheat_up_on_the_mountain() {
        let [low, high] = [0.0, 3000.0].map(|m| line(300_000.0, 2.0, m).superheat(Refrigerant::R290).unwrap());
        assert!(high > low);
    }
}
