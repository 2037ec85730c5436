//! Events: what is written down, for good. They carry the facts that they set, so that reading them needs no pack.
//!
//! Stored bytes are canonical JSON (RFC 8785) with strings and integers only: measured values are decimal text with
//! their unit, so that no two canonicalisers can disagree about a number.

use std::collections::BTreeMap;

pub use coilside_picture::{Code as PhotoCode, Look as PhotoLook, Symbology};
use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};

use super::fact::{Fact, Facts};
use crate::id::{ConditionId, Digest, ExcursionId, Letter, ReadingId, Slot, StepId, VisitId};
use crate::now::Now;
use crate::procedure::danger::Danger;
use crate::procedure::mixing::MixNote;
use crate::round::cover::Judgement;

/// The format of the log that this version writes.
pub const FORMAT: u32 = 1;

/// The `prev` of the first event.
pub const NO_PREV: &str = "0000000000000000000000000000000000000000000000000000000000000000";

/// One event with its place in the chain.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Event {
    /// Of which visit.
    pub visit: VisitId,
    /// 0, 1, 2, …
    pub seq: u64,
    /// SHA-256 of the stored bytes of the event before.
    pub prev: Digest,
    /// When.
    pub time: Now,
    /// What.
    #[serde(flatten)]
    pub body: Body,
}

/// What happened.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum Body {
    /// The first event. `personal` is a salted digest of the owner's and site's data, which lie beside the log.
    VisitOpened { format: u32, device_key: String, assignment: String, personal: Digest },
    /// A unit's run of a procedure begins; the pack's bytes are pinned by their digest.
    RunStarted { unit: Letter, asset: String, label: String, pack: String, pack_digest: Digest, core: String },
    /// A question about the unit was answered.
    ConditionSet { unit: Letter, condition: ConditionId, option: String, sets: Facts },
    /// A step with a waiting time began.
    StepStarted { unit: Letter, step: StepId, sets: Facts, least_s: u32, most_s: u32 },
    /// A step is done. `late` tells that its waiting time went past the most.
    StepDone {
        unit: Letter,
        step: StepId,
        sets: Facts,
        clears: Vec<Fact>,
        #[serde(default, skip_serializing_if = "is_false")]
        late: bool,
    },
    /// A step was left out.
    StepSkipped { unit: Letter, step: StepId, reason: String },
    /// A mark was taken back: what the step had set is not known any more.
    StepUndone { unit: Letter, step: StepId, clears: Vec<Fact> },
    /// A step happened although it was refused. The truth, with the dangers that it brought.
    StepHappened { unit: Letter, step: StepId, sets: Facts, clears: Vec<Fact>, words: String, dangers: Vec<Danger> },
    /// A value was measured or read off. `value` is decimal text in `unit`; `typed` is what the person wrote.
    ReadingTaken {
        #[serde(rename = "unit")]
        letter: Letter,
        reading: ReadingId,
        value: String,
        #[serde(rename = "in")]
        measure: String,
        typed: String,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        instrument: String,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        error_limit: String,
        #[serde(default, skip_serializing_if = "is_false")]
        unusual: bool,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        own: Option<Own>,
    },
    /// A mix was prepared: water and concentrate as the screen told them, and what did not fit together about it.
    MixMade {
        unit: Letter,
        mix: String,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        chemical: String,
        water_l: String,
        concentrate: String,
        #[serde(rename = "in")]
        measure: String,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        notes: Vec<MixNote>,
    },
    /// A value could not be had.
    ReadingMissed { unit: Letter, reading: ReadingId, reason: String },
    /// A photograph is on the shelf.
    PhotoTaken {
        unit: Letter,
        slot: Slot,
        digest: Digest,
        bytes: u64,
        media: String,
        facts: PhotoFacts,
        flags: Vec<PhotoFlag>,
    },
    /// A photograph could not be had.
    ShotMissed { unit: Letter, slot: Slot, reason: String },
    /// A controller setting is away from home. Without a reason of the person's own the pack's words say why.
    ExcursionOpened {
        unit: Letter,
        excursion: ExcursionId,
        home: String,
        away: String,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        reason: String,
    },
    /// It is back, and this is what the controller shows; where that is not what it was before, why that is right.
    ExcursionHome {
        unit: Letter,
        excursion: ExcursionId,
        shows: String,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        answered: String,
    },
    /// It stays away.
    ExcursionLeft { unit: Letter, excursion: ExcursionId, reason: String },
    /// Facts that a pause made not known, or work on another unit that shares them.
    FactsLapsed {
        unit: Letter,
        facts: Facts,
        pause_s: u64,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        by: Option<Letter>,
    },
    /// A lapsed fact was looked at again.
    FactRechecked { unit: Letter, fact: Fact, value: super::fact::Value },
    /// Something wrong or worth knowing. `since` is the day of the past visit that found it, ISO 8601, where it was carried
    /// over because nobody had mended it.
    FindingAdded {
        unit: Letter,
        severity: Severity,
        text: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        since: Option<String>,
    },
    /// A finding was mended: the first is 0. What was done, in words.
    FindingMended { unit: Letter, finding: u32, words: String },
    /// What was used up, corrected by hand. `amount` is decimal text in the unit `in`; `unit` is '-' for the time on site.
    UsedCorrected {
        unit: Letter,
        item: String,
        amount: String,
        #[serde(rename = "in")]
        measure: String,
        typed: String,
    },
    /// What the terms of cover ask for, beside what is there: looked at before the seal. The desk decides.
    CoverJudged { unit: Letter, judgement: Judgement },
    /// Where the device was. Degrees and metres as decimal text.
    PlaceFixed { latitude: String, longitude: String, accuracy_m: String, age_ms: i64 },
    /// The place could not be had.
    PlaceMissing { why: String },
    /// The device counts time anew (a boot, a page loaded again) while a waiting time runs: from here on it is proven.
    DeviceRestarted {},
    /// The office let another device go on: it writes from here on, and its key seals.
    DeviceChanged { device_key: String },
    /// The visit was stopped.
    BrokenOff { reason: String, dangers: Vec<Danger> },
    /// The record is frozen: what is missing and why, and whether it is complete.
    SealPrepared { complete: bool, missing: Vec<String> },
    /// Work went on before the signature came.
    SealCancelled {},
    /// Whether the customer, or somebody for them, was there at the end; and `unsigned`, that they were and did not sign, which
    /// nobody must. Who it was stands beside the log, never in it: `shown` is the SHA-256 of the file with their name and
    /// signature, which carries its own salt.
    CustomerNoted {
        present: bool,
        #[serde(default, skip_serializing_if = "is_false")]
        unsigned: bool,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        shown: Option<Digest>,
    },
    /// Added after the seal, in the technician's words. It is signed again, over all events with it.
    AddendumAdded { text: String },
    /// A kind that this version does not know. It stays in the chain and means nothing here.
    #[serde(skip)]
    Unknown { kind: String },
}

