//! Descaling acid: how strong, what it dissolves, what is left, what neutralises it; and dilutions.
//!
//! ```text
//! c = w ρ / M(HCl)            CaCO3 + 2 HCl → CaCl2 + H2O + CO2           V(CO2) = n R T / p
//! HCl + NaHCO3 → NaCl + H2O + CO2     2 HCl + Na2CO3 → 2 NaCl + H2O + CO2     HCl + NaOH → NaCl + H2O
//! concentrate = total · parts / (parts of concentrate + parts of water)      "1:10" is 1 and 10 parts, "1 in 10" is 1 of 10
//! by a label's ratio: parts / (parts + parts of water)      by its measures: cups / (cups + bucket), or cups / bucket filled up
//! ```
//! Range: hydrochloric acid up to 42 % and 990…1250 kg/m³; volumes up to 10 000 l; up to 10 000 mol; gas at −20…100 °C and
//! 50 000…120 000 Pa. The amounts are those of complete reaction: a bath stops dissolving well before, and its gas stays partly
//! dissolved. Accuracy: 0.05 % where the inputs are exact.
//! Source: stoichiometry; R from the 2019 SI. The label, the maker and local rules come first.

use super::error::{ScienceError, within};
use super::formula::molar_mass;
use super::quantity::within_c;
use uom::si::amount_of_substance::mole;
use uom::si::f64::{
    AmountOfSubstance, Mass, MassDensity, MolarConcentration, Pressure, Ratio, ThermodynamicTemperature, Volume,
};
use uom::si::mass::gram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::volume::{cubic_meter, liter, milliliter};

const GAS_CONSTANT_J_MOL_K: f64 = 8.314462618;
const MOLES_MAX: f64 = 10_000.0;
const VOLUME_L_MAX: f64 = 10_000.0;
/// A tenth, and a hair for rounding.
const APART_MAX: f64 = 1.1 + 1e-9;

/// What can neutralise the rest of an acid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Base {
    /// Sodium bicarbonate, the mild one.
    Bicarbonate,
    /// Sodium carbonate, washing soda.
    Carbonate,
    /// Sodium hydroxide, caustic: worked out for a label that names it, never proposed by us.
    Hydroxide,
}

impl Base {
    /// By its formula.
    pub fn parse(base: &str) -> Result<Self, ScienceError> {
        match base {
            "NaHCO3" => Ok(Self::Bicarbonate),
            "Na2CO3" => Ok(Self::Carbonate),
            "NaOH" => Ok(Self::Hydroxide),
            _ => Err(ScienceError::word("base", base, "NaHCO3, Na2CO3 or NaOH")),
        }
    }

    /// Its formula, and how many moles of acid one mole takes up.
    fn reaction(self) -> (&'static str, f64) {
        match self {
            Self::Bicarbonate => ("NaHCO3", 1.0),
            Self::Carbonate => ("Na2CO3", 2.0),
            Self::Hydroxide => ("NaOH", 1.0),
        }
    }
}

/// How much concentrate and how much water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dilution {
    /// Concentrate to take.
    pub concentrate: Volume,
    /// Water to take; it goes in first.
    pub water: Volume,
    /// Share of concentrate in the mix.
    pub fraction: Ratio,
}

/// Strength of hydrochloric acid from its mass fraction (0…0.42) and density.
pub fn acid_molarity(mass_fraction: f64, density: MassDensity) -> Result<MolarConcentration, ScienceError> {
    Ok((hydrochloric(mass_fraction, density)? / molar_mass("HCl")?).into())
}

/// Limescale that a volume of hydrochloric acid can dissolve at most.
pub fn acid_capacity(volume: Volume, mass_fraction: f64, density: MassDensity) -> Result<Mass, ScienceError> {
    within("volume_l", volume.get::<liter>(), 0.0, VOLUME_L_MAX)?;
    let acid: AmountOfSubstance = volume * hydrochloric(mass_fraction, density)? / molar_mass("HCl")?;
    Ok(acid / 2.0 * molar_mass("CaCO3")?)
}

/// Pure acid in a volume of the solution.
fn hydrochloric(mass_fraction: f64, density: MassDensity) -> Result<MassDensity, ScienceError> {
    within("mass_fraction", mass_fraction, 0.0, 0.42)?;
    within("density_kg_m3", density.get::<kilogram_per_cubic_meter>(), 990.0, 1250.0)?;
    Ok(mass_fraction * density)
}

