//! `kill -9` at 200 random moments of a whole visit: no acknowledged action and no photograph is lost.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

use coilside_core::action::Action;
use coilside_core::id::VisitId;
use coilside_core::visit::apply::replay;
use coilside_core::visit::event::{Body, Event, sha256};
use coilside_office::demo::player::{Clock, Player};
use coilside_tests::{MORNING_UTC_MS, Technician, assignment};
use rusqlite::Connection;

use crate::process::{Process, free_port, output, text};
use crate::random::Random;
use crate::remote::Remote;

const KILLS: u32 = 200;

/// Another seed is another set of moments: `COILSIDE_KILL_SEED` sets it. A run that failed says which it was.
fn seed() -> u64 {
    std::env::var("COILSIDE_KILL_SEED").map_or(20_260_504, |seed| seed.parse().expect("COILSIDE_KILL_SEED is a number"))
}

#[test]
fn two_hundred_kills_lose_no_acknowledged_action_and_no_photograph() {
    let folder = tempfile::tempdir().unwrap();
    let (office_folder, field_folder) = (folder.path().join("office"), folder.path().join("field"));
    let token_file = folder.path().join("token");
    fs::write(&token_file, output(&["office", "--folder", text(&office_folder), "--new-device", "kill test"])).unwrap();
    {
        let office = coilside_office::open(&office_folder).unwrap();
        office.put_assignment(&serde_json::to_value(assignment("a1")).unwrap()).unwrap();
    }
    let (office_port, field_port) = (free_port().to_string(), free_port().to_string());
    let office_address = format!("http://127.0.0.1:{office_port}");
    let mut office = Process::new(&["office", "--folder", text(&office_folder), "--port", &office_port]);
    let mut field = Process::new(&[
        "field",
        "--folder",
        text(&field_folder),
        "--port",
        &field_port,
        "--office",
        &office_address,
        "--token-file",
        text(&token_file),
        "--rehearsal",
    ]);
    office.start();
    let address = field.start();

    let door = Remote::at(&address);
    let technician = Technician::default();
    let mut player = Player::new(&door, Clock::at(MORNING_UTC_MS, 0), &technician, "kill").unwrap();
    wait_for_the_assignment(&mut player);

    let kills = Killer::set_on(office, field);
    player.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
    if let Err(error) = player.play() {
        panic!("after {} kills of seed {}: {error}", kills.count(), seed());
    }
    let in_the_visit = kills.count();
    assert!(in_the_visit > KILLS / 4, "enough of the kills fell into the visit itself: {in_the_visit}");
    kills.wait_for(KILLS, || {
        // The visit is sealed; the rest of the kills fall on the sending and on looking.
        player.act(&Action::Go { to: "outbox".into() }).unwrap();
    });
    let (office, field) = kills.call_off();
    println!(
        "seed {}: {KILLS} kills, {in_the_visit} before the seal, field started {} times, office {} times",
        seed(),
        field.starts,
        office.starts
    );
    assert!(field.starts > 50 && office.starts > 50, "both were killed");
    assert!(door.repeated.get() > 20, "kills fell into calls: {}", door.repeated.get());

    wait_until_all_is_safe(&mut player);
    let acknowledged = door.acknowledged.borrow().clone();
    drop((office, field));
    compare(&field_folder, &office_folder, &acknowledged);
}

fn wait_for_the_assignment(player: &mut Player<'_>) {
    let since = Instant::now();
    while !serde_json::to_string(player.screen()).unwrap().contains("Mill house") {
        assert!(since.elapsed() < Duration::from_secs(60), "the assignment comes down");
        std::thread::sleep(Duration::from_millis(200));
        player.act(&Action::Go { to: "round".into() }).unwrap();
    }
}

fn wait_until_all_is_safe(player: &mut Player<'_>) {
    let since = Instant::now();
    while player.screen().outbox.value != "all at the office" {
        assert!(since.elapsed() < Duration::from_secs(120), "the outbox empties: {:?}", player.screen().outbox);
        std::thread::sleep(Duration::from_millis(300));
        player.act(&Action::SendNow).unwrap();
    }
}

/// Kills one process or the other at random moments, and starts it again.
struct Killer {
    processes: Arc<Mutex<Option<(Process, Process)>>>,
    count: Arc<AtomicU32>,
    stop: Arc<AtomicBool>,
    thread: Option<std::thread::JoinHandle<()>>,
}

