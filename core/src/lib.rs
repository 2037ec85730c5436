//! The thinking of Coilside: what happened in a visit, what may happen next, what it means, and how it is shown.
//!
//! The core has no clock, no network and no platform. Its door is one object, and every call carries the time.
#![cfg_attr(not(feature = "uniffi"), forbid(unsafe_code))]

pub mod action;
pub mod effect;
pub mod evidence;
#[cfg(feature = "uniffi")]
pub mod exports;
pub mod field;
pub mod id;
pub mod now;
pub mod procedure;
pub mod record;
pub mod round;
pub mod science;
pub mod screen;
pub mod store;
pub mod sync;
pub mod visit;
pub mod words;

#[cfg(feature = "uniffi")]
uniffi::setup_scaffolding!("coilside");
