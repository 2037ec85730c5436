//! A counter-example in words: what a person would do, one line each, and what is wrong then.

use super::check::{CounterExample, Fault, Move};
use super::danger::Danger;
use super::gate::Passage;
use crate::id::StepId;
use crate::visit::fact::Holds;
use crate::words::Words;

/// The moves of a counter-example, one line each. `words` are those of the pack.
#[must_use]
pub fn moves(example: &CounterExample, words: &Words) -> Vec<String> {
    example.moves.iter().map(|one| told(one, words)).collect()
}

/// What is wrong at its end.
#[must_use]
pub fn fault(example: &CounterExample, words: &Words) -> String {
    match &example.fault {
        Fault::Unguarded { step, passage, dangers } => {
            let parts = [("step", title(step, *passage, words)), ("dangers", of_dangers(dangers, words))];
            fill(words, "proof-unguarded", &parts)
        }
        Fault::Answer { condition, option, dangers } => {
            let parts =
                [("answer", answer(condition.as_str(), option, words)), ("dangers", of_dangers(dangers, words))];
            fill(words, "proof-answer", &parts)
        }
        Fault::Outside { event, step, passage, dangers } => {
            let parts = [
                ("event", fact(*event, words)),
                ("step", title(step, *passage, words)),
                ("dangers", of_dangers(dangers, words)),
            ];
            fill(words, "proof-outside", &parts)
        }
        Fault::Trap { open } => {
            let titles: Vec<_> = open.iter().map(|step| quoted(step, words)).collect();
            fill(words, "proof-trap", &[("steps", titles.join(", "))])
        }
        Fault::Left { dangers, facts } => {
            let mut left: Vec<_> = facts.iter().map(|holds| fact(*holds, words)).collect();
            left.extend(dangers.iter().map(|danger| words.text(&format!("danger-{}", danger.name()))));
            fill(words, "proof-left", &[("left", left.join(" "))])
        }
        Fault::Away { excursion } => {
            let setting = words.text(&format!("excursion-{excursion}"));
            fill(words, "proof-away", &[("setting", setting)])
        }
        Fault::Dead { step } => fill(words, "proof-dead", &[("step", quoted(step, words))]),
    }
}

fn told(one: &Move, words: &Words) -> String {
    let of_step = |key: &str, step: &StepId| fill(words, key, &[("step", quoted(step, words))]);
    match one {
        Move::Answer { condition, option } => {
            fill(words, "proof-move-answer", &[("answer", answer(condition.as_str(), option, words))])
        }
        Move::Start { step } => of_step("proof-move-start", step),
        Move::Done { step } => of_step("proof-move-done", step),
        Move::Skip { step } => of_step("proof-move-skip", step),
        Move::Undo { step } => of_step("proof-move-undo", step),
        Move::Pause => words.text("proof-move-pause"),
        Move::Recheck { fact } => {
            fill(words, "proof-move-recheck", &[("fact", words.text(&format!("fact-{}", fact.name())))])
        }
    }
}

fn fill(words: &Words, key: &str, values: &[(&str, String)]) -> String {
    let values: Vec<(&str, &str)> = values.iter().map(|(name, value)| (*name, value.as_str())).collect();
    words.fill(key, &values)
}

/// A step's title with its name in the pack: people know the one, writers the other.
fn quoted(step: &StepId, words: &Words) -> String {
    let title = words.text(&format!("step-{step}"));
    fill(words, "proof-step", &[("title", title), ("id", step.to_string())])
}

fn title(step: &StepId, passage: Passage, words: &Words) -> String {
    match passage {
        Passage::Start => fill(words, "proof-at-start", &[("step", quoted(step, words))]),
        Passage::Done => quoted(step, words),
    }
}

fn answer(condition: &str, option: &str, words: &Words) -> String {
    let question = words.text(&format!("condition-{condition}"));
    format!("{question} {}", words.text(&format!("condition-{condition}-{option}")))
}

fn fact(holds: Holds, words: &Words) -> String {
    let name = holds.fact.name();
    format!("{}: {}.", words.text(&format!("fact-{name}")), words.text(&format!("fact-{name}-{}", holds.value.word())))
}

fn of_dangers(dangers: &[Danger], words: &Words) -> String {
    let told: Vec<_> = dangers.iter().map(|danger| words.text(&format!("danger-{}", danger.name()))).collect();
    told.join(" ")
}
