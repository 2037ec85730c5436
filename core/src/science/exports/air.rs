//! Moist air and the air coil.

use crate::science::air::{self, Air, Hygrometer};
use crate::science::quantity::{celsius, to_celsius};
use crate::science::{ScienceError, coil};
use uom::si::available_energy::joule_per_kilogram;
use uom::si::f64::{Pressure, VolumeRate};
use uom::si::mass_rate::gram_per_second;
use uom::si::power::watt;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::specific_volume::cubic_meter_per_kilogram;
use uom::si::volume_rate::cubic_meter_per_second;

/// Moist air; the last two for each kilogram of dry air.
#[derive(Debug, Clone, uniffi::Record)]
pub struct AirValues {
    /// Relative humidity, 0…1.
    pub humidity_rh: f64,
    /// Water for each kilogram of dry air.
    pub humidity_ratio_kg_kg: f64,
    /// Dew or frost point.
    pub dew_point_c: f64,
    /// Wet bulb.
    pub wet_bulb_c: f64,
    /// Enthalpy.
    pub enthalpy_j_kg: f64,
    /// Volume.
    pub volume_m3_kg: f64,
}

impl From<Air> for AirValues {
    fn from(air: Air) -> Self {
        Self {
            humidity_rh: air.humidity.get::<ratio>(),
            humidity_ratio_kg_kg: air.humidity_ratio.get::<ratio>(),
            dew_point_c: to_celsius(air.dew_point),
            wet_bulb_c: to_celsius(air.wet_bulb),
            enthalpy_j_kg: air.enthalpy.get::<joule_per_kilogram>(),
            volume_m3_kg: air.volume.get::<cubic_meter_per_kilogram>(),
        }
    }
}

/// Heat that a coil takes out of the air.
#[derive(Debug, Clone, uniffi::Record)]
pub struct CoilHeatValues {
    /// All of it.
    pub total_w: f64,
    /// By cooling.
    pub sensible_w: f64,
    /// By condensing water.
    pub latent_w: f64,
    /// Water condensed.
    pub condensate_g_s: f64,
}

/// [`air::from_humidity`].
#[uniffi::export]
pub fn air_from_humidity(dry_bulb_c: f64, humidity_rh: f64, pressure_pa: f64) -> Result<AirValues, ScienceError> {
    let pressure = Pressure::new::<pascal>(pressure_pa);
    Ok(air::from_humidity(celsius(dry_bulb_c), humidity_rh, pressure)?.into())
}

/// [`air::from_wet_bulb`].
#[uniffi::export]
pub fn air_from_wet_bulb(dry_bulb_c: f64, wet_bulb_c: f64, pressure_pa: f64) -> Result<AirValues, ScienceError> {
    let pressure = Pressure::new::<pascal>(pressure_pa);
    Ok(air::from_wet_bulb(celsius(dry_bulb_c), celsius(wet_bulb_c), pressure)?.into())
}

/// [`coil::heat`]; the airflow is that measured at the inlet.
#[uniffi::export]
pub fn coil_heat(
    air_on_c: f64,
    air_on_rh: f64,
    air_off_c: f64,
    air_off_rh: f64,
    airflow_m3_s: f64,
    pressure_pa: f64,
) -> Result<CoilHeatValues, ScienceError> {
    let pressure = Pressure::new::<pascal>(pressure_pa);
    let on = Hygrometer { dry_bulb_name: "air_on_c", humidity_name: "air_on_rh" }.air(
        celsius(air_on_c),
        air_on_rh,
        pressure,
    )?;
    let off = Hygrometer { dry_bulb_name: "air_off_c", humidity_name: "air_off_rh" }.air(
        celsius(air_off_c),
        air_off_rh,
        pressure,
    )?;
    let heat = coil::heat(&on, &off, VolumeRate::new::<cubic_meter_per_second>(airflow_m3_s))?;
    Ok(CoilHeatValues {
        total_w: heat.total.get::<watt>(),
        sensible_w: heat.sensible.get::<watt>(),
        latent_w: heat.latent.get::<watt>(),
        condensate_g_s: heat.condensate.get::<gram_per_second>(),
    })
}
