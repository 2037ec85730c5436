//! The log: append-only, chained, written together or not at all, once.

use coilside_core::action::Action;
use coilside_core::field::DoorError;
use coilside_core::store::StoreError;
use coilside_core::visit::event::{Body, Event, FORMAT, NO_PREV, hex, sha256};
use coilside_core::visit::fact::Fact;
use rusqlite::Connection;

use crate::bench::{Bench, assignment, key, public};

#[test]
fn each_event_carries_the_digest_of_the_stored_bytes_before_it() {
    let mut bench = Bench::begun();
    bench.draft("skip:fit-to-run", "Damp");
    bench.act(&Action::Skip { step: "fit-to-run".into() }).unwrap();
    bench.act(&Action::Undo { step: "fit-to-run".into() }).unwrap();
    let stored = bench.events();
    assert!(stored.len() > 4);
    let mut before = NO_PREV.to_owned();
    for (seq, bytes) in stored.iter().enumerate() {
        let event = Event::from_bytes(bytes, seq as u64).unwrap();
        assert_eq!((event.seq, event.prev.0.as_str(), &event.visit), (seq as u64, before.as_str(), &bench.id()));
        assert_eq!(&event.to_bytes().unwrap(), bytes, "the stored bytes are the canonical ones");
        before = sha256(bytes).0;
    }
}

#[test]
fn the_first_event_names_the_visit_the_devices_key_and_the_format() {
    let bench = Bench::begun();
    let first = Event::from_bytes(&bench.events()[0], 0).unwrap();
    assert_eq!(first.visit, bench.id());
    let Body::VisitOpened { format, device_key, assignment, personal } = first.body else { panic!() };
    assert_eq!((format, device_key, assignment.as_str()), (FORMAT, hex(&public(&key(11))).0, "a1"));
    // Nothing personal is in the log itself, only a salted digest.
    assert_eq!(personal.0.len(), 64);
    let log = bench.events().concat();
    let log = String::from_utf8(log).unwrap();
    for secret in ["Weaver", "555 0100", "Mill Lane", "Mill house"] {
        assert!(!log.contains(secret), "{secret}");
    }
}

#[test]
fn sqlite_itself_refuses_to_change_or_remove_an_event() {
    let mut bench = Bench::begun();
    let sqlite = bench.sqlite();
    for (sql, says) in [
        ("UPDATE event SET bytes = x'00' WHERE seq = 1", "never changed"),
        ("UPDATE event SET seq = seq + 100", "never changed"),
        ("DELETE FROM event WHERE seq = 0", "never removed"),
        ("DELETE FROM event", "never removed"),
    ] {
        let error = sqlite.execute(sql, []).unwrap_err().to_string();
        assert!(error.contains(says), "{sql}: {error}");
    }
    drop(sqlite);
    bench.reopen().unwrap();
    assert_eq!(bench.events().len(), 3);
}

/// How many rows each table has that an action writes.
fn rows(sqlite: &Connection) -> [i64; 5] {
    ["event", "effect", "outbox", "acted", "snapshot"]
        .map(|table| sqlite.query_row(&format!("SELECT count(*) FROM {table}"), [], |row| row.get(0)).unwrap())
}

/// Brings the visit to where a step asks for the alarm: events, effects and outbox rows in one action.
fn before_a_wait() -> Bench {
    let mut bench = Bench::begun();
    bench.draft("skip:fit-to-run", "Damp");
    bench.act(&Action::Skip { step: "fit-to-run".into() }).unwrap();
    for step in [
        "right-unit",
        "know-unit",
        "settings-found",
        "run-found",
        "read-found",
        "gauges-found",
        "lower-set-point",
        "lock-off",
    ] {
        bench.draft(&format!("happened:{step}"), "Done before the app was opened");
        bench.act(&Action::Happened { step: step.into() }).unwrap();
    }
    bench
}

#[test]
fn an_action_is_written_whole_or_not_at_all_wherever_it_fails() {
    let start = Action::Start { step: "wait-charge".into() };
    for table in ["event", "visit", "effect", "outbox", "acted"] {
        let mut bench = before_a_wait();
        let sqlite = bench.sqlite();
        let before = rows(&sqlite);
        for event in ["INSERT", "UPDATE"] {
            let trigger = format!(
                "CREATE TRIGGER broken_{event} BEFORE {event} ON {table} BEGIN SELECT RAISE(ABORT, 'broken here'); END"
            );
            sqlite.execute(&trigger, []).unwrap();
        }
        drop(sqlite);
        bench.reopen().unwrap();
        let (screen, events) = (bench.field().screen(&bench.now).unwrap(), bench.events());
        let error = bench.act_as("wait", &start).unwrap_err();
        assert!(error.to_string().contains("broken here"), "{table}: {error}");
        assert_eq!(bench.events(), events, "{table}");
        assert_eq!(bench.field().screen(&bench.now).unwrap(), screen, "{table}: the screen is as before");
        let sqlite = bench.sqlite();
        assert_eq!(rows(&sqlite), before, "{table}: half of it was written");
        sqlite.execute_batch("DROP TRIGGER broken_INSERT; DROP TRIGGER broken_UPDATE").unwrap();
        drop(sqlite);
        bench.reopen().unwrap();
        let turn = bench.act_as("wait", &start).unwrap();
        assert_eq!(turn.effects.len(), 2, "{table}: both alarms");
        let after = rows(&bench.sqlite());
        assert_eq!([after[0] - before[0], after[1] - before[1], after[2] - before[2]], [1, 2, 1], "{table}");
    }
}

