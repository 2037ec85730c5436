//! What field devices call. `office/protocol.md` tells in which order; `office/openapi.json` is made from here.

mod body;
mod devices;
mod joining;
mod news;
pub(crate) mod openapi;
mod photos;
mod silence;
mod visits;

use axum::Router;
use axum::extract::{DefaultBodyLimit, Request, State};
use axum::http::{HeaderValue, StatusCode};
use axum::middleware::{self, Next};
use axum::response::Response;
use axum::routing::{get, post, put};

use super::caller::CLOCK;
use super::refusal::Refusal;
use crate::office::Office;

/// The most bytes of a JSON body. A thousand ordinary events have a few hundred kilobytes.
const JSON_BYTES_MAX: usize = 16 * 1024 * 1024;

pub(super) fn routes(office: &Office) -> Router<Office> {
    let photos = Router::new()
        .route("/photos", post(photos::announce).options(photos::abilities))
        .route(
            "/photos/{digest}",
            axum::routing::patch(photos::piece)
                .head(photos::progress)
                .delete(photos::take_back)
                .options(photos::abilities),
        )
        .method_not_allowed_fallback(not_that)
        .layer(middleware::map_response(photos::speak));
    Router::new()
        .route("/join", post(joining::join))
        .route("/token", get(joining::nonce).post(joining::token))
        .route("/news", get(news::news))
        .route("/packs/{digest}", get(news::pack))
        .route("/visits/{visit}/events", post(visits::events).get(visits::stored))
        .route("/visits/{visit}/seal", put(visits::seal))
        .route("/photos/{digest}/receipt", get(photos::receipt))
        .route("/photos/{digest}/preview", put(photos::ahead))
        .route("/assignments", get(devices::assignments))
        .route("/device", put(devices::register))
        .route("/openapi.json", get(openapi::document))
        .method_not_allowed_fallback(not_that)
        .merge(photos)
        .fallback(nothing_here)
        .layer(DefaultBodyLimit::max(JSON_BYTES_MAX))
        .layer(middleware::from_fn_with_state(office.clone(), tell_the_time))
}

async fn nothing_here() -> Refusal {
    Refusal::stuck(404, "address", "There is nothing here", "no such address in version 1 of this interface")
}

async fn not_that() -> Refusal {
    Refusal::stuck(405, "method", "That cannot be done here", "see the header Allow for what can")
}

/// Every answer tells what the office's clock shows, so that a device can tell how far its own is off.
async fn tell_the_time(State(office): State<Office>, request: Request, next: Next) -> Response {
    let mut answer = next.run(request).await;
    answer.headers_mut().insert(CLOCK, HeaderValue::from(office.now_ms()));
    answer
}

/// What every finished request answers with.
type Answer<T> = Result<(StatusCode, axum::Json<T>), Refusal>;
