//! Photographs: tus 1.0.0, core protocol and creation, with the SHA-256 as the upload's name.

use std::time::Duration;

use axum::Json;
use axum::body::Body;
use axum::extract::{Path, State};
use axum::http::header::{CONTENT_LENGTH, CONTENT_TYPE, LOCATION};
use axum::http::{HeaderMap, HeaderName, HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};
use http_body_util::BodyExt as _;
use tokio::io::AsyncWriteExt as _;

use super::Answer;
use crate::app::receive_photo::{self, PhotoError, Piece};
use crate::http::blocking::on_disk;
use crate::http::caller::Caller;
use crate::http::refusal::Refusal;
use crate::ids::Digest;
use crate::office::Office;
use crate::store::StoreError;
use crate::wire::ReceiptOut;
use crate::wire::tus::{Announced, BODY_TYPE, PHOTO_BYTES_MAX, VERSION};

const RESUMABLE: HeaderName = HeaderName::from_static("tus-resumable");
const SPOKEN: HeaderName = HeaderName::from_static("tus-version");
const EXTENSION: HeaderName = HeaderName::from_static("tus-extension");
const MAX_SIZE: HeaderName = HeaderName::from_static("tus-max-size");
const LENGTH: HeaderName = HeaderName::from_static("upload-length");
const OFFSET: HeaderName = HeaderName::from_static("upload-offset");
const METADATA: HeaderName = HeaderName::from_static("upload-metadata");

/// A device that says nothing for this long is gone; its lock must not keep it out when it comes back.
const SILENCE_MAX: Duration = Duration::from_secs(20);

/// What this server can do, for any tus client that asks.
pub(super) async fn abilities() -> Response {
    let headers = [
        (SPOKEN, HeaderValue::from_static(VERSION)),
        (EXTENSION, HeaderValue::from_static("creation")),
        (MAX_SIZE, HeaderValue::from(PHOTO_BYTES_MAX)),
    ];
    tus((StatusCode::NO_CONTENT, headers))
}

pub(super) async fn announce(
    State(office): State<Office>,
    Caller(device): Caller,
    headers: HeaderMap,
) -> Result<Response, Refusal> {
    speak_our_version(&headers)?;
    let length = number(&headers, &LENGTH)?;
    let metadata = headers.get(METADATA).and_then(|value| value.to_str().ok()).unwrap_or_default();
    let announced = Announced::read(metadata)
        .map_err(|why| Refusal::stuck(400, "metadata", "The photograph cannot be announced", why))?;
    let location = format!("/api/v1/photos/{}", announced.digest);
    on_disk(&office, move |store, now_ms| receive_photo::announce(store, device.id, &announced, length, now_ms))
        .await?;
    Ok(tus((StatusCode::CREATED, [(LOCATION, location)])))
}

pub(super) async fn progress(
    State(office): State<Office>,
    _: Caller,
    Path(digest): Path<String>,
    headers: HeaderMap,
) -> Result<Response, Refusal> {
    speak_our_version(&headers)?;
    let digest = name(&digest)?;
    let at = on_disk(&office, move |store, now_ms| receive_photo::progress(store, digest, now_ms)).await?;
    let headers = [(OFFSET, HeaderValue::from(at.offset)), (LENGTH, HeaderValue::from(at.length))];
    Ok(tus((StatusCode::OK, headers)))
}

pub(super) async fn piece(
    State(office): State<Office>,
    _: Caller,
    Path(digest): Path<String>,
    headers: HeaderMap,
    body: Body,
) -> Result<Response, Refusal> {
    speak_our_version(&headers)?;
    let digest = name(&digest)?;
    if headers.get(CONTENT_TYPE).is_none_or(|kind| kind != BODY_TYPE) {
        let detail = format!("the Content-Type of a piece is '{BODY_TYPE}'");
        return Err(Refusal::stuck(415, "content-type", "The piece cannot be read", detail));
    }
    let offset = number(&headers, &OFFSET)?;
    let piece = on_disk(&office, move |store, now_ms| receive_photo::begin(store, digest, offset, now_ms)).await?;
    if headers.contains_key(CONTENT_LENGTH) && number(&headers, &CONTENT_LENGTH)? > piece.room {
        return Err(PhotoError::Beyond.into());
    }
    let (file, came) = append(piece, body).await;
    // What came is kept, whether or not all of it came: the next attempt goes on from there.
    let end = on_disk(&office, move |store, now_ms| receive_photo::end(store, digest, file, now_ms)).await;
    came?;
    Ok(tus((StatusCode::NO_CONTENT, [(OFFSET, HeaderValue::from(end?))])))
}

pub(super) async fn receipt(State(office): State<Office>, _: Caller, Path(digest): Path<String>) -> Answer<ReceiptOut> {
    let digest = name(&digest)?;
    let safe = on_disk(&office, move |store, now_ms| receive_photo::is_safe(store, digest, now_ms)).await?;
    Ok((StatusCode::OK, Json(ReceiptOut { digest: digest.to_string(), safe })))
}

/// Writes the body to the part as it comes. Gives the file back in every case, and how it went.
async fn append(piece: Piece, mut body: Body) -> (std::fs::File, Result<(), Refusal>) {
    let Piece { file, mut room } = piece;
    let mut file = tokio::fs::File::from_std(file);
    let result = loop {
        let frame = match tokio::time::timeout(SILENCE_MAX, body.frame()).await {
            Ok(None) => break Ok(()),
            Ok(Some(Ok(frame))) => frame,
            Ok(Some(Err(_))) | Err(_) => {
                let detail = "the line broke; ask with HEAD how far it came, and go on from there";
                break Err(Refusal::later("line", "The piece did not come whole", detail, 1));
            }
        };
        let Ok(bytes) = frame.into_data() else { continue };
        let Some(rest) = room.checked_sub(bytes.len() as u64) else { break Err(PhotoError::Beyond.into()) };
        room = rest;
        if let Err(source) = file.write_all(&bytes).await {
            break Err(StoreError::File { doing: "written", path: "parts".into(), source }.into());
        }
    };
    // `flush` waits for the last write; its failure is one of writing.
    let flushed = file
        .flush()
        .await
        .map_err(|source| Refusal::from(StoreError::File { doing: "written", path: "parts".into(), source }));
    (file.into_std().await, result.and(flushed))
}

/// Every answer of the protocol names its version.
fn tus(parts: impl IntoResponse) -> Response {
    let mut answer = parts.into_response();
    answer.headers_mut().insert(RESUMABLE, HeaderValue::from_static(VERSION));
    answer
}

/// A client of another version must not be half understood. One that names none is taken at its word.
fn speak_our_version(headers: &HeaderMap) -> Result<(), Refusal> {
    if headers.get(RESUMABLE).is_none_or(|version| version == VERSION) {
        return Ok(());
    }
    Err(Refusal::stuck(
        412,
        "tus-version",
        "The upload's version is not known",
        format!("this office speaks {VERSION}"),
    ))
}

fn number(headers: &HeaderMap, name: &HeaderName) -> Result<u64, Refusal> {
    let text = headers.get(name).and_then(|value| value.to_str().ok());
    // `u64` alone would read a sign too.
    let digits = text.filter(|text| text.bytes().all(|b| b.is_ascii_digit()));
    digits.and_then(|text| text.parse().ok()).ok_or_else(|| {
        Refusal::stuck(400, "header", "A header cannot be read", format!("'{name}' should be a number of bytes"))
    })
}

fn name(digest: &str) -> Result<Digest, Refusal> {
    Digest::parse(digest).map_err(|why| Refusal::stuck(404, "photo", "There is no such photograph", why))
}