#[test]
fn an_action_on_a_full_disk_is_written_whole_or_not_at_all() {
    let mut bench = Bench::begun();
    let mut refused = 0;
    for pages in 1..400_u32 {
        bench.field().limit_pages(1 << 30).unwrap();
        bench.draft("finding", &"x".repeat(3_000));
        bench.act(&Action::Choose { field: "severity".into(), option: "note".into() }).unwrap();
        let events = bench.events().len();
        bench.field().limit_pages(pages).unwrap();
        match bench.act_as(&format!("add-{pages}"), &Action::AddFinding) {
            Ok(_) => assert_eq!(bench.events().len(), events + 1),
            Err(DoorError::Store(StoreError::Full)) => {
                refused += 1;
                assert_eq!(bench.events().len(), events);
            }
            Err(error) => panic!("{error}"),
        }
        if refused > 20 {
            break;
        }
    }
    assert!(refused > 20, "only {refused} met the limit");
    let sqlite = bench.sqlite();
    // One action, one event, one row to send: nowhere is one without the other.
    let sent: i64 =
        sqlite.query_row("SELECT sum(count) FROM outbox WHERE kind = 'events'", [], |row| row.get(0)).unwrap();
    assert_eq!(rows(&sqlite)[0], sent);
}

#[test]
fn the_same_action_id_adds_once_and_asks_the_shell_for_the_same() {
    let mut bench = Bench::begun();
    let done = Action::Shoot { slot: "casing-before".into() };
    let first = bench.act_as("once", &done).unwrap();
    assert_eq!(first.effects.len(), 1);
    let open = bench.open_effects();
    // The answer was lost on the way to the shell, so it asks again: it must still hear of the camera.
    assert_eq!(bench.act_as("once", &done).unwrap(), first);
    bench.reopen().unwrap();
    assert_eq!(bench.act_as("once", &done).unwrap(), first);
    assert_eq!(bench.open_effects(), open, "asked once");
    let events = bench.events();
    bench.draft("skip:fit-to-run", "Damp");
    let skip = Action::Skip { step: "fit-to-run".into() };
    bench.act_as("skip", &skip).unwrap();
    bench.act_as("skip", &skip).unwrap();
    assert_eq!(bench.events().len(), events.len() + 1);
}

#[test]
fn a_repeated_request_that_has_ended_since_is_not_asked_for_again() {
    let bench = Bench::begun();
    let shoot = Action::Shoot { slot: String::new() };
    let effect = bench.act_as("once", &shoot).unwrap().effects.remove(0);
    bench.done(&effect.id, &coilside_core::effect::Outcome::Cancelled).unwrap();
    assert_eq!(bench.act_as("once", &shoot).unwrap().effects, []);
}

#[test]
fn a_refusal_of_a_field_repeated_under_its_id_says_it_once() {
    let mut bench = Bench::begun();
    bench.draft("happened:fit-to-run", "It runs");
    bench.act(&Action::Happened { step: "fit-to-run".into() }).unwrap();
    let enter = Action::Enter { field: "read:hours".into(), text: "many".into() };
    let first = bench.act_as("typed", &enter).unwrap();
    assert!(format!("{first:?}").contains("“many” is not a number."));
    assert_eq!(bench.act_as("typed", &enter).unwrap(), first);
}

#[test]
fn an_assignment_begun_twice_is_one_visit() {
    let mut bench = Bench::new();
    let begin = Action::StartVisit { assignment: "a1".into() };
    let first = bench.act(&begin).unwrap();
    let id = bench.id();
    let again = bench.act(&begin).unwrap();
    assert_eq!((bench.id(), again.screen.title), (id.clone(), first.screen.title));
    assert_eq!(bench.store().visits(10).unwrap().len(), 1);
    bench.reopen().unwrap();
    bench.act(&Action::StartVisit { assignment: "a2".into() }).unwrap();
    assert_ne!(bench.id(), id, "another assignment is another visit");
}

#[test]
fn a_pause_lapses_the_facts_of_every_unit_of_the_visit() {
    let mut bench = Bench::new();
    bench.field().assigned(&[assignment("two", &["A", "B"])]).unwrap();
    bench.act(&Action::StartVisit { assignment: "two".into() }).unwrap();
    bench.act(&Action::Done { step: "approach".into() }).unwrap();
    bench.act(&Action::Go { to: "unit:B".into() }).unwrap();
    bench.act(&Action::Done { step: "approach".into() }).unwrap();
    bench.pass_ms(40 * 60_000);
    bench.draft("finding", "Wasps in the hedge");
    bench.act(&Action::Choose { field: "severity".into(), option: "note".into() }).unwrap();
    bench.act(&Action::AddFinding).unwrap();
    let visit = bench.visit();
    for letter in ["A", "B"] {
        let run = visit.runs.get(letter).unwrap();
        assert_eq!((run.facts.get(&Fact::Gas), run.facts.get(&Fact::Room)), (None, None), "unit {letter}");
        assert!(run.lapsed.contains_key(&Fact::Gas), "unit {letter}");
    }
}
