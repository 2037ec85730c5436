//! The engine: which request goes out next, and what its answer changes. It forgets everything at a restart but where the
//! device joined: the store knows what waits, the office what arrived.
//!
//! There are two places for requests: one for what is small, one for a photograph's slice beside it. So a slow or failing
//! photograph never holds up events. Rests are kept apart too: for the way to the office, for photographs, and for each row.

use std::collections::BTreeMap;
use std::path::PathBuf;

use serde_json::json;

use super::access::{Access, Renewing, SignAsked};
use super::answer::{Answer, Meaning};
use super::join::{self, Joining};
use super::news;
use super::pace::Pace;
use super::photo::{self, Stage};
use super::policy::{Kind, Link, Network, Over, Policy};
use super::request::{Draft, SendBody, SendRequest, What, headers};
use super::skew::Skew;
use super::slice::Slices;
use super::state::{Sending, Standing};
use super::trouble::Hindrance;
use crate::id::VisitId;
use crate::now::Now;
use crate::record::jws::JwsError;
use crate::store::{OutboxKind, OutboxRow};

/// An unanswered request is given up after this time, milliseconds.
const PATIENCE_MS: i64 = 90_000;
/// A device that is let in no more asks so rarely whether it is again, milliseconds.
const REVOKED_EVERY_MS: i64 = 15 * 60_000;
/// In a span shorter than this nothing is begun, milliseconds.
const WINDOW_LEAST_MS: i64 = 2_000;
/// The most events in one request.
pub const EVENTS_MOST: usize = 200;
/// The most bytes of events in one request, and in a short span.
const EVENTS_BYTES: usize = 256 << 10;
const EVENTS_BYTES_SHORT: usize = 32 << 10;
/// So many rows are remembered with their rests and stages: more than ever wait at once in earnest.
const REMEMBERED_MOST: usize = 512;

/// What waits in the store, the next of each kind first.
#[derive(Clone, Debug, Default)]
pub struct Waiting {
    /// Events and seals: the first events of each visit by age, then seals.
    pub small: Vec<OutboxRow>,
    /// Photographs by age.
    pub photos: Vec<OutboxRow>,
    /// Large photographs by age whose small pictures the office has not.
    pub previews: Vec<OutboxRow>,
    /// A visit that this device is to go on with, and from which event on it lacks it.
    pub handed: Option<(VisitId, u64)>,
    /// A procedure that the office has and this device lacks.
    pub pack: Option<String>,
}

impl Waiting {
    fn is_empty(&self) -> bool {
        self.small.is_empty() && self.photos.is_empty()
    }
}

/// What a row carries, read from the store for its request.
#[derive(Clone, Debug)]
pub enum Payload {
    /// Events' stored bytes, from the number that was asked for on.
    Events(Vec<Vec<u8>>),
    /// A seal.
    Seal(String),
    /// Where a photograph lies.
    Original(PathBuf),
}

/// What goes out next.
#[derive(Clone, Debug)]
pub enum Task {
    /// A request that needs nothing from the store.
    Ask(SendRequest),
    /// A row: its payload is wanted. For events from the number on.
    Row {
        /// Which.
        row: OutboxRow,
        /// The first event to send.
        from: u64,
    },
    /// The small picture of a row's photograph is wanted.
    Preview(OutboxRow),
}

/// A request that is out.
#[derive(Clone, Debug)]
struct Out {
    id: String,
    what: What,
    since: Now,
    bytes: u64,
}

/// The engine of one device.
#[derive(Debug, Default)]
pub struct Sender {
    number: u64,
    small: Option<Out>,
    photo: Option<Out>,
    /// The way to the office; nothing goes while it rests.
    way: Pace,
    photos: Pace,
    rows: BTreeMap<String, Pace>,
    stages: BTreeMap<i64, Stage>,
    /// How much of a photograph arrived at most, as the office said since the start.
    arrived: BTreeMap<i64, u64>,
    /// The office has a visit's events before this number, as it said since the start.
    known: BTreeMap<String, u64>,
    slices: Slices,
    introduced: bool,
    news: news::Asking,
    link: Option<Link>,
    policy: Policy,
    hurried: bool,
    access: Option<Access>,
    renewing: Renewing,
    revoked: bool,
    revoked_asked: Option<Now>,
    joining: Option<Joining>,
    /// Neither the shell nor a joining tells where the office is.
    nowhere: bool,
    hindrance: Option<Hindrance>,
    last_answer_utc_ms: Option<i64>,
    skew: Option<Skew>,
}

