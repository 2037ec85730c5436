//! What a visit's events mean, worked out so far.

use std::collections::{BTreeMap, BTreeSet};

use serde::{Deserialize, Serialize};

use super::event::{ByLetter, ChainEnd, Own, PhotoFacts, PhotoFlag, Severity};
use super::fact::{Fact, Facts, Value};
use crate::id::{ConditionId, Digest, ExcursionId, Letter, ReadingId, Slot, StepId, VisitId};
use crate::now::{Elapsed, Now};
use crate::procedure::danger::Danger;
use crate::procedure::mixing::MixNote;
use crate::round::cover::Judgement;

/// A visit, worked out from its events.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Visit {
    /// Which.
    pub id: VisitId,
    /// The end of its chain.
    pub end: ChainEnd,
    /// The assignment that it answers.
    pub assignment: String,
    /// Salted digest of the personal data beside the log.
    pub personal: Digest,
    /// The key of the device, SEC1 hex.
    pub device_key: String,
    /// When its first event was written.
    pub opened: Option<Now>,
    /// When its last event was written.
    pub last: Option<Now>,
    /// One run for each unit.
    pub runs: ByLetter<Run>,
    /// Where the device was.
    pub place: Option<Place>,
    /// What was used up and corrected by hand, by unit and item; '-' for what belongs to no unit.
    #[serde(default)]
    pub corrected: ByLetter<BTreeMap<String, Corrected>>,
    /// What the terms of cover ask for, beside what was there at the seal.
    #[serde(default)]
    pub cover: ByLetter<Judgement>,
    /// Stopped, with the reason.
    pub broken_off: Option<BrokenOff>,
    /// Frozen for the seal.
    pub sealing: Option<Sealing>,
    /// Whether the customer was there at the end; none while nobody said.
    #[serde(default)]
    pub customer_present: Option<bool>,
    /// They were there and did not sign.
    #[serde(default)]
    pub customer_unsigned: bool,
    /// The file with their name and signature, as it stands; none where there is none, or a later word took it back.
    #[serde(default)]
    pub shown: Option<Digest>,
    /// Every such file that the log names, in order.
    #[serde(default)]
    pub shown_files: Vec<Digest>,
    /// What was added after the seal, in order.
    #[serde(default)]
    pub addenda: Vec<Addendum>,
}

/// A unit's run of a procedure.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Run {
    /// The unit in the register.
    pub asset: String,
    /// Maker's model and serial as the assignment has them.
    pub label: String,
    /// The pack's name.
    pub pack: String,
    /// The pinned pack.
    pub pack_digest: Digest,
    /// Answers about the unit.
    pub conditions: BTreeMap<ConditionId, String>,
    /// What is known.
    pub facts: Facts,
    /// What a pause, or work on another unit, made not known, as it was.
    pub lapsed: Facts,
    /// Of those, the ones that work on another unit made not known, with that unit.
    #[serde(default)]
    pub lapsed_by: BTreeMap<Fact, Letter>,
    /// Marks of steps.
    pub steps: BTreeMap<StepId, Mark>,
    /// Steps in the order in which they were marked.
    pub order: Vec<StepId>,
    /// Values, the last one of each.
    pub readings: BTreeMap<ReadingId, Taken>,
    /// Values that could not be had, with the reason.
    pub missed: BTreeMap<ReadingId, String>,
    /// Mixes that were prepared, the last one of each.
    #[serde(default)]
    pub mixes: BTreeMap<String, Mixed>,
    /// Photographs by slot, in order.
    pub photos: BTreeMap<Slot, Vec<Photo>>,
    /// Photographs that could not be had, with the reason.
    pub shots_missed: BTreeMap<Slot, String>,
    /// Settings that were changed.
    pub excursions: BTreeMap<ExcursionId, Excursion>,
    /// Findings in order.
    pub findings: Vec<Finding>,
    /// Dangers that happened all the same.
    pub happened: Vec<Danger>,
}

