//! Uploads as tus 1.0.0 (<https://tus.io/protocols/resumable-upload>) writes them down, beyond what our own devices use.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

#[cfg(test)]
mod support;

use axum::body::{Body, Bytes};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use coilside_office::Digest;
use support::{Answer, Bench};

const VISIT: &str = "visit-1";
const DAY_MS: i64 = 24 * 3600 * 1000;

fn photo(seed: u32) -> Vec<u8> {
    (0..50_000_u32).flat_map(|i| (i ^ seed).wrapping_mul(2_654_435_761).to_le_bytes()).collect()
}

async fn call(bench: &Bench, method: &str, path: &str, headers: &[(&str, &str)], body: &[u8]) -> Answer {
    let mut request = bench.request(method, path).header("tus-resumable", "1.0.0");
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    bench.call(request.body(Body::from(body.to_vec())).unwrap()).await
}

async fn piece_checked(bench: &Bench, digest: Digest, offset: usize, bytes: &[u8], checksum: &str) -> Answer {
    let offset = offset.to_string();
    let headers = [
        ("content-type", "application/offset+octet-stream"),
        ("upload-offset", offset.as_str()),
        ("upload-checksum", checksum),
    ];
    call(bench, "PATCH", &format!("/photos/{digest}"), &headers, bytes).await
}

fn repr_digest(bytes: &[u8]) -> String {
    format!("sha-256=:{}:", STANDARD.encode(Digest::of(bytes).as_bytes()))
}

#[tokio::test]
async fn the_office_tells_what_it_can_do_to_anyone_who_asks() {
    let bench = Bench::new().await;
    let request = axum::http::Request::options("/api/v1/photos").body(Body::empty()).unwrap();
    let answer = bench.call(request).await;
    assert_eq!(answer.status, 204);
    for (name, value) in [
        ("tus-resumable", "1.0.0"),
        ("tus-version", "1.0.0"),
        ("tus-extension", "creation,checksum,expiration,termination"),
        ("tus-checksum-algorithm", "sha1,sha256"),
        ("tus-max-size", "62914560"),
    ] {
        assert_eq!(answer.header(name), value, "{name}");
    }
}

#[tokio::test]
async fn another_version_and_none_are_refused_with_the_one_that_is_spoken_and_nothing_is_done() {
    let bench = Bench::new().await;
    let digest = Digest::of(&photo(1));
    for version in [Some("0.2.2"), None] {
        for (method, path) in [
            ("POST", "/photos".to_owned()),
            ("HEAD", format!("/photos/{digest}")),
            ("PATCH", format!("/photos/{digest}")),
            ("DELETE", format!("/photos/{digest}")),
        ] {
            let mut request = bench.request(method, &path).header("upload-length", "1");
            if let Some(version) = version {
                request = request.header("tus-resumable", version);
            }
            let answer = bench.call(request.body(Body::empty()).unwrap()).await;
            let said = (answer.status.as_u16(), answer.header("tus-version"), answer.header("tus-resumable"));
            assert_eq!(said, (412, "1.0.0", "1.0.0"), "{method} with {version:?}");
        }
    }
    assert_eq!(bench.count("photo"), 0);
}

#[tokio::test]
async fn a_repr_digest_announces_as_well_as_our_metadata() {
    let bench = Bench::new().await;
    let bytes = photo(1);
    let digest = Digest::of(&bytes);
    let field = repr_digest(&bytes);
    let length = bytes.len().to_string();
    let headers = [
        ("upload-length", length.as_str()),
        ("repr-digest", field.as_str()),
        ("upload-metadata", "filename eC5qcGc=,filetype aW1hZ2UvanBlZw=="),
    ];
    let announced = call(&bench, "POST", "/photos", &headers, b"").await;
    assert_eq!(announced.status, 201, "{}", announced.text());
    assert_eq!(announced.header("location"), format!("/api/v1/photos/{digest}"));
    assert_eq!(bench.piece(digest, 0, &bytes).await.status, 204);
    let receipt = bench.get(&format!("/photos/{digest}/receipt")).await.json();
    assert_eq!((receipt["safe"].as_bool(), receipt["repr_digest"].as_str()), (Some(true), Some(field.as_str())));
    // Two digests that differ announce nothing, nor does none.
    let sha = format!("sha256 {}", STANDARD.encode(Digest::of(b"other").to_string()));
    for headers in [
        vec![("upload-length", "1"), ("repr-digest", field.as_str()), ("upload-metadata", sha.as_str())],
        vec![("upload-length", "1")],
        vec![("upload-length", "1"), ("repr-digest", "sha-256=nonsense")],
        vec![("repr-digest", field.as_str())],
    ] {
        assert_eq!(call(&bench, "POST", "/photos", &headers, b"").await.status, 400, "{headers:?}");
    }
}

