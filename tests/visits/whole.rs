//! Visits from the round to the seal: with every pack, for every pair of answers about the unit, in both languages.

use std::collections::BTreeSet;
use std::sync::Mutex;

use coilside_core::action::Action;
use coilside_core::procedure::gate::{Applies, applies};
use coilside_core::procedure::pack::Pack;
use coilside_core::record::seal;
use coilside_core::screen::{Block, Screen};
use coilside_office::demo::player::Move;
use coilside_tests::look::{pack, packs};
use coilside_tests::scene::Scene;
use coilside_tests::texts::Keys;

type Answers = Vec<(String, String)>;

/// Answers that the core refuses together, for whoever gives them: field, option, field, option.
const REFUSED: &[[&str; 4]] = &[
    // Hydrochloric acid attacks stainless steel.
    ["exchanger", "stainless", "descaler", "hydrochloric"],
];

/// Sets of answers in which every pair of answers to two of the pack's questions occurs. All combinations would be a
/// thousand and more for a pack; what two answers do to each other is what goes wrong.
fn every_pair(pack: &Pack) -> Vec<Answers> {
    let options: Vec<Vec<(&str, &str)>> = pack
        .conditions
        .iter()
        .map(|condition| condition.options.iter().map(|option| (condition.id.as_str(), option.id.as_str())).collect())
        .collect();
    let refused = |one: (&str, &str), other: (&str, &str)| {
        REFUSED
            .iter()
            .any(|pair| *pair == [one.0, one.1, other.0, other.1] || *pair == [other.0, other.1, one.0, one.1])
    };
    let mut open = BTreeSet::new();
    for (at, ones) in options.iter().enumerate() {
        for others in options.iter().skip(at + 1) {
            let pairs = ones.iter().flat_map(|one| others.iter().map(move |other| (*one, *other)));
            open.extend(pairs.filter(|(one, other)| !refused(*one, *other)));
        }
    }
    let mut sets = Vec::new();
    while let Some((one, other)) = open.first().copied() {
        let mut set = vec![one, other];
        for choices in &options {
            if choices.iter().any(|choice| choice.0 == one.0 || choice.0 == other.0) {
                continue;
            }
            let new = |choice: &(&str, &str)| {
                set.iter()
                    .filter(|known| open.contains(&(**known, *choice)) || open.contains(&(*choice, **known)))
                    .count()
            };
            let allowed = choices.iter().filter(|choice| !set.iter().any(|known| refused(*known, **choice)));
            set.extend(allowed.max_by_key(|choice| new(choice)).copied());
        }
        open.retain(|(one, other)| !(set.contains(one) && set.contains(other)));
        sets.push(set.iter().map(|(id, option)| (format!("condition:{id}"), (*option).to_owned())).collect());
    }
    sets
}

/// Plays a visit to its seal, looks at the words of every screen on the way, and checks the record.
fn play(pack: &str, answers: &[(String, String)], language: &str, keys: &Keys) -> Scene {
    let given: Vec<_> = answers.iter().map(|(field, option)| (field.as_str(), option.as_str())).collect();
    let mut scene = Scene::before_of(pack, &given).unwrap();
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
        panic!("{pack} {answers:?} in {language}: {error:?}");
    }
    assert!(screens > 100, "{pack} {answers:?}: only {screens} screens were seen");
    assert_eq!(faults, Vec::<String>::new(), "{pack} {answers:?}");
    check_record(&mut scene, answers);
    scene
}

/// Sealed by the device, about this very log, and nothing missing where everything was answered.
fn check_record(scene: &mut Scene, answers: &[(String, String)]) {
    let (visit, run) = (scene.visit().unwrap(), scene.run().unwrap());
    let jws = scene.store().unwrap().seal(&visit.id).unwrap().unwrap_or_else(|| panic!("{answers:?}: no seal"));
    let payload = seal::open(&jws, &scene.technician.public_key()).unwrap();
    seal::matches(&payload, &visit).unwrap_or_else(|error| panic!("{answers:?}: {error}"));
    assert_eq!(payload.missing, Vec::<String>::new(), "{answers:?}");
    assert!(payload.complete, "{answers:?}");
    for (field, option) in answers {
        let condition = field.trim_start_matches("condition:");
        let asked = pack(&scene.technician.pack).pack.steps().any(|(_, step)| {
            step.asks.iter().any(|id| id.as_str() == condition) && applies(step, &run) == Applies::Yes
        });
        let expected = asked.then_some(option.as_str());
        assert_eq!(run.conditions.get(condition).map(String::as_str), expected, "{answers:?}: {condition}");
    }
    assert_eq!(run.open_excursions().count(), 0, "{answers:?}");
}

#[test]
fn every_pair_of_answers_of_every_pack_is_played_to_a_complete_sealed_record_in_both_languages() {
    let keys = Keys::of_the_sources().unwrap();
    let mut waiting = Vec::new();
    for loaded in packs() {
        let sets = every_pair(&loaded.pack);
        assert!(sets.len() >= 2, "{}: too few to hear both languages", loaded.pack.pack);
        for condition in &loaded.pack.conditions {
            for option in &condition.options {
                let answer = (format!("condition:{}", condition.id), option.id.clone());
                assert!(sets.iter().any(|set| set.contains(&answer)), "{}: {answer:?}", loaded.pack.pack);
            }
        }
        let named = sets.into_iter().zip(["en", "es"].into_iter().cycle());
        waiting.extend(named.map(|(answers, language)| (loaded.pack.pack.clone(), language, answers)));
    }
    let all = waiting.len();
    let waiting = Mutex::new(waiting);
    let played = Mutex::new(BTreeSet::new());
    let workers = std::thread::available_parallelism().map_or(2, usize::from);
    std::thread::scope(|scope| {
        for _ in 0..workers {
            scope.spawn(|| {
                loop {
                    let Some((pack, language, answers)) = waiting.lock().unwrap().pop() else { break };
                    play(&pack, &answers, language, &keys);
                    played.lock().unwrap().insert((pack, language, answers));
                }
            });
        }
    });
    assert_eq!(played.into_inner().unwrap().len(), all);
}

#[test]
fn the_end_of_a_visit_in_spanish_is_said_in_spanish() {
    let keys = Keys::of_the_sources().unwrap();
    let mut scene = play(coilside_tests::ADD_ON, &[], "es", &keys);
    scene.reopen().unwrap();
    assert_eq!(scene.screen().unwrap().title, scene.text("es", "sealed-title"));
    assert_ne!(scene.text("es", "sealed-title"), scene.text("en", "sealed-title"));
}

/// Every place that a person can go to in a visit.
fn places(pack: &Pack) -> Vec<String> {
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
        for place in places(&pack(&scene.technician.pack).pack) {
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
    for place in ["round", "outbox", "settings"] {
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
fn every_place_of_every_pack_speaks_both_languages_before_the_work_and_in_the_middle_of_it() {
    let keys = Keys::of_the_sources().unwrap();
    for loaded in packs() {
        let name = &loaded.pack.pack;
        let mut scene = Scene::before_of(name, &[]).unwrap();
        scene.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
        look_around(&mut scene, &keys, &format!("{name} just begun"));
        let waits = loaded.pack.steps().filter(|(_, step)| step.dwell.is_some()).nth(1);
        let (_, step) = waits.unwrap_or_else(|| panic!("{name} waits for nothing"));
        scene.play_to(step.id.as_str()).unwrap();
        scene.act(&Action::Start { step: step.id.0.clone() }).unwrap();
        look_around(&mut scene, &keys, &format!("{name} at {}", step.id));
    }
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
