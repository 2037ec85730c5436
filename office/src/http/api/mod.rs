//! What field devices call.

mod devices;
mod photos;
mod visits;

use axum::Router;
use axum::body::Bytes;
use axum::extract::DefaultBodyLimit;
use axum::http::StatusCode;
use axum::routing::{get, post, put};
use serde::de::DeserializeOwned;

use super::refusal::Refusal;
use crate::office::Office;

/// The most bytes of a JSON body. A thousand ordinary events have a few hundred kilobytes.
const JSON_BYTES_MAX: usize = 16 * 1024 * 1024;

pub(super) fn routes() -> Router<Office> {
    Router::new()
        .route("/visits/{visit}/events", post(visits::events))
        .route("/visits/{visit}/seal", put(visits::seal))
        .route("/photos", post(photos::announce).options(photos::abilities))
        .route("/photos/{digest}", axum::routing::patch(photos::piece).head(photos::progress))
        .route("/photos/{digest}/receipt", get(photos::receipt))
        .route("/assignments", get(devices::assignments))
        .route("/device", put(devices::register))
        .fallback(nothing_here)
        .layer(DefaultBodyLimit::max(JSON_BYTES_MAX))
}

async fn nothing_here() -> Refusal {
    Refusal::stuck(404, "address", "There is nothing here", "no such address in version 1 of this interface")
}

/// Reads a JSON body. Problem details instead of the framework's plain words.
fn json<T: DeserializeOwned>(body: &Bytes) -> Result<T, Refusal> {
    serde_json::from_slice(body)
        .map_err(|why| Refusal::stuck(400, "json", "The body cannot be read", format!("it should be JSON: {why}")))
}

/// What every finished request answers with.
type Answer<T> = Result<(StatusCode, axum::Json<T>), Refusal>;
