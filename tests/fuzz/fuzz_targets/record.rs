//! Any bytes through the reader of record files, guided by coverage. `tests/fuzz/run` builds and starts it.
#![no_main]

use std::sync::LazyLock;

use coilside_core::record::file::verify::verify;
use libfuzzer_sys::fuzz_target;

/// The record that `tests/fuzz/run` was given to begin with: the only bytes that may hold.
static GENUINE: LazyLock<Vec<u8>> = LazyLock::new(|| {
    let file = std::env::var("COILSIDE_GENUINE_RECORD").expect("COILSIDE_GENUINE_RECORD names a record file");
    std::fs::read(file).expect("the genuine record can be read")
});

fuzz_target!(|bytes: &[u8]| {
    let report = verify(&mut &bytes[..], &[]).expect("memory can be read");
    assert!(!report.holds() || bytes == GENUINE.as_slice(), "bytes that nobody signed hold");
});
