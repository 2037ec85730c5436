//! The devices, with what is known of each.

use super::library::Library;
use super::list_visits;
use crate::store::devices::{self, Known};
use crate::store::{Store, StoreError, clocks};

/// A device, and how far its clock is behind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Listed {
    pub(crate) known: Known,
    /// None where it never told what its clock shows.
    pub(crate) behind_ms: Option<i64>,
}

/// All devices: those that are heard first, the last heard at the top.
pub(crate) fn all(store: &Store, library: &Library) -> Result<Vec<Listed>, StoreError> {
    list_visits::refresh(store, library)?;
    store.read(|db| {
        let listed = devices::all(db)?.into_iter().map(|known| {
            let behind_ms = clocks::of(db, known.device.id)?.last().map(|noted| noted.behind_ms);
            Ok(Listed { known, behind_ms })
        });
        listed.collect()
    })
}
