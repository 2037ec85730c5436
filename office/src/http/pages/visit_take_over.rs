//! Another device is to go on with a visit: chosen, explained, and done.

use axum::Form;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse as _, Redirect};
use coilside_core::words::Words;
use maud::{Markup, html};
use serde::Deserialize;

use super::devices::last_heard;
use super::visitor::SignedIn;
use super::{Page, PageError, message, page};
use crate::app::day;
use crate::app::record::{Record, SealCheck};
use crate::app::take_over::{self, Stays};
use crate::http::blocking::on_disk;
use crate::ids::VisitId;
use crate::office::Office;
use crate::store::devices::{self, DeviceId, Known};
use crate::store::events;

/// To whom it goes.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct Chosen {
    device: String,
}

pub(super) async fn ask(State(office): State<Office>, SignedIn(visitor): SignedIn, Path(visit): Path<String>) -> Page {
    let missing = || PageError::Missing(visitor.clone());
    let id = VisitId::parse(&visit).map_err(|_| missing())?;
    let found = on_disk(&office, move |store, now_ms| {
        store.read(|db| {
            let Some(head) = events::head(db, &id)? else { return Ok(None) };
            Ok(Some((head.device, devices::all(db)?, now_ms)))
        })
    });
    let (writer, all, now_ms) = found.await?.ok_or_else(missing)?;
    let now = all.iter().find(|known| known.device.id == writer).map(|known| known.device.name.clone());
    let others: Vec<&Known> =
        all.iter().filter(|known| known.device.id != writer && take_over::can_go_on(&known.device)).collect();
    let words = visitor.words();
    let title = words.text("office-take-over");
    let body = html! {
        p.back { a href={ "/visits/" (visit) } { "← " (words.text("office-take-over-back")) } }
        section.card.ask {
            h1 { (title) }
            p { (words.fill("office-take-over-now", &[("name", &now.unwrap_or_default())])) }
            p { (words.text("office-take-over-means")) }
            p { (words.text("office-take-over-keeps")) }
            @if others.is_empty() {
                p { b { (words.text("office-take-over-nobody")) } }
                p { a.button href="/devices" { (words.text("office-devices")) } }
            } @else {
                form action={ "/visits/" (visit) "/take-over" } method="post" {
                    fieldset {
                        legend { (words.text("office-take-over-who")) }
                        @for known in others {
                            label.choice {
                                input type="radio" name="device" value=(known.device.id) required;
                                span {
                                    (known.device.name) " " span.quiet { (known.calls_itself) }
                                    span.quiet.heard { (words.text("office-device-heard")) ": " (last_heard(words, known, now_ms)) }
                                }
                            }
                        }
                    }
                    button { (words.text("office-take-over-do")) }
                    a href={ "/visits/" (visit) } { (words.text("office-leave-as-it-is")) }
                }
            }
        }
    };
    Ok(page(&visitor, words, &title, body))
}

pub(super) async fn hand_over(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Path(visit): Path<String>,
    Form(chosen): Form<Chosen>,
) -> Page {
    let missing = || PageError::Missing(visitor.clone());
    let id = VisitId::parse(&visit).map_err(|_| missing())?;
    let to = DeviceId::parse(&chosen.device).ok_or_else(missing)?;
    let done = on_disk(&office, move |store, now_ms| take_over::hand_over(store, &id, to, now_ms)).await?;
    match done {
        Ok(()) | Err(Stays::ItsOwn) => Ok(Redirect::to(&format!("/visits/{visit}")).into_response()),
        Err(Stays::NoVisit | Stays::NoDevice) => Err(missing()),
        Err(Stays::Sealed) => Ok(message(&visitor, StatusCode::CONFLICT, "office-take-over-sealed")),
    }
}

/// Who had the visit, and the way to let another one go on.
pub(super) fn card(words: &Words, record: &Record<'_>) -> Markup {
    let offset_min = record.visit.last.as_ref().map_or(0, |now| now.offset_min);
    let is_open = matches!(record.seal, SealCheck::None);
    html! {
        @if is_open || !record.handed.is_empty() {
            section.card {
                h2 { (words.text("office-device")) }
                p { (record.technician) }
                ul { @for (at_ms, from, to) in &record.handed {
                    li { span.quiet { (day::stamp(*at_ms, offset_min)) } " " (words.fill("office-handed", &[("from", from), ("to", to)])) }
                } }
                @if is_open {
                    p { a.button.quiet href={ "/visits/" (record.id) "/take-over" } { (words.text("office-take-over")) } }
                }
            }
        }
    }
}
