//! The JSON Schema beside the core takes what is written, and no more than what the reader takes.

use std::collections::BTreeSet;

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use coilside_core::record::file::document::Document;
use jsonschema::Validator;
use serde_json::{Value, json};

use crate::bench::{Visit, files};

fn schema() -> Value {
    serde_json::from_str(include_str!("../../record.schema.json")).unwrap()
}

/// The schema of one of its definitions.
fn part(name: &str) -> Validator {
    let schema =
        json!({ "$schema": schema()["$schema"], "$defs": schema()["$defs"], "$ref": format!("#/$defs/{name}") });
    jsonschema::draft202012::new(&schema).unwrap()
}

fn record() -> Value {
    serde_json::from_slice(&files(&Visit::whole().file())["record.json"]).unwrap()
}

fn payload(jws: &Value) -> Value {
    let payload = jws.as_str().unwrap().split('.').nth(1).unwrap().to_owned();
    serde_json::from_slice(&URL_SAFE_NO_PAD.decode(payload).unwrap()).unwrap()
}

/// The customer's name and signature, as they are enclosed.
fn signed() -> Value {
    let files = files(&Visit::signed_by("Edda Marsh").file());
    let (_, bytes) = files.iter().find(|(name, _)| name.starts_with("customer/")).unwrap();
    serde_json::from_slice(bytes).unwrap()
}

/// Everything in a record that the schema tells of: its definition and the value.
fn parts() -> Vec<(&'static str, Value)> {
    let record = record();
    let office = record["offices"][0].clone();
    let files = files(&Visit::whole().file());
    let enclosed = String::from_utf8(files["office.jws"].clone()).unwrap();
    let mut parts = vec![
        ("seal", payload(&record["seals"][0])),
        ("certificate", payload(&office["certificate"])),
        ("receipt", payload(&office["receipts"][0])),
        ("enclosed", payload(&json!(enclosed))),
        ("personal", serde_json::from_slice(&files["personal.json"]).unwrap()),
        ("office", office),
        ("customer", signed()),
    ];
    let events = record["events"].as_array().unwrap().iter();
    parts.extend(events.map(|text| ("event", serde_json::from_str(text.as_str().unwrap()).unwrap())));
    parts
}

#[test]
fn the_schema_is_itself_a_schema_and_a_record_fits_it() {
    assert!(jsonschema::meta::is_valid(&schema()));
    let validator = jsonschema::draft202012::new(&schema()).unwrap();
    let errors: Vec<String> = validator.iter_errors(&record()).map(|error| error.to_string()).collect();
    assert_eq!(errors, Vec::<String>::new());
    for (name, value) in parts() {
        let errors: Vec<String> = part(name).iter_errors(&value).map(|error| error.to_string()).collect();
        assert_eq!(errors, Vec::<String>::new(), "{name}: {value}");
    }
}

#[test]
fn the_schema_names_every_field_that_is_written_and_no_other() {
    let keys = |value: &Value| value.as_object().unwrap().keys().cloned().collect::<BTreeSet<_>>();
    assert_eq!(keys(&schema()["properties"]), keys(&record()));
    for (name, value) in parts().into_iter().filter(|(name, _)| *name != "event") {
        assert_eq!(keys(&schema()["$defs"][name]["properties"]), keys(&value), "{name}");
    }
}

#[test]
fn what_does_not_fit_the_schema_is_not_read_either() {
    let validator = jsonschema::draft202012::new(&schema()).unwrap();
    let fits = |value: &Value| (validator.is_valid(value), serde_json::from_value::<Document>(value.clone()).is_ok());
    assert_eq!(fits(&record()), (true, true));
    for name in ["format", "visit", "events", "seals", "offices"] {
        let mut without = record();
        without.as_object_mut().unwrap().remove(name);
        assert_eq!(fits(&without), (false, false), "{name}");
    }
    let mut more = record();
    more["note"] = json!("x");
    assert_eq!(fits(&more), (false, false));
    let mut more = record();
    more["offices"][0]["name"] = json!("x");
    assert_eq!(fits(&more), (false, false));
    let mut other = record();
    other["events"][0] = json!({});
    assert_eq!(fits(&other), (false, false));
}
