//! Thousands of worlds, on all of the machine's cores; and that they find mistakes.

use std::rc::Rc;
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};

use super::mistakes::Mistake;
use super::office::ModelOffice;
use super::phone::{Key, ModelPhone};
use super::plan::Size;
use super::play::{Count, Outcome, World};

/// The worlds that are played in every run.
const SEEDS: u64 = 20_000;

const SIZE: Size =
    Size { phones_most: 2, acts_most: 12, photo_bytes_most: 600_000, troubles_most: 14, power: true, scripts: true };

thread_local! {
    static KEYS: [Rc<Key>; 2] = [1, 2].map(|number| Rc::new(Key::of(number)));
}

/// Plays the world of a number.
fn play(seed: u64, mistake: Option<Mistake>, read: bool) -> Outcome {
    let office = |plan: &super::plan::Plan, random| {
        let mut office = ModelOffice::new(random, mistake);
        for at in (0..plan.phones).filter(|at| plan.scripted[*at]) {
            office.add_script(&format!("script-{at}"));
        }
        office
    };
    World::play(seed, &SIZE, read, office, |at, scripted, random| {
        let key = KEYS.with(|keys| Rc::clone(&keys[at]));
        let hex = key.hex.clone();
        (ModelPhone::new(key, random, mistake, scripted), hex, scripted.then(|| format!("script-{at}")))
    })
}

pub(crate) fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok().map(|text| text.parse().unwrap_or_else(|_| panic!("{name} is a number")))
}

/// Plays worlds on every core until one is broken; tells the lowest that was, and how often each thing happened.
fn play_all(seeds: u64, mistake: Option<Mistake>) -> (Option<(u64, String)>, Count) {
    let cores = std::thread::available_parallelism().map_or(2, usize::from) as u64;
    let next = AtomicU64::new(0);
    let broken: Mutex<Option<(u64, String)>> = Mutex::new(None);
    let count = Mutex::new(Count::new());
    std::thread::scope(|scope| {
        for _ in 0..cores {
            scope.spawn(|| {
                let mut own = Count::new();
                loop {
                    let seed = next.fetch_add(1, Ordering::Relaxed);
                    if seed >= seeds {
                        break;
                    }
                    let outcome = play(seed, mistake, false);
                    for (what, times) in outcome.count {
                        *own.entry(what).or_default() += times;
                    }
                    if let Some(why) = outcome.broken {
                        next.fetch_max(seeds, Ordering::Relaxed);
                        let mut broken = broken.lock().unwrap();
                        if broken.as_ref().is_none_or(|(known, _)| seed < *known) {
                            *broken = Some((seed, why));
                        }
                    }
                }
                let mut count = count.lock().unwrap();
                for (what, times) in own {
                    *count.entry(what).or_default() += times;
                }
            });
        }
    });
    (broken.into_inner().unwrap(), count.into_inner().unwrap())
}

#[test]
fn in_twenty_thousand_worlds_nothing_is_lost_nothing_is_doubled_and_everything_arrives() {
    let seeds = number("COILSIDE_WORLD_SEEDS").unwrap_or(SEEDS);
    let started = std::time::Instant::now();
    let (broken, count) = play_all(seeds, None);
    println!("{seeds} worlds in {:.1} s: {count:#?}", started.elapsed().as_secs_f64());
    if let Some((seed, why)) = broken {
        panic!("world {seed}: {why}\nCOILSIDE_WORLD_SEED={seed} tells what happened in it");
    }
    for what in [
        "lost",
        "cut",
        "arrived twice",
        "answered twice",
        "answer spoilt",
        "something else answered",
        "captive portal",
        "clock jumped",
        "time passed",
        "revoked",
        "joined",
        "phone full",
        "phone had no room for an answer",
        "phone killed",
        "phone died at a write",
        "office full",
        "office killed",
        "office lost its power",
        "office died at a write",
    ] {
        let times = count.get(what).copied().unwrap_or_default();
        assert!(times > seeds / 100, "'{what}' happened {times} times");
    }
}

#[test]
fn every_planted_mistake_is_found() {
    let mut missed = Vec::new();
    for mistake in Mistake::ALL {
        match play_all(number("COILSIDE_WORLD_SEEDS").unwrap_or(SEEDS), Some(mistake)).0 {
            Some((seed, why)) => println!("{mistake:?} is found in world {seed}: {why}"),
            None => missed.push(mistake),
        }
    }
    assert!(missed.is_empty(), "{missed:?} are found in none of {SEEDS} worlds");
}

#[test]
fn the_same_number_gives_the_same_world() {
    for seed in 0..40 {
        let (once, again) = (play(seed, None, false), play(seed, None, true));
        assert_eq!((once.hash, &once.count), (again.hash, &again.count), "world {seed}");
        assert!(again.lines.len() > 10, "world {seed} has something to tell");
    }
    assert_ne!(play(1, None, false).hash, play(2, None, false).hash);
}

/// Tells what happened in the world whose number is in `COILSIDE_WORLD_SEED`, with the mistake that `COILSIDE_WORLD_MISTAKE`
/// names; in world 7 where there is none.
#[test]
fn world_of_a_number_can_be_read() {
    let named = std::env::var("COILSIDE_WORLD_MISTAKE").unwrap_or_default();
    let mistake = Mistake::ALL.into_iter().find(|mistake| format!("{mistake:?}") == named);
    let outcome = play(number("COILSIDE_WORLD_SEED").unwrap_or(7), mistake, true);
    for line in &outcome.lines {
        println!("{line}");
    }
    assert!(mistake.is_some() || outcome.broken.is_none(), "{:?}", outcome.broken);
}
