//! Faults: the programs are killed for real, and nothing that was acknowledged is lost.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

mod kill;
mod process;
mod remote;
