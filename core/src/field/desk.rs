//! What the door holds between calls: the store, the visit that is open, and what was last refused.

use std::collections::BTreeMap;
use std::sync::Arc;

use sha2::{Digest as _, Sha256};

use super::{DoorError, Setup};
use crate::action::Action;
use crate::effect::{Effect, Outcome, Request};
use crate::id::{Letter, VisitId};
use crate::now::Now;
use crate::procedure::library::{LoadedPack, built_in, from_pinned};
use crate::procedure::measure::Units;
use crate::record::seal;
use crate::round::Assignment;
use crate::screen::{Notice, Screen, Turn, View, VisitView, notice_of, show};
use crate::store::{Commit, NewEffect, Sealed, Store, StoreError};
use crate::sync::Sender;
use crate::visit::apply::apply;
use crate::visit::decide::{Circumstances, Decision, Refusal, decide, lapses, rested};
use crate::visit::event::{Body, Event, hex, sha256};
use crate::visit::state::{Mark, Visit};
use crate::words::{LANGUAGES, Words};

pub(super) struct Desk {
    pub(super) store: Store,
    pub(super) sender: Sender,
    pub(super) public_key: Vec<u8>,
    packs: Vec<LoadedPack>,
    entropy: Entropy,
    words: Words,
    units: Units,
    place: String,
    seat: Option<Seat>,
    /// Problems of fields, until something else is typed there.
    problems: BTreeMap<String, Refusal>,
    notices: Vec<Notice>,
}

/// The visit that is open.
#[derive(Clone)]
pub(super) struct Seat {
    pub(super) visit: Visit,
    pub(super) unit: Letter,
    pub(super) pack: Arc<LoadedPack>,
    pub(super) assignment: Assignment,
    pub(super) sealed: bool,
}

/// Random bytes, drawn out of what the shell handed in at opening.
struct Entropy {
    seed: Vec<u8>,
    drawn: u64,
}

impl Entropy {
    fn draw(&mut self) -> [u8; 32] {
        self.drawn += 1;
        let mut hash = Sha256::new();
        hash.update(&self.seed);
        hash.update(self.drawn.to_be_bytes());
        hash.finalize().into()
    }
}

impl Desk {
    pub(super) fn new(store: Store, setup: &Setup) -> Result<Desk, DoorError> {
        let spoken = |language: &String| LANGUAGES.contains(&language.as_str());
        let language = store
            .setting("language")?
            .or_else(|| setup.language.clone())
            .filter(spoken)
            .unwrap_or_else(|| "en".to_owned());
        let units = units_of(store.setting("units")?.as_deref());
        let place = store.setting("place")?.unwrap_or_else(|| "round".to_owned());
        let visit = store.setting("visit")?.filter(|visit| !visit.is_empty()).map(VisitId);
        let mut desk = Desk {
            store,
            sender: Sender::default(),
            public_key: setup.public_key.clone(),
            packs: built_in()?,
            entropy: Entropy { seed: setup.entropy.clone(), drawn: 0 },
            words: Words::new(&language, None)?,
            units,
            place,
            seat: None,
            problems: BTreeMap::new(),
            notices: Vec::new(),
        };
        if let Some(visit) = visit {
            desk.sit_down(&visit)?;
        }
        Ok(desk)
    }

    pub(super) fn visit_id(&self) -> Option<VisitId> {
        self.seat.as_ref().map(|seat| seat.visit.id.clone())
    }

    pub(super) fn shell_words(&self) -> BTreeMap<String, String> {
        self.words.shell()
    }

    pub(super) fn device_key(&self) -> String {
        hex(&self.public_key).0
    }

    /// Opens a visit: reads its state, its pinned pack and their words.
    fn sit_down(&mut self, id: &VisitId) -> Result<(), DoorError> {
        let seat = self.seat_of(id)?;
        self.words = words_for(self.words.language(), Some(&seat.pack))?;
        self.seat = Some(seat);
        self.problems.clear();
        Ok(())
    }

