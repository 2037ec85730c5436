//! What changed in numbers: each value with its range and unit, and whether a difference can be told.

use super::chart::{Range, Rows, ranges};
use super::{Changed, Part, Sources, Tone, Worked};
use crate::procedure::measure::Units;
use crate::procedure::pack::Reading;
use crate::record::names::name_of;
use crate::record::results::{Change, Kind, Measured, Outcome, Results, Stage, told};
use crate::visit::state::Run;
use crate::words::{Words, number};

pub(super) fn numbers(from: &Sources<'_>, worked: &[Worked<'_>]) -> Vec<Part> {
    let words = from.words;
    let gain = worked.iter().flat_map(|worked| {
        gain(words, &worked.results).into_iter().map(|line| from.of_unit(worked.unit, line)).collect::<Vec<_>>()
    });
    let gain: Vec<Part> = gain.map(|line| Part::Text(line, Tone::Strong)).collect();
    let changed: Vec<Changed> = worked
        .iter()
        .flat_map(|worked| worked_out(from, worked).into_iter().chain(readings(from, worked)).collect::<Vec<_>>())
        .collect();
    if changed.is_empty() {
        return Vec::new();
    }
    let hint = Part::Text(words.text("summary-numbers-hint"), Tone::Quiet);
    gain.into_iter().chain([hint]).chain(changed.into_iter().map(Part::Changed)).collect()
}

/// Whether the unit needs less electricity for the same hot water. Only said where it can be told at like air and water.
fn gain(words: &Words, results: &Results) -> Vec<String> {
    let both = |cop: &&Outcome| cop.at(Stage::Found).is_some() && cop.at(Stage::Left).is_some();
    let Some(cop) = results.of(Kind::Cop).filter(both) else { return Vec::new() };
    let key = match cop.change.map(|changed| changed.change) {
        Some(Change::More) => "summary-gain-less-power",
        Some(Change::Less) => "summary-gain-more-power",
        Some(Change::None) => "summary-gain-none",
        None => "summary-gain-conditions",
    };
    let saved = results.yearly.map(|year| year.saved).filter(|saved| saved.value > saved.expanded_u);
    let year = saved.map(|saved| {
        // Two digits are what such an estimate is worth.
        let about = |kwh: f64| {
            let step = if kwh < 100.0 { 5.0 } else { 50.0 };
            number::write(libm::round(kwh / step) * step, 0, words.language())
        };
        let (least, most) = (about(saved.value - saved.expanded_u), about(saved.value + saved.expanded_u));
        let key = if least == "0" { "summary-gain-year-up-to" } else { "summary-gain-year" };
        words.fill(key, &[("least", &least), ("most", &most)])
    });
    [Some(words.text(key)), year].into_iter().flatten().collect()
}

/// What the readings come to: heat and COP, where they were measured before and after. More of either is better.
fn worked_out(from: &Sources<'_>, worked: &Worked<'_>) -> Vec<Changed> {
    let words = from.words;
    let of = |(kind, key): (Kind, &str)| {
        let outcome = worked.results.of(kind)?;
        let meaning = match outcome.change.map(|changed| changed.change) {
            Some(Change::More) => words.text("summary-better"),
            Some(Change::Less) => words.text("summary-worse"),
            Some(Change::None) => words.text("summary-no-difference"),
            None => words.text("summary-not-alike"),
        };
        let told = told(outcome, words, from.units);
        let with_unit = |text: &str| match kind {
            Kind::Cop => words.fill("summary-times", &[("n", text)]),
            _ => text.to_owned(),
        };
        let at = |stage| Some(with_unit(told.at(stage)?));
        let (found, left) = (at(Stage::Found)?, at(Stage::Left)?);
        let label = from.of_unit(worked.unit, words.text(key));
        let range = |measured: Measured| Range { value: measured.value, doubt: measured.expanded_u };
        let tick = |value: f64, decimals: u8| {
            let text = number::write(value, decimals, words.language());
            match kind {
                Kind::Cop => words.fill("summary-times", &[("n", &text)]),
                _ => format!("{text}\u{a0}{}", told.unit),
            }
        };
        let rows = rows(from, &label, &found, &left, &meaning);
        let chart = Some(ranges(
            range(outcome.at(Stage::Found)?),
            range(outcome.at(Stage::Left)?),
            rows.0.as_rows(rows.1),
            &tick,
        ));
        Some(Changed { label, found, left, meaning, chart })
    };
    [(Kind::Heat, "summary-heat"), (Kind::Cop, "summary-cop")].into_iter().filter_map(of).collect()
}

