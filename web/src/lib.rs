//! The browser shell: a page that draws the core's screens, and the local process that is its door to the core.
//!
//! The process listens on 127.0.0.1 only, answers only who knows its token, and holds the device's key. It thinks
//! nothing itself: every call goes to the core, with the time.
#![forbid(unsafe_code)]

mod address;
mod clock;
mod core_door;
mod door;
mod error;
#[cfg(test)]
mod fixtures;
mod guard;
mod incoming;
mod key;
mod lock;
pub mod pack_folder;
#[cfg(test)]
mod packs_tests;
mod pages;
mod private_file;
mod problem;
mod rehearsal;
mod sender;
mod serve;
#[cfg(test)]
mod stub;
mod summary;
mod window;

pub use error::FieldError;
pub use serve::{FieldSettings, Running, serve, start};
