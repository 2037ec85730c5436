//! What visits used, as rows for the van's stock and for billing.

use chrono::NaiveDate;
use coilside_core::round::amount::{Measure, tenths};
use coilside_core::round::day_of;
use coilside_core::round::used::{TIME, used};
use coilside_core::visit::state::Run;
use coilside_core::words::Words;

use super::language::Language;
use super::library::Library;
use super::list_visits;
use super::record::{self, Record};
use crate::ids::VisitId;
use crate::store::{Store, StoreError, listings};

/// Names of the columns: stable, in no language, so that another program can rely on them.
pub(crate) const COLUMNS: [&str; 13] = [
    "visit",
    "day",
    "state",
    "site",
    "technician",
    "unit",
    "asset",
    "item",
    "name",
    "amount",
    "measure",
    "worked_out",
    "corrected",
];

/// One thing that one visit used.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Row {
    /// The unit's letter; empty for time.
    pub(crate) unit: String,
    /// The unit in the register; empty for time.
    pub(crate) asset: String,
    /// Its stable name: `chemical-descaler`, `part-anode`, `time`.
    pub(crate) item: String,
    /// Its name in words.
    pub(crate) name: String,
    /// What counts, in `measure`.
    pub(crate) amount: f64,
    pub(crate) measure: Measure,
    pub(crate) worked: f64,
    pub(crate) corrected: bool,
}

/// What a visit used. What it could have used and did not is left out, unless someone wrote a nothing there by hand.
pub(crate) fn rows(record: &Record<'_>, words: &Words) -> Vec<Row> {
    let pack_of = |_: &Run| record.pack.map(|found| &found.pack.pack);
    let all = used(&record.visit, &pack_of).into_iter();
    all.filter(|used| used.amount() > 0.0 || used.corrected.is_some())
        .map(|used| {
            let run = used.unit.as_ref().and_then(|unit| record.visit.runs.get(unit));
            Row {
                unit: used.unit.as_ref().map(ToString::to_string).unwrap_or_default(),
                asset: run.map(|run| run.asset.clone()).unwrap_or_default(),
                name: words.text(if used.item == TIME { "used-time" } else { &used.item }),
                amount: used.amount(),
                measure: used.measure,
                worked: used.worked,
                corrected: used.corrected.is_some(),
                item: used.item,
            }
        })
        .collect()
}

/// The rows of one visit as CSV; none where there is no such visit.
pub(crate) fn of_visit(
    store: &Store,
    library: &Library,
    visit: &VisitId,
    language: Language,
) -> Result<Option<String>, StoreError> {
    let record = record::read(store, library, visit)?;
    Ok(record.map(|record| csv(&[lines(&record, library, language)].concat())))
}

/// The rows of all visits that began from one day to another, both counted, by the day where the visit was.
pub(crate) fn of_days(
    store: &Store,
    library: &Library,
    from: NaiveDate,
    to: NaiveDate,
    language: Language,
) -> Result<String, StoreError> {
    list_visits::refresh(store, library)?;
    let mut all = Vec::new();
    for (visit, opened_ms, offset_min) in store.read(listings::opened)? {
        let is_in = day_of(opened_ms, offset_min).is_some_and(|day| (from..=to).contains(&day));
        if let (true, Some(record)) = (is_in, record::read(store, library, &visit)?) {
            all.extend(lines(&record, library, language));
        }
    }
    Ok(csv(&all))
}

fn lines(record: &Record<'_>, library: &Library, language: Language) -> Vec<[String; 13]> {
    let words = library.words(language, record.pack.map(|found| found.pack));
    let opened = record.visit.opened.as_ref();
    let day = opened.and_then(|now| day_of(now.utc_ms, now.offset_min)).map(|day| day.to_string()).unwrap_or_default();
    let site = record.assignment.as_ref().map(|assignment| assignment.site.name.clone()).unwrap_or_default();
    rows(record, words)
        .into_iter()
        .map(|row| {
            [
                record.id.to_string(),
                day.clone(),
                record.state().name().to_owned(),
                site.clone(),
                record.technician.clone(),
                row.unit,
                row.asset,
                row.item,
                row.name,
                tenths(row.amount),
                row.measure.code().to_owned(),
                tenths(row.worked),
                if row.corrected { "yes" } else { "no" }.to_owned(),
            ]
        })
        .collect()
}

/// As RFC 4180 has it, with a heading line. A cell that a spreadsheet would take for a formula begins with an apostrophe.
fn csv(lines: &[[String; 13]]) -> String {
    let cell = |text: &str| {
        let text =
            if text.starts_with(['=', '+', '-', '@', '\t', '\r']) { format!("'{text}") } else { text.to_owned() };
        if text.contains([',', '"', '\n', '\r']) { format!("\"{}\"", text.replace('"', "\"\"")) } else { text }
    };
    let heading = COLUMNS.map(str::to_owned);
    let lines = [&heading].into_iter().chain(lines).map(|line| line.each_ref().map(|text| cell(text)).join(","));
    lines.map(|line| format!("{line}\r\n")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_cannot_leave_its_place_or_become_a_formula() {
        let mut line: [String; 13] = Default::default();
        line[3] = "Mill, \"old\"\nhouse".into();
        line[4] = "=HYPERLINK(1)".into();
        let text = csv(&[line]);
        let (heading, rest) = text.split_once("\r\n").unwrap();
        assert_eq!(heading.split(',').count(), 13);
        assert_eq!(rest, ",,,\"Mill, \"\"old\"\"\nhouse\",'=HYPERLINK(1),,,,,,,,\r\n");
    }

    #[test]
    fn amounts_are_written_for_programs() {
        assert_eq!([200.0, 1090.909, 0.0, 95.04].map(tenths), ["200", "1090.9", "0", "95"].map(str::to_owned));
    }
}
