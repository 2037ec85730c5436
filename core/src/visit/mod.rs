//! What happened in a visit, and what it means.

pub mod fact;
