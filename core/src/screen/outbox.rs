//! The outbox: what still has to reach the office, by visit and kind, since when, and why it is not there yet.

use super::join::JoinView;
use super::notices::{clock, day_clock, size, span};
use super::view::{bare, go};
use super::{Block, Button, Notice, Screen, Tone, View};
use crate::action::Action;
use crate::round::day_of;
use crate::store::{OutboxGroup, OutboxKind, OutboxRow, OutboxState};
use crate::sync::{Kind, Link, Over, Standing, Trouble};

/// How sending stands.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EngineView {
    /// The engine.
    pub standing: Standing,
    /// What is not safe, on the outbox's own screen.
    pub groups: Vec<OutboxGroup>,
    /// What is being sent, with how much of a photograph has arrived; there too.
    pub sending: Vec<(OutboxRow, Option<u64>)>,
    /// When something last became safe, UTC milliseconds; there too.
    pub last_safe_utc_ms: Option<i64>,
    /// What stands in the fields of joining, on its screen.
    pub join: JoinView,
}

/// The screen.
pub(super) fn show(view: &View<'_>) -> Screen {
    let words = view.words;
    let mut screen = bare(view, "menu-outbox");
    screen.notices.extend(barred(view));
    screen.notices.extend(clock_notice(view));
    screen.blocks.extend(whole(view));
    screen.blocks.extend(under_way(view));
    screen.blocks.extend(last(view));
    // Visits in which something wants a person come first.
    let stuck = |group: &&OutboxGroup| {
        let mut of_visit = view.engine.groups.iter().filter(|other| other.visit == group.visit);
        of_visit.any(|other| other.state == OutboxState::Stuck)
    };
    let (urgent, others): (Vec<_>, Vec<_>) = view.engine.groups.iter().partition(stuck);
    let mut visit = None;
    for group in urgent.into_iter().chain(others) {
        if visit.replace(&group.visit) != Some(&group.visit) {
            let when = day_clock(group.opened_utc_ms, view.now.offset_min);
            let text = words.fill("outbox-visit", &[("site", &group.site), ("when", &when)]);
            screen.blocks.push(Block::Text { text, level: 2, tone: Tone::Plain });
        }
        screen.blocks.extend(lines(view, group));
    }
    screen.blocks.push(Block::Text { text: words.text("outbox-wishes"), level: 2, tone: Tone::Plain });
    for kind in Kind::ALL {
        let only = view.engine.standing.policy.of(kind) == Over::Unmetered;
        let value = if only { "any" } else { "unmetered" };
        let press = Action::Set { setting: kind.setting().to_owned(), value: value.to_owned() };
        screen.blocks.push(Block::Check {
            label: words.text(&format!("outbox-{}", kind.setting())),
            done: only,
            press,
        });
    }
    let office = view.engine.standing.office.as_ref();
    if let Some(office) = office {
        let text = words.fill("join-joined", &[("office", office)]);
        screen.blocks.push(Block::Text { text, level: 0, tone: Tone::Quiet });
    }
    screen.blocks.push(Block::Button { button: Button { tone: Tone::Quiet, ..go(view, "join-title", "join") } });
    let send =
        Button { label: words.text("outbox-send-now"), tone: Tone::Primary, press: Action::SendNow, hold: false };
    screen.foot.push(send);
    if view.visit.is_some() {
        screen.foot.push(go(view, "back-to-now", "now"));
    }
    screen.foot.push(go(view, "back-to-round", "round"));
    screen
}

/// The clocks of the device and the office differ by so much that times in the record would mislead. It is told; nobody's
/// clock is set.
pub(super) fn clock_notice(view: &View<'_>) -> Option<Notice> {
    let words = view.words;
    let skew = view.engine.standing.skew.as_ref().filter(|skew| skew.is_told())?;
    let minutes = ((skew.ahead_ms.abs() + 30_000) / 60_000).to_string();
    let key = if skew.ahead_ms > 0 { "clock-behind" } else { "clock-ahead" };
    Some(Notice {
        tone: Tone::Attention,
        title: words.fill(key, &[("minutes", &minutes)]),
        lines: vec![words.text("clock-do")],
        buttons: Vec::new(),
    })
}

/// The device has no office, or is let in no more.
fn barred(view: &View<'_>) -> Option<Notice> {
    let standing = &view.engine.standing;
    let key = match (standing.revoked, standing.nowhere) {
        (true, _) => "outbox-revoked-notice",
        (_, true) => "outbox-nowhere",
        _ => return None,
    };
    Some(Notice {
        tone: Tone::Attention,
        title: view.words.text(key),
        lines: vec![view.words.text(&format!("{key}.do"))],
        buttons: vec![go(view, "join-title", "join")],
    })
}

/// All in one: how much waits, since when.
fn whole(view: &View<'_>) -> Vec<Block> {
    let words = view.words;
    let text = |text: String, tone| Block::Text { text, level: 0, tone };
    let waiting = view.outbox;
    if waiting.is_empty() {
        return vec![text(words.text("outbox-all-safe"), Tone::Good)];
    }
    // Only what there is: a zero reads as if something were missing.
    let mut parts = Vec::new();
    if waiting.events > 0 {
        parts.push(words.fill("outbox-events", &[("count", &waiting.events.to_string())]));
    }
    if waiting.photos > 0 {
        parts.push(photo(view, waiting.photos, waiting.photo_bytes));
    }
    if waiting.seals > 0 {
        parts.push(words.text("outbox-seal"));
    }
    let since = moment(view, waiting.since_utc_ms);
    let much = words.fill("outbox-much", &[("since", &since), ("what", &parts.join(" · "))]);
    vec![text(much, Tone::Plain), text(words.text("outbox-kept"), Tone::Quiet)]
}

