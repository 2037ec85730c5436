//! Sending: only the office's own word makes anything safe; failures wait longer and longer; what is stuck says why.

use coilside_core::action::Action;
use coilside_core::screen::{Block, Tone};
use coilside_core::sync::{SendBody, SendRequest};

use crate::bench::Bench;
use crate::office::{HTML, Headers, answer, have, header, introduced, is_all_safe, next, next_events, outbox};

#[test]
fn a_page_with_status_200_makes_nothing_safe() {
    let mut bench = Bench::begun();
    let mut seen = std::collections::BTreeSet::new();
    let mut good = false;
    for _ in 0..40 {
        let Some(request) = next(&mut bench) else { break };
        let kind = request.id.split(':').next().unwrap().to_owned();
        seen.insert(kind.clone());
        bench.field().answered(&request.id, 200, &header("content-type", "text/html"), HTML, &bench.now).unwrap();
        good |= is_all_safe(&bench);
        // On to the next kind, as the office would.
        let request = next(&mut bench).unwrap();
        match request.id.as_str() {
            "device" => answer(&bench, &request, 200, &Headers::new(), r#"{"known":true}"#),
            "news" => answer(&bench, &request, 200, &Headers::new(), r#"{"assignments":[]}"#),
            _ => answer(&bench, &request, 0, &Headers::new(), ""),
        }
    }
    assert!(!good, "a page made something safe");
    assert_eq!(seen.into_iter().collect::<Vec<_>>(), ["device", "events", "news"]);
}

#[test]
fn events_are_safe_only_when_the_offices_last_one_is_ours() {
    let mut bench = Bench::begun();
    introduced(&mut bench);
    let request = next(&mut bench).unwrap();
    assert_eq!((request.method.as_str(), request.path), ("POST", format!("/api/v1/visits/{}/events", bench.id())));
    let SendBody::Bytes(body) = &request.body else { panic!() };
    let sent: serde_json::Value = serde_json::from_slice(body).unwrap();
    let texts: Vec<Vec<u8>> =
        sent["events"].as_array().unwrap().iter().map(|event| event.as_str().unwrap().as_bytes().to_vec()).collect();
    assert_eq!((sent["first"].as_u64(), texts), (Some(0), bench.events()), "the original bytes, from the first on");
    let wrong = serde_json::json!({ "next": 3, "head": "ab".repeat(32) }).to_string();
    bench.field().answered(&request.id, 200, &Headers::new(), wrong.as_bytes(), &bench.now).unwrap();
    assert!(!is_all_safe(&bench), "another head with status 200");
    let request = next(&mut bench).unwrap();
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    assert!(is_all_safe(&bench));
    let id = bench.id();
    assert!(bench.store().is_safe(&id).unwrap());
}

#[test]
fn a_conflict_with_our_own_head_goes_on_from_what_the_office_has() {
    let mut bench = Bench::begun();
    introduced(&mut bench);
    // The answer to the first try was lost: the office has it all already.
    let request = next(&mut bench).unwrap();
    answer(&bench, &request, 409, &Headers::new(), &have(&bench, 3));
    assert!(is_all_safe(&bench));
    // The office was set back to a copy of last night: it lacks what was thought safe, and gets it again.
    bench.draft("skip:fit-to-run", "Damp");
    bench.act(&Action::Skip { step: "fit-to-run".into() }).unwrap();
    let request = next_events(&mut bench);
    answer(&bench, &request, 409, &Headers::new(), &have(&bench, 1));
    let request = next_events(&mut bench);
    let SendBody::Bytes(body) = &request.body else { panic!() };
    let first = serde_json::from_slice::<serde_json::Value>(body).unwrap()["first"].as_u64().unwrap();
    assert!(first <= 1, "sent from {first} on");
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 4));
    assert!(is_all_safe(&bench));
}

#[test]
fn a_conflict_with_another_head_is_stuck_and_says_so_until_a_person_hurries_it() {
    let mut bench = Bench::begun();
    introduced(&mut bench);
    let request = next(&mut bench).unwrap();
    let other = serde_json::json!({ "next": 3, "head": "cd".repeat(32) }).to_string();
    answer(&bench, &request, 409, &Headers::new(), &other);
    assert_stuck(&mut bench, "the office has other events from 0 on");
    let events = bench.events();
    // Both branches survive: nothing of ours is changed or dropped.
    bench.act(&Action::SendNow).unwrap();
    assert_eq!(bench.events(), events);
    let request = next_events(&mut bench);
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    assert!(is_all_safe(&bench));
}

