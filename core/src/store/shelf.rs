//! The shelf: where photographs' bytes lie. A folder here; a browser's own file store elsewhere.

use std::fs::{self, File};
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};

use crate::id::Digest;

/// Where photographs' bytes lie. What is kept is on disk, synced, before the call returns.
pub trait Shelf: Send + Sync {
    /// How long an incoming file is.
    ///
    /// # Errors
    /// Where it is not there.
    fn incoming_bytes(&self, name: &str) -> Result<u64, ShelfError>;
    /// Hands on an incoming file's bytes, part by part as they are read.
    ///
    /// # Errors
    /// Where it cannot be read.
    fn read_incoming(&self, name: &str, take: &mut dyn FnMut(&[u8])) -> Result<(), ShelfError>;
    /// The names of all incoming files.
    ///
    /// # Errors
    /// Where the place cannot be read.
    fn incoming(&self) -> Result<Vec<String>, ShelfError>;
    /// An incoming file is in the log: it is not needed any more.
    ///
    /// # Errors
    /// Where it cannot be removed.
    fn clear_incoming(&self, name: &str) -> Result<(), ShelfError>;
    /// An incoming file was refused: it is moved aside, never deleted.
    ///
    /// # Errors
    /// Where it cannot be moved.
    fn set_aside(&self, name: &str) -> Result<(), ShelfError>;
    /// Writes an original to disk; it is on the shelf under its digest once it is kept.
    ///
    /// # Errors
    /// Where it cannot be written.
    fn write_original(&self, digest: &Digest, bytes: &[u8]) -> Result<Box<dyn Written>, ShelfError>;
    /// Keeps a preview under its original's digest.
    ///
    /// # Errors
    /// Where it cannot be written.
    fn keep_preview(&self, digest: &Digest, bytes: &[u8]) -> Result<(), ShelfError>;
}

/// A file that is on disk and not on the shelf yet. Dropped, it is taken away again.
pub trait Written: Send {
    /// Puts it on the shelf.
    ///
    /// # Errors
    /// Where it cannot be moved.
    fn keep(self: Box<Self>) -> Result<(), ShelfError>;
}

/// Why the shelf failed.
#[derive(Debug, thiserror::Error)]
pub enum ShelfError {
    /// The disk is full.
    #[error("there is no room left for '{name}'; free some space and try again, nothing was lost")]
    Full {
        /// Of what.
        name: String,
    },
    /// Anything else that the file system says.
    #[error("'{name}' could not be {what}: {detail}")]
    Io {
        /// Of what.
        name: String,
        /// Read, written, moved.
        what: &'static str,
        /// Why.
        detail: String,
    },
    /// A name that would lead out of the shelf.
    #[error("'{0}' is not the name of an incoming photograph")]
    Name(String),
}

impl ShelfError {
    fn of(name: &str, what: &'static str) -> impl FnOnce(io::Error) -> ShelfError {
        move |error| match error.kind() {
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => ShelfError::Full { name: name.to_owned() },
            _ => ShelfError::Io { name: name.to_owned(), what, detail: error.to_string() },
        }
    }
}

/// Files are read in parts of this many bytes.
const PART_BYTES: usize = 256 * 1024;

/// Numbers the files that are being written.
static PARTS: AtomicU64 = AtomicU64::new(0);

/// A shelf that is a folder.
#[derive(Clone, Debug)]
pub struct FolderShelf {
    folder: PathBuf,
}

impl FolderShelf {
    /// The shelf in a folder; makes the folders that it needs.
    ///
    /// # Errors
    /// Where they cannot be made.
    pub fn new(folder: &Path) -> Result<FolderShelf, ShelfError> {
        for part in ["incoming", "originals", "previews", "aside"] {
            fs::create_dir_all(folder.join(part)).map_err(ShelfError::of(part, "made"))?;
        }
        for part in ["originals", "previews"] {
            // Halves that a kill left: their wholes are written again from what still lies in `incoming`.
            let entries = fs::read_dir(folder.join(part)).map_err(ShelfError::of(part, "read"))?;
            for path in entries.filter_map(Result::ok).map(|entry| entry.path()) {
                if path.extension().is_some_and(|kind| kind.to_string_lossy().starts_with("part-")) {
                    fs::remove_file(&path).map_err(ShelfError::of(part, "tidied"))?;
                }
            }
        }
        Ok(FolderShelf { folder: folder.to_owned() })
    }

    /// Where a shell puts the bytes of an effect's photograph.
    ///
    /// # Errors
    /// Where the name would lead elsewhere.
    pub fn incoming_path(&self, name: &str) -> Result<PathBuf, ShelfError> {
        let plain = !name.is_empty()
            && name.len() <= 120
            && name.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_'));
        if plain { Ok(self.folder.join("incoming").join(name)) } else { Err(ShelfError::Name(name.to_owned())) }
    }

