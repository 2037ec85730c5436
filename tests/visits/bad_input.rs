//! Bad input: each is met with words on the screen, and nothing that was typed or photographed is lost.

use std::fs::File;
use std::io::{Seek as _, SeekFrom, Write as _};

use coilside_core::action::Action;
use coilside_core::effect::Outcome;
use coilside_core::screen::{Block, Screen};
use coilside_core::visit::event::{Body, PhotoFlag, sha256};
use coilside_tests::jpeg_of;
use coilside_tests::look::{field_block, files, notice_lines, words};
use coilside_tests::scene::Scene;

/// What a number field shows.
struct Shown {
    text: String,
    problem: Option<String>,
    question: Option<String>,
    taken: Option<String>,
}

fn number(screen: &Screen, field: &str) -> Shown {
    match field_block(screen, field) {
        Some(Block::Number { text, problem, question, taken, .. }) => Shown {
            text: text.clone(),
            problem: problem.clone(),
            question: question.as_ref().map(|question| question.text.clone()),
            taken: taken.clone(),
        },
        other => panic!("'{field}' is no number field: {other:?}"),
    }
}

/// A visit at the readings as found.
fn at_readings() -> Scene {
    Scene::at_step("read-found", &[]).unwrap()
}

/// Types something that is turned down: the problem is said, the text stays, nothing is written.
fn turned_down(scene: &mut Scene, field: &str, typed: &str, problem: &str) {
    let events = scene.events().unwrap().len();
    let shown = number(&scene.enter(field, typed).unwrap().screen, field);
    assert_eq!(shown.problem.as_deref(), Some(problem), "{typed}");
    assert_eq!(shown.text, typed, "what was typed stays");
    assert_eq!(shown.taken, None);
    assert_eq!(scene.events().unwrap().len(), events, "{typed} wrote something");
    scene.reopen().unwrap();
    let shown = number(&scene.screen().unwrap(), field);
    assert_eq!(shown.text, typed, "what was typed survives a killed app");
    assert_eq!(shown.problem.as_deref(), Some(problem), "and so does what is wrong with it");
}

fn value_of(scene: &Scene, reading: &str) -> Option<String> {
    scene.run().unwrap().readings.get(reading).map(|taken| taken.value.clone())
}

#[test]
fn letters_in_a_number_are_turned_down_and_stay_typed() {
    let mut scene = at_readings();
    let problem = "“4o.5” is not a number. Use digits, with a comma or a point.";
    turned_down(&mut scene, "read:water-in-found", "4o.5", problem);
    let after = scene.enter("read:water-in-found", "40.5").unwrap().screen;
    assert_eq!(number(&after, "read:water-in-found").problem, None);
    assert_eq!(value_of(&scene, "water-in-found").as_deref(), Some("40.5"));
}

#[test]
fn nothing_typed_asks_for_a_number() {
    let mut scene = at_readings();
    for typed in ["", "   "] {
        let shown = number(&scene.enter("read:power-found", typed).unwrap().screen, "read:power-found");
        assert_eq!(shown.problem.as_deref(), Some("Type a number."), "'{typed}'");
    }
    assert_eq!(value_of(&scene, "power-found"), None);
}

#[test]
fn a_decimal_comma_is_read_as_a_point() {
    let mut scene = at_readings();
    let shown = number(&scene.enter("read:air-on-found", "12,5").unwrap().screen, "read:air-on-found");
    assert_eq!(value_of(&scene, "air-on-found").as_deref(), Some("12.5"));
    assert_eq!(shown.taken.as_deref(), Some("Recorded: 12.5\u{a0}°C"));
    let Body::ReadingTaken { typed, value, .. } = scene.last_event().unwrap().body else { panic!() };
    assert_eq!((typed.as_str(), value.as_str()), ("12,5", "12.5"), "the record keeps what was typed as well");
}

#[test]
fn a_thousands_separator_in_a_whole_number_is_not_guessed_at() {
    let mut scene = at_readings();
    let problem = "“1,200” can mean two numbers. Write it without the separator.";
    turned_down(&mut scene, "read:power-found", "1,200", problem);
    scene.enter("read:power-found", "1200").unwrap();
    assert_eq!(value_of(&scene, "power-found").as_deref(), Some("1200"));
}

