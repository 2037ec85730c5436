//! How a device proves that it holds its key: a compact JWS (RFC 7515) by ES256, of a nonce that the office gave.

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use coilside_core::record::jws;
use serde::Deserialize;

/// For whom a proof is made, so that it is of no use elsewhere.
pub(crate) const AUDIENCE: &str = "coilside-office";

/// The most bytes of a proof; one has some three hundred.
const PROOF_BYTES_MAX: usize = 4096;

/// What is no proof, whoever signed it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub(crate) enum NotAProof {
    #[error("it is no compact JWS of {{\"alg\":\"ES256\"}} over aud, device and nonce")]
    Unreadable,
    #[error("it is made for somebody else than '{AUDIENCE}'")]
    Audience,
}

/// A proof whose signature has not been looked at yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Proof {
    input: String,
    signature: String,
    /// The device that it says to come from.
    pub(crate) device: String,
    /// The nonce that it answers.
    pub(crate) nonce: String,
}

#[derive(Deserialize)]
struct Header {
    alg: String,
    /// What a reader must understand to rely on it (RFC 7515, section 4.1.11): nothing here.
    crit: Option<serde_json::Value>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Said {
    aud: String,
    device: String,
    nonce: String,
}

impl Proof {
    /// Takes a proof apart.
    pub(crate) fn read(compact: &str) -> Result<Self, NotAProof> {
        let parts: Vec<&str> = compact.split('.').collect();
        let [header, payload, signature] = parts.as_slice() else { return Err(NotAProof::Unreadable) };
        if compact.len() > PROOF_BYTES_MAX {
            return Err(NotAProof::Unreadable);
        }
        let decode = |part: &str| URL_SAFE_NO_PAD.decode(part).map_err(|_| NotAProof::Unreadable);
        let head: Header = serde_json::from_slice(&decode(header)?).map_err(|_| NotAProof::Unreadable)?;
        let said: Said = serde_json::from_slice(&decode(payload)?).map_err(|_| NotAProof::Unreadable)?;
        if head.alg != "ES256" || head.crit.is_some() {
            return Err(NotAProof::Unreadable);
        }
        if said.aud != AUDIENCE {
            return Err(NotAProof::Audience);
        }
        let (input, signature) = (format!("{header}.{payload}"), (*signature).to_owned());
        Ok(Self { input, signature, device: said.device, nonce: said.nonce })
    }

    /// Whether this key (SEC1) made it.
    pub(crate) fn is_by(&self, public_key: &[u8]) -> bool {
        // In a JWS a signature is raw r‖s: 64 bytes are 86 characters.
        self.signature.len() == 86 && jws::close(&self.input, &self.signature, public_key).is_ok()
    }
}

#[cfg(test)]
mod tests {
    use p256::ecdsa::signature::Signer as _;
    use p256::ecdsa::{Signature, SigningKey};

    use super::*;

    fn made(header: &str, payload: &str) -> (String, Vec<u8>) {
        let key = SigningKey::from_slice(&[7; 32]).unwrap();
        let input = format!("{}.{}", URL_SAFE_NO_PAD.encode(header), URL_SAFE_NO_PAD.encode(payload));
        let signature: Signature = key.sign(input.as_bytes());
        let public = key.verifying_key().to_sec1_point(false).as_bytes().to_vec();
        (format!("{input}.{}", URL_SAFE_NO_PAD.encode(signature.to_bytes())), public)
    }

    const SAID: &str = r#"{"aud":"coilside-office","device":"3","nonce":"n"}"#;

    #[test]
    fn a_proof_holds_under_its_key_and_under_no_other() {
        let (compact, public) = made(r#"{"alg":"ES256","typ":"x"}"#, SAID);
        let proof = Proof::read(&compact).unwrap();
        assert_eq!((proof.device.as_str(), proof.nonce.as_str()), ("3", "n"));
        assert!(proof.is_by(&public));
        let other = SigningKey::from_slice(&[8; 32]).unwrap().verifying_key().to_sec1_point(false).as_bytes().to_vec();
        assert!(!proof.is_by(&other));
        let changed = Proof { input: proof.input.replace('.', ".e"), ..proof };
        assert!(!changed.is_by(&public));
    }

    #[test]
    fn what_is_made_for_something_else_is_no_proof() {
        let unsigned = made(r#"{"alg":"none"}"#, SAID).0;
        let critical = made(r#"{"alg":"ES256","crit":["b64"]}"#, SAID).0;
        let more = made(r#"{"alg":"ES256"}"#, &SAID.replace('}', r#","visit":"v"}"#)).0;
        for bad in [unsigned.as_str(), &critical, &more, "", "a.b", "a.b.c.d", &"a".repeat(9000)] {
            assert_eq!(Proof::read(bad), Err(NotAProof::Unreadable), "{bad}");
        }
        let elsewhere = made(r#"{"alg":"ES256"}"#, &SAID.replace("office", "bank")).0;
        assert_eq!(Proof::read(&elsewhere), Err(NotAProof::Audience));
    }
}
