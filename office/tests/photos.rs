//! Photographs survive broken lines and kills, and 'safe' is never said too early.

#[cfg(test)]
mod support;

use coilside_office::Digest;
use support::Bench;

const VISIT: &str = "visit-1";

fn photo() -> Vec<u8> {
    (0..100_000_u32).flat_map(|i| i.wrapping_mul(2_654_435_761).to_le_bytes()).collect()
}

#[tokio::test]
async fn a_photograph_comes_in_pieces_and_is_kept_to_the_byte() {
    let bench = Bench::new().await;
    let bytes = photo();
    let digest = Digest::of(&bytes);
    let announced = bench.announce(digest, bytes.len(), VISIT).await;
    assert_eq!((announced.status.as_u16(), announced.header("tus-resumable")), (201, "1.0.0"));
    assert_eq!(announced.header("location"), format!("/api/v1/photos/{digest}"));
    assert_eq!(bench.progress(digest).await, ("0".into(), "400000".into()));
    let first = bench.piece(digest, 0, &bytes[..150_000]).await;
    assert_eq!((first.status.as_u16(), first.header("upload-offset")), (204, "150000"));
    assert!(!bench.is_safe(digest).await);
    let rest = bench.piece(digest, 150_000, &bytes[150_000..]).await;
    assert_eq!((rest.status.as_u16(), rest.header("upload-offset")), (204, "400000"));
    assert!(bench.is_safe(digest).await);
    let name = digest.to_string();
    assert_eq!(std::fs::read(bench.path("photos").join(&name[..2]).join(&name)).unwrap(), bytes);
}

#[tokio::test]
async fn announcing_again_changes_nothing_before_and_after_it_came() {
    let bench = Bench::new().await;
    let bytes = photo();
    let digest = Digest::of(&bytes);
    bench.announce(digest, bytes.len(), VISIT).await;
    bench.piece(digest, 0, &bytes[..10]).await;
    assert_eq!(bench.announce(digest, bytes.len(), VISIT).await.status, 201);
    assert_eq!(bench.progress(digest).await.0, "10");
    bench.piece(digest, 10, &bytes[10..]).await;
    assert_eq!(bench.announce(digest, bytes.len(), VISIT).await.status, 201);
    assert_eq!(bench.progress(digest).await, ("400000".into(), "400000".into()));
    assert!(bench.is_safe(digest).await);
}

#[tokio::test]
async fn a_wrong_offset_is_refused_with_the_right_one() {
    let bench = Bench::new().await;
    let bytes = photo();
    let digest = Digest::of(&bytes);
    bench.announce(digest, bytes.len(), VISIT).await;
    bench.piece(digest, 0, &bytes[..1000]).await;
    for wrong in [0, 999, 1001] {
        let answer = bench.piece(digest, wrong, &bytes[wrong..2000]).await;
        assert_eq!((answer.status.as_u16(), answer.header("upload-offset")), (409, "1000"), "{wrong}");
    }
    assert_eq!(bench.progress(digest).await.0, "1000");
}

#[tokio::test]
async fn bytes_of_another_photograph_are_set_aside_and_the_right_ones_can_follow() {
    let bench = Bench::new().await;
    let (bytes, mut wrong) = (photo(), photo());
    wrong[77] ^= 1;
    let digest = Digest::of(&bytes);
    bench.announce(digest, bytes.len(), VISIT).await;
    let answer = bench.piece(digest, 0, &wrong).await;
    // tus 1.0.0, extension checksum: 460 Checksum Mismatch.
    assert_eq!((answer.status.as_u16(), answer.json()["type"].as_str()), (460, Some("urn:coilside:problem:digest")));
    assert!(!bench.is_safe(digest).await);
    let aside: Vec<_> = std::fs::read_dir(bench.path("aside")).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert_eq!(aside.len(), 1);
    assert_eq!(std::fs::read(&aside[0]).unwrap(), wrong);
    assert_eq!(bench.progress(digest).await.0, "0");
    assert_eq!(bench.piece(digest, 0, &bytes).await.status, 204);
    assert!(bench.is_safe(digest).await);
}

