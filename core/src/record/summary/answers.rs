//! The four answers of the first page: is it safe, is there hot water, whom to call, when is the next service.

use super::{Answer, Sources, Tone, day, next};
use crate::procedure::danger::Danger;
use crate::visit::event::Severity;
use crate::visit::fact::{Fact, Value};
use crate::visit::state::Run;

pub(super) fn answers(from: &Sources<'_>) -> Vec<Answer> {
    let words = from.words;
    let (safe_key, safe_tone) = safe(from);
    let (hot_key, hot_tone) = hot(from, safe_tone == Tone::Good);
    let answer = |question: &str, answer: String, tone| Answer { question: words.text(question), answer, tone };
    let contact = from.contact.filter(|contact| !contact.is_empty());
    let next_day = match from.visit.broken_off {
        Some(_) => words.text("summary-next-by-phone"),
        None => day::month(words, next::next_service(from.assignment, from.day)),
    };
    vec![
        answer("summary-is-it-safe", words.text(safe_key), safe_tone),
        answer("summary-is-there-hot-water", words.text(hot_key), hot_tone),
        answer(
            "summary-whom-to-call",
            contact.map_or_else(|| words.text("summary-no-contact"), str::to_owned),
            Tone::Plain,
        ),
        answer("summary-next-date", next_day, Tone::Plain),
    ]
}

fn safe(from: &Sources<'_>) -> (&'static str, Tone) {
    let unsafe_found = from.visit.runs.values().any(Run::is_unsafe);
    let left = from.visit.broken_off.as_ref().map_or(&[][..], |broken| &broken.dangers);
    let mut findings = from.visit.runs.values().flat_map(|run| &run.findings);
    let mended = findings.any(|finding| finding.severity == Severity::Unsafe && finding.mended.is_some());
    match (unsafe_found, from.visit.broken_off.is_some()) {
        (_, true) if left == [Danger::LeftUntagged] => ("summary-safe-stopped-untagged", Tone::Danger),
        (_, true) if !left.is_empty() => ("summary-safe-stopped-dangerous", Tone::Danger),
        (true, _) => ("summary-safe-no", Tone::Danger),
        (false, true) => ("summary-safe-stopped", Tone::Danger),
        (false, false) if mended => ("summary-safe-yes-mended", Tone::Good),
        (false, false) => ("summary-safe-yes", Tone::Good),
    }
}

fn hot(from: &Sources<'_>, safe: bool) -> (&'static str, Tone) {
    let mut runs = from.visit.runs.values();
    let running = |run: &Run| run.facts.get(&Fact::Supply) == Some(&Value::On);
    let pending = runs.clone().any(|run| run.facts.get(&Fact::Reheat) == Some(&Value::HandedOver));
    match (safe && runs.all(running), pending) {
        (false, _) => ("summary-hot-no", Tone::Attention),
        (true, true) => ("summary-hot-pending", Tone::Attention),
        (true, false) => ("summary-hot-yes", Tone::Good),
    }
}
