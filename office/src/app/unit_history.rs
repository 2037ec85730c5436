//! What the office's own records say about a unit, for its next visit: readings, findings still open, the last service,
//! minutes on site. It joins what the assignment brought from elsewhere.

use chrono::NaiveDate;
use coilside_core::round::{AssignedUnit, OpenFinding, PastReading, day_of};
use coilside_core::science::calendar::parse_date;
use coilside_core::visit::state::Run;
use rusqlite::Connection;
use serde_json::Value;

use super::library::Library;
use super::record::{self, Record, State};
use crate::store::{StoreError, listings};

/// So many visits to units of the same pack tell how long the next one takes.
const VISITS_TIMED: u32 = 20;

/// Fills the units of an assignment. One that cannot be read as an assignment is left as it is.
pub(crate) fn fill(db: &Connection, library: &Library, assignment: &mut Value) -> Result<(), StoreError> {
    let Some(units) = assignment.get_mut("units").and_then(Value::as_array_mut) else { return Ok(()) };
    for doc in units {
        let Ok(mut unit) = serde_json::from_value::<AssignedUnit>(doc.clone()) else { continue };
        for visit in listings::ended_at(db, &unit.unit)? {
            // Only what the office can vouch for becomes history.
            let record = record::read_from(db, library, &visit)?.filter(Record::is_sealed_and_holds);
            let opened = record.as_ref().and_then(|record| record.visit.opened.as_ref());
            let day = opened.and_then(|now| day_of(now.utc_ms, now.offset_min));
            let Some((record, day)) = record.as_ref().zip(day) else { continue };
            let asset = unit.unit.clone();
            for run in record.visit.runs.values().filter(|run| run.asset == asset) {
                join(&mut unit, run, day, record.state());
            }
        }
        let minutes = listings::minutes(db, &unit.pack, VISITS_TIMED)?;
        unit.past_minutes.extend(minutes);
        put(doc, &unit);
    }
    Ok(())
}

/// One past run of the unit, on a day. Runs come with the oldest first.
fn join(unit: &mut AssignedUnit, run: &Run, day: NaiveDate, state: State) {
    let date = day.to_string();
    for (id, taken) in run.readings.iter().filter(|(_, taken)| taken.value.parse::<f64>().is_ok()) {
        let same = |past: &PastReading| past.reading == id.as_str() && past.date == date;
        // What the assignment brought for that day came from this visit, or it is the better known.
        if !unit.history.iter().any(same) {
            unit.history.push(PastReading {
                reading: id.to_string(),
                value: taken.value.clone(),
                unit: taken.measure.clone(),
                date: date.clone(),
            });
        }
    }
    // What this visit found or carried on stands as it left it. What it never heard of stands on.
    let is_told = |found: &OpenFinding| {
        run.findings.iter().any(|told| told.text == found.text && told.since.as_ref().unwrap_or(&date) == &found.date)
    };
    unit.findings.retain(|found| !is_told(found));
    let open = run.findings.iter().filter(|finding| finding.mended.is_none());
    unit.findings.extend(open.map(|finding| OpenFinding {
        severity: finding.severity,
        text: finding.text.clone(),
        date: finding.since.clone().unwrap_or_else(|| date.clone()),
    }));
    let is_newer = unit.last_service.as_deref().and_then(|last| parse_date(last).ok()).is_none_or(|last| last < day);
    if state == State::Complete && is_newer {
        unit.last_service = Some(date);
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
