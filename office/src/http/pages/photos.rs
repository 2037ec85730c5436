//! Photographs for those who are signed in: previews to look at, originals to download.

use axum::extract::{Path, State};
use axum::http::HeaderValue;
use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse as _, Response};

use super::visitor::{SignedIn, Visitor};
use super::{Page, PageError};
use crate::app::customer;
use crate::app::preview::{self, PreviewError};
use crate::http::blocking::on_disk;
use crate::http::refusal::Refusal;
use crate::ids::Digest;
use crate::office::Office;
use crate::store::folder::failed;
use crate::store::{StoreError, photos};

impl From<PreviewError> for Refusal {
    fn from(error: PreviewError) -> Self {
        let refuse = |status, kind| Refusal::stuck(status, kind, "The photograph cannot be shown", &error);
        match error {
            PreviewError::NotHere => refuse(404, "not-here"),
            PreviewError::NotShown(_) | PreviewError::TooLarge => refuse(415, "not-shown"),
            PreviewError::Store(store) => store.into(),
        }
    }
}

pub(super) async fn preview(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Path(digest): Path<String>,
) -> Page {
    let digest = Digest::parse(&digest).map_err(|_| PageError::Missing(visitor))?;
    let (jpeg, is_final) = on_disk(&office, move |store, _| preview::shown(store, digest)).await?;
    let mut answer = picture(jpeg);
    if !is_final {
        answer.headers_mut().insert(CACHE_CONTROL, HeaderValue::from_static("no-store"));
    }
    Ok(answer)
}

/// A preview as an answer. Its bytes never change, but they are not for caches that others share.
pub(super) fn picture(jpeg: Vec<u8>) -> Response {
    let headers = [(CONTENT_TYPE, "image/jpeg"), (CACHE_CONTROL, "private, max-age=31536000, immutable")];
    (headers, jpeg).into_response()
}

pub(super) async fn original(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Path(digest): Path<String>,
) -> Page {
    let missing = |visitor: &Visitor| PageError::Missing(visitor.clone());
    let digest = Digest::parse(&digest).map_err(|_| missing(&visitor))?;
    let found = on_disk(&office, move |store, _| -> Result<_, StoreError> {
        let withheld = store.read(|db| customer::is_withheld(db, digest))?;
        let photo = store.read(|db| photos::of(db, digest))?.filter(|photo| photo.safe && !withheld);
        let path = store.folder.original(digest);
        photo.map(|photo| Ok((photo.media, std::fs::read(&path).map_err(|e| failed("read", &path, e))?))).transpose()
    });
    let (media, bytes) = found.await?.ok_or_else(|| missing(&visitor))?;
    // A device chose the media type, so only pictures keep theirs; and all are handed out as files, never as pages.
    let (media, ending) = match media.as_str() {
        "image/jpeg" => ("image/jpeg", "jpg"),
        "image/png" => ("image/png", "png"),
        "image/webp" => ("image/webp", "webp"),
        "image/heic" => ("image/heic", "heic"),
        _ => ("application/octet-stream", "bin"),
    };
    let name = format!("attachment; filename=\"{digest}.{ending}\"");
    let headers = [
        (CONTENT_TYPE, media.to_owned()),
        (CONTENT_DISPOSITION, name),
        (CACHE_CONTROL, "private, max-age=31536000, immutable".to_owned()),
    ];
    Ok((headers, bytes).into_response())
}
