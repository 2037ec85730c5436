//! What the core's mechanics look like at the door: settings away on every screen, lapsed instruments, mended findings.

use coilside_core::action::Action;
use coilside_core::now::Now;
use coilside_core::round::{AssignedUnit, Assignment, OwnInstrument, Technician};
use coilside_core::screen::{Block, Screen};
use coilside_core::visit::event::Body;
use coilside_tests::assignment;
use coilside_tests::look::{field_block, inner_blocks, notice_lines, words};
use coilside_tests::scene::Scene;

fn strip(screen: &Screen) -> Vec<(String, String)> {
    screen.strip.iter().map(|live| (live.label.clone(), live.value.clone())).collect()
}

fn texts(screen: &Screen) -> String {
    inner_blocks(screen)
        .filter_map(|block| match block {
            Block::Text { text, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect::<Vec<_>>()
        .join("\n")
}

/// Every place that a visit can show.
const PLACES: &[&str] = &[
    "now",
    "phases",
    "phase:isolate",
    "photographs",
    "readings",
    "details",
    "findings",
    "leaving",
    "break-off",
    "emergency",
    "why:read:flow-found",
    "skip:run-found",
    "round",
    "settings",
    "outbox",
];

#[test]
fn a_setting_that_is_away_is_on_every_screen_of_every_unit_and_of_the_program() {
    let mut scene = Scene::before(&[]).unwrap();
    let one = assignment("two");
    let second = AssignedUnit { letter: "B".into(), unit: "U-2".into(), ..one.units[0].clone() };
    let both = Assignment { units: vec![one.units[0].clone(), second], ..one };
    scene.field().assigned(&[both]).unwrap();
    scene.act(&Action::StartVisit { assignment: "two".into() }).unwrap();
    scene.draft("home:schedule", "06:00").unwrap();
    scene.draft("away:schedule", "always on").unwrap();
    scene.act(&Action::OpenExcursion { excursion: "schedule".into() }).unwrap();
    let name = words("en").text("excursion-schedule");
    for place in PLACES {
        let shown = strip(&scene.go(place).unwrap());
        assert!(shown.iter().any(|(label, value)| *label == name && value.contains("always")), "{place}: {shown:?}");
    }
    scene.go("unit:B").unwrap();
    for place in PLACES {
        let shown = strip(&scene.go(place).unwrap());
        assert!(shown.iter().any(|(label, _)| *label == format!("Unit A: {name}")), "{place}: {shown:?}");
    }
}

#[test]
fn the_door_asks_about_a_read_back_that_differs_and_takes_it_with_an_answer() {
    let mut scene = Scene::at_step("set-point-home", &[]).unwrap();
    scene.draft("back:set-point", "50").unwrap();
    let home = Action::BringHome { excursion: "set-point".into() };
    let asked = scene.act(&home).unwrap().screen;
    let Some(Block::TextEntry { problem: Some(problem), .. }) = field_block(&asked, "back:set-point") else { panic!() };
    assert!(problem.contains("50") && problem.contains("55"), "{problem}");
    assert!(field_block(&asked, "differs:set-point").is_some(), "and there is a field for the answer");
    scene.draft("differs:set-point", "Owner wants 50").unwrap();
    scene.act(&home).unwrap();
    let Body::ExcursionHome { answered, .. } = scene.last_event().unwrap().body else { panic!() };
    assert_eq!(answered, "Owner wants 50");
    assert!(texts(&scene.go("leaving").unwrap()).contains("Owner wants 50"));
}

#[test]
fn a_lapsed_instrument_is_told_once_stands_in_the_record_and_stops_nothing() {
    let mut scene = Scene::at_step("read-found", &[]).unwrap();
    let own = OwnInstrument {
        kind: "pipe-thermometer".into(),
        name: "Clamp thermometer".into(),
        serial: "CT-9".into(),
        error_limit: "0.4".into(),
        calibrated_until: "2026-04-30".into(),
    };
    let technician = Technician { instruments: vec![own], ..Technician::default() };
    scene.field().worked_by(&technician).unwrap();
    scene.reopen().unwrap();
    let told = "Clamp thermometer (CT-9): its calibration ended on 2026-04-30.";
    assert_eq!(texts(&scene.screen().unwrap()).matches(told).count(), 1, "once, though three readings use it");
    let after = scene.enter("read:water-in-found", "40.0").unwrap().screen;
    assert!(!texts(&after).contains(told), "not again");
    let Body::ReadingTaken { error_limit, own: Some(own), .. } = scene.last_event().unwrap().body else { panic!() };
    assert!(own.lapsed && error_limit == "0.4");
    assert!(texts(&scene.go("leaving").unwrap()).contains("Measured with Clamp thermometer (CT-9)"));
    scene.go("now").unwrap();
    scene.play_on().unwrap();
    assert!(scene.visit().unwrap().sealing.unwrap().complete, "a note is no gap");
}

#[test]
fn an_unsafe_finding_holds_the_hand_over_until_it_is_mended_at_the_findings() {
    let mut scene = Scene::at_step("check-hot-water", &[]).unwrap();
    scene.draft("finding", "Cable chafed through").unwrap();
    scene.act(&Action::Choose { field: "severity".into(), option: "unsafe".into() }).unwrap();
    scene.act(&Action::AddFinding).unwrap();
    scene.play_to("tell-owner").unwrap();
    let refused = scene.act(&Action::Done { step: "tell-owner".into() }).unwrap().screen;
    assert!(notice_lines(&refused.notices).contains(&words("en").text("danger-hand-over-unsafe")));
    let sheet = scene.go("findings").unwrap();
    assert!(field_block(&sheet, "mended:0").is_some());
    scene.draft("mended:0", "New cable").unwrap();
    let sheet = scene.act(&Action::MendFinding { finding: "0".into() }).unwrap().screen;
    assert!(texts(&sheet).contains("Mended: New cable"), "{}", texts(&sheet));
    scene.go("now").unwrap();
    scene.act(&Action::Done { step: "tell-owner".into() }).unwrap();
    assert!(scene.run().unwrap().is_behind("tell-owner"));
}

#[test]
fn what_a_break_off_leaves_dangerous_stands_where_the_visit_is_left() {
    let mut scene = Scene::at_step("circulate-acid", &[]).unwrap();
    scene.act(&Action::Start { step: "circulate-acid".into() }).unwrap();
    scene.draft("break-off", "Called away").unwrap();
    let left = texts(&scene.act(&Action::BreakOff).unwrap().screen);
    let dangers = scene.visit().unwrap().broken_off.unwrap().dangers;
    assert!(!dangers.is_empty());
    for danger in dangers {
        assert!(left.contains(&words("en").text(&format!("danger-{}", danger.name()))), "{danger:?} in {left}");
    }
}

#[test]
fn a_phone_that_may_go_dark_warns_before_the_acid_with_the_times_for_the_bucket() {
    let mut scene = Scene::at_step("circulate-acid", &[]).unwrap();
    let told = |screen: &Screen| texts(screen).contains("Charge it first.");
    assert!(!told(&scene.screen().unwrap()), "nothing is known of the charge");
    for (percent, warned) in [(Some(10), false), (Some(9), true), (None, false), (Some(5), true)] {
        scene.field().charged(percent);
        assert_eq!(told(&scene.screen().unwrap()), warned, "{percent:?}");
    }
    // Twenty and forty minutes from now: the step's own least and most.
    let screen = texts(&scene.screen().unwrap());
    let at = |minutes: i64| {
        let minutes = scene.now().utc_ms / 60_000 + i64::from(scene.now().offset_min) + minutes;
        format!("{:02}:{:02}", minutes / 60 % 24, minutes % 60)
    };
    let (least, most) = (at(20), at(40));
    assert!(screen.contains("at 5 %") && screen.contains(&format!("before {least}, out at {most}")), "{screen}");
    // While it circulates the times stand where they were.
    scene.act(&Action::Start { step: "circulate-acid".into() }).unwrap();
    let now = scene.now();
    let later = Now { utc_ms: now.utc_ms + 7 * 60_000, mono_ms: now.mono_ms + 7 * 60_000, ..now };
    let screen = texts(&scene.field().screen(&later).unwrap().screen);
    assert!(screen.contains(&format!("before {least}, out at {most}")), "{screen}");
}
