//! The office.
pub mod demo;
