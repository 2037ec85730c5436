//! What the engine knows of itself at a moment, for the outbox's screen.

use super::policy::{Link, Policy};
use super::skew::Skew;
use super::trouble::Hindrance;

/// What the engine is doing, and why it does no more.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Standing {
    /// What is being sent just now.
    pub sending: Vec<Sending>,
    /// Why nothing goes out at the moment, if so.
    pub hindrance: Option<Hindrance>,
    /// It is tried again after so many milliseconds.
    pub rests_ms: i64,
    /// The network, as the shell last told of it; none before the first time.
    pub link: Option<Link>,
    /// The person's wishes.
    pub policy: Policy,
    /// The office's address, where this device joined it.
    pub office: Option<String>,
    /// This device has no office yet.
    pub nowhere: bool,
    /// The office lets this device in no more.
    pub revoked: bool,
    /// An attempt to join is under way.
    pub joining: bool,
    /// When the office last answered, UTC milliseconds.
    pub last_answer_utc_ms: Option<i64>,
    /// The office's clock beside this device's.
    pub skew: Option<Skew>,
}

/// A row of the outbox that is being sent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sending {
    /// Which.
    pub row: i64,
    /// How much of a photograph the office has, bytes; none for what is small.
    pub arrived: Option<u64>,
}
