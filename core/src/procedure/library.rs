//! The packs that come with the core, and the way from a pack's files to a pack that can be trusted to hang together.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::pack::Pack;
use super::read::{PackFile, PackFolder, TOML, names};
use crate::id::Digest;
use crate::visit::event::sha256;

/// A pack's files, as text. Its canonical bytes are what a run pins.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PackSource {
    /// `pack.toml`.
    pub toml: String,
    /// `<language>.ftl` by language.
    pub words: BTreeMap<String, String>,
}

/// A pack that was read and hangs together.
#[derive(Clone, Debug)]
pub struct LoadedPack {
    /// What it says.
    pub pack: Pack,
    /// Its files.
    pub source: PackSource,
    /// The bytes that a run pins, and their digest.
    pub bytes: Vec<u8>,
    /// SHA-256 of `bytes`.
    pub digest: Digest,
}

/// Why a pack was refused.
#[derive(Debug, thiserror::Error)]
pub enum PackError {
    /// Not readable as TOML of this format.
    #[error("pack.toml cannot be read: {0}")]
    Toml(String),
    /// Another format.
    #[error("pack '{pack}' is of format {format}; this version reads format 1")]
    Format {
        /// Whose.
        pack: String,
        /// Which.
        format: u32,
    },
    /// Something named is not there, or twice.
    #[error("pack '{pack}': {fault}")]
    Loose {
        /// Whose.
        pack: String,
        /// What, where, and what to do.
        fault: String,
    },
    /// The pinned bytes cannot be read.
    #[error("the stored pack cannot be read: {0}")]
    Pinned(String),
}

/// A pack's files under `core/packs`: `pack.toml` and the words of each language.
type Files = (&'static str, &'static [(&'static str, &'static str)]);

macro_rules! files {
    ($pack:literal) => {
        (
            include_str!(concat!("../../packs/", $pack, "/pack.toml")),
            &[
                ("en", include_str!(concat!("../../packs/", $pack, "/en.ftl"))),
                ("es", include_str!(concat!("../../packs/", $pack, "/es.ftl"))),
            ],
        )
    };
}

const BUILT_IN: &[Files] = &[
    files!("add-on-water-heater"),
    files!("tank-water-heater"),
    files!("split-r744-water-heater"),
    files!("monobloc-r290"),
    files!("pool-heater"),
];

/// The packs that come with the core.
///
/// # Errors
/// Where one does not hang together: the tests keep that from shipping.
pub fn built_in() -> Result<Vec<LoadedPack>, PackError> {
    BUILT_IN
        .iter()
        .map(|(toml, words)| {
            let words = words.iter().map(|(language, text)| ((*language).to_owned(), (*text).to_owned())).collect();
            load(PackSource { toml: (*toml).to_owned(), words })
        })
        .collect()
}

/// Reads a pack's files and checks that everything it names is there, no more: packs that were pinned once stay
/// readable. A pack from outside goes through [`super::read::read`], which asks for everything.
///
/// # Errors
/// What is wrong, where.
pub fn load(source: PackSource) -> Result<LoadedPack, PackError> {
    let pack: Pack = toml::from_str(&source.toml).map_err(|error| PackError::Toml(error.to_string()))?;
    if pack.format != 1 {
        return Err(PackError::Format { pack: pack.pack, format: pack.format });
    }
    if let Some(found) = names::check(&pack).into_iter().next() {
        return Err(PackError::Loose { pack: pack.pack, fault: found.text() });
    }
    assemble(pack, source)
}

/// A pack's files out of the bytes that a run pins, for a strict reading; none where they are no pack.
#[must_use]
pub fn folder_of(bytes: &[u8], from: &str) -> Option<PackFolder> {
    let source: PackSource = serde_json::from_slice(bytes).ok()?;
    let words = source.words.into_iter().map(|(language, text)| (format!("{language}.ftl"), text));
    let files = std::iter::once((TOML.to_owned(), source.toml)).chain(words);
    let files = files.map(|(name, text)| PackFile { name, bytes: text.into_bytes() }).collect();
    Some(PackFolder { from: from.to_owned(), files })
}

/// A pack with the bytes that a run pins.
pub(super) fn assemble(pack: Pack, source: PackSource) -> Result<LoadedPack, PackError> {
    let mut bytes = serde_json_canonicalizer::to_vec(&source).map_err(|error| PackError::Pinned(error.to_string()))?;
    // They stay for as long as the program runs, and were given twice their room while they grew.
    bytes.shrink_to_fit();
    let digest = sha256(&bytes);
    Ok(LoadedPack { pack, source, bytes, digest })
}

/// Reads a pack back from the bytes that a run pinned.
///
/// # Errors
/// Where the bytes are no pack.
pub fn from_pinned(bytes: &[u8]) -> Result<LoadedPack, PackError> {
    load(serde_json::from_slice(bytes).map_err(|error| PackError::Pinned(error.to_string()))?)
}
