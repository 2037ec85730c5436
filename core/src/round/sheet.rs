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
/// `visits` is how many the day has.
#[must_use]
pub fn sheets(load: &Load, visits: usize, units: Units, words: &Words) -> Vec<Sheet> {
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

/// What is said about the chemicals, where there are any: the rule of the van's acids and alkalis, and the margin.
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
