//! The owner's summary: open to who has its address, and telling nothing that could harm.

#[cfg(test)]
mod support;

use coilside_core::visit::event::{PhotoFlag, Severity};
use coilside_office::Digest;
use support::Bench;
use support::visit::{Written, assignment, photo_with_exif};

async fn sealed(language: &str) -> Bench {
    let bench = Bench::new().await;
    bench.set_contact("Warm Water Round, Lower Weir\n555 0142");
    bench.assign(&assignment("a-1", "Mill House", language));
    let mut visit = Written::begin("visit-1", "a-1");
    for (slot, shade) in [("coil-before", 10), ("coil-after", 20), ("nameplate", 30)] {
        let digest = bench.send_photo(&photo_with_exif(shade), "visit-1").await;
        visit.photograph(slot, digest, vec![PhotoFlag::NoTime]);
    }
    visit.read("water-out-found", "42.5", "1.0");
    visit.read("water-out-left", "46.0", "1.0");
    visit.find(Severity::Soon, "Replace the anode at the next visit.");
    visit.freeze(true, &[]);
    visit.send_sealed(&bench).await;
    bench
}

#[tokio::test]
async fn a_summary_opens_without_a_sign_in_and_answers_first_what_owners_ask() {
    let bench = sealed("en").await;
    let page = bench.page(&bench.summary_path("visit-1"), "").await;
    assert_eq!(page.status, 200);
    let text = page.text();
    let at = |wanted: &str| text.find(wanted).unwrap_or_else(|| panic!("no '{wanted}' in {text}"));
    let order =
        [at("Is it safe?"), at("Is there hot water?"), at("tel:5550142"), at("March 2027"), at("Replace the anode")];
    assert!(order.is_sorted(), "{order:?}");
    at("42.5\u{a0}±\u{a0}1.0\u{a0}°C");
    at("Higher");
}

/// The summary of a visit with a heat test before and after: flow and water out as left differ.
async fn tested(language: &str, flow_left: &str, out_left: &str, power_left: &str, air_found: &str) -> String {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill House", language));
    let mut visit = Written::begin("visit-1", "a-1");
    visit.heat_test("found", [air_found, "40.0", "43.0", "9.0", "980"]);
    visit.heat_test("left", ["18.5", "40.0", out_left, flow_left, power_left]);
    visit.freeze(true, &[]);
    visit.send_sealed(&bench).await;
    bench.page(&bench.summary_path("visit-1"), "").await.text()
}

#[tokio::test]
async fn less_electricity_is_promised_only_where_the_verdict_says_so() {
    let less = "The heat pump now needs less electricity for the same hot water.";
    let more = "The heat pump needs more electricity for the same hot water than before our work.";
    let none = "In the electricity for the same hot water there is no difference that can be told.";
    let apart = "Air or water was too different before and after.";
    for (flow, out, power, air, said) in [
        ("10.0", "45.0", "980", "18.5", less),
        ("9.2", "43.1", "970", "18.5", none),
        ("9.0", "41.0", "980", "18.5", more),
        ("10.0", "45.0", "980", "-26.0", apart),
    ] {
        let page = tested("en", flow, out, power, air).await;
        for sentence in [less, more, none, apart] {
            assert_eq!(page.contains(sentence), sentence == said, "'{sentence}' where it is '{said}'");
        }
        // Not on the first page: what owners ask first comes before any number, and nothing is said of money.
        let answers = page.split("</dl>").next().unwrap();
        assert!(!answers.contains(said));
        for money in ["€", "$", "EUR", "money", "cost"] {
            assert!(!page.contains(money), "it speaks of {money}");
        }
    }
    assert!(tested("es", "10.0", "45.0", "980", "18.5").await.contains("necesita ahora menos electricidad"));
}

#[tokio::test]
async fn the_summary_tells_heat_and_cop_with_their_doubt_in_plain_words() {
    let page = tested("en", "10.0", "45.0", "980", "18.5").await.replace('\u{a0}', " ");
    // IAPWS-95 and GTC: 1866 ± 1025 W and 3456 ± 1149 W, 1.90 ± 1.05 and 3.53 ± 1.18; two digits of the doubt.
    for wanted in [
        "Heat that the water gets",
        "<dd>1900 ± 1000 W</dd>",
        "<dd>3500 ± 1100 W</dd>",
        "Heat for each unit of power used",
        "<dd>1.9 ± 1.0 times</dd>",
        "<dd>3.5 ± 1.2 times</dd>",
    ] {
        assert!(page.contains(wanted), "no '{wanted}'");
    }
}

