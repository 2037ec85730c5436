//! The science for Kotlin, Swift and Python: plain numbers in and out, the unit last in each name.
//!
//! Ranges are checked inside the functions called; what each means, its range and source stand there.

use super::chemistry::{self, Base};
use super::error::ScienceError;
use super::formula;
use super::heat::{self, Reading};
use super::place::{self, Place};
use super::quantity::{celsius, to_celsius};
use super::{atmosphere, calendar, uncertainty, water};
use uom::si::amount_of_substance::mole;
use uom::si::f64::{AmountOfSubstance, Length, Mass, MassDensity, Pressure, Volume};
use uom::si::length::meter;
use uom::si::mass::gram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::molar_concentration::mole_per_liter;
use uom::si::molar_mass::gram_per_mole;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::volume::liter;

/// Liquid water at one temperature.
#[derive(Debug, Clone, uniffi::Record)]
pub struct WaterValues {
    /// Density.
    pub density_kg_m3: f64,
    /// Specific heat at constant pressure.
    pub specific_heat_j_kg_k: f64,
}

/// Result of a heat test; every `_u` is a standard uncertainty.
#[derive(Debug, Clone, uniffi::Record)]
pub struct HeatTestValues {
    /// Heat given to the water.
    pub heat_w: f64,
    /// Its doubt.
    pub heat_u: f64,
    /// Coefficient of performance.
    pub cop: f64,
    /// Its doubt.
    pub cop_u: f64,
}

/// A mix by parts.
#[derive(Debug, Clone, uniffi::Record)]
pub struct DilutionValues {
    /// Concentrate to take.
    pub concentrate_l: f64,
    /// Water to take, first.
    pub water_l: f64,
    /// Share of concentrate, 0…1.
    pub fraction: f64,
}

/// [`atmosphere::pressure`].
#[uniffi::export]
pub fn atmospheric_pressure_pa(altitude_m: f64) -> Result<f64, ScienceError> {
    Ok(atmosphere::pressure(Length::new::<meter>(altitude_m))?.get::<pascal>())
}

/// [`water::boiling`].
#[uniffi::export]
pub fn water_boiling_c(altitude_m: f64) -> Result<f64, ScienceError> {
    Ok(to_celsius(water::boiling(Length::new::<meter>(
        altitude_m,
    ))?))
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

/// [`heat::HeatTest::result`].
#[uniffi::export]
#[expect(
    clippy::too_many_arguments,
    reason = "the names are what other languages call it by"
)]
pub fn heat_test(
    flow_l_min: f64,
    flow_u: f64,
    inlet_c: f64,
    inlet_u: f64,
    outlet_c: f64,
    outlet_u: f64,
    shared_thermometer_u: f64,
    power_w: f64,
    power_u: f64,
) -> Result<HeatTestValues, ScienceError> {
    let reading = |value, standard_u| Reading { value, standard_u };
    let result = heat::HeatTest {
        flow_l_min: reading(flow_l_min, flow_u),
        inlet_c: reading(inlet_c, inlet_u),
        outlet_c: reading(outlet_c, outlet_u),
        shared_thermometer_u,
        power_w: reading(power_w, power_u),
    }
    .result()?;
    Ok(HeatTestValues {
        heat_w: result.heat_w.value(),
        heat_u: result.heat_w.standard_u(),
        cop: result.cop.value(),
        cop_u: result.cop.standard_u(),
    })
}

/// [`uncertainty::from_resolution`].
#[uniffi::export]
pub fn uncertainty_from_resolution(step: f64) -> Result<f64, ScienceError> {
    uncertainty::from_resolution(step)
}

/// [`uncertainty::from_limits`].
#[uniffi::export]
pub fn uncertainty_from_limits(half_width: f64) -> Result<f64, ScienceError> {
    uncertainty::from_limits(half_width)
}

/// [`formula::molar_mass`].
#[uniffi::export]
pub fn molar_mass_g_mol(formula: String) -> Result<f64, ScienceError> {
    Ok(formula::molar_mass(&formula)?.get::<gram_per_mole>())
}

/// [`chemistry::acid_molarity`].
#[uniffi::export]
pub fn acid_molarity_mol_l(mass_fraction: f64, density_kg_m3: f64) -> Result<f64, ScienceError> {
    let density = MassDensity::new::<kilogram_per_cubic_meter>(density_kg_m3);
    Ok(chemistry::acid_molarity(mass_fraction, density)?.get::<mole_per_liter>())
}

/// [`chemistry::acid_capacity`].
#[uniffi::export]
pub fn acid_capacity_g_caco3(
    volume_l: f64,
    mass_fraction: f64,
    density_kg_m3: f64,
) -> Result<f64, ScienceError> {
    let density = MassDensity::new::<kilogram_per_cubic_meter>(density_kg_m3);
    Ok(
        chemistry::acid_capacity(Volume::new::<liter>(volume_l), mass_fraction, density)?
            .get::<gram>(),
    )
}

/// [`chemistry::acid_left`].
#[uniffi::export]
pub fn acid_left_mol(acid_mol: f64, dissolved_g_caco3: f64) -> Result<f64, ScienceError> {
    let acid = AmountOfSubstance::new::<mole>(acid_mol);
    Ok(chemistry::acid_left(acid, Mass::new::<gram>(dissolved_g_caco3))?.get::<mole>())
}

/// [`chemistry::co2_released`].
#[uniffi::export]
pub fn co2_released_l(
    dissolved_g_caco3: f64,
    temperature_c: f64,
    pressure_pa: f64,
) -> Result<f64, ScienceError> {
    let dissolved = Mass::new::<gram>(dissolved_g_caco3);
    let pressure = Pressure::new::<pascal>(pressure_pa);
    Ok(chemistry::co2_released(dissolved, celsius(temperature_c), pressure)?.get::<liter>())
}

/// [`chemistry::neutralise`].
#[uniffi::export]
pub fn neutralise_g(acid_mol: f64, base: String) -> Result<f64, ScienceError> {
    let acid = AmountOfSubstance::new::<mole>(acid_mol);
    Ok(chemistry::neutralise(acid, Base::parse(&base)?)?.get::<gram>())
}

/// [`chemistry::dilute`].
#[uniffi::export]
pub fn dilute(
    parts_concentrate: f64,
    parts_water: f64,
    total_l: f64,
) -> Result<DilutionValues, ScienceError> {
    let mix = chemistry::dilute(
        parts_concentrate,
        parts_water,
        Volume::new::<liter>(total_l),
    )?;
    Ok(DilutionValues {
        concentrate_l: mix.concentrate.get::<liter>(),
        water_l: mix.water.get::<liter>(),
        fraction: mix.fraction.get::<ratio>(),
    })
}

/// [`place::distance`].
#[uniffi::export]
pub fn distance_m(lat1: f64, lon1: f64, lat2: f64, lon2: f64) -> Result<f64, ScienceError> {
    let place = |latitude, longitude| Place {
        latitude,
        longitude,
    };
    Ok(place::distance(place(lat1, lon1), place(lat2, lon2))?.get::<meter>())
}

/// [`calendar::add_months`], on dates such as `2025-01-31`.
#[uniffi::export]
pub fn add_months(date: String, months: i32) -> Result<String, ScienceError> {
    Ok(calendar::add_months(calendar::parse_date(&date)?, months)?.to_string())
}
