//! The customer's name and signature in a record: enclosed and what they were, withheld, or altered.

use coilside_core::evidence::Shown;
use coilside_core::record::file::told::{Weight, lines};
use coilside_core::record::file::verify::{Customer, Report};
use coilside_core::record::file::{Contents, WriteError, customer_file, write};
use coilside_core::visit::apply::replay;
use coilside_core::visit::event::{Body, Event, sha256};
use coilside_core::words::{LANGUAGES, Words};

use crate::bench::{Visit, files, forged, places};
use crate::{faults, known};

const NAME: &str = "Edda Marsh";

/// The visit, and the name of the file in its record.
fn signed() -> (Visit, String) {
    let mut visit = Visit::signed_by(NAME);
    // The owner's data name somebody too: here only the customer is meant.
    visit.personal = None;
    let file = customer_file(visit.customer.keys().next().unwrap());
    (visit, file)
}

fn tells(report: &Report, key: &str) -> Vec<bool> {
    let said = |language: &&str| {
        let words = Words::new(language, None).unwrap();
        lines(report, &words).iter().any(|(_, line)| *line == words.text(key))
    };
    LANGUAGES.iter().map(said).collect()
}

fn holds_name(bytes: &[u8]) -> bool {
    bytes.windows(NAME.len()).any(|window| window == NAME.as_bytes())
}

#[test]
fn enclosed_it_matches_and_verify_says_so_in_words() {
    let (visit, name) = signed();
    let file = visit.file();
    let report = known(&file);
    assert_eq!((faults(&report), report.customer), (Vec::new(), Customer { enclosed: 1, withheld: 0 }));
    assert_eq!(tells(&report, "record-customer"), [true, true]);
    assert_eq!(tells(&report, "record-customer-withheld"), [false, false]);
    let enclosed = files(&file);
    assert_eq!(Shown::read(&enclosed[&name]).unwrap().name, NAME);
    // The name stands in that file and nowhere else: no event tells of it.
    let elsewhere = enclosed.iter().filter(|(of, bytes)| **of != name && holds_name(bytes));
    assert_eq!(elsewhere.map(|(of, _)| of.as_str()).collect::<Vec<_>>(), Vec::<&str>::new());
    assert_eq!(report.holding.unwrap().customer, visit.customer);
}

#[test]
fn erased_it_is_withheld_and_the_record_holds_as_before() {
    let (mut visit, name) = signed();
    let before = visit.document.clone();
    visit.customer.clear();
    let file = visit.file();
    let report = known(&file);
    assert_eq!((faults(&report), report.customer), (Vec::new(), Customer { enclosed: 0, withheld: 1 }));
    assert!(report.is_anchored() && report.holding.unwrap().document == before, "the same events under the same seal");
    assert!(!holds_name(&file) && !places(&file).iter().any(|place| place.name == name));
    let report = known(&file);
    assert_eq!(tells(&report, "record-customer"), [false, false]);
    assert_eq!(tells(&report, "record-customer-withheld"), [true, true]);
}

#[test]
fn a_record_in_which_nobody_signed_says_nothing_of_it() {
    let report = known(&Visit::whole().file());
    assert_eq!(report.customer, Customer::default());
    for key in ["record-customer", "record-customer-withheld"] {
        assert_eq!(tells(&report, key), [false, false], "{key}");
    }
}

#[test]
fn another_stroke_name_or_time_is_told_by_the_files_name_although_every_checksum_was_made_anew() {
    let (visit, name) = signed();
    for (from, to) in [("[180,90]", "[180,91]"), (NAME, "Edda Marsh-Weaver"), ("\"utc_ms\":177", "\"utc_ms\":178")] {
        let mut altered = files(&visit.file());
        let text = String::from_utf8(altered[&name].clone()).unwrap();
        assert!(text.contains(from), "{text}");
        altered.insert(name.clone(), text.replacen(from, to, 1).into_bytes());
        let report = known(&forged(&altered));
        let told = faults(&report);
        assert!(told.contains(&("customer-altered", name.as_str())), "{from}: {told:?}");
        assert_eq!(report.customer, Customer::default(), "an altered one counts as neither");
        let words = Words::new("en", None).unwrap();
        let said = lines(&report, &words).into_iter().filter(|(weight, _)| *weight == Weight::Fails);
        let said: Vec<String> = said.map(|(_, line)| line).collect();
        assert!(said.iter().any(|line| line.contains("name and signature") && line.contains(&name)), "{said:?}");
    }
}

#[test]
fn a_signature_of_another_visit_does_not_belong_to_the_record() {
    let (visit, name) = signed();
    let mut other = files(&visit.file());
    let bytes = String::from_utf8(other[&name].clone()).unwrap().replace(NAME, "Somebody else").into_bytes();
    let put_in = customer_file(&sha256(&bytes));
    other.insert(put_in.clone(), bytes);
    assert!(faults(&known(&forged(&other))).contains(&("not-in-record", put_in.as_str())));
}

#[test]
fn no_record_is_made_of_a_file_that_is_not_what_it_was() {
    let (mut visit, _) = signed();
    visit.customer.values_mut().for_each(|bytes| bytes.push(b' '));
    let (document, packs, customer) = (&visit.document, &visit.packs, &visit.customer);
    let contents = Contents { document, packs, personal: None, customer, office: None };
    let error = write(&contents, &visit.shelf, &mut Vec::new()).unwrap_err();
    assert!(matches!(error, WriteError::Customer(_)), "{error}");
}

#[test]
fn signed_twice_both_files_are_enclosed_and_the_later_one_counts() {
    let mut visit = Visit::begun(crate::bench::DEVICE);
    visit.customer(NAME);
    let later = visit.customer("E. Marsh");
    visit.freeze();
    visit.seal(crate::bench::DEVICE);
    visit.vouch(crate::bench::OFFICE, crate::bench::DEVICE);
    let report = known(&visit.file());
    assert_eq!((faults(&report), report.customer.enclosed), (Vec::new(), 2));
    let state = replay(&visit.document.visit, visit.document.events.iter().map(String::as_bytes)).unwrap();
    assert_eq!((state.shown, state.shown_files.len()), (Some(later), 2));
}

/// Bytes as the versions before wrote them: they read as they did, and are the same bytes again.
#[test]
fn an_event_of_before_there_were_signatures_reads_as_it_did() {
    for (text, present) in [("true", true), ("false", false)] {
        let old = format!(
            r#"{{"kind":"customer-noted","present":{text},"prev":"{}","seq":3,"time":{{"mono_epoch":"boot","mono_ms":5,"offset_min":60,"utc_ms":1700000000000}},"visit":"v"}}"#,
            "ab".repeat(32)
        );
        let event = Event::from_bytes(old.as_bytes(), 3).unwrap();
        assert_eq!(event.body, Body::CustomerNoted { present, unsigned: false, shown: None });
        assert_eq!(String::from_utf8(event.to_bytes().unwrap()).unwrap(), old);
    }
}
