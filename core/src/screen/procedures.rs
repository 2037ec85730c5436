//! The procedures at hand: which, from where, and what was refused for which reason.

use super::view::{bare, go};
use super::{Block, Button, Screen, Tone, View};
use crate::action::Action;

/// So many reasons of one refused pack are shown; whoever mends it sees the next ones then.
const REASONS_MAX: usize = 30;

/// A procedure in the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ProcedureLine {
    /// What it is called, in the person's language.
    pub title: String,
    /// Its name in assignments; empty where it could not be read.
    pub name: String,
    /// Its version.
    pub version: String,
    /// Where it lies; none for one that came with the core.
    pub from: Option<String>,
    /// Why it was refused, a line each; empty where it is in use.
    pub refused: Vec<String>,
}

impl ProcedureLine {
    /// Whether it was refused.
    #[must_use]
    pub fn is_refused(&self) -> bool {
        !self.refused.is_empty()
    }
}

/// Every procedure.
pub(super) fn show(view: &View<'_>) -> Screen {
    let words = view.words;
    let mut screen = bare(view, "menu-procedures");
    let text = |text: String, level, tone| Block::Text { text, level, tone };
    screen.blocks.push(text(words.text("procedures-kept"), 0, Tone::Quiet));
    let (refused, used): (Vec<_>, Vec<_>) = view.procedures.iter().partition(|line| line.is_refused());
    if !refused.is_empty() {
        screen.blocks.push(text(words.text("procedures-refused"), 2, Tone::Attention));
    }
    for line in refused {
        let from = line.from.clone().unwrap_or_default();
        let title = [line.title.as_str(), &line.version].join(" ");
        let title = if title.trim().is_empty() { from.clone() } else { title.trim().to_owned() };
        screen.blocks.push(text(title, 3, Tone::Plain));
        screen.blocks.push(text(words.fill("procedures-from", &[("from", &from)]), 0, Tone::Quiet));
        for reason in line.refused.iter().take(REASONS_MAX) {
            screen.blocks.push(text(reason.clone(), 0, Tone::Attention));
        }
        if let Some(more) = line.refused.len().checked_sub(REASONS_MAX).filter(|more| *more > 0) {
            screen.blocks.push(text(words.fill("procedures-more", &[("count", &more.to_string())]), 0, Tone::Quiet));
        }
    }
    let columns = ["procedures-column-name", "procedures-column-version", "procedures-column-from"];
    let rows = used.iter().map(|line| {
        let from = line.from.clone().unwrap_or_else(|| words.text("procedures-built-in"));
        vec![line.title.clone(), line.version.clone(), from]
    });
    screen.blocks.push(Block::Table {
        caption: words.text("procedures-in-use"),
        columns: columns.iter().map(|key| words.text(key)).collect(),
        rows: rows.collect(),
    });
    if view.procedures_folder {
        let label = words.text("procedures-read");
        screen.foot.push(Button { label, tone: Tone::Primary, press: Action::ReadPacks, hold: false });
    } else {
        screen.blocks.push(text(words.text("procedures-no-folder"), 0, Tone::Quiet));
    }
    if view.visit.is_some() {
        screen.foot.push(go(view, "back-to-now", "now"));
    }
    screen.foot.push(go(view, "back-to-round", "round"));
    screen
}
