//! Photographs and seals on their way: in slices, resumed, and safe only with the office's own word for each.

use std::io::Cursor;

use coilside_core::action::Action;
use coilside_core::effect::Outcome;
use coilside_core::sync::{SendBody, SendRequest};
use coilside_core::visit::event::sha256;

use crate::bench::Bench;
use crate::office::{Headers, answer, have, header, introduced, is_all_safe, next_events, next_of, refuse};

/// A picture of so many bytes, another for each colour.
fn jpeg(bytes: usize, colour: u8) -> Vec<u8> {
    let mut picture = Cursor::new(Vec::new());
    image::RgbImage::from_pixel(8, 8, image::Rgb([colour, 0, 0]))
        .write_to(&mut picture, image::ImageFormat::Jpeg)
        .unwrap();
    let mut picture = picture.into_inner();
    picture.resize(bytes - 2, 0x55);
    picture.extend([0xff, 0xd9]);
    picture
}

/// Takes a photograph of so many bytes for a slot.
pub(crate) fn shoot(bench: &mut Bench, bytes: usize, colour: u8) -> Vec<u8> {
    let effect = bench.act(&Action::Shoot { slot: "casing-before".into() }).unwrap().effects.remove(0);
    let picture = jpeg(bytes, colour);
    std::fs::write(bench.field().incoming(&effect.id).unwrap(), &picture).unwrap();
    bench.done(&effect.id, &Outcome::Photo { place: None }).unwrap();
    picture
}

/// A visit with a photograph of so many bytes, its events at the office.
pub(crate) fn with_photo(bytes: usize) -> (Bench, Vec<u8>) {
    let mut bench = Bench::begun();
    let picture = shoot(&mut bench, bytes, 0);
    introduced(&mut bench);
    let request = next_events(&mut bench);
    let all = bench.events().len() as u64;
    answer(&bench, &request, 200, &Headers::new(), &have(&bench, all));
    (bench, picture)
}

/// The next request that carries the photograph.
pub(crate) fn photo_request(bench: &mut Bench) -> SendRequest {
    next_of(bench, "photo:")
}

fn head_of(request: &SendRequest, name: &str) -> String {
    request.headers.iter().find(|(known, _)| known == name).unwrap().1.clone()
}

/// Brings the photograph to a request of that method: an office that has all of it where it is asked for the receipt.
pub(crate) fn walk_to(bench: &mut Bench, method: &str, bytes: usize) -> SendRequest {
    for _ in 0..8 {
        let request = photo_request(bench);
        if request.method == method {
            return request;
        }
        let arrived = if method == "GET" { bytes } else { 0 };
        let (status, headers) = match request.method.as_str() {
            "POST" => (201, Headers::new()),
            "HEAD" => (200, header("Upload-Offset", &arrived.to_string())),
            "PATCH" => (204, header("Upload-Offset", &bytes.to_string())),
            // The office has it not: then it is announced or asked for again.
            _ => (404, Headers::new()),
        };
        answer(bench, &request, status, &headers, "");
    }
    panic!("{method} never comes");
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
        let request = walk_to(&mut bench, "GET", picture.len());
        answer(&bench, &request, 200, &Headers::new(), &receipt.to_string());
        assert!(!is_all_safe(&bench), "{receipt}");
    }
    let request = walk_to(&mut bench, "GET", picture.len());
    assert!(request.path.ends_with("/receipt"));
    let receipt = serde_json::json!({ "digest": digest.0, "safe": true }).to_string();
    answer(&bench, &request, 200, &Headers::new(), &receipt);
    assert!(is_all_safe(&bench));
}

#[test]
fn an_upload_goes_on_where_it_was_after_a_restart_and_begins_anew_where_the_office_forgot_it() {
    let (mut bench, picture) = with_photo(2_600_000);
    walk_to(&mut bench, "PATCH", picture.len());
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
    assert_eq!((*from, *length), (1_048_576, 262_144), "from there on, in a slice for a line that is not known");
    // The office lost it (tus: the upload is gone).
    refuse(&bench, &request, 404, "not-announced");
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
    next_of(bench, "seal:")
}