/// The words of both rows of a chart.
struct RowWords {
    before: String,
    after: String,
}

impl RowWords {
    fn as_rows(&self, text: String) -> Rows<'_> {
        Rows { before: &self.before, after: &self.after, text }
    }
}

fn rows(from: &Sources<'_>, label: &str, found: &str, left: &str, meaning: &str) -> (RowWords, String) {
    let words = from.words;
    let parts = [("label", label), ("found", found), ("left", left), ("meaning", meaning)];
    let words_of = RowWords { before: words.text("summary-before"), after: words.text("summary-after") };
    (words_of, words.fill("summary-chart-ranges", &parts).trim().to_owned())
}

/// Readings that were taken as found and again as left.
fn readings(from: &Sources<'_>, worked: &Worked<'_>) -> Vec<Changed> {
    let (words, run) = (from.words, worked.run);
    let twice = from.pack.readings.iter().filter_map(|left| {
        let found = from.pack.reading(left.as_found.as_ref()?.as_str())?;
        Some((found, left))
    });
    let of = |(found, left): (&Reading, &Reading)| {
        let shown = |reading| shown(from, run, reading);
        let (was, is) = (shown(found), shown(left));
        if was.is_none() && is.is_none() {
            return None;
        }
        let missing = || words.text("summary-not-measured");
        let label = from.of_unit(worked.unit, name_of(words, from.pack, left));
        let meaning = meaning(run, found, left).map(|change| words.text(change.owner_key())).unwrap_or_default();
        let (was, is) = (was.unwrap_or_else(missing), is.unwrap_or_else(missing));
        let chart = range(from.units, run, found).zip(range(from.units, run, left)).map(|(found_range, left_range)| {
            let tick = |value: f64, decimals: u8| {
                with_symbol(&number::write(value, decimals, words.language()), left.quantity.symbol(from.units))
            };
            let rows = rows(from, &label, &was, &is, &meaning);
            ranges(found_range, left_range, rows.0.as_rows(rows.1), &tick)
        });
        Some(Changed { label, found: was, left: is, meaning, chart })
    };
    twice.filter_map(of).collect()
}

/// A value with the half width of the instrument's limits as its maker states them, and the unit.
fn shown(from: &Sources<'_>, run: &Run, reading: &Reading) -> Option<String> {
    let (units, language) = (from.units, from.words.language());
    let taken = run.readings.get(&reading.id)?;
    let text = reading.quantity.show(&taken.value, reading.decimals, units, language);
    if taken.error_limit.is_empty() {
        return Some(text);
    }
    let symbol = reading.quantity.symbol(units);
    // A unit that both systems share keeps the decimals as they were stated.
    let shared = symbol == reading.quantity.symbol(Units::Metric);
    let limit_units = if shared { Units::Metric } else { units };
    let limit = reading.quantity.show_difference(&taken.error_limit, limit_units, language);
    let limit = limit.split('\u{a0}').next().unwrap_or_default();
    Some(match text.strip_suffix(symbol).map(|number| number.trim_end_matches('\u{a0}')) {
        Some(number) if !symbol.is_empty() => with_symbol(&format!("{number}\u{a0}±\u{a0}{limit}"), symbol),
        _ => format!("{text}\u{a0}±\u{a0}{limit}"),
    })
}

/// A number with its unit, which does not part from it at the end of a line.
pub(super) fn with_symbol(number: &str, symbol: &str) -> String {
    match symbol {
        "" => number.to_owned(),
        "pH" => format!("pH\u{a0}{number}"),
        symbol => format!("{number}\u{a0}{symbol}"),
    }
}

fn range(units: Units, run: &Run, reading: &Reading) -> Option<Range> {
    let quantity = reading.quantity;
    let limit = run.readings.get(&reading.id)?.error_limit.parse().unwrap_or(0.0);
    let doubt = quantity.to_people(limit, units) - quantity.to_people(0.0, units);
    Some(Range { value: quantity.to_people(run.number(reading.id.as_str())?, units), doubt })
}

/// Whether two readings differ by more than the instrument can tell apart. For a single reading the cautious bound counts
/// both limits in full; in the results that rest on several, what one instrument shares goes out.
fn meaning(run: &Run, found: &Reading, left: &Reading) -> Option<Change> {
    let limit = |reading: &Reading| run.readings.get(&reading.id)?.error_limit.parse::<f64>().ok();
    let change = run.number(left.id.as_str())? - run.number(found.id.as_str())?;
    Some(Change::of(change, limit(found)? + limit(left)?))
}
