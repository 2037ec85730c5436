//! A whole visit at whose end the customer signs with name and hand, and what they are shown before.

use coilside_core::action::Action;
use coilside_core::record::file::verify::{Customer, verify};
use coilside_core::screen::{Block, Screen};
use coilside_tests::DRAWN;
use coilside_tests::scene::Scene;

const FINDING: &str = "Drain hose kinked behind the casing";

/// A complete visit at the screen of leaving, with something found on the way.
fn at_the_end() -> Scene {
    let mut scene = Scene::begun(&[]).unwrap();
    scene.draft("finding", FINDING).unwrap();
    scene.act(&Action::Choose { field: "severity".into(), option: "soon".into() }).unwrap();
    scene.act(&Action::AddFinding).unwrap();
    scene.play_until(|screen| screen.place == "leaving").unwrap();
    scene
}

fn choose(scene: &mut Scene, option: &str) -> Screen {
    scene.act(&Action::Choose { field: "customer".into(), option: option.into() }).unwrap().screen
}

fn said(screen: &Screen) -> Vec<&str> {
    let texts = screen.blocks.iter().filter_map(|block| match block {
        Block::Text { text, .. } => Some(text.as_str()),
        _ => None,
    });
    texts.collect()
}

/// Where a block stands on the screen.
fn place(screen: &Screen, is: impl Fn(&Block) -> bool) -> usize {
    screen.blocks.iter().position(is).expect("it stands on the screen")
}

#[test]
fn a_visit_is_played_to_the_seal_with_name_and_drawing() {
    let mut scene = at_the_end();
    let screen = choose(&mut scene, "present");
    let lines = said(&screen);
    for line in [
        "Show or read this to the customer.".to_owned(),
        format!("{}: {FINDING}.", scene.text("en", "severity-soon")),
        scene.text("en", "phase-exchanger.owner"),
        scene.text("en", "customer-statement"),
    ] {
        assert!(lines.contains(&line.as_str()), "'{line}' is not said: {lines:#?}");
    }
    // In this order: there or not, what is shown, what signing says, the name, the drawing.
    let order = [
        place(&screen, |block| matches!(block, Block::Choice { field, .. } if field == "customer")),
        place(&screen, |block| matches!(block, Block::Text { text, .. } if text.ends_with(&format!(": {FINDING}.")))),
        place(&screen, |block| matches!(block, Block::Text { text, .. } if text.contains("gives up no right"))),
        place(&screen, |block| matches!(block, Block::TextEntry { field, .. } if field == "customer-name")),
        place(&screen, |block| matches!(block, Block::Ink { .. })),
    ];
    assert!(order.is_sorted(), "{order:?}");
    scene.draft("customer-name", "Edda Marsh").unwrap();
    scene.draft("ink:customer", DRAWN).unwrap();
    scene.act(&Action::Sign { drawn: true }).unwrap();
    scene.play_on().unwrap();
    let sealed = scene.screen().unwrap();
    assert!(said(&sealed).iter().any(|line| line.starts_with("Shown to Edda Marsh, signed on the spot at")));
    assert!(scene.visit().unwrap().sealing.unwrap().complete);
    let handed = scene.field().handover(None).unwrap();
    assert!(handed.page().contains("Shown to: Edda Marsh, signed on the spot."));
    let mut record = Vec::new();
    scene.field().write_record(&scene.visit_id().unwrap(), true, &mut record).unwrap();
    let report = verify(&mut record.as_slice(), &[]).unwrap();
    assert_eq!((report.faults, report.customer), (Vec::new(), Customer { enclosed: 1, withheld: 0 }));
}

#[test]
fn a_customer_who_is_away_leaves_the_record_complete_and_the_summary_silent() {
    let mut scene = at_the_end();
    let screen = choose(&mut scene, "absent");
    assert!(said(&screen).contains(&scene.text("en", "customer-absent-text").as_str()));
    assert!(!screen.blocks.iter().any(|block| matches!(block, Block::Ink { .. })));
    scene.play_on().unwrap();
    assert!(scene.visit().unwrap().sealing.unwrap().complete);
    let handed = scene.field().handover(None).unwrap();
    assert!(handed.summary.section("shown").is_none() && !handed.page().contains("Shown on the spot"));
}
