//! The office's pages: who may see them, what they show, what they never load or leak.

#[cfg(test)]
mod support;

use axum::body::Body;
use axum::http::Request;
use coilside_core::visit::event::{Body as Fact, PhotoFlag, Severity};
use coilside_office::Digest;
use support::visit::{Written, assignment, photo_with_exif};
use support::{Answer, Bench};

const SITE: &str = "Mill House";

/// One sealed visit with two photographs here, one on the way, readings, a finding and something missing.
async fn reviewed() -> (Bench, String) {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", SITE, "en"));
    let mut visit = Written::begin("visit-1", "a-1");
    let before = bench.send_photo(&photo_with_exif(10), "visit-1").await;
    let after = bench.send_photo(&photo_with_exif(20), "visit-1").await;
    visit.photograph("coil-before", before, vec![PhotoFlag::TimeDiffers]);
    visit.read("air-on-found", "17.5", "0.5");
    visit.read("air-on-left", "18.0", "0.5");
    visit.read("water-out-found", "42.5", "1.0");
    visit.read("water-out-left", "46.0", "1.0");
    visit.photograph("coil-after", after, vec![]);
    visit.photograph("nameplate", Digest::of(b"still on the telephone"), vec![]);
    visit.miss("serial-plate", "rusted away");
    visit.find(Severity::Soon, "Clamp <script>alert(1)</script> loose & worn");
    visit.freeze(false, &["A photograph missing serial-plate: rusted away"]);
    visit.send_sealed(&bench).await;
    let cookie = bench.sign_in().await;
    (bench, cookie)
}

fn same_words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn check_page(path: &str, page: &Answer) {
    let policy = page.header("content-security-policy");
    for part in
        ["default-src 'none'", "style-src 'self'", "img-src 'self'", "form-action 'self'", "frame-ancestors 'none'"]
    {
        assert!(policy.contains(part), "{path}: {policy}");
    }
    assert!(!policy.contains("unsafe") && !policy.contains("script-src"), "{path}: {policy}");
    assert_eq!(page.header("x-content-type-options"), "nosniff", "{path}");
    assert_eq!(page.header("referrer-policy"), "no-referrer", "{path}");
    assert!(page.header("x-robots-tag").contains("noindex"), "{path}");
    assert_ne!(page.header("cache-control"), "", "{path}");
    let text = page.text();
    assert!(text.starts_with("<!DOCTYPE html>"), "{path}");
    for foreign in ["http://", "https://", "//cdn", "<script", " style=", " onclick", "javascript:"] {
        assert!(!text.contains(foreign), "{path} holds {foreign}");
    }
    // A key without words would be shown as itself.
    for key in
        ["office", "shot", "reading", "step", "phase", "flag", "summary", "severity", "column", "instrument", "gap"]
    {
        for before in [">", "alt=\"", "aria-label=\""] {
            assert!(!text.contains(&format!("{before}{key}-")), "{path} shows a bare key of {key}");
        }
    }
}

#[tokio::test]
async fn every_page_carries_the_policy_and_loads_nothing_from_elsewhere() {
    let (bench, cookie) = reviewed().await;
    let summary = bench.summary_path("visit-1");
    for language in ["en", "es"] {
        for path in [
            "/visits",
            "/visits?q=mill&show=incomplete",
            "/visits?q=zzz",
            "/visits/visit-1",
            "/visits/none",
            "/nowhere",
            &summary,
        ] {
            let and = if path.contains('?') { "&" } else { "?" };
            check_page(path, &bench.page(&format!("{path}{and}lang={language}"), &cookie).await);
        }
    }
    for path in ["/visits", "/enter/wrong", "/s/wrong"] {
        check_page(path, &bench.page(path, "").await);
    }
}

#[tokio::test]
async fn office_pages_and_originals_need_a_sign_in() {
    let (bench, cookie) = reviewed().await;
    let digest = Digest::of(&photo_with_exif(10));
    let paths =
        ["/visits", "/visits/visit-1", &format!("/photos/{digest}/original"), &format!("/photos/{digest}/preview")];
    for path in paths {
        for stranger in ["", "coilside-session=guess", "coilside-session="] {
            let page = bench.page(path, stranger).await;
            assert_eq!(page.status, 401, "{path} with '{stranger}'");
            assert!(!page.text().contains(SITE), "{path}");
        }
        assert_eq!(bench.page(path, &cookie).await.status, 200, "{path}");
    }
    let original = bench.page(&format!("/photos/{digest}/original"), &cookie).await;
    assert_eq!(original.body, photo_with_exif(10));
    assert!(original.header("content-disposition").starts_with("attachment"));
    // A device's token opens no page, and a session no interface of devices.
    let request = Request::get("/visits").header("authorization", format!("Bearer {}", bench.token));
    assert_eq!(bench.call(request.body(Body::empty()).unwrap()).await.status, 401);
    assert_eq!(bench.page("/api/v1/assignments", &cookie).await.status, 401);
}

