//! Record files: written by one office, verified by anyone, taken over by another office.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

#[cfg(test)]
mod support;

use std::io::Cursor;
use std::path::PathBuf;

use coilside_core::record::file::verify::{Anchor, Report, verify};
use coilside_core::visit::event::{Body, Severity};
use coilside_office::record_file::{RecordFileError, check, export, import, keys};
use coilside_office::{Digest, ExportError, ImportError, VisitId};
use serde_json::json;
use support::Bench;
use support::visit::{Written, assignment};

const VISIT: &str = "visit-1";

/// A sealed visit with two photographs, all of it in the office.
async fn sealed(bench: &Bench) -> Written {
    bench.assign(&assignment("a-1", "Mill house", "en"));
    let mut visit = Written::begin_with(VISIT, "a-1", &bench.public_key());
    for (slot, text) in [("casing-before", "picture one of ours"), ("coil-before", "picture two of ours")] {
        visit.photograph_of(slot, Digest::of(text.as_bytes()), text.len() as u64, Vec::new());
    }
    visit.find(Severity::Note, "Nothing else at all, of ours.");
    visit.freeze(false, &["A photograph missing nameplate: rust"]);
    visit.send_sealed(bench).await;
    for text in ["picture one of ours", "picture two of ours"] {
        bench.send_photo(text.as_bytes(), VISIT).await;
    }
    visit
}

fn file_of(bench: &Bench) -> Vec<u8> {
    let mut out = Vec::new();
    bench.office.export_record(&VisitId::parse(VISIT).unwrap(), &mut out).unwrap();
    out
}

fn report(file: &[u8], trusted: &[Vec<u8>]) -> Report {
    verify(&mut &*file, trusted).unwrap()
}

fn rules(report: &Report) -> Vec<&str> {
    report.faults.iter().map(|fault| fault.rule).collect()
}

/// An addendum with its own seal, as a device sends them.
async fn add(bench: &Bench, visit: &mut Written, text: &str) {
    let first = visit.events.len();
    visit.add(Body::AddendumAdded { text: text.into() });
    assert_eq!(bench.send(VISIT, first as u64, &visit.events[first..]).await.status, 200);
    let answer = bench.put(&format!("/visits/{VISIT}/seal"), visit.seal(&bench.key)).await;
    assert_eq!(answer.status, 200, "{}", answer.text());
}

#[tokio::test]
async fn an_exported_record_holds_under_the_offices_key_with_the_times_at_which_device_and_seal_came() {
    let bench = Bench::new().await;
    bench.let_pass(60_000);
    sealed(&bench).await;
    bench.let_pass(86_400_000);
    let report = report(&file_of(&bench), &[bench.office.public_key()]);
    assert_eq!(rules(&report), Vec::<&str>::new());
    let Anchor::Office { certified_utc_ms, received_utc_ms, enclosed, next, .. } = report.anchor else { panic!() };
    assert_eq!(certified_utc_ms, Some(support::START_MS));
    assert_eq!((received_utc_ms, enclosed, next), (support::START_MS + 60_000, true, 6));
    assert_eq!(report.photographs, 2);
}

#[tokio::test]
async fn the_same_visit_gives_the_same_bytes_later_and_after_a_restart() {
    let bench = Bench::new().await;
    sealed(&bench).await;
    let first = file_of(&bench);
    bench.let_pass(86_400_000);
    assert!(file_of(&bench) == first);
    assert!(file_of(&bench.reopened()) == first);
}

#[tokio::test]
async fn a_record_without_seal_or_with_a_photograph_on_its_way_is_not_made() {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill house", "en"));
    let mut visit = Written::begin_with(VISIT, "a-1", &bench.public_key());
    visit.photograph_of("casing-before", Digest::of(b"late"), 4, Vec::new());
    visit.freeze(true, &[]);
    let attempt = |bench: &Bench, name: &str| {
        bench.office.export_record(&VisitId::parse(name).unwrap(), &mut Vec::new()).unwrap_err()
    };
    assert!(matches!(attempt(&bench, "nobody"), ExportError::Unknown));
    bench.send(VISIT, 0, &visit.events).await;
    assert!(matches!(attempt(&bench, VISIT), ExportError::NotSealed));
    assert_eq!(bench.put(&format!("/visits/{VISIT}/seal"), visit.seal(&bench.key)).await.status, 200);
    assert!(matches!(attempt(&bench, VISIT), ExportError::Write(_)));
    bench.send_photo(b"late", VISIT).await;
    assert!(report(&file_of(&bench), &[]).holds());
}

