//! What visits used: on the visit's page, and as CSV for the van's stock and for billing.

use axum::extract::{Path, Query, State};
use axum::response::Response;
use coilside_core::procedure::measure::Units;
use coilside_core::science::calendar::parse_date;
use coilside_core::words::Words;
use maud::{Markup, html};
use serde::Deserialize;

use super::visitor::SignedIn;
use super::{Page, PageError, files};
use crate::app::record::Record;
use crate::app::used_table;
use crate::http::blocking::on_shelf;
use crate::ids::VisitId;
use crate::office::Office;

/// Two days, as text.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct Days {
    from: String,
    to: String,
}

pub(super) async fn of_visit(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Path(visit): Path<String>,
) -> Page {
    let visit = VisitId::parse(&visit).map_err(|_| PageError::Missing(visitor.clone()))?;
    let name = format!("used-{visit}.csv");
    let language = visitor.language;
    let made = on_shelf(&office, move |store, library, _| used_table::of_visit(store, library, &visit, language));
    Ok(file(&name, made.await?.ok_or(PageError::Missing(visitor))?))
}

/// What is no pair of days of the calendar finds nothing.
pub(super) async fn of_days(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Query(days): Query<Days>,
) -> Page {
    let (from, to) = (parse_date(&days.from), parse_date(&days.to));
    let (Ok(from), Ok(to)) = (from, to) else { return Err(PageError::Missing(visitor)) };
    let language = visitor.language;
    let made = on_shelf(&office, move |store, library, _| used_table::of_days(store, library, from, to, language));
    Ok(file(&format!("used-{from}-{to}.csv"), made.await?))
}

fn file(name: &str, text: String) -> Response {
    files::attachment("text/csv; charset=utf-8; header=present", name, text)
}

/// What one visit used.
pub(super) fn card(words: &Words, record: &Record<'_>) -> Markup {
    let rows = used_table::rows(record, words);
    let shown = |row: &used_table::Row, amount| row.measure.show(amount, Units::Metric, words.language());
    html! {
        section.card {
            h2 { (words.text("used-title")) }
            table.used {
                caption.unseen { (words.text("used-title")) }
                thead.unseen { tr { th scope="col" { (words.text("used-what")) } th scope="col" { (words.text("used-amount")) } } }
                tbody { @for row in &rows {
                    tr {
                        th scope="row" { @if !row.unit.is_empty() { span.unit { (row.unit) } " " } (row.name) }
                        td.number {
                            (shown(row, row.amount))
                            @if row.corrected { span.quiet { (words.fill("used-worked", &[("amount", &shown(row, row.worked))])) } }
                        }
                    }
                } }
            }
            p { a.button href={ "/visits/" (record.id) "/used.csv" } { (words.text("office-used-csv")) } }
        }
    }
}

/// Asks for two days.
pub(super) fn form(words: &Words) -> Markup {
    html! {
        form.search.days action="/used.csv" method="get" {
            h2 { (words.text("office-used-of-days")) }
            label for="used-from" { (words.text("office-used-from")) }
            input #used-from name="from" type="date" required;
            label for="used-to" { (words.text("office-used-to")) }
            input #used-to name="to" type="date" required;
            button { (words.text("office-used-csv")) }
        }
    }
}
