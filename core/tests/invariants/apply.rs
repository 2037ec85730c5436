//! `apply` is total: whatever events come, it gives a state; equal bytes give equal states.

use coilside_core::id::{Digest, StepId, VisitId};
use coilside_core::now::Now;
use coilside_core::procedure::danger::Danger;
use coilside_core::procedure::mixing::MixNote;
use coilside_core::visit::apply::{apply, replay};
use coilside_core::visit::event::{Body, ChainEnd, Event, FORMAT, Own, PhotoFacts, PhotoFlag, Severity, sha256};
use coilside_core::visit::fact::{Fact, Facts, Value};
use coilside_core::visit::state::Visit;
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

/// Few names, so that events meet.
fn unit<T: From<&'static str> + Clone + std::fmt::Debug>() -> impl Strategy<Value = T> {
    select(vec!["A", "B", "?"]).prop_map(T::from)
}

fn name<T: From<&'static str> + Clone + std::fmt::Debug>() -> impl Strategy<Value = T> {
    select(vec!["", "one", "two", "three"]).prop_map(T::from)
}

fn text() -> impl Strategy<Value = String> {
    prop_oneof![Just(String::new()), "\\PC{0,12}", Just("12.5".to_owned()), Just("ñ “quoted”\n\u{0}".to_owned())]
}

fn fact() -> impl Strategy<Value = (Fact, Value)> {
    select(Fact::ALL).prop_flat_map(|fact| (Just(fact), select(fact.values())))
}

fn facts() -> impl Strategy<Value = Facts> {
    vec(fact(), 0..5).prop_map(|facts| facts.into_iter().collect())
}

fn dangers() -> impl Strategy<Value = Vec<Danger>> {
    vec(select(Danger::ALL), 0..3)
}

fn now() -> impl Strategy<Value = Now> {
    let ms = || prop_oneof![Just(0_i64), -1_000_000..2_000_000_000_000_i64, Just(i64::MAX), Just(i64::MIN)];
    (ms(), any::<i32>(), ms(), select(vec!["boot", "other boot"])).prop_map(|(utc_ms, offset_min, mono_ms, epoch)| {
        Now { utc_ms, offset_min, mono_ms, mono_epoch: epoch.to_owned() }
    })
}

fn of_steps() -> impl Strategy<Value = Body> {
    let clears = || vec(select(Fact::ALL), 0..3);
    prop_oneof![
        (unit(), name(), text(), facts()).prop_map(|(unit, condition, option, sets)| Body::ConditionSet {
            unit,
            condition,
            option,
            sets
        }),
        (unit(), name(), facts(), any::<u32>(), any::<u32>()).prop_map(|(unit, step, sets, least_s, most_s)| {
            Body::StepStarted { unit, step, sets, least_s, most_s }
        }),
        (unit(), name(), facts(), clears(), any::<bool>())
            .prop_map(|(unit, step, sets, clears, late)| Body::StepDone { unit, step, sets, clears, late }),
        (unit(), name(), text()).prop_map(|(unit, step, reason)| Body::StepSkipped { unit, step, reason }),
        (unit(), name(), clears()).prop_map(|(unit, step, clears)| Body::StepUndone { unit, step, clears }),
        (unit(), name(), facts(), clears(), text(), dangers()).prop_map(
            |(unit, step, sets, clears, words, dangers)| {
                Body::StepHappened { unit, step, sets, clears, words, dangers }
            }
        ),
        (unit(), facts(), 0..1_u64 << 53, prop::option::of(unit()))
            .prop_map(|(unit, facts, pause_s, by)| Body::FactsLapsed { unit, facts, pause_s, by }),
        (unit(), fact()).prop_map(|(unit, (fact, value))| Body::FactRechecked { unit, fact, value }),
    ]
}

fn of_evidence() -> impl Strategy<Value = Body> {
    let severity = select(vec![Severity::Note, Severity::Soon, Severity::Unsafe]);
    prop_oneof![
        (unit(), name(), text(), any::<bool>()).prop_map(|(letter, reading, value, unusual)| Body::ReadingTaken {
            letter,
            reading,
            typed: value.clone(),
            value,
            measure: "Cel".into(),
            instrument: String::new(),
            error_limit: String::new(),
            unusual,
            own: unusual.then(|| Own { name: "Meter".into(), serial: "7".into(), lapsed: true, ..Own::default() }),
        }),
        (unit(), text(), text()).prop_map(|(unit, mix, concentrate)| Body::MixMade {
            unit,
            mix,
            chemical: String::new(),
            water_l: "2.000".into(),
            notes: vec![MixNote::LessThanLoop { loop_l: concentrate.clone() }],
            concentrate,
            measure: "L".into(),
        }),
        (unit(), name(), text()).prop_map(|(unit, reading, reason)| Body::ReadingMissed { unit, reading, reason }),
        (unit(), name(), text()).prop_map(|(unit, slot, seed)| Body::PhotoTaken {
            unit,
            slot,
            digest: sha256(seed.as_bytes()),
            bytes: seed.len() as u64,
            media: "image/jpeg".into(),
            facts: PhotoFacts::default(),
            flags: vec![PhotoFlag::NoTime],
        }),
        (unit(), name(), text()).prop_map(|(unit, slot, reason)| Body::ShotMissed { unit, slot, reason }),
        (unit(), name(), text(), text()).prop_map(|(unit, excursion, home, away)| Body::ExcursionOpened {
            unit,
            excursion,
            home,
            reason: away.clone(),
            away
        }),
        (unit(), name(), text(), text()).prop_map(|(unit, excursion, shows, answered)| Body::ExcursionHome {
            unit,
            excursion,
            shows,
            answered
        }),
        (unit(), name(), text()).prop_map(|(unit, excursion, reason)| Body::ExcursionLeft { unit, excursion, reason }),
        (unit(), severity, text(), proptest::option::of(text()))
            .prop_map(|(unit, severity, text, since)| Body::FindingAdded { unit, severity, text, since }),
        (unit(), any::<u32>(), text()).prop_map(|(unit, finding, words)| Body::FindingMended { unit, finding, words }),
    ]
}