/// The outbox says why it is stuck, on its own screen and in the line of every screen.
fn assert_stuck(bench: &mut Bench, why: &str) {
    let screen = outbox(bench);
    assert_eq!((screen.outbox.value.as_str(), screen.outbox.tone), ("stuck: look here", Tone::Attention));
    let said = screen.blocks.iter().any(|block| match block {
        Block::Table { rows, .. } => rows.iter().flatten().any(|cell| cell.contains(why)),
        _ => false,
    });
    assert!(said, "“{why}” is not on {:#?}", screen.blocks);
}

#[test]
fn a_refusal_in_the_offices_own_words_is_stuck_with_them_and_a_hurry_unsticks_it() {
    let mut bench = Bench::begun();
    introduced(&mut bench);
    let request = next(&mut bench).unwrap();
    let problem = r#"{"type":"about:blank","title":"The visit is not yours","status":403,"detail":"It was given to another device."}"#;
    answer(&bench, &request, 403, &header("content-type", "application/problem+json"), problem);
    assert_stuck(&mut bench, "The visit is not yours: It was given to another device.");
    bench.pass_ms(3_600_000);
    let after = next(&mut bench).unwrap();
    assert_eq!(after.id, "news", "what is stuck is not tried again by itself");
    answer(&bench, &after, 200, &Headers::new(), r#"{"assignments":[]}"#);
    bench.act(&Action::SendNow).unwrap();
    let request = next_events(&mut bench);
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    assert!(is_all_safe(&bench));
}

#[test]
fn a_refusal_that_is_not_the_offices_is_tried_again_by_itself() {
    let mut bench = Bench::begun();
    introduced(&mut bench);
    for status in [403, 404, 407, 511] {
        let request = next_events(&mut bench);
        bench.field().answered(&request.id, status, &Headers::new(), HTML, &bench.now).unwrap();
        assert_ne!(bench.field().screen(&bench.now).unwrap().screen.outbox.value, "stuck: look here", "{status}");
    }
    let request = next_events(&mut bench);
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    assert!(is_all_safe(&bench));
}

/// How long nothing goes out from now on, milliseconds, to the tenth of a second.
fn rest_ms(bench: &mut Bench) -> (i64, SendRequest) {
    for waited in 0..20_000 {
        if let Some(request) = bench.field().next_requests(&bench.now).unwrap().into_iter().next() {
            return (waited * 100, request);
        }
        bench.pass_ms(100);
    }
    panic!("nothing goes out any more");
}

#[test]
fn failures_in_a_row_wait_longer_and_longer_but_never_more_than_a_minute() {
    for status in [0, 500, 503, 429] {
        let mut bench = Bench::begun();
        let mut waits = Vec::new();
        let mut request = next(&mut bench).unwrap();
        for _ in 0..10 {
            answer(&bench, &request, status, &Headers::new(), "");
            let (waited, again) = rest_ms(&mut bench);
            assert_eq!(again.id, request.id, "the same is tried again");
            waits.push(waited);
            request = again;
        }
        assert!(waits[0] >= 500 && waits[0] < 3_000, "{status}: {waits:?}");
        assert!(waits.windows(2).all(|pair| pair[1] >= pair[0]), "{status}: {waits:?}");
        assert!(waits[9] > 30_000 && waits[9] <= 61_000, "{status}: {waits:?}");
        answer(&bench, &request, 200, &Headers::new(), r#"{"known":true}"#);
        assert_eq!(rest_ms(&mut bench).0, 0, "a success ends the rest");
    }
}

#[test]
fn the_office_may_ask_for_a_longer_rest() {
    let mut bench = Bench::begun();
    let request = next(&mut bench).unwrap();
    answer(&bench, &request, 503, &header("Retry-After", "120"), "");
    let (waited, request) = rest_ms(&mut bench);
    assert!((120_000..122_000).contains(&waited), "{waited}");
    // A person who wants it now does not wait.
    answer(&bench, &request, 503, &header("retry-after", "3600"), "");
    bench.act(&Action::SendNow).unwrap();
    assert_eq!(rest_ms(&mut bench).0, 0);
}

#[test]
fn a_request_that_is_never_answered_is_given_up_and_made_again() {
    let mut bench = Bench::begun();
    let request = next(&mut bench).unwrap();
    let (waited, again) = rest_ms(&mut bench);
    assert_eq!((waited, &again.id), (90_000, &request.id));
    // Its late answer still counts.
    answer(&bench, &request, 200, &Headers::new(), r#"{"known":true}"#);
    assert_eq!(next(&mut bench).unwrap().id, "news");
}
