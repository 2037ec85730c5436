//! The JSON Schema beside the packs is the one of this core, and it takes and refuses what the reader does.

use std::fs;

use coilside_core::procedure::shape::schema;
use jsonschema::Validator;
use serde_json::Value;

use super::{built_in, here, small, small_with};

fn validator() -> Validator {
    let schema: Value = serde_json::from_str(&schema()).unwrap();
    jsonschema::draft202012::new(&schema).unwrap()
}

fn document(toml: &[u8]) -> Value {
    toml::from_str(std::str::from_utf8(toml).unwrap()).unwrap()
}

fn pack_toml(folder: &coilside_core::procedure::read::PackFolder) -> Value {
    document(&folder.files.iter().find(|file| file.name == "pack.toml").unwrap().bytes)
}

#[test]
fn the_schema_that_lies_beside_the_packs_is_the_one_of_this_core() {
    let path = here("packs/pack.schema.json");
    if std::env::var_os("UPDATE_SCHEMA").is_some() {
        fs::write(&path, schema()).unwrap();
    }
    let lies = fs::read_to_string(&path).unwrap_or_default();
    assert!(lies == schema(), "it is stale: UPDATE_SCHEMA=1 cargo test -p coilside-core --test packs writes it anew");
}

#[test]
fn the_schema_is_itself_a_schema() {
    let schema: Value = serde_json::from_str(&schema()).unwrap();
    assert!(jsonschema::meta::is_valid(&schema));
}

#[test]
fn every_built_in_pack_and_the_smallest_one_fit_the_schema() {
    let validator = validator();
    let mut packs: Vec<_> =
        built_in().iter().map(|path| document(&fs::read(path.join("pack.toml")).unwrap())).collect();
    packs.push(pack_toml(&small()));
    for pack in packs {
        let errors: Vec<_> =
            validator.iter_errors(&pack).map(|error| format!("{}: {error}", error.instance_path())).collect();
        assert_eq!(errors, Vec::<String>::new());
    }
}

#[test]
fn a_broken_pack_does_not_fit_the_schema() {
    let validator = validator();
    for (from, to) in [
        ("minutes = 3\n\n[[phase.step]]\nid = \"draw", "minuts = 3\n\n[[phase.step]]\nid = \"draw"),
        ("sets = [\"tag=tagged\"]", "sets = [\"tag=hung\"]"),
        ("kind = \"neutral\"\n", ""),
        ("format = 1", "format = 2"),
        ("error-limit = \"0.5\"", "error-limit = 0.5"),
        ("least-s = 300", "least-s = \"300\""),
        ("cautions = [\"shock\", \"fan\"]", "cautions = [\"shok\"]"),
        ("option = [{ id = \"washable\" }, { id = \"paper\" }]", "option = [{ id = \"washable\" }]"),
    ] {
        assert!(!validator.is_valid(&pack_toml(&small_with("pack.toml", from, to))), "{to}");
    }
}
