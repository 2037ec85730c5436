//! The headers of resumable uploads: tus 1.0.0, core protocol with creation, checksum, expiration and termination
//! (<https://tus.io/protocols/resumable-upload>).

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use chrono::{DateTime, Utc};
use sha2::Digest as _;

use super::digest_field;
use crate::ids::{Digest, VisitId};

/// The only version.
pub(crate) const VERSION: &str = "1.0.0";

/// What is spoken beside the core protocol.
pub(crate) const EXTENSIONS: &str = "creation,checksum,expiration,termination";

/// With what a piece may be checked.
pub(crate) const CHECKSUMS: &str = "sha1,sha256";

/// The most bytes of a photograph: 60 MiB, so that what the core takes in (60 MB) is never refused here.
pub(crate) const PHOTO_BYTES_MAX: u64 = 60 * 1024 * 1024;

/// The body's media type of a PATCH.
pub(crate) const BODY_TYPE: &str = "application/offset+octet-stream";

/// The media type of what nobody says more about.
const ANY_MEDIA: &str = "application/octet-stream";

/// What a device says about a photograph before it sends it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Announced {
    /// The SHA-256 of its bytes; also its name.
    pub(crate) digest: Digest,
    /// The visit that it was taken in. A client that knows no visits names none.
    pub(crate) visit: Option<VisitId>,
    /// Its media type.
    pub(crate) media: String,
}

/// Headers that do not tell which photograph will come.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub(crate) enum MetadataError {
    #[error("neither Upload-Metadata's 'sha256' nor a Repr-Digest with 'sha-256' tells the photograph's SHA-256")]
    NoDigest,
    #[error("Upload-Metadata's 'sha256' and the Repr-Digest differ; they must be of the same bytes")]
    TwoDigests,
    #[error("the Repr-Digest is not one of RFC 9530: sha-256=:<base64 of 32 bytes>:")]
    ReprDigest,
    #[error("Upload-Metadata's '{key}' is not base64 of {wanted}")]
    Unreadable { key: &'static str, wanted: &'static str },
}

impl Announced {
    /// Reads `Upload-Metadata` (pairs of a key and a value in base64, separated by commas) and `Repr-Digest`, which may stand
    /// in for the key `sha256`. `filetype` is what general-purpose clients call `media`.
    pub(crate) fn read(metadata: &str, repr_digest: Option<&str>) -> Result<Self, MetadataError> {
        let text = |key, wanted| value(metadata, key, wanted);
        let unreadable = |key, wanted| move |_| MetadataError::Unreadable { key, wanted };
        let wanted = "64 lower-case hexadecimal digits";
        let said = text("sha256", wanted)?.map(|text| Digest::parse(&text).map_err(unreadable("sha256", wanted)));
        let field = repr_digest.map(|field| digest_field::read(field).map_err(|_| MetadataError::ReprDigest));
        let digest = match (said.transpose()?, field.transpose()?.flatten()) {
            (Some(said), Some(field)) if said != field => return Err(MetadataError::TwoDigests),
            (Some(digest), _) | (None, Some(digest)) => digest,
            (None, None) => return Err(MetadataError::NoDigest),
        };
        let name = "a visit's name";
        let visit = text("visit", name)?.map(|text| VisitId::parse(&text).map_err(unreadable("visit", name)));
        let kind = match text("media", "a media type")? {
            Some(kind) => media(kind)?,
            None => text("filetype", "a media type")
                .ok()
                .flatten()
                .and_then(|kind| media(kind).ok())
                .unwrap_or_else(|| ANY_MEDIA.to_owned()),
        };
        Ok(Self { digest, visit: visit.transpose()?, media: kind })
    }
}

/// A checksum of a piece that no one can follow: of an unknown kind, or not readable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("Upload-Checksum should be 'sha1' or 'sha256', a space, and the checksum in base64")]
pub(crate) struct NotAChecksum;

/// Checks a piece while it comes.
#[derive(Clone)]
pub(crate) struct Checksum {
    hash: Hash,
    wanted: Vec<u8>,
}

#[derive(Clone)]
enum Hash {
    Sha1(sha1::Sha1),
    Sha256(sha2::Sha256),
}

impl Checksum {
    /// Reads `Upload-Checksum`.
    pub(crate) fn read(header: &str) -> Result<Self, NotAChecksum> {
        let (name, coded) = header.trim().split_once(' ').ok_or(NotAChecksum)?;
        let (hash, bytes) = match name {
            "sha1" => (Hash::Sha1(sha1::Sha1::new()), 20),
            "sha256" => (Hash::Sha256(sha2::Sha256::new()), 32),
            _ => return Err(NotAChecksum),
        };
        let wanted = STANDARD.decode(coded.trim()).map_err(|_| NotAChecksum)?;
        if wanted.len() == bytes { Ok(Self { hash, wanted }) } else { Err(NotAChecksum) }
    }