#[tokio::test]
async fn a_link_signs_in_once_and_the_cookie_is_kept_from_scripts_and_other_sites() {
    let bench = Bench::new().await;
    let link = bench.office.new_link().unwrap();
    let first = bench.page(&link, "").await;
    assert_eq!((first.status.as_u16(), first.header("location")), (303, "/visits"));
    let cookie = first.header("set-cookie");
    assert!(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"), "{cookie}");
    let second = bench.page(&link, "").await;
    assert_eq!((second.status.as_u16(), second.header("set-cookie")), (410, ""));
    assert_eq!(bench.page("/enter/guess", "").await.status, 410);
}

#[tokio::test]
async fn signing_out_ends_the_session_at_the_office_too() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    assert_eq!(bench.page("/visits", &cookie).await.status, 200);
    let request = Request::post("/leave").header("cookie", &cookie).body(Body::empty()).unwrap();
    assert_eq!(bench.call(request).await.status, 200);
    assert_eq!(bench.page("/visits", &cookie).await.status, 401);
}

#[tokio::test]
async fn a_visit_shows_what_was_found_left_and_missing_and_that_the_record_holds() {
    let (bench, cookie) = reviewed().await;
    let page = bench.page("/visits/visit-1", &cookie).await.text();
    for wanted in [
        "Chain verified",
        "Events: 12.",
        "Seal verified",
        "Signed by the device of Phone one, key ",
        "Photographs are on the way",
        "2 of 3",
        "No photograph: Serial number",
        "Reason: rusted away",
        "17.5\u{a0}°C",
        "No difference that can be told",
        "+3.5\u{a0}°C",
        "Air coil before",
        "Air coil after",
        "differs from this device",
        "from the site (± 6 m)",
        "On the way from the device",
        "Clamp &lt;script&gt;alert(1)&lt;/script&gt; loose &amp; worn",
        "Incomplete",
        "1 Mill Lane",
    ] {
        assert!(page.contains(wanted), "no '{wanted}' in {}", same_words(&page));
    }
}

#[tokio::test]
async fn results_stand_on_the_visits_page_with_their_doubt_a_chart_and_what_they_mean() {
    let bench = Bench::new().await;
    let mut assigned = assignment("a-1", SITE, "en");
    let past = |reading: &str, value: &str, unit: &str| serde_json::json!({ "reading": reading, "value": value, "unit": unit, "date": "2025-03-03" });
    assigned["units"][0]["history"] = serde_json::json!([
        past("flow-found", "9.5", "L/min"),
        past("water-in-found", "38.5", "Cel"),
        past("water-out-found", "42.5", "Cel"),
    ]);
    bench.assign(&assigned);
    let mut visit = Written::begin("visit-1", "a-1");
    visit.heat_test("found", ["18.5", "40.0", "43.0", "9.0", "980"]);
    bench.send("visit-1", 0, &visit.events).await;
    let cookie = bench.sign_in().await;
    let page = bench.page("/visits/visit-1", &cookie).await.text().replace('\u{a0}', " ");
    assert!(page.contains("1900 ± 1000 W") && !page.contains("svg class=\"chart\""), "no chart without an after");
    visit.heat_test("left", ["18.5", "40.0", "45.0", "10.0", "980"]);
    visit.freeze(true, &[]);
    visit.send_sealed(&bench).await;
    for language in ["en", "es"] {
        check_page("/visits/visit-1", &bench.page(&format!("/visits/visit-1?lang={language}"), &cookie).await);
    }
    let page = bench.page("/visits/visit-1", &cookie).await.text().replace('\u{a0}', " ");
    // Numbers by IAPWS-95 and GTC, as in tests/visits/results.rs.
    for wanted in [
        "role=\"img\" aria-label=\"Heat to the water. As found: 1900 ± 1000 W; As left: 3500 ± 1100 W\"",
        "role=\"img\" aria-label=\"Coefficient of performance. As found: 1.9 ± 1.0; As left: 3.5 ± 1.2\"",
        "More heat than before at like air and water, by more than the doubt.",
        "Last time, as found: 2628 W (2025\u{2011}03\u{2011}03)",
        "2.0 ± 1.0 K",
        "+1600 ± 710 W",
    ] {
        assert!(page.contains(wanted), "no '{wanted}' in {}", same_words(&page));
    }
    assert_eq!(page.matches("<rect ").count(), 4);
}

