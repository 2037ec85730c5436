//! The pack checker: every order of steps that the gates allow, from every answer, and whether one leads into danger.
//!
//! It asks the same gates as the field ([`Standing`](super::gate::Standing)) and the same dangers. Its alphabet: begin a
//! waiting time, mark a step done, leave a step out in its turn, answer what a step asks, let facts lapse in any number of
//! pauses and look at them again, change a setting and bring it home; and one slip a visit, anywhere: the last mark taken
//! back, or an answer changed. Taken as possible at any time are: waiting, readings and photographs (or answering for
//! them). A fact that a measurement must bear out holds once it is borne out; until then its step is not done, which is one
//! of the orders anyway.
//!
//! A pack is refused for
//! - a step that its own gates let through although the core's last guard (`danger.rs`) refuses it. The guard would hold
//!   in the field as well, but a pack that leans on it has forgotten something, and nobody is told what to do first;
//! - the same after a pause, whatever was not looked at again;
//! - a step that is dangerous where something came to pass unseen: a supply that hangs at no lock of ours comes back, a
//!   valve that is shut and not proved passes;
//! - an answer that brings danger;
//! - a state from which no allowed action leads on to the end, as long as nothing is taken back;
//! - an end at which a danger, acid, an unproved rinse, an open cover or a setting away is left behind;
//! - a step that no start leads to.
//!
//! Not known counts as not safe, so taking a mark back and a pause can make the facts look dangerous. They take knowledge
//! and bring nothing about: what counts is what may be done next. After a slip no trap is looked for: more marks can
//! always be taken back. Several slips in one visit are not gone through, for with each the space grows by its own size:
//! there the core's guard may stand alone, and random walks try it. What happened all the same is the truth and no allowed
//! action; breaking off is always possible and is no end.

mod explore;
mod interner;
mod judge;
mod plan;
mod proof;
mod reachable;
mod way;

pub use proof::{CounterExample, Fault, Move, Proof, Space, Verdict};
pub use reachable::Reachable;

use std::collections::BTreeSet;

use super::pack::{Pack, Step};
use crate::visit::fact::Facts;
use explore::{Alphabet, Explored, Met, explore};
use plan::Plan;

/// Goes through everything that a pack allows. Exhaustive: a proved pack has no dangerous order and no trap.
///
/// The pack must hang together ([`load`](super::library::load)): what it names and does not have is overlooked here.
#[must_use]
pub fn prove(pack: &Pack) -> Proof {
    let mut proof = Proof {
        pack: pack.pack.clone(),
        starts: 0,
        straight: Space::default(),
        mended: None,
        paused: 0,
        verdict: Verdict::Proved,
    };
    let plan = match Plan::of(pack) {
        Ok(plan) => plan,
        Err(too_much) => {
            proof.verdict = Verdict::TooLarge(too_much);
            return proof;
        }
    };
    proof.starts = plan.starts;
    for alphabet in [Alphabet::Straight, Alphabet::Mended] {
        let Some(explored) = explore(&plan, alphabet) else {
            let too_much = "its steps can be done in too many orders; let more of them come `after` one another";
            proof.verdict = Verdict::TooLarge(too_much.to_owned());
            return proof;
        };
        match alphabet {
            Alphabet::Straight => proof.straight = explored.space,
            Alphabet::Mended => proof.mended = Some(explored.space),
        }
        proof.paused = paused(&explored);
        let found = faults(&plan, alphabet, &explored);
        if !found.is_empty() {
            proof.verdict = Verdict::Refused(found);
            return proof;
        }
    }
    proof
}

fn faults(plan: &Plan<'_>, alphabet: Alphabet, explored: &Explored) -> Vec<CounterExample> {
    let mut found: Vec<_> = explored.met.iter().map(|met| way::counter_example(plan, explored, met)).collect();
    // What the guard refuses makes traps of its own; what leads to no end is told once the rest is mended.
    if alphabet == Alphabet::Straight && found.is_empty() {
        found.extend(trap(plan, explored));
    }
    if alphabet == Alphabet::Straight && found.is_empty() {
        let dead = plan.steps.iter().enumerate().filter(|(number, _)| explored.done >> number & 1 == 0);
        let fault = |step: &Step| Fault::Dead { step: step.id.clone() };
        found.extend(dead.map(|(_, dead)| CounterExample { moves: Vec::new(), fault: fault(dead.step) }));
    }
    found.sort_by_key(|example| example.moves.len());
    found
}

/// The nearest state in which nothing is allowed any more.
fn trap(plan: &Plan<'_>, explored: &Explored) -> Option<CounterExample> {
    let leads_on: BTreeSet<u32> = explored.edges.iter().map(|(from, _)| *from).collect();
    let at = way::trapped(explored).into_iter().find(|at| !leads_on.contains(at))?;
    let behind = explored.states.get(at)?.behind;
    let open = plan.steps.iter().enumerate().filter(|(number, _)| behind >> number & 1 == 0);
    let fault = Fault::Trap { open: open.map(|(_, open)| open.step.id.clone()).collect() };
    Some(way::counter_example(plan, explored, &Met { fault, at, attempt: None, lapsed: Vec::new() }))
}

/// States, each with every set of its facts that a pause can have made not known.
fn paused(explored: &Explored) -> u64 {
    let lapsing = |facts: &Facts| facts.keys().filter(|fact| fact.lapses()).count();
    let each: Vec<u64> = explored.facts.iter().map(|facts| 1_u64 << lapsing(facts)).collect();
    explored.states.iter().filter_map(|state| each.get(state.facts as usize)).sum()
}
