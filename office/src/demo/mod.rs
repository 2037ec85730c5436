//! The demo: an invented village, its owners, makers and units, and a technician at work.

mod camera;
mod deliver;
mod draw;
mod past;
pub mod player;
mod round;
mod scenario;

use std::fs;
use std::path::Path;

use chrono::{DateTime, Days, NaiveDate, Utc};
use coilside_core::effect::PlaceFix;
use coilside_core::now::Now;
use coilside_core::round::Assignment;

use crate::office::{Office, OfficeError};

pub use deliver::{DeliverError, deliver};

/// The demo's device at the office.
const DEVICE: &str = "Ines Fallow, browser shell";

/// Why the demo could not be set up.
#[derive(Debug, thiserror::Error)]
pub enum DemoError {
    /// The office failed.
    #[error(transparent)]
    Office(#[from] OfficeError),
    /// An assignment was turned down.
    #[error("the demo's assignment was turned down: {0}")]
    Assignment(String),
    /// A visit of the past could not be played.
    #[error(transparent)]
    Play(#[from] player::PlayError),
    /// A visit of the past could not be opened.
    #[error(transparent)]
    Door(#[from] coilside_core::field::DoorError),
    /// It did not reach the office.
    #[error(transparent)]
    Deliver(#[from] DeliverError),
    /// A folder.
    #[error("the demo's folder could not be used: {0}")]
    Io(#[from] std::io::Error),
    /// No random bytes, or a moment that no calendar has.
    #[error("the demo could not be set up: {0}")]
    Setup(String),
}

/// Fills an office that has never been used with the village, and returns the token of the demo's device. The two
/// visits in history are played through the core's own door and delivered as any other.
///
/// # Errors
/// Where any of it fails.
pub async fn set_up(office: &Office, folder: &Path, now_utc_ms: i64) -> Result<String, DemoError> {
    let today = DateTime::<Utc>::from_timestamp_millis(now_utc_ms)
        .ok_or_else(|| DemoError::Setup("the clock shows no day".into()))?
        .date_naive();
    let day = |days_ago: i64| {
        let days = Days::new(days_ago.unsigned_abs());
        let day = if days_ago < 0 { today.checked_add_days(days) } else { today.checked_sub_days(days) };
        day.unwrap_or(NaiveDate::MIN).format("%Y-%m-%d").to_string()
    };
    office.set_contact(scenario::CONTACT)?;
    for past in scenario::history(day) {
        give(office, &past.assignment)?;
        let token = office.add_device("Ines Fallow, history of the demo")?;
        let then = folder.join("history").join(&past.assignment.id);
        fs::create_dir_all(&then)?;
        past::play(office, &then, &past, now_utc_ms, &token).await?;
        fs::remove_dir_all(&then)?;
    }
    let minute = u32::try_from(now_utc_ms.div_euclid(60_000).rem_euclid(24 * 60)).unwrap_or_default();
    for assignment in round::due(day, minute) {
        give(office, &assignment)?;
    }
    // One of her instruments lapsed a month ago, so that its flag can be seen.
    office.put_technician(DEVICE, &scenario::technician(day))?;
    Ok(office.add_device(DEVICE)?)
}

/// A drawn photograph for a slot as a phone's camera would write it, with time, zone and place in it.
#[must_use]
pub fn photograph(slot: &str, lines: &[&str], year: u32, now: &Now, place: PlaceFix) -> Vec<u8> {
    camera::shoot(&draw::photograph(slot, lines, year), now, place)
}

fn give(office: &Office, assignment: &Assignment) -> Result<(), DemoError> {
    let doc = serde_json::to_value(assignment).map_err(|error| DemoError::Assignment(error.to_string()))?;
    office.put_assignment(&doc).map_err(|error| DemoError::Assignment(error.to_string()))
}
