//! What the door hands to the screens.

use super::DoorError;
use super::desk::{Desk, words_for};
use crate::now::Now;
use crate::procedure::library::LoadedPack;
use crate::screen::{EngineView, Screen, View, VisitView, show};
use crate::visit::decide::rested;
use crate::words::Words;

impl Desk {
    pub(super) fn show(&self, now: &Now) -> Result<Screen, DoorError> {
        let drafts = self.store.drafts(&self.draft_place())?;
        let on_round =
            matches!(self.place.as_str(), "round" | "load") || is_of_program(&self.place) || self.seat.is_none();
        let rested = self.seat.as_ref().map(|seat| rested(&seat.visit, now));
        let shown = self.seat.as_ref().filter(|_| self.place == "leaving").and_then(|seat| self.shown(&seat.visit));
        let visit = match self.seat.as_ref().zip(rested.as_ref()) {
            Some((seat, visit)) => Some(VisitView {
                visit,
                unit: &seat.unit,
                run: visit
                    .run(&seat.unit)
                    .ok_or_else(|| DoorError::NoSuch { what: "unit", name: seat.unit.0.clone() })?,
                pack: &seat.pack.pack,
                assignment: &seat.assignment,
                technician: &self.technician,
                drafts: &drafts,
                problems: &self.problems,
                sealed: seat.sealed,
                elsewhere: seat.elsewhere,
                safe: seat.sealed && self.store.is_safe(&seat.visit.id)?,
                unsigned: self.is_unsigned(&seat.visit)?,
                shown: shown.as_ref(),
            }),
            None => None,
        };
        let (due, visits) =
            if on_round { (self.store.assignments_due()?, self.visit_lines()?) } else { (Vec::new(), Vec::new()) };
        let coming = if on_round { self.store.coming()? } else { Vec::new() };
        let packs = self.procedures.in_use();
        let pack_words = if self.place == "load" { self.words_of(&packs)? } else { Vec::new() };
        let engine = self.engine(now)?;
        let on_procedures = self.place == "procedures";
        let procedures = if on_procedures { self.procedures.lines(self.words.language()) } else { Vec::new() };
        Ok(show(&View {
            place: if visit.is_none() && self.place != "load" && !is_of_program(&self.place) {
                "round"
            } else {
                &self.place
            },
            words: &self.words,
            units: self.units,
            now,
            charge_percent: self.charge_percent,
            outbox: self.store.outbox_count()?,
            engine: &engine,
            notices: &self.notices,
            visit,
            due: &due,
            visits: &visits,
            coming: &coming,
            packs: &packs,
            pack_words: &pack_words,
            technician: &self.technician,
            procedures: &procedures,
            procedures_folder: self.procedures.has_folder(),
        }))
    }

    /// How sending stands; on the outbox's own screen with what waits.
    fn engine(&self, now: &Now) -> Result<EngineView, DoorError> {
        let standing = self.sender.standing(now);
        if self.place == "join" {
            return Ok(EngineView { standing, join: self.join_view()?, ..EngineView::default() });
        }
        if self.place != "outbox" {
            return Ok(EngineView { standing, ..EngineView::default() });
        }
        let mut sending = Vec::new();
        for out in &standing.sending {
            sending.extend(self.store.outbox_row(out.row)?.map(|row| (row, out.arrived)));
        }
        Ok(EngineView {
            groups: self.store.outbox_groups()?,
            last_safe_utc_ms: self.store.last_safe_utc_ms()?,
            sending,
            standing,
            ..EngineView::default()
        })
    }

    /// The words with those of each pack: on one screen, since reading them takes a moment.
    fn words_of(&self, packs: &[&LoadedPack]) -> Result<Vec<Words>, DoorError> {
        packs.iter().map(|pack| words_for(self.words.language(), Some(pack))).collect()
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
                    review: self.store.last_review(&row.visit)?,
                    id: row.visit,
                    opened_utc_ms: row.opened_utc_ms,
                    sealed: row.sealed,
                    elsewhere: row.elsewhere,
                })
            })
            .collect()
    }
}

/// Screens that belong to no visit and to no day.
fn is_of_program(place: &str) -> bool {
    matches!(place, "settings" | "outbox" | "join" | "procedures")
}
