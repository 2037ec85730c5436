//! Acid, mixes and scaling indices.

use crate::science::chemistry::{self, Base};
use crate::science::quantity::celsius;
use crate::science::scaling::TapWater;
use crate::science::{ScienceError, formula};
use uom::si::amount_of_substance::mole;
use uom::si::f64::{AmountOfSubstance, Mass, MassDensity, Pressure, Volume};
use uom::si::mass::gram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::molar_concentration::mole_per_liter;
use uom::si::molar_mass::gram_per_mole;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::volume::liter;

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
pub fn acid_capacity_g_caco3(volume_l: f64, mass_fraction: f64, density_kg_m3: f64) -> Result<f64, ScienceError> {
    let density = MassDensity::new::<kilogram_per_cubic_meter>(density_kg_m3);
    Ok(chemistry::acid_capacity(Volume::new::<liter>(volume_l), mass_fraction, density)?.get::<gram>())
}

/// [`chemistry::acid_left`].
#[uniffi::export]
pub fn acid_left_mol(acid_mol: f64, dissolved_g_caco3: f64) -> Result<f64, ScienceError> {
    let acid = AmountOfSubstance::new::<mole>(acid_mol);
    Ok(chemistry::acid_left(acid, Mass::new::<gram>(dissolved_g_caco3))?.get::<mole>())
}

/// [`chemistry::co2_released`].
#[uniffi::export]
pub fn co2_released_l(dissolved_g_caco3: f64, temperature_c: f64, pressure_pa: f64) -> Result<f64, ScienceError> {
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
pub fn dilute(parts_concentrate: f64, parts_water: f64, total_l: f64) -> Result<DilutionValues, ScienceError> {
    let mix = chemistry::dilute(parts_concentrate, parts_water, Volume::new::<liter>(total_l))?;
    Ok(DilutionValues {
        concentrate_l: mix.concentrate.get::<liter>(),
        water_l: mix.water.get::<liter>(),
        fraction: mix.fraction.get::<ratio>(),
    })
}

/// [`TapWater::langelier`].
#[uniffi::export]
pub fn langelier_index(
    ph: f64,
    temperature_c: f64,
    calcium_mg_l_caco3: f64,
    alkalinity_mg_l_caco3: f64,
    tds_mg_l: f64,
) -> Result<f64, ScienceError> {
    tap(ph, temperature_c, calcium_mg_l_caco3, alkalinity_mg_l_caco3, tds_mg_l).langelier()
}

/// [`TapWater::ryznar`].
#[uniffi::export]
pub fn ryznar_index(
    ph: f64,
    temperature_c: f64,
    calcium_mg_l_caco3: f64,
    alkalinity_mg_l_caco3: f64,
    tds_mg_l: f64,
) -> Result<f64, ScienceError> {
    tap(ph, temperature_c, calcium_mg_l_caco3, alkalinity_mg_l_caco3, tds_mg_l).ryznar()
}

fn tap(ph: f64, temperature_c: f64, calcium_mg_l_caco3: f64, alkalinity_mg_l_caco3: f64, tds_mg_l: f64) -> TapWater {
    TapWater { ph, temperature: celsius(temperature_c), calcium_mg_l_caco3, alkalinity_mg_l_caco3, tds_mg_l }
}
