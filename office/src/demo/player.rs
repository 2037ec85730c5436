//! Plays a visit at the core's door the way a person would: looks at the screen, answers what is asked, presses what is
//! offered. Used for the demo's history and by the tests.

use std::fs;
use std::sync::atomic::{AtomicU64, Ordering};

use coilside_core::action::Action;
use coilside_core::effect::{Effect, Outcome, PlaceFix, Request};
use coilside_core::field::{DoorError, Field};
use coilside_core::now::Now;
use coilside_core::screen::{Block, DwellState, Screen, StepState, Tone, Turn};

/// What a person would answer.
pub trait Answers {
    /// A number or words for a field.
    fn typed(&self, field: &str) -> Option<String>;
    /// An option for a question.
    fn chosen(&self, field: &str) -> Option<String>;
    /// A photograph's bytes for a slot, taken now.
    fn photograph(&self, slot: &str, now: &Now) -> Vec<u8>;
    /// Where the device is.
    fn place(&self) -> Option<PlaceFix>;
    /// Signs bytes given in base64; the signature in base64.
    fn sign(&self, bytes_base64: &str) -> String;
}

/// A door to play at: the core's own, or one that stands behind a local process.
pub trait PlayedDoor {
    /// The screen, with every request that is still open.
    ///
    /// # Errors
    /// Where the door fails.
    fn opened(&self, now: &Now) -> Result<Turn, PlayError>;
    /// The screen as it is now.
    ///
    /// # Errors
    /// Where the door fails.
    fn screen(&self, now: &Now) -> Result<Turn, PlayError>;
    /// Does an action.
    ///
    /// # Errors
    /// Where the door fails.
    fn act(&self, action_id: &str, action: &Action, now: &Now) -> Result<Turn, PlayError>;
    /// Takes an outcome.
    ///
    /// # Errors
    /// Where the door fails.
    fn done(&self, effect_id: &str, outcome: &Outcome, now: &Now) -> Result<Turn, PlayError>;
    /// Puts a photograph's bytes down for an effect.
    ///
    /// # Errors
    /// Where they cannot be put down.
    fn put_photograph(&self, effect_id: &str, bytes: &[u8]) -> Result<(), PlayError>;
    /// The door's own time, UTC milliseconds.
    fn utc_ms(&self, clock: &Clock) -> i64;
    /// Lets time go by.
    fn let_pass(&self, clock: &mut Clock, ms: i64);
}

impl PlayedDoor for Field {
    fn opened(&self, now: &Now) -> Result<Turn, PlayError> {
        Ok(Field::opened(self, now)?)
    }

    fn screen(&self, now: &Now) -> Result<Turn, PlayError> {
        Ok(Field::screen(self, now)?)
    }

    fn act(&self, action_id: &str, action: &Action, now: &Now) -> Result<Turn, PlayError> {
        Ok(Field::act(self, action_id, action, now)?)
    }

    fn done(&self, effect_id: &str, outcome: &Outcome, now: &Now) -> Result<Turn, PlayError> {
        Ok(Field::done(self, effect_id, outcome, now)?)
    }

    fn put_photograph(&self, effect_id: &str, bytes: &[u8]) -> Result<(), PlayError> {
        Ok(fs::write(self.incoming(effect_id)?, bytes)?)
    }

    fn utc_ms(&self, clock: &Clock) -> i64 {
        clock.now().utc_ms
    }

    fn let_pass(&self, clock: &mut Clock, ms: i64) {
        clock.pass_ms(ms);
    }
}

/// A clock that only the player moves.
#[derive(Clone, Debug)]
pub struct Clock {
    now: Now,
}

impl Clock {
    /// A clock that starts at a moment.
    #[must_use]
    pub fn at(utc_ms: i64, offset_min: i32) -> Clock {
        Clock { now: Now { utc_ms, offset_min, mono_ms: 1_000, mono_epoch: "played".into() } }
    }

    /// The same moment on another device, whose own count of time says nothing of this one's.
    #[must_use]
    pub fn elsewhere(&self, device: &str) -> Clock {
        Clock { now: Now { mono_ms: 1_000, mono_epoch: device.to_owned(), ..self.now.clone() } }
    }