/// How a step stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "mark", rename_all = "kebab-case")]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum Mark {
    /// Its waiting time runs. `seen` is the newest event since it began, `proven_ms` the time until then that certainly
    /// went by, `longest_ms` the longest that it can have been: so a device that was started anew goes on counting from
    /// its first word, and a wall clock that is set afterwards moves nothing.
    Running {
        since: Now,
        least_s: u32,
        most_s: u32,
        seen: Now,
        proven_ms: i64,
        #[serde(default = "not_told")]
        longest_ms: i64,
    },
    /// Done.
    Done { at: Now, sets: BTreeSet<Fact>, late: bool },
    /// Left out.
    Skipped { at: Now, reason: String },
    /// It happened against a refusal.
    Happened { at: Now, words: String },
}

/// A reading as taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Taken {
    /// Decimal text in `measure`, or words for a text reading.
    pub value: String,
    /// The unit's symbol.
    pub measure: String,
    /// With what.
    pub instrument: String,
    /// Half width of its error limits, decimal text in the same unit; empty where not stated.
    pub error_limit: String,
    /// Outside of what is usual, and confirmed.
    pub unusual: bool,
    /// The technician's own instrument, where it was one.
    #[serde(default)]
    pub own: Option<Own>,
    /// When.
    pub at: Now,
    /// How many times it was taken: more than once is a correction.
    pub times: u32,
}

/// A mix as it was prepared.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Mixed {
    /// The pack's chemical; empty where it names none.
    pub chemical: String,
    /// Litres, decimal text.
    pub water_l: String,
    /// Decimal text in `measure`.
    pub concentrate: String,
    /// `L` or `g`.
    pub measure: String,
    /// What did not fit together.
    pub notes: Vec<MixNote>,
    /// When.
    pub at: Now,
    /// How many times it was prepared.
    pub times: u32,
}

/// A photograph in its slot.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Photo {
    /// Of the original bytes.
    pub digest: Digest,
    /// Length of the original.
    pub bytes: u64,
    /// `image/jpeg` and so on.
    pub media: String,
    /// What file and phone tell.
    pub facts: PhotoFacts,
    /// What does not fit together.
    pub flags: Vec<PhotoFlag>,
    /// When it was taken into the log.
    pub at: Now,
}

/// A setting that was changed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Excursion {
    /// What it was, and must be again.
    pub home: String,
    /// What it was changed to.
    pub away: String,
    /// Why, where the person said more than the pack does.
    #[serde(default)]
    pub reason: String,
    /// How it ended.
    pub end: ExcursionEnd,
}

/// How an excursion ended.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum ExcursionEnd {
    /// It did not yet: this blocks the seal.
    Open,
    /// Back, as the controller shows it.
    /// Where that differs from before, `answered` says why it is right.
    Home {
        shows: String,
        #[serde(default)]
        answered: String,
    },
    /// It stays away, for a reason.
    Left { reason: String },
}

/// An amount corrected by hand.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Corrected {
    /// Decimal text in `measure`.
    pub amount: String,
    /// UCUM code.
    pub measure: String,
    /// When.
    pub at: Now,
}

/// Something wrong or worth knowing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Finding {
    /// How much it matters.
    pub severity: Severity,
    /// In the technician's words.
    pub text: String,
    /// When it was written down.
    pub at: Now,
    /// The day of the past visit that found it, ISO 8601; none where this one did.
    #[serde(default)]
    pub since: Option<String>,
    /// What was done about it, and when; none while it stands.
    #[serde(default)]
    pub mended: Option<Mended>,
}

/// A finding was mended.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Mended {
    /// What was done.
    pub words: String,
    /// When.
    pub at: Now,
}

/// A place with its doubt, decimal text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Place {
    /// Degrees north.
    pub latitude: String,
    /// Degrees east.
    pub longitude: String,
    /// Metres.
    pub accuracy_m: String,
}

