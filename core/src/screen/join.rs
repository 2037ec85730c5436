//! Joining an office: its link or code, and where it is.

use super::view::{bare, go};
use super::{Block, Button, Screen, Tone, View};
use crate::action::Action;
use crate::sync::Mistyped;

/// What stands in the fields of the screen.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct JoinView {
    /// The office's link, or its code.
    pub code: String,
    /// The office's address.
    pub office: String,
    /// What the device is to be called.
    pub name: String,
    /// What is wrong with them.
    pub mistyped: Option<Mistyped>,
}

/// The screen.
pub(super) fn show(view: &View<'_>) -> Screen {
    let words = view.words;
    let mut screen = bare(view, "join-title");
    let standing = &view.engine.standing;
    let line = |text: String, tone| Block::Text { text, level: 0, tone };
    if let Some(office) = &standing.office {
        screen.blocks.push(line(words.fill("join-joined", &[("office", office)]), Tone::Quiet));
    }
    screen.blocks.push(line(words.text("join-how"), Tone::Plain));
    let join = &view.engine.join;
    let fields = [
        ("join-code", &join.code, (join.mistyped == Some(Mistyped::Code)).then_some("join-mistyped-code")),
        ("join-office", &join.office, (join.mistyped == Some(Mistyped::Address)).then_some("join-mistyped-address")),
        ("join-name", &join.name, None),
    ];
    for (field, text, problem) in fields {
        screen.blocks.push(Block::TextEntry {
            field: field.to_owned(),
            label: words.text(&format!("{field}-label")),
            text: text.clone(),
            lines: 1,
            problem: problem.map(|key| words.text(key)),
            question: None,
        });
    }
    screen.blocks.push(line(words.text("join-key"), Tone::Quiet));
    if standing.joining {
        screen.blocks.push(line(words.text("join-under-way"), Tone::Attention));
    }
    let label = words.text("join-do");
    screen.foot.push(Button { label, tone: Tone::Primary, press: Action::Join, hold: false });
    screen.foot.push(go(view, "back", "outbox"));
    screen
}
