//! Equilibrium constants of the carbonate system and its ion pairs, by temperature.
//!
//! ```text
//! lg K = A1 + A2 T + A3 / T + A4 lg T + A5 / T² + A6 T²          T in kelvin
//! lg K = lg K(25 °C) − ΔH / (R ln 10) · (1 / T − 1 / 298.15 K)     where only an enthalpy is published (van 't Hoff)
//! ```
//! Range: 0…95 °C at about 1 bar; mains pressure moves none of them noticeably.
//! Accuracy: lg K of calcite ±0.02, of the strong pairs ±0.05, of the weak ones ±0.3, as their authors state (from memory).
//! Source: the constants of phreeqc.dat as published with PHREEQC version 3 (Parkhurst and Appelo 2013, USGS Techniques and
//! Methods 6-A43). Of these calcite, CO2, HCO3⁻, CaHCO3⁺ and CaCO3° are from Plummer and Busenberg 1982, Geochimica et
//! Cosmochimica Acta 46, 1011. CaHSO4⁺, the pairs with chloride and the double molecule of CO2 are left out:
//! together they move the index by less than 0.002 in tap water, the last the pH of very acid water by 0.006.

/// R as PHREEQC has it, which its enthalpies were fitted with.
const GAS_CONSTANT_KJ_MOL_K: f64 = 0.008_314_70;
const KJ_A_KCAL: f64 = 4.184;
const REFERENCE_K: f64 = 298.15;

/// How one constant changes with temperature.
enum Law {
    /// A1 to A6 of the analytic expression.
    Analytic([f64; 6]),
    /// lg K at 25 °C and the enthalpy of reaction in kcal/mol.
    VantHoff(f64, f64),
}
use Law::{Analytic, VantHoff};

/// H2O = OH⁻ + H⁺
const WATER: Law = Analytic([293.29227, 0.1360833, -10576.913, -123.73158, 0.0, -6.996455e-5]);
/// CO3²⁻ + H⁺ = HCO3⁻
const BICARBONATE: Law = Analytic([107.8871, 0.03252849, -5151.79, -38.92561, 563713.9, 0.0]);
/// CO3²⁻ + 2 H⁺ = CO2 + H2O
const CARBON_DIOXIDE: Law = Analytic([464.1965, 0.09344813, -26986.16, -165.75951, 2248628.9, 0.0]);
/// SO4²⁻ + H⁺ = HSO4⁻
const BISULFATE: Law = Analytic([-56.889, 0.006473, 2307.9, 19.8858, 0.0, 0.0]);
/// CaCO3 (calcite) = Ca²⁺ + CO3²⁻
const CALCITE: Law = Analytic([-171.9065, -0.077993, 2839.319, 71.595, 0.0, 0.0]);
/// Ca²⁺ + H2O = CaOH⁺ + H⁺
const CALCIUM_HYDROXIDE: Law = VantHoff(-12.78, 0.0);
/// Ca²⁺ + CO3²⁻ = CaCO3°
const CALCIUM_CARBONATE: Law = Analytic([-1228.732, -0.299440, 35512.75, 485.818, 0.0, 0.0]);
/// Ca²⁺ + CO3²⁻ + H⁺ = CaHCO3⁺
const CALCIUM_BICARBONATE: Law = Analytic([1317.0071, 0.34546894, -39916.84, -517.70761, 563713.9, 0.0]);
/// Ca²⁺ + SO4²⁻ = CaSO4°
const CALCIUM_SULFATE: Law = VantHoff(2.25, 1.325);
/// Mg²⁺ + H2O = MgOH⁺ + H⁺
const MAGNESIUM_HYDROXIDE: Law = VantHoff(-11.44, 15.952);
/// Mg²⁺ + CO3²⁻ = MgCO3°
const MAGNESIUM_CARBONATE: Law = Analytic([0.9910, 0.00667, 0.0, 0.0, 0.0, 0.0]);
/// Mg²⁺ + CO3²⁻ + H⁺ = MgHCO3⁺
const MAGNESIUM_BICARBONATE: Law = Analytic([48.6721, 0.03252849, -2614.335, -18.00263, 563713.9, 0.0]);
/// Mg²⁺ + SO4²⁻ = MgSO4°
const MAGNESIUM_SULFATE: Law = VantHoff(2.37, 4.550);
/// Na⁺ + CO3²⁻ = NaCO3⁻
const SODIUM_CARBONATE: Law = VantHoff(1.27, 8.91);
/// Na⁺ + HCO3⁻ = NaHCO3°
const SODIUM_BICARBONATE: Law = VantHoff(-0.25, -1.0);
/// Na⁺ + SO4²⁻ = NaSO4⁻
const SODIUM_SULFATE: Law = VantHoff(0.7, 1.120);
/// K⁺ + SO4²⁻ = KSO4⁻
const POTASSIUM_SULFATE: Law = Analytic([3.106, 0.0, -673.6, 0.0, 0.0, 0.0]);

