//! The order in which things go, over which network, in how much time; and that nothing slow or failing holds up the rest.

use coilside_core::action::Action;
use coilside_core::screen::{Block, Screen};
use coilside_core::sync::{Link, SendBody, SendRequest};
use coilside_core::visit::event::sha256;

use crate::bench::Bench;
use crate::office::{Headers, Honest, about, answer, header, introduced, is_all_safe, next, next_now, outbox};
use crate::uploads::{shoot, with_photo};

/// Everything that goes out at this moment.
fn all_now(bench: &mut Bench) -> Vec<SendRequest> {
    std::iter::from_fn(|| next_now(bench)).collect()
}

fn kinds(requests: &[SendRequest]) -> Vec<&str> {
    requests.iter().map(|request| request.id.split([':', '/']).next().unwrap()).collect()
}

/// Another event of the visit: a finding.
fn note(bench: &mut Bench, words: &str) {
    bench.draft("finding", words);
    bench.act(&Action::Choose { field: "severity".into(), option: "note".into() }).unwrap();
    bench.act(&Action::AddFinding).unwrap();
}

#[test]
fn events_go_before_the_seal_and_the_seal_before_photographs_and_news_hold_up_none() {
    let mut bench = Bench::begun();
    shoot(&mut bench, 300_000, 0);
    bench.seal();
    let mut office = Honest::default();
    office.takes_all(&mut bench);
    let asked: Vec<&str> = office.asked.iter().map(|about| about.split(':').next().unwrap()).collect();
    let photo = asked.iter().position(|about| *about == "photo").unwrap();
    let seal = asked.iter().position(|about| *about == "seal").unwrap();
    assert_eq!(asked[0], "device");
    assert!(asked[1..seal].iter().all(|about| *about == "events") && seal > 1, "{asked:?}");
    assert!(photo > seal, "{asked:?}");
    assert_eq!(asked.iter().filter(|about| **about == "news").count(), 1, "{asked:?}");
}

#[test]
fn a_large_photographs_small_picture_goes_ahead_of_it_once_and_a_small_photographs_not_at_all() {
    let (mut bench, picture) = with_photo(900_000);
    shoot(&mut bench, 4_000, 9);
    bench.network.link = Link::Metered;
    wish(&mut bench, "send-originals", "unmetered");
    let mut office = Honest::default();
    let all = |bench: &Bench| bench.events().into_iter().map(|e| String::from_utf8(e).unwrap()).collect();
    office.events.insert(bench.id().0, all(&bench));
    for _ in 0..60 {
        if let Some(request) = next_now(&mut bench) {
            office.answers(&bench, &request);
        }
        bench.pass_ms(1_000);
    }
    let small = std::fs::read(bench.field().preview(&sha256(&picture))).unwrap();
    assert_eq!(office.ahead.into_iter().collect::<Vec<_>>(), [(sha256(&picture).0, small)]);
    assert_eq!(office.asked.iter().filter(|about| about.starts_with("preview:")).count(), 1, "{:?}", office.asked);
    assert!(!is_all_safe(&bench), "a small picture makes nothing safe");
    assert!(office.photos.is_empty(), "over a network that is paid for");
}

