//! The pack checker: the built-in packs are proved, broken ones are caught, and proof and field agree.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

mod door;
mod engine;
mod mutants;
mod proved;
mod replay;
mod walks;
