//! Screens that ask for words: why not, why left out, what happened, why it stays away, why stop here.

use super::fields::entry;
use super::view::{go, of_visit};
use super::{Block, Button, Screen, Tone, View, VisitView};
use crate::action::Action;
use crate::procedure::danger::dangers;
use crate::visit::fact::{Fact, Value};

/// The screen for a place like `why:read:flow` or `break-off`.
pub(super) fn show(view: &View<'_>, visit: &VisitView<'_>, place: &str) -> Screen {
    let words = view.words;
    let (kind, of) = place.split_once(':').unwrap_or((place, ""));
    let (about, press, tone) = match kind {
        "why" => {
            let name = match of.split_once(':') {
                Some(("shot", slot)) => words.text(&format!("shot-{slot}")),
                Some((_, reading)) => words.text(&format!("reading-{reading}")),
                None => String::new(),
            };
            (name, Action::CouldNot { field: of.to_owned() }, Tone::Primary)
        }
        "skip" => (words.text(&format!("step-{of}")), Action::Skip { step: of.to_owned() }, Tone::Primary),
        "happened" => (words.text(&format!("step-{of}")), Action::Happened { step: of.to_owned() }, Tone::Danger),
        "left" => {
            (words.text(&format!("excursion-{of}")), Action::LeaveAway { excursion: of.to_owned() }, Tone::Primary)
        }
        _ => (String::new(), Action::BreakOff, Tone::Danger),
    };
    let mut screen = of_visit(view, visit, words.text(&format!("ask-{kind}")));
    if !about.is_empty() {
        screen.blocks.push(Block::Text { text: about, level: 2, tone: Tone::Plain });
    }
    screen.blocks.push(Block::Text { text: words.text(&format!("ask-{kind}.how")), level: 0, tone: Tone::Plain });
    if kind == "break-off" {
        screen.blocks.extend(make_safe(view, visit));
    }
    screen.blocks.push(entry(view, visit, place, &words.text(&format!("ask-{kind}.label")), 3));
    let hold = tone == Tone::Danger;
    let label = words.text(&format!("ask-{kind}.do"));
    screen.foot.push(Button { label, tone, press, hold });
    screen.foot.push(go(view, "back-to-now", "now"));
    screen
}

/// The short way to leave it safe, from the facts as they are.
fn make_safe(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Block> {
    let words = view.words;
    let facts = &visit.run.facts;
    let mut lines: Vec<String> =
        dangers(facts).iter().map(|danger| words.text(&format!("danger-{}.do", danger.name()))).collect();
    let is = |fact, value| facts.get(&fact) == Some(&value);
    let mut need = |wanted: bool, key: &str| {
        if wanted {
            lines.push(words.text(key));
        }
    };
    need(is(Fact::Loop, Value::Acid) || is(Fact::Loop, Value::Spent), "make-safe-acid");
    need(is(Fact::ServicePump, Value::Running), "make-safe-pump");
    need(is(Fact::Covers, Value::Off), "make-safe-covers");
    need(!is(Fact::Tag, Value::Tagged), "make-safe-tag");
    need(visit.run.open_excursions().next().is_some(), "make-safe-settings");
    lines.push(words.text("make-safe-owner"));
    lines.dedup();
    lines.into_iter().map(|text| Block::Text { text, level: 0, tone: Tone::Attention }).collect()
}
