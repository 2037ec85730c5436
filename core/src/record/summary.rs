//! The owner's summary as content: what was done, what changed, what was found, what is next. Renderings lie elsewhere.

use crate::id::{Digest, Letter};
use crate::procedure::danger::Danger;
use crate::procedure::gate::{Applies, applies};
use crate::procedure::measure::Units;
use crate::procedure::pack::{Pack, Reading};
use crate::record::names::name_of;
use crate::record::results::{Change, Kind, Known, Outcome, Results, Stage, results, told};
use crate::round::{Assignment, cover};
use crate::science::descaling::Advice;
use crate::visit::decide::{Gap, gaps};
use crate::visit::event::Severity;
use crate::visit::fact::{Fact, Value};
use crate::visit::state::{ExcursionEnd, Mark, Run, Visit};
use crate::words::{Words, number};

/// What the owner gets, in words of their language.
#[derive(Clone, Debug, PartialEq)]
pub struct Summary {
    /// The language, a BCP 47 tag.
    pub language: String,
    /// The title.
    pub title: String,
    /// Site and day.
    pub lead: String,
    /// The four answers of the first page.
    pub answers: Vec<Answer>,
    /// What was done, phase by phase.
    pub done: Vec<Done>,
    /// Photographs side by side.
    pub pairs: Vec<Pair>,
    /// What the numbers come to, in one sentence a unit; where heat and power were measured before and after.
    pub gain: Vec<String>,
    /// What changed in numbers.
    pub numbers: Vec<Changed>,
    /// What was found.
    pub findings: Vec<Found>,
    /// What could not be done, with the reason.
    pub gaps: Vec<String>,
    /// Settings that stay away.
    pub settings: Vec<String>,
    /// Cautions.
    pub cautions: Vec<String>,
    /// What the terms of cover ask for beside what is there, a line a unit. The desk decides.
    pub cover: Vec<String>,
    /// What comes next.
    pub next: Vec<String>,
}

/// One of the first questions with its answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// 'Is it safe?'
    pub question: String,
    /// The answer.
    pub answer: String,
    /// All is well.
    pub good: bool,
}

/// Something that was done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Done {
    /// Which unit.
    pub unit: Letter,
    /// What.
    pub what: String,
    /// Why it matters.
    pub matters: String,
}

/// The same view before and after.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pair {
    /// Of what.
    pub title: String,
    /// Before the work.
    pub before: Option<Digest>,
    /// After the work.
    pub after: Option<Digest>,
}

/// A value as found and as left.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Changed {
    /// Of what.
    pub label: String,
    /// As found, with unit and doubt.
    pub found: String,
    /// As left, with unit and doubt.
    pub left: String,
    /// What it means, where that can be told.
    pub meaning: String,
}

/// Something that was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// How much it matters.
    pub severity: Severity,
    /// How much it matters, in words.
    pub severity_text: String,
    /// In the technician's words.
    pub text: String,
}

/// Everything that the summary is made from.
pub struct Sources<'a> {
    /// The visit.
    pub visit: &'a Visit,
    /// Its assignment.
    pub assignment: &'a Assignment,
    /// The pinned pack.
    pub pack: &'a Pack,
    /// Words in the owner's language, the pack's among them.
    pub words: &'a Words,
    /// The owner's units.
    pub units: Units,
    /// Whom to call: the firm's name and telephone.
    pub contact: &'a str,
    /// The day of the next service, as written for the owner.
    pub next_day: &'a str,
    /// The day of this one.
    pub day: &'a str,
}

/// The summary of a visit.
#[must_use]
pub fn summary(from: &Sources<'_>) -> Summary {
    let words = from.words;
    let runs = || from.visit.runs.iter();
    let worked: Vec<(&Run, Results)> =
        runs().map(|(_, run)| (run, results(from.pack, run, &Known::default()))).collect();
    let rinsed = from.visit.runs.values().any(|run| run.facts.get(&Fact::RinseCheck) == Some(&Value::Proved));
    let cautions =
        [("summary-caution-scald", true), ("summary-caution-flushed", rinsed), ("summary-caution-first", true)];
    Summary {
        language: words.language().to_owned(),
        title: words.text("summary-title"),
        lead: words.fill("summary-lead", &[("site", &from.assignment.site.name), ("day", from.day)]),
        answers: answers(from),
        done: runs().flat_map(|(unit, run)| done(from, unit, run)).collect(),
        pairs: runs().flat_map(|(_, run)| pairs(from, run)).collect(),
        gain: worked.iter().flat_map(|(_, results)| gain(words, results)).collect(),
        numbers: worked
            .iter()
            .flat_map(|(run, results)| worked_out(from, results).into_iter().chain(numbers(from, run)))
            .collect(),
        findings: runs().flat_map(|(_, run)| findings(words, run)).collect(),
        gaps: runs().flat_map(|(_, run)| gaps(from.pack, run)).filter_map(|gap| gap_words(words, &gap)).collect(),
        settings: runs().flat_map(|(_, run)| settings(words, run)).collect(),
        cautions: cautions.iter().filter(|(_, holds)| *holds).map(|(key, _)| words.text(key)).collect(),
        cover: from.visit.cover.values().map(|judgement| cover::told(judgement, words).join(" ")).collect(),
        next: next(from, worked.iter().filter_map(|(_, results)| results.descaling)),
    }
}

