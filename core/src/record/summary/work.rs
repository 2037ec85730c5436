//! What was done and found: phases, photographs, findings, what could not be done, settings that stay away.

use super::{Done, Found, Pair, Part, Sources, Tone, day};
use crate::id::{Digest, Letter, Slot};
use crate::procedure::gate::{Applies, applies};
use crate::procedure::pack::{Pack, Phase};
use crate::visit::decide::{Gap, gaps};
use crate::visit::event::Severity;
use crate::visit::state::{ExcursionEnd, Finding, Mark, Run, Visit};

/// Site and day, then each machine by maker, model and number.
pub(super) fn lead(from: &Sources<'_>) -> Vec<String> {
    let day = day::day(from.words, from.day);
    let first = from.words.fill("summary-lead", &[("site", &from.assignment.site.name), ("day", &day)]);
    let machine = |(unit, run): (&Letter, &Run)| {
        (!run.label.is_empty()).then(|| from.of_unit(unit, from.words.fill("summary-machine", &[("unit", &run.label)])))
    };
    [first].into_iter().chain(from.visit.runs.iter().filter_map(machine)).collect()
}

/// What must be read before all else: what is unsafe, and that the work was stopped.
pub(super) fn first(from: &Sources<'_>) -> Vec<Part> {
    let words = from.words;
    let mut parts = Vec::new();
    if let Some(broken) = &from.visit.broken_off {
        let text = words.fill("summary-stopped", &[("reason", &sentence(&broken.reason))]);
        parts.push(Part::Text(text, Tone::Danger));
    }
    let stands = found_of(from, |finding| finding.severity == Severity::Unsafe && finding.mended.is_none());
    if !stands.is_empty() {
        parts.push(Part::Found(stands));
    }
    parts
}

/// What was found, the worst first; what is unsafe and stands was said before.
pub(super) fn found(from: &Sources<'_>) -> Vec<Part> {
    let rest = found_of(from, |finding| finding.severity != Severity::Unsafe || finding.mended.is_some());
    if rest.is_empty() { Vec::new() } else { vec![Part::Found(rest)] }
}

fn found_of(from: &Sources<'_>, is_meant: impl Fn(&Finding) -> bool) -> Vec<Found> {
    let words = from.words;
    let told = |unit: &Letter, finding: &Finding| {
        let text = finding.mended.as_ref().map_or_else(
            || finding.text.clone(),
            |mended| words.fill("summary-mended", &[("finding", &sentence(&finding.text)), ("words", &mended.words)]),
        );
        let severity = finding.severity;
        Found { severity, severity_text: words.text(severity.key()), text: from.of_unit(unit, sentence(&text)) }
    };
    let all = from.visit.runs.iter().flat_map(|(unit, run)| run.findings.iter().map(move |finding| (unit, finding)));
    let mut found: Vec<Found> =
        all.filter(|(_, finding)| is_meant(finding)).map(|(unit, finding)| told(unit, finding)).collect();
    found.sort_by_key(|found| std::cmp::Reverse(found.severity));
    found
}

/// Typed words as a sentence: with a full stop where they end without a sign.
fn sentence(typed: &str) -> String {
    let typed = crate::words::number::unbroken(typed.trim());
    if typed.ends_with(['.', '!', '?', '…', ':', ')']) || typed.is_empty() { typed } else { format!("{typed}.") }
}

pub(super) fn done(from: &Sources<'_>) -> Vec<Part> {
    let several = from.visit.runs.len() > 1;
    let mut done: Vec<Done> = Vec::new();
    for (unit, run) in from.visit.runs.iter() {
        for new in done_of(from, run) {
            // What was done at several units alike is said once.
            let at = done.iter().position(|known| (&known.what, &known.matters) == (&new.what, &new.matters));
            let at = at.unwrap_or_else(|| {
                done.push(new);
                done.len() - 1
            });
            if let Some(done) = done.get_mut(at).filter(|_| several) {
                done.units.push(unit.clone());
            }
        }
    }
    if done.is_empty() { Vec::new() } else { vec![Part::Done(done)] }
}

fn done_of(from: &Sources<'_>, run: &Run) -> Vec<Done> {
    from.pack
        .phases
        .iter()
        .filter(|phase| is_begun(phase, run))
        .filter_map(|phase| {
            let what = from.words.get(&format!("phase-{}.owner", phase.id))?;
            let matters = from.words.get(&format!("phase-{}.matters", phase.id)).unwrap_or_default();
            Some(Done { units: Vec::new(), what, matters })
        })
        .collect()
}

/// Was anything of it done that belongs to this unit?
fn is_begun(phase: &Phase, run: &Run) -> bool {
    let worked = |mark: Option<&Mark>| matches!(mark, Some(Mark::Done { .. } | Mark::Happened { .. }));
    phase.steps.iter().any(|step| worked(run.steps.get(&step.id)) && applies(step, run) != Applies::No)
}

pub(super) fn pairs(from: &Sources<'_>) -> Vec<Part> {
    let of = |(unit, run): (&Letter, &Run)| pairs_of(from, unit, run);
    from.visit.runs.iter().flat_map(of).map(Part::Pair).collect()
}

