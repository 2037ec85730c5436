//! A technician in the middle of a visit: driven to a state, looked at, acted on, closed and opened again.

use coilside_core::action::Action;
use coilside_core::effect::{Effect, Outcome};
use coilside_core::field::{DoorError, Field};
use coilside_core::id::{Letter, VisitId};
use coilside_core::now::Now;
use coilside_core::round::Assignment;
use coilside_core::screen::{Screen, Turn};
use coilside_core::store::Store;
use coilside_core::visit::apply::replay;
use coilside_core::visit::event::Event;
use coilside_core::visit::state::{Run, Visit};
use coilside_office::demo::player::{Answers as _, Clock, Move, PlayError, Player};

use crate::look::{next_step, words_of};
use crate::{ADD_ON, MORNING_UTC_MS, Technician, assignment_of, folder, open};

/// Why a scene did not come about.
#[derive(Debug)]
pub enum SceneError {
    /// The door failed.
    Door(DoorError),
    /// The visit does not go on.
    Play(PlayError),
    /// The log does not hold.
    Log(String),
    /// Something else, in words.
    Other(String),
}

impl From<DoorError> for SceneError {
    fn from(error: DoorError) -> Self {
        SceneError::Door(error)
    }
}

impl From<PlayError> for SceneError {
    fn from(error: PlayError) -> Self {
        SceneError::Play(error)
    }
}

/// A visit under way in a folder of its own.
pub struct Scene {
    /// The folder; gone with the scene.
    pub folder: tempfile::TempDir,
    /// Who works.
    pub technician: Technician,
    /// The clock that only the scene moves.
    pub clock: Clock,
    field: Option<Field>,
    count: u32,
}

impl Scene {
    /// A door with one assignment, `a1`, and no visit yet.
    ///
    /// # Errors
    /// Where it cannot be opened.
    pub fn before(other: &[(&str, &str)]) -> Result<Scene, SceneError> {
        Scene::before_of(ADD_ON, other)
    }

    /// The same with a unit of another kind.
    ///
    /// # Errors
    /// Where it cannot be opened.
    pub fn before_of(pack: &str, other: &[(&str, &str)]) -> Result<Scene, SceneError> {
        Scene::of(Technician::at(pack, other), assignment_of("a1", pack))
    }

    /// A door with this assignment and no visit yet.
    ///
    /// # Errors
    /// Where it cannot be opened.
    pub fn of(technician: Technician, assignment: Assignment) -> Result<Scene, SceneError> {
        let scene = Scene::empty(technician, Clock::at(MORNING_UTC_MS, 120))?;
        scene.field().assigned(&[assignment])?;
        Ok(scene)
    }

    /// A door with nothing behind it.
    ///
    /// # Errors
    /// Where it cannot be opened.
    pub fn empty(technician: Technician, clock: Clock) -> Result<Scene, SceneError> {
        let folder = folder().map_err(|error| SceneError::Other(error.to_string()))?;
        let field = open(folder.path(), &clock.now(), &technician)?;
        Ok(Scene { folder, technician, clock, field: Some(field), count: 0 })
    }

    /// The visit of that assignment, just begun.
    ///
    /// # Errors
    /// Where it cannot be begun.
    pub fn begun(other: &[(&str, &str)]) -> Result<Scene, SceneError> {
        let mut scene = Scene::before(other)?;
        scene.act(&Action::StartVisit { assignment: "a1".into() })?;
        Ok(scene)
    }

    /// A visit played until this step is the next one.
    ///
    /// # Errors
    /// Where the step never comes.
    pub fn at_step(step: &str, other: &[(&str, &str)]) -> Result<Scene, SceneError> {
        let mut scene = Scene::begun(other)?;
        scene.play_to(step)?;
        Ok(scene)
    }

    /// The door.
    ///
    /// # Panics
    /// While it is closed: a fault of the test.
    #[allow(clippy::expect_used, reason = "a closed door is a fault of the test itself")]
    pub fn field(&self) -> &Field {
        self.field.as_ref().expect("the scene's door is open")
    }

    /// Now.
    #[must_use]
    pub fn now(&self) -> Now {
        self.clock.now()
    }

    /// Goes on as a person would until the step is the next one.
    ///
    /// # Errors
    /// Where the visit ends or stops before.
    pub fn play_to(&mut self, step: &str) -> Result<(), SceneError> {
        self.play_until(|screen| next_step(screen) == Some(step))
    }