#[test]
fn an_impossible_temperature_is_turned_down_with_its_bounds() {
    let mut scene = at_readings();
    let problem = "That cannot be. Write a value from 0\u{a0}°C to 95\u{a0}°C.";
    turned_down(&mut scene, "read:water-in-found", "400", problem);
    // The question 'is it so?' is not a way around what cannot be.
    scene.act(&Action::Confirm { field: "read:water-in-found".into() }).unwrap();
    assert_eq!(value_of(&scene, "water-in-found"), None);
    scene.act(&Action::Set { setting: "units".into(), value: "us".into() }).unwrap();
    let shown = number(&scene.enter("read:water-in-found", "400").unwrap().screen, "read:water-in-found");
    assert_eq!(shown.problem.as_deref(), Some("That cannot be. Write a value from 32.0\u{a0}°F to 203.0\u{a0}°F."));
}

#[test]
fn an_unusual_temperature_is_asked_back_and_taken_when_it_is_meant() {
    let mut scene = at_readings();
    let events = scene.events().unwrap().len();
    let shown = number(&scene.enter("read:air-on-found", "48").unwrap().screen, "read:air-on-found");
    assert_eq!(shown.question.as_deref(), Some("Mostly it lies between \u{2212}7\u{a0}°C and 43\u{a0}°C. Is it so?"));
    assert_eq!((shown.problem.as_deref(), shown.text.as_str()), (None, "48"));
    assert_eq!(scene.events().unwrap().len(), events);
    scene.reopen().unwrap();
    let again = number(&scene.screen().unwrap(), "read:air-on-found");
    assert_eq!((again.question, again.text.as_str()), (shown.question, "48"), "a killed app asks it again");
    let after = scene.act(&Action::Confirm { field: "read:air-on-found".into() }).unwrap().screen;
    assert_eq!(number(&after, "read:air-on-found").question, None);
    let taken = scene.run().unwrap().readings.get("air-on-found").cloned().unwrap();
    assert_eq!((taken.value.as_str(), taken.unusual), ("48", true), "it is marked as unusual");
}

#[test]
fn typing_something_else_takes_the_problem_away() {
    let mut scene = at_readings();
    scene.enter("read:water-in-found", "x").unwrap();
    let shown = number(&scene.draft("read:water-in-found", "4").unwrap().screen, "read:water-in-found");
    assert_eq!((shown.problem, shown.text.as_str()), (None, "4"));
}

#[test]
fn a_correction_keeps_the_first_value_in_the_log() {
    let mut scene = at_readings();
    scene.enter("read:flow-found", "9.0").unwrap();
    let first = scene.last_event().unwrap();
    scene.enter("read:flow-found", "9.5").unwrap();
    let taken = scene.run().unwrap().readings.get("flow-found").cloned().unwrap();
    assert_eq!((taken.value.as_str(), taken.times), ("9.5", 2));
    let stored = scene.events().unwrap();
    assert!(stored.contains(&first.to_bytes().unwrap()));
}

const SLOT: &str = "coil-before";

/// A file that is turned down: said in words, kept aside, and the shot can be taken again.
fn photo_turned_down(scene: &mut Scene, put: impl FnOnce(&mut File), key: &str) {
    let effect = scene.ask_photo(SLOT).unwrap();
    let path = scene.field().incoming(&effect.id).unwrap();
    let mut file = File::create(&path).unwrap();
    put(&mut file);
    let length = file.metadata().unwrap().len();
    drop(file);
    let (events, aside) = (scene.events().unwrap().len(), scene.folder.path().join("aside"));
    let kept_before = files(&aside).unwrap();
    let turn = scene.done(&effect.id, &Outcome::Photo { place: None }).unwrap();
    let said = notice_lines(&turn.screen.notices);
    assert_eq!(said.first().map(String::as_str), Some("This file was not taken. It is kept aside."), "{said:?}");
    assert!(said.contains(&words("en").text(key)), "{key}: {said:?}");
    assert_eq!(scene.events().unwrap().len(), events);
    let kept = files(&aside).unwrap();
    assert_eq!(kept.len(), kept_before.len() + 1, "the file is kept");
    assert!(kept.iter().any(|(name, bytes)| !kept_before.contains_key(name) && *bytes == length), "{kept:?}");
    assert!(!path.exists());
    assert_eq!(scene.run().unwrap().photos.get(SLOT), None);
    // And now a good one.
    let good = jpeg_of("taken again");
    scene.shoot(SLOT, &good).unwrap();
    let photos = scene.run().unwrap().photos.remove(SLOT).unwrap();
    assert_eq!(photos.iter().map(|photo| photo.digest.clone()).collect::<Vec<_>>(), [sha256(&good)]);
    assert_eq!(std::fs::read(scene.field().original(&sha256(&good))).unwrap(), good, "kept to the byte");
}

fn at_coil() -> Scene {
    Scene::at_step("brush-coil", &[]).unwrap()
}

