//! The canned screens and the page's shapes agree with the core, and the page's words are there in every language.

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::{Path, PathBuf},
};

use coilside_core::screen::{Block, Turn};
use serde_json::Value;

fn here(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

fn scenes() -> BTreeMap<String, String> {
    let files = fs::read_dir(here("fixtures/scenes")).unwrap().map(|entry| entry.unwrap().path());
    files
        .map(|path| (path.file_stem().unwrap().to_str().unwrap().to_owned(), fs::read_to_string(path).unwrap()))
        .collect()
}

fn kinds(blocks: &[Block], found: &mut BTreeSet<String>) {
    for block in blocks {
        found.insert(serde_json::to_value(block).unwrap()["block"].as_str().unwrap().to_owned());
        if let Block::Step { blocks, .. } = block {
            kinds(blocks, found);
        }
    }
}

#[test]
fn every_canned_screen_is_one_that_the_core_could_have_sent() {
    for (name, text) in scenes() {
        let turn: Turn = serde_json::from_str(&text).unwrap_or_else(|why| panic!("{name}: {why}"));
        let again = serde_json::to_value(&turn).unwrap();
        assert_eq!(again, serde_json::from_str::<Value>(&text).unwrap(), "{name} holds what the core does not know");
    }
}

/// The kinds that `page/screen.d.ts` names are those that `page/blocks/all.js` must draw, or `tsc` fails.
#[test]
fn the_canned_screens_hold_every_block_kind_that_the_page_draws() {
    let shapes = fs::read_to_string(here("page/screen.d.ts")).unwrap();
    let drawn: BTreeSet<String> =
        shapes.split("block: '").skip(1).map(|rest| rest.split('\'').next().unwrap().to_owned()).collect();
    let mut shown = BTreeSet::new();
    for text in scenes().values() {
        kinds(&serde_json::from_str::<Turn>(text).unwrap().screen.blocks, &mut shown);
    }
    assert_eq!(drawn, shown);
}

fn words(language: &str) -> BTreeMap<String, String> {
    let text = fs::read_to_string(here(&format!("../core/src/words/{language}/shell.ftl"))).unwrap();
    let line = |line: &str| line.split_once(" = ").map(|(key, words)| (key.to_owned(), words.to_owned()));
    text.lines().filter(|line| !line.starts_with('#')).filter_map(line).collect()
}

fn keys_in(folder: &Path, found: &mut BTreeSet<String>) {
    for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        if path.is_dir() {
            keys_in(&path, found);
        } else if path.extension().is_some_and(|end| end == "js") {
            let text = fs::read_to_string(&path).unwrap();
            found.extend(text.split('\'').filter(|part| part.starts_with("shell-")).map(ToOwned::to_owned));
        }
    }
}

#[test]
fn every_word_that_the_page_uses_is_there_in_every_language() {
    let mut used = BTreeSet::new();
    keys_in(&here("page"), &mut used);
    // Put together in the page: the states of the link, and the kinds of problem that this crate answers with.
    for state in ["opening", "lost", "elsewhere", "shut"] {
        used.extend([format!("shell-{state}"), format!("shell-{state}-text")]);
    }
    used.extend(["too-large", "disk-full", "cut-short"].map(|kind| format!("shell-problem-{kind}")));
    for language in ["en", "es"] {
        let there = words(language);
        let missing: Vec<&String> = used.iter().filter(|key| !there.contains_key(*key)).collect();
        assert!(missing.is_empty(), "{language}: {missing:?}");
    }
}

/// The page draws what it is told. Words of the trade in it would mean that it thinks.
#[test]
fn the_page_knows_nothing_of_the_trade() {
    let mut texts = String::new();
    let mut folders = vec![here("page")];
    while let Some(folder) = folders.pop() {
        for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
            if path.is_dir() {
                folders.push(path);
            } else if path.file_name().unwrap() != "signs.js" {
                // The drawings are named after the core's kinds of hazard.
                texts.push_str(&fs::read_to_string(path).unwrap().to_lowercase().replace("coilside", ""));
            }
        }
    }
    for word in
        ["pump", "coil", "boiler", "heater", "refrigerant", "descal", "compressor", "acid", "exchanger", "valve"]
    {
        assert!(!texts.contains(word), "{word}");
    }
}
