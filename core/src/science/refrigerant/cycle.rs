//! The refrigerant cycle as a sketch of pressure over enthalpy, from what gauges and clamps read.
//!
//! ```text
//! superheat = suction − dew(p low)          subcooling = bubble(p high) − liquid line
//! suction, discharge: h of vapour (`vapour.rs`)          liquid line: h of saturated liquid at its temperature
//! expansion: h does not change          COP = (h discharge − h liquid) / (h discharge − h suction)
//! ```
//! Losses of pressure in pipes and exchangers, oil, and what a compressor's shell loses are left out, so the COP is that of
//! the refrigerant between the readings, without fan, pump and controls: beside the measured one, never instead of it.
//!
//! Range: vapour as in `vapour.rs`; below critical only.
//! Accuracy: as of the vapour; the liquid within 2 kJ/kg of CoolProp (what pressure above saturation does is left out); the
//! COP within 2 % of CoolProp's for the same readings, over condensers 15 K or more below critical. A sketch.
//! Source: the vapour-compression cycle of any textbook (common practice); properties as at the head of this folder.

use super::Refrigerant;
use super::tables::LEAST_C;
use super::vapour::{BELOW_CRITICAL_K, Names};
use crate::science::ScienceError;
use crate::science::error::within;
use crate::science::quantity::{celsius, warmer_by, within_temperatures};
use uom::si::f64::{AvailableEnergy, Pressure, TemperatureInterval, ThermodynamicTemperature};
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::kelvin;

/// Points on each line of a [`Dome`].
pub const DOME: usize = 24;

/// No compressor moves more heat for its work between the temperatures of this trade (common practice, no source): where more
/// comes out, or less heat than work, a reading is wrong.
const COP_RANGE: std::ops::RangeInclusive<f64> = 1.0..=20.0;

/// What was read at the circuit while it ran steadily.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CircuitReadings {
    /// Absolute, where the compressor sucks.
    pub low_pressure: Pressure,
    /// Absolute, after the compressor.
    pub high_pressure: Pressure,
    /// Of the suction pipe.
    pub suction: ThermodynamicTemperature,
    /// Of the discharge pipe, where it was read.
    pub discharge: Option<ThermodynamicTemperature>,
    /// Of the pipe after the condenser.
    pub liquid: ThermodynamicTemperature,
}

/// A state on the sketch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct State {
    /// 200 kJ/kg for liquid at 0 °C.
    pub enthalpy: AvailableEnergy,
    /// Absolute.
    pub pressure: Pressure,
}

/// The cycle's corners, in the order in which the refrigerant passes them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cycle {
    /// Into the compressor.
    pub suction: State,
    /// Out of it, where its temperature was read.
    pub discharge: Option<State>,
    /// Liquid before the expansion.
    pub liquid: State,
    /// After the expansion.
    pub expanded: State,
    /// How much warmer than its dew point the vapour is sucked, 0…60 K.
    pub superheat: TemperatureInterval,
    /// How much colder than its bubble point the liquid is, from 0 K.
    pub subcooling: TemperatureInterval,
    /// 1…20; none without a discharge temperature, and where another number comes out.
    pub cop: Option<f64>,
}

/// The bubble and the dew line, cold end first, up to 3 K below critical.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dome {
    /// Liquid.
    pub bubble: [State; DOME],
    /// Vapour.
    pub dew: [State; DOME],
}

impl Refrigerant {
    /// The cycle through the readings. Refused are: a high pressure that is not above the low one, suction and discharge that
    /// are not 0…60 K above their dew points, and a liquid line that is colder than −40 °C or not below its bubble point.
    pub fn cycle(self, read: &CircuitReadings) -> Result<Cycle, ScienceError> {
        let names = |pressure, temperature| Names { pressure, temperature };
        let suction = self.vapour(read.low_pressure, read.suction, names("low_pressure_pa", "suction_c"))?;
        let [_, most_pa] = self.vapour_pressures()?;
        // A blend's bubble line has more pressure than its dew line, and the liquid is not colder than −40 °C.
        let coldest_pa = self.saturation(celsius(LEAST_C))?.bubble_pressure.get::<pascal>();
        let least_pa = read.low_pressure.get::<pascal>().max(coldest_pa);
        within("high_pressure_pa", read.high_pressure.get::<pascal>(), least_pa, most_pa)?;
        let bubble = self.bubble_temperature(read.high_pressure)?;
        within_temperatures("liquid_c", read.liquid, celsius(LEAST_C), bubble)?;
        let liquid = State { enthalpy: self.saturation(read.liquid)?.liquid_enthalpy, pressure: read.high_pressure };
        let discharge = match read.discharge {
            Some(at) => Some(self.vapour(read.high_pressure, at, names("high_pressure_pa", "discharge_c"))?.enthalpy),
            None => None,
        };
        let cop = |discharge: AvailableEnergy| {
            let ratio = (discharge - liquid.enthalpy) / (discharge - suction.enthalpy);
            Some(ratio.value).filter(|cop| COP_RANGE.contains(cop))
        };
        Ok(Cycle {
            suction: State { enthalpy: suction.enthalpy, pressure: read.low_pressure },
            discharge: discharge.map(|enthalpy| State { enthalpy, pressure: read.high_pressure }),
            expanded: State { pressure: read.low_pressure, ..liquid },
            liquid,
            superheat: suction.superheat,
            subcooling: warmer_by(bubble, read.liquid),
            cop: discharge.and_then(cop),
        })
    }

