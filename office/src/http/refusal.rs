//! From a use case's error to an HTTP answer: 4xx is stuck, 503 is worth trying again.

use std::error::Error;

use axum::http::header::{CONTENT_TYPE, RETRY_AFTER};
use axum::http::{HeaderName, HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};

use crate::app::give_events::GiveError;
use crate::app::join::{JoinError, RegisterError};
use crate::app::prove_key::ProofError;
use crate::app::receive_events::ReceiveError;
use crate::app::receive_photo::PhotoError;
use crate::app::receive_seal::SealError;
use crate::store::StoreError;
use crate::wire::problem::Problem;

const UPLOAD_OFFSET: HeaderName = HeaderName::from_static("upload-offset");

/// What a failed request answers.
#[derive(Debug)]
pub(super) struct Refusal {
    problem: Box<Problem>,
    retry_after_s: Option<u32>,
    offset: Option<u64>,
    authenticate: bool,
}

impl Refusal {
    /// The same request will never do.
    pub(super) fn stuck(status: u16, kind: &str, title: &str, detail: impl ToString) -> Self {
        let problem = Box::new(Problem::new(status, kind, title, detail.to_string()));
        Self { problem, retry_after_s: None, offset: None, authenticate: false }
    }

    /// The same request may do later.
    pub(super) fn later(kind: &str, title: &str, detail: impl ToString, after_s: u32) -> Self {
        Self { retry_after_s: Some(after_s), ..Self::stuck(503, kind, title, detail) }
    }

    /// Nobody knows this caller.
    pub(super) fn unknown_caller() -> Self {
        let detail = "send a device token as 'Authorization: Bearer …'; the office gives one out";
        Self { authenticate: true, ..Self::stuck(401, "token", "The device is not known", detail) }
    }

    /// The office hears this device no more.
    pub(super) fn revoked() -> Self {
        let detail =
            "the office has revoked this device; what it holds stays on it, and it can join again with a new code";
        Self::stuck(403, "revoked", "The device is revoked", detail)
    }

    /// A use case broke off by a fault of ours.
    pub(super) fn broken() -> Self {
        Self::later("fault", "The office made a mistake", "it is not known why; nothing half done was kept", 30)
    }

    /// The HTTP status.
    pub(super) fn status(&self) -> StatusCode {
        StatusCode::from_u16(self.problem.status).unwrap_or(StatusCode::INTERNAL_SERVER_ERROR)
    }

    fn with(mut self, key: &str, value: impl Into<serde_json::Value>) -> Self {
        self.problem.more.insert(key.into(), value.into());
        self
    }
}

impl IntoResponse for Refusal {
    fn into_response(self) -> Response {
        let status = self.status();
        let body = serde_json::to_string(&self.problem).unwrap_or_default();
        let mut answer = (status, [(CONTENT_TYPE, "application/problem+json")], body).into_response();
        let headers = answer.headers_mut();
        if let Some(seconds) = self.retry_after_s {
            headers.insert(RETRY_AFTER, HeaderValue::from(seconds));
        }
        if let Some(offset) = self.offset {
            headers.insert(UPLOAD_OFFSET, HeaderValue::from(offset));
        }
        if self.authenticate {
            headers.insert(axum::http::header::WWW_AUTHENTICATE, HeaderValue::from_static("Bearer"));
        }
        answer
    }
}

impl From<StoreError> for Refusal {
    fn from(error: StoreError) -> Self {
        // The words of disk and database are for the office's own log, not for the caller.
        let mut line = format!("office: {error}");
        let mut cause = error.source();
        while let Some(why) = cause {
            line.push_str(&format!(": {why}"));
            cause = why.source();
        }
        eprintln!("{line}");
        Self::later("store", "The office cannot write or read just now", "nothing half done was kept; try again", 30)
    }
}

impl From<ReceiveError> for Refusal {
    fn from(error: ReceiveError) -> Self {
        let title = "The events were not added";
        let refuse = |status, kind| Self::stuck(status, kind, title, &error);
        match error {
            ReceiveError::Batch(_) => refuse(422, "events"),
            ReceiveError::AnotherDevice => refuse(403, "another-device"),
            ReceiveError::TooMany => refuse(413, "too-many-events"),
            ReceiveError::Gap { state } => {
                refuse(409, "gap").with("next", state.next).with("head", state.head.to_string())
            }
            ReceiveError::Conflict { seq, state, kept } => refuse(409, "conflict")
                .with("next", state.next)
                .with("head", state.head.to_string())
                .with("conflict_at", seq)
                .with("kept", kept),
            ReceiveError::TakenOver { state, kept } => refuse(409, "taken-over")
                .with("next", state.next)
                .with("head", state.head.to_string())
                .with("kept", kept),
            ReceiveError::Store(store) => store.into(),
        }
    }
}

