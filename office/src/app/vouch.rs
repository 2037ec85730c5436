//! The office vouches, under its own key, for devices that joined it and for seals that came to it.

use coilside_core::record::file::voucher::{CERTIFICATE, Certificate, FORMAT, RECEIPT, Receipt};
use coilside_core::record::jws;
use rusqlite::Connection;
use serde::Serialize;

use crate::ids::{Digest, VisitId, hex};
use crate::store::devices::Device;
use crate::store::office_key::OfficeKey;
use crate::store::{StoreError, vouchers};

/// Signs that a device's key joined the office, once; later it stays as it was.
pub(crate) fn for_device(db: &Connection, key: &OfficeKey, device: &Device, now_ms: i64) -> Result<(), StoreError> {
    let Some(public) = &device.public_key else { return Ok(()) };
    if vouchers::certificate(db, device.id)?.is_some() {
        return Ok(());
    }
    let said =
        Certificate { format: FORMAT, device_key: hex(public), office_key: hex(&key.public()), at_utc_ms: now_ms };
    match signed(key, CERTIFICATE, &said) {
        Some(jws) => vouchers::put_certificate(db, device.id, &jws),
        None => Ok(()),
    }
}

/// Signs that a seal over so many events came, once for each.
pub(crate) fn for_seal(
    db: &Connection,
    key: &OfficeKey,
    visit: &VisitId,
    covers: u64,
    last: Digest,
    received_ms: i64,
) -> Result<(), StoreError> {
    let said = Receipt {
        format: FORMAT,
        visit: visit.to_string(),
        next: covers,
        last: last.to_string(),
        office_key: hex(&key.public()),
        at_utc_ms: received_ms,
    };
    match signed(key, RECEIPT, &said) {
        Some(jws) => vouchers::put_receipt(db, visit, covers, &jws),
        None => Ok(()),
    }
}

/// A compact JWS. Strings and whole numbers always have a canonical form, and a key's own signature always holds under it;
/// were it otherwise nothing would be vouched for, and verifying would say so.
fn signed(key: &OfficeKey, typ: &str, said: &impl Serialize) -> Option<String> {
    let input = jws::signing_input(typ, said).ok()?;
    jws::close(&input, &key.sign(&input), &key.public()).ok()
}
