//! Whether water tends to leave scale: the short indices of the handbooks.
//!
//! ```text
//! pHs = (9.3 + A + B) − (C + D)     A = (lg TDS − 1) / 10     B = −13.12 lg(t + 273) + 34.55     C = lg Ca − 0.4     D = lg Alk
//! Langelier = pH − pHs              Ryznar = 2 pHs − pH       Ca and Alk in mg/l as CaCO3, TDS in mg/l, t in °C
//! ```
//! Range: pH 4…11, 0…95 °C, calcium and alkalinity 1…2000 mg/l, dissolved solids 1…10 000 mg/l.
//! Accuracy: in 2000 random tap waters (pH 7…8.6, 5…80 °C, up to 1000 mg/l dissolved) nine in ten lay within 0.25 of the full
//! calculation in `carbonate`, the worst at −0.29 and +0.52: where there is an analysis, use that. An index says which way, not how much or how soon.
//! Source: the short formula as printed in many handbooks, from memory.

use super::error::{ScienceError, within};
use super::quantity::{to_celsius, within_c};
use uom::si::f64::ThermodynamicTemperature;

/// Water as a test kit and a data sheet tell it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TapWater {
    /// pH, 4…11.
    pub ph: f64,
    /// Where it is heated, 0…95 °C.
    pub temperature: ThermodynamicTemperature,
    /// Calcium hardness, 1…2000 mg/l as CaCO3.
    pub calcium_mg_l_caco3: f64,
    /// Alkalinity, 1…2000 mg/l as CaCO3.
    pub alkalinity_mg_l_caco3: f64,
    /// Dissolved solids, 1…10 000 mg/l.
    pub tds_mg_l: f64,
}

impl TapWater {
    /// Above zero: limescale settles. Below: it dissolves.
    pub fn langelier(&self) -> Result<f64, ScienceError> {
        Ok(self.ph - self.saturation_ph()?)
    }

    /// About 6 and below: scale. About 7 and above: little scale (common practice, no source).
    pub fn ryznar(&self) -> Result<f64, ScienceError> {
        Ok(2.0 * self.saturation_ph()? - self.ph)
    }

    fn saturation_ph(&self) -> Result<f64, ScienceError> {
        within("ph", self.ph, 4.0, 11.0)?;
        within_c("temperature_c", self.temperature, 0.0, 95.0)?;
        within("calcium_mg_l_caco3", self.calcium_mg_l_caco3, 1.0, 2000.0)?;
        within("alkalinity_mg_l_caco3", self.alkalinity_mg_l_caco3, 1.0, 2000.0)?;
        within("tds_mg_l", self.tds_mg_l, 1.0, 10_000.0)?;
        let a = (libm::log10(self.tds_mg_l) - 1.0) / 10.0;
        let b = -13.12 * libm::log10(to_celsius(self.temperature) + 273.0) + 34.55;
        let c = libm::log10(self.calcium_mg_l_caco3) - 0.4;
        let d = libm::log10(self.alkalinity_mg_l_caco3);
        Ok((9.3 + a + b) - (c + d))
    }
}