    fn seat_of(&self, id: &VisitId) -> Result<Seat, DoorError> {
        let no_such = |what, name: &str| DoorError::NoSuch { what, name: name.to_owned() };
        let visit = self.store.visit(id)?;
        let (unit, run) = visit.runs.iter().next().ok_or_else(|| no_such("visit", id.as_str()))?;
        let pinned = self.store.pinned_pack(&run.pack_digest)?.ok_or_else(|| no_such("pack", &run.pack))?;
        let (assignment, _) =
            self.store.assignment(&visit.assignment)?.ok_or_else(|| no_such("assignment", &visit.assignment))?;
        let sealed = self.store.seal(id)?.is_some();
        Ok(Seat { unit: unit.clone(), pack: Arc::new(from_pinned(&pinned)?), assignment, sealed, visit })
    }

    pub(super) fn act(&mut self, action_id: &str, action: &Action, now: &Now) -> Result<Turn, DoorError> {
        if let Some(acted) = self.store.acted(action_id)? {
            let told: Option<Notice> = acted.refusal.and_then(|text| serde_json::from_str(&text).ok());
            // What still stands at a field is not said a second time above it.
            self.notices = told.into_iter().filter(|told| !self.stands_at_a_field(told)).collect();
            return self.turn(acted.still_open, now);
        }
        self.notices.clear();
        match action {
            // Words that are no reading are meant only with the button that uses them: until then they are half typed.
            Action::Draft { field, text } | Action::Enter { field, text }
                if matches!(action, Action::Draft { .. }) || !field.starts_with("read:") =>
            {
                self.problems.remove(field);
                self.store.put_draft(&self.draft_place(), field, text)?;
                self.turn(Vec::new(), now)
            }
            Action::Go { to } => self.go(action_id, to, now),
            Action::StartVisit { assignment } => self.start_visit(action_id, assignment, now),
            Action::Set { setting, value } => self.set(setting, value, now),
            Action::SendNow => {
                self.store.unstick()?;
                self.sender.hurry();
                self.turn(Vec::new(), now)
            }
            _ => self.work(action_id, action, now),
        }
    }

    /// Waiting times that run since before the device counted time anew: from this moment on it is proven again.
    pub(super) fn witness(&mut self, now: &Now) -> Result<(), DoorError> {
        for row in self.store.visits(0)? {
            let seat = self.seat_for(&row.visit)?;
            let marks = || seat.visit.runs.values().flat_map(|run| run.steps.values());
            let anew =
                marks().any(|mark| matches!(mark, Mark::Running { seen, .. } if seen.mono_epoch != now.mono_epoch));
            if anew && seat.visit.sealing.is_none() {
                match self.write(seat, vec![Body::DeviceRestarted {}], None, now) {
                    // Without room it is not written yet: then no time is proven, which is the safe side.
                    Ok(()) | Err(DoorError::Store(StoreError::Full)) => {}
                    Err(error) => return Err(error),
                }
            }
        }
        Ok(())
    }

    fn go(&mut self, action_id: &str, to: &str, now: &Now) -> Result<Turn, DoorError> {
        let mut settings = Vec::new();
        let place = match to.split_once(':') {
            Some(("visit", id)) => {
                let id = VisitId(id.to_owned());
                self.sit_down(&id)?;
                settings.push(("visit".to_owned(), id.0));
                if self.seat.as_ref().is_some_and(|seat| seat.sealed) { "leaving" } else { "now" }
            }
            Some(("unit", letter)) => {
                if let Some(seat) = &mut self.seat
                    && seat.visit.runs.contains_key(letter)
                {
                    seat.unit = Letter(letter.to_owned());
                }
                "now"
            }
            _ => to,
        };
        settings.push(("place".to_owned(), place.to_owned()));
        self.place = place.to_owned();
        self.store.commit(&Commit {
            settings,
            acted: Some((action_id, None)),
            utc_ms: now.utc_ms,
            ..Commit::default()
        })?;
        self.turn(Vec::new(), now)
    }

