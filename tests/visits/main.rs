//! Whole visits, driven action by action through the door.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

mod bad_input;
mod break_off;
mod customer;
mod going_on;
mod log;
mod mechanics;
mod nameplate;
mod no_room;
mod packs;
mod photographs;
mod pseudo;
mod refusals;
mod results;
mod round;
mod screens;
mod time;
mod units;
mod whole;
