//! A device sends a photograph, in as many pieces and attempts as it takes.
//!
//! Between two pieces the state is the part file alone, so a kill at any byte resumes. The order at the end is what
//! makes 'safe' true: bytes checked, file synced, renamed, folder synced, and only then the row.

use std::fs::{self, File, TryLockError};
use std::io::{self, Read};

use sha2::Digest as _;

use super::customer;
use crate::ids::{Digest, VisitId};
use crate::store::devices::DeviceId;
use crate::store::folder::failed;
use crate::store::photos::{self, Photo};
use crate::store::{Store, StoreError};
use crate::wire::tus::{Announced, PHOTO_BYTES_MAX};

/// A photograph or a piece of one that was not taken.
#[derive(Debug, thiserror::Error)]
pub(crate) enum PhotoError {
    #[error("no such photograph was announced; announce it with POST first")]
    Unknown,
    #[error("a photograph has 1 to {PHOTO_BYTES_MAX} bytes, not {length}")]
    Length { length: u64 },
    #[error("this photograph was announced with {announced} bytes before; both cannot be right")]
    OtherLength { announced: u64 },
    #[error("the piece begins at {sent}, the office has {offset} bytes; go on from there")]
    Offset { sent: u64, offset: u64 },
    #[error("the piece goes beyond the announced length")]
    Beyond,
    #[error("another piece of this photograph is just coming in; try again")]
    Busy,
    #[error("the bytes are not the announced photograph; they are set aside, send it from its beginning")]
    OtherBytes,
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// How far a photograph has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Progress {
    /// Bytes that are on disk.
    pub(crate) offset: u64,
    /// Bytes in all.
    pub(crate) length: u64,
}

/// A piece may be written now: the file to append to, locked, and how many bytes may come.
#[derive(Debug)]
pub(crate) struct Piece {
    pub(crate) file: File,
    pub(crate) room: u64,
}

/// Writes down that a photograph will come. The same again changes nothing, also when it has long come.
pub(crate) fn announce(
    store: &Store,
    device: DeviceId,
    sent: &Announced,
    length: u64,
    now_ms: i64,
) -> Result<(), PhotoError> {
    if !(1..=PHOTO_BYTES_MAX).contains(&length) {
        return Err(PhotoError::Length { length });
    }
    let part = part_length(store, sent.digest)?;
    store.write(|db| {
        let known = photos::of(db, sent.digest)?;
        if let Some(Photo { length: announced, safe, .. }) = known {
            // A wrong length must not block the right one for ever: until bytes have come it may be said anew.
            if announced != length && (safe || part > 0) {
                return Err(PhotoError::OtherLength { announced });
            }
        }
        let photo = Photo { length, media: sent.media.clone(), safe: false };
        Ok(photos::announce(db, sent.digest, &sent.visit, &photo, device, now_ms)?)
    })
}

/// A photograph that is here as a whole, in a record file.
pub(crate) struct Whole<'a> {
    pub(crate) digest: Digest,
    pub(crate) visit: &'a VisitId,
    pub(crate) media: &'a str,
    pub(crate) length: u64,
    pub(crate) device: DeviceId,
}

/// Keeps a whole photograph; false where it was here already.
pub(crate) fn take_whole(
    store: &Store,
    whole: &Whole<'_>,
    bytes: &mut dyn Read,
    now_ms: i64,
) -> Result<bool, PhotoError> {
    let digest = whole.digest;
    if store.read(|db| photos::of(db, digest))?.is_some_and(|photo| photo.safe) {
        return Ok(false);
    }
    let photo = Photo { length: whole.length, media: whole.media.to_owned(), safe: false };
    store.write(|db| photos::announce(db, digest, whole.visit, &photo, whole.device, now_ms))?;
    let mut file = lock(store.folder.open_part(digest)?)?;
    let part = store.folder.part(digest);
    // What came of it before from elsewhere is its beginning at best; here all of it is at hand.
    file.set_len(0).map_err(|e| failed("emptied", &part, e))?;
    io::copy(&mut bytes.take(whole.length), &mut file).map_err(|e| failed("written", &part, e))?;
    drop(file);
    settle(store, digest, now_ms)?;
    if is_safe(store, digest, now_ms)? { Ok(true) } else { Err(PhotoError::OtherBytes) }
}

/// How far a photograph has come. Finishes one whose last byte came just before a kill.
pub(crate) fn progress(store: &Store, digest: Digest, now_ms: i64) -> Result<Progress, PhotoError> {
    let length = known(store, digest)?.length;
    match settle(store, digest, now_ms) {
        Ok(offset) => Ok(Progress { offset, length }),
        Err(PhotoError::OtherBytes) => Ok(Progress { offset: 0, length }),
        Err(other) => Err(other),
    }
}

