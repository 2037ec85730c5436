//! What the readings come to: each result with its doubt and what it means; heat and COP before and after as a chart.

use coilside_core::id;
use coilside_core::procedure::measure::Units;
use coilside_core::record::results::{
    Kind, Known, Measured, Outcome, Sketched, Stage, Told, descaling_told, results, told, yearly_told,
};
use coilside_core::screen::sketch;
use coilside_core::visit::state::Run;
use coilside_core::words::Words;
use maud::{Markup, html};

use crate::app::record::Record;

pub(super) fn of_run(words: &Words, record: &Record<'_>, letter: &id::Letter, run: &Run) -> Markup {
    let Some(found) = record.pack else { return html! {} };
    let units = record.assignment.as_ref().map(|assignment| assignment.units.as_slice()).unwrap_or_default();
    let unit = units.iter().find(|unit| unit.letter == letter.as_str());
    let results = results(&found.pack.pack, run, &unit.map(Known::of).unwrap_or_default());
    let all: Vec<(&Outcome, Told)> =
        results.outcomes.iter().map(|outcome| (outcome, told(outcome, words, Units::Metric))).collect();
    html! {
        @if !all.is_empty() {
            section.card {
                h3 { (words.text("result-title")) }
                ul.results {
                    @for (outcome, told) in &all { (result(words, outcome, told)) }
                    @if let Some(cycle) = &results.cycle { (cycle_item(words, cycle)) }
                    @if let Some(year) = &results.yearly {
                        li {
                            h4 { (words.text("result-year")) }
                            p { (yearly_told(year, words)) }
                        }
                    }
                    @if let Some(advice) = &results.descaling {
                        li {
                            h4 { (words.text("descale-title")) }
                            @for line in descaling_told(advice, words) { p { (line) } }
                        }
                    }
                }
                p.hint { (words.text("result-doubt")) }
                (details(words, &all))
            }
        }
    }
}

fn result(words: &Words, outcome: &Outcome, told: &Told) -> Markup {
    let pair = match outcome.measured.as_slice() {
        [found, left] if matches!(outcome.kind, Kind::Heat | Kind::Cop) => Some([*found, *left]),
        _ => None,
    };
    html! {
        li {
            h4 { (told.name) }
            @match pair {
                Some(pair) => (chart(words, told, &pair)),
                None => dl.staged { @for (stage, value) in &told.values {
                    div { dt { (stage_name(words, *stage)) } dd { (value) } }
                } },
            }
            @if let Some(last) = &told.last { p.hint { (last) } }
            p class=[told.attention.then_some("look")] { (told.means) }
        }
    }
}

/// The refrigerant cycle, and what it shows in words.
fn cycle_item(words: &Words, cycle: &Sketched) -> Markup {
    let plot = sketch(cycle, words, Units::Metric);
    html! {
        li {
            h4 { (words.text("result-cycle")) }
            (super::plot::plot(&plot))
            @for line in plot.text.lines() { p { (line) } }
            p.hint { (words.text("result-cycle-means")) }
        }
    }
}

fn stage_name(words: &Words, stage: Stage) -> String {
    match stage {
        Stage::Found => words.text("column-found"),
        Stage::Left => words.text("column-left"),
        Stage::Once => words.text("column-value"),
    }
}

/// Where a chart's parts lie, in its own units.
const WIDE: f64 = 400.0;
const ROW: f64 = 54.0;
const TEXT_DOWN: f64 = 16.0;
const BAR_DOWN: f64 = 24.0;
const BAR_HIGH: f64 = 20.0;
const CAP: f64 = 6.0;
/// How far the zero line stands out.
const ZERO_OVER: f64 = 3.0;
/// Room for the strokes at both ends.
const EDGE: f64 = 3.0;

/// Two bars with their doubt. What was found is an outline, what was left is filled, and each has its words above it.
fn chart(words: &Words, told: &Told, pair: &[Measured; 2]) -> Markup {
    let ends = pair.iter().flat_map(|one| [one.value - one.expanded_u, one.value + one.expanded_u]);
    let (low, high) = ends.fold((0.0_f64, 0.0_f64), |(low, high), end| (low.min(end), high.max(end)));
    let span = if high > low { high - low } else { 1.0 };
    let x = |value: f64| EDGE + (value - low) / span * (WIDE - 2.0 * EDGE);
    let line = |one: &Measured| format!("{}: {}", stage_name(words, one.stage), told.at(one.stage).unwrap_or_default());
    let said: Vec<String> = pair.iter().map(line).collect();
    let number = |value: f64| format!("{value:.1}");
    html! {
        svg.chart viewBox={ "0 0 " (WIDE) " " (ROW * 2.0) } role="img" aria-label={ (told.name) ". " (said.join("; ")) } {
            @for (row, one) in pair.iter().enumerate() {
                @let top = ROW * row as f64;
                @let (from, to) = (x(one.value.min(0.0)), x(one.value.max(0.0)));
                @let (least, most, middle) = (x(one.value - one.expanded_u), x(one.value + one.expanded_u), top + BAR_DOWN + BAR_HIGH / 2.0);
                @let doubt = format!(
                    "M{least:.1} {:.1}v{:.1}M{most:.1} {:.1}v{:.1}M{least:.1} {middle:.1}H{most:.1}",
                    middle - CAP, 2.0 * CAP, middle - CAP, 2.0 * CAP,
                );
                text x=(number(EDGE)) y=(number(top + TEXT_DOWN)) { (line(one)) }
                rect class=(if one.stage == Stage::Left { "left" } else { "found" })
                    x=(number(from)) y=(number(top + BAR_DOWN)) width=(number(to - from)) height=(number(BAR_HIGH)) {}
                path.halo d=(doubt) {}
                path.doubt d=(doubt) {}
                path.zero d={ "M" (number(x(0.0))) " " (number(top + BAR_DOWN - ZERO_OVER)) "v" (number(BAR_HIGH + 2.0 * ZERO_OVER)) } {}
            }
        }
    }
}

/// What stands behind the results, for whoever checks them.
fn details(words: &Words, all: &[(&Outcome, Told)]) -> Markup {
    let text = |key: &str| words.text(key);
    let judged: Vec<&Told> = all.iter().map(|(_, told)| told).filter(|told| !told.verdict.is_empty()).collect();
    html! {
        details {
            summary { (text("details-title")) }
            @if !judged.is_empty() {
                div.scroll tabindex="0" role="group" aria-label=(text("details-results")) { table.readings {
                    thead { tr {
                        th scope="col" { (text("details-result")) } th scope="col" { (text("details-difference")) }
                        th scope="col" { (text("details-verdict")) }
                    } }
                    tbody { @for told in judged {
                        tr { th scope="row" { (told.name) } td.number { (told.difference.as_deref().unwrap_or("–")) } td { (told.verdict) } }
                    } }
                } }
            }
            @for key in ["details-doubt", "details-shared", "details-conditions", "details-rules"] { p.hint { (text(key)) } }
        }
    }
}
