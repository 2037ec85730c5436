//! What a device is told since it last asked: assignments, reviews, procedures, visits that it goes on with.
//!
//! Assignments are filled with what the office's own records say, so a visit of another device may change one. Before anyone
//! is told, what would be told now is compared with what was told last; only what differs is news.

use std::collections::BTreeMap;

use rusqlite::Connection;
use serde_json::Value;

use super::library::Library;
use super::{hand_out_assignments, list_visits, unit_history};
use crate::ids::{Digest, VisitId};
use crate::store::devices::Device;
use crate::store::news::{self, Item, Kind};
use crate::store::reviews::{self, Outcome};
use crate::store::{Store, StoreError, assignments, events};
use crate::wire::news::{HandedOut, NewsOut, OutcomeOut, PackOut, ReviewOut};

/// Pieces of one page. The longest, an assignment with ten years of readings, has some ten kilobytes; most are an id.
const PAGE_ITEMS: u32 = 200;

/// The page after a cursor, which is a number; 0 is the start. The same cursor gives the same page, as far as it is still
/// so, with what came up since where there is room.
pub(crate) fn page(store: &Store, library: &Library, device: &Device, after: i64) -> Result<NewsOut, StoreError> {
    list_visits::refresh(store, library)?;
    let open = store.read(open_assignments)?;
    if !store.read(|db| differences(db, library, &open))?.is_empty() {
        // Asked again inside: somebody else may have written the same news by now.
        store.write(|db| {
            for Difference { kind, subject, content } in differences(db, library, &open_assignments(db)?)? {
                news::add(db, kind, &subject, None, content)?;
            }
            Ok::<_, StoreError>(())
        })?;
    }
    let technician = hand_out_assignments::technician(store, device)?;
    store.read(|db| {
        let items = news::after(db, device.id, after, PAGE_ITEMS)?;
        let is_full = items.len() as u64 >= u64::from(PAGE_ITEMS);
        let cursor = match items.last() {
            Some(last) if is_full => last.number,
            _ => news::last(db)?.max(after),
        };
        let more = is_full && !news::after(db, device.id, cursor, 1)?.is_empty();
        let mut told = NewsOut {
            cursor: cursor.to_string(),
            more,
            assignments: Vec::new(),
            withdrawn: Vec::new(),
            technician,
            reviews: Vec::new(),
            packs: Vec::new(),
            handed: Vec::new(),
        };
        for item in items {
            tell(db, library, device, item, &mut told)?;
        }
        Ok(told)
    })
}

/// Something that was told otherwise, or not at all.
struct Difference {
    kind: Kind,
    subject: String,
    content: Option<Digest>,
}

/// The open assignments by id, as they would be told now.
fn open_assignments(db: &Connection) -> Result<BTreeMap<String, Value>, StoreError> {
    let mut open = BTreeMap::new();
    for doc in assignments::open(db)? {
        if let Some((id, doc)) = filled(db, &doc)? {
            open.insert(id, doc);
        }
    }
    Ok(open)
}

/// An assignment with its id; none where a row was spoilt from outside, which must not hide the others.
fn filled(db: &Connection, doc: &str) -> Result<Option<(String, Value)>, StoreError> {
    let Ok(mut doc) = serde_json::from_str::<Value>(doc) else { return Ok(None) };
    unit_history::fill(db, &mut doc)?;
    Ok(doc.get("id").and_then(Value::as_str).map(str::to_owned).map(|id| (id, doc)))
}

fn differences(
    db: &Connection,
    library: &Library,
    open: &BTreeMap<String, Value>,
) -> Result<Vec<Difference>, StoreError> {
    let told: BTreeMap<String, Option<Digest>> = news::told_assignments(db)?.into_iter().collect();
    let mut differences = Vec::new();
    for (id, doc) in open {
        let content = Some(Digest::of(doc.to_string().as_bytes()));
        if told.get(id) != Some(&content) {
            differences.push(Difference { kind: Kind::Assignment, subject: id.clone(), content });
        }
    }
    for id in told.keys().filter(|id| !open.contains_key(*id)) {
        differences.push(Difference { kind: Kind::Withdrawn, subject: id.clone(), content: None });
    }
    for pack in library.all() {
        let subject = Digest::of(&pack.bytes).to_string();
        if !news::is_told(db, Kind::Pack, &subject)? {
            differences.push(Difference { kind: Kind::Pack, subject, content: None });
        }
    }
    Ok(differences)
}

fn tell(db: &Connection, library: &Library, device: &Device, item: Item, told: &mut NewsOut) -> Result<(), StoreError> {
    match item.kind {
        Kind::Assignment => add_assignment(db, &item.subject, told)?,
        // To the device at whose visit an assignment ended nothing is to be said: its own visit ended it.
        Kind::Withdrawn if assignments::answered_by(db, &item.subject)?.contains(&device.id) => {}
        Kind::Withdrawn => told.withdrawn.push(item.subject),
        Kind::Pack => {
            let named = |bytes: &[u8]| Digest::of(bytes).to_string() == item.subject;
            if let Some(pack) = library.all().iter().find(|pack| named(&pack.bytes)) {
                let (id, bytes) = (pack.pack.pack.clone(), pack.bytes.len() as u64);
                told.packs.push(PackOut { digest: item.subject, id, bytes });
            }
        }
        Kind::Review => {
            let review = item.subject.parse().ok().map(|number| reviews::numbered(db, number)).transpose()?.flatten();
            told.reviews.extend(review.map(|review| ReviewOut {
                visit: review.visit.to_string(),
                outcome: match review.outcome {
                    Outcome::Accepted => OutcomeOut::Accepted,
                    Outcome::Question => OutcomeOut::Question,
                },
                words: review.words,
                utc_ms: review.at_ms,
            }));
        }
        Kind::Handed => add_handed(db, device, &item.subject, told)?,
    }
    Ok(())
}

fn add_assignment(db: &Connection, id: &str, told: &mut NewsOut) -> Result<(), StoreError> {
    if let Some(doc) = assignments::of(db, id)?
        && let Some((_, doc)) = filled(db, &doc)?
        && !told.assignments.contains(&doc)
    {
        told.assignments.push(doc);
    }
    Ok(())
}

/// A visit that is this device's now, with its assignment: the log holds only a digest of whose house it is.
fn add_handed(db: &Connection, device: &Device, visit: &str, told: &mut NewsOut) -> Result<(), StoreError> {
    let Ok(id) = VisitId::parse(visit) else { return Ok(()) };
    let Some(head) = events::head(db, &id)?.filter(|head| head.device == device.id) else { return Ok(()) };
    told.handed.push(HandedOut { visit: visit.to_owned(), next: head.next, head: head.hash.to_string() });
    let first = events::from(db, &id, 0, 1)?;
    let opened = first.first().and_then(|bytes| serde_json::from_slice::<Value>(bytes).ok());
    match opened.as_ref().and_then(|event| event.get("assignment")).and_then(Value::as_str) {
        Some(assignment) => add_assignment(db, assignment, told),
        None => Ok(()),
    }
}
