//! Heat that an air coil takes out of the air.
//!
//! ```text
//! m = V' / v(on)        total = m (h(on) − h(off))        sensible = m (h(t on, W off) − h(t off, W off))
//! latent = total − sensible                               condensate = m (W on − W off)
//! ```
//! Range: that of moist air; airflow 0.001…100 m³/s at the state in which the air arrives. The heat that leaves with the condensate
//! is left out (below 2 % of the latent part). Where the air leaves warmer or wetter than it came (a coil still wet from rinsing,
//! a defrost) the parts are negative: the coil gives.
//! Accuracy: that of the readings; a humidity read 0.03 wrong moves the latent part by hundreds of watts.
//! Source: ASHRAE Handbook Fundamentals 2017, ch. 1, 'moist air cooling and dehumidification', without the condensate's term.

use super::air::{Air, enthalpy};
use super::error::{ScienceError, within};
use uom::si::f64::{MassRate, Power, VolumeRate};
use uom::si::volume_rate::cubic_meter_per_second;

/// What the coil takes out of the air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoilHeat {
    /// All of it.
    pub total: Power,
    /// By cooling.
    pub sensible: Power,
    /// By condensing water.
    pub latent: Power,
    /// Water condensed.
    pub condensate: MassRate,
}

/// Heat from the air's states before (`on`) and after (`off`) the coil and the airflow at the inlet.
pub fn heat(on: &Air, off: &Air, airflow: VolumeRate) -> Result<CoilHeat, ScienceError> {
    within("airflow_m3_s", airflow.get::<cubic_meter_per_second>(), 0.001, 100.0)?;
    let dry_air: MassRate = airflow / on.volume;
    let total: Power = dry_air * (on.enthalpy - off.enthalpy);
    let sensible: Power = dry_air * (enthalpy(on.dry_bulb, off.humidity_ratio) - off.enthalpy);
    Ok(CoilHeat {
        total,
        sensible,
        latent: total - sensible,
        condensate: dry_air * (on.humidity_ratio - off.humidity_ratio),
    })
}
