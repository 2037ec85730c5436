//! Writes days as an iCalendar file, for the check against the icalendar library in `tests/python/test_calendar.py`.
//!
//! Reads `{ "made_utc_ms": …, "entries": [{ "uid", "on", "title", "text", "place", "remind_days" }] }` from standard input.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "for a test")]

use coilside_core::round::calendar::{Entry, calendar};
use serde_json::Value;

fn main() {
    let asked: Value = serde_json::from_reader(std::io::stdin()).expect("JSON on standard input");
    let entry = |told: &Value| {
        let text = |name: &str| told[name].as_str().expect("a text").to_owned();
        Entry {
            uid: text("uid"),
            on: text("on").parse().expect("a day"),
            title: text("title"),
            text: text("text"),
            place: text("place"),
            remind_days: told["remind_days"].as_u64().map(|days| u32::try_from(days).expect("days")),
        }
    };
    let entries: Vec<Entry> = asked["entries"].as_array().expect("entries").iter().map(entry).collect();
    print!("{}", calendar(&entries, asked["made_utc_ms"].as_i64().expect("a time")));
}
