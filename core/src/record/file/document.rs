//! `record.json`: the visit's events as they were hashed, its seals, and what offices said about it.

use serde::{Deserialize, Serialize};

use crate::id::VisitId;
use crate::visit::event::ChainError;

/// The form that this version writes and reads.
pub const FORMAT: u32 = 1;

/// What stands in `record.json`, in canonical form (RFC 8785).
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Document {
    /// The form: 1.
    pub format: u32,
    /// Which visit.
    pub visit: VisitId,
    /// The bytes of each event as text, in order: what was hashed.
    pub events: Vec<String>,
    /// Compact JWS: the seal, then one over each addendum that was signed later.
    pub seals: Vec<String>,
    /// What offices vouch for, the first one first; empty where a device wrote the file by itself.
    pub offices: Vec<Office>,
}

/// What one office vouches for.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Office {
    /// Its public key, SEC1 uncompressed, lower-case hex.
    pub key: String,
    /// Compact JWS: the device's key joined here, and when. None where the record came from another office.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub certificate: Option<String>,
    /// Compact JWS, one for each seal that came here: its last hash, and when.
    pub receipts: Vec<String>,
}

/// The owner's and site's data of a visit with the salt of their digest, in `personal.json`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Personal {
    /// The data, as text that was hashed behind the salt.
    pub personal: String,
    /// The salt.
    pub salt: String,
}

/// Canonical bytes of anything that stands in a record file.
///
/// # Errors
/// Where it has no canonical form.
pub(crate) fn canonical(value: &impl Serialize) -> Result<Vec<u8>, ChainError> {
    serde_json_canonicalizer::to_vec(value).map_err(|error| ChainError::Unwritable(error.to_string()))
}
