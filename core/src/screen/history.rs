//! What past visits say about the unit: findings still open, readings over the years with their trend, next descaling.

use super::view::{go, of_visit, tone_of};
use super::{Bar, Block, Button, Screen, Tone, View, VisitView};
use crate::round::history::{Direction, NextDescale, Series, Trend, next_descale, series};
use crate::science::trend::TOLD_LEAST;

/// The history of the unit that is shown.
pub(super) fn show(view: &View<'_>, visit: &VisitView<'_>) -> Screen {
    let words = view.words;
    let mut screen = of_visit(view, visit, words.text("menu-history"));
    let text = |text: String, level, tone| Block::Text { text, level, tone };
    let history = visit.assigned().map(|unit| unit.history.as_slice()).unwrap_or_default();
    screen.blocks.push(text(words.text("history-findings"), 2, Tone::Plain));
    let open = visit.assigned().map(|unit| unit.findings.as_slice()).unwrap_or_default();
    if open.is_empty() {
        screen.blocks.push(text(words.text("history-no-findings"), 0, Tone::Quiet));
    }
    for finding in open {
        let tone = tone_of(finding.severity);
        let parts = [
            ("date", finding.date.as_str()),
            ("severity", &words.text(finding.severity.key())),
            ("text", &finding.text),
        ];
        screen.blocks.push(text(words.fill("history-finding", &parts), 0, tone));
    }
    screen.blocks.push(text(words.text("descale-title"), 2, Tone::Plain));
    match visit.assigned().and_then(|unit| next_descale(visit.pack, unit)) {
        Some(next) => {
            screen.blocks.push(text(descale(view, &next), 0, Tone::Plain));
            screen.blocks.push(text(words.text("descale-first"), 0, Tone::Quiet));
        }
        None => screen.blocks.push(text(words.text("history-descale-none"), 0, Tone::Quiet)),
    }
    let all = series(visit.pack, history, Some(visit.run));
    if all.is_empty() {
        screen.blocks.push(text(words.text("history-none"), 0, Tone::Quiet));
    } else {
        screen.blocks.extend(readings(view, &all));
    }
    screen.foot.push(Button { tone: Tone::Primary, ..go(view, "back-to-now", "now") });
    screen
}

fn descale(view: &View<'_>, next: &NextDescale) -> String {
    let parts = [
        ("on", next.on.format("%Y-%m").to_string()),
        ("from", next.from.to_string()),
        ("least", next.advice.least_months.to_string()),
        ("most", next.advice.most_months.to_string()),
    ];
    let parts: Vec<(&str, &str)> = parts.iter().map(|(name, value)| (*name, value.as_str())).collect();
    view.words.fill("history-descale", &parts)
}

/// Where readings go, a chart of each that goes somewhere, and all values by day.
fn readings(view: &View<'_>, all: &[Series<'_>]) -> Vec<Block> {
    let words = view.words;
    let name = |series: &Series<'_>| words.text(&format!("reading-{}", series.reading.id));
    let mut blocks = Vec::new();
    let rows = all.iter().filter_map(|series| {
        let trend = series.trend?;
        Some(vec![name(series), per_year(view, series, &trend), means(view, series, &trend)])
    });
    blocks.push(Block::Table {
        caption: words.text("history-trends"),
        columns: ["history-reading", "history-trend", "history-means"].iter().map(|key| words.text(key)).collect(),
        rows: rows.collect(),
    });
    blocks.push(Block::Text { text: words.text("history-method"), level: 0, tone: Tone::Quiet });
    let goes = |series: &&Series<'_>| {
        series.trend.is_some_and(|trend| matches!(trend.told, Direction::Rises | Direction::Falls))
    };
    blocks.extend(all.iter().filter(goes).map(|series| chart(view, series, &name(series))));
    let mut days: Vec<_> = all.iter().flat_map(|series| series.values.iter().map(|(day, _)| *day)).collect();
    days.sort_unstable();
    days.dedup();
    let row = |series: &Series<'_>| {
        let at = |day: &chrono::NaiveDate| {
            let value = series.values.iter().find(|(of, _)| of == day);
            value.map(|(_, value)| shown(view, series, value)).unwrap_or_default()
        };
        [name(series)].into_iter().chain(days.iter().map(at)).collect()
    };
    blocks.push(Block::Table {
        caption: words.text("history-readings"),
        columns: [words.text("history-reading")].into_iter().chain(days.iter().map(ToString::to_string)).collect(),
        rows: all.iter().map(row).collect(),
    });
    blocks
}

fn shown(view: &View<'_>, series: &Series<'_>, value: &str) -> String {
    series.reading.quantity.show(value, series.reading.decimals, view.units, view.words.language())
}

/// The slope with its range, with one decimal more than the reading has.
fn per_year(view: &View<'_>, series: &Series<'_>, trend: &Trend) -> String {
    let decimals = usize::from(series.reading.decimals) + 1;
    let slope = |value: f64| {
        let text = format!("{value:.decimals$}");
        series.reading.quantity.show_difference(&text, view.units, view.words.language())
    };
    // The unit once is enough.
    let bare = |value: f64| slope(value).split('\u{a0}').next().unwrap_or_default().to_owned();
    let parts = [("slope", slope(trend.per_year)), ("least", bare(trend.least)), ("most", bare(trend.most))];
    let parts: Vec<(&str, &str)> = parts.iter().map(|(name, value)| (*name, value.as_str())).collect();
    view.words.fill("history-per-year", &parts)
}

fn means(view: &View<'_>, series: &Series<'_>, trend: &Trend) -> String {
    let words = view.words;
    match trend.told {
        Direction::Rises => words.text("history-rises"),
        Direction::Falls => words.text("history-falls"),
        Direction::NoTrend => words.text("history-no-trend"),
        Direction::TooFew => {
            let (count, least) = (series.values.len().to_string(), TOLD_LEAST.to_string());
            words.fill("history-too-few", &[("count", &count), ("least", &least)])
        }
    }
}

fn chart(view: &View<'_>, series: &Series<'_>, name: &str) -> Block {
    let quantity = series.reading.quantity;
    let bars = series.values.iter().filter_map(|(day, value)| {
        let seen = quantity.to_people(value.parse().ok()?, view.units);
        Some(Bar { label: day.to_string(), value: seen, doubt: 0.0, text: shown(view, series, value) })
    });
    Block::Chart {
        caption: view.words.fill("history-chart", &[("reading", name)]),
        unit: quantity.symbol(view.units).to_owned(),
        bars: bars.collect(),
    }
}
