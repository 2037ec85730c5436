//! What is kept beside a visit's record: events that contradict it, or came from a device that had handed it over.

use coilside_core::words::Words;
use maud::{Markup, html};
use serde_json::Value;

use crate::app::day;
use crate::app::record::Record;
use crate::store::events::Beside;

/// More characters of one event say no more to a person.
const SAID_CHARS_MAX: usize = 400;

pub(super) fn card(words: &Words, record: &Record<'_>) -> Markup {
    html! {
        @if !record.beside.is_empty() {
            section.card.danger #beside {
                h2 { (words.text("office-beside")) }
                p { (words.text("office-beside-why")) }
                @for (name, events) in &record.beside {
                    h3 { (words.fill("office-beside-from", &[("name", name), ("n", &events.len().to_string())])) }
                    div.scroll tabindex="0" role="group" aria-label=(words.text("office-beside")) { table.beside {
                        thead { tr {
                            th scope="col" { (words.text("office-beside-number")) }
                            th scope="col" { (words.text("office-time")) }
                            th scope="col" { (words.text("office-beside-what")) }
                        } }
                        tbody { @for event in events { (row(event)) } }
                    } }
                }
                @for (name, covers) in &record.beside_seals {
                    p { (words.fill("office-beside-sealed", &[("name", name), ("n", &covers.to_string())])) }
                }
            }
        }
    }
}

/// An event as it was written: its kind and what it holds. Whoever looks at it compares it with the record.
fn row(event: &Beside) -> Markup {
    let read: Value = serde_json::from_slice(&event.bytes).unwrap_or_default();
    let number = |name: &str| read.get("time").and_then(|time| time.get(name)).and_then(Value::as_i64);
    let at = number("utc_ms").map(|utc_ms| {
        let offset_min = number("offset_min").and_then(|offset| i32::try_from(offset).ok()).unwrap_or_default();
        day::stamp(utc_ms, offset_min)
    });
    html! {
        tr {
            td.number { (event.seq) }
            td { (at.unwrap_or_default()) }
            td { b { (read.get("kind").and_then(Value::as_str).unwrap_or_default()) } " " span.quiet { (said(&read)) } }
        }
    }
}

fn said(event: &Value) -> String {
    let envelope = ["visit", "seq", "prev", "time", "kind"];
    let all = event.as_object().into_iter().flatten().filter(|(name, _)| !envelope.contains(&name.as_str()));
    let one = |(name, value): (&String, &Value)| match value {
        Value::String(text) => format!("{name}: {text}"),
        other => format!("{name}: {other}"),
    };
    let text = all.map(one).collect::<Vec<_>>().join(" · ");
    match text.char_indices().nth(SAID_CHARS_MAX) {
        Some((end, _)) => format!("{}…", text.get(..end).unwrap_or_default()),
        None => text,
    }
}
