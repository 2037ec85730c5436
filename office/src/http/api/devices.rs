//! A device registers its key and fetches what is to be done.

use axum::Json;
use axum::body::Bytes;
use axum::extract::State;
use axum::http::StatusCode;
use serde_json::{Value, json};

use super::Answer;
use crate::app::{hand_out_assignments, join};
use crate::http::blocking::{on_disk, on_shelf};
use crate::http::caller::Caller;
use crate::office::Office;
use crate::store::StoreError;
use crate::wire::DeviceIn;

pub(super) async fn register(State(office): State<Office>, Caller(device): Caller, body: Bytes) -> Answer<Value> {
    let sent: DeviceIn = super::json(&body)?;
    on_disk(&office, move |store, _| join::register(store, &device, &sent)).await?;
    Ok((StatusCode::OK, Json(json!({ "known": true }))))
}

pub(super) async fn assignments(State(office): State<Office>, Caller(device): Caller) -> Answer<Value> {
    let (all, technician) = on_shelf(&office, move |store, library, _| {
        Ok::<_, StoreError>((
            hand_out_assignments::open(store, library)?,
            hand_out_assignments::technician(store, &device)?,
        ))
    })
    .await?;
    let mut news = json!({ "assignments": all });
    if let (Some(news), Some(technician)) = (news.as_object_mut(), technician) {
        news.insert("technician".into(), technician);
    }
    Ok((StatusCode::OK, Json(news)))
}
