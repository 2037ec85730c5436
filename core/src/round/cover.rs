//! Whether what the terms of cover ask for is there: at planning, and at the seal. Never a promise: the desk decides.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::accreditation::{Held, Holding, holding};
use super::assignment::AssignedUnit;
use super::due::{Standing, due};
use super::terms::Terms;
use crate::id::{ReadingId, Slot};
use crate::procedure::pack::Pack;
use crate::visit::state::{Run, Visit};
use crate::words::Words;

/// What a look at the terms came to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Judgement {
    /// The terms' name as people call them.
    pub terms: String,
    /// In one word.
    pub verdict: Verdict,
    /// Why, each asked-for thing in turn.
    pub reasons: Vec<Reason>,
}

/// What it comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// All that the terms ask for is there.
    AsAsked,
    /// Something that they ask for is not.
    NotAsAsked,
    /// Something is not known here.
    NotKnown,
}

/// One thing that terms ask for, and how it is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "reason", rename_all = "kebab-case")]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum Reason {
    /// Done by the due day.
    InTime { on: String },
    /// Done after the due day, within the days of grace.
    InGrace { days: i64, end: String },
    /// Done so many days after the last day of grace.
    Late { days: i64, end: String },
    /// There is no day to count from.
    DayNotKnown,
    /// An accreditation holds on the day; `until` is empty where it has no end.
    Accredited { name: String, until: String },
    /// An accreditation had lapsed on the day.
    Lapsed { name: String, on: String },
    /// The technician has no such accreditation.
    NotAccredited { name: String },
    /// Which accreditations the technician has is not known here.
    AccreditationNotKnown { name: String },
    /// A photograph that is asked for is not there.
    NoShot { slot: Slot },
    /// A reading that is asked for is not there.
    NoReading { reading: ReadingId },
    /// All photographs and readings that are asked for are there: so many.
    Evidence { count: u32 },
    /// The procedure has no such photograph.
    ShotNotInPack { slot: Slot },
    /// The procedure has no such reading.
    ReadingNotInPack { reading: ReadingId },
    /// The visit was stopped before its end.
    Stopped,
}

impl Reason {
    const fn verdict(&self) -> Verdict {
        match self {
            Reason::InTime { .. } | Reason::InGrace { .. } | Reason::Accredited { .. } | Reason::Evidence { .. } => {
                Verdict::AsAsked
            }
            Reason::DayNotKnown | Reason::AccreditationNotKnown { .. } => Verdict::NotKnown,
            Reason::Late { .. }
            | Reason::Lapsed { .. }
            | Reason::NotAccredited { .. }
            | Reason::NoShot { .. }
            | Reason::NoReading { .. }
            | Reason::ShotNotInPack { .. }
            | Reason::ReadingNotInPack { .. }
            | Reason::Stopped => Verdict::NotAsAsked,
        }
    }
}

/// What can be seen of cover before the visit, for a day on which it may be done. None without terms.
#[must_use]
pub fn planned(
    unit: &AssignedUnit,
    assigned: &str,
    pack: Option<&Pack>,
    held: Held<'_>,
    day: NaiveDate,
) -> Option<Judgement> {
    let terms = unit.terms.as_ref()?;
    let mut reasons = vec![in_time(unit, assigned, day)];
    reasons.extend(accredited(terms, held, day));
    if let Some(pack) = pack {
        let shots = terms.shots.iter().filter(|slot| pack.shot(slot.as_str()).is_none());
        reasons.extend(shots.map(|slot| Reason::ShotNotInPack { slot: slot.clone() }));
        let readings = terms.readings.iter().filter(|reading| pack.reading(reading.as_str()).is_none());
        reasons.extend(readings.map(|reading| Reason::ReadingNotInPack { reading: reading.clone() }));
    }
    Some(judged(terms, reasons))
}

/// What can be seen of cover once the work is done, for the day of the visit. None without terms.
#[must_use]
pub fn done(
    unit: &AssignedUnit,
    assigned: &str,
    visit: &Visit,
    run: &Run,
    held: Held<'_>,
    day: NaiveDate,
) -> Option<Judgement> {
    let terms = unit.terms.as_ref()?;
    let mut reasons = vec![in_time(unit, assigned, day)];
    reasons.extend(accredited(terms, held, day));
    let no_shot = |slot: &&Slot| run.photos.get(*slot).is_none_or(Vec::is_empty);
    let no_reading = |reading: &&ReadingId| !run.readings.contains_key(*reading);
    let missing: Vec<Reason> = (terms.shots.iter().filter(no_shot).map(|slot| Reason::NoShot { slot: slot.clone() }))
        .chain(terms.readings.iter().filter(no_reading).map(|reading| Reason::NoReading { reading: reading.clone() }))
        .collect();
    let asked = terms.shots.len() + terms.readings.len();
    if missing.is_empty() && asked > 0 {
        reasons.push(Reason::Evidence { count: u32::try_from(asked).unwrap_or(u32::MAX) });
    }
    reasons.extend(missing);
    if visit.broken_off.is_some() {
        reasons.push(Reason::Stopped);
    }
    Some(judged(terms, reasons))
}

