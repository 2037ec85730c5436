//! The customer's name and signature at the office: they arrive as what they are, are shown, go into the record, and can be
//! erased while the record holds.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

#[cfg(test)]
mod support;

use std::io::Cursor;

use axum::body::Body;
use axum::http::Request;
use coilside_core::evidence::{Ink, SHOWN_MEDIA, Shown};
use coilside_core::id;
use coilside_core::record::file::verify::{Customer, Report, verify};
use coilside_core::visit::event;
use coilside_office::{Digest, ExportError, ImportError, Imported, VisitId};
use support::Bench;
use support::visit::{Written, assignment};

const VISIT: &str = "visit-1";
const NAME: &str = "Ada Fenn";

fn file() -> Vec<u8> {
    let ink = Ink { width: 1_200, height: 480, strokes: vec![vec![(100, 240), (180, 90)], vec![(500, 250)]] };
    Shown::of(NAME, Some(&ink), &"5a".repeat(32), support::START_MS).unwrap().to_bytes().unwrap()
}

/// A sealed visit that names the file, which has not come yet.
async fn sealed(bench: &Bench) -> Written {
    bench.assign(&assignment("a-1", "Mill house", "en"));
    let mut visit = Written::begin_with(VISIT, "a-1", &bench.public_key());
    let shown = Some(id::Digest(Digest::of(&file()).to_string()));
    visit.add(event::Body::CustomerNoted { present: true, unsigned: false, shown });
    visit.freeze(true, &[]);
    visit.send_sealed(bench).await;
    visit
}

async fn page(bench: &Bench) -> String {
    let cookie = bench.sign_in().await;
    bench.page(&format!("/visits/{VISIT}?lang=en"), &cookie).await.text()
}

async fn summary(bench: &Bench) -> String {
    bench.page(&bench.summary_path(VISIT), "").await.text()
}

fn export(bench: &Bench) -> Result<Vec<u8>, ExportError> {
    let mut out = Vec::new();
    bench.office.export_record(&VisitId::parse(VISIT).unwrap(), &mut out).map(|()| out)
}

fn import(bench: &Bench, record: &[u8], from: &Bench) -> Result<Imported, ImportError> {
    bench.office.import_record(&mut Cursor::new(record), &[from.office.public_key()], false)
}

fn report(bench: &Bench, file: &[u8]) -> Report {
    let report = verify(&mut &*file, &[bench.office.public_key()]).unwrap();
    assert!(report.holds() && report.is_anchored(), "{:?}", report.faults);
    report
}

fn names(bytes: &[u8]) -> bool {
    bytes.windows(NAME.len()).any(|window| window == NAME.as_bytes())
}

/// Whether any file of the office's folder has the name in it, the database and what SQLite keeps beside it left out.
fn lies_about(bench: &Bench) -> bool {
    let mut folders = vec![bench.path(".")];
    let mut found = false;
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
            if entry.is_dir() {
                folders.push(entry);
            } else {
                found |= names(&std::fs::read(entry).unwrap());
            }
        }
    }
    found
}

async fn erase(bench: &Bench) -> u16 {
    let cookie = bench.sign_in().await;
    let request = Request::builder().method("POST").uri(format!("/visits/{VISIT}/erase-signature"));
    bench.call(request.header("cookie", cookie).body(Body::empty()).unwrap()).await.status.as_u16()
}

#[tokio::test]
async fn it_is_told_to_be_on_the_way_then_shown_on_the_page_in_the_summary_and_in_the_record() {
    let bench = Bench::new().await;
    sealed(&bench).await;
    assert!(page(&bench).await.contains("Name and signature are on the way"));
    assert!(!summary(&bench).await.contains("signed on the spot"));
    assert!(matches!(export(&bench).unwrap_err(), ExportError::CustomerWaits));
    bench.send_file(&file(), VISIT, SHOWN_MEDIA).await;
    for text in [page(&bench).await, summary(&bench).await] {
        assert!(text.contains(NAME) && text.contains("signed on the spot"), "{text}");
        assert!(text.contains("Signature of Ada Fenn, drawn by hand"), "{text}");
    }
    assert!(page(&bench).await.contains("M100 240L180 90M500 250L500 250"));
    let record = export(&bench).unwrap();
    assert_eq!(report(&bench, &record).customer, Customer { enclosed: 1, withheld: 0 });
    assert!(names(&record));
}

#[tokio::test]
async fn it_is_no_photograph() {
    let bench = Bench::new().await;
    sealed(&bench).await;
    bench.send_file(&file(), VISIT, SHOWN_MEDIA).await;
    let digest = Digest::of(&file());
    assert_eq!(bench.count("listed_photo"), 0);
    let text = page(&bench).await;
    assert!(!text.contains(&format!("/photos/{digest}")) && text.contains("0 of 0"), "{text}");
    let cookie = bench.sign_in().await;
    assert_eq!(bench.page(&format!("/photos/{digest}/preview"), &cookie).await.status, 415);
    assert_eq!(bench.page(&format!("{}/photos/{digest}", bench.summary_path(VISIT)), "").await.status, 404);
}

