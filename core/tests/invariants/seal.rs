//! The seal: frozen, signed by this device's key, and closed for good.

use coilside_core::action::Action;
use coilside_core::effect::{Effect, Outcome};
use coilside_core::field::DoorError;
use coilside_core::record::file::verify::{Report, verify};
use coilside_core::record::jws::JwsError;
use coilside_core::record::seal::{self, SealError};

use crate::bench::{Bench, key, public, signature};

#[test]
fn a_signature_of_a_foreign_key_seals_nothing_and_the_right_one_still_does() {
    let mut bench = Bench::begun();
    let sign = bench.freeze();
    let events = bench.events();
    let error = bench.done(&sign.id, &signature(&sign, &key(12))).unwrap_err();
    assert!(matches!(error, DoorError::Seal(SealError::Jws(JwsError::Signature))), "{error:?}");
    for nonsense in ["", "no base64 !", "AAAA"] {
        assert!(bench.done(&sign.id, &Outcome::Signature { base64: nonsense.into() }).is_err(), "'{nonsense}'");
    }
    assert_eq!(bench.events(), events);
    assert!(bench.open_effects().contains(&sign), "it is still asked for");
    let (id, visit) = (bench.id(), bench.visit());
    bench.done(&sign.id, &signature(&sign, &key(11))).unwrap();
    let jws = bench.store().seal(&id).unwrap().unwrap();
    seal::matches(&seal::open(&jws, &public(&key(11))).unwrap(), &visit).unwrap();
    assert!(matches!(seal::open(&jws, &public(&key(12))), Err(SealError::Jws(JwsError::Signature))));
}

#[test]
fn between_frozen_and_signed_only_cancel_or_sign_again_is_taken() {
    let mut bench = Bench::begun();
    bench.freeze();
    let events = bench.events();
    for action in [
        Action::Done { step: "fit-to-run".into() },
        Action::Shoot { slot: String::new() },
        Action::AddFinding,
        Action::BreakOff,
        Action::Enter { field: "read:hours".into(), text: "5".into() },
    ] {
        let turn = bench.act(&action).unwrap();
        assert_eq!(turn.screen.notices[0].title, "The record is being sealed", "{action:?}");
        assert_eq!((bench.events(), turn.effects), (events.clone(), Vec::new()), "{action:?}");
    }
    let again = bench.act(&Action::Seal).unwrap().effects.remove(0);
    assert_eq!(bench.events(), events, "signing again writes nothing");
    bench.act(&Action::CancelSeal).unwrap();
    assert_eq!(bench.visit().sealing, None);
    // The signature of before the cancel comes late: it seals nothing and is not asked for again.
    bench.done(&again.id, &signature(&again, &key(11))).unwrap();
    let id = bench.id();
    assert!(!bench.open_effects().contains(&again));
    assert_eq!(bench.store().seal(&id).unwrap(), None);
}

#[test]
fn after_the_seal_every_action_on_the_record_is_refused() {
    let mut bench = Bench::begun();
    bench.seal();
    let events = bench.events();
    for action in [
        Action::Done { step: "fit-to-run".into() },
        Action::Start { step: "wait-charge".into() },
        Action::Skip { step: "fit-to-run".into() },
        Action::Undo { step: "approach".into() },
        Action::Happened { step: "add-acid".into() },
        Action::Shoot { slot: String::new() },
        Action::Enter { field: "read:hours".into(), text: "5".into() },
        Action::Choose { field: "condition:coil".into(), option: "plain".into() },
        Action::OpenExcursion { excursion: "schedule".into() },
        Action::Recheck { fact: "supply".into() },
        Action::AddFinding,
        Action::Seal,
        Action::CancelSeal,
        Action::BreakOff,
    ] {
        let turn = bench.act(&action).unwrap();
        assert_eq!(turn.screen.notices[0].title, "The record is sealed", "{action:?}");
        assert_eq!((bench.events(), turn.effects), (events.clone(), Vec::new()), "{action:?}");
    }
    bench.reopen().unwrap();
    assert_eq!(bench.act(&Action::AddFinding).unwrap().screen.notices[0].title, "The record is sealed");
}