/// The technician's own instrument, as a reading was taken with it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Own {
    /// What the technician calls it.
    pub name: String,
    /// Serial number.
    pub serial: String,
    /// The last day of its calibration, ISO 8601; empty where it needs none.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub calibrated_until: String,
    /// That day lies before the visit's.
    #[serde(default, skip_serializing_if = "is_false")]
    pub lapsed: bool,
}

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    /// Worth knowing.
    Note,
    /// Should be mended soon.
    Soon,
    /// Must not be run so.
    Unsafe,
}

impl Severity {
    /// The key of its words.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Severity::Note => "severity-note",
            Severity::Soon => "severity-soon",
            Severity::Unsafe => "severity-unsafe",
        }
    }
}

/// What the file and the phone tell about a photograph. Text as EXIF has it; empty where it has none.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct PhotoFacts {
    /// Pixels across, as stored.
    pub width: u32,
    /// Pixels down, as stored.
    pub height: u32,
    /// EXIF orientation, 1 to 8; 0 where it has none.
    pub orientation: u32,
    /// EXIF DateTimeOriginal.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub taken: String,
    /// EXIF OffsetTimeOriginal.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub offset: String,
    /// EXIF place, degrees with five decimals, 'lat lon'.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub exif_place: String,
    /// The phone's place when it was taken, 'lat lon accuracy_m'.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub phone_place: String,
    /// What was measured in the picture; none where it is too small or cannot be decoded.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub look: Option<PhotoLook>,
    /// Where it was taken, beside the site's place; none where one of the two is not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_site: Option<AtSite>,
    /// The codes that were read in it, where it shows a plate.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub codes: Vec<PhotoCode>,
}

