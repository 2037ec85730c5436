//! The real engine, `decide` and `apply`, driven move by move with any pack; what a step asks for inside is given.

use std::collections::BTreeMap;

use coilside_core::action::Action;
use coilside_core::id::{Letter, StepId};
use coilside_core::now::Now;
use coilside_core::procedure::check::Move;
use coilside_core::procedure::gate::Missing;
use coilside_core::procedure::measure::Units;
use coilside_core::procedure::pack::{Pack, Step};
use coilside_core::round::Technician;
use coilside_core::visit::apply::apply;
use coilside_core::visit::decide::{Circumstances, Refusal, decide, lapses};
use coilside_core::visit::event::{Body, Event};
use coilside_core::visit::fact::Facts;
use coilside_core::visit::state::{ExcursionEnd, Mark, Run, Visit};

const PAUSE_MS: i64 = 31 * 60_000;

#[derive(Clone)]
pub(crate) struct Engine<'a> {
    pub(crate) pack: &'a Pack,
    pub(crate) visit: Visit,
    now: Now,
    unit: Letter,
    /// What was done at which moment, to do it again at the door; only where it is kept.
    pub(crate) kept: Option<Vec<Kept>>,
}

/// An action that was taken, with the words typed for it.
pub(crate) type Kept = (Now, Action, Vec<(String, String)>);

impl<'a> Engine<'a> {
    pub(crate) fn new(pack: &'a Pack) -> Engine<'a> {
        let now = Now { utc_ms: 1_777_881_600_000, offset_min: 120, mono_ms: 1_000, mono_epoch: "boot".into() };
        let mut engine = Engine { pack, visit: Visit::default(), now, unit: "A".into(), kept: None };
        engine.write(Body::RunStarted {
            unit: "A".into(),
            asset: "U-A".into(),
            label: "Invented".into(),
            pack: pack.pack.clone(),
            pack_digest: "00".into(),
            core: "test".into(),
        });
        engine
    }

    pub(crate) fn run(&self) -> &Run {
        self.visit.run(&self.unit).unwrap()
    }

    /// What is known, and what was before a pause.
    pub(crate) fn last_known(&self) -> Facts {
        let mut facts = self.run().lapsed;
        facts.extend(self.run().facts);
        facts
    }

    fn write(&mut self, body: Body) {
        let event = Event { visit: "v".into(), seq: 0, prev: "".into(), time: self.now.clone(), body };
        self.visit = apply(std::mem::take(&mut self.visit), &event);
    }

    /// Says that something could not be had. It changes no fact, so without a door it is written as `decide` would.
    fn could_not(&mut self, field: String, body: Body) {
        if self.kept.is_some() {
            let why = (format!("why:{field}"), "No tool");
            self.act(&Action::CouldNot { field }, &[why]).unwrap();
            return;
        }
        lapses(&self.visit, &self.now).into_iter().for_each(|lapsed| self.write(lapsed));
        self.write(body);
    }

    pub(crate) fn at(&mut self, now: Now) {
        self.now = now;
    }

    fn pass_ms(&mut self, ms: i64) {
        self.now.utc_ms += ms;
        self.now.mono_ms += ms;
    }

    /// Does an action with words for every field that it could want.
    pub(crate) fn act(&mut self, action: &Action, drafts: &[(String, &str)]) -> Result<(), Refusal> {
        let drafts: BTreeMap<_, _> = drafts.iter().map(|(field, text)| (field.clone(), (*text).to_owned())).collect();
        let around = Circumstances {
            unit: &self.unit,
            pack: self.pack,
            drafts: &drafts,
            units: Units::Metric,
            now: &self.now,
            technician: &Technician::default(),
            serial: None,
            model: None,
            shares: None,
            salt: "",
        };
        let decision = decide(&self.visit, action, &around)?;
        if let Some(kept) = &mut self.kept {
            kept.push((self.now.clone(), action.clone(), drafts.into_iter().collect()));
        }
        decision.events.into_iter().for_each(|body| self.write(body));
        Ok(())
    }

    fn step(&self, id: &StepId) -> &'a Step {
        self.pack.step(id.as_str()).unwrap().1
    }

