//! The day at the office: what is due and covered, the load list, what visits used as CSV.

#[cfg(test)]
mod support;

use coilside_core::round::cover::{Judgement, Reason, Verdict};
use coilside_core::round::{Accreditation, Technician};
use coilside_core::visit::event::Body;
use serde_json::{Value, json};
use support::Bench;
use support::visit::{Written, assignment};

/// 2026-03-02 is the day of these tests; 30 days of grace after 2026-02-20.
fn covered(id: &str, site: &str) -> Value {
    let mut doc = assignment(id, site, "en");
    let more = json!({
        "last_service": "2025-02-20",
        "terms": {
            "id": "t", "name": "Five Years", "interval_months": 12, "grace_days": 30, "accreditations": ["Electrical work"],
        },
        "findings": [{ "severity": "soon", "text": "Anode <b>gone</b>.", "date": "2025-02-20" }],
    });
    if let (Some(Value::Object(unit)), Value::Object(more)) = (doc.pointer_mut("/units/0"), more) {
        unit.extend(more);
    }
    doc
}

async fn text_of(bench: &Bench, path: &str, cookie: &str) -> String {
    let page = bench.page(path, cookie).await;
    assert_eq!(page.status, 200, "{path}: {}", page.text());
    page.text()
}

#[tokio::test]
async fn the_day_shows_what_is_due_what_is_covered_and_what_to_load() {
    let bench = Bench::new().await;
    bench.assign(&covered("a-1", "Mill House"));
    let mut later = assignment("a-2", "Quay Cottage", "en");
    later["planned"] = json!("2026-03-09");
    bench.assign(&later);
    let card = Accreditation { name: "Electrical work".into(), number: "1".into(), valid_until: "2026-03-20".into() };
    let who = Technician { name: "I. Fallow".into(), accreditations: vec![card], ..Technician::default() };
    bench.office.put_technician("Phone one", &who).unwrap();
    let cookie = bench.sign_in().await;
    let text = text_of(&bench, "/round", &cookie).await;
    for wanted in [
        "Mill House",
        "Due 10 days ago, cover ends in 20.",
        "By the terms “Five Years”",
        "The desk decides.",
        "“Electrical work” holds until 2026-03-20",
        "Anode &lt;b&gt;gone&lt;/b&gt;.",
        "Load list",
        "I. Fallow",
    ] {
        assert!(text.contains(wanted), "no '{wanted}' in {text}");
    }
    assert!(!text.contains("Quay Cottage"), "it is planned for another day");
    assert!(text_of(&bench, "/round?day=2026-03-09", &cookie).await.contains("Quay Cottage"));
    let spanish = text_of(&bench, "/round?lang=es", &cookie).await;
    assert!(spanish.contains("Venció hace 10 días, la cobertura termina en 20."), "{spanish}");
    for key in ["load-", "cover-", "due-", "round-", "lapse-", "office-", "instrument-", "gear-"] {
        assert!(!spanish.contains(&format!(">{key}")), "a bare key of {key}");
    }
    // After the last day of grace it says so; nonsense in the address counts as not said.
    assert!(text_of(&bench, "/round?day=2026-03-25", &cookie).await.contains("cover ended 3 days ago"));
    assert!(text_of(&bench, "/round?day=soon&who=%3Cscript%3E", &cookie).await.contains("Mill House"));
    for stranger in ["/round", "/used.csv?from=2026-03-01&to=2026-03-31"] {
        assert_eq!(bench.page(stranger, "").await.status, 401);
    }
}

