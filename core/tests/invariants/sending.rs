//! Sending: only the office's own word makes anything safe; failures wait longer and longer; what is stuck says why.
//!
//! The answers below are written as the office's protocol has them: JSON of its own, problems after RFC 9457, uploads
//! after tus 1.0.0 (offsets in `Upload-Offset`), waits after `Retry-After` (RFC 9110, 10.2.3).

use std::io::Cursor;

use coilside_core::action::Action;
use coilside_core::effect::Outcome;
use coilside_core::screen::{Block, Screen, Tone};
use coilside_core::sync::{SendBody, SendRequest};
use coilside_core::visit::event::{NO_PREV, sha256};

use crate::bench::Bench;

type Headers = Vec<(String, String)>;

fn header(name: &str, value: &str) -> Headers {
    vec![(name.to_owned(), value.to_owned())]
}

const HTML: &[u8] = b"<!doctype html><title>Welcome to the hotel's network</title>";

/// The next request, letting time go by while the engine rests; none where nothing goes out within ten minutes.
fn next(bench: &mut Bench) -> Option<SendRequest> {
    for _ in 0..600 {
        if let Some(request) = bench.field().next_requests(&bench.now).unwrap().into_iter().next() {
            return Some(request);
        }
        bench.pass_ms(1_000);
    }
    None
}

fn answer(bench: &Bench, request: &SendRequest, status: u16, headers: &Headers, body: &str) {
    bench.field().answered(&request.id, status, headers, body.as_bytes(), &bench.now).unwrap();
}

/// The office knows the device and has no news: what comes next is the outbox.
fn introduced(bench: &mut Bench) {
    for body in [r#"{"known":true}"#, r#"{"assignments":[]}"#] {
        let request = next(bench).unwrap();
        answer(bench, &request, 200, &Headers::new(), body);
    }
}

fn outbox(bench: &mut Bench) -> Screen {
    bench.act(&Action::Go { to: "outbox".into() }).unwrap().screen
}

fn is_all_safe(bench: &Bench) -> bool {
    bench.field().screen(&bench.now).unwrap().screen.outbox.tone == Tone::Good
}

/// The office's answer about the events before `next`, with the digest of the last of them.
fn have(bench: &Bench, next: u64) -> String {
    let events = bench.events();
    let head = next.checked_sub(1).map_or(NO_PREV.to_owned(), |last| sha256(&events[last as usize]).0);
    serde_json::json!({ "next": next, "head": head }).to_string()
}

