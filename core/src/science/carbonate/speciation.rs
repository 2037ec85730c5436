//! Which species the dissolved matter forms at a pH that is held.
//!
//! ```text
//! cation total = free (1 + k_OH + (k_CO3 + k_HCO3) c + k_SO4 s)                                          c free CO3²⁻, s free SO4²⁻
//! sulfate total = s (1 + k_HSO4 + Σ k_SO4 free)
//! alkalinity = OH − H − HSO4 + HCO3 + 2 CO3 + Σ (MOH + MHCO3 + 2 MCO3)      k: a constant over the activity coefficients
//! ```
//! The two balances are solved by Newton, in turn, from below. Each is an increasing concave function of its own unknown and
//! a falling one of the other, so the steps rise to the answer and cannot pass it; the activity coefficients follow in the
//! same loop. Charge is not forced to balance: an analysis that is out of balance stays so, as in PHREEQC when pH is held.
//! Range: as [`super::WaterAnalysis`]. Tap water settles in about ten rounds; what has not after [`ROUNDS_MAX`] is refused.

use super::activities::{self, Cation, DebyeHuckel};
use super::constants::{Constants, Pairs};

const ROUNDS_MAX: usize = 200;
const STEPS_MAX: usize = 60;
/// How far a balance may stay open, as a share of its total.
const CLOSED: f64 = 1e-14;
/// How far the state may still move from one round to the next, as a share of each total.
const SETTLED: f64 = 1e-13;
/// By how much a mole of anything dissolved in a kilogram lowers the activity of water (Raoult's law, as in PHREEQC).
const WATER_LOWERED_BY: f64 = 0.017;

/// What is dissolved, in mol/kg of water; alkalinity in equivalents.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Totals {
    pub(super) calcium: f64,
    pub(super) magnesium: f64,
    pub(super) sodium: f64,
    pub(super) potassium: f64,
    pub(super) sulfate: f64,
    pub(super) chloride: f64,
    pub(super) alkalinity: f64,
}

/// Why there is no answer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Unsolved {
    /// Hydroxide alone, at this pH, makes more alkalinity than there is: at least this much, in eq/kg.
    AlkalinityBelow(f64),
    /// The rounds ran out.
    Unsettled,
}

/// One temperature's chemistry.
#[derive(Debug, Clone, Copy)]
pub(super) struct Chemistry {
    pub(super) constants: Constants,
    pub(super) ions: DebyeHuckel,
}

/// A cation with its pairs, in mol/kg.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Paired {
    pub(super) free: f64,
    pub(super) hydroxide: f64,
    pub(super) carbonate: f64,
    pub(super) bicarbonate: f64,
    pub(super) sulfate: f64,
}

/// Water at rest: molalities, and the index.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Speciation {
    pub(super) hydrogen: f64,
    pub(super) hydroxide: f64,
    pub(super) carbonate: f64,
    pub(super) bicarbonate: f64,
    pub(super) carbon_dioxide: f64,
    pub(super) sulfate: f64,
    pub(super) bisulfate: f64,
    pub(super) calcium: Paired,
    pub(super) magnesium: Paired,
    pub(super) sodium: Paired,
    pub(super) potassium: Paired,
    /// lg of the ion activity product over calcite's constant.
    pub(super) calcite_saturation_index: f64,
}

impl Paired {
    /// Everything that holds the cation.
    pub(super) fn total(&self) -> f64 {
        self.free + self.hydroxide + self.carbonate + self.bicarbonate + self.sulfate
    }

    /// Σ z² m, where the free cation has `charge`.
    fn charges_squared(&self, charge: f64) -> f64 {
        let square = |z: f64| z * z;
        square(charge) * self.free
            + square(charge - 1.0) * (self.hydroxide + self.bicarbonate)
            + square(charge - 2.0) * (self.carbonate + self.sulfate)
    }
}

impl Speciation {
    fn cations(&self) -> [Paired; 4] {
        [self.calcium, self.magnesium, self.sodium, self.potassium]
    }

    /// Total carbon, mol/kg.
    pub(super) fn carbon(&self) -> f64 {
        let paired: f64 = self.cations().iter().map(|m| m.carbonate + m.bicarbonate).sum();
        self.carbonate + self.bicarbonate + self.carbon_dioxide + paired
    }

    /// Half the sum of z² m.
    fn ionic_strength(&self, chloride: f64) -> f64 {
        let single = self.hydrogen + self.hydroxide + self.bicarbonate + self.bisulfate + chloride;
        let doubly = 4.0 * (self.carbonate + self.sulfate);
        let [calcium, magnesium, sodium, potassium] = self.cations();
        let twofold = calcium.charges_squared(2.0) + magnesium.charges_squared(2.0);
        let onefold = sodium.charges_squared(1.0) + potassium.charges_squared(1.0);
        0.5 * (single + doubly + twofold + onefold)
    }

