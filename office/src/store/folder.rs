//! The folder of photographs: originals by digest, parts that are still coming, and what was set aside.

use std::fs::{self, File, OpenOptions};
use std::io;
use std::path::{Path, PathBuf};

use super::StoreError;
use crate::ids::Digest;

/// `office.db`, `photos/ab/abcd…`, `parts/abcd….part`, `previews/abcd….jpg`, `aside/`.
pub(crate) struct Folder {
    root: PathBuf,
}

impl Folder {
    pub(super) fn open(root: &Path) -> Result<Self, StoreError> {
        let folder = Self { root: root.to_owned() };
        if !root.exists() {
            make(root)?;
            keep_private(root)?;
        }
        for name in ["photos", "parts", "previews", "aside"] {
            make(&root.join(name))?;
        }
        sync(root)?;
        Ok(folder)
    }

    pub(super) fn database(&self) -> PathBuf {
        self.root.join("office.db")
    }

    /// The office's key.
    pub(super) fn key(&self) -> PathBuf {
        self.root.join("office-key.pem")
    }

    /// Where the original lies, or will lie.
    pub(crate) fn original(&self, digest: Digest) -> PathBuf {
        let name = digest.to_string();
        let shelf: String = name.chars().take(2).collect();
        self.root.join("photos").join(shelf).join(name)
    }

    /// Where the part lies that is still coming.
    pub(crate) fn part(&self, digest: Digest) -> PathBuf {
        self.root.join("parts").join(format!("{digest}.part"))
    }

    /// Where the preview lies once it is made.
    pub(crate) fn preview(&self, digest: Digest) -> PathBuf {
        self.root.join("previews").join(format!("{digest}.jpg"))
    }

    /// Where the small picture lies that a device sent ahead.
    pub(crate) fn sent_ahead(&self, digest: Digest) -> PathBuf {
        self.root.join("previews").join(format!("{digest}.ahead.jpg"))
    }

    /// Opens a part for appending; makes it where there is none. Its name is on disk only after [`Folder::sync_parts`].
    pub(crate) fn open_part(&self, digest: Digest) -> Result<File, StoreError> {
        let path = self.part(digest);
        let file = OpenOptions::new().read(true).append(true).create(true).open(&path);
        file.map_err(|e| failed("opened", &path, e))
    }

    /// Makes the names of parts last.
    pub(crate) fn sync_parts(&self) -> Result<(), StoreError> {
        sync(&self.root.join("parts"))
    }

    /// Removes a part that is given up; one that is gone already is no trouble.
    pub(crate) fn remove_part(&self, digest: Digest) -> Result<(), StoreError> {
        let path = self.part(digest);
        match fs::remove_file(&path) {
            Err(e) if e.kind() != io::ErrorKind::NotFound => Err(failed("removed", &path, e)),
            _ => Ok(()),
        }
    }

    /// Takes a whole part, whose bytes were checked, as the original: renamed, file synced, folder synced. Only then may a
    /// row call it safe. The file is synced under its new name, since one wait for the disk often settles both then; a
    /// name whose bytes did not reach the disk before a power failure has no row, and is checked anew before it gets one.
    /// Where the disk refuses the bytes the file is set aside and sent anew: the system forgets what it could not write, and
    /// would call a second try a success.
    pub(crate) fn keep(&self, digest: Digest, part: &File, now_ms: i64) -> Result<(), StoreError> {
        let (from, to) = (self.part(digest), self.original(digest));
        let Some(shelf) = to.parent() else { return Ok(()) };
        if !shelf.is_dir() {
            make(shelf)?;
            sync(&self.root.join("photos"))?;
        }
        fs::rename(&from, &to).map_err(|e| failed("moved", &from, e))?;
        if let Err(error) = part.sync_all() {
            self.set_original_aside(digest, now_ms)?;
            return Err(failed("synced", &to, error));
        }
        sync(shelf)
    }

    /// Puts an original away that has no row and is not what its name says, as [`Folder::set_aside`] does a part.
    pub(crate) fn set_original_aside(&self, digest: Digest, now_ms: i64) -> Result<(), StoreError> {
        let (from, to) = (self.original(digest), self.root.join("aside").join(format!("{digest}.{now_ms}")));
        fs::rename(&from, &to).map_err(|e| failed("set aside", &from, e))?;
        from.parent().map_or(Ok(()), sync)?;
        sync(&self.root.join("aside"))
    }

    /// Takes an original away for good. One that is gone already is no error.
    pub(crate) fn erase(&self, digest: Digest) -> Result<(), StoreError> {
        let path = self.original(digest);
        match fs::remove_file(&path) {
            Err(e) if e.kind() != io::ErrorKind::NotFound => Err(failed("erased", &path, e)),
            _ => path.parent().filter(|shelf| shelf.is_dir()).map_or(Ok(()), sync),
        }
    }

    /// Makes a renaming last that a kill may have cut short.
    pub(crate) fn sync_original(&self, digest: Digest) -> Result<(), StoreError> {
        let path = self.original(digest);
        File::open(&path).and_then(|file| file.sync_all()).map_err(|e| failed("synced", &path, e))?;
        path.parent().map_or(Ok(()), sync)
    }

    /// Puts a part away whose bytes are not what was announced. It may still be looked at; nothing is deleted.
    pub(crate) fn set_aside(&self, digest: Digest, now_ms: i64) -> Result<(), StoreError> {
        let (from, to) = (self.part(digest), self.root.join("aside").join(format!("{digest}.{now_ms}")));
        fs::rename(&from, &to).map_err(|e| failed("set aside", &from, e))?;
        sync(&self.root.join("aside"))?;
        sync(&self.root.join("parts"))
    }

    /// Writes a preview so that a reader sees all of it or nothing.
    pub(crate) fn write_preview(path: &Path, jpeg: &[u8]) -> Result<(), StoreError> {
        let half = path.with_extension(format!("{}.half", std::process::id()));
        fs::write(&half, jpeg).map_err(|e| failed("written", &half, e))?;
        fs::rename(&half, path).map_err(|e| failed("moved", &half, e))
    }
}

/// Says what could not be done to which file.
pub(crate) fn failed(doing: &'static str, path: &Path, source: io::Error) -> StoreError {
    StoreError::File { doing, path: path.to_owned(), source }
}

fn make(path: &Path) -> Result<(), StoreError> {
    fs::create_dir_all(path).map_err(|e| failed("made", path, e))
}

/// Owners' names and summaries are nobody's business on a machine with several users.
#[cfg(unix)]
fn keep_private(path: &Path) -> Result<(), StoreError> {
    use std::os::unix::fs::PermissionsExt as _;
    fs::set_permissions(path, fs::Permissions::from_mode(0o700)).map_err(|e| failed("made private", path, e))
}

#[cfg(not(unix))]
fn keep_private(_: &Path) -> Result<(), StoreError> {
    Ok(())
}

/// A new name in a folder is on disk only after the folder itself was synced.
fn sync(folder: &Path) -> Result<(), StoreError> {
    File::open(folder).and_then(|folder| folder.sync_all()).map_err(|e| failed("synced", folder, e))
}
