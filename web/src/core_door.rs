//! The core as this process needs it, so that the rest can be tested without a store.

use std::{collections::BTreeMap, path::PathBuf};

use axum::http::StatusCode;
use coilside_core::{
    action::Action,
    effect::Outcome,
    field::{DoorError, Field, Handover},
    id::Digest,
    now::Now,
    procedure::read::PackFolder,
    screen::Turn,
    store::{StoreError, shelf::ShelfError},
    sync::{Network, SendRequest, SignAsked},
};

use crate::problem::Problem;

/// The core's door. Every method may wait for the disk.
pub(crate) trait CoreDoor: Send + Sync + 'static {
    fn opened(&self, now: Now) -> Result<Turn, Problem>;
    fn act(&self, action_id: String, action: Action, now: Now) -> Result<Turn, Problem>;
    fn done(&self, effect_id: String, outcome: Outcome, now: Now) -> Result<Turn, Problem>;
    fn screen(&self, now: Now) -> Result<Turn, Problem>;
    fn packs(&self, folders: Vec<PackFolder>, now: Now) -> Result<Turn, Problem>;
    fn charged(&self, percent: Option<u8>);
    fn words(&self) -> BTreeMap<String, String>;
    fn incoming(&self, effect_id: &str) -> Result<PathBuf, Problem>;
    fn preview(&self, digest: &str) -> Result<PathBuf, Problem>;
    fn handover(&self, office: Option<&str>) -> Result<Handover, Problem>;
    fn next_requests(&self, network: Network, now: Now) -> Result<Vec<SendRequest>, Problem>;
    fn next_sign(&self) -> Option<SignAsked>;
    fn signed(&self, id: &str, signature_base64: &str) -> Result<(), Problem>;
    fn answered(
        &self,
        request_id: String,
        status: u16,
        body: Vec<u8>,
        headers: Vec<(String, String)>,
        now: Now,
    ) -> Result<(), Problem>;
}

impl CoreDoor for Field {
    fn opened(&self, now: Now) -> Result<Turn, Problem> {
        Ok(Field::opened(self, &now)?)
    }

    fn act(&self, action_id: String, action: Action, now: Now) -> Result<Turn, Problem> {
        Ok(Field::act(self, &action_id, &action, &now)?)
    }

    fn done(&self, effect_id: String, outcome: Outcome, now: Now) -> Result<Turn, Problem> {
        Ok(Field::done(self, &effect_id, &outcome, &now)?)
    }

    fn screen(&self, now: Now) -> Result<Turn, Problem> {
        Ok(Field::screen(self, &now)?)
    }

    fn packs(&self, folders: Vec<PackFolder>, now: Now) -> Result<Turn, Problem> {
        Ok(Field::packs(self, &folders, &now)?)
    }

    fn charged(&self, percent: Option<u8>) {
        Field::charged(self, percent);
    }

    fn words(&self) -> BTreeMap<String, String> {
        Field::words(self)
    }

    fn incoming(&self, effect_id: &str) -> Result<PathBuf, Problem> {
        Ok(Field::incoming(self, effect_id)?)
    }

    fn preview(&self, digest: &str) -> Result<PathBuf, Problem> {
        Ok(Field::preview(self, &Digest::from(digest)))
    }

    fn handover(&self, office: Option<&str>) -> Result<Handover, Problem> {
        Ok(Field::handover(self, office)?)
    }

    fn next_requests(&self, network: Network, now: Now) -> Result<Vec<SendRequest>, Problem> {
        Ok(Field::next_requests(self, network, &now)?)
    }

    fn next_sign(&self) -> Option<SignAsked> {
        Field::next_sign(self)
    }

    fn signed(&self, id: &str, signature_base64: &str) -> Result<(), Problem> {
        Ok(Field::signed(self, id, signature_base64)?)
    }

    fn answered(
        &self,
        request_id: String,
        status: u16,
        body: Vec<u8>,
        headers: Vec<(String, String)>,
        now: Now,
    ) -> Result<(), Problem> {
        Ok(Field::answered(self, &request_id, status, &headers, &body, &now)?)
    }
}

impl From<DoorError> for Problem {
    fn from(error: DoorError) -> Self {
        match &error {
            DoorError::Store(StoreError::Full) | DoorError::Shelf(ShelfError::Full { .. }) => Self::disk_full(),
            DoorError::NoSuch { .. } | DoorError::Shelf(ShelfError::Name(_)) => {
                Self::new(StatusCode::NOT_FOUND, "unknown", "Not here", error.to_string())
            }
            _ => Self::inside(error.to_string()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_full_disk_has_its_own_answer_whoever_met_it() {
        let store = Problem::from(DoorError::Store(StoreError::Full));
        let shelf = Problem::from(DoorError::Shelf(ShelfError::Full { name: "a photograph".into() }));
        for problem in [store, shelf] {
            assert_eq!((problem.status, problem.kind), (StatusCode::INSUFFICIENT_STORAGE, "disk-full"));
        }
    }
}
