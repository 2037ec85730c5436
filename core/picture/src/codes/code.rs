//! What a code says, and of which kind it is.

use serde::{Deserialize, Serialize};

/// A code that was read in a picture, as it stands in the record.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Code {
    /// What kind it is.
    pub symbology: Symbology,
    /// What it says, exactly as read, control characters and all.
    pub text: String,
    /// It says more than what is kept.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub cut: bool,
}

/// A kind of code. Those of GS1 hold element strings, with ASCII's group separator between fields.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Symbology {
    /// QR, ISO/IEC 18004.
    #[serde(rename = "qr")]
    Qr,
    /// QR with FNC1 in first position.
    #[serde(rename = "gs1-qr")]
    Gs1Qr,
    /// Data Matrix, ISO/IEC 16022.
    #[serde(rename = "data-matrix")]
    DataMatrix,
    /// Data Matrix with FNC1 in first position.
    #[serde(rename = "gs1-data-matrix")]
    Gs1DataMatrix,
    /// Code 128, ISO/IEC 15417.
    #[serde(rename = "code-128")]
    Code128,
    /// Code 128 with FNC1 in first position.
    #[serde(rename = "gs1-128")]
    Gs1128,
    /// Code 39, ISO/IEC 16388.
    #[serde(rename = "code-39")]
    Code39,
    /// EAN-13 and UPC-A, ISO/IEC 15420.
    #[serde(rename = "ean-13")]
    Ean13,
}

impl Symbology {
    /// Its name, the same in every language.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Symbology::Qr => "QR",
            Symbology::Gs1Qr => "GS1 QR",
            Symbology::DataMatrix => "Data Matrix",
            Symbology::Gs1DataMatrix => "GS1 Data Matrix",
            Symbology::Code128 => "Code 128",
            Symbology::Gs1128 => "GS1-128",
            Symbology::Code39 => "Code 39",
            Symbology::Ean13 => "EAN-13",
        }
    }

    /// Does it hold GS1's element strings?
    #[must_use]
    pub const fn is_gs1(self) -> bool {
        matches!(self, Symbology::Gs1Qr | Symbology::Gs1DataMatrix | Symbology::Gs1128)
    }
}