impl Killer {
    fn set_on(office: Process, field: Process) -> Killer {
        let processes = Arc::new(Mutex::new(Some((office, field))));
        let (count, stop) = (Arc::new(AtomicU32::new(0)), Arc::new(AtomicBool::new(false)));
        let thread = {
            let (processes, count, stop) = (Arc::clone(&processes), Arc::clone(&count), Arc::clone(&stop));
            std::thread::spawn(move || {
                let mut random = Random::of(seed());
                while !stop.load(Ordering::Relaxed) && count.load(Ordering::Relaxed) < KILLS {
                    std::thread::sleep(Duration::from_micros(random.below(220_000)));
                    let mut both = processes.lock().unwrap();
                    let Some((office, field)) = both.as_mut() else { return };
                    let victim = if random.below(2) == 0 { office } else { field };
                    victim.kill();
                    std::thread::sleep(Duration::from_micros(random.below(30_000)));
                    victim.start();
                    count.fetch_add(1, Ordering::Relaxed);
                }
            })
        };
        Killer { processes, count, stop, thread: Some(thread) }
    }

    fn count(&self) -> u32 {
        self.count.load(Ordering::Relaxed)
    }

    fn wait_for(&self, kills: u32, mut meanwhile: impl FnMut()) {
        while self.count() < kills {
            meanwhile();
        }
    }

    fn call_off(mut self) -> (Process, Process) {
        self.stop.store(true, Ordering::Relaxed);
        self.thread.take().unwrap().join().unwrap();
        self.processes.lock().unwrap().take().unwrap()
    }
}

fn rows(database: &Path, sql: &str) -> Vec<(String, i64, Vec<u8>)> {
    let connection = Connection::open(database).unwrap();
    let mut query = connection.prepare(sql).unwrap();
    let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).unwrap();
    rows.collect::<Result<_, _>>().unwrap()
}

/// Every acknowledged action is in the device's log once; the office has the same bytes; every photograph is on both disks.
fn compare(field_folder: &Path, office_folder: &Path, acknowledged: &[Action]) {
    let sql = "SELECT visit, seq, bytes FROM event ORDER BY visit, seq";
    let at_field = rows(&field_folder.join("field.db"), sql);
    let office_database = fs::read_dir(office_folder)
        .unwrap()
        .filter_map(|entry| entry.ok().map(|entry| entry.path()))
        .find(|path| path.extension().is_some_and(|kind| kind == "db"))
        .expect("the office has a database");
    assert_eq!(rows(&office_database, sql), at_field, "the office has every event once, in order, to the byte");

    let visit = VisitId(at_field[0].0.clone());
    replay(&visit, at_field.iter().map(|(_, _, bytes)| bytes.as_slice())).expect("the chain holds");
    let events: Vec<Event> =
        at_field.iter().map(|(_, seq, bytes)| Event::from_bytes(bytes, *seq as u64).unwrap()).collect();

    let mut wanted: BTreeMap<String, u32> = BTreeMap::new();
    for action in acknowledged {
        let name = match action {
            Action::Done { step } => format!("done {step}"),
            Action::Start { step } => format!("start {step}"),
            Action::Choose { field, option } => format!("choose {field} {option}"),
            Action::OpenExcursion { excursion } => format!("open {excursion}"),
            Action::BringHome { excursion } => format!("home {excursion}"),
            Action::Shoot { slot } => format!("photo {slot}"),
            Action::Enter { field, text } => format!("enter {field} {text}"),
            _ => continue,
        };
        *wanted.entry(name).or_default() += 1;
    }
    let mut found: BTreeMap<String, u32> = BTreeMap::new();
    let mut digests = Vec::new();
    for event in &events {
        let name = match &event.body {
            Body::StepDone { step, .. } => format!("done {step}"),
            Body::StepStarted { step, .. } => format!("start {step}"),
            Body::ConditionSet { condition, option, .. } => format!("choose condition:{condition} {option}"),
            Body::ExcursionOpened { excursion, .. } => format!("open {excursion}"),
            Body::ExcursionHome { excursion, .. } => format!("home {excursion}"),
            Body::ReadingTaken { reading, typed, .. } => format!("enter read:{reading} {typed}"),
            Body::PhotoTaken { slot, digest, .. } => {
                digests.push(digest.clone());
                format!("photo {slot}")
            }
            _ => continue,
        };
        *found.entry(name).or_default() += 1;
    }
    assert!(wanted.len() > 60, "the visit was a whole one: {}", wanted.len());
    assert_eq!(found, wanted, "each acknowledged action is in the log once, and nothing else is");

    assert!(digests.len() >= 10, "{} photographs", digests.len());
    let office_photos: Vec<_> = walk(office_folder);
    for digest in digests {
        let original = fs::read(field_folder.join("originals").join(digest.as_str())).unwrap();
        assert_eq!(sha256(&original), digest);
        let there = office_photos.iter().any(|path| fs::read(path).is_ok_and(|bytes| bytes == original));
        assert!(there, "the photograph {digest} is at the office");
    }
}

fn walk(folder: &Path) -> Vec<std::path::PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap().filter_map(Result::ok) {
        if entry.path().is_dir() { found.extend(walk(&entry.path())) } else { found.push(entry.path()) }
    }
    found
}
