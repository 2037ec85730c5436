//! Requests for the shell to send: what each is about stands in its id, so that an answer is understood also when it comes
//! late, twice, or after a restart.

use std::path::PathBuf;

use super::photo::Stage;
use crate::now::Now;

/// A request for the shell to send to the office.
#[derive(Clone, Debug, PartialEq)]
pub struct SendRequest {
    /// To be handed back with the answer.
    pub id: String,
    /// The office's address where this device joined it, without a slash at the end. None: the one that the shell was
    /// started with.
    pub origin: Option<String>,
    /// GET, POST, PUT, PATCH, HEAD.
    pub method: String,
    /// Path at the office, from `/api/v1` on.
    pub path: String,
    /// Headers. Without an `Authorization` among them and without an `origin` the shell puts in the token that it was
    /// started with.
    pub headers: Vec<(String, String)>,
    /// The body.
    pub body: SendBody,
}

/// A request's body.
#[derive(Clone, Debug, PartialEq)]
pub enum SendBody {
    /// None.
    Empty,
    /// These bytes.
    Bytes(Vec<u8>),
    /// A slice of a file.
    File {
        /// The file.
        path: PathBuf,
        /// The first byte.
        from: u64,
        /// How many bytes.
        length: u64,
    },
}

impl SendBody {
    /// How many bytes it has.
    #[must_use]
    pub fn length(&self) -> u64 {
        match self {
            SendBody::Empty => 0,
            SendBody::Bytes(bytes) => bytes.len() as u64,
            SendBody::File { length, .. } => *length,
        }
    }
}

/// What a request is about.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum What {
    /// The device asks to be let in by a code.
    Join,
    /// It asks for something to sign for its token.
    Nonce,
    /// It asks for its token with what it signed.
    Token,
    /// It tells its key.
    Device,
    /// It asks what is new.
    News,
    /// It asks for the procedure of that digest.
    Pack(String),
    /// It asks for the events of a visit that it is to go on with, from that number on.
    Visit(String, u64),
    /// Events, from those of this row on; the number of the first that it carries.
    Events(i64, u64),
    /// The seal of this row.
    Seal(i64),
    /// The photograph of this row.
    Photo(i64, Stage),
    /// The small picture of this row's photograph. It carries nothing of the row itself: that is safe by its own receipt.
    Preview(i64),
}

impl What {
    /// The row of the outbox that it carries.
    #[must_use]
    pub const fn row(&self) -> Option<i64> {
        match self {
            What::Events(row, _) | What::Seal(row) | What::Photo(row, _) => Some(*row),
            _ => None,
        }
    }

    /// Whether it carries a photograph, for which there is a place beside everything else.
    #[must_use]
    pub const fn is_photo(&self) -> bool {
        matches!(self, What::Photo(..))
    }

    /// Whether it goes out without a token.
    pub(super) const fn is_open(&self) -> bool {
        matches!(self, What::Join | What::Nonce | What::Token)
    }

    /// The id of its request, with a number that no other request since the start has.
    pub(super) fn id(&self, number: u64) -> String {
        let name = match self {
            What::Join => "join".to_owned(),
            What::Nonce => "nonce".to_owned(),
            What::Token => "token".to_owned(),
            What::Device => "device".to_owned(),
            What::News => "news".to_owned(),
            What::Pack(digest) => format!("pack:{digest}"),
            What::Visit(visit, from) => format!("visit:{visit}:{from}"),
            What::Events(row, from) => format!("events:{row}:{from}"),
            What::Seal(row) => format!("seal:{row}"),
            What::Photo(row, stage) => format!("photo:{row}:{}", stage.name()),
            What::Preview(row) => format!("preview:{row}"),
        };
        format!("{name}/{number}")
    }

    /// Reads an id; none where it is none of ours.
    pub(super) fn of(id: &str) -> Option<What> {
        let (name, number) = id.split_once('/')?;
        number.parse::<u64>().ok()?;
        let (kind, of) = name.split_once(':').unwrap_or((name, ""));
        Some(match kind {
            "join" => What::Join,
            "nonce" => What::Nonce,
            "token" => What::Token,
            "device" => What::Device,
            "news" => What::News,
            "pack" => What::Pack(of.to_owned()),
            "visit" => {
                let (visit, from) = of.split_once(':')?;
                What::Visit(visit.to_owned(), from.parse().ok()?)
            }
            "events" => {
                let (row, from) = of.split_once(':')?;
                What::Events(row.parse().ok()?, from.parse().ok()?)
            }
            "seal" => What::Seal(of.parse().ok()?),
            "preview" => What::Preview(of.parse().ok()?),
            "photo" => {
                let (row, stage) = of.split_once(':')?;
                What::Photo(row.parse().ok()?, Stage::of(stage)?)
            }
            _ => return None,
        })
    }
}

/// The header by which device and office tell each other their clocks, UTC milliseconds.
pub const CLOCK: &str = "Coilside-Clock";

/// A body of JSON, with the header that says so.
pub(super) fn json(body: &serde_json::Value) -> (Vec<(String, String)>, SendBody) {
    (headers(&[("Content-Type", "application/json")]), SendBody::Bytes(body.to_string().into_bytes()))
}

pub(super) fn headers(list: &[(&str, &str)]) -> Vec<(String, String)> {
    list.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())).collect()
}

/// A request before it has its id and the way to the office.
pub(super) struct Draft {
    pub(super) method: &'static str,
    pub(super) path: String,
    pub(super) headers: Vec<(String, String)>,
    pub(super) body: SendBody,
}

impl Draft {
    pub(super) fn get(path: impl Into<String>) -> Draft {
        Draft { method: "GET", path: path.into(), headers: Vec::new(), body: SendBody::Empty }
    }

    pub(super) fn json(method: &'static str, path: impl Into<String>, body: &serde_json::Value) -> Draft {
        let (headers, body) = json(body);
        Draft { method, path: path.into(), headers, body }
    }

    /// The request, with the device's clock as it makes it.
    pub(super) fn finish(self, id: String, way: (Option<String>, Option<String>), now: &Now) -> SendRequest {
        let (origin, token) = way;
        let Draft { method, path, mut headers, body } = self;
        headers.push((CLOCK.to_owned(), now.utc_ms.to_string()));
        headers.extend(token.map(|token| ("Authorization".to_owned(), format!("Bearer {token}"))));
        SendRequest { id, origin, method: method.to_owned(), path, headers, body }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_id_is_read_back_and_a_strangers_is_none() {
        for what in [
            What::Join,
            What::Nonce,
            What::Token,
            What::Device,
            What::News,
            What::Pack("ab".into()),
            What::Visit("5d-1".into(), 40),
            What::Events(7, 12),
            What::Seal(8),
            What::Photo(9, Stage::Announce),
            What::Photo(9, Stage::Ask),
            What::Photo(9, Stage::Send(1_048_576)),
            What::Photo(9, Stage::Receipt),
            What::Preview(9),
        ] {
            assert_eq!(What::of(&what.id(3)), Some(what));
        }
        for odd in ["", "news", "news/", "news/x", "photo:9/1", "photo:9:fly/1", "events:x/1", "cake/1"] {
            assert_eq!(What::of(odd), None, "{odd}");
        }
    }
}
