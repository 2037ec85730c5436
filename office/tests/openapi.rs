//! The interface as it is written down: `openapi.json` is what the program comes to, and `protocol.md` names its parts.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

#[cfg(test)]
mod support;

use std::collections::BTreeSet;

use serde_json::Value;
use support::Bench;

const KEPT: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/openapi.json");

#[test]
fn the_document_that_is_kept_is_the_one_that_the_program_makes() {
    let made = coilside_office::openapi().unwrap();
    if std::env::var_os("UPDATE_SCHEMA").is_some() {
        std::fs::write(KEPT, &made).unwrap();
    }
    let kept = std::fs::read_to_string(KEPT).unwrap_or_default();
    assert!(made == kept, "UPDATE_SCHEMA=1 cargo test -p coilside-office --test openapi writes it anew");
}

#[tokio::test]
async fn anyone_may_read_the_document() {
    let bench = Bench::new().await;
    let answer = bench.call_as("", "GET", "/openapi.json", None).await;
    assert_eq!((answer.status.as_u16(), answer.header("content-type")), (200, "application/json"));
    assert_eq!(answer.text(), coilside_office::openapi().unwrap());
}

#[tokio::test]
async fn every_address_of_the_document_is_one_and_wants_a_token_where_it_says_so() {
    let bench = Bench::new().await;
    let document: Value = serde_json::from_str(&coilside_office::openapi().unwrap()).unwrap();
    let mut seen = 0;
    for (path, methods) in document["paths"].as_object().unwrap() {
        let path = path.replace("{visit}", "visit-1").replace("{digest}", &"0".repeat(64));
        for (method, told) in methods.as_object().unwrap() {
            let answer = bench.call_as("", &method.to_uppercase(), &path, Some(Value::Null)).await;
            let is_open = told["security"] == serde_json::json!([{}]);
            let status = answer.status.as_u16();
            assert!(status != 405 && (is_open || status == 401), "{method} {path}: {status}");
            assert!(told["responses"].get(status.to_string()).is_some(), "{method} {path} does not tell {status}");
            seen += 1;
        }
    }
    assert_eq!(seen, 17);
}

#[test]
fn the_prose_tells_every_kind_of_refusal_that_the_document_names() {
    let document = coilside_office::openapi().unwrap();
    let prose = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/protocol.md")).unwrap();
    let document: Value = serde_json::from_str(&document).unwrap();
    let mut kinds = BTreeSet::new();
    for methods in document["paths"].as_object().unwrap().values() {
        for told in methods.as_object().unwrap().values() {
            for (status, response) in told["responses"].as_object().unwrap() {
                if status.starts_with('4') {
                    let words = response["description"].as_str().unwrap();
                    kinds.extend(
                        words
                            .split('`')
                            .skip(1)
                            .step_by(2)
                            .filter(|word| word.bytes().all(|b| b.is_ascii_lowercase() || b == b'-'))
                            .map(str::to_owned),
                    );
                }
            }
        }
    }
    // Words in code that are members of a refusal, and no kinds.
    let members = ["next", "head", "kept", "conflict_at"];
    for kind in kinds.iter().filter(|kind| !members.contains(&kind.as_str())) {
        assert!(prose.contains(&format!("`{kind}`")), "protocol.md does not tell what to do on '{kind}'");
    }
    assert!(kinds.len() > 20, "{kinds:?}");
}
