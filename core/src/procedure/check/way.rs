//! From a state back to the start: the moves that lead there, and whether they lead on to an end.

use super::explore::{Deed, Explored, Met};
use super::plan::{Answers, Plan};
use super::proof::{CounterExample, Move};
use crate::procedure::gate::Passage;
use crate::visit::fact::Fact;

/// The counter-example that was met, with the moves into it. The attempt itself is no move: the fault tells of it.
pub(super) fn counter_example(plan: &Plan<'_>, explored: &Explored, met: &Met) -> CounterExample {
    let mut way = Way { plan, given: Answers::default(), moves: Vec::new() };
    for came in steps_to(explored, met.at) {
        way.lean_on(came.answers);
        let step = plan.steps.get(came.number).map(|planned| planned.step.id.clone());
        match came.deed {
            // The answer itself was all.
            Deed::Answer => way.answer_again(came.answers, came.number),
            Deed::Pass(Passage::Start) => way.moves.extend(step.map(|step| Move::Start { step })),
            Deed::Pass(Passage::Done) => way.moves.extend(step.map(|step| Move::Done { step })),
            Deed::Skip => way.moves.extend(step.map(|step| Move::Skip { step })),
            Deed::Undo => way.moves.extend(step.map(|step| Move::Undo { step })),
        }
    }
    met.attempt.iter().for_each(|answers| way.lean_on(*answers));
    if !met.lapsed.is_empty() {
        way.moves.push(Move::Pause);
        let facts = explored.states.get(met.at).and_then(|state| explored.facts.get(state.facts));
        let known = facts.into_iter().flat_map(|facts| facts.keys().copied());
        let again: Vec<Fact> = known.filter(|fact| fact.lapses() && !met.lapsed.contains(fact)).collect();
        way.moves.extend(again.into_iter().map(|fact| Move::Recheck { fact }));
    }
    CounterExample { moves: way.moves, fault: met.fault.clone() }
}

fn steps_to(explored: &Explored, at: u32) -> Vec<super::explore::Came> {
    let mut steps = Vec::new();
    let mut at = at;
    while let Some(Some(came)) = explored.came.get(at as usize) {
        steps.push(*came);
        at = came.from;
    }
    steps.reverse();
    steps
}

struct Way<'p, 'a> {
    plan: &'p Plan<'a>,
    given: Answers,
    moves: Vec<Move>,
}

impl Way<'_, '_> {
    fn give(&mut self, number: usize, option: usize) {
        let Some(question) = self.plan.questions.get(number) else { return };
        if let Some(chosen) = option.checked_sub(1).and_then(|option| question.options.get(option)) {
            self.moves.push(Move::Answer { condition: question.id.clone(), option: chosen.id.clone() });
            self.given = self.given.with(number, option);
        }
    }

    /// Gives the answers that what follows leans on, where they are not given yet or otherwise.
    fn lean_on(&mut self, answers: Answers) {
        for number in 0..self.plan.questions.len() {
            if answers.get(number) != 0 && answers.get(number) != self.given.get(number) {
                self.give(number, answers.get(number));
            }
        }
    }

    /// An answer that was given before is given once more.
    fn answer_again(&mut self, answers: Answers, number: usize) {
        let fresh = matches!(self.moves.last(), Some(Move::Answer { condition, .. })
            if self.plan.questions.get(number).is_some_and(|question| question.id == condition));
        if !fresh {
            self.give(number, answers.get(number));
        }
    }
}

/// States from which no end can be reached.
pub(super) fn trapped(explored: &Explored) -> Vec<u32> {
    let count = explored.states.len();
    let mut starts = vec![0_u32; count + 1];
    for (_, to) in &explored.edges {
        if let Some(place) = starts.get_mut(*to as usize + 1) {
            *place += 1;
        }
    }
    let mut sum = 0;
    for place in &mut starts {
        sum += *place;
        *place = sum;
    }
    let mut filled = starts.clone();
    let mut from_of = vec![0_u32; explored.edges.len()];
    for (from, to) in &explored.edges {
        if let Some(place) = filled.get_mut(*to as usize) {
            if let Some(slot) = from_of.get_mut(*place as usize) {
                *slot = *from;
            }
            *place += 1;
        }
    }
    let mut leads = vec![false; count];
    let mut todo = explored.ends.clone();
    while let Some(at) = todo.pop() {
        let Some(seen) = leads.get_mut(at as usize) else { continue };
        if std::mem::replace(seen, true) {
            continue;
        }
        let range = |at: u32| starts.get(at as usize).copied().unwrap_or(0) as usize;
        todo.extend(from_of.get(range(at)..range(at + 1)).unwrap_or_default());
    }
    (0..count as u32).filter(|at| leads.get(*at as usize) == Some(&false)).collect()
}
