//! What a meter tells.

use crate::science::quantity::celsius;
use crate::science::{ScienceError, electrical};
use uom::si::capacitance::microfarad;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_resistance::megaohm;
use uom::si::f64::{ElectricCurrent, ElectricPotential, ElectricalResistance, Frequency, Power};
use uom::si::frequency::hertz;
use uom::si::power::watt;
use uom::si::ratio::ratio;

/// [`electrical::voltage_unbalance`], as a fraction.
#[uniffi::export]
pub fn voltage_unbalance(a_v: f64, b_v: f64, c_v: f64) -> Result<f64, ScienceError> {
    let [a, b, c] = [a_v, b_v, c_v].map(ElectricPotential::new::<volt>);
    Ok(electrical::voltage_unbalance(a, b, c)?.get::<ratio>())
}

/// [`electrical::power_factor`].
#[uniffi::export]
pub fn power_factor(real_w: f64, voltage_v: f64, current_a: f64) -> Result<f64, ScienceError> {
    let factor = electrical::power_factor(
        Power::new::<watt>(real_w),
        ElectricPotential::new::<volt>(voltage_v),
        ElectricCurrent::new::<ampere>(current_a),
    )?;
    Ok(factor.get::<ratio>())
}

/// [`electrical::three_phase_power`].
#[uniffi::export]
pub fn three_phase_power_w(line_voltage_v: f64, current_a: f64, power_factor: f64) -> Result<f64, ScienceError> {
    let power = electrical::three_phase_power(
        ElectricPotential::new::<volt>(line_voltage_v),
        ElectricCurrent::new::<ampere>(current_a),
        power_factor,
    )?;
    Ok(power.get::<watt>())
}

/// [`electrical::capacitance`].
#[uniffi::export]
pub fn capacitance_uf(current_a: f64, voltage_v: f64, frequency_hz: f64) -> Result<f64, ScienceError> {
    let capacitance = electrical::capacitance(
        ElectricCurrent::new::<ampere>(current_a),
        ElectricPotential::new::<volt>(voltage_v),
        Frequency::new::<hertz>(frequency_hz),
    )?;
    Ok(capacitance.get::<microfarad>())
}

/// [`electrical::insulation_at_40c`].
#[uniffi::export]
pub fn insulation_at_40c_mohm(measured_mohm: f64, winding_c: f64) -> Result<f64, ScienceError> {
    let measured = ElectricalResistance::new::<megaohm>(measured_mohm);
    Ok(electrical::insulation_at_40c(measured, celsius(winding_c))?.get::<megaohm>())
}