/// The days of the terms, 12 months on and 30 days of grace: 2025-02-20 gives 2026-02-20 and 2026-03-22 (hand arithmetic).
#[tokio::test]
async fn due_days_go_into_any_calendar() {
    let bench = Bench::new().await;
    bench.assign(&covered("a-1", "Mill House"));
    assert_eq!(bench.page("/due.ics", "").await.status, 401);
    let file = bench.page("/due.ics", &bench.sign_in().await).await;
    assert_eq!(file.header("content-type"), "text/calendar; charset=utf-8; method=PUBLISH");
    let text = file.text().replace("\r\n ", "");
    for wanted in [
        "UID:due-a-1-A@coilside\r\nDTSTAMP:20260302T",
        "DTSTART;VALUE=DATE:20260220",
        "SUMMARY:Service due: Mill House\\, unit A",
        "DTSTART;VALUE=DATE:20260322",
        "SUMMARY:Cover ends: Mill House\\, unit A",
        "LOCATION:1 Mill Lane\\, Lower Weir",
    ] {
        assert!(text.contains(wanted), "no {wanted:?} in {text}");
    }
    assert!(!text.contains("office-calendar"), "a bare key");
}

fn used() -> Written {
    let mut visit = Written::begin("visit-1", "a-1");
    visit.add(Body::UsedCorrected {
        unit: "-".into(),
        item: "time".into(),
        amount: "95".into(),
        measure: "min".into(),
        typed: "95".into(),
    });
    let reasons =
        vec![Reason::Late { days: 3, end: "2026-02-27".into() }, Reason::NoShot { slot: "coil-after".into() }];
    let judgement = Judgement { terms: "Five Years".into(), verdict: Verdict::NotAsAsked, reasons };
    visit.add(Body::CoverJudged { unit: "A".into(), judgement });
    visit.freeze(true, &[]);
    visit
}

#[tokio::test]
async fn what_a_visit_used_goes_out_as_csv_with_units_for_one_visit_and_for_days() {
    let bench = Bench::new().await;
    bench.assign(&covered("a-1", "=Mill, \"old\""));
    used().send_sealed(&bench).await;
    let cookie = bench.sign_in().await;
    let one = bench.page("/visits/visit-1/used.csv", &cookie).await;
    assert!(one.header("content-type").starts_with("text/csv"));
    assert!(one.header("content-disposition").contains("used-visit-1.csv"));
    let text = one.text();
    let mut lines = text.split("\r\n");
    assert_eq!(
        lines.next().unwrap(),
        "visit,day,state,site,technician,unit,asset,item,name,amount,measure,worked_out,corrected"
    );
    assert_eq!(
        lines.next().unwrap(),
        r#"visit-1,2026-03-02,complete,"'=Mill, ""old""",Phone one,,,time,Time on site,95,min,4,yes"#
    );
    let days = |from: &str, to: &str| format!("/used.csv?from={from}&to={to}");
    assert_eq!(text_of(&bench, &days("2026-03-02", "2026-03-02"), &cookie).await, text);
    assert_eq!(text_of(&bench, &days("2026-03-03", "2026-03-31"), &cookie).await.lines().count(), 1);
    assert_eq!(bench.page(&days("spring", "2026-03-31"), &cookie).await.status, 404);
    assert_eq!(bench.page("/visits/none/used.csv", &cookie).await.status, 404);
}

#[tokio::test]
async fn cover_is_told_on_the_visits_page_and_to_the_owner_and_never_promised() {
    let bench = Bench::new().await;
    bench.assign(&covered("a-1", "Mill House"));
    used().send_sealed(&bench).await;
    let cookie = bench.sign_in().await;
    let page = text_of(&bench, "/visits/visit-1", &cookie).await;
    let summary = text_of(&bench, &bench.summary_path("visit-1"), "").await;
    for text in [&page, &summary] {
        assert!(
            text.contains("By the terms “Five Years”: not all that they ask for is there. The desk decides."),
            "{text}"
        );
    }
    assert!(page.contains("The days of grace ended on 2026-02-27, days ago: 3."), "{page}");
    assert!(summary.contains("The days of grace ended on 27 February 2026, days ago: 3."), "{summary}");
    assert!(page.contains("95\u{a0}min") && page.contains("/visits/visit-1/used.csv"));
    // The next service is counted by the terms: twelve months.
    assert!(summary.contains("March 2027"));
    let spanish = text_of(&bench, &format!("{}?lang=es", bench.summary_path("visit-1")), "").await;
    assert!(spanish.contains("Decide la garantía."));
}
