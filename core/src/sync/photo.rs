//! A photograph on its way by tus 1.0.0: announced, asked how much of it has arrived, sent on from there in slices, and safe
//! with its receipt only.
//!
//! A slice carries no checksum of its own: the office must drop a checksummed piece that was cut short, and on a bad line
//! what did arrive is worth keeping. The digest of the whole file is checked before the receipt.

use std::path::PathBuf;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde::Deserialize;

use super::answer::{Answer, Meaning};
use super::request::{Draft, SendBody, headers};
use super::trouble::{Hindrance, Trouble};
use crate::store::OutboxRow;

/// How far a photograph is. Forgotten at a restart: the office knows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// Announce it.
    #[default]
    Announce,
    /// Ask how much has arrived.
    Ask,
    /// Send from this byte on.
    Send(u64),
    /// Ask for the receipt.
    Receipt,
}

impl Stage {
    /// Where to go on after a failure at this stage. What arrived of a slice that broke off counts.
    pub(super) const fn after_failure(self) -> Stage {
        match self {
            Stage::Announce | Stage::Ask => Stage::Announce,
            Stage::Send(_) | Stage::Receipt => Stage::Ask,
        }
    }

    pub(super) fn name(self) -> String {
        match self {
            Stage::Announce => "announce".to_owned(),
            Stage::Ask => "ask".to_owned(),
            Stage::Send(from) => from.to_string(),
            Stage::Receipt => "receipt".to_owned(),
        }
    }

    pub(super) fn of(name: &str) -> Option<Stage> {
        Some(match name {
            "announce" => Stage::Announce,
            "ask" => Stage::Ask,
            "receipt" => Stage::Receipt,
            from => Stage::Send(from.parse().ok()?),
        })
    }
}

const TUS: (&str, &str) = ("Tus-Resumable", "1.0.0");

/// The request of a stage; `slice` is the most bytes to send.
pub(super) fn draft(row: &OutboxRow, stage: Stage, original: PathBuf, slice: u64) -> Draft {
    let path = format!("/api/v1/photos/{}", row.digest);
    match stage {
        Stage::Announce => {
            let metadata = format!(
                "sha256 {},visit {},media {}",
                STANDARD.encode(row.digest.as_str()),
                STANDARD.encode(row.visit.as_str()),
                STANDARD.encode(&row.media)
            );
            let length = row.bytes.to_string();
            let headers = headers(&[TUS, ("Upload-Length", &length), ("Upload-Metadata", &metadata)]);
            Draft { method: "POST", path: "/api/v1/photos".to_owned(), headers, body: SendBody::Empty }
        }
        Stage::Ask => Draft { method: "HEAD", path, headers: headers(&[TUS]), body: SendBody::Empty },
        Stage::Send(from) => {
            let length = row.bytes.saturating_sub(from).min(slice.max(1));
            let offset = from.to_string();
            let headers =
                headers(&[TUS, ("Upload-Offset", &offset), ("Content-Type", "application/offset+octet-stream")]);
            Draft { method: "PATCH", path, headers, body: SendBody::File { path: original, from, length } }
        }
        Stage::Receipt => Draft::get(format!("{path}/receipt")),
    }
}

#[derive(Deserialize)]
struct Receipt {
    digest: String,
    safe: bool,
}

/// What an answer means for a photograph at a stage.
pub(super) fn meaning(row: &OutboxRow, stage: Stage, answer: &Answer<'_>) -> Meaning {
    // More than there is can be nobody's honest count: begin again, after a rest.
    let onward = |offset: u64| match offset.cmp(&row.bytes) {
        std::cmp::Ordering::Less => Meaning::Stage(Stage::Send(offset)),
        std::cmp::Ordering::Equal => Meaning::Stage(Stage::Receipt),
        std::cmp::Ordering::Greater => answer.strange(),
    };
    match (stage, answer.status, answer.number("upload-offset")) {
        (Stage::Announce, 201, _) => Meaning::Stage(Stage::Ask),
        (Stage::Ask, 200 | 204, Some(offset)) => onward(offset),
        // Nothing more of it has arrived, or less than before: on from there, but not at once.
        (Stage::Send(from), 204, Some(offset)) if offset <= from => answer.strange(),
        (Stage::Send(_), 204, Some(offset)) => onward(offset),
        // It is not there any more, or there is another count, or the office found other bytes than were announced and put them
        // aside: announced again or asked for, but never at once. Two that contradict each other must not go on for ever.
        (Stage::Send(_), 404 | 409 | 410 | 460, _) | (Stage::Receipt, 404 | 410, _)
            if answer.kind().as_deref() != Some("other-length") =>
        {
            if answer.is_from_office() {
                answer.later(Hindrance::Busy)
            } else {
                answer.strange()
            }
        }
        (Stage::Receipt, 200, _) => match answer.json::<Receipt>() {
            Some(receipt) if receipt.digest == row.digest.as_str() && receipt.safe => Meaning::Safe { summary: None },
            Some(receipt) if receipt.digest == row.digest.as_str() => answer.later(Hindrance::Busy),
            _ => answer.strange(),
        },
        _ => answer.refused(Trouble::of_photo),
    }
}
