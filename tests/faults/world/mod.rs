//! Seeded worlds of phones, networks and an office that fail in every way: nothing lost, nothing doubled, order kept, and
//! everything arrives once the network holds.
//!
//! `COILSIDE_WORLD_SEED=N cargo test -p coilside-tests --test faults world_of_a_number -- --nocapture` tells what happened in world N.
//! `COILSIDE_WORLD_SEEDS=N` plays so many worlds. The same for real worlds with `COILSIDE_REAL_WORLD_…`.

mod admission;
mod alike;
mod clock;
mod files;
mod invariants;
mod mistakes;
mod office;
mod parts;
mod phone;
mod plan;
mod play;
mod real;
mod real_office;
mod real_phone;
mod rehearsal;
mod seeds;
mod store;
mod trace;
mod uploads;
mod wire;
