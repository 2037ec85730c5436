//! Whether water lays down limescale: the full carbonate calculation.
//!
//! ```text
//! index = lg (a(Ca²⁺) a(CO3²⁻) / K calcite)          a = γ m; m from the balances of calcium, carbon, sulfate and alkalinity
//! ```
//! Above zero lime can settle, below it can dissolve; at zero water and lime are at rest. Activities stand in
//! `activities.rs`, constants in `constants.rs`, the balances in `speciation.rs`, heating in `heating.rs`.
//!
//! Range: the limits of [`WaterAnalysis`]. Accuracy, against PHREEQC with phreeqc.dat (tests/outside/grids/scaling_phreeqc.py): within
//! 0.0002 at a held pH and 0.002 when heated over pH 6…9.5, 1…90 °C, calcium 1…400 and alkalinity 5…600 mg/l; over the whole range
//! within 0.006 in heated pH, and within 0.03 in the index in the corner where hydroxide makes nearly all of the alkalinity. Of the true index: no better
//! than pH was measured, as one tenth of pH moves it by one tenth. An index says which way, not how much or how soon.
//! Source: Parkhurst and Appelo 2013 (PHREEQC version 3); Plummer and Busenberg 1982. Concentrations are taken a litre of
//! water that weighs one kilogram with all that is in it, as PHREEQC takes mg/l.

mod activities;
mod constants;
mod heating;
mod speciation;

use super::error::{ScienceError, within};
use super::quantity::{to_celsius, within_c, within_temperatures};
use super::{quantity, water};
use activities::DebyeHuckel;
use constants::Constants;
use speciation::{Chemistry, Speciation, Totals, Unsolved, speciate};
use uom::si::f64::ThermodynamicTemperature;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::thermodynamic_temperature::kelvin;

/// Grams a mole; of CaCO3 the half, which holds one equivalent. IUPAC 2021, abridged, as in `formula.rs`.
const CALCIUM: f64 = 40.078;
const MAGNESIUM: f64 = 24.305;
const SODIUM: f64 = 22.990;
const POTASSIUM: f64 = 39.098;
const SULFATE: f64 = 96.056;
const CHLORIDE: f64 = 35.45;
const HALF_LIME: f64 = 50.043;

const HOT_MAX_C: f64 = 95.0;
const ALKALINITY_MAX_MG_L: f64 = 1000.0;

/// Water as an analysis tells it. What is not known may be given as nothing, but for calcium and alkalinity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaterAnalysis {
    /// pH at `temperature`, 5.5…10.
    pub ph: f64,
    /// Where pH was measured, 0…95 °C.
    pub temperature: ThermodynamicTemperature,
    /// 0.1…1000 mg/l.
    pub calcium_mg_l: f64,
    /// 0…500 mg/l.
    pub magnesium_mg_l: f64,
    /// 0…1000 mg/l.
    pub sodium_mg_l: f64,
    /// 0…200 mg/l.
    pub potassium_mg_l: f64,
    /// 1…1000 mg/l as CaCO3, and more than hydroxide alone makes at this pH.
    pub alkalinity_mg_l_caco3: f64,
    /// 0…1500 mg/l.
    pub sulfate_mg_l: f64,
    /// 0…1500 mg/l.
    pub chloride_mg_l: f64,
}

/// Water after heating.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeatedWater {
    /// Its pH when hot.
    pub ph: f64,
    /// lg of the ion activity product over calcite's constant, when hot.
    pub calcite_saturation_index: f64,
}

impl WaterAnalysis {
    /// The index at the temperature and pH of the analysis.
    pub fn calcite_saturation_index(&self) -> Result<f64, ScienceError> {
        Ok(self.speciation()?.calcite_saturation_index)
    }

    /// After heating to `heated` (from `temperature` to 95 °C) in a closed system, before anything settles: what the
    /// exchanger's surface sees.
    pub fn heated(&self, heated: ThermodynamicTemperature) -> Result<HeatedWater, ScienceError> {
        let cold = self.speciation()?;
        within_temperatures("heated_c", heated, self.temperature, quantity::celsius(HOT_MAX_C))?;
        let hot = chemistry("heated_c", heated)?;
        let (ph, state) =
            heating::heat(&hot, &self.totals(), cold.carbon(), self.ph).map_err(|unsolved| self.refused(unsolved))?;
        Ok(HeatedWater { ph, calcite_saturation_index: state.calcite_saturation_index })
    }

