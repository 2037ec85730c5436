//! Who does the round, with what, and what they may do: handed out by the office, kept on the device beside the log.

use serde::{Deserialize, Serialize};

/// The technician of a device.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Technician {
    /// Name.
    #[serde(default)]
    pub name: String,
    /// Their own instruments.
    #[serde(default)]
    pub instruments: Vec<OwnInstrument>,
    /// What they may do by a body's word.
    #[serde(default)]
    pub accreditations: Vec<Accreditation>,
}

/// One instrument of the technician's own. Its stated error takes the place of the pack's typical one.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct OwnInstrument {
    /// The pack's instrument that it is one of: `pipe-thermometer`.
    pub kind: String,
    /// What the technician calls it, without its maker: 'clamp thermometer, blue'.
    pub name: String,
    /// Serial number.
    pub serial: String,
    /// Half width of its error limits, in the log's unit of the quantity, a decimal number as text.
    pub error_limit: String,
    /// The last day of its calibration, ISO 8601; empty where it needs none.
    #[serde(default)]
    pub calibrated_until: String,
}

/// What a body lets the technician do.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Accreditation {
    /// What: 'refrigerant circuits, category I'.
    pub name: String,
    /// The holder's number.
    #[serde(default)]
    pub number: String,
    /// The last day on which it holds, ISO 8601; empty where it has no end.
    #[serde(default)]
    pub valid_until: String,
}

impl OwnInstrument {
    /// Was its calibration over before this day (ISO 8601)?
    #[must_use]
    pub fn lapsed_on(&self, day: &str) -> bool {
        // ISO days sort as text.
        !self.calibrated_until.is_empty() && self.calibrated_until.as_str() < day
    }
}

impl Technician {
    /// The instrument to measure with: of that kind, one whose calibration holds on that day before one that lapsed.
    #[must_use]
    pub fn instrument(&self, kind: &str, day: &str) -> Option<&OwnInstrument> {
        let of_kind = || self.instruments.iter().filter(|own| own.kind == kind);
        of_kind().find(|own| !own.lapsed_on(day)).or_else(|| of_kind().next())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn own(serial: &str, until: &str) -> OwnInstrument {
        OwnInstrument {
            kind: "ph-meter".into(),
            name: "pH meter".into(),
            serial: serial.into(),
            error_limit: "0.1".into(),
            calibrated_until: until.into(),
        }
    }

    #[test]
    fn an_instrument_is_good_on_the_last_day_of_its_calibration_and_lapsed_the_day_after() {
        let meter = own("1", "2026-05-04");
        assert!(!meter.lapsed_on("2026-05-04"));
        assert!(meter.lapsed_on("2026-05-05"));
        assert!(!own("2", "").lapsed_on("2999-01-01"));
    }

    #[test]
    fn of_two_of_a_kind_the_one_that_is_still_good_is_taken() {
        let mut technician = Technician {
            instruments: vec![own("old", "2026-01-01"), own("new", "2027-01-01")],
            ..Technician::default()
        };
        let serial =
            |technician: &Technician, day| technician.instrument("ph-meter", day).map(|own| own.serial.clone());
        assert_eq!(serial(&technician, "2026-05-04").as_deref(), Some("new"));
        technician.instruments.pop();
        assert_eq!(serial(&technician, "2026-05-04").as_deref(), Some("old"), "better a lapsed one than none");
        assert_eq!(technician.instrument("flow-meter", "2026-05-04"), None);
    }
}
