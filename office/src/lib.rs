//! The office.
