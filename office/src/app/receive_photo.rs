//! A device sends a photograph, in as many pieces and attempts as it takes.
//!
//! Between two pieces the state is the part file alone, so a kill at any byte resumes; what is remembered of its hash only
//! saves reading it again. The order at the end is what makes 'safe' true: bytes checked, renamed, file synced, folder
//! synced, and only then the row. A sender hears that all bytes are here as soon as they were checked; that they are on the
//! disk it hears by the receipt alone, which waits for it.

use std::fs::{self, File, TryLockError};
use std::io::{self, Read};

use bytes::Bytes;
use sha2::{Digest as _, Sha256};

use super::customer;
use crate::ids::{Digest, VisitId};
use crate::store::block_file::BlockFile;
use crate::store::devices::DeviceId;
use crate::store::folder::failed;
use crate::store::keeping::Arrived;
use crate::store::photos::{self, Photo};
use crate::store::{Store, StoreError};
use crate::wire::tus::{Announced, Checksum, PHOTO_BYTES_MAX};

/// A photograph that has not come as a whole so long after it was last announced is given up.
pub(crate) const UNFINISHED_MS_MAX: i64 = 7 * 24 * 3600 * 1000;

/// So many that are given up are swept out at once; the rest goes with the next announcements.
const SWEPT_MAX: u32 = 20;

/// A photograph or a piece of one that was not taken.
#[derive(Debug, thiserror::Error)]
pub(crate) enum PhotoError {
    #[error("no such photograph was announced, or it was given up; announce it with POST first")]
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
    #[error("the piece is not what its checksum says; nothing of it was kept, send it again")]
    OtherPiece,
    #[error("the bytes are not the announced photograph; they are set aside, send it from its beginning")]
    OtherBytes,
    #[error("the photograph is here as a whole; it stays")]
    Finished,
    #[error("another device announced this photograph; only that one can take it back")]
    AnotherDevice,
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// How far a photograph has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Progress {
    /// Bytes that are here.
    pub(crate) offset: u64,
    /// Bytes in all.
    pub(crate) length: u64,
    /// When it is given up; none once it is here as a whole.
    pub(crate) expires_ms: Option<i64>,
}

