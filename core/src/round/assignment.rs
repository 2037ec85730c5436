//! An assignment: where to go, to whom, which units, and what past visits said. It lies beside the log, not in it.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::Shared;
use super::terms::Terms;
use crate::visit::event::Severity;

/// One attendance that the office asks for.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
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
    /// The day for which the office planned it, ISO 8601, where it did.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub planned: Option<String>,
    /// What was agreed with the owner, where a time was.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub appointment: Option<Appointment>,
    /// Where the van starts in the morning, where the office says so.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub start: Option<Spot>,
}

/// A time agreed with the owner, by the clock on the spot. Work begins between both.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Appointment {
    /// ISO 8601 day.
    pub day: String,
    /// Not before, '10:00'.
    pub from: String,
    /// At the latest, '10:30'.
    pub until: String,
}

/// A place that is no site.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Spot {
    /// Degrees north, WGS 84.
    pub latitude_deg: f64,
    /// Degrees east, WGS 84.
    pub longitude_deg: f64,
}

/// Where.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
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
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
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
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
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
    /// What the register knows of it: answers to the pack's questions, by condition.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub known: BTreeMap<String, String>,
    /// The day since which it is in service, ISO 8601.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub in_service: Option<String>,
    /// The day of its last service that counts, ISO 8601. None before the first.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub last_service: Option<String>,
    /// The terms of its cover, where it has any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub terms: Option<Terms>,
    /// What past visits found and nobody has mended yet.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub findings: Vec<OpenFinding>,
    /// Minutes on site of past visits to units of its pack, also other ones.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub past_minutes: Vec<u32>,
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

/// A finding of a past visit that is still open.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct OpenFinding {
    /// How much it matters.
    pub severity: Severity,
    /// In the technician's words of then.
    pub text: String,
    /// ISO 8601 day.
    pub date: String,
}

/// The question of every pack whose answer the register implies.
const FIRST_SERVICE: &str = "first-service";

impl AssignedUnit {
    /// What is known of the unit before the visit, by condition. Whether it is the first service follows from the
    /// register where it is not said: a unit that was served is past it, one in service that never was is not.
    #[must_use]
    pub fn answers(&self) -> BTreeMap<String, String> {
        let mut answers = self.known.clone();
        let first = match (&self.last_service, &self.in_service) {
            (Some(_), _) => Some("no"),
            (None, Some(_)) => Some("yes"),
            (None, None) => None,
        };
        if let Some(first) = first {
            answers.entry(FIRST_SERVICE.to_owned()).or_insert_with(|| first.to_owned());
        }
        answers
    }
}

impl Appointment {
    /// From and until in minutes since midnight; none where they are no clock times.
    #[must_use]
    pub fn window_min(&self) -> Option<(u32, u32)> {
        let (from, until) = (minutes(&self.from)?, minutes(&self.until)?);
        (from <= until).then_some((from, until))
    }
}

/// '10:05' in minutes since midnight.
fn minutes(clock: &str) -> Option<u32> {
    let (hours, minutes) = clock.split_once(':')?;
    let (hours, minutes): (u32, u32) = (hours.parse().ok()?, minutes.parse().ok()?);
    (hours < 24 && minutes < 60).then_some(hours * 60 + minutes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_assigned_before_refrigerants_were_named_reads_and_is_written_as_it_was() {
        let old = r#"{"letter":"A","unit":"U-1","maker":"M","model":"One","serial":"1","pack":"p","history":[]}"#;
        let unit: AssignedUnit = serde_json::from_str(old).unwrap();
        assert_eq!(unit.refrigerant, None);
        assert_eq!((unit.terms.as_ref(), unit.answers().len()), (None, 0));
        assert_eq!(serde_json::to_string(&unit).unwrap(), old);
    }

    #[test]
    fn an_assignment_from_before_the_day_was_planned_reads_and_is_written_as_it_was() {
        let old = concat!(
            r#"{"id":"a","due":"2026-05-04","reason":"Yearly service","site":{"name":"Mill","address":"1 Lane","#,
            r#""latitude_deg":1.5,"longitude_deg":2.5,"note":""},"owner":{"name":"O","phone":"","language":"en"},"units":[]}"#
        );
        let assignment: Assignment = serde_json::from_str(old).unwrap();
        assert_eq!(assignment.appointment, None);
        assert_eq!(serde_json::to_string(&assignment).unwrap(), old);
    }

    #[test]
    fn the_register_tells_whether_it_is_the_first_service() {
        let unit = AssignedUnit { in_service: Some("2026-01-10".into()), ..AssignedUnit::default() };
        assert_eq!(unit.answers().get("first-service").map(String::as_str), Some("yes"));
        let unit = AssignedUnit { last_service: Some("2026-03-10".into()), ..unit };
        assert_eq!(unit.answers().get("first-service").map(String::as_str), Some("no"));
        let known = [("first-service".to_owned(), "yes".to_owned())].into();
        assert_eq!(AssignedUnit { known, ..unit }.answers().get("first-service").map(String::as_str), Some("yes"));
    }

    #[test]
    fn an_appointment_is_read_as_minutes_or_not_at_all() {
        let at = |from: &str, until: &str| {
            Appointment { day: "2026-05-04".into(), from: from.into(), until: until.into() }.window_min()
        };
        assert_eq!(at("10:00", "10:30"), Some((600, 630)));
        for (from, until) in
            [("10:30", "10:00"), ("24:00", "24:10"), ("ten", "11:00"), ("10", "11:00"), ("09:60", "11:00")]
        {
            assert_eq!(at(from, until), None, "{from} {until}");
        }
    }
}
