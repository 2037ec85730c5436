//! The packs and words that pages are made with, read once when the office opens.

use std::collections::BTreeMap;
use std::sync::Arc;

use coilside_core::procedure::library::{LoadedPack, PackError, built_in};
use coilside_core::visit::state::Visit;
use coilside_core::words::{Words, WordsError};

use super::language::Language;

/// The program's own words or packs do not hang together. The tests keep that from shipping.
#[derive(Debug, thiserror::Error)]
pub enum LibraryError {
    /// A pack.
    #[error("a built-in procedure cannot be read; this copy of the program is damaged")]
    Pack(#[from] PackError),
    /// Words.
    #[error("the built-in words cannot be read; this copy of the program is damaged")]
    Words(#[from] WordsError),
}

/// Packs, and words in every language with each pack.
#[derive(Clone)]
pub(crate) struct Library(Arc<Shelf>);

struct Shelf {
    packs: Vec<LoadedPack>,
    /// By pack (empty for none) and language.
    words: BTreeMap<(String, Language), Words>,
    plain: Words,
}

/// The pack of a visit, as far as this office has it.
#[derive(Clone, Copy)]
pub(crate) struct Found<'a> {
    pub(crate) pack: &'a LoadedPack,
    /// It is the very one that the visit pinned, not another version.
    pub(crate) pinned: bool,
}

impl Library {
    pub(crate) fn open() -> Result<Self, LibraryError> {
        Self::of(built_in()?)
    }

    /// The built-in packs, and others beside them.
    pub(crate) fn with(others: Vec<LoadedPack>) -> Result<Self, LibraryError> {
        let mut packs = built_in()?;
        packs.extend(others);
        Self::of(packs)
    }

    fn of(packs: Vec<LoadedPack>) -> Result<Self, LibraryError> {
        let mut words = BTreeMap::new();
        for language in Language::ALL {
            let own = own_words(language);
            words.insert((String::new(), language), Words::new(language.tag(), Some(own))?);
            for loaded in &packs {
                let of_pack = loaded.source.words.get(language.tag()).map_or("", String::as_str);
                let both = format!("{own}\n{of_pack}");
                words.insert((loaded.digest.to_string(), language), Words::new(language.tag(), Some(&both))?);
            }
        }
        let plain = Words::new(Language::English.tag(), Some(own_words(Language::English)))?;
        Ok(Self(Arc::new(Shelf { packs, words, plain })))
    }

    /// The pack that the visit pinned, else another version of the same pack.
    pub(crate) fn pack_of(&self, visit: &Visit) -> Option<Found<'_>> {
        let run = visit.runs.values().next()?;
        let same = self.0.packs.iter().find(|loaded| loaded.digest == run.pack_digest);
        let named = || self.0.packs.iter().find(|loaded| loaded.pack.pack == run.pack);
        same.or_else(named).map(|pack| Found { pack, pinned: pack.digest == run.pack_digest })
    }

    /// Every pack, with the bytes that runs pin.
    pub(crate) fn all(&self) -> &[LoadedPack] {
        &self.0.packs
    }

    /// The pack of that name.
    pub(crate) fn pack_named(&self, name: &str) -> Option<&LoadedPack> {
        self.0.packs.iter().find(|loaded| loaded.pack.pack == name)
    }

    /// The office's words, with those of a pack.
    pub(crate) fn words(&self, language: Language, pack: Option<&LoadedPack>) -> &Words {
        let pack = pack.map_or(String::new(), |pack| pack.digest.to_string());
        self.0.words.get(&(pack, language)).unwrap_or(&self.0.plain)
    }
}

const fn own_words(language: Language) -> &'static str {
    match language {
        Language::English => include_str!("../words/en.ftl"),
        Language::Spanish => include_str!("../words/es.ftl"),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    fn keys(language: Language) -> BTreeSet<&'static str> {
        let lines = own_words(language).lines().filter(|line| line.starts_with("office-"));
        lines.filter_map(|line| line.split_once(" =")).map(|(key, _)| key).collect()
    }

    #[test]
    fn every_word_is_there_in_both_languages() {
        assert!(keys(Language::English).len() > 80);
        assert_eq!(keys(Language::English), keys(Language::Spanish));
    }
}
