//! Photographs and seals on their way: in slices, resumed, and safe only with the office's own word for each.

use std::io::Cursor;

use coilside_core::action::Action;
use coilside_core::effect::Outcome;
use coilside_core::sync::{SendBody, SendRequest};
use coilside_core::visit::event::sha256;

use crate::bench::Bench;
use crate::office::{HTML, Headers, answer, have, header, introduced, is_all_safe, next, next_events};

/// Takes requests until the events are at the office; every request that carries events is answered as it should be.
fn events_sent(bench: &mut Bench) {
    for _ in 0..100 {
        let Some(request) = next(bench) else { return };
        if request.id == "news" {
            answer(bench, &request, 200, &Headers::new(), r#"{"assignments":[]}"#);
        } else if request.id.starts_with("events:") {
            let all = bench.events().len() as u64;
            answer(bench, &request, 200, &Headers::new(), &have(bench, all));
        } else {
            // What comes after the events is given back as if the net had failed.
            answer(bench, &request, 0, &Headers::new(), "");
            return;
        }
    }
    panic!("the events never got through");
}

fn jpeg(bytes: usize) -> Vec<u8> {
    let mut picture = Cursor::new(Vec::new());
    image::DynamicImage::new_rgb8(8, 8).write_to(&mut picture, image::ImageFormat::Jpeg).unwrap();
    let mut picture = picture.into_inner();
    picture.resize(bytes - 2, 0x55);
    picture.extend([0xff, 0xd9]);
    picture
}

/// A visit with a photograph of so many bytes, its events at the office.
fn with_photo(bytes: usize) -> (Bench, Vec<u8>) {
    let mut bench = Bench::begun();
    let effect = bench.act(&Action::Shoot { slot: "casing-before".into() }).unwrap().effects.remove(0);
    let picture = jpeg(bytes);
    std::fs::write(bench.field().incoming(&effect.id).unwrap(), &picture).unwrap();
    bench.done(&effect.id, &Outcome::Photo { place: None }).unwrap();
    introduced(&mut bench);
    events_sent(&mut bench);
    (bench, picture)
}

/// The next request that carries the photograph.
fn photo_request(bench: &mut Bench) -> SendRequest {
    loop {
        let request = next(bench).unwrap();
        if request.id.starts_with("photo:") {
            return request;
        }
        assert_eq!(request.id, "news");
        answer(bench, &request, 200, &Headers::new(), r#"{"assignments":[]}"#);
    }
}

fn head_of(request: &SendRequest, name: &str) -> String {
    request.headers.iter().find(|(known, _)| known == name).unwrap().1.clone()
}

/// Brings the photograph to the stage before the request of that method.
fn walk_to(bench: &mut Bench, method: &str) {
    let steps: &[(u16, &str)] = match method {
        "POST" => &[],
        "HEAD" => &[(201, "")],
        "PATCH" => &[(201, ""), (200, "0")],
        _ => &[(201, ""), (200, "4000")],
    };
    for (status, offset) in steps {
        let request = photo_request(bench);
        let headers = if offset.is_empty() { Headers::new() } else { header("Upload-Offset", offset) };
        answer(bench, &request, *status, &headers, "");
    }
}

#[test]
fn a_page_with_status_200_makes_no_photograph_safe() {
    let (mut bench, _) = with_photo(4_000);
    for stage in ["POST", "HEAD", "PATCH", "GET"] {
        let request = photo_request(&mut bench);
        bench.field().answered(&request.id, 200, &Headers::new(), HTML, &bench.now).unwrap();
        assert!(!is_all_safe(&bench), "{stage}");
        walk_to(&mut bench, stage);
        let request = photo_request(&mut bench);
        assert_eq!(request.method, stage);
        bench.field().answered(&request.id, 200, &Headers::new(), HTML, &bench.now).unwrap();
        assert!(!is_all_safe(&bench), "{stage}");
    }
}

#[test]
fn a_photograph_goes_in_slices_and_is_safe_only_with_its_receipt() {
    let (mut bench, picture) = with_photo(2_600_000);
    let digest = sha256(&picture);
    let request = photo_request(&mut bench);
    assert_eq!((request.method.as_str(), request.path.as_str()), ("POST", "/api/v1/photos"));
    assert_eq!(head_of(&request, "Upload-Length"), "2600000");
    answer(&bench, &request, 201, &Headers::new(), "");
    let request = photo_request(&mut bench);
    assert_eq!((request.method.as_str(), request.path.clone()), ("HEAD", format!("/api/v1/photos/{digest}")));
    answer(&bench, &request, 200, &header("Upload-Offset", "0"), "");
    let mut sent: Vec<u8> = Vec::new();
    while sent.len() < picture.len() {
        let request = photo_request(&mut bench);
        assert_eq!((request.method.as_str(), head_of(&request, "Upload-Offset")), ("PATCH", sent.len().to_string()));
        let SendBody::File { path, from, length } = &request.body else { panic!() };
        let file = std::fs::read(path).unwrap();
        sent.extend(&file[*from as usize..(*from + *length) as usize]);
        answer(&bench, &request, 204, &header("upload-offset", &sent.len().to_string()), "");
        assert!(!is_all_safe(&bench), "an offset is no receipt");
    }
    assert_eq!(sent, picture);
    for receipt in [
        serde_json::json!({ "digest": "00".repeat(32), "safe": true }),
        serde_json::json!({ "digest": digest.0, "safe": false }),
    ] {
        walk_to_receipt(&mut bench, picture.len());
        let request = photo_request(&mut bench);
        assert_eq!(request.method, "GET");
        answer(&bench, &request, 200, &Headers::new(), &receipt.to_string());
        assert!(!is_all_safe(&bench), "{receipt}");
    }
    walk_to_receipt(&mut bench, picture.len());
    let request = photo_request(&mut bench);
    assert!(request.path.ends_with("/receipt"));
    let receipt = serde_json::json!({ "digest": digest.0, "safe": true }).to_string();
    answer(&bench, &request, 200, &Headers::new(), &receipt);
    assert!(is_all_safe(&bench));
}

/// From wherever it stands to the request for the receipt: the office has every byte.
fn walk_to_receipt(bench: &mut Bench, bytes: usize) {
    for _ in 0..8 {
        let request = photo_request(bench);
        match request.method.as_str() {
            "POST" => answer(bench, &request, 201, &Headers::new(), ""),
            "HEAD" | "PATCH" => {
                answer(
                    bench,
                    &request,
                    if request.method == "HEAD" { 200 } else { 204 },
                    &header("Upload-Offset", &bytes.to_string()),
                    "",
                );
                return;
            }
            _ => answer(bench, &request, 0, &Headers::new(), ""),
        }
    }
    panic!("the office is never asked how much it has");
}

#[test]
fn an_upload_goes_on_where_it_was_after_a_restart_and_begins_anew_where_the_office_forgot_it() {
    let (mut bench, picture) = with_photo(2_600_000);
    for (status, offset) in [(201, ""), (200, "0")] {
        let request = photo_request(&mut bench);
        let headers = if offset.is_empty() { Headers::new() } else { header("Upload-Offset", offset) };
        answer(&bench, &request, status, &headers, "");
    }
    let request = photo_request(&mut bench);
    assert_eq!(request.method, "PATCH");
    bench.reopen().unwrap();
    introduced(&mut bench);
    // The office knows how much arrived; the device does not need to.
    let request = photo_request(&mut bench);
    assert_eq!(request.method, "POST", "announced again: that may be repeated");
    answer(&bench, &request, 201, &Headers::new(), "");
    let request = photo_request(&mut bench);
    answer(&bench, &request, 200, &header("Upload-Offset", "1048576"), "");
    let request = photo_request(&mut bench);
    let SendBody::File { from, length, .. } = &request.body else { panic!() };
    assert_eq!((*from, *length), (1_048_576, 1_048_576));
    // The office lost it: 404 (tus: the upload is gone).
    answer(&bench, &request, 404, &Headers::new(), "");
    assert_eq!(photo_request(&mut bench).method, "POST");
    let digest = sha256(&picture);
    assert!(bench.field().original(&digest).exists(), "nothing local is deleted before it is safe");
}

#[test]
fn the_seal_is_safe_only_with_the_offices_word_about_this_visit() {
    let mut bench = Bench::begun();
    bench.seal();
    introduced(&mut bench);
    events_until_seal(&mut bench);
    for body in
        [r#"{"visit":"another","sealed":true}"#.to_owned(), format!(r#"{{"visit":"{}","sealed":false}}"#, bench.id())]
    {
        let request = seal_request(&mut bench);
        answer(&bench, &request, 200, &Headers::new(), &body);
        assert!(!is_all_safe(&bench), "{body}");
    }
    let request = seal_request(&mut bench);
    assert_eq!((request.method.as_str(), request.path.clone()), ("PUT", format!("/api/v1/visits/{}/seal", bench.id())));
    answer(&bench, &request, 200, &Headers::new(), &format!(r#"{{"visit":"{}","sealed":true}}"#, bench.id()));
    assert!(is_all_safe(&bench));
    let screen = bench.act(&Action::Go { to: "leaving".into() }).unwrap().screen;
    assert!(format!("{:?}", screen.blocks).contains("All of it is safe at the office."));
}

fn events_until_seal(bench: &mut Bench) {
    let request = next_events(bench);
    let all = bench.events().len() as u64;
    answer(bench, &request, 200, &Headers::new(), &have(bench, all));
}

fn seal_request(bench: &mut Bench) -> SendRequest {
    loop {
        let request = next(bench).unwrap();
        if request.id.starts_with("seal:") {
            return request;
        }
        answer(bench, &request, 200, &Headers::new(), r#"{"assignments":[]}"#);
    }
}
