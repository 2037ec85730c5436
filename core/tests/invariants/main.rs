//! What always holds, whatever is done at the door and whenever the program ends: one test for each invariant of the
//! log, the effects, the seal, the sending, the dangers and the house.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

mod apply;
mod bench;
mod cost;
mod customer;
mod dangers;
mod effects;
mod hostile;
mod house;
mod joining;
mod lanes;
mod left_safe;
mod log;
mod mechanics;
mod news;
mod office;
mod seal;
mod sending;
mod uploads;
