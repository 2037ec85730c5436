//! The code on a nameplate: read, offered, compared with the register, and never taken without a person.

use coilside_core::action::Action;
use coilside_core::screen::{Block, PhotoView, Question, Screen};
use coilside_core::visit::event::{PhotoFlag, Symbology};
use coilside_office::demo::photograph;
use coilside_office::demo::player::Answers as _;
use coilside_tests::look::{field_block, words};
use coilside_tests::scene::Scene;

/// A plate as the demo draws it, with a code that says this model and serial number.
fn plate(scene: &Scene, slot: &str, serial: &str) -> Vec<u8> {
    let place = scene.technician.place().unwrap();
    photograph(slot, &["INVENTED", "Model One", serial], 1, &scene.now(), place)
}

fn serial_entry(screen: &Screen) -> (String, Option<Question>) {
    match field_block(screen, "read:serial") {
        Some(Block::TextEntry { text, question, .. }) => (text.clone(), question.clone()),
        other => panic!("{other:?}"),
    }
}

fn photos(screen: &Screen, slot: &str) -> Vec<PhotoView> {
    match field_block(screen, slot) {
        Some(Block::Shot { photos, .. }) => photos.clone(),
        other => panic!("{other:?}"),
    }
}

fn at_plate() -> Scene {
    Scene::at_step("right-unit", &[]).unwrap()
}

#[test]
fn a_serial_number_read_from_the_plate_is_offered_and_counts_once_a_person_has_pressed() {
    let mut scene = at_plate();
    assert_eq!(serial_entry(&scene.screen().unwrap()), (String::new(), None), "nothing before the photograph");
    let bytes = plate(&scene, "nameplate", "AB-1042");
    let (_, turn) = scene.shoot("nameplate", &bytes).unwrap();
    let code = &scene.run().unwrap().photos["nameplate"][0].facts.codes[0];
    assert_eq!(
        (code.symbology, code.text.as_str()),
        (Symbology::Qr, "MODEL: Model One\nS/N: AB-1042"),
        "the record has it"
    );
    assert_eq!(photos(&turn.screen, "nameplate")[0].read, ["Code read: MODEL: Model One S/N: AB-1042 (QR)"]);
    let (text, question) = serial_entry(&turn.screen);
    let question = question.expect("it is offered");
    assert_eq!(
        (text.as_str(), question.text.as_str()),
        ("AB-1042", "Read from the photograph: AB-1042. Compare it with the plate.")
    );
    assert!(!scene.run().unwrap().readings.contains_key("serial"), "it does not count yet");
    let refused = scene.act(&Action::Done { step: "right-unit".into() }).unwrap().screen;
    let missing = words("en").fill("missing-reading", &[("reading", &words("en").text("reading-serial"))]);
    assert!(refused.notices.iter().flat_map(|notice| &notice.lines).any(|line| *line == missing), "{refused:?}");
    // A killed app offers it again.
    assert!(serial_entry(&scene.reopen().unwrap().screen).1.is_some());
    let taken = scene.act(&question.confirm.press).unwrap().screen;
    assert_eq!(serial_entry(&taken), ("AB-1042".to_owned(), None));
    let reading = scene.run().unwrap().readings["serial"].clone();
    assert_eq!((reading.value.as_str(), reading.unusual, reading.times), ("AB-1042", false, 1));
}

#[test]
fn another_units_plate_must_be_answered_and_is_flagged() {
    let mut scene = at_plate();
    let bytes = plate(&scene, "serial-plate", "XY-7777");
    let (_, turn) = scene.shoot("serial-plate", &bytes).unwrap();
    assert!(scene.run().unwrap().photos["serial-plate"][0].flags.contains(&PhotoFlag::OtherSerial));
    let told = words("en").text("flag-other-serial");
    assert!(photos(&turn.screen, "serial-plate")[0].flags.contains(&told));
    let offered = serial_entry(&turn.screen).1.unwrap();
    let asked = scene.act(&offered.confirm.press).unwrap().screen;
    let (_, question) = serial_entry(&asked);
    let question = question.expect("the register's question comes");
    assert!(question.text.contains("XY-7777") && question.text.contains("AB-1042"), "{question:?}");
    assert!(!scene.run().unwrap().readings.contains_key("serial"), "nothing is taken before the answer");
    assert_eq!(question.confirm.press, Action::Confirm { field: "read:serial".into() });
    scene.act(&question.confirm.press).unwrap();
    let reading = scene.run().unwrap().readings["serial"].clone();
    assert_eq!((reading.value.as_str(), reading.unusual), ("XY-7777", true));
}

#[test]
fn what_a_person_typed_is_never_replaced_by_what_a_camera_read() {
    let mut scene = at_plate();
    scene.draft("read:serial", "AB-10").unwrap();
    let bytes = plate(&scene, "nameplate", "XY-7777");
    let (_, turn) = scene.shoot("nameplate", &bytes).unwrap();
    assert_eq!(serial_entry(&turn.screen), ("AB-10".to_owned(), None));
    scene.enter("read:serial", "AB-1042").unwrap();
    let bytes = plate(&scene, "serial-plate", "XY-7777");
    let (_, turn) = scene.shoot("serial-plate", &bytes).unwrap();
    assert_eq!(serial_entry(&turn.screen), ("AB-1042".to_owned(), None));
    assert_eq!(scene.run().unwrap().readings["serial"].value, "AB-1042");
}

#[test]
fn two_plates_that_disagree_offer_nothing_and_the_newest_of_a_slot_counts() {
    let mut scene = at_plate();
    for (slot, serial) in [("nameplate", "XY-7777"), ("serial-plate", "AB-1042")] {
        let bytes = plate(&scene, slot, serial);
        scene.shoot(slot, &bytes).unwrap();
    }
    assert_eq!(serial_entry(&scene.screen().unwrap()), (String::new(), None));
    let bytes = plate(&scene, "nameplate", "AB-1042");
    let (_, turn) = scene.shoot("nameplate", &bytes).unwrap();
    assert_eq!(serial_entry(&turn.screen).0, "AB-1042");
}

#[test]
fn a_code_elsewhere_than_on_the_units_plate_is_not_its_serial_number() {
    let mut scene = at_plate();
    let bytes = plate(&scene, "nameplate", "XY-7777");
    // The controller's own plate has its own number.
    let (_, turn) = scene.shoot("controller-plate", &bytes).unwrap();
    assert_eq!(serial_entry(&turn.screen), (String::new(), None));
    assert!(!scene.run().unwrap().photos["controller-plate"][0].flags.contains(&PhotoFlag::OtherSerial));
    match field_block(&turn.screen, "read:controller-serial") {
        Some(Block::TextEntry { text, question: Some(_), .. }) => assert_eq!(text, "XY-7777"),
        other => panic!("{other:?}"),
    }
    // What shows no plate is not searched at all.
    scene.shoot("casing-before", &bytes).unwrap();
    assert!(scene.run().unwrap().photos["casing-before"].last().unwrap().facts.codes.is_empty());
}

#[test]
fn the_offer_is_in_the_persons_language() {
    let mut scene = at_plate();
    scene.act(&Action::Set { setting: "language".into(), value: "es".into() }).unwrap();
    let bytes = plate(&scene, "nameplate", "AB-1042");
    let (_, turn) = scene.shoot("nameplate", &bytes).unwrap();
    assert!(photos(&turn.screen, "nameplate")[0].read[0].starts_with("Código leído: "));
    let question = serial_entry(&turn.screen).1.unwrap();
    assert!(question.text.starts_with("Leído de la fotografía: AB-1042."));
}