impl From<SealError> for Refusal {
    fn from(error: SealError) -> Self {
        let title = "The seal was not taken";
        let refuse = |status, kind| Self::stuck(status, kind, title, &error);
        match error {
            SealError::Jws(_) | SealError::Key(_) | SealError::OtherVisit => refuse(422, "seal"),
            SealError::TooLong { .. } => refuse(413, "seal"),
            SealError::NoKey => refuse(409, "no-key"),
            SealError::OtherKey => refuse(403, "other-key"),
            SealError::AnotherDevice => refuse(403, "another-device"),
            SealError::OtherWriter => refuse(422, "other-writer"),
            SealError::TakenOver { next, head } => {
                refuse(409, "taken-over").with("next", next).with("head", head.to_string())
            }
            SealError::SealedOtherwise => refuse(409, "sealed-otherwise"),
            SealError::NoAddendum { .. } => refuse(422, "no-addendum"),
            SealError::EventsMissing { next, head } => {
                refuse(409, "gap").with("next", next).with("head", head.to_string())
            }
            SealError::OtherChain { next, head } => {
                refuse(409, "conflict").with("next", next).with("head", head.to_string())
            }
            SealError::Store(store) => store.into(),
        }
    }
}

impl From<RegisterError> for Refusal {
    fn from(error: RegisterError) -> Self {
        let refuse = |status, kind| Self::stuck(status, kind, "The device was not registered", &error);
        match error {
            RegisterError::Key(_) | RegisterError::Name => refuse(422, "device"),
            RegisterError::OtherKey => refuse(409, "other-key"),
            RegisterError::Store(store) => store.into(),
        }
    }
}

impl From<PhotoError> for Refusal {
    fn from(error: PhotoError) -> Self {
        let title = "The photograph was not taken";
        let refuse = |status, kind| Self::stuck(status, kind, title, &error);
        match error {
            PhotoError::Unknown => refuse(404, "not-announced"),
            PhotoError::Length { .. } | PhotoError::Beyond => refuse(413, "length"),
            PhotoError::OtherLength { .. } => refuse(409, "other-length"),
            PhotoError::Offset { offset, .. } => {
                Self { offset: Some(offset), ..refuse(409, "offset").with("offset", offset) }
            }
            // The checksum extension of tus 1.0.0 gives this status to a mismatch.
            PhotoError::OtherBytes => refuse(460, "digest"),
            PhotoError::OtherPiece => refuse(460, "checksum"),
            PhotoError::Finished => refuse(409, "finished"),
            PhotoError::AnotherDevice => refuse(403, "another-device"),
            PhotoError::Busy => Self::later("busy", title, &error, 1),
            PhotoError::Store(store) => store.into(),
        }
    }
}

impl From<JoinError> for Refusal {
    fn from(error: JoinError) -> Self {
        let title = "The device did not join";
        let refuse = |status, kind| Self::stuck(status, kind, title, &error);
        match error {
            JoinError::Key(_) | JoinError::Name => refuse(422, "device"),
            JoinError::Code => refuse(403, "join-code"),
            JoinError::TooMany { after_s } => Self { retry_after_s: Some(after_s), ..refuse(429, "join-code") },
            JoinError::Store(store) => store.into(),
        }
    }
}

impl From<ProofError> for Refusal {
    fn from(error: ProofError) -> Self {
        match error {
            ProofError::Unreadable(_) => Self::stuck(422, "proof", "No token was given", &error),
            ProofError::Revoked => Self::revoked(),
            ProofError::Unknown | ProofError::Nonce | ProofError::Signature => {
                Self { authenticate: true, ..Self::stuck(401, "token", "No token was given", &error) }
            }
            ProofError::Store(store) => store.into(),
        }
    }
}

impl From<GiveError> for Refusal {
    fn from(error: GiveError) -> Self {
        let refuse = |status, kind| Self::stuck(status, kind, "The events were not given", &error);
        match error {
            GiveError::Unknown => refuse(404, "visit"),
            GiveError::AnotherDevice => refuse(403, "another-device"),
            GiveError::Store(store) => store.into(),
        }
    }
}
