//! A descaling bath: what its acid can dissolve, and how much of that is left by its pH.
//!
//! ```text
//! CaCO3 + 2 H⁺ → Ca²⁺ + H2O + CO2
//! n(pH) = Σ i Bi / Σ Bi      Bi = K1 … Ki / a(H⁺)^i, B0 = 1      protons that a molecule of acid has given, on average
//! 2 · lime dissolved = acid · n(pH) − V · 10^−pH / γ              charge balance: what was given and is no longer free H⁺
//! ```
//! A strong acid gives its proton at once; of a weak one the later protons come only as pH rises, and the last hardly react with
//! lime at all: citric acid at pH 4 has given one of its three. What all protons together could dissolve ([`AcidBath::complete`])
//! is therefore no promise.
//! Idealised: the equilibrium constants are those of dilute solutions at 25 °C; all carbon dioxide leaves; nothing settles
//! (calcium citrate and calcium phosphates do, from strong baths, and look like scale that does not dissolve); metal takes no acid.
//! Range: 0…10 000 l, up to 1000 g/l; pH −1…7. Accuracy: of the complete reaction 0.05 %; of what is left by pH about a tenth where
//! the acid is strong, a quarter where it is weak, and a factor of two for each 0.3 by which a strong acid's pH is misread.
//! Source: stoichiometry; constants: phosphoric acid as in phreeqc.dat (Parkhurst and Appelo 2013), the others CRC Handbook, from
//! memory; γ 0.75 of H⁺ among calcium chloride: PHREEQC gives 0.70 to 0.80 for 0.2 to 2.9 mol/l of hydrochloric acid.
//! The label, the maker and local rules come first.

use super::error::{ScienceError, within};
use super::formula::molar_mass;
use uom::si::amount_of_substance::mole;
use uom::si::f64::{AmountOfSubstance, Mass, Ratio, Volume};
use uom::si::mass::gram;
use uom::si::ratio::ratio;
use uom::si::volume::liter;

/// Activity coefficient of H⁺ in a bath.
const GAMMA: f64 = 0.75;
const VOLUME_L_MAX: f64 = 10_000.0;
const STRENGTH_G_L_MAX: f64 = 1000.0;
const PH_LEAST: f64 = -1.0;
const PH_MOST: f64 = 7.0;

/// An acid that descalers are made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Acid {
    /// HCl, strong.
    Hydrochloric,
    /// C6H8O7, three weak protons; weighed without crystal water.
    Citric,
    /// H3PO4, one proton for lime, two that come too late.
    Phosphoric,
    /// H3NSO3, nearly strong.
    Sulfamic,
}

impl Acid {
    /// By its name.
    pub fn parse(acid: &str) -> Result<Self, ScienceError> {
        match acid {
            "hydrochloric" => Ok(Self::Hydrochloric),
            "citric" => Ok(Self::Citric),
            "phosphoric" => Ok(Self::Phosphoric),
            "sulfamic" => Ok(Self::Sulfamic),
            _ => Err(ScienceError::word("acid", acid, "hydrochloric, citric, phosphoric or sulfamic")),
        }
    }

    fn formula(self) -> &'static str {
        match self {
            Self::Hydrochloric => "HCl",
            Self::Citric => "C6H8O7",
            Self::Phosphoric => "H3PO4",
            Self::Sulfamic => "H3NSO3",
        }
    }

    /// −lg K of each proton, the first to go first.
    fn pka(self) -> &'static [f64] {
        match self {
            Self::Hydrochloric => &[-6.0],
            Self::Citric => &[3.13, 4.76, 6.40],
            Self::Phosphoric => &[2.168, 7.207, 12.346],
            Self::Sulfamic => &[1.0],
        }
    }

    /// How many protons a molecule has given at `ph` (−1…7), on average.
    pub fn protons_given(self, ph: f64) -> Result<f64, ScienceError> {
        within("ph", ph, PH_LEAST, PH_MOST)?;
        let (mut form, mut forms, mut given, mut protons) = (1.0, 1.0, 0.0, 0.0);
        for pka in self.pka() {
            form *= libm::exp10(ph - pka);
            protons += 1.0;
            forms += form;
            given += protons * form;
        }
        Ok(given / forms)
    }
}

