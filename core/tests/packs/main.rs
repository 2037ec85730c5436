//! Packs as people write them: what is refused and with which words, the schema for editors, the guide for writers; and
//! what the checker says of each: the built-in ones are proved, and broken ones are caught.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

mod door;
mod faults;
mod guide;
mod proved;
mod schema;
mod shape;

use std::fs;
use std::path::{Path, PathBuf};

use coilside_core::procedure::read::{PackFile, PackFolder, PackRead, read};
use coilside_core::words::Words;

/// A folder beside this crate's manifest.
fn here(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// A pack's folder as a shell would hand it in.
fn folder(path: &Path) -> PackFolder {
    let mut files: Vec<PackFile> = fs::read_dir(path)
        .unwrap()
        .map(|entry| {
            let path = entry.unwrap().path();
            PackFile { name: path.file_name().unwrap().to_str().unwrap().to_owned(), bytes: fs::read(path).unwrap() }
        })
        .collect();
    files.sort_by(|one, other| one.name.cmp(&other.name));
    PackFolder { from: path.display().to_string(), files }
}

/// The smallest pack, sound.
fn small() -> PackFolder {
    folder(&here("tests/packs/small"))
}

/// The smallest pack with something replaced in one of its files. What is replaced must be there, once.
fn small_with(name: &str, from: &str, to: &str) -> PackFolder {
    let mut folder = small();
    let file = folder.files.iter_mut().find(|file| file.name == name).unwrap();
    let text = String::from_utf8(file.bytes.clone()).unwrap();
    assert_eq!(text.matches(from).count(), 1, "“{from}” is not there once in {name}");
    file.bytes = text.replace(from, to).into_bytes();
    folder
}

/// The folders of the built-in packs.
fn built_in() -> Vec<PathBuf> {
    let mut found: Vec<_> =
        fs::read_dir(here("packs")).unwrap().map(|entry| entry.unwrap().path()).filter(|path| path.is_dir()).collect();
    found.sort();
    assert!(!found.is_empty());
    found
}

/// Every fault as a person reads it: place, what, what to do.
fn told(read: &PackRead, language: &str) -> Vec<String> {
    let words = Words::new(language, None).unwrap();
    let line = |fault: &coilside_core::procedure::read::Fault| {
        format!("{} {} {}", fault.place(), fault.what(&words), fault.remedy(&words))
    };
    read.faults.iter().map(line).collect()
}

#[test]
fn every_built_in_pack_is_sound() {
    for path in built_in() {
        let read = read(&folder(&path));
        assert_eq!(told(&read, "en"), Vec::<String>::new(), "{}", path.display());
        assert!(read.loaded.is_some());
        // A role that the core knows and the shape does not would be told to writers as one that means nothing.
        let roles: Vec<_> = read.advice.iter().filter(|fault| fault.rule.starts_with("role-unknown")).collect();
        assert!(roles.is_empty(), "{}: {roles:?}", path.display());
    }
}

#[test]
fn the_smallest_pack_is_sound_and_needs_no_advice() {
    let read = read(&small());
    assert_eq!(told(&read, "en"), Vec::<String>::new());
    assert_eq!(read.advice, []);
    assert_eq!((read.name.as_str(), read.version.as_str()), ("fresh-air-box", "1.0.0"));
}
