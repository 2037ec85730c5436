//! A record file from another office is taken over: verified first, and then all of it or nothing that shows.

use std::io::{self, Read, Seek, SeekFrom};

use coilside_core::evidence::SHOWN_MEDIA;
use coilside_core::record::file::document::Document;
use coilside_core::record::file::extract;
use coilside_core::record::file::verify::{Holding, Report, verify};
use coilside_core::record::seal::{Payload, TYP};
use coilside_core::record::{file::fingerprint, jws};
use coilside_core::visit::event::{Body, Event};

use super::customer::{self, Stand};
use super::receive_events::{self, ReceiveError};
use super::receive_photo::{self, PhotoError};
use super::vouch;
use crate::ids::{Digest, NotAName, Secret, VisitId};
use crate::store::devices::{self, Device};
use crate::store::seals::{self, Seal};
use crate::store::vouchers::{self, LaterSeal};
use crate::store::{Store, StoreError, summaries};
use crate::wire::events::{EVENTS_MAX, EventsIn};

/// A record that was not taken over. Nothing of it shows in the office.
#[derive(Debug, thiserror::Error)]
pub enum ImportError {
    /// It does not hold.
    #[error("the record does not hold, so nothing of it was taken over")]
    Fails(Box<Report>),
    /// Nobody vouches for it.
    #[error(
        "the record is self-consistent only: no office that you named vouches for it. Ask the office for its key and name it \
         with --office-key, or take the record over as it is with --self-consistent"
    )]
    NoAnchor(Box<Report>),
    /// The visit is here with other content.
    #[error("this office has another content of the visit: {0}. Nothing was changed; compare the two")]
    Otherwise(String),
    /// Its name or a photograph's is none.
    #[error("the record cannot be kept here: {0}")]
    Name(#[from] NotAName),
    /// A photograph could not be kept.
    #[error("a photograph of the record could not be kept: {0}")]
    Photograph(String),
    /// The file cannot be read.
    #[error("the record file cannot be read: {0}")]
    Io(#[from] io::Error),
    /// Disk or database.
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// A record that is here now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Imported {
    /// Which visit.
    pub visit: String,
    /// It was here before, as it is; nothing was changed.
    pub known: bool,
    /// What to tell of it.
    pub events: usize,
    /// How many photographs were new here.
    pub photographs: usize,
}

/// How a record is taken over.
pub(crate) struct Terms<'a> {
    /// Keys of offices that are trusted.
    pub(crate) trusted: &'a [Vec<u8>],
    /// Take it over although nobody that is trusted vouches for it.
    pub(crate) self_consistent: bool,
}

/// Takes a record over. The same one again changes nothing.
pub(crate) fn import<F: Read + Seek>(
    store: &Store,
    file: &mut F,
    terms: &Terms<'_>,
    secrets: (&Secret, &Secret),
    now_ms: i64,
) -> Result<Imported, ImportError> {
    let report = verify(file, terms.trusted)?;
    let anchored = report.is_anchored();
    let Some(holding) = report.holding.clone() else {
        let only = report.faults.iter().all(|fault| fault.rule == "no-anchor");
        return Err(if only { ImportError::NoAnchor(report.into()) } else { ImportError::Fails(report.into()) });
    };
    if !anchored && !terms.self_consistent {
        return Err(ImportError::NoAnchor(report.into()));
    }
    let document = &holding.document;
    let visit = VisitId::parse(document.visit.as_str())?;
    let device = device_of(store, &holding, secrets.0, now_ms)?;
    let known = is_known(store, &visit, document)?;
    clear_of_conflict(store, &visit, document, &device)?;
    let photographs = photographs(store, file, document, &visit, &device, now_ms)?;
    customer(store, &holding, &visit, &device, now_ms)?;
    add_events(store, &visit, document, &device, now_ms)?;
    store.write(|db| {
        for (digest, bytes) in &holding.packs {
            vouchers::put_pack(db, Digest::parse(digest.as_str())?, bytes)?;
        }
        for (at, seal) in document.seals.iter().enumerate() {
            let Ok(said) = jws::open::<Payload>(seal, TYP, &holding.device_key) else { continue };
            put_seal(db, &visit, at, seal, &said, &holding.device_key, now_ms)?;
            vouch::for_seal(db, &store.key, &visit, said.next, Digest::parse(&said.last)?, now_ms)?;
        }
        let own = crate::ids::hex(&store.key.public());
        let others: Vec<_> = document.offices.iter().filter(|office| office.key != own).collect();
        // A record of our own that comes home brings nothing that we did not vouch for ourselves.
        if others.len() == document.offices.len() {
            let offices = serde_json::to_string(&others).map_err(io::Error::other)?;
            vouchers::put_imported(db, &visit, &offices, anchored, now_ms)?;
        }
        summaries::ensure(db, &visit, &secrets.1.text(), now_ms)?;
        Ok::<_, ImportError>(())
    })?;
    Ok(Imported { visit: visit.to_string(), known, events: document.events.len(), photographs })
}

/// The device that has this key here; a new one that nobody can send as where there is none.
fn device_of(store: &Store, holding: &Holding, no_token: &Secret, now_ms: i64) -> Result<Device, ImportError> {
    store.write(|db| {
        if let Some(device) = devices::by_key(db, &holding.device_key)? {
            return Ok(device);
        }
        let name = format!("Imported, key {}", fingerprint(&holding.device_key));
        // The token's text is known to nobody: it is dropped here, and only its hash is kept.
        let id = devices::add(db, &name, no_token.hash(), now_ms)?;
        devices::register(db, id, &name, &holding.device_key)?;
        Ok(Device { id, name, public_key: Some(holding.device_key.clone()), revoked: false })
    })
}

