//! The owners' summaries of ten visits: what they say, that nothing leaks with them, and their files for the checks from
//! outside (`tests/summaries/*.py`, `tests/summaries/page.test.mjs`), which read them in `target/summaries`.

use std::fs;
use std::path::Path;
use std::sync::LazyLock;

use coilside_core::record::summary::{Part, Source, Summary};
use coilside_office::demo::player::{Answers as _, Clock};
use coilside_tests::gallery::{Hung, gallery};
use coilside_tests::{MORNING_UTC_MS, Technician};

#[allow(clippy::unwrap_used, reason = "a visit that does not go as planned fails every test here")]
static GALLERY: LazyLock<Vec<Hung>> = LazyLock::new(|| gallery().unwrap());

#[allow(clippy::unwrap_used, reason = "a name that is not there is a fault of the test itself")]
fn named(name: &str) -> &'static Hung {
    GALLERY.iter().find(|hung| hung.name.contains(name)).unwrap()
}

fn section(summary: &Summary, name: &str) -> String {
    summary.section(name).map(|section| format!("{:?}", section.parts)).unwrap_or_default()
}

/// Not only for those outside: a summary that cannot be written fails here.
#[test]
fn every_summary_comes_as_page_as_paper_and_as_its_words() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../target/summaries");
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    for Hung { name, handed } in GALLERY.iter() {
        fs::write(folder.join(format!("{name}.html")), handed.page()).unwrap();
        fs::write(folder.join(format!("{name}.pdf")), handed.paper().unwrap()).unwrap();
        let told = serde_json::json!({ "language": handed.summary.language, "words": handed.summary.words() });
        fs::write(folder.join(format!("{name}.json")), told.to_string()).unwrap();
    }
    assert_eq!(GALLERY.len(), 10);
}

/// The way to the office's page, which a summary has once the seal has arrived there. Other programs read the code in
/// `tests/summaries/codes.py`.
#[test]
fn the_offices_page_stands_on_page_and_paper_as_a_code_and_as_words() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../target/link-codes");
    fs::create_dir_all(&folder).unwrap();
    let token = "q7Zr0wXk3VbN5uYtC1mLhE8sPdGfJa2oIiRxT4vQ9yU";
    for (name, address) in [
        ("short", "http://10.0.0.7:8080/s/q7Zr0wXk3VbN5uYtC1mLhE".to_owned()),
        ("long", format!("https://office.of-the-warm-water-round.lower-weir.example/service/s/{token}")),
    ] {
        let mut handed = named("02-tank").handed.clone();
        let genuine = handed.summary.sections.iter_mut().find(|section| section.name == "genuine").unwrap();
        genuine.parts.push(Part::Code(address.clone()));
        assert!(handed.page().contains(&format!("href=\"{address}\"")), "{name}");
        fs::write(folder.join(format!("{name}.html")), handed.page()).unwrap();
        fs::write(folder.join(format!("{name}.pdf")), handed.paper().unwrap()).unwrap();
        fs::write(folder.join(format!("{name}.txt")), address).unwrap();
    }
}

#[test]
fn the_same_summary_gives_the_same_paper_to_the_byte() {
    let handed = &named("02-tank").handed;
    assert_eq!(handed.paper().unwrap(), handed.paper().unwrap());
}

/// Originals carry time and place as EXIF; pages and papers carry neither, nor where the house is, nor whose it is.
#[test]
fn no_place_and_no_exif_leaves_with_a_summary() {
    let bytes_of = |text: &str| text.as_bytes().to_vec();
    let mut technician = Technician::default();
    technician.draws = true;
    let original = technician.photograph("coil-before", &Clock::at(MORNING_UTC_MS, 120).now());
    assert!(original.windows(6).any(|window| window == b"Exif\0\0"), "the originals have something to tell");
    for Hung { name, handed } in GALLERY.iter() {
        assert!(!handed.pictures.is_empty() || name.contains("07"), "{name} shows no picture");
        let mut all = vec![bytes_of(&handed.page()), handed.paper().unwrap()];
        for picture in handed.pictures.values() {
            let Source::Bytes(bytes) = &picture.source else { panic!("{name}: a picture that is elsewhere") };
            all.push(bytes.clone());
        }
        for degrees in ["1.5000", "2.5000", "1.50003"] {
            assert!(!handed.summary.words().iter().any(|line| line.contains(degrees)), "{name} tells {degrees}");
        }
        for bytes in &all {
            for secret in ["Exif\0\0", "Mill Lane", "555 0100", "A. Weaver", "Isolator behind"] {
                let found = bytes.windows(secret.len()).any(|window| window == secret.as_bytes());
                assert!(!found, "{name} tells '{secret}'");
            }
        }
    }
}

#[test]
fn previews_go_into_the_paper_as_they_are() {
    let handed = &named("01-add-on").handed;
    let paper = handed.paper().unwrap();
    for picture in handed.pictures.values() {
        let Source::Bytes(bytes) = &picture.source else { panic!("elsewhere") };
        assert!(paper.windows(bytes.len()).any(|window| window == bytes), "a preview was coded anew");
    }
}

