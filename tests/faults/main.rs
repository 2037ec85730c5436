//! Faults: the programs are killed for real, and seeded worlds fail in every way; nothing that was acknowledged is lost.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

mod kill;
mod process;
mod random;
mod remote;
mod stop;
mod world;
