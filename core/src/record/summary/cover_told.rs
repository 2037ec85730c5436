//! What the terms of cover ask for beside what is there, a line a unit, with its reason. The desk decides.

use super::{Sources, day};
use crate::round::cover::{self, Judgement, Reason};
use crate::science::calendar::parse_date;
use crate::words::Words;

pub(super) fn cover(from: &Sources<'_>) -> Vec<String> {
    let told = |judgement: &Judgement| cover::told(&in_words(judgement, from.words), from.words).join(" ");
    from.visit.cover.iter().map(|(unit, judgement)| from.of_unit(unit, told(judgement))).collect()
}

/// The judgement with its days as owners read them.
fn in_words(judgement: &Judgement, words: &Words) -> Judgement {
    let day = |iso: &String| parse_date(iso).map_or_else(|_| iso.clone(), |date| day::day(words, date));
    let reason = |reason: &Reason| match reason {
        Reason::InTime { on } => Reason::InTime { on: day(on) },
        Reason::InGrace { days, end } => Reason::InGrace { days: *days, end: day(end) },
        Reason::Late { days, end } => Reason::Late { days: *days, end: day(end) },
        Reason::Accredited { name, until } => Reason::Accredited { name: name.clone(), until: day(until) },
        Reason::Lapsed { name, on } => Reason::Lapsed { name: name.clone(), on: day(on) },
        other => other.clone(),
    };
    Judgement { reasons: judgement.reasons.iter().map(reason).collect(), ..judgement.clone() }
}