/// Hydrochloric acid left after it dissolved so much limescale; refused if that is more than it can.
pub fn acid_left(acid: AmountOfSubstance, dissolved: Mass) -> Result<AmountOfSubstance, ScienceError> {
    within("acid_mol", acid.get::<mole>(), 0.0, MOLES_MAX)?;
    let most = acid / 2.0 * molar_mass("CaCO3")?;
    within("dissolved_g_caco3", dissolved.get::<gram>(), 0.0, most.get::<gram>())?;
    let left = acid - 2.0 * (dissolved / molar_mass("CaCO3")?);
    // All of it used up may round to just below nothing.
    Ok(left.max(AmountOfSubstance::new::<mole>(0.0)))
}

/// Volume of carbon dioxide set free by dissolving limescale (0…1 000 000 g), as a gas at `temperature` and `pressure`.
pub fn co2_released(
    dissolved: Mass,
    temperature: ThermodynamicTemperature,
    pressure: Pressure,
) -> Result<Volume, ScienceError> {
    within("dissolved_g_caco3", dissolved.get::<gram>(), 0.0, 1e6)?;
    within_c("temperature_c", temperature, -20.0, 100.0)?;
    within("pressure_pa", pressure.get::<pascal>(), 50_000.0, 120_000.0)?;
    let gas: AmountOfSubstance = dissolved / molar_mass("CaCO3")?;
    let joule = gas.get::<mole>() * GAS_CONSTANT_J_MOL_K * temperature.get::<kelvin>();
    Ok(Volume::new::<cubic_meter>(joule / pressure.get::<pascal>()))
}

/// How much of a base neutralises so much hydrochloric acid (0…10 000 mol).
pub fn neutralise(acid: AmountOfSubstance, base: Base) -> Result<Mass, ScienceError> {
    within("acid_mol", acid.get::<mole>(), 0.0, MOLES_MAX)?;
    let (formula, acid_for_each) = base.reaction();
    Ok(acid / acid_for_each * molar_mass(formula)?)
}

/// A mix of `total` by parts. "1:10" on a label is one part and ten; "1 in 10" is one part and nine. Concentrate 0.001…1000
/// parts, water 0…10 000 parts.
pub fn dilute(parts_concentrate: f64, parts_water: f64, total: Volume) -> Result<Dilution, ScienceError> {
    within("parts_concentrate", parts_concentrate, 0.001, 1000.0)?;
    within("parts_water", parts_water, 0.0, 10_000.0)?;
    within("total_l", total.get::<liter>(), 0.0, VOLUME_L_MAX)?;
    let fraction = parts_concentrate / (parts_concentrate + parts_water);
    let concentrate = fraction * total;
    Ok(Dilution { concentrate, water: total - concentrate, fraction: Ratio::new::<ratio>(fraction) })
}

/// A mix where the label says "`parts` in `of_parts`" (0.001…1000 in up to 11 000): the second number holds the first.
pub fn dilute_in(parts: f64, of_parts: f64, total: Volume) -> Result<Dilution, ScienceError> {
    within("parts", parts, 0.001, 1000.0)?;
    within("of_parts", of_parts, parts, parts + 10_000.0)?;
    dilute(parts, of_parts - parts, total)
}

/// What a label says twice: once by a ratio, once by a bucket and cups.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LabelCheck {
    /// Share of concentrate by the ratio.
    pub by_ratio: Ratio,
    /// Share of concentrate by bucket and cups, in that of its two readings which is nearer to the ratio.
    pub by_measures: Ratio,
    /// Whether the two are within a tenth of each other. If not, ask the maker; never guess which was meant.
    pub agree: bool,
}

/// Are two shares of concentrate within a tenth of each other? None of either agrees with nothing else.
#[must_use]
pub fn shares_agree(one: Ratio, other: Ratio) -> bool {
    let (one, other) = (one.get::<ratio>(), other.get::<ratio>());
    one.max(other) <= APART_MAX * one.min(other)
}

