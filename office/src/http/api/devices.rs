//! A device registers its key under a token that never ends, and fetches what is to be done.

use axum::extract::State;
use axum::http::StatusCode;

use super::Answer;
use super::body::Json;
use crate::app::{hand_out_assignments, join};
use crate::http::blocking::{on_disk, on_shelf};
use crate::http::caller::Caller;
use crate::office::Office;
use crate::store::StoreError;
use crate::wire::news::AssignmentsOut;
use crate::wire::problem::Problem;
use crate::wire::{DeviceIn, DeviceOut};

/// Register the device's key. The first key stays; the same one again changes nothing.
#[utoipa::path(
    put, path = "/device", tag = "devices", request_body = DeviceIn, security(("device" = [])),
    responses(
        (status = 200, body = DeviceOut),
        (status = 409, description = "`other-key`: it has registered another one.", body = Problem, content_type = "application/problem+json"),
        (status = 422, description = "`device`: no key, or no name.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn register(
    State(office): State<Office>,
    Caller(device): Caller,
    Json(sent): Json<DeviceIn>,
) -> Answer<DeviceOut> {
    on_disk(&office, move |store, now_ms| join::register(store, &device, &sent, now_ms)).await?;
    Ok((StatusCode::OK, axum::Json(DeviceOut { known: true })))
}

/// Everything that is to be done, at once. `GET /news` tells what changed.
#[utoipa::path(
    get, path = "/assignments", tag = "news", security(("device" = [])),
    responses((status = 200, body = AssignmentsOut))
)]
pub(super) async fn assignments(State(office): State<Office>, Caller(device): Caller) -> Answer<AssignmentsOut> {
    let all = on_shelf(&office, move |store, library, _| {
        Ok::<_, StoreError>(AssignmentsOut {
            assignments: hand_out_assignments::open(store, library)?,
            technician: hand_out_assignments::technician(store, &device)?,
        })
    });
    Ok((StatusCode::OK, axum::Json(all.await?)))
}
