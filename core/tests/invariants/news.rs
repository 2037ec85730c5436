//! What comes down: assignments and what became of them, and what the office says of visits.

use coilside_core::action::Action;
use coilside_core::procedure::library::PackSource;
use coilside_core::screen::{Block, Tone};
use coilside_core::visit::event::sha256;

use crate::bench::{Bench, assignment};
use crate::office::{Headers, about, answer, have, header, introduced, next, next_events, outbox};

/// The next question for news is answered with this page.
fn news(bench: &mut Bench, page: serde_json::Value) {
    for _ in 0..50 {
        let request = next(bench).unwrap();
        match about(&request) {
            "news" => return answer(bench, &request, 200, &Headers::new(), &page.to_string()),
            "device" => answer(bench, &request, 200, &Headers::new(), r#"{"known":true}"#),
            _ => {
                let all = bench.events().len() as u64;
                answer(bench, &request, 200, &Headers::new(), &have(bench, all));
            }
        }
    }
    panic!("nobody asks for news");
}

fn round(bench: &mut Bench) -> String {
    format!("{:?}", bench.act(&Action::Go { to: "round".into() }).unwrap().screen.blocks)
}

#[test]
fn an_assignment_that_the_office_took_back_vanishes_unless_its_visit_has_begun() {
    let mut bench = Bench::begun();
    let mut third = assignment("a3", &["A"]);
    third.site.name = "Weir cottage".into();
    news(&mut bench, serde_json::json!({ "assignments": [third], "cursor": "1" }));
    assert!(round(&mut bench).contains("Weir cottage"));
    let due = |told: &str| told.matches("Start the visit").count();
    assert_eq!(due(&round(&mut bench)), 2, "a2 and a3");
    news(&mut bench, serde_json::json!({ "assignments": [], "withdrawn": ["a1", "a3", "nobody's"], "cursor": "2" }));
    assert!(!round(&mut bench).contains("Weir cottage"));
    let id = bench.id();
    let turn = bench.act(&Action::Go { to: format!("visit:{id}") }).unwrap();
    assert_eq!(turn.screen.subtitle, "Mill house", "the visit of a1 goes on");
    // It is given out again.
    news(&mut bench, serde_json::json!({ "assignments": [third], "cursor": "3" }));
    assert!(round(&mut bench).contains("Weir cottage"));
}

#[test]
fn a_page_of_news_that_comes_twice_changes_nothing_and_the_last_review_is_shown() {
    let mut bench = Bench::begun();
    bench.seal();
    let review = |outcome: &str, words: &str, utc_ms: i64| serde_json::json!({ "visit": bench.id().0, "outcome": outcome, "words": words, "utc_ms": utc_ms });
    let at = bench.now.utc_ms;
    let page = serde_json::json!({ "assignments": [], "cursor": "1", "reviews": [review("question", "Which anode was it?", at)] });
    let later =
        serde_json::json!({ "assignments": [], "cursor": "2", "reviews": [review("accepted", "", at + 60_000)] });
    for _ in 0..2 {
        news(&mut bench, page.clone());
        let told = round(&mut bench);
        assert_eq!(told.matches("The office asks: Which anode was it?").count(), 1, "{told}");
    }
    news(&mut bench, later);
    news(&mut bench, page);
    let told = round(&mut bench);
    assert!(told.contains("Checked by the office") && !told.contains("Which anode"), "{told}");
}

#[test]
fn a_kind_of_review_that_is_not_known_yet_is_shown_with_its_words() {
    let mut bench = Bench::begun();
    bench.seal();
    let page = serde_json::json!({ "assignments": [], "reviews": [
        { "visit": bench.id().0, "outcome": "escalated", "words": "Two of us look", "utc_ms": 5 }
    ], "something_new": { "a": 1 } });
    news(&mut bench, page);
    assert!(round(&mut bench).contains("The office says: Two of us look"));
}

/// Answers with the office's clock so far ahead, after a way there and back of so many milliseconds.
fn answer_with_clock(bench: &mut Bench, ahead_ms: i64, way_ms: i64) {
    let request = next(bench).unwrap();
    let told: i64 = request.headers.iter().find(|(name, _)| name == "Coilside-Clock").unwrap().1.parse().unwrap();
    assert_eq!(told, bench.now.utc_ms, "the device tells its own clock as it asks");
    bench.pass_ms(way_ms);
    let office = bench.now.utc_ms - way_ms / 2 + ahead_ms;
    answer(bench, &request, 200, &header("coilside-clock", &office.to_string()), r#"{"known":true}"#);
}

#[test]
fn clocks_that_differ_by_more_than_two_minutes_are_told_and_never_changed() {
    for (ahead_ms, told) in [
        (-300_000, Some("This device's clock is 5 min ahead of the office's")),
        (3_600_000, Some("This device's clock is 60 min behind the office's")),
        (119_000, None),
        (-119_000, None),
    ] {
        let mut bench = Bench::begun();
        answer_with_clock(&mut bench, ahead_ms, 200);
        let notices = outbox(&mut bench).notices;
        let titles: Vec<&str> = notices.iter().map(|notice| notice.title.as_str()).collect();
        assert_eq!(titles, told.into_iter().collect::<Vec<_>>(), "{ahead_ms}");
        assert!(
            notices.iter().all(|notice| notice.tone == Tone::Attention && notice.lines[0].contains("Set the device"))
        );
        bench.draft("skip:fit-to-run", "Damp");
        bench.act(&Action::Skip { step: "fit-to-run".into() }).unwrap();
        assert_eq!(bench.last_event().time.utc_ms, bench.now.utc_ms, "what is recorded goes by the device's own clock");
    }
}

#[test]
fn the_outbox_tells_when_the_office_last_answered_and_when_something_last_became_safe() {
    let mut bench = Bench::begun();
    let told = format!("{:?}", outbox(&mut bench).blocks);
    assert!(told.contains("has not answered yet") && told.contains("Nothing from here is safe at an office yet."));
    introduced(&mut bench);
    let request = next_events(&mut bench);
    let told = format!("{:?}", outbox(&mut bench).blocks);
    assert!(told.contains("Being sent: Entries of the log"), "{told}");
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, 3));
    // It survives a restart.
    bench.reopen().unwrap();
    let blocks = outbox(&mut bench).blocks;
    let safe =
        |block: &Block| matches!(block, Block::Text { text, .. } if text.contains("Last safe at the office: 10:00."));
    assert!(blocks.iter().any(safe), "{blocks:?}");
}

