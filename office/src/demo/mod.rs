//! The demo: an invented village, its owners, makers and units, and a technician at work.

pub mod player;
