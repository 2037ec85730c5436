//! What an answer of the office means. Strict: what is not exactly the office's own word changes nothing.

use serde::Deserialize;
use serde::de::DeserializeOwned;

use super::access::{self, Token};
use super::join::{self, Joined, NotJoined};
use super::pace::retry_after_ms;
use super::photo::{self, Stage};
use super::request::{CLOCK, What};
use super::trouble::{Hindrance, Trouble};
use crate::id::Digest;
use crate::round::News;
use crate::store::OutboxRow;
use crate::visit::event::sha256;

/// What an answer means for the device.
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
    /// Another device goes on with the visit: the office keeps this device's events before `kept`, or its seal, aside on its
    /// disk.
    Aside {
        /// The first that it does not keep yet.
        kept: u64,
    },
    /// The row is on the office's disk; for a seal with the path of the owner's summary.
    Safe {
        /// A path of the office's.
        summary: Option<String>,
    },
    /// The photograph goes on with this.
    Stage(Stage),
    /// A person must look: repeating does not help.
    Stuck(Trouble),
    /// Try again later, not before so many milliseconds.
    Wait {
        /// The office's own wish.
        least_ms: i64,
        /// Why.
        why: Hindrance,
    },
    /// The small picture of a row's photograph is at the office, or is wanted nowhere.
    Previewed(i64),
    /// The office knows this device's key.
    Introduced,
    /// It does not know it any more.
    Forgotten,
    /// What came down.
    News(Box<News>),
    /// A procedure's bytes, of the digest that was asked for.
    Pack(Vec<u8>),
    /// Events of a visit that this device is to go on with.
    Visit(VisitPage),
    /// It is not this device's any more.
    NotHanded,
    /// The office let the device in.
    Joined(Joined),
    /// It did not.
    NotJoined(NotJoined),
    /// Something to sign for a token.
    Nonce(String),
    /// A new token.
    Token(Token),
    /// The office does not know the token.
    TokenWanted,
    /// The office lets this device in no more.
    Revoked,
    /// Nothing.
    Nothing,
}

impl Meaning {
    /// Whether it stays true however late it comes: only such an answer counts once its request was given up.
    #[must_use]
    pub const fn is_lasting(&self) -> bool {
        matches!(self, Meaning::EventsSafe { .. } | Meaning::Safe { .. } | Meaning::Aside { .. })
    }

    /// The same where the visit comes back to this device, which has unsent events from before: the office has others in their
    /// place, and keeps these beside the record.
    #[must_use]
    pub fn of_a_visit_that_comes_back(self, answer: &Answer<'_>) -> Meaning {
        match (&self, answer.json::<HaveEvents>().and_then(|have| have.kept)) {
            (Meaning::Stuck(Trouble::Conflict), Some(kept)) => Meaning::Aside { kept },
            _ => self,
        }
    }
}

/// Some events of a visit, as the office has them.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
pub struct VisitPage {
    /// The number of the first.
    pub first: u64,
    /// The exact text of each.
    pub events: Vec<String>,
    /// The number after the office's last event of it.
    pub next: u64,
    /// The digest of that event.
    pub head: String,
}

#[derive(Deserialize)]
struct HaveEvents {
    next: u64,
    head: String,
    kept: Option<u64>,
}

#[derive(Deserialize)]
struct SealTaken {
    visit: String,
    sealed: bool,
    #[serde(default)]
    summary: String,
}

#[derive(Deserialize)]
struct Known {
    known: bool,
}

#[derive(Deserialize)]
struct Problem {
    #[serde(rename = "type")]
    kind: String,
}

/// An answer as the shell got it.
#[derive(Clone, Copy, Debug)]
pub struct Answer<'a> {
    /// HTTP status; 0 where there was none.
    pub status: u16,
    /// Headers, names in any case.
    pub headers: &'a [(String, String)],
    /// Body.
    pub body: &'a [u8],
    /// When the device got it, UTC milliseconds by its own clock.
    pub came_utc_ms: i64,
}

