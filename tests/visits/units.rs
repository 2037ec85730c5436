//! A visit with two units: where the person is, and what was typed there, belongs to one of them.

use coilside_core::action::Action;
use coilside_core::round::{AssignedUnit, Assignment};
use coilside_core::screen::Screen;
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

#[test]
fn what_work_on_one_unit_changes_is_looked_at_again_on_the_other() {
    let mut scene = two_units();
    scene.play_to("lock-off").unwrap();
    scene.go("unit:B").unwrap();
    scene.play_to("wait-charge").unwrap();
    let screen = scene.screen().unwrap();
    let elsewhere = "Unit A shares what changed here. Look there again:";
    let told = screen.notices.iter().find(|notice| notice.title == elsewhere).unwrap();
    assert!(told.lines.contains(&"Power to the unit".to_owned()), "{told:?}");
    let to_a = Action::Go { to: "unit:A".into() };
    assert!(told.buttons.iter().any(|button| button.press == to_a));
    let there = scene.act(&to_a).unwrap().screen;
    let lapsed =
        there.notices.iter().find(|notice| notice.title == "Work on another unit changed what this one shares");
    let recheck = Action::Recheck { fact: "supply".into() };
    assert!(lapsed.unwrap().buttons.iter().any(|button| button.press == recheck), "{:?}", there.notices);
    let after = scene.act(&recheck).unwrap().screen;
    let asks = |screen: &Screen| {
        screen.notices.iter().flat_map(|notice| &notice.buttons).any(|button| button.press == recheck)
    };
    assert!(!asks(&after), "looked at");
}
