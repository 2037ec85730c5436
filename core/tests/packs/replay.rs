//! Every broken pack is caught, and its counter-example replays in the real engine: each move is taken, and then the core's
//! last guard refuses, or nothing goes on, or the fact stands there.

use std::collections::BTreeMap;

use coilside_core::action::Action;
use coilside_core::procedure::check::{CounterExample, Fault, Reachable, prove};
use coilside_core::procedure::danger::{Danger, dangers, dangers_of_change};
use coilside_core::procedure::gate::{Missing, Passage, acts};
use coilside_core::procedure::library::{PackSource, built_in, load};
use coilside_core::procedure::pack::Pack;
use coilside_core::visit::decide::Refusal;
use coilside_core::visit::fact::{Facts, Holds};

use crate::engine::Engine;
use crate::mutants::{MUTANTS, Mutant};

/// The pack that the broken ones are made of.
fn sound() -> Pack {
    let is_it = |pack: &Pack| pack.pack == "add-on-water-heater";
    built_in().unwrap().into_iter().map(|loaded| loaded.pack).find(is_it).unwrap()
}

fn broken(mutant: &Mutant) -> Pack {
    let mut pack = sound();
    (mutant.change)(&mut pack);
    let text = PackSource { toml: toml::to_string(&pack).unwrap(), words: BTreeMap::new() };
    load(text).unwrap_or_else(|error| panic!("{} does not hang together any more: {error}", mutant.name));
    pack
}

#[test]
fn every_broken_pack_is_caught_and_its_counter_examples_replay() {
    assert!(MUTANTS.len() >= 30);
    for mutant in MUTANTS {
        let pack = broken(mutant);
        let proof = prove(&pack);
        let found = proof.counter_examples();
        let met = found.iter().any(|example| mutant.expect.is_met(&example.fault));
        assert!(met, "{}: {:?} is not among {found:?}", mutant.name, mutant.expect);
        for example in found {
            replay(mutant.name, &pack, example);
        }
    }
}

#[test]
fn a_counter_example_is_the_shortest_list_of_steps() {
    // Counted by hand from the pack: arrival 1 and one left out, identification 2 with five answers, four left out, and
    // lock-off, charge (begin and end), test, tester, covers.
    let mutant = MUTANTS.iter().find(|mutant| mutant.name == "covers-off-needs-no-proof").unwrap();
    let proof = prove(&broken(mutant));
    let example = proof.counter_examples().iter().find(|example| mutant.expect.is_met(&example.fault)).unwrap();
    let answers =
        example.moves.iter().filter(|made| matches!(made, coilside_core::procedure::check::Move::Answer { .. }));
    let steps = example.moves.len() - answers.count();
    assert_eq!(steps, 1 + 1 + 2 + 4 + 3, "{:?}", example.moves);
}

fn with(facts: &Facts, event: Holds) -> Facts {
    let mut facts = *facts;
    facts.insert(event.fact, event.value);
    facts
}

fn replay(name: &str, pack: &Pack, example: &CounterExample) {
    let mut engine = Engine::new(pack);
    for made in &example.moves {
        if let Err(refused) = engine.go(made) {
            panic!("{name}: {made:?} of {:?} was refused: {refused}", example.fault);
        }
    }
    match &example.fault {
        Fault::Unguarded { step, passage, dangers: expected } => {
            let refused = if *passage == Passage::Start { engine.start(step) } else { engine.done(step) };
            let found = Engine::missing(refused).into_iter().map(|missing| match missing {
                Missing::Danger { danger } => danger,
                other => panic!("{name}: a gate of the pack's own refuses as well: {other:?}"),
            });
            assert_eq!(&found.collect::<Vec<Danger>>(), expected, "{name}");
        }
        Fault::Outside { event, step, passage, dangers: expected } => {
            let before = engine.run().facts;
            let taken = if *passage == Passage::Start { engine.start(step) } else { engine.done(step) };
            taken.unwrap();
            let after = engine.run().facts;
            let acts = acts(pack.step(step.as_str()).unwrap().1, *passage);
            let mut found = dangers(&with(&after, *event));
            found.extend(dangers_of_change(&with(&before, *event), &with(&after, *event), acts));
            assert!(expected.iter().all(|danger| found.contains(danger)), "{name}: {found:?} lacks {expected:?}");
            assert!(expected.iter().all(|danger| !dangers(&after).contains(danger)), "{name}: unseen, not seen");
        }
        Fault::Answer { condition, option, dangers: expected } => {
            engine.answer(condition.as_str(), option).unwrap();
            let found = dangers(&engine.run().facts);
            assert!(expected.iter().all(|danger| found.contains(danger)), "{name}: {found:?} lacks {expected:?}");
        }
        Fault::Trap { open } => {
            assert!(!open.is_empty() && !engine.is_at_the_end(), "{name}");
            for (_, step) in pack.steps() {
                let goes_on =
                    [engine.clone().start(&step.id), engine.clone().done(&step.id), engine.clone().skip(&step.id)];
                assert!(goes_on.iter().all(Result::is_err), "{name}: '{}' still goes on", step.id);
            }
        }
        Fault::Left { dangers: standing, facts } => {
            assert!(engine.is_at_the_end(), "{name}");
            assert!(!facts.is_empty() || !standing.is_empty(), "{name}");
            for holds in facts {
                assert_eq!(engine.run().facts.get(&holds.fact), Some(&holds.value), "{name}");
            }
        }
        Fault::Away { excursion } => {
            assert!(engine.is_at_the_end(), "{name}");
            let refused = engine.act(&Action::Seal, &[]);
            assert!(
                matches!(&refused, Err(Refusal::SettingsAway { excursions }) if excursions.contains(excursion)),
                "{name}: {refused:?}"
            );
        }
        // No list of moves leads there: the walks of `walks.rs` look for it with other eyes.
        Fault::Dead { step } => {
            assert_eq!(example.moves, [], "{name}");
            let reached = crate::walks::walk_often(pack, &Reachable::of(pack).unwrap(), 500);
            assert!(!reached.contains(step), "{name}: a walk has done '{step}'");
        }
    }
}
