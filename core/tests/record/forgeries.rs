//! Forgeries by someone who knows the form and makes every checksum anew: each is told apart.

use std::collections::BTreeMap;

use coilside_core::id::Digest;
use coilside_core::record::file::document::Document;
use coilside_core::record::file::verify::{Fault, Report, verify};
use coilside_core::record::jws::jwk;
use coilside_core::visit::event::{hex, sha256};

use crate::bench::{DEVICE, OFFICE, Visit, files, forged, public};
use crate::{faults, known};

/// Somebody else's key, whether a device's or an office's.
const STRANGER: u8 = 21;

type Files = BTreeMap<String, Vec<u8>>;

fn document(files: &Files) -> Document {
    serde_json::from_slice(&files["record.json"]).unwrap()
}

fn put(files: &mut Files, document: &Document) {
    files.insert("record.json".into(), serde_json_canonicalizer::to_vec(document).unwrap());
}

/// The report without the office's word over the whole file, which notices any forgery but cannot say which.
fn but_the_list(report: &Report) -> Vec<(&'static str, &str)> {
    faults(report).into_iter().filter(|fault| *fault != ("enclosed-other", "office.jws")).collect()
}

fn value<'a>(fault: &'a Fault, name: &str) -> &'a str {
    &fault.values.iter().find(|(of, _)| *of == name).unwrap().1
}

#[test]
fn the_forgers_tools_make_a_sound_file_of_what_is_not_changed() {
    let file = Visit::whole().file();
    assert!(forged(&files(&file)) == file);
}

#[test]
fn a_file_signed_anew_with_a_foreign_key_is_told_with_both_keys() {
    let mut honest = Visit::whole();
    honest.document.seals.clear();
    let mut forger = honest.clone();
    forger.seal(DEVICE);
    // Signed by the stranger over the same events; the payload goes on naming the device's key.
    let input = forger.document.seals[0].rsplit_once('.').unwrap().0.to_owned();
    let signature = crate::bench::sign(STRANGER, &input);
    let seal = coilside_core::record::seal::close(&input, &signature, &public(STRANGER)).unwrap();
    let mut files = files(&Visit::whole().file());
    let mut record = document(&files);
    record.seals = vec![seal];
    put(&mut files, &record);
    // Its key is not enclosed: all that can be said is that the signature does not hold.
    assert!(but_the_list(&known(&forged(&files))).contains(&("seal-signature", "record.json")));
    files.insert("keys/device.jwk".into(), jwk(&public(STRANGER)).unwrap().into_bytes());
    let report = known(&forged(&files));
    let told = but_the_list(&report);
    assert!(
        told.contains(&("seal-foreign", "record.json")) && told.contains(&("key-file", "keys/device.jwk")),
        "{told:?}"
    );
    let fault = report.faults.iter().find(|fault| fault.rule == "seal-foreign").unwrap();
    assert_ne!(value(fault, "key"), value(fault, "device"));
}

#[test]
fn a_whole_visit_made_anew_under_a_foreign_key_fails_under_the_anchor_and_is_self_consistent_only_without() {
    let mut forger = Visit::frozen(STRANGER);
    forger.seal(STRANGER);
    let file = forger.file();
    assert_eq!(faults(&known(&file)), [("no-anchor", "")]);
    assert!(verify(&mut file.as_slice(), &[]).unwrap().holds(), "nobody can tell without an anchor, and it says so");
    // With an office of the forger's own, and with the true office's words about the true device.
    forger.vouch(STRANGER, STRANGER);
    forger.document.offices.extend(Visit::whole().document.offices);
    let key = public(STRANGER);
    let sign = |input: &str| crate::bench::sign(STRANGER, input);
    let contents = coilside_core::record::file::Contents {
        document: &forger.document,
        packs: &forger.packs,
        personal: None,
        customer: &BTreeMap::new(),
        office: Some((&key, &sign)),
    };
    let mut out = Vec::new();
    coilside_core::record::file::write(&contents, &forger.shelf, &mut out).unwrap();
    let report = known(&out);
    let told = faults(&report);
    assert_eq!(told, [("certificate-other", "record.json"), ("receipt-other", "record.json"), ("no-anchor", "")]);
}

#[test]
fn a_removed_event_is_told_by_its_number() {
    for gone in 0..7 {
        let mut files = files(&Visit::whole().file());
        let mut record = document(&files);
        record.events.remove(gone);
        put(&mut files, &record);
        let report = known(&forged(&files));
        let missing = report.faults.iter().find(|fault| fault.rule == "event-missing");
        let missing = missing.unwrap_or_else(|| panic!("event {gone}: {:?}", report.faults));
        assert_eq!(
            (value(missing, "seq"), value(missing, "to")),
            (gone.to_string().as_str(), gone.to_string().as_str())
        );
        assert!(!faults(&report).contains(&("event-altered", "record.json")), "{gone}: {:?}", report.faults);
    }
}

#[test]
fn events_that_change_places_are_doubled_or_put_in_are_told() {
    let whole = files(&Visit::whole().file());
    let attempt = |change: &dyn Fn(&mut Vec<String>)| {
        let mut files = whole.clone();
        let mut record = document(&files);
        change(&mut record.events);
        put(&mut files, &record);
        let report = known(&forged(&files));
        faults(&report).into_iter().map(|(rule, _)| rule).collect::<Vec<_>>()
    };
    assert!(attempt(&|events| events.swap(2, 3)).contains(&"event-order"));
    assert!(attempt(&|events| events.insert(4, events[3].clone())).contains(&"event-order"));
    let later = |events: &mut Vec<String>| {
        let last = events.last().unwrap();
        let put_in = last
            .replace("\"seq\":6", "\"seq\":7")
            .replace(&last[last.find("\"prev\":\"").unwrap() + 8..][..64], sha256(last.as_bytes()).as_str());
        events.push(put_in);
    };
    let told = attempt(&later);
    assert!(told.contains(&"after-seal") && told.contains(&"unsealed"), "{told:?}");
}

