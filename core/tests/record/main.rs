//! The record file: made to the byte, and verified against everything that could be done to it.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

mod bench;
mod changed;
mod customer;
mod forgeries;
mod form;
mod hostile;
mod mangled;
mod schema;
mod vectors;

use coilside_core::record::file::verify::{Report, verify};

/// The report on a record file, with the office of the bench as the one that is known.
fn known(file: &[u8]) -> Report {
    verify(&mut &*file, &[bench::public(bench::OFFICE)]).unwrap()
}

/// Rules and parts of what does not hold.
fn faults(report: &Report) -> Vec<(&'static str, &str)> {
    report.faults.iter().map(|fault| (fault.rule, fault.part.as_str())).collect()
}
