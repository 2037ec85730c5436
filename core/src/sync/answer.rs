//! What an answer of the office means. Strict: what is not exactly the office's own word changes nothing.

use serde::Deserialize;

use super::Stage;
use crate::id::Digest;
use crate::round::News;
use crate::store::{OutboxKind, OutboxRow};

/// What an answer means for the outbox.
#[derive(Clone, Debug, PartialEq)]
pub enum Meaning {
    /// The office has the visit's events before `next` on its disk.
    EventsSafe {
        /// The first that it lacks.
        next: u64,
    },
    /// The office lacks events from `next` on: send from there.
    EventsAgain {
        /// The first that it lacks.
        next: u64,
    },
    /// The row is on the office's disk.
    Safe,
    /// The photograph goes on with this.
    Stage(Stage),
    /// A person must look: repeating does not help.
    Stuck(String),
    /// Try again later, not before so many milliseconds.
    Wait {
        /// The office's own wish.
        least_ms: i64,
    },
    /// The office knows this device's key.
    Introduced,
    /// What came down.
    News(News),
}

#[derive(Deserialize)]
struct HaveEvents {
    next: u64,
    head: String,
}

#[derive(Deserialize)]
struct Receipt {
    digest: String,
    safe: bool,
}

#[derive(Deserialize)]
struct SealTaken {
    visit: String,
    sealed: bool,
}

#[derive(Deserialize)]
struct SummaryMade {
    summary: String,
}

#[derive(Deserialize)]
struct Known {
    known: bool,
}

#[derive(Deserialize)]
struct Problem {
    title: String,
    #[serde(default)]
    detail: String,
}

/// An answer as the shell got it.
pub struct Answer<'a> {
    /// HTTP status; 0 where there was none.
    pub status: u16,
    /// Headers, names in any case.
    pub headers: &'a [(String, String)],
    /// Body.
    pub body: &'a [u8],
}

impl Answer<'_> {
    fn json<T: serde::de::DeserializeOwned>(&self) -> Option<T> {
        serde_json::from_slice(self.body).ok()
    }

    fn header(&self, name: &str) -> Option<&str> {
        self.headers.iter().find(|(known, _)| known.eq_ignore_ascii_case(name)).map(|(_, value)| value.as_str())
    }

    fn offset(&self) -> Option<u64> {
        self.header("upload-offset")?.trim().parse().ok()
    }

    /// 5xx, no answer, and anything that is not the office's: later. 4xx in the office's own words: a person.
    fn refused(&self) -> Meaning {
        let after_s: i64 = self.header("retry-after").and_then(|text| text.trim().parse().ok()).unwrap_or(0);
        let later = Meaning::Wait { least_ms: after_s.clamp(0, 3600) * 1000 };
        if !(400..500).contains(&self.status) || matches!(self.status, 408 | 425 | 429) {
            return later;
        }
        match self.json::<Problem>() {
            Some(problem) if problem.detail.is_empty() => Meaning::Stuck(problem.title),
            Some(problem) => Meaning::Stuck(format!("{}: {}", problem.title, problem.detail)),
            None => later,
        }
    }
}

/// What an answer means. `row` is the outbox row that the request carried, none for introductions and news; `head` gives
/// the digest of this device's own event before a number, to compare with the office's.
#[must_use]
pub fn meaning(
    id: &str,
    row: Option<&OutboxRow>,
    stage: Option<Stage>,
    answer: &Answer<'_>,
    head: impl Fn(u64) -> Option<Digest>,
) -> Meaning {
    match (id, row) {
        ("device", _) => match answer.json::<Known>() {
            Some(Known { known: true }) if answer.status == 200 => Meaning::Introduced,
            _ => answer.refused(),
        },
        ("news", _) => match answer.json::<News>() {
            Some(news) if answer.status == 200 => Meaning::News(news),
            _ => answer.refused(),
        },
        (_, Some(row)) => match row.kind {
            OutboxKind::Events => events(row, answer, head),
            OutboxKind::Seal => match answer.json::<SealTaken>() {
                Some(taken) if answer.status == 200 && taken.sealed && taken.visit == row.visit.as_str() => {
                    Meaning::Safe
                }
                _ => answer.refused(),
            },
            OutboxKind::Photo => photo(row, stage.unwrap_or_default(), answer),
        },
        (_, None) => Meaning::Wait { least_ms: 0 },
    }
}

/// Where the office shows the owner's summary, if its answer to a seal says so: a path of ours and nothing else.
#[must_use]
pub fn summary_path(answer: &Answer<'_>) -> Option<String> {
    let path = answer.json::<SummaryMade>()?.summary;
    let token = path.strip_prefix("/s/")?;
    let plain = token.len() <= 128 && token.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_'));
    (plain && !token.is_empty()).then_some(path)
}

fn events(row: &OutboxRow, answer: &Answer<'_>, head: impl Fn(u64) -> Option<Digest>) -> Meaning {
    let Some(have) = answer.json::<HaveEvents>() else { return answer.refused() };
    let same = head(have.next).is_some_and(|own| own.as_str() == have.head);
    match (answer.status, same) {
        (200, true) if have.next > row.first => Meaning::EventsSafe { next: have.next },
        (409, true) if have.next > row.first => Meaning::EventsSafe { next: have.next },
        (409, true) => Meaning::EventsAgain { next: have.next },
        (409, false) => Meaning::Stuck(format!("the office has other events from {} on; ask the office", row.first)),
        _ => answer.refused(),
    }
}

fn photo(row: &OutboxRow, stage: Stage, answer: &Answer<'_>) -> Meaning {
    let onward = |offset: u64| {
        if offset >= row.bytes { Meaning::Stage(Stage::Receipt) } else { Meaning::Stage(Stage::Send(offset)) }
    };
    match (stage, answer.status, answer.offset()) {
        (Stage::Announce, 201, _) => Meaning::Stage(Stage::Ask),
        (Stage::Ask, 200 | 204, Some(offset)) => onward(offset),
        (Stage::Ask, 404, _) => Meaning::Stage(Stage::Announce),
        (Stage::Send(_), 204, Some(offset)) => onward(offset),
        (Stage::Send(_), 404 | 409, _) => Meaning::Stage(Stage::Announce),
        (Stage::Receipt, 200, _) => match answer.json::<Receipt>() {
            Some(receipt) if receipt.digest == row.digest.as_str() && receipt.safe => Meaning::Safe,
            _ => Meaning::Wait { least_ms: 0 },
        },
        // The office found other bytes than were announced and put them aside: from the start, a little later.
        (Stage::Send(_), 460, _) => Meaning::Wait { least_ms: 0 },
        _ => answer.refused(),
    }
}