    fn water_activity(&self, chloride: f64) -> f64 {
        let anions = self.hydroxide + self.carbonate + self.bicarbonate + self.sulfate + self.bisulfate + chloride;
        let cations: f64 = self.cations().iter().map(Paired::total).sum();
        1.0 - WATER_LOWERED_BY * (self.hydrogen + self.carbon_dioxide + anions + cations)
    }
}

/// A cation's pairs with the activity coefficients in them: molality of a pair = k · free · its anion's molality.
#[derive(Debug, Clone, Copy)]
struct Conditional {
    total: f64,
    hydroxide: f64,
    carbonate: f64,
    bicarbonate: f64,
    sulfate: f64,
}

impl Conditional {
    fn free(&self, c: f64, s: f64) -> f64 {
        self.total / (1.0 + self.hydroxide + (self.carbonate + self.bicarbonate) * c + self.sulfate * s)
    }

    /// Sulfate that it binds, and the slope of that toward `s`.
    fn sulfate_bound(&self, c: f64, s: f64) -> (f64, f64) {
        let free = self.free(c, s);
        let bound = self.sulfate * free;
        (bound * s, bound * (1.0 - self.share_taken(free, self.sulfate) * s))
    }

    /// Alkalinity that its pairs hold, and the slope of that toward `c`.
    fn alkalinity(&self, c: f64, s: f64) -> (f64, f64) {
        let free = self.free(c, s);
        let with_c = 2.0 * self.carbonate + self.bicarbonate;
        let held = free * (self.hydroxide + with_c * c);
        (held, free * with_c - held * self.share_taken(free, self.carbonate + self.bicarbonate))
    }

    /// −(∂free/∂x) / free for an anion that binds with `k`.
    fn share_taken(&self, free: f64, k: f64) -> f64 {
        if self.total > 0.0 { k * free / self.total } else { 0.0 }
    }

    fn paired(&self, c: f64, s: f64) -> Paired {
        let free = self.free(c, s);
        Paired {
            free,
            hydroxide: self.hydroxide * free,
            carbonate: self.carbonate * free * c,
            bicarbonate: self.bicarbonate * free * c,
            sulfate: self.sulfate * free * s,
        }
    }
}

/// Everything that the two balances need, at one ionic strength.
#[derive(Debug, Clone, Copy)]
struct Round {
    hydrogen: f64,
    hydroxide: f64,
    /// HCO3⁻, CO2 and HSO4⁻ for each of their bare anion.
    bicarbonate: f64,
    carbon_dioxide: f64,
    bisulfate: f64,
    cations: [Conditional; 4],
    /// Product of the activity coefficients of Ca²⁺ and CO3²⁻.
    calcite_gamma: f64,
}

impl Round {
    fn new(chemistry: &Chemistry, totals: &Totals, h: f64, ionic_strength: f64, water: f64) -> Self {
        let Chemistry { constants: k, ions } = chemistry;
        let gamma = |charge, size| ions.gamma(charge, size, ionic_strength);
        let (co3, so4) = (gamma(2.0, activities::CARBONATE), gamma(2.0, activities::SULFATE));
        let cation = |total: f64, of: Cation, pairs: Pairs| {
            let free = gamma(of.charge, of.free);
            Conditional {
                total,
                hydroxide: pairs.hydroxide * water * free / (h * gamma(of.charge - 1.0, of.hydroxide)),
                carbonate: pairs.carbonate * free * co3 / gamma(of.charge - 2.0, of.carbonate),
                bicarbonate: pairs.bicarbonate * h * free * co3 / gamma(of.charge - 1.0, of.bicarbonate),
                sulfate: pairs.sulfate * free * so4 / gamma(of.charge - 2.0, of.sulfate),
            }
        };
        Self {
            hydrogen: h / gamma(1.0, activities::HYDROGEN),
            hydroxide: k.water * water / (h * gamma(1.0, activities::HYDROXIDE)),
            bicarbonate: k.bicarbonate * h * co3 / gamma(1.0, activities::BICARBONATE),
            carbon_dioxide: k.carbon_dioxide * h * h * co3 / (gamma(0.0, activities::CARBONATE) * water),
            bisulfate: k.bisulfate * h * so4 / gamma(1.0, activities::BISULFATE),
            cations: [
                cation(totals.calcium, activities::CALCIUM, k.calcium),
                cation(totals.magnesium, activities::MAGNESIUM, k.magnesium),
                cation(totals.sodium, activities::SODIUM, k.sodium),
                cation(totals.potassium, activities::POTASSIUM, k.potassium),
            ],
            calcite_gamma: gamma(activities::CALCIUM.charge, activities::CALCIUM.free) * co3,
        }
    }

