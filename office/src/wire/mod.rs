//! What goes over the wire between a field device and the office: shapes and their limits, nothing else.
//! `office/protocol.md` tells the whole in prose, `office/openapi.json` shape by shape.

pub(crate) mod digest_field;
pub(crate) mod envelope;
pub(crate) mod events;
pub(crate) mod joining;
pub(crate) mod key;
pub(crate) mod news;
pub(crate) mod problem;
pub(crate) mod proof;
pub(crate) mod tus;

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A device says who it is.
#[derive(Debug, Deserialize, ToSchema)]
pub(crate) struct DeviceIn {
    /// Its P-256 key, SEC1, in hexadecimal digits.
    #[schema(pattern = "^0[234][0-9a-fA-F]+$", max_length = 130)]
    pub(crate) public_key: String,
    /// What the device calls itself.
    #[schema(min_length = 1, max_length = 80)]
    pub(crate) name: String,
}

/// The office knows the device's key.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct DeviceOut {
    /// Always true.
    pub(crate) known: bool,
}

/// A device hands in a seal.
#[derive(Debug, Deserialize, ToSchema)]
pub(crate) struct SealIn {
    /// Compact JWS, ES256.
    pub(crate) jws: String,
    /// The key that made it, SEC1, in hexadecimal digits.
    pub(crate) public_key: String,
}

/// The office has the seal, and it holds.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct SealOut {
    /// Of which visit.
    pub(crate) visit: String,
    /// Always true: a seal that does not hold is refused.
    pub(crate) sealed: bool,
    /// Where the owner's summary is shown, for the device to hand over.
    pub(crate) summary: String,
}

/// Whether a photograph may be deleted on the device.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct ReceiptOut {
    /// Which.
    pub(crate) digest: String,
    /// File, folder and row are on the office's disk.
    pub(crate) safe: bool,
    /// The digest again, as RFC 9530 writes it: `sha-256=:…:`.
    pub(crate) repr_digest: String,
}
