//! The seal: a JWS (RFC 7515) with ES256 over canonical JSON (RFC 8785). Any JOSE library can check it.

use serde::{Deserialize, Serialize};

use super::jws::{self, JwsError};
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
    /// No JWS, or not of that key.
    #[error(transparent)]
    Jws(#[from] JwsError),
    /// Signed, but about another state of the log.
    #[error("the seal is about another state of the record: {0} differs")]
    Other(&'static str),
}

/// What the payload is, in the protected header.
pub const TYP: &str = "coilside-seal+json";

/// The payload for a frozen visit.
///
/// # Errors
/// Where the visit is not frozen.
pub fn payload(visit: &Visit) -> Result<Payload, SealError> {
    let sealing = visit.sealing.as_ref().ok_or(SealError::NotPrepared)?;
    // The freezing, or the addendum that is to be signed.
    let at = visit.addenda.last().map_or(&sealing.at, |addendum| &addendum.at);
    Ok(Payload {
        format: 1,
        visit: visit.id.to_string(),
        next: visit.end.next,
        last: visit.end.last.to_string(),
        complete: sealing.complete,
        missing: sealing.missing.clone(),
        at_utc_ms: at.utc_ms,
        offset_min: at.offset_min,
        device_key: visit.device_key.clone(),
    })
}

/// The bytes to sign: `BASE64URL(header).BASE64URL(payload)`.
///
/// # Errors
/// Where the visit is not frozen.
pub fn signing_input(visit: &Visit) -> Result<String, SealError> {
    Ok(jws::signing_input(TYP, &payload(visit)?)?)
}

/// Puts a signature (base64 of DER or of raw r‖s) under a signing input, after checking it against the key.
///
/// # Errors
/// Where the signature does not belong to the input and the key.
pub fn close(signing_input: &str, signature_base64: &str, public_key: &[u8]) -> Result<String, SealError> {
    Ok(jws::close(signing_input, signature_base64, public_key)?)
}

/// Checks a compact JWS against a key and returns what it says.
///
/// # Errors
/// Where it cannot be read or was not signed by that key.
pub fn open(sealed: &str, public_key: &[u8]) -> Result<Payload, SealError> {
    Ok(jws::open(sealed, TYP, public_key)?)
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
    use base64::Engine as _;
    use base64::engine::general_purpose::STANDARD;
    use p256::ecdsa::signature::Signer as _;
    use p256::ecdsa::{Signature, SigningKey};

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
        assert!(matches!(open(&jws, &key(8).1), Err(SealError::Jws(JwsError::Signature))));
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
