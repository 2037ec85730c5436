//! An assignment: where to go, to whom, which units, and what past visits said. It lies beside the log, not in it.

use serde::{Deserialize, Serialize};

use super::Shared;

/// One attendance that the office asks for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Assignment {
    /// Its name at the office.
    pub id: String,
    /// The day on which it is due, ISO 8601.
    pub due: String,
    /// Why: yearly service, first service, …, as words for the technician.
    pub reason: String,
    /// Where.
    pub site: Site,
    /// Whose.
    pub owner: Owner,
    /// What.
    pub units: Vec<AssignedUnit>,
    /// What its units share. Without a word they are taken to share supply, valves, cylinder and lock; an empty list says
    /// that they share nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shares: Option<Vec<Shared>>,
}

/// Where.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Site {
    /// The house's name.
    pub name: String,
    /// The address.
    pub address: String,
    /// Degrees north, WGS 84.
    pub latitude_deg: f64,
    /// Degrees east, WGS 84.
    pub longitude_deg: f64,
    /// How to get in, where the isolator is.
    #[serde(default)]
    pub note: String,
}

/// Whose.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Owner {
    /// Name.
    pub name: String,
    /// Telephone.
    #[serde(default)]
    pub phone: String,
    /// The language of the summary, `en` or `es`.
    pub language: String,
}

/// A unit to serve.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct AssignedUnit {
    /// Its letter in the visit.
    pub letter: String,
    /// Its name in the register.
    pub unit: String,
    /// Maker.
    pub maker: String,
    /// Model.
    pub model: String,
    /// Serial number.
    pub serial: String,
    /// The pack of its kind.
    pub pack: String,
    /// What flows in its circuit, as its label names it: 'R290'. None where nobody wrote it down.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub refrigerant: Option<String>,
    /// What past visits read.
    #[serde(default)]
    pub history: Vec<PastReading>,
}

/// A value of a past visit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PastReading {
    /// Which reading.
    pub reading: String,
    /// Decimal text, in `unit`.
    pub value: String,
    /// UCUM code.
    pub unit: String,
    /// ISO 8601 day.
    pub date: String,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_assigned_before_refrigerants_were_named_reads_and_is_written_as_it_was() {
        let old = r#"{"letter":"A","unit":"U-1","maker":"M","model":"One","serial":"1","pack":"p","history":[]}"#;
        let unit: AssignedUnit = serde_json::from_str(old).unwrap();
        assert_eq!(unit.refrigerant, None);
        assert_eq!(serde_json::to_string(&unit).unwrap(), old);
    }
}