#[test]
fn a_small_picture_that_the_office_does_not_want_or_never_gets_holds_up_nothing() {
    for (status, body) in [(415, r#"{"type":"urn:coilside:problem:not-shown"}"#), (0, ""), (200, "<html>")] {
        let (mut bench, _) = with_photo(900_000);
        let mut office = Honest::default();
        let mut asked = 0;
        for _ in 0..4_000 {
            if is_all_safe(&bench) {
                break;
            }
            let request = next(&mut bench).unwrap();
            if request.id.starts_with("preview:") {
                asked += 1;
                answer(&bench, &request, status, &Headers::new(), body);
            } else {
                office.answers(&bench, &request);
            }
        }
        assert!(is_all_safe(&bench) && asked > 0, "{status}: asked {asked} times");
        assert!(asked == 1 || status != 415, "a refusal is taken once");
    }
}

#[test]
fn a_small_picture_waits_for_a_free_network_where_the_person_says_so() {
    let (mut bench, _) = with_photo(900_000);
    bench.network.link = Link::Metered;
    wish(&mut bench, "send-originals", "unmetered");
    wish(&mut bench, "send-previews", "unmetered");
    assert!(all_now(&mut bench).iter().all(|request| request.id.starts_with("news")));
    bench.network.link = Link::Unmetered;
    bench.pass_ms(200_000);
    assert!(kinds(&all_now(&mut bench)).contains(&"preview"));
}

#[test]
fn events_that_come_while_a_slice_is_out_go_at_once_beside_it() {
    let (mut bench, _) = with_photo(600_000);
    let out = all_now(&mut bench);
    assert_eq!(kinds(&out), ["preview", "photo"], "one small thing and a photograph");
    assert!(all_now(&mut bench).is_empty(), "one slice at a time, and one small thing");
    answer(&bench, &out[0], 204, &Headers::new(), "");
    note(&mut bench, "Loose screw");
    assert_eq!(kinds(&all_now(&mut bench)), ["events"], "the photograph is still out");
}

#[test]
fn a_photograph_that_fails_and_fails_never_holds_up_events_nor_another_photograph() {
    let (mut bench, _) = with_photo(4_000);
    shoot(&mut bench, 5_000, 9);
    let mut office = Honest::default();
    let (mut failed, mut events_waited) = (0, 0);
    let started = bench.now.mono_ms;
    for turn in 0..3_000 {
        if turn % 50 == 0 && turn < 500 {
            note(&mut bench, &format!("Note {turn}"));
            let began = bench.now.mono_ms;
            let request = loop {
                let Some(request) = next(&mut bench) else { panic!("nothing goes out any more") };
                if request.id.starts_with("events:") {
                    break request;
                }
                answer_but_first(&mut bench, &mut office, &request, &mut failed);
            };
            events_waited = events_waited.max(bench.now.mono_ms - began);
            office.answers(&bench, &request);
            continue;
        }
        if let Some(request) = next_now(&mut bench) {
            answer_but_first(&mut bench, &mut office, &request, &mut failed);
        }
        bench.pass_ms(500);
    }
    assert!(failed > 20, "it was tried again and again: {failed}");
    assert!(events_waited <= 2_000, "events waited {events_waited} ms");
    let whole: Vec<_> = office.photos.values().filter(|(length, bytes)| *length == bytes.len() as u64).collect();
    assert_eq!(whole.len(), 1, "the other photograph is there, {} ms on", bench.now.mono_ms - started);
}

/// The office cannot take the first photograph, of 4000 bytes; everything else it takes.
fn answer_but_first(bench: &mut Bench, office: &mut Honest, request: &SendRequest, failed: &mut u32) {
    let of_first = request.headers.iter().any(|(name, value)| name == "Upload-Length" && value == "4000");
    if of_first {
        *failed += 1;
        answer(bench, request, 503, &Headers::new(), r#"{"type":"urn:coilside:problem:busy"}"#);
    } else {
        office.answers(bench, request);
    }
}

#[test]
fn events_that_the_office_cannot_take_do_not_hold_up_another_visits() {
    let mut bench = Bench::begun();
    let first = bench.id();
    bench.act(&Action::StartVisit { assignment: "a2".into() }).unwrap();
    let second = bench.id();
    introduced(&mut bench);
    let mut office = Honest::default();
    for _ in 0..60 {
        if let Some(request) = next_now(&mut bench) {
            if request.path.contains(first.as_str()) {
                answer(&bench, &request, 503, &Headers::new(), "");
            } else {
                office.answers(&bench, &request);
            }
        }
        bench.pass_ms(1_000);
    }
    assert_eq!(office.events.get(second.as_str()).map(Vec::len), Some(bench.events().len()));
}

fn wish(bench: &mut Bench, setting: &str, value: &str) {
    bench.act(&Action::Set { setting: setting.into(), value: value.into() }).unwrap();
}

#[test]
fn photographs_wait_for_a_free_network_where_the_person_says_so_and_the_wish_survives_a_restart() {
    let (mut bench, _) = with_photo(4_000);
    wish(&mut bench, "send-originals", "unmetered");
    bench.reopen().unwrap();
    bench.network.link = Link::Metered;
    introduced(&mut bench);
    note(&mut bench, "One more");
    let mut office = Honest::default();
    for _ in 0..200 {
        if let Some(request) = next_now(&mut bench) {
            assert!(!request.id.starts_with("photo:"), "over a network that is paid for");
            let all = bench.events().len() as u64;
            match about(&request) {
                "news" => answer(&bench, &request, 200, &Headers::new(), crate::office::NO_NEWS),
                _ => answer(&bench, &request, 200, &Headers::new(), &crate::office::have(&bench, all)),
            }
        }
        bench.pass_ms(1_000);
    }
    let told = format!("{:?}", outbox(&mut bench).blocks);
    assert!(told.contains("waits for Wi\u{2011}Fi"), "{told}");
    // 'Send now' goes over any network, until nothing waits.
    bench.act(&Action::SendNow).unwrap();
    office.takes_all(&mut bench);
    shoot(&mut bench, 5_000, 3);
    for _ in 0..100 {
        if let Some(request) = next_now(&mut bench) {
            assert!(!request.id.starts_with("photo:"), "the wish holds again");
            office
                .events
                .insert(bench.id().0, bench.events().into_iter().map(|e| String::from_utf8(e).unwrap()).collect());
            office.answers(&bench, &request);
        }
        bench.pass_ms(1_000);
    }
    bench.network.link = Link::Unmetered;
    office.takes_all(&mut bench);
}

#[test]
fn a_wish_that_is_none_is_refused_and_changes_nothing() {
    let mut bench = Bench::begun();
    for (setting, value) in [("send-originals", "now"), ("send-originals", ""), ("send-everything", "any")] {
        let action = Action::Set { setting: setting.into(), value: value.into() };
        assert!(bench.act(&action).is_err(), "{setting}={value}");
    }
    let checks = |screen: Screen| {
        screen.blocks.into_iter().filter(|block| matches!(block, Block::Check { done: true, .. })).count()
    };
    assert_eq!(checks(outbox(&mut bench)), 0);
    wish(&mut bench, "send-events", "unmetered");
    assert_eq!(checks(outbox(&mut bench)), 1);
}

#[test]
fn in_a_short_span_small_slices_go_nothing_begins_near_its_end_and_news_wait() {
    let (mut bench, picture) = with_photo(2_000_000);
    bench.reopen().unwrap();
    let mut office = Honest::default();
    let id = bench.id().0;
    office.events.insert(id, bench.events().into_iter().map(|e| String::from_utf8(e).unwrap()).collect());
    // A line of 8 kB in a second; every ten minutes the system gives 30 s.
    for window in 0..200 {
        let mut left_ms = 30_000;
        while left_ms > 0 {
            bench.network.window_ms = Some(left_ms);
            let Some(request) = next_now(&mut bench) else { break };
            assert!(left_ms >= 2_000, "begun {left_ms} ms before the end");
            assert!(about(&request) != "news" || is_all_safe(&bench), "news while something waits");
            let length = match &request.body {
                SendBody::File { length, .. } => *length,
                SendBody::Bytes(bytes) => bytes.len() as u64,
                SendBody::Empty => 0,
            };
            let takes_ms = 400 + length as i64 / 8;
            assert!(takes_ms < 30_000, "{length} bytes can never get through");
            bench.pass_ms(takes_ms.min(left_ms));
            if takes_ms > left_ms {
                // The app is stopped; what came of the slice is with the office.
                if let SendBody::File { path, from, .. } = &request.body {
                    let came = (left_ms as u64 * 8).min(length);
                    let digest = coilside_core::visit::event::sha256(&picture).0;
                    let bytes = &std::fs::read(path).unwrap()[*from as usize..(*from + came) as usize];
                    office.photos.get_mut(&digest).unwrap().1.extend(bytes);
                }
                bench.reopen().unwrap();
            } else {
                office.answers(&bench, &request);
            }
            left_ms -= takes_ms;
        }
        if is_all_safe(&bench) {
            assert!(window > 2, "it cannot be so quick");
            return;
        }
        bench.pass_ms(600_000);
    }
    panic!("a photograph of 2 MB never gets through");
}

#[test]
fn the_engine_may_be_killed_between_any_two_calls() {
    // How many calls it takes without a kill.
    let calls = kill_after(usize::MAX).0;
    assert!(calls > 12, "{calls}");
    for kill in 0..calls {
        let (_, office, events) = kill_after(kill);
        assert_eq!(office.events.values().next().unwrap().len(), events, "killed after call {kill}");
        assert_eq!(office.sealed.len(), 1 + usize::from(office.sealed.len() > 1), "sealed once, or the same again");
        assert!(office.photos.values().all(|(length, bytes)| *length == bytes.len() as u64));
    }
}

/// Sends everything, with a kill after so many calls: before the office got it, and before its answer was heard.
fn kill_after(kill: usize) -> (usize, Honest, usize) {
    let mut bench = Bench::begun();
    shoot(&mut bench, 700_000, 0);
    bench.seal();
    let events = bench.events().len();
    let mut office = Honest::default();
    let mut calls = 0;
    while !is_all_safe(&bench) {
        let Some(request) = next(&mut bench) else { panic!("nothing goes out any more") };
        if calls == kill {
            bench.reopen().unwrap();
            calls += 1;
            continue;
        }
        let (status, headers, body) = office.takes(&request);
        calls += 1;
        if calls == kill {
            bench.reopen().unwrap();
        }
        // After a restart this is an answer to a question of before.
        answer(&bench, &request, status, &headers, &body);
        calls += 1;
        assert!(calls < 400, "{:?}", office.asked);
    }
    (calls, office, events)
}

#[test]
fn answers_that_come_twice_or_out_of_turn_change_nothing_more() {
    let mut bench = Bench::begun();
    shoot(&mut bench, 700_000, 0);
    bench.seal();
    let mut office = Honest::default();
    let mut heard: Vec<(SendRequest, u16, Headers, String)> = Vec::new();
    while !is_all_safe(&bench) {
        let request = next(&mut bench).unwrap();
        let (status, headers, body) = office.takes(&request);
        answer(&bench, &request, status, &headers, &body);
        heard.push((request, status, headers, body));
        let before = format!("{:?}", outbox(&mut bench).blocks);
        for (request, status, headers, body) in heard.iter().rev() {
            answer(&bench, request, *status, headers, body);
        }
        assert_eq!(format!("{:?}", outbox(&mut bench).blocks), before);
        assert!(heard.len() < 200);
    }
    // Nonsense about requests that were never made.
    for id in ["", "events:1", "events:99/1", "photo:1:0/77", "join/4", "../x"] {
        bench.field().answered(id, 200, &header("content-type", "application/json"), b"{}", &bench.now).unwrap();
    }
    assert!(is_all_safe(&bench));
}
