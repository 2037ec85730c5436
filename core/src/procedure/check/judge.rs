//! One passage judged by the facts: as they are known, after any pause, and with what may have come to pass unseen.

use crate::procedure::danger::{Danger, dangers, dangers_of_change};
use crate::procedure::gate::{Passage, acts, effect, facts_after};
use crate::procedure::pack::{Act, Step};
use crate::visit::fact::{Fact, Facts, Holds, Value};

/// What is wrong with a passage whose gates are open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Wrong {
    /// Only the core's last guard refuses it: as things are, or after a pause in which these facts lapsed and were not
    /// looked at again.
    Unguarded { lapsed: Vec<Fact>, dangers: Vec<Danger> },
    /// It is dangerous where this came to pass unseen.
    Outside { event: Holds, dangers: Vec<Danger> },
}

/// A passage's facts afterwards, and what is wrong with it.
pub(super) struct Judged {
    pub(super) after: Facts,
    /// The core refuses it as things are.
    pub(super) refused: bool,
    pub(super) wrong: Vec<Wrong>,
}

/// Judges a passage whose gates are open. `begins` tells that its needs were looked at just now; at the end of a waiting
/// time they were not, and what a pause made not known until then is answered by a second look, which is always open.
pub(super) fn judge(step: &Step, passage: Passage, begins: bool, before: &Facts) -> Judged {
    let (sets, clears) = effect(step, passage);
    let acts = acts(step, passage);
    let after_of = |facts: &Facts| facts_after(facts, &sets, clears);
    let after = after_of(before);
    let known = dangers_of_change(before, &after, acts);
    let mut wrong = Vec::new();
    let refused = !known.is_empty();
    if refused {
        wrong.push(Wrong::Unguarded { lapsed: Vec::new(), dangers: known });
    } else {
        let after_pause = |lapsed: &[Fact]| {
            let mut facts = *before;
            facts.retain(|fact, _| !lapsed.contains(fact));
            dangers_of_change(&facts, &after_of(&facts), acts)
        };
        if begins {
            wrong.extend(subsets(&may_lapse(step, before)).into_iter().find_map(|lapsed| {
                let dangers = after_pause(&lapsed);
                (!dangers.is_empty()).then_some(Wrong::Unguarded { lapsed, dangers })
            }));
        }
        wrong.extend(outside(before, &after, &sets, acts));
    }
    Judged { after, refused, wrong }
}

/// Facts that a pause makes not known and that the step does not ask to be looked at again.
fn may_lapse(step: &Step, facts: &Facts) -> Vec<Fact> {
    let needed = |fact: &Fact| step.needs.iter().any(|needs| needs.fact == *fact);
    facts.keys().copied().filter(|fact| fact.lapses() && !needed(fact)).collect()
}

/// Every subset but the empty one, the largest first: the fewer facts are looked at again, the shorter the way.
fn subsets(facts: &[Fact]) -> Vec<Vec<Fact>> {
    let mut all: Vec<Vec<Fact>> = vec![Vec::new()];
    for fact in facts {
        let with: Vec<_> = all.iter().map(|some| some.iter().copied().chain([*fact]).collect()).collect();
        all.extend(with);
    }
    all.retain(|some| !some.is_empty());
    all.sort_by_key(|some| std::cmp::Reverse(some.len()));
    all
}

/// What can come to pass unseen, as far as the facts tell of it: a supply that is off or not known and hangs at no lock
/// of ours is switched on, or comes back; a valve that is shut and not proved passes.
fn events(facts: &Facts) -> impl Iterator<Item = Holds> {
    let is = |fact: Fact, value: Value| facts.get(&fact) == Some(&value);
    let loose = !is(Fact::Tag, Value::Tagged);
    let may_come = |fact: Fact| loose && (is(fact, Value::Off) || !facts.contains_key(&fact));
    let supply = may_come(Fact::Supply).then_some(Holds { fact: Fact::Supply, value: Value::On });
    let further = (loose && is(Fact::FurtherSupplies, Value::Off))
        .then_some(Holds { fact: Fact::FurtherSupplies, value: Value::On });
    let valves = is(Fact::Valves, Value::Shut).then_some(Holds { fact: Fact::Valves, value: Value::Open });
    [supply, further, valves].into_iter().flatten()
}

fn with(facts: &Facts, event: Holds) -> Facts {
    let mut facts = *facts;
    facts.insert(event.fact, event.value);
    facts
}

/// Dangers of a change that is harmless as known, where something came to pass unseen before or after it.
fn outside(before: &Facts, after: &Facts, sets: &Facts, acts: &[Act]) -> Vec<Wrong> {
    let standing = dangers(after);
    let mut wrong = Vec::new();
    let mut found = |event: Holds, mut dangers: Vec<Danger>| {
        dangers.retain(|danger| !standing.contains(danger));
        if !dangers.is_empty() {
            wrong.push(Wrong::Outside { event, dangers });
        }
    };
    for event in events(before).filter(|event| !sets.contains_key(&event.fact)) {
        found(event, dangers_of_change(&with(before, event), &with(after, event), acts));
    }
    for event in events(after) {
        found(event, dangers(&with(after, event)));
    }
    wrong.dedup();
    wrong
}

/// What nobody may leave behind at the end of a visit, beside the dangers that stand in the way of the seal.
const NOT_LEFT: &[(Fact, Value)] = &[
    (Fact::RinseCheck, Value::Unproved),
    (Fact::Loop, Value::Acid),
    (Fact::Loop, Value::Spent),
    (Fact::Loop, Value::Neutraliser),
    (Fact::Vessel, Value::AcidMix),
    (Fact::Vessel, Value::AlkaliMix),
    (Fact::ServicePump, Value::Running),
    (Fact::Covers, Value::Off),
    (Fact::FanGuard, Value::Off),
    (Fact::Earth, Value::Off),
    (Fact::Electronics, Value::Disconnected),
];

/// Facts that nobody may leave behind.
pub(super) fn left(facts: &Facts) -> Vec<Holds> {
    let stands = |(fact, value): &&(Fact, Value)| facts.get(fact) == Some(value);
    NOT_LEFT.iter().filter(stands).map(|(fact, value)| Holds { fact: *fact, value: *value }).collect()
}
