//! Whether frost grows on the coil.
//!
//! ```text
//! margin = the greater of (surface − 0 °C) and (surface − dew point)        frost only where it is below zero
//! surface, where only the evaporating temperature is known: 1.5 K above it, limits ± 1.5 K
//! ```
//! none: margin above k u. likely: below −k u. possible: between. k = 2. Below 0 °C the dew point is the frost point.
//! A coil that is below 0 °C but above the dew point stays dry: no frost in dry cold air.
//!
//! Range: surface −60…60 °C, dew point −60…60 °C.
//! Accuracy: that of the readings; says whether frost can form, not how fast. The 1.5 K between refrigerant and surface is common
//! practice, no source; so is the rule that frost begins where the coldest surface does.
//! Source: ice forms below 0 °C from vapour that reaches its dew point; guard band JCGM 106:2012, 8.3.

use super::error::{ScienceError, within};
use super::uncertainty::{Cause, Doubted, from_limits};

/// Some 95 %.
const K: f64 = 2.0;
const SURFACE_ABOVE_K: f64 = 1.5;

/// What is known of how cold the coil is, °C.
#[derive(Debug, Clone, PartialEq)]
pub enum Coldest {
    /// The coldest surface, by a probe on it.
    Surface(Doubted),
    /// The refrigerant's evaporating temperature, from its pressure.
    Evaporating(Doubted),
}

/// Whether frost grows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FrostRisk {
    /// Not with these readings, doubt and all.
    None,
    /// The doubt reaches across the limit.
    Possible,
    /// Yes, doubt and all.
    Likely,
}

impl FrostRisk {
    /// As it crosses a border.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::None => "none",
            Self::Possible => "possible",
            Self::Likely => "likely",
        }
    }
}

/// Whether frost grows, and how far from it.
#[derive(Debug, Clone, PartialEq)]
pub struct Frost {
    /// In words.
    pub risk: FrostRisk,
    /// By how many kelvin the surface is too warm for frost; below zero it is cold enough.
    pub margin_k: Doubted,
}

/// Whether frost grows on a coil in air of this dew point, °C.
pub fn frost(coldest: &Coldest, dew_point_c: &Doubted) -> Result<Frost, ScienceError> {
    let surface_c = match coldest {
        Coldest::Surface(surface_c) => surface_c.clone(),
        Coldest::Evaporating(evaporating_c) => {
            let above = Doubted::new("above_k", SURFACE_ABOVE_K)?.because(
                "above_k",
                Cause::new("coil surface above the refrigerant"),
                from_limits(SURFACE_ABOVE_K)?,
            )?;
            evaporating_c.plus(&above)
        }
    };
    within("surface_c", surface_c.value(), -60.0, 60.0)?;
    within("dew_point_c", dew_point_c.value(), -60.0, 60.0)?;
    let above_dew_point = surface_c.less(dew_point_c);
    let margin_k = if above_dew_point.value() > surface_c.value() { above_dew_point } else { surface_c };
    let guard = K * margin_k.standard_u();
    let risk = if margin_k.value() > guard {
        FrostRisk::None
    } else if margin_k.value() < -guard {
        FrostRisk::Likely
    } else {
        FrostRisk::Possible
    };
    Ok(Frost { risk, margin_k })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(coldest: Coldest, dew_point: f64, expect: FrostRisk) {
        assert_eq!(frost(&coldest, &reading("hygrometer", dew_point)).unwrap().risk, expect);
    }

    fn reading(cause: &'static str, value: f64) -> Doubted {
        Doubted::new("value", value).unwrap().because("u", Cause::new(cause), 0.3).unwrap()
    }

    fn surface(value: f64) -> Coldest {
        Coldest::Surface(reading("probe", value))
    }

    #[test]
    fn a_cold_coil_in_damp_air_frosts() {
        check(surface(-5.0), 3.0, FrostRisk::Likely);
    }

    #[test]
    fn a_cold_coil_in_dry_air_stays_dry() {
        check(surface(-5.0), -9.0, FrostRisk::None);
    }

    #[test]
    fn a_coil_above_freezing_only_gets_wet() {
        check(surface(2.0), 10.0, FrostRisk::None);
    }

    #[test]
    fn by_the_refrigerant_alone_less_can_be_told() {
        check(surface(-1.0), 5.0, FrostRisk::Likely);
        check(Coldest::Evaporating(reading("gauge", -2.5)), 5.0, FrostRisk::Possible);
        check(Coldest::Evaporating(reading("gauge", -6.0)), 5.0, FrostRisk::Likely);
    }
}