#[tokio::test]
async fn how_far_it_came_is_never_taken_from_a_cache() {
    let bench = Bench::new().await;
    let digest = Digest::of(&photo(1));
    bench.announce(digest, 200_000, VISIT).await;
    let answer = call(&bench, "HEAD", &format!("/photos/{digest}"), &[], b"").await;
    assert_eq!((answer.header("cache-control"), answer.header("upload-offset")), ("no-store", "0"));
    let unknown = call(&bench, "HEAD", &format!("/photos/{}", Digest::of(b"?")), &[], b"").await;
    assert_eq!((unknown.status.as_u16(), unknown.header("upload-offset")), (404, ""));
}

#[tokio::test]
async fn a_piece_that_differs_from_its_checksum_is_not_kept() {
    let bench = Bench::new().await;
    let bytes = photo(1);
    let digest = Digest::of(&bytes);
    bench.announce(digest, bytes.len(), VISIT).await;
    assert_eq!(bench.piece(digest, 0, &bytes[..1000]).await.status, 204);
    let right = format!("sha256 {}", STANDARD.encode(Digest::of(&bytes[1000..]).as_bytes()));
    let mut wrong = bytes[1000..].to_vec();
    wrong[5] ^= 1;
    let answer = piece_checked(&bench, digest, 1000, &wrong, &right).await;
    assert_eq!((answer.status.as_u16(), answer.json()["type"].as_str()), (460, Some("urn:coilside:problem:checksum")));
    assert_eq!(bench.progress(digest).await.0, "1000");
    assert_eq!(std::fs::metadata(bench.path("parts").join(format!("{digest}.part"))).unwrap().len(), 1000);
    assert_eq!(piece_checked(&bench, digest, 1000, &bytes[1000..], &right).await.status, 204);
    assert!(bench.is_safe(digest).await);
}

#[tokio::test]
async fn a_checksum_of_another_kind_is_refused_before_anything_is_read() {
    let bench = Bench::new().await;
    let bytes = photo(1);
    let digest = Digest::of(&bytes);
    bench.announce(digest, bytes.len(), VISIT).await;
    for checksum in ["crc32 AAAAAA==", "sha1 not-base64", "sha1"] {
        assert_eq!(piece_checked(&bench, digest, 0, &bytes, checksum).await.status, 400, "{checksum}");
    }
    assert_eq!(bench.progress(digest).await.0, "0");
}

#[tokio::test]
async fn what_came_of_a_piece_that_broke_off_is_kept_and_gone_on_from() {
    let bench = Bench::new().await;
    let bytes = photo(1);
    let digest = Digest::of(&bytes);
    bench.announce(digest, bytes.len(), VISIT).await;
    let half = Bytes::from(bytes[..70_000].to_vec());
    let broken = [Ok(half), Err(std::io::Error::other("the line broke"))];
    let request = bench.request("PATCH", &format!("/photos/{digest}")).header("tus-resumable", "1.0.0");
    let request = request.header("content-type", "application/offset+octet-stream").header("upload-offset", "0");
    let body = Body::from_stream(Parts(broken.into_iter().collect()));
    let answer = bench.call(request.body(body).unwrap()).await;
    assert_eq!(answer.status, 503);
    assert_eq!(bench.progress(digest).await.0, "70000");
    assert_eq!(bench.piece(digest, 70_000, &bytes[70_000..]).await.status, 204);
    assert!(bench.is_safe(digest).await);
}

