//! The customer's name and signature at the door: a file on the shelf, beside the log.

use std::fs;

use super::DoorError;
use super::desk::Desk;
use crate::evidence::{SHOWN_BYTES_MAX, SHOWN_MEDIA, Shown};
use crate::id::Digest;
use crate::store::shelf::{FolderShelf, Shelf as _};
use crate::visit::event::sha256;
use crate::visit::state::Visit;

/// A file that is sent the way of photographs: digest, media type, length.
type Kept = (Digest, String, u64);

/// Puts the file down, before the event that names it is written.
pub(super) fn keep(shelf: &FolderShelf, bytes: &[u8]) -> Result<Kept, DoorError> {
    let digest = sha256(bytes);
    shelf.write_original(&digest, bytes)?.keep()?;
    Ok((digest, SHOWN_MEDIA.to_owned(), bytes.len() as u64))
}

/// The event was not written: somebody's name must not lie about where nothing knows of it.
pub(super) fn forget(shelf: &FolderShelf, kept: Option<&Kept>) {
    if let Some((digest, ..)) = kept {
        let _ = fs::remove_file(shelf.original_path(digest));
    }
}

/// The bytes of the file, where it is here and what it was.
pub(super) fn bytes_of(shelf: &FolderShelf, digest: &Digest) -> Option<Vec<u8>> {
    let path = shelf.original_path(digest);
    let short = fs::metadata(&path).is_ok_and(|known| known.len() <= SHOWN_BYTES_MAX as u64);
    fs::read(path).ok().filter(|bytes| short && sha256(bytes) == *digest)
}

impl Desk {
    /// Whom the visit was shown to; none also where that was erased.
    pub(super) fn shown(&self, visit: &Visit) -> Option<Shown> {
        Shown::read(&bytes_of(&self.shelf, visit.shown.as_ref()?)?).ok()
    }
}
