//! A device registers its key and fetches what is to be done.

use axum::Json;
use axum::body::Bytes;
use axum::extract::State;
use axum::http::StatusCode;
use serde_json::{Value, json};

use super::Answer;
use crate::app::{hand_out_assignments, join};
use crate::http::blocking::on_disk;
use crate::http::caller::Caller;
use crate::office::Office;
use crate::wire::DeviceIn;

pub(super) async fn register(State(office): State<Office>, Caller(device): Caller, body: Bytes) -> Answer<Value> {
    let sent: DeviceIn = super::json(&body)?;
    on_disk(&office, move |store, _| join::register(store, &device, &sent)).await?;
    Ok((StatusCode::OK, Json(json!({ "known": true }))))
}

pub(super) async fn assignments(State(office): State<Office>, _: Caller) -> Answer<Value> {
    let all = on_disk(&office, |store, _| hand_out_assignments::open(store)).await?;
    Ok((StatusCode::OK, Json(json!({ "assignments": all }))))
}
