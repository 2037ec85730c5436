//! The office lets another device go on with a visit. One device writes a visit at a time; what the first one still has of it
//! is kept beside the record.

use rusqlite::Connection;
use serde::Deserialize;

use crate::ids::VisitId;
use crate::store::devices::{self, Device, DeviceId};
use crate::store::events::{self, Head};
use crate::store::handovers::{self, Handover};
use crate::store::news::{self, Kind};
use crate::store::{Store, StoreError, listings, seals};

/// The kind of the event behind which another device goes on.
const DEVICE_CHANGED: &str = "device-changed";

/// A visit that stays where it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stays {
    /// There is no such visit.
    NoVisit,
    /// It is sealed: nobody goes on with it.
    Sealed,
    /// No such device, one without a key, or one that is revoked.
    NoDevice,
    /// It is that device's already.
    ItsOwn,
}

/// Lets a device go on with a visit, and tells it.
pub(crate) fn hand_over(
    store: &Store,
    visit: &VisitId,
    to: DeviceId,
    now_ms: i64,
) -> Result<Result<(), Stays>, StoreError> {
    store.write(|db| {
        let Some(head) = events::head(db, visit)? else { return Ok(Err(Stays::NoVisit)) };
        if seals::of(db, visit)?.is_some() {
            return Ok(Err(Stays::Sealed));
        }
        if head.device == to {
            return Ok(Err(Stays::ItsOwn));
        }
        if !devices::by_id(db, to)?.is_some_and(|device| can_go_on(&device)) {
            return Ok(Err(Stays::NoDevice));
        }
        let Head { device: from, next, hash } = head;
        handovers::add(db, visit, Handover { from, to, next, head: hash, at_ms: now_ms })?;
        news::add(db, Kind::Handed, visit.as_str(), Some(to), None)?;
        listings::forget(db, visit)?;
        Ok(Ok(()))
    })
}

/// Whether a device could go on with any visit: its key is known, and it is heard.
pub(crate) fn can_go_on(device: &Device) -> bool {
    device.public_key.is_some() && !device.revoked
}

/// When this device last handed the visit over; none where it never had it.
pub(crate) fn last_from(db: &Connection, visit: &VisitId, device: DeviceId) -> Result<Option<Handover>, StoreError> {
    Ok(handovers::of(db, visit)?.into_iter().rfind(|handover| handover.from == device))
}

/// The key of the device that goes on behind this event, SEC1 in hexadecimal digits; none for any other event.
pub(crate) fn named_key(event: &[u8]) -> Option<String> {
    #[derive(Deserialize)]
    struct Changed {
        kind: String,
        device_key: String,
    }
    let changed: Changed = serde_json::from_slice(event).ok()?;
    (changed.kind == DEVICE_CHANGED).then_some(changed.device_key)
}