    /// By how much the cations outweigh the anions, as a share of all charge: −1…1. Beyond 0.05 something was misread or is
    /// missing from the analysis (common practice, no source).
    pub fn ion_imbalance(&self) -> Result<f64, ScienceError> {
        self.check()?;
        let totals = self.totals();
        let cations = 2.0 * (totals.calcium + totals.magnesium) + totals.sodium + totals.potassium;
        let anions = 2.0 * totals.sulfate + totals.chloride + totals.alkalinity;
        Ok((cations - anions) / (cations + anions))
    }

    fn speciation(&self) -> Result<Speciation, ScienceError> {
        self.check()?;
        let chemistry = chemistry("temperature_c", self.temperature)?;
        speciate(&chemistry, &self.totals(), libm::exp10(-self.ph)).map_err(|unsolved| self.refused(unsolved))
    }

    fn check(&self) -> Result<(), ScienceError> {
        within("ph", self.ph, 5.5, 10.0)?;
        within_c("temperature_c", self.temperature, 0.0, HOT_MAX_C)?;
        within("calcium_mg_l", self.calcium_mg_l, 0.1, 1000.0)?;
        within("magnesium_mg_l", self.magnesium_mg_l, 0.0, 500.0)?;
        within("sodium_mg_l", self.sodium_mg_l, 0.0, 1000.0)?;
        within("potassium_mg_l", self.potassium_mg_l, 0.0, 200.0)?;
        within("alkalinity_mg_l_caco3", self.alkalinity_mg_l_caco3, 1.0, ALKALINITY_MAX_MG_L)?;
        within("sulfate_mg_l", self.sulfate_mg_l, 0.0, 1500.0)?;
        within("chloride_mg_l", self.chloride_mg_l, 0.0, 1500.0)
    }

    /// Kilograms of water in a litre, which weighs one kilogram with what is dissolved.
    fn water_kg_l(&self) -> f64 {
        let dissolved_mg_l = self.calcium_mg_l
            + self.magnesium_mg_l
            + self.sodium_mg_l
            + self.potassium_mg_l
            + self.alkalinity_mg_l_caco3
            + self.sulfate_mg_l
            + self.chloride_mg_l;
        1.0 - 1e-6 * dissolved_mg_l
    }

    fn totals(&self) -> Totals {
        let water_kg_l = self.water_kg_l();
        let molal = |mg_l: f64, g_mol: f64| mg_l / (1000.0 * g_mol * water_kg_l);
        Totals {
            calcium: molal(self.calcium_mg_l, CALCIUM),
            magnesium: molal(self.magnesium_mg_l, MAGNESIUM),
            sodium: molal(self.sodium_mg_l, SODIUM),
            potassium: molal(self.potassium_mg_l, POTASSIUM),
            sulfate: molal(self.sulfate_mg_l, SULFATE),
            chloride: molal(self.chloride_mg_l, CHLORIDE),
            alkalinity: molal(self.alkalinity_mg_l_caco3, HALF_LIME),
        }
    }

    fn refused(&self, unsolved: Unsolved) -> ScienceError {
        match unsolved {
            Unsolved::AlkalinityBelow(least) => {
                let least_mg_l = least * 1000.0 * HALF_LIME * self.water_kg_l();
                let given = self.alkalinity_mg_l_caco3;
                ScienceError::out_of_range("alkalinity_mg_l_caco3", given, least_mg_l, ALKALINITY_MAX_MG_L)
            }
            Unsolved::Unsettled => ScienceError::NoAnswer {
                calculation: format!("the carbonate balance at pH {} and {} °C", self.ph, to_celsius(self.temperature)),
            },
        }
    }
}

fn chemistry(argument: &str, temperature: ThermodynamicTemperature) -> Result<Chemistry, ScienceError> {
    let temperature_k = temperature.get::<kelvin>();
    let density = water::liquid(argument, temperature)?.density.get::<kilogram_per_cubic_meter>();
    Ok(Chemistry { constants: Constants::at(temperature_k), ions: DebyeHuckel::at(temperature_k, density / 1000.0) })
}

#[cfg(test)]
mod tests;
