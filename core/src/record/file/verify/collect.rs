//! One pass over a record file: digests of all that is in it, and the bytes of what is small.

use std::collections::BTreeMap;
use std::io::{self, Read};

use sha2::{Digest as _, Sha256};

use super::super::walk::walk;
use super::super::{PHOTOGRAPHS, RECORD};
use super::Fault;
use crate::id::Digest;
use crate::visit::event::hex;

/// The most bytes of `record.json`, and of any other file that is no photograph; what is longer is not taken into memory.
const RECORD_BYTES_MAX: u64 = 64 << 20;
const SMALL_BYTES_MAX: u64 = 4 << 20;
const ALL_BYTES_MAX: u64 = 96 << 20;

/// What went by.
pub(super) struct Collected {
    /// Digest and length of every file, by name.
    pub(super) passed: BTreeMap<String, (Digest, u64)>,
    /// The bytes of what is no photograph.
    pub(super) small: BTreeMap<String, Vec<u8>>,
    /// What is wrong with the ZIP.
    pub(super) faults: Vec<Fault>,
}

impl Collected {
    /// The ZIP's own checksum of that file does not fit.
    pub(super) fn is_broken(&self, name: &str) -> bool {
        self.faults.iter().any(|fault| fault.rule == "zip-crc" && fault.part == name)
    }
}

pub(super) fn collect(input: &mut dyn Read) -> io::Result<Collected> {
    let (mut passed, mut small, mut large) = (BTreeMap::new(), BTreeMap::new(), Vec::new());
    let mut kept = 0_u64;
    let mut take = |name: &str, bytes: &mut dyn Read| {
        let (mut hash, mut length, mut buffer) = (Sha256::new(), 0_u64, vec![0_u8; 128 * 1024]);
        let most = if name == RECORD { RECORD_BYTES_MAX } else { SMALL_BYTES_MAX }.min(ALL_BYTES_MAX - kept);
        let mut copy = (!name.starts_with(PHOTOGRAPHS)).then(Vec::new);
        loop {
            let read = match bytes.read(&mut buffer) {
                Ok(0) => break,
                Ok(read) => read,
                Err(why) if why.kind() == io::ErrorKind::Interrupted => continue,
                Err(why) => return Err(why),
            };
            let now = buffer.get(..read).unwrap_or_default();
            hash.update(now);
            length += read as u64;
            if length > most && copy.take().is_some() {
                large.push(Fault::new("too-large", name));
            }
            if let Some(copy) = &mut copy {
                copy.extend_from_slice(now);
            }
        }
        if let Some(copy) = copy {
            kept += length;
            small.insert(name.to_owned(), copy);
        }
        passed.insert(name.to_owned(), (hex(&hash.finalize()), length));
        Ok(())
    };
    let mut faults = walk(input, &mut take)?;
    faults.extend(large);
    Ok(Collected { passed, small, faults })
}
