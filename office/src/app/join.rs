//! Devices join the office: the office makes a token, the device brings its key.

use super::vouch;
use crate::ids::Secret;
use crate::store::devices::{self, Device};
use crate::store::{Store, StoreError};
use crate::wire::DeviceIn;
use crate::wire::key::{self, NotAKey};

/// The most characters of a device's name.
const NAME_CHARS_MAX: usize = 80;

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

/// Lets a device in. The token's text is known only to whoever calls this.
pub(crate) fn add_device(store: &Store, name: &str, token: &Secret, now_ms: i64) -> Result<(), StoreError> {
    store.write(|db| devices::add(db, name, token.hash(), now_ms).map(|_| ()))
}

/// Takes a device's key, and vouches for it. The first one stays; the same one again changes nothing.
pub(crate) fn register(store: &Store, device: &Device, sent: &DeviceIn, now_ms: i64) -> Result<(), RegisterError> {
    let public_key = key::read(&sent.public_key)?;
    let name = sent.name.trim();
    if !(1..=NAME_CHARS_MAX).contains(&name.chars().count()) {
        return Err(RegisterError::Name);
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

/// The device that this token belongs to.
pub(crate) fn by_token(store: &Store, token: &str) -> Result<Option<Device>, StoreError> {
    store.read(|db| devices::by_token(db, Secret::hash_of(token)))
}
