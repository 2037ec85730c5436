//! Photographs: tus 1.0.0 with creation, checksum, expiration and termination; the SHA-256 is the upload's name.

use std::time::Duration;

use axum::body::Body;
use axum::extract::State;
use axum::http::header::{CACHE_CONTROL, CONTENT_LENGTH, CONTENT_TYPE, LOCATION};
use axum::http::{HeaderMap, HeaderName, HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};
use bytes::Bytes;
use http_body_util::BodyExt as _;

use super::Answer;
use super::body::{Named, Whole};
use super::silence::Silence;
use crate::app::preview;
use crate::app::receive_photo::{self, Begun, Incoming, PhotoError, Progress};
use crate::http::blocking::on_disk;
use crate::http::caller::{Caller, Credentials};
use crate::http::refusal::Refusal;
use crate::ids::Digest;
use crate::office::Office;
use crate::wire::problem::Problem;
use crate::wire::tus::{Announced, BODY_TYPE, CHECKSUMS, Checksum, EXTENSIONS, PHOTO_BYTES_MAX, VERSION, http_date};
use crate::wire::{ReceiptOut, digest_field};

const RESUMABLE: HeaderName = HeaderName::from_static("tus-resumable");
const SPOKEN: HeaderName = HeaderName::from_static("tus-version");
const EXTENSION: HeaderName = HeaderName::from_static("tus-extension");
const CHECKSUM_KINDS: HeaderName = HeaderName::from_static("tus-checksum-algorithm");
const MAX_SIZE: HeaderName = HeaderName::from_static("tus-max-size");
const LENGTH: HeaderName = HeaderName::from_static("upload-length");
const OFFSET: HeaderName = HeaderName::from_static("upload-offset");
const METADATA: HeaderName = HeaderName::from_static("upload-metadata");
const CHECKSUM: HeaderName = HeaderName::from_static("upload-checksum");
const EXPIRES: HeaderName = HeaderName::from_static("upload-expires");
/// RFC 9530.
pub(super) const REPR_DIGEST: HeaderName = HeaderName::from_static("repr-digest");

/// A device that says nothing for this long is gone; its lock must not keep it out when it comes back.
const SILENCE_MAX: Duration = Duration::from_secs(20);

/// Photographs that arrive within this long are put onto the disk together: fewer waits for it, and less work.
const TOGETHER: Duration = Duration::from_millis(30);

/// The most bytes of a small picture that is sent ahead.
const AHEAD_BYTES_MAX: usize = 2 * 1024 * 1024;

/// A refused piece is read on for so many bytes, so that its sender gets to read why.
const REFUSED_BYTES_MAX: u64 = 4 * 1024 * 1024;

/// What this server can do, for any tus client that asks.
#[utoipa::path(
    options, path = "/photos", tag = "photographs", security(()),
    responses((status = 204, description = "`Tus-Version`, `Tus-Extension`, `Tus-Checksum-Algorithm`, `Tus-Max-Size`."))
)]
pub(super) async fn abilities() -> Response {
    let headers = [
        (EXTENSION, HeaderValue::from_static(EXTENSIONS)),
        (CHECKSUM_KINDS, HeaderValue::from_static(CHECKSUMS)),
        (MAX_SIZE, HeaderValue::from(PHOTO_BYTES_MAX)),
        (SPOKEN, HeaderValue::from_static(VERSION)),
    ];
    (StatusCode::NO_CONTENT, headers).into_response()
}