#[tokio::test]
async fn the_refrigerant_cycle_is_drawn_and_said_where_pressures_were_read() {
    let bench = Bench::new().await;
    let mut assigned = assignment("a-1", SITE, "en");
    assigned["units"][0]["refrigerant"] = "R290".into();
    bench.assign(&assigned);
    let mut visit = Written::begin("visit-1", "a-1");
    let circuit = [
        ("low-pressure", "300"),
        ("high-pressure", "1950"),
        ("suction-line", "6.0"),
        ("discharge-line", "88.0"),
        ("liquid-line", "52.0"),
    ];
    for (name, value) in circuit {
        visit.read(&format!("{name}-found"), value, "1");
    }
    bench.send("visit-1", 0, &visit.events).await;
    let cookie = bench.sign_in().await;
    let page = bench.page("/visits/visit-1", &cookie).await.text().replace('\u{a0}', " ");
    for wanted in [
        "svg class=\"plot\" viewBox=\"0 0 400 340\" role=\"img\"",
        "R290: pressure over enthalpy",
        "As found: low side 398 kPa, high side 2048 kPa, superheat 11.7 K, subcooling 6.4 K.",
        "Superheat of the suction gas",
    ] {
        assert!(page.contains(wanted), "no '{wanted}' in {}", same_words(&page));
    }
}

#[tokio::test]
async fn a_byte_changed_behind_the_offices_back_is_shown_where_it_happened() {
    let (bench, cookie) = reviewed().await;
    bench.db().execute_batch("DROP TRIGGER event_is_never_changed").unwrap();
    let changed = "UPDATE event SET bytes = CAST(replace(CAST(bytes AS TEXT), '17.5', '17.6') AS BLOB)";
    bench.db().execute(changed, []).unwrap();
    let page = bench.page("/visits/visit-1", &cookie).await.text();
    // Event 3 was changed, so event 4 does not follow it.
    assert!(page.contains("The chain breaks at event 4"), "{}", same_words(&page));
    assert!(page.contains("The seal does not hold") && page.contains("Needs a look"));
    assert!(!page.contains("Chain verified") && !page.contains("Seal verified"));
    // An owner is told nothing that cannot be vouched for.
    assert_eq!(bench.page(&bench.summary_path("visit-1"), "").await.status, 404);
}

#[tokio::test]
async fn a_seal_under_another_key_than_the_devices_is_not_trusted() {
    let (bench, cookie) = reviewed().await;
    bench.db().execute("UPDATE device SET public_key = zeroblob(65)", []).unwrap();
    let page = bench.page("/visits/visit-1", &cookie).await.text();
    assert!(page.contains("The seal does not hold") && !page.contains("Seal verified"));
}

#[tokio::test]
async fn contradicting_events_are_told_on_the_page_and_in_the_list() {
    let (bench, cookie) = reviewed().await;
    let mut other = Written::begin("visit-1", "a-1");
    other.find(Severity::Note, "another story");
    assert_eq!(bench.send("visit-1", 0, &other.events).await.status, 409);
    let page = bench.page("/visits/visit-1", &cookie).await.text();
    assert!(page.contains("Contradicting events are kept"), "{}", same_words(&page));
    assert!(bench.page("/visits?show=trouble", &cookie).await.text().contains(SITE));
}

#[tokio::test]
async fn the_list_is_searched_filtered_sorted_and_turned_over_page_by_page() {
    let bench = Bench::new().await;
    for i in 0..60 {
        let (id, assigned) = (format!("visit-{i}"), format!("a-{i}"));
        bench.assign(&assignment(&assigned, &format!("House {i:02}"), "en"));
        let mut visit = Written::begin(&id, &assigned);
        if i % 2 == 0 {
            visit.freeze(i % 4 == 0, if i % 4 == 0 { &[] } else { &["A reading missing insulation"] });
            visit.send_sealed(&bench).await;
        } else {
            bench.send(&id, 0, &visit.events).await;
        }
    }
    let cookie = bench.sign_in().await;
    let houses = async |path: &str| -> Vec<String> {
        let text = bench.page(path, &cookie).await.text();
        text.match_indices(">House ").map(|(at, _)| text[at + 1..at + 9].to_owned()).collect()
    };
    assert_eq!(houses("/visits").await.len(), 50);
    assert_eq!(houses("/visits?page=2").await.len(), 10);
    assert_eq!(houses("/visits?page=99").await.len(), 10);
    assert_eq!(houses("/visits?q=HOUSE+07").await, ["House 07"]);
    assert_eq!(houses("/visits?q=tw9-20417+mill&sort=site&dir=up").await[..2], ["House 00", "House 01"]);
    assert_eq!(houses("/visits?show=complete").await.len(), 15);
    assert_eq!(houses("/visits?show=incomplete").await.len(), 15);
    assert_eq!(houses("/visits?show=in-work").await.len(), 30);
    assert_eq!(houses("/visits?sort=site&dir=down").await[0], "House 59");
    assert_eq!(houses("/visits?q=%27%22%3B%25").await.len(), 0);
}

