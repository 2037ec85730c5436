//! What comes down from the office.

use serde::{Deserialize, Serialize};

use super::{Assignment, Technician};

/// A page of what the office hands out. What it leaves out stays as it was.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct News {
    /// Assignments, new ones and newer versions.
    pub assignments: Vec<Assignment>,
    /// Who works with this device.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub technician: Option<Technician>,
    /// From where the next page goes on; empty where the office hands out everything each time.
    #[serde(default)]
    pub cursor: String,
    /// There is more behind this page.
    #[serde(default)]
    pub more: bool,
    /// Assignments that the office took back, by id.
    #[serde(default)]
    pub withdrawn: Vec<String>,
    /// What the office says of visits that it looked at.
    #[serde(default)]
    pub reviews: Vec<Review>,
    /// Procedures that the office has.
    #[serde(default)]
    pub packs: Vec<PackOffer>,
    /// Visits that this device is to go on with.
    #[serde(default)]
    pub handed: Vec<HandedVisit>,
}

/// What the office says of a visit that it looked at.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Review {
    /// Which.
    pub visit: String,
    /// What it comes to.
    pub outcome: ReviewOutcome,
    /// The office's own words; may be empty.
    #[serde(default)]
    pub words: String,
    /// When, UTC milliseconds by the office's clock.
    pub utc_ms: i64,
}

/// What a review comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ReviewOutcome {
    /// Nothing is open.
    Accepted,
    /// The office asks something.
    Question,
    /// A kind that this version does not know.
    #[serde(other)]
    Other,
}

impl ReviewOutcome {
    /// Its name in the store and in the keys of its words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            ReviewOutcome::Accepted => "accepted",
            ReviewOutcome::Question => "question",
            ReviewOutcome::Other => "other",
        }
    }

    /// The outcome of that name.
    #[must_use]
    pub fn named(name: &str) -> ReviewOutcome {
        match name {
            "accepted" => ReviewOutcome::Accepted,
            "question" => ReviewOutcome::Question,
            _ => ReviewOutcome::Other,
        }
    }
}

/// A procedure that the office has.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PackOffer {
    /// SHA-256 of its bytes.
    pub digest: String,
    /// Its name in assignments.
    pub id: String,
    /// How many bytes.
    pub bytes: u64,
}

/// A visit that this device is to go on with.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct HandedVisit {
    /// Which.
    pub visit: String,
    /// The number after the office's last event of it.
    pub next: u64,
    /// The digest of that event.
    pub head: String,
}
