//! Readings of a unit: as found beside as left, then the others; each with its instrument's limits.

use std::collections::BTreeSet;

use coilside_core::id::ReadingId;
use coilside_core::procedure::measure::Units;
use coilside_core::procedure::pack::{Pack, Reading};
use coilside_core::record::names::name_of;
use coilside_core::visit::state::{Run, Taken};
use coilside_core::words::{Words, number};
use maud::{Markup, html};

use crate::app::day;
use crate::app::record::Record;

pub(super) fn readings(words: &Words, record: &Record<'_>, run: &Run) -> Markup {
    if run.readings.is_empty() && run.missed.is_empty() {
        return html! {};
    }
    let Some(found) = record.pack else { return raw(words, run) };
    let pack = &found.pack.pack;
    let pairs: Vec<(&Reading, &Reading)> = pack
        .readings
        .iter()
        .filter_map(|left| Some((pack.reading(left.as_found.as_ref()?.as_str())?, left)))
        .filter(|(found, left)| had(run, &found.id) || had(run, &left.id))
        .collect();
    let paired: BTreeSet<&ReadingId> = pairs.iter().flat_map(|(found, left)| [&found.id, &left.id]).collect();
    let others: Vec<&Reading> =
        pack.readings.iter().filter(|reading| had(run, &reading.id) && !paired.contains(&reading.id)).collect();
    html! {
        section.card {
            h3 { (words.text("office-readings")) }
            @if !pairs.is_empty() { (side_by_side(words, pack, run, &pairs)) }
            @if !others.is_empty() {
                h4 { (words.text("office-other-readings")) }
                div.scroll tabindex="0" role="group" aria-label=(words.text("office-readings")) { table.readings {
                    thead { tr {
                        th scope="col" { (words.text("office-reading")) } th scope="col" { (words.text("office-value")) }
                        th scope="col" { (words.text("office-instrument")) } th scope="col" { (words.text("office-time")) }
                    } }
                    tbody { @for reading in others {
                        tr {
                            th scope="row" { (words.text(&format!("reading-{}", reading.id))) }
                            td.number { (value(words, run, reading)) }
                            td { (instrument(words, run, &[&reading.id])) }
                            td { (time(run, &reading.id)) }
                        }
                    } }
                } }
            }
        }
    }
}

fn side_by_side(words: &Words, pack: &Pack, run: &Run, pairs: &[(&Reading, &Reading)]) -> Markup {
    html! {
        div.scroll tabindex="0" role="group" aria-label=(words.text("office-readings")) { table.readings {
            thead { tr {
                th scope="col" { (words.text("office-reading")) }
                th scope="col" { (words.text("column-found")) } th scope="col" { (words.text("column-left")) }
                th scope="col" { (words.text("office-change")) } th scope="col" { (words.text("office-instrument")) }
            } }
            tbody { @for (found, left) in pairs {
                tr {
                    th scope="row" { (name_of(words, pack, left)) }
                    td.number { (value(words, run, found)) }
                    td.number { (value(words, run, left)) }
                    td.number { (change(words, run, found, left)) }
                    td { (instrument(words, run, &[&left.id, &found.id])) }
                }
            } }
        } }
    }
}

fn had(run: &Run, id: &ReadingId) -> bool {
    run.readings.contains_key(id) || run.missed.contains_key(id)
}

fn value(words: &Words, run: &Run, reading: &Reading) -> Markup {
    let language = words.language();
    html! {
        @if let Some(taken) = run.readings.get(&reading.id) {
            span.value { (reading.quantity.show(&taken.value, reading.decimals, Units::Metric, language)) }
            @if !taken.error_limit.is_empty() { span.quiet { " ±\u{a0}" (number::localise(&taken.error_limit, language)) } }
            @if taken.unusual { " " span.flag { (words.text("office-unusual")) } }
            @if taken.times > 1 { " " span.flag { (words.fill("office-corrected", &[("n", &taken.times.to_string())])) } }
        } @else if let Some(reason) = run.missed.get(&reading.id) {
            span.quiet { (words.fill("missed-value", &[("reason", reason)])) }
        } @else {
            span.quiet { "–" }
        }
    }
}

/// The difference, where both were measured; said to be none that can be told where the instruments' limits reach it.
/// The cautious bound counts both limits in full, as the owner's summary does.
fn change(words: &Words, run: &Run, found: &Reading, left: &Reading) -> String {
    let limit =
        |reading: &Reading| run.readings.get(&reading.id).and_then(|taken| taken.error_limit.parse::<f64>().ok());
    let (Some(was), Some(is)) = (run.number(found.id.as_str()), run.number(left.id.as_str())) else {
        return String::new();
    };
    let change = is - was;
    if let (Some(first), Some(second)) = (limit(found), limit(left))
        && change.abs() <= first + second
    {
        return words.text("summary-no-difference");
    }
    let text = number::write(change, left.decimals, words.language());
    let symbol = left.quantity.symbol(Units::Metric);
    format!("{}{text}\u{a0}{symbol}", if change > 0.0 { "+" } else { "" })
}

/// With what it was measured: the technician's own instrument by its name and serial, flagged where its calibration lapsed.
fn instrument(words: &Words, run: &Run, ids: &[&ReadingId]) -> Markup {
    let taken: Option<&Taken> = ids.iter().find_map(|id| run.readings.get(*id)).filter(|t| !t.instrument.is_empty());
    let kind = |taken: &Taken| {
        words.get(&format!("instrument-{}", taken.instrument)).unwrap_or_else(|| taken.instrument.clone())
    };
    html! {
        @if let Some(taken) = taken {
            @match &taken.own {
                Some(own) => {
                    (own.name) " " span.quiet { (own.serial) }
                    @if own.lapsed {
                        " " span.flag { (words.fill("office-calibration-lapsed", &[("until", &own.calibrated_until)])) }
                    }
                },
                None => (kind(taken)),
            }
        }
    }
}

fn time(run: &Run, id: &ReadingId) -> String {
    run.readings.get(id).map(|taken| day::clock(taken.at.utc_ms, taken.at.offset_min)).unwrap_or_default()
}

/// Without the procedure's words: names and units as they stand in the log.
fn raw(words: &Words, run: &Run) -> Markup {
    html! {
        section.card {
            h3 { (words.text("office-readings")) }
            div.scroll tabindex="0" role="group" aria-label=(words.text("office-readings")) { table.readings { tbody {
                @for (id, taken) in &run.readings { tr { th scope="row" { (id) } td.number { (taken.value) " " (taken.measure) } } }
                @for (id, reason) in &run.missed { tr { th scope="row" { (id) } td { (words.fill("missed-value", &[("reason", reason)])) } } }
            } } }
        }
    }
}
