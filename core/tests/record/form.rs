//! What is in a record file, and that the same visit gives the same bytes.

use coilside_core::record::file::told::{Weight, lines};
use coilside_core::record::file::verify::{Anchor, verify};
use coilside_core::record::file::{Contents, WriteError, fingerprint, write};
use coilside_core::words::{LANGUAGES, Words};

use crate::bench::{self, OFFICE, START_MS, VISIT, Visit, bytes_of, places, public};
use crate::{faults, known};

#[test]
fn a_whole_record_holds_and_names_the_office_that_vouches_for_it() {
    let report = known(&Visit::whole().file());
    assert_eq!(faults(&report), []);
    assert_eq!((report.events, report.photographs, report.seals.len()), (7, 3, 1));
    assert!(report.personal);
    let Anchor::Office { key, certified_utc_ms, received_utc_ms, next, enclosed, .. } = &report.anchor else {
        panic!("{:?}", report.anchor)
    };
    assert_eq!(*key, fingerprint(&public(OFFICE)));
    assert_eq!((*certified_utc_ms, *received_utc_ms), (Some(START_MS - 9), START_MS + 9_000_000));
    assert_eq!((*next, *enclosed), (7, true));
    assert_eq!(report.holding.unwrap().document.visit.as_str(), VISIT);
}

#[test]
fn without_a_known_office_it_is_self_consistent_only_and_says_so() {
    let file = Visit::whole().file();
    let report = verify(&mut file.as_slice(), &[]).unwrap();
    assert_eq!(faults(&report), []);
    assert_eq!(report.anchor, Anchor::None { offices: vec![fingerprint(&public(OFFICE))] });
    let told = lines(&report, &Words::new("en", None).unwrap());
    assert!(told.last().unwrap().1.starts_with("SELF-CONSISTENT ONLY"), "{told:?}");
    assert!(!told.iter().any(|(weight, _)| *weight == Weight::Fails));
}

#[test]
fn an_office_that_is_not_known_is_no_anchor() {
    let file = Visit::whole().file();
    let report = verify(&mut file.as_slice(), &[public(3)]).unwrap();
    assert_eq!(faults(&report), [("no-anchor", "")]);
}

#[test]
fn the_same_visit_gives_the_same_bytes() {
    let (one, other) = (Visit::whole(), Visit::whole());
    assert!(one.file() == one.file() && one.file() == other.file());
    // The order in which packs and photographs are handed in has no say: both are found by their digests.
    let mut fewer = Visit::whole();
    fewer.shelf.0.retain(|digest, _| one.document.events.iter().any(|event| event.contains(digest.as_str())));
    assert!(fewer.file() == one.file());
}

#[test]
fn photographs_lie_in_it_as_they_were_and_nothing_is_compressed() {
    let visit = Visit::whole();
    let file = visit.file();
    for (digest, bytes) in &visit.shelf.0 {
        assert_eq!(bytes_of(&file, &format!("photographs/{digest}.jpg")), bytes.as_slice());
    }
    for place in places(&file) {
        assert_eq!(&file[place.head + 8..place.head + 14], &[0, 0, 0, 0, 0x21, 0], "{}: stored, no time", place.name);
    }
    let names: Vec<String> = places(&file).into_iter().map(|place| place.name).collect();
    assert_eq!(names.first().map(String::as_str), Some("README.txt"));
    assert!(names.is_sorted());
}

#[test]
fn a_record_of_a_device_alone_and_one_whose_personal_data_were_erased_hold() {
    let mut visit = Visit::frozen(bench::DEVICE);
    visit.seal(bench::DEVICE);
    for personal in [true, false] {
        if !personal {
            visit.personal = None;
        }
        let file = visit.file();
        let report = verify(&mut file.as_slice(), &[]).unwrap();
        assert_eq!((faults(&report), report.personal), (Vec::new(), personal));
        assert!(!places(&file).iter().any(|place| place.name == "office.jws"));
        assert_eq!(report.anchor, Anchor::None { offices: Vec::new() });
        let told = file.windows(10).any(|bytes| bytes == b"Edda Marsh");
        assert_eq!(told, personal, "the owner's name stands in personal.json and nowhere else");
    }
}

#[test]
fn an_addendum_is_chained_and_signed_over_all_that_came_before() {
    let mut visit = Visit::whole();
    visit.addendum("The owner telephoned: the noise is gone.");
    visit.addendum("And the leak too.");
    visit.seal(bench::DEVICE);
    let report = known(&visit.file());
    assert_eq!(faults(&report), []);
    assert_eq!(report.seals.iter().map(|seal| seal.next).collect::<Vec<_>>(), [7, 9]);
    assert_eq!(report.seals[1].at_utc_ms, START_MS + 8 * 60_000, "when the addendum was written");
}

#[test]
fn no_record_is_made_of_what_does_not_hold_or_is_not_all_there() {
    let attempt = |visit: &Visit| {
        let (document, packs, customer) = (&visit.document, &visit.packs, &visit.customer);
        let contents = Contents { document, packs, personal: None, customer, office: None };
        write(&contents, &visit.shelf, &mut Vec::new()).unwrap_err()
    };
    let rule = |error: WriteError| match error {
        WriteError::Broken(fault) => fault.rule,
        other => panic!("{other}"),
    };
    assert_eq!(rule(attempt(&Visit::frozen(bench::DEVICE))), "no-seal");
    let mut unsigned = Visit::whole();
    unsigned.addendum("not signed yet");
    assert_eq!(rule(attempt(&unsigned)), "unsealed");
    let mut changed = Visit::whole();
    changed.document.events[3] = changed.document.events[3].replace("coil-before", "coil-after");
    assert_eq!(rule(attempt(&changed)), "event-altered");
    let mut lost = Visit::whole();
    let digest = lost.shelf.0.pop_first().unwrap().0;
    assert!(matches!(attempt(&lost), WriteError::Photograph { digest: of, .. } if of == digest));
    lost.shelf.0.insert(digest, b"something else".to_vec());
    assert!(matches!(attempt(&lost), WriteError::Photograph { .. }));
    let mut packless = Visit::whole();
    packless.packs.clear();
    assert!(matches!(attempt(&packless), WriteError::Pack(_)));
}

/// Every rule that verifying can name has words, and they name what they should.
#[test]
fn every_fault_has_words_in_every_language() {
    let sources = ["mod", "collect", "chain", "seals", "files", "offices"].map(|name| format!("verify/{name}"));
    let mut rules: Vec<String> = Vec::new();
    for name in sources.iter().map(String::as_str).chain(["walk"]) {
        let path = format!("{}/src/record/file/{name}.rs", env!("CARGO_MANIFEST_DIR"));
        let source = std::fs::read_to_string(path).unwrap();
        for part in source.split('"').skip(1).step_by(2) {
            let hyphened = part.contains('-')
                || ["sum", "later", "unreadable", "certificate", "receipt", "enclosed", "unsealed"].contains(&part);
            if hyphened && part.bytes().all(|b| b.is_ascii_lowercase() || b == b'-') && part.len() > 2 {
                rules.push(part.to_owned());
            }
        }
    }
    rules.sort();
    rules.dedup();
    assert!(rules.len() > 40, "{rules:?}");
    for language in LANGUAGES {
        let words = Words::new(language, None).unwrap();
        let without: Vec<_> = rules.iter().filter(|rule| !words.has(&format!("record-fault-{rule}"))).collect();
        assert!(without.is_empty(), "{language}: {without:?}");
    }
}