    fn set(&mut self, setting: &str, value: &str, now: &Now) -> Result<Turn, DoorError> {
        match (setting, value) {
            ("language", language) if LANGUAGES.contains(&language) => {
                self.words = words_for(language, self.seat.as_ref().map(|seat| seat.pack.as_ref()))?;
            }
            ("units", "metric" | "us") => self.units = units_of(Some(value)),
            _ => return Err(DoorError::NoSuch { what: "setting", name: format!("{setting}={value}") }),
        }
        self.store.put_setting(setting, value)?;
        self.turn(Vec::new(), now)
    }

    fn start_visit(&mut self, action_id: &str, id: &str, now: &Now) -> Result<Turn, DoorError> {
        let no_such = |what, name: &str| DoorError::NoSuch { what, name: name.to_owned() };
        if let Some(begun) = self.store.visit_of(id)? {
            // Pressed twice: the visit is there already.
            return self.go(action_id, &format!("visit:{begun}"), now);
        }
        let (assignment, salt) = self.store.assignment(id)?.ok_or_else(|| no_such("assignment", id))?;
        let random = self.entropy.draw();
        let mut bytes = [0_u8; 16];
        bytes.copy_from_slice(random.split_at(16).0);
        let visit = VisitId(uuid::Builder::from_random_bytes(bytes).into_uuid().to_string());
        let personal = serde_json::to_string(&(&assignment.site, &assignment.owner)).unwrap_or_default();
        let mut bodies = vec![Body::VisitOpened {
            format: crate::visit::event::FORMAT,
            device_key: self.device_key(),
            assignment: assignment.id.clone(),
            personal: sha256(format!("{salt}{personal}").as_bytes()),
        }];
        let mut pinned = None;
        for unit in &assignment.units {
            let pack = self
                .packs
                .iter()
                .find(|pack| pack.pack.pack == unit.pack)
                .ok_or_else(|| no_such("pack", &unit.pack))?;
            bodies.push(Body::RunStarted {
                unit: Letter(unit.letter.clone()),
                asset: unit.unit.clone(),
                label: format!("{} {} {}", unit.maker, unit.model, unit.serial),
                pack: unit.pack.clone(),
                pack_digest: pack.digest.clone(),
                core: env!("CARGO_PKG_VERSION").to_owned(),
            });
            pinned = Some(pack);
        }
        let fresh = Visit { id: visit.clone(), ..Visit::default() };
        let (state, events) = chain(fresh, bodies, now)?;
        let effects =
            vec![NewEffect { visit: visit.clone(), seq: state.end.next.saturating_sub(1), request: Request::Locate }];
        let settings = vec![("visit".to_owned(), visit.0.clone()), ("place".to_owned(), "now".to_owned())];
        let opened = self.store.commit(&Commit {
            visit: Some(&state),
            events,
            effects,
            pack: pinned.map(|pack| (&pack.digest, pack.bytes.as_slice())),
            acted: Some((action_id, None)),
            settings,
            utc_ms: now.utc_ms,
            ..Commit::default()
        })?;
        self.place = "now".to_owned();
        self.sit_down(&visit)?;
        self.turn(vec![Effect { id: opened.into_iter().next().unwrap_or_default(), request: Request::Locate }], now)
    }

    /// An action about the visit: decide, write, show.
    fn work(&mut self, action_id: &str, action: &Action, now: &Now) -> Result<Turn, DoorError> {
        let place = self.draft_place();
        if let Action::Enter { field, text } = action {
            self.store.put_draft(&place, field, text)?;
        }
        let Some(seat) = &self.seat else {
            return Err(DoorError::NoSuch { what: "visit", name: String::new() });
        };
        let drafts = self.store.drafts(&place)?;
        let around = Circumstances { unit: &seat.unit, pack: &seat.pack.pack, drafts: &drafts, units: self.units, now };
        let decided = if seat.sealed { Err(Refusal::Sealed) } else { decide(&seat.visit, action, &around) };
        match decided {
            Ok(decision) => {
                if let Action::Choose { field, option } = action
                    && decision.events.is_empty()
                {
                    self.store.put_draft(&place, field, option)?;
                }
                self.carry_out(action_id, action, decision, now)
            }
            Err(refusal) => self.refuse(action_id, refusal, now),
        }
    }