    /// Where an original lies.
    #[must_use]
    pub fn original_path(&self, digest: &Digest) -> PathBuf {
        self.folder.join("originals").join(digest.as_str())
    }

    /// Where a preview lies.
    #[must_use]
    pub fn preview_path(&self, digest: &Digest) -> PathBuf {
        self.folder.join("previews").join(format!("{digest}.jpg"))
    }

    fn write(path: PathBuf, bytes: &[u8]) -> Result<Part, ShelfError> {
        if fs::metadata(&path).is_ok_and(|known| known.len() == bytes.len() as u64) {
            return Ok(Part { part: None, path });
        }
        // A name of its own: two calls may write the same bytes at once, and neither takes the other's half away.
        let part = path.with_extension(format!("part-{}", PARTS.fetch_add(1, Ordering::Relaxed)));
        // Made before anything is written: half a file is worth nothing, and the room may be needed.
        let written = Part { part: Some(part.clone()), path };
        let write = || {
            let mut file = File::create(&part)?;
            file.write_all(bytes)?;
            file.sync_all()
        };
        write().map_err(ShelfError::of(&written.name(), "written"))?;
        Ok(written)
    }
}

/// A file beside the place where it belongs; none where its whole is there already.
struct Part {
    part: Option<PathBuf>,
    path: PathBuf,
}

impl Part {
    fn name(&self) -> String {
        self.path.file_name().unwrap_or_default().to_string_lossy().into_owned()
    }
}

impl Written for Part {
    fn keep(mut self: Box<Self>) -> Result<(), ShelfError> {
        let Some(part) = &self.part else { return Ok(()) };
        fs::rename(part, &self.path)
            .and_then(|()| sync_folder(&self.path))
            .map_err(ShelfError::of(&self.name(), "written"))?;
        self.part = None;
        Ok(())
    }
}

impl Drop for Part {
    fn drop(&mut self) {
        if let Some(part) = &self.part {
            let _ = fs::remove_file(part);
        }
    }
}

fn sync_folder(path: &Path) -> io::Result<()> {
    match path.parent() {
        Some(folder) => File::open(folder)?.sync_all(),
        None => Ok(()),
    }
}

impl Shelf for FolderShelf {
    fn incoming_bytes(&self, name: &str) -> Result<u64, ShelfError> {
        let path = self.incoming_path(name)?;
        fs::metadata(path).map(|known| known.len()).map_err(ShelfError::of(name, "found"))
    }

    fn read_incoming(&self, name: &str, take: &mut dyn FnMut(&[u8])) -> Result<(), ShelfError> {
        let path = self.incoming_path(name)?;
        let mut read = || -> io::Result<()> {
            let mut file = File::open(&path)?;
            let mut part = vec![0; PART_BYTES];
            loop {
                match file.read(&mut part) {
                    Ok(0) => return Ok(()),
                    Ok(count) => take(part.get(..count).unwrap_or_default()),
                    Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                    Err(error) => return Err(error),
                }
            }
        };
        read().map_err(ShelfError::of(name, "read"))
    }

    fn incoming(&self) -> Result<Vec<String>, ShelfError> {
        let mut names: Vec<String> = fs::read_dir(self.folder.join("incoming"))
            .map_err(ShelfError::of("incoming", "read"))?
            .filter_map(Result::ok)
            .map(|entry| entry.file_name().to_string_lossy().into_owned())
            .filter(|name| self.incoming_path(name).is_ok())
            .collect();
        names.sort();
        Ok(names)
    }

    fn clear_incoming(&self, name: &str) -> Result<(), ShelfError> {
        match fs::remove_file(self.incoming_path(name)?) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => Err(ShelfError::of(name, "removed")(error)),
            _ => Ok(()),
        }
    }

    fn set_aside(&self, name: &str) -> Result<(), ShelfError> {
        let from = self.incoming_path(name)?;
        let aside = self.folder.join("aside");
        // One request may be answered with several bad files: none takes another's place.
        let free = (1_u32..)
            .map(|n| if n == 1 { aside.join(name) } else { aside.join(format!("{name}-{n}")) })
            .find(|path| !path.exists());
        let to = free.unwrap_or_else(|| aside.join(name));
        fs::rename(from, to).map_err(ShelfError::of(name, "moved"))
    }

    fn write_original(&self, digest: &Digest, bytes: &[u8]) -> Result<Box<dyn Written>, ShelfError> {
        Ok(Box::new(FolderShelf::write(self.original_path(digest), bytes)?))
    }

    fn keep_preview(&self, digest: &Digest, bytes: &[u8]) -> Result<(), ShelfError> {
        Box::new(FolderShelf::write(self.preview_path(digest), bytes)?).keep()
    }
}
