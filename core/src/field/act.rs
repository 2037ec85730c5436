//! Actions at the door: ways between places, the beginning of a visit, and work, which is decided, written and shown.

use super::DoorError;
use super::chain::chain;
use super::desk::{Desk, Seat, unit_of, units_of, words_for};
use super::join::JOIN;
use super::shown::{forget, keep};
use crate::action::Action;
use crate::effect::{Effect, Request};
use crate::id::{Letter, VisitId};
use crate::now::Now;
use crate::record::seal;
use crate::round::accreditation::held;
use crate::round::{AssignedUnit, Technician, cover, day_of};
use crate::screen::{Notice, Turn, notice_of};
use crate::store::{Commit, NewEffect};
use crate::sync::{Kind, Over};
use crate::visit::decide::{Decision, Refusal, decide};
use crate::visit::event::{Body, Severity, sha256};
use crate::visit::state::Visit;
use crate::words::{Words, is_spoken};

impl Desk {
    pub(super) fn act(&mut self, action_id: &str, action: &Action, now: &Now) -> Result<Turn, DoorError> {
        if let Some(acted) = self.store.acted(action_id)? {
            let told: Option<Notice> = acted.refusal.and_then(|text| serde_json::from_str(&text).ok());
            // What still stands at a field is not said a second time above it.
            self.notices = told.into_iter().filter(|told| !self.stands_at_a_field(told)).collect();
            return self.turn(acted.still_open, now);
        }
        self.notices.clear();
        self.wanted = None;
        match action {
            // Words that are no reading are meant only with the button that uses them: until then they are half typed.
            Action::Draft { field, text } | Action::Enter { field, text }
                if matches!(action, Action::Draft { .. })
                    || !["read:", "used:"].iter().any(|of| field.starts_with(of)) =>
            {
                self.problems.remove(field);
                let place = if self.is_of_joining(field) { JOIN.to_owned() } else { self.draft_place() };
                self.store.put_draft(&place, field, text, false)?;
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
            Action::Join => self.join(action_id, now),
            Action::ReadPacks => self.read_packs(now),
            Action::AddAddendum if self.seat.as_ref().is_some_and(|seat| seat.sealed) => {
                self.add_addendum(action_id, now)
            }
            _ => self.work(action_id, action, now),
        }
    }

    fn go(&mut self, action_id: &str, to: &str, now: &Now) -> Result<Turn, DoorError> {
        let mut settings = Vec::new();
        let mut alarms = Vec::new();
        let place = match to.split_once(':') {
            Some(("visit", id)) => {
                let id = VisitId(id.to_owned());
                self.sit_down(&id, now)?;
                alarms = self.alarms_of(&id)?;
                settings.push(("visit".to_owned(), id.0));
                if self.seat.as_ref().is_some_and(|seat| seat.sealed) { "leaving" } else { "now" }
            }
            Some(("unit", letter)) => {
                let there = self.seat.as_ref().filter(|seat| seat.visit.runs.contains_key(letter));
                if let Some(id) = there.map(|seat| seat.visit.id.clone()) {
                    self.store.put_setting(&unit_of(&id), letter)?;
                    self.sit_down(&id, now)?;
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
        self.turn(alarms, now)
    }

    fn set(&mut self, setting: &str, value: &str, now: &Now) -> Result<Turn, DoorError> {
        match (setting, value) {
            ("language", language) if is_spoken(language) => {
                self.words = words_for(language, self.seat.as_ref().map(|seat| seat.pack.as_ref()))?;
            }
            ("units", "metric" | "us") => self.units = units_of(Some(value)),
            ("send-events" | "send-previews" | "send-originals", "any" | "unmetered") => {
                let kinds = Kind::ALL.into_iter().filter(|kind| kind.setting() == setting);
                kinds.for_each(|kind| self.sender.wish(kind, Over::read(Some(value))));
            }
            _ => return Err(DoorError::NoSuch { what: "setting", name: format!("{setting}={value}") }),
        }
        self.store.put_setting(setting, value)?;
        self.turn(Vec::new(), now)
    }

    pub(super) fn start_visit(&mut self, action_id: &str, id: &str, now: &Now) -> Result<Turn, DoorError> {
        let no_such = |what, name: &str| DoorError::NoSuch { what, name: name.to_owned() };
        if let Some(begun) = self.store.visit_of(id)? {
            // Pressed twice: the visit is there already.
            return self.go(action_id, &format!("visit:{begun}"), now);
        }
        if let Some(pack) = self.missing_pack(id)? {
            return self.want_pack(action_id, id, &pack, now);
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
            let pack = self.procedures.find(&unit.pack).ok_or_else(|| no_such("pack", &unit.pack))?;
            bodies.push(Body::RunStarted {
                unit: Letter(unit.letter.clone()),
                asset: unit.unit.clone(),
                label: format!("{} {} {}", unit.maker, unit.model, unit.serial),
                pack: unit.pack.clone(),
                pack_digest: pack.digest.clone(),
                core: env!("CARGO_PKG_VERSION").to_owned(),
            });
            bodies.extend(carried(unit));
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
        self.sit_down(&visit, now)?;
        self.turn(vec![Effect { id: opened.into_iter().next().unwrap_or_default(), request: Request::Locate }], now)
    }

    /// An action about the visit: decide, write, show.
    fn work(&mut self, action_id: &str, action: &Action, now: &Now) -> Result<Turn, DoorError> {
        let place = self.draft_place();
        if let Action::Enter { field, text } = action {
            self.store.put_draft(&place, field, text, true)?;
        }
        let salt = if matches!(action, Action::Sign { .. }) { self.salt() } else { String::new() };
        let Some(seat) = &self.seat else {
            return Err(DoorError::NoSuch { what: "visit", name: String::new() });
        };
        let drafts = self.store.drafts(&place)?;
        let around = self.around(seat, &drafts, &salt, now);
        let decided = match (seat.sealed, seat.elsewhere) {
            (true, _) => Err(Refusal::Sealed),
            (false, true) => Err(Refusal::Elsewhere),
            (false, false) => decide(&seat.visit, action, &around),
        };
        match decided {
            Ok(decision) => {
                if let Action::Choose { field, option } = action
                    && decision.events.is_empty()
                {
                    self.store.put_draft(&place, field, option, false)?;
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
        let mut bodies = decision.events;
        if bodies.iter().any(|body| matches!(body, Body::SealPrepared { .. })) {
            bodies.splice(0..0, judged(seat, &self.technician, now));
        }
        let (state, events) = chain(seat.visit.clone(), bodies, now)?;
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
        let beside = decision.beside.as_deref().map(|bytes| keep(&self.shelf, bytes)).transpose()?;
        let committed = self.store.commit(&Commit {
            visit: Some(&state),
            events,
            effects,
            photo: beside.clone(),
            acted: Some((action_id, None)),
            used: decision.used.iter().map(|field| (place.clone(), field.clone())).collect(),
            settings,
            utc_ms: now.utc_ms,
            ..Commit::default()
        });
        let ids = committed.inspect_err(|_| forget(&self.shelf, beside.as_ref()))?;
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

    pub(super) fn refuse(&mut self, action_id: &str, refusal: Refusal, now: &Now) -> Result<Turn, DoorError> {
        let pack = self.seat.as_ref().map(|seat| &seat.pack.pack);
        let notice = notice_of(&refusal, &self.words, pack, self.units);
        let stored = serde_json::to_string(&notice).ok();
        self.store.commit(&Commit { acted: Some((action_id, stored)), utc_ms: now.utc_ms, ..Commit::default() })?;
        if let Some(field) = refusal.field() {
            self.problems.insert(field.to_owned(), refusal);
        } else {
            self.notices.push(notice);
        }
        self.turn(Vec::new(), now)
    }

    fn stands_at_a_field(&self, told: &Notice) -> bool {
        let pack = self.seat.as_ref().map(|seat| &seat.pack.pack);
        self.problems.values().any(|refusal| notice_of(refusal, &self.words, pack, self.units) == *told)
    }
}

/// What past visits found at a unit and nobody has mended stands in this one too, until it is. A note asks for nothing.
fn carried(unit: &AssignedUnit) -> impl Iterator<Item = Body> + '_ {
    unit.findings.iter().filter(|finding| finding.severity > Severity::Note).map(|finding| Body::FindingAdded {
        unit: Letter(unit.letter.clone()),
        severity: finding.severity,
        text: finding.text.clone(),
        since: Some(finding.date.clone()),
    })
}

/// What the terms of cover of each unit ask for, beside what is there now.
fn judged(seat: &Seat, technician: &Technician, now: &Now) -> Vec<Body> {
    let opened = seat.visit.opened.as_ref().unwrap_or(now);
    let Some(day) = day_of(opened.utc_ms, opened.offset_min) else { return Vec::new() };
    let of_unit = |unit: &AssignedUnit| {
        let letter = Letter(unit.letter.clone());
        let run = seat.visit.runs.get(&letter)?;
        let judgement = cover::done(unit, &seat.assignment.due, &seat.visit, run, held(technician), day)?;
        Some(Body::CoverJudged { unit: letter, judgement })
    };
    seat.assignment.units.iter().filter_map(of_unit).collect()
}

/// Puts words into a request: the decision that asked for it knows none.
pub(super) fn dress(request: Request, words: &Words) -> Request {
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