/// Compares a label's numbers with each other: its ratio (as for [`dilute`]; of "1 in 10" give 1 and 9), and `cups` (0.01…1000) of
/// concentrate, each of `cup` (10…5000 ml), to a bucket (0.1…1000 l). "To a bucket of water" and "fill up to a bucket" differ by up to a
/// tenth at common strengths, and labels seldom say which: the nearer counts.
pub fn label_check(
    parts_concentrate: f64,
    parts_water: f64,
    bucket: Volume,
    cups: f64,
    cup: Volume,
) -> Result<LabelCheck, ScienceError> {
    let bucket_l = bucket.get::<liter>();
    within("bucket_l", bucket_l, 0.1, 1000.0)?;
    within("cups", cups, 0.01, 1000.0)?;
    within("cup_ml", cup.get::<milliliter>(), 10.0, 5000.0)?;
    let by_ratio = dilute(parts_concentrate, parts_water, bucket)?.fraction.get::<ratio>();
    let concentrate_l = cups * cup.get::<liter>();
    within("cups of cup_ml, in litres,", concentrate_l, 0.0, bucket_l)?;
    let filled_up = concentrate_l / bucket_l;
    let added = concentrate_l / (concentrate_l + bucket_l);
    let apart = |share: f64| share.max(by_ratio) / share.min(by_ratio);
    let by_measures = if apart(filled_up) < apart(added) { filled_up } else { added };
    let (by_ratio, by_measures) = (Ratio::new::<ratio>(by_ratio), Ratio::new::<ratio>(by_measures));
    Ok(LabelCheck { by_ratio, by_measures, agree: shares_agree(by_ratio, by_measures) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use uom::si::molar_concentration::mole_per_liter;

    #[test]
    fn acid_cannot_have_dissolved_more_than_it_can() {
        let refused = acid_left(AmountOfSubstance::new::<mole>(2.0), Mass::new::<gram>(101.0)).unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument == "dissolved_g_caco3"));
    }

    fn label(parts: (f64, f64), bucket_l: f64, cups: f64, cup_ml: f64) -> LabelCheck {
        let (bucket, cup) = (Volume::new::<liter>(bucket_l), Volume::new::<milliliter>(cup_ml));
        label_check(parts.0, parts.1, bucket, cups, cup).unwrap()
    }

    #[test]
    fn a_label_that_says_the_same_twice_agrees_in_either_reading() {
        // 1:10 as four cups of 250 ml to ten litres, or filled up to eleven.
        assert!(label((1.0, 10.0), 10.0, 4.0, 250.0).agree);
        assert!(label((1.0, 10.0), 11.0, 4.0, 250.0).agree);
    }

    #[test]
    fn a_label_that_is_more_than_a_tenth_apart_disagrees_and_shows_both() {
        // 1:10 asks for 1.73 l in a US bucket of 5 gallons, six cups are 1.42 l.
        let told = label((1.0, 10.0), 18.927, 6.0, 236.588);
        assert!(!told.agree);
        assert!(told.by_measures < told.by_ratio);
    }

    #[test]
    fn more_concentrate_than_the_bucket_holds_is_refused() {
        let refused =
            label_check(1.0, 1.0, Volume::new::<liter>(1.0), 9.0, Volume::new::<milliliter>(250.0)).unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument.starts_with("cups")));
    }

    proptest! {
        #[test]
        fn one_in_ten_is_one_to_nine(parts in 0.01..100.0f64, water in 0.0..1000.0f64, total in 0.0..100.0f64) {
            let total = Volume::new::<liter>(total);
            let (to, of) = (dilute(parts, water, total)?, dilute_in(parts, parts + water, total)?);
            prop_assert!((to.concentrate - of.concentrate).get::<liter>().abs() < 1e-9);
            prop_assert!((to.fraction * total - to.concentrate).get::<liter>().abs() < 1e-9);
        }

        #[test]
        fn all_that_acid_can_dissolve_leaves_none(litres in 0.1..100.0f64, w in 0.01..0.4f64) {
            let density = MassDensity::new::<kilogram_per_cubic_meter>(1100.0);
            let volume = Volume::new::<liter>(litres);
            let molarity = acid_molarity(w, density).unwrap().get::<mole_per_liter>();
            let acid = AmountOfSubstance::new::<mole>(litres * molarity);
            // A hair less, so that rounding does not make it more than the acid can take.
            let dissolved = acid_capacity(volume, w, density).unwrap() * (1.0 - 1e-12);
            prop_assert!(acid_left(acid, dissolved).unwrap() < acid * 1e-11);
        }

        #[test]
        fn a_mix_is_concentrate_and_water_in_its_parts(a in 0.001..1000.0f64, b in 0.0..10_000.0f64, total in 0.0..10_000.0f64) {
            let mix = dilute(a, b, Volume::new::<liter>(total)).unwrap();
            prop_assert!(((mix.concentrate + mix.water).get::<liter>() - total).abs() < 1e-9);
            prop_assert!((mix.concentrate.get::<liter>() * b - mix.water.get::<liter>() * a).abs() < 1e-6 * (1.0 + total * a));
        }

        #[test]
        fn any_label_has_its_two_concentrations_or_is_refused(x in prop::array::uniform5(prop_oneof![any::<f64>(), 0.01..50.0f64])) {
            let [a, b, bucket, cups, cup] = x;
            let (bucket, cup) = (Volume::new::<liter>(bucket), Volume::new::<milliliter>(cup));
            if let Ok(told) = label_check(a, b, bucket, cups, cup) {
                for share in [told.by_ratio, told.by_measures] {
                    prop_assert!(share.get::<ratio>() > 0.0 && share.get::<ratio>() <= 1.0);
                }
            }
        }
    }
}
