//! What the shell is asked: it reappears until it ends, and it ends once.

use coilside_core::action::Action;
use coilside_core::effect::{Outcome, PlaceFix, Request};
use coilside_core::visit::event::Body;

use crate::bench::{Bench, key, signature};

fn place(latitude_deg: f64) -> Outcome {
    Outcome::Place { place: PlaceFix { latitude_deg, longitude_deg: 2.5, accuracy_m: 8.0, age_ms: 500 } }
}

#[test]
fn what_was_not_answered_is_asked_again_after_every_opening_until_it_is() {
    let mut bench = Bench::begun();
    bench.act(&Action::Shoot { slot: "casing-before".into() }).unwrap();
    let open = bench.open_effects();
    assert_eq!(open.len(), 2, "the place and the camera: {open:?}");
    for _ in 0..2 {
        assert_eq!(bench.reopen().unwrap().effects, open);
    }
    let locate = open.iter().find(|effect| effect.request == Request::Locate).unwrap();
    bench.done(&locate.id, &place(1.5)).unwrap();
    let left: Vec<_> = open.iter().filter(|effect| effect.id != locate.id).cloned().collect();
    assert_eq!(bench.reopen().unwrap().effects, left);
}

#[test]
fn the_first_outcome_wins_over_doubled_late_and_reordered_ones() {
    let mut bench = Bench::begun();
    let locate = bench.open_effects().remove(0);
    bench.done(&locate.id, &place(1.5)).unwrap();
    let events = bench.events();
    for outcome in [place(1.5), place(60.0), Outcome::Failed { why: "late".into() }, Outcome::Cancelled, Outcome::Woken]
    {
        bench.done(&locate.id, &outcome).unwrap();
        assert_eq!(bench.events(), events, "{outcome:?} wrote something");
    }
    assert_eq!(bench.visit().place.unwrap().latitude, "1.500000");
    bench.reopen().unwrap();
    bench.done(&locate.id, &place(60.0)).unwrap();
    assert_eq!(bench.store().effect(&locate.id).unwrap().unwrap().outcome, Some(place(1.5)));
}

#[test]
fn sqlite_itself_refuses_a_second_end() {
    let mut bench = Bench::begun();
    let locate = bench.open_effects().remove(0);
    bench.done(&locate.id, &place(1.5)).unwrap();
    let error = bench.sqlite().execute("UPDATE effect SET outcome = NULL", []).unwrap_err().to_string();
    assert!(error.contains("an effect ends once"), "{error}");
}

#[test]
fn an_outcome_of_a_request_that_was_never_made_is_an_error_and_changes_nothing() {
    let bench = Bench::begun();
    let (events, open) = (bench.events(), bench.open_effects());
    for id in ["", "x", "no/such/thing", &format!("{}/99/0", bench.id())] {
        let error = bench.done(id, &place(1.5)).unwrap_err();
        assert!(!error.to_string().is_empty());
        assert!(bench.done(id, &Outcome::Photo { place: None }).is_err(), "'{id}'");
    }
    assert_eq!((bench.events(), bench.open_effects()), (events, open));
}

#[test]
fn an_answer_of_another_kind_than_asked_ends_the_request_and_writes_no_event() {
    let bench = Bench::begun();
    let locate = bench.open_effects().remove(0);
    let events = bench.events();
    bench.done(&locate.id, &signature_of_nothing()).unwrap_or_else(|error| panic!("{error}"));
    assert_eq!(bench.events(), events);
    assert!(bench.done(&locate.id, &Outcome::Photo { place: None }).is_err(), "a place is no photograph");
}

fn signature_of_nothing() -> Outcome {
    Outcome::Signature { base64: "AAAA".into() }
}

#[test]
fn a_place_that_comes_while_the_record_is_frozen_does_not_thaw_it() {
    for outcome in [place(1.5), Outcome::Failed { why: "no satellites".into() }] {
        let mut bench = Bench::begun();
        let locate = bench.open_effects().remove(0);
        let sign = bench.freeze();
        let events = bench.events();
        bench.done(&locate.id, &outcome).unwrap();
        assert_eq!(bench.events(), events, "{outcome:?}: between frozen and signed only cancel or sign again");
        bench.done(&sign.id, &signature(&sign, &key(11))).unwrap();
        let id = bench.id();
        assert!(bench.store().seal(&id).unwrap().is_some(), "{outcome:?}: the signature still holds");
    }
}

#[test]
fn a_place_that_cannot_be_had_is_written_down_with_the_platforms_words() {
    let bench = Bench::begun();
    let locate = bench.open_effects().remove(0);
    bench.done(&locate.id, &Outcome::Failed { why: "turned off by the person".into() }).unwrap();
    assert_eq!(bench.last_event().body, Body::PlaceMissing { why: "turned off by the person".into() });
}