/// Every value of a summary has its unit: numbers are followed by one, or stand for a day, a mark, a page or a machine.
#[test]
fn no_number_stands_without_its_unit() {
    const UNITS: [&str; 21] = [
        "°C", "°F", "K", "W", "L/min", "gal/min", "L", "gal", "kPa", "psi", "V", "A", "µF", "MΩ", "µS/cm", "mg/L", "%",
        "times", "veces", "Hz", "min",
    ];
    let has_unit = |text: &str| {
        let text = text.replace('\u{a0}', " ");
        !text.contains(|c: char| c.is_ascii_digit())
            || text.starts_with("pH ")
            || UNITS.iter().any(|unit| text.ends_with(&format!(" {unit}")))
    };
    let mut values = 0;
    for Hung { name, handed } in GALLERY.iter() {
        for part in handed.summary.sections.iter().flat_map(|section| &section.parts) {
            let said: Vec<&str> = match part {
                Part::Changed(changed) => {
                    let marks = changed.chart.iter().flat_map(|chart| chart.words());
                    [changed.found.as_str(), &changed.left].into_iter().chain(marks).collect()
                }
                Part::Years(years) => {
                    let marks = years.chart.words().filter(|text| text.len() != 4);
                    years.values.iter().map(|(_, value)| value.as_str()).chain(marks).collect()
                }
                _ => continue,
            };
            for text in said {
                assert!(has_unit(text), "{name}: '{text}'");
                values += 1;
            }
        }
    }
    assert!(values > 200, "only {values} were looked at");
}

#[test]
fn what_is_unsafe_and_that_the_work_was_stopped_stand_before_all_else() {
    for (name, said) in
        [("07-unsafe", "The earth wire at the unit is broken off."), ("06-broken-off", "A thunderstorm came up.")]
    {
        let summary = &named(name).handed.summary;
        let first = summary.sections.first().unwrap();
        assert_eq!(first.name, "first", "{name}");
        assert!(format!("{:?}", first.parts).contains(said), "{name}");
        assert!(
            section(summary, "next").contains("We call you") && !section(summary, "next").contains("Next service"),
            "{name}"
        );
    }
    assert_eq!(named("01-add-on").handed.summary.sections.first().unwrap().name, "answers");
}

#[test]
fn what_was_not_begun_is_told_in_a_line_and_settings_left_have_their_units() {
    let broken = &named("06-broken-off").handed.summary;
    let gaps = section(broken, "gaps");
    assert_eq!(gaps.matches("Not done: Clean the water side.").count(), 1, "{gaps}");
    assert!(gaps.matches("Not done: ").count() < 15, "{gaps}");
    let settings = section(broken, "settings");
    assert!(settings.contains("left at 40 °C (it was 55 °C)"), "{settings}");
}

#[test]
fn an_incomplete_visit_says_so_and_a_complete_one_does_not() {
    let left_out = section(&named("10-left-out").handed.summary, "gaps");
    assert!(
        left_out.contains("No se hizo todo.") && left_out.contains("El motor estaba tapado por una viga."),
        "{left_out}"
    );
    assert_eq!(section(&named("02-tank").handed.summary, "gaps"), "");
}

#[test]
fn whom_it_was_shown_to_stands_there_with_the_drawing_only_where_they_signed() {
    for Hung { name, handed } in GALLERY.iter() {
        let signs = ["01", "03", "09"].iter().any(|number| name.starts_with(number));
        let drawn = handed.summary.section("shown").map(|section| {
            section.parts.iter().filter(|part| matches!(part, Part::Ink(drawing) if drawing.shapes.len() == 3)).count()
        });
        assert_eq!(drawn, signs.then_some(1), "{name}");
        assert_eq!(handed.page().contains("class=\"stroke\""), signs, "{name}");
    }
    let said = section(&named("01-add-on").handed.summary, "shown");
    assert!(said.contains("Shown to: Edda Marsh, signed on the spot."), "{said}");
    assert!(section(&named("03-r744").handed.summary, "shown").contains("Mostrado al cliente, firmado en el lugar."));
}

#[test]
fn each_of_several_units_is_told_apart() {
    let summary = &named("08-two-units").handed.summary;
    let done = summary.sections.iter().flat_map(|section| &section.parts).find_map(|part| match part {
        Part::Done(done) => Some(done),
        _ => None,
    });
    let done = done.expect("something was done");
    assert!(done.len() < 12 && done.iter().all(|done| done.units.len() == 2), "what is alike is said once: {done:?}");
    assert_eq!(summary.lead.len(), 3);
    let numbers = section(summary, "numbers");
    assert!(numbers.contains("\"A: ") && numbers.contains("\"B: "), "{numbers}");
}

#[test]
fn cover_is_told_with_its_reasons_and_never_promised() {
    let cover = section(&named("01-add-on").handed.summary, "cover");
    assert!(cover.contains("The desk decides.") && cover.contains("In time: due on 5 May 2026."), "{cover}");
}

#[test]
fn us_units_come_on_us_letter_and_metric_ones_on_a4() {
    // ISO 216: 210 by 297 mm; US letter: 8.5 by 11 inch; in points of 1/72 inch.
    for (name, sheet) in [("04-r290-us", "[0 0 612 792]"), ("01-add-on", "[0 0 595.28 841.89]")] {
        let paper = named(name).handed.paper().unwrap();
        let text = String::from_utf8_lossy(&paper);
        assert!(text.contains(&format!("/MediaBox {sheet}")), "{name}");
    }
    let us = section(&named("04-r290-us").handed.summary, "numbers");
    assert!(us.contains("°F") && !us.contains("°C") && us.contains('±'), "{us}");
}
