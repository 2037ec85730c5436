//! The packs and words that pages are made with. Packs are read when the office opens; words of a pack in a language when a
//! page first needs them: all of them together would take more memory than everything else that the office holds.

use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

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
    /// By pack (empty for none) and language: made at their first use.
    words: BTreeMap<(String, Language), OnceLock<Words>>,
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
        let names = packs.iter().map(|loaded| loaded.digest.to_string()).chain([String::new()]);
        let words = names.flat_map(|name| Language::ALL.map(|language| ((name.clone(), language), OnceLock::new())));
        let words = words.collect();
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
        let name = pack.map_or(String::new(), |pack| pack.digest.to_string());
        let Some(place) = self.0.words.get(&(name, language)) else { return &self.0.plain };
        if let Some(words) = place.get() {
            return words;
        }
        match made(language, pack) {
            Ok(words) => place.get_or_init(|| words),
            // The tests keep the built-in ones from shipping so, and packs from elsewhere are read before they are taken.
            Err(_) => &self.0.plain,
        }
    }
}

fn made(language: Language, pack: Option<&LoadedPack>) -> Result<Words, WordsError> {
    let own = own_words(language);
    let of_pack = pack.and_then(|loaded| loaded.source.words.get(language.tag())).map_or("", String::as_str);
    Words::new(language.tag(), Some(&format!("{own}\n{of_pack}")))
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
    fn the_words_of_every_pack_can_be_read_in_every_language() {
        let library = Library::open().unwrap();
        for language in Language::ALL {
            assert!(made(language, None).is_ok());
            for pack in library.all() {
                assert!(made(language, Some(pack)).is_ok(), "{} in {}", pack.pack.pack, language.tag());
                assert_eq!(library.words(language, Some(pack)).language(), library.words(language, None).language());
            }
        }
    }

    #[test]
    fn every_word_is_there_in_both_languages() {
        assert!(keys(Language::English).len() > 80);
        assert_eq!(keys(Language::English), keys(Language::Spanish));
    }
}
