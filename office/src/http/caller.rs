//! Who asks: a field device by its token.

use axum::extract::FromRequestParts;
use axum::http::header::AUTHORIZATION;
use axum::http::request::Parts;

use super::blocking::on_disk;
use super::refusal::Refusal;
use crate::app::join;
use crate::office::Office;
use crate::store::devices::Device;

/// The device that a request comes from. A handler that takes one cannot be reached without a token.
pub(super) struct Caller(pub(super) Device);

impl FromRequestParts<Office> for Caller {
    type Rejection = Refusal;

    async fn from_request_parts(parts: &mut Parts, office: &Office) -> Result<Self, Refusal> {
        let header = parts.headers.get(AUTHORIZATION).and_then(|value| value.to_str().ok()).unwrap_or_default();
        let (scheme, token) = header.split_once(' ').unwrap_or_default();
        if !scheme.eq_ignore_ascii_case("bearer") {
            return Err(Refusal::unknown_caller());
        }
        let token = token.trim().to_owned();
        let device = on_disk(office, move |store, _| join::by_token(store, &token)).await?;
        device.map(Caller).ok_or_else(Refusal::unknown_caller)
    }
}