fn is_known(store: &Store, visit: &VisitId, document: &Document) -> Result<bool, StoreError> {
    let (head, seal, later) = store.read(|db| {
        let head = crate::store::events::head(db, visit)?;
        Ok((head, seals::of(db, visit)?, vouchers::later_seals(db, visit)?))
    })?;
    let events = head.is_some_and(|head| head.next >= document.events.len() as u64);
    let seals = seal.is_some() && later.len() + 1 >= document.seals.len();
    Ok(events && seals)
}

/// Asked before anything is written: what is here must be the same, or less.
fn clear_of_conflict(store: &Store, visit: &VisitId, document: &Document, device: &Device) -> Result<(), ImportError> {
    store
        .read(|db| {
            let Some(head) = crate::store::events::head(db, visit)? else { return Ok(None) };
            if head.device != device.id {
                return Ok(Some("it came from another device".to_owned()));
            }
            for (text, seq) in document.events.iter().zip(0..head.next) {
                if crate::store::events::hash_at(db, visit, seq)? != Some(Digest::of(text.as_bytes())) {
                    return Ok(Some(format!("event {seq} differs")));
                }
            }
            Ok(None)
        })?
        .map_or(Ok(()), |differs| Err(ImportError::Otherwise(differs)))
}

fn add_events(
    store: &Store,
    visit: &VisitId,
    document: &Document,
    device: &Device,
    now_ms: i64,
) -> Result<(), ImportError> {
    for (number, batch) in document.events.chunks(EVENTS_MAX).enumerate() {
        let sent = EventsIn { first: (number * EVENTS_MAX) as u64, events: batch.to_vec() };
        receive_events::receive(store, device.id, visit, &sent, now_ms).map_err(|error| match error {
            ReceiveError::Store(store) => store.into(),
            other => ImportError::Otherwise(other.to_string()),
        })?;
    }
    Ok(())
}

fn put_seal(
    db: &rusqlite::Connection,
    visit: &VisitId,
    at: usize,
    jws: &str,
    said: &Payload,
    device_key: &[u8],
    now_ms: i64,
) -> Result<(), ImportError> {
    let last = Digest::parse(&said.last)?;
    if at == 0 {
        match seals::of(db, visit)? {
            Some(kept) if (kept.covers, kept.last) == (said.next, last) => {}
            Some(_) => return Err(ImportError::Otherwise("it is sealed otherwise".to_owned())),
            None => {
                let public_key = device_key.to_vec();
                let (covers, complete) = (said.next, said.complete);
                seals::put(
                    db,
                    visit,
                    &Seal { jws: jws.to_owned(), public_key, last, covers, complete, received_ms: now_ms },
                )?;
            }
        }
    } else {
        let later = LaterSeal { covers: said.next, last, jws: jws.to_owned(), received_ms: now_ms };
        vouchers::put_later_seal(db, visit, &later)?;
    }
    Ok(())
}

/// Keeps the files with the customer's name and signature. One that was erased here stays so; one that the record does not
/// enclose is withheld here too.
fn customer(
    store: &Store,
    holding: &Holding,
    visit: &VisitId,
    device: &Device,
    now_ms: i64,
) -> Result<(), ImportError> {
    for named in customer::named(holding.document.events.iter().map(String::as_bytes)) {
        let digest = Digest::parse(named.as_str())?;
        let Some(bytes) = holding.customer.get(&named) else {
            if store.read(|db| customer::stands(db, digest))? == Stand::Waits {
                store.write(|db| customer::withhold(db, digest, now_ms))?;
            }
            continue;
        };
        let whole =
            receive_photo::Whole { digest, visit, media: SHOWN_MEDIA, length: bytes.len() as u64, device: device.id };
        match receive_photo::take_whole(store, &whole, &mut bytes.as_slice(), now_ms) {
            Ok(true) => store.write(|db| customer::keep_again(db, digest))?,
            Ok(false) => {}
            Err(PhotoError::Store(store)) => return Err(store.into()),
            Err(other) => return Err(ImportError::Photograph(other.to_string())),
        }
    }
    Ok(())
}

/// Keeps the photographs that are not here yet; returns how many.
fn photographs<F: Read + Seek>(
    store: &Store,
    file: &mut F,
    document: &Document,
    visit: &VisitId,
    device: &Device,
    now_ms: i64,
) -> Result<usize, ImportError> {
    let taken = document.events.iter().enumerate().filter_map(|(at, text)| {
        match Event::from_bytes(text.as_bytes(), at as u64).ok()?.body {
            Body::PhotoTaken { digest, bytes, media, .. } => Some((digest, (bytes, media))),
            _ => None,
        }
    });
    let taken: std::collections::BTreeMap<_, _> = taken.collect();
    file.seek(SeekFrom::Start(0))?;
    let (mut new, mut failed) = (0, None);
    let copied = extract(file, &mut |digest, bytes| {
        let Some((length, media)) = taken.get(digest) else { return Ok(()) };
        let digest = Digest::parse(digest.as_str()).map_err(io::Error::other)?;
        let photo = receive_photo::Whole { digest, visit, media, length: *length, device: device.id };
        match receive_photo::take_whole(store, &photo, bytes, now_ms) {
            Ok(fresh) => new += usize::from(fresh),
            Err(error) => {
                failed = Some(error);
                return Err(io::Error::other("not kept"));
            }
        }
        Ok(())
    });
    match failed {
        Some(PhotoError::Store(store)) => return Err(store.into()),
        Some(other) => return Err(ImportError::Photograph(other.to_string())),
        None => copied?,
    }
    Ok(new)
}
