//! What the office's own records say about a unit goes out with its next assignment.

#[cfg(test)]
mod support;

use coilside_core::visit::event::{Body, Severity};
use serde_json::{Value, json};
use support::Bench;
use support::visit::{Written, assignment};

/// The only unit of the only open assignment, as a device gets it.
async fn unit(bench: &Bench) -> Value {
    let news = bench.get("/assignments").await.json();
    let open = news.get("assignments").and_then(Value::as_array).map(Vec::len);
    assert_eq!(open, Some(1), "{news}");
    news.pointer("/assignments/0/units/0").cloned().unwrap_or_default()
}

/// Carried over from a past visit, as the phone does at the start.
fn carry(visit: &mut Written, text: &str, since: &str) {
    let (severity, text) = (Severity::Soon, text.to_owned());
    visit.add(Body::FindingAdded { unit: "A".into(), severity, text, since: Some(since.into()) });
}

#[tokio::test]
async fn a_sealed_visit_is_history_for_the_next_one() {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill House", "en"));
    let mut visit = Written::begin("visit-1", "a-1");
    visit.read("air-on-found", "17.5", "0.5");
    visit.find(Severity::Soon, "Anode nearly gone.");
    visit.find(Severity::Note, "Two fins combed.");
    visit.find(Severity::Unsafe, "Lid does not close.");
    visit.add(Body::FindingMended { unit: "A".into(), finding: 2, words: "Hinge changed.".into() });
    let mut next = assignment("a-2", "Mill House", "en");
    next["units"][0]["history"] =
        json!([{ "reading": "air-on-found", "value": "16.0", "unit": "Cel", "date": "2025-02-20" }]);
    next["units"][0]["last_service"] = json!("2025-02-20");
    next["units"][0]["findings"] = json!([{ "severity": "soon", "text": "Pipe bare.", "date": "2025-02-20" }]);
    next["units"][0]["past_minutes"] = json!([100]);
    next["units"][0]["shelf"] = json!("a word of the office's own");
    let given = next["units"][0].clone();

    // Open and unsealed: nobody can vouch for it yet.
    bench.assign(&next);
    bench.send(&visit.id, 0, &visit.events).await;
    assert_eq!(unit(&bench).await, given);

    visit.freeze(true, &[]);
    visit.send_sealed(&bench).await;
    let unit = unit(&bench).await;
    assert_eq!(
        unit["history"],
        json!([
            { "reading": "air-on-found", "value": "16.0", "unit": "Cel", "date": "2025-02-20" },
            { "reading": "air-on-found", "value": "17.5", "unit": "Cel", "date": "2026-03-02" },
        ])
    );
    assert_eq!(
        unit["findings"],
        json!([
            { "severity": "soon", "text": "Pipe bare.", "date": "2025-02-20" },
            { "severity": "soon", "text": "Anode nearly gone.", "date": "2026-03-02" },
            { "severity": "note", "text": "Two fins combed.", "date": "2026-03-02" },
        ]),
        "what that visit never heard of stands, what it mended does not"
    );
    assert_eq!(unit["last_service"], "2026-03-02");
    // Eight events after the first, one a minute.
    assert_eq!(unit["past_minutes"], json!([100, 7]));
    assert_eq!(unit["shelf"], given["shelf"], "what the office knows beside stays");
}

#[tokio::test]
async fn a_finding_goes_on_until_a_visit_mends_it() {
    let bench = Bench::new().await;
    for id in ["a-1", "a-2"] {
        bench.assign(&assignment(id, "Mill House", "en"));
    }
    let mut first = Written::begin("visit-1", "a-1");
    first.find(Severity::Soon, "Anode nearly gone.");
    first.freeze(true, &[]);
    first.send_sealed(&bench).await;
    let mut second = Written::begin("visit-2", "a-2");
    carry(&mut second, "Anode nearly gone.", "2026-03-02");
    carry(&mut second, "Pipe bare.", "2025-02-20");
    second.add(Body::FindingMended { unit: "A".into(), finding: 0, words: "New anode.".into() });
    second.freeze(true, &[]);
    second.send_sealed(&bench).await;
    bench.assign(&assignment("a-3", "Mill House", "en"));
    assert_eq!(
        unit(&bench).await["findings"],
        json!([{ "severity": "soon", "text": "Pipe bare.", "date": "2025-02-20" }]),
        "it keeps the day on which it was found"
    );
}

#[tokio::test]
async fn a_visit_that_is_not_complete_counts_as_no_service_but_its_readings_stay() {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill House", "en"));
    let mut visit = Written::begin("visit-1", "a-1");
    visit.read("air-on-found", "17.5", "0.5");
    visit.freeze(false, &["The coil was not cleaned."]);
    visit.send_sealed(&bench).await;
    let mut other = assignment("a-2", "Mill House", "en");
    bench.assign(&other);
    let told = unit(&bench).await;
    assert_eq!((&told["last_service"], &told["past_minutes"]), (&Value::Null, &Value::Null));
    assert_eq!(told["history"][0]["value"], "17.5");
    // Another unit knows nothing of it.
    other["units"][0]["unit"] = json!("u-2");
    bench.assign(&other);
    assert_eq!(unit(&bench).await["history"], json!([]));
}
