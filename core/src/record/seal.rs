//! The seal: a JWS (RFC 7515) with ES256 over canonical JSON (RFC 8785). Any JOSE library can check it.

use base64::Engine as _;
use base64::engine::general_purpose::{STANDARD, URL_SAFE_NO_PAD};
use p256::ecdsa::signature::Verifier as _;
use p256::ecdsa::{Signature, VerifyingKey};
use serde::{Deserialize, Serialize};

use crate::visit::state::Visit;

/// What a seal says. Strings and whole numbers only, so that its canonical form is one.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Payload {
    /// The payload's form: 1.
    pub format: u32,
    /// Which visit.
    pub visit: String,
    /// How many events.
    pub next: u64,
    /// SHA-256 of the last one.
    pub last: String,
    /// Nothing is missing.
    pub complete: bool,
    /// What is missing, and why.
    pub missing: Vec<String>,
    /// When it was frozen, UTC milliseconds.
    pub at_utc_ms: i64,
    /// The zone's offset then, minutes east.
    pub offset_min: i32,
    /// The device's public key, SEC1 hex.
    pub device_key: String,
}

/// Why a seal is none.
#[derive(Debug, thiserror::Error)]
pub enum SealError {
    /// Not frozen.
    #[error("the record is not ready to be sealed; prepare it first")]
    NotPrepared,
    /// Not canonical.
    #[error("the seal's content could not be written: {0}")]
    Unwritable(String),
    /// Not a compact JWS.
    #[error("the seal cannot be read: {0}")]
    Unreadable(&'static str),
    /// Not signed by that key.
    #[error("the signature does not belong to this record and key")]
    Signature,
    /// Signed, but about another state of the log.
    #[error("the seal is about another state of the record: {0} differs")]
    Other(&'static str),
}

/// The protected header: algorithm and what the payload is.
const HEADER: &str = r#"{"alg":"ES256","typ":"coilside-seal+json"}"#;

/// The payload for a frozen visit.
///
/// # Errors
/// Where the visit is not frozen.
pub fn payload(visit: &Visit) -> Result<Payload, SealError> {
    let sealing = visit.sealing.as_ref().ok_or(SealError::NotPrepared)?;
    Ok(Payload {
        format: 1,
        visit: visit.id.to_string(),
        next: visit.end.next,
        last: visit.end.last.to_string(),
        complete: sealing.complete,
        missing: sealing.missing.clone(),
        at_utc_ms: sealing.at.utc_ms,
        offset_min: sealing.at.offset_min,
        device_key: visit.device_key.clone(),
    })
}

/// The bytes to sign: `BASE64URL(header).BASE64URL(payload)`.
///
/// # Errors
/// Where the visit is not frozen.
pub fn signing_input(visit: &Visit) -> Result<String, SealError> {
    let canonical =
        serde_json_canonicalizer::to_vec(&payload(visit)?).map_err(|error| SealError::Unwritable(error.to_string()))?;
    Ok(format!("{}.{}", URL_SAFE_NO_PAD.encode(HEADER), URL_SAFE_NO_PAD.encode(canonical)))
}

/// Puts a signature (base64 of DER or of raw r‖s) under a signing input, after checking it against the key.
///
/// # Errors
/// Where the signature does not belong to the input and the key.
pub fn close(signing_input: &str, signature_base64: &str, public_key: &[u8]) -> Result<String, SealError> {
    let bytes = STANDARD
        .decode(signature_base64.trim())
        .or_else(|_| URL_SAFE_NO_PAD.decode(signature_base64.trim()))
        .map_err(|_| SealError::Unreadable("the signature is not base64"))?;
    let signature = Signature::from_slice(&bytes)
        .or_else(|_| Signature::from_der(&bytes))
        .map_err(|_| SealError::Unreadable("the signature is neither DER nor r‖s"))?;
    check(signing_input, &signature, public_key)?;
    Ok(format!("{signing_input}.{}", URL_SAFE_NO_PAD.encode(signature.to_bytes())))
}

fn check(signing_input: &str, signature: &Signature, public_key: &[u8]) -> Result<(), SealError> {
    let key =
        VerifyingKey::from_sec1_bytes(public_key).map_err(|_| SealError::Unreadable("the key is no P-256 point"))?;
    key.verify(signing_input.as_bytes(), signature).map_err(|_| SealError::Signature)
}

/// Checks a compact JWS against a key and returns what it says.
///
/// # Errors
/// Where it cannot be read or was not signed by that key.
pub fn open(jws: &str, public_key: &[u8]) -> Result<Payload, SealError> {
    let (input, signature) = jws.rsplit_once('.').ok_or(SealError::Unreadable("it is not a compact JWS"))?;
    let (header, payload) = input.split_once('.').ok_or(SealError::Unreadable("it is not a compact JWS"))?;
    if URL_SAFE_NO_PAD.decode(header).ok().as_deref() != Some(HEADER.as_bytes()) {
        return Err(SealError::Unreadable("its header is not that of a seal"));
    }
    let signature = URL_SAFE_NO_PAD
        .decode(signature)
        .ok()
        .and_then(|bytes| Signature::from_slice(&bytes).ok())
        .ok_or(SealError::Unreadable("its signature is not r‖s"))?;
    check(input, &signature, public_key)?;
    let payload = URL_SAFE_NO_PAD.decode(payload).map_err(|_| SealError::Unreadable("its payload is not base64url"))?;
    serde_json::from_slice(&payload).map_err(|_| SealError::Unreadable("its payload is not that of a seal"))
}

/// Checks that a seal is about this very state of a visit's log.
///
/// # Errors
/// In what it differs.
pub fn matches(payload: &Payload, visit: &Visit) -> Result<(), SealError> {
    if payload.visit != visit.id.as_str() {
        return Err(SealError::Other("the visit"));
    }
    if payload.next != visit.end.next {
        return Err(SealError::Other("the number of events"));
    }
    if payload.last != visit.end.last.as_str() {
        return Err(SealError::Other("the digest of the last event"));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use p256::ecdsa::SigningKey;
    use p256::ecdsa::signature::Signer as _;

    use super::*;
    use crate::id::Digest;
    use crate::now::Now;
    use crate::visit::event::ChainEnd;
    use crate::visit::state::Sealing;

    fn key(byte: u8) -> (SigningKey, Vec<u8>) {
        let key = SigningKey::from_slice(&[byte; 32]).unwrap();
        let public = key.verifying_key().to_sec1_point(false).as_bytes().to_vec();
        (key, public)
    }

    fn frozen() -> Visit {
        let at = Now { utc_ms: 1_700_000_000_000, offset_min: 60, mono_ms: 1, mono_epoch: "a".into() };
        Visit {
            id: "v1".into(),
            end: ChainEnd { next: 9, last: Digest("ab".repeat(32)) },
            sealing: Some(Sealing {
                complete: false,
                missing: vec!["A photograph missing nameplate: rust".into()],
                at,
            }),
            ..Visit::default()
        }
    }

    fn sealed() -> (String, Vec<u8>) {
        let (key, public) = key(7);
        let input = signing_input(&frozen()).unwrap();
        let signature: Signature = key.sign(input.as_bytes());
        (close(&input, &STANDARD.encode(signature.to_der()), &public).unwrap(), public)
    }

    #[test]
    fn a_seal_opens_under_its_key_and_matches_its_visit() {
        let (jws, public) = sealed();
        let payload = open(&jws, &public).unwrap();
        matches(&payload, &frozen()).unwrap();
    }

    #[test]
    fn a_foreign_key_does_not_open_it() {
        let (jws, _) = sealed();
        assert!(matches!(open(&jws, &key(8).1), Err(SealError::Signature)));
    }

    #[test]
    fn any_changed_character_is_noticed() {
        let (jws, public) = sealed();
        for at in 0..jws.len() {
            let mut changed = jws.clone().into_bytes();
            changed[at] = if changed[at] == b'A' { b'B' } else { b'A' };
            let changed = String::from_utf8(changed).unwrap();
            // The last character of an unpadded group carries bits that no decoder reads.
            assert!(open(&changed, &public).is_err(), "changed at {at}");
        }
    }

    #[test]
    fn a_seal_about_another_state_does_not_match() {
        let (jws, public) = sealed();
        let mut visit = frozen();
        visit.end.next += 1;
        assert!(matches!(matches(&open(&jws, &public).unwrap(), &visit), Err(SealError::Other(_))));
    }
}