/// What tells how far a bath has come.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Sign {
    /// A measured pH.
    Ph(f64),
    /// The descaler's own indicator has changed colour; it does so at this pH. The bath is there, or past it.
    IndicatorTurned(f64),
}

/// Acid in a vessel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AcidBath {
    /// Which.
    pub acid: Acid,
    /// Pure acid in the bath when fresh.
    pub mass: Mass,
    /// The whole bath, 0.1…10 000 l.
    pub volume: Volume,
}

/// How far a bath has come.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BathState {
    /// Lime dissolved so far; at least so much if an indicator told.
    pub dissolved: Mass,
    /// Lime that it can still dissolve before it is spent; at most so much if an indicator told.
    pub left: Mass,
    /// The same as a share of what it could when fresh.
    pub share_left: Ratio,
    /// All protons that a base has to take up, the late ones too: for [`super::chemistry::neutralise`].
    pub to_neutralise: AmountOfSubstance,
    /// Whether an indicator told, so that the true bath may be further than this.
    pub or_further: bool,
}

impl AcidBath {
    /// Lime that all protons together could dissolve.
    pub fn complete(&self) -> Result<Mass, ScienceError> {
        Ok(self.protons()? / 2.0 * molar_mass("CaCO3")?)
    }

    /// Lime that the bath has dissolved once it has `ph`.
    pub fn dissolved(&self, ph: f64) -> Result<Mass, ScienceError> {
        let given = self.moles()? * self.acid.protons_given(ph)?;
        // Fresh bath: what was given is all still free, give or take the activity coefficient.
        let taken = (given - free_acid(self.volume, ph)?).max(AmountOfSubstance::new::<mole>(0.0));
        Ok(taken / 2.0 * molar_mass("CaCO3")?)
    }

    /// How far the bath has come by `sign`, where it counts as spent at `spent_ph` (2…6.5; most labels say where).
    pub fn state(&self, sign: Sign, spent_ph: f64) -> Result<BathState, ScienceError> {
        within("spent_ph", spent_ph, 2.0, 6.5)?;
        let (ph, or_further) = match sign {
            Sign::Ph(ph) => (ph, false),
            Sign::IndicatorTurned(ph) => (ph, true),
        };
        let dissolved = self.dissolved(ph)?;
        let when_spent = self.dissolved(spent_ph)?;
        let none = Mass::new::<gram>(0.0);
        let left = (when_spent - dissolved).max(none);
        Ok(BathState {
            dissolved,
            left,
            share_left: if when_spent > none { left / when_spent } else { Ratio::new::<ratio>(0.0) },
            to_neutralise: self.protons()? - 2.0 * (dissolved / molar_mass("CaCO3")?),
            or_further,
        })
    }

    fn moles(&self) -> Result<AmountOfSubstance, ScienceError> {
        let litres = self.volume.get::<liter>();
        within("volume_l", litres, 0.1, VOLUME_L_MAX)?;
        within("acid_g", self.mass.get::<gram>(), 0.0, STRENGTH_G_L_MAX * litres)?;
        Ok(self.mass / molar_mass(self.acid.formula())?)
    }

    fn protons(&self) -> Result<AmountOfSubstance, ScienceError> {
        Ok(self.acid.pka().iter().map(|_| 1.0).sum::<f64>() * self.moles()?)
    }
}

