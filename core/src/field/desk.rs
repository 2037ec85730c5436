//! What the door holds between calls: the store, the visit that is open, and what was last refused.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::entropy::Entropy;
use super::packs::Procedures;
use super::{DoorError, Setup};
use crate::action::Action;
use crate::effect::Effect;
use crate::id::{Letter, VisitId};
use crate::now::Now;
use crate::procedure::library::{LoadedPack, from_pinned};
use crate::procedure::measure::Units;
use crate::round::{Assignment, Technician};
use crate::screen::{Notice, Turn};
use crate::store::Store;
use crate::store::shelf::FolderShelf;
use crate::sync::{Mistyped, Sender};
use crate::visit::decide::{Circumstances, Refusal, decide};
use crate::visit::event::hex;
use crate::visit::state::Visit;
use crate::words::{Words, is_spoken};

pub(super) struct Desk {
    pub(super) store: Store,
    /// For what is small: photographs are taken in without the desk's lock.
    pub(super) shelf: FolderShelf,
    pub(super) sender: Sender,
    /// What is wrong with what was typed to join.
    pub(super) mistyped: Option<Mistyped>,
    pub(super) public_key: Vec<u8>,
    pub(super) procedures: Procedures,
    /// The visit that cannot begin before its pack is there: its action and assignment.
    pub(super) wanted: Option<(String, String)>,
    /// The person asked for the packs to be read, and is told what came of it.
    pub(super) asked_for_packs: bool,
    pub(super) entropy: Entropy,
    pub(super) words: Words,
    pub(super) units: Units,
    pub(super) place: String,
    /// What the shell last said of the device's charge.
    pub(super) charge_percent: Option<u8>,
    pub(super) seat: Option<Seat>,
    /// Who works with this device.
    pub(super) technician: Technician,
    /// Problems of fields, until something else is typed there.
    pub(super) problems: BTreeMap<String, Refusal>,
    pub(super) notices: Vec<Notice>,
}

/// The visit that is open.
#[derive(Clone)]
pub(super) struct Seat {
    pub(super) visit: Visit,
    pub(super) unit: Letter,
    pub(super) pack: Arc<LoadedPack>,
    pub(super) assignment: Assignment,
    pub(super) sealed: bool,
    /// Another device goes on with it.
    pub(super) elsewhere: bool,
}

impl Seat {
    /// The serial number of a unit, as the register has it.
    pub(super) fn serial_of(&self, letter: &Letter) -> Option<&str> {
        let unit = self.assignment.units.iter().find(|unit| unit.letter == letter.0)?;
        Some(unit.serial.trim()).filter(|serial| !serial.is_empty())
    }

    /// The model of the unit that is shown, as the register has it.
    fn model(&self) -> Option<&str> {
        let unit = self.assignment.units.iter().find(|unit| unit.letter == self.unit.0)?;
        Some(unit.model.trim()).filter(|model| !model.is_empty())
    }

    /// What is typed belongs to one unit: two of them have the same fields.
    fn draft_place(&self) -> String {
        format!("{}/{}", self.visit.id, self.unit)
    }
}

