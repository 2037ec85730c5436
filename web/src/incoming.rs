//! A photograph's original bytes: written beside their final name, synced, then renamed. Nothing half is ever found
//! under the final name.

use std::{
    ffi::OsString,
    io,
    path::{Path as FilePath, PathBuf},
    sync::atomic::{AtomicU64, Ordering},
};

use axum::{
    body::Body,
    extract::{Path, State},
    http::{HeaderMap, StatusCode, header},
};
use http_body_util::BodyExt;
use tokio::{fs::File, io::AsyncWriteExt};

use crate::{
    door::{Admitted, Shell},
    error::is_full,
    private_file,
    problem::Problem,
};

/// The largest photograph, bytes: 60 MB.
pub(crate) const PHOTO_BYTES_MAX: u64 = 60_000_000;
/// How much of a photograph that is too large is still read, so that the browser hears the answer and does not take
/// the closed line for a lost process.
const DRAIN_BYTES_MAX: u64 = 1_000_000_000;

static PART: AtomicU64 = AtomicU64::new(0);

pub(crate) async fn put(
    State(shell): State<Shell>,
    _: Admitted,
    Path(name): Path<String>,
    headers: HeaderMap,
    body: Body,
) -> Result<StatusCode, Problem> {
    let effect_id = effect_of(&name).ok_or_else(Problem::unknown)?;
    let told = headers.get(header::CONTENT_LENGTH).and_then(|value| value.to_str().ok()?.parse::<u64>().ok());
    if told.is_some_and(|length| length > PHOTO_BYTES_MAX) {
        drain(body, 0).await;
        return Err(too_large());
    }
    let path = shell.ask(move |core, _| core.incoming(&effect_id)).await?;
    keep(&path, body).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// The effect that a name stands for: `/` was written as `_`. None for anything that could leave the folder.
fn effect_of(name: &str) -> Option<String> {
    let fine = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_';
    (!name.is_empty() && name.len() <= 120 && name.bytes().all(fine)).then(|| name.replace('_', "/"))
}

/// Removes what an interrupted hand-over of an earlier process left beside the final names.
pub(crate) fn sweep(folder: &FilePath) -> io::Result<()> {
    let entries = match std::fs::read_dir(folder) {
        Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(()),
        entries => entries?,
    };
    for entry in entries {
        let path = entry?.path();
        if path.extension().is_some_and(|end| end == "part") {
            std::fs::remove_file(path)?;
        }
    }
    Ok(())
}

/// A file that is gone unless it was kept: also when the browser hangs up in the middle.
struct Part {
    path: PathBuf,
    kept: bool,
}

impl Drop for Part {
    fn drop(&mut self) {
        if !self.kept {
            // What cannot be removed now is swept at the next start.
            let _ = std::fs::remove_file(&self.path);
        }
    }
}

async fn keep(path: &FilePath, mut body: Body) -> Result<(), Problem> {
    let mut name: OsString = path.as_os_str().to_owned();
    name.push(format!(".{}.part", PART.fetch_add(1, Ordering::Relaxed)));
    let mut part = Part { path: name.into(), kept: false };
    let mut file = File::create(&part.path).await.map_err(|why| unkept(&why))?;
    let mut length: u64 = 0;
    while let Some(frame) = body.frame().await {
        let Ok(bytes) = frame.map_err(|_| cut_short())?.into_data() else { continue };
        length += bytes.len() as u64;
        if length > PHOTO_BYTES_MAX {
            drain(body, length).await;
            return Err(too_large());
        }
        if let Err(why) = file.write_all(&bytes).await {
            drain(body, length).await;
            return Err(unkept(&why));
        }
    }
    file.flush().await.map_err(|why| unkept(&why))?;
    file.sync_all().await.map_err(|why| unkept(&why))?;
    drop(file);
    tokio::fs::rename(&part.path, path).await.map_err(|why| unkept(&why))?;
    part.kept = true;
    private_file::sync_folder_of(path).map_err(|why| unkept(&why))
}

async fn drain(mut body: Body, mut length: u64) {
    while let Some(Ok(frame)) = body.frame().await {
        length += frame.data_ref().map_or(0, |bytes| bytes.len() as u64);
        if length > DRAIN_BYTES_MAX {
            return;
        }
    }
}

fn too_large() -> Problem {
    let detail = "The photograph is larger than 60 MB. Take it again with a lower resolution. Nothing was changed.";
    Problem::new(StatusCode::PAYLOAD_TOO_LARGE, "too-large", "The photograph is too large", detail)
}

fn cut_short() -> Problem {
    Problem::new(StatusCode::BAD_REQUEST, "cut-short", "The photograph did not arrive whole", "Try again.")
}

fn unkept(why: &io::Error) -> Problem {
    if is_full(why) { Problem::disk_full() } else { Problem::inside(why.to_string()) }
}

#[cfg(test)]
mod tests {
    use axum::{body::Bytes, http::Method};

    use super::*;
    use crate::stub::{Caller, TOKEN};

    fn names(folder: &FilePath) -> Vec<String> {
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect()
    }

    async fn send(caller: &Caller, body: Body, length: Option<u64>) -> crate::stub::Answer {
        let told = length.map(|length| length.to_string());
        let mut headers = vec![("x-coilside-token", TOKEN), ("x-coilside-window", "one")];
        headers.extend(told.as_deref().map(|told| ("content-length", told)));
        caller.with(Method::PUT, "/door/incoming/v_7_0", &headers, body).await
    }

    /// A body that hands out `count` pieces of a megabyte, and then fails if `breaks`.
    fn pieces(count: usize, breaks: bool) -> Body {
        let piece = Bytes::from(vec![7_u8; 1_000_000]);
        let end = breaks.then(|| Err(io::Error::other("hung up")));
        let all: Vec<Result<Bytes, io::Error>> = (0..count).map(|_| Ok(piece.clone())).chain(end).collect();
        Body::from_stream(tokio_stream::iter(all))
    }

    #[tokio::test]
    async fn a_photograph_arrives_to_the_byte_under_its_name() {
        let caller = Caller::new();
        assert_eq!(send(&caller, Body::from("the very bytes"), None).await.status, StatusCode::NO_CONTENT);
        assert_eq!(names(caller.incoming()), ["v_7_0"]);
        assert_eq!(std::fs::read(caller.incoming().join("v_7_0")).unwrap(), b"the very bytes");
    }

    #[tokio::test]
    async fn more_than_60_megabytes_is_refused_and_leaves_nothing() {
        let caller = Caller::new();
        assert_eq!(send(&caller, pieces(60, false), None).await.status, StatusCode::NO_CONTENT);
        std::fs::remove_file(caller.incoming().join("v_7_0")).unwrap();
        let unannounced = send(&caller, pieces(61, false), None).await;
        let announced = send(&caller, Body::empty(), Some(PHOTO_BYTES_MAX + 1)).await;
        for answer in [unannounced, announced] {
            assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE);
            assert!(answer.json()["detail"].as_str().unwrap().contains("60 MB"));
        }
        assert_eq!(names(caller.incoming()), Vec::<String>::new());
    }

    #[tokio::test]
    async fn a_photograph_cut_short_leaves_the_one_before_as_it_was() {
        let caller = Caller::new();
        send(&caller, Body::from("first"), None).await;
        let answer = send(&caller, pieces(2, true), None).await;
        assert_eq!(answer.json()["type"], "/problem/cut-short");
        assert_eq!(names(caller.incoming()), ["v_7_0"]);
        assert_eq!(std::fs::read(caller.incoming().join("v_7_0")).unwrap(), b"first");
    }

    #[tokio::test]
    async fn a_hand_over_that_is_dropped_midway_leaves_nothing() {
        let caller = Caller::new();
        let path = caller.incoming().join("v_7_0");
        let never = Body::from_stream(tokio_stream::pending::<Result<Bytes, io::Error>>());
        let waited = tokio::time::timeout(std::time::Duration::from_millis(50), keep(&path, never)).await;
        assert!(waited.is_err(), "it still waits for bytes");
        assert_eq!(names(caller.incoming()), Vec::<String>::new());
    }

    #[test]
    fn names_that_could_leave_the_folder_stand_for_nothing() {
        assert_eq!(effect_of("0190-ab_12_0").as_deref(), Some("0190-ab/12/0"));
        for name in ["", "..", "a/b", "a\\b", ".hidden", "a b", "ä"] {
            assert_eq!(effect_of(name), None, "{name}");
        }
    }

    #[test]
    fn parts_of_an_earlier_process_are_swept_and_photographs_stay() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("v_1_0"), "whole").unwrap();
        std::fs::write(folder.path().join("v_2_0.4.part"), "half").unwrap();
        sweep(folder.path()).unwrap();
        assert_eq!(names(folder.path()), ["v_1_0"]);
        sweep(&folder.path().join("missing")).unwrap();
    }
}
