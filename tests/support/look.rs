//! Looking at screens, words and folders.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use coilside_core::procedure::library::{LoadedPack, built_in};
use coilside_core::screen::{Block, Notice, Screen};
use coilside_core::words::Words;

/// A built-in pack by its name.
///
/// # Panics
/// Where there is none: a fault of the test or of the sources.
#[must_use]
#[allow(clippy::expect_used, reason = "a pack that cannot be read is a fault of the sources")]
pub fn pack(name: &str) -> &'static LoadedPack {
    packs().iter().find(|loaded| loaded.pack.pack == name).expect("there is a pack of this name")
}

/// Every built-in pack, read once.
///
/// # Panics
/// Where they cannot be read: a fault of the sources.
#[must_use]
#[allow(clippy::expect_used, reason = "packs that cannot be read are a fault of the sources")]
pub fn packs() -> &'static [LoadedPack] {
    static PACKS: OnceLock<Vec<LoadedPack>> = OnceLock::new();
    PACKS.get_or_init(|| built_in().expect("the built-in packs can be read"))
}

/// The words of a language with those of the add-on pack.
///
/// # Panics
/// Where they cannot be read: a fault of the sources.
#[must_use]
pub fn words(language: &str) -> Words {
    words_of(language, crate::ADD_ON)
}

/// The words of a language with those of a built-in pack.
///
/// # Panics
/// Where they cannot be read: a fault of the sources.
#[must_use]
#[allow(clippy::expect_used, reason = "words that cannot be read are a fault of the sources")]
pub fn words_of(language: &str, name: &str) -> Words {
    let of_pack = pack(name).source.words.get(language).map(String::as_str);
    Words::new(language, of_pack).expect("the words can be read")
}

/// The step that the screen of now puts first.
#[must_use]
pub fn next_step(screen: &Screen) -> Option<&str> {
    screen.blocks.iter().filter(|_| screen.place == "now").find_map(|block| match block {
        Block::Step { id, .. } => Some(id.as_str()),
        _ => None,
    })
}

/// A block of a step by the field that it fills.
#[must_use]
pub fn field_block<'a>(screen: &'a Screen, wanted: &str) -> Option<&'a Block> {
    inner_blocks(screen).find(|block| match block {
        Block::Choice { field, .. }
        | Block::Number { field, .. }
        | Block::TextEntry { field, .. }
        | Block::Ink { field, .. } => field == wanted,
        Block::Shot { slot, .. } => slot == wanted,
        _ => false,
    })
}

/// Every block of a screen, those inside of steps too.
pub fn inner_blocks(screen: &Screen) -> impl Iterator<Item = &Block> {
    screen.blocks.iter().flat_map(|block| {
        let inside = match block {
            Block::Step { blocks, .. } => blocks.as_slice(),
            _ => &[],
        };
        std::iter::once(block).chain(inside)
    })
}

/// Every line of the notices, titles first.
#[must_use]
pub fn notice_lines(notices: &[Notice]) -> Vec<String> {
    notices.iter().flat_map(|notice| std::iter::once(&notice.title).chain(&notice.lines)).cloned().collect()
}

/// The names of a folder's files with their lengths.
///
/// # Errors
/// Where the folder cannot be read.
pub fn files(folder: &std::path::Path) -> std::io::Result<BTreeMap<String, u64>> {
    std::fs::read_dir(folder)?
        .map(|entry| {
            let entry = entry?;
            Ok((entry.file_name().to_string_lossy().into_owned(), entry.metadata()?.len()))
        })
        .collect()
}