fn judged(terms: &Terms, reasons: Vec<Reason>) -> Judgement {
    let any = |verdict| reasons.iter().any(|reason| reason.verdict() == verdict);
    let verdict = if any(Verdict::NotAsAsked) {
        Verdict::NotAsAsked
    } else if any(Verdict::NotKnown) {
        Verdict::NotKnown
    } else {
        Verdict::AsAsked
    };
    Judgement { terms: terms.name.clone(), verdict, reasons }
}

fn in_time(unit: &AssignedUnit, assigned: &str, day: NaiveDate) -> Reason {
    let Some(due) = due(unit, assigned) else { return Reason::DayNotKnown };
    let Some(end) = due.cover_ends else { return Reason::DayNotKnown };
    match due.seen_on(day) {
        Standing { to_due: 0.., .. } => Reason::InTime { on: due.on.to_string() },
        Standing { to_due, to_end: Some(0..) } => Reason::InGrace { days: -to_due, end: end.to_string() },
        Standing { to_end, .. } => Reason::Late { days: -to_end.unwrap_or_default(), end: end.to_string() },
    }
}

fn accredited(terms: &Terms, held: Held<'_>, day: NaiveDate) -> Vec<Reason> {
    let reason = |name: &String| {
        let name = name.clone();
        match holding(held, &name, day) {
            Holding::Always => Reason::Accredited { name, until: String::new() },
            Holding::Until { on, .. } => Reason::Accredited { name, until: on.to_string() },
            Holding::Lapsed { on, .. } => Reason::Lapsed { name, on: on.to_string() },
            Holding::None => Reason::NotAccredited { name },
            Holding::NotKnown => Reason::AccreditationNotKnown { name },
        }
    };
    terms.accreditations.iter().map(reason).collect()
}

/// A judgement in words: the first line names the terms and leaves the decision to the desk, then a line for each reason.
#[must_use]
pub fn told(judgement: &Judgement, words: &Words) -> Vec<String> {
    let key = match judgement.verdict {
        Verdict::AsAsked => "cover-as-asked",
        Verdict::NotAsAsked => "cover-not-as-asked",
        Verdict::NotKnown => "cover-not-known",
    };
    let head = words.fill(key, &[("terms", &judgement.terms)]);
    [head].into_iter().chain(judgement.reasons.iter().map(|reason| reason_told(reason, words))).collect()
}

/// The first line with only those reasons that are not as asked.
#[must_use]
pub fn told_short(judgement: &Judgement, words: &Words) -> String {
    let reasons = judgement.reasons.iter().filter(|reason| reason.verdict() != Verdict::AsAsked).cloned().collect();
    told(&Judgement { reasons, ..judgement.clone() }, words).join(" ")
}