/// What is being sent, or why nothing is.
fn under_way(view: &View<'_>) -> Vec<Block> {
    let words = view.words;
    let standing = &view.engine.standing;
    let mut blocks: Vec<Block> = view
        .engine
        .sending
        .iter()
        .map(|(row, arrived)| {
            let what = match (row.kind, arrived) {
                (OutboxKind::Photo, Some(arrived)) => {
                    let (arrived, whole) = (size(*arrived, words.language()), size(row.bytes, words.language()));
                    words.fill("outbox-photo-arrived", &[("arrived", &arrived), ("size", &whole)])
                }
                (OutboxKind::Photo, None) => photo(view, 1, row.bytes),
                (OutboxKind::Events, _) => words.fill("outbox-events", &[("count", &row.count.to_string())]),
                (OutboxKind::Seal, _) => words.text("outbox-seal"),
            };
            let text = words.fill("outbox-sending", &[("what", &what)]);
            Block::Text { text, level: 0, tone: Tone::Plain }
        })
        .collect();
    let barred = standing.revoked || standing.nowhere;
    if view.outbox.is_empty() || barred {
        return blocks;
    }
    if standing.link == Some(Link::None) {
        blocks.push(Block::Text { text: words.text("outbox-no-network"), level: 0, tone: Tone::Attention });
    } else if let Some(why) = standing.hindrance {
        let key = format!("hindered-{}", why.name());
        blocks.push(Block::Text { text: words.text(&key), level: 0, tone: Tone::Attention });
        blocks.push(Block::Text { text: words.text(&format!("{key}.do")), level: 0, tone: Tone::Plain });
        if standing.rests_ms > 0 {
            let text = words.fill("outbox-again-in", &[("left", &span(standing.rests_ms))]);
            blocks.push(Block::Text { text, level: 0, tone: Tone::Quiet });
        }
    }
    blocks
}

/// When the office last answered, and when something last became safe.
fn last(view: &View<'_>) -> Vec<Block> {
    let words = view.words;
    let told = |utc_ms: Option<i64>, key: &str, never: &str| match utc_ms {
        Some(utc_ms) => words.fill(key, &[("clock", &moment(view, utc_ms))]),
        None => words.text(never),
    };
    let engine = view.engine;
    [
        told(engine.standing.last_answer_utc_ms, "outbox-last-answer", "outbox-no-answer"),
        told(engine.last_safe_utc_ms, "outbox-last-safe", "outbox-never-safe"),
    ]
    .map(|text| Block::Text { text, level: 0, tone: Tone::Quiet })
    .into()
}

/// A kind of a visit: how much, since when, and where it stands; what is stuck says what to do.
fn lines(view: &View<'_>, group: &OutboxGroup) -> Vec<Block> {
    let words = view.words;
    let what = match group.kind {
        OutboxKind::Events => words.fill("outbox-events", &[("count", &group.events.to_string())]),
        OutboxKind::Photo => photo(view, group.rows, group.bytes),
        OutboxKind::Seal => words.text("outbox-seal"),
    };
    let since = moment(view, group.since_utc_ms);
    let (state, tone) = match group.state {
        OutboxState::Waiting => (words.text(waits_for(view, group)), Tone::Plain),
        OutboxState::Aside => (words.text("outbox-aside"), Tone::Plain),
        OutboxState::Stuck => {
            let key = format!("stuck-{}", Trouble::named(&group.why).name());
            (words.fill("outbox-stuck-why", &[("why", &words.text(&key))]), Tone::Attention)
        }
    };
    let text = words.fill("outbox-line", &[("what", &what), ("since", &since), ("state", &state)]);
    let mut blocks = vec![Block::Text { text, level: 0, tone }];
    let todo = match group.state {
        OutboxState::Stuck => Some(format!("stuck-{}.do", Trouble::named(&group.why).name())),
        OutboxState::Aside => Some("outbox-aside.do".to_owned()),
        OutboxState::Waiting => None,
    };
    blocks.extend(todo.map(|key| Block::Text { text: words.text(&key), level: 0, tone: Tone::Plain }));
    blocks
}

/// A clock of today; with its day where it is another.
fn moment(view: &View<'_>, utc_ms: i64) -> String {
    let day = |utc_ms| day_of(utc_ms, view.now.offset_min);
    let told = if day(utc_ms) == day(view.now.utc_ms) { clock } else { day_clock };
    told(utc_ms, view.now.offset_min)
}

fn photo(view: &View<'_>, count: u64, bytes: u64) -> String {
    let size = size(bytes, view.words.language());
    view.words.fill("outbox-photos", &[("count", &count.to_string()), ("size", &size)])
}

/// What a waiting group waits for.
fn waits_for(view: &View<'_>, group: &OutboxGroup) -> &'static str {
    let standing = &view.engine.standing;
    let kind = if group.kind == OutboxKind::Photo { Kind::Originals } else { Kind::Events };
    let is_out = |(row, _): &(OutboxRow, Option<u64>)| row.visit == group.visit && row.kind == group.kind;
    let after = view.engine.groups.iter().any(|other| {
        other.visit == group.visit && other.kind == OutboxKind::Events && other.state == OutboxState::Stuck
    });
    if view.engine.sending.iter().any(is_out) {
        "outbox-is-sent"
    } else if standing.revoked || standing.nowhere {
        "outbox-waits-office"
    } else if group.kind != OutboxKind::Photo && after {
        "outbox-waits-stuck"
    } else if matches!(standing.link, None | Some(Link::None)) {
        "outbox-waits"
    } else if standing.link == Some(Link::Metered) && !standing.policy.allows(kind, Link::Metered) {
        "outbox-waits-wifi"
    } else if standing.hindrance.is_some() {
        "outbox-waits-answer"
    } else {
        "outbox-waits-turn"
    }
}
