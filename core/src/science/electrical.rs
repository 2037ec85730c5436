//! What a meter on the supply, the motor and its capacitor tells.
//!
//! ```text
//! unbalance = greatest |V − mean| / mean        power factor = P / (V I)        three-phase P = √3 V I · power factor
//! C = I / (2π f V)        insulation at 40 °C = measured · 0.5^((40 − T) / 10)
//! ```
//! Range: 10…1000 V, 0…1000 A, 0…1 MW, 10…400 Hz, insulation 0…10⁶ MΩ, winding −20…120 °C.
//! Accuracy: that of a true-RMS meter; a capacitor's current must be its own. Halving for each 10 K is a rule for old
//! (thermoplastic) windings, rough for new ones.
//! Source: NEMA MG 1, 14.36 (unbalance); IEEE 43 (insulation); the rest by definition. Clauses from memory.

use super::error::{ScienceError, within};
use super::quantity::{to_celsius, within_c};
use core::f64::consts::PI;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_resistance::megaohm;
use uom::si::f64::{
    Capacitance, ElectricCurrent, ElectricPotential, ElectricalResistance, Frequency, Power, Ratio,
    ThermodynamicTemperature,
};
use uom::si::frequency::hertz;
use uom::si::power::watt;
use uom::si::ratio::ratio;

const CURRENT_MAX_A: f64 = 1000.0;

fn checked_voltage(argument: &str, voltage: ElectricPotential) -> Result<(), ScienceError> {
    within(argument, voltage.get::<volt>(), 10.0, 1000.0)
}

/// Greatest deviation from the mean of three line voltages, as a share of the mean.
pub fn voltage_unbalance(
    a: ElectricPotential,
    b: ElectricPotential,
    c: ElectricPotential,
) -> Result<Ratio, ScienceError> {
    checked_voltage("a_v", a)?;
    checked_voltage("b_v", b)?;
    checked_voltage("c_v", c)?;
    let mean = (a + b + c) / 3.0;
    let greatest = [a, b, c]
        .into_iter()
        .map(|v| (v - mean).abs())
        .fold(ElectricPotential::new::<volt>(0.0), ElectricPotential::max);
    Ok(greatest / mean)
}

/// Power factor, 0…1, of a single-phase load; real power above voltage times current is refused.
pub fn power_factor(real: Power, voltage: ElectricPotential, current: ElectricCurrent) -> Result<Ratio, ScienceError> {
    checked_voltage("voltage_v", voltage)?;
    within("current_a", current.get::<ampere>(), 0.001, CURRENT_MAX_A)?;
    let apparent: Power = voltage * current;
    within("real_w", real.get::<watt>(), 0.0, apparent.get::<watt>())?;
    Ok(real / apparent)
}

/// Real power of a balanced three-phase load from the voltage between lines.
pub fn three_phase_power(
    line_voltage: ElectricPotential,
    current: ElectricCurrent,
    power_factor: f64,
) -> Result<Power, ScienceError> {
    checked_voltage("line_voltage_v", line_voltage)?;
    within("current_a", current.get::<ampere>(), 0.0, CURRENT_MAX_A)?;
    within("power_factor", power_factor, 0.0, 1.0)?;
    Ok(libm::sqrt(3.0) * power_factor * (line_voltage * current))
}

/// A running capacitor from the current through it and the voltage across it. Live work: for the licensed only.
pub fn capacitance(
    current: ElectricCurrent,
    voltage: ElectricPotential,
    frequency: Frequency,
) -> Result<Capacitance, ScienceError> {
    within("current_a", current.get::<ampere>(), 0.0, CURRENT_MAX_A)?;
    checked_voltage("voltage_v", voltage)?;
    within("frequency_hz", frequency.get::<hertz>(), 10.0, 400.0)?;
    Ok(current / (2.0 * PI * frequency * voltage))
}

/// A winding's insulation as it would measure at 40 °C.
pub fn insulation_at_40c(
    measured: ElectricalResistance,
    winding: ThermodynamicTemperature,
) -> Result<ElectricalResistance, ScienceError> {
    within("measured_mohm", measured.get::<megaohm>(), 0.0, 1e6)?;
    within_c("winding_c", winding, -20.0, 120.0)?;
    Ok(measured * Ratio::new::<ratio>(libm::pow(0.5, (40.0 - to_celsius(winding)) / 10.0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn more_real_power_than_volts_times_amperes_is_refused() {
        let refused = power_factor(
            Power::new::<watt>(1001.0),
            ElectricPotential::new::<volt>(200.0),
            ElectricCurrent::new::<ampere>(5.0),
        );
        assert_eq!(refused.unwrap_err(), ScienceError::out_of_range("real_w", 1001.0, 0.0, 1000.0));
    }
}