impl Answer<'_> {
    /// The body where it is JSON by its own word and its content.
    pub(super) fn json<T: DeserializeOwned>(&self) -> Option<T> {
        let kind = self.header("content-type")?.split(';').next().unwrap_or_default().trim();
        let is_json = ["application/json", "application/problem+json"].iter().any(|own| kind.eq_ignore_ascii_case(own));
        is_json.then(|| serde_json::from_slice(self.body).ok()).flatten()
    }

    pub(super) fn header(&self, name: &str) -> Option<&str> {
        self.headers.iter().find(|(known, _)| known.eq_ignore_ascii_case(name)).map(|(_, value)| value.as_str())
    }

    /// A header that is a whole number without a sign.
    pub(super) fn number(&self, name: &str) -> Option<u64> {
        let text = self.header(name)?.trim();
        text.bytes().all(|byte| byte.is_ascii_digit()).then(|| text.parse().ok()).flatten()
    }

    /// The office's clock as it answered, UTC milliseconds.
    pub(super) fn clock_utc_ms(&self) -> Option<i64> {
        self.header(CLOCK)?.trim().parse().ok().filter(|ms: &i64| (0..1 << 52).contains(ms))
    }

    /// The kind of a refusal in the office's own words: problem details (RFC 9457) whose type ends in it.
    pub(super) fn kind(&self) -> Option<String> {
        let problem = self.json::<Problem>().filter(|_| self.status >= 400)?;
        problem.kind.rsplit([':', '/', '#']).next().filter(|kind| !kind.is_empty()).map(str::to_owned)
    }

    pub(super) fn is_from_office(&self) -> bool {
        self.kind().is_some()
    }

    /// Later, for that reason.
    pub(super) fn later(&self, why: Hindrance) -> Meaning {
        let asked = self.header("retry-after");
        let least_ms = asked.map_or(0, |value| retry_after_ms(value, self.header("date"), self.came_utc_ms));
        Meaning::Wait { least_ms, why }
    }

    /// No answer, or one that the office does not give.
    pub(super) fn strange(&self) -> Meaning {
        self.later(if self.status == 0 { Hindrance::NoAnswer } else { Hindrance::NotTheOffice })
    }

    /// 5xx, no answer, and anything that is not the office's: later. 4xx in the office's own words: a person, or a token.
    pub(super) fn refused(&self, trouble: fn(&str) -> Trouble) -> Meaning {
        match (self.status, self.kind()) {
            (500.., _) | (408 | 425 | 429, _) => self.later(Hindrance::Busy),
            (401, Some(kind)) if kind == "token" => Meaning::TokenWanted,
            (403, Some(kind)) if kind == "revoked" => Meaning::Revoked,
            (400..=499, Some(kind)) => Meaning::Stuck(trouble(&kind)),
            _ => self.strange(),
        }
    }
}

/// What an answer means. `row` is the outbox row that the request carried; `head` gives the digest of this device's own
/// event before a number, to compare with the office's.
#[must_use]
pub fn meaning(
    what: &What,
    row: Option<&OutboxRow>,
    answer: &Answer<'_>,
    head: impl Fn(u64) -> Option<Digest>,
) -> Meaning {
    let told = |meaning: Option<Meaning>| meaning.unwrap_or_else(|| of_asking(answer));
    match (what, row) {
        (What::Join, _) => join::meaning(answer),
        (What::Nonce, _) => access::nonce(answer).unwrap_or_else(|| of_token(answer)),
        (What::Token, _) => access::token(answer).unwrap_or_else(|| of_token(answer)),
        (What::Device, _) => match answer.json::<Known>() {
            Some(Known { known: true }) if answer.status == 200 => Meaning::Introduced,
            // It is registered with another key: seals will say so, and events go all the same.
            _ if answer.kind().as_deref() == Some("other-key") => Meaning::Introduced,
            _ => of_asking(answer),
        },
        (What::News, _) => {
            let news = answer.json::<News>().filter(|_| answer.status == 200);
            told(news.map(|news| Meaning::News(Box::new(news))))
        }
        (What::Pack(digest), _) => {
            let whole = answer.status == 200 && sha256(answer.body).as_str() == digest;
            told(whole.then(|| Meaning::Pack(answer.body.to_vec())))
        }
        (What::Preview(row), _) => preview(*row, answer),
        (What::Visit(_, from), _) => visit_page(*from, answer),
        (What::Events(_, from), Some(row)) => events(row, *from, answer, head),
        (What::Seal(_), Some(row)) => seal(row, answer, head),
        (What::Photo(_, stage), Some(row)) => photo::meaning(row, *stage, answer),
        (What::Events(..) | What::Seal(_) | What::Photo(..), None) => Meaning::Nothing,
    }
}

