//! The load list of the day: what goes into the van, what stands apart in it, and for whom. Tables that print on a page.

use super::view::{bare, go};
use super::{Block, Button, Screen, Tone, View};
use crate::procedure::pack::ChemicalKind;
use crate::round::day::{day_of, minute_of, plan};
use crate::round::load::{Chemical, Counted, Job, Load, MARGIN, load};
use crate::words::{Words, number};

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
    screen.blocks.extend(blocks(&load(&jobs), count, view, words));
    screen
}

fn name_in(words: &Words) -> Box<dyn Fn(&str) -> String + '_> {
    Box::new(|key| words.text(key))
}

/// A load list as blocks.
fn blocks(load: &Load, visits: usize, view: &View<'_>, words: &Words) -> Vec<Block> {
    let mut blocks = Vec::new();
    let text = |text: String| Block::Text { text, level: 0, tone: Tone::Quiet };
    let kinds = [
        (ChemicalKind::Acid, "load-acids"),
        (ChemicalKind::Hypochlorite, "load-hypochlorites"),
        (ChemicalKind::Alkali, "load-alkalis"),
        (ChemicalKind::Neutral, "load-neutrals"),
    ];
    let aggressive = |chemical: &Chemical| chemical.kind != ChemicalKind::Neutral;
    if load.chemicals.iter().any(aggressive) {
        blocks.push(Block::Caution {
            sign: "acid".into(),
            title: words.text("load-van"),
            text: words.text("load-van.text"),
        });
    }
    for (kind, key) in kinds {
        let rows: Vec<Vec<String>> = load
            .chemicals
            .iter()
            .filter(|chemical| chemical.kind == kind)
            .map(|chemical| {
                let shown = |amount: f64| chemical.measure.show(amount, view.units, words.language());
                let mixes = sure_maybe(words, chemical.sure, chemical.maybe, &shown);
                vec![chemical.name.clone(), shown(chemical.take), mixes, sites(words, &chemical.sites, visits)]
            })
            .collect();
        blocks.extend(table(words, key, &["load-what", "load-take", "load-mixes", "load-for"], rows));
    }
    if !load.chemicals.is_empty() {
        let percent = number::write(MARGIN * 100.0, 0, words.language());
        blocks.push(text(words.fill("load-margin", &[("percent", &percent)])));
    }
    let parts = load.parts.iter().map(|part| {
        let shown = |count: f64| number::write(count, 0, words.language());
        let count = sure_maybe(words, f64::from(part.sure), f64::from(part.maybe), &shown);
        vec![part.name.clone(), count, sites(words, &part.sites, visits)]
    });
    blocks.extend(table(words, "load-parts", &["load-what", "load-count", "load-for"], parts.collect()));
    let mut gear: Vec<Vec<String>> = Vec::new();
    for (key, wanted) in [("load-spill-kit", !load.names_spill_kit), ("load-eyewash", !load.names_eyewash)] {
        if load.acid && wanted {
            gear.push(vec![words.text(key), words.text("load-all")]);
        }
    }
    gear.extend(load.gear.iter().map(|gear| once(words, gear, visits)));
    blocks.extend(table(words, "load-gear", &["load-what", "load-for"], gear));
    let instruments = load.instruments.iter().map(|instrument| once(words, instrument, visits)).collect();
    blocks.extend(table(words, "load-instruments", &["load-what", "load-for"], instruments));
    blocks.push(text(words.text("load-if-needed")));
    blocks
}

fn once(words: &Words, gear: &Counted, visits: usize) -> Vec<String> {
    let name = if gear.sure == 0 { words.fill("load-maybe", &[("maybe", &gear.name)]) } else { gear.name.clone() };
    vec![name, sites(words, &gear.sites, visits)]
}

fn sure_maybe(words: &Words, sure: f64, maybe: f64, shown: &dyn Fn(f64) -> String) -> String {
    match (sure > 0.0, maybe > 0.0) {
        (true, true) => words.fill("load-sure-maybe", &[("sure", &shown(sure)), ("maybe", &shown(maybe))]),
        (false, true) => words.fill("load-maybe", &[("maybe", &shown(maybe))]),
        (_, false) => shown(sure),
    }
}

fn sites(words: &Words, sites: &[String], visits: usize) -> String {
    if sites.len() == visits && visits > 1 { words.text("load-all") } else { sites.join(", ") }
}

/// A table; none without rows.
fn table(words: &Words, caption: &str, columns: &[&str], rows: Vec<Vec<String>>) -> Option<Block> {
    let columns = columns.iter().map(|key| words.text(key)).collect();
    (!rows.is_empty()).then(|| Block::Table { caption: words.text(caption), columns, rows })
}