/// Writes down that a photograph will come, and tells when it is given up. The same again changes nothing else, also when it
/// has long come. After a power failure it may have to be announced again, so nothing waits for the disk here.
pub(crate) fn announce(
    store: &Store,
    device: DeviceId,
    sent: &Announced,
    length: u64,
    now_ms: i64,
) -> Result<Option<i64>, PhotoError> {
    if !(1..=PHOTO_BYTES_MAX).contains(&length) {
        return Err(PhotoError::Length { length });
    }
    sweep(store, now_ms)?;
    let part = part_length(store, sent.digest)?;
    store.note(|db| {
        let known = photos::of(db, sent.digest)?;
        if let Some(Photo { length: announced, safe, .. }) = known {
            // A wrong length must not block the right one for ever: until bytes have come it may be said anew.
            if announced != length && (safe || part > 0) {
                return Err(PhotoError::OtherLength { announced });
            }
            if safe {
                return Ok(None);
            }
        }
        let photo = Photo { length, media: sent.media.clone(), safe: false, device, announced_ms: now_ms };
        photos::announce(db, sent.digest, sent.visit.as_ref(), &photo)?;
        Ok(expires(&photo))
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
    let Whole { digest, length, device, .. } = *whole;
    if store.read(|db| photos::of(db, digest))?.is_some_and(|photo| photo.safe) {
        return Ok(false);
    }
    let photo = Photo { length, media: whole.media.to_owned(), safe: false, device, announced_ms: now_ms };
    store.write(|db| photos::announce(db, digest, Some(whole.visit), &photo))?;
    let mut file = lock(store.folder.open_part(digest)?)?;
    let part = store.folder.part(digest);
    // What came of it before from elsewhere is its beginning at best; here all of it is at hand.
    file.set_len(0).map_err(|e| failed("emptied", &part, e))?;
    io::copy(&mut bytes.take(length), &mut file).map_err(|e| failed("written", &part, e))?;
    drop(file);
    settle(store, digest, now_ms)?;
    if is_safe(store, digest, now_ms)? { Ok(true) } else { Err(PhotoError::OtherBytes) }
}

/// How far a photograph has come. Finishes one whose last byte came just before a kill.
pub(crate) fn progress(store: &Store, digest: Digest, now_ms: i64) -> Result<Progress, PhotoError> {
    let photo = known(store, digest, now_ms)?;
    let offset = match settle(store, digest, now_ms) {
        Ok(offset) => offset,
        Err(PhotoError::OtherBytes) => 0,
        Err(other) => return Err(other),
    };
    let expires_ms = expires(&photo).filter(|_| offset < photo.length);
    Ok(Progress { offset, length: photo.length, expires_ms })
}

/// Whether a photograph is safe: its file, its folder and its row are on disk. An unknown one is not.
pub(crate) fn is_safe(store: &Store, digest: Digest, now_ms: i64) -> Result<bool, PhotoError> {
    match settle(store, digest, now_ms) {
        // One that was erased since by a person's will was safe, and is not wanted again.
        Ok(_) => Ok(known(store, digest, now_ms)?.safe
            && (store.folder.original(digest).is_file() || store.read(|db| customer::is_withheld(db, digest))?)),
        Err(PhotoError::Unknown | PhotoError::OtherBytes | PhotoError::Busy) => Ok(false),
        Err(other) => Err(other),
    }
}

/// A device takes back a photograph that has not come as a whole.
pub(crate) fn take_back(store: &Store, device: DeviceId, digest: Digest, now_ms: i64) -> Result<(), PhotoError> {
    store.keep_arrived(digest);
    let photo = known(store, digest, now_ms)?;
    if photo.device != device {
        return Err(PhotoError::AnotherDevice);
    }
    if photo.safe || store.folder.original(digest).is_file() {
        return Err(PhotoError::Finished);
    }
    forget(store, digest)
}

/// A piece that is coming in. It holds the part's lock.
#[derive(Debug)]
pub(crate) struct Incoming {
    digest: Digest,
    file: BlockFile,
    /// Where the piece began, and the hash of all before it.
    began: u64,
    before: Sha256,
    /// How far it is, and the hash of all up to there.
    offset: u64,
    hash: Sha256,
    length: u64,
    checksum: Option<Checksum>,
    expires_ms: Option<i64>,
}

/// What begins with a piece.
#[derive(Debug)]
pub(crate) enum Begun {
    /// The photograph is here as a whole, and the piece says that nothing is missing.
    Whole(Progress),
    /// It may come.
    Piece(Box<Incoming>),
}

/// Opens a photograph for the piece that begins at this offset. `bytes` is how many it says to have.
pub(crate) fn begin(
    store: &Store,
    digest: Digest,
    (sent, bytes): (u64, Option<u64>),
    checksum: Option<Checksum>,
    now_ms: i64,
) -> Result<Begun, PhotoError> {
    store.keep_arrived(digest);
    let photo = known(store, digest, now_ms)?;
    let length = photo.length;
    // A sender that did not hear of the end goes on from there, with nothing.
    let whole = |offset: u64| match bytes {
        _ if sent != offset || offset != length => Err(PhotoError::Offset { sent, offset }),
        Some(1..) => Err(PhotoError::Beyond),
        _ => Ok(Begun::Whole(Progress { offset, length, expires_ms: None })),
    };
    if photo.safe || store.folder.original(digest).is_file() {
        return whole(settle(store, digest, now_ms)?);
    }
    let file = lock(store.folder.open_part(digest)?)?;
    let offset = file_length(store, digest, &file)?;
    if offset >= photo.length {
        drop(file);
        return whole(settle(store, digest, now_ms).or_else(from_its_beginning)?);
    }
    if sent != offset {
        return Err(PhotoError::Offset { sent, offset });
    }
    if bytes.is_some_and(|bytes| bytes > photo.length - offset) {
        return Err(PhotoError::Beyond);
    }
    let hash = match store.hashed.take(digest, offset) {
        Some(hash) => hash,
        None => hash_of(store, digest)?,
    };
    let (began, before, expires_ms) = (offset, hash.clone(), expires(&photo));
    let file = BlockFile::after(file, offset);
    let incoming = Incoming { digest, file, began, before, offset, hash, length, checksum, expires_ms };
    Ok(Begun::Piece(Box::new(incoming)))
}

impl Incoming {
    /// Writes what comes next of the piece.
    pub(crate) fn take(&mut self, bytes: Bytes) -> Result<(), PhotoError> {
        let more = bytes.len() as u64;
        if more > self.length - self.offset {
            return Err(PhotoError::Beyond);
        }
        self.hash.update(&bytes);
        if let Some(checksum) = &mut self.checksum {
            checksum.update(&bytes);
        }
        self.offset += more;
        Ok(self.file.take(bytes).map_err(|e| failed("written", "parts".as_ref(), e))?)
    }

    /// Whether these are all bytes of the photograph and the right ones. Then [`Incoming::end`] waits for no disk.
    pub(crate) fn is_right(&self) -> bool {
        let found = || Digest::from_bytes(self.hash.clone().finalize().into());
        self.offset == self.length && self.checksum.is_none() && found() == self.digest
    }

    /// Puts what came onto the disk, or lines the photograph up for it where that was the last of its bytes. `whole` tells
    /// that all of the piece came: only then can its checksum be asked. What came of a broken one is kept, and the next
    /// attempt goes on from there.
    pub(crate) fn end(self, store: &Store, whole: bool, now_ms: i64) -> Result<Progress, PhotoError> {
        let Self { digest, file, began, before, offset, hash, length, checksum, expires_ms } = self;
        let (file, written) = file.into_file();
        if whole && checksum.is_some_and(|checksum| !checksum.holds()) {
            let part = store.folder.part(digest);
            file.set_len(began).map_err(|e| failed("cut back", &part, e))?;
            store.hashed.put(digest, began, before);
            return Err(PhotoError::OtherPiece);
        }
        if let Err(e) = written {
            // As much of it as fits is kept: the next attempt looks how much that is.
            let _ = file.sync_all();
            return Err(failed("written", &store.folder.part(digest), e).into());
        }
        if offset == length {
            check(store, digest, Digest::from_bytes(hash.finalize().into()), now_ms)?;
            store.line_up(Arrived { digest, part: file, now_ms });
            return Ok(Progress { offset, length, expires_ms: None });
        }
        file.sync_all().map_err(|e| failed("synced", &store.folder.part(digest), e))?;
        if began == 0 {
            store.folder.sync_parts()?;
        }
        store.hashed.put(digest, offset, hash);
        Ok(Progress { offset, length, expires_ms })
    }
}

/// Brings a photograph as far as its bytes allow, and says how many bytes are here.
fn settle(store: &Store, digest: Digest, now_ms: i64) -> Result<u64, PhotoError> {
    store.keep_arrived(digest);
    let photo = known(store, digest, now_ms)?;
    if photo.safe {
        return Ok(photo.length);
    }
    if store.folder.original(digest).is_file() {
        return adopt(store, digest, &photo, now_ms);
    }
    if !store.folder.part(digest).is_file() {
        return Ok(0);
    }
    let file = lock(store.folder.open_part(digest)?)?;
    let offset = file_length(store, digest, &file)?;
    if offset < photo.length {
        return Ok(offset);
    }
    let found = if offset == photo.length { hash_of(store, digest)?.finalize().into() } else { [0; 32] };
    check(store, digest, Digest::from_bytes(found), now_ms)?;
    store.folder.keep(digest, &file, now_ms)?;
    store.write(|db| photos::mark_safe(db, digest, now_ms))?;
    Ok(offset)
}

/// All bytes are here: are they the right ones? The part's lock is held.
fn check(store: &Store, digest: Digest, found: Digest, now_ms: i64) -> Result<(), PhotoError> {
    if found == digest {
        return Ok(());
    }
    store.folder.set_aside(digest, now_ms)?;
    Err(PhotoError::OtherBytes)
}

/// An original without its row: the office was killed between the two, or the machine lost its power. Then the name may
/// have outlived its bytes, so they are read once more, and synced once more.
fn adopt(store: &Store, digest: Digest, photo: &Photo, now_ms: i64) -> Result<u64, PhotoError> {
    let path = store.folder.original(digest);
    if Digest::from_bytes(hash_file(&path)?.finalize().into()) != digest {
        store.folder.set_original_aside(digest, now_ms)?;
        return Err(PhotoError::OtherBytes);
    }
    store.folder.sync_original(digest)?;
    store.write(|db| photos::mark_safe(db, digest, now_ms))?;
    Ok(photo.length)
}

/// What was announced; one that is overdue is given up.
fn known(store: &Store, digest: Digest, now_ms: i64) -> Result<Photo, PhotoError> {
    let photo = store.read(|db| photos::of(db, digest))?.ok_or(PhotoError::Unknown)?;
    if expires(&photo).is_some_and(|at| at <= now_ms) && !store.folder.original(digest).is_file() {
        forget(store, digest)?;
        return Err(PhotoError::Unknown);
    }
    Ok(photo)
}

fn expires(photo: &Photo) -> Option<i64> {
    if photo.safe { None } else { photo.announced_ms.checked_add(UNFINISHED_MS_MAX) }
}

/// Gives up some of those that are overdue.
fn sweep(store: &Store, now_ms: i64) -> Result<(), PhotoError> {
    for digest in store.read(|db| photos::unfinished(db, now_ms.saturating_sub(UNFINISHED_MS_MAX), SWEPT_MAX))? {
        match known(store, digest, now_ms) {
            // One whose original lies there is finished when it is asked for.
            Ok(_) | Err(PhotoError::Unknown | PhotoError::Busy) => {}
            Err(other) => return Err(other),
        }
    }
    Ok(())
}

/// Forgets a photograph that has not come as a whole: its row and its part.
fn forget(store: &Store, digest: Digest) -> Result<(), PhotoError> {
    let lock = if store.folder.part(digest).is_file() { Some(lock(store.folder.open_part(digest)?)?) } else { None };
    store.note(|db| photos::forget(db, digest))?;
    store.folder.remove_part(digest)?;
    drop(lock);
    Ok(())
}

fn from_its_beginning(error: PhotoError) -> Result<u64, PhotoError> {
    if matches!(error, PhotoError::OtherBytes) { Ok(0) } else { Err(error) }
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

/// The hash of what the part holds.
fn hash_of(store: &Store, digest: Digest) -> Result<Sha256, PhotoError> {
    hash_file(&store.folder.part(digest))
}

fn hash_file(path: &std::path::Path) -> Result<Sha256, PhotoError> {
    let unread = |e| failed("read", path, e);
    let mut file = File::open(path).map_err(unread)?;
    let mut hash = Sha256::new();
    if file.metadata().map_err(unread)?.len() == 0 {
        return Ok(hash);
    }
    let mut buffer = vec![0; 256 * 1024];
    loop {
        let read = file.read(&mut buffer).map_err(unread)?;
        if read == 0 {
            return Ok(hash);
        }
        hash.update(buffer.get(..read).unwrap_or_default());
    }
}
