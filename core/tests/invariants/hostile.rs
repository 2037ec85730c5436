//! Answers that are not the office's honest word: none makes anything safe, and none keeps it from becoming safe later.

use std::collections::BTreeMap;

use coilside_core::action::Action;
use coilside_core::screen::{Block, Tone};
use coilside_core::sync::SendRequest;

use crate::bench::Bench;
use crate::office::{HTML, Headers, Honest, answer, header, introduced, is_all_safe, next, next_now, outbox, refuse};
use crate::uploads::{photo_request, walk_to, with_photo};

const BYTES: usize = 4_000;

/// An answer in the way of the office: its status, headers, body, and the honest word spoilt in some way.
fn spoilt(honest: &(u16, Headers, String), way: usize) -> Option<(u16, Headers, Vec<u8>)> {
    let (status, headers, body) = honest.clone();
    let json = |kind: &str| [headers.clone(), header("Content-Type", kind)].concat();
    let bytes = body.clone().into_bytes();
    Some(match way {
        0 => (200, header("content-type", "text/html"), HTML.to_vec()),
        // What the office would say, called a page.
        1 if !body.is_empty() => (status, json("text/html; charset=utf-8"), bytes),
        2 if !body.is_empty() => (status, json("application/json"), bytes[..bytes.len() - 1].to_vec()),
        3 => (0, Headers::new(), Vec::new()),
        4 => (500, json("application/problem+json"), br#"{"type":"urn:coilside:problem:fault"}"#.to_vec()),
        5 => (302, header("Location", "http://portal.example/"), Vec::new()),
        6 if !body.is_empty() => (status, json("application/json"), Vec::new()),
        7 => (407, header("content-type", "text/html"), HTML.to_vec()),
        // A digest, a visit or a head of something else.
        8 if body.contains("head") || body.contains("digest") || body.contains("visit\"") => {
            let mut other: serde_json::Value = serde_json::from_str(&body).unwrap();
            for key in ["head", "digest", "visit"] {
                if other.get(key).is_some() {
                    other[key] = "ab".repeat(32).into();
                }
            }
            (status, json("application/json"), other.to_string().into_bytes())
        }
        9 if body.contains("safe") || body.contains("sealed") => {
            (status, json("application/json"), body.replace("true", "false").into_bytes())
        }
        10 if body.contains("next") => {
            let mut other: serde_json::Value = serde_json::from_str(&body).unwrap();
            other["next"] = 9_999.into();
            (status, json("application/json"), other.to_string().into_bytes())
        }
        11 if !headers.is_empty() => (status, header("Upload-Offset", "99999999999999999999"), bytes),
        12 if !headers.is_empty() => (status, header("Upload-Offset", &(BYTES + 1).to_string()), bytes),
        13 if !headers.is_empty() => (status, header("Upload-Offset", "-1"), bytes),
        14 if !headers.is_empty() => (status, Headers::new(), bytes),
        15 => (101, Headers::new(), Vec::new()),
        16 => (429, header("Retry-After", "Thu, 99 Nov"), Vec::new()),
        _ => return None,
    })
}

#[test]
fn no_spoilt_answer_makes_anything_safe_and_the_honest_one_after_it_still_does() {
    for way in 0..17 {
        let (mut bench, _) = with_photo(BYTES);
        bench.seal();
        let mut office = Honest::default();
        let mut spoilt_some = 0;
        for turn in 0..400 {
            if is_all_safe(&bench) {
                break;
            }
            let request = next(&mut bench).unwrap();
            let honest = office.takes(&request);
            // Each kind of request is spoilt three times, wherever it stands.
            let times = office.asked.iter().filter(|about| *about == office.asked.last().unwrap()).count();
            match spoilt(&honest, way).filter(|_| times <= 3) {
                Some((status, headers, body)) => {
                    let before = waits(&mut bench);
                    bench.field().answered(&request.id, status, &headers, &body, &bench.now).unwrap();
                    spoilt_some += 1;
                    assert_eq!(waits(&mut bench), before, "way {way} made something safe: {}", request.id);
                    // What the person is told to look at is tried again once they have.
                    if outbox(&mut bench).outbox.tone == Tone::Attention {
                        bench.act(&Action::SendNow).unwrap();
                    }
                }
                None => answer(&bench, &request, honest.0, &honest.1, &honest.2),
            }
            assert!(turn < 399, "way {way} does not end: {:?}", office.asked);
        }
        assert!(spoilt_some > 2, "way {way} spoilt {spoilt_some}");
        let visit = bench.id();
        assert_eq!(office.events[visit.as_str()].len(), bench.events().len(), "way {way}");
        assert!(office.sealed.contains(&visit.0));
        assert!(bench.store().is_safe(&visit).unwrap());
    }
}

/// What the outbox says that waits: what and how much, whatever it waits for.
fn waits(bench: &mut Bench) -> BTreeMap<String, u64> {
    let mut waits = BTreeMap::new();
    for block in outbox(bench).blocks {
        let Block::Text { text, .. } = block else { continue };
        let Some((line, _)) = text.split_once(" · since ") else { continue };
        let (what, count) = line.split_once(": ").unwrap_or((line, "1"));
        let count: u64 = count.split(' ').next().unwrap().parse().unwrap();
        *waits.entry(what.to_owned()).or_default() += count;
    }
    waits
}

#[test]
fn an_offset_that_goes_back_is_followed_and_one_beyond_the_end_is_not() {
    let (mut bench, _) = with_photo(600_000);
    let request = walk_to(&mut bench, "PATCH", 600_000);
    answer(&bench, &request, 204, &header("Upload-Offset", "262144"), "");
    let request = photo_request(&mut bench);
    assert_eq!(offset(&request), "262144");
    // A disk that was set back: less than before. It is followed, after a rest.
    answer(&bench, &request, 204, &header("Upload-Offset", "100000"), "");
    assert!(next_now(&mut bench).is_none_or(|request| request.id.starts_with("news")));
    let request = photo_request(&mut bench);
    assert_eq!(request.method, "HEAD", "asked again, since it went back");
    answer(&bench, &request, 200, &header("Upload-Offset", "100000"), "");
    let request = photo_request(&mut bench);
    assert_eq!(offset(&request), "100000");
    answer(&bench, &request, 204, &header("Upload-Offset", "600001"), "");
    assert_ne!(photo_request(&mut bench).method, "GET", "nobody can have more than there is");
    assert!(!is_all_safe(&bench));
}

fn offset(request: &SendRequest) -> String {
    assert_eq!(request.method, "PATCH");
    request.headers.iter().find(|(name, _)| name == "Upload-Offset").unwrap().1.clone()
}

#[test]
fn other_bytes_than_announced_are_sent_from_the_beginning_again() {
    let (mut bench, _) = with_photo(BYTES);
    let request = walk_to(&mut bench, "PATCH", BYTES);
    refuse(&bench, &request, 460, "digest");
    assert!(!is_all_safe(&bench));
    let request = photo_request(&mut bench);
    assert_eq!(request.method, "HEAD");
    answer(&bench, &request, 200, &header("Upload-Offset", "0"), "");
    assert_eq!(offset(&photo_request(&mut bench)), "0");
}

#[test]
fn a_slice_that_was_cut_goes_on_from_what_the_office_has_of_it() {
    let (mut bench, _) = with_photo(600_000);
    walk_to(&mut bench, "PATCH", 600_000);
    let request = walk_to(&mut bench, "PATCH", 600_000);
    answer(&bench, &request, 0, &Headers::new(), "");
    let request = photo_request(&mut bench);
    assert_eq!(request.method, "HEAD", "not announced anew: what arrived counts");
    answer(&bench, &request, 200, &header("Upload-Offset", "1"), "");
    assert_eq!(offset(&photo_request(&mut bench)), "1");
}

#[test]
fn a_photograph_whose_file_is_gone_says_so_and_holds_up_no_other() {
    let mut bench = Bench::begun();
    let lost = crate::uploads::shoot(&mut bench, BYTES, 1);
    let kept = crate::uploads::shoot(&mut bench, BYTES, 2);
    introduced(&mut bench);
    let path = bench.field().original(&coilside_core::visit::event::sha256(&lost));
    let bytes = std::fs::read(&path).unwrap();
    std::fs::remove_file(&path).unwrap();
    let mut office = Honest::default();
    for _ in 0..30 {
        let Some(request) = next(&mut bench) else { break };
        office.answers(&bench, &request);
    }
    assert_eq!(office.photos.values().map(|(_, bytes)| bytes.clone()).collect::<Vec<_>>(), [kept]);
    let screen = outbox(&mut bench);
    assert_eq!(screen.outbox.tone, Tone::Attention);
    assert!(format!("{:?}", screen.blocks).contains("file is not on this device any more"));
    // Somebody puts it back.
    std::fs::write(&path, bytes).unwrap();
    bench.act(&Action::SendNow).unwrap();
    office.takes_all(&mut bench);
}

/// To which requests (by their id or method) the office says this: status, headers and body.
type Said = (&'static str, u16, Headers, &'static str);

#[test]
fn an_office_that_contradicts_itself_is_not_asked_in_a_storm() {
    let at = |offset: &str| header("Upload-Offset", offset);
    // The same to every request of a kind, whatever it says: the office wants what it was just given.
    let contradictions: Vec<(&str, Vec<Said>)> = vec![
        (
            "events",
            vec![("events", 409, Headers::new(), r#"{"type":"urn:coilside:problem:gap","next":0,"head":"ZERO"}"#)],
        ),
        ("events", vec![("events", 200, Headers::new(), r#"{"next":0,"head":"ZERO"}"#)]),
        (
            "offset",
            vec![("HEAD", 200, at("5"), ""), ("PATCH", 409, at("5"), r#"{"type":"urn:coilside:problem:offset"}"#)],
        ),
        ("gone", vec![("HEAD", 404, Headers::new(), ""), ("POST", 201, Headers::new(), "")]),
        ("gone", vec![("PATCH", 404, Headers::new(), r#"{"type":"urn:coilside:problem:not-announced"}"#)]),
        ("stands", vec![("PATCH", 204, at("0"), "")]),
        (
            "no receipt",
            vec![("HEAD", 200, at("4000"), ""), ("GET", 200, Headers::new(), r#"{"digest":"OWN","safe":false}"#)],
        ),
        (
            "no receipt",
            vec![
                ("HEAD", 200, at("4000"), ""),
                ("GET", 404, Headers::new(), r#"{"type":"urn:coilside:problem:photo"}"#),
            ],
        ),
        ("no key", vec![("seal", 409, Headers::new(), r#"{"type":"urn:coilside:problem:no-key"}"#)]),
        ("token", vec![("events", 401, Headers::new(), r#"{"type":"urn:coilside:problem:token"}"#)]),
    ];
    for (name, answers) in contradictions {
        let mut bench = Bench::begun();
        let picture = crate::uploads::shoot(&mut bench, BYTES, 0);
        let digest = coilside_core::visit::event::sha256(&picture).0;
        bench.seal();
        let mut office = Honest::default();
        let mut asked = 0;
        for _ in 0..600 {
            while let Some(request) = next_now(&mut bench) {
                asked += 1;
                assert!(asked < 150, "{name}: a storm of {}", request.id);
                let is_photo = request.path.contains("photos");
                let said =
                    answers.iter().find(|(of, ..)| request.id.starts_with(of) || (is_photo && *of == request.method));
                let Some((_, status, headers, body)) = said else {
                    office.answers(&bench, &request);
                    continue;
                };
                let body = body.replace("ZERO", coilside_core::visit::event::NO_PREV).replace("OWN", &digest);
                answer(&bench, &request, *status, headers, &body);
            }
            bench.pass_ms(1_000);
        }
        assert!(asked > 5, "{name}: {asked} requests in ten minutes");
        assert!(!is_all_safe(&bench), "{name}");
    }
}
