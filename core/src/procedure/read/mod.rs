//! From a pack's files, as somebody wrote them, to a pack that can be used, or to everything that is wrong with it.
//!
//! A pack from outside is read strictly here. A pack that a run pinned is read by [`super::library::from_pinned`], which
//! asks only that what it names is there: rules that came later do not shut a record.

mod advice;
mod cautions;
mod document;
mod fault;
pub(super) mod names;
mod order;
mod sense;
mod walk;
mod words;

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use self::document::Document;
pub use self::fault::{Fault, Spot};
use self::fault::{Found, Sink};
use super::check::{Fault as CheckFault, Proof, Verdict, prove};
use super::library::{LoadedPack, PackSource, assemble};
use super::pack::Pack;
use crate::id::StepId;
use crate::words::LANGUAGES;

/// The name of the file that holds the procedure.
pub const TOML: &str = "pack.toml";
/// A file of a pack is at most so large. Common sense, no source: the largest built-in one has 60 kB.
pub const FILE_BYTES_MAX: usize = 2_000_000;

/// A pack as it lies in a folder.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PackFolder {
    /// Where it comes from, as the person who put it there knows it.
    pub from: String,
    /// `pack.toml` and the words, `<language>.ftl`.
    pub files: Vec<PackFile>,
}

/// One file of a pack.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PackFile {
    /// Its name, without a folder.
    pub name: String,
    /// Its bytes. Of a file that is larger than [`FILE_BYTES_MAX`] one byte more than that is enough.
    pub bytes: Vec<u8>,
}

/// What reading came to.
#[derive(Clone, Debug)]
pub struct PackRead {
    /// The pack; none where there is a fault.
    pub loaded: Option<LoadedPack>,
    /// Its name and version as far as they could be read.
    pub name: String,
    /// See `name`.
    pub version: String,
    /// Its words by language, as far as they could be read: also a pack that is refused is told about in them.
    pub words: BTreeMap<String, String>,
    /// What the checker says of it; none where it could not be read.
    pub proof: Option<Proof>,
    /// What is wrong: the pack is refused.
    pub faults: Vec<Fault>,
    /// What could be better.
    pub advice: Vec<Fault>,
}

/// Reads a pack strictly, and proves it: a pack that the checker does not call safe is none.
#[must_use]
pub fn read(folder: &PackFolder) -> PackRead {
    let mut read = read_unproved(folder);
    if let Some(loaded) = &read.loaded {
        let proof = prove(&loaded.pack);
        read.faults = unproved(&proof, loaded);
        if !proof.is_proved() {
            read.loaded = None;
        }
        read.proof = Some(proof);
    }
    read
}

/// What the checker found, each at the step, question or setting that it is about. The ways themselves are in the proof.
fn unproved(proof: &Proof, loaded: &LoadedPack) -> Vec<Fault> {
    let document = Document::parse(&loaded.source.toml, &mut Sink::default());
    let fault = |path: Option<String>, rule, values| {
        let spot = path.zip(document.as_ref()).and_then(|(path, document)| document.spot(&path));
        Fault { file: TOML.to_owned(), spot, rule, values }
    };
    match &proof.verdict {
        Verdict::Proved => Vec::new(),
        Verdict::TooLarge(why) => vec![fault(None, "not-gone-through", vec![("why", why.clone())])],
        Verdict::Refused(examples) => examples
            .iter()
            .enumerate()
            .map(|(number, example)| {
                let values = vec![("number", (number + 1).to_string())];
                fault(concerned(&example.fault, &loaded.pack), "not-proved", values)
            })
            .collect(),
    }
}

/// The path of what a fault is about.
fn concerned(fault: &CheckFault, pack: &Pack) -> Option<String> {
    let of_step = |id: &StepId| {
        let mut steps = names::paths(pack);
        steps.find(|(_, step)| step.id == *id).map(|(path, _)| format!("{path}.id"))
    };
    match fault {
        CheckFault::Unguarded { step, .. } | CheckFault::Outside { step, .. } | CheckFault::Dead { step } => {
            of_step(step)
        }
        CheckFault::Trap { open } => open.first().and_then(of_step),
        CheckFault::Answer { condition, .. } => {
            let at = pack.conditions.iter().position(|one| one.id == *condition)?;
            Some(format!("condition[{at}].id"))
        }
        CheckFault::Away { excursion } => {
            let at = pack.excursions.iter().position(|one| one.id == *excursion)?;
            Some(format!("excursion[{at}].id"))
        }
        CheckFault::Left { .. } => None,
    }
}

