//! The packs that come with the core, and the way from a pack's files to a pack that can be trusted to hang together.

use std::collections::{BTreeMap, BTreeSet};

use serde::{Deserialize, Serialize};

use super::pack::Pack;
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

/// Reads a pack's files and checks that everything it names is there.
///
/// # Errors
/// What is wrong, where.
pub fn load(source: PackSource) -> Result<LoadedPack, PackError> {
    let pack: Pack = toml::from_str(&source.toml).map_err(|error| PackError::Toml(error.to_string()))?;
    if pack.format != 1 {
        return Err(PackError::Format { pack: pack.pack, format: pack.format });
    }
    if let Some(fault) = faults(&pack).into_iter().next() {
        return Err(PackError::Loose { pack: pack.pack, fault });
    }
    let bytes = serde_json_canonicalizer::to_vec(&source).map_err(|error| PackError::Pinned(error.to_string()))?;
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

/// Everything that the pack names and does not have, or has twice.
#[must_use]
pub fn faults(pack: &Pack) -> Vec<String> {
    let mut faults = Vec::new();
    let mut unique = |kind: &str, ids: Vec<&str>| {
        let mut seen = BTreeSet::new();
        for id in &ids {
            if !seen.insert(*id) {
                faults.push(format!("the {kind} '{id}' is there twice; give one of them another id"));
            }
        }
        seen.into_iter().map(str::to_owned).collect::<BTreeSet<String>>()
    };
    let steps = unique("step", pack.steps().map(|(_, step)| step.id.as_str()).collect());
    let phases = unique("phase", pack.phases.iter().map(|phase| phase.id.as_str()).collect());
    let readings = unique("reading", pack.readings.iter().map(|reading| reading.id.as_str()).collect());
    let shots = unique("shot", pack.shots.iter().map(|shot| shot.id.as_str()).collect());
    let mixes = unique("mix", pack.mixes.iter().map(|mix| mix.id.as_str()).collect());
    let excursions = unique("excursion", pack.excursions.iter().map(|excursion| excursion.id.as_str()).collect());
    let conditions = unique("condition", pack.conditions.iter().map(|condition| condition.id.as_str()).collect());
    let instruments = unique("instrument", pack.instruments.iter().map(|instrument| instrument.id.as_str()).collect());

    let chemicals = unique("chemical", pack.chemicals.iter().map(|chemical| chemical.id.as_str()).collect());
    let parts = unique("part", pack.parts.iter().map(|part| part.id.as_str()).collect());
    let gear = unique("gear", pack.gear.iter().map(|gear| gear.id.as_str()).collect());

    let mut named = |kind: &str, known: &BTreeSet<String>, id: &str, by: &str| {
        if !known.contains(id) {
            faults.push(format!("{by} names the {kind} '{id}', which is not there"));
        }
    };
    for reading in &pack.readings {
        let by = format!("reading '{}'", reading.id);
        reading.instrument.iter().for_each(|id| named("instrument", &instruments, id, &by));
        reading.as_found.iter().for_each(|id| named("reading", &readings, id.as_str(), &by));
    }
    for shot in &pack.shots {
        shot.before.iter().for_each(|id| named("shot", &shots, id.as_str(), &format!("shot '{}'", shot.id)));
    }
    for mix in &pack.mixes {
        let by = format!("mix '{}'", mix.id);
        let ways = [&mix.parts_water, &mix.percent, &mix.dose, &mix.cups, &mix.bucket, &mix.fills, &mix.vessel];
        for id in ways.into_iter().flatten().chain([&mix.total]) {
            named("reading", &readings, id.as_str(), &by);
        }
        mix.chemical.iter().for_each(|id| named("chemical", &chemicals, id, &by));
    }
    for excursion in &pack.excursions {
        let by = format!("excursion '{}'", excursion.id);
        excursion.shot.iter().for_each(|id| named("shot", &shots, id.as_str(), &by));
    }
    for phase in &pack.phases {
        phase.after.iter().for_each(|id| named("phase", &phases, id.as_str(), &format!("phase '{}'", phase.id)));
    }
    for (_, step) in pack.steps() {
        let by = format!("step '{}'", step.id);
        step.after.iter().for_each(|id| named("step", &steps, id.as_str(), &by));
        step.readings.iter().for_each(|id| named("reading", &readings, id.as_str(), &by));
        step.shots.iter().for_each(|id| named("shot", &shots, id.as_str(), &by));
        step.asks.iter().for_each(|id| named("condition", &conditions, id.as_str(), &by));
        step.mix.iter().for_each(|id| named("mix", &mixes, id, &by));
        step.parts.iter().for_each(|id| named("part", &parts, id, &by));
        step.gear.iter().for_each(|id| named("gear", &gear, id, &by));
        step.opens.iter().chain(&step.homes).for_each(|id| named("excursion", &excursions, id.as_str(), &by));
        for when in &step.when {
            named("condition", &conditions, when.condition.as_str(), &by);
        }
    }
    for (_, step) in pack.steps() {
        for when in &step.when {
            let condition = pack.condition(when.condition.as_str());
            if condition.is_some_and(|condition| !condition.options.iter().any(|option| option.id == when.option)) {
                faults.push(format!(
                    "step '{}' asks for {}={}, which is no answer",
                    step.id, when.condition, when.option
                ));
            }
        }
    }
    faults
}
