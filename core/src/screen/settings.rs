//! Language and units.

use super::view::{bare, go};
use super::{Block, Button, Screen, Tone, View};
use crate::action::Action;
use crate::procedure::measure::Units;

/// The settings of the app.
pub(super) fn show(view: &View<'_>) -> Screen {
    let words = view.words;
    let mut screen = bare(view, "menu-settings");
    let units = if view.units == Units::Us { "us" } else { "metric" };
    let groups = [
        ("settings-language", "language", words.language(), [("en", "language-en"), ("es", "language-es")]),
        ("settings-units", "units", units, [("metric", "units-metric"), ("us", "units-us")]),
    ];
    for (heading, setting, is, choices) in groups {
        screen.blocks.push(Block::Text { text: words.text(heading), level: 2, tone: Tone::Plain });
        for (value, key) in choices {
            let press = Action::Set { setting: setting.to_owned(), value: value.to_owned() };
            screen.blocks.push(Block::Check { label: words.text(key), done: is == value, press });
        }
    }
    let to = if view.visit.is_some() { "now" } else { "round" };
    screen.foot.push(Button { tone: Tone::Primary, ..go(view, "back", to) });
    screen
}