/// Whether a photograph is safe: its file, its folder and its row are on disk. An unknown one is not.
pub(crate) fn is_safe(store: &Store, digest: Digest, now_ms: i64) -> Result<bool, PhotoError> {
    match settle(store, digest, now_ms) {
        // One that was erased since by a person's will was safe, and is not wanted again.
        Ok(_) => Ok(known(store, digest)?.safe
            && (store.folder.original(digest).is_file() || store.read(|db| customer::is_withheld(db, digest))?)),
        Err(PhotoError::Unknown | PhotoError::OtherBytes | PhotoError::Busy) => Ok(false),
        Err(other) => Err(other),
    }
}

/// Opens a photograph for the piece that begins at this offset.
pub(crate) fn begin(store: &Store, digest: Digest, sent: u64, now_ms: i64) -> Result<Piece, PhotoError> {
    let offset = match settle(store, digest, now_ms) {
        Ok(offset) => offset,
        Err(PhotoError::OtherBytes) => 0,
        Err(other) => return Err(other),
    };
    let photo = known(store, digest)?;
    if sent != offset || photo.safe {
        return Err(PhotoError::Offset { sent, offset });
    }
    let file = lock(store.folder.open_part(digest)?)?;
    let offset = file_length(store, digest, &file)?;
    if sent != offset {
        return Err(PhotoError::Offset { sent, offset });
    }
    Ok(Piece { file, room: photo.length.saturating_sub(offset) })
}

/// Puts what came onto the disk, and finishes the photograph when it is whole. Returns the new offset.
pub(crate) fn end(store: &Store, digest: Digest, file: File, now_ms: i64) -> Result<u64, PhotoError> {
    file.sync_all().map_err(|e| failed("synced", &store.folder.part(digest), e))?;
    // The lock must go before `settle` takes it anew.
    drop(file);
    settle(store, digest, now_ms)
}

/// Brings a photograph as far as its bytes allow, and says how many bytes are on disk.
fn settle(store: &Store, digest: Digest, now_ms: i64) -> Result<u64, PhotoError> {
    let photo = known(store, digest)?;
    if photo.safe {
        return Ok(photo.length);
    }
    if store.folder.original(digest).is_file() {
        // Killed between renaming and the row. The bytes were checked before the renaming.
        return adopt(store, digest, &photo, now_ms);
    }
    if !store.folder.part(digest).is_file() {
        return Ok(0);
    }
    let file = lock(store.folder.open_part(digest)?)?;
    file.sync_all().map_err(|e| failed("synced", &store.folder.part(digest), e))?;
    let offset = file_length(store, digest, &file)?;
    if offset < photo.length {
        return Ok(offset);
    }
    if offset > photo.length || hash_of(store, digest)? != digest {
        store.folder.set_aside(digest, now_ms)?;
        return Err(PhotoError::OtherBytes);
    }
    store.folder.keep(digest, &file)?;
    store.write(|db| photos::mark_safe(db, digest, now_ms))?;
    Ok(offset)
}

/// The renaming may not have reached the disk before the kill, so the folder is synced once more.
fn adopt(store: &Store, digest: Digest, photo: &Photo, now_ms: i64) -> Result<u64, PhotoError> {
    store.folder.sync_original(digest)?;
    store.write(|db| photos::mark_safe(db, digest, now_ms))?;
    Ok(photo.length)
}

fn known(store: &Store, digest: Digest) -> Result<Photo, PhotoError> {
    store.read(|db| photos::of(db, digest))?.ok_or(PhotoError::Unknown)
}

/// One writer at a time, across processes too; the lock goes with the process that held it.
fn lock(file: File) -> Result<File, PhotoError> {
    match file.try_lock() {
        Ok(()) => Ok(file),
        Err(TryLockError::WouldBlock) => Err(PhotoError::Busy),
        Err(TryLockError::Error(source)) => {
            Err(StoreError::File { doing: "locked", path: "parts".into(), source }.into())
        }
    }
}

fn part_length(store: &Store, digest: Digest) -> Result<u64, PhotoError> {
    let path = store.folder.part(digest);
    match fs::metadata(&path) {
        Ok(data) => Ok(data.len()),
        Err(e) if e.kind() == io::ErrorKind::NotFound => Ok(0),
        Err(e) => Err(failed("read", &path, e).into()),
    }
}

fn file_length(store: &Store, digest: Digest, file: &File) -> Result<u64, PhotoError> {
    Ok(file.metadata().map_err(|e| failed("read", &store.folder.part(digest), e))?.len())
}

/// Reads the bytes back from the file, so that what is checked is what is kept.
fn hash_of(store: &Store, digest: Digest) -> Result<Digest, PhotoError> {
    let path = store.folder.part(digest);
    let unread = |e| failed("read", &path, e);
    let mut file = File::open(&path).map_err(unread)?;
    let (mut hash, mut buffer) = (sha2::Sha256::new(), vec![0; 256 * 1024]);
    loop {
        let read = file.read(&mut buffer).map_err(unread)?;
        if read == 0 {
            return Ok(Digest::from_bytes(hash.finalize().into()));
        }
        hash.update(buffer.get(..read).unwrap_or_default());
    }
}
