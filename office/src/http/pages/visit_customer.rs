//! The customer at the end of a visit: there or not, and their name and signature, which can be erased.

use axum::extract::{Path, State};
use axum::response::{IntoResponse as _, Redirect};
use coilside_core::evidence::Shown;
use coilside_core::words::Words;
use maud::{Markup, html};

use super::visitor::SignedIn;
use super::{Page, PageError};
use crate::app::customer::{self, Stand};
use crate::app::day;
use crate::app::record::Record;
use crate::http::blocking::on_disk;
use crate::ids::VisitId;
use crate::office::Office;

/// Nothing where nobody said whether the customer was there.
pub(super) fn card(words: &Words, record: &Record<'_>, shown: Option<&Shown>) -> Markup {
    let Some(present) = record.visit.customer_present else { return html! {} };
    let key = match (present, record.visit.customer_unsigned) {
        (false, _) => "customer-absent",
        (true, true) => "customer-unsigned",
        (true, false) => "customer-present",
    };
    let erasable = record.customer.iter().any(|(_, file)| *file == Stand::Here);
    html! {
        section.card.customer {
            h2 { (words.text("customer-title")) }
            @match (record.customer_file(), shown) {
                (None, _) => p { (words.text(key)) },
                (Some(Stand::Here), Some(shown)) => (signed(words, record, shown)),
                (Some(Stand::Here), None) => p.danger { (words.text("office-customer-altered")) },
                (Some(Stand::Waits), _) => p { span.badge.attention { (words.text("office-customer-waits")) } },
                (Some(Stand::Withheld), _) => p { (words.text("customer-withheld")) },
            }
            @if erasable {
                details {
                    summary { (words.text("office-customer-erase")) }
                    p.hint { (words.text("office-customer-erase.hint")) }
                    form method="post" action={ "/visits/" (record.id) "/erase-signature" } {
                        button type="submit" { (words.text("office-customer-erase")) }
                    }
                }
            }
        }
    }
}

fn signed(words: &Words, record: &Record<'_>, shown: &Shown) -> Markup {
    let offset_min = record.visit.last.as_ref().map_or(0, |last| last.offset_min);
    let key = if shown.name.is_empty() { "customer-signed-unnamed" } else { "customer-signed" };
    let drawing = if shown.name.is_empty() { "summary-shown-drawing-unnamed" } else { "summary-shown-drawing" };
    html! {
        p { (words.fill(key, &[("name", &shown.name), ("clock", &day::clock(shown.utc_ms, offset_min))])) }
        @if let Some(ink) = shown.ink() {
            svg.ink viewBox={ "0 0 " (ink.width) " " (ink.height) } role="img"
                aria-label=(words.fill(drawing, &[("name", &shown.name)])) { path d=(ink.path()) {} }
        }
        p.hint { (words.text("office-customer-matches")) }
    }
}

pub(super) async fn erase(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Path(visit): Path<String>,
) -> Page {
    let visit = VisitId::parse(&visit).map_err(|_| PageError::Missing(visitor))?;
    let back = format!("/visits/{visit}");
    on_disk(&office, move |store, now_ms| customer::erase(store, &visit, now_ms)).await?;
    Ok(Redirect::to(&back).into_response())
}
