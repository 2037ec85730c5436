//! A report in words: what holds, what does not, and who vouches for it.

use super::verify::{Anchor, Fault, Report};
use crate::round::day::there;
use crate::words::Words;

/// How much a line matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// It holds.
    Holds,
    /// Worth knowing.
    Known,
    /// It does not hold.
    Fails,
}

/// The report as lines, what it comes to last.
#[must_use]
pub fn lines(report: &Report, words: &Words) -> Vec<(Weight, String)> {
    let mut lines = Vec::new();
    if let Some(visit) = &report.visit {
        let device = report.device.clone().unwrap_or_else(|| "?".to_owned());
        let values = [
            ("visit", visit.as_str()),
            ("events", &report.events.to_string()),
            ("photographs", &report.photographs.to_string()),
            ("key", &device),
        ];
        lines.push((Weight::Known, words.fill("record-visit", &values)));
    }
    if report.holds() {
        lines.extend(["record-zip", "record-chain", "record-files"].map(|key| (Weight::Holds, words.text(key))));
    }
    lines.extend(seals(report, words));
    lines.extend(report.faults.iter().map(|fault| (Weight::Fails, of_fault(fault, words))));
    lines.push(anchor(&report.anchor, words));
    if let Anchor::Office { enclosed: false, .. } = report.anchor {
        lines.push((Weight::Known, words.text("record-not-enclosed")));
    }
    let data = if report.personal { "record-personal" } else { "record-no-personal" };
    if report.visit.is_some() {
        lines.push((Weight::Known, words.text(data)));
    }
    if report.customer.enclosed > 0 {
        lines.push((Weight::Holds, words.text("record-customer")));
    }
    if report.customer.withheld > 0 {
        lines.push((Weight::Known, words.text("record-customer-withheld")));
    }
    lines.push(match (report.holds(), report.is_anchored()) {
        (true, true) => (Weight::Holds, words.text("record-holds")),
        (true, false) => (Weight::Known, words.text("record-self-consistent")),
        (false, _) => (Weight::Fails, words.fill("record-fails", &[("n", &report.faults.len().to_string())])),
    });
    lines
}

fn seals(report: &Report, words: &Words) -> Vec<(Weight, String)> {
    let mut lines = Vec::new();
    for (number, seal) in report.seals.iter().enumerate() {
        let values = [
            ("number", (number + 1).to_string()),
            ("events", seal.next.to_string()),
            ("when", moment(seal.at_utc_ms, seal.offset_min)),
        ];
        let values: Vec<(&str, &str)> = values.iter().map(|(name, value)| (*name, value.as_str())).collect();
        let key = if number == 0 { "record-seal" } else { "record-addendum" };
        lines.push((Weight::Holds, words.fill(key, &values)));
    }
    if let Some(seal) = report.seals.first() {
        let key = if seal.complete { "record-complete" } else { "record-incomplete" };
        lines.push((Weight::Known, words.text(key)));
        lines.extend(seal.missing.iter().map(|line| (Weight::Known, format!("  {line}"))));
    }
    lines
}

fn anchor(anchor: &Anchor, words: &Words) -> (Weight, String) {
    match anchor {
        Anchor::Office { key, certified_utc_ms, received_utc_ms, next, last, .. } => {
            let certified = certified_utc_ms.map(|ms| moment(ms, 0));
            let name = if certified.is_some() { "record-anchor" } else { "record-anchor-receipt" };
            let values = [
                ("key", key.as_str()),
                ("joined", &certified.unwrap_or_default()),
                ("received", &moment(*received_utc_ms, 0)),
                ("events", &next.to_string()),
                ("last", last),
            ];
            (Weight::Holds, words.fill(name, &values))
        }
        Anchor::None { offices } if offices.is_empty() => (Weight::Known, words.text("record-anchor-none")),
        Anchor::None { offices } => {
            (Weight::Known, words.fill("record-anchor-unknown", &[("keys", &offices.join(", "))]))
        }
    }
}

/// One fault in words.
#[must_use]
pub fn of_fault(fault: &Fault, words: &Words) -> String {
    let values = fault.values.iter().map(|(name, value)| (*name, value.as_str()));
    let values: Vec<(&str, &str)> = std::iter::once(("part", fault.part.as_str())).chain(values).collect();
    words.fill(&format!("record-fault-{}", fault.rule), &values)
}

/// A moment as it is written everywhere: ISO 8601, by the clock there, with its offset.
fn moment(utc_ms: i64, offset_min: i32) -> String {
    there(utc_ms, offset_min).map_or_else(|| utc_ms.to_string(), |at| at.format("%Y-%m-%d %H:%M %:z").to_string())
}
