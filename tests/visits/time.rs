//! Waiting times hold against wrong clocks, killed apps and restarted devices.

use coilside_core::action::Action;
use coilside_core::effect::Request;
use coilside_core::now::Now;
use coilside_core::screen::{Block, DwellState, Screen};
use coilside_core::visit::event::Body;
use coilside_core::visit::state::Mark;
use coilside_tests::look::{field_block, inner_blocks, notice_lines};
use coilside_tests::scene::Scene;

const MINUTE_MS: i64 = 60_000;
/// The soak of the coil: at least five minutes, at most ten (the pack).
const SOAK: &str = "soak-coil";

fn soaking() -> Scene {
    let mut scene = Scene::at_step(SOAK, &[]).unwrap();
    scene.act(&Action::Start { step: SOAK.into() }).unwrap();
    scene
}

fn end() -> Action {
    Action::Done { step: SOAK.into() }
}

/// The scene's moment with another wall clock and zone.
fn with_wall(now: &Now, ms: i64, offset_min: i32) -> Now {
    Now { utc_ms: now.utc_ms + ms, offset_min, ..now.clone() }
}

/// Ends the soak at a moment: what is still to wait, or none where it is taken.
fn refused_at(scene: &mut Scene, now: &Now) -> Option<String> {
    let events = scene.events().unwrap().len();
    let screen = scene.act_at(&end(), now).unwrap().screen;
    let wait = notice_lines(&screen.notices).into_iter().find(|line| line.starts_with("Wait "));
    assert_eq!(wait.is_some(), scene.events().unwrap().len() == events, "{:?}", screen.notices);
    wait
}

fn dwell(screen: &Screen) -> (DwellState, i64, String) {
    inner_blocks(screen)
        .find_map(|block| match block {
            Block::Dwell { state, least_at_utc_ms, least_clock, .. } => {
                Some((*state, *least_at_utc_ms, least_clock.clone()))
            }
            _ => None,
        })
        .unwrap()
}

#[test]
fn a_wall_clock_set_forward_does_not_shorten_a_wait_and_one_set_back_does_not_lengthen_it() {
    for hours in [5, -5] {
        let mut scene = soaking();
        scene.clock.pass_ms(4 * MINUTE_MS);
        let wrong = with_wall(&scene.now(), hours * 60 * MINUTE_MS, 120);
        assert_eq!(refused_at(&mut scene, &wrong).as_deref(), Some("Wait 1:00 more."), "{hours} hours");
        scene.clock.pass_ms(MINUTE_MS);
        let right = with_wall(&scene.now(), hours * 60 * MINUTE_MS, 120);
        assert_eq!(refused_at(&mut scene, &right), None, "{hours} hours");
    }
}

#[test]
fn another_time_zone_changes_the_clock_shown_and_not_the_wait() {
    let mut scene = soaking();
    scene.clock.pass_ms(2 * MINUTE_MS);
    let here = dwell(&scene.screen().unwrap());
    let abroad = with_wall(&scene.now(), 0, -300);
    let there = dwell(&scene.field().screen(&abroad).unwrap().screen);
    assert_eq!((here.0, here.1), (there.0, there.1));
    assert_ne!(here.2, there.2, "the clock on the wall is another");
    assert_eq!(refused_at(&mut scene, &abroad).as_deref(), Some("Wait 3:00 more."));
}

#[test]
fn a_killed_app_comes_back_to_the_same_step_with_the_wait_running_on() {
    let mut scene = soaking();
    scene.clock.pass_ms(MINUTE_MS);
    let before = scene.screen().unwrap();
    scene.close();
    scene.clock.pass_ms(3 * MINUTE_MS);
    let after = scene.reopen().unwrap();
    assert_eq!(after.screen.place, before.place);
    assert_eq!(dwell(&after.screen).1, dwell(&before).1, "it ends when it would have ended");
    assert!(matches!(scene.run().unwrap().steps.get(SOAK), Some(Mark::Running { .. })));
    let now = scene.now();
    assert_eq!(refused_at(&mut scene, &now).as_deref(), Some("Wait 1:00 more."));
    scene.clock.pass_ms(MINUTE_MS);
    let now = scene.now();
    assert_eq!(refused_at(&mut scene, &now), None);
}

