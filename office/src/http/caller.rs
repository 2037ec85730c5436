//! Who asks: a field device by its token.

use axum::extract::FromRequestParts;
use axum::http::HeaderMap;
use axum::http::header::AUTHORIZATION;
use axum::http::request::Parts;

use super::blocking::on_disk;
use super::refusal::Refusal;
use crate::app::hear_device;
use crate::office::Office;
use crate::store::Store;
use crate::store::devices::Device;

/// With what devices tell what their clock shows, and the office what its own does: UTC milliseconds.
pub(super) const CLOCK: &str = "coilside-clock";

/// The device that a request comes from. A handler that takes one cannot be reached without a token.
pub(super) struct Caller(pub(super) Device);

/// What a request says about who asks. For handlers that ask on their own way to the disk, so that it is one way only.
pub(super) struct Credentials {
    token: Option<String>,
    clock_ms: Option<i64>,
}

impl Credentials {
    pub(super) fn of(headers: &HeaderMap) -> Self {
        let text = |name| headers.get(name).and_then(|value| value.to_str().ok());
        let (scheme, token) = text(AUTHORIZATION.as_str()).and_then(|text| text.split_once(' ')).unwrap_or_default();
        let token = scheme.eq_ignore_ascii_case("bearer").then(|| token.trim().to_owned());
        Self { token, clock_ms: text(CLOCK).and_then(|text| text.trim().parse().ok()) }
    }

    /// The device that asks.
    pub(super) fn device(&self, store: &Store, now_ms: i64) -> Result<Device, Refusal> {
        let token = self.token.as_ref().ok_or_else(Refusal::unknown_caller)?;
        match hear_device::by_token(store, token, self.clock_ms, now_ms)? {
            None => Err(Refusal::unknown_caller()),
            Some(device) if device.revoked => Err(Refusal::revoked()),
            Some(device) => Ok(device),
        }
    }
}

impl FromRequestParts<Office> for Caller {
    type Rejection = Refusal;

    async fn from_request_parts(parts: &mut Parts, office: &Office) -> Result<Self, Refusal> {
        let credentials = Credentials::of(&parts.headers);
        on_disk(office, move |store, now_ms| credentials.device(store, now_ms)).await.map(Caller)
    }
}