fn reason_told(reason: &Reason, words: &Words) -> String {
    let shot = |slot: &Slot| words.text(&format!("shot-{slot}"));
    let reading = |reading: &ReadingId| words.text(&format!("reading-{reading}"));
    match reason {
        Reason::InTime { on } => words.fill("cover-in-time", &[("on", on)]),
        Reason::InGrace { days, end } => words.fill("cover-in-grace", &[("days", &days.to_string()), ("end", end)]),
        Reason::Late { days, end } => words.fill("cover-late", &[("days", &days.to_string()), ("end", end)]),
        Reason::DayNotKnown => words.text("cover-day-not-known"),
        Reason::Accredited { name, until } if until.is_empty() => {
            words.fill("cover-accredited-always", &[("name", name)])
        }
        Reason::Accredited { name, until } => words.fill("cover-accredited", &[("name", name), ("until", until)]),
        Reason::Lapsed { name, on } => words.fill("cover-lapsed", &[("name", name), ("on", on)]),
        Reason::NotAccredited { name } => words.fill("cover-not-accredited", &[("name", name)]),
        Reason::AccreditationNotKnown { name } => words.fill("cover-accreditation-not-known", &[("name", name)]),
        Reason::NoShot { slot } => words.fill("cover-no-shot", &[("shot", &shot(slot))]),
        Reason::NoReading { reading: id } => words.fill("cover-no-reading", &[("reading", &reading(id))]),
        Reason::Evidence { count } => words.fill("cover-evidence", &[("count", &count.to_string())]),
        Reason::ShotNotInPack { slot } => words.fill("cover-shot-not-in-pack", &[("shot", slot.as_str())]),
        Reason::ReadingNotInPack { reading } => {
            words.fill("cover-reading-not-in-pack", &[("reading", reading.as_str())])
        }
        Reason::Stopped => words.text("cover-stopped"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::round::Accreditation;
    use crate::science::calendar::parse_date;
    use crate::visit::state::{BrokenOff, Photo, Taken};

    fn unit() -> AssignedUnit {
        let terms = Terms {
            id: "t".into(),
            name: "Maker's five years".into(),
            interval_months: 12,
            grace_days: 30,
            first_within_months: None,
            accreditations: vec!["Refrigerants I".into()],
            shots: vec!["coil-after".into()],
            readings: vec!["insulation".into()],
        };
        AssignedUnit { terms: Some(terms), last_service: Some("2025-04-20".into()), ..AssignedUnit::default() }
    }

    fn card(expires: &str) -> [Accreditation; 1] {
        [Accreditation { name: "Refrigerants I".into(), number: String::new(), valid_until: expires.into() }]
    }

    fn day(text: &str) -> NaiveDate {
        parse_date(text).unwrap()
    }

    fn complete() -> Run {
        let mut run = Run::default();
        let at = crate::now::Now { utc_ms: 0, offset_min: 0, mono_ms: 0, mono_epoch: "a".into() };
        let photo = Photo {
            digest: "d".into(),
            bytes: 1,
            media: "image/jpeg".into(),
            facts: Default::default(),
            flags: vec![],
            at: at.clone(),
        };
        run.photos.insert("coil-after".into(), vec![photo]);
        let taken: Taken = serde_json::from_value(serde_json::json!({
            "value": "180", "measure": "MOhm", "instrument": "", "error_limit": "", "unusual": false, "at": at, "times": 1
        }))
        .unwrap();
        run.readings.insert("insulation".into(), taken);
        run
    }

    #[test]
    fn all_that_is_asked_for_is_never_told_as_a_promise() {
        let judged =
            done(&unit(), "", &Visit::default(), &complete(), Some(&card("2027-01-01")), day("2026-05-04")).unwrap();
        assert_eq!(judged.verdict, Verdict::AsAsked);
        assert_eq!(
            judged.reasons,
            [
                Reason::InGrace { days: 14, end: "2026-05-20".into() },
                Reason::Accredited { name: "Refrigerants I".into(), until: "2027-01-01".into() },
                Reason::Evidence { count: 2 },
            ]
        );
        for language in ["en", "es"] {
            let words = Words::new(language, None).unwrap();
            let desk = if language == "en" { "The desk decides." } else { "Decide la garantía." };
            assert!(told(&judged, &words)[0].ends_with(desk), "{:?}", told(&judged, &words));
        }
    }

    #[test]
    fn each_thing_that_is_asked_for_and_not_there_is_named() {
        let stopped = BrokenOff {
            reason: "rain".into(),
            dangers: vec![],
            at: serde_json::from_str(r#"{"utc_ms":0,"offset_min":0,"mono_ms":0,"mono_epoch":"a"}"#).unwrap(),
        };
        let visit = Visit { broken_off: Some(stopped), ..Visit::default() };
        let judged = done(&unit(), "", &visit, &Run::default(), Some(&card("2026-05-03")), day("2026-05-21")).unwrap();
        assert_eq!(judged.verdict, Verdict::NotAsAsked);
        assert_eq!(
            judged.reasons,
            [
                Reason::Late { days: 1, end: "2026-05-20".into() },
                Reason::Lapsed { name: "Refrigerants I".into(), on: "2026-05-03".into() },
                Reason::NoShot { slot: "coil-after".into() },
                Reason::NoReading { reading: "insulation".into() },
                Reason::Stopped,
            ]
        );
    }

    #[test]
    fn what_is_not_known_is_no_yes() {
        let of =
            |unit: &AssignedUnit, held: Held<'_>| planned(unit, "", None, held, day("2026-04-01")).unwrap().verdict;
        assert_eq!(of(&unit(), None), Verdict::NotKnown);
        assert_eq!(of(&unit(), Some(&[])), Verdict::NotAsAsked);
        assert_eq!(of(&unit(), Some(&card("2026-04-01"))), Verdict::AsAsked);
        let nothing = AssignedUnit { last_service: None, ..unit() };
        assert_eq!(of(&nothing, Some(&card("2027-01-01"))), Verdict::NotKnown);
        assert_eq!(planned(&AssignedUnit::default(), "", None, None, day("2026-04-01")), None);
    }

    #[test]
    fn terms_that_ask_for_what_the_procedure_lacks_are_seen_at_planning() {
        let packs = crate::procedure::library::built_in().unwrap();
        let mut unit = unit();
        let plan = |unit: &AssignedUnit| {
            planned(unit, "", Some(&packs[0].pack), Some(&card("2027-01-01")), day("2026-04-01")).unwrap()
        };
        assert_eq!(plan(&unit).verdict, Verdict::AsAsked);
        if let Some(terms) = &mut unit.terms {
            terms.shots.push("roof".into());
        }
        assert!(plan(&unit).reasons.contains(&Reason::ShotNotInPack { slot: "roof".into() }));
    }
}
