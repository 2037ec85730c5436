//! Every state that allowed actions lead to, the nearest first.

use super::interner::Interner;
use super::judge::{Judged, Wrong, judge, left};
use super::plan::{Answers, Plan, Planned, Seen};
use super::proof::{Fault, Space};
use crate::procedure::danger::{dangers, dangers_left, lingers};
use crate::procedure::gate::{Applies, Passage, applies, facts_after};
use crate::visit::fact::{Fact, Facts, Holds};

/// More states than this are not gone through: a pack of the usual size has some ten thousand.
const STATES_MAX: usize = 2_000_000;

/// Which actions are gone through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Alphabet {
    /// Answers are given once, where they are asked; no mark is taken back.
    Straight,
    /// The same, and once on the way, anywhere, a slip is mended: the last mark taken back or an answer changed.
    Mended,
}

/// A state of the work. Its facts are the number of what lies beside it.
///
/// Readings, photographs, waiting and settings are not part of it: they can always be had, answered for, waited out and
/// brought home, and change no fact. Neither is a pause: what lapses comes back by a second look, nothing else does
/// anything to it, and gates only ask for what is known, so every state with lapsed facts is one of these states with
/// some facts less. [`judge`] looks at all of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct State {
    pub(super) behind: u128,
    pub(super) running: u128,
    pub(super) answers: Answers,
    pub(super) facts: u32,
    /// Settings that a step took away and none brought home.
    pub(super) away: u32,
    pub(super) slip: Slip,
}

/// What can still be mended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum Slip {
    /// Nothing any more, or nothing ever.
    Over,
    /// The mark of this step is the last one; none yet.
    Last(Option<u8>),
}

/// What leads from one state to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Deed {
    Pass(Passage),
    Skip,
    Undo,
    Answer,
}

/// How a state was first reached.
#[derive(Clone, Copy, Debug)]
pub(super) struct Came {
    pub(super) from: u32,
    pub(super) deed: Deed,
    /// The step; for an answer, the question.
    pub(super) number: usize,
    /// The answers then: those not given yet are given before it.
    pub(super) answers: Answers,
}

/// A fault with the state in which it was met, and what is done there.
pub(super) struct Met {
    pub(super) fault: Fault,
    pub(super) at: u32,
    /// The answers at the attempt; none where nothing is attempted.
    pub(super) attempt: Option<Answers>,
    /// Facts that lapsed before the attempt and were not looked at again; none without a pause.
    pub(super) lapsed: Vec<Fact>,
}

/// A space of states, gone through to its end.
pub(super) struct Explored {
    pub(super) states: Interner<State>,
    pub(super) facts: Interner<Facts>,
    pub(super) came: Vec<Option<Came>>,
    pub(super) edges: Vec<(u32, u32)>,
    pub(super) ends: Vec<u32>,
    pub(super) met: Vec<Met>,
    /// Steps that were done somewhere.
    pub(super) done: u128,
    pub(super) space: Space,
}

/// A passage that is tried.
#[derive(Clone, Copy)]
struct Attempt {
    at: u32,
    number: usize,
    passage: Passage,
    running: bool,
    answers: Answers,
}

struct Explorer<'p, 'a> {
    plan: &'p Plan<'a>,
    /// By facts, step and passage: what was judged already.
    judged: Vec<u32>,
    out: Explored,
}

/// Not judged yet; refused.
const UNSEEN: u32 = u32::MAX;
const REFUSED: u32 = u32::MAX - 1;

/// Goes through everything. `None` where there are too many states.
pub(super) fn explore(plan: &Plan<'_>, alphabet: Alphabet) -> Option<Explored> {
    let out = Explored {
        states: Interner::new(),
        facts: Interner::new(),
        came: vec![None],
        edges: Vec::new(),
        ends: Vec::new(),
        met: Vec::new(),
        done: 0,
        space: Space::default(),
    };
    let mut explorer = Explorer { plan, judged: Vec::new(), out };
    explorer.out.facts.intern(&Facts::new());
    let slip = if alphabet == Alphabet::Straight { Slip::Over } else { Slip::Last(None) };
    let start = State { behind: 0, running: 0, answers: Answers::default(), facts: 0, away: 0, slip };
    explorer.out.states.intern(&start);
    let mut at = 0;
    while let Some(state) = explorer.out.states.get(at).copied() {
        if explorer.out.states.len() > STATES_MAX {
            return None;
        }
        explorer.go_on(at, &state);
        at += 1;
    }
    let mut out = explorer.out;
    out.space = Space { states: out.states.len() as u64, transitions: out.edges.len() as u64 };
    Some(out)
}