    fn carry_out(
        &mut self,
        action_id: &str,
        action: &Action,
        decision: Decision,
        now: &Now,
    ) -> Result<Turn, DoorError> {
        let place = self.draft_place();
        let Some(seat) = &mut self.seat else { return Ok(Turn { screen: self.show(now)?, effects: Vec::new() }) };
        let mut requests = decision.requests;
        let (state, events) = chain(seat.visit.clone(), decision.events, now)?;
        if *action == Action::Seal {
            let input = seal::signing_input(&state)?;
            requests.push(Request::SignBytes { bytes_base64: crate::field::send::base64(input.as_bytes()) });
        }
        let seq = if events.is_empty() { state.end.next } else { state.end.next - 1 };
        let requests: Vec<Request> = requests.into_iter().map(|request| dress(request, &self.words)).collect();
        let effects = requests
            .iter()
            .map(|request| NewEffect { visit: state.id.clone(), seq, request: request.clone() })
            .collect();
        let mut settings = Vec::new();
        if let Some(go) = &decision.go {
            settings.push(("place".to_owned(), go.clone()));
        }
        let ids = self.store.commit(&Commit {
            visit: Some(&state),
            events,
            effects,
            acted: Some((action_id, None)),
            used: decision.used.iter().map(|field| (place.clone(), field.clone())).collect(),
            settings,
            utc_ms: now.utc_ms,
            ..Commit::default()
        })?;
        seat.visit = state;
        for field in &decision.used {
            self.problems.remove(field);
        }
        if let Some(go) = decision.go {
            self.place = go;
        }
        let effects = ids.into_iter().zip(requests).map(|(id, request)| Effect { id, request }).collect();
        self.turn(effects, now)
    }

    fn refuse(&mut self, action_id: &str, refusal: Refusal, now: &Now) -> Result<Turn, DoorError> {
        let pack = self.seat.as_ref().map(|seat| &seat.pack.pack);
        let notice = notice_of(&refusal, &self.words, pack, self.units);
        let stored = serde_json::to_string(&notice).ok();
        self.store.commit(&Commit { acted: Some((action_id, stored)), utc_ms: now.utc_ms, ..Commit::default() })?;
        match &refusal {
            Refusal::Number { field, .. }
            | Refusal::Impossible { field, .. }
            | Refusal::Unusual { field, .. }
            | Refusal::Words { field } => {
                self.problems.insert(field.clone(), refusal);
            }
            _ => self.notices.push(notice),
        }
        self.turn(Vec::new(), now)
    }

    fn stands_at_a_field(&self, told: &Notice) -> bool {
        let pack = self.seat.as_ref().map(|seat| &seat.pack.pack);
        self.problems.values().any(|refusal| notice_of(refusal, &self.words, pack, self.units) == *told)
    }

    /// An outcome that is no photograph.
    pub(super) fn ended(&mut self, effect_id: &str, outcome: &Outcome, now: &Now) -> Result<Turn, DoorError> {
        let effect = self
            .store
            .effect(effect_id)?
            .ok_or_else(|| DoorError::NoSuch { what: "request", name: effect_id.to_owned() })?;
        if effect.outcome.is_some() {
            return self.turn(Vec::new(), now);
        }
        let seat = self.seat_for(&effect.visit)?;
        let ended = Some((effect_id.to_owned(), outcome));
        match outcome {
            Outcome::Place { place } if !seat.sealed && seat.visit.sealing.is_none() => {
                let fixed = Body::PlaceFixed {
                    latitude: format!("{:.6}", place.latitude_deg),
                    longitude: format!("{:.6}", place.longitude_deg),
                    accuracy_m: format!("{:.0}", place.accuracy_m),
                    age_ms: place.age_ms.clamp(0, 1 << 52),
                };
                self.write(seat, vec![fixed], ended, now)?;
            }
            Outcome::Failed { why }
                if effect.request == Request::Locate && !seat.sealed && seat.visit.sealing.is_none() =>
            {
                let why = why.chars().take(200).collect();
                self.write(seat, vec![Body::PlaceMissing { why }], ended, now)?;
            }
            Outcome::Signature { base64 } if !seat.sealed => self.signed(seat, base64, effect_id, outcome, now)?,
            _ => {
                self.store.commit(&Commit { ended, utc_ms: now.utc_ms, ..Commit::default() })?;
            }
        }
        self.turn(Vec::new(), now)
    }

