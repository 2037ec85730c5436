//! A pack with everything that it names found once, so that a state of the work is a handful of numbers.

use crate::id::{ConditionId, ExcursionId};
use crate::procedure::gate::{Standing, Turn};
use crate::procedure::pack::{Condition, ConditionOption, Pack, Step};
use crate::visit::fact::Facts;

/// Steps are bits of a number.
const STEPS_MAX: usize = 128;
/// Questions are groups of four bits of a number; nought is 'not answered'.
const QUESTIONS_MAX: usize = 32;
const OPTIONS_MAX: usize = 15;
const EXCURSIONS_MAX: usize = 32;

/// A pack, numbered.
pub(super) struct Plan<'a> {
    pub(super) steps: Vec<Planned<'a>>,
    pub(super) questions: Vec<Question<'a>>,
    pub(super) excursions: Vec<&'a ExcursionId>,
    /// Every combination of answers.
    pub(super) starts: u64,
}

/// A step with the numbers of what it names.
pub(super) struct Planned<'a> {
    pub(super) turn: Turn<'a>,
    pub(super) step: &'a Step,
    /// Questions that it asks.
    pub(super) asks: Vec<usize>,
    /// Questions that decide whether it applies.
    pub(super) when: Vec<usize>,
    /// Steps before it that concern every unit, as bits.
    pub(super) always: u128,
    pub(super) opens: Option<usize>,
    pub(super) homes: Option<usize>,
}

/// A question with one option for each group of options that mean the same to every step and set the same facts.
pub(super) struct Question<'a> {
    pub(super) id: &'a ConditionId,
    pub(super) options: Vec<&'a ConditionOption>,
    /// For every option of the pack the one that stands for it, counted from one.
    stands_for: Vec<(&'a str, usize)>,
}

/// Answers by question: the option's number counted from one, nought where there is none.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub(super) struct Answers(u128);

impl Answers {
    pub(super) fn get(self, question: usize) -> usize {
        (self.0 >> (4 * question) & 15) as usize
    }

    pub(super) fn with(self, question: usize, option: usize) -> Answers {
        let cleared = self.0 & !(15_u128 << (4 * question));
        Answers(cleared | ((option as u128) << (4 * question)))
    }
}

impl<'a> Plan<'a> {
    /// The pack, numbered.
    ///
    /// # Errors
    /// What is too much of, and what to do.
    pub(super) fn of(pack: &'a Pack) -> Result<Plan<'a>, String> {
        let questions: Vec<_> = pack.conditions.iter().map(|condition| question(pack, condition)).collect();
        let number = |id: &ConditionId| questions.iter().position(|question| question.id == id);
        let excursion = |id: &Option<ExcursionId>| {
            id.as_ref().and_then(|id| pack.excursions.iter().position(|known| known.id == *id))
        };
        let when = |step: &Step| step.when.iter().filter_map(|when| number(&when.condition)).collect();
        let steps: Vec<_> = pack
            .steps()
            .map(|(phase, step)| {
                let turn = Turn::of(pack, phase, step);
                let always = turn.earlier().filter(|(number, step)| *number < STEPS_MAX && step.when.is_empty());
                let always = always.fold(0, |bits, (number, _)| bits | 1_u128 << number);
                Planned {
                    step,
                    asks: step.asks.iter().filter_map(number).collect(),
                    when: when(step),
                    always,
                    opens: excursion(&step.opens),
                    homes: excursion(&step.homes),
                    turn,
                }
            })
            .collect();
        let most = |what: &str, count: usize, most: usize| {
            (count > most).then(|| format!("the pack has {count} {what}; the checker goes through {most} at most"))
        };
        let too_much = most("steps", steps.len(), STEPS_MAX)
            .or_else(|| most("conditions", questions.len(), QUESTIONS_MAX))
            .or_else(|| most("excursions", pack.excursions.len(), EXCURSIONS_MAX))
            .or_else(|| {
                let options = questions.iter().map(|question| question.options.len()).max().unwrap_or(0);
                most("options to one condition", options, OPTIONS_MAX)
            });
        if let Some(too_much) = too_much {
            return Err(too_much);
        }
        let starts = pack.conditions.iter().fold(1_u64, |all, condition| {
            all.saturating_mul(u64::try_from(condition.options.len()).unwrap_or(u64::MAX))
        });
        Ok(Plan { steps, questions, excursions: pack.excursions.iter().map(|known| &known.id).collect(), starts })
    }
}

fn question<'a>(pack: &'a Pack, condition: &'a Condition) -> Question<'a> {
    let means = |option: &ConditionOption| -> Vec<bool> {
        let names =
            |step: &Step| step.when.iter().any(|when| when.condition == condition.id && when.option == option.id);
        pack.steps().map(|(_, step)| names(step)).collect()
    };
    let mut options: Vec<&ConditionOption> = Vec::new();
    let mut stands_for = Vec::new();
    for option in &condition.options {
        let same = |other: &&ConditionOption| other.sets == option.sets && means(other) == means(option);
        let place = options.iter().position(same).unwrap_or(options.len());
        if place == options.len() {
            options.push(option);
        }
        stands_for.push((option.id.as_str(), place + 1));
    }
    Question { id: &condition.id, options, stands_for }
}

impl Question<'_> {
    /// The option that stands for an answer, counted from one.
    pub(super) fn class_of(&self, answer: &str) -> Option<usize> {
        self.stands_for.iter().find(|(option, _)| *option == answer).map(|(_, place)| *place)
    }
}

/// A state of the checker as the gates see it.
pub(super) struct Seen<'s, 'a> {
    pub(super) plan: &'s Plan<'a>,
    pub(super) behind: u128,
    pub(super) running: u128,
    pub(super) answers: Answers,
    pub(super) facts: &'s Facts,
}

impl Standing for Seen<'_, '_> {
    fn facts(&self) -> &Facts {
        self.facts
    }

    fn answer(&self, condition: &ConditionId) -> Option<&str> {
        let (number, question) = self.plan.questions.iter().enumerate().find(|(_, known)| known.id == condition)?;
        let option = self.answers.get(number).checked_sub(1)?;
        question.options.get(option).map(|option| option.id.as_str())
    }

    fn is_behind(&self, number: usize, _: &Step) -> bool {
        self.behind >> number & 1 == 1
    }

    fn is_running(&self, number: usize, _: &Step) -> bool {
        self.running >> number & 1 == 1
    }
}
