//! Writes a record file. The same contents give the same bytes.

use std::collections::BTreeMap;
use std::io::{self, Read, Write};

use sha2::{Digest as _, Sha256};

use super::document::{Document, Personal, canonical};
use super::verify::{self, Fault};
use super::voucher::{ENCLOSED, Enclosed};
use super::zip::{ENTRIES_MAX, Entry, list, put};
use super::{
    DEVICE_KEY, OFFICE, PERSONAL, README, RECORD, SUMS, WORDS, customer_file, office_key, pack_file, photo_file,
    readme, sums,
};
use crate::id::Digest;
use crate::record::jws::{self, JwsError, jwk, unhex};
use crate::visit::event::{Body, ChainError, Event, hex, sha256};
use crate::words::WordsError;

/// What goes into a record file, but for the photographs.
pub struct Contents<'a> {
    /// Events, seals, offices' words.
    pub document: &'a Document,
    /// The packs that the visit's runs pinned, by digest; others are left out.
    pub packs: &'a BTreeMap<Digest, Vec<u8>>,
    /// The owner's and site's data, where they are known and may be given on.
    pub personal: Option<&'a Personal>,
    /// Files with the customer's name and signature, by digest. One that an event names and that is not here is withheld.
    pub customer: &'a BTreeMap<Digest, Vec<u8>>,
    /// The office that writes the file: its key (SEC1), which must be among the document's offices, and how it signs. None
    /// for a device.
    pub office: Option<Signs<'a>>,
}

/// A public key and the way to sign with its other half: from the signing input to the signature in base64.
pub type Signs<'a> = (&'a [u8], &'a dyn Fn(&str) -> String);

/// Where the originals of photographs are. Each is read twice: once for its checksums, once to be copied.
pub trait Originals {
    /// The original of that digest.
    ///
    /// # Errors
    /// Where it is not there or cannot be read.
    fn original(&self, digest: &Digest) -> io::Result<Box<dyn Read + '_>>;
}

