//! No photograph that was given to the door vanishes, whenever its report comes: late, twice, never, or in between.

use coilside_core::action::Action;
use coilside_core::effect::{Outcome, Request};
use coilside_core::visit::event::{Body, Event, sha256};
use coilside_office::demo::player::Answers as _;
use coilside_tests::jpeg_of;
use coilside_tests::look::files;
use coilside_tests::scene::Scene;

const SLOT: &str = "coil-before";
const CAME: Outcome = Outcome::Photo { place: None };

fn at_coil() -> Scene {
    Scene::at_step("brush-coil", &[]).unwrap()
}

/// The photographs of the log: slot and digest, in order.
fn taken(scene: &Scene) -> Vec<(String, String)> {
    let stored = scene.events().unwrap();
    let read = |bytes: &Vec<u8>| match Event::from_bytes(bytes, 0).unwrap().body {
        Body::PhotoTaken { slot, digest, .. } => Some((slot.0, digest.0)),
        _ => None,
    };
    stored.iter().filter_map(read).collect()
}

fn kept(scene: &Scene, bytes: &[u8]) {
    assert_eq!(std::fs::read(scene.field().original(&sha256(bytes))).unwrap(), bytes, "the original, to the byte");
    assert_eq!(files(&scene.folder.path().join("incoming")).unwrap().len(), 0, "nothing waits");
}

fn digest(bytes: &[u8]) -> String {
    sha256(bytes).0
}

#[test]
fn a_photograph_said_twice_is_in_the_log_once() {
    let mut scene = at_coil();
    let before = taken(&scene);
    let picture = jpeg_of("said twice");
    let (effect, _) = scene.shoot(SLOT, &picture).unwrap();
    scene.done(&effect.id, &CAME).unwrap();
    scene.put_incoming(&effect.id, &picture).unwrap();
    scene.done(&effect.id, &CAME).unwrap();
    assert_eq!(taken(&scene)[before.len()..], [(SLOT.to_owned(), digest(&picture))]);
    kept(&scene, &picture);
}

#[test]
fn a_photograph_said_twice_at_the_same_time_is_in_the_log_once() {
    for _ in 0..8 {
        let mut scene = Scene::begun(&[]).unwrap();
        let picture = jpeg_of("two threads");
        let effect = scene.ask_photo(SLOT).unwrap();
        scene.put_incoming(&effect.id, &picture).unwrap();
        std::thread::scope(|scope| {
            for _ in 0..2 {
                scope.spawn(|| scene.done(&effect.id, &CAME).unwrap());
            }
        });
        assert_eq!(taken(&scene), [(SLOT.to_owned(), digest(&picture))]);
        kept(&scene, &picture);
    }
}

#[test]
fn another_photograph_under_a_request_that_ended_is_kept_without_a_place() {
    let mut scene = at_coil();
    let before = taken(&scene).len();
    let (first, second) = (jpeg_of("the first"), jpeg_of("the second, under the same name"));
    let (effect, _) = scene.shoot(SLOT, &first).unwrap();
    scene.put_incoming(&effect.id, &second).unwrap();
    scene.done(&effect.id, &CAME).unwrap();
    let expected = [(SLOT.to_owned(), digest(&first)), (String::new(), digest(&second))];
    assert_eq!(taken(&scene)[before..], expected);
    kept(&scene, &second);
}

#[test]
fn a_photograph_that_comes_after_it_was_cancelled_is_kept_without_a_place() {
    for earlier in [Outcome::Cancelled, Outcome::Failed { why: "the camera is busy".into() }] {
        let mut scene = at_coil();
        let before = taken(&scene).len();
        let effect = scene.ask_photo(SLOT).unwrap();
        scene.done(&effect.id, &earlier).unwrap();
        let picture = jpeg_of("late");
        scene.put_incoming(&effect.id, &picture).unwrap();
        scene.done(&effect.id, &CAME).unwrap();
        assert_eq!(taken(&scene)[before..], [(String::new(), digest(&picture))]);
        kept(&scene, &picture);
        assert_eq!(
            scene.store().unwrap().effect(&effect.id).unwrap().unwrap().outcome,
            Some(earlier),
            "the first wins"
        );
    }
}