    fn signed(
        &mut self,
        seat: Seat,
        base64: &str,
        effect_id: &str,
        outcome: &Outcome,
        now: &Now,
    ) -> Result<(), DoorError> {
        // None where the seal was cancelled in between.
        let input = seat.visit.sealing.is_some().then(|| seal::signing_input(&seat.visit)).transpose()?;
        let asked = |input: &String| Request::SignBytes { bytes_base64: super::send::base64(input.as_bytes()) };
        let request = self.store.effect(effect_id)?.map(|effect| effect.request);
        let Some(input) = input.filter(|input| request == Some(asked(input))) else {
            // Signed over a state that is no more: work went on in between, and a new signature is asked for.
            self.store.commit(&Commit {
                ended: Some((effect_id.to_owned(), outcome)),
                utc_ms: now.utc_ms,
                ..Commit::default()
            })?;
            return Ok(());
        };
        let jws = seal::close(&input, base64, &self.public_key)?;
        self.store.commit(&Commit {
            ended: Some((effect_id.to_owned(), outcome)),
            seal: Some(Sealed { visit: &seat.visit.id, jws: &jws }),
            settings: vec![("place".to_owned(), "leaving".to_owned())],
            utc_ms: now.utc_ms,
            ..Commit::default()
        })?;
        if self.visit_id().as_ref() == Some(&seat.visit.id) {
            self.place = "leaving".to_owned();
            self.seat = Some(Seat { sealed: true, ..seat });
        }
        Ok(())
    }

    /// Writes events that no decision is needed for, with the effect that they end.
    fn write(
        &mut self,
        seat: Seat,
        bodies: Vec<Body>,
        ended: Option<(String, &Outcome)>,
        now: &Now,
    ) -> Result<(), DoorError> {
        let bodies = lapses(&seat.visit, now).into_iter().chain(bodies).collect();
        let (state, events) = chain(seat.visit.clone(), bodies, now)?;
        self.store.commit(&Commit { visit: Some(&state), events, ended, utc_ms: now.utc_ms, ..Commit::default() })?;
        self.keep(Seat { visit: state, ..seat });
        Ok(())
    }

    /// The visit as it is now, if it is the one that is open.
    pub(super) fn keep(&mut self, seat: Seat) {
        if let Some(open) = &mut self.seat
            && open.visit.id == seat.visit.id
        {
            open.visit = seat.visit;
            open.sealed = seat.sealed;
        }
    }

    /// The visit of an outcome: mostly the one that is open, whose pack need not be read again.
    pub(super) fn seat_for(&self, visit: &VisitId) -> Result<Seat, DoorError> {
        match &self.seat {
            Some(open) if open.visit.id == *visit => Ok(open.clone()),
            _ => self.seat_of(visit),
        }
    }

    pub(super) fn tell(&mut self, notice: Notice) {
        self.notices.push(notice);
    }

    pub(super) fn words(&self) -> &Words {
        &self.words
    }

    pub(super) fn salt(&mut self) -> String {
        hex(&self.entropy.draw()).0
    }

    pub(super) fn turn(&self, effects: Vec<Effect>, now: &Now) -> Result<Turn, DoorError> {
        Ok(Turn { screen: self.show(now)?, effects })
    }

    fn draft_place(&self) -> String {
        self.visit_id().map(|id| id.0).unwrap_or_default()
    }