fn pairs_of(from: &Sources<'_>, unit: &Letter, run: &Run) -> Vec<Pair> {
    let named = |slot: &Slot| from.words.text(&format!("shot-{slot}"));
    let pair = |[(before, old), (after, new)]: Sides<'_>| Pair {
        title: from.of_unit(unit, shared(&named(before), &named(after))),
        before: old.cloned(),
        after: new.cloned(),
    };
    sides(from.pack, run).map(pair).collect()
}

/// The slots of a view before and after the work, each with its newest photograph.
type Sides<'a> = [(&'a Slot, Option<&'a Digest>); 2];

/// Every view that was to be taken before and after the work, where one of the two is there.
fn sides<'a>(pack: &'a Pack, run: &'a Run) -> impl Iterator<Item = Sides<'a>> {
    let newest =
        |slot: &'a Slot| (slot, run.photos.get(slot).and_then(|photos| photos.last()).map(|photo| &photo.digest));
    let pairs = pack.shots.iter().filter_map(move |shot| Some([newest(shot.before.as_ref()?), newest(&shot.id)]));
    pairs.filter(|sides| sides.iter().any(|(_, photo)| photo.is_some()))
}

/// Digests of the photographs that the summary of a visit shows, without making it.
pub fn photographs_of<'a>(visit: &'a Visit, pack: &'a Pack) -> impl Iterator<Item = &'a Digest> {
    visit.runs.values().flat_map(|run| sides(pack, run)).flatten().filter_map(|(_, photo)| photo)
}

/// 'Air coil before' and 'Air coil after' show the air coil: the words with which both names begin, without a small word
/// that leads on to the rest.
fn shared(before: &str, after: &str) -> String {
    let pairs = before.split(' ').zip(after.split(' '));
    let mut words: Vec<&str> = pairs.take_while(|(one, other)| one == other).map(|(one, _)| one).collect();
    while words.last().is_some_and(|last| last.chars().count() <= 2) {
        words.pop();
    }
    if words.is_empty() { after.to_owned() } else { words.join(" ").trim_end_matches(',').to_owned() }
}

/// What could not be done, and how much evidence is missing. A missing photograph or reading matters to the office, which
/// sees each of them; the owner is told that there are some.
pub(super) fn gaps_told(from: &Sources<'_>) -> Vec<Part> {
    let words = from.words;
    let all: Vec<(&Letter, Gap)> = from
        .visit
        .runs
        .iter()
        .flat_map(|(unit, run)| gaps(from.pack, run).into_iter().map(move |gap| (unit, gap)))
        .collect();
    let evidence = all.iter().filter(|(_, gap)| matches!(gap, Gap::Shot { .. } | Gap::Reading { .. })).count();
    let mut lines: Vec<String> =
        all.iter().filter_map(|(unit, gap)| Some(from.of_unit(unit, gap_words(from, unit, gap)?))).collect();
    // Of what was not begun at all, each step has the same line.
    lines.dedup();
    if lines.is_empty() && evidence == 0 {
        return Vec::new();
    }
    if evidence > 0 {
        lines.push(words.fill("summary-evidence-missing", &[("n", &evidence.to_string())]));
    }
    vec![Part::Text(words.text("summary-incomplete"), Tone::Strong), Part::List(lines)]
}

fn gap_words(from: &Sources<'_>, unit: &Letter, gap: &Gap) -> Option<String> {
    let title = |step: &str| from.words.text(&format!("step-{step}"));
    match gap {
        Gap::StepSkipped { step, reason } => {
            let parts = [("step", title(step.as_str())), ("reason", sentence(reason))];
            let parts: Vec<(&str, &str)> = parts.iter().map(|(name, text)| (*name, text.as_str())).collect();
            Some(from.words.fill("summary-left-out", &parts))
        }
        Gap::StepOpen { step } => {
            let holds = |phase: &&Phase| phase.steps.iter().any(|of| of.id == *step);
            let phase = from.pack.phases.iter().find(holds);
            let begun = phase.zip(from.visit.run(unit)).is_none_or(|(phase, run)| is_begun(phase, run));
            let what = match phase {
                Some(phase) if !begun => from.words.text(&format!("phase-{}", phase.id)),
                _ => title(step.as_str()),
            };
            Some(from.words.fill("summary-not-done", &[("step", &what)]))
        }
        _ => None,
    }
}

pub(super) fn settings(from: &Sources<'_>) -> Vec<String> {
    let of = |(unit, run): (&Letter, &Run)| -> Vec<String> {
        settings_of(from, run).into_iter().map(|line| from.of_unit(unit, line)).collect()
    };
    from.visit.runs.iter().flat_map(of).collect()
}

fn settings_of(from: &Sources<'_>, run: &Run) -> Vec<String> {
    let words = from.words;
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
                    &[("setting", &name), ("home", home), ("away", away), ("reason", &sentence(reason))],
                )),
                ExcursionEnd::Open => {
                    Some(words.fill("summary-setting-open", &[("setting", &name), ("home", home), ("away", away)]))
                }
            }
        })
        .collect()
}