/// What asks for something and carries no row is never stuck: it is asked again.
fn of_asking(answer: &Answer<'_>) -> Meaning {
    match answer.refused(Trouble::of_kind) {
        Meaning::Stuck(_) => answer.later(Hindrance::Busy),
        other => other,
    }
}

/// A small picture is a favour: whatever the office says against it in its own words, the photograph follows anyway.
fn preview(row: i64, answer: &Answer<'_>) -> Meaning {
    match answer.refused(Trouble::of_photo) {
        _ if answer.status == 204 => Meaning::Previewed(row),
        Meaning::Stuck(_) => Meaning::Previewed(row),
        other => other,
    }
}

fn visit_page(from: u64, answer: &Answer<'_>) -> Meaning {
    let page = answer.json::<VisitPage>().filter(|page| answer.status == 200 && page.first == from);
    let goes_on = |page: &VisitPage| page.next == from || !page.events.is_empty();
    match (page.filter(goes_on), answer.status, answer.kind().as_deref()) {
        (Some(page), ..) => Meaning::Visit(page),
        (None, 403, Some("another-device")) | (None, 404, Some("visit")) => Meaning::NotHanded,
        _ => of_asking(answer),
    }
}

/// The same for what is to bring a token: an office that says no does not know the device.
fn of_token(answer: &Answer<'_>) -> Meaning {
    match answer.refused(Trouble::of_kind) {
        Meaning::Stuck(_) | Meaning::TokenWanted => answer.later(Hindrance::NoToken),
        other => other,
    }
}

fn events(row: &OutboxRow, from: u64, answer: &Answer<'_>, head: impl Fn(u64) -> Option<Digest>) -> Meaning {
    let have = answer.json::<HaveEvents>().filter(|_| matches!(answer.status, 200 | 409));
    let Some(have) = have else { return answer.refused(Trouble::of_kind) };
    if let (409, Some("taken-over"), Some(kept)) = (answer.status, answer.kind().as_deref(), have.kept) {
        return if kept > row.first { Meaning::Aside { kept } } else { Meaning::Stuck(Trouble::TakenOver) };
    }
    let same = head(have.next).is_some_and(|own| own.as_str() == have.head);
    match (answer.status, same) {
        // What was sent begins where the office says that it wants it: then it has no reason to want it again.
        (200, true) if have.next <= from => answer.strange(),
        (409, true) if have.next == from => answer.later(Hindrance::Busy),
        (200 | 409, true) if have.next > row.first => Meaning::EventsSafe { next: have.next },
        (409, true) => Meaning::EventsAgain { next: have.next },
        (409, false) if answer.is_from_office() => Meaning::Stuck(Trouble::Conflict),
        _ => answer.strange(),
    }
}

fn seal(row: &OutboxRow, answer: &Answer<'_>, head: impl Fn(u64) -> Option<Digest>) -> Meaning {
    if let Some(taken) = answer.json::<SealTaken>().filter(|_| answer.status == 200) {
        let ours = taken.sealed && taken.visit == row.visit.as_str();
        return if ours { Meaning::Safe { summary: summary_path(&taken.summary) } } else { answer.strange() };
    }
    match (answer.status, answer.kind().as_deref(), answer.json::<HaveEvents>()) {
        (409, Some("no-key"), _) => Meaning::Forgotten,
        (409, Some("taken-over"), _) => Meaning::Aside { kept: row.first },
        (409, Some("gap"), Some(have)) if head(have.next).is_some_and(|own| own.as_str() == have.head) => {
            Meaning::EventsAgain { next: have.next }
        }
        (409, Some("gap"), Some(_)) => Meaning::Stuck(Trouble::Conflict),
        _ => answer.refused(Trouble::of_kind),
    }
}

/// Where the office shows the owner's summary, if its answer to a seal says so: a path of ours and nothing else.
fn summary_path(path: &str) -> Option<String> {
    let token = path.strip_prefix("/s/")?;
    let plain = token.len() <= 128 && token.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_'));
    (plain && !token.is_empty()).then(|| path.to_owned())
}
