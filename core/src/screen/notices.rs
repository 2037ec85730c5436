//! What must be seen before the rest: refusals with their reasons, dangers that stand, pauses.

use super::materials::told;
use super::{Button, Notice, Tone, View, VisitView};
use crate::action::Action;
use crate::procedure::danger::{Danger, dangers};
use crate::procedure::gate::Missing;
use crate::procedure::measure::Units;
use crate::procedure::pack::Pack;
use crate::science::materials::Suits;
use crate::visit::decide::Refusal;
use crate::visit::fact::{Fact, Value};
use crate::words::{Words, number};

/// The notices of a visit's screen: what was refused just now, then what a pause left open, then dangers that stand.
pub(super) fn of_visit(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Notice> {
    let words = view.words;
    let mut notices = view.notices.to_vec();
    if visit.sealed {
        return notices;
    }
    if visit.elsewhere {
        let stands = notice_of(&Refusal::Elsewhere, words, Some(visit.pack), view.units);
        if !notices.contains(&stands) {
            notices.insert(0, stands);
        }
        return notices;
    }
    let still = |(fact, value): (&Fact, &Value)| {
        let name = words.text(&format!("fact-{}", fact.name()));
        let state = words.text(&format!("fact-{}-{}", fact.name(), value.word()));
        Button {
            label: words.fill("pause-still", &[("fact", &name), ("state", &state)]),
            tone: Tone::Plain,
            press: Action::Recheck { fact: fact.name().to_owned() },
            hold: false,
        }
    };
    let by_other = |fact: &Fact| visit.run.lapsed_by.contains_key(fact);
    for (shared, key) in [(false, "pause"), (true, "shared")] {
        let lapsed = visit.run.lapsed.iter().filter(|(fact, _)| by_other(fact) == shared);
        let buttons: Vec<Button> = lapsed.map(still).collect();
        if !buttons.is_empty() {
            let (title, line) = (words.text(&format!("{key}-title")), words.text(&format!("{key}-text")));
            notices.push(Notice { tone: Tone::Attention, title, lines: vec![line], buttons });
        }
    }
    notices.extend(elsewhere(view, visit));
    for danger in dangers(&visit.run.facts) {
        let key = format!("danger-{}", danger.name());
        let lines = vec![words.text(&format!("{key}.do"))];
        notices.push(Notice { tone: Tone::Danger, title: words.text(&key), lines, buttons: Vec::new() });
    }
    notices
}

/// The other units at which work here made something not known: each with the way there.
fn elsewhere(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Notice> {
    let words = view.words;
    let others = visit.visit.runs.iter().filter(|(letter, run)| *letter != visit.unit && !run.lapsed_by.is_empty());
    others
        .map(|(letter, run)| {
            let to = Action::Go { to: format!("unit:{letter}") };
            let label = words.fill("menu-unit", &[("letter", letter.as_str())]);
            Notice {
                tone: Tone::Attention,
                title: words.fill("shared-elsewhere", &[("letter", letter.as_str())]),
                lines: run.lapsed_by.keys().map(|fact| words.text(&format!("fact-{}", fact.name()))).collect(),
                buttons: vec![Button { label, tone: Tone::Plain, press: to, hold: false }],
            }
        })
        .collect()
}

/// A refusal in words that a technician understands.
#[must_use]
pub fn notice_of(refusal: &Refusal, words: &Words, pack: Option<&Pack>, units: Units) -> Notice {
    let plain = |key: &str| Notice {
        tone: Tone::Attention,
        title: words.text(key),
        lines: vec![words.text(&format!("{key}.do"))],
        buttons: Vec::new(),
    };
    match refusal {
        Refusal::Gate { step, missing } => gate(step.as_str(), missing, words, pack),
        Refusal::Dangers { dangers } => Notice {
            tone: Tone::Danger,
            title: words.text("refused-seal-danger"),
            lines: dangers.iter().map(|danger| words.text(&format!("danger-{}.do", danger.name()))).collect(),
            buttons: Vec::new(),
        },
        Refusal::SettingsAway { excursions } => Notice {
            tone: Tone::Attention,
            title: words.text("refused-settings-away"),
            lines: excursions
                .iter()
                .map(|id| {
                    let setting = words.text(&format!("excursion-{id}"));
                    words.fill("refused-setting", &[("setting", &setting)])
                })
                .collect(),
            buttons: Vec::new(),
        },
        Refusal::Sealed => plain("refused-sealed"),
        Refusal::Elsewhere => plain("refused-elsewhere"),
        Refusal::Sealing => plain("refused-sealing"),
        Refusal::BrokenOff => plain("refused-broken-off"),
        Refusal::NoSuch { .. } => plain("refused-no-such"),
        Refusal::SignatureWaits => plain("refused-signature-waits"),
        Refusal::Number { .. }
        | Refusal::Impossible { .. }
        | Refusal::Unusual { .. }
        | Refusal::OtherUnit { .. }
        | Refusal::ReadBack { .. }
        | Refusal::Ink { .. }
        | Refusal::Words { .. } => Notice {
            tone: Tone::Attention,
            title: problem_of(refusal, words, pack, units).unwrap_or_default(),
            lines: Vec::new(),
            buttons: Vec::new(),
        },
    }
}

/// What is wrong with a field, in words; none for refusals that are about something else.
#[must_use]
pub(super) fn problem_of(refusal: &Refusal, words: &Words, pack: Option<&Pack>, units: Units) -> Option<String> {
    use crate::words::number::NumberError;
    let shown = |field: &str, value: &str| {
        let reading = field.strip_prefix("read:").and_then(|id| pack?.reading(id));
        reading.map_or_else(
            || value.to_owned(),
            |reading| reading.quantity.show(value, reading.decimals, units, words.language()),
        )
    };
    Some(match refusal {
        Refusal::Number { error: NumberError::Empty, .. } => words.text("problem-empty"),
        Refusal::Number { error: NumberError::NotANumber(typed), .. } => {
            words.fill("problem-not-a-number", &[("typed", typed)])
        }
        Refusal::Number { error: NumberError::Ambiguous(typed), .. } => {
            words.fill("problem-ambiguous", &[("typed", typed)])
        }
        Refusal::Impossible { field, least, most } => {
            words.fill("problem-impossible", &[("least", &shown(field, least)), ("most", &shown(field, most))])
        }
        Refusal::Unusual { field, from, to } => {
            words.fill("question-unusual", &[("from", &shown(field, from)), ("to", &shown(field, to))])
        }
        Refusal::OtherUnit { register, read, .. } => {
            words.fill("question-other-unit", &[("register", register), ("read", read)])
        }
        Refusal::ReadBack { home, shows, .. } => words.fill("problem-read-back", &[("home", home), ("shows", shows)]),
        Refusal::Ink { why, .. } => words.text(&format!("problem-ink-{}", why.name())),
        Refusal::Words { .. } => words.text("problem-words"),
        _ => return None,
    })
}

fn gate(step: &str, missing: &[Missing], words: &Words, pack: Option<&Pack>) -> Notice {
    let title = words.get(&format!("step-{step}")).unwrap_or_else(|| words.text(&format!("condition-{step}")));
    let dangerous = |missing: &Missing| {
        matches!(missing, Missing::Danger { .. } | Missing::OtherUnit { .. } | Missing::AcidForbidden { .. })
    };
    let danger = missing.iter().any(dangerous);
    // A dose of the same danger and gate is said once: the gate says what to do, the danger why.
    let lines = missing.iter().map(|missing| missing_words(missing, words)).collect();
    let settled = missing.iter().any(|missing| {
        matches!(missing, Missing::AlreadyDone | Missing::NotForThisUnit | Missing::Wait { .. } | Missing::NotStarted)
    });
    let known = pack.is_some_and(|pack| pack.step(step).is_some());
    let mut buttons = if settled || !known {
        Vec::new()
    } else {
        vec![Button {
            label: words.text("happened-offer"),
            tone: Tone::Quiet,
            press: Action::Go { to: format!("happened:{step}") },
            hold: false,
        }]
    };
    // Its way out is at the findings, or a break-off.
    if missing.contains(&Missing::Danger { danger: Danger::HandOverUnsafe }) {
        let to = |key: &str, place: &str| {
            let press = Action::Go { to: place.to_owned() };
            Button { label: words.text(key), tone: Tone::Plain, press, hold: false }
        };
        buttons.splice(0..0, [to("menu-findings", "findings"), to("menu-break-off", "break-off")]);
    }
    Notice {
        tone: if danger { Tone::Danger } else { Tone::Attention },
        title: words.fill("refused-step", &[("step", &title)]),
        lines,
        buttons,
    }
}

/// What a step lacks, in words.
#[must_use]
pub(super) fn missing_words(missing: &Missing, words: &Words) -> String {
    match missing {
        Missing::AlreadyDone => words.text("missing-already-done"),
        Missing::NotForThisUnit => words.text("missing-not-for-this-unit"),
        Missing::Answer { condition } | Missing::Question { condition } => {
            words.fill("missing-answer", &[("question", &words.text(&format!("condition-{condition}")))])
        }
        Missing::Phase { phase } => words.fill("missing-phase", &[("phase", &words.text(&format!("phase-{phase}")))]),
        Missing::Step { step } => words.fill("missing-step", &[("step", &words.text(&format!("step-{step}")))]),
        Missing::Fact { needs, .. } => words.text(&format!("need-{}-{}", needs.fact.name(), needs.value.word())),
        Missing::Reading { reading } => {
            words.fill("missing-reading", &[("reading", &words.text(&format!("reading-{reading}")))])
        }
        Missing::Shot { slot } => words.fill("missing-shot", &[("shot", &words.text(&format!("shot-{slot}")))]),
        Missing::LoopNotCold { .. } => words.text("missing-loop-not-cold"),
        Missing::FittingNotCold { .. } => words.text("missing-fitting-not-cold"),
        Missing::RinseNotMeasured => words.text("missing-rinse-not-measured"),
        Missing::RinseDiffers => words.text("missing-rinse-differs"),
        Missing::NotStarted => words.text("missing-not-started"),
        Missing::Wait { left_ms } => words.fill("missing-wait", &[("left", &span(*left_ms))]),
        Missing::SettingNotNoted { excursion } => {
            words.fill("missing-setting-not-noted", &[("setting", &words.text(&format!("excursion-{excursion}")))])
        }
        Missing::SettingAway { excursion } => {
            words.fill("missing-setting-away", &[("setting", &words.text(&format!("excursion-{excursion}")))])
        }
        Missing::Danger { danger } => words.text(&format!("danger-{}", danger.name())),
        Missing::OtherUnit { unit, danger } => {
            let danger = words.text(&format!("danger-{}", danger.name()));
            words.fill("missing-other-unit", &[("letter", unit.as_str()), ("danger", &danger)])
        }
        Missing::AcidForbidden { acid, metal, reason } => told(words, Suits::Forbidden, acid, metal, *reason),
        Missing::AcidUnknown => words.text("missing-acid-unknown"),
    }
}

/// A span as minutes and seconds, '4:05'; what is begun counts as a whole second.
pub(super) fn span(ms: i64) -> String {
    let s = (ms + 999) / 1000;
    format!("{}:{:02}", s / 60, s % 60)
}

/// The clock at a moment, '14:05'.
pub(super) fn clock(utc_ms: i64, offset_min: i32) -> String {
    let minutes = utc_ms.div_euclid(60_000) + i64::from(offset_min);
    format!("{:02}:{:02}", minutes.div_euclid(60).rem_euclid(24), minutes.rem_euclid(60))
}

/// A day and clock, '2026-03-01 14:05'.
pub(super) fn day_clock(utc_ms: i64, offset_min: i32) -> String {
    let local = utc_ms + i64::from(offset_min) * 60_000;
    let day = chrono::DateTime::from_timestamp_millis(local).map(|time| time.format("%Y-%m-%d").to_string());
    format!("{} {}", day.unwrap_or_default(), clock(utc_ms, offset_min))
}

/// A length in bytes, for people; never '0.0 MB' for what is there.
pub(super) fn size(bytes: u64, language: &str) -> String {
    if bytes < 100_000 {
        return format!("{}\u{a0}kB", bytes.div_ceil(1_000));
    }
    format!("{}\u{a0}MB", number::write(bytes as f64 / 1e6, 1, language))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_small_length_is_told_in_its_own_unit_and_never_as_nothing() {
        for (bytes, told) in [
            (0, "0\u{a0}kB"),
            (1, "1\u{a0}kB"),
            (3_000, "3\u{a0}kB"),
            (99_001, "100\u{a0}kB"),
            (100_000, "0.1\u{a0}MB"),
            (3_250_000, "3.2\u{a0}MB"),
        ] {
            assert_eq!(size(bytes, "en"), told);
        }
        assert_eq!(size(1_600_000, "es"), "1,6\u{a0}MB");
    }
}
