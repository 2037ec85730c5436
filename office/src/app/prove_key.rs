//! A device proves that it holds its key, and gets a token that ends.
//!
//! The nonce that it signs is made by the office and recognised by a secret: asking for one writes nothing, so asking often
//! does no harm. It gives one token, within five minutes.

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;

use super::join::TOKEN_MS;
use crate::ids::{Digest, Secret};
use crate::store::devices::{self, Device, DeviceId};
use crate::store::{Store, StoreError, settings, tokens};
use crate::wire::proof::{NotAProof, Proof};

/// A nonce holds for this long.
const NONCE_MS: i64 = 5 * 60_000;

/// The setting that holds the secret by which the office recognises its nonces.
const SECRET: &str = "nonce-secret";

/// A token that was not given.
#[derive(Debug, thiserror::Error)]
pub(crate) enum ProofError {
    #[error("the proof cannot be read: {0}")]
    Unreadable(#[from] NotAProof),
    #[error("no such device joined this office; let it join")]
    Unknown,
    #[error("the office has revoked this device; it can join again with a new code")]
    Revoked,
    #[error("the nonce is not of this office and device, was used, or is too old; ask for another one")]
    Nonce,
    #[error("the proof was not made by the device's key")]
    Signature,
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// Something to sign, and when it ends.
pub(crate) fn nonce(store: &Store, device: &str, fresh: &Secret, now_ms: i64) -> Result<(String, i64), ProofError> {
    let device = joined(store, device)?;
    let expires_ms = now_ms + NONCE_MS;
    Ok((write(&secret(store)?, device.id, expires_ms, fresh.hash()), expires_ms))
}

/// Gives a token for a proof, and says when it ends.
pub(crate) fn token(store: &Store, compact: &str, token: &Secret, now_ms: i64) -> Result<i64, ProofError> {
    let proof = Proof::read(compact)?;
    let device = joined(store, &proof.device)?;
    let nonce_ends_ms = read(&secret(store)?, device.id, &proof.nonce).ok_or(ProofError::Nonce)?;
    if nonce_ends_ms <= now_ms {
        return Err(ProofError::Nonce);
    }
    if !device.public_key.as_ref().is_some_and(|key| proof.is_by(key)) {
        return Err(ProofError::Signature);
    }
    let expires_ms = now_ms + TOKEN_MS;
    store.write(|db| {
        if !tokens::use_nonce(db, Digest::of(proof.nonce.as_bytes()), nonce_ends_ms, now_ms)? {
            return Err(ProofError::Nonce);
        }
        Ok(tokens::add(db, token.hash(), device.id, expires_ms, now_ms)?)
    })?;
    Ok(expires_ms)
}

fn joined(store: &Store, device: &str) -> Result<Device, ProofError> {
    let id = DeviceId::parse(device).ok_or(ProofError::Unknown)?;
    let device = store.read(|db| devices::by_id(db, id))?.filter(|device| device.public_key.is_some());
    match device {
        None => Err(ProofError::Unknown),
        Some(device) if device.revoked => Err(ProofError::Revoked),
        Some(device) => Ok(device),
    }
}

fn secret(store: &Store) -> Result<String, ProofError> {
    Ok(store.read(|db| settings::of(db, SECRET))?.unwrap_or_default())
}

/// Keeps a fresh secret to recognise nonces by, where there is none yet.
pub(crate) fn set_up(store: &Store, fresh: &Secret) -> Result<(), StoreError> {
    if store.read(|db| settings::of(db, SECRET))?.is_some() {
        return Ok(());
    }
    store.write(|db| settings::put_first(db, SECRET, &fresh.text()))
}

/// `when it ends ‖ 32 random bytes ‖ what the office makes of the two`. All parts have one length, so that a hash over the
/// secret and them cannot be carried on.
fn write(secret: &str, device: DeviceId, expires_ms: i64, random: Digest) -> String {
    let said = [expires_ms.to_be_bytes().as_slice(), random.as_bytes()].concat();
    let mark = mark(secret, device, &said);
    URL_SAFE_NO_PAD.encode([said.as_slice(), mark.as_bytes()].concat())
}

/// When a nonce ends, if it was made here for this device.
fn read(secret: &str, device: DeviceId, nonce: &str) -> Option<i64> {
    let bytes = URL_SAFE_NO_PAD.decode(nonce).ok().filter(|bytes| bytes.len() == 72)?;
    let (said, made) = bytes.split_at_checked(40)?;
    let right = mark(secret, device, said);
    // Hashed once more, so that how long comparing takes tells nothing about the right bytes.
    if Digest::of(made) != Digest::of(right.as_bytes()) {
        return None;
    }
    Some(i64::from_be_bytes(said.first_chunk().copied()?))
}

fn mark(secret: &str, device: DeviceId, said: &[u8]) -> Digest {
    Digest::of(&[secret.as_bytes(), &device.to_bytes(), said].concat())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_nonce_is_recognised_for_its_device_under_its_secret_and_to_the_character() {
        let (one, two) = (DeviceId::for_tests(1), DeviceId::for_tests(2));
        let nonce = write("secret", one, 77, Digest::of(b"random"));
        assert_eq!(read("secret", one, &nonce), Some(77));
        assert_eq!(read("secret", two, &nonce), None);
        assert_eq!(read("other", one, &nonce), None);
        for at in 0..nonce.len() {
            let mut changed = nonce.clone().into_bytes();
            changed[at] = if changed[at] == b'A' { b'B' } else { b'A' };
            assert_eq!(read("secret", one, &String::from_utf8(changed).unwrap()), None, "{at}");
        }
        assert_eq!(read("secret", one, ""), None);
    }
}
