//! The exported functions as the sources of the core list them: nothing can be exported without standing here.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

const ATTRIBUTE: &str = "#[uniffi::export";

/// Each function's name with the names by which a refusal may call its arguments, its records' fields among them. The arguments
/// themselves come first, in their order.
pub(crate) fn exported() -> BTreeMap<String, Vec<String>> {
    let mut files = Vec::new();
    rust_files(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src/science"), &mut files);
    let sources: Vec<String> = files.iter().map(|file| fs::read_to_string(file).unwrap()).collect();
    let records: BTreeMap<_, _> =
        sources.iter().flat_map(|source| after(source, "pub struct ")).filter_map(record).collect();
    let mut functions = BTreeMap::new();
    for text in sources.iter().flat_map(|source| after(source, ATTRIBUTE)) {
        let (name, mut arguments) = signature(text).expect("no function after an export");
        let types: Vec<_> = arguments.iter().map(|(_, kind)| kind.clone()).collect();
        for kind in types {
            arguments.extend(fields_within(&kind, &records, &mut BTreeSet::new()));
        }
        let names = arguments.into_iter().map(|(name, _)| name).collect();
        assert!(functions.insert(name.clone(), names).is_none(), "{name} is exported twice");
    }
    assert!(functions.len() >= 34, "only {} exported functions were found", functions.len());
    functions
}

/// A name and its type.
type Typed = (String, String);

fn rust_files(folder: &Path, files: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            rust_files(&path, files);
        } else if path.extension().is_some_and(|end| end == "rs") {
            files.push(path);
        }
    }
}

fn after<'a>(source: &'a str, mark: &'a str) -> impl Iterator<Item = &'a str> {
    source.split(mark).skip(1)
}

/// The function that a text begins with, and its arguments.
fn signature(text: &str) -> Option<(String, Vec<Typed>)> {
    let (_, rest) = text.split_once("pub fn ")?;
    let (name, rest) = rest.split_once('(')?;
    let (arguments, _) = rest.split_once(')')?;
    Some((name.to_owned(), arguments.split(',').filter_map(typed).collect()))
}

/// The record that a text begins with, and its fields.
fn record(text: &str) -> Option<(String, Vec<Typed>)> {
    let (name, rest) = text.split_once(" {")?;
    let (fields, _) = rest.split_once('}')?;
    Some((name.to_owned(), after(fields, "pub ").filter_map(|field| typed(field.split_once(",\n")?.0)).collect()))
}

fn typed(text: &str) -> Option<Typed> {
    let (name, kind) = text.split_once(':')?;
    Some((name.trim().to_owned(), kind.trim().to_owned()))
}

/// The fields of every record that a type names, and of those within them.
fn fields_within(kind: &str, records: &BTreeMap<String, Vec<Typed>>, seen: &mut BTreeSet<String>) -> Vec<Typed> {
    let mut found = Vec::new();
    for word in kind.split(|c: char| !c.is_alphanumeric()) {
        if let Some(fields) = records.get(word)
            && seen.insert(word.to_owned())
        {
            for field in fields {
                found.push(field.clone());
                found.extend(fields_within(&field.1, records, seen));
            }
        }
    }
    found
}
