//! The round: what is due, what is under way, what is done and what the office says of it.

use chrono::NaiveDate;

use super::notices::day_clock;
use super::view::{bare, go};
use super::{Block, Button, Notice, Screen, Tone, View, VisitLine, outbox};
use crate::action::Action;
use crate::round::accreditation::{self, held, lapses};
use crate::round::cover::{self, Verdict};
use crate::round::day::{self, Planned, day_of, minute_of, plan};
use crate::round::route::{DETOUR, SPEED_KM_H};
use crate::round::{AssignedUnit, Assignment, Review, ReviewOutcome, due};
use crate::visit::event::Severity;
use crate::words::number;

/// What is due and what is under way.
pub(super) fn show(view: &View<'_>) -> Screen {
    let words = view.words;
    let mut screen = bare(view, "menu-round");
    let heading = |key: &str| Block::Text { text: words.text(key), level: 2, tone: Tone::Plain };
    let open: Vec<_> = view.visits.iter().filter(|line| !line.sealed).collect();
    if !open.is_empty() || !view.coming.is_empty() {
        screen.blocks.push(heading("round-under-way"));
    }
    for coming in view.coming {
        let (have, next) = (coming.have.to_string(), coming.next.to_string());
        let key = if coming.have < coming.next { "round-coming" } else { "round-coming-procedure" };
        let text = words.fill(key, &[("have", &have), ("next", &next)]);
        screen.blocks.push(Block::Text { text, level: 0, tone: Tone::Attention });
    }
    for line in open {
        let press = Action::Go { to: format!("visit:{}", line.id) };
        let (label, tone) = match line.elsewhere {
            true => (ended_line(view, line), Tone::Quiet),
            false => (words.fill("round-go-on", &[("site", &line.site)]), Tone::Primary),
        };
        screen.blocks.push(Block::Button { button: Button { label, tone, press, hold: false } });
    }
    let today = day_of(view.now.utc_ms, view.now.offset_min).unwrap_or_default();
    let minute = minute_of(view.now.utc_ms, view.now.offset_min);
    let day = plan(view.due, &|name| view.pack(name), today, minute);
    screen.notices.extend(outbox::clock_notice(view));
    screen.notices.extend(accreditations(view, today));
    screen.blocks.push(heading("round-due"));
    if view.due.is_empty() {
        screen.blocks.push(Block::Text { text: words.text("round-nothing-due"), level: 0, tone: Tone::Quiet });
    }
    if !day.today.is_empty() {
        screen.blocks.push(Block::Button { button: go(view, "round-to-load", "load") });
    }
    for planned in &day.today {
        screen.blocks.extend(assigned(view, planned.assignment, Some(planned), today));
    }
    if day.today.len() > 1 {
        let (detour, speed) = (DETOUR, SPEED_KM_H);
        let number = |value: f64, decimals| number::write(value, decimals, words.language());
        let parts = [("detour", number(detour, 1)), ("speed", number(speed, 0))];
        let parts: Vec<(&str, &str)> = parts.iter().map(|(name, value)| (*name, value.as_str())).collect();
        let text = words.fill("round-way-how", &parts);
        screen.blocks.push(Block::Text { text, level: 0, tone: Tone::Quiet });
    }
    if !day.later.is_empty() {
        screen.blocks.push(heading("round-later"));
    }
    for assignment in day.later {
        screen.blocks.extend(assigned(view, assignment, None, today));
    }
    let sealed: Vec<_> = view.visits.iter().filter(|line| line.sealed).collect();
    if !sealed.is_empty() {
        screen.blocks.push(heading("round-done"));
    }
    for line in sealed {
        let label = ended_line(view, line);
        let press = Action::Go { to: format!("visit:{}", line.id) };
        screen.blocks.push(Block::Button { button: Button { label, tone: Tone::Quiet, press, hold: false } });
        screen.blocks.extend(line.review.as_ref().map(|review| reviewed(view, review)));
    }
    screen
}

/// A visit on which no work is left here: where, when, and where it is.
fn ended_line(view: &View<'_>, line: &VisitLine) -> String {
    let when = day_clock(line.opened_utc_ms, view.now.offset_min);
    let key = match (line.elsewhere, line.safe) {
        (true, _) => "round-line-elsewhere",
        (false, true) => "round-line-safe",
        (false, false) => "round-line-waiting",
    };
    view.words.fill(key, &[("site", &line.site), ("when", &when)])
}

