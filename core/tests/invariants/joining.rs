//! How the office knows the device: joining by a code, tokens that end, a device that is let in no more.

use base64::Engine as _;
use base64::engine::general_purpose::{STANDARD, URL_SAFE_NO_PAD};
use coilside_core::action::Action;
use coilside_core::sync::SendRequest;
use p256::ecdsa::signature::Signer as _;
use p256::ecdsa::signature::Verifier as _;
use p256::ecdsa::{Signature, VerifyingKey};

use crate::bench::{Bench, key, public};
use crate::office::{Headers, about, answer, have, is_all_safe, next, next_now, outbox, refuse};

const HOUR_MS: i64 = 3_600_000;

fn said(request: &SendRequest, name: &str) -> Option<String> {
    request.headers.iter().find(|(known, _)| known == name).map(|(_, value)| value.clone())
}

fn body(request: &SendRequest) -> serde_json::Value {
    let coilside_core::sync::SendBody::Bytes(bytes) = &request.body else { panic!("{request:?}") };
    serde_json::from_slice(bytes).unwrap()
}

/// A shell without an office of its own; the person types the link and presses.
fn asked_to_join(bench: &mut Bench) {
    bench.network.office = false;
    bench.act(&Action::Go { to: "join".into() }).unwrap();
    bench.draft("join-code", "https://office.example/join#7K2M-9QXR");
    bench.act(&Action::Join).unwrap();
}

fn let_in(bench: &mut Bench) {
    asked_to_join(bench);
    let request = next(bench).unwrap();
    assert_eq!(about(&request), "join");
    let expires = bench.now.utc_ms + 12 * HOUR_MS;
    let told = serde_json::json!({ "device": "7", "token": "first.token", "expires_utc_ms": expires });
    answer(bench, &request, 201, &Headers::new(), &told.to_string());
}

#[test]
fn nothing_goes_out_before_the_device_has_an_office_and_the_screen_leads_to_joining() {
    let mut bench = Bench::begun();
    bench.network.office = false;
    assert!(next(&mut bench).is_none());
    let screen = outbox(&mut bench);
    assert_eq!(screen.notices[0].title, "This device has not joined an office");
    assert_eq!(screen.notices[0].buttons[0].press, Action::Go { to: "join".into() });
}

#[test]
fn a_code_lets_the_device_in_and_what_waits_goes_out_with_its_token_to_that_office() {
    let mut bench = Bench::begun();
    asked_to_join(&mut bench);
    let request = next_now(&mut bench).unwrap();
    assert_eq!((request.method.as_str(), request.path.as_str()), ("POST", "/api/v1/join"));
    assert_eq!(request.origin.as_deref(), Some("https://office.example"));
    assert_eq!(said(&request, "Authorization"), None);
    let wanted = serde_json::json!({
        "code": "7K2M-9QXR", "name": "Field device", "public_key": coilside_core::visit::event::hex(&public(&key(11))).0
    });
    assert_eq!(body(&request), wanted);
    let told =
        serde_json::json!({ "device": "7", "token": "first.token", "expires_utc_ms": bench.now.utc_ms + HOUR_MS });
    answer(&bench, &request, 201, &Headers::new(), &told.to_string());
    let screen = bench.field().screen(&bench.now).unwrap().screen;
    assert_eq!(
        (screen.place.as_str(), screen.notices[0].title.as_str()),
        ("outbox", "This device has joined https://office.example")
    );
    for restart in [false, true] {
        if restart {
            bench.reopen().unwrap();
        }
        let request = next_now(&mut bench).unwrap();
        assert!(request.id.starts_with("events:"), "the key is known by joining: {}", request.id);
        assert_eq!(request.origin.as_deref(), Some("https://office.example"));
        assert_eq!(said(&request, "Authorization").as_deref(), Some("Bearer first.token"));
    }
}

#[test]
fn no_screen_ever_shows_a_token() {
    let mut bench = Bench::begun();
    let_in(&mut bench);
    for place in ["outbox", "join", "settings", "round", "now", "leaving"] {
        let shown = format!("{:?}", bench.act(&Action::Go { to: place.into() }).unwrap());
        assert!(!shown.contains("first.token"), "{place}");
    }
    assert!(!bench.events().iter().any(|event| String::from_utf8_lossy(event).contains("first.token")));
}

#[test]
fn what_cannot_be_a_code_or_an_address_is_said_at_its_field() {
    let mut bench = Bench::begun();
    bench.network.office = false;
    bench.act(&Action::Go { to: "join".into() }).unwrap();
    bench.draft("join-code", "7K2M");
    let shown = format!("{:?}", bench.act(&Action::Join).unwrap().screen.blocks);
    assert!(shown.contains("A code has eight letters and digits"), "{shown}");
    bench.draft("join-code", "7K2M9QXR");
    let shown = format!("{:?}", bench.act(&Action::Join).unwrap().screen.blocks);
    assert!(shown.contains("Write the whole address"), "{shown}");
    assert!(next_now(&mut bench).is_none());
}

