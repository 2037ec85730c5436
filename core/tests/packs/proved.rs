//! Every pack that comes with the core is proved; nothing is called proved that was not gone through.

use std::collections::BTreeMap;

use coilside_core::procedure::check::{Fault, Verdict, prove};
use coilside_core::procedure::library::{PackSource, built_in, load};
use coilside_core::procedure::pack::{Pack, Step};

fn pack(steps: &str) -> Pack {
    let toml = format!("pack = \"small\"\nformat = 1\nversion = \"1\"\n[[phase]]\nid = \"only\"\nstep = [{steps}]\n");
    load(PackSource { toml, words: BTreeMap::new() }).unwrap().pack
}

#[test]
fn every_built_in_pack_is_proved() {
    for loaded in built_in().unwrap() {
        let proof = prove(&loaded.pack);
        println!(
            "{}: {} starts, straight {:?}, mended {:?}, with pauses {}",
            proof.pack, proof.starts, proof.straight, proof.mended, proof.paused
        );
        assert_eq!(proof.verdict, Verdict::Proved, "{}", proof.pack);
        assert!(proof.is_proved() && proof.states() > 10_000, "{}: {} states", proof.pack, proof.states());
        assert_eq!(proof, prove(&loaded.pack), "the same every time");
    }
}

/// Counted by hand. Two steps that do not wait for each other: none, either, both. With the last mark in mind: none, one,
/// the other, both in two orders; and after a slip none, one, the other. From there both again, with no last mark in mind.
#[test]
fn the_states_of_two_free_steps_are_counted_by_hand() {
    let proof = prove(&pack(r#"{ id = "one" }, { id = "other" }"#));
    assert_eq!((proof.straight.states, proof.straight.transitions), (4, 4));
    let mended = proof.mended.unwrap();
    // Ways: 4 straight on, 4 slips (each mark taken back), and 4 straight on after them.
    assert_eq!((mended.states, mended.transitions), (5 + 4, 12));
    assert_eq!(proof.verdict, Verdict::Proved);
}

#[test]
fn a_pack_without_gates_is_refused_with_the_step_alone() {
    let proof = prove(&pack(r#"{ id = "covers", sets = ["covers=off"] }"#));
    let [example] = proof.counter_examples() else { panic!("{proof:?}") };
    assert_eq!(example.moves, []);
    assert!(matches!(&example.fault, Fault::Unguarded { step, .. } if step.as_str() == "covers"), "{example:?}");
}

#[test]
fn a_pack_that_is_too_large_is_not_called_proved() {
    let mut large = pack(r#"{ id = "first" }"#);
    let more = (0..200).map(|number| Step { id: format!("step-{number}").into(), ..Step::default() });
    large.phases[0].steps.extend(more);
    assert!(matches!(prove(&large).verdict, Verdict::TooLarge(_)));
}