impl Sender {
    /// An engine that has just started, with what the store kept.
    #[must_use]
    pub fn new(access: Option<Access>, revoked: bool, policy: Policy, cursor: Option<String>) -> Sender {
        Sender { access, revoked, policy, news: news::Asking::after(cursor), ..Sender::default() }
    }

    /// Whether anything could go out now: only then what waits need be read.
    pub fn is_free(&mut self, network: Network, now: &Now) -> bool {
        self.notice(network);
        for out in [&mut self.small, &mut self.photo] {
            if out.as_ref().is_some_and(|out| now.since(&out.since).longest_ms >= PATIENCE_MS) {
                *out = None;
            }
        }
        let time = network.window_ms.is_none_or(|ms| ms >= WINDOW_LEAST_MS);
        let free = self.small.is_none() || (self.photo.is_none() && self.photos.is_free(now));
        network.link != Link::None && time && free && (self.way.is_free(now) || self.joining.is_some())
    }

    /// Another network: what failed over the last one says nothing of it.
    fn notice(&mut self, network: Network) {
        self.nowhere = self.access.is_none() && !network.office;
        if self.link.replace(network.link) != Some(network.link) && network.link != Link::None {
            self.forget_rests();
        }
    }

    fn forget_rests(&mut self) {
        self.way = Pace::default();
        self.photos = Pace::default();
        self.rows.clear();
    }

    /// What goes out now: nothing, one thing, or one small thing and a photograph beside it. Each is made a request by
    /// [`Sender::request`], or is left.
    pub fn next(&mut self, waiting: &Waiting, device_key: &str, network: Network, now: &Now) -> Vec<Task> {
        let mut tasks = Vec::new();
        if !self.is_free(network, now) || (self.nowhere && self.joining.is_none()) {
            return tasks;
        }
        if waiting.is_empty() {
            self.hurried = false;
        }
        if self.small.is_none() {
            let Some(of_way) = self.way_task(device_key, now) else { return tasks };
            match of_way {
                Some(task) => return vec![task],
                None => tasks.extend(self.small_task(waiting, network, now)),
            }
        }
        tasks.extend(self.photo_task(waiting, &tasks, network, now));
        tasks
    }

    /// What must come before everything else: joining, a token, the device's key. The outer none: nothing may go out.
    #[allow(clippy::option_option, reason = "there is nothing to do first, or nothing may be done")]
    fn way_task(&mut self, device_key: &str, now: &Now) -> Option<Option<Task>> {
        if let Some(joining) = &self.joining {
            let draft = join::draft(joining, device_key);
            let origin = Some(joining.office.clone());
            return Some(Some(self.ask(What::Join, draft, (origin, None), now)));
        }
        if !self.way.is_free(now) {
            return None;
        }
        if self.revoked && self.renewing.rests() {
            let rests = self.revoked_asked.as_ref().is_some_and(|at| now.since(at).longest_ms < REVOKED_EVERY_MS);
            if rests {
                return None;
            }
            self.revoked_asked = Some(now.clone());
            if self.access.is_none() {
                return Some(Some(self.plain(What::News, self.news.draft(), now)));
            }
            self.renewing.want();
        }
        if let Some(access) = self.access.clone()
            && self.renewing.is_due(&access, self.skew.as_ref().map_or(0, |skew| skew.ahead_ms), now)
        {
            let (signed, draft) = self.renewing.draft(&access)?;
            let what = if signed { What::Token } else { What::Nonce };
            return Some(Some(self.ask(what, draft, (Some(access.office), None), now)));
        }
        // An office that was joined has the key.
        if self.access.is_none() && !self.introduced {
            let body = json!({ "public_key": device_key, "name": "browser shell" });
            return Some(Some(self.plain(What::Device, Draft::json("PUT", "/api/v1/device", &body), now)));
        }
        Some(None)
    }

