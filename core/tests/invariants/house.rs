//! Who may lean on whom inside the core: one-way, as the design has it. These tests fail when it is broken.

use std::fs;
use std::path::{Path, PathBuf};

fn sources(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            found.push(path);
        }
    }
}

/// The parts of the core that some source leans on: every `crate::<part>`, in `use` lines and in paths, comments left out.
/// A group (`use crate::{a, b}`) names each of its members.
fn leans_on(source: &str) -> Vec<String> {
    let code: String =
        source.lines().map(|line| line.split("//").next().unwrap_or_default()).collect::<Vec<_>>().join("\n");
    let mut parts = Vec::new();
    for (at, _) in code.match_indices("crate::") {
        let rest = &code[at + "crate::".len()..];
        let is_word = |c: char| c.is_alphanumeric() || c == '_';
        if let Some(group) = rest.strip_prefix('{') {
            let inside = group.split('}').next().unwrap_or_default();
            let heads = inside.split(',').map(|part| part.trim().split(|c| !is_word(c)).next().unwrap_or_default());
            parts.extend(heads.filter(|head| !head.is_empty()).map(str::to_owned));
        } else {
            parts.push(rest.split(|c| !is_word(c)).next().unwrap_or_default().to_owned());
        }
    }
    parts
}

/// Every lean of a part on one that it may not know.
fn broken(part: &str, may_not: impl Fn(&str) -> bool) -> Vec<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    sources(&root.join(part), &mut files);
    assert!(!files.is_empty(), "the sources of '{part}' were not found");
    let mut broken = Vec::new();
    for file in files {
        let source = fs::read_to_string(&file).unwrap();
        for other in leans_on(&source).into_iter().filter(|other| may_not(other)) {
            broken.push(format!("{} leans on {other}", file.strip_prefix(&root).unwrap().display()));
        }
    }
    broken
}

#[test]
fn the_visit_knows_no_store_no_sending_and_no_screen() {
    assert_eq!(broken("visit", |other| matches!(other, "store" | "sync" | "screen" | "field")), Vec::<String>::new());
}

#[test]
fn science_leans_on_nothing_of_ours() {
    assert_eq!(broken("science", |other| other != "science"), Vec::<String>::new());
}

#[test]
fn procedures_know_no_store_no_sending_and_no_screen() {
    let may_not = |other: &str| matches!(other, "store" | "sync" | "screen" | "field" | "record" | "evidence");
    assert_eq!(broken("procedure", may_not), Vec::<String>::new());
}

#[test]
fn nothing_inside_leans_on_the_door() {
    for part in ["visit", "procedure", "science", "evidence", "record", "store", "sync", "screen", "round", "words"] {
        assert_eq!(broken(part, |other| other == "field"), Vec::<String>::new());
    }
}

#[test]
fn maps_inside_the_core_are_ordered() {
    let mut files = Vec::new();
    sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), &mut files);
    let unordered: Vec<_> = files
        .iter()
        .filter(|file| {
            let source = fs::read_to_string(file).unwrap();
            source.contains("HashMap") || source.contains("HashSet")
        })
        .collect();
    assert_eq!(unordered, Vec::<&PathBuf>::new());
}

#[test]
fn a_lean_is_found_in_every_way_of_writing_it() {
    for source in [
        "use crate::store::Store;",
        "use crate::{id::Digest, store};",
        "fn f() { crate::store::open() }",
        "pub(crate) use crate::store as shelf;",
    ] {
        assert!(leans_on(source).contains(&"store".to_owned()), "{source}");
    }
    assert_eq!(leans_on("// see crate::store\nuse crate::id::Digest;"), ["id"]);
}
