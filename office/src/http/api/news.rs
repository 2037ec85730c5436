//! What comes down to a device: news by cursor, and procedures by their digest.

use axum::extract::{RawQuery, State};
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::http::{HeaderValue, StatusCode};
use axum::response::{IntoResponse as _, Response};

use super::Answer;
use super::body::{Named, asked};
use super::photos::REPR_DIGEST;
use crate::app::tell_news;
use crate::http::blocking::{on_disk, on_shelf};
use crate::http::caller::Caller;
use crate::http::refusal::Refusal;
use crate::ids::Digest;
use crate::office::Office;
use crate::store::vouchers;
use crate::wire::digest_field;
use crate::wire::news::NewsOut;
use crate::wire::problem::Problem;

/// What came up since a cursor. The same cursor gives the same page.
#[utoipa::path(
    get, path = "/news", tag = "news", security(("device" = [])),
    params(("after" = Option<String>, Query, description = "The cursor of the last page; without it from the start.")),
    responses(
        (status = 200, body = NewsOut),
        (status = 400, description = "`cursor`: none that this office gave.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn news(
    State(office): State<Office>,
    Caller(device): Caller,
    RawQuery(query): RawQuery,
) -> Answer<NewsOut> {
    let after = match asked(query.as_deref(), "after") {
        None | Some("") => 0,
        Some(text) => {
            let number = text.parse().ok().filter(|_| text.bytes().all(|byte| byte.is_ascii_digit()));
            number.ok_or_else(|| {
                let detail = "send the cursor of the last page as it was, or none to begin from the start";
                Refusal::stuck(400, "cursor", "The cursor cannot be read", detail)
            })?
        }
    };
    let page = on_shelf(&office, move |store, library, _| tell_news::page(store, library, &device, after)).await?;
    Ok((StatusCode::OK, axum::Json(page)))
}

/// The bytes of a procedure. They never change.
#[utoipa::path(
    get, path = "/packs/{digest}", tag = "news", security(("device" = [])),
    params(("digest" = String, Path, description = "SHA-256, 64 lower-case hexadecimal digits.")),
    responses(
        (status = 200, description = "Canonical JSON (RFC 8785).", content_type = "application/json", body = Object,
            headers(("Repr-Digest" = String, description = "RFC 9530: sha-256."))),
        (status = 404, description = "`pack`.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn pack(State(office): State<Office>, _: Caller, Named(digest): Named) -> Result<Response, Refusal> {
    let missing = || Refusal::stuck(404, "pack", "There is no such procedure", "this office has none of that digest");
    let digest = Digest::parse(&digest).map_err(|_| missing())?;
    let bytes = on_disk(&office, move |store, _| store.read(|db| vouchers::pack(db, digest))).await?;
    let mut answer = bytes.ok_or_else(missing)?.into_response();
    let headers = answer.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static("application/json"));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("private, max-age=31536000, immutable"));
    if let Ok(value) = HeaderValue::from_str(&digest_field::write(digest)) {
        headers.insert(REPR_DIGEST, value);
    }
    Ok(answer)
}
