//! Devices join the office: it shows a code, the device brings its key. Or the office makes a token that never ends, for
//! scripts, and the device registers its key under it.

use super::vouch;
use crate::ids::{Digest, Secret};
use crate::store::devices::{self, Device, DeviceId};
use crate::store::{Store, StoreError, tokens};
use crate::wire::DeviceIn;
use crate::wire::joining::{self, JoinIn};
use crate::wire::key::{self, NotAKey};

/// The most characters of a device's name.
pub(crate) const NAME_CHARS_MAX: usize = 80;

/// A code holds for this long.
pub(crate) const CODE_MS: i64 = 10 * 60_000;

/// A token holds for this long.
pub(crate) const TOKEN_MS: i64 = 12 * 3600 * 1000;

/// So many wrong codes within [`WRONG_MS`], whoever tries them, close the door until one of them is as old.
const WRONG_MAX: usize = 10;
const WRONG_MS: i64 = 60_000;

/// A key that was not registered.
#[derive(Debug, thiserror::Error)]
pub(crate) enum RegisterError {
    #[error(transparent)]
    Key(#[from] NotAKey),
    #[error("the name must have 1 to {NAME_CHARS_MAX} characters")]
    Name,
    #[error("this device has registered another key; ask the office for a new token")]
    OtherKey,
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// A device that did not join.
#[derive(Debug, thiserror::Error)]
pub(crate) enum JoinError {
    #[error(transparent)]
    Key(#[from] NotAKey),
    #[error("the name must have 1 to {NAME_CHARS_MAX} characters")]
    Name,
    #[error(
        "this code does not hold: it is wrong, was used, or is older than ten minutes; let the office show another one"
    )]
    Code,
    #[error("too many wrong codes came; wait a little, then try again")]
    TooMany { after_s: u32 },
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// A device that has joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Joined {
    pub(crate) device: DeviceId,
    /// When its first token ends.
    pub(crate) expires_ms: i64,
}

/// Lets a device in. The token's text is known only to whoever calls this.
pub(crate) fn add_device(store: &Store, name: &str, token: &Secret, now_ms: i64) -> Result<(), StoreError> {
    store.write(|db| devices::add(db, name, token.hash(), now_ms).map(|_| ()))
}

/// Makes a code out of fresh random bytes, for a device of this name. Only its hash is kept.
pub(crate) fn new_code(store: &Store, name: &str, random: [u8; 5], now_ms: i64) -> Result<String, StoreError> {
    let code = joining::code(random);
    let hash = hash(&joining::plain(&code).unwrap_or_default());
    store.write(|db| tokens::add_code(db, hash, name, now_ms))?;
    Ok(code)
}

fn hash(code: &str) -> Digest {
    Digest::of(code.as_bytes())
}

/// Takes a device in by a code, with a token. One whose key is known is the same device again, and no longer revoked.
/// `secrets` are the token, and one that nobody ever gets, for a new device's row.
pub(crate) fn join(
    store: &Store,
    sent: &JoinIn,
    secrets: (&Secret, &Secret),
    now_ms: i64,
) -> Result<Joined, JoinError> {
    let public_key = key::read(&sent.public_key)?;
    let calls_itself = name(&sent.name).ok_or(JoinError::Name)?;
    // A wrong code must be committed before it is told, so it leaves the transaction as a value.
    let joined = store.write(|db| -> Result<_, JoinError> {
        let wrong = tokens::wrong_codes(db, now_ms - WRONG_MS)?;
        if let Some(oldest) = wrong.len().checked_sub(WRONG_MAX).and_then(|at| wrong.get(at)) {
            let after_ms = (oldest + WRONG_MS - now_ms).clamp(0, WRONG_MS);
            return Err(JoinError::TooMany { after_s: u32::try_from(after_ms / 1000 + 1).unwrap_or(1) });
        }
        let used = match joining::plain(&sent.code) {
            Some(code) => tokens::use_code(db, hash(&code), now_ms, now_ms - CODE_MS)?,
            None => None,
        };
        let Some(whose) = used else {
            tokens::add_wrong_code(db, now_ms, now_ms - WRONG_MS)?;
            return Ok(None);
        };
        let id = match devices::by_key(db, &public_key)? {
            Some(known) => {
                devices::rejoin(db, known.id, &whose, calls_itself)?;
                tokens::end_all(db, known.id)?;
                known.id
            }
            None => {
                let id = devices::add(db, &whose, secrets.1.hash(), now_ms)?;
                devices::register(db, id, calls_itself, &public_key)?;
                id
            }
        };
        if let Some(device) = devices::by_id(db, id)? {
            vouch::for_device(db, &store.key, &device, now_ms)?;
        }
        let expires_ms = now_ms + TOKEN_MS;
        tokens::add(db, secrets.0.hash(), id, expires_ms, now_ms)?;
        Ok(Some(Joined { device: id, expires_ms }))
    })?;
    joined.ok_or(JoinError::Code)
}

/// A name without what surrounds it, where it has the right length.
pub(crate) fn name(text: &str) -> Option<&str> {
    let name = text.trim();
    (1..=NAME_CHARS_MAX).contains(&name.chars().count()).then_some(name)
}

/// Takes a device's key, and vouches for it. The first one stays; the same one again changes nothing.
pub(crate) fn register(store: &Store, device: &Device, sent: &DeviceIn, now_ms: i64) -> Result<(), RegisterError> {
    let public_key = key::read(&sent.public_key)?;
    let name = name(&sent.name).ok_or(RegisterError::Name)?;
    // A device says so again at each of its starts: nothing is written for that.
    if device.public_key.as_ref() == Some(&public_key) {
        return Ok(());
    }
    let kept = store.write(|db| -> Result<_, RegisterError> {
        devices::register(db, device.id, name, &public_key)?;
        let kept = devices::by_id(db, device.id)?;
        if let Some(kept) = &kept {
            vouch::for_device(db, &store.key, kept, now_ms)?;
        }
        Ok(kept)
    })?;
    match kept {
        Some(Device { public_key: Some(kept), .. }) if kept == public_key => Ok(()),
        _ => Err(RegisterError::OtherKey),
    }
}

/// Hears this device no more; nothing that came from it changes.
pub(crate) fn revoke(store: &Store, device: DeviceId, now_ms: i64) -> Result<(), StoreError> {
    store.write(|db| devices::revoke(db, device, now_ms))
}
