//! The load list of the day: what goes into the van, what stands apart in it, and for whom. Tables that print on a page.

use super::view::{bare, go};
use super::{Block, Button, Screen, Tone, View};
use crate::round::day::{day_of, minute_of, plan};
use crate::round::load::{Job, Load, load};
use crate::round::sheet::{Sheet, margin_told, sheets};
use crate::words::Words;

/// The list for the visits of today.
pub(super) fn show(view: &View<'_>) -> Screen {
    let words = view.words;
    let mut screen = bare(view, "load-title");
    let text = |text: String, tone| Block::Text { text, level: 0, tone };
    screen.foot.push(Button { tone: Tone::Primary, ..go(view, "back-to-round", "round") });
    let Some(today) = day_of(view.now.utc_ms, view.now.offset_min) else { return screen };
    let day = plan(view.due, &|name| view.pack(name), today, minute_of(view.now.utc_ms, view.now.offset_min));
    let count = day.today.len();
    let parts = [("day", today.to_string()), ("count", count.to_string())];
    let parts: Vec<(&str, &str)> = parts.iter().map(|(name, value)| (*name, value.as_str())).collect();
    screen.subtitle = words.fill("load-of-day", &parts);
    if day.today.is_empty() {
        screen.blocks.push(text(words.text("load-nothing"), Tone::Quiet));
        return screen;
    }
    let answers: Vec<Vec<_>> =
        day.today.iter().map(|planned| planned.assignment.units.iter().map(|unit| unit.answers()).collect()).collect();
    let names: Vec<Box<dyn Fn(&str) -> String + '_>> = view.pack_words.iter().map(name_in).collect();
    let mut jobs = Vec::new();
    for (planned, answers) in day.today.iter().zip(&answers) {
        let site = planned.assignment.site.name.as_str();
        for (unit, known) in planned.assignment.units.iter().zip(answers) {
            let at = view.packs.iter().position(|loaded| loaded.pack.pack == unit.pack);
            let found = at.and_then(|at| Some((&view.packs.get(at)?.pack, names.get(at)?)));
            match found {
                Some((pack, name)) => jobs.push(Job { site, known, pack, name }),
                None => {
                    let line = words.fill("load-no-pack", &[("site", site), ("pack", &unit.pack)]);
                    screen.blocks.push(text(line, Tone::Attention));
                }
            }
        }
    }
    screen.blocks.extend(blocks(&load(&jobs), count, view));
    screen
}

fn name_in(words: &Words) -> Box<dyn Fn(&str) -> String + '_> {
    Box::new(|key| words.text(key))
}

/// A load list as blocks.
fn blocks(load: &Load, visits: usize, view: &View<'_>) -> Vec<Block> {
    let words = view.words;
    let text = |text: String| Block::Text { text, level: 0, tone: Tone::Quiet };
    let mut blocks = Vec::new();
    if load.is_aggressive() {
        let (title, text) = (words.text("load-van"), words.text("load-van.text"));
        blocks.push(Block::Caution { sign: "acid".into(), title, text });
    }
    let sheets = sheets(load, visits, view.units, words).into_iter();
    blocks.extend(sheets.map(|Sheet { caption, columns, rows }| Block::Table { caption, columns, rows }));
    if !load.chemicals.is_empty() {
        blocks.push(text(margin_told(words)));
    }
    blocks.push(text(words.text("load-if-needed")));
    blocks
}
