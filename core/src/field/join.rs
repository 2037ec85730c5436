//! Joining an office at the door: what was typed becomes an attempt, and how it ended is told.

use super::DoorError;
use super::desk::Desk;
use crate::action::Action;
use crate::now::Now;
use crate::screen::{Button, JoinView, Notice, Tone, Turn};
use crate::store::{Commit, StoreError};
use crate::sync::{NotJoined, read_join};

/// Where what is typed to join is kept, and the screen's name.
pub(super) const JOIN: &str = "join";

impl Desk {
    /// Whether a field belongs to joining: then what was wrong with it is not wrong any more.
    pub(super) fn is_of_joining(&mut self, field: &str) -> bool {
        let is = field.starts_with("join-");
        if is {
            self.mistyped = None;
        }
        is
    }

    /// Reads what was typed and hands the attempt to the engine.
    pub(super) fn join(&mut self, action_id: &str, now: &Now) -> Result<Turn, DoorError> {
        let JoinView { code, office, name, .. } = self.join_view()?;
        match read_join(&code, &office, &name) {
            Ok(joining) => {
                self.mistyped = None;
                self.sender.join(joining);
            }
            Err(mistyped) => self.mistyped = Some(mistyped),
        }
        self.store.commit(&Commit { acted: Some((action_id, None)), utc_ms: now.utc_ms, ..Commit::default() })?;
        self.turn(Vec::new(), now)
    }

    /// What stands in the fields.
    pub(super) fn join_view(&self) -> Result<JoinView, StoreError> {
        let drafts = self.store.drafts(JOIN)?;
        let typed = |field: &str| drafts.get(field).map(|text| text.trim().to_owned()).unwrap_or_default();
        let name = Some(typed("join-name")).filter(|name| !name.is_empty());
        Ok(JoinView {
            code: typed("join-code"),
            office: typed("join-office"),
            name: name.unwrap_or_else(|| self.words.text("join-name-usual")),
            mistyped: self.mistyped,
        })
    }

    /// The office let the device in. The code is used up; the address stays in its field.
    pub(super) fn joined(&mut self) -> Result<(), StoreError> {
        self.store.put_draft(JOIN, "join-code", "", false)?;
        let office = self.sender.access().map(|access| access.office.clone()).unwrap_or_default();
        if self.place == JOIN {
            self.place = "outbox".to_owned();
            self.store.put_setting("place", "outbox")?;
        }
        let title = self.words.fill("join-done", &[("office", &office)]);
        self.tell(Notice {
            tone: Tone::Good,
            title,
            lines: vec![self.words.text("join-done.do")],
            buttons: Vec::new(),
        });
        Ok(())
    }

    /// It did not.
    pub(super) fn not_joined(&mut self, why: NotJoined) {
        let key = format!("join-not-{}", why.name());
        let (title, line) = (self.words.text(&key), self.words.text(&format!("{key}.do")));
        let away = self.place != JOIN;
        let buttons = away.then(|| Button {
            label: self.words.text("join-title"),
            tone: Tone::Plain,
            press: Action::Go { to: JOIN.to_owned() },
            hold: false,
        });
        self.tell(Notice { tone: Tone::Attention, title, lines: vec![line], buttons: buttons.into_iter().collect() });
    }
}
