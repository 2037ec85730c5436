//! What was found unsafe, what a break-off leaves, and what units of one visit share: decided on the small pack.

use coilside_core::action::Action;
use coilside_core::procedure::danger::Danger;
use coilside_core::procedure::gate::Missing;
use coilside_core::round::Shared;
use coilside_core::visit::decide::Refusal;
use coilside_core::visit::event::Body;
use coilside_core::visit::fact::{Fact, Value};

use super::mechanics::Table;

#[test]
fn nobody_hands_over_running_what_was_found_unsafe_until_it_is_mended() {
    let mut table = Table::with(&["A"]);
    table.find_unsafe();
    assert_eq!(table.missing("hand-over"), [Missing::Danger { danger: Danger::HandOverUnsafe }]);
    let mend = |at: &str| Action::MendFinding { finding: at.into() };
    assert!(matches!(table.act(mend("0")), Err(Refusal::Words { .. })), "mended with words only");
    table.draft("mended:0", "New cable");
    assert!(matches!(table.act(mend("1")), Err(Refusal::NoSuch { .. })));
    table.act(mend("0")).unwrap();
    assert!(matches!(table.act(mend("0")), Err(Refusal::NoSuch { .. })), "mended once");
    table.done("hand-over").unwrap();
}

#[test]
fn handed_over_all_the_same_is_recorded_as_the_danger_that_it_is() {
    let mut table = Table::with(&["A"]);
    table.find_unsafe();
    table.draft("happened:hand-over", "Owner insisted");
    let events = table.act(Action::Happened { step: "hand-over".into() }).unwrap();
    let [Body::StepHappened { dangers, .. }] = &events[..] else { panic!("{events:?}") };
    assert!(dangers.contains(&Danger::HandOverUnsafe));
}

#[test]
fn a_unit_that_runs_with_an_unsafe_finding_is_not_sealed_but_broken_off_and_says_so() {
    let mut table = Table::with(&["A"]);
    table.all_done(&["dry", "power-on", "hand-over"]);
    table.find_unsafe();
    assert_eq!(table.act(Action::Seal), Err(Refusal::Dangers { dangers: vec![Danger::HandOverUnsafe] }));
    table.draft("break-off", "Called away");
    table.act(Action::BreakOff).unwrap();
    assert_eq!(table.visit.broken_off.as_ref().unwrap().dangers, [Danger::HandOverUnsafe]);
    table.act(Action::Seal).unwrap();
}

#[test]
fn a_break_off_with_the_power_off_and_no_tag_says_so() {
    let left = |steps: &[&str]| {
        let mut table = Table::with(&["A"]);
        table.all_done(steps);
        table.draft("break-off", "Called away");
        table.act(Action::BreakOff).unwrap();
        table.visit.broken_off.unwrap().dangers
    };
    assert_eq!(left(&["isolate"]), [Danger::LeftUntagged]);
    assert_eq!(left(&["isolate", "prove"]), [Danger::LeftUntagged]);
    assert_eq!(left(&["isolate", "tag"]), []);
    assert_eq!(left(&[]), [], "nobody took the power away");
    assert_eq!(left(&["dry", "power-on"]), []);
}

fn supply(table: &Table, letter: &str) -> Option<Value> {
    table.visit.runs[letter].facts.get(&Fact::Supply).copied()
}

/// B is proved dead and open; then A is made ready and switched on.
fn b_open_then_a_on(shares: Option<Vec<Shared>>) -> (Table, Result<Vec<Body>, Refusal>) {
    let mut table = Table::with(&["A", "B"]);
    table.shares = shares;
    table.unit = "B".into();
    table.all_done(&["isolate", "prove", "open-up"]);
    table.unit = "A".into();
    table.all_done(&["isolate", "prove", "dry"]);
    let switched = table.done("power-on");
    (table, switched)
}

fn share(units: &[&str]) -> Vec<Shared> {
    vec![Shared { units: units.iter().map(|unit| (*unit).to_owned()).collect(), facts: vec!["supply".into()] }]
}

#[test]
fn units_are_taken_to_share_their_supply_where_nobody_wrote_it_down() {
    let (table, switched) = b_open_then_a_on(None);
    switched.unwrap();
    assert_eq!((supply(&table, "A"), supply(&table, "B")), (Some(Value::On), None));
    let b = &table.visit.runs["B"];
    assert_eq!(b.lapsed.get(&Fact::Supply), Some(&Value::ProvedDead));
    assert_eq!(b.lapsed_by.get(&Fact::Supply), Some(&"A".into()));
}

#[test]
fn what_lapsed_through_another_unit_is_known_again_when_it_was_looked_at() {
    let (mut table, _) = b_open_then_a_on(None);
    table.unit = "B".into();
    table.act(Action::Recheck { fact: "supply".into() }).unwrap();
    assert_eq!(supply(&table, "B"), Some(Value::ProvedDead));
    assert!(table.run().lapsed_by.is_empty());
    assert_eq!(supply(&table, "A"), Some(Value::On), "looking changes nothing");
}

#[test]
fn of_what_is_known_to_be_shared_two_units_never_stand_against_each_other() {
    let mut table = Table::with(&["A", "B"]);
    table.shares = Some(share(&[]));
    table.unit = "B".into();
    table.all_done(&["isolate", "prove"]);
    table.unit = "A".into();
    table.all_done(&["dry", "power-on"]);
    table.unit = "B".into();
    table.act(Action::Recheck { fact: "supply".into() }).unwrap();
    assert_eq!((supply(&table, "A"), supply(&table, "B")), (None, Some(Value::ProvedDead)), "look at A again");
}

#[test]
fn one_isolator_is_not_switched_on_while_the_other_unit_on_it_is_open() {
    for units in [&["A", "B"][..], &[]] {
        let (table, switched) = b_open_then_a_on(Some(share(units)));
        let Err(Refusal::Gate { missing, .. }) = switched else { panic!("{switched:?}") };
        let open = Missing::OtherUnit { unit: "B".into(), danger: Danger::CoversOffLive };
        assert!(missing.contains(&open), "{missing:?}");
        assert_eq!((supply(&table, "A"), supply(&table, "B")), (Some(Value::ProvedDead), Some(Value::ProvedDead)));
    }
}

#[test]
fn units_that_share_nothing_leave_each_other_alone() {
    for shares in [Vec::new(), share(&["B", "C"])] {
        let (table, switched) = b_open_then_a_on(Some(shares));
        switched.unwrap();
        assert_eq!((supply(&table, "A"), supply(&table, "B")), (Some(Value::On), Some(Value::ProvedDead)));
    }
}

#[test]
fn proving_one_unit_dead_proves_nothing_of_another_and_takes_nothing_from_it() {
    let mut table = Table::with(&["A", "B"]);
    table.all_done(&["isolate"]);
    table.unit = "B".into();
    table.all_done(&["isolate", "prove"]);
    assert_eq!((supply(&table, "A"), supply(&table, "B")), (Some(Value::Off), Some(Value::ProvedDead)));
}

#[test]
fn a_pause_before_the_seal_does_not_hide_that_an_unsafe_unit_runs() {
    let mut table = Table::with(&["A"]);
    table.all_done(&["dry", "power-on", "hand-over"]);
    table.find_unsafe();
    table.now.utc_ms += 3_600_000;
    table.now.mono_ms += 3_600_000;
    let refused = table.act(Action::Seal);
    assert!(matches!(&refused, Err(Refusal::Dangers { dangers }) if dangers.contains(&Danger::HandOverUnsafe)));
}
