//! The headers of resumable uploads: tus 1.0.0, core protocol and creation (<https://tus.io/protocols/resumable-upload>).

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

use crate::ids::{Digest, VisitId};

/// The only version.
pub(crate) const VERSION: &str = "1.0.0";

/// The most bytes of a photograph: 60 MiB, so that what the core takes in (60 MB) is never refused here.
pub(crate) const PHOTO_BYTES_MAX: u64 = 60 * 1024 * 1024;

/// The body's media type of a PATCH.
pub(crate) const BODY_TYPE: &str = "application/offset+octet-stream";

/// What a device says about a photograph before it sends it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Announced {
    /// The SHA-256 of its bytes; also its name.
    pub(crate) digest: Digest,
    /// The visit that it was taken in.
    pub(crate) visit: VisitId,
    /// Its media type.
    pub(crate) media: String,
}

/// An `Upload-Metadata` that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub(crate) enum MetadataError {
    #[error("Upload-Metadata lacks '{key}'")]
    Missing { key: &'static str },
    #[error("Upload-Metadata's '{key}' is not base64 of {wanted}")]
    Unreadable { key: &'static str, wanted: &'static str },
}

impl Announced {
    /// Reads `Upload-Metadata`: pairs of a key and a value in base64, separated by commas.
    pub(crate) fn read(header: &str) -> Result<Self, MetadataError> {
        let text = |key, wanted| value(header, key, wanted);
        let unreadable = |key, wanted| move |_| MetadataError::Unreadable { key, wanted };
        let digest = "64 lower-case hexadecimal digits";
        Ok(Self {
            digest: Digest::parse(&text("sha256", digest)?).map_err(unreadable("sha256", digest))?,
            visit: VisitId::parse(&text("visit", "a visit's name")?).map_err(unreadable("visit", "a visit's name"))?,
            media: media(text("media", "a media type")?)?,
        })
    }
}

fn value(header: &str, key: &'static str, wanted: &'static str) -> Result<String, MetadataError> {
    let mut pairs = header.split(',').map(|pair| pair.trim().split_once(' ').unwrap_or((pair.trim(), "")));
    let (_, coded) = pairs.find(|(name, _)| *name == key).ok_or(MetadataError::Missing { key })?;
    let bytes = STANDARD.decode(coded.trim()).map_err(|_| MetadataError::Unreadable { key, wanted })?;
    String::from_utf8(bytes).map_err(|_| MetadataError::Unreadable { key, wanted })
}

/// Only the shape of RFC 6838 names, since it is handed out again in a header.
fn media(text: String) -> Result<String, MetadataError> {
    let name = |part: &str| {
        (1..=64).contains(&part.len()) && part.bytes().all(|b| b.is_ascii_alphanumeric() || b"!#$&^_.+-".contains(&b))
    };
    match text.split_once('/') {
        Some((kind, form)) if name(kind) && name(form) => Ok(text),
        _ => Err(MetadataError::Unreadable { key: "media", wanted: "a media type" }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn coded(key: &str, value: &str) -> String {
        format!("{key} {}", STANDARD.encode(value))
    }

    #[test]
    fn metadata_is_read_in_any_order_and_among_strangers() {
        let digest = Digest::of(b"photo");
        let header = [
            coded("media", "image/jpeg"),
            "is_confidential".into(),
            coded("visit", "v-1"),
            coded("sha256", &digest.to_string()),
        ];
        let announced = Announced::read(&header.join(",")).unwrap();
        assert_eq!((announced.digest, announced.media.as_str()), (digest, "image/jpeg"));
    }

    #[test]
    fn metadata_names_what_it_lacks() {
        let header = coded("visit", "v-1");
        assert_eq!(Announced::read(&header), Err(MetadataError::Missing { key: "sha256" }));
        assert_eq!(
            Announced::read("sha256 ???,visit djE=,media aW1hZ2UvanBlZw=="),
            Err(MetadataError::Unreadable { key: "sha256", wanted: "64 lower-case hexadecimal digits" })
        );
    }

    #[test]
    fn a_media_type_cannot_smuggle_a_header_line() {
        assert!(media("image/jpeg\r\nSet-Cookie: a=b".into()).is_err());
        assert!(media("image/svg+xml".into()).is_ok());
    }
}
