//! What a person can do at a screen. Screens carry these ready made; a shell only sends them back.

use serde::{Deserialize, Serialize};

/// One thing done at a screen, about the visit and unit that the screen shows.
///
/// Texts typed into fields do not travel inside other actions: a shell sends them with [`Action::Draft`]
/// while they are typed, and the action that needs one (a reason, a read-back) takes it from its field.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
#[serde(tag = "do", rename_all = "kebab-case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Action {
    /// Show another place: see `Screen::place` for the names.
    Go { to: String },
    /// Begin the visit of an assignment of the round.
    StartVisit { assignment: String },
    /// Keep what is half typed in a field, so that a killed app loses nothing.
    Draft { field: String, text: String },
    /// Take what was typed in a field as meant. For words that are no reading the same as [`Action::Draft`].
    Enter { field: String, text: String },
    /// Take an unusual value of a field after the question 'is that right?'.
    Confirm { field: String },
    /// A reading cannot be had. The reason is the draft of the field `why:<field>`.
    CouldNot { field: String },
    /// Choose one of a field's options.
    Choose { field: String, option: String },
    /// Begin a step that has a waiting time.
    Start { step: String },
    /// A step is done.
    Done { step: String },
    /// A step is left out. The reason is the draft of `skip:<step>`.
    Skip { step: String },
    /// A step was marked by mistake.
    Undo { step: String },
    /// A step that is refused has already happened: record the truth. Words: the draft of `happened:<step>`.
    Happened { step: String },
    /// Take a photograph for a slot.
    Shoot { slot: String },
    /// A setting was changed for the work. Home and away values: the drafts of `home:<id>` and `away:<id>`.
    OpenExcursion { excursion: String },
    /// The setting is back. What the controller shows now: the draft of `back:<id>`.
    BringHome { excursion: String },
    /// The setting stays away. The reason is the draft of `left:<id>`.
    LeaveAway { excursion: String },
    /// A fact that lapsed in a pause was looked at again and still holds.
    Recheck { fact: String },
    /// Note something wrong or worth knowing: the drafts of `finding` and the choice of `severity`.
    AddFinding,
    /// A finding was mended, the first being '0'. What was done: the draft of `mended:<finding>`.
    MendFinding { finding: String },
    /// The customer was shown what was done: takes the draft of `customer-name`, and where they have `drawn` that of
    /// `ink:customer`, the strokes as a shell keeps them (see `Block::Ink`).
    Sign { drawn: bool },
    /// Close the record: freezes it and asks for the signature.
    Seal,
    /// Go on working before the signature came.
    CancelSeal,
    /// Stop the visit here. The reason is the draft of `break-off`.
    BreakOff,
    /// Add words to a sealed record, in the draft of `addendum`; without words, ask again for the signature over the last ones.
    AddAddendum,
    /// Send what waits now, also what was stuck.
    SendNow,
    /// Join an office: its link or code, its address and the device's name are the drafts of `join-code`, `join-office` and
    /// `join-name`.
    Join,
    /// Read the procedures in the shell's folder again.
    ReadPacks,
    /// Change a setting of the app: `language` (`en`, `es`), `units` (`metric`, `us`), and over which network events and
    /// photographs may go: `send-events`, `send-previews`, `send-originals` (`any`, `unmetered`).
    Set { setting: String, value: String },
}
