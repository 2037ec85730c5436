//! What the office's own records say about a unit, for its next visit: readings, findings still open, the last service,
//! minutes on site. It joins what the assignment brought from elsewhere.
//!
//! A visit's part of it is worked out once, with the visit's row in the list: devices ask for their assignments again and again.

use coilside_core::round::{AssignedUnit, OpenFinding, PastReading, day_of};
use coilside_core::science::calendar::parse_date;
use coilside_core::visit::state::{Finding, Run};
use rusqlite::Connection;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::record::{Record, State};
use crate::store::{StoreError, listings};

/// So many visits to units of the same pack tell how long the next one takes.
const VISITS_TIMED: u32 = 20;

/// What one visit says about one unit.
#[derive(Debug, Serialize, Deserialize)]
pub(crate) struct Past {
    /// ISO 8601.
    day: String,
    complete: bool,
    readings: Vec<PastReading>,
    findings: Vec<PastFinding>,
}

#[derive(Debug, Serialize, Deserialize)]
struct PastFinding {
    /// With the day on which it was found.
    found: OpenFinding,
    /// Nobody has mended it.
    open: bool,
}

/// What a visit says about the unit of one of its runs. Only what the office can vouch for becomes history.
pub(crate) fn past(record: &Record<'_>, run: &Run) -> Option<Past> {
    let opened = record.visit.opened.as_ref().filter(|_| record.is_sealed_and_holds())?;
    let day = day_of(opened.utc_ms, opened.offset_min)?.to_string();
    let numbers = run.readings.iter().filter(|(_, taken)| taken.value.parse::<f64>().is_ok());
    let readings = numbers.map(|(id, taken)| PastReading {
        reading: id.to_string(),
        value: taken.value.clone(),
        unit: taken.measure.clone(),
        date: day.clone(),
    });
    let finding = |finding: &Finding| PastFinding {
        found: OpenFinding {
            severity: finding.severity,
            text: finding.text.clone(),
            date: finding.since.clone().unwrap_or_else(|| day.clone()),
        },
        open: finding.mended.is_none(),
    };
    let (readings, findings) = (readings.collect(), run.findings.iter().map(finding).collect());
    Some(Past { complete: record.state() == State::Complete, readings, findings, day })
}

/// Fills the units of an assignment. One that cannot be read as an assignment is left as it is.
pub(crate) fn fill(db: &Connection, assignment: &mut Value) -> Result<(), StoreError> {
    let Some(units) = assignment.get_mut("units").and_then(Value::as_array_mut) else { return Ok(()) };
    for doc in units {
        let Ok(mut unit) = serde_json::from_value::<AssignedUnit>(doc.clone()) else { continue };
        // Only `past` writes them; a row spoilt from outside must not hide the others.
        for told in listings::past(db, &unit.unit)?.iter().filter_map(|told| serde_json::from_str(told).ok()) {
            join(&mut unit, told);
        }
        unit.past_minutes.extend(listings::minutes(db, &unit.pack, VISITS_TIMED)?);
        put(doc, &unit);
    }
    Ok(())
}

/// One past visit to the unit. They come with the oldest first.
fn join(unit: &mut AssignedUnit, past: Past) {
    for reading in past.readings {
        let same = |known: &PastReading| known.reading == reading.reading && known.date == reading.date;
        // What the assignment brought for that day came from this visit, or it is the better known.
        if !unit.history.iter().any(same) {
            unit.history.push(reading);
        }
    }
    // What this visit found or carried on stands as it left it. What it never heard of stands on.
    let is_told = |known: &OpenFinding| {
        past.findings.iter().any(|told| told.found.text == known.text && told.found.date == known.date)
    };
    unit.findings.retain(|known| !is_told(known));
    unit.findings.extend(past.findings.into_iter().filter(|told| told.open).map(|told| told.found));
    let known = unit.last_service.as_deref().and_then(|last| parse_date(last).ok());
    let is_newer = known.is_none_or(|last| parse_date(&past.day).is_ok_and(|day| last < day));
    if past.complete && is_newer {
        unit.last_service = Some(past.day);
    }
}

/// Writes back what `join` may have changed; whatever else stands in the document stays.
fn put(doc: &mut Value, unit: &AssignedUnit) {
    let (Some(doc), Ok(Value::Object(unit))) = (doc.as_object_mut(), serde_json::to_value(unit)) else { return };
    for name in ["history", "findings", "last_service", "past_minutes"] {
        match unit.get(name) {
            Some(value) => doc.insert(name.to_owned(), value.clone()),
            None => doc.remove(name),
        };
    }
}
