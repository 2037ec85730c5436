//! Visits from the round to the seal: for every combination of answers about the unit, in both languages.

use std::collections::BTreeSet;
use std::sync::Mutex;

use coilside_core::action::Action;
use coilside_core::record::seal;
use coilside_core::screen::{Block, Screen};
use coilside_office::demo::player::Move;
use coilside_tests::scene::Scene;
use coilside_tests::texts::Keys;

type Answers = Vec<(&'static str, &'static str)>;

/// Every combination of the pack's conditions.
fn combinations() -> Vec<Answers> {
    let conditions: &[(&str, &[&str])] = &[
        ("condition:first-service", &["no", "yes"]),
        ("condition:coil", &["plain", "coated"]),
        ("condition:sea", &["far", "near"]),
        ("condition:casing", &["metal", "plastic"]),
        ("condition:exchanger", &["stainless", "copper", "no-acid", "not-due"]),
        ("condition:reheat", &["reached", "pending"]),
    ];
    let pack = coilside_core::procedure::library::built_in().unwrap().remove(0).pack;
    let named: Vec<_> = pack
        .conditions
        .iter()
        .map(|condition| {
            let options = condition.options.iter().map(|option| option.id.as_str()).collect::<BTreeSet<_>>();
            (format!("condition:{}", condition.id), options)
        })
        .collect();
    let here: Vec<_> =
        conditions.iter().map(|(id, options)| ((*id).to_owned(), options.iter().copied().collect())).collect();
    assert_eq!(named, here, "the pack asks for something that this list lacks");
    conditions.iter().fold(vec![Vec::new()], |combinations, (field, options)| {
        combinations
            .iter()
            .flat_map(|answers: &Answers| {
                options.iter().map(|option| {
                    let mut answers = answers.clone();
                    answers.push((*field, *option));
                    answers
                })
            })
            .collect()
    })
}

/// Plays a visit to its seal, looks at the words of every screen on the way, and checks the record.
fn play(answers: &[(&'static str, &'static str)], language: &str, keys: &Keys) -> Scene {
    let mut scene = Scene::before(answers).unwrap();
    scene.act(&Action::Set { setting: "language".into(), value: language.into() }).unwrap();
    scene.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
    let mut faults = Vec::new();
    let mut last: Option<Screen> = None;
    let mut screens = 0;
    let played = scene.play_with(|player, moved| {
        let screen = player.screen();
        if last.as_ref() != Some(screen) {
            assert_eq!(screen.language, language);
            faults.extend(keys.faults(screen));
            last = Some(screen.clone());
            screens += 1;
        }
        moved == Some(&Move::Sealed)
    });
    if let Err(error) = played {
        panic!("{answers:?} in {language}: {error:?}");
    }
    assert!(screens > 100, "{answers:?}: only {screens} screens were seen");
    assert_eq!(faults, Vec::<String>::new(), "{answers:?}");
    check_record(&mut scene, answers);
    scene
}

/// Sealed by the device, about this very log, and nothing missing where everything was answered.
fn check_record(scene: &mut Scene, answers: &[(&'static str, &'static str)]) {
    let (visit, run) = (scene.visit().unwrap(), scene.run().unwrap());
    let jws = scene.store().unwrap().seal(&visit.id).unwrap().unwrap_or_else(|| panic!("{answers:?}: no seal"));
    let payload = seal::open(&jws, &scene.technician.public_key()).unwrap();
    seal::matches(&payload, &visit).unwrap_or_else(|error| panic!("{answers:?}: {error}"));
    assert_eq!(payload.missing, Vec::<String>::new(), "{answers:?}");
    assert!(payload.complete, "{answers:?}");
    for (field, option) in answers {
        let condition = field.trim_start_matches("condition:");
        assert_eq!(run.conditions.get(condition).map(String::as_str), Some(*option));
    }
    assert_eq!(run.open_excursions().count(), 0, "{answers:?}");
}

#[test]
fn every_combination_of_answers_is_played_to_a_complete_sealed_record() {
    let keys = Keys::of_the_sources().unwrap();
    let combinations = combinations();
    assert_eq!(combinations.len(), 2 * 2 * 2 * 2 * 4 * 2);
    let waiting = Mutex::new(combinations.clone());
    let played = Mutex::new(BTreeSet::new());
    let workers = std::thread::available_parallelism().map_or(2, usize::from);
    std::thread::scope(|scope| {
        for _ in 0..workers {
            scope.spawn(|| {
                loop {
                    let Some(answers) = waiting.lock().unwrap().pop() else { break };
                    play(&answers, "en", &keys);
                    played.lock().unwrap().insert(answers);
                }
            });
        }
    });
    assert_eq!(played.into_inner().unwrap().len(), combinations.len());
}