/// A moment after a boot: the wall clock went on by so many milliseconds, the counting clock began anew.
fn booted(before: &Now, wall_ms: i64) -> Now {
    Now { utc_ms: before.utc_ms + wall_ms, mono_ms: 5, mono_epoch: "second boot".into(), ..before.clone() }
}

fn later(now: &Now, ms: i64) -> Now {
    Now { utc_ms: now.utc_ms + ms, mono_ms: now.mono_ms + ms, ..now.clone() }
}

#[test]
fn after_another_boot_only_proven_time_counts_and_the_wait_can_still_be_ended() {
    let mut scene = soaking();
    scene.clock.pass_ms(2 * MINUTE_MS);
    // Something is written two minutes in: so long it has certainly soaked.
    scene.draft("why:shot:coil-after", "Lens fogged").unwrap();
    scene.act(&Action::CouldNot { field: "shot:coil-after".into() }).unwrap();
    scene.clock.pass_ms(MINUTE_MS);
    // By the wall clock it is over, but nobody can prove it.
    let boot = booted(&scene.now(), 4 * MINUTE_MS);
    scene.reopen_at(&boot).unwrap();
    assert_eq!(scene.last_event().unwrap().body, Body::DeviceRestarted {});
    assert_eq!(refused_at(&mut scene, &boot).as_deref(), Some("Wait 3:00 more."));
    let almost = later(&boot, 3 * MINUTE_MS - 1);
    assert_eq!(refused_at(&mut scene, &almost).as_deref(), Some("Wait 0:01 more."));
    let over = later(&boot, 3 * MINUTE_MS);
    assert_eq!(refused_at(&mut scene, &over), None);
}

#[test]
fn after_another_boot_the_most_counts_the_longest_possible() {
    let mut scene = soaking();
    let boot = booted(&scene.now(), 11 * MINUTE_MS);
    let turn = scene.reopen_at(&boot).unwrap();
    assert_eq!(dwell(&turn.screen).0, DwellState::Over, "it may have dried on the fins");
    let end_at = later(&boot, 5 * MINUTE_MS);
    assert_eq!(refused_at(&mut scene, &end_at), None);
    assert!(matches!(scene.run().unwrap().steps.get(SOAK), Some(Mark::Done { late: true, .. })));
}

#[test]
fn a_wall_clock_that_went_back_over_a_boot_counts_as_too_late() {
    let mut scene = soaking();
    let boot = booted(&scene.now(), -3 * 60 * MINUTE_MS);
    let turn = scene.reopen_at(&boot).unwrap();
    assert_eq!(dwell(&turn.screen).0, DwellState::Over);
}

#[test]
fn a_restart_within_one_boot_writes_nothing() {
    let mut scene = soaking();
    let events = scene.events().unwrap();
    scene.clock.pass_ms(MINUTE_MS);
    scene.reopen().unwrap();
    assert_eq!(scene.events().unwrap(), events);
}

#[test]
fn what_is_measured_in_a_waiting_time_is_asked_for_once_it_runs_and_label_values_before() {
    let mut scene = Scene::at_step("circulate-acid", &[]).unwrap();
    let fields = ["read:acid-ph-early", "read:acid-ph-end"];
    let before = scene.screen().unwrap();
    assert!(fields.iter().all(|field| field_block(&before, field).is_none()), "no acid is in the loop yet");
    let running = scene.act(&Action::Start { step: "circulate-acid".into() }).unwrap().screen;
    assert!(fields.iter().all(|field| field_block(&running, field).is_some()));
    scene.play_to("neutralise-loop").unwrap();
    let mixing = scene.screen().unwrap();
    assert!(field_block(&mixing, "read:neutraliser-parts").is_some(), "the mix is made before it circulates");
}