/// Takes requests until the events are at the office; every request that carries events is answered as it should be.
fn events_sent(bench: &mut Bench) {
    for _ in 0..100 {
        let Some(request) = next(bench) else { return };
        if request.id == "news" {
            answer(bench, &request, 200, &Headers::new(), r#"{"assignments":[]}"#);
        } else if request.id.starts_with("events:") {
            let all = bench.events().len() as u64;
            answer(bench, &request, 200, &Headers::new(), &have(bench, all));
        } else {
            // What comes after the events is given back as if the net had failed.
            answer(bench, &request, 0, &Headers::new(), "");
            return;
        }
    }
    panic!("the events never got through");
}

fn jpeg(bytes: usize) -> Vec<u8> {
    let mut picture = Cursor::new(Vec::new());
    image::DynamicImage::new_rgb8(8, 8).write_to(&mut picture, image::ImageFormat::Jpeg).unwrap();
    let mut picture = picture.into_inner();
    picture.resize(bytes - 2, 0x55);
    picture.extend([0xff, 0xd9]);
    picture
}

/// A visit with a photograph of so many bytes, its events at the office.
fn with_photo(bytes: usize) -> (Bench, Vec<u8>) {
    let mut bench = Bench::begun();
    let effect = bench.act(&Action::Shoot { slot: "casing-before".into() }).unwrap().effects.remove(0);
    let picture = jpeg(bytes);
    std::fs::write(bench.field().incoming(&effect.id).unwrap(), &picture).unwrap();
    bench.done(&effect.id, &Outcome::Photo { place: None }).unwrap();
    introduced(&mut bench);
    events_sent(&mut bench);
    (bench, picture)
}

/// The next request that carries the photograph.
fn photo_request(bench: &mut Bench) -> SendRequest {
    loop {
        let request = next(bench).unwrap();
        if request.id.starts_with("photo:") {
            return request;
        }
        assert_eq!(request.id, "news");
        answer(bench, &request, 200, &Headers::new(), r#"{"assignments":[]}"#);
    }
}

fn head_of(request: &SendRequest, name: &str) -> String {
    request.headers.iter().find(|(known, _)| known == name).unwrap().1.clone()
}

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
    let (mut bench, _) = with_photo(4_000);
    for stage in ["POST", "HEAD", "PATCH", "GET"] {
        let request = photo_request(&mut bench);
        bench.field().answered(&request.id, 200, &Headers::new(), HTML, &bench.now).unwrap();
        assert!(!is_all_safe(&bench), "{stage}");
        walk_to(&mut bench, stage);
        let request = photo_request(&mut bench);
        assert_eq!(request.method, stage);
        bench.field().answered(&request.id, 200, &Headers::new(), HTML, &bench.now).unwrap();
        assert!(!is_all_safe(&bench), "{stage}");
    }
}

/// Brings the photograph to the stage before the request of that method.
fn walk_to(bench: &mut Bench, method: &str) {
    let steps: &[(u16, &str)] = match method {
        "POST" => &[],
        "HEAD" => &[(201, "")],
        "PATCH" => &[(201, ""), (200, "0")],
        _ => &[(201, ""), (200, "4000")],
    };
    for (status, offset) in steps {
        let request = photo_request(bench);
        let headers = if offset.is_empty() { Headers::new() } else { header("Upload-Offset", offset) };
        answer(bench, &request, *status, &headers, "");
    }
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

fn next_events(bench: &mut Bench) -> SendRequest {
    loop {
        let request = next(bench).unwrap();
        if request.id.starts_with("events:") {
            return request;
        }
        answer(bench, &request, 200, &Headers::new(), r#"{"assignments":[]}"#);
    }
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

#[test]
fn a_photograph_goes_in_slices_and_is_safe_only_with_its_receipt() {
    let (mut bench, picture) = with_photo(2_600_000);
    let digest = sha256(&picture);
    let request = photo_request(&mut bench);
    assert_eq!((request.method.as_str(), request.path.as_str()), ("POST", "/api/v1/photos"));
    assert_eq!(head_of(&request, "Upload-Length"), "2600000");
    answer(&bench, &request, 201, &Headers::new(), "");
    let request = photo_request(&mut bench);
    assert_eq!((request.method.as_str(), request.path.clone()), ("HEAD", format!("/api/v1/photos/{digest}")));
    answer(&bench, &request, 200, &header("Upload-Offset", "0"), "");
    let mut sent: Vec<u8> = Vec::new();
    while sent.len() < picture.len() {
        let request = photo_request(&mut bench);
        assert_eq!((request.method.as_str(), head_of(&request, "Upload-Offset")), ("PATCH", sent.len().to_string()));
        let SendBody::File { path, from, length } = &request.body else { panic!() };
        let file = std::fs::read(path).unwrap();
        sent.extend(&file[*from as usize..(*from + *length) as usize]);
        answer(&bench, &request, 204, &header("upload-offset", &sent.len().to_string()), "");
        assert!(!is_all_safe(&bench), "an offset is no receipt");
    }
    assert_eq!(sent, picture);
    for receipt in [
        serde_json::json!({ "digest": "00".repeat(32), "safe": true }),
        serde_json::json!({ "digest": digest.0, "safe": false }),
    ] {
        walk_to_receipt(&mut bench, picture.len());
        let request = photo_request(&mut bench);
        assert_eq!(request.method, "GET");
        answer(&bench, &request, 200, &Headers::new(), &receipt.to_string());
        assert!(!is_all_safe(&bench), "{receipt}");
    }
    walk_to_receipt(&mut bench, picture.len());
    let request = photo_request(&mut bench);
    assert!(request.path.ends_with("/receipt"));
    let receipt = serde_json::json!({ "digest": digest.0, "safe": true }).to_string();
    answer(&bench, &request, 200, &Headers::new(), &receipt);
    assert!(is_all_safe(&bench));
}

/// From wherever it stands to the request for the receipt: the office has every byte.
fn walk_to_receipt(bench: &mut Bench, bytes: usize) {
    for _ in 0..8 {
        let request = photo_request(bench);
        match request.method.as_str() {
            "POST" => answer(bench, &request, 201, &Headers::new(), ""),
            "HEAD" | "PATCH" => {
                answer(
                    bench,
                    &request,
                    if request.method == "HEAD" { 200 } else { 204 },
                    &header("Upload-Offset", &bytes.to_string()),
                    "",
                );
                return;
            }
            _ => answer(bench, &request, 0, &Headers::new(), ""),
        }
    }
    panic!("the office is never asked how much it has");
}

#[test]
fn an_upload_goes_on_where_it_was_after_a_restart_and_begins_anew_where_the_office_forgot_it() {
    let (mut bench, picture) = with_photo(2_600_000);
    for (status, offset) in [(201, ""), (200, "0")] {
        let request = photo_request(&mut bench);
        let headers = if offset.is_empty() { Headers::new() } else { header("Upload-Offset", offset) };
        answer(&bench, &request, status, &headers, "");
    }
    let request = photo_request(&mut bench);
    assert_eq!(request.method, "PATCH");
    bench.reopen().unwrap();
    introduced(&mut bench);
    // The office knows how much arrived; the device does not need to.
    let request = photo_request(&mut bench);
    assert_eq!(request.method, "POST", "announced again: that may be repeated");
    answer(&bench, &request, 201, &Headers::new(), "");
    let request = photo_request(&mut bench);
    answer(&bench, &request, 200, &header("Upload-Offset", "1048576"), "");
    let request = photo_request(&mut bench);
    let SendBody::File { from, length, .. } = &request.body else { panic!() };
    assert_eq!((*from, *length), (1_048_576, 1_048_576));
    // The office lost it: 404 (tus: the upload is gone).
    answer(&bench, &request, 404, &Headers::new(), "");
    assert_eq!(photo_request(&mut bench).method, "POST");
    let digest = sha256(&picture);
    assert!(bench.field().original(&digest).exists(), "nothing local is deleted before it is safe");
}

#[test]
fn the_seal_is_safe_only_with_the_offices_word_about_this_visit() {
    let mut bench = Bench::begun();
    bench.seal();
    introduced(&mut bench);
    events_until_seal(&mut bench);
    for body in
        [r#"{"visit":"another","sealed":true}"#.to_owned(), format!(r#"{{"visit":"{}","sealed":false}}"#, bench.id())]
    {
        let request = seal_request(&mut bench);
        answer(&bench, &request, 200, &Headers::new(), &body);
        assert!(!is_all_safe(&bench), "{body}");
    }
    let request = seal_request(&mut bench);
    assert_eq!((request.method.as_str(), request.path.clone()), ("PUT", format!("/api/v1/visits/{}/seal", bench.id())));
    answer(&bench, &request, 200, &Headers::new(), &format!(r#"{{"visit":"{}","sealed":true}}"#, bench.id()));
    assert!(is_all_safe(&bench));
    let screen = bench.act(&Action::Go { to: "leaving".into() }).unwrap().screen;
    assert!(format!("{:?}", screen.blocks).contains("All of it is safe at the office."));
}

fn events_until_seal(bench: &mut Bench) {
    let request = next_events(bench);
    let all = bench.events().len() as u64;
    answer(bench, &request, 200, &Headers::new(), &have(bench, all));
}

fn seal_request(bench: &mut Bench) -> SendRequest {
    loop {
        let request = next(bench).unwrap();
        if request.id.starts_with("seal:") {
            return request;
        }
        answer(bench, &request, 200, &Headers::new(), r#"{"assignments":[]}"#);
    }
}