#[test]
fn a_photograph_of_an_app_that_was_killed_before_its_report_is_adopted_at_opening() {
    let mut scene = at_coil();
    let before = taken(&scene).len();
    let effect = scene.ask_photo(SLOT).unwrap();
    let picture = jpeg_of("orphan");
    scene.put_incoming(&effect.id, &picture).unwrap();
    let turn = scene.reopen().unwrap();
    assert_eq!(taken(&scene)[before..], [(SLOT.to_owned(), digest(&picture))]);
    assert!(!turn.effects.iter().any(|open| open.id == effect.id), "it is answered");
    kept(&scene, &picture);
}

#[test]
fn files_that_belong_to_no_photograph_are_set_aside_and_the_door_opens() {
    let mut scene = Scene::begun(&[]).unwrap();
    let locate = scene.field().opened(&scene.now()).unwrap().effects.remove(0);
    assert_eq!(locate.request, Request::Locate);
    scene.put_incoming(&locate.id, b"a place is no picture").unwrap();
    scene.put_incoming("nobody/7/0", b"whose is it?").unwrap();
    scene.put_incoming("plainname", b"and this?").unwrap();
    scene.reopen().unwrap();
    assert_eq!(files(&scene.folder.path().join("incoming")).unwrap().len(), 0);
    let lengths: Vec<u64> = files(&scene.folder.path().join("aside")).unwrap().into_values().collect();
    assert_eq!(lengths.iter().sum::<u64>(), 21 + 12 + 9);
}

#[test]
fn a_photograph_that_comes_while_the_record_is_frozen_cancels_the_seal() {
    let mut scene = Scene::begun(&[]).unwrap();
    let effect = scene.ask_photo(SLOT).unwrap();
    scene.draft("break-off", "Storm").unwrap();
    scene.act(&Action::BreakOff).unwrap();
    let sign = scene.act(&Action::Seal).unwrap().effects.remove(0);
    let picture = jpeg_of("just before the signature");
    scene.put_incoming(&effect.id, &picture).unwrap();
    scene.done(&effect.id, &CAME).unwrap();
    assert_eq!(scene.visit().unwrap().sealing, None);
    assert_eq!(taken(&scene), [(SLOT.to_owned(), digest(&picture))]);
    // The signature over the state before the photograph seals nothing; a new one does.
    let Request::SignBytes { bytes_base64 } = &sign.request else { panic!("{sign:?}") };
    let old = Outcome::Signature { base64: scene.technician.sign(bytes_base64) };
    scene.done(&sign.id, &old).unwrap();
    assert_ne!(scene.screen().unwrap().title, "The record is sealed");
    scene.play_on().unwrap();
    assert_eq!(scene.screen().unwrap().title, "The record is sealed");
}

#[test]
fn a_photograph_that_comes_after_the_seal_is_kept_and_the_record_stays_as_it_is() {
    let mut scene = Scene::begun(&[]).unwrap();
    let effect = scene.ask_photo(SLOT).unwrap();
    scene.draft("break-off", "Storm").unwrap();
    scene.act(&Action::BreakOff).unwrap();
    let sign = scene.act(&Action::Seal).unwrap().effects.remove(0);
    let Request::SignBytes { bytes_base64 } = &sign.request else { panic!("{sign:?}") };
    scene.done(&sign.id, &Outcome::Signature { base64: scene.technician.sign(bytes_base64) }).unwrap();
    let events = scene.events().unwrap();
    let picture = jpeg_of("too late for the record");
    scene.put_incoming(&effect.id, &picture).unwrap();
    let turn = scene.done(&effect.id, &CAME).unwrap();
    assert!(format!("{:?}", turn.screen.notices).contains("The photograph is kept and sent beside it."));
    assert_eq!(scene.events().unwrap(), events);
    kept(&scene, &picture);
    let rows = scene.store().unwrap().outbox(1_000).unwrap();
    assert!(rows.iter().any(|row| row.digest == sha256(&picture)), "it is sent");
}