#[tokio::test]
async fn erased_it_is_gone_everywhere_and_the_record_holds_and_says_that_it_is_withheld() {
    let bench = Bench::new().await;
    sealed(&bench).await;
    bench.send_file(&file(), VISIT, SHOWN_MEDIA).await;
    let before = export(&bench).unwrap();
    assert!(lies_about(&bench));
    assert_eq!(erase(&bench).await, 303);
    assert!(!lies_about(&bench), "the name is nowhere in the office's folder");
    let text = page(&bench).await;
    assert!(text.contains("were erased") && !text.contains(NAME) && !text.contains("erase-signature"), "{text}");
    assert!(!summary(&bench).await.contains("signed on the spot"));
    let record = export(&bench).unwrap();
    assert_eq!(report(&bench, &record).customer, Customer { enclosed: 0, withheld: 1 });
    assert!(!names(&record));
    let digest = Digest::of(&file());
    let cookie = bench.sign_in().await;
    assert_eq!(bench.page(&format!("/photos/{digest}/original"), &cookie).await.status, 404);
    // Neither the device nor a record of before brings it back.
    assert!(bench.is_safe(digest).await, "the device need not send it again");
    bench.announce_as(digest, file().len(), VISIT, SHOWN_MEDIA).await;
    assert_eq!(bench.piece(digest, 0, &file()).await.status, 409);
    assert!(import(&bench, &before, &bench).unwrap().known);
    assert!(!lies_about(&bench));
    assert_eq!(bench.office.erase_customer(&VisitId::parse(VISIT).unwrap()).unwrap(), 0, "erasing again finds nothing");
    let bench = bench.reopened();
    assert_eq!(report(&bench, &export(&bench).unwrap()).customer.withheld, 1);
}

#[tokio::test]
async fn only_who_is_signed_in_can_erase() {
    let bench = Bench::new().await;
    sealed(&bench).await;
    bench.send_file(&file(), VISIT, SHOWN_MEDIA).await;
    let request = Request::builder().method("POST").uri(format!("/visits/{VISIT}/erase-signature"));
    assert_eq!(bench.call(request.body(Body::empty()).unwrap()).await.status, 401);
    assert!(lies_about(&bench));
}

#[tokio::test]
async fn a_second_office_takes_it_over_or_knows_that_it_is_withheld_until_a_fuller_record_comes() {
    let (one, two) = (Bench::new().await, Bench::without_key());
    sealed(&one).await;
    one.send_file(&file(), VISIT, SHOWN_MEDIA).await;
    let fuller = export(&one).unwrap();
    assert_eq!(erase(&one).await, 303);
    let withheld = export(&one).unwrap();
    import(&two, &withheld, &one).unwrap();
    assert_eq!(report(&two, &export(&two).unwrap()).customer, Customer { enclosed: 0, withheld: 1 });
    import(&two, &fuller, &one).unwrap();
    assert_eq!(report(&two, &export(&two).unwrap()).customer, Customer { enclosed: 1, withheld: 0 });
    assert!(page(&two).await.contains(NAME));
}

#[tokio::test]
async fn a_file_that_was_changed_behind_the_offices_back_is_told_and_not_shown() {
    let bench = Bench::new().await;
    sealed(&bench).await;
    bench.send_file(&file(), VISIT, SHOWN_MEDIA).await;
    let name = Digest::of(&file()).to_string();
    let path = bench.path("photos").join(&name[..2]).join(&name);
    std::fs::write(&path, String::from_utf8(file()).unwrap().replace("[180,90]", "[180,91]")).unwrap();
    let text = page(&bench).await;
    assert!(text.contains("is not the one that the record names") && !text.contains(NAME), "{text}");
    assert!(!summary(&bench).await.contains("signed on the spot"));
    assert!(matches!(export(&bench).unwrap_err(), ExportError::Write(_)));
}

#[tokio::test]
async fn a_customer_who_was_not_there_or_did_not_sign_is_said_and_nothing_else() {
    for (present, unsigned, said) in
        [(false, false, "The customer is not there"), (true, true, "The customer does not sign")]
    {
        let bench = Bench::new().await;
        bench.assign(&assignment("a-1", "Mill house", "en"));
        let mut visit = Written::begin_with(VISIT, "a-1", &bench.public_key());
        visit.add(event::Body::CustomerNoted { present, unsigned, shown: None });
        visit.freeze(true, &[]);
        visit.send_sealed(&bench).await;
        let text = page(&bench).await;
        assert!(text.contains(said) && !text.contains("erase-signature"), "{text}");
        assert!(!summary(&bench).await.contains("Shown on the spot"));
        assert_eq!(report(&bench, &export(&bench).unwrap()).customer, Customer::default());
    }
}
