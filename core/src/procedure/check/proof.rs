//! What the checker says of a pack.

use serde::Serialize;

use crate::id::{ConditionId, ExcursionId, StepId};
use crate::procedure::danger::Danger;
use crate::procedure::gate::Passage;
use crate::visit::fact::{Fact, Holds};

/// The verdict about a pack, with the size of what was looked at.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Proof {
    /// The pack's name.
    pub pack: String,
    /// Starting conditions: every combination of answers to the pack's questions.
    pub starts: u64,
    /// The straight way: answers given where they are asked, nothing taken back.
    pub straight: Space,
    /// The same with one slip anywhere: the last mark taken back, or an answer changed. Not looked at where the straight
    /// way already shows a fault.
    pub mended: Option<Space>,
    /// States of the larger space, each with every set of facts that a pause can have made not known in it.
    pub paused: u64,
    /// The fault, or none: then the pack is proved.
    pub verdict: Verdict,
}

/// A space of states that was gone through to its end.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Space {
    /// Distinct states: marks, answers, facts, settings away.
    pub states: u64,
    /// Allowed actions between them.
    pub transitions: u64,
}

/// Is the pack safe?
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// No allowed order leads into danger, and the end can be reached from everywhere.
    Proved,
    /// One counter-example for each different fault, the shortest first. Never empty.
    Refused(Vec<CounterExample>),
    /// The pack is larger than what can be gone through; what is too much, and what to do.
    TooLarge(String),
}

/// The shortest list of moves into a fault. Every move is one that the field allows.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct CounterExample {
    /// From the start of the visit.
    pub moves: Vec<Move>,
    /// What is wrong there.
    pub fault: Fault,
}

/// Something that a person does, or that comes to pass.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "move")]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum Move {
    /// A question is answered, or answered otherwise.
    Answer { condition: ConditionId, option: String },
    /// A waiting time begins.
    Start { step: StepId },
    /// A step is done.
    Done { step: StepId },
    /// A step is left out.
    Skip { step: StepId },
    /// The last mark is taken back.
    Undo { step: StepId },
    /// More than half an hour goes by.
    Pause,
    /// What lapsed is looked at again, and holds.
    Recheck { fact: Fact },
}

/// What is wrong with a pack.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "fault")]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum Fault {
    /// The pack's own gates are open to this step, and only the core's last guard refuses it.
    Unguarded { step: StepId, passage: Passage, dangers: Vec<Danger> },
    /// The answer brings danger.
    Answer { condition: ConditionId, option: String, dangers: Vec<Danger> },
    /// The step is allowed, but dangerous if this came to pass unseen: the supply came back, a valve passes.
    Outside { event: Holds, step: StepId, passage: Passage, dangers: Vec<Danger> },
    /// From here no allowed action leads to the end. Steps that are still open.
    Trap { open: Vec<StepId> },
    /// Everything is behind, and this is left behind with it.
    Left { dangers: Vec<Danger>, facts: Vec<Holds> },
    /// Everything is behind, and no step brought this setting home.
    Away { excursion: ExcursionId },
    /// No start ever leads to this step.
    Dead { step: StepId },
}

impl Proof {
    /// Is the pack proved?
    #[must_use]
    pub fn is_proved(&self) -> bool {
        self.verdict == Verdict::Proved
    }

    /// The counter-examples; none where the pack is proved or too large.
    #[must_use]
    pub fn counter_examples(&self) -> &[CounterExample] {
        match &self.verdict {
            Verdict::Refused(found) => found,
            Verdict::Proved | Verdict::TooLarge(_) => &[],
        }
    }

    /// Distinct states of everything that was gone through.
    #[must_use]
    pub fn states(&self) -> u64 {
        self.mended.unwrap_or(self.straight).states
    }

    /// Allowed actions of everything that was gone through.
    #[must_use]
    pub fn transitions(&self) -> u64 {
        self.mended.unwrap_or(self.straight).transitions
    }
}
