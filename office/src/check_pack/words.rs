//! The words in which a pack is told of: the core's, the command's own, and the pack's.

use coilside_core::procedure::read::PackRead;
use coilside_core::words::{Words, WordsError};

use super::texts_of;

/// The command's own words in a language.
pub(super) fn of(language: &str) -> &'static str {
    match language {
        "es" => include_str!("es.ftl"),
        _ => include_str!("en.ftl"),
    }
}

/// Words with those of one pack.
pub(super) struct Told(Words);

impl Told {
    /// With the pack's own words. A pack whose words are broken is told of without them.
    ///
    /// # Errors
    /// Where the language is not spoken.
    pub(super) fn new(language: &str, read: &PackRead) -> Result<Told, WordsError> {
        match Words::new(language, Some(&texts_of(read, language))) {
            Ok(words) => Ok(Told(words)),
            Err(_) => Told::plain(language),
        }
    }

    /// Without a pack.
    ///
    /// # Errors
    /// Where the language is not spoken.
    pub(super) fn plain(language: &str) -> Result<Told, WordsError> {
        Ok(Told(Words::new(language, Some(of(language)))?))
    }

    pub(super) const fn words(&self) -> &Words {
        &self.0
    }

    pub(super) fn text(&self, key: &str) -> String {
        self.0.text(key)
    }

    pub(super) fn fill(&self, key: &str, values: &[(&str, &str)]) -> String {
        self.0.fill(key, values)
    }

    /// A thing of the pack with its name in the files: people know the one, writers the other.
    pub(super) fn named(&self, kind: &str, id: &str) -> String {
        format!("{} ({id})", self.0.text(&format!("{kind}-{id}")))
    }
}