#[test]
fn a_visit_in_spanish_shows_no_bare_key_and_is_sealed_complete() {
    let keys = Keys::of_the_sources().unwrap();
    let answers = [
        ("condition:first-service", "yes"),
        ("condition:coil", "coated"),
        ("condition:sea", "near"),
        ("condition:casing", "plastic"),
        ("condition:exchanger", "copper"),
        ("condition:reheat", "pending"),
    ];
    let mut scene = play(&answers, "es", &keys);
    scene.reopen().unwrap();
    assert_eq!(scene.screen().unwrap().title, scene.text("es", "sealed-title"));
    assert_ne!(scene.text("es", "sealed-title"), scene.text("en", "sealed-title"));
}

/// Every place that a person can go to in a visit.
fn places() -> Vec<String> {
    let pack = coilside_core::procedure::library::built_in().unwrap().remove(0).pack;
    let fixed = [
        "now",
        "phases",
        "photographs",
        "readings",
        "details",
        "findings",
        "leaving",
        "break-off",
        "emergency",
        "round",
        "outbox",
        "procedures",
        "settings",
    ];
    let mut places: Vec<String> = fixed.iter().map(|place| (*place).to_owned()).collect();
    places.extend(pack.phases.iter().map(|phase| format!("phase:{}", phase.id)));
    places.extend(pack.readings.iter().map(|reading| format!("why:read:{}", reading.id)));
    places.extend(pack.shots.iter().map(|shot| format!("why:shot:{}", shot.id)));
    places.extend(pack.excursions.iter().map(|excursion| format!("left:{}", excursion.id)));
    for (_, step) in pack.steps() {
        places.push(format!("skip:{}", step.id));
        places.push(format!("happened:{}", step.id));
    }
    places
}

/// Looks at every place in both languages and goes back to the work.
fn look_around(scene: &mut Scene, keys: &Keys, moment: &str) {
    for language in ["en", "es"] {
        scene.act(&Action::Set { setting: "language".into(), value: language.into() }).unwrap();
        for place in places() {
            let screen = scene.go(&place).unwrap();
            assert_eq!(screen.place, place, "{moment}");
            assert_eq!(screen.language, language);
            assert!(!screen.title.is_empty(), "{moment}: '{place}' has no title");
            assert!(!screen.menu.is_empty(), "{moment}: no way on from '{place}'");
            assert_eq!(keys.faults(&screen), Vec::<String>::new(), "{moment}");
        }
    }
    scene.act(&Action::Set { setting: "language".into(), value: "en".into() }).unwrap();
    scene.go("now").unwrap();
}

#[test]
fn every_place_speaks_both_languages_at_every_stage_of_a_visit() {
    let keys = Keys::of_the_sources().unwrap();
    let mut scene = Scene::before(&[]).unwrap();
    for place in ["round", "outbox", "procedures", "settings"] {
        let screen = scene.go(place).unwrap();
        assert_eq!((screen.place.as_str(), keys.faults(&screen)), (place, Vec::new()));
    }
    scene.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
    look_around(&mut scene, &keys, "just begun");
    for step in ["read-found", "soak-coil", "circulate-acid", "flush-loop", "tell-owner"] {
        scene.play_to(step).unwrap();
        look_around(&mut scene, &keys, step);
    }
    scene.act(&Action::Set { setting: "units".into(), value: "us".into() }).unwrap();
    look_around(&mut scene, &keys, "in US units");
    scene.clock.pass_ms(45 * 60_000);
    look_around(&mut scene, &keys, "after a pause");
    scene.play_until(|screen| screen.place == "leaving").unwrap();
    look_around(&mut scene, &keys, "all done");
    scene.go("leaving").unwrap();
    scene.act(&Action::Seal).unwrap();
    look_around(&mut scene, &keys, "frozen");
    scene.go("leaving").unwrap();
    scene.play_on().unwrap();
    look_around(&mut scene, &keys, "sealed");
}

#[test]
fn a_visit_broken_off_speaks_both_languages_in_every_place() {
    let keys = Keys::of_the_sources().unwrap();
    let mut scene = Scene::at_step("circulate-acid", &[]).unwrap();
    scene.act(&Action::Start { step: "circulate-acid".into() }).unwrap();
    look_around(&mut scene, &keys, "acid in the loop");
    scene.draft("break-off", "Called away to a burst pipe").unwrap();
    let broken = scene.act(&Action::BreakOff).unwrap().screen;
    assert_eq!(broken.place, "leaving");
    look_around(&mut scene, &keys, "broken off");
    let dangers = broken.notices.iter().flat_map(|notice| &notice.lines).count();
    assert!(broken.blocks.iter().any(|block| matches!(block, Block::Table { .. })) || dangers > 0);
}
