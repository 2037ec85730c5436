//! Small files that only this user may read, written whole or not at all.

use std::{
    fs::{self, File, OpenOptions},
    io::{self, Write},
    path::Path,
};

/// Writes `bytes` under `path`, readable by this user only (mode 0600). After a power cut there is the whole file or
/// none. A file that is there is replaced.
///
/// # Errors
/// What the file system says; nothing is left under `path` that was not there before.
pub(crate) fn write(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let part = path.with_extension("part");
    let written = write_part(&part, bytes).and_then(|()| fs::rename(&part, path));
    if written.is_err() {
        // The first error is the one to tell; a part that cannot be removed is overwritten next time.
        let _ = fs::remove_file(&part);
    }
    written?;
    sync_folder_of(path)
}

fn write_part(part: &Path, bytes: &[u8]) -> io::Result<()> {
    let _ = fs::remove_file(part);
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let mut file = options.open(part)?;
    file.write_all(bytes)?;
    file.sync_all()
}

/// Makes a rename in the folder of `path` last through a power cut, where the system can do that.
pub(crate) fn sync_folder_of(path: &Path) -> io::Result<()> {
    match path.parent() {
        #[cfg(unix)]
        Some(folder) => File::open(folder)?.sync_all(),
        _ => Ok(()),
    }
}

/// Takes the right to read from everybody but this user. Returns whether anybody else had it.
///
/// # Errors
/// What the file system says.
#[cfg(unix)]
pub(crate) fn make_private(path: &Path) -> io::Result<bool> {
    use std::os::unix::fs::PermissionsExt;
    let open = fs::metadata(path)?.permissions().mode() & 0o077 != 0;
    if open {
        fs::set_permissions(path, fs::Permissions::from_mode(0o600))?;
    }
    Ok(open)
}

/// Elsewhere the folder's own rights decide.
#[cfg(not(unix))]
pub(crate) fn make_private(_path: &Path) -> io::Result<bool> {
    Ok(false)
}