fn answers(from: &Sources<'_>) -> Vec<Answer> {
    let words = from.words;
    let unsafe_found = from.visit.runs.values().any(Run::is_unsafe);
    let left = from.visit.broken_off.as_ref().map_or(&[][..], |broken| &broken.dangers);
    let findings = || from.visit.runs.values().flat_map(|run| &run.findings);
    let mended = findings().any(|finding| finding.severity == Severity::Unsafe && finding.mended.is_some());
    let stopped = from.visit.broken_off.is_some();
    let safe = !unsafe_found && !stopped;
    let running = |run: &Run| run.facts.get(&Fact::Supply) == Some(&Value::On);
    let hot = safe && from.visit.runs.values().all(running);
    let pending = from.visit.runs.values().any(|run| run.facts.get(&Fact::Reheat) == Some(&Value::HandedOver));
    let answer =
        |question: &str, key: &str, good| Answer { question: words.text(question), answer: words.text(key), good };
    let hot_key = match (hot, pending) {
        (false, _) => "summary-hot-no",
        (true, true) => "summary-hot-pending",
        (true, false) => "summary-hot-yes",
    };
    let safe_key = match (unsafe_found, stopped) {
        (_, true) if left == [Danger::LeftUntagged] => "summary-safe-stopped-untagged",
        (_, true) if !left.is_empty() => "summary-safe-stopped-dangerous",
        (true, _) => "summary-safe-no",
        (false, true) => "summary-safe-stopped",
        (false, false) if mended => "summary-safe-yes-mended",
        (false, false) => "summary-safe-yes",
    };
    vec![
        answer("summary-is-it-safe", safe_key, safe),
        answer("summary-is-there-hot-water", hot_key, hot && !pending),
        Answer { question: words.text("summary-whom-to-call"), answer: from.contact.to_owned(), good: true },
        Answer { question: words.text("summary-next-date"), answer: from.next_day.to_owned(), good: true },
    ]
}

fn done(from: &Sources<'_>, unit: &Letter, run: &Run) -> Vec<Done> {
    let worked = |mark: Option<&Mark>| matches!(mark, Some(Mark::Done { .. } | Mark::Happened { .. }));
    from.pack
        .phases
        .iter()
        .filter(|phase| {
            phase.steps.iter().any(|step| worked(run.steps.get(&step.id)) && applies(step, run) != Applies::No)
        })
        .filter_map(|phase| {
            let what = from.words.get(&format!("phase-{}.owner", phase.id))?;
            let matters = from.words.get(&format!("phase-{}.matters", phase.id)).unwrap_or_default();
            Some(Done { unit: unit.clone(), what, matters })
        })
        .collect()
}

fn pairs(from: &Sources<'_>, run: &Run) -> Vec<Pair> {
    let newest = |slot: &str| run.photos.get(slot).and_then(|photos| photos.last()).map(|photo| photo.digest.clone());
    from.pack
        .shots
        .iter()
        .filter_map(|shot| Some((shot, shot.before.as_ref()?)))
        .map(|(shot, before)| Pair {
            title: from.words.text(&format!("shot-{}", shot.id)),
            before: newest(before.as_str()),
            after: newest(shot.id.as_str()),
        })
        .filter(|pair| pair.before.is_some() || pair.after.is_some())
        .collect()
}

/// A value with its doubt: the half width of the instrument's limits as its maker states them.
fn with_doubt(reading: &Reading, run: &Run, units: Units, language: &str) -> Option<String> {
    let taken = run.readings.get(&reading.id)?;
    let text = reading.quantity.show(&taken.value, reading.decimals, units, language);
    if taken.error_limit.is_empty() || units != Units::Metric {
        return Some(text);
    }
    Some(format!("{text} ±\u{a0}{}", number::localise(&taken.error_limit, language)))
}

fn numbers(from: &Sources<'_>, run: &Run) -> Vec<Changed> {
    let language = from.words.language();
    from.pack
        .readings
        .iter()
        .filter_map(|left| Some((left, from.pack.reading(left.as_found.as_ref()?.as_str())?)))
        .filter_map(|(left, found)| {
            let missing = || from.words.text("summary-not-measured");
            let (was, is) = (with_doubt(found, run, from.units, language), with_doubt(left, run, from.units, language));
            if was.is_none() && is.is_none() {
                return None;
            }
            Some(Changed {
                label: name_of(from.words, from.pack, left),
                meaning: meaning(from, run, found, left).unwrap_or_default(),
                found: was.unwrap_or_else(missing),
                left: is.unwrap_or_else(missing),
            })
        })
        .collect()
}

