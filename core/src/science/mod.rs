//! Pure functions over quantities: what the readings mean.
//!
//! Each file is one subject and opens with its equations, range, accuracy and source. Nothing here reads a clock, a file or
//! anything else of ours. Every argument has a range; outside it (or with a value that is not a number) the answer is a
//! [`ScienceError`] that names the argument, its value and its range. Transcendental functions come from `libm`, so every
//! platform gets the same bits. Clause and table numbers of standards are from memory: no standard's text was opened.

pub mod acids;
pub mod air;
pub mod airflow;
pub mod atmosphere;
pub mod calendar;
pub mod carbonate;
pub mod change;
pub mod chemistry;
pub mod coil;
pub mod conditions;
pub mod descaling;
pub mod electrical;
mod error;
pub mod exchanger;
pub mod flow;
pub mod formula;
pub mod frost;
pub mod heat;
pub mod heating_curve;
pub mod instrument;
pub mod materials;
pub mod performance;
pub mod performance_error;
pub mod place;
pub mod quantity;
pub mod refrigerant;
pub mod rules;
pub mod scaling;
pub mod trend;
pub mod uncertainty;
pub mod verdict;
pub mod water;
pub mod year;

#[cfg(feature = "uniffi")]
pub mod exports;
#[cfg(test)]
mod laws_heat;

pub use error::ScienceError;