#[test]
fn every_way_in_which_joining_ends_is_told_and_it_can_be_tried_again() {
    let html = (200, "text/html", "<title>Welcome</title>");
    let ways = [
        ((403, "application/problem+json", r#"{"type":"urn:coilside:problem:join-code"}"#), "does not take this code"),
        ((429, "application/problem+json", r#"{"type":"urn:coilside:problem:too-many"}"#), "Too many wrong codes"),
        ((0, "", ""), "The office does not answer"),
        ((503, "", ""), "cannot take it just now"),
        ((404, "text/html", "<title>Not found</title>"), "There is no office at this address"),
        (html, "There is no office at this address"),
        // A token that would smuggle a header line.
        ((201, "application/json", r#"{"device":"7","token":"a\r\nX: y","expires_utc_ms":1}"#), "There is no office"),
        ((201, "application/json", r#"{"device":"../7","token":"a","expires_utc_ms":1}"#), "There is no office"),
    ];
    for ((status, kind, body), told) in ways {
        let mut bench = Bench::begun();
        asked_to_join(&mut bench);
        let request = next_now(&mut bench).unwrap();
        answer(&bench, &request, status, &crate::office::header("Content-Type", kind), body);
        let screen = bench.field().screen(&bench.now).unwrap().screen;
        assert!(screen.notices[0].title.contains(told), "{:?}", screen.notices);
        assert!(next(&mut bench).is_none(), "it is not tried again by itself");
        bench.act(&Action::Join).unwrap();
        assert_eq!(about(&next_now(&mut bench).unwrap()), "join");
    }
}

/// The office gives something to sign; the shell signs; the office gives a token.
fn renew(bench: &mut Bench, nonce: &str, token: &str) {
    let request = next(bench).unwrap();
    assert_eq!((about(&request), request.path.as_str()), ("nonce", "/api/v1/token?device=7"));
    assert_eq!(said(&request, "Authorization"), None);
    answer(
        bench,
        &request,
        200,
        &Headers::new(),
        &serde_json::json!({ "nonce": nonce, "expires_utc_ms": 1 }).to_string(),
    );
    assert!(next_now(bench).is_none(), "nothing goes before it is signed");
    let asked = bench.field().next_sign().unwrap();
    assert_eq!(bench.field().next_sign(), Some(asked.clone()), "asked until it is signed");
    let foreign: Signature = key(12).sign(&asked.bytes);
    assert!(bench.field().signed(&asked.id, &STANDARD.encode(foreign.to_der())).is_err());
    let signature: Signature = key(11).sign(&asked.bytes);
    bench.field().signed(&asked.id, &STANDARD.encode(signature.to_der())).unwrap();
    assert_eq!(bench.field().next_sign(), None);
    let request = next_now(bench).unwrap();
    assert_eq!((about(&request), request.path.as_str()), ("token", "/api/v1/token"));
    // Checked by p256 alone: header and payload as RFC 7515 has them, over canonical JSON.
    let jws = body(&request)["jws"].as_str().unwrap().to_owned();
    let parts: Vec<&str> = jws.split('.').collect();
    let raw = Signature::from_slice(&URL_SAFE_NO_PAD.decode(parts[2]).unwrap()).unwrap();
    let known = VerifyingKey::from_sec1_bytes(&public(&key(11))).unwrap();
    known.verify(format!("{}.{}", parts[0], parts[1]).as_bytes(), &raw).unwrap();
    let payload = String::from_utf8(URL_SAFE_NO_PAD.decode(parts[1]).unwrap()).unwrap();
    assert_eq!(payload, format!(r#"{{"aud":"coilside-office","device":"7","nonce":"{nonce}"}}"#));
    let told = serde_json::json!({ "token": token, "expires_utc_ms": bench.now.utc_ms + 12 * HOUR_MS });
    answer(bench, &request, 200, &Headers::new(), &told.to_string());
}

#[test]
fn a_token_that_the_office_turns_down_is_renewed_by_a_signature_and_nothing_is_lost() {
    let mut bench = Bench::begun();
    let_in(&mut bench);
    let request = next(&mut bench).unwrap();
    refuse(&bench, &request, 401, "token");
    renew(&mut bench, "n1", "second.token");
    let request = next_now(&mut bench).unwrap();
    assert_eq!(said(&request, "Authorization").as_deref(), Some("Bearer second.token"));
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    assert!(is_all_safe(&bench));
    // It is kept.
    bench.reopen().unwrap();
    assert_eq!(said(&next(&mut bench).unwrap(), "Authorization").as_deref(), Some("Bearer second.token"));
}

#[test]
fn a_token_is_renewed_before_it_ends_by_the_offices_clock_and_not_again_and_again_by_a_wrong_one() {
    let mut bench = Bench::begun();
    let_in(&mut bench);
    bench.pass_ms(12 * HOUR_MS - 4 * 60_000);
    renew(&mut bench, "n1", "second.token");
    // The office says that the new one has ended long ago: by its own clock it lasts.
    let request = next_now(&mut bench).unwrap();
    assert!(request.id.starts_with("events:"));
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    let mut bench = Bench::begun();
    asked_to_join(&mut bench);
    let request = next_now(&mut bench).unwrap();
    answer(&bench, &request, 201, &Headers::new(), r#"{"device":"7","token":"t","expires_utc_ms":1}"#);
    assert!(next_now(&mut bench).unwrap().id.starts_with("events:"), "a token that seems to have ended is tried");
}

#[test]
fn a_nonce_that_the_office_takes_no_more_is_asked_anew_at_a_slowing_pace() {
    let mut bench = Bench::begun();
    let_in(&mut bench);
    let request = next(&mut bench).unwrap();
    refuse(&bench, &request, 401, "token");
    for _ in 0..6 {
        let request = next(&mut bench).unwrap();
        assert_eq!(about(&request), "nonce");
        answer(&bench, &request, 200, &Headers::new(), r#"{"nonce":"n","expires_utc_ms":1}"#);
        let asked = bench.field().next_sign().unwrap();
        let signature: Signature = key(11).sign(&asked.bytes);
        bench.field().signed(&asked.id, &STANDARD.encode(signature.to_bytes())).unwrap();
        let request = next(&mut bench).unwrap();
        assert_eq!(about(&request), "token");
        refuse(&bench, &request, 401, "token");
        assert!(next_now(&mut bench).is_none(), "it rests");
    }
    let told = format!("{:?}", outbox(&mut bench).blocks);
    assert!(told.contains("The office does not know this device."), "{told}");
}

#[test]
fn a_device_that_is_let_in_no_more_keeps_everything_asks_rarely_says_so_and_may_join_again() {
    let mut bench = Bench::begun();
    let_in(&mut bench);
    let events = bench.events();
    let request = next(&mut bench).unwrap();
    refuse(&bench, &request, 403, "revoked");
    for restart in [false, true] {
        if restart {
            bench.reopen().unwrap();
            // A start asks once.
            let request = next_now(&mut bench).unwrap();
            assert_eq!(about(&request), "nonce");
            refuse(&bench, &request, 403, "revoked");
        }
        let mut asked = Vec::new();
        for _ in 0..3_600 {
            bench.pass_ms(1_000);
            if let Some(request) = next_now(&mut bench) {
                assert_eq!(about(&request), "nonce", "only a question");
                refuse(&bench, &request, 403, "revoked");
                asked.push(bench.now.mono_ms);
            }
        }
        assert!((3..=4).contains(&asked.len()), "every quarter of an hour: {asked:?}");
        let screen = outbox(&mut bench);
        assert_eq!(screen.outbox.value, "not let in: look here");
        assert_eq!(screen.notices[0].title, "The office lets this device in no more");
        assert_eq!(screen.notices[0].buttons[0].press, Action::Go { to: "join".into() });
    }
    assert_eq!(bench.events(), events, "nothing is dropped");
    // The office let it in again without a word: the next question finds out.
    bench.pass_ms(HOUR_MS);
    renew(&mut bench, "n2", "third.token");
    assert_eq!(outbox(&mut bench).outbox.value, "waiting");
    let request = next(&mut bench).unwrap();
    refuse(&bench, &request, 403, "revoked");
    let_in(&mut bench);
    let request = next(&mut bench).unwrap();
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    assert!(is_all_safe(&bench));
}

#[test]
fn a_shell_that_was_started_with_a_token_goes_on_with_it() {
    let mut bench = Bench::begun();
    let request = next(&mut bench).unwrap();
    assert_eq!((about(&request), &request.origin, said(&request, "Authorization")), ("device", &None, None));
    refuse(&bench, &request, 401, "token");
    let again = next(&mut bench).unwrap();
    assert_eq!(about(&again), "device", "nothing can be renewed, so it is tried again");
    assert_eq!(bench.field().next_sign(), None);
    let told = format!("{:?}", outbox(&mut bench).blocks);
    assert!(told.contains("The office does not know this device."), "{told}");
    // Revoked: the rare question is one that needs the token.
    refuse(&bench, &again, 403, "revoked");
    bench.pass_ms(HOUR_MS);
    let request = next(&mut bench).unwrap();
    assert_eq!(about(&request), "news");
    answer(&bench, &request, 200, &Headers::new(), crate::office::NO_NEWS);
    assert_eq!(about(&next(&mut bench).unwrap()), "device");
}
