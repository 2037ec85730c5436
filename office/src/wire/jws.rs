//! The seal on the wire: a compact JWS (RFC 7515) with ES256 (RFC 7518, section 3.4) over JSON.

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use p256::ecdsa::signature::Verifier as _;
use p256::ecdsa::{Signature, VerifyingKey};
use serde::Deserialize;

use crate::ids::{Digest, VisitId, unhex};

/// The most bytes of a seal. It lists what is missing and why, so it may have some length.
pub(crate) const JWS_BYTES_MAX: usize = 256 * 1024;

/// A seal or key that cannot be read or does not hold.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub(crate) enum JwsError {
    #[error("the key is not a P-256 point in SEC1 form, in hexadecimal digits")]
    NotAKey,
    #[error("the seal has {bytes} bytes, more than {JWS_BYTES_MAX}")]
    TooLong { bytes: usize },
    #[error("the seal is not a compact JWS: {part} cannot be read")]
    NotAJws { part: &'static str },
    #[error("the seal is not made with ES256 alone")]
    OtherAlgorithm,
    #[error("the signature does not fit the seal and the key")]
    DoesNotHold,
    #[error("the sealed content lacks something: {why}")]
    Payload { why: String },
}

/// What is sealed, as far as the office must know.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Sealed {
    pub(crate) visit: VisitId,
    /// The hash of the last event under the seal.
    pub(crate) last: Digest,
    /// How many events are under it.
    pub(crate) next: u64,
    /// Nothing was missing.
    pub(crate) complete: bool,
}

#[derive(Deserialize)]
struct Header {
    alg: String,
    #[serde(default)]
    crit: Option<serde_json::Value>,
}

#[derive(Deserialize)]
struct Payload {
    visit: String,
    last: String,
    next: u64,
    complete: bool,
}

/// Reads a public key of either SEC1 form.
pub(crate) fn read_key(hex_digits: &str) -> Result<VerifyingKey, JwsError> {
    let bytes = unhex(hex_digits).ok_or(JwsError::NotAKey)?;
    VerifyingKey::from_sec1_bytes(&bytes).map_err(|_| JwsError::NotAKey)
}

/// The one form in which keys are stored and compared: SEC1 uncompressed, 65 bytes.
pub(crate) fn key_bytes(key: &VerifyingKey) -> Vec<u8> {
    key.to_sec1_point(false).as_bytes().to_vec()
}

/// Reads a seal and checks it against the key. Nothing of an unverified seal gets out.
pub(crate) fn verify(jws: &str, key: &VerifyingKey) -> Result<Sealed, JwsError> {
    if jws.len() > JWS_BYTES_MAX {
        return Err(JwsError::TooLong { bytes: jws.len() });
    }
    let (signing_input, signature) = jws.rsplit_once('.').ok_or(JwsError::NotAJws { part: "its end" })?;
    let (header, payload) = signing_input.split_once('.').ok_or(JwsError::NotAJws { part: "its middle" })?;
    let header: Header =
        serde_json::from_slice(&decode(header, "its header")?).map_err(|_| JwsError::NotAJws { part: "its header" })?;
    // RFC 7515, section 4.1.11: what is critical and not understood must be refused.
    if header.alg != "ES256" || header.crit.is_some() {
        return Err(JwsError::OtherAlgorithm);
    }
    let signature = Signature::from_slice(&decode(signature, "its signature")?)
        .map_err(|_| JwsError::NotAJws { part: "its signature" })?;
    key.verify(signing_input.as_bytes(), &signature).map_err(|_| JwsError::DoesNotHold)?;
    let lacks = |why: &dyn std::fmt::Display| JwsError::Payload { why: why.to_string() };
    let payload: Payload = serde_json::from_slice(&decode(payload, "its content")?).map_err(|e| lacks(&e))?;
    Ok(Sealed {
        visit: VisitId::parse(&payload.visit).map_err(|e| lacks(&e))?,
        last: Digest::parse(&payload.last).map_err(|e| lacks(&e))?,
        next: payload.next,
        complete: payload.complete,
    })
}

fn decode(part: &str, name: &'static str) -> Result<Vec<u8>, JwsError> {
    URL_SAFE_NO_PAD.decode(part).map_err(|_| JwsError::NotAJws { part: name })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 7515, appendix A.3: header, payload and signature of its ES256 example, and its key's coordinates.
    const JWS: &str = "eyJhbGciOiJFUzI1NiJ9\
        .eyJpc3MiOiJqb2UiLA0KICJleHAiOjEzMDA4MTkzODAsDQogImh0dHA6Ly9leGFtcGxlLmNvbS9pc19yb290Ijp0cnVlfQ\
        .DtEhU3ljbEg8L38VWAfUAqOyKAM6-Xx-F4GawxaepmXFCgfTjDxw5djxLa8ISlSApmWQxfKTUJqPP3-Kg6NU1Q";
    const X: &str = "f83OJ3D2xF1Bg8vub9tLe1gHMzV76e8Tus9uPHvRVEU";
    const Y: &str = "x_FEzRu9m36HLN_tue659LNpXW6pCyStikYjKIWI5a0";

    fn published_key() -> VerifyingKey {
        let decode = |part| URL_SAFE_NO_PAD.decode(part).unwrap();
        let point = [vec![4], decode(X), decode(Y)].concat();
        read_key(&crate::ids::hex(&point)).unwrap()
    }

    #[test]
    fn the_es256_example_of_rfc_7515_holds_and_only_then_its_content_is_looked_at() {
        // Its content is no seal, so getting as far as the content shows that the signature was accepted.
        assert!(matches!(verify(JWS, &published_key()), Err(JwsError::Payload { .. })));
    }

    #[test]
    fn a_changed_byte_of_the_published_example_does_not_hold() {
        let changed = JWS.replace("eyJpc3MiOiJqb2Ui", "eyJpc3MiOiJqb2Uj");
        assert_ne!(changed, JWS);
        assert_eq!(verify(&changed, &published_key()), Err(JwsError::DoesNotHold));
    }

    #[test]
    fn no_algorithm_but_es256_is_taken() {
        let none = URL_SAFE_NO_PAD.encode(r#"{"alg":"none"}"#);
        let rest = JWS.split_once('.').unwrap().1;
        assert_eq!(verify(&format!("{none}.{rest}"), &published_key()), Err(JwsError::OtherAlgorithm));
    }

    #[test]
    fn a_compressed_key_is_the_same_key() {
        let key = published_key();
        let compressed = crate::ids::hex(key.to_sec1_point(true).as_bytes());
        assert_eq!(key_bytes(&read_key(&compressed).unwrap()), key_bytes(&key));
        assert_eq!(read_key("04"), Err(JwsError::NotAKey));
    }
}
