//! A sealed visit is written into a record file, with what this office and those before it vouch for.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{self, Read, Write};

use coilside_core::id;
use coilside_core::record::file::document::{Document, FORMAT, Office};
use coilside_core::record::file::{Contents, Originals, WriteError, write};
use coilside_core::visit::event::{Body, Event};
use rusqlite::Connection;

use super::customer::{self, Stand};
use super::vouch;
use crate::ids::{Digest, VisitId, hex};
use crate::store::folder::Folder;
use crate::store::{Store, StoreError, devices, events, seals, vouchers};

/// No record was written.
#[derive(Debug, thiserror::Error)]
pub enum ExportError {
    /// There is no such visit.
    #[error("there is no such visit in this office")]
    Unknown,
    /// Its seal has not come.
    #[error("the visit is not sealed yet; a record is made once its seal has come")]
    NotSealed,
    /// The customer's name and signature are on the way.
    #[error("the customer's name and signature have not come yet; a record is made once they are here, or erased")]
    CustomerWaits,
    /// The record cannot be made.
    #[error(transparent)]
    Write(#[from] WriteError),
    /// Disk or database.
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// Writes the record of a visit: its events up to the last seal, and all that they name.
pub(crate) fn export(store: &Store, visit: &VisitId, now_ms: i64, out: &mut dyn Write) -> Result<(), ExportError> {
    let (document, packs) = store.write(|db| {
        let document = document(db, store, visit, now_ms)?;
        let packs = packs(db, &document)?;
        Ok::<_, ExportError>((document, packs))
    })?;
    let customer = of_customer(store, &document)?;
    let key = store.key.public();
    let sign = |input: &str| store.key.sign(input);
    let office = Some((key.as_slice(), &sign as &dyn Fn(&str) -> String));
    let contents = Contents { document: &document, packs: &packs, personal: None, customer: &customer, office };
    Ok(write(&contents, &Shelf(&store.folder), out)?)
}

fn document(db: &Connection, store: &Store, visit: &VisitId, now_ms: i64) -> Result<Document, ExportError> {
    let head = events::head(db, visit)?.ok_or(ExportError::Unknown)?;
    let seal = seals::of(db, visit)?.ok_or(ExportError::NotSealed)?;
    // Seals from before the office vouched for them are vouched for now, by the time at which they came.
    vouch::for_seal(db, &store.key, visit, seal.covers, seal.last, seal.received_ms)?;
    let mut jws = vec![seal.jws];
    let mut covered = seal.covers;
    for later in vouchers::later_seals(db, visit)? {
        vouch::for_seal(db, &store.key, visit, later.covers, later.last, later.received_ms)?;
        covered = covered.max(later.covers);
        jws.push(later.jws);
    }
    let covered = usize::try_from(covered).unwrap_or(usize::MAX);
    let text = |bytes: Vec<u8>| String::from_utf8_lossy(&bytes).into_owned();
    let events = events::all(db, visit)?.into_iter().take(covered).map(text).collect();
    let key = hex(&store.key.public());
    let earlier = vouchers::imported(db, visit)?;
    let mut certificate = None;
    if earlier.is_none()
        && let Some(device) = devices::by_id(db, head.device)?
    {
        vouch::for_device(db, &store.key, &device, now_ms)?;
        certificate = vouchers::certificate(db, device.id)?;
    }
    let mut offices: Vec<Office> = earlier.and_then(|json| serde_json::from_str(&json).ok()).unwrap_or_default();
    offices.retain(|office| office.key != key);
    let receipts = vouchers::receipts(db, visit)?.into_iter().map(|(_, jws)| jws).collect();
    offices.push(Office { key, certificate, receipts });
    let visit = id::VisitId(visit.to_string());
    Ok(Document { format: FORMAT, visit, events, seals: jws, offices })
}

fn packs(db: &Connection, document: &Document) -> Result<BTreeMap<id::Digest, Vec<u8>>, StoreError> {
    let mut packs = BTreeMap::new();
    for (at, text) in document.events.iter().enumerate() {
        let event = Event::from_bytes(text.as_bytes(), at as u64).ok();
        let Some(Body::RunStarted { pack_digest, .. }) = event.map(|event| event.body) else { continue };
        if let Ok(digest) = Digest::parse(pack_digest.as_str())
            && let Some(bytes) = vouchers::pack(db, digest)?
        {
            packs.insert(pack_digest, bytes);
        }
    }
    Ok(packs)
}

/// The files with the customer's name and signature that are here. What was erased is withheld.
fn of_customer(store: &Store, document: &Document) -> Result<BTreeMap<id::Digest, Vec<u8>>, ExportError> {
    let mut files = BTreeMap::new();
    for named in customer::named(document.events.iter().map(String::as_bytes)) {
        let Ok(digest) = Digest::parse(named.as_str()) else { continue };
        match store.read(|db| customer::stands(db, digest))? {
            Stand::Withheld => {}
            Stand::Waits => return Err(ExportError::CustomerWaits),
            Stand::Here => {
                files.insert(named, customer::bytes_of(store, digest)?);
            }
        }
    }
    Ok(files)
}

struct Shelf<'a>(&'a Folder);

impl Originals for Shelf<'_> {
    fn original(&self, digest: &id::Digest) -> io::Result<Box<dyn Read + '_>> {
        let digest = Digest::parse(digest.as_str()).map_err(io::Error::other)?;
        Ok(Box::new(File::open(self.0.original(digest))?))
    }
}
