//! One process a folder.

use std::{
    fs::{File, OpenOptions, TryLockError},
    path::Path,
};

use crate::error::FieldError;

/// Holds the folder until it is dropped or the process ends, however it ends.
#[derive(Debug)]
pub(crate) struct FolderLock {
    _file: File,
}

impl FolderLock {
    /// Takes the folder, and makes it where it is not there.
    ///
    /// # Errors
    /// The folder cannot be used, or another process holds it.
    pub(crate) fn take(folder: &Path) -> Result<Self, FieldError> {
        let failed = |why| FieldError::of_folder(folder, why);
        std::fs::create_dir_all(folder).map_err(failed)?;
        let file = OpenOptions::new()
            .write(true)
            .create(true)
            .truncate(false)
            .open(folder.join("field.lock"))
            .map_err(failed)?;
        match file.try_lock() {
            Ok(()) => Ok(Self { _file: file }),
            Err(TryLockError::WouldBlock) => Err(FieldError::AlreadyOpen { folder: folder.into() }),
            Err(TryLockError::Error(why)) => Err(failed(why)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_second_process_on_the_folder_is_refused_until_the_first_ends() {
        let folder = tempfile::tempdir().unwrap();
        let first = FolderLock::take(folder.path()).unwrap();
        let refused = FolderLock::take(folder.path()).unwrap_err();
        assert!(refused.to_string().contains("already open in another process"), "{refused}");
        drop(first);
        FolderLock::take(folder.path()).unwrap();
    }

    #[test]
    fn a_folder_that_is_a_file_says_what_to_do() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("file");
        std::fs::write(&file, "").unwrap();
        assert!(FolderLock::take(&file).unwrap_err().to_string().contains("Choose another folder"));
    }
}