fn of_visit() -> impl Strategy<Value = Body> {
    prop_oneof![
        (text(), text()).prop_map(|(device_key, assignment)| Body::VisitOpened {
            format: FORMAT,
            device_key,
            assignment,
            personal: Digest("00".into()),
        }),
        (unit(), text()).prop_map(|(unit, text)| Body::RunStarted {
            unit,
            asset: text.clone(),
            label: text.clone(),
            pack: text,
            pack_digest: Digest::default(),
            core: "0".into(),
        }),
        (text(), text()).prop_map(|(latitude, longitude)| Body::PlaceFixed {
            latitude,
            longitude,
            accuracy_m: "8".into(),
            age_ms: 0,
        }),
        text().prop_map(|why| Body::PlaceMissing { why }),
        Just(Body::DeviceRestarted {}),
        Just(Body::DeviceChanged { device_key: "04cd".into() }),
        (text(), dangers()).prop_map(|(reason, dangers)| Body::BrokenOff { reason, dangers }),
        (any::<bool>(), vec(text(), 0..3)).prop_map(|(complete, missing)| Body::SealPrepared { complete, missing }),
        Just(Body::SealCancelled {}),
        text().prop_map(|kind| Body::Unknown { kind }),
    ]
}

fn body() -> impl Strategy<Value = Body> {
    prop_oneof![of_steps(), of_evidence(), of_visit()]
}

/// Stored bytes of a chain. A kind of the future is written as a later version would.
fn stored(bodies: &[(Body, Now)]) -> Vec<Vec<u8>> {
    let (visit, mut end) = (VisitId("v".into()), ChainEnd::default());
    let mut stored = Vec::new();
    for (body, time) in bodies {
        let time = Now { utc_ms: time.utc_ms % (1 << 52), mono_ms: time.mono_ms % (1 << 52), ..time.clone() };
        let (known, kind) = match body {
            Body::Unknown { kind } => (Body::SealCancelled {}, Some(format!("later-{kind}"))),
            known => (known.clone(), None),
        };
        let event = Event { visit: visit.clone(), seq: end.next, prev: end.last.clone(), time, body: known };
        let mut bytes = event.to_bytes().unwrap();
        if let Some(kind) = kind {
            let mut value: serde_json::Value = serde_json::from_slice(&bytes).unwrap();
            value["kind"] = kind.into();
            value["of-the-future"] = serde_json::json!([1, { "two": "three" }]);
            bytes = serde_json::to_vec(&value).unwrap();
        }
        end.follow(&visit, &bytes).unwrap();
        stored.push(bytes);
    }
    stored
}

fn replayed(stored: &[Vec<u8>]) -> Visit {
    replay(&"v".into(), stored.iter().map(Vec::as_slice)).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 192, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn apply_gives_a_state_for_any_events_in_any_order_at_any_time(bodies in vec((body(), now()), 0..40)) {
        let mut visit = Visit::default();
        for (seq, (body, time)) in bodies.into_iter().enumerate() {
            let event = Event { visit: "v".into(), seq: seq as u64, prev: Digest::default(), time, body };
            visit = apply(visit, &event);
        }
        for run in visit.runs.values() {
            for step in &run.order {
                prop_assert!(run.steps.contains_key(step), "{step} is in the order and has no mark");
            }
            let marked: std::collections::BTreeSet<&StepId> = run.order.iter().collect();
            prop_assert_eq!(marked.len(), run.steps.len());
        }
    }

    #[test]
    fn equal_bytes_give_equal_states_also_from_any_snapshot_on(
        bodies in vec((body(), now()), 1..30),
        cut in any::<prop::sample::Index>(),
    ) {
        let stored = stored(&bodies);
        let whole = replayed(&stored);
        prop_assert_eq!(&replayed(&stored), &whole);
        let (before, after) = stored.split_at(cut.index(stored.len()));
        let snapshot = serde_json::to_string(&replayed(before)).unwrap();
        let mut visit: Visit = serde_json::from_str(&snapshot).unwrap();
        for bytes in after {
            let mut end = visit.end.clone();
            let event = end.follow(&"v".into(), bytes).unwrap();
            visit = apply(visit, &event);
            visit.end = end;
        }
        prop_assert_eq!(visit, whole);
    }

    #[test]
    fn bytes_that_are_no_event_are_an_error_and_never_a_panic(
        bodies in vec((body(), now()), 1..4),
        at in any::<prop::sample::Index>(),
        byte in any::<u8>(),
        noise in vec(any::<u8>(), 0..64),
    ) {
        let mut stored = stored(&bodies);
        let _ = Event::from_bytes(&noise, 0);
        prop_assert!(ChainEnd::default().follow(&"v".into(), &noise).is_err());
        let first = stored.first_mut().unwrap();
        let at = at.index(first.len());
        let honest = first[at];
        first[at] = byte;
        let mut end = ChainEnd::default();
        let followed = end.follow(&"v".into(), &stored[0]).is_ok();
        if followed && byte != honest && stored.len() > 1 {
            prop_assert!(end.follow(&"v".into(), &stored[1]).is_err(), "the next event notices the change");
        }
    }
}
