//! The pack checker: every order of steps that the gates allow, from every answer, and whether one leads into danger.

mod proof;

pub use proof::{CounterExample, Fault, Move, Proof, Space, Verdict};

use super::pack::Pack;

/// Goes through everything that a pack allows. Exhaustive: a proved pack has no dangerous order.
#[must_use]
pub fn prove(pack: &Pack) -> Proof {
    // Not built yet: nothing is called proved before it was gone through.
    Proof {
        pack: pack.pack.clone(),
        starts: 0,
        straight: Space::default(),
        corrected: None,
        paused: 0,
        verdict: Verdict::TooLarge("the checker is not built yet".to_owned()),
    }
}