    /// The lines between which liquid and vapour stand beside each other, from a temperature (−40 °C to 10 K below critical)
    /// upwards. Points lie closer where the lines bend.
    pub fn dome(self, from: ThermodynamicTemperature) -> Result<Dome, ScienceError> {
        let table = self.table();
        let critical = table.critical_k;
        let [least, most] = [celsius(LEAST_C), celsius(table.most_c)];
        let highest = ThermodynamicTemperature::new::<kelvin>(critical - BELOW_CRITICAL_K);
        within_temperatures("from_c", from, least, highest)?;
        // Even steps of √(1 − T / Tc), the coordinate in which the lines are nearly straight.
        let [s_from, s_most] = [from, most].map(|t| (1.0 - t.get::<kelvin>() / critical).sqrt());
        let corner = State { enthalpy: AvailableEnergy::default(), pressure: Pressure::default() };
        let mut dome = Dome { bubble: [corner; DOME], dew: [corner; DOME] };
        for (step, (bubble, dew)) in dome.bubble.iter_mut().zip(&mut dome.dew).enumerate() {
            let s = s_from + (s_most - s_from) * step as f64 / (DOME - 1) as f64;
            // There and back rounds, so an end could fall a hair outside.
            let t_k = (critical * (1.0 - s * s)).max(from.get::<kelvin>()).min(most.get::<kelvin>());
            let state = self.saturation(ThermodynamicTemperature::new::<kelvin>(t_k))?;
            *bubble = State { enthalpy: state.liquid_enthalpy, pressure: state.bubble_pressure };
            *dew = State { enthalpy: state.vapour_enthalpy, pressure: state.dew_pressure };
        }
        Ok(dome)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::available_energy::joule_per_kilogram;

    fn read(low_pa: f64, high_pa: f64, suction_c: f64, discharge_c: Option<f64>, liquid_c: f64) -> CircuitReadings {
        CircuitReadings {
            low_pressure: Pressure::new::<pascal>(low_pa),
            high_pressure: Pressure::new::<pascal>(high_pa),
            suction: celsius(suction_c),
            discharge: discharge_c.map(celsius),
            liquid: celsius(liquid_c),
        }
    }

    fn refused(read: &CircuitReadings) -> String {
        match Refrigerant::R290.cycle(read) {
            Err(ScienceError::OutOfRange { argument, .. }) => argument,
            other => format!("{other:?}"),
        }
    }

    #[test]
    fn the_expansion_keeps_the_enthalpy_and_ends_at_the_low_pressure() {
        let cycle = Refrigerant::R290.cycle(&read(4e5, 2e6, 3.0, Some(85.0), 50.0)).unwrap();
        assert_eq!(cycle.expanded.enthalpy, cycle.liquid.enthalpy);
        assert_eq!(cycle.expanded.pressure, cycle.suction.pressure);
        let cop = cycle.cop.unwrap();
        assert!((2.0..6.0).contains(&cop), "{cop}");
    }

    #[test]
    fn without_a_discharge_temperature_there_is_a_sketch_and_no_cop() {
        let cycle = Refrigerant::R290.cycle(&read(4e5, 2e6, 3.0, None, 50.0)).unwrap();
        assert_eq!((cycle.discharge, cycle.cop), (None, None));
    }

    #[test]
    fn a_discharge_that_gains_nothing_gives_no_cop() {
        // Vapour sucked at 60 °C cannot be colder after a compressor.
        let cycle = Refrigerant::R290.cycle(&read(4e5, 2e6, 50.0, Some(58.0), 50.0)).unwrap();
        assert!(cycle.discharge.is_some() && cycle.cop.is_none());
    }

    #[test]
    fn readings_that_cannot_be_are_refused_by_name() {
        assert_eq!(refused(&read(4e5, 3e5, 3.0, None, 50.0)), "high_pressure_pa");
        assert_eq!(refused(&read(4e5, 2e6, -20.0, None, 50.0)), "suction_c");
        assert_eq!(refused(&read(4e5, 2e6, 3.0, Some(40.0), 50.0)), "discharge_c");
        assert_eq!(refused(&read(4e5, 2e6, 3.0, None, 70.0)), "liquid_c");
        assert_eq!(refused(&read(1e4, 2e6, 3.0, None, 50.0)), "low_pressure_pa");
    }

    #[test]
    fn a_dome_rises_and_narrows_to_its_end() {
        for refrigerant in Refrigerant::ALL {
            let dome = refrigerant.dome(celsius(-30.0)).unwrap();
            let widths: Vec<f64> = dome
                .bubble
                .iter()
                .zip(&dome.dew)
                .map(|(bubble, dew)| (dew.enthalpy - bubble.enthalpy).get::<joule_per_kilogram>())
                .collect();
            assert!(widths.windows(2).all(|pair| pair[0] > pair[1] && pair[1] > 0.0), "{refrigerant:?} {widths:?}");
            assert!(dome.dew.windows(2).all(|pair| pair[0].pressure < pair[1].pressure), "{refrigerant:?}");
        }
    }
}