    /// Goes on as a person would until a screen is reached.
    ///
    /// # Errors
    /// Where the visit ends or stops before.
    pub fn play_until(&mut self, reached: impl Fn(&Screen) -> bool) -> Result<(), SceneError> {
        let mut end = false;
        self.play_with(|player, moved| {
            end = moved == Some(&Move::Sealed);
            end || reached(player.screen())
        })?;
        if end { Err(SceneError::Other("the visit ended before".into())) } else { Ok(()) }
    }

    /// Goes on to the sealed record.
    ///
    /// # Errors
    /// Where the visit stops before.
    pub fn play_on(&mut self) -> Result<(), SceneError> {
        self.play_with(|_, moved| moved == Some(&Move::Sealed))
    }

    /// Goes on as a person would; the closure sees the player after each move and tells when to stop.
    ///
    /// # Errors
    /// Where the visit stops before.
    pub fn play_with(&mut self, mut stop: impl FnMut(&Player<'_>, Option<&Move>) -> bool) -> Result<(), SceneError> {
        self.count += 1;
        let Some(field) = &self.field else { return Err(SceneError::Other("the door is closed".into())) };
        let name = format!("played-{}", self.count);
        let mut player = Player::new(field, self.clock.clone(), &self.technician, &name)?;
        let mut moved: Option<Move> = None;
        while !stop(&player, moved.as_ref()) {
            moved = Some(player.go_on()?);
        }
        self.clock = player.clock.clone();
        Ok(())
    }

    /// Does an action under an id of its own.
    ///
    /// # Errors
    /// Where the door fails.
    pub fn act(&mut self, action: &Action) -> Result<Turn, DoorError> {
        self.count += 1;
        self.field().act(&format!("acted-{}", self.count), action, &self.clock.now())
    }

    /// Does an action at another moment than the scene's own.
    ///
    /// # Errors
    /// Where the door fails.
    pub fn act_at(&mut self, action: &Action, now: &Now) -> Result<Turn, DoorError> {
        self.count += 1;
        self.field().act(&format!("acted-{}", self.count), action, now)
    }

    /// Types into a field and leaves it.
    ///
    /// # Errors
    /// Where the door fails.
    pub fn enter(&mut self, field: &str, text: &str) -> Result<Turn, DoorError> {
        self.act(&Action::Enter { field: field.into(), text: text.into() })
    }

    /// Types words into a field.
    ///
    /// # Errors
    /// Where the door fails.
    pub fn draft(&mut self, field: &str, text: &str) -> Result<Turn, DoorError> {
        self.act(&Action::Draft { field: field.into(), text: text.into() })
    }

    /// Shows a place.
    ///
    /// # Errors
    /// Where the door fails.
    pub fn go(&mut self, to: &str) -> Result<Screen, DoorError> {
        Ok(self.act(&Action::Go { to: to.into() })?.screen)
    }

    /// The screen as it is.
    ///
    /// # Errors
    /// Where the door fails.
    pub fn screen(&self) -> Result<Screen, DoorError> {
        Ok(self.field().screen(&self.now())?.screen)
    }

    /// Asks for a photograph and answers with these bytes.
    ///
    /// # Errors
    /// Where the door fails or the file cannot be written.
    pub fn shoot(&mut self, slot: &str, bytes: &[u8]) -> Result<(Effect, Turn), SceneError> {
        let effect = self.ask_photo(slot)?;
        self.put_incoming(&effect.id, bytes)?;
        let turn = self.done(&effect.id, &Outcome::Photo { place: self.technician.place() })?;
        Ok((effect, turn))
    }

    /// Asks for a photograph.
    ///
    /// # Errors
    /// Where the door fails or asks for none.
    pub fn ask_photo(&mut self, slot: &str) -> Result<Effect, SceneError> {
        let turn = self.act(&Action::Shoot { slot: slot.into() })?;
        turn.effects.into_iter().next().ok_or_else(|| SceneError::Other(format!("no camera for '{slot}'")))
    }

    /// Puts a file where the effect's photograph is expected.
    ///
    /// # Errors
    /// Where it cannot be written.
    pub fn put_incoming(&self, effect: &str, bytes: &[u8]) -> Result<(), SceneError> {
        let path = self.field().incoming(effect)?;
        std::fs::write(path, bytes).map_err(|error| SceneError::Other(error.to_string()))
    }

    /// Reports an outcome.
    ///
    /// # Errors
    /// Where the door fails.
    pub fn done(&self, effect: &str, outcome: &Outcome) -> Result<Turn, DoorError> {
        self.field().done(effect, outcome, &self.now())
    }

    /// The stored bytes of the open visit's events.
    ///
    /// # Errors
    /// Where there is no visit or the store cannot be read.
    pub fn events(&self) -> Result<Vec<Vec<u8>>, SceneError> {
        Ok(self.field().events(&self.visit_id()?)?)
    }

    /// The newest event.
    ///
    /// # Errors
    /// Where there is none.
    pub fn last_event(&self) -> Result<Event, SceneError> {
        let events = self.events()?;
        let last = events.last().ok_or_else(|| SceneError::Other("no event".into()))?;
        Event::from_bytes(last, events.len() as u64 - 1).map_err(|error| SceneError::Log(error.to_string()))
    }

    /// The visit as its events alone tell it.
    ///
    /// # Errors
    /// Where the log does not hold.
    pub fn visit(&self) -> Result<Visit, SceneError> {
        let events = self.events()?;
        replay(&self.visit_id()?, events.iter().map(Vec::as_slice)).map_err(|error| SceneError::Log(error.to_string()))
    }

    /// The run of unit A.
    ///
    /// # Errors
    /// Where the log does not hold.
    pub fn run(&self) -> Result<Run, SceneError> {
        let visit = self.visit()?;
        visit.run(&Letter("A".into())).cloned().ok_or_else(|| SceneError::Other("no unit A".into()))
    }

    /// The open visit.
    ///
    /// # Errors
    /// Where there is none.
    pub fn visit_id(&self) -> Result<VisitId, SceneError> {
        self.field().current_visit().ok_or_else(|| SceneError::Other("no visit is open".into()))
    }

    /// Closes the door and looks into its store. The door stays closed until [`Scene::reopen`].
    ///
    /// # Errors
    /// Where the store cannot be opened.
    pub fn store(&mut self) -> Result<Store, SceneError> {
        self.field = None;
        Store::open(self.folder.path()).map_err(|error| SceneError::Other(error.to_string()))
    }

    /// The words of a key in a language, the pack's among them.
    ///
    /// # Panics
    /// Where there are none: a fault of the test.
    #[must_use]
    #[allow(clippy::expect_used, reason = "a key that is not there is a fault of the test itself")]
    pub fn text(&self, language: &str, key: &str) -> String {
        words_of(language, &self.technician.pack).get(key).expect("the key has words")
    }

    /// Closes the door, as a killed app does.
    pub fn close(&mut self) {
        self.field = None;
    }

    /// Opens the door again; an open one is closed first.
    ///
    /// # Errors
    /// Where it cannot be opened.
    pub fn reopen(&mut self) -> Result<Turn, DoorError> {
        self.reopen_at(&self.clock.now())
    }

    /// Opens the door again at another moment than the scene's own.
    ///
    /// # Errors
    /// Where it cannot be opened.
    pub fn reopen_at(&mut self, now: &Now) -> Result<Turn, DoorError> {
        self.field = None;
        let field = open(self.folder.path(), now, &self.technician)?;
        let turn = field.opened(now)?;
        self.field = Some(field);
        Ok(turn)
    }

    /// Another door on a copy of the log as it is at this moment, in a folder of its own.
    ///
    /// # Errors
    /// Where it cannot be copied or opened.
    pub fn copy(&self) -> Result<Scene, SceneError> {
        copy_of(self.folder.path(), &self.clock, &self.technician)
    }
}

/// A scene on a copy of a folder's log, also of one whose door is open.
///
/// # Errors
/// Where it cannot be copied or opened.
pub fn copy_of(from: &std::path::Path, clock: &Clock, technician: &Technician) -> Result<Scene, SceneError> {
    let other = |error: std::io::Error| SceneError::Other(error.to_string());
    let folder = folder().map_err(other)?;
    for name in ["field.db", "field.db-wal"] {
        if from.join(name).exists() {
            std::fs::copy(from.join(name), folder.path().join(name)).map_err(other)?;
        }
    }
    let technician =
        Technician { pack: technician.pack.clone(), other: technician.other.clone(), ..Technician::default() };
    let field = open(folder.path(), &clock.now(), &technician)?;
    Ok(Scene { folder, technician, clock: clock.clone(), field: Some(field), count: 10_000 })
}