/// A body that comes part by part.
struct Parts(std::collections::VecDeque<Result<Bytes, std::io::Error>>);

impl futures_core::Stream for Parts {
    type Item = Result<Bytes, std::io::Error>;

    fn poll_next(
        mut self: std::pin::Pin<&mut Self>,
        _: &mut std::task::Context<'_>,
    ) -> std::task::Poll<Option<Self::Item>> {
        std::task::Poll::Ready(self.0.pop_front())
    }
}

#[tokio::test]
async fn a_photograph_that_stays_unfinished_for_a_week_is_given_up() {
    let bench = Bench::new().await;
    let bytes = photo(1);
    let digest = Digest::of(&bytes);
    let announced = bench.announce(digest, bytes.len(), VISIT).await;
    // The tests' clock begins on Monday, 2 March 2026, at eight.
    assert_eq!(announced.header("upload-expires"), "Mon, 09 Mar 2026 08:00:00 GMT");
    let answer = bench.piece(digest, 0, &bytes[..1000]).await;
    assert_eq!(answer.header("upload-expires"), "Mon, 09 Mar 2026 08:00:00 GMT");
    bench.let_pass(7 * DAY_MS - 1);
    assert_eq!(bench.progress(digest).await.0, "1000");
    bench.let_pass(1);
    assert_eq!(bench.piece(digest, 1000, &bytes[1000..]).await.status, 404);
    assert!(!bench.path("parts").join(format!("{digest}.part")).exists());
    // Nothing stands in the way of another try.
    assert_eq!(bench.announce(digest, bytes.len(), VISIT).await.status, 201);
    let whole = bench.piece(digest, 0, &bytes).await;
    assert_eq!((whole.status.as_u16(), whole.header("upload-expires")), (204, ""));
    bench.let_pass(30 * DAY_MS);
    assert!(bench.is_safe(digest).await, "what is safe stays");
}

#[tokio::test]
async fn those_that_are_given_up_go_when_others_are_announced() {
    let bench = Bench::new().await;
    for seed in 0..3 {
        let bytes = photo(seed);
        bench.announce(Digest::of(&bytes), bytes.len(), VISIT).await;
        bench.piece(Digest::of(&bytes), 0, &bytes[..10]).await;
    }
    bench.let_pass(8 * DAY_MS);
    let fresh = photo(9);
    bench.announce(Digest::of(&fresh), fresh.len(), VISIT).await;
    assert_eq!(bench.count("photo"), 1);
    assert_eq!(std::fs::read_dir(bench.path("parts")).unwrap().count(), 0);
}

#[tokio::test]
async fn a_photograph_is_taken_back_by_its_own_device_while_it_is_unfinished_only() {
    let mut bench = Bench::new().await;
    let bytes = photo(1);
    let digest = Digest::of(&bytes);
    let path = format!("/photos/{digest}");
    assert_eq!(call(&bench, "DELETE", &path, &[], b"").await.status, 404);
    bench.announce(digest, bytes.len(), VISIT).await;
    bench.piece(digest, 0, &bytes[..1000]).await;
    let own = std::mem::replace(&mut bench.token, bench.office.add_device("Phone two").unwrap());
    assert_eq!(call(&bench, "DELETE", &path, &[], b"").await.status, 403);
    bench.token = own;
    assert_eq!(call(&bench, "DELETE", &path, &[], b"").await.status, 204);
    assert_eq!(call(&bench, "HEAD", &path, &[], b"").await.status, 404);
    assert!(!bench.path("parts").join(format!("{digest}.part")).exists());
    bench.send_photo(&bytes, VISIT).await;
    let answer = call(&bench, "DELETE", &path, &[], b"").await;
    assert_eq!((answer.status.as_u16(), answer.json()["type"].as_str()), (409, Some("urn:coilside:problem:finished")));
    assert!(bench.is_safe(digest).await);
}

