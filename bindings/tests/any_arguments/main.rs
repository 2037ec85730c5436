//! What holds for every calculation that other languages can call, whatever they call it with.
//!
//! A million random calls in all, among them what is no number, subnormal and huge: none panics; each gives numbers within the
//! range that `table.rs` states, or a refusal that names an argument of that function. An export without a line in that table
//! fails.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

mod argument;
mod draw;
mod judged;
mod law;
mod pairs;
mod sources;
mod table;

use coilside_core::science::ScienceError;
use draw::Draw;
use law::{Answer, Law};
use std::collections::BTreeMap;

const CALLS: usize = 1_000_000;
/// So many of a function's calls must be taken, or its draws say nothing.
const TAKEN_LEAST: f64 = 0.001;

#[test]
fn every_export_has_a_line_in_the_table() {
    let exported = sources::exported();
    let listed: BTreeMap<_, _> = table::laws().iter().map(|law| (law.name, ())).collect();
    let without: Vec<_> = exported.keys().filter(|name| !listed.contains_key(name.as_str())).collect();
    assert!(without.is_empty(), "add a line to bindings/tests/any_arguments/table.rs for {without:?}");
    assert_eq!(listed.len(), exported.len(), "a function stands twice or is not exported");
}

#[test]
fn any_arguments_give_numbers_in_range_or_a_refusal_that_names_one() {
    let exported = sources::exported();
    let laws = table::laws();
    let calls = CALLS.div_ceil(laws.len());
    let wrong: Vec<_> = laws.iter().filter_map(|law| broken(law, &exported[law.name], calls)).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The first call that breaks a law, and how.
fn broken(law: &Law, names: &[String], calls: usize) -> Option<String> {
    let mut draw = Draw::seeded(law.name);
    let mut taken = 0;
    for _ in 0..calls {
        let mark = draw.next_call();
        let mut told = None;
        let wrong = match law.tried(names, &mut draw) {
            Answer::Taken(wrong) => {
                taken += 1;
                wrong
            }
            Answer::Refused(error) => {
                let wrong = law::wrong_with_refusal(&error, names);
                told = Some(error);
                wrong
            }
            Answer::Panicked => Some("it panicked".to_owned()),
        };
        if let Some(wrong) = wrong {
            draw.repeat_call(mark);
            return Some(format!("{}({}): {wrong}", law.name, law.shown(names, &mut draw)));
        }
        // Not before a wrong call was shown: it would be drawn otherwise.
        if let Some(ScienceError::OutOfRange { argument, least, most, .. }) = told {
            argument.split(' ').for_each(|word| draw.learn(word, least, most));
        }
    }
    let share = f64::from(taken) / calls as f64;
    (share < TAKEN_LEAST).then(|| format!("{}: only {share:.4} of its calls were taken", law.name))
}