    /// The moment.
    #[must_use]
    pub fn now(&self) -> Now {
        self.now.clone()
    }

    /// Lets time go by.
    pub fn pass_ms(&mut self, ms: i64) {
        self.now.utc_ms += ms;
        self.now.mono_ms += ms;
    }
}

/// Why a visit could not be played to its end.
#[derive(Debug, thiserror::Error)]
pub enum PlayError {
    /// The door failed.
    #[error(transparent)]
    Door(#[from] DoorError),
    /// A photograph could not be put down.
    #[error("a photograph could not be put down: {0}")]
    Io(#[from] std::io::Error),
    /// A door behind a local process failed.
    #[error("the local process failed: {0}")]
    Process(String),
    /// The visit does not go on.
    #[error("the visit does not go on at '{place}': {notices}")]
    Stuck {
        /// Where.
        place: String,
        /// What the screen says.
        notices: String,
    },
}

/// One step of a play: what the player did, to count and to stop at.
#[derive(Clone, Debug, PartialEq)]
pub enum Move {
    /// An action was done.
    Acted(Action),
    /// A request was answered.
    Answered(Request),
    /// The record is sealed: nothing more to do.
    Sealed,
}

/// A player at a door.
pub struct Player<'a> {
    /// The door.
    pub door: &'a dyn PlayedDoor,
    /// The clock.
    pub clock: Clock,
    answers: &'a dyn Answers,
    turn: Turn,
    waiting: Vec<Effect>,
    name: String,
    count: AtomicU64,
}

impl<'a> Player<'a> {
    /// Sits down at an open door. `name` makes the ids of its actions its own.
    ///
    /// # Errors
    /// Where the door fails.
    pub fn new(
        door: &'a dyn PlayedDoor,
        clock: Clock,
        answers: &'a dyn Answers,
        name: &str,
    ) -> Result<Player<'a>, PlayError> {
        let turn = door.opened(&clock.now())?;
        let waiting = turn.effects.clone();
        Ok(Player { door, clock, answers, turn, waiting, name: name.to_owned(), count: AtomicU64::new(0) })
    }

    /// The screen as the player sees it.
    #[must_use]
    pub fn screen(&self) -> &Screen {
        &self.turn.screen
    }

    /// How many actions it has done.
    #[must_use]
    pub fn acted(&self) -> u64 {
        self.count.load(Ordering::Relaxed)
    }

    /// Does an action.
    ///
    /// # Errors
    /// Where the door fails.
    pub fn act(&mut self, action: &Action) -> Result<(), PlayError> {
        let id = format!("{}-{}", self.name, self.count.fetch_add(1, Ordering::Relaxed));
        self.turn = self.door.act(&id, action, &self.clock.now())?;
        self.waiting.extend(self.turn.effects.clone());
        Ok(())
    }

    /// Plays until the record is sealed.
    ///
    /// # Errors
    /// Where the visit does not go on.
    pub fn play(&mut self) -> Result<(), PlayError> {
        while self.go_on()? != Move::Sealed {}
        Ok(())
    }

    /// Does the next thing that the screen asks for.
    ///
    /// # Errors
    /// Where there is nothing that leads on.
    pub fn go_on(&mut self) -> Result<Move, PlayError> {
        self.door.let_pass(&mut self.clock, 7_000);
        if let Some(effect) = self.waiting.pop() {
            return self.answer(&effect);
        }
        self.turn = self.door.screen(&self.clock.now())?;
        let screen = &self.turn.screen;
        if screen.place == "leaving" && !screen.foot.iter().any(|button| button.press == Action::Seal) {
            return Ok(Move::Sealed);
        }
        let action = self.inside().or_else(|| self.outside()).ok_or_else(|| self.stuck())?;
        let before = self.turn.screen.clone();
        self.act(&action)?;
        let after = &self.turn.screen;
        if *after == before && self.turn.effects.is_empty()
            || after.notices.iter().any(|notice| notice.tone == Tone::Danger)
        {
            return Err(self.stuck());
        }
        Ok(Move::Acted(action))
    }

