//! A visit with two units: where the person is, and what was typed there, belongs to one of them.

use coilside_core::action::Action;
use coilside_core::round::{AssignedUnit, Assignment};
use coilside_tests::assignment;
use coilside_tests::scene::Scene;

fn two_units() -> Scene {
    let mut scene = Scene::before(&[]).unwrap();
    let one = assignment("two");
    let second =
        AssignedUnit { letter: "B".into(), unit: "U-2".into(), serial: "AB-1043".into(), ..one.units[0].clone() };
    let both = Assignment { units: vec![one.units[0].clone(), second], ..one };
    scene.field().assigned(&[both]).unwrap();
    scene.act(&Action::StartVisit { assignment: "two".into() }).unwrap();
    scene
}

fn value(scene: &Scene, unit: &str) -> Option<String> {
    let visit = scene.visit().unwrap();
    visit.runs[unit].readings.get("air-on-found").map(|taken| taken.value.clone())
}

#[test]
fn what_is_typed_belongs_to_one_unit_and_a_killed_app_comes_back_to_it() {
    let mut scene = two_units();
    let field = "read:air-on-found";
    assert_eq!(scene.screen().unwrap().unit.as_deref(), Some("A"));
    scene.enter(field, "4o").unwrap();
    scene.go("unit:B").unwrap();
    scene.enter(field, "48").unwrap();
    let before = scene.screen().unwrap();
    scene.reopen().unwrap();
    assert_eq!(scene.screen().unwrap(), before);
    assert_eq!(before.unit.as_deref(), Some("B"));
    scene.act(&Action::Confirm { field: field.into() }).unwrap();
    assert_eq!((value(&scene, "A"), value(&scene, "B")), (None, Some("48".to_owned())));
    scene.go("unit:C").unwrap();
    assert_eq!(scene.screen().unwrap().unit.as_deref(), Some("B"), "a unit that is not there leads nowhere");
    scene.go("unit:A").unwrap();
    scene.act(&Action::Confirm { field: field.into() }).unwrap();
    assert_eq!(value(&scene, "A"), None, "the letters typed at A are still no number");
    scene.go("unit:C").unwrap();
    assert_eq!(scene.screen().unwrap().unit.as_deref(), Some("A"), "a unit that is not there leads nowhere");
}