/// The visit was stopped.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct BrokenOff {
    /// Why.
    pub reason: String,
    /// Dangers that were left.
    pub dangers: Vec<Danger>,
    /// When.
    pub at: Now,
}

/// The record is frozen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Sealing {
    /// Nothing is missing.
    pub complete: bool,
    /// What is missing, in words.
    pub missing: Vec<String>,
    /// When.
    pub at: Now,
}

/// Words that were added after the seal.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Addendum {
    /// What was added.
    pub text: String,
    /// When.
    pub at: Now,
}

/// Of a state that was kept before the longest was: it can have been any time.
const fn not_told() -> i64 {
    i64::MAX
}

impl Mark {
    /// How long the waiting time has run, as far as it can be told; none where none runs.
    #[must_use]
    pub fn waited(&self, now: &Now) -> Option<Elapsed> {
        let Mark::Running { seen, proven_ms, longest_ms, .. } = self else { return None };
        let since = now.since(seen);
        Some(Elapsed {
            proven_ms: proven_ms.saturating_add(since.proven_ms),
            longest_ms: longest_ms.saturating_add(since.longest_ms),
        })
    }

    /// An event came: what is proven until then is kept.
    pub(super) fn witness(&mut self, now: &Now) {
        if let Mark::Running { seen, proven_ms, longest_ms, .. } = self {
            let since = now.since(seen);
            *proven_ms = proven_ms.saturating_add(since.proven_ms);
            *longest_ms = longest_ms.saturating_add(since.longest_ms);
            seen.clone_from(now);
        }
    }
}

impl Visit {
    /// The run of a unit.
    #[must_use]
    pub fn run(&self, unit: &Letter) -> Option<&Run> {
        self.runs.get(unit)
    }

    /// Every photograph of the visit with its unit and slot.
    pub fn photos(&self) -> impl Iterator<Item = (&Letter, &Slot, &Photo)> {
        self.runs.iter().flat_map(|(letter, run)| {
            run.photos.iter().flat_map(move |(slot, photos)| photos.iter().map(move |photo| (letter, slot, photo)))
        })
    }
}

impl Run {
    /// Done, left out or happened: the step is behind.
    #[must_use]
    pub fn is_behind(&self, step: &str) -> bool {
        matches!(self.steps.get(step), Some(Mark::Done { .. } | Mark::Skipped { .. } | Mark::Happened { .. }))
    }

    /// What is known of a fact, or was before a pause.
    #[must_use]
    pub fn last_known(&self, fact: Fact) -> Option<Value> {
        self.facts.get(&fact).or_else(|| self.lapsed.get(&fact)).copied()
    }

    /// Facts become not known, as they were is kept to be looked at again. `by` is the unit whose work did it.
    pub(super) fn lapse(&mut self, facts: &Facts, by: Option<&Letter>) {
        for (fact, value) in facts.iter() {
            self.facts.remove(fact);
            self.lapsed.insert(*fact, *value);
            match by {
                Some(letter) => self.lapsed_by.insert(*fact, letter.clone()),
                None => self.lapsed_by.remove(fact),
            };
        }
    }

    /// A fact that had lapsed is known again.
    pub(super) fn looked_at(&mut self, fact: Fact) {
        self.lapsed.remove(&fact);
        self.lapsed_by.remove(&fact);
    }

    /// Is there an unsafe finding that nobody has mended?
    #[must_use]
    pub fn is_unsafe(&self) -> bool {
        self.findings.iter().any(|finding| finding.severity == Severity::Unsafe && finding.mended.is_none())
    }

    /// Settings away from home that nobody answered for.
    pub fn open_excursions(&self) -> impl Iterator<Item = (&ExcursionId, &Excursion)> {
        self.excursions.iter().filter(|(_, excursion)| excursion.end == ExcursionEnd::Open)
    }

    /// The reading's value as a number in its unit.
    #[must_use]
    pub fn number(&self, reading: &str) -> Option<f64> {
        self.readings.get(reading)?.value.parse().ok()
    }
}
