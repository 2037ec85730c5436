//! What happened in a visit, and what it means.

pub mod apply;
pub mod decide;
pub mod event;
pub mod fact;
mod facts;
pub mod state;
