//! The log of a whole visit: what is kept beside it to be quick is always what the log itself says.

use coilside_core::id::VisitId;
use coilside_core::store::{Commit, Store};
use coilside_core::visit::apply::apply;
use coilside_core::visit::event::{ChainEnd, Event};
use coilside_core::visit::state::Visit;
use coilside_tests::scene::Scene;

#[test]
fn the_snapshot_equals_the_replay_after_every_event_of_a_visit() {
    let mut scene = Scene::begun(&[]).unwrap();
    scene.play_on().unwrap();
    let (id, stored) = (scene.visit_id().unwrap(), scene.events().unwrap());
    assert!(stored.len() > 100, "only {} events", stored.len());
    let folder = coilside_tests::folder().unwrap();
    let mut store = Store::open(folder.path()).unwrap();
    let mut visit = Visit { id: id.clone(), ..Visit::default() };
    for (seq, bytes) in stored.into_iter().enumerate() {
        visit = with(visit, &id, &bytes);
        let event = Event::from_bytes(&bytes, seq as u64).unwrap();
        store.commit(&Commit { visit: Some(&visit), events: vec![(event, bytes)], ..Commit::default() }).unwrap();
        assert_eq!(store.visit(&id).unwrap(), visit, "after event {seq}");
        assert_eq!(store.replayed(&id).unwrap(), visit, "after event {seq}");
    }
}

fn with(mut visit: Visit, id: &VisitId, bytes: &[u8]) -> Visit {
    let mut end: ChainEnd = visit.end.clone();
    let event = end.follow(id, bytes).unwrap();
    visit = apply(visit, &event);
    visit.end = end;
    visit
}

#[test]
fn a_folder_closed_at_any_stage_opens_with_the_state_that_its_events_tell() {
    let mut scene = Scene::begun(&[]).unwrap();
    for step in ["right-unit", "lock-off", "soak-coil", "circulate-acid", "read-left", "tell-owner"] {
        scene.play_to(step).unwrap();
        let (id, expected, screen) = (scene.visit_id().unwrap(), scene.visit().unwrap(), scene.screen().unwrap());
        let store = scene.store().unwrap();
        assert_eq!(store.visit(&id).unwrap(), expected, "{step}");
        drop(store);
        assert_eq!(scene.reopen().unwrap().screen, screen, "{step}: the same screen again");
    }
}