/// Announce a photograph. Its SHA-256 stands in `Upload-Metadata` as `sha256`, or in `Repr-Digest`.
#[utoipa::path(
    post, path = "/photos", tag = "photographs", security(("device" = [])),
    params(
        ("Tus-Resumable" = String, Header, description = "1.0.0"),
        ("Upload-Length" = u64, Header, description = "Bytes in all."),
        ("Upload-Metadata" = Option<String>, Header, description = "`sha256`, `visit`, `media` (or `filetype`), each in base64."),
        ("Repr-Digest" = Option<String>, Header, description = "RFC 9530: sha-256. May stand in for `sha256`."),
    ),
    responses(
        (status = 201, description = "`Location` to send it to; `Upload-Expires`, when it is given up unless it is whole by then."),
        (status = 400, description = "`header`, `metadata`.", body = Problem, content_type = "application/problem+json"),
        (status = 409, description = "`other-length`: announced with another length.", body = Problem, content_type = "application/problem+json"),
        (status = 412, description = "`tus-version`.", body = Problem, content_type = "application/problem+json"),
        (status = 413, description = "`length`: no bytes, or too many.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn announce(State(office): State<Office>, headers: HeaderMap) -> Result<Response, Refusal> {
    let credentials = Credentials::of(&headers);
    let text = |name| headers.get(name).and_then(|value: &HeaderValue| value.to_str().ok());
    let announced = Announced::read(text(METADATA).unwrap_or_default(), text(REPR_DIGEST))
        .map_err(|why| Refusal::stuck(400, "metadata", "The photograph cannot be announced", why));
    let length = number(&headers, &LENGTH);
    let version = our_version(&headers);
    let made = on_disk(&office, move |store, now_ms| -> Result<_, Refusal> {
        let device = credentials.device(store, now_ms)?;
        version?;
        let (length, announced) = (length?, announced?);
        let expires_ms = receive_photo::announce(store, device.id, &announced, length, now_ms)?;
        Ok((announced.digest, expires_ms))
    });
    let (digest, expires_ms) = made.await?;
    let mut answer = (StatusCode::CREATED, [(LOCATION, format!("/api/v1/photos/{digest}"))]).into_response();
    tell_end(&mut answer, expires_ms);
    Ok(answer)
}

/// Ask how far a photograph has come.
#[utoipa::path(
    head, path = "/photos/{digest}", tag = "photographs", security(("device" = [])),
    params(
        ("digest" = String, Path, description = "SHA-256, 64 lower-case hexadecimal digits."),
        ("Tus-Resumable" = String, Header, description = "1.0.0"),
    ),
    responses(
        (status = 200, description = "`Upload-Offset`, `Upload-Length`; `Upload-Expires` while it is not whole. An offset is no receipt."),
        (status = 404, description = "It was not announced, or was given up. No `Upload-Offset`."),
        (status = 412, description = "Another version than 1.0.0."),
    )
)]
pub(super) async fn progress(
    State(office): State<Office>,
    _: Caller,
    Named(digest): Named,
    headers: HeaderMap,
) -> Result<Response, Refusal> {
    our_version(&headers)?;
    let digest = name(&digest)?;
    let at = on_disk(&office, move |store, now_ms| receive_photo::progress(store, digest, now_ms)).await?;
    let headers = [
        (OFFSET, HeaderValue::from(at.offset)),
        (LENGTH, HeaderValue::from(at.length)),
        (CACHE_CONTROL, HeaderValue::from_static("no-store")),
    ];
    let mut answer = (StatusCode::OK, headers).into_response();
    tell_end(&mut answer, at.expires_ms);
    Ok(answer)
}

