//! Every state that allowed actions lead to, the nearest first.

use super::interner::Interner;
use super::judge::{Judged, Wrong, judge, left};
use super::plan::{Answers, Plan, Planned, Seen};
use super::proof::{Fault, Space};
use crate::procedure::danger::{dangers_left, dangers_of_change, lingers};
use crate::procedure::gate::{Applies, Passage, applies, facts_after};
use crate::visit::fact::{Fact, Facts, Holds};

/// More states than this are not gone through: a pack of the usual size has some ten thousand.
const STATES_MAX: usize = 3_000_000;

/// Which actions are gone through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Alphabet {
    /// Answers are given once, where they are asked; no mark is taken back.
    Straight,
    /// Answers are given and changed at any time, and the last mark is taken back, again and again.
    Corrected,
}

/// A state of the work. Facts and the order of marks are numbers of what lies beside it.
///
/// Readings, photographs, waiting and settings are not part of it: they can always be had, answered for, waited out and
/// brought home, and change no fact. Neither is a pause: what lapses comes back by a second look, nothing else does
/// anything to it, and gates only ask for what is known, so every state with lapsed facts is one of these states with
/// some facts less. [`judge`] looks at all of them.
///
/// With [`Alphabet::Corrected`], the answer to a question is kept only while it cannot be changed (a step that it decides
/// about is marked) or where some answer sets facts. Any other answer is free: it can be changed to any option at any
/// time, so that what depends on it is gone through with every option.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct State {
    pub(super) behind: u128,
    pub(super) running: u128,
    pub(super) answers: Answers,
    pub(super) facts: u32,
    pub(super) order: u32,
    /// Settings that a step took away and none brought home; only with [`Alphabet::Straight`].
    pub(super) away: u32,
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
    /// Answers that this leans on: those not given yet are given before it.
    pub(super) answers: Answers,
}

/// A fault with the state in which it was met, and what is done there.
pub(super) struct Met {
    pub(super) fault: Fault,
    pub(super) at: u32,
    /// Answers that the attempt leans on, and its step; none where nothing is attempted.
    pub(super) attempt: Option<(usize, Answers)>,
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

struct Explorer<'p, 'a> {
    plan: &'p Plan<'a>,
    alphabet: Alphabet,
    orders: Interner<Vec<u8>>,
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
        came: Vec::new(),
        edges: Vec::new(),
        ends: Vec::new(),
        met: Vec::new(),
        done: 0,
        space: Space::default(),
    };
    let mut explorer = Explorer { plan, alphabet, orders: Interner::new(), judged: Vec::new(), out };
    explorer.out.facts.intern(&Facts::new());
    explorer.orders.intern(&Vec::new());
    let start = State { behind: 0, running: 0, answers: Answers::default(), facts: 0, order: 0, away: 0 };
    explorer.out.states.intern(&start);
    explorer.out.came.push(None);
    let mut at = 0;
    while let Some(state) = explorer.out.states.get(at).copied() {
        if explorer.out.states.len() > STATES_MAX {
            return None;
        }
        explorer.go_on(at, state);
        at += 1;
    }
    let mut out = explorer.out;
    out.space = Space { states: out.states.len() as u64, transitions: out.edges.len() as u64 };
    Some(out)
}

impl Explorer<'_, '_> {
    fn go_on(&mut self, at: u32, state: State) {
        let Some(facts) = self.out.facts.get(state.facts).copied() else { return };
        let first = self.out.edges.len();
        let plan = self.plan;
        for (number, planned) in plan.steps.iter().enumerate() {
            if state.behind >> number & 1 == 0 {
                for answers in self.assumptions(&state, &planned.near) {
                    self.try_step(at, &state, &facts, number, planned, answers);
                }
            }
        }
        if self.alphabet == Alphabet::Corrected {
            self.undo(at, &state, &facts);
            self.answer_otherwise(at, &state, &facts);
        }
        // The same way under several assumptions is one way.
        if let Some(new) = self.out.edges.get_mut(first..) {
            new.sort_unstable();
        }
        self.out.edges.dedup();
        self.look_for_end(at, &state, &facts);
    }

