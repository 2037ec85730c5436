//! What goes over the wire between a field device and the office: shapes and their limits, nothing else.

pub(crate) mod envelope;
pub(crate) mod events;
pub(crate) mod key;
pub(crate) mod problem;
pub(crate) mod tus;

use serde::{Deserialize, Serialize};

/// A device says who it is.
#[derive(Debug, Deserialize)]
pub(crate) struct DeviceIn {
    /// Its P-256 key, SEC1, in hexadecimal digits.
    pub(crate) public_key: String,
    /// What the device calls itself.
    pub(crate) name: String,
}

/// A device hands in a seal.
#[derive(Debug, Deserialize)]
pub(crate) struct SealIn {
    /// Compact JWS, ES256.
    pub(crate) jws: String,
    /// The key that made it, SEC1, in hexadecimal digits.
    pub(crate) public_key: String,
}

/// The office has the seal, and it holds.
#[derive(Debug, Serialize)]
pub(crate) struct SealOut {
    /// Of which visit.
    pub(crate) visit: String,
    /// Always true: a seal that does not hold is refused.
    pub(crate) sealed: bool,
    /// Where the owner's summary is shown, for the device to hand over.
    pub(crate) summary: String,
}

/// Whether a photograph may be deleted on the device.
#[derive(Debug, Serialize)]
pub(crate) struct ReceiptOut {
    /// Which.
    pub(crate) digest: String,
    /// File, folder and row are on the office's disk.
    pub(crate) safe: bool,
}