/// Send a piece. What came of one that broke off is kept, and the next one goes on from there.
#[utoipa::path(
    patch, path = "/photos/{digest}", tag = "photographs", security(("device" = [])),
    request_body(content_type = "application/offset+octet-stream", content = Vec<u8>),
    params(
        ("digest" = String, Path, description = "SHA-256, 64 lower-case hexadecimal digits."),
        ("Tus-Resumable" = String, Header, description = "1.0.0"),
        ("Upload-Offset" = u64, Header, description = "Where the piece begins: as many bytes as the office has."),
        ("Upload-Checksum" = Option<String>, Header, description = "`sha1` or `sha256`, a space, and the piece's checksum in base64."),
    ),
    responses(
        (status = 204, description = "`Upload-Offset`, how far it is now; `Upload-Expires` while it is not whole."),
        (status = 400, description = "`header`, `checksum-kind`.", body = Problem, content_type = "application/problem+json"),
        (status = 404, description = "`not-announced`, `photo`: it was not announced, or was given up.", body = Problem, content_type = "application/problem+json"),
        (status = 409, description = "`offset`: go on from `Upload-Offset`.", body = Problem, content_type = "application/problem+json"),
        (status = 412, description = "`tus-version`.", body = Problem, content_type = "application/problem+json"),
        (status = 413, description = "`length`: beyond the announced length.", body = Problem, content_type = "application/problem+json"),
        (status = 415, description = "`content-type`.", body = Problem, content_type = "application/problem+json"),
        (status = 460, description = "`checksum`: nothing of the piece was kept. `digest`: all bytes are here and are another photograph; they are set aside, begin anew.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn piece(
    State(office): State<Office>,
    Named(digest): Named,
    headers: HeaderMap,
    mut body: Body,
) -> Result<Response, Refusal> {
    let credentials = Credentials::of(&headers);
    let asked = Asked::of(&digest, &headers);
    let begun = on_disk(&office, move |store, now_ms| -> Result<_, Refusal> {
        credentials.device(store, now_ms)?;
        let Asked { digest, at, checksum } = asked?;
        Ok(receive_photo::begin(store, digest, at, checksum, now_ms)?)
    });
    let taken = match begun.await {
        Ok(Begun::Whole(progress)) => Ok(progress),
        Ok(Begun::Piece(incoming)) => take(&mut body, Taking::new(&office, incoming)).await,
        Err(refusal) => Err(refusal),
    };
    if taken.is_err() {
        read_on(&mut body).await;
    }
    let Progress { offset, expires_ms, .. } = taken?;
    let mut answer = (StatusCode::NO_CONTENT, [(OFFSET, HeaderValue::from(offset))]).into_response();
    tell_end(&mut answer, expires_ms);
    Ok(answer)
}

/// Take back a photograph that has not come as a whole.
#[utoipa::path(
    delete, path = "/photos/{digest}", tag = "photographs", security(("device" = [])),
    params(
        ("digest" = String, Path, description = "SHA-256, 64 lower-case hexadecimal digits."),
        ("Tus-Resumable" = String, Header, description = "1.0.0"),
    ),
    responses(
        (status = 204, description = "It is forgotten."),
        (status = 403, description = "`another-device`: another device announced it.", body = Problem, content_type = "application/problem+json"),
        (status = 404, description = "`not-announced`, `photo`.", body = Problem, content_type = "application/problem+json"),
        (status = 409, description = "`finished`: it is here as a whole, and stays.", body = Problem, content_type = "application/problem+json"),
        (status = 412, description = "`tus-version`.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn take_back(
    State(office): State<Office>,
    Caller(device): Caller,
    Named(digest): Named,
    headers: HeaderMap,
) -> Result<Response, Refusal> {
    our_version(&headers)?;
    let digest = name(&digest)?;
    on_disk(&office, move |store, now_ms| receive_photo::take_back(store, device.id, digest, now_ms)).await?;
    Ok(StatusCode::NO_CONTENT.into_response())
}

/// Show a photograph's small picture ahead of it, a JPEG. It makes nothing safe: the office shows it until the photograph is here.
#[utoipa::path(
    put, path = "/photos/{digest}/preview", tag = "photographs", security(("device" = [])),
    request_body(content_type = "image/jpeg", content = Vec<u8>),
    params(("digest" = String, Path, description = "The photograph's SHA-256, 64 lower-case hexadecimal digits.")),
    responses(
        (status = 204, description = "It is shown, or is not wanted: the photograph is here."),
        (status = 404, description = "`photo`: no such digest.", body = Problem, content_type = "application/problem+json"),
        (status = 413, description = "`length`: more than two megabytes.", body = Problem, content_type = "application/problem+json"),
        (status = 415, description = "`not-shown`: no JPEG that can be shown.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn ahead(
    State(office): State<Office>,
    _: Caller,
    Named(digest): Named,
    Whole(jpeg): Whole,
) -> Result<Response, Refusal> {
    let digest = name(&digest)?;
    if jpeg.len() > AHEAD_BYTES_MAX {
        let detail = format!("a small picture has at most {AHEAD_BYTES_MAX} bytes");
        return Err(Refusal::stuck(413, "length", "The small picture is too large", detail));
    }
    on_disk(&office, move |store, _| preview::keep_sent_ahead(store, digest, &jpeg)).await?;
    Ok(StatusCode::NO_CONTENT.into_response())
}

/// Whether a photograph is safe. Only this lets a device delete it.
#[utoipa::path(
    get, path = "/photos/{digest}/receipt", tag = "photographs", security(("device" = [])),
    params(("digest" = String, Path, description = "SHA-256, 64 lower-case hexadecimal digits.")),
    responses(
        (status = 200, body = ReceiptOut),
        (status = 404, description = "`photo`: no such digest.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn receipt(State(office): State<Office>, _: Caller, Named(digest): Named) -> Answer<ReceiptOut> {
    let digest = name(&digest)?;
    let safe = on_disk(&office, move |store, now_ms| receive_photo::is_safe(store, digest, now_ms)).await?;
    let repr_digest = digest_field::write(digest);
    Ok((StatusCode::OK, axum::Json(ReceiptOut { digest: digest.to_string(), safe, repr_digest })))
}

/// Every answer of the protocol names its version, and one that it cannot speak those that it can.
pub(super) async fn speak(mut answer: Response) -> Response {
    let (missing, headers) = (answer.status() == StatusCode::PRECONDITION_FAILED, answer.headers_mut());
    headers.insert(RESUMABLE, HeaderValue::from_static(VERSION));
    if missing {
        headers.insert(SPOKEN, HeaderValue::from_static(VERSION));
    }
    answer
}

/// What a PATCH asks for.
struct Asked {
    digest: Digest,
    /// Where the piece begins, and how many bytes it says to have.
    at: (u64, Option<u64>),
    checksum: Option<Checksum>,
}

impl Asked {
    fn of(digest: &str, headers: &HeaderMap) -> Result<Self, Refusal> {
        our_version(headers)?;
        let digest = name(digest)?;
        if headers.get(CONTENT_TYPE).is_none_or(|kind| kind != BODY_TYPE) {
            let detail = format!("the Content-Type of a piece is '{BODY_TYPE}'");
            return Err(Refusal::stuck(415, "content-type", "The piece cannot be read", detail));
        }
        let bytes = headers.contains_key(CONTENT_LENGTH).then(|| number(headers, &CONTENT_LENGTH)).transpose()?;
        let checksum = headers.get(CHECKSUM).map(|value| {
            let read = value.to_str().ok().and_then(|text| Checksum::read(text).ok());
            read.ok_or_else(|| {
                let detail = format!("Upload-Checksum is one of {CHECKSUMS}, a space, and the checksum in base64");
                Refusal::stuck(400, "checksum-kind", "The piece cannot be checked", detail)
            })
        });
        Ok(Self { digest, at: (number(headers, &OFFSET)?, bytes), checksum: checksum.transpose()? })
    }
}

/// Reads a piece until it ends, breaks off or cannot be kept. Each part is hashed and written where it was read: a part is small,
/// its write ends in the system's memory, and every change of threads would cost as much as the part itself.
async fn take(body: &mut Body, mut taking: Taking) -> Result<Progress, Refusal> {
    let mut silence = Silence::of_at_most(SILENCE_MAX);
    loop {
        match silence.or(body.frame()).await {
            Some(Some(Ok(frame))) => {
                let kept = frame.into_data().map_or(Ok(()), |bytes| taking.take(bytes));
                if let Err(error) = kept {
                    // What came before it is kept.
                    let _ = taking.end(false).await;
                    return Err(error.into());
                }
            }
            Some(None) => return taking.end(true).await,
            Some(Some(Err(_))) | None => {
                taking.end(false).await?;
                let detail = "the line broke; ask with HEAD how far it came, and go on from there";
                return Err(Refusal::later("line", "The piece did not come whole", detail, 1));
            }
        }
    }
}

/// A piece that is being taken. However it ends, also when nobody waits for the answer any more, what came is put away.
struct Taking {
    office: Office,
    incoming: Option<Box<Incoming>>,
}

impl Taking {
    fn new(office: &Office, incoming: Box<Incoming>) -> Self {
        Self { office: office.clone(), incoming: Some(incoming) }
    }

    fn take(&mut self, bytes: Bytes) -> Result<(), PhotoError> {
        self.incoming.as_mut().map_or(Ok(()), |incoming| incoming.take(bytes))
    }

    /// Ends it; `whole` tells that all of it came.
    async fn end(mut self, whole: bool) -> Result<Progress, Refusal> {
        let Some(incoming) = self.incoming.take() else { return Err(Refusal::broken()) };
        put_away(&self.office, incoming, whole).await
    }
}

impl Drop for Taking {
    fn drop(&mut self) {
        // Where the program is just ending no runtime may be left: then the part is what it is, and is gone on from.
        if let (Some(incoming), Ok(runtime)) = (self.incoming.take(), tokio::runtime::Handle::try_current()) {
            let away = put_away(&self.office, incoming, false);
            runtime.spawn(async move { drop(away.await) });
        }
    }
}

/// Puts what came of a piece away. A photograph that is whole by then goes onto the disk behind the answer, which is no receipt;
/// that one waits for it.
fn put_away(
    office: &Office,
    incoming: Box<Incoming>,
    whole: bool,
) -> impl Future<Output = Result<Progress, Refusal>> + Send + 'static {
    let office = office.clone();
    async move {
        let progress = if whole && incoming.is_right() {
            incoming.end(&office.store, whole, office.now_ms())?
        } else {
            on_disk(&office, move |store, now_ms| incoming.end(store, whole, now_ms)).await?
        };
        if office.store.calls_for_keeping() {
            tokio::spawn(keep_soon(office));
        }
        Ok(progress)
    }
}

/// Puts what arrived onto the disk, together with what comes in the next moment. Nobody waits for that moment: whoever asks for a
/// receipt meanwhile sees to it himself.
async fn keep_soon(office: Office) {
    tokio::time::sleep(TOGETHER).await;
    drop(tokio::task::spawn_blocking(move || office.store.keep_waiting()));
}

/// Reads some more of a piece that was refused: many senders look for an answer only after their last byte.
async fn read_on(body: &mut Body) {
    let mut left = REFUSED_BYTES_MAX;
    while let Ok(Some(Ok(frame))) = tokio::time::timeout(Duration::from_secs(2), body.frame()).await {
        left = left.saturating_sub(frame.data_ref().map_or(0, |bytes| bytes.len() as u64));
        if left == 0 {
            return;
        }
    }
}

fn tell_end(answer: &mut Response, expires_ms: Option<i64>) {
    let value = expires_ms.and_then(http_date).and_then(|date| HeaderValue::from_str(&date).ok());
    if let Some(value) = value {
        answer.headers_mut().insert(EXPIRES, value);
    }
}

/// A client of another version must not be half understood, nor one that names none.
fn our_version(headers: &HeaderMap) -> Result<(), Refusal> {
    if headers.get(RESUMABLE).is_some_and(|version| version == VERSION) {
        return Ok(());
    }
    let detail = format!("this office speaks {VERSION}; say so in 'Tus-Resumable'");
    Err(Refusal::stuck(412, "tus-version", "The upload's version is not known", detail))
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
