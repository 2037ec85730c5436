//! What the rules say about a refrigerant: warming potential, safety group, flammable limit, small charge.
//!
//! ```text
//! CO2 equivalent = charge · Σ mass fraction · warming potential        small charge = 4 m³ · LFL (A2, A3), 6 m³ · LFL (A2L)
//! ```
//! Range: the refrigerants below, written as R32, R-32 or r 32; charge 0…10 000 kg.
//! State: the rules as of 2024. Local codes come first.
//! Source: Regulation (EU) 2024/573: annex I for R32, R125 and R134a (seen in a public copy of the annexes dated 7 February 2024),
//! annexes II and VI for R1234yf, R290 and R600a (from memory). They mix assessment reports. Blends and safety groups: ISO 817;
//! flammable limits: ISO 817; small charge: IEC 60335-2-40 and ISO 5149-1, m1 (all from memory).

use super::error::{ScienceError, within};
use super::refrigerant::Refrigerant;
use uom::si::f64::{Mass, MassDensity, Ratio, Volume};
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::ratio::ratio;
use uom::si::volume::cubic_meter;

const R32: f64 = 675.0;
const R125: f64 = 3500.0;
const R134A: f64 = 1430.0;
const R1234YF: f64 = 0.501;
const R290: f64 = 0.02;
const R600A: f64 = 0.0;
const R744: f64 = 1.0;

/// How easily a refrigerant burns; all of these are of the lower toxicity, A.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SafetyGroup {
    /// No flame spreads.
    A1,
    /// Burns slowly.
    A2L,
    /// Burns readily.
    A3,
}

impl SafetyGroup {
    /// As standards write it.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::A1 => "A1",
            Self::A2L => "A2L",
            Self::A3 => "A3",
        }
    }
}

/// What the rules say about one refrigerant.
struct Rule {
    group: SafetyGroup,
    /// Lower flammable limit; none where no flame spreads.
    flammable_kg_m3: Option<f64>,
    /// Mass fraction and warming potential of each part.
    parts: &'static [(f64, f64)],
}

fn rule(group: SafetyGroup, flammable_kg_m3: Option<f64>, parts: &'static [(f64, f64)]) -> Rule {
    Rule { group, flammable_kg_m3, parts }
}

impl Refrigerant {
    fn rule(self) -> Rule {
        match self {
            Self::R290 => rule(SafetyGroup::A3, Some(0.038), &[(1.0, R290)]),
            Self::R600a => rule(SafetyGroup::A3, Some(0.043), &[(1.0, R600A)]),
            Self::R744 => rule(SafetyGroup::A1, None, &[(1.0, R744)]),
            Self::R32 => rule(SafetyGroup::A2L, Some(0.307), &[(1.0, R32)]),
            Self::R134a => rule(SafetyGroup::A1, None, &[(1.0, R134A)]),
            Self::R1234yf => rule(SafetyGroup::A2L, Some(0.289), &[(1.0, R1234YF)]),
            Self::R410A => rule(SafetyGroup::A1, None, &[(0.5, R32), (0.5, R125)]),
            Self::R407C => rule(SafetyGroup::A1, None, &[(0.23, R32), (0.25, R125), (0.52, R134A)]),
            Self::R513A => rule(SafetyGroup::A1, None, &[(0.44, R134A), (0.56, R1234YF)]),
            Self::R454B => rule(SafetyGroup::A2L, Some(0.297), &[(0.689, R32), (0.311, R1234YF)]),
        }
    }

    /// Safety group.
    pub fn safety_group(self) -> SafetyGroup {
        self.rule().group
    }

    /// Mass of CO2 that warms as much as this charge (0…10 000 kg).
    pub fn co2_equivalent(self, charge: Mass) -> Result<Mass, ScienceError> {
        within("charge_kg", charge.get::<kilogram>(), 0.0, 10_000.0)?;
        let potential: f64 = self.rule().parts.iter().map(|(fraction, potential)| fraction * potential).sum();
        Ok(charge * Ratio::new::<ratio>(potential))
    }

    /// The least of it in air that can burn; refused for one in which no flame spreads.
    pub fn lower_flammable_limit(self) -> Result<MassDensity, ScienceError> {
        self.rule().flammable_kg_m3.map(MassDensity::new::<kilogram_per_cubic_meter>).ok_or_else(|| {
            ScienceError::word("refrigerant", self.as_str(), "a flammable one: group A1 has no lower flammable limit")
        })
    }

    /// The charge up to which the standards ask nothing of the room; refused as [`Self::lower_flammable_limit`].
    pub fn small_charge_limit(self) -> Result<Mass, ScienceError> {
        let volume_m3 = match self.safety_group() {
            SafetyGroup::A2L => 6.0,
            SafetyGroup::A1 | SafetyGroup::A3 => 4.0,
        };
        Ok(self.lower_flammable_limit()? * Volume::new::<cubic_meter>(volume_m3))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_blend_is_whole_and_what_burns_has_a_limit() {
        for refrigerant in Refrigerant::ALL {
            let rule = refrigerant.rule();
            let whole: f64 = rule.parts.iter().map(|(fraction, _)| fraction).sum();
            assert!((whole - 1.0).abs() < 1e-12, "{refrigerant:?}");
            assert_eq!(rule.flammable_kg_m3.is_none(), rule.group == SafetyGroup::A1);
        }
    }

    #[test]
    fn what_does_not_burn_has_no_flammable_limit() {
        assert!(Refrigerant::R744.small_charge_limit().is_err());
    }
}
