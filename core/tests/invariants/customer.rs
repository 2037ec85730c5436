//! The customer at the door: shown what was done, with name, drawing, both or neither; kept beside the log, and erasable.

use std::fs;

use coilside_core::action::Action;
use coilside_core::evidence::{Ink, Shown};
use coilside_core::id::Digest;
use coilside_core::record::file::verify::{Customer, Report, verify};
use coilside_core::screen::{Block, Screen};
use coilside_core::store::OutboxKind;
use coilside_core::visit::event::Body;

use crate::bench::{Bench, key, signature};

const NAME: &str = "Edda Marsh";
const DRAWN: &str = r#"{"width":1200,"height":480,"strokes":[[[100,240],[180,90],[260,330]],[[500,250]]]}"#;

fn choose(bench: &mut Bench, option: &str) -> Screen {
    bench.act(&Action::Choose { field: "customer".into(), option: option.into() }).unwrap().screen
}

fn sign(bench: &mut Bench, drawn: bool) -> Screen {
    bench.act(&Action::Sign { drawn }).unwrap().screen
}

fn leaving(bench: &mut Bench) -> Screen {
    bench.act(&Action::Go { to: "leaving".into() }).unwrap().screen
}

/// At the screen of leaving, with the customer there and their name typed.
fn there() -> Bench {
    let mut bench = Bench::begun();
    leaving(&mut bench);
    choose(&mut bench, "present");
    bench.draft("customer-name", NAME);
    bench
}

/// And signed by hand.
fn signed() -> Bench {
    let mut bench = there();
    bench.draft("ink:customer", DRAWN);
    sign(&mut bench, true);
    bench
}

/// Text, words of what is taken, and problem of the box to draw in.
fn pad(screen: &Screen) -> (String, Option<String>, Option<String>) {
    let ink = screen.blocks.iter().find_map(|block| match block {
        Block::Ink { text, taken, problem, .. } => Some((text.clone(), taken.clone(), problem.clone())),
        _ => None,
    });
    ink.expect("there is a box to draw in")
}

fn record(bench: &Bench, personal: bool) -> (Report, Vec<u8>) {
    let mut out = Vec::new();
    bench.field().write_record(&bench.id(), personal, &mut out).unwrap();
    (verify(&mut out.as_slice(), &[]).unwrap(), out)
}

fn names_her(bytes: &[u8]) -> bool {
    bytes.windows(NAME.len()).any(|window| window == NAME.as_bytes())
}

fn file_of(bench: &Bench, digest: &Digest) -> std::path::PathBuf {
    bench.field().original(digest)
}

#[test]
fn a_signature_is_a_file_beside_the_log_whose_digest_stands_in_the_event() {
    let mut bench = signed();
    let Body::CustomerNoted { present: true, unsigned: false, shown: Some(digest) } = bench.last_event().body else {
        panic!("{:?}", bench.last_event())
    };
    let bytes = fs::read(file_of(&bench, &digest)).unwrap();
    let shown = Shown::read(&bytes).unwrap();
    assert_eq!((shown.name.as_str(), shown.ink(), shown.utc_ms), (NAME, Ink::read(DRAWN).ok(), bench.now.utc_ms));
    assert_eq!(shown.salt.len(), 64, "32 random bytes: a short name cannot be guessed");
    assert!(!bench.events().iter().any(|event| names_her(event)), "no event names anybody");
    let (text, taken, _) = pad(&leaving(&mut bench));
    assert_eq!(
        (Ink::read(&text), taken.as_deref()),
        (Ink::read(DRAWN), Some("Shown to Edda Marsh, signed on the spot at 10:00"))
    );
    let row = bench.store().outbox(100).unwrap().into_iter().find(|row| row.kind == OutboxKind::Photo).unwrap();
    assert_eq!((row.digest, row.media.as_str(), row.bytes), (digest, "application/json", bytes.len() as u64));
}

