//! The load list as tables in words: the phone shows them, the office prints them.

use super::load::{Counted, Load};
use crate::procedure::measure::Units;
use crate::procedure::pack::ChemicalKind;
use crate::words::{Words, number};

/// Rows under a caption; the first column names the row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// What it lists.
    pub caption: String,
    /// Names of the columns.
    pub columns: Vec<String>,
    /// Cells.
    pub rows: Vec<Vec<String>>,
}

/// Every table of a load list that has rows: chemicals by what they must be apart from, parts, gear, instruments.
/// `visits` are the sites of the day in order: tables name them by their number there, so that a page holds them.
#[must_use]
pub fn sheets(load: &Load, visits: &[&str], units: Units, words: &Words) -> Vec<Sheet> {
    let kinds = [
        (ChemicalKind::Acid, "load-acids"),
        (ChemicalKind::Hypochlorite, "load-hypochlorites"),
        (ChemicalKind::Alkali, "load-alkalis"),
        (ChemicalKind::Neutral, "load-neutrals"),
    ];
    let chemicals = kinds.map(|(kind, key)| {
        let of_kind = load.chemicals.iter().filter(|chemical| chemical.kind == kind);
        let rows = of_kind.map(|chemical| {
            let shown = |amount: f64| chemical.measure.show(amount, units, words.language());
            let mixes = sure_maybe(words, chemical.sure, chemical.maybe, &shown);
            vec![chemical.name.clone(), shown(chemical.take), mixes, sites(words, &chemical.sites, visits)]
        });
        sheet(words, key, &["load-what", "load-take", "load-mixes", "load-for"], rows.collect())
    });
    let parts = load.parts.iter().map(|part| {
        let shown = |count: f64| number::write(count, 0, words.language());
        let count = sure_maybe(words, f64::from(part.sure), f64::from(part.maybe), &shown);
        vec![part.name.clone(), count, sites(words, &part.sites, visits)]
    });
    let for_acid = [("load-spill-kit", load.names_spill_kit), ("load-eyewash", load.names_eyewash)];
    let for_acid = for_acid.iter().filter(|(_, named)| load.acid && !named);
    let gear = for_acid
        .map(|(key, _)| vec![words.text(key), words.text("load-all")])
        .chain(load.gear.iter().map(|gear| once(words, gear, visits)));
    let instruments = load.instruments.iter().map(|instrument| once(words, instrument, visits));
    chemicals
        .into_iter()
        .chain([
            sheet(words, "load-parts", &["load-what", "load-count", "load-for"], parts.collect()),
            sheet(words, "load-gear", &["load-what", "load-for"], gear.collect()),
            sheet(words, "load-instruments", &["load-what", "load-for"], instruments.collect()),
        ])
        .filter(|sheet| !sheet.rows.is_empty())
        .collect()
}

fn sheet(words: &Words, caption: &str, columns: &[&str], rows: Vec<Vec<String>>) -> Sheet {
    Sheet { caption: words.text(caption), columns: columns.iter().map(|key| words.text(key)).collect(), rows }
}

fn once(words: &Words, gear: &Counted, visits: &[&str]) -> Vec<String> {
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

/// The numbers of the visits.
fn sites(words: &Words, sites: &[String], visits: &[&str]) -> String {
    let number = |(at, site): (usize, &&str)| sites.iter().any(|known| known == site).then(|| (at + 1).to_string());
    let numbers: Vec<String> = visits.iter().enumerate().filter_map(number).collect();
    if numbers.len() == visits.len() && visits.len() > 1 { words.text("load-all") } else { numbers.join(", ") }
}

/// The visits with their numbers: '1 Mill House · 2 Ferry Inn'.
#[must_use]
pub fn numbered(visits: &[&str]) -> String {
    let one = |(at, site): (usize, &&str)| format!("{}\u{a0}{}", at + 1, site.replace(' ', "\u{a0}"));
    visits.iter().enumerate().map(one).collect::<Vec<_>>().join(" · ")
}

/// The margin in words.
#[must_use]
pub fn margin_told(words: &Words) -> String {
    let percent = number::write(super::load::MARGIN * 100.0, 0, words.language());
    words.fill("load-margin", &[("percent", &percent)])
}

impl Load {
    /// Something in it must be kept apart from something else.
    #[must_use]
    pub fn is_aggressive(&self) -> bool {
        self.chemicals.iter().any(|chemical| chemical.kind != ChemicalKind::Neutral)
    }
}