    fn small_task(&mut self, waiting: &Waiting, network: Network, now: &Now) -> Option<Task> {
        if !self.policy_now().allows(Kind::Events, network.link) {
            return None;
        }
        if let Some(row) = waiting.small.iter().find(|row| self.rests_not(row, now)) {
            let known = self.known.get(row.visit.as_str()).copied();
            let from = known.filter(|next| (row.first..row.first + row.count).contains(next)).unwrap_or(row.first);
            return Some(Task::Row { row: row.clone(), from });
        }
        let short = network.window_ms.is_some();
        if short && !waiting.is_empty() {
            return None;
        }
        if let Some(row) = self.preview_row(waiting, network, now) {
            return Some(Task::Preview(row.clone()));
        }
        let asks = |key: &str| self.rows.get(key).is_none_or(|pace| pace.is_free(now));
        if let Some((visit, from)) = waiting.handed.as_ref().filter(|_| asks("visit")) {
            let draft = Draft::get(format!("/api/v1/visits/{visit}/events?from={from}"));
            return Some(self.plain(What::Visit(visit.to_string(), *from), draft, now));
        }
        if asks("news") && self.news.is_due(!waiting.is_empty(), now) {
            return Some(self.plain(What::News, self.news.draft(), now));
        }
        let pack = waiting.pack.as_ref().filter(|_| waiting.is_empty() && asks("pack"))?;
        Some(self.plain(What::Pack(pack.clone()), Draft::get(format!("/api/v1/packs/{pack}")), now))
    }

