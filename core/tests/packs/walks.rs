//! Proof and field agree: random walks through the real engine stay among the states that the checker went through, and
//! never come into a forbidden one.
//!
//! Ten thousand walks a pack go through `decide` and `apply`, which is all that judges an action. A walk begins at the start
//! or branches off at a state that another walk has met, so that all parts of a visit are walked equally often. As many
//! whole visits as a test can afford go through the door itself, with its store and its screens.

use std::collections::BTreeSet;

use coilside_core::id::StepId;
use coilside_core::procedure::check::{Move, Reachable};
use coilside_core::procedure::danger::dangers;
use coilside_core::procedure::gate::Turn;
use coilside_core::procedure::library::built_in;
use coilside_core::procedure::pack::Pack;
use coilside_core::visit::state::Mark;

use crate::engine::Engine;

const WALKS: usize = 10_000;
const MOVES_MOST: usize = 6;
/// One walk in this many begins at the start.
const FROM_START: usize = 10;
/// Whole visits that go through the door, and the tries in each.
const VISITS_AT_THE_DOOR: usize = 3;
const MOVES_AT_THE_DOOR: usize = 120;
/// Walks with any number of slips, each from the start, and the tries in each.
const WALKS_WITH_SLIPS: usize = 150;
const MOVES_WITH_SLIPS: usize = 120;
/// States at which a walk can branch off.
const POOL_MOST: usize = 2_000;

/// A seeded generator: splitmix64 (Steele, Lea, Flood 2014), the constants from memory. Only its evenness matters here.
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    pub(crate) fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut word = self.0;
        word = (word ^ (word >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        word = (word ^ (word >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((word ^ (word >> 31)) % most as u64) as usize
    }
}

#[derive(Clone)]
struct Walk<'a> {
    engine: Engine<'a>,
    /// So many slips can still be made; the checker goes through one.
    slips_left: usize,
    /// A mark was taken back: since then the facts may look dangerous because less is known.
    undone: bool,
}

/// The steps of a pack with what every unit has done before each: most are ruled out by a look at it.
pub(crate) struct Turns<'a> {
    turns: Vec<Turn<'a>>,
    always: Vec<Vec<&'a str>>,
}

impl<'a> Turns<'a> {
    fn of(pack: &'a Pack) -> Turns<'a> {
        let turns: Vec<_> = pack.steps().map(|(phase, step)| Turn::of(pack, phase, step)).collect();
        let before = |turn: &Turn<'a>| {
            let always = turn.earlier().filter(|(_, step)| step.when.is_empty()).map(|(_, step)| step.id.as_str());
            let mut names: Vec<_> = always.collect();
            // The latest first: it is the likeliest to be open.
            names.reverse();
            names
        };
        Turns { always: turns.iter().map(before).collect(), turns }
    }
}

/// Everything that could be done next, good or not: the engine judges.
fn choices(walk: &Walk<'_>, turns: &Turns<'_>) -> Vec<Move> {
    let run = walk.engine.run();
    let mut moves = Vec::new();
    for (turn, always) in turns.turns.iter().zip(&turns.always) {
        let (_, step) = turn.step;
        if run.is_behind(step.id.as_str()) || always.iter().any(|id| !run.is_behind(id)) || !turn.has_come(run) {
            continue;
        }
        let id = step.id.clone();
        let running = matches!(run.steps.get(&step.id), Some(Mark::Running { .. }));
        let begins = step.dwell.is_some() && !running;
        let made = if begins { Move::Start { step: id.clone() } } else { Move::Done { step: id.clone() } };
        moves.extend([made.clone(), made]);
        if step.may_skip {
            moves.push(Move::Skip { step: id });
        }
    }
    moves.extend(run.lapsed.keys().map(|fact| Move::Recheck { fact: *fact }));
    moves
}

fn slip(walk: &Walk<'_>, dice: &mut Dice) -> Option<Move> {
    let run = walk.engine.run();
    let given: Vec<_> = run.conditions.keys().collect();
    if dice.below(2) == 0 || given.is_empty() {
        return run.order.last().map(|last| Move::Undo { step: last.clone() });
    }
    let condition = given[dice.below(given.len())];
    let options = &walk.engine.pack.condition(condition.as_str()).unwrap().options;
    let option = options[dice.below(options.len())].id.clone();
    Some(Move::Answer { condition: condition.clone(), option })
}

/// Answers what the step asks and nobody has answered, as a person does before the step can be marked.
fn answer_first(walk: &mut Walk<'_>, made: &Move, dice: &mut Dice) {
    let Move::Done { step } = made else { return };
    let pack = walk.engine.pack;
    for condition in &pack.step(step.as_str()).unwrap().1.asks {
        if !walk.engine.run().conditions.contains_key(condition) {
            let options = &pack.condition(condition.as_str()).unwrap().options;
            walk.engine.answer(condition.as_str(), &options[dice.below(options.len())].id).unwrap();
        }
    }
}