/// What comes next. After a break-off there is no day of a service yet, and the unit stays off.
fn next(from: &Sources<'_>, descaling: impl Iterator<Item = Advice>) -> Vec<String> {
    if from.visit.broken_off.is_some() {
        return vec![from.next_day.to_owned()];
    }
    let mut next = vec![from.words.fill("summary-next-service", &[("day", from.next_day)])];
    // Of several units on one water, the one that is due first.
    if let Some(months) = descaling.map(|advice| advice.months).min() {
        next.push(from.words.fill("summary-next-descaling", &[("months", &months.to_string())]));
    }
    next.push(from.words.text("summary-next-between"));
    next
}

/// Whether the unit needs less electricity for the same hot water. Only said where it can be told at like air and water.
fn gain(words: &Words, results: &Results) -> Vec<String> {
    let both = |cop: &&Outcome| cop.at(Stage::Found).is_some() && cop.at(Stage::Left).is_some();
    let Some(cop) = results.of(Kind::Cop).filter(both) else { return Vec::new() };
    let key = match cop.change.map(|changed| changed.change) {
        Some(Change::More) => "summary-gain-less-power",
        Some(Change::Less) => "summary-gain-more-power",
        Some(Change::None) => "summary-gain-none",
        None => "summary-gain-conditions",
    };
    let saved = results.yearly.map(|year| year.saved).filter(|saved| saved.value > saved.expanded_u);
    let year = saved.map(|saved| {
        // Two digits are what such an estimate is worth.
        let about = |kwh: f64| {
            let step = if kwh < 100.0 { 5.0 } else { 50.0 };
            number::write(libm::round(kwh / step) * step, 0, words.language())
        };
        let (least, most) = (about(saved.value - saved.expanded_u), about(saved.value + saved.expanded_u));
        words.fill("summary-gain-year", &[("least", &least), ("most", &most)])
    });
    [Some(words.text(key)), year].into_iter().flatten().collect()
}

/// What the readings come to: heat and COP, where they were measured before and after.
fn worked_out(from: &Sources<'_>, results: &Results) -> Vec<Changed> {
    let words = from.words;
    [(Kind::Heat, "summary-heat"), (Kind::Cop, "summary-cop")]
        .into_iter()
        .filter_map(|(kind, key)| {
            let outcome = results.of(kind)?;
            let meaning = outcome.change.map(|changed| words.text(changed.change.owner_key())).unwrap_or_default();
            let told = told(outcome, words, from.units);
            let at = |stage| told.at(stage).map(str::to_owned);
            Some(Changed { label: words.text(key), found: at(Stage::Found)?, left: at(Stage::Left)?, meaning })
        })
        .collect()
}

/// Whether two readings differ by more than the instrument can tell apart. For a single reading the cautious bound counts
/// both limits in full; in the results that rest on several, what one instrument shares goes out.
fn meaning(from: &Sources<'_>, run: &Run, found: &Reading, left: &Reading) -> Option<String> {
    let limit = |reading: &Reading| run.readings.get(&reading.id)?.error_limit.parse::<f64>().ok();
    let change = run.number(left.id.as_str())? - run.number(found.id.as_str())?;
    let key = Change::of(change, limit(found)? + limit(left)?).owner_key();
    Some(from.words.text(key))
}

fn findings(words: &Words, run: &Run) -> Vec<Found> {
    let key = |severity| match severity {
        Severity::Note => "severity-note",
        Severity::Soon => "severity-soon",
        Severity::Unsafe => "severity-unsafe",
    };
    let mut found: Vec<Found> = run
        .findings
        .iter()
        .map(|finding| Found {
            severity: finding.severity,
            severity_text: words.text(key(finding.severity)),
            text: finding.mended.as_ref().map_or_else(
                || finding.text.clone(),
                |mended| words.fill("summary-mended", &[("finding", &finding.text), ("words", &mended.words)]),
            ),
        })
        .collect();
    found.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
    found
}

fn gap_words(words: &Words, gap: &Gap) -> Option<String> {
    match gap {
        Gap::StepSkipped { step, reason } => {
            let title = words.text(&format!("step-{step}"));
            Some(words.fill("summary-left-out", &[("step", &title), ("reason", reason)]))
        }
        Gap::StepOpen { step } => {
            Some(words.fill("summary-not-done", &[("step", &words.text(&format!("step-{step}")))]))
        }
        // Missing photographs and readings matter to the office; the owner is told of work only.
        _ => None,
    }
}

fn settings(words: &Words, run: &Run) -> Vec<String> {
    run.excursions
        .iter()
        .filter_map(|(id, excursion)| {
            let name = words.text(&format!("excursion-{id}"));
            let (home, away) = (excursion.home.as_str(), excursion.away.as_str());
            match &excursion.end {
                ExcursionEnd::Home { answered, .. } if answered.is_empty() => None,
                ExcursionEnd::Home { shows, answered } => Some(words.fill(
                    "excursion-home-differs",
                    &[("setting", &name), ("home", home), ("shows", shows), ("reason", answered)],
                )),
                ExcursionEnd::Left { reason } => Some(words.fill(
                    "summary-setting-left",
                    &[("setting", &name), ("home", home), ("away", away), ("reason", reason)],
                )),
                ExcursionEnd::Open => {
                    Some(words.fill("summary-setting-open", &[("setting", &name), ("home", home), ("away", away)]))
                }
            }
        })
        .collect()
}
