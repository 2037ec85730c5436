//! A device calls: who is it, is it still heard, and what does its clock show?

use crate::ids::Secret;
use crate::store::clocks::{self, Noted};
use crate::store::devices::{self, Device};
use crate::store::{Store, StoreError};

/// The device that this token belongs to; none where it belongs to nobody, or has ended. Notes that it was heard, and how
/// far its clock is behind: `clock_ms` is what it showed when the request was made.
pub(crate) fn by_token(
    store: &Store,
    token: &str,
    clock_ms: Option<i64>,
    now_ms: i64,
) -> Result<Option<Device>, StoreError> {
    let found = store.read(|db| devices::by_token(db, Secret::hash_of(token), now_ms))?;
    if let Some(device) = found.as_ref().filter(|device| !device.revoked) {
        let last = || store.read(|db| Ok(clocks::of(db, device.id)?.last().map(|noted| noted.behind_ms)));
        if let Some(told) = store.heard.hear(device.id, clock_ms, now_ms, last)? {
            // Whatever of this is lost with the power is said again by the next request.
            store.note(|db| {
                devices::heard(db, device.id, now_ms)?;
                match told.behind_ms {
                    Some(behind_ms) => clocks::note(db, device.id, Noted { from_ms: now_ms, behind_ms }),
                    None => Ok(()),
                }
            })?;
        }
    }
    Ok(found)
}
