//! Looking at screens, words and folders.

use std::collections::BTreeMap;

use coilside_core::procedure::library::built_in;
use coilside_core::screen::{Block, Notice, Screen};
use coilside_core::words::Words;

/// The words of a language with those of the built-in pack.
///
/// # Panics
/// Where they cannot be read: a fault of the sources.
#[must_use]
#[allow(clippy::expect_used, reason = "words that cannot be read are a fault of the sources")]
pub fn words(language: &str) -> Words {
    let pack = built_in().ok().and_then(|packs| packs.into_iter().next()).expect("there is a pack");
    Words::new(language, pack.source.words.get(language).map(String::as_str)).expect("the words can be read")
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
        Block::Choice { field, .. } | Block::Number { field, .. } | Block::TextEntry { field, .. } => field == wanted,
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
