//! What the core asks of its platform, and how the platform answers.

use serde::{Deserialize, Serialize};

/// A request to the shell. It stays open, and is handed out again at every opening, until its first
/// terminal outcome.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Effect {
    /// `visit/seq/n`: also the name under which a photograph is put into the folder `incoming`, with `/` as `_`.
    pub id: String,
    /// What is asked.
    pub request: Request,
}

/// What is asked of the shell.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
#[serde(tag = "ask", rename_all = "kebab-case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Request {
    /// Take or pick a photograph, put its original bytes into `incoming`, answer `Photo`.
    TakePhoto { unit: String, slot: String, title: String, show: String },
    /// Say where the device is: answer `Place` or `Failed`.
    Locate,
    /// Call the person at this time, even if the app is closed: answer `Woken` once it has rung.
    WakeAt { utc_ms: i64, text: String },
    /// Sign these bytes with the device's P-256 key (ECDSA with SHA-256): answer `Signature`.
    SignBytes { bytes_base64: String },
    /// Hand in the packs that lie in the shell's folder, by `Field::packs`; a shell without one leaves it. It has no outcome
    /// and is not asked again.
    ReadPacks,
}

/// How a request ended.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
#[serde(tag = "outcome", rename_all = "kebab-case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Outcome {
    /// The photograph lies in `incoming` under the effect's name.
    Photo { place: Option<PlaceFix> },
    /// Where the device is.
    Place { place: PlaceFix },
    /// The alarm rang.
    Woken,
    /// The signature, base64 of DER or of raw r‖s.
    Signature { base64: String },
    /// The person turned it down.
    Cancelled,
    /// It could not be done, with the platform's words.
    Failed { why: String },
}

/// A place as the device measured it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PlaceFix {
    /// Degrees north, WGS 84.
    pub latitude_deg: f64,
    /// Degrees east, WGS 84.
    pub longitude_deg: f64,
    /// The radius that the device gives as its doubt, metres.
    pub accuracy_m: f64,
    /// How old the fix is, milliseconds.
    pub age_ms: i64,
}
