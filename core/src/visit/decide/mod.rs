//! What may be added: state, action and time in; events and requests out, or a refusal with its reason.

mod customer;
mod evidence;
mod excursion;
mod pause;
mod reading;
mod seal;
mod shared;
mod step;
mod used;

pub use customer::{INK_FIELD, NAME_FIELD};
pub use evidence::photo_events;
pub use excursion::reads_alike;
pub use pause::{lapses, rested};
pub use seal::{Gap, completeness, gaps};
pub use step::WARNING_MS;

use std::collections::BTreeMap;

use super::event::{Body, Severity};
use super::state::{Run, Visit};
use crate::action::Action;
use crate::effect::Request;
use crate::evidence::InkError;
use crate::id::{ExcursionId, Letter, StepId};
use crate::now::Now;
use crate::procedure::danger::Danger;
use crate::procedure::gate::Missing;
use crate::procedure::measure::Units;
use crate::procedure::pack::Pack;
use crate::round::{Shared, Technician};
use crate::words::number::NumberError;

/// Everything that a decision looks at beside the visit itself.
pub struct Circumstances<'a> {
    /// The unit that the screen shows.
    pub unit: &'a Letter,
    /// Its pack.
    pub pack: &'a Pack,
    /// Half-typed texts by field.
    pub drafts: &'a BTreeMap<String, String>,
    /// The units that people type in.
    pub units: Units,
    /// When.
    pub now: &'a Now,
    /// Who works, with their own instruments.
    pub technician: &'a Technician,
    /// The unit's serial number as the register has it; none where it has none.
    pub serial: Option<&'a str>,
    /// The unit's model as the register has it; none where it has none.
    pub model: Option<&'a str>,
    /// What the units of the visit share; none where nobody wrote it down.
    pub shares: Option<&'a [Shared]>,
    /// Fresh random text, for a digest that must not tell what it is of.
    pub salt: &'a str,
}

/// What is added.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Decision {
    /// Events to write, in order.
    pub events: Vec<Body>,
    /// Requests to the shell, opened with the last event.
    pub requests: Vec<Request>,
    /// Fields whose half-typed text is used up.
    pub used: Vec<String>,
    /// Where to go.
    pub go: Option<String>,
    /// A file that an event names by its digest, to be kept and sent beside the log.
    pub beside: Option<Vec<u8>>,
}

/// Why an action was turned down. Nothing was lost.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum Refusal {
    /// Something is missing first.
    #[error("the step '{step}' may not go on: {missing:?}")]
    Gate { step: StepId, missing: Vec<Missing> },
    /// Typed text is no number.
    #[error("the field '{field}' holds no number: {error}")]
    Number { field: String, error: NumberError },
    /// A number that cannot be.
    #[error("the value in '{field}' cannot be: it must lie between {least} and {most}")]
    Impossible { field: String, least: String, most: String },
    /// A number that is unusual: asked back.
    #[error("the value in '{field}' is unusual: it mostly lies between {from} and {to}")]
    Unusual { field: String, from: String, to: String },
    /// A serial number or model that is not the register's: asked back, for it may be another unit.
    #[error("the plate's text in '{field}' is '{read}', the register has '{register}'")]
    OtherUnit { field: String, register: String, read: String },
    /// A setting that was brought back shows something else than before.
    #[error("the setting in '{field}' shows '{shows}' and was '{home}'")]
    ReadBack { field: String, home: String, shows: String },
    /// Words are needed.
    #[error("words are needed in '{field}'")]
    Words { field: String },
    /// A drawing or a name that is not taken as it is.
    #[error("what was drawn or typed in '{field}' is not taken: {why}")]
    Ink { field: String, why: InkError },
    /// The pack has no such thing.
    #[error("the procedure has no '{name}'")]
    NoSuch { name: String },
    /// The record is closed.
    #[error("the record is sealed; only addenda can follow")]
    Sealed,
    /// Another device goes on with the visit.
    #[error("another device goes on with this visit; go on there, or ask the office to give it back")]
    Elsewhere,
    /// The record is frozen until it is signed.
    #[error("the record is being sealed; cancel that to go on working")]
    Sealing,
    /// The visit was stopped: only the seal follows.
    #[error("the visit was broken off; only the seal follows")]
    BrokenOff,
    /// Not sealed while a name or a drawing is not taken yet.
    #[error("a name or a drawing of the customer is not in the record yet")]
    SignatureWaits,
    /// Not sealed while a setting is away and nobody answered for it.
    #[error("a setting is away from home: {excursions:?}")]
    SettingsAway { excursions: Vec<ExcursionId> },
    /// Not sealed as it stands.
    #[error("the record cannot be sealed: {dangers:?}")]
    Dangers { dangers: Vec<Danger> },
}

impl Refusal {
    /// The field that it speaks of, if it is about what was typed there.
    #[must_use]
    pub fn field(&self) -> Option<&str> {
        match self {
            Refusal::Number { field, .. }
            | Refusal::Impossible { field, .. }
            | Refusal::Unusual { field, .. }
            | Refusal::OtherUnit { field, .. }
            | Refusal::ReadBack { field, .. }
            | Refusal::Ink { field, .. }
            | Refusal::Words { field } => Some(field),
            _ => None,
        }
    }
}

