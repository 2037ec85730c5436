//! Readings over the years: those that tell how the machine ages. Temperatures are left out: they follow the weather.

use chrono::Datelike as _;

use super::numbers::with_symbol;
use super::{Part, Sources, Years, chart, day};
use crate::procedure::measure::Units;
use crate::procedure::pack::Quantity;
use crate::record::names::name_of;
use crate::round::history::{Direction, Series, series};
use crate::science::calendar::days_between;
use crate::words::number;

/// More than these are not read.
const CHARTS_MOST: usize = 3;

pub(super) fn years(from: &Sources<'_>) -> Vec<Part> {
    let mut parts = Vec::new();
    for (unit, run) in from.visit.runs.iter() {
        let assigned = from.assignment.units.iter().find(|assigned| assigned.letter == unit.as_str());
        let history = assigned.map(|assigned| assigned.history.as_slice()).unwrap_or_default();
        let weather = |quantity| matches!(quantity, Quantity::Temperature | Quantity::RelativeHumidity);
        let mut all: Vec<Series<'_>> =
            series(from.pack, history, Some(run)).into_iter().filter(|of| !weather(of.reading.quantity)).collect();
        all.sort_by_key(|of| !goes_somewhere(of));
        let told = |of: &Series<'_>| Part::Years(year(from, of, |label| from.of_unit(unit, label)));
        parts.extend(all.iter().take(CHARTS_MOST).map(told));
    }
    parts
}

fn goes_somewhere(of: &Series<'_>) -> bool {
    of.trend.is_some_and(|trend| matches!(trend.told, Direction::Rises | Direction::Falls))
}

fn year(from: &Sources<'_>, of: &Series<'_>, label: impl Fn(String) -> String) -> Years {
    let (words, units) = (from.words, from.units);
    let (quantity, decimals) = (of.reading.quantity, of.reading.decimals);
    let label = label(name_of(words, from.pack, of.reading));
    // Old readings may stand there with other decimals: in one column all have those of the reading.
    let shown = |value: &str| {
        let alike = value.parse().map_or_else(|_| value.to_owned(), |value| number::write(value, decimals, "en"));
        quantity.show(if units == Units::Metric { &alike } else { value }, decimals, units, words.language())
    };
    let values: Vec<(String, String)> =
        of.values.iter().map(|(date, value)| (day::month(words, *date), shown(value))).collect();
    let meaning = match of.trend.map(|trend| trend.told) {
        Some(Direction::Rises) => words.text("summary-years-rises"),
        Some(Direction::Falls) => words.text("summary-years-falls"),
        Some(Direction::NoTrend) => words.text("summary-years-none"),
        Some(Direction::TooFew) | None => words.text("summary-years-few"),
    };
    let first = of.values.first().map(|(date, _)| *date).unwrap_or_default();
    let points: Vec<(f64, f64, String)> = of
        .values
        .iter()
        .filter_map(|(date, value)| {
            let seen = quantity.to_people(value.parse().ok()?, units);
            Some((days_between(first, *date) as f64, seen, date.year().to_string()))
        })
        .collect();
    let listed: Vec<String> = values.iter().map(|(day, value)| format!("{day}: {value}")).collect();
    let text = format!("{label}. {}.", listed.join("; "));
    let tick =
        |value: f64, places: u8| with_symbol(&number::write(value, places, words.language()), quantity.symbol(units));
    Years { chart: chart::years(&points, text, &tick), label, values, meaning }
}
