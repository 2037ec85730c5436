//! `coilside verify`, `export` and `import`: record files on a disk.

use std::fs::{self, File, OpenOptions};
use std::io::{self, BufReader, BufWriter, Write};
use std::path::{Path, PathBuf};

use coilside_core::record::file::fingerprint;
use coilside_core::record::file::told::{Weight, lines};
use coilside_core::record::file::verify::{Report, verify};
use coilside_core::words::{Words, WordsError};

use crate::ids::{NotAName, VisitId, hex, unhex};
use crate::{ExportError, ImportError, Imported, Office};

/// A record file was not checked, written or taken over.
#[derive(Debug, thiserror::Error)]
pub enum RecordFileError {
    /// The file could not be read: nothing is known about the record.
    #[error("{} could not be read: {source}", path.display())]
    Unread {
        /// Which.
        path: PathBuf,
        /// The system's words.
        source: io::Error,
    },
    /// Something does not hold; the report says what.
    #[error("the record does not hold; see above")]
    Fails,
    /// What was given as a key is none.
    #[error(
        "'{0}' is no key of an office: give the 130 hexadecimal digits that 'coilside office --key' shows, or a file with them"
    )]
    Key(String),
    /// The name of a visit is none.
    #[error("'{0}': {1}")]
    Visit(String, NotAName),
    /// The file could not be written.
    #[error("{} could not be written: {source}", path.display())]
    Unwritten {
        /// Which.
        path: PathBuf,
        /// The system's words.
        source: io::Error,
    },
    /// The record could not be made.
    #[error(transparent)]
    Export(#[from] ExportError),
    /// The record was not taken over.
    #[error(transparent)]
    Import(#[from] ImportError),
    /// The core's own words.
    #[error(transparent)]
    Words(#[from] WordsError),
}

impl RecordFileError {
    /// What the program ends with: 1 where a record does not hold or was refused, 2 where nothing could be checked or done.
    #[must_use]
    pub fn exit_code(&self) -> u8 {
        let refused = matches!(
            self,
            RecordFileError::Fails
                | RecordFileError::Import(ImportError::Fails(_) | ImportError::NoAnchor(_) | ImportError::Otherwise(_))
        );
        if refused { 1 } else { 2 }
    }
}

/// Keys of offices as a person gives them: hexadecimal digits, or a file that holds them.
///
/// # Errors
/// Where one is no key.
pub fn keys(given: &[String]) -> Result<Vec<Vec<u8>>, RecordFileError> {
    let one = |text: &String| {
        let inside = fs::read_to_string(text).unwrap_or_else(|_| text.clone());
        let key = unhex(inside.trim()).filter(|key| coilside_core::record::jws::jwk(key).is_some());
        key.ok_or_else(|| RecordFileError::Key(text.clone()))
    };
    given.iter().map(one).collect()
}

/// Verifies a record file and tells of it in words.
///
/// # Errors
/// Where it does not hold or cannot be read.
pub fn check(path: &Path, trusted: &[Vec<u8>], language: &str, out: &mut dyn Write) -> Result<(), RecordFileError> {
    let unread = |source| RecordFileError::Unread { path: path.to_owned(), source };
    let report = verify(&mut BufReader::new(File::open(path).map_err(unread)?), trusted).map_err(unread)?;
    tell(&report, language, out)?;
    if report.holds() { Ok(()) } else { Err(RecordFileError::Fails) }
}

fn tell(report: &Report, language: &str, out: &mut dyn Write) -> Result<(), RecordFileError> {
    for (weight, line) in lines(report, &Words::new(language, None)?) {
        let sign = match weight {
            Weight::Holds => "+",
            Weight::Known => " ",
            Weight::Fails => "!",
        };
        // A reader that closes early (a pipe into `head`) does not change what the record is.
        let _ = writeln!(out, "{sign} {line}");
    }
    Ok(())
}

/// Writes a visit's record file; a file that is there is replaced once the new one is whole.
///
/// # Errors
/// Where there is no such sealed visit, or it cannot be written.
pub fn export(office: &Office, visit: &str, path: &Path) -> Result<(), RecordFileError> {
    let id = VisitId::parse(visit).map_err(|why| RecordFileError::Visit(visit.to_owned(), why))?;
    let unwritten = |source| RecordFileError::Unwritten { path: path.to_owned(), source };
    let half = path.with_extension("half");
    let mut options = OpenOptions::new();
    options.write(true).create(true).truncate(true);
    // Photographs may tell where somebody lives.
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let mut file = BufWriter::new(options.open(&half).map_err(unwritten)?);
    let written = office.export_record(&id, &mut file).map_err(RecordFileError::from).and_then(|()| {
        file.flush().map_err(unwritten)?;
        file.get_ref().sync_all().map_err(unwritten)?;
        fs::rename(&half, path).map_err(unwritten)
    });
    if written.is_err() {
        let _ = fs::remove_file(&half);
    }
    written
}

/// Takes a record file over, and tells why not where it is refused.
///
/// # Errors
/// Where it is refused or cannot be read.
pub fn import(
    office: &Office,
    path: &Path,
    trusted: &[Vec<u8>],
    self_consistent: bool,
    language: &str,
    out: &mut dyn Write,
) -> Result<Imported, RecordFileError> {
    let unread = |source| RecordFileError::Unread { path: path.to_owned(), source };
    let mut file = BufReader::new(File::open(path).map_err(unread)?);
    match office.import_record(&mut file, trusted, self_consistent) {
        Err(ImportError::Fails(report)) => {
            tell(&report, language, out)?;
            Err(ImportError::Fails(report).into())
        }
        other => Ok(other?),
    }
}

/// The office's key as it is told to those who verify: digits, and a short form to compare by telephone.
#[must_use]
pub fn key_lines(office: &Office) -> String {
    let key = office.public_key();
    format!("{}\nfingerprint: {}", hex(&key), fingerprint(&key))
}
