//! What people at the office say about a visit: in order, or a question to the technician.

use axum::Form;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse as _, Redirect};
use coilside_core::words::Words;
use maud::{Markup, html};
use serde::Deserialize;

use super::visitor::SignedIn;
use super::{Page, PageError, message};
use crate::app::day;
use crate::app::record::Record;
use crate::app::review_visit::{self, NotSaid, WORDS_CHARS_MAX};
use crate::http::blocking::on_disk;
use crate::ids::VisitId;
use crate::office::Office;
use crate::store::reviews::Outcome;

/// What was said. The button that was pressed tells the outcome.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct Said {
    outcome: String,
    words: String,
}

pub(super) async fn say(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Path(visit): Path<String>,
    Form(said): Form<Said>,
) -> Page {
    let visit = VisitId::parse(&visit).map_err(|_| PageError::Missing(visitor.clone()))?;
    let outcome = [Outcome::Accepted, Outcome::Question].into_iter().find(|outcome| outcome.name() == said.outcome);
    let outcome = outcome.ok_or(PageError::Missing(visitor.clone()))?;
    let back = format!("/visits/{visit}#review");
    let done = on_disk(&office, move |store, now_ms| review_visit::say(store, &visit, outcome, &said.words, now_ms));
    match done.await? {
        Ok(()) => Ok(Redirect::to(&back).into_response()),
        Err(NotSaid::NoVisit) => Err(PageError::Missing(visitor)),
        Err(NotSaid::Words) => Ok(message(&visitor, StatusCode::UNPROCESSABLE_ENTITY, "office-review-words")),
    }
}

/// What was said so far, and room for more.
pub(super) fn card(words: &Words, record: &Record<'_>) -> Markup {
    let offset_min = record.visit.last.as_ref().map_or(0, |now| now.offset_min);
    let action = format!("/visits/{}/review", record.id);
    html! {
        section.card.review #review {
            h2 { (words.text("office-review")) }
            @if record.reviews.is_empty() { p.quiet { (words.text("office-review-none")) } }
            ul { @for review in &record.reviews {
                li {
                    @match review.outcome {
                        Outcome::Accepted => span.badge.good { (words.text("office-review-accepted")) },
                        Outcome::Question => span.badge.attention { (words.text("office-review-question")) },
                    }
                    " " span.quiet { (day::stamp(review.at_ms, offset_min)) }
                    @if !review.words.is_empty() { p.words { (review.words) } }
                }
            } }
            form action=(action) method="post" {
                button name="outcome" value=(Outcome::Accepted.name()) { (words.text("office-review-accept")) }
            }
            form action=(action) method="post" {
                label for="review-words" { (words.text("office-review-ask")) }
                textarea #review-words name="words" rows="3" required maxlength=(WORDS_CHARS_MAX) {}
                button.quiet name="outcome" value=(Outcome::Question.name()) { (words.text("office-review-send")) }
                p.hint { (words.text("office-review-hint")) }
            }
        }
    }
}