#[test]
fn a_changed_byte_of_the_log_does_not_match_its_seal() {
    let mut bench = Bench::begun();
    bench.seal();
    let (id, mut stored) = (bench.id(), bench.events());
    let jws = bench.store().seal(&id).unwrap().unwrap();
    let payload = seal::open(&jws, &public(&key(11))).unwrap();
    let replay = |stored: &[Vec<u8>]| coilside_core::visit::apply::replay(&id, stored.iter().map(Vec::as_slice));
    seal::matches(&payload, &replay(&stored).unwrap()).unwrap();
    for at in 0..stored.len() {
        let honest = stored[at].clone();
        let text = String::from_utf8(honest.clone()).unwrap().replacen("\"mono_ms\":1000", "\"mono_ms\":1001", 1);
        assert_ne!(text.as_bytes(), honest, "event {at} was not changed");
        stored[at] = text.into_bytes();
        let noticed = match replay(&stored) {
            Err(_) => true,
            Ok(visit) => seal::matches(&payload, &visit).is_err(),
        };
        assert!(noticed, "a change of event {at} went unnoticed");
        stored[at] = honest;
    }
    stored.pop();
    assert!(seal::matches(&payload, &replay(&stored).unwrap()).is_err(), "a lost last event went unnoticed");
}

/// Types the words of an addendum and adds them; the request to sign.
fn add(bench: &mut Bench, words: &str) -> Effect {
    bench.act(&Action::Draft { field: "addendum".into(), text: words.into() }).unwrap();
    bench.act(&Action::AddAddendum).unwrap().effects.remove(0)
}

fn record(bench: &Bench, personal: bool) -> Report {
    let mut out = Vec::new();
    bench.field().write_record(&bench.id(), personal, &mut out).unwrap();
    verify(&mut out.as_slice(), &[]).unwrap()
}

#[test]
fn after_the_seal_words_are_added_chained_and_signed_anew() {
    let mut bench = Bench::begun();
    assert!(!bench.act(&Action::AddAddendum).unwrap().screen.notices.is_empty(), "not before the seal");
    bench.seal();
    let sealed = bench.events().len();
    assert_eq!(record(&bench, false).seals.len(), 1);
    // Without words there is nothing to add.
    assert!(bench.act(&Action::AddAddendum).unwrap().effects.is_empty());
    let sign = add(&mut bench, "The owner telephoned.");
    assert_eq!(bench.events().len(), sealed + 1);
    // A foreign signature closes nothing; until the right one comes the record is what was sealed.
    assert!(bench.done(&sign.id, &signature(&sign, &key(12))).is_err());
    let report = record(&bench, false);
    assert_eq!((report.holds(), report.events), (true, sealed));
    // A kill, and the signature is asked for again.
    bench.reopen().unwrap();
    assert!(bench.open_effects().contains(&sign));
    let again = bench.act(&Action::AddAddendum).unwrap().effects.remove(0);
    assert_eq!(bench.events().len(), sealed + 1, "signing again writes nothing");
    bench.done(&again.id, &signature(&again, &key(11))).unwrap();
    bench.done(&sign.id, &signature(&sign, &key(11))).unwrap();
    let second = add(&mut bench, "And again.");
    bench.done(&second.id, &signature(&second, &key(11))).unwrap();
    for personal in [true, false] {
        let report = record(&bench, personal);
        assert_eq!((&report.faults, report.events, report.personal), (&Vec::new(), sealed + 2, personal));
        let covered: Vec<u64> = report.seals.iter().map(|seal| seal.next).collect();
        assert_eq!(covered, [sealed as u64, sealed as u64 + 1, sealed as u64 + 2]);
    }
}

#[test]
fn no_record_is_written_before_the_seal() {
    let bench = Bench::begun();
    assert!(bench.field().write_record(&bench.id(), true, &mut Vec::new()).is_err());
}

#[test]
fn whether_the_customer_was_there_is_sealed_and_said_twice_it_is_no_news() {
    let mut bench = Bench::begun();
    let say = |bench: &mut Bench, option: &str| {
        let choose = Action::Choose { field: "customer".into(), option: option.into() };
        bench.act(&choose).unwrap();
        (bench.events().len(), bench.visit().customer_present)
    };
    let before = bench.events().len();
    assert_eq!(bench.visit().customer_present, None);
    assert_eq!(say(&mut bench, "absent"), (before + 1, Some(false)));
    assert_eq!(say(&mut bench, "absent"), (before + 1, Some(false)));
    assert_eq!(say(&mut bench, "present"), (before + 2, Some(true)));
    assert_eq!(say(&mut bench, "perhaps"), (before + 2, Some(true)));
    bench.seal();
    assert_eq!(say(&mut bench, "absent").1, Some(true), "not after the seal");
}
