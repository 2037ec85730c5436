//! Acid and mixes.

use crate::science::acids::{self, Acid, AcidBath, Sign};
use crate::science::chemistry::{self, Base, Dilution};
use crate::science::materials::{Metal, suits};
use crate::science::quantity::celsius;
use crate::science::{ScienceError, formula};
use uom::si::amount_of_substance::mole;
use uom::si::f64::{AmountOfSubstance, Mass, MassDensity, Pressure, Volume};
use uom::si::mass::gram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::molar_concentration::mole_per_liter;
use uom::si::molar_mass::gram_per_mole;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::volume::{liter, milliliter};

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

/// What a label says twice.
#[derive(Debug, Clone, uniffi::Record)]
pub struct LabelCheckValues {
    /// Share of concentrate by the ratio, 0…1.
    pub by_ratio: f64,
    /// Share of concentrate by bucket and cups, 0…1.
    pub by_measures: f64,
    /// Whether they are within a tenth of each other.
    pub agree: bool,
}

/// How far a bath has come.
#[derive(Debug, Clone, uniffi::Record)]
pub struct BathValues {
    /// Lime dissolved so far.
    pub dissolved_g_caco3: f64,
    /// Lime that it can still dissolve.
    pub left_g_caco3: f64,
    /// The same as a share of what it could when fresh, 0…1.
    pub share_left: f64,
    /// What a base has to take up.
    pub to_neutralise_mol: f64,
    /// Whether the bath may be further than this, as an indicator told.
    pub or_further: bool,
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
    chemistry::dilute(parts_concentrate, parts_water, Volume::new::<liter>(total_l)).map(Into::into)
}

/// [`chemistry::dilute_in`].
#[uniffi::export]
pub fn dilute_in(parts: f64, of_parts: f64, total_l: f64) -> Result<DilutionValues, ScienceError> {
    chemistry::dilute_in(parts, of_parts, Volume::new::<liter>(total_l)).map(Into::into)
}

/// [`chemistry::label_check`].
#[uniffi::export]
pub fn label_check(
    parts_concentrate: f64,
    parts_water: f64,
    bucket_l: f64,
    cups: f64,
    cup_ml: f64,
) -> Result<LabelCheckValues, ScienceError> {
    let (bucket, cup) = (Volume::new::<liter>(bucket_l), Volume::new::<milliliter>(cup_ml));
    let told = chemistry::label_check(parts_concentrate, parts_water, bucket, cups, cup)?;
    Ok(LabelCheckValues {
        by_ratio: told.by_ratio.get::<ratio>(),
        by_measures: told.by_measures.get::<ratio>(),
        agree: told.agree,
    })
}

/// [`Acid::protons_given`].
#[uniffi::export]
pub fn acid_protons_given(acid: String, ph: f64) -> Result<f64, ScienceError> {
    Acid::parse(&acid)?.protons_given(ph)
}

/// [`AcidBath::complete`].
#[uniffi::export]
pub fn acid_complete_g_caco3(acid: String, acid_g: f64, volume_l: f64) -> Result<f64, ScienceError> {
    Ok(bath(&acid, acid_g, volume_l)?.complete()?.get::<gram>())
}

/// [`AcidBath::state`].
#[uniffi::export]
pub fn acid_bath(
    acid: String,
    acid_g: f64,
    volume_l: f64,
    ph: f64,
    indicator_turned: bool,
    spent_ph: f64,
) -> Result<BathValues, ScienceError> {
    let sign = if indicator_turned { Sign::IndicatorTurned(ph) } else { Sign::Ph(ph) };
    let state = bath(&acid, acid_g, volume_l)?.state(sign, spent_ph)?;
    Ok(BathValues {
        dissolved_g_caco3: state.dissolved.get::<gram>(),
        left_g_caco3: state.left.get::<gram>(),
        share_left: state.share_left.get::<ratio>(),
        to_neutralise_mol: state.to_neutralise.get::<mole>(),
        or_further: state.or_further,
    })
}

/// [`acids::free_acid`].
#[uniffi::export]
pub fn free_acid_mol(volume_l: f64, ph: f64) -> Result<f64, ScienceError> {
    Ok(acids::free_acid(Volume::new::<liter>(volume_l), ph)?.get::<mole>())
}

/// [`suits`]: the verdict and its reason, 'forbidden: chloride-pits'.
#[uniffi::export]
pub fn acid_on_metal(acid: String, metal: String) -> Result<String, ScienceError> {
    let (verdict, reason) = suits(Acid::parse(&acid)?, Metal::parse(&metal)?);
    Ok(format!("{}: {}", verdict.name(), reason.name()))
}

fn bath(acid: &str, acid_g: f64, volume_l: f64) -> Result<AcidBath, ScienceError> {
    let (mass, volume) = (Mass::new::<gram>(acid_g), Volume::new::<liter>(volume_l));
    Ok(AcidBath { acid: Acid::parse(acid)?, mass, volume })
}

impl From<Dilution> for DilutionValues {
    fn from(mix: Dilution) -> Self {
        Self {
            concentrate_l: mix.concentrate.get::<liter>(),
            water_l: mix.water.get::<liter>(),
            fraction: mix.fraction.get::<ratio>(),
        }
    }
}
