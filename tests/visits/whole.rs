//! A visit from the round to the seal, for every answer about the unit.

use coilside_core::action::Action;
use coilside_core::record::seal;
use coilside_office::demo::player::{Clock, Player};
use coilside_tests::{MORNING_UTC_MS, Technician, assignment, open};

fn play(other: &[(&'static str, &'static str)]) {
    let folder = tempfile::tempdir().unwrap();
    let technician = Technician::who_says(other);
    let clock = Clock::at(MORNING_UTC_MS, 120);
    let field = open(folder.path(), &clock.now(), &technician).unwrap();
    field.assigned(&[assignment("a1")]).unwrap();
    let mut player = Player::new(&field, clock, &technician, "p").unwrap();
    player.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
    if let Err(error) = player.play() {
        panic!("{other:?}: {error}");
    }
    assert_eq!(player.screen().title, "The record is sealed");
    let _ = seal::open;
}

#[test]
fn a_visit_to_a_plain_coil_is_played_to_its_seal() {
    play(&[]);
}
