//! The core as this process needs it, so that the rest can be tested without a store.

use std::{collections::BTreeMap, path::PathBuf};

use coilside_core::{action::Action, effect::Outcome, now::Now, screen::Turn};

use crate::problem::Problem;

/// A request to the office that the core wants sent.
pub(crate) struct SendRequest {
    /// Names it for `answered`.
    pub(crate) id: String,
    /// `GET`, `POST`, `PUT`, `PATCH` or `HEAD`.
    pub(crate) method: String,
    /// Below the office's address.
    pub(crate) path: String,
    /// Beside the authorization.
    pub(crate) headers: Vec<(String, String)>,
    /// What to send.
    pub(crate) body: SendBody,
}

/// The body of a request.
pub(crate) enum SendBody {
    /// None.
    Empty,
    /// These bytes.
    Bytes(Vec<u8>),
    /// A part of a file.
    File {
        /// Which.
        path: PathBuf,
        /// Where it begins, bytes.
        from: u64,
        /// How much, bytes.
        length: u64,
    },
}

/// The core's door. Every method may wait for the disk.
pub(crate) trait CoreDoor: Send + Sync + 'static {
    fn opened(&self, now: Now) -> Result<Turn, Problem>;
    fn act(&self, action_id: String, action: Action, now: Now) -> Result<Turn, Problem>;
    fn done(&self, effect_id: String, outcome: Outcome, now: Now) -> Result<Turn, Problem>;
    fn screen(&self, now: Now) -> Result<Turn, Problem>;
    fn words(&self) -> BTreeMap<String, String>;
    fn incoming(&self, effect_id: &str) -> Result<PathBuf, Problem>;
    fn preview(&self, digest: &str) -> Result<PathBuf, Problem>;
    fn next_requests(&self, now: Now) -> Result<Vec<SendRequest>, Problem>;
    fn answered(&self, request_id: String, status: u16, body: Vec<u8>, headers: Vec<(String, String)>, now: Now) -> Result<(), Problem>;
}