    /// Gives whatever the step asks for inside: readings, photographs, settings, the waiting time.
    fn give_inside(&mut self, step: &Step) {
        for id in &step.readings {
            let reading = self.pack.reading(id.as_str()).unwrap();
            if self.run().readings.contains_key(id) || self.run().missed.contains_key(id) {
                continue;
            }
            let text = match reading.role.as_deref() {
                Some("loop-temperature" | "fitting-temperature") => "20",
                Some("rinse-ph" | "supply-ph") => "7.0",
                _ if reading.optional || reading.preset.is_some() => continue,
                _ => {
                    let reason = "No tool".into();
                    let body = Body::ReadingMissed { unit: "A".into(), reading: id.clone(), reason };
                    self.could_not(format!("read:{id}"), body);
                    continue;
                }
            };
            self.act(&Action::Enter { field: format!("read:{id}"), text: text.into() }, &[]).unwrap();
        }
        for slot in
            step.shots.iter().filter(|slot| !self.run().shots_missed.contains_key(*slot)).cloned().collect::<Vec<_>>()
        {
            let (field, reason) = (format!("shot:{slot}"), "No tool".into());
            self.could_not(field, Body::ShotMissed { unit: "A".into(), slot, reason });
        }
        if let Some(excursion) = &step.opens {
            let drafts = [(format!("home:{excursion}"), "55"), (format!("away:{excursion}"), "40")];
            self.act(&Action::OpenExcursion { excursion: excursion.0.clone() }, &drafts).unwrap();
        }
        if let Some(excursion) = &step.homes
            && self.run().excursions.get(excursion).is_some_and(|open| open.end == ExcursionEnd::Open)
        {
            let drafts = [(format!("back:{excursion}"), "55")];
            self.act(&Action::BringHome { excursion: excursion.0.clone() }, &drafts).unwrap();
        }
        if let Some(Mark::Running { least_s, .. }) = self.run().steps.get(&step.id) {
            self.pass_ms(i64::from(*least_s) * 1000);
        }
    }

    pub(crate) fn start(&mut self, id: &StepId) -> Result<(), Refusal> {
        self.act(&Action::Start { step: id.0.clone() }, &[])
    }

    /// Marks the step done after giving what it asks for.
    pub(crate) fn done(&mut self, id: &StepId) -> Result<(), Refusal> {
        self.give_inside(self.step(id));
        self.act(&Action::Done { step: id.0.clone() }, &[])
    }

    pub(crate) fn skip(&mut self, id: &StepId) -> Result<(), Refusal> {
        self.act(&Action::Skip { step: id.0.clone() }, &[(format!("skip:{id}"), "Not possible today")])
    }

    pub(crate) fn undo(&mut self, id: &StepId) -> Result<(), Refusal> {
        self.act(&Action::Undo { step: id.0.clone() }, &[])
    }

    pub(crate) fn answer(&mut self, condition: &str, option: &str) -> Result<(), Refusal> {
        self.act(&Action::Choose { field: format!("condition:{condition}"), option: option.into() }, &[])
    }

    /// So much time that facts lapse, also where a waiting time runs. It shows with the next action.
    pub(crate) fn pause(&mut self) {
        let most_s = |mark: &Mark| if let Mark::Running { most_s, .. } = mark { i64::from(*most_s) } else { 0 };
        let most_s = self.run().steps.values().map(most_s).max().unwrap_or(0);
        self.pass_ms(PAUSE_MS.max(most_s * 1000 + 1000));
    }

    pub(crate) fn go(&mut self, what: &Move) -> Result<(), Refusal> {
        match what {
            Move::Answer { condition, option } => self.answer(condition.as_str(), option),
            Move::Start { step } => self.start(step),
            Move::Done { step } => self.done(step),
            Move::Skip { step } => self.skip(step),
            Move::Undo { step } => self.undo(step),
            Move::Pause => {
                self.pause();
                Ok(())
            }
            Move::Recheck { fact } => self.act(&Action::Recheck { fact: fact.name().into() }, &[]),
        }
    }

    /// Is every step behind, or of no concern?
    pub(crate) fn is_at_the_end(&self) -> bool {
        use coilside_core::procedure::gate::{Applies, applies};
        let over = |step: &Step| self.run().is_behind(step.id.as_str()) || applies(step, self.run()) == Applies::No;
        self.pack.steps().all(|(_, step)| over(step))
    }

    /// What is missing, where the gate refused.
    pub(crate) fn missing(refused: Result<(), Refusal>) -> Vec<Missing> {
        match refused {
            Err(Refusal::Gate { missing, .. }) => missing,
            other => panic!("not refused by a gate: {other:?}"),
        }
    }
}
