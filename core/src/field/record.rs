//! The record file at the door: a device can write one by itself, with no office.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{self, Read, Write};

use super::shown::bytes_of;
use super::{DoorError, Field};
use crate::id::{Digest, VisitId};
use crate::record::file::document::{Document, FORMAT, Personal};
use crate::record::file::{Contents, Originals, WriteError, write};
use crate::store::shelf::FolderShelf;
use crate::visit::event::sha256;

/// Why no record file was written.
#[derive(Debug, thiserror::Error)]
pub enum RecordError {
    /// What the device has could not be read.
    #[error(transparent)]
    Door(#[from] DoorError),
    /// The record cannot be made or written.
    #[error(transparent)]
    Write(#[from] WriteError),
}

/// What goes into a record file, but for the photographs.
struct Gathered {
    document: Document,
    packs: BTreeMap<Digest, Vec<u8>>,
    personal: Option<Personal>,
    customer: BTreeMap<Digest, Vec<u8>>,
}

struct Shelf<'a>(&'a FolderShelf);

impl Originals for Shelf<'_> {
    fn original(&self, digest: &Digest) -> io::Result<Box<dyn Read + '_>> {
        Ok(Box::new(File::open(self.0.original_path(digest))?))
    }
}

impl Field {
    /// Writes the record file of a sealed visit. With `personal` the owner's and site's data go into it, where they are
    /// still those that the visit was opened with, and the customer's name and signature, where they were not erased.
    ///
    /// # Errors
    /// Where the visit is not sealed, something of it is not there, or the file cannot be written.
    pub fn write_record(&self, visit: &VisitId, personal: bool, out: &mut dyn Write) -> Result<(), RecordError> {
        let gathered = self.gather(visit)?;
        let none = BTreeMap::new();
        let (owner, customer) = if personal { (gathered.personal.as_ref(), &gathered.customer) } else { (None, &none) };
        let (document, packs) = (&gathered.document, &gathered.packs);
        let contents = Contents { document, packs, personal: owner, customer, office: None };
        Ok(write(&contents, &Shelf(&self.shelf), out)?)
    }

    /// Read under the lock, so that the photographs can be copied without it.
    fn gather(&self, id: &VisitId) -> Result<Gathered, DoorError> {
        let desk = self.desk();
        let visit = desk.store.visit(id)?;
        let mut seals: Vec<String> = desk.store.seal(id)?.into_iter().collect();
        let later = desk.store.addendum_seals(id)?;
        let sealed = match (later.last(), visit.sealing.as_ref()) {
            (Some((next, _)), _) => Some(*next),
            // Events after the seal that no signature covers yet are left out.
            (None, Some(_)) => Some(visit.end.next.saturating_sub(visit.addenda.len() as u64)),
            (None, None) => None,
        };
        seals.extend(later.into_iter().map(|(_, jws)| jws));
        let covered = sealed.map_or(usize::MAX, |next| usize::try_from(next).unwrap_or(usize::MAX));
        let text = |bytes: Vec<u8>| String::from_utf8_lossy(&bytes).into_owned();
        let events = desk.store.events(id, 0)?.into_iter().take(covered).map(text).collect();
        let mut packs = BTreeMap::new();
        for run in visit.runs.values() {
            if let Some(bytes) = desk.store.pinned_pack(&run.pack_digest)? {
                packs.insert(run.pack_digest.clone(), bytes);
            }
        }
        let personal = desk.store.assignment(&visit.assignment)?.and_then(|(assignment, salt)| {
            let personal = serde_json::to_string(&(&assignment.site, &assignment.owner)).ok()?;
            // Another address since then is not what the visit knew.
            let same = sha256(format!("{salt}{personal}").as_bytes()) == visit.personal;
            same.then_some(Personal { personal, salt })
        });
        let document = Document { format: FORMAT, visit: id.clone(), events, seals, offices: Vec::new() };
        let customer =
            visit.shown_files.iter().filter_map(|digest| Some((digest.clone(), bytes_of(&self.shelf, digest)?)));
        Ok(Gathered { document, packs, personal, customer: customer.collect() })
    }
}
