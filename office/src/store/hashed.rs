//! How far the bytes of photographs under way were hashed as they came. Held in memory alone: what is not known here is
//! worked out again from the part's file.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use sha2::Sha256;

use crate::ids::Digest;

/// The most photographs under way that are remembered; each takes some hundred bytes.
const REMEMBERED_MAX: usize = 1024;

/// By photograph: how many bytes, and their hash so far.
#[derive(Default)]
pub(crate) struct Hashed(Mutex<BTreeMap<Digest, (u64, Sha256)>>);

impl Hashed {
    /// Takes out the hash over exactly the first `length` bytes, where it is known.
    pub(crate) fn take(&self, digest: Digest, length: u64) -> Option<Sha256> {
        let mut known = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        known.remove(&digest).filter(|(hashed, _)| *hashed == length).map(|(_, hash)| hash)
    }

    /// Remembers the hash over the first `length` bytes.
    pub(crate) fn put(&self, digest: Digest, length: u64, hash: Sha256) {
        let mut known = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if known.len() >= REMEMBERED_MAX {
            known.clear();
        }
        known.insert(digest, (length, hash));
    }
}