#[test]
fn an_alarm_is_withdrawn_when_its_waiting_time_is_ended() {
    let alarms = |scene: &Scene| {
        let open = scene.field().opened(&scene.now()).unwrap().effects;
        open.into_iter().filter(|effect| matches!(effect.request, Request::WakeAt { .. })).count()
    };
    let mut scene = soaking();
    assert_eq!(alarms(&scene), 2, "one for the least, one before the most");
    scene.clock.pass_ms(5 * MINUTE_MS);
    scene.act(&end()).unwrap();
    assert_eq!(alarms(&scene), 0);
    let mut again = soaking();
    again.act(&Action::Undo { step: SOAK.into() }).unwrap();
    assert_eq!(alarms(&again), 0, "taken back");
}

/// Acid in the loop: at least twenty minutes, at most forty (the pack).
const ACID: &str = "circulate-acid";

fn acid_inside() -> Scene {
    let mut scene = Scene::at_step(ACID, &[]).unwrap();
    scene.act(&Action::Start { step: ACID.into() }).unwrap();
    scene
}

fn acid_at(scene: &Scene, now: &Now) -> DwellState {
    dwell(&scene.field().screen(now).unwrap().screen).0
}

#[test]
fn with_acid_inside_a_wrong_clock_or_another_zone_moves_neither_the_least_nor_the_most() {
    let mut scene = acid_inside();
    for (minutes, state) in [(19, DwellState::Running), (2, DwellState::Ready), (20, DwellState::Over)] {
        scene.clock.pass_ms(minutes * MINUTE_MS);
        for (hours, offset_min) in [(0, 120), (7, 120), (-7, 120), (0, -480), (3, 540)] {
            let wrong = with_wall(&scene.now(), hours * 60 * MINUTE_MS, offset_min);
            assert_eq!(acid_at(&scene, &wrong), state, "{minutes} minutes on, {hours} hours wrong");
        }
    }
}

#[test]
fn a_clock_set_back_after_a_boot_hides_no_acid_that_is_past_its_most() {
    let mut scene = acid_inside();
    let boot = booted(&scene.now(), 45 * MINUTE_MS);
    scene.reopen_at(&boot).unwrap();
    assert_eq!(acid_at(&scene, &boot), DwellState::Over);
    let set_back = with_wall(&later(&boot, MINUTE_MS), -20 * MINUTE_MS, 120);
    assert_eq!(acid_at(&scene, &set_back), DwellState::Over, "26 minutes by the wall clock, 46 in truth");
}

#[test]
fn a_clock_set_forward_after_a_boot_does_not_call_acid_late_that_is_not() {
    let mut scene = acid_inside();
    let boot = booted(&scene.now(), 2 * MINUTE_MS);
    scene.reopen_at(&boot).unwrap();
    let forward = with_wall(&later(&boot, 21 * MINUTE_MS), 5 * 60 * MINUTE_MS, 120);
    assert_eq!(acid_at(&scene, &forward), DwellState::Ready);
}

#[test]
fn a_boot_of_unknown_length_with_acid_inside_counts_as_past_the_most() {
    // The wall clock says two minutes, the device has been up for thirty: somebody set the wall clock back.
    let mut scene = acid_inside();
    let boot = Now { mono_ms: 30 * MINUTE_MS, ..booted(&scene.now(), 2 * MINUTE_MS) };
    scene.reopen_at(&boot).unwrap();
    assert_eq!(acid_at(&scene, &boot), DwellState::Over);
    assert_eq!(acid_at(&scene, &later(&boot, 21 * MINUTE_MS)), DwellState::Over, "and stays so");
}

#[test]
fn the_screen_warns_before_the_most_is_over() {
    let mut scene = soaking();
    let says = |scene: &Scene| format!("{:?}", scene.screen().unwrap().blocks);
    scene.clock.pass_ms(7 * MINUTE_MS);
    assert!(!says(&scene).contains("until the longest time"));
    scene.clock.pass_ms(2 * MINUTE_MS);
    assert!(says(&scene).contains("Go on now: 1:00 until the longest time."));
}
