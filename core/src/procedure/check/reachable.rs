//! The states that the checker went through, to ask whether a run in the field stands in one of them.

use super::explore::{Alphabet, explore};
use super::interner::Interner;
use super::plan::{Answers, Plan};
use crate::procedure::gate::Standing;
use crate::procedure::pack::Pack;
use crate::visit::fact::Facts;
use crate::visit::state::Run;

/// Marks, answers and facts of every state that the checker went through.
pub struct Reachable<'a> {
    plan: Plan<'a>,
    states: Interner<(u128, u128, Answers, Facts)>,
}

impl<'a> Reachable<'a> {
    /// Goes through everything that the pack allows, with one slip anywhere.
    ///
    /// # Errors
    /// What is too much of to be gone through, and what to do.
    pub fn of(pack: &'a Pack) -> Result<Reachable<'a>, String> {
        let plan = Plan::of(pack)?;
        let explored = explore(&plan, Alphabet::Mended).ok_or_else(|| "there are too many states".to_owned())?;
        let mut states = Interner::new();
        for state in explored.states.iter() {
            if let Some(facts) = explored.facts.get(state.facts) {
                states.intern(&(state.behind, state.running, state.answers, *facts));
            }
        }
        Ok(Reachable { plan, states })
    }

    /// Does the run stand in one of the states? What lapsed in a pause counts as it was: the checker looks at every
    /// state with anything lapsed in it.
    #[must_use]
    pub fn has(&self, run: &Run) -> bool {
        let bits = |is: &dyn Fn(usize) -> bool| {
            (0..self.plan.steps.len()).filter(|number| is(*number)).fold(0, |bits, number| bits | 1_u128 << number)
        };
        let step = |number: usize| self.plan.steps.get(number).map(|planned| planned.step);
        let behind = bits(&|number| step(number).is_some_and(|step| Standing::is_behind(run, number, step)));
        let running = bits(&|number| step(number).is_some_and(|step| run.is_running(number, step)));
        let mut answers = Answers::default();
        for (number, question) in self.plan.questions.iter().enumerate() {
            if let Some(option) = run.conditions.get(question.id).and_then(|answer| question.class_of(answer)) {
                answers = answers.with(number, option);
            }
        }
        let mut facts = run.lapsed;
        facts.extend(run.facts);
        self.states.find(&(behind, running, answers, facts))
    }
}