#[tokio::test]
async fn a_name_whose_bytes_a_power_failure_took_gets_no_receipt() {
    let bench = Bench::new().await;
    let bytes = photo(1);
    let digest = bench.send_photo(&bytes, VISIT).await;
    // What such a failure may leave: the name of the original, other bytes behind it, and no row that says 'safe'.
    let name = digest.to_string();
    std::fs::write(bench.path("photos").join(&name[..2]).join(&name), vec![0; bytes.len()]).unwrap();
    bench.db().execute("UPDATE photo SET safe_ms = NULL", []).unwrap();
    let bench = bench.reopened();
    assert!(!bench.is_safe(digest).await);
    assert_eq!(bench.progress(digest).await.0, "0");
    assert_eq!(bench.piece(digest, 0, &bytes).await.status, 204);
    assert!(bench.is_safe(digest).await);
}

#[tokio::test]
async fn many_photographs_at_once_all_become_safe() {
    let bench = Bench::new().await;
    let all = (0..24).map(|seed| {
        let bench = &bench;
        async move { bench.send_photo(&photo(seed), VISIT).await }
    });
    let mut waiting: Vec<_> = all.map(Box::pin).collect();
    let mut done = 0;
    // Driven side by side without another crate.
    std::future::poll_fn(|context| {
        waiting.retain_mut(|one| one.as_mut().poll(context).is_pending());
        done = 24 - waiting.len();
        if waiting.is_empty() { std::task::Poll::Ready(()) } else { std::task::Poll::Pending }
    })
    .await;
    assert_eq!((done, bench.count("photo WHERE safe_ms IS NOT NULL")), (24, 24));
}

#[tokio::test]
async fn of_a_sender_that_went_without_a_word_what_came_is_kept_and_its_place_is_free() {
    let bench = Bench::new().await;
    let bytes = photo(1);
    let digest = Digest::of(&bytes);
    bench.announce(digest, bytes.len(), VISIT).await;
    let request = bench.request("PATCH", &format!("/photos/{digest}")).header("tus-resumable", "1.0.0");
    let request = request.header("content-type", "application/offset+octet-stream").header("upload-offset", "0");
    let part = Bytes::copy_from_slice(&bytes[..77_777]);
    let request = request.body(Body::from_stream(ThenSilent(Some(part)))).unwrap();
    // The server drops a request whose sender is gone.
    let dropped = tokio::time::timeout(std::time::Duration::from_millis(500), bench.call(request)).await;
    assert!(dropped.is_err());
    let asked = async {
        loop {
            let answer = call(&bench, "HEAD", &format!("/photos/{digest}"), &[], b"").await;
            if answer.status == 200 {
                return answer.header("upload-offset").to_owned();
            }
            tokio::task::yield_now().await;
        }
    };
    let offset = tokio::time::timeout(std::time::Duration::from_secs(10), asked).await.unwrap();
    assert_eq!(offset, "77777");
    assert_eq!(bench.piece(digest, 77_777, &bytes[77_777..]).await.status, 204);
    assert!(bench.is_safe(digest).await);
}

/// One part, and then nothing more, nor an end.
struct ThenSilent(Option<Bytes>);

impl futures_core::Stream for ThenSilent {
    type Item = std::io::Result<Bytes>;

    fn poll_next(
        mut self: std::pin::Pin<&mut Self>,
        _: &mut std::task::Context<'_>,
    ) -> std::task::Poll<Option<Self::Item>> {
        self.0.take().map_or(std::task::Poll::Pending, |part| std::task::Poll::Ready(Some(Ok(part))))
    }
}

#[tokio::test]
async fn a_sender_that_did_not_hear_of_the_end_may_go_on_from_there_with_nothing() {
    let bench = Bench::new().await;
    let bytes = photo(1);
    let digest = bench.send_photo(&bytes, VISIT).await;
    let again = bench.piece(digest, bytes.len(), b"").await;
    assert_eq!((again.status.as_u16(), again.header("upload-offset")), (204, "200000"));
    let request = bench.request("PATCH", &format!("/photos/{digest}")).header("tus-resumable", "1.0.0");
    let request =
        request.header("content-type", "application/offset+octet-stream").header("upload-offset", bytes.len());
    let more = bench.call(request.header("content-length", "1").body(Body::from("x")).unwrap()).await;
    assert_eq!(more.status, 413);
    assert_eq!(bench.piece(digest, 0, &bytes).await.status, 409);
}
