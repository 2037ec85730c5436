//! The shape, which tells faults and makes the schema, says the same as the types that the core works with.

use coilside_core::procedure::pack::{Act, ChemicalKind, Form, Hazard, Pack, Quantity};
use coilside_core::procedure::shape::{self, EVERY, PACK, Shape};
use serde::de::DeserializeOwned;

/// What serde expects in place of a field or word that nobody knows, out of its message.
fn expected(message: &str) -> Vec<String> {
    let (_, list) = message.split_once("expected").unwrap_or_else(|| panic!("no list in “{message}”"));
    let list = list.lines().next().unwrap();
    let mut words: Vec<_> = list.split('`').skip(1).step_by(2).map(str::to_owned).collect();
    words.sort();
    words
}

fn sorted(words: &[&str]) -> Vec<String> {
    let mut words: Vec<_> = words.iter().map(|word| (*word).to_owned()).collect();
    words.sort();
    words
}

/// A document in which one table has a field that nobody knows.
fn with_stranger(shape: &Shape) -> String {
    let head = "pack = \"p\"\nformat = 1\nversion = \"1.0.0\"\n";
    match shape.name {
        "pack" => format!("stranger = 1\n{head}"),
        "option" => format!("{head}[[condition]]\nid = \"c\"\noption = [{{ stranger = 1 }}]"),
        "step" => format!("{head}[[phase]]\nid = \"p\"\n[[phase.step]]\nstranger = 1"),
        "dwell" => format!("{head}[[phase]]\nid = \"p\"\n[[phase.step]]\nid = \"s\"\ndwell = {{ stranger = 1 }}"),
        name => format!("{head}[[{name}]]\nstranger = 1"),
    }
}

#[test]
fn every_table_has_the_fields_of_its_type() {
    for shape in EVERY {
        let error = toml::from_str::<Pack>(&with_stranger(shape)).unwrap_err();
        assert!(error.message().contains("unknown field `stranger`"), "{}: {}", shape.name, error.message());
        assert_eq!(expected(error.message()), sorted(&shape.names()), "the fields of {}", shape.name);
    }
    assert_eq!(EVERY[0].name, PACK.name);
}

#[track_caller]
fn same_words<T: DeserializeOwned + std::fmt::Debug>(words: &[&str]) {
    let error = serde_json::from_str::<T>("\"stranger\"").unwrap_err().to_string();
    assert_eq!(expected(&error), sorted(words));
}

#[test]
fn every_choice_has_the_words_of_its_type() {
    same_words::<Quantity>(shape::QUANTITIES);
    same_words::<Act>(shape::ACTS);
    same_words::<Hazard>(shape::HAZARDS);
    same_words::<ChemicalKind>(shape::CHEMICAL_KINDS);
    same_words::<Form>(shape::FORMS);
}