    fn seen<'s>(&'s self, state: &State, answers: Answers, facts: &'s Facts) -> Seen<'s, '_> {
        Seen { plan: self.plan, behind: state.behind, running: state.running, answers, facts }
    }

    /// The state's answers, with every combination for the questions among these that are free.
    fn assumptions(&self, state: &State, questions: &[usize]) -> Vec<Answers> {
        let mut all = vec![state.answers];
        if self.alphabet == Alphabet::Straight {
            return all;
        }
        for &number in questions {
            let Some(question) = self.plan.questions.get(number) else { continue };
            if question.sets || state.answers.get(number) != 0 {
                continue;
            }
            let options = 1..=question.options.len();
            all = options.flat_map(|option| all.iter().map(move |some| some.with(number, option))).collect();
        }
        all
    }

    fn try_step(
        &mut self,
        at: u32,
        state: &State,
        facts: &Facts,
        number: usize,
        planned: &Planned<'_>,
        answers: Answers,
    ) {
        if !planned.turn.has_come(&self.seen(state, answers, facts)) {
            return;
        }
        let bit = 1_u128 << number;
        if planned.step.may_skip {
            let came = Came { from: at, deed: Deed::Skip, number, answers };
            let mut next = self.marked(state, planned, number, answers);
            next.behind |= bit;
            next.running &= !bit;
            next.away &= !planned.homes.map_or(0, |setting| 1 << setting);
            self.reach(next, came);
        }
        let running = state.running & bit != 0;
        let passage = if planned.step.dwell.is_some() && !running { Passage::Start } else { Passage::Done };
        let asked = if passage == Passage::Done { self.asked(at, state, facts, planned, answers) } else { vec![] };
        let ways = if passage == Passage::Done { asked } else { vec![(answers, *facts)] };
        for (answers, facts) in ways {
            if !planned.turn.is_open(&self.seen(state, answers, &facts), passage) {
                continue;
            }
            let (before, _) = self.out.facts.intern(&facts);
            let Some(after) = self.judged(at, before, number, planned, passage, running, answers) else { continue };
            let mut next = self.marked(state, planned, number, answers);
            next.facts = after;
            if passage == Passage::Start {
                next.running |= bit;
            } else {
                next.running &= !bit;
                next.behind |= bit;
                next.away |= planned.opens.map_or(0, |setting| 1 << setting);
                next.away &= !planned.homes.map_or(0, |setting| 1 << setting);
                self.out.done |= bit;
            }
            if self.alphabet == Alphabet::Corrected {
                next.away = 0;
            } else {
                next.answers = answers;
            }
            self.reach(next, Came { from: at, deed: Deed::Pass(passage), number, answers });
        }
    }

    /// Every way to answer what the step asks and nobody has answered yet, with the facts that the answers set.
    fn asked(
        &mut self,
        at: u32,
        state: &State,
        facts: &Facts,
        planned: &Planned<'_>,
        answers: Answers,
    ) -> Vec<(Answers, Facts)> {
        let mut ways = vec![(answers, *facts)];
        for &number in &planned.asks {
            let Some(question) = self.plan.questions.get(number) else { continue };
            if state.answers.get(number) != 0 || self.alphabet == Alphabet::Corrected && !question.sets {
                continue;
            }
            if self.alphabet == Alphabet::Corrected {
                // An answer that sets facts is an action of its own there, and comes first.
                return Vec::new();
            }
            let mut more = Vec::new();
            for (answers, facts) in ways {
                for option in 1..=question.options.len() {
                    if let Some(after) = self.answered(at, number, option, &facts) {
                        more.push((answers.with(number, option), after));
                    }
                }
            }
            ways = more;
        }
        ways
    }

    /// The facts after an answer, unless it brings danger.
    fn answered(&mut self, at: u32, number: usize, option: usize, facts: &Facts) -> Option<Facts> {
        let question = self.plan.questions.get(number)?;
        let chosen = question.options.get(option.checked_sub(1)?)?;
        let sets: Facts = chosen.sets.iter().map(|holds| (holds.fact, holds.value)).collect();
        let after = facts_after(facts, &sets, &[]);
        let dangers = dangers_of_change(facts, &after, &[]);
        if dangers.is_empty() {
            return Some(after);
        }
        let fault = Fault::Answer { condition: question.id.clone(), option: chosen.id.clone(), dangers };
        self.meet(fault, at, None, Vec::new());
        None
    }

    /// The facts after a passage whose gates are open, or none where the core refuses it. Each is judged once.
    #[allow(clippy::too_many_arguments, reason = "one call, and each of them is told in a counter-example")]
    fn judged(
        &mut self,
        at: u32,
        before: u32,
        number: usize,
        planned: &Planned<'_>,
        passage: Passage,
        running: bool,
        answers: Answers,
    ) -> Option<u32> {
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
            self.meet(fault, at, Some((number, answers)), lapsed);
        }
        let (after, _) = self.out.facts.intern(&after);
        let told = if refused { REFUSED } else { after };
        if let Some(memory) = self.judged.get_mut(place) {
            *memory = told;
        }
        (!refused).then_some(after)
    }

    /// The first of each kind is the nearest.
    fn meet(&mut self, fault: Fault, at: u32, attempt: Option<(usize, Answers)>, lapsed: Vec<Fact>) {
        if !self.out.met.iter().any(|met| met.fault == fault) {
            self.out.met.push(Met { fault, at, attempt, lapsed });
        }
    }

    /// The state with the step's mark at the end of the order, and the answers pinned that it leans on.
    fn marked(&mut self, state: &State, planned: &Planned<'_>, number: usize, answers: Answers) -> State {
        let mut next = *state;
        if self.alphabet == Alphabet::Corrected {
            for &question in &planned.when {
                next.answers = next.answers.with(question, answers.get(question));
            }
            let mut order: Vec<u8> = self.orders.get(state.order).cloned().unwrap_or_default();
            order.retain(|marked| usize::from(*marked) != number);
            order.push(number as u8);
            next.order = self.orders.intern(&order).0;
        }
        next
    }

    fn undo(&mut self, at: u32, state: &State, facts: &Facts) {
        let Some(mut order) = self.orders.get(state.order).cloned() else { return };
        let Some(number) = order.pop().map(usize::from) else { return };
        let Some(planned) = self.plan.steps.get(number) else { return };
        let mut after = *facts;
        for holds in planned.step.sets.iter().chain(&planned.step.starts) {
            if facts.get(&holds.fact) == Some(&holds.value) && !lingers(*holds) {
                after.remove(&holds.fact);
            }
        }
        let bit = 1_u128 << number;
        let mut next = *state;
        next.behind &= !bit;
        next.running &= !bit;
        next.facts = self.out.facts.intern(&after).0;
        next.order = self.orders.intern(&order).0;
        for &question in &planned.when {
            let sets = self.plan.questions.get(question).is_some_and(|question| question.sets);
            if !sets && !self.is_pinned(&next, question) {
                next.answers = next.answers.with(question, 0);
            }
        }
        self.reach(next, Came { from: at, deed: Deed::Undo, number, answers: state.answers });
    }

    /// Is a step marked that this question decides about? Then its answer cannot be changed.
    fn is_pinned(&self, state: &State, question: usize) -> bool {
        let marked = state.behind | state.running;
        let decides =
            |(number, planned): (usize, &Planned<'_>)| marked >> number & 1 == 1 && planned.when.contains(&question);
        self.plan.steps.iter().enumerate().any(decides)
    }

    /// Answers that set facts, given at any time; the same answer once more sets them once more.
    fn answer_otherwise(&mut self, at: u32, state: &State, facts: &Facts) {
        for (number, question) in self.plan.questions.iter().enumerate().filter(|(_, question)| question.sets) {
            let pinned = state.answers.get(number) != 0 && self.is_pinned(state, number);
            for option in 1..=question.options.len() {
                if pinned && option != state.answers.get(number) {
                    continue;
                }
                let Some(after) = self.answered(at, number, option, facts) else { continue };
                let mut next = *state;
                next.answers = next.answers.with(number, option);
                next.facts = self.out.facts.intern(&after).0;
                let answers = Answers::default().with(number, option);
                self.reach(next, Came { from: at, deed: Deed::Answer, number, answers });
            }
        }
    }

    fn reach(&mut self, next: State, came: Came) {
        let (to, new) = self.out.states.intern(&next);
        if new {
            self.out.came.push(Some(came));
        }
        if to != came.from {
            self.out.edges.push((came.from, to));
        }
    }

    /// Everything behind or of no concern, by some answers: the end of the work, fit to be sealed or not.
    fn look_for_end(&mut self, at: u32, state: &State, facts: &Facts) {
        let open: Vec<_> =
            self.plan.steps.iter().enumerate().filter(|(number, _)| state.behind >> number & 1 == 0).collect();
        if open.iter().any(|(_, planned)| planned.when.is_empty()) {
            return;
        }
        let mut questions: Vec<_> = open.iter().flat_map(|(_, planned)| planned.when.iter().copied()).collect();
        questions.sort_unstable();
        questions.dedup();
        let ended = self.assumptions(state, &questions).into_iter().any(|answers| {
            let seen = self.seen(state, answers, facts);
            open.iter().all(|(_, planned)| applies(planned.step, &seen) == Applies::No)
        });
        if !ended {
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