    pub(crate) fn update(&mut self, bytes: &[u8]) {
        match &mut self.hash {
            Hash::Sha1(hash) => hash.update(bytes),
            Hash::Sha256(hash) => hash.update(bytes),
        }
    }

    /// Whether the whole piece was what it should be.
    pub(crate) fn holds(self) -> bool {
        match self.hash {
            Hash::Sha1(hash) => hash.finalize().as_slice() == self.wanted,
            Hash::Sha256(hash) => hash.finalize().as_slice() == self.wanted,
        }
    }
}

impl std::fmt::Debug for Checksum {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Checksum").field("wanted", &self.wanted).finish_non_exhaustive()
    }
}

/// A moment as `Upload-Expires` tells it: the IMF-fixdate of RFC 9110, section 5.6.7.
pub(crate) fn http_date(utc_ms: i64) -> Option<String> {
    let at: DateTime<Utc> = DateTime::from_timestamp_millis(utc_ms)?;
    Some(at.format("%a, %d %b %Y %H:%M:%S GMT").to_string())
}

fn value(header: &str, key: &'static str, wanted: &'static str) -> Result<Option<String>, MetadataError> {
    let mut pairs = header.split(',').map(|pair| pair.trim().split_once(' ').unwrap_or((pair.trim(), "")));
    let Some((_, coded)) = pairs.find(|(name, _)| *name == key) else { return Ok(None) };
    let bytes = STANDARD.decode(coded.trim()).map_err(|_| MetadataError::Unreadable { key, wanted })?;
    String::from_utf8(bytes).map(Some).map_err(|_| MetadataError::Unreadable { key, wanted })
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
        let announced = Announced::read(&header.join(","), None).unwrap();
        assert_eq!((announced.digest, announced.media.as_str()), (digest, "image/jpeg"));
        assert_eq!(announced.visit, VisitId::parse("v-1").ok());
    }

    #[test]
    fn what_a_general_purpose_client_says_is_enough_with_a_digest() {
        let digest = Digest::of(b"photo");
        let field = digest_field::write(digest);
        let said = [coded("filename", "a b.jpg"), coded("filetype", "image/jpeg")].join(",");
        let announced = Announced::read(&said, Some(&field)).unwrap();
        assert_eq!(announced, Announced { digest, visit: None, media: "image/jpeg".into() });
        assert_eq!(Announced::read("", Some(&field)).unwrap().media, ANY_MEDIA);
        assert_eq!(Announced::read(&said, None), Err(MetadataError::NoDigest));
        assert_eq!(Announced::read(&said, Some("sha-256=x")), Err(MetadataError::ReprDigest));
        let other = coded("sha256", &Digest::of(b"other").to_string());
        assert_eq!(Announced::read(&other, Some(&field)), Err(MetadataError::TwoDigests));
    }

    #[test]
    fn metadata_names_what_cannot_be_read() {
        assert_eq!(
            Announced::read("sha256 ???,visit djE=,media aW1hZ2UvanBlZw==", None),
            Err(MetadataError::Unreadable { key: "sha256", wanted: "64 lower-case hexadecimal digits" })
        );
    }

    #[test]
    fn a_media_type_cannot_smuggle_a_header_line() {
        assert!(media("image/jpeg\r\nSet-Cookie: a=b".into()).is_err());
        assert!(media("image/svg+xml".into()).is_ok());
    }

    #[test]
    fn the_checksum_of_the_protocols_example_holds_for_its_words() {
        // tus 1.0.0, extension checksum, its example: sha1 of "hello world".
        let mut checksum = Checksum::read("sha1 Kq5sNclPz7QV2+lfQIuc6R7oRu0=").unwrap();
        checksum.update(b"hello ");
        checksum.clone().holds().then(|| panic!("half of it"));
        checksum.update(b"world");
        assert!(checksum.holds());
    }

    #[test]
    fn a_checksum_of_another_kind_or_length_is_none() {
        for bad in ["", "md5 XrY7u+Ae7tCTyyK7j1rNww==", "sha1", "sha1 AAAA", "sha256 Kq5sNclPz7QV2+lfQIuc6R7oRu0="] {
            assert_eq!(Checksum::read(bad).map(|_| ()), Err(NotAChecksum), "{bad}");
        }
    }

    #[test]
    fn a_moment_is_told_as_http_tells_it() {
        // RFC 9110, section 5.6.7: the example of an IMF-fixdate.
        assert_eq!(http_date(784_111_777_000).as_deref(), Some("Sun, 06 Nov 1994 08:49:37 GMT"));
    }
}
