//! Whether the record can be trusted: chain, seal, photographs, branches. Checked anew for every look.

use coilside_core::words::Words;
use maud::{Markup, html};

use super::devices::span;
use crate::app::day;
use crate::app::record::{Chain, Record, SealCheck};

pub(super) fn check(words: &Words, record: &Record<'_>) -> Markup {
    html! {
        section.card.check {
            h2 { (words.text("office-check")) }
            ul {
                (chain(words, &record.chain))
                (seal(words, record))
                (photographs(words, record))
                (branches(words, record.branches))
                (clock(words, record))
                (procedure(words, record))
            }
            (record_file(words, record))
        }
    }
}

/// The record as a file, once everything of it is here.
fn record_file(words: &Words, record: &Record<'_>) -> Markup {
    html! {
        @if record.is_sealed_and_holds() && record.waiting() == 0 && !record.customer_waits() {
            p { a.button href={ "/visits/" (record.id) "/record.zip" } download { (words.text("office-record-file")) } }
            p.hint { (words.text("office-record-file.hint")) }
        }
    }
}

fn line(tone: &str, title: &str, text: &str) -> Markup {
    html! { li class=(tone) { b { (title) } span { (text) } } }
}

fn chain(words: &Words, chain: &Chain) -> Markup {
    match chain {
        Chain::Holds { events } => {
            let text = words.fill("office-chain-holds.text", &[("n", &events.to_string())]);
            line("good", &words.text("office-chain-holds"), &text)
        }
        Chain::Breaks { at, why } => {
            let text = words.fill("office-chain-breaks.text", &[("at", &at.to_string()), ("why", why)]);
            line("danger", &words.fill("office-chain-breaks", &[("at", &at.to_string())]), &text)
        }
    }
}

fn seal(words: &Words, record: &Record<'_>) -> Markup {
    match &record.seal {
        SealCheck::None if record.visit.sealing.is_some() => {
            line("attention", &words.text("office-state-unsigned"), &words.text("office-seal-awaited"))
        }
        SealCheck::None => line("plain", &words.text("office-seal-none"), &words.text("office-seal-none.text")),
        SealCheck::Fails { why } => {
            line("danger", &words.text("office-seal-fails"), &words.fill("office-seal-fails.text", &[("why", why)]))
        }
        SealCheck::Holds { fingerprint, received_ms, later_events, .. } => {
            let offset_min = record.visit.last.as_ref().map_or(0, |now| now.offset_min);
            let values = [
                ("name", record.technician.as_str()),
                ("key", fingerprint),
                ("when", &day::stamp(*received_ms, offset_min)),
            ];
            html! {
                (line("good", &words.text("office-seal-holds"), &words.fill("office-seal-holds.text", &values)))
                @if *later_events > 0 {
                    (line("attention", &words.text("office-seal-later"), &words.fill("office-seal-later.text", &[("n", &later_events.to_string())])))
                }
            }
        }
    }
}

fn photographs(words: &Words, record: &Record<'_>) -> Markup {
    let (all, waiting) = (record.digests().len(), record.waiting());
    let here =
        words.fill("office-photos-of", &[("here", &(all - waiting.min(all)).to_string()), ("all", &all.to_string())]);
    if waiting == 0 {
        line("good", &words.text("office-photos-here"), &here)
    } else {
        line("attention", &words.text("office-photos-waiting"), &here)
    }
}

fn branches(words: &Words, count: u64) -> Markup {
    html! {
        @if count > 0 {
            (line("danger", &words.text("office-branches"), &words.fill("office-branches.text", &[("n", &count.to_string())])))
        }
    }
}

/// The largest difference that the device's clock had.
fn clock(words: &Words, record: &Record<'_>) -> Markup {
    let Some(behind_ms) = record.corrections.values().max_by_key(|behind_ms| behind_ms.saturating_abs()) else {
        return html! {};
    };
    let key = if *behind_ms > 0 { "office-clock-was-behind" } else { "office-clock-was-ahead" };
    let text = words.fill(key, &[("time", &span(words, *behind_ms))]);
    line("attention", &words.text("office-clock-was-off"), &text)
}

fn procedure(words: &Words, record: &Record<'_>) -> Markup {
    let Some(run) = record.visit.runs.values().next() else { return html! {} };
    match record.pack {
        Some(found) if found.pinned => {
            let values = [("pack", found.pack.pack.pack.as_str()), ("version", &found.pack.pack.version)];
            line("good", &words.text("office-pack-pinned"), &words.fill("office-pack-pinned.text", &values))
        }
        Some(found) => {
            let values = [("pack", found.pack.pack.pack.as_str()), ("version", &found.pack.pack.version)];
            line("attention", &words.text("office-pack-other"), &words.fill("office-pack-other.text", &values))
        }
        None => line(
            "attention",
            &words.text("office-pack-none"),
            &words.fill("office-pack-none.text", &[("pack", &run.pack)]),
        ),
    }
}