    /// The next photograph whose small picture goes ahead of it: none that is under way itself.
    fn preview_row<'a>(&self, waiting: &'a Waiting, network: Network, now: &Now) -> Option<&'a OutboxRow> {
        let rests = self.rows.get("preview").is_some_and(|pace| !pace.is_free(now));
        if rests || !self.policy_now().allows(Kind::Previews, network.link) {
            return None;
        }
        let under_way = self.photo.as_ref().and_then(|out| out.what.row());
        waiting.previews.iter().find(|row| under_way != Some(row.id) && !self.stages.contains_key(&row.id))
    }

    /// The request that carries a small picture, a JPEG.
    pub fn preview(&mut self, row: &OutboxRow, path: PathBuf, length: u64, now: &Now) -> SendRequest {
        let headers = headers(&[("Content-Type", "image/jpeg")]);
        let body = SendBody::File { path, from: 0, length };
        let draft = Draft { method: "PUT", path: format!("/api/v1/photos/{}/preview", row.digest), headers, body };
        self.out(What::Preview(row.id), draft, self.way_in(), now)
    }

    /// A photograph goes beside what is small, but waits for healthy events: they come first.
    fn photo_task(&self, waiting: &Waiting, tasks: &[Task], network: Network, now: &Now) -> Option<Task> {
        let open = self.photo.is_none() && self.photos.is_free(now) && self.way.is_free(now) && !self.is_barred(now);
        if !open || !self.policy_now().allows(Kind::Originals, network.link) {
            return None;
        }
        let healthy = |key: &str| self.rows.get(key).is_none_or(|pace| pace.failures() == 0);
        let chosen = tasks.iter().any(|task| matches!(task, Task::Row { row, .. } if healthy(&key(row))));
        let out = self.small.as_ref().is_some_and(|out| match out.what.row() {
            Some(id) => waiting.small.iter().find(|row| row.id == id).is_none_or(|row| healthy(&key(row))),
            None => out.what.is_open() || out.what == What::Device,
        });
        if chosen || out {
            return None;
        }
        let row = waiting.photos.iter().find(|row| self.rests_not(row, now))?;
        Some(Task::Row { row: row.clone(), from: 0 })
    }

    /// Nothing but a way to the office may be sought.
    fn is_barred(&self, now: &Now) -> bool {
        let ahead_ms = self.skew.as_ref().map_or(0, |skew| skew.ahead_ms);
        self.revoked
            || self.joining.is_some()
            || self.access.as_ref().is_some_and(|access| self.renewing.is_due(access, ahead_ms, now))
    }

    fn policy_now(&self) -> Policy {
        if self.hurried { Policy { events: Over::Now, previews: Over::Now, originals: Over::Now } } else { self.policy }
    }

    fn rests_not(&self, row: &OutboxRow, now: &Now) -> bool {
        self.rows.get(&key(row)).is_none_or(|pace| pace.is_free(now))
    }

    /// Makes a row's task a request; none where its payload is not what it should be.
    pub fn request(
        &mut self,
        row: &OutboxRow,
        from: u64,
        payload: Payload,
        device_key: &str,
        network: Network,
        now: &Now,
    ) -> Option<SendRequest> {
        let (what, draft) = match (row.kind, payload) {
            (OutboxKind::Events, Payload::Events(events)) => {
                let most = if network.window_ms.is_some() { EVENTS_BYTES_SHORT } else { EVENTS_BYTES };
                let path = format!("/api/v1/visits/{}/events", row.visit);
                let body = json!({ "first": from, "events": batch(&events, most) });
                (What::Events(row.id, from), Draft::json("POST", path, &body))
            }
            (OutboxKind::Seal, Payload::Seal(jws)) => {
                let body = json!({ "jws": jws, "public_key": device_key });
                (What::Seal(row.id), Draft::json("PUT", format!("/api/v1/visits/{}/seal", row.visit), &body))
            }
            (OutboxKind::Photo, Payload::Original(path)) => {
                let stage = *self.stages.entry(row.id).or_default();
                let draft = photo::draft(row, stage, path, self.slices.bytes(network.window_ms));
                (What::Photo(row.id, stage), draft)
            }
            _ => return None,
        };
        Some(self.out(what, draft, self.way_in(), now))
    }

    /// The office's address and token where this device joined it.
    fn way_in(&self) -> (Option<String>, Option<String>) {
        self.access.as_ref().map(|access| (access.office.clone(), access.token.clone())).unzip()
    }

    fn plain(&mut self, what: What, draft: Draft, now: &Now) -> Task {
        let way = self.way_in();
        self.ask(what, draft, way, now)
    }

    fn ask(&mut self, what: What, draft: Draft, way: (Option<String>, Option<String>), now: &Now) -> Task {
        Task::Ask(self.out(what, draft, way, now))
    }

    fn out(&mut self, what: What, draft: Draft, way: (Option<String>, Option<String>), now: &Now) -> SendRequest {
        self.number += 1;
        let id = what.id(self.number);
        let bytes = draft.body.length();
        let place = if what.is_photo() { &mut self.photo } else { &mut self.small };
        *place = Some(Out { id: id.clone(), what, since: now.clone(), bytes });
        draft.finish(id, way, now)
    }

    /// Whether the answer to that request is still awaited.
    #[must_use]
    pub fn awaits(&self, id: &str) -> bool {
        [&self.small, &self.photo].into_iter().flatten().any(|out| out.id == id)
    }

    /// Takes note of an answer and what it means. `chance` is a fresh random number. Tells whether its request was still
    /// awaited.
    pub fn heard(
        &mut self,
        id: &str,
        row: Option<&OutboxRow>,
        answer: &Answer<'_>,
        meaning: &Meaning,
        chance: u32,
        now: &Now,
    ) -> bool {
        let place =
            [&mut self.small, &mut self.photo].into_iter().find(|out| out.as_ref().is_some_and(|out| out.id == id));
        let Some(out) = place.and_then(Option::take) else { return false };
        if let Some(office_utc_ms) = answer.clock_utc_ms()
            && let Some(fresh) = Skew::measured(&out.since, office_utc_ms, now)
        {
            self.skew = Some(Skew::better(self.skew.take(), fresh, now));
        }
        self.slices.heard(&out.what, out.bytes, now.since(&out.since).longest_ms, meaning);
        match meaning {
            Meaning::Wait { least_ms, why } => {
                self.failed(&out, row, (*least_ms, *why), chance, now);
                if let (What::Photo(id, _), 404 | 410) = (&out.what, answer.status) {
                    // The office has it not, or not any more.
                    self.stages.insert(*id, Stage::Announce);
                }
            }
            Meaning::TokenWanted => {
                self.renewing.want();
                self.failed(&out, None, (0, Hindrance::NoToken), chance, now);
            }
            Meaning::Forgotten => {
                self.introduced = false;
                self.failed(&out, row, (0, Hindrance::Busy), chance, now);
            }
            _ => self.went(&out, row, meaning, now),
        }
        true
    }

    fn failed(&mut self, out: &Out, row: Option<&OutboxRow>, why: (i64, Hindrance), chance: u32, now: &Now) {
        let (least_ms, why) = why;
        let asked = asked_key(&out.what);
        if let Some(asked) = asked {
            self.rows.entry(asked.to_owned()).or_default().failed(least_ms, chance, now);
        }
        // What the office itself cannot give just now holds up nothing else.
        if asked.is_none() || why != Hindrance::Busy {
            self.hindrance = Some(why);
            let whole = if out.what.is_photo() { &mut self.photos } else { &mut self.way };
            whole.failed(least_ms, chance, now);
        }
        if out.what == What::Token {
            // What was signed may be used up: from the beginning.
            self.renewing.want();
        }
        if let (What::Photo(id, stage), Some(_)) = (&out.what, row) {
            self.stages.insert(*id, stage.after_failure());
        }
        if let Some(row) = row {
            bounded(&mut self.rows);
            // A line that breaks says nothing of this row, until it breaks at this row again and again.
            self.rows.entry(key(row)).or_default().failed_beside(why == Hindrance::NoAnswer, least_ms, chance, now);
        }
    }

    /// The office answered in its own words.
    fn went(&mut self, out: &Out, row: Option<&OutboxRow>, meaning: &Meaning, now: &Now) {
        self.way = Pace::default();
        self.hindrance = None;
        if !matches!(meaning, Meaning::NotJoined(_)) {
            self.last_answer_utc_ms = Some(now.utc_ms);
        }
        if !matches!(meaning, Meaning::Revoked) && !out.what.is_open() {
            self.revoked = false;
        }
        if self.went_on(out, row, meaning) {
            if out.what.is_photo() {
                self.photos = Pace::default();
            }
            if let Some(row) = row {
                self.rows.remove(&key(row));
            }
        }
        if let Some(asked) = asked_key(&out.what) {
            self.rows.remove(asked);
        }
        match meaning {
            Meaning::Introduced => self.introduced = true,
            Meaning::News(news) => self.news.came(news, now),
            Meaning::Stage(stage) => {
                if let Some(id) = out.what.row() {
                    bounded(&mut self.stages);
                    self.stages.insert(id, *stage);
                }
            }
            Meaning::EventsSafe { next } | Meaning::EventsAgain { next } | Meaning::Aside { kept: next } => {
                if let Some(row) = row {
                    bounded(&mut self.known);
                    self.known.insert(row.visit.to_string(), *next);
                }
            }
            Meaning::Safe { .. } | Meaning::Stuck(_) => {
                if let Some(id) = out.what.row() {
                    self.stages.remove(&id);
                    self.arrived.remove(&id);
                }
            }
            Meaning::Joined(joined) => {
                if let Some(joining) = self.joining.take() {
                    self.entered(joined.clone().at(&joining.office), now);
                }
            }
            Meaning::NotJoined(_) => self.joining = None,
            Meaning::Nonce(nonce) => {
                if let Some(access) = &self.access {
                    self.renewing.nonce(access, nonce);
                }
            }
            Meaning::Token(token) => {
                if let Some(access) = &mut self.access {
                    access.token.clone_from(&token.token);
                    access.expires_utc_ms = token.expires_utc_ms;
                    self.renewing.came(now);
                    self.revoked = false;
                }
            }
            Meaning::Revoked => {
                self.renewing.rest();
                self.revoked = true;
                self.revoked_asked = Some(now.clone());
            }
            _ => {}
        }
    }

    /// Whether an answer brought its row on: of a photograph more must have arrived than ever before. An office that says
    /// what it has, and takes no more, is asked more and more slowly.
    fn went_on(&mut self, out: &Out, row: Option<&OutboxRow>, meaning: &Meaning) -> bool {
        let (What::Photo(id, _), Meaning::Stage(stage)) = (&out.what, meaning) else { return true };
        let arrived = match stage {
            Stage::Send(from) => *from,
            Stage::Receipt => row.map_or(0, |row| row.bytes),
            Stage::Announce | Stage::Ask => 0,
        };
        bounded(&mut self.arrived);
        let before = self.arrived.entry(*id).or_default();
        let on = arrived > *before;
        *before = arrived.max(*before);
        on
    }

    /// The device was let in: it is another one to the office from now on, or the same one again.
    fn entered(&mut self, access: Access, now: &Now) {
        let elsewhere = self.access.as_ref().is_none_or(|before| before.office != access.office);
        self.access = Some(access);
        self.renewing = Renewing::default();
        self.renewing.came(now);
        self.revoked = false;
        self.forget_rests();
        self.stages.clear();
        self.arrived.clear();
        self.known.clear();
        self.skew = None;
        self.news = if elsewhere { news::Asking::default() } else { news::Asking::after(self.news.cursor()) };
    }

    /// A person wants it sent now: over any network, and without waiting.
    pub fn hurry(&mut self) {
        self.forget_rests();
        self.news.soon();
        self.hurried = true;
        self.revoked_asked = None;
    }

    /// Nothing waits any more: the person's wishes hold again.
    pub fn emptied(&mut self) {
        self.hurried = false;
    }

    /// A person wants to join.
    pub fn join(&mut self, joining: Joining) {
        self.joining = Some(joining);
        self.small = None;
    }

    /// The person's wish for a kind.
    pub fn wish(&mut self, kind: Kind, over: Over) {
        self.policy = self.policy.with(kind, over);
    }

    /// What the shell is asked to sign for a token.
    #[must_use]
    pub fn sign_asked(&self) -> Option<SignAsked> {
        self.renewing.asked()
    }

    /// Takes that signature.
    ///
    /// # Errors
    /// Where it is not of the device's key. It is asked for again.
    pub fn signed(&mut self, id: &str, signature_base64: &str, public_key: &[u8]) -> Result<(), JwsError> {
        self.renewing.signed(id, signature_base64, public_key)
    }

    /// Where the device joined.
    #[must_use]
    pub const fn access(&self) -> Option<&Access> {
        self.access.as_ref()
    }

    /// The office lets this device in no more.
    #[must_use]
    pub const fn is_revoked(&self) -> bool {
        self.revoked
    }

    /// From where the news go on.
    #[must_use]
    pub fn cursor(&self) -> Option<String> {
        self.news.cursor()
    }

    /// How it stands.
    #[must_use]
    pub fn standing(&self, now: &Now) -> Standing {
        let sending = |out: &Out| {
            let arrived = match out.what {
                What::Photo(_, Stage::Send(from)) => Some(from),
                _ => None,
            };
            Some(Sending { row: out.what.row()?, arrived })
        };
        Standing {
            sending: [&self.small, &self.photo].into_iter().flatten().filter_map(sending).collect(),
            hindrance: self.hindrance,
            rests_ms: self.way.left_ms(now).max(self.photos.left_ms(now)),
            link: self.link,
            policy: self.policy,
            office: self.access.as_ref().map(|access| access.office.clone()),
            nowhere: self.nowhere,
            revoked: self.revoked,
            joining: self.joining.is_some(),
            last_answer_utc_ms: self.last_answer_utc_ms,
            skew: self.skew.clone(),
        }
    }
}