impl Desk {
    pub(super) fn new(store: Store, shelf: FolderShelf, setup: &Setup) -> Result<Desk, DoorError> {
        let spoken = |language: &String| is_spoken(language);
        let language = store
            .setting("language")?
            .or_else(|| setup.language.clone())
            .filter(spoken)
            .unwrap_or_else(|| "en".to_owned());
        let units = units_of(store.setting("units")?.as_deref());
        let place = store.setting("place")?.unwrap_or_else(|| "round".to_owned());
        let visit = store.setting("visit")?.filter(|visit| !visit.is_empty()).map(VisitId);
        let technician = store.technician()?;
        let sender = super::send::sender(&store)?;
        let mut desk = Desk {
            technician,
            store,
            shelf,
            sender,
            mistyped: None,
            public_key: setup.public_key.clone(),
            procedures: Procedures::new()?,
            wanted: None,
            asked_for_packs: false,
            entropy: Entropy { seed: setup.entropy.clone(), drawn: 0 },
            words: Words::new(&language, None)?,
            units,
            place,
            charge_percent: None,
            seat: None,
            problems: BTreeMap::new(),
            notices: Vec::new(),
        };
        desk.packs_of_office()?;
        if let Some(visit) = visit {
            desk.sit_down(&visit, &setup.now)?;
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

    /// Opens a visit: reads its state, its pinned pack and their words, and asks again what was asked at a field before.
    pub(super) fn sit_down(&mut self, id: &VisitId, now: &Now) -> Result<(), DoorError> {
        let mut seat = self.seat_of(id)?;
        if let Some(letter) = self.store.setting(&unit_of(id))? {
            seat.unit = Letter(letter);
        }
        self.words = words_for(self.words.language(), Some(&seat.pack))?;
        self.problems = self.asked_before(&seat, now)?;
        self.seat = Some(seat);
        Ok(())
    }

    /// What stands at the fields whose text was meant: a question that was open when the device died is still open.
    fn asked_before(&self, seat: &Seat, now: &Now) -> Result<BTreeMap<String, Refusal>, DoorError> {
        let drafts = self.store.drafts(&seat.draft_place())?;
        let around = self.around(seat, &drafts, "", now);
        let meant = self.store.meant_drafts(&seat.draft_place())?.into_iter();
        let asked = meant.filter_map(|field| {
            let text = drafts.get(&field)?.clone();
            let refusal = decide(&seat.visit, &Action::Enter { field: field.clone(), text }, &around).err()?;
            refusal.field().is_some().then_some((field, refusal))
        });
        Ok(asked.collect())
    }

    /// What a decision about an open visit looks at. `salt` is fresh where a digest is made that must not tell what it is of.
    pub(super) fn around<'a>(
        &'a self,
        seat: &'a Seat,
        drafts: &'a BTreeMap<String, String>,
        salt: &'a str,
        now: &'a Now,
    ) -> Circumstances<'a> {
        Circumstances {
            unit: &seat.unit,
            pack: &seat.pack.pack,
            drafts,
            units: self.units,
            now,
            technician: &self.technician,
            serial: seat.serial_of(&seat.unit),
            model: seat.model(),
            shares: seat.assignment.shares.as_deref(),
            salt,
        }
    }

    pub(super) fn seat_of(&self, id: &VisitId) -> Result<Seat, DoorError> {
        let no_such = |what, name: &str| DoorError::NoSuch { what, name: name.to_owned() };
        let visit = self.store.visit(id)?;
        let (unit, run) = visit.runs.iter().next().ok_or_else(|| no_such("visit", id.as_str()))?;
        let pinned = self.store.pinned_pack(&run.pack_digest)?.ok_or_else(|| no_such("pack", &run.pack))?;
        let (assignment, _) =
            self.store.assignment(&visit.assignment)?.ok_or_else(|| no_such("assignment", &visit.assignment))?;
        let sealed = self.store.seal(id)?.is_some();
        let elsewhere = self.store.is_elsewhere(id)?;
        Ok(Seat { unit: unit.clone(), pack: Arc::new(from_pinned(&pinned)?), assignment, sealed, elsewhere, visit })
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

    pub(super) fn draft_place(&self) -> String {
        self.seat.as_ref().map(Seat::draft_place).unwrap_or_default()
    }
}

/// The setting that holds which unit of a visit the person is at.
pub(super) fn unit_of(visit: &VisitId) -> String {
    format!("unit:{visit}")
}

pub(super) fn units_of(setting: Option<&str>) -> Units {
    if setting == Some("us") { Units::Us } else { Units::Metric }
}

pub(super) fn words_for(language: &str, pack: Option<&LoadedPack>) -> Result<Words, DoorError> {
    let own = pack.and_then(|pack| pack.source.words.get(language).or_else(|| pack.source.words.get("en")));
    Ok(Words::new(language, own.map(String::as_str))?)
}
