//! The visit as screens: plain data that any shell can draw.

mod block;
mod charge;
mod close;
mod customer;
mod drawing;
mod excursion;
mod fields;
mod frame;
mod history;
mod join;
mod load;
mod materials;
mod mix;
mod notices;
mod outbox;
mod procedures;
mod reasons;
mod results;
mod round;
mod settings;
mod sheets;
mod sketch;
mod step;
mod used;
mod view;
mod work;

pub use block::*;
pub use drawing::{Drawing, DrawingLine};
pub use join::JoinView;
pub use notices::notice_of;
pub use outbox::EngineView;
pub use procedures::ProcedureLine;
pub use sketch::sketch;
pub use view::{View, VisitLine, VisitView, show};

use serde::{Deserialize, Serialize};

use crate::effect::Effect;
use crate::procedure::pack::Hazard;

/// Everything that a shell shows at one time.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Screen {
    /// Which screen: `round`, `now`, `phases`, `phase:<id>`, `photographs`, `readings`, `details`, `findings`, `leaving`,
    /// `break-off`, `emergency`, `outbox`, `join`, `procedures`, `settings`, `load`, `history`, `used`, `step:<id>`, `why:<what>`.
    /// A shell compares it to keep the scroll position.
    pub place: String,
    /// The language of the words, a BCP 47 tag.
    pub language: String,
    /// The title.
    pub title: String,
    /// What the title belongs to: the site, the phase.
    pub subtitle: String,
    /// The unit's letter, on every screen of a visit.
    pub unit: Option<String>,
    /// How far the visit is.
    pub progress: Option<Progress>,
    /// The facts that matter for safety, live, and settings that are away.
    pub strip: Vec<Live>,
    /// What must be seen first: refusals with their reasons, open dangers, pauses.
    pub notices: Vec<Notice>,
    /// The body.
    pub blocks: Vec<Block>,
    /// The buttons in the lower part, the first one large.
    pub foot: Vec<Button>,
    /// Ways to other screens, for a menu.
    pub menu: Vec<Button>,
    /// What still has to reach the office, in a few words.
    pub outbox: Live,
}

/// How far a visit is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Progress {
    /// Steps done or left out.
    pub done: u32,
    /// All steps of this unit.
    pub total: u32,
    /// The same in words.
    pub text: String,
}

/// A short live statement.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Live {
    /// Of what.
    pub label: String,
    /// How it is.
    pub value: String,
    /// How it should strike the eye.
    pub tone: Tone,
}

/// Something that must be seen before the rest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Notice {
    /// How it should strike the eye.
    pub tone: Tone,
    /// What it is.
    pub title: String,
    /// Each reason or thing to do, one line each.
    pub lines: Vec<String>,
    /// What can be done about it.
    pub buttons: Vec<Button>,
}

/// The answer of the door to every call.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Turn {
    /// What to show.
    pub screen: Screen,
    /// What the shell is asked to do: the requests that this call opened (all that are open, from `open`).
    pub effects: Vec<Effect>,
}

/// The name of a hazard in words and pictograms.
pub(crate) const fn hazard_name(hazard: Hazard) -> &'static str {
    match hazard {
        Hazard::Shock => "shock",
        Hazard::StoredEnergy => "stored-energy",
        Hazard::Acid => "acid",
        Hazard::Alkali => "alkali",
        Hazard::Spray => "spray",
        Hazard::Hot => "hot",
        Hazard::Fan => "fan",
        Hazard::Flammable => "flammable",
        Hazard::Height => "height",
        Hazard::Scald => "scald",
        Hazard::Backflow => "backflow",
        Hazard::Sharp => "sharp",
        Hazard::Refrigerant => "refrigerant",
        Hazard::Disposal => "disposal",
        Hazard::Chlorine => "chlorine",
        Hazard::HighPressure => "high-pressure",
        Hazard::Suffocation => "suffocation",
    }
}
