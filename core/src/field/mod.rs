//! The one door: open, act, done, screen. Nothing here but hand-overs between the parts.

mod act;
mod addendum;
mod assigned;
mod chain;
mod desk;
mod entropy;
mod going_on;
mod handover;
mod join;
mod outcome;
mod packs;
mod photo;
mod record;
mod send;
mod shown;
mod view;

pub use record::RecordError;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use desk::Desk;
pub use handover::Handover;

use crate::action::Action;
use crate::effect::Outcome;
use crate::id::{Digest, VisitId};
use crate::now::Now;
use crate::procedure::library::PackError;
use crate::record::seal::SealError;
use crate::screen::Turn;
use crate::store::shelf::{FolderShelf, ShelfError};
use crate::store::{Store, StoreError};
use crate::visit::event::ChainError;
use crate::words::WordsError;

/// What a shell hands in at opening.
#[derive(Clone, Debug)]
pub struct Setup {
    /// Where everything lies.
    pub folder: String,
    /// Fresh random bytes, at least 32.
    pub entropy: Vec<u8>,
    /// When.
    pub now: Now,
    /// The language where the person has chosen none yet; `en` where it is not spoken.
    pub language: Option<String>,
    /// The device's public P-256 key, SEC1 uncompressed.
    pub public_key: Vec<u8>,
}

/// Why the door did not do what it was asked. Nothing was lost.
#[derive(Debug, thiserror::Error)]
pub enum DoorError {
    /// The store failed.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// The shelf failed.
    #[error(transparent)]
    Shelf(#[from] ShelfError),
    /// The log does not hold together.
    #[error(transparent)]
    Chain(#[from] ChainError),
    /// A pack is not sound.
    #[error(transparent)]
    Pack(#[from] PackError),
    /// Words are not there.
    #[error(transparent)]
    Words(#[from] WordsError),
    /// The seal failed.
    #[error(transparent)]
    Seal(#[from] SealError),
    /// Too little randomness.
    #[error("the shell handed in {0} random bytes; hand in at least 32")]
    Entropy(usize),
    /// No such thing.
    #[error("there is no {what} '{name}'; go back to the round and begin again from there")]
    NoSuch {
        /// Of which kind.
        what: &'static str,
        /// Its name.
        name: String,
    },
}

/// The core of one device. All calls may come from any thread, one at a time goes on.
pub struct Field {
    shelf: FolderShelf,
    desk: Mutex<Desk>,
}

impl Field {
    /// Opens what lies in a folder, or begins there. Photographs that arrived while nobody listened are taken in.
    ///
    /// # Errors
    /// Where the folder cannot be used, is in use, or was written by a later version.
    pub fn open(setup: Setup) -> Result<Field, DoorError> {
        if setup.entropy.len() < 32 {
            return Err(DoorError::Entropy(setup.entropy.len()));
        }
        let folder = Path::new(&setup.folder);
        let shelf = FolderShelf::new(folder)?;
        let store = Store::open(folder)?;
        let desk = Desk::new(store, shelf.clone(), &setup)?;
        let field = Field { shelf, desk: Mutex::new(desk) };
        field.adopt_orphans(&setup.now)?;
        field.desk().witness(&setup.now)?;
        Ok(field)
    }

    /// The screen, with every request that is still open: for a shell that has just started.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn opened(&self, now: &Now) -> Result<Turn, DoorError> {
        let desk = self.desk();
        Ok(Turn { screen: desk.show(now)?, effects: desk.store.open_effects()? })
    }

    /// Does an action. A repeated `action_id` comes to what it came to the first time.
    ///
    /// # Errors
    /// Where the store fails; a refusal is no error but stands on the screen.
    pub fn act(&self, action_id: &str, action: &Action, now: &Now) -> Result<Turn, DoorError> {
        self.desk().act(action_id, action, now)
    }

    /// Takes the outcome of a request. It may come late, twice or never.
    ///
    /// # Errors
    /// Where the store fails or the request is not known.
    pub fn done(&self, effect_id: &str, outcome: &Outcome, now: &Now) -> Result<Turn, DoorError> {
        match outcome {
            Outcome::Photo { place } => self.photo_came(effect_id, place.as_ref(), now),
            _ => self.desk().ended(effect_id, outcome, now),
        }
    }

    /// The screen as it is now.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn screen(&self, now: &Now) -> Result<Turn, DoorError> {
        Ok(Turn { screen: self.desk().show(now)?, effects: Vec::new() })
    }

    /// The shell's own words in the language of the screens.
    #[must_use]
    pub fn words(&self) -> BTreeMap<String, String> {
        self.desk().shell_words()
    }

    /// Where a shell puts the original bytes of an effect's photograph.
    ///
    /// # Errors
    /// Where the id is none.
    pub fn incoming(&self, effect_id: &str) -> Result<PathBuf, DoorError> {
        Ok(self.shelf.incoming_path(&incoming_name(effect_id))?)
    }

    /// Where a photograph's preview lies.
    #[must_use]
    pub fn preview(&self, digest: &Digest) -> PathBuf {
        self.shelf.preview_path(digest)
    }

    /// Where a photograph's original lies.
    #[must_use]
    pub fn original(&self, digest: &Digest) -> PathBuf {
        self.shelf.original_path(digest)
    }

    /// The stored bytes of a visit's events.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn events(&self, visit: &VisitId) -> Result<Vec<Vec<u8>>, DoorError> {
        Ok(self.desk().store.events(visit, 0)?)
    }

    /// The visit that the screen is about.
    #[must_use]
    pub fn current_visit(&self) -> Option<VisitId> {
        self.desk().visit_id()
    }

    /// Limits the database's pages, to rehearse a full disk.
    ///
    /// # Errors
    /// Where SQLite turns it down.
    pub fn limit_pages(&self, pages: u32) -> Result<(), DoorError> {
        Ok(self.desk().store.limit_pages(pages)?)
    }

    fn desk(&self) -> MutexGuard<'_, Desk> {
        // A panic elsewhere leaves what is in the store true, and the desk is only a view of it.
        self.desk.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// An effect's id as a file name.
fn incoming_name(effect_id: &str) -> String {
    effect_id.replace('/', "_")
}

/// The effect that an incoming file answers.
fn effect_of(name: &str) -> String {
    name.replace('_', "/")
}
