//! Sending: only the office's own word makes anything safe; failures wait longer and longer; what is stuck says why.

use coilside_core::action::Action;
use coilside_core::screen::{Block, Tone};
use coilside_core::sync::{Link, SendBody, SendRequest};

use crate::bench::Bench;
use crate::office::{
    HTML, Headers, NO_NEWS, about, answer, have, header, introduced, is_all_safe, next, next_events, next_now, outbox,
    refuse,
};

#[test]
fn a_page_with_status_200_makes_nothing_safe() {
    let mut bench = Bench::begun();
    let mut seen = std::collections::BTreeSet::new();
    for round in 0..40 {
        let Some(request) = next(&mut bench) else { break };
        seen.insert(request.id.split([':', '/']).next().unwrap().to_owned());
        bench.field().answered(&request.id, 200, &header("content-type", "text/html"), HTML, &bench.now).unwrap();
        assert!(!is_all_safe(&bench), "a page made something safe");
        if about(&request) == "device" && round > 2 {
            let request = next(&mut bench).unwrap();
            answer(&bench, &request, 200, &Headers::new(), r#"{"known":true}"#);
        }
    }
    assert_eq!(seen.into_iter().collect::<Vec<_>>(), ["device", "events", "news"]);
    let screen = outbox(&mut bench);
    assert!(format!("{:?}", screen.blocks).contains("Something else answers in place of the office."));
}

#[test]
fn events_are_safe_only_when_the_offices_last_one_is_ours() {
    let mut bench = Bench::begun();
    introduced(&mut bench);
    let request = next(&mut bench).unwrap();
    assert_eq!(
        (request.method.as_str(), request.path.clone()),
        ("POST", format!("/api/v1/visits/{}/events", bench.id()))
    );
    let SendBody::Bytes(body) = &request.body else { panic!() };
    let sent: serde_json::Value = serde_json::from_slice(body).unwrap();
    let texts: Vec<Vec<u8>> =
        sent["events"].as_array().unwrap().iter().map(|event| event.as_str().unwrap().as_bytes().to_vec()).collect();
    assert_eq!((sent["first"].as_u64(), texts), (Some(0), bench.events()), "the original bytes, from the first on");
    let wrong = serde_json::json!({ "next": 3, "head": "ab".repeat(32) }).to_string();
    answer(&bench, &request, 200, &Headers::new(), &wrong);
    assert!(!is_all_safe(&bench), "another head with status 200");
    let request = next_events(&mut bench);
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
    let other = serde_json::json!({ "type": "urn:coilside:problem:conflict", "next": 3, "head": "cd".repeat(32) });
    answer(&bench, &request, 409, &Headers::new(), &other.to_string());
    assert_stuck(&mut bench, "the office has other entries of this visit", "a person there must look at the visit");
    let events = bench.events();
    // Both branches survive: nothing of ours is changed or dropped.
    bench.act(&Action::SendNow).unwrap();
    assert_eq!(bench.events(), events);
    let request = next_events(&mut bench);
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    assert!(is_all_safe(&bench));
}

/// The outbox says why it is stuck and what to do, on its own screen, and in the line of every screen.
fn assert_stuck(bench: &mut Bench, why: &str, todo: &str) {
    let screen = outbox(bench);
    assert_eq!((screen.outbox.value.as_str(), screen.outbox.tone), ("stuck: look here", Tone::Attention));
    let said = |wanted: &str| {
        screen.blocks.iter().any(|block| matches!(block, Block::Text { text, .. } if text.contains(wanted)))
    };
    assert!(said(why) && said(todo), "“{why}”, “{todo}” are not on {:#?}", screen.blocks);
}

#[test]
fn a_refusal_of_the_office_is_stuck_in_words_of_ours_and_a_hurry_unsticks_it() {
    let mut bench = Bench::begun();
    introduced(&mut bench);
    let request = next(&mut bench).unwrap();
    refuse(&bench, &request, 403, "another-device");
    assert_stuck(&mut bench, "the office has this visit from another device", "ask which device goes on");
    bench.pass_ms(3_600_000);
    let after = next(&mut bench).unwrap();
    assert_eq!(about(&after), "news", "what is stuck is not tried again by itself");
    answer(&bench, &after, 200, &Headers::new(), NO_NEWS);
    bench.act(&Action::SendNow).unwrap();
    let request = next_events(&mut bench);
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    assert!(is_all_safe(&bench));
}

/// The kinds are those of the office's `refusal.rs`, and one that no version knows.
#[test]
fn every_refusal_of_the_office_has_words_and_says_what_to_do_in_both_languages() {
    let kinds = [
        (422, "events"),
        (403, "another-device"),
        (413, "too-many-events"),
        (422, "seal"),
        (403, "other-key"),
        (409, "sealed-otherwise"),
        (422, "no-addendum"),
        (413, "length"),
        (409, "other-length"),
        (400, "metadata"),
        (400, "header"),
        (400, "json"),
        (404, "address"),
        (404, "visit"),
        (412, "tus-version"),
        (415, "content-type"),
        (418, "something-new"),
    ];
    for (status, kind) in kinds {
        let mut bench = Bench::begun();
        introduced(&mut bench);
        let request = next(&mut bench).unwrap();
        refuse(&bench, &request, status, kind);
        for language in ["en", "es"] {
            bench.act(&Action::Set { setting: "language".into(), value: language.into() }).unwrap();
            let screen = outbox(&mut bench);
            let told = format!("{:?}", screen.blocks);
            assert!(!told.contains("stuck-") && !told.contains("outbox-"), "{kind} in {language}: {told}");
            assert_eq!(screen.outbox.tone, Tone::Attention, "{kind}");
        }
    }
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
pub(crate) fn rest_ms(bench: &mut Bench) -> (i64, SendRequest) {
    for waited in 0..40_000 {
        if let Some(request) = next_now(bench) {
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
            assert_eq!(about(&again), about(&request), "the same is tried again");
            waits.push(waited);
            request = again;
        }
        for (at, waited) in waits.iter().enumerate() {
            let full = (1_000 << at.min(6)).min(60_000);
            assert!((full / 2..=full + 100).contains(waited), "{status}: wait {at} of {waits:?}");
        }
        answer(&bench, &request, 200, &Headers::new(), r#"{"known":true}"#);
        assert_eq!(rest_ms(&mut bench).0, 0, "a success ends the rest");
    }
}

#[test]
fn the_office_may_ask_for_a_longer_rest_in_seconds_or_until_a_date() {
    let mut bench = Bench::begun();
    let request = next(&mut bench).unwrap();
    answer(&bench, &request, 503, &header("Retry-After", "120"), "");
    let (waited, request) = rest_ms(&mut bench);
    assert!((120_000..126_000).contains(&waited), "{waited}");
    // 2026-05-04T08:10:00Z by GNU date; the bench began at 08:00 and 120 to 126 seconds went by.
    answer(&bench, &request, 503, &header("Retry-After", "Mon, 04 May 2026 08:10:00 GMT"), "");
    let (waited, request) = rest_ms(&mut bench);
    assert!((600_000 - 126_000..600_000 - 115_000).contains(&waited), "{waited}");
    // A person who wants it now does not wait.
    answer(&bench, &request, 503, &header("retry-after", "3600"), "");
    bench.act(&Action::SendNow).unwrap();
    assert_eq!(rest_ms(&mut bench).0, 0);
}

#[test]
fn another_network_ends_the_rests_and_none_sends_nothing() {
    let mut bench = Bench::begun();
    for _ in 0..6 {
        let request = next(&mut bench).unwrap();
        answer(&bench, &request, 0, &Headers::new(), "");
    }
    assert!(next_now(&mut bench).is_none(), "it rests");
    bench.network.link = Link::None;
    for _ in 0..1_000 {
        bench.pass_ms(1_000);
        assert!(next_now(&mut bench).is_none(), "there is no network");
    }
    let told = format!("{:?}", outbox(&mut bench).blocks);
    assert!(told.contains("No network. It goes out by itself"), "{told}");
    bench.network.link = Link::Metered;
    let request = next_now(&mut bench).unwrap();
    answer(&bench, &request, 0, &Headers::new(), "");
    assert!(next_now(&mut bench).is_none());
    bench.network.link = Link::Unmetered;
    assert!(next_now(&mut bench).is_some(), "the house's own network is another way");
}

#[test]
fn a_request_that_is_never_answered_is_given_up_and_made_again() {
    let mut bench = Bench::begun();
    introduced(&mut bench);
    let request = next(&mut bench).unwrap();
    let (waited, again) = rest_ms(&mut bench);
    assert_eq!((waited, about(&again)), (90_000, about(&request)));
    assert_ne!(again.id, request.id, "another try has another name");
    // Its late answer still counts where it stays true.
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    assert!(is_all_safe(&bench));
}

#[test]
fn a_late_answer_that_says_nothing_lasting_changes_nothing() {
    let mut bench = Bench::begun();
    introduced(&mut bench);
    let request = next(&mut bench).unwrap();
    bench.pass_ms(90_000);
    let again = next(&mut bench).unwrap();
    refuse(&bench, &request, 403, "another-device");
    assert_eq!(bench.field().screen(&bench.now).unwrap().screen.outbox.value, "waiting");
    answer(&bench, &again, 200, &Headers::new(), &have(&bench, 3));
    refuse(&bench, &again, 403, "another-device");
    assert!(is_all_safe(&bench), "the same request answered twice: the first answer holds");
}
