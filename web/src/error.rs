//! Why the browser shell could not start: what happened, to which thing, and what to do.

use std::{io, path::PathBuf};

/// Why [`crate::start`] did not start.
#[derive(Debug, thiserror::Error)]
pub enum FieldError {
    /// The folder cannot be made, read or written.
    #[error("The folder {folder} cannot be used ({why}). Choose another folder, or allow this user to write there.")]
    Folder {
        /// Which folder.
        folder: PathBuf,
        /// What the system said.
        why: io::Error,
    },
    /// The disk is full.
    #[error("The disk of {folder} is full. Make room and start again. Everything saved before is safe.")]
    DiskFull {
        /// A folder on that disk.
        folder: PathBuf,
    },
    /// Another process works on the folder.
    #[error(
        "The folder {folder} is already open in another process. Use the page that it opened, or end that process first."
    )]
    AlreadyOpen {
        /// Which folder.
        folder: PathBuf,
    },
    /// The port is taken.
    #[error("Port {port} on 127.0.0.1 is taken by another program. Choose another port, or 0 for any free one.")]
    PortTaken {
        /// Which port.
        port: u16,
    },
    /// The loopback address cannot be listened on.
    #[error("The address 127.0.0.1:{port} cannot be used ({why}). Choose another port, or 0 for any free one.")]
    Address {
        /// Which port.
        port: u16,
        /// What the system said.
        why: io::Error,
    },
    /// The device's key is there and cannot be read.
    #[error(
        "The key {file} cannot be read ({why}). Put its backup in its place. Without it, sealed records of this device stay valid, but new ones need a new key: move the file away and start again."
    )]
    Key {
        /// Which file.
        file: PathBuf,
        /// What is wrong with it.
        why: String,
    },
    /// The system gives no random bytes.
    #[error("The system gives no random bytes ({0}). Start again; if it happens again, this system cannot be used.")]
    Random(String),
    /// The address of the office is not one.
    #[error("The office's address {0} is not of the kind https://office.example. Correct it and start again.")]
    Office(String),
    /// The core could not be opened.
    #[error("The visits in {folder} cannot be opened: {why}")]
    Core {
        /// Which folder.
        folder: PathBuf,
        /// The core's words.
        why: String,
    },
    /// Serving ended with an error.
    #[error("The page can no longer be served ({0}). Start again. Everything saved before is safe.")]
    Ended(io::Error),
}

impl FieldError {
    /// A failure of the file system in `folder`.
    pub(crate) fn of_folder(folder: &std::path::Path, why: io::Error) -> Self {
        if is_full(&why) {
            Self::DiskFull { folder: folder.into() }
        } else {
            Self::Folder { folder: folder.into(), why }
        }
    }
}

/// Whether the disk or the user's share of it is full.
pub(crate) fn is_full(why: &io::Error) -> bool {
    matches!(why.kind(), io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded)
}
