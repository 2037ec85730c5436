//! A visit's record file, to be downloaded by those who are signed in.

use std::io::{self, Write};

use axum::extract::{Path, State};
use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::IntoResponse as _;

use super::visitor::SignedIn;
use super::{Page, PageError};
use crate::app::export_record::{ExportError, export};
use crate::http::blocking::on_disk;
use crate::http::refusal::Refusal;
use crate::ids::VisitId;
use crate::office::Office;

/// The most bytes of a record that is put together for a browser; the program writes longer ones.
const RECORD_BYTES_MAX: usize = 512 << 20;

impl From<ExportError> for Refusal {
    fn from(error: ExportError) -> Self {
        let refuse = |status, kind| Refusal::stuck(status, kind, "The record was not made", &error);
        match error {
            ExportError::Unknown => refuse(404, "unknown-visit"),
            ExportError::NotSealed => refuse(409, "not-sealed"),
            ExportError::CustomerWaits => refuse(409, "customer-waits"),
            ExportError::Write(_) => refuse(409, "no-record"),
            ExportError::Store(store) => store.into(),
        }
    }
}

/// Takes bytes up to a limit.
struct Limited(Vec<u8>);

impl Write for Limited {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        if self.0.len().saturating_add(bytes.len()) > RECORD_BYTES_MAX {
            return Err(io::Error::other("it is too long for a browser; use 'coilside export'"));
        }
        self.0.extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

pub(super) async fn download(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Path(visit): Path<String>,
) -> Page {
    let visit = VisitId::parse(&visit).map_err(|_| PageError::Missing(visitor))?;
    let name = format!("attachment; filename=\"record-{visit}.zip\"");
    let bytes = on_disk(&office, move |store, now_ms| {
        let mut out = Limited(Vec::new());
        export(store, &visit, now_ms, &mut out).map(|()| out.0)
    })
    .await?;
    let headers = [
        (CONTENT_TYPE, "application/zip".to_owned()),
        (CONTENT_DISPOSITION, name),
        (CACHE_CONTROL, "private, no-store".to_owned()),
    ];
    Ok((headers, bytes).into_response())
}