    /// Free sulfate for a given free carbonate.
    fn sulfate(&self, totals: &Totals, c: f64, start: f64) -> Option<f64> {
        rise(start, totals.sulfate, |s| {
            let (bound, slope) = sum(self.cations.map(|cation| cation.sulfate_bound(c, s)));
            (s * (1.0 + self.bisulfate) + bound - totals.sulfate, 1.0 + self.bisulfate + slope)
        })
    }

    /// Alkalinity less what there is of it, and its slope toward `c`.
    fn alkalinity(&self, totals: &Totals, c: f64, s: f64) -> (f64, f64) {
        let (held, slope) = sum(self.cations.map(|cation| cation.alkalinity(c, s)));
        let own = self.hydroxide - self.hydrogen - self.bisulfate * s;
        (own + (2.0 + self.bicarbonate) * c + held - totals.alkalinity, 2.0 + self.bicarbonate + slope)
    }

    fn speciation(&self, constants: &Constants, c: f64, s: f64) -> Speciation {
        let [calcium, magnesium, sodium, potassium] = self.cations.map(|cation| cation.paired(c, s));
        let product = calcium.free * c * self.calcite_gamma;
        Speciation {
            hydrogen: self.hydrogen,
            hydroxide: self.hydroxide,
            carbonate: c,
            bicarbonate: self.bicarbonate * c,
            carbon_dioxide: self.carbon_dioxide * c,
            sulfate: s,
            bisulfate: self.bisulfate * s,
            calcium,
            magnesium,
            sodium,
            potassium,
            calcite_saturation_index: libm::log10(product / constants.calcite),
        }
    }
}

fn sum(parts: [(f64, f64); 4]) -> (f64, f64) {
    parts.iter().fold((0.0, 0.0), |(value, slope), part| (value + part.0, slope + part.1))
}

/// The root of an increasing concave function that is not positive at zero, by Newton; `start` is a guess, `size` that of the
/// function's terms.
fn rise(start: f64, size: f64, f: impl Fn(f64) -> (f64, f64)) -> Option<f64> {
    let mut x = start;
    for _ in 0..STEPS_MAX {
        let (value, slope) = f(x);
        // As near as the terms' own rounding lets it come.
        if value.abs() <= CLOSED * size {
            return Some(x);
        }
        // From beyond the root one step may fall below zero; from zero on all of them rise.
        x = (x - value / slope).max(0.0);
    }
    None
}

/// Solves all balances at a pH given as the activity of H⁺.
pub(super) fn speciate(chemistry: &Chemistry, totals: &Totals, h: f64) -> Result<Speciation, Unsolved> {
    let (mut c, mut s, mut water) = (0.0, 0.0, 1.0);
    let mut ionic_strength = 0.5
        * (4.0 * (totals.calcium + totals.magnesium + totals.sulfate)
            + totals.sodium
            + totals.potassium
            + totals.chloride
            + totals.alkalinity);
    for _ in 0..ROUNDS_MAX {
        let round = Round::new(chemistry, totals, h, ionic_strength, water);
        let next_s = round.sulfate(totals, c, s).ok_or(Unsolved::Unsettled)?;
        let (surplus, _) = round.alkalinity(totals, 0.0, next_s);
        // Not refused before all rests: the first rounds, which know of no pairs yet, make more hydroxide than there will be.
        let no_room = surplus >= 0.0;
        let next_c = match no_room {
            true => 0.0,
            false => rise(c, totals.alkalinity, |c| round.alkalinity(totals, c, next_s)).ok_or(Unsolved::Unsettled)?,
        };
        let found = round.speciation(&chemistry.constants, next_c, next_s);
        let strength = found.ionic_strength(totals.chloride);
        let still = |next: f64, before: f64, of: f64| (next - before).abs() <= SETTLED * of;
        // Where hydroxide leaves carbonate hardly any room, its own last digits never rest; those of the alkalinity do.
        let (_, slope) = round.alkalinity(totals, next_c, next_s);
        if still(next_c * slope, c * slope, totals.alkalinity)
            && still(next_s, s, totals.sulfate)
            && still(strength, ionic_strength, strength)
        {
            return if no_room { Err(Unsolved::AlkalinityBelow(totals.alkalinity + surplus)) } else { Ok(found) };
        }
        (c, s, ionic_strength, water) = (next_c, next_s, strength, found.water_activity(totals.chloride));
    }
    Err(Unsolved::Unsettled)
}
