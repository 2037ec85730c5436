//! Events and the seal of a visit.

use axum::extract::{RawQuery, State};
use axum::http::StatusCode;

use super::Answer;
use super::body::{Json, Named, asked};
use crate::app::{give_events, receive_events, receive_seal};
use crate::http::blocking::on_disk;
use crate::http::caller::Caller;
use crate::http::refusal::Refusal;
use crate::ids::{Secret, VisitId};
use crate::office::Office;
use crate::wire::events::{EventsIn, EventsOut, StoredOut};
use crate::wire::problem::Problem;
use crate::wire::{SealIn, SealOut};

/// Send events. Those that are here already change nothing. On 200 they are on the office's disk.
#[utoipa::path(
    post, path = "/visits/{visit}/events", tag = "visits", request_body = EventsIn, security(("device" = [])),
    params(("visit" = String, Path, description = "1 to 64 letters, digits and hyphens.")),
    responses(
        (status = 200, body = EventsOut),
        (status = 403, description = "`another-device`: the visit comes from another device.", body = Problem, content_type = "application/problem+json"),
        (status = 404, description = "`visit`: no name of a visit.", body = Problem, content_type = "application/problem+json"),
        (status = 409, description = "`gap` with `next` and `head`: send from there. `conflict` with `next`, `head`, `conflict_at` and `kept`: the events before `kept` are kept beside the record. `taken-over` with `next`, `head` and `kept`: another device goes on; the events before `kept` are kept beside the record.", body = Problem, content_type = "application/problem+json"),
        (status = 413, description = "`too-many-events`: send fewer at once.", body = Problem, content_type = "application/problem+json"),
        (status = 422, description = "`events`: no chain of this visit.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn events(
    State(office): State<Office>,
    Caller(device): Caller,
    Named(visit): Named,
    Json(sent): Json<EventsIn>,
) -> Answer<EventsOut> {
    let visit = name(&visit)?;
    let done = on_disk(&office, move |store, now_ms| receive_events::receive(store, device.id, &visit, &sent, now_ms));
    let done = done.await?;
    Ok((StatusCode::OK, axum::Json(EventsOut { next: done.next, head: done.head.to_string() })))
}

/// Fetch the events of a visit that this device goes on with.
#[utoipa::path(
    get, path = "/visits/{visit}/events", tag = "visits", security(("device" = [])),
    params(
        ("visit" = String, Path, description = "1 to 64 letters, digits and hyphens."),
        ("from" = Option<u64>, Query, description = "The number of the first that is wanted; 0 where it is left out."),
    ),
    responses(
        (status = 200, body = StoredOut),
        (status = 400, description = "`from`: no number.", body = Problem, content_type = "application/problem+json"),
        (status = 403, description = "`another-device`: another device writes it.", body = Problem, content_type = "application/problem+json"),
        (status = 404, description = "`visit`: no such visit.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn stored(
    State(office): State<Office>,
    Caller(device): Caller,
    Named(visit): Named,
    RawQuery(query): RawQuery,
) -> Answer<StoredOut> {
    let visit = name(&visit)?;
    let from = match asked(query.as_deref(), "from") {
        None => 0,
        Some(text) => text.parse().map_err(|_| {
            Refusal::stuck(400, "from", "The number cannot be read", "'from' should be the number of an event")
        })?,
    };
    let given = on_disk(&office, move |store, _| give_events::give(store, device.id, &visit, from)).await?;
    Ok((StatusCode::OK, axum::Json(given)))
}

/// Hand in the seal. It must fit the events that are here, and be made by the device's registered key.
#[utoipa::path(
    put, path = "/visits/{visit}/seal", tag = "visits", request_body = SealIn, security(("device" = [])),
    params(("visit" = String, Path, description = "1 to 64 letters, digits and hyphens.")),
    responses(
        (status = 200, body = SealOut),
        (status = 403, description = "`another-device`, `other-key`.", body = Problem, content_type = "application/problem+json"),
        (status = 404, description = "`visit`: no name of a visit.", body = Problem, content_type = "application/problem+json"),
        (status = 409, description = "`no-key`, `gap` (send the events first), `conflict`, `sealed-otherwise`, `taken-over` (the seal is kept beside the record).", body = Problem, content_type = "application/problem+json"),
        (status = 413, description = "`seal`: too long.", body = Problem, content_type = "application/problem+json"),
        (status = 422, description = "`seal`, `other-writer`, `no-addendum`.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn seal(
    State(office): State<Office>,
    Caller(device): Caller,
    Named(visit): Named,
    Json(sent): Json<SealIn>,
) -> Answer<SealOut> {
    let visit = name(&visit)?;
    let token = Secret::random().map_err(|_| Refusal::broken())?;
    let of = visit.to_string();
    let opened =
        on_disk(&office, move |store, now_ms| receive_seal::receive(store, &device, &visit, &sent, &token, now_ms));
    let summary = format!("/s/{}", opened.await?);
    Ok((StatusCode::OK, axum::Json(SealOut { visit: of, sealed: true, summary })))
}

fn name(visit: &str) -> Result<VisitId, Refusal> {
    VisitId::parse(visit).map_err(|why| Refusal::stuck(404, "visit", "There is no such visit", why))
}