/// Decides what an action adds to a visit.
///
/// # Errors
/// A refusal with its reason.
pub fn decide(visit: &Visit, action: &Action, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    guard(visit, action)?;
    let rested = pause::rested(visit, around.now);
    let run = rested.run(around.unit).ok_or_else(|| Refusal::NoSuch { name: around.unit.to_string() })?;
    let mut decision = decide_rested(&rested, run, action, around)?;
    if !decision.events.is_empty() {
        let shared = shared::lapses(&rested, &decision.events, around)?;
        decision.events.extend(shared);
        decision.events.splice(0..0, pause::lapses(visit, around.now));
    }
    Ok(decision)
}

fn guard(visit: &Visit, action: &Action) -> Result<(), Refusal> {
    if visit.sealing.is_some() && !matches!(action, Action::CancelSeal | Action::Seal) {
        return Err(Refusal::Sealing);
    }
    let closing = matches!(
        action,
        Action::Seal
            | Action::CancelSeal
            | Action::AddFinding
            | Action::Shoot { .. }
            | Action::Choose { .. }
            | Action::Sign { .. }
    );
    // How much was used is still to be told of a visit that was stopped.
    let counting = matches!(action, Action::Enter { field, .. } if field.starts_with("used:"));
    if visit.broken_off.is_some() && !closing && !counting {
        return Err(Refusal::BrokenOff);
    }
    Ok(())
}

fn decide_rested(visit: &Visit, run: &Run, action: &Action, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    match action {
        Action::Start { step } => step::start(run, step, around),
        Action::Done { step } => step::done(visit, run, step, around),
        Action::Skip { step } => step::skip(run, step, around),
        Action::Undo { step } => step::undo(run, step, around),
        Action::Happened { step } => step::happened(run, step, around),
        Action::Choose { field, option } if field == "customer" => customer::noted(visit, option),
        Action::Sign { drawn } => customer::signs(*drawn, around),
        Action::Choose { field, option } => step::choose(run, field, option, around),
        Action::Enter { field, text } if field.starts_with("used:") => used::correct(visit, field, text, around),
        Action::Enter { field, text } => reading::enter(visit, field, text, false, around),
        Action::Confirm { field } => {
            let text = around.drafts.get(field).cloned().unwrap_or_default();
            reading::enter(visit, field, &text, true, around)
        }
        Action::CouldNot { field } => reading::could_not(field, around),
        Action::Shoot { slot } => evidence::shoot(slot, around),
        Action::OpenExcursion { excursion } => excursion::open(run, excursion, around),
        Action::BringHome { excursion } => excursion::home(run, excursion, around),
        Action::LeaveAway { excursion } => excursion::leave(run, excursion, around),
        Action::Recheck { fact } => pause::recheck(run, fact, around),
        Action::AddFinding => finding(around),
        Action::MendFinding { finding } => mend(run, finding, around),
        Action::Seal => seal::prepare(visit, around),
        Action::CancelSeal => Ok(Decision { events: vec![Body::SealCancelled {}], ..Decision::default() }),
        Action::BreakOff => seal::break_off(visit, around),
        // Only after the seal, and then no decision is asked: `Desk::add_addendum`.
        Action::AddAddendum => Err(Refusal::NoSuch { name: "addendum before the seal".into() }),
        Action::Go { .. }
        | Action::StartVisit { .. }
        | Action::Draft { .. }
        | Action::SendNow
        | Action::Join
        | Action::ReadPacks
        | Action::Set { .. } => Ok(Decision::default()),
    }
}

/// The words of a field, or the refusal that asks for them.
fn words(field: &str, around: &Circumstances<'_>) -> Result<String, Refusal> {
    let text = around.drafts.get(field).map(|text| text.trim().to_owned()).unwrap_or_default();
    if text.is_empty() { Err(Refusal::Words { field: field.to_owned() }) } else { Ok(text) }
}

/// A finding is mended, with what was done about it.
fn mend(run: &Run, finding: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let no_such = || Refusal::NoSuch { name: format!("{finding}: a finding that stands") };
    let number: u32 = finding.parse().map_err(|_| no_such())?;
    let stands = usize::try_from(number).ok().and_then(|at| run.findings.get(at));
    stands.filter(|stands| stands.mended.is_none()).ok_or_else(no_such)?;
    let field = format!("mended:{finding}");
    let words = words(&field, around)?;
    Ok(Decision {
        events: vec![Body::FindingMended { unit: around.unit.clone(), finding: number, words }],
        used: vec![field],
        ..Decision::default()
    })
}

fn finding(around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let text = words("finding", around)?;
    let severity = match around.drafts.get("severity").map(String::as_str) {
        Some("unsafe") => Severity::Unsafe,
        Some("soon") => Severity::Soon,
        Some("note") => Severity::Note,
        _ => return Err(Refusal::Words { field: "severity".into() }),
    };
    Ok(Decision {
        events: vec![Body::FindingAdded { unit: around.unit.clone(), severity, text, since: None }],
        used: vec!["finding".into(), "severity".into()],
        ..Decision::default()
    })
}