    fn answer(&mut self, effect: &Effect) -> Result<Move, PlayError> {
        let outcome = match &effect.request {
            Request::TakePhoto { slot, .. } => {
                self.door.put_photograph(&effect.id, &self.answers.photograph(slot, &self.clock.now()))?;
                Outcome::Photo { place: self.answers.place() }
            }
            Request::Locate => match self.answers.place() {
                Some(place) => Outcome::Place { place },
                None => Outcome::Failed { why: "no place".into() },
            },
            Request::WakeAt { .. } => Outcome::Woken,
            Request::SignBytes { bytes_base64 } => Outcome::Signature { base64: self.answers.sign(bytes_base64) },
            // A player has no folder of packs: the visit's procedure is missing.
            Request::ReadPacks => return Err(self.stuck()),
        };
        self.turn = self.door.done(&effect.id, &outcome, &self.clock.now())?;
        Ok(Move::Answered(effect.request.clone()))
    }

    /// The first thing inside the steps that wants an answer.
    fn inside(&self) -> Option<Action> {
        let asks = self.turn.screen.blocks.iter().find_map(|block| match block {
            Block::TextEntry { field, text, .. } if text.is_empty() && field.starts_with("why:") => Some(field.clone()),
            _ => None,
        });
        if let Some(field) = asks {
            let text = self.answers.typed(&field).unwrap_or_else(|| "No instrument for it".to_owned());
            return Some(Action::Draft { field, text });
        }
        let steps = self.turn.screen.blocks.iter().filter_map(|block| match block {
            Block::Step { state: StepState::Open | StepState::Running, blocks, .. } => Some(blocks),
            _ => None,
        });
        steps.flatten().find_map(|block| self.inner(block))
    }

    fn inner(&self, block: &Block) -> Option<Action> {
        match block {
            Block::Choice { field, chosen: None, .. } => {
                Some(Action::Choose { field: field.clone(), option: self.answers.chosen(field)? })
            }
            Block::Number { field, taken: None, question, could_not, .. } => {
                if question.is_some() {
                    return Some(Action::Confirm { field: field.clone() });
                }
                match self.answers.typed(field) {
                    Some(text) => Some(Action::Enter { field: field.clone(), text }),
                    None => could_not.as_ref().map(|_| Action::Go { to: format!("why:{field}") }),
                }
            }
            Block::TextEntry { question: Some(question), .. } => Some(question.confirm.press.clone()),
            Block::TextEntry { field, text, .. } if text.is_empty() => {
                let text = self.answers.typed(field)?;
                let field = field.clone();
                Some(if field.starts_with("read:") {
                    Action::Enter { field, text }
                } else {
                    Action::Draft { field, text }
                })
            }
            Block::Button { button } => match &button.press {
                Action::OpenExcursion { .. } | Action::BringHome { .. } => Some(button.press.clone()),
                _ => None,
            },
            Block::Shot { photos, skip: Some(_), press, .. } if photos.is_empty() => Some(press.press.clone()),
            _ => None,
        }
    }

    /// What the lower half of the screen offers, when its time has come.
    fn outside(&mut self) -> Option<Action> {
        let running = self.turn.screen.blocks.iter().find_map(|block| match block {
            Block::Step { blocks, .. } => blocks.iter().find_map(|inner| match inner {
                Block::Dwell { state: DwellState::Running, least_at_utc_ms, .. } => Some(*least_at_utc_ms),
                _ => None,
            }),
            _ => None,
        });
        if let Some(until) = running {
            let left = until - self.door.utc_ms(&self.clock);
            self.door.let_pass(&mut self.clock, left.max(0) + 1_000);
        }
        self.turn.screen.foot.first().map(|button| button.press.clone())
    }

    fn stuck(&self) -> PlayError {
        let screen = &self.turn.screen;
        let notices = screen
            .notices
            .iter()
            .map(|notice| format!("{}: {}", notice.title, notice.lines.join(" / ")))
            .collect::<Vec<_>>();
        PlayError::Stuck { place: format!("{} {}", screen.place, screen.title), notices: notices.join(" | ") }
    }
}
