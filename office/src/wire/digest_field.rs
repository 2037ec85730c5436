//! The field `Repr-Digest` of RFC 9530, as far as the office needs it: SHA-256.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

use crate::ids::Digest;

/// Not a dictionary of byte sequences, or a SHA-256 of another length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("this is no Repr-Digest")]
pub(crate) struct NotADigest;

/// `sha-256=:…:`.
pub(crate) fn write(digest: Digest) -> String {
    format!("sha-256=:{}:", STANDARD.encode(digest.as_bytes()))
}

/// The SHA-256 of a field; none where it tells other digests only. Base64 has no comma, so members part at commas.
pub(crate) fn read(field: &str) -> Result<Option<Digest>, NotADigest> {
    let mut found = None;
    for member in field.split(',') {
        let (name, value) = member.trim().split_once('=').ok_or(NotADigest)?;
        let coded = value.strip_prefix(':').and_then(|value| value.strip_suffix(':')).ok_or(NotADigest)?;
        let bytes = STANDARD.decode(coded).map_err(|_| NotADigest)?;
        if name == "sha-256" {
            // The last of several of one name counts (RFC 8941, section 3.2).
            found = Some(Digest::from_bytes(bytes.try_into().map_err(|_| NotADigest)?));
        }
    }
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 9530, appendix B.1: `{"hello": "world"}` with a line feed, and its digest.
    const BODY: &[u8] = b"{\"hello\": \"world\"}\n";
    const FIELD: &str = "sha-256=:RK/0qy18MlBSVnWgjwz6lZEWjP/lF5HF9bvEF8FabDg=:";

    #[test]
    fn the_example_of_rfc_9530_is_read_and_written() {
        assert_eq!(read(FIELD), Ok(Some(Digest::of(BODY))));
        assert_eq!(write(Digest::of(BODY)), FIELD);
    }

    #[test]
    fn other_digests_may_stand_beside_it() {
        assert_eq!(read(&format!("md5=:AAAA:, {FIELD}")), Ok(Some(Digest::of(BODY))));
        assert_eq!(read("sha-512=:AAAA:"), Ok(None));
        for bad in ["", "sha-256", "sha-256=RK==", "sha-256=:AAAA:", "sha-256=:?:"] {
            assert_eq!(read(bad), Err(NotADigest), "{bad}");
        }
    }
}