#[tokio::test]
async fn the_list_follows_new_events_and_changed_assignments() {
    let bench = Bench::new().await;
    let mut visit = Written::begin("visit-1", "a-1");
    bench.send("visit-1", 0, &visit.events).await;
    let cookie = bench.sign_in().await;
    assert!(bench.page("/visits", &cookie).await.text().contains("Site not known"));
    bench.assign(&assignment("a-1", SITE, "en"));
    assert!(bench.page("/visits", &cookie).await.text().contains(SITE));
    visit.add(Fact::BrokenOff { reason: "called away".into(), dangers: vec![] });
    visit.freeze(false, &["- broken off visit: called away"]);
    visit.send_sealed(&bench).await;
    assert!(bench.page("/visits?show=broken-off", &cookie).await.text().contains(SITE));
}

#[tokio::test]
async fn the_language_is_switched_by_a_link_and_remembered() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    assert!(bench.page("/visits", &cookie).await.text().contains("<html lang=\"en\">"));
    let spanish = bench.page("/visits?lang=es", &cookie).await;
    assert!(spanish.text().contains("<html lang=\"es\">") && spanish.text().contains("Visitas"));
    let remembered = spanish.header("set-cookie").split(';').next().unwrap_or_default().to_owned();
    assert!(bench.page("/visits", &format!("{cookie}; {remembered}")).await.text().contains("Visitas"));
    let request = Request::get("/visits").header("cookie", &cookie).header("accept-language", "es-MX,en;q=0.5");
    assert!(bench.call(request.body(Body::empty()).unwrap()).await.text().contains("Visitas"));
}

#[tokio::test]
async fn a_small_picture_that_was_sent_ahead_is_shown_as_such_until_the_photograph_is_here() {
    let (bench, cookie) = reviewed().await;
    let original = photo_with_exif(30);
    let digest = Digest::of(&original);
    let mut visit = Written::begin("visit-2", "a-1");
    visit.photograph("coil-before", digest, vec![]);
    bench.send("visit-2", 0, &visit.events).await;
    let page = || bench.page("/visits/visit-2", &cookie);
    assert!(page().await.text().contains("On the way from the device"));
    let ahead = |bytes: &[u8]| {
        let path = format!("/api/v1/photos/{digest}/preview");
        let request = Request::put(path).header("authorization", format!("Bearer {}", bench.token));
        bench.call(request.header("content-type", "image/jpeg").body(Body::from(bytes.to_vec())).unwrap())
    };
    for (bytes, status) in [(b"<svg>".as_slice(), 415), (&[0xff; 2_500_000], 413), (original.as_slice(), 204)] {
        assert_eq!(ahead(bytes).await.status, status);
    }
    assert!(!bench.is_safe(digest).await, "it makes nothing safe");
    let told = page().await.text();
    assert!(
        told.contains("Small picture, sent ahead.") && told.contains(&format!("/photos/{digest}/preview")),
        "{told}"
    );
    let small = bench.page(&format!("/photos/{digest}/preview"), &cookie).await;
    assert_eq!((small.status.as_u16(), small.header("cache-control")), (200, "no-store"));
    assert!(!small.body.windows(4).any(|part| part == b"Exif"), "nothing but pixels");

    assert_eq!(bench.send_photo(&original, "visit-2").await, digest);
    let told = page().await.text();
    assert!(!told.contains("Small picture, sent ahead."), "{told}");
    let made = bench.page(&format!("/photos/{digest}/preview"), &cookie).await;
    assert!(made.header("cache-control").contains("immutable"));
    assert_eq!(ahead(&original).await.status, 204, "it is not wanted any more");
    assert!(!bench.path("previews").join(format!("{digest}.ahead.jpg")).exists());
}
