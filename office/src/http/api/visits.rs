//! Events and the seal of a visit.

use axum::Json;
use axum::body::Bytes;
use axum::extract::{Path, State};
use axum::http::StatusCode;

use super::Answer;
use crate::app::{receive_events, receive_seal};
use crate::http::blocking::on_disk;
use crate::http::caller::Caller;
use crate::http::refusal::Refusal;
use crate::ids::{Secret, VisitId};
use crate::office::Office;
use crate::wire::events::{EventsIn, EventsOut};
use crate::wire::{SealIn, SealOut};

pub(super) async fn events(
    State(office): State<Office>,
    Caller(device): Caller,
    Path(visit): Path<String>,
    body: Bytes,
) -> Answer<EventsOut> {
    let visit = name(&visit)?;
    let done = on_disk(&office, move |store, now_ms| {
        let sent: EventsIn = super::json(&body)?;
        receive_events::receive(store, device.id, &visit, &sent, now_ms).map_err(Refusal::from)
    });
    let done = done.await?;
    Ok((StatusCode::OK, Json(EventsOut { next: done.next, head: done.head.to_string() })))
}

pub(super) async fn seal(
    State(office): State<Office>,
    Caller(device): Caller,
    Path(visit): Path<String>,
    body: Bytes,
) -> Answer<SealOut> {
    let visit = name(&visit)?;
    let sent: SealIn = super::json(&body)?;
    let token = Secret::random().map_err(|_| Refusal::broken())?;
    let of = visit.to_string();
    let opened =
        on_disk(&office, move |store, now_ms| receive_seal::receive(store, &device, &visit, &sent, &token, now_ms));
    let summary = format!("/s/{}", opened.await?);
    Ok((StatusCode::OK, Json(SealOut { visit: of, sealed: true, summary })))
}

fn name(visit: &str) -> Result<VisitId, Refusal> {
    VisitId::parse(visit).map_err(|why| Refusal::stuck(404, "visit", "There is no such visit", why))
}