/// What the office says of a visit.
fn reviewed(view: &View<'_>, review: &Review) -> Block {
    let when = day_clock(review.utc_ms, view.now.offset_min);
    let key = format!("review-{}{}", review.outcome.name(), if review.words.is_empty() { "-bare" } else { "" });
    let text = view.words.fill(&key, &[("words", &review.words), ("when", &when)]);
    let tone = if review.outcome == ReviewOutcome::Accepted { Tone::Good } else { Tone::Attention };
    Block::Text { text, level: 0, tone }
}

/// A visit that is due: where, whose, what, until when, when one is there, and the button that begins it.
fn assigned(view: &View<'_>, assignment: &Assignment, planned: Option<&Planned<'_>>, today: NaiveDate) -> Vec<Block> {
    let words = view.words;
    let text = |text: String, level, tone| Block::Text { text, level, tone };
    let mut lines = vec![
        text(assignment.site.name.clone(), 3, Tone::Plain),
        text(assignment.site.address.clone(), 0, Tone::Plain),
        text(
            words.fill("round-owner", &[("name", &assignment.owner.name), ("phone", &assignment.owner.phone)]),
            0,
            Tone::Plain,
        ),
    ];
    lines.extend(planned.iter().flat_map(|planned| when(view, planned, today)));
    let due = words.fill("round-due-on", &[("day", &assignment.due), ("reason", &assignment.reason)]);
    lines.push(text(due, 0, Tone::Attention));
    for unit in &assignment.units {
        let parts = [
            ("letter", unit.letter.as_str()),
            ("maker", &unit.maker),
            ("model", &unit.model),
            ("serial", &unit.serial),
        ];
        lines.push(text(words.fill("round-unit", &parts), 0, Tone::Plain));
        lines.extend(cover_lines(view, assignment, unit, today));
        for finding in unit.findings.iter().filter(|finding| finding.severity != Severity::Note) {
            let line = words.fill("round-finding", &[("date", &finding.date), ("text", &finding.text)]);
            let tone = if finding.severity == Severity::Unsafe { Tone::Danger } else { Tone::Attention };
            lines.push(text(line, 0, tone));
        }
    }
    if !assignment.site.note.is_empty() {
        lines.push(text(assignment.site.note.clone(), 0, Tone::Quiet));
    }
    let press = Action::StartVisit { assignment: assignment.id.clone() };
    let label = words.fill("round-start", &[("site", &assignment.site.name)]);
    lines.push(Block::Button { button: Button { label, tone: Tone::Primary, press, hold: false } });
    lines
}

/// When one is there, how long it takes, what was agreed, and that it cannot be kept.
fn when(view: &View<'_>, planned: &Planned<'_>, today: NaiveDate) -> Vec<Block> {
    let words = view.words;
    day::told(planned, today, words)
        .into_iter()
        .map(|line| Block::Text {
            text: line.text,
            level: 0,
            tone: if line.attention { Tone::Attention } else { Tone::Plain },
        })
        .collect()
}

/// The due day by the unit's terms, and what can be seen of its cover before the visit: what is as asked is not said.
fn cover_lines(view: &View<'_>, assignment: &Assignment, unit: &AssignedUnit, today: NaiveDate) -> Vec<Block> {
    let words = view.words;
    let text = |text: String, attention| Block::Text {
        text,
        level: 0,
        tone: if attention { Tone::Attention } else { Tone::Plain },
    };
    if unit.terms.is_none() {
        return Vec::new();
    }
    let mut lines = Vec::new();
    if let Some(due) = due::due(unit, &assignment.due) {
        lines.push(text(due::told(&due, unit.terms.as_ref(), today, words), due.is_past(today)));
    }
    let planned = cover::planned(unit, &assignment.due, view.pack(&unit.pack), held(view.technician), today);
    if let Some(judgement) = planned.filter(|judgement| judgement.verdict != Verdict::AsAsked) {
        lines.push(text(cover::told_short(&judgement, words), true));
    }
    lines
}

/// What lapsed or lapses soon, and for which visits it matters.
fn accreditations(view: &View<'_>, today: NaiveDate) -> Option<Notice> {
    let words = view.words;
    let due: Vec<&Assignment> = view.due.iter().collect();
    let lapses = lapses(held(view.technician), &due, today);
    let lines: Vec<String> = lapses.iter().map(|lapse| accreditation::told(lapse, words)).collect();
    (!lines.is_empty()).then(|| Notice {
        tone: Tone::Attention,
        title: words.text("lapse-title"),
        lines,
        buttons: Vec::new(),
    })
}