#[tokio::test]
async fn a_kill_in_mid_upload_resumes_at_the_byte_that_came() {
    let bench = Bench::new().await;
    let bytes = photo();
    let digest = Digest::of(&bytes);
    bench.announce(digest, bytes.len(), VISIT).await;
    // What a killed office leaves: bytes in the part file that no answer ever acknowledged.
    std::fs::write(bench.path("parts").join(format!("{digest}.part")), &bytes[..123_457]).unwrap();
    let bench = bench.reopened();
    assert_eq!(bench.progress(digest).await.0, "123457");
    assert_eq!(bench.piece(digest, 123_457, &bytes[123_457..]).await.status, 204);
    assert!(bench.is_safe(digest).await);
}

#[tokio::test]
async fn a_kill_after_the_last_byte_is_finished_at_the_next_question() {
    let bytes = photo();
    let digest = Digest::of(&bytes);
    for ask_receipt_first in [true, false] {
        let bench = Bench::new().await;
        bench.announce(digest, bytes.len(), VISIT).await;
        std::fs::write(bench.path("parts").join(format!("{digest}.part")), &bytes).unwrap();
        let bench = bench.reopened();
        if !ask_receipt_first {
            assert_eq!(bench.progress(digest).await.0, "400000");
        }
        assert!(bench.is_safe(digest).await);
    }
}

#[tokio::test]
async fn a_kill_between_renaming_and_the_row_is_finished_too() {
    let bench = Bench::new().await;
    let bytes = photo();
    let digest = bench.send_photo(&bytes, VISIT).await;
    let db = bench.db();
    db.execute("UPDATE photo SET safe_ms = NULL", []).unwrap();
    let bench = bench.reopened();
    assert_eq!(bench.progress(digest).await.0, "400000");
    assert!(bench.is_safe(digest).await);
}

#[tokio::test]
async fn a_receipt_is_not_given_for_a_file_that_is_gone() {
    let bench = Bench::new().await;
    let digest = bench.send_photo(&photo(), VISIT).await;
    let name = digest.to_string();
    std::fs::remove_file(bench.path("photos").join(&name[..2]).join(&name)).unwrap();
    assert!(!bench.is_safe(digest).await);
}

#[tokio::test]
async fn a_receipt_is_not_given_for_what_was_never_announced() {
    let bench = Bench::new().await;
    assert!(!bench.is_safe(Digest::of(b"never seen")).await);
}

#[tokio::test]
async fn a_photograph_of_no_bytes_or_too_many_is_refused() {
    let bench = Bench::new().await;
    let limit = 60 * 1024 * 1024;
    for (length, status) in [(0, 413), (1, 201), (limit + 1, 413)] {
        let digest = Digest::of(&length.to_string().into_bytes());
        assert_eq!(bench.announce(digest, length, VISIT).await.status, status, "{length}");
    }
}

#[tokio::test]
async fn more_bytes_than_announced_are_refused_and_do_no_harm() {
    let bench = Bench::new().await;
    let bytes = photo();
    let digest = Digest::of(&bytes);
    bench.announce(digest, bytes.len(), VISIT).await;
    let more = [bytes.as_slice(), b"!"].concat();
    assert_eq!(bench.piece(digest, 0, &more).await.status, 413);
    assert_eq!(bench.piece(digest, 0, &bytes).await.status, 204);
    assert!(bench.is_safe(digest).await);
}

#[tokio::test]
async fn a_piece_of_an_unannounced_photograph_or_of_another_kind_is_refused() {
    let bench = Bench::new().await;
    let digest = Digest::of(b"x");
    assert_eq!(bench.piece(digest, 0, b"x").await.status, 404);
    bench.announce(digest, 1, VISIT).await;
    let request = bench.request("PATCH", &format!("/photos/{digest}")).header("upload-offset", 0);
    let request = request.header("tus-resumable", "1.0.0").header("content-type", "image/jpeg");
    assert_eq!(bench.call(request.body("x".into()).unwrap()).await.status, 415);
}

#[tokio::test]
async fn two_pieces_at_once_do_not_mix() {
    let bench = Bench::new().await;
    let bytes = photo();
    let digest = Digest::of(&bytes);
    bench.announce(digest, bytes.len(), VISIT).await;
    let part =
        std::fs::File::options().append(true).create(true).open(bench.path("parts").join(format!("{digest}.part")));
    let part = part.unwrap();
    part.lock().unwrap();
    let answer = bench.piece(digest, 0, &bytes).await;
    assert_eq!((answer.status.as_u16(), answer.header("retry-after")), (503, "1"));
    part.unlock().unwrap();
    assert_eq!(bench.piece(digest, 0, &bytes).await.status, 204);
}
