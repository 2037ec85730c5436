//! Refrigerants as the rules see them.

use crate::science::ScienceError;
use crate::science::refrigerant::Refrigerant;
use uom::si::f64::Mass;
use uom::si::mass::{kilogram, megagram};
use uom::si::mass_density::kilogram_per_cubic_meter;

/// [`Refrigerant::co2_equivalent`], in tonnes.
#[uniffi::export]
pub fn co2_equivalent_t(refrigerant: String, charge_kg: f64) -> Result<f64, ScienceError> {
    let charge = Mass::new::<kilogram>(charge_kg);
    Ok(Refrigerant::named(&refrigerant)?.co2_equivalent(charge)?.get::<megagram>())
}

/// [`Refrigerant::safety_group`].
#[uniffi::export]
pub fn safety_group(refrigerant: String) -> Result<String, ScienceError> {
    Ok(Refrigerant::named(&refrigerant)?.safety_group().as_str().to_owned())
}

/// [`Refrigerant::lower_flammable_limit`].
#[uniffi::export]
pub fn lower_flammable_limit_kg_m3(refrigerant: String) -> Result<f64, ScienceError> {
    Ok(Refrigerant::named(&refrigerant)?.lower_flammable_limit()?.get::<kilogram_per_cubic_meter>())
}

/// [`Refrigerant::small_charge_limit`].
#[uniffi::export]
pub fn small_charge_limit_kg(refrigerant: String) -> Result<f64, ScienceError> {
    Ok(Refrigerant::named(&refrigerant)?.small_charge_limit()?.get::<kilogram>())
}
