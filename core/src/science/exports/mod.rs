//! The science for Kotlin, Swift and Python: plain numbers in and out, the unit last in each name.
//!
//! Ranges are checked inside the functions called; what each means, its range and source stand there.

pub mod air;
pub mod change;
pub mod chemistry;
pub mod electrical;
pub mod exchanger;
pub mod flow;
pub mod heat;
pub mod performance;
pub mod reading;
pub mod rules;
pub mod surroundings;
