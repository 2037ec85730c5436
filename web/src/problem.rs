//! What went wrong with one call, as RFC 9457 problem details.

use axum::{
    http::{StatusCode, header},
    response::{IntoResponse, Response},
};
use serde_json::json;

/// An answer that is not the one hoped for. `kind` is stable; the page has words of its own for the kinds of this
/// crate and shows `title` and `detail` of others.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Problem {
    pub(crate) status: StatusCode,
    pub(crate) kind: &'static str,
    pub(crate) title: String,
    pub(crate) detail: String,
}

impl Problem {
    pub(crate) fn new(status: StatusCode, kind: &'static str, title: &str, detail: impl Into<String>) -> Self {
        Self { status, kind, title: title.to_owned(), detail: detail.into() }
    }

    /// The call comes from a page of another origin, or under another name.
    pub(crate) fn foreign() -> Self {
        Self::new(
            StatusCode::FORBIDDEN,
            "foreign",
            "Not from this page",
            "Only the page that this process serves may call it.",
        )
    }

    /// No token, or a wrong one.
    pub(crate) fn token() -> Self {
        let detail = "Open the whole address that the program printed.";
        Self::new(StatusCode::UNAUTHORIZED, "token", "The address is not complete", detail)
    }

    /// Another window holds the door.
    pub(crate) fn elsewhere() -> Self {
        Self::new(
            StatusCode::CONFLICT,
            "elsewhere",
            "Open in another window",
            "Nothing is lost. Use this window, or the other one.",
        )
    }

    /// There is no such thing.
    pub(crate) fn unknown() -> Self {
        Self::new(StatusCode::NOT_FOUND, "unknown", "Not here", "There is nothing under this address.")
    }

    /// The body of the call does not say what it should.
    pub(crate) fn malformed(detail: impl Into<String>) -> Self {
        Self::new(StatusCode::BAD_REQUEST, "malformed", "The call cannot be read", detail)
    }

    /// No room.
    pub(crate) fn disk_full() -> Self {
        let detail = "Make room, then try again. What was saved before is safe.";
        Self::new(StatusCode::INSUFFICIENT_STORAGE, "disk-full", "The disk is full", detail)
    }

    /// A failure that nobody expected.
    pub(crate) fn inside(detail: impl Into<String>) -> Self {
        Self::new(StatusCode::INTERNAL_SERVER_ERROR, "inside", "Something went wrong in the program", detail)
    }
}

impl IntoResponse for Problem {
    fn into_response(self) -> Response {
        let body = json!({
            "type": format!("/problem/{}", self.kind),
            "title": self.title,
            "status": self.status.as_u16(),
            "detail": self.detail,
        });
        (self.status, [(header::CONTENT_TYPE, "application/problem+json")], body.to_string()).into_response()
    }
}