/// Makes one random move. Whether the state changed.
fn go_on(walk: &mut Walk<'_>, turns: &Turns<'_>, dice: &mut Dice) -> bool {
    let chance = dice.below(20);
    if chance == 0 {
        walk.engine.pause();
        return false;
    }
    if chance <= 2 && walk.slips_left > 0 {
        let Some(made) = slip(walk, dice) else { return false };
        // The same answer once more is taken and is no news.
        let marks = (walk.engine.run().steps.len(), walk.engine.run().conditions.clone());
        if walk.engine.go(&made).is_err()
            || marks == (walk.engine.run().steps.len(), walk.engine.run().conditions.clone())
        {
            return false;
        }
        walk.slips_left -= 1;
        walk.undone |= matches!(made, Move::Undo { .. });
        return true;
    }
    let moves = choices(walk, turns);
    if moves.is_empty() {
        return false;
    }
    let made = &moves[dice.below(moves.len())];
    let asks = matches!(made, Move::Done { step } if !walk.engine.pack.step(step.as_str()).unwrap().1.asks.is_empty());
    if !asks {
        return walk.engine.go(made).is_ok();
    }
    // Answers are given with the step that asks, or not at all.
    let mut tried = walk.clone();
    answer_first(&mut tried, made, dice);
    let taken = tried.engine.go(made).is_ok();
    if taken {
        *walk = tried;
    }
    taken
}

/// Walks, and looks at every state met. The steps that were done somewhere.
pub(crate) fn walk_often(pack: &Pack, reachable: &Reachable<'_>, walks: usize) -> BTreeSet<StepId> {
    let turns = Turns::of(pack);
    let mut dice = Dice(20_260_504);
    let start = Walk { engine: Engine::new(pack), slips_left: 1, undone: false };
    let mut pool = vec![start];
    let mut done = BTreeSet::new();
    for _ in 0..walks {
        let place = if dice.below(FROM_START) == 0 { 0 } else { dice.below(pool.len()) };
        let mut walk = pool[place].clone();
        for _ in 0..MOVES_MOST {
            let before = walk.engine.last_known();
            if !go_on(&mut walk, &turns, &mut dice) {
                continue;
            }
            let after = walk.engine.last_known();
            let run = walk.engine.run();
            assert!(reachable.has(run), "{}: not a state of the checker: {:?} {after:?}", pack.pack, run.order);
            let standing = if walk.undone { dangers(&before) } else { Vec::new() };
            let forbidden: Vec<_> = dangers(&after).into_iter().filter(|danger| !standing.contains(danger)).collect();
            let taken_back = walk.undone && after.len() < before.len();
            assert!(forbidden.is_empty() || taken_back, "{}: {forbidden:?} after {:?}", pack.pack, run.order);
        }
        done.extend(
            walk.engine
                .run()
                .steps
                .iter()
                .filter(|(_, mark)| matches!(mark, Mark::Done { .. }))
                .map(|(id, _)| id.clone()),
        );
        if pool.len() < POOL_MOST {
            pool.push(walk);
        } else {
            let place = 1 + dice.below(POOL_MOST - 1);
            pool[place] = walk;
        }
    }
    done
}

#[test]
fn ten_thousand_random_walks_stay_among_the_proved_states() {
    for loaded in built_in().unwrap() {
        let pack = &loaded.pack;
        let reachable = Reachable::of(pack).unwrap();
        let done = walk_often(pack, &reachable, WALKS);
        let all: BTreeSet<_> = pack.steps().map(|(_, step)| step.id.clone()).collect();
        let never: Vec<_> = all.difference(&done).collect();
        assert!(never.is_empty(), "{}: no walk came through {never:?}", pack.pack);
    }
}

#[test]
fn whole_random_visits_come_to_the_same_at_the_door() {
    for loaded in built_in().unwrap() {
        let pack = &loaded.pack;
        let turns = Turns::of(pack);
        let mut dice = Dice(7);
        let mut acts = 0;
        for _ in 0..VISITS_AT_THE_DOOR {
            let mut walk = Walk { engine: Engine::new(pack), slips_left: 1, undone: false };
            walk.engine.kept = Some(Vec::new());
            for _ in 0..MOVES_AT_THE_DOOR {
                go_on(&mut walk, &turns, &mut dice);
            }
            acts += crate::door::do_again(&walk.engine);
        }
        assert!(acts > 100, "{}: {acts} actions", pack.pack);
        println!("{}: {acts} actions through the door", pack.pack);
    }
}

/// Beyond the one slip that the checker goes through, the core's guard may stand alone. It holds.
#[test]
fn however_many_marks_are_taken_back_no_move_adds_a_danger() {
    for loaded in built_in().unwrap() {
        let pack = &loaded.pack;
        let turns = Turns::of(pack);
        let mut dice = Dice(11);
        let (mut moves, mut dangerous) = (0, 0);
        for _ in 0..WALKS_WITH_SLIPS {
            let mut walk = Walk { engine: Engine::new(pack), slips_left: usize::MAX, undone: false };
            for _ in 0..MOVES_WITH_SLIPS {
                let before = walk.engine.run().clone();
                if !go_on(&mut walk, &turns, &mut dice) {
                    continue;
                }
                let after = walk.engine.run();
                // What was taken back or lapsed is only not known any more; what was done must add nothing.
                if after.order.len() >= before.order.len() && after.lapsed == before.lapsed {
                    let standing = dangers(&before.facts);
                    let added: Vec<_> = dangers(&after.facts).into_iter().filter(|it| !standing.contains(it)).collect();
                    assert_eq!(added, [], "{}: after {:?}", pack.pack, after.order);
                    moves += 1;
                    dangerous += usize::from(!standing.is_empty());
                }
            }
        }
        assert!(moves > WALKS_WITH_SLIPS * 20 && dangerous > 0, "{}: {moves} moves, {dangerous} in danger", pack.pack);
    }
}
