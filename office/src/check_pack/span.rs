//! How long a visit by a pack takes: minutes of handwork and waiting times, over every answer to its questions.

use std::collections::BTreeMap;

use coilside_core::procedure::pack::{Condition, Pack, Step};

/// So many combinations of answers are tried; with more the bounds are taken step by step.
const COMBINATIONS_MAX: usize = 20_000;

/// From the shortest to the longest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Span {
    /// With the least waiting times and the answers that need the fewest steps, seconds.
    pub(super) least_s: u64,
    /// With the longest waiting times and the answers that need the most.
    pub(super) most_s: u64,
    /// Every combination of answers was tried.
    pub(super) exact: bool,
}

/// The span of a pack. Steps that may be left out are counted: nobody plans to leave them out.
pub(super) fn span(pack: &Pack) -> Span {
    let decisive: Vec<&Condition> = pack
        .conditions
        .iter()
        .filter(|condition| pack.steps().any(|(_, step)| step.when.iter().any(|when| when.condition == condition.id)))
        .collect();
    let combinations = decisive.iter().try_fold(1_usize, |product, condition| {
        product.checked_mul(condition.options.len()).filter(|product| *product <= COMBINATIONS_MAX)
    });
    let Some(combinations) = combinations else { return by_step(pack) };
    let mut span = Span { least_s: u64::MAX, most_s: 0, exact: true };
    for number in 0..combinations {
        let answers = combination(&decisive, number);
        let applies = |step: &&Step| {
            step.when.iter().all(|when| {
                let answer = answers.get(when.condition.as_str());
                let among = |option: &&str| {
                    step.when.iter().any(|other| other.condition == when.condition && other.option == **option)
                };
                answer.is_some_and(among)
            })
        };
        let steps: Vec<&Step> = pack.steps().map(|(_, step)| step).filter(applies).collect();
        span.least_s = span.least_s.min(steps.iter().map(|step| of(step).0).sum());
        span.most_s = span.most_s.max(steps.iter().map(|step| of(step).1).sum());
    }
    span
}

/// The answers of one combination.
fn combination<'a>(conditions: &[&'a Condition], number: usize) -> BTreeMap<&'a str, &'a str> {
    let mut rest = number;
    conditions
        .iter()
        .filter_map(|condition| {
            let count = condition.options.len().max(1);
            let option = condition.options.get(rest % count)?;
            rest /= count;
            Some((condition.id.as_str(), option.id.as_str()))
        })
        .collect()
}

/// Bounds without trying: steps that depend on an answer count for the most and not for the least.
fn by_step(pack: &Pack) -> Span {
    let least_s = pack.steps().filter(|(_, step)| step.when.is_empty()).map(|(_, step)| of(step).0).sum();
    Span { least_s, most_s: pack.steps().map(|(_, step)| of(step).1).sum(), exact: false }
}

/// Least and most of a step, seconds.
fn of(step: &Step) -> (u64, u64) {
    let hand_s = u64::from(step.minutes) * 60;
    let (least_s, most_s) = step.dwell.map_or((0, 0), |dwell| (dwell.least_s, dwell.most_s));
    (hand_s + u64::from(least_s), hand_s + u64::from(most_s))
}

#[cfg(test)]
mod tests {
    use coilside_core::procedure::library::{PackSource, load};

    use super::*;

    fn pack(steps: &str) -> Pack {
        let head = "pack = \"p\"\nformat = 1\nversion = \"1.0.0\"\n";
        let conditions = "[[condition]]\nid = \"coil\"\noption = [{ id = \"plain\" }, { id = \"coated\" }]\n";
        let asks = "[[phase.step]]\nid = \"ask\"\nasks = [\"coil\"]\n";
        let toml = format!("{head}{conditions}[[phase]]\nid = \"all\"\n{asks}{steps}");
        load(PackSource { toml, words: BTreeMap::new() }).unwrap().pack
    }

    #[test]
    fn one_of_two_answers_is_counted_and_never_both() {
        let pack = pack(
            "[[phase.step]]\nid = \"look\"\nminutes = 5\n\
             [[phase.step]]\nid = \"short\"\nwhen = [\"coil=plain\"]\nminutes = 10\n\
             [[phase.step]]\nid = \"long\"\nwhen = [\"coil=coated\"]\nminutes = 20\ndwell = { least-s = 60, most-s = 600 }\n",
        );
        // 5 + 10 minutes; 5 + 20 + 10 minutes: by hand.
        assert_eq!(span(&pack), Span { least_s: 900, most_s: 2100, exact: true });
    }

    #[test]
    fn either_of_two_answers_named_is_enough() {
        let both = "[[phase.step]]\nid = \"any\"\nwhen = [\"coil=plain\", \"coil=coated\"]\nminutes = 4\n";
        assert_eq!(span(&pack(both)), Span { least_s: 240, most_s: 240, exact: true });
    }
}