#[tokio::test]
async fn addenda_are_taken_only_with_a_seal_of_their_own_and_only_addenda_are() {
    let bench = Bench::new().await;
    let mut visit = sealed(&bench).await;
    add(&bench, &mut visit, "The owner telephoned: the noise is gone.").await;
    let report = report(&file_of(&bench), &[bench.office.public_key()]);
    assert_eq!((rules(&report), report.seals.len()), (Vec::new(), 2));
    assert!(matches!(report.anchor, Anchor::Office { next: 7, .. }), "the addendum was countersigned too");
    // Work after the seal is no addendum, whoever signs it.
    visit.find(Severity::Note, "Slipped in.");
    assert_eq!(bench.send(VISIT, 7, &visit.events[7..]).await.status, 200);
    let answer = bench.put(&format!("/visits/{VISIT}/seal"), visit.seal(&bench.key)).await;
    assert_eq!((answer.status.as_u16(), answer.json()["type"].as_str().is_some()), (422, true), "{}", answer.text());
    assert_eq!(file_of(&bench), file_of(&bench));
    assert!(verify(&mut file_of(&bench).as_slice(), &[]).unwrap().holds(), "what no seal covers is left out");
}

#[tokio::test]
async fn a_record_goes_into_a_second_office_and_comes_out_of_it_with_both_offices_words() {
    let (one, two) = (Bench::new().await, Bench::without_key());
    let mut visit = sealed(&one).await;
    let first = file_of(&one);
    let trusted = [one.office.public_key()];
    two.let_pass(5_000);
    let came = two.office.import_record(&mut Cursor::new(&first), &trusted, false).unwrap();
    assert_eq!((came.known, came.events, came.photographs), (false, 6, 2));
    // Again: nothing changes.
    let counts = |bench: &Bench| {
        let tables = ["visit", "event", "seal", "receipt", "photo", "device", "imported", "later_seal", "pack"];
        tables.map(|table| bench.count(table))
    };
    let before = counts(&two);
    let again = two.office.import_record(&mut Cursor::new(&first), &trusted, false).unwrap();
    assert_eq!((again.known, again.photographs, counts(&two)), (true, 0, before));
    // Out of the second office it holds under either office's key.
    let second = file_of(&two);
    for (key, certified) in [(one.office.public_key(), true), (two.office.public_key(), false)] {
        let report = report(&second, &[key]);
        assert_eq!(rules(&report), Vec::<&str>::new());
        let Anchor::Office { certified_utc_ms, .. } = report.anchor else { panic!() };
        assert_eq!(certified_utc_ms.is_some(), certified);
    }
    let page = two.page(&format!("/visits/{VISIT}"), &two.sign_in().await).await;
    assert_eq!(page.status, 200);
    assert!(page.text().contains("Seal verified"), "{}", page.text());
    // A later addendum comes by a newer record of the same visit, and home again brings nothing new.
    add(&one, &mut visit, "Later.").await;
    let newer = file_of(&one);
    let came = two.office.import_record(&mut Cursor::new(&newer), &trusted, false).unwrap();
    assert_eq!((came.known, came.events), (false, 7));
    assert!(report(&file_of(&two), &trusted).seals.len() == 2);
    let home = one.office.import_record(&mut Cursor::new(&file_of(&two)), &[two.office.public_key()], false).unwrap();
    assert!(home.known);
    assert!(file_of(&one) == newer, "coming home changed nothing");
}

#[tokio::test]
async fn a_record_that_does_not_hold_or_that_nobody_known_vouches_for_is_not_taken_over() {
    let (one, two) = (Bench::new().await, Bench::without_key());
    sealed(&one).await;
    let file = file_of(&one);
    let trusted = [one.office.public_key()];
    let nothing = |bench: &Bench| {
        assert_eq!(["visit", "event", "photo", "device"].map(|table| bench.count(table)), [0, 0, 0, 1]);
    };
    let mut changed = file.clone();
    let at = changed.windows(19).position(|bytes| bytes == b"picture one of ours").unwrap();
    changed[at] ^= 1;
    let refused = two.office.import_record(&mut Cursor::new(&changed), &trusted, true).unwrap_err();
    let ImportError::Fails(report) = refused else { panic!("{refused}") };
    assert!(rules(&report).contains(&"photo-altered"), "{:?}", rules(&report));
    nothing(&two);
    for keys in [Vec::new(), vec![two.office.public_key()]] {
        let refused = two.office.import_record(&mut Cursor::new(&file), &keys, false).unwrap_err();
        assert!(matches!(refused, ImportError::NoAnchor(_)), "{refused}");
        nothing(&two);
    }
    two.office.import_record(&mut Cursor::new(&file), &[], true).unwrap();
    let anchored: bool = two.db().query_row("SELECT anchored FROM imported", [], |row| row.get(0)).unwrap();
    assert!(!anchored);
}

