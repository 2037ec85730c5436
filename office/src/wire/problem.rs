//! Problem details for HTTP APIs (RFC 9457).

use serde::Serialize;
use serde_json::{Map, Value};
use utoipa::ToSchema;

/// Why a request was not done. A status of 400 to 499 means: the same request will never do. 503 means: again, later.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub(crate) struct Problem {
    /// A name for programs: `urn:coilside:problem:<what>`.
    #[serde(rename = "type")]
    #[schema(example = "urn:coilside:problem:gap")]
    pub(crate) kind: String,
    /// The kind in words, always the same.
    pub(crate) title: String,
    /// The HTTP status.
    pub(crate) status: u16,
    /// What happened this time, and what to do.
    pub(crate) detail: String,
    /// What a program needs to go on.
    #[serde(flatten)]
    #[schema(ignore)]
    pub(crate) more: Map<String, Value>,
}

impl Problem {
    pub(crate) fn new(status: u16, kind: &str, title: &str, detail: impl Into<String>) -> Self {
        let kind = format!("urn:coilside:problem:{kind}");
        Self { kind, title: title.into(), status, detail: detail.into(), more: Map::new() }
    }
}