impl Explorer<'_, '_> {
    fn go_on(&mut self, at: u32, state: &State) {
        let Some(facts) = self.out.facts.get(state.facts).copied() else { return };
        let plan = self.plan;
        for (number, planned) in plan.steps.iter().enumerate() {
            // What every unit has to do before it is looked at first: most steps wait for something of it.
            if state.behind >> number & 1 == 0 && planned.always & !state.behind == 0 {
                self.try_step(at, state, &facts, number, planned);
            }
        }
        if let Slip::Last(last) = state.slip {
            last.iter().for_each(|last| self.take_back(at, state, &facts, usize::from(*last)));
            self.answer_otherwise(at, state, &facts);
        }
        self.look_for_end(at, state, &facts);
    }

    fn seen<'s>(&'s self, state: &State, answers: Answers, facts: &'s Facts) -> Seen<'s, 's> {
        Seen { plan: self.plan, behind: state.behind, running: state.running, answers, facts }
    }

    fn try_step(&mut self, at: u32, state: &State, facts: &Facts, number: usize, planned: &Planned<'_>) {
        if !planned.turn.has_come(&self.seen(state, state.answers, facts)) {
            return;
        }
        let bit = 1_u128 << number;
        let slip = if state.slip == Slip::Over { Slip::Over } else { Slip::Last(Some(number as u8)) };
        let marked = State { slip, running: state.running & !bit, behind: state.behind | bit, ..*state };
        let brought = !planned.homes.map_or(0, |setting| 1 << setting);
        if planned.step.may_skip {
            let next = State { away: state.away & brought, ..marked };
            self.reach(next, Came { from: at, deed: Deed::Skip, number, answers: state.answers });
        }
        let running = state.running & bit != 0;
        let passage = if planned.step.dwell.is_some() && !running { Passage::Start } else { Passage::Done };
        for (answers, facts) in self.asked(at, state, facts, planned, passage) {
            if !planned.turn.is_open(&self.seen(state, answers, &facts), passage) {
                continue;
            }
            let (before, _) = self.out.facts.intern(&facts);
            let attempt = Attempt { at, number, passage, running, answers };
            let Some(after) = self.judged(&attempt, before, planned) else { continue };
            let next = if passage == Passage::Start {
                State { facts: after, running: state.running | bit, slip, ..*state }
            } else {
                self.out.done |= bit;
                let taken = planned.opens.map_or(0, |setting| 1 << setting);
                State { facts: after, answers, away: (state.away | taken) & brought, ..marked }
            };
            self.reach(next, Came { from: at, deed: Deed::Pass(passage), number, answers });
        }
    }

    /// Every way to answer what the step asks before it is done and nobody has answered yet, with the facts that the
    /// answers set.
    fn asked(
        &mut self,
        at: u32,
        state: &State,
        facts: &Facts,
        planned: &Planned<'_>,
        passage: Passage,
    ) -> Vec<(Answers, Facts)> {
        let mut ways = vec![(state.answers, *facts)];
        let plan = self.plan;
        let open = |number: &&usize| passage == Passage::Done && state.answers.get(**number) == 0;
        for &number in planned.asks.iter().filter(open) {
            let options = plan.questions.get(number).map_or(0, |question| question.options.len());
            let mut more = Vec::new();
            for (answers, facts) in ways {
                for option in 1..=options {
                    let after = self.answered(at, answers, number, option, &facts);
                    more.extend(after.map(|after| (answers.with(number, option), after)));
                }
            }
            ways = more;
        }
        ways
    }

    /// The facts after an answer, unless it brings danger.
    fn answered(&mut self, at: u32, answers: Answers, number: usize, option: usize, facts: &Facts) -> Option<Facts> {
        let question = self.plan.questions.get(number)?;
        let chosen = question.options.get(option.checked_sub(1)?)?;
        let sets: Facts = chosen.sets.iter().map(|holds| (holds.fact, holds.value)).collect();
        let after = facts_after(facts, &sets, &[]);
        // An answer tells what is, and changes no liquid: only the states themselves count.
        let standing = dangers(facts);
        let mut dangers = dangers(&after);
        dangers.retain(|danger| !standing.contains(danger));
        if dangers.is_empty() {
            return Some(after);
        }
        let fault = Fault::Answer { condition: question.id.clone(), option: chosen.id.clone(), dangers };
        self.meet(fault, at, Some(answers), Vec::new());
        None
    }

    /// The facts after a passage whose gates are open, or none where the core refuses it. Each is judged once.
    fn judged(&mut self, attempt: &Attempt, before: u32, planned: &Planned<'_>) -> Option<u32> {
        let Attempt { at, number, passage, running, answers } = *attempt;
        let place = (before as usize * self.plan.steps.len() + number) * 2 + usize::from(passage == Passage::Done);
        if place >= self.judged.len() {
            self.judged.resize((place + 1) * 2, UNSEEN);
        }
        match self.judged.get(place) {
            Some(&REFUSED) => return None,
            Some(&after) if after != UNSEEN => return Some(after),
            _ => {}
        }
        let facts = *self.out.facts.get(before)?;
        let Judged { after, refused, wrong } = judge(planned.step, passage, !running, &facts);
        for wrong in wrong {
            let step = planned.step.id.clone();
            let (fault, lapsed) = match wrong {
                Wrong::Unguarded { lapsed, dangers } => (Fault::Unguarded { step, passage, dangers }, lapsed),
                Wrong::Outside { event, dangers } => (Fault::Outside { event, step, passage, dangers }, Vec::new()),
            };
            self.meet(fault, at, Some(answers), lapsed);
        }
        let (after, _) = self.out.facts.intern(&after);
        let told = if refused { REFUSED } else { after };
        if let Some(memory) = self.judged.get_mut(place) {
            *memory = told;
        }
        (!refused).then_some(after)
    }

    /// The first of each kind is the nearest.
    fn meet(&mut self, fault: Fault, at: u32, attempt: Option<Answers>, lapsed: Vec<Fact>) {
        if !self.out.met.iter().any(|met| met.fault == fault) {
            self.out.met.push(Met { fault, at, attempt, lapsed });
        }
    }

    /// The last mark is taken back, and with it the facts that still are as its step set them, but for what lingers.
    fn take_back(&mut self, at: u32, state: &State, facts: &Facts, number: usize) {
        let Some(planned) = self.plan.steps.get(number) else { return };
        let mut after = *facts;
        for holds in planned.step.sets.iter().chain(&planned.step.starts) {
            if facts.get(&holds.fact) == Some(&holds.value) && !lingers(*holds) {
                after.remove(&holds.fact);
            }
        }
        let bit = 1_u128 << number;
        let facts = self.out.facts.intern(&after).0;
        let (behind, running) = (state.behind & !bit, state.running & !bit);
        let next = State { behind, running, facts, slip: Slip::Over, ..*state };
        self.reach(next, Came { from: at, deed: Deed::Undo, number, answers: state.answers });
    }

    /// An answer is changed, as long as no step is marked that it decides about; or given once more, and sets its facts
    /// once more.
    fn answer_otherwise(&mut self, at: u32, state: &State, facts: &Facts) {
        let plan = self.plan;
        let marked = state.behind | state.running;
        for (number, question) in plan.questions.iter().enumerate() {
            let given = state.answers.get(number);
            let decides =
                |(step, planned): (usize, &Planned<'_>)| marked >> step & 1 == 1 && planned.when.contains(&number);
            let settled = plan.steps.iter().enumerate().any(decides);
            for option in (1..=question.options.len()).filter(|option| given != 0 && (*option == given || !settled)) {
                let Some(after) = self.answered(at, state.answers, number, option, facts) else { continue };
                let facts = self.out.facts.intern(&after).0;
                let next = State { answers: state.answers.with(number, option), facts, slip: Slip::Over, ..*state };
                if (next.answers, next.facts) != (state.answers, state.facts) {
                    self.reach(next, Came { from: at, deed: Deed::Answer, number, answers: next.answers });
                }
            }
        }
    }

    fn reach(&mut self, next: State, came: Came) {
        let (to, new) = self.out.states.intern(&next);
        if new {
            self.out.came.push(Some(came));
        }
        self.out.edges.push((came.from, to));
    }

    /// Everything behind or of no concern: the end of the work, fit to be sealed or not.
    fn look_for_end(&mut self, at: u32, state: &State, facts: &Facts) {
        let seen = self.seen(state, state.answers, facts);
        let over = |(number, planned): (usize, &Planned<'_>)| {
            state.behind >> number & 1 == 1 || applies(planned.step, &seen) == Applies::No
        };
        if !self.plan.steps.iter().enumerate().all(over) {
            return;
        }
        let (dangers, facts): (_, Vec<Holds>) = (dangers_left(facts), left(facts));
        let away = self.plan.excursions.iter().enumerate().find(|(setting, _)| state.away >> setting & 1 == 1);
        if !dangers.is_empty() || !facts.is_empty() {
            self.meet(Fault::Left { dangers, facts }, at, None, Vec::new());
        } else if let Some((_, excursion)) = away {
            self.meet(Fault::Away { excursion: (*excursion).clone() }, at, None, Vec::new());
        } else {
            self.out.ends.push(at);
        }
    }
}