impl Law {
    /// K itself.
    fn at(&self, temperature_k: f64) -> f64 {
        let t = temperature_k;
        let lg = match self {
            Analytic([a1, a2, a3, a4, a5, a6]) => {
                a1 + a2 * t + a3 / t + a4 * libm::log10(t) + a5 / (t * t) + a6 * t * t
            }
            VantHoff(lg_k, kcal_mol) => {
                let slope = kcal_mol * KJ_A_KCAL / (GAS_CONSTANT_KJ_MOL_K * std::f64::consts::LN_10);
                lg_k - slope * (1.0 / t - 1.0 / REFERENCE_K)
            }
        };
        libm::exp10(lg)
    }
}

/// What one cation forms, each from the free cation, CO3²⁻, SO4²⁻, H⁺ and water; zero where it forms none.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pairs {
    pub(super) hydroxide: f64,
    pub(super) carbonate: f64,
    pub(super) bicarbonate: f64,
    pub(super) sulfate: f64,
}

/// All constants at one temperature.
#[derive(Debug, Clone, Copy)]
pub(super) struct Constants {
    pub(super) water: f64,
    pub(super) bicarbonate: f64,
    pub(super) carbon_dioxide: f64,
    pub(super) bisulfate: f64,
    pub(super) calcite: f64,
    pub(super) calcium: Pairs,
    pub(super) magnesium: Pairs,
    pub(super) sodium: Pairs,
    pub(super) potassium: Pairs,
}

impl Constants {
    pub(super) fn at(temperature_k: f64) -> Self {
        let at = |law: Law| law.at(temperature_k);
        let bicarbonate = at(BICARBONATE);
        Self {
            water: at(WATER),
            bicarbonate,
            carbon_dioxide: at(CARBON_DIOXIDE),
            bisulfate: at(BISULFATE),
            calcite: at(CALCITE),
            calcium: Pairs {
                hydroxide: at(CALCIUM_HYDROXIDE),
                carbonate: at(CALCIUM_CARBONATE),
                bicarbonate: at(CALCIUM_BICARBONATE),
                sulfate: at(CALCIUM_SULFATE),
            },
            magnesium: Pairs {
                hydroxide: at(MAGNESIUM_HYDROXIDE),
                carbonate: at(MAGNESIUM_CARBONATE),
                bicarbonate: at(MAGNESIUM_BICARBONATE),
                sulfate: at(MAGNESIUM_SULFATE),
            },
            sodium: Pairs {
                hydroxide: 0.0,
                carbonate: at(SODIUM_CARBONATE),
                // Published from HCO3⁻, wanted from CO3²⁻ and H⁺.
                bicarbonate: at(SODIUM_BICARBONATE) * bicarbonate,
                sulfate: at(SODIUM_SULFATE),
            },
            potassium: Pairs { hydroxide: 0.0, carbonate: 0.0, bicarbonate: 0.0, sulfate: at(POTASSIUM_SULFATE) },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(law: Law, temperature_c: f64, published_lg_k: f64, within: f64) {
        let lg_k = libm::log10(law.at(temperature_c + 273.15));
        assert!((lg_k - published_lg_k).abs() <= within, "{lg_k} is not {published_lg_k}");
    }

    #[test]
    fn constants_at_25_degrees_are_the_published_ones() {
        // Plummer and Busenberg 1982, abstract (from memory): calcite 8.480, K1 6.352, K2 10.329, CaHCO3 1.11, CaCO3 3.22.
        check(CALCITE, 25.0, -8.480, 0.001);
        check(BICARBONATE, 25.0, 10.329, 0.001);
        check(CARBON_DIOXIDE, 25.0, 6.352 + 10.329, 0.001);
        check(CALCIUM_CARBONATE, 25.0, 3.224, 0.002);
        check(CALCIUM_BICARBONATE, 25.0, 10.329 + 1.106, 0.001);
        // The ion product of water, IAPWS R11-24 as tabulated in handbooks (from memory).
        check(WATER, 25.0, -13.995, 0.005);
        check(WATER, 60.0, -13.02, 0.02);
        check(BISULFATE, 25.0, 1.988, 0.001);
    }
}
