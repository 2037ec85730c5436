//! Stopping is possible at every moment of a visit, and always ends in a sealed record that says so.

use std::collections::BTreeSet;

use coilside_core::action::Action;
use coilside_core::effect::{Outcome, Request};
use coilside_core::record::seal::{self, Payload};
use coilside_core::screen::Tone;
use coilside_core::visit::fact::{Fact, Value};
use coilside_office::demo::player::{Answers as _, Move};
use coilside_tests::look::{notice_lines, words};
use coilside_tests::scene::{Scene, copy_of};

const REASON: &str = "Called away to a burst pipe";

/// Breaks off and seals, as the screens offer it.
fn break_off(scene: &mut Scene) -> Payload {
    if scene.visit().unwrap().sealing.is_some() {
        scene.act(&Action::CancelSeal).unwrap();
    }
    let page = scene.go("break-off").unwrap();
    let stop = page.foot.first().unwrap();
    assert_eq!((&stop.press, stop.hold, stop.tone), (&Action::BreakOff, true, Tone::Danger));
    scene.draft("break-off", REASON).unwrap();
    let leaving = scene.act(&Action::BreakOff).unwrap().screen;
    assert_eq!(leaving.place, "leaving", "{:?}", leaving.notices);
    assert_eq!(scene.visit().unwrap().broken_off.unwrap().reason, REASON);
    let turn = scene.act(&Action::Seal).unwrap();
    let sign = turn.effects.first().unwrap_or_else(|| panic!("no signature asked for: {:?}", turn.screen.notices));
    let Request::SignBytes { bytes_base64 } = &sign.request else { panic!("{sign:?}") };
    let signature = Outcome::Signature { base64: scene.technician.sign(bytes_base64) };
    assert_eq!(scene.done(&sign.id, &signature).unwrap().screen.title, words("en").text("sealed-title"));
    let visit = scene.visit().unwrap();
    let jws = scene.store().unwrap().seal(&visit.id).unwrap().unwrap();
    let payload = seal::open(&jws, &scene.technician.public_key()).unwrap();
    seal::matches(&payload, &visit).unwrap();
    payload
}

#[test]
fn a_visit_can_be_broken_off_at_every_moment_and_is_sealed_as_incomplete() {
    let mut scene = Scene::begun(&[]).unwrap();
    let folder = scene.folder.path().to_owned();
    let technician = coilside_tests::Technician::who_says(&[]);
    let mut seen = BTreeSet::new();
    scene
        .play_with(|player, moved| {
            // Drafts change nothing in the log: one moment for all that lie between two marks, values and photographs.
            let logged = !matches!(moved, Some(Move::Acted(Action::Draft { .. } | Action::Go { .. })));
            let moment = (if logged { player.acted() } else { 0 }, player.screen().place.clone());
            if moved != Some(&Move::Sealed) && seen.insert(moment) {
                let mut copy = copy_of(&folder, &player.clock, &technician).unwrap();
                let payload = break_off(&mut copy);
                assert!(!payload.complete, "after {moved:?}");
                assert_eq!(payload.missing.first(), Some(&format!("- broken off visit: {REASON}")), "after {moved:?}");
            }
            moved == Some(&Move::Sealed)
        })
        .unwrap();
    assert!(seen.len() > 80, "only {} moments were tried", seen.len());
}

#[test]
fn a_visit_is_not_broken_off_without_a_reason() {
    let mut scene = Scene::at_step("lock-off", &[]).unwrap();
    let events = scene.events().unwrap().len();
    scene.go("break-off").unwrap();
    let screen = scene.act(&Action::BreakOff).unwrap().screen;
    assert!(format!("{:?}", screen.blocks).contains("Write a few words."));
    assert_eq!(scene.events().unwrap().len(), events);
}

#[test]
fn breaking_off_with_acid_inside_says_how_to_make_it_safe_and_records_the_danger() {
    let mut scene = Scene::at_step("circulate-acid", &[]).unwrap();
    scene.act(&Action::Start { step: "circulate-acid".into() }).unwrap();
    let page = format!("{:?}", scene.go("break-off").unwrap().blocks);
    for key in ["make-safe-acid", "make-safe-pump", "make-safe-covers", "make-safe-settings", "make-safe-owner"] {
        assert!(page.contains(&words("en").text(key)), "{key}");
    }
    scene.draft("break-off", REASON).unwrap();
    scene.act(&Action::BreakOff).unwrap();
    let visit = scene.visit().unwrap();
    let dangers = visit.broken_off.unwrap().dangers;
    assert!(!dangers.is_empty(), "acid was left in the loop");
    let run = visit.runs.values().next().unwrap();
    assert_eq!(run.facts.get(&Fact::Loop), Some(&Value::Acid));
    let emergency = scene.go("emergency").unwrap();
    assert!(format!("{:?}", emergency.blocks).contains("There is acid in the loop."));
}

#[test]
fn after_breaking_off_no_work_goes_on_but_photographs_and_findings_are_taken() {
    let mut scene = Scene::at_step("soak-coil", &[]).unwrap();
    scene.draft("break-off", REASON).unwrap();
    scene.act(&Action::BreakOff).unwrap();
    let events = scene.events().unwrap().len();
    let screen = scene.act(&Action::Start { step: "soak-coil".into() }).unwrap().screen;
    assert!(notice_lines(&screen.notices).contains(&words("en").text("refused-broken-off")));
    assert_eq!(scene.events().unwrap().len(), events);
    scene.shoot("", &coilside_tests::jpeg_of("the tag on the isolator")).unwrap();
    scene.draft("finding", "Left isolated, covers off, fenced").unwrap();
    scene.act(&Action::Choose { field: "severity".into(), option: "unsafe".into() }).unwrap();
    scene.act(&Action::AddFinding).unwrap();
    let run = scene.run().unwrap();
    assert_eq!((run.photos.get("").unwrap().len(), run.findings.len()), (1, 1));
}