/// Where a photograph was taken, beside the site's place.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct AtSite {
    /// `at-site`, `elsewhere` or `too-close-to-call`.
    pub verdict: String,
    /// Distance from the site's place, metres.
    pub apart_m: u32,
    /// The doubt of that distance, metres.
    pub doubt_m: u32,
}

impl AtSite {
    /// At the site, doubt and all.
    pub const HERE: &'static str = "at-site";
    /// Not at the site, doubt and all.
    pub const ELSEWHERE: &'static str = "elsewhere";
    /// The doubt reaches across the site's edge.
    pub const TOO_CLOSE: &'static str = "too-close-to-call";
}

/// What does not fit together about a photograph. Flagged, never hidden; it never stops the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PhotoFlag {
    /// EXIF time and phone time differ by more than ten minutes.
    TimeDiffers,
    /// The picture carries no time.
    NoTime,
    /// EXIF place and phone place lie further apart than their doubt.
    PlaceDiffers,
    /// The same bytes were already taken for another slot.
    SameAsOther,
    /// The platform had no preview to show.
    NoPreview,
    /// Smeared, or nothing is to be seen.
    Blurred,
    /// Nearly all of it is black.
    Dark,
    /// Much of it is burnt out.
    BlownOut,
    /// It shows the same as the photograph before the work.
    SameAsBefore,
    /// It shows the same as a photograph of another slot.
    LooksLikeOther,
    /// The device's wall clock went back since the last event.
    ClockSetBack,
    /// Neither camera nor phone told where it was taken, although it was just now.
    NoPlace,
    /// It was taken elsewhere than at the site.
    Elsewhere,
    /// The place is too uncertain to tell whether that is the site.
    PlaceUnsure,
    /// A code on the unit's plate gives another serial number than the register.
    OtherSerial,
}

/// What is wrong with stored bytes.
#[derive(Debug, thiserror::Error)]
pub enum ChainError {
    /// Not an event at all.
    #[error("event {seq} cannot be read: {detail}; the record is damaged there")]
    Unreadable {
        /// Which.
        seq: u64,
        /// Why.
        detail: String,
    },
    /// The chain does not hold.
    #[error("event {seq} does not follow the one before: {what} differs; the record was changed or lost there")]
    Broken {
        /// Which.
        seq: u64,
        /// In what.
        what: &'static str,
    },
    /// An event could not be written.
    #[error("the event could not be put into canonical form: {0}")]
    Unwritable(String),
}

const fn is_false(value: &bool) -> bool {
    !*value
}

/// SHA-256 of bytes, lower-case hex.
#[must_use]
pub fn sha256(bytes: &[u8]) -> Digest {
    hex(&Sha256::digest(bytes))
}

/// Bytes as lower-case hex.
#[must_use]
pub fn hex(bytes: &[u8]) -> Digest {
    use std::fmt::Write as _;
    let mut text = String::with_capacity(bytes.len() * 2);
    for byte in bytes {
        // Writing into a String does not fail.
        let _ = write!(text, "{byte:02x}");
    }
    Digest(text)
}

impl Event {
    /// The bytes to store, hash and send.
    ///
    /// # Errors
    /// Where the event cannot be put into canonical form.
    pub fn to_bytes(&self) -> Result<Vec<u8>, ChainError> {
        serde_json_canonicalizer::to_vec(self).map_err(|error| ChainError::Unwritable(error.to_string()))
    }

    /// Reads stored bytes. Unknown kinds are kept as [`Body::Unknown`].
    ///
    /// # Errors
    /// Where the bytes are no event; `seq` is only for the message.
    pub fn from_bytes(bytes: &[u8], seq: u64) -> Result<Event, ChainError> {
        let unreadable = |error: serde_json::Error| ChainError::Unreadable { seq, detail: error.to_string() };
        match serde_json::from_slice::<Event>(bytes) {
            Ok(event) => Ok(event),
            Err(known) => {
                let head: Head = serde_json::from_slice(bytes).map_err(unreadable)?;
                if KINDS.contains(&head.kind.as_str()) {
                    return Err(unreadable(known));
                }
                Ok(Event {
                    visit: head.visit,
                    seq: head.seq,
                    prev: head.prev,
                    time: head.time,
                    body: Body::Unknown { kind: head.kind },
                })
            }
        }
    }
}

