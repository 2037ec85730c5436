//! What an office vouches for, each a JWS under the office's own key: without one a record shows only that it fits itself,
//! since anyone can make a key, seal something with it and enclose it.

use serde::{Deserialize, Serialize};

/// `typ` of a [`Certificate`].
pub const CERTIFICATE: &str = "coilside-certificate+json";
/// `typ` of a [`Receipt`].
pub const RECEIPT: &str = "coilside-receipt+json";
/// `typ` of an [`Enclosed`].
pub const ENCLOSED: &str = "coilside-enclosed+json";

/// The form of each of them.
pub const FORMAT: u32 = 1;

/// A device joined the office with this key.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Certificate {
    /// 1.
    pub format: u32,
    /// The device's key, SEC1 hex.
    pub device_key: String,
    /// The office's key, SEC1 hex.
    pub office_key: String,
    /// When it joined, UTC milliseconds.
    pub at_utc_ms: i64,
}

/// A sealed visit came to the office.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Receipt {
    /// 1.
    pub format: u32,
    /// Which visit.
    pub visit: String,
    /// How many events the seal fixes.
    pub next: u64,
    /// SHA-256 of the last of them.
    pub last: String,
    /// The office's key, SEC1 hex.
    pub office_key: String,
    /// When the seal came, UTC milliseconds.
    pub at_utc_ms: i64,
}

/// What the office enclosed in a record file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Enclosed {
    /// 1.
    pub format: u32,
    /// Which visit.
    pub visit: String,
    /// SHA-256 of the file `SHA256SUMS`.
    pub sums: String,
    /// The office's key, SEC1 hex.
    pub office_key: String,
}