#[test]
fn two_who_sign_alike_have_different_digests() {
    let digest = |bench: &Bench| bench.visit().shown.unwrap();
    let mut bench = signed();
    let first = digest(&bench);
    bench.draft("customer-name", NAME);
    bench.draft("ink:customer", DRAWN);
    sign(&mut bench, true);
    assert_ne!(digest(&bench), first, "each has a salt of its own");
    assert_eq!(bench.visit().shown_files.len(), 2, "and both stay");
}

#[test]
fn what_is_half_drawn_survives_a_kill_and_what_is_taken_does_too() {
    let mut bench = there();
    bench.draft("ink:customer", DRAWN);
    let screen = bench.reopen().unwrap().screen;
    assert_eq!(pad(&screen), (DRAWN.to_owned(), None, None));
    sign(&mut bench, true);
    let (text, taken, _) = pad(&bench.reopen().unwrap().screen);
    assert!(taken.is_some() && Ink::read(&text) == Ink::read(DRAWN));
    // Cleared, the box is empty to draw again, and the record still has what was taken.
    bench.draft("ink:customer", "");
    let (text, taken, _) = pad(&leaving(&mut bench));
    assert!(text.is_empty() && taken.is_some());
}

#[test]
fn the_typed_name_alone_is_as_good_and_nothing_at_all_is_asked_for_at_its_field() {
    let mut bench = there();
    bench.draft("ink:customer", DRAWN);
    sign(&mut bench, false);
    let shown = bench.visit().shown.unwrap();
    let shown = Shown::read(&fs::read(file_of(&bench, &shown)).unwrap()).unwrap();
    assert_eq!((shown.name.as_str(), shown.ink()), (NAME, None), "what was half drawn was not meant");
    let mut bench = Bench::begun();
    leaving(&mut bench);
    choose(&mut bench, "present");
    let before = bench.events().len();
    let screen = sign(&mut bench, false);
    let asked = screen
        .blocks
        .iter()
        .any(|block| matches!(block, Block::TextEntry { field, problem: Some(_), .. } if field == "customer-name"));
    assert!(asked, "{:?}", screen.blocks);
    assert_eq!(pad(&sign(&mut bench, true)).2.as_deref(), Some("Nothing is drawn yet. Draw, or go on without."));
    for (text, problem) in [
        ("[]", "The drawing cannot be read. Clear it and draw it again."),
        (
            r#"{"width":9,"height":9,"strokes":[[[10,1]]]}"#,
            "The drawing does not fit its box. Clear it and draw it again.",
        ),
    ] {
        bench.draft("ink:customer", text);
        assert_eq!(pad(&sign(&mut bench, true)).2.as_deref(), Some(problem), "{text}");
    }
    bench.draft("customer-name", &"n".repeat(121));
    sign(&mut bench, false);
    assert_eq!(bench.events().len(), before, "a refusal writes nothing");
}

#[test]
fn nothing_that_is_typed_or_drawn_is_sealed_over_and_going_on_without_asks_no_reason() {
    for field in [("customer-name", NAME), ("ink:customer", DRAWN)] {
        let mut bench = Bench::begun();
        leaving(&mut bench);
        choose(&mut bench, "present");
        bench.draft(field.0, field.1);
        bench.draft("break-off", "Storm");
        bench.act(&Action::BreakOff).unwrap();
        let turn = bench.act(&Action::Seal).unwrap();
        assert!(turn.screen.notices[0].title.contains("is not taken yet"), "{:?}", turn.screen.notices);
        assert_eq!((turn.effects.len(), bench.visit().sealing), (0, None));
        choose(&mut bench, "unsigned");
        let noted = bench.last_event().body;
        assert_eq!(noted, Body::CustomerNoted { present: true, unsigned: true, shown: None });
        let sign = bench.act(&Action::Seal).unwrap().effects.remove(0);
        let sealed = bench.done(&sign.id, &signature(&sign, &key(11))).unwrap().screen;
        let said =
            |line: &str| sealed.blocks.iter().any(|block| matches!(block, Block::Text { text, .. } if text == line));
        assert!(said("The customer does not sign"), "{:?}", sealed.blocks);
        let place = format!("{}/A", bench.id());
        let drafts = bench.store().drafts(&place).unwrap();
        assert!(drafts.is_empty(), "no half-typed name stays behind: {drafts:?}");
    }
}