/// Under which name a row's rest is kept: events and seals of one visit lean on each other.
fn key(row: &OutboxRow) -> String {
    match row.kind {
        OutboxKind::Events | OutboxKind::Seal => format!("visit:{}", row.visit),
        OutboxKind::Photo => format!("photo:{}", row.id),
    }
}

/// Under which name the rest of a question is kept, which carries no row.
const fn asked_key(what: &What) -> Option<&'static str> {
    match what {
        What::News => Some("news"),
        What::Pack(_) => Some("pack"),
        What::Visit(..) => Some("visit"),
        What::Preview(_) => Some("preview"),
        _ => None,
    }
}

/// Lets go of what is remembered where it grows beyond measure: it costs a repeated question.
fn bounded<K: Ord, V>(map: &mut BTreeMap<K, V>) {
    if map.len() >= REMEMBERED_MOST {
        map.clear();
    }
}

/// Events as text, up to so many bytes, at least one.
fn batch(events: &[Vec<u8>], bytes_most: usize) -> Vec<String> {
    let mut room = bytes_most;
    let mut batch = Vec::new();
    for event in events.iter().take(EVENTS_MOST) {
        if event.len() > room && !batch.is_empty() {
            break;
        }
        room = room.saturating_sub(event.len());
        batch.push(String::from_utf8_lossy(event).into_owned());
    }
    batch
}