#[test]
fn an_event_that_is_written_anew_with_all_that_follow_is_told_by_the_seal() {
    let honest = Visit::whole();
    let mut files = files(&honest.file());
    let mut record = document(&files);
    let mut last: Option<Digest> = None;
    for (at, text) in record.events.iter_mut().enumerate() {
        if at == 5 {
            *text = text.replace("soon", "note");
        }
        if let Some(last) = &last {
            let begins = text.find("\"prev\":\"").unwrap() + 8;
            text.replace_range(begins..begins + 64, last.as_str());
        }
        last = Some(sha256(text.as_bytes()));
    }
    put(&mut files, &record);
    let report = known(&forged(&files));
    let told = but_the_list(&report);
    assert!(told.contains(&("event-altered", "record.json")), "the last event is not the sealed one: {told:?}");
    assert!(!report.holds());
}

#[test]
fn a_swapped_a_removed_and_an_added_photograph_are_told_apart() {
    let whole = files(&Visit::whole().file());
    let names: Vec<String> = whole.keys().filter(|name| name.starts_with("photographs/")).cloned().collect();
    let attempt = |change: &dyn Fn(&mut Files)| {
        let mut files = whole.clone();
        change(&mut files);
        known(&forged(&files))
    };
    let swapped = attempt(&|files| {
        let other = files[&names[1]].clone();
        files.insert(names[0].clone(), other);
    });
    assert_eq!(but_the_list(&swapped), [("photo-altered", names[0].as_str())]);
    let removed = attempt(&|files| drop(files.remove(&names[0])));
    assert_eq!(but_the_list(&removed), [("photo-missing", names[0].as_str())]);
    let extra = format!("photographs/{}.jpg", sha256(b"new"));
    let added = attempt(&|files| drop(files.insert(extra.clone(), b"new".to_vec())));
    assert_eq!(but_the_list(&added), [("not-in-record", extra.as_str())]);
}

#[test]
fn an_altered_readme_pack_key_or_personal_file_is_told_under_the_anchor() {
    let whole = files(&Visit::whole().file());
    for (name, rule) in [
        ("README.txt", None),
        ("words/es.ftl", None),
        ("personal.json", Some("personal")),
        ("keys/office-1.jwk", Some("key-file")),
    ] {
        let mut files = whole.clone();
        files.get_mut(name).unwrap()[3] ^= 1;
        let report = known(&forged(&files));
        assert!(faults(&report).contains(&("enclosed-other", "office.jws")), "{name}: SHA256SUMS was made anew");
        assert_eq!(but_the_list(&report).first().map(|fault| fault.0), rule, "{name}");
    }
    let pack = whole.keys().find(|name| name.starts_with("packs/")).unwrap();
    let mut files = whole.clone();
    files.get_mut(pack).unwrap()[50] ^= 1;
    assert_eq!(but_the_list(&known(&forged(&files))), [("pack-altered", pack.as_str())]);
    // Another's data with a salt of the forger's choice.
    let mut files = whole;
    files.insert("personal.json".into(), br#"{"personal":"[]","salt":"00"}"#.to_vec());
    assert_eq!(but_the_list(&known(&forged(&files))), [("personal", "personal.json")]);
}

#[test]
fn a_seal_of_another_visit_or_over_other_events_is_told() {
    let mut files = files(&Visit::whole().file());
    let mut other = Visit::frozen(DEVICE);
    other.document.visit = "another-visit".into();
    let mut record = document(&files);
    // A seal over fewer events, honestly signed: what follows it is not covered.
    let mut payload: coilside_core::record::seal::Payload =
        coilside_core::record::jws::peek(&record.seals[0], "coilside-seal+json").unwrap();
    payload.visit = "another-visit".into();
    record.seals = vec![crate::bench::signed(DEVICE, "coilside-seal+json", &payload)];
    put(&mut files, &record);
    assert!(but_the_list(&known(&forged(&files))).contains(&("seal-visit", "record.json")));
    payload.visit = record.visit.to_string();
    payload.next = 5;
    payload.last = sha256(record.events[4].as_bytes()).0;
    record.seals = vec![crate::bench::signed(DEVICE, "coilside-seal+json", &payload)];
    put(&mut files, &record);
    let told = known(&forged(&files));
    let rules = but_the_list(&told);
    assert!(rules.contains(&("unsealed", "record.json")) && rules.contains(&("seal-list", "record.json")), "{rules:?}");
}

#[test]
fn an_offices_words_about_another_device_or_state_are_told() {
    let mut visit = Visit::whole();
    visit.vouch(OFFICE, STRANGER);
    let report = known(&visit.file());
    assert_eq!(faults(&report), [("certificate-other", "record.json")]);
    let mut visit = Visit::whole();
    visit.addendum("later");
    visit.seal(DEVICE);
    // The receipt of the first seal goes on holding; the addendum was not countersigned.
    assert_eq!(faults(&known(&visit.file())), []);
    let hexed = hex(&public(STRANGER)).0;
    visit.document.offices[0].key = hexed;
    let mut out = Vec::new();
    let contents = coilside_core::record::file::Contents {
        document: &visit.document,
        packs: &visit.packs,
        personal: None,
        customer: &BTreeMap::new(),
        office: None,
    };
    coilside_core::record::file::write(&contents, &visit.shelf, &mut out).unwrap();
    let report = known(&out);
    let rules: Vec<_> = faults(&report).into_iter().map(|fault| fault.0).collect();
    assert_eq!(rules, ["no-file", "certificate", "receipt", "no-anchor"]);
}
