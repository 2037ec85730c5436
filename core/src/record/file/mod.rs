//! The record file: one ZIP that holds a sealed visit and everything to verify it with. `core/record.md` tells its form.
//!
//! It has one form only. The same visit gives the same bytes, and every byte of a file is accounted for when it is verified:
//! by a seal, by a digest, or because nothing else may stand there. Nothing in it is compressed, so that no other program's
//! compression decides about bytes, and nothing can swell while it is read.

pub mod document;
pub mod readme;
pub mod sums;
pub mod told;
pub mod verify;
pub mod voucher;
mod walk;
mod write;
mod zip;

pub use walk::extract;
pub use write::{Contents, Originals, Signs, WriteError, write};

use crate::id::Digest;

/// The explanation for people.
pub const README: &str = "README.txt";
/// Digests of all other files but [`OFFICE`].
pub const SUMS: &str = "SHA256SUMS";
/// The word of the office that wrote the file: a signature over [`SUMS`].
pub const OFFICE: &str = "office.jws";
/// Events, seals and the offices' words.
pub const RECORD: &str = "record.json";
/// The owner's and site's data, where they are known and not erased.
pub const PERSONAL: &str = "personal.json";
/// The key that sealed the visit.
pub const DEVICE_KEY: &str = "keys/device.jwk";
/// Where photographs lie.
pub const PHOTOGRAPHS: &str = "photographs/";

/// Where the customer's name and signature lie, where they were given and may be given on.
pub const CUSTOMER: &str = "customer/";

/// The words of the core that name facts and dangers, as they go into a record file.
const WORDS: [(&str, &str); 2] = [
    ("words/en.ftl", include_str!("../../words/en/canon.ftl")),
    ("words/es.ftl", include_str!("../../words/es/canon.ftl")),
];

/// The name of an office's key in the file; the first office is 1.
#[must_use]
pub fn office_key(number: usize) -> String {
    format!("keys/office-{number}.jwk")
}

/// The name of a pinned pack in the file.
#[must_use]
pub fn pack_file(digest: &Digest) -> String {
    format!("packs/{digest}.json")
}

/// The name of a file with the customer's name and signature.
#[must_use]
pub fn customer_file(digest: &Digest) -> String {
    format!("{CUSTOMER}{digest}.json")
}

/// The name of a photograph in the file.
#[must_use]
pub fn photo_file(digest: &Digest, media: &str) -> String {
    let ending = match media {
        "image/jpeg" => "jpg",
        "image/png" => "png",
        "image/webp" => "webp",
        "image/heic" | "image/heif" => "heic",
        _ => "bin",
    };
    format!("{PHOTOGRAPHS}{digest}.{ending}")
}

/// A key in a form that people can read to each other: the first 16 hexadecimal digits of its SHA-256, in fours.
#[must_use]
pub fn fingerprint(public_key: &[u8]) -> String {
    let digest = crate::visit::event::sha256(public_key);
    let digits: Vec<char> = digest.as_str().chars().take(16).collect();
    digits.chunks(4).map(|four| four.iter().collect::<String>()).collect::<Vec<_>>().join(" ")
}