#[derive(Deserialize)]
struct Head {
    visit: VisitId,
    seq: u64,
    prev: Digest,
    time: Now,
    kind: String,
}

/// The kinds that this version knows: damage in one of them is damage, not the future.
const KINDS: &[&str] = &[
    "visit-opened",
    "run-started",
    "condition-set",
    "step-started",
    "step-done",
    "step-skipped",
    "step-undone",
    "step-happened",
    "reading-taken",
    "reading-missed",
    "mix-made",
    "photo-taken",
    "shot-missed",
    "excursion-opened",
    "excursion-home",
    "excursion-left",
    "facts-lapsed",
    "fact-rechecked",
    "finding-added",
    "finding-mended",
    "used-corrected",
    "cover-judged",
    "place-fixed",
    "place-missing",
    "device-restarted",
    "device-changed",
    "broken-off",
    "seal-prepared",
    "seal-cancelled",
    "customer-noted",
    "addendum-added",
];

/// The end of a chain: what the next event must carry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ChainEnd {
    /// The next event's number.
    pub next: u64,
    /// The next event's `prev`.
    pub last: Digest,
}

impl Default for ChainEnd {
    fn default() -> Self {
        ChainEnd { next: 0, last: Digest(NO_PREV.into()) }
    }
}

impl ChainEnd {
    /// Takes the next stored bytes, or says where the chain breaks.
    ///
    /// # Errors
    /// Where the bytes cannot be read or do not follow.
    pub fn follow(&mut self, visit: &VisitId, bytes: &[u8]) -> Result<Event, ChainError> {
        let seq = self.next;
        let event = Event::from_bytes(bytes, seq)?;
        let differs = |what| ChainError::Broken { seq, what };
        if event.seq != seq {
            return Err(differs("its number"));
        }
        if event.prev != self.last {
            return Err(differs("the digest of the event before"));
        }
        if event.visit != *visit {
            return Err(differs("the visit"));
        }
        self.next += 1;
        self.last = sha256(bytes);
        Ok(event)
    }
}

/// Units and their letters are short maps everywhere.
pub type ByLetter<T> = BTreeMap<Letter, T>;

#[cfg(test)]
mod tests {
    use super::*;

    fn now() -> Now {
        Now { utc_ms: 1_700_000_000_000, offset_min: 60, mono_ms: 5, mono_epoch: "boot".into() }
    }

    fn chain() -> Vec<Vec<u8>> {
        let mut end = ChainEnd::default();
        let bodies = [
            Body::VisitOpened {
                format: FORMAT,
                device_key: "04ab".into(),
                assignment: "a1".into(),
                personal: sha256(b"x"),
            },
            Body::StepSkipped { unit: "A".into(), step: "s".into(), reason: "ñ “quoted”\n".into() },
        ];
        let mut stored = Vec::new();
        for body in bodies {
            let event = Event { visit: "v".into(), seq: end.next, prev: end.last.clone(), time: now(), body };
            let bytes = event.to_bytes().unwrap();
            assert_eq!(end.follow(&"v".into(), &bytes).unwrap(), event);
            stored.push(bytes);
        }
        stored
    }

    #[test]
    fn an_event_reads_back_as_it_was_written() {
        assert_eq!(chain().len(), 2);
    }

    #[test]
    fn a_changed_byte_breaks_the_chain_at_the_next_event() {
        let mut stored = chain();
        let text = String::from_utf8(stored[0].clone()).unwrap().replace("a1", "a2");
        stored[0] = text.into_bytes();
        let mut end = ChainEnd::default();
        end.follow(&"v".into(), &stored[0]).unwrap();
        assert!(matches!(end.follow(&"v".into(), &stored[1]), Err(ChainError::Broken { seq: 1, .. })));
    }

    #[test]
    fn a_kind_of_the_future_stays_opaque_and_a_damaged_known_kind_is_an_error() {
        let text = String::from_utf8(chain()[0].clone()).unwrap();
        let future = text.replace("visit-opened", "tea-made");
        let event = Event::from_bytes(future.as_bytes(), 0).unwrap();
        assert_eq!(event.body, Body::Unknown { kind: "tea-made".into() });
        let damaged = text.replace("\"format\":1,", "");
        assert!(Event::from_bytes(damaged.as_bytes(), 0).is_err());
    }
}