#[tokio::test]
async fn pictures_of_a_summary_say_their_size_as_they_stand() {
    let bench = sealed("en").await;
    let page = bench.page(&bench.summary_path("visit-1"), "").await.text();
    // 40 by 30 as stored, turned by orientation 6.
    assert_eq!(page.matches("width=\"30\" height=\"40\"").count(), 2, "{page}");
}

#[tokio::test]
async fn after_a_break_off_the_summary_promises_no_next_service() {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill House", "en"));
    let mut visit = Written::begin("visit-1", "a-1");
    visit.add(coilside_core::visit::event::Body::BrokenOff { reason: "called away".into(), dangers: vec![] });
    visit.freeze(false, &["- broken off visit: called away"]);
    visit.send_sealed(&bench).await;
    let page = bench.page(&bench.summary_path("visit-1"), "").await.text();
    assert!(page.contains("We call you to agree on a day."));
    assert!(!page.contains("Next service:") && !page.contains("keep leaves and snow away"));
}

#[tokio::test]
async fn a_summary_leaks_no_place_no_contact_and_no_original() {
    let bench = sealed("en").await;
    let path = bench.summary_path("visit-1");
    let text = bench.page(&path, "").await.text();
    for secret in
        ["Mill Lane", "1.23", "2.34", "555 0107", "Edda Marsh", "third stone", "/original", "/visits", "Phone one"]
    {
        assert!(!text.contains(secret), "it tells {secret}");
    }
    let digest = Digest::of(&photo_with_exif(10));
    assert!(text.contains(&format!("{path}/photos/{digest}")));
    let preview = bench.page(&format!("{path}/photos/{digest}"), "").await;
    assert_eq!((preview.status.as_u16(), preview.header("content-type")), (200, "image/jpeg"));
    assert!(photo_with_exif(10).windows(6).any(|bytes| bytes == b"SECRET"));
    for secret in [b"SECRET".as_slice(), b"Exif"] {
        assert!(!preview.body.windows(secret.len()).any(|bytes| bytes == secret));
    }
    // The nameplate is not among the pictures that the summary shows, and another address opens nothing.
    let nameplate = Digest::of(&photo_with_exif(30));
    assert_eq!(bench.page(&format!("{path}/photos/{nameplate}"), "").await.status, 404);
    assert_eq!(bench.page(&format!("/s/guess/photos/{digest}"), "").await.status, 404);
    assert_eq!(bench.page(&format!("/photos/{digest}/original"), "").await.status, 401);
}

#[tokio::test]
async fn a_preview_stands_upright_as_the_camera_was_held() {
    let bench = sealed("en").await;
    let path = format!("{}/photos/{}", bench.summary_path("visit-1"), Digest::of(&photo_with_exif(10)));
    let picture = image::load_from_memory(&bench.page(&path, "").await.body).unwrap().to_rgb8();
    // EXIF orientation 6: the stored left edge is the upper edge of what was seen. It was red, the right edge blue.
    assert_eq!(picture.dimensions(), (30, 40));
    let (top, bottom) = (picture.get_pixel(15, 3), picture.get_pixel(15, 36));
    assert!(top[0] > 200 && top[2] < 60, "{top:?}");
    assert!(bottom[2] > 200 && bottom[0] < 60, "{bottom:?}");
}

#[tokio::test]
async fn a_summary_speaks_the_owners_language_and_another_on_demand() {
    let bench = sealed("es").await;
    let path = bench.summary_path("visit-1");
    let text = bench.page(&path, "").await.text();
    assert!(text.contains("<html lang=\"es\">") && text.contains("marzo de 2027"), "{text}");
    let text = bench.page(&format!("{path}?lang=en"), "").await.text();
    assert!(text.contains("<html lang=\"en\">") && text.contains("Is it safe?"));
}

