//! Rows of devices' clocks: how far each was behind the office's, and since when.

use rusqlite::{Connection, params};

use super::StoreError;
use super::devices::DeviceId;

/// From this moment on a device's clock was so far behind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Noted {
    /// By the office's clock.
    pub(crate) from_ms: i64,
    /// Negative: ahead.
    pub(crate) behind_ms: i64,
}

/// All that was noted about a device's clock, the oldest first.
pub(crate) fn of(db: &Connection, device: DeviceId) -> Result<Vec<Noted>, StoreError> {
    let mut query =
        db.prepare_cached("SELECT noted_ms, behind_ms FROM device_clock WHERE device = ?1 ORDER BY noted_ms")?;
    let rows = query.query_map([device], |row| Ok(Noted { from_ms: row.get(0)?, behind_ms: row.get(1)? }))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Notes how far a device's clock is behind from now on.
pub(crate) fn note(db: &Connection, device: DeviceId, noted: Noted) -> Result<(), StoreError> {
    let sql = "INSERT INTO device_clock (device, noted_ms, behind_ms) VALUES (?1, ?2, ?3)
               ON CONFLICT (device, noted_ms) DO UPDATE SET behind_ms = ?3";
    db.prepare_cached(sql)?.execute(params![device, noted.from_ms, noted.behind_ms])?;
    Ok(())
}
