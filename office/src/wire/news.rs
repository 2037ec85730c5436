//! What comes down to devices.

use serde::Serialize;
use serde_json::Value;
use utoipa::ToSchema;

/// What is to be done.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct AssignmentsOut {
    /// Assignments as documents; the core reads them (`coilside_core::round::Assignment`).
    #[schema(value_type = Vec<Object>)]
    pub(crate) assignments: Vec<Value>,
    /// Who works with this device, where the office wrote it down (`coilside_core::round::Technician`).
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<Object>, nullable = false)]
    pub(crate) technician: Option<Value>,
}

/// What came up since a cursor.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct NewsOut {
    /// What to ask with next time.
    pub(crate) cursor: String,
    /// There is more already: ask again at once.
    pub(crate) more: bool,
    /// New and changed assignments, as documents; the core reads them (`coilside_core::round::Assignment`).
    #[schema(value_type = Vec<Object>)]
    pub(crate) assignments: Vec<Value>,
    /// Ids of assignments that are not to be done by this device any more.
    pub(crate) withdrawn: Vec<String>,
    /// Who works with this device, where the office wrote it down (`coilside_core::round::Technician`).
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<Object>, nullable = false)]
    pub(crate) technician: Option<Value>,
    /// What the office said about this device's visits.
    pub(crate) reviews: Vec<ReviewOut>,
    /// Procedures that the office has.
    pub(crate) packs: Vec<PackOut>,
    /// Visits that this device goes on with.
    pub(crate) handed: Vec<HandedOut>,
}

/// What somebody at the office said about a visit.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct ReviewOut {
    pub(crate) visit: String,
    /// `accepted` or `question`.
    pub(crate) outcome: OutcomeOut,
    /// What was written beside it; may be empty.
    pub(crate) words: String,
    /// When.
    pub(crate) utc_ms: i64,
}

/// What came of looking at a visit.
#[derive(Debug, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum OutcomeOut {
    Accepted,
    Question,
}

/// A procedure that the office has.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct PackOut {
    /// SHA-256 of its bytes: its name at `/packs/…`.
    pub(crate) digest: String,
    /// What the pack calls itself.
    pub(crate) id: String,
    /// How many bytes it has.
    pub(crate) bytes: u64,
}

/// A visit that a device goes on with.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct HandedOut {
    pub(crate) visit: String,
    /// The number that is wanted next.
    pub(crate) next: u64,
    /// The hash of the last stored event.
    pub(crate) head: String,
}