    pub(super) fn show(&self, now: &Now) -> Result<Screen, DoorError> {
        let drafts = self.store.drafts(&self.draft_place())?;
        let on_round = matches!(self.place.as_str(), "round" | "settings" | "outbox") || self.seat.is_none();
        let rested = self.seat.as_ref().map(|seat| rested(&seat.visit, now));
        let visit = match self.seat.as_ref().zip(rested.as_ref()) {
            Some((seat, visit)) => Some(VisitView {
                visit,
                unit: &seat.unit,
                run: visit
                    .run(&seat.unit)
                    .ok_or_else(|| DoorError::NoSuch { what: "unit", name: seat.unit.0.clone() })?,
                pack: &seat.pack.pack,
                assignment: &seat.assignment,
                drafts: &drafts,
                problems: &self.problems,
                sealed: seat.sealed,
                safe: seat.sealed && self.store.is_safe(&seat.visit.id)?,
            }),
            None => None,
        };
        let (due, visits) =
            if on_round { (self.store.assignments_due()?, self.visit_lines()?) } else { (Vec::new(), Vec::new()) };
        let outbox_rows = if self.place == "outbox" { self.store.outbox(100)? } else { Vec::new() };
        Ok(show(&View {
            place: if visit.is_none() && !matches!(self.place.as_str(), "settings" | "outbox") {
                "round"
            } else {
                &self.place
            },
            words: &self.words,
            units: self.units,
            now,
            outbox: self.store.outbox_count()?,
            outbox_rows: &outbox_rows,
            last_answer_utc_ms: self.sender.last_answer_utc_ms,
            notices: &self.notices,
            visit,
            due: &due,
            visits: &visits,
        }))
    }

    fn visit_lines(&self) -> Result<Vec<crate::screen::VisitLine>, DoorError> {
        self.store
            .visits(20)?
            .into_iter()
            .map(|row| {
                let assignment = self.store.assignment(&row.assignment)?;
                Ok(crate::screen::VisitLine {
                    site: assignment.map(|(assignment, _)| assignment.site.name).unwrap_or_default(),
                    safe: row.sealed && self.store.is_safe(&row.visit)?,
                    id: row.visit,
                    opened_utc_ms: row.opened_utc_ms,
                    sealed: row.sealed,
                })
            })
            .collect()
    }
}

fn units_of(setting: Option<&str>) -> Units {
    if setting == Some("us") { Units::Us } else { Units::Metric }
}

fn words_for(language: &str, pack: Option<&LoadedPack>) -> Result<Words, DoorError> {
    let own = pack.and_then(|pack| pack.source.words.get(language).or_else(|| pack.source.words.get("en")));
    Ok(Words::new(language, own.map(String::as_str))?)
}

/// Puts words into a request: the decision that asked for it knows none.
fn dress(request: Request, words: &Words) -> Request {
    match request {
        Request::TakePhoto { unit, slot, .. } => {
            let key = if slot.is_empty() { "shot-unplaced".to_owned() } else { format!("shot-{slot}") };
            let show = words.get(&format!("{key}.show")).unwrap_or_default();
            Request::TakePhoto { unit, slot, title: words.text(&key), show }
        }
        Request::WakeAt { utc_ms, text } => {
            let (what, step) = text.split_once(':').unwrap_or(("ready", &text));
            let title = words.text(&format!("step-{step}"));
            Request::WakeAt { utc_ms, text: words.fill(&format!("wake-{what}"), &[("step", &title)]) }
        }
        request => request,
    }
}

/// Events with the bytes that were hashed.
type Written = Vec<(Event, Vec<u8>)>;

/// Puts events at the end of a visit's chain.
pub(super) fn chain(mut visit: Visit, bodies: Vec<Body>, now: &Now) -> Result<(Visit, Written), DoorError> {
    let mut written = Vec::new();
    for body in bodies {
        let mut end = visit.end.clone();
        let event = Event { visit: visit.id.clone(), seq: end.next, prev: end.last.clone(), time: now.clone(), body };
        let bytes = event.to_bytes()?;
        end.follow(&visit.id, &bytes)?;
        visit = apply(visit, &event);
        visit.end = end;
        written.push((event, bytes));
    }
    Ok((visit, written))
}