#[test]
fn an_empty_photograph_is_turned_down_kept_and_can_be_taken_again() {
    photo_turned_down(&mut at_coil(), |_| {}, "photo-empty");
}

#[test]
fn a_renamed_pdf_is_turned_down_kept_and_can_be_taken_again() {
    // The head of a PDF file: ISO 32000-1, 7.5.2.
    photo_turned_down(
        &mut at_coil(),
        |file| file.write_all(b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n1 0 obj").unwrap(),
        "photo-not-a-picture",
    );
}

#[test]
fn a_truncated_jpeg_is_turned_down_kept_and_can_be_taken_again() {
    let whole = jpeg_of("a picture that breaks off");
    photo_turned_down(&mut at_coil(), |file| file.write_all(&whole[..whole.len() * 2 / 3]).unwrap(), "photo-damaged");
}

#[test]
fn a_file_of_61_mb_is_turned_down_kept_and_can_be_taken_again() {
    let sparse = |file: &mut File| {
        file.write_all(&jpeg_of("a very long file")).unwrap();
        file.seek(SeekFrom::Start(61_000_000 - 1)).unwrap();
        file.write_all(&[0]).unwrap();
    };
    photo_turned_down(&mut at_coil(), sparse, "photo-too-long");
}

#[test]
fn a_picture_of_more_than_100_megapixels_is_turned_down_kept_and_can_be_taken_again() {
    // A JPEG whose frame header (SOF, ITU-T T.81 B.2.2) says 12000 × 9000 pixels.
    let mut bytes = jpeg_of("an enormous picture");
    let frame = bytes.windows(2).position(|pair| pair[0] == 0xff && (0xc0..=0xc2).contains(&pair[1])).unwrap();
    bytes[frame + 5..frame + 7].copy_from_slice(&9_000_u16.to_be_bytes());
    bytes[frame + 7..frame + 9].copy_from_slice(&12_000_u16.to_be_bytes());
    photo_turned_down(&mut at_coil(), |file| file.write_all(&bytes).unwrap(), "photo-too-large");
}

#[test]
fn two_bad_files_for_one_request_are_both_kept() {
    let mut scene = at_coil();
    let effect = scene.ask_photo(SLOT).unwrap();
    for bytes in [b"%PDF-1.7 one".as_slice(), b"%PDF-1.7 another"] {
        scene.put_incoming(&effect.id, bytes).unwrap();
        scene.done(&effect.id, &Outcome::Photo { place: None }).unwrap();
    }
    let mut lengths: Vec<u64> = files(&scene.folder.path().join("aside")).unwrap().into_values().collect();
    lengths.sort_unstable();
    assert_eq!(lengths, [12, 16]);
}

#[test]
fn a_heic_photograph_is_kept_as_it_is_and_flagged() {
    // The first box of a HEIF file: ISO/IEC 23008-12, brand 'heic' in the file type box of ISO/IEC 14496-12.
    let mut heic = vec![0, 0, 0, 24];
    heic.extend_from_slice(b"ftypheic\0\0\0\0mif1heic and a picture that only a phone can decode");
    let mut scene = at_coil();
    let (_, turn) = scene.shoot(SLOT, &heic).unwrap();
    let photo = scene.run().unwrap().photos.get(SLOT).unwrap()[0].clone();
    assert_eq!((photo.media.as_str(), photo.digest.clone()), ("image/heic", sha256(&heic)));
    assert!(photo.flags.contains(&PhotoFlag::NoPreview));
    assert_eq!(std::fs::read(scene.field().original(&photo.digest)).unwrap(), heic);
    let shown = field_block(&turn.screen, SLOT);
    let Some(Block::Shot { photos, .. }) = shown else { panic!("{shown:?}") };
    assert!(photos[0].flags.contains(&"Kept as it is. Not every device can show it.".to_owned()));
}

#[test]
fn the_same_picture_for_two_places_is_kept_once_and_flagged() {
    let mut scene = Scene::at_step("right-unit", &[]).unwrap();
    let picture = jpeg_of("one plate for everything");
    scene.shoot("nameplate", &picture).unwrap();
    scene.shoot("serial-plate", &picture).unwrap();
    let run = scene.run().unwrap();
    assert!(!run.photos.get("nameplate").unwrap()[0].flags.contains(&PhotoFlag::SameAsOther));
    assert!(run.photos.get("serial-plate").unwrap()[0].flags.contains(&PhotoFlag::SameAsOther));
    assert_eq!(files(&scene.folder.path().join("originals")).unwrap().len(), 1 + 1, "with the one of the casing");
}