/// Reads a pack strictly, without asking whether it is safe.
pub(crate) fn read_unproved(folder: &PackFolder) -> PackRead {
    let mut sink = Sink::default();
    let files = texts(folder, &mut sink);
    let mut read = PackRead {
        loaded: None,
        name: String::new(),
        version: String::new(),
        words: BTreeMap::new(),
        proof: None,
        faults: Vec::new(),
        advice: Vec::new(),
    };
    for language in LANGUAGES {
        if let Some(text) = files.get(&format!("{language}.ftl")) {
            read.words.insert((*language).to_owned(), text.clone());
        }
    }
    let pack = files.get(TOML).and_then(|toml| {
        let document = Document::parse(toml, &mut sink)?;
        read.name = document.text_of("pack");
        read.version = document.text_of("version");
        let pack = typed(&document, &mut sink)?;
        checks(&pack, &document, &mut sink);
        words::check(&pack, &document, &files, &mut sink);
        Some(pack)
    });
    if let Some(pack) = pack.filter(|_| sink.faults.is_empty()) {
        let toml = files.get(TOML).cloned().unwrap_or_default();
        match assemble(pack, PackSource { toml, words: read.words.clone() }) {
            Ok(loaded) => read.loaded = Some(loaded),
            Err(error) => sink.fault(TOML, None, "toml-malformed", vec![("detail", error.to_string())]),
        }
    }
    sink.sort();
    read.faults = sink.faults;
    read.advice = sink.advice;
    read
}

/// The files as text, by name. What cannot be read as text is a fault.
fn texts(folder: &PackFolder, sink: &mut Sink) -> BTreeMap<String, String> {
    let mut files = BTreeMap::new();
    for file in &folder.files {
        if file.bytes.len() > FILE_BYTES_MAX {
            sink.fault(&file.name, None, "file-large", vec![("most", (FILE_BYTES_MAX / 1_000_000).to_string())]);
            continue;
        }
        match std::str::from_utf8(&file.bytes) {
            // A mark of the byte order at the beginning is no word of the file. Lines end in a line feed for all readers.
            Ok(text) => {
                let text = text.strip_prefix('\u{feff}').unwrap_or(text).replace("\r\n", "\n");
                files.insert(file.name.clone(), text);
            }
            Err(error) => {
                let good = file.bytes.get(..error.valid_up_to()).unwrap_or_default();
                let spot = Spot::of(&String::from_utf8_lossy(good), error.valid_up_to());
                sink.fault(&file.name, Some(spot), "file-not-text", Vec::new());
            }
        }
    }
    if !folder.files.iter().any(|file| file.name == TOML) {
        sink.fault(TOML, None, "file-missing", Vec::new());
    }
    files
}

/// The document as a pack, once it has the shape of one.
fn typed(document: &Document<'_>, sink: &mut Sink) -> Option<Pack> {
    let before = sink.faults.len();
    walk::walk(document, sink);
    if sink.faults.len() > before {
        return None;
    }
    match toml::from_str(document.text()) {
        Ok(pack) => Some(pack),
        Err(error) => {
            // The walk knows the shape; whatever only the types know still has its place.
            let spot = error.span().map(|span| Spot::of(document.text(), span.start));
            sink.fault(TOML, spot, "toml-malformed", vec![("detail", one_line(error.message()))]);
            None
        }
    }
}

fn checks(pack: &Pack, document: &Document<'_>, sink: &mut Sink) {
    let mut faults = names::check(pack);
    faults.extend(sense::check(pack));
    faults.extend(order::check(pack));
    faults.extend(cautions::check(pack));
    for found in faults {
        let spot = document.spot(&found.path);
        sink.fault(TOML, spot, found.rule, found.values);
    }
    for found in advice::check(pack) {
        let spot = document.spot(&found.path);
        sink.advise(TOML, spot, found.rule, found.values);
    }
}

/// A message of a library on one line.
fn one_line(message: &str) -> String {
    message.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The known word that is most like the one that was written, where one is like it at all.
fn nearest<'a>(written: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let most = (written.chars().count() / 3).clamp(1, 4);
    let mut best: Option<(usize, &str)> = None;
    for word in known {
        let distance = strsim::damerau_levenshtein(written, word);
        if distance <= most && best.is_none_or(|(least, _)| distance < least) {
            best = Some((distance, word));
        }
    }
    best.map(|(_, word)| word)
}

/// A finding about a word that nobody knows: with the nearest known one where there is one, else with all of them.
fn unknown(
    rule: (&'static str, &'static str),
    mut values: Vec<(&'static str, String)>,
    written: &str,
    known: &[&str],
    path: String,
) -> Found {
    values.push(("choices", known.join(", ")));
    match nearest(written, known.iter().copied()) {
        Some(near) => {
            values.push(("near", near.to_owned()));
            Found { path, rule: rule.1, values }
        }
        None => Found { path, rule: rule.0, values },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_nearest_to_the_one_with_a_letter_wrong_and_to_none_that_differs_altogether() {
        assert_eq!(nearest("minuts", ["minutes", "parts"]), Some("minutes"));
        assert_eq!(nearest("caution", ["cautions", "acts"]), Some("cautions"));
        assert_eq!(nearest("colour", ["minutes", "parts"]), None);
    }
}