/// Strong acid that is left in so much bath (0…10 000 l) at `ph` (−1…7), however strong it once was. Where an indicator has turned,
/// take its pH: no more than this is left.
pub fn free_acid(volume: Volume, ph: f64) -> Result<AmountOfSubstance, ScienceError> {
    let litres = volume.get::<liter>();
    within("volume_l", litres, 0.0, VOLUME_L_MAX)?;
    within("ph", ph, PH_LEAST, PH_MOST)?;
    Ok(AmountOfSubstance::new::<mole>(litres * libm::exp10(-ph) / GAMMA))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn bath(acid: Acid, grams: f64, litres: f64) -> AcidBath {
        AcidBath { acid, mass: Mass::new::<gram>(grams), volume: Volume::new::<liter>(litres) }
    }

    fn acids() -> impl Strategy<Value = Acid> {
        prop_oneof![Just(Acid::Hydrochloric), Just(Acid::Citric), Just(Acid::Phosphoric), Just(Acid::Sulfamic)]
    }

    #[test]
    fn citric_acid_at_ph_4_has_dissolved_a_third_of_what_its_formula_promises() {
        let bath = bath(Acid::Citric, 500.0, 10.0);
        let share = bath.dissolved(4.0).unwrap() / bath.complete().unwrap();
        assert!((share.get::<ratio>() - 1.0 / 3.0).abs() < 0.03);
    }

    #[test]
    fn a_turned_indicator_says_that_the_bath_may_be_further() {
        let bath = bath(Acid::Hydrochloric, 500.0, 10.0);
        let told = bath.state(Sign::IndicatorTurned(2.5), 4.0).unwrap();
        let measured = bath.state(Sign::Ph(2.5), 4.0).unwrap();
        assert!(told.or_further && !measured.or_further);
        assert_eq!((told.left, told.dissolved), (measured.left, measured.dissolved));
    }

    #[test]
    fn a_strong_acid_loses_nine_tenths_for_each_ph_that_it_rises() {
        let left = |ph| free_acid(Volume::new::<liter>(20.0), ph).unwrap().get::<mole>();
        assert!((left(1.0) / left(2.0) - 10.0).abs() < 1e-9);
    }

    proptest! {
        #[test]
        fn what_is_dissolved_never_falls_as_ph_rises_nor_passes_the_complete_reaction(
            acid in acids(), grams in 1.0..1000.0f64, ph in 0.0..6.0f64, rise in 0.0..1.0f64,
        ) {
            let bath = bath(acid, grams, 10.0);
            let (before, after) = (bath.dissolved(ph)?, bath.dissolved(ph + rise)?);
            prop_assert!(before <= after);
            prop_assert!(after <= bath.complete()?);
        }

        #[test]
        fn dissolved_and_left_are_together_what_the_bath_can(acid in acids(), grams in 10.0..1000.0f64, ph in 0.0..4.0f64) {
            let bath = bath(acid, grams, 10.0);
            let state = bath.state(Sign::Ph(ph), 4.0)?;
            let sum = (state.dissolved + state.left).get::<gram>();
            prop_assert!((sum - bath.dissolved(4.0)?.get::<gram>()).abs() < 1e-9 * grams);
            prop_assert!(state.share_left.get::<ratio>() <= 1.0);
        }

        #[test]
        fn any_bits_give_finite_amounts_or_a_refusal(acid in acids(), x in prop::array::uniform4(prop_oneof![any::<f64>(), 0.0..7.0f64])) {
            let [grams, litres, ph, spent_ph] = x;
            let bath = bath(acid, grams, litres);
            if let Ok(state) = bath.state(Sign::Ph(ph), spent_ph) {
                prop_assert!((state.dissolved + state.left).get::<gram>().is_finite());
                prop_assert!((0.0..=1.0).contains(&state.share_left.get::<ratio>()));
                prop_assert!(state.to_neutralise.get::<mole>() >= 0.0);
            }
            if let Ok(left) = free_acid(Volume::new::<liter>(litres), ph) {
                prop_assert!(left.get::<mole>().is_finite());
            }
        }
    }
}