/// Why no record file was written.
#[derive(Debug, thiserror::Error)]
pub enum WriteError {
    /// The visit's events or seals do not hold.
    #[error("the visit does not hold by itself ({} of event or seal {:?}); no record is made of it", .0.rule, .0.values)]
    Broken(Fault),
    /// A pack is not there.
    #[error("the procedure of the visit (pack {0}) is not here; a record needs its bytes")]
    Pack(Digest),
    /// A photograph is not there, or not what it was.
    #[error("photograph {digest} is not here: {why}; a record needs all of them")]
    Photograph {
        /// Which.
        digest: Digest,
        /// Why.
        why: String,
    },
    /// A file with the customer's name and signature is not what it was.
    #[error("the customer's name and signature ({0}) are not what they were; a record is not made of them")]
    Customer(Digest),
    /// The office's signature does not hold.
    #[error("the office's signature over the record failed: {0}")]
    Sign(#[from] JwsError),
    /// Something has no canonical form.
    #[error(transparent)]
    Canonical(#[from] ChainError),
    /// Words of the core are missing.
    #[error(transparent)]
    Words(#[from] WordsError),
    /// More than a ZIP of this form can hold.
    #[error("the record is longer than 4 GB or has more than {ENTRIES_MAX} files; it cannot be put into one file")]
    TooLong,
    /// The file cannot be written.
    #[error("the record could not be written: {0}")]
    Io(#[from] io::Error),
}

enum Source {
    Bytes(Vec<u8>),
    Photograph(Digest),
}

struct File {
    source: Source,
    crc: u32,
    length: u32,
    digest: Digest,
}

/// Writes the record file of a sealed visit.
///
/// # Errors
/// Where the visit does not hold by itself, something that it names is not there, or it cannot be written. Then what was
/// written so far is no record.
pub fn write(contents: &Contents<'_>, originals: &dyn Originals, out: &mut dyn Write) -> Result<(), WriteError> {
    if let Some(fault) = verify::of_document(contents.document).into_iter().next() {
        return Err(WriteError::Broken(fault));
    }
    let mut files: BTreeMap<String, File> = BTreeMap::new();
    for (name, bytes) in small(contents)? {
        files.insert(name, of_bytes(bytes)?);
    }
    for (digest, media) in photographs(contents.document) {
        files.insert(photo_file(&digest, &media), of_photograph(digest, originals)?);
    }
    let sums = sums::sums(&files.iter().map(|(name, file)| (name.clone(), file.digest.clone())).collect());
    if let Some((key, sign)) = contents.office {
        let said = Enclosed {
            format: super::voucher::FORMAT,
            visit: contents.document.visit.to_string(),
            sums: sha256(sums.as_bytes()).0,
            office_key: hex(key).0,
        };
        let input = jws::signing_input(ENCLOSED, &said)?;
        files.insert(OFFICE.to_owned(), of_bytes(jws::close(&input, &sign(&input), key)?.into_bytes())?);
    }
    files.insert(SUMS.to_owned(), of_bytes(sums.into_bytes())?);
    put_all(files, originals, out)
}

fn put_all(files: BTreeMap<String, File>, originals: &dyn Originals, out: &mut dyn Write) -> Result<(), WriteError> {
    if files.len() > ENTRIES_MAX {
        return Err(WriteError::TooLong);
    }
    let entry = |(name, file): (&String, &File)| Entry { name: name.clone(), crc: file.crc, length: file.length };
    let entries: Vec<Entry> = files.iter().map(entry).collect();
    // Before the first byte: a list that cannot be told needs no files before it.
    let parts = list(&entries).ok_or(WriteError::TooLong)?;
    for (entry, file) in entries.iter().zip(files.values()) {
        match &file.source {
            Source::Bytes(bytes) => put(entry, &mut bytes.as_slice(), out)?,
            Source::Photograph(digest) => {
                let mut original = original(digest, originals)?;
                put(entry, &mut original, out)?;
            }
        }
    }
    for (_, part) in parts {
        out.write_all(&part)?;
    }
    Ok(())
}

/// Every file that is no photograph, by name, but for the sums and the office's word over them.
fn small(contents: &Contents<'_>) -> Result<Vec<(String, Vec<u8>)>, WriteError> {
    let mut files =
        vec![(README.to_owned(), readme::text()?.into_bytes()), (RECORD.to_owned(), canonical(contents.document)?)];
    files.extend(WORDS.map(|(name, text)| (name.to_owned(), text.as_bytes().to_vec())));
    if let Some(personal) = contents.personal {
        files.push((PERSONAL.to_owned(), canonical(personal)?));
    }
    for digest in bodies(contents.document).filter_map(shown) {
        let Some(bytes) = contents.customer.get(&digest) else { continue };
        if sha256(bytes) != digest {
            return Err(WriteError::Customer(digest));
        }
        files.push((customer_file(&digest), bytes.clone()));
    }
    let offices = contents.document.offices.iter().enumerate().map(|(at, office)| (office_key(at + 1), &office.key));
    let device = bodies(contents.document).filter_map(|body| match body {
        Body::VisitOpened { device_key, .. } | Body::DeviceChanged { device_key } => Some(device_key),
        _ => None,
    });
    let device = device.last();
    let device = device.unwrap_or_default();
    for (name, key) in std::iter::once((DEVICE_KEY.to_owned(), &device)).chain(offices) {
        let key = unhex(key).and_then(|key| jwk(&key)).ok_or(JwsError::Unreadable("a key is no P-256 point"))?;
        files.push((name, key.into_bytes()));
    }
    for digest in bodies(contents.document).filter_map(|body| match body {
        Body::RunStarted { pack_digest, .. } => Some(pack_digest),
        _ => None,
    }) {
        let bytes = contents.packs.get(&digest).ok_or_else(|| WriteError::Pack(digest.clone()))?;
        files.push((pack_file(&digest), bytes.clone()));
    }
    Ok(files)
}

fn bodies(document: &Document) -> impl Iterator<Item = Body> + '_ {
    let read = |(at, text): (usize, &String)| Event::from_bytes(text.as_bytes(), at as u64).ok();
    document.events.iter().enumerate().filter_map(read).map(|event| event.body)
}

fn shown(body: Body) -> Option<Digest> {
    match body {
        Body::CustomerNoted { shown, .. } => shown,
        _ => None,
    }
}

fn photographs(document: &Document) -> impl Iterator<Item = (Digest, String)> + '_ {
    bodies(document).filter_map(|body| match body {
        Body::PhotoTaken { digest, media, .. } => Some((digest, media)),
        _ => None,
    })
}

fn of_bytes(bytes: Vec<u8>) -> Result<File, WriteError> {
    let length = u32::try_from(bytes.len()).map_err(|_| WriteError::TooLong)?;
    Ok(File { crc: crc32fast::hash(&bytes), digest: sha256(&bytes), source: Source::Bytes(bytes), length })
}

fn original<'a>(digest: &Digest, originals: &'a dyn Originals) -> Result<Box<dyn Read + 'a>, WriteError> {
    let missing = |why: io::Error| WriteError::Photograph { digest: digest.clone(), why: why.to_string() };
    originals.original(digest).map_err(missing)
}

fn of_photograph(digest: Digest, originals: &dyn Originals) -> Result<File, WriteError> {
    let failed = |why: String| WriteError::Photograph { digest: digest.clone(), why };
    let mut bytes = original(&digest, originals)?;
    let (mut hash, mut crc, mut length) = (Sha256::new(), crc32fast::Hasher::new(), 0_u64);
    let mut buffer = vec![0_u8; 128 * 1024];
    loop {
        let read = match bytes.read(&mut buffer) {
            Ok(0) => break,
            Ok(read) => read,
            Err(why) if why.kind() == io::ErrorKind::Interrupted => continue,
            Err(why) => return Err(failed(why.to_string())),
        };
        let now = buffer.get(..read).unwrap_or_default();
        hash.update(now);
        crc.update(now);
        length += read as u64;
    }
    if hex(&hash.finalize()) != digest {
        return Err(failed("its bytes are not what they were".to_owned()));
    }
    let length = u32::try_from(length).map_err(|_| WriteError::TooLong)?;
    Ok(File { crc: crc.finalize(), length, digest: digest.clone(), source: Source::Photograph(digest) })
}