#[test]
fn what_waits_is_told_without_zeros_and_while_the_office_is_silent_nobody_is_sent_to_look_for_coverage_alone() {
    let mut bench = Bench::begun();
    introduced(&mut bench);
    let request = next_events(&mut bench);
    answer(&bench, &request, 0, &Headers::new(), "");
    let texts = outbox(&mut bench).blocks.into_iter().filter_map(|block| match block {
        Block::Text { text, .. } => Some(text),
        _ => None,
    });
    let told = texts.collect::<Vec<_>>().join("\n");
    assert!(told.contains("Waiting since 10:00: Entries of the log: 3\n"), "{told}");
    assert!(told.contains("since 10:00 · waits for the office to answer"), "{told}");
    assert!(!told.contains("waits for coverage"), "there is a network: {told}");
}

/// The small pack of the packs' own tests, as a run would pin it.
fn small_pack(change: impl Fn(String) -> String) -> Vec<u8> {
    let file = |name: &str| {
        let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/packs/small").join(name);
        std::fs::read_to_string(path).unwrap()
    };
    let words = [("en", file("en.ftl")), ("es", file("es.ftl"))].map(|(tag, text)| (tag.to_owned(), text));
    let source = PackSource { toml: change(file("pack.toml")), words: words.into() };
    serde_json_canonicalizer::to_vec(&source).unwrap()
}

/// The office offers a pack and hands it out; what it hands out is `given`.
fn offer(bench: &mut Bench, bytes: &[u8], given: &[u8]) -> bool {
    let digest = sha256(bytes).0;
    let page =
        serde_json::json!({ "assignments": [], "packs": [{ "digest": digest, "id": "small", "bytes": bytes.len() }] });
    news(bench, page);
    for _ in 0..20 {
        let Some(request) = next(bench) else { return false };
        if about(&request) == format!("pack:{digest}") {
            assert_eq!(request.path, format!("/api/v1/packs/{digest}"));
            bench.field().answered(&request.id, 200, &Headers::new(), given, &bench.now).unwrap();
            return true;
        }
        let all = bench.events().len() as u64;
        match about(&request) {
            "news" => answer(bench, &request, 200, &Headers::new(), crate::office::NO_NEWS),
            _ => answer(bench, &request, 200, &Headers::new(), &have(bench, all)),
        }
    }
    false
}

fn procedures(bench: &mut Bench) -> String {
    format!("{:?}", bench.act(&Action::Go { to: "procedures".into() }).unwrap().screen.blocks)
}

#[test]
fn a_procedure_of_the_office_is_fetched_once_proved_and_there_after_a_restart() {
    let mut bench = Bench::begun();
    let bytes = small_pack(|toml| toml);
    assert!(!procedures(&mut bench).contains("the office"));
    assert!(offer(&mut bench, &bytes, b"other bytes"), "it is asked for");
    assert!(!procedures(&mut bench).contains("the office"), "not the bytes that were offered");
    assert!(offer(&mut bench, &bytes, &bytes));
    for _ in 0..2 {
        let told = procedures(&mut bench);
        assert!(told.contains("the office") && !told.contains("Refused"), "{told}");
        assert!(!offer(&mut bench, &bytes, &bytes), "it is here");
        bench.reopen().unwrap();
    }
}

#[test]
fn a_procedure_of_the_office_that_is_not_sound_is_listed_with_the_reason_and_never_used() {
    let mut bench = Bench::begun();
    let bytes = small_pack(|toml| toml.replace("format = 1", "format = 1\nnonsense = true"));
    assert!(offer(&mut bench, &bytes, &bytes));
    for _ in 0..2 {
        let told = procedures(&mut bench);
        assert!(told.contains("Refused") && told.contains("nonsense"), "{told}");
        bench.reopen().unwrap();
    }
}