#[test]
fn a_customer_who_is_not_there_is_a_reason_and_no_lack() {
    let mut bench = Bench::begun();
    leaving(&mut bench);
    let mut other = Bench::begun();
    leaving(&mut other);
    choose(&mut bench, "absent");
    bench.seal();
    other.seal();
    let missing = |bench: &Bench| bench.visit().sealing.map(|sealing| (sealing.complete, sealing.missing));
    assert_eq!(missing(&bench), missing(&other));
}

#[test]
fn a_later_word_takes_a_signature_back_and_both_stay_in_the_log() {
    let mut bench = signed();
    let file = bench.visit().shown.unwrap();
    choose(&mut bench, "present");
    assert_eq!(bench.visit().shown.as_ref(), Some(&file), "said again it is no news");
    choose(&mut bench, "absent");
    assert_eq!((bench.visit().shown, bench.visit().shown_files), (None, vec![file]));
    bench.seal();
    assert!(bench.field().handover(None).unwrap().summary.section("shown").is_none());
}

#[test]
fn it_stands_in_the_record_and_the_summary_and_erased_in_neither_while_the_seal_holds() {
    let mut bench = signed();
    bench.seal();
    let (report, file) = record(&bench, true);
    assert_eq!((report.faults, report.customer), (Vec::new(), Customer { enclosed: 1, withheld: 0 }));
    assert!(names_her(&file));
    let page = bench.field().handover(None).unwrap().page();
    assert!(page.contains("Shown to: Edda Marsh, signed on the spot."), "{page}");
    assert!(
        page.contains("aria-label=\"Signature of Edda Marsh, drawn by hand\"")
            && page.contains("M100.0 240.0L180.0 90.0L260.0 330.0")
    );
    // For who must not see it it is withheld, as the owner's data are.
    let (report, file) = record(&bench, false);
    assert_eq!((report.faults, report.customer), (Vec::new(), Customer { enclosed: 0, withheld: 1 }));
    assert!(!names_her(&file));
    // Erased.
    fs::remove_file(file_of(&bench, &bench.visit().shown.unwrap())).unwrap();
    let (report, file) = record(&bench, true);
    assert_eq!((report.faults, report.customer), (Vec::new(), Customer { enclosed: 0, withheld: 1 }));
    assert!(!names_her(&file));
    assert!(!bench.field().handover(None).unwrap().page().contains("signed on the spot"));
    let screen = bench.reopen().unwrap().screen;
    let said =
        screen.blocks.iter().any(|block| matches!(block, Block::Text { text, .. } if text.contains("were erased")));
    assert!(said, "{:?}", screen.blocks);
}

#[test]
fn a_file_that_was_altered_on_the_device_is_never_shown_or_enclosed() {
    let mut bench = signed();
    bench.seal();
    let path = file_of(&bench, &bench.visit().shown.unwrap());
    let text = fs::read_to_string(&path).unwrap();
    fs::write(&path, text.replace("[180,90]", "[180,91]")).unwrap();
    let (report, _) = record(&bench, true);
    assert_eq!((report.faults, report.customer), (Vec::new(), Customer { enclosed: 0, withheld: 1 }));
    assert!(bench.field().handover(None).unwrap().summary.section("shown").is_none());
}

#[test]
fn after_the_seal_nobody_signs_any_more() {
    let mut bench = there();
    choose(&mut bench, "unsigned");
    bench.seal();
    let events = bench.events();
    bench.draft("customer-name", NAME);
    sign(&mut bench, false);
    assert_eq!(bench.events(), events);
}

#[test]
fn a_repeated_action_signs_once() {
    let mut bench = there();
    bench.draft("ink:customer", DRAWN);
    let before = bench.events().len();
    for _ in 0..2 {
        bench.act_as("signed-once", &Action::Sign { drawn: true }).unwrap();
    }
    assert_eq!(bench.events().len(), before + 1);
}
