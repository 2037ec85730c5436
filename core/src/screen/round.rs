//! The round: what is due, what is under way, what is done; and the outbox.

use super::notices::{clock, day_clock, size};
use super::view::{bare, go};
use super::{Block, Button, Screen, Tone, View};
use crate::action::Action;
use crate::store::{OutboxKind, OutboxRow};

/// What is due and what is under way.
pub(super) fn show(view: &View<'_>) -> Screen {
    let words = view.words;
    let mut screen = bare(view, "menu-round");
    let heading = |key: &str| Block::Text { text: words.text(key), level: 2, tone: Tone::Plain };
    let open: Vec<_> = view.visits.iter().filter(|line| !line.sealed).collect();
    if !open.is_empty() {
        screen.blocks.push(heading("round-under-way"));
    }
    for line in open {
        let label = words.fill("round-go-on", &[("site", &line.site)]);
        let press = Action::Go { to: format!("visit:{}", line.id) };
        screen.blocks.push(Block::Button { button: Button { label, tone: Tone::Primary, press, hold: false } });
    }
    screen.blocks.push(heading("round-due"));
    if view.due.is_empty() {
        screen.blocks.push(Block::Text { text: words.text("round-nothing-due"), level: 0, tone: Tone::Quiet });
    }
    for assignment in view.due {
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
        for unit in &assignment.units {
            let parts = [
                ("letter", unit.letter.as_str()),
                ("maker", &unit.maker),
                ("model", &unit.model),
                ("serial", &unit.serial),
            ];
            lines.push(text(words.fill("round-unit", &parts), 0, Tone::Plain));
        }
        let due = words.fill("round-due-on", &[("day", &assignment.due), ("reason", &assignment.reason)]);
        lines.push(text(due, 0, Tone::Attention));
        if !assignment.site.note.is_empty() {
            lines.push(text(assignment.site.note.clone(), 0, Tone::Quiet));
        }
        screen.blocks.append(&mut lines);
        let press = Action::StartVisit { assignment: assignment.id.clone() };
        let label = words.fill("round-start", &[("site", &assignment.site.name)]);
        screen.blocks.push(Block::Button { button: Button { label, tone: Tone::Primary, press, hold: false } });
    }
    let sealed: Vec<_> = view.visits.iter().filter(|line| line.sealed).collect();
    if !sealed.is_empty() {
        screen.blocks.push(heading("round-done"));
    }
    for line in sealed {
        let when = day_clock(line.opened_utc_ms, view.now.offset_min);
        let key = if line.safe { "round-line-safe" } else { "round-line-waiting" };
        let label = words.fill(key, &[("site", &line.site), ("when", &when)]);
        let press = Action::Go { to: format!("visit:{}", line.id) };
        screen.blocks.push(Block::Button { button: Button { label, tone: Tone::Quiet, press, hold: false } });
    }
    screen
}

/// What still has to reach the office, since when, and why.
pub(super) fn outbox(view: &View<'_>) -> Screen {
    let words = view.words;
    let mut screen = bare(view, "menu-outbox");
    let text = |text: String, tone| Block::Text { text, level: 0, tone };
    let waiting = view.outbox;
    if waiting.is_empty() {
        screen.blocks.push(text(words.text("outbox-all-safe"), Tone::Good));
    } else {
        let since = day_clock(waiting.since_utc_ms, view.now.offset_min);
        let parts = [
            ("events", waiting.events.to_string()),
            ("photos", waiting.photos.to_string()),
            ("size", size(waiting.photo_bytes, words.language())),
            ("since", since),
        ];
        let parts: Vec<(&str, &str)> = parts.iter().map(|(name, value)| (*name, value.as_str())).collect();
        screen.blocks.push(text(words.fill("outbox-much", &parts), Tone::Plain));
        screen.blocks.push(text(words.text("outbox-kept"), Tone::Quiet));
    }
    let last = match view.last_answer_utc_ms {
        Some(utc_ms) => words.fill("outbox-last-answer", &[("clock", &clock(utc_ms, view.now.offset_min))]),
        None => words.text("outbox-no-answer"),
    };
    screen.blocks.push(text(last, Tone::Plain));
    if !view.outbox_rows.is_empty() {
        let columns = ["outbox-column-what", "outbox-column-since", "outbox-column-state"];
        let rows = view.outbox_rows.iter().map(|row| line(view, row)).collect();
        screen.blocks.push(Block::Table {
            caption: words.text("outbox-table"),
            columns: columns.iter().map(|key| words.text(key)).collect(),
            rows,
        });
    }
    let send =
        Button { label: words.text("outbox-send-now"), tone: Tone::Primary, press: Action::SendNow, hold: false };
    screen.foot.push(send);
    if view.visit.is_some() {
        screen.foot.push(go(view, "back-to-now", "now"));
    }
    screen.foot.push(go(view, "back-to-round", "round"));
    screen
}

fn line(view: &View<'_>, row: &OutboxRow) -> Vec<String> {
    let words = view.words;
    let what = match row.kind {
        OutboxKind::Events => words.fill("outbox-events", &[("count", &row.count.to_string())]),
        OutboxKind::Photo => words.fill("outbox-photo", &[("size", &size(row.bytes, words.language()))]),
        OutboxKind::Seal => words.text("outbox-seal"),
    };
    let state = if row.why.is_empty() {
        words.text("outbox-waits")
    } else {
        words.fill("outbox-stuck-why", &[("why", &row.why)])
    };
    vec![what, day_clock(row.since_utc_ms, view.now.offset_min), state]
}
