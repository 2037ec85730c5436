//! What the engine itself costs, without a disk: a simulated world asks it millions of times.

use std::time::Instant;

use coilside_core::id::{Digest, VisitId};
use coilside_core::now::Now;
use coilside_core::store::{OutboxKind, OutboxRow};
use coilside_core::sync::{Answer, Network, Payload, Policy, Sender, Task, Waiting, meaning, what_of};
use coilside_core::visit::event::sha256;

fn row(id: i64, kind: OutboxKind) -> OutboxRow {
    OutboxRow {
        id,
        kind,
        visit: VisitId(format!("visit-{id}")),
        first: 0,
        count: 1,
        digest: Digest("ab".repeat(32)),
        media: "image/jpeg".into(),
        bytes: 3_000_000,
        why: String::new(),
        since_utc_ms: 0,
    }
}

/// Ten thousand requests and answers, with 64 rows of each kind to choose from. Measured on this project's machine: 15 µs
/// each without optimisation; the bound leaves room for a machine that does other work too.
#[test]
#[allow(clippy::disallowed_methods, reason = "what it costs is measured by the machine's own clock")]
fn a_request_and_its_answer_cost_less_than_a_millisecond_even_unoptimised() {
    let json = [("Content-Type".to_owned(), "application/json".to_owned())];
    let event = br#"{"kind":"step-done"}"#.to_vec();
    let head = sha256(&event);
    let body = serde_json::json!({ "next": 1, "head": head.0 }).to_string();
    let waiting = Waiting {
        small: (0..64).map(|id| row(id, OutboxKind::Events)).collect(),
        photos: (100..164).map(|id| row(id, OutboxKind::Photo)).collect(),
        ..Waiting::default()
    };
    let mut sender = Sender::new(None, false, Policy::default(), None);
    let mut now = Now { utc_ms: 0, offset_min: 0, mono_ms: 0, mono_epoch: "a".into() };
    let (mut events, mut failed) = (0, 0);
    let started = Instant::now();
    for turn in 0..10_000_u32 {
        now.utc_ms += 100;
        now.mono_ms += 100;
        for task in sender.next(&waiting, "04ab", Network::default(), &now) {
            let (request, row) = match task {
                Task::Ask(request) => (request, None),
                Task::Preview(row) => (sender.preview(&row, "/nowhere".into(), 1_000, &now), None),
                Task::Row { row, from } => {
                    let payload = match row.kind {
                        OutboxKind::Photo => Payload::Original("/nowhere".into()),
                        _ => Payload::Events(vec![event.clone()]),
                    };
                    let request = sender.request(&row, from, payload, "04ab", Network::default(), &now).unwrap();
                    (request, Some(row))
                }
            };
            let what = what_of(&request.id).unwrap();
            let fails = turn % 3 == 0;
            let answer = Answer {
                status: if fails { 0 } else { 200 },
                headers: &json,
                body: if row.is_none() { br#"{"known":true,"assignments":[]}"# } else { body.as_bytes() },
                came_utc_ms: now.utc_ms,
            };
            let meaning = meaning(&what, row.as_ref(), &answer, |_| Some(head.clone()));
            sender.heard(&request.id, row.as_ref(), &answer, &meaning, turn.wrapping_mul(2_654_435_761), &now);
            events += u32::from(row.is_some() && !fails);
            failed += u32::from(fails);
        }
    }
    let each_us = started.elapsed().as_micros() as f64 / 10_000.0;
    println!("{each_us} µs for a request and its answer, {events} rows sent, {failed} failures");
    assert!(events > 500 && failed > 200, "{events} rows, {failed} failures");
    assert!(each_us < 1_000.0, "{each_us} µs");
}