#[tokio::test]
async fn another_content_of_a_visit_that_is_here_is_refused_and_changes_nothing() {
    let (one, two) = (Bench::new().await, Bench::new().await);
    sealed(&one).await;
    // The same device wrote the visit otherwise, and sent that to the second office.
    two.assign(&assignment("a-1", "Mill house", "en"));
    let mut other = Written::begin_with(VISIT, "a-1", &two.public_key());
    other.find(Severity::Note, "Otherwise.");
    other.freeze(true, &[]);
    other.send_sealed(&two).await;
    let before = file_of(&two);
    let refused = two.office.import_record(&mut Cursor::new(file_of(&one)), &[one.office.public_key()], false);
    let refused = refused.unwrap_err();
    assert!(matches!(&refused, ImportError::Otherwise(why) if why == "event 2 differs"), "{refused}");
    assert!(file_of(&two) == before);
    assert_eq!(two.count("branch"), 0);
}

#[tokio::test]
async fn the_visits_page_hands_the_record_out_to_those_who_are_signed_in() {
    let bench = Bench::new().await;
    sealed(&bench).await;
    let path = format!("/visits/{VISIT}/record.zip");
    assert_eq!(bench.page(&path, "").await.status, 401);
    let session = bench.sign_in().await;
    let page = bench.page(&format!("/visits/{VISIT}"), &session).await;
    assert!(page.text().contains(&format!("href=\"{path}\"")), "{}", page.text());
    let answer = bench.page(&path, &session).await;
    assert_eq!((answer.status.as_u16(), answer.header("content-type")), (200, "application/zip"));
    assert!(answer.body == file_of(&bench));
    assert_eq!(bench.page("/visits/nobody/record.zip", &session).await.status, 404);
}

fn told(result: Result<(), RecordFileError>) -> u8 {
    result.map_or_else(|error| error.exit_code(), |()| 0)
}

#[tokio::test]
async fn the_program_tells_what_holds_in_words_and_by_its_exit_code() {
    let (one, two) = (Bench::new().await, Bench::without_key());
    sealed(&one).await;
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| -> PathBuf { folder.path().join(name) };
    export(&one.office, VISIT, &at("record.zip")).unwrap();
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        let mode = std::fs::metadata(at("record.zip")).unwrap().permissions().mode();
        assert_eq!(mode & 0o077, 0, "photographs may tell where somebody lives");
    }
    let given = keys(&[support::hex(&one.office.public_key())]).unwrap();
    let verified = |path: PathBuf, keys: &[Vec<u8>], language: &str| {
        let mut out = Vec::new();
        let code = told(check(&path, keys, language, &mut out));
        (code, String::from_utf8(out).unwrap())
    };
    let (code, words) = verified(at("record.zip"), &given, "en");
    assert!(
        code == 0 && words.contains("+ Vouched for by the office with the key") && words.ends_with("+ IT HOLDS.\n")
    );
    let (code, words) = verified(at("record.zip"), &[], "en");
    assert!(code == 0 && words.contains("SELF-CONSISTENT ONLY"), "{words}");
    let (code, words) = verified(at("record.zip"), &[two.office.public_key()], "es");
    assert!(code == 1 && words.ends_with("! NO ES VÁLIDO. Defectos: 1; véase arriba.\n"), "{words}");
    assert_eq!(verified(at("nowhere.zip"), &given, "en").0, 2);
    let mut bytes = std::fs::read(at("record.zip")).unwrap();
    let event = bytes.windows(29).position(|now| now == b"Nothing else at all, of ours.").unwrap();
    bytes[event] = b'n';
    std::fs::write(at("changed.zip"), &bytes).unwrap();
    let (code, words) = verified(at("changed.zip"), &given, "en");
    assert!(code == 1 && words.contains("! Event 4 was altered."), "{words}");
    let mut out = Vec::new();
    let refused = import(&two.office, &at("changed.zip"), &given, false, "en", &mut out).unwrap_err();
    assert!(refused.exit_code() == 1 && String::from_utf8(out).unwrap().contains("Event 4 was altered"));
    assert!(keys(&["04ab".to_owned()]).is_err());
    assert_eq!(json!(export(&one.office, "no/visit", &at("x.zip")).is_err()), json!(true));
}