#[tokio::test]
async fn there_is_no_summary_before_the_seal_and_one_address_after_it() {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill House", "en"));
    let mut visit = Written::begin("visit-1", "a-1");
    bench.send("visit-1", 0, &visit.events).await;
    assert_eq!(bench.count("summary"), 0);
    visit.freeze(true, &[]);
    visit.send_sealed(&bench).await;
    let first = bench.summary_path("visit-1");
    // At least 128 bits: 22 characters of base64url and more.
    assert!(first.trim_start_matches("/s/").len() >= 22, "{first}");
    visit.send_sealed(&bench).await;
    assert_eq!(bench.summary_path("visit-1"), first);
    let cookie = bench.sign_in().await;
    assert!(bench.page("/visits/visit-1", &cookie).await.text().contains(&first));
}

#[tokio::test]
async fn an_unsafe_finding_is_the_first_thing_that_the_owner_reads() {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill House", "en"));
    let mut visit = Written::begin("visit-1", "a-1");
    visit.find(Severity::Unsafe, "The earth wire is broken.");
    visit.freeze(false, &[]);
    visit.send_sealed(&bench).await;
    let text = bench.page(&bench.summary_path("visit-1"), "").await.text();
    let answers = text.split("</dl>").next().unwrap_or_default();
    assert!(answers.contains("answer danger") && !answers.contains("answer good"), "{answers}");
    assert!(text.contains("The earth wire is broken."));
}

#[tokio::test]
async fn an_owner_can_keep_the_page_print_the_paper_and_note_the_day() {
    let bench = sealed("en").await;
    let path = bench.summary_path("visit-1");
    let page = bench.page(&path, "").await.text();
    for (name, media) in [
        ("summary.html", "text/html; charset=utf-8"),
        ("summary.pdf", "application/pdf"),
        ("next.ics", "text/calendar; charset=utf-8"),
    ] {
        let address = format!("{path}/{name}?lang=en&amp;units=metric");
        assert!(page.contains(&address), "no way to {name}");
        let file = bench.page(&format!("{path}/{name}"), "").await;
        assert_eq!((file.status.as_u16(), file.header("content-type")), (200, media), "{name}");
        assert!(file.header("content-disposition").starts_with("attachment;"));
        assert_eq!(file.header("cache-control"), "no-store", "{name} is kept on the way");
        for secret in [b"SECRET".as_slice(), b"Exif", b"Mill Lane", b"Edda Marsh"] {
            assert!(!file.body.windows(secret.len()).any(|bytes| bytes == secret), "{name} tells {secret:?}");
        }
        assert_eq!(bench.page(&format!("/s/guess/{name}"), "").await.status, 404);
    }
    let kept = bench.page(&format!("{path}/summary.html"), "").await.text();
    assert!(kept.contains("src=\"data:image/jpeg;base64,") && !kept.contains("src=\"/") && !kept.contains("href=\"/"));
    let day = bench.page(&format!("{path}/next.ics"), "").await.text();
    assert!(day.contains("DTSTART;VALUE=DATE:20270302"), "{day}");
}

#[tokio::test]
async fn a_summary_says_how_to_check_it_and_where_the_office_keeps_it() {
    let bench = sealed("en").await;
    let path = bench.summary_path("visit-1");
    let without = bench.page(&path, "").await.text();
    assert!(without.contains("Mark of the record") && !without.contains("svg class=\"code\""));
    bench.office.set_address("https://office.example/").unwrap();
    let page = bench.page(&path, "").await.text();
    assert!(
        page.contains(&format!("<a href=\"https://office.example{path}\">")) && page.contains("svg class=\"code\"")
    );
}

#[tokio::test]
async fn a_summary_is_written_in_the_units_of_the_owners() {
    let bench = sealed("en").await;
    let path = bench.summary_path("visit-1");
    bench.office.set_units(coilside_core::procedure::measure::Units::Us).unwrap();
    let page = bench.page(&path, "").await.text();
    // 42.5 °C and a limit of 1.0 K: times 1.8, and 32 for the zero.
    assert!(page.contains("108.5\u{a0}±\u{a0}1.8\u{a0}°F"), "{page}");
    assert!(bench.page(&format!("{path}?units=metric"), "").await.text().contains("42.5\u{a0}±\u{a0}1.0\u{a0}°C"));
}
