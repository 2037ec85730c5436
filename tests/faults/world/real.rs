//! The same worlds with the real core and the real office in them: some, for they take a thousand times as long.

use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};

use super::clock::{Clock, MORNING_MS};
use super::phone::Key;
use super::plan::{Plan, Size};
use super::play::{Count, Outcome, World};
use super::real_office::RealOffice;
use super::real_phone::RealPhone;
use super::seeds::number;

/// So many real worlds are played in every run.
const SEEDS: u64 = 100;

const SIZE: Size =
    Size { phones_most: 1, acts_most: 7, photo_bytes_most: 300_000, troubles_most: 10, power: false, scripts: true };

pub(crate) fn play(seed: u64, read: bool) -> Outcome {
    let tokens = RefCell::new(Vec::new());
    let office = |plan: &Plan, _| {
        let office = RealOffice::new(MORNING_MS);
        let token = |at: usize| plan.scripted[at].then(|| office.script(&format!("script-{at}")));
        *tokens.borrow_mut() = (0..plan.phones).map(token).collect();
        office
    };
    World::play(seed, &SIZE, read, office, |at, _, random| {
        let key = Rc::new(Key::of(1 + at as u8));
        let hex = key.hex.clone();
        (RealPhone::new(key, random, &Clock::default().at(0)), hex, tokens.borrow()[at].clone())
    })
}

#[test]
fn the_real_core_and_the_real_office_lose_nothing_either() {
    let seeds = number("COILSIDE_REAL_WORLD_SEEDS").unwrap_or(SEEDS);
    let (next, started) = (AtomicU64::new(0), std::time::Instant::now());
    let (broken, count) = (Mutex::new(Vec::new()), Mutex::new(Count::new()));
    let cores = std::thread::available_parallelism().map_or(2, usize::from);
    std::thread::scope(|scope| {
        for _ in 0..cores {
            scope.spawn(|| {
                loop {
                    let seed = next.fetch_add(1, Ordering::Relaxed);
                    if seed >= seeds {
                        return;
                    }
                    let outcome = play(seed, false);
                    let mut count = count.lock().unwrap();
                    for (what, times) in outcome.count {
                        *count.entry(what).or_default() += times;
                    }
                    broken.lock().unwrap().extend(outcome.broken.map(|why| (seed, why)));
                }
            });
        }
    });
    println!("{seeds} real worlds in {:.1} s: {:#?}", started.elapsed().as_secs_f64(), count.lock().unwrap());
    let broken = broken.into_inner().unwrap();
    assert!(broken.is_empty(), "{broken:?}\nCOILSIDE_REAL_WORLD_SEED=N tells what happened in world N");
    for what in ["lost", "cut", "arrived twice", "answer spoilt", "joined", "phone killed", "office killed"] {
        let times = count.lock().unwrap().get(what).copied().unwrap_or_default();
        assert!(times > 0, "'{what}' never happened");
    }
}

/// Tells what happened in the real world whose number is in `COILSIDE_REAL_WORLD_SEED`; in world 3 where there is none.
#[test]
fn real_world_of_a_number_can_be_read_and_is_the_same_again() {
    let seed = number("COILSIDE_REAL_WORLD_SEED").unwrap_or(3);
    let outcome = play(seed, true);
    for line in &outcome.lines {
        println!("{line}");
    }
    assert_eq!(outcome.broken, None);
    assert_eq!(outcome.hash, play(seed, true).hash, "world {seed}");
}
