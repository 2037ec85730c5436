//! The packs and words that pages are made with. Packs are read when the office opens; words of a pack in a language when a
//! page first needs them: all of them together would take more memory than everything else that the office holds.

use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

use coilside_core::procedure::library::{LoadedPack, PackError, built_in};
use coilside_core::visit::state::Visit;
use coilside_core::words::{Words, WordsError};

use super::language::Language;

/// The program's own packs do not hang together. The tests keep that from shipping.
#[derive(Debug, thiserror::Error)]
pub enum LibraryError {
    /// A pack.
    #[error("a built-in procedure cannot be read; this copy of the program is damaged")]
    Pack(#[from] PackError),
}

/// Packs, and words in every language with each pack.
#[derive(Clone)]
pub(crate) struct Library(Arc<Shelf>);

struct Shelf {
    packs: Vec<LoadedPack>,
    /// By pack (empty for none) and language: made at their first use.
    words: BTreeMap<(String, Language), OnceLock<Words>>,
    /// Where there are none.
    gaps: Words,
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
        Ok(Self::of(built_in()?))
    }

    /// The built-in packs, and others beside them.
    pub(crate) fn with(others: Vec<LoadedPack>) -> Result<Self, LibraryError> {
        let mut packs = built_in()?;
        packs.extend(others);
        Ok(Self::of(packs))
    }

    fn of(packs: Vec<LoadedPack>) -> Self {
        let names = packs.iter().map(|loaded| loaded.digest.to_string()).chain([String::new()]);
        let words = names.flat_map(|name| Language::ALL.map(|language| ((name.clone(), language), OnceLock::new())));
        let words = words.collect();
        Self(Arc::new(Shelf { packs, words, gaps: Words::none(Language::English.tag()) }))
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

    /// The office's words, with those of a pack. The tests keep built-in ones that cannot be read from shipping, and packs from
    /// elsewhere are read before they are taken; still, a page does without a pack's words rather than fail.
    pub(crate) fn words(&self, language: Language, pack: Option<&LoadedPack>) -> &Words {
        let of_pack = pack.and_then(|pack| self.made_once(pack.digest.to_string(), language, Some(pack)));
        of_pack.or_else(|| self.made_once(String::new(), language, None)).unwrap_or(&self.0.gaps)
    }

    /// The words in their place, made where this is their first use; none where they have no place or cannot be read.
    fn made_once(&self, name: String, language: Language, pack: Option<&LoadedPack>) -> Option<&Words> {
        let place = self.0.words.get(&(name, language))?;
        match place.get() {
            Some(words) => Some(words),
            None => made(language, pack).ok().map(|words| place.get_or_init(|| words)),
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
            assert_ne!(library.words(language, None).text("office-office"), "office-office");
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
