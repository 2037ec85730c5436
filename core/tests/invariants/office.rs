//! The office's side of the wire, written by hand as its protocol has it: JSON of its own, problems after RFC 9457,
//! uploads after tus 1.0.0 (offsets in `Upload-Offset`), waits after `Retry-After` (RFC 9110, 10.2.3).

use coilside_core::action::Action;
use coilside_core::screen::{Screen, Tone};
use coilside_core::sync::SendRequest;
use coilside_core::visit::event::{NO_PREV, sha256};

use crate::bench::Bench;

pub(crate) type Headers = Vec<(String, String)>;

/// What a hotel's or a provider's network says instead of the office.
pub(crate) const HTML: &[u8] = b"<!doctype html><title>Welcome to the hotel's network</title>";

pub(crate) fn header(name: &str, value: &str) -> Headers {
    vec![(name.to_owned(), value.to_owned())]
}

/// The next request, letting time go by while the engine rests; none where nothing goes out within ten minutes.
pub(crate) fn next(bench: &mut Bench) -> Option<SendRequest> {
    for _ in 0..600 {
        if let Some(request) = bench.field().next_requests(&bench.now).unwrap().into_iter().next() {
            return Some(request);
        }
        bench.pass_ms(1_000);
    }
    None
}

pub(crate) fn answer(bench: &Bench, request: &SendRequest, status: u16, headers: &Headers, body: &str) {
    bench.field().answered(&request.id, status, headers, body.as_bytes(), &bench.now).unwrap();
}

/// The office knows the device and has no news: what comes next is the outbox.
pub(crate) fn introduced(bench: &mut Bench) {
    for body in [r#"{"known":true}"#, r#"{"assignments":[]}"#] {
        let request = next(bench).unwrap();
        answer(bench, &request, 200, &Headers::new(), body);
    }
}

pub(crate) fn outbox(bench: &mut Bench) -> Screen {
    bench.act(&Action::Go { to: "outbox".into() }).unwrap().screen
}

pub(crate) fn is_all_safe(bench: &Bench) -> bool {
    bench.field().screen(&bench.now).unwrap().screen.outbox.tone == Tone::Good
}

/// The office's answer about the events before `next`, with the digest of the last of them.
pub(crate) fn have(bench: &Bench, next: u64) -> String {
    let events = bench.events();
    let head = next.checked_sub(1).map_or(NO_PREV.to_owned(), |last| sha256(&events[last as usize]).0);
    serde_json::json!({ "next": next, "head": head }).to_string()
}

pub(crate) fn next_events(bench: &mut Bench) -> SendRequest {
    loop {
        let request = next(bench).unwrap();
        if request.id.starts_with("events:") {
            return request;
        }
        answer(bench, &request, 200, &Headers::new(), r#"{"assignments":[]}"#);
    }
}
