//! What is refused, in words that a technician understands, with nothing written; and that the right order is taken.
//!
//! The forbidden orders are those of the trade: acid only into water, no pump on an empty loop, no spray on bare
//! electrics, no power on an open unit, no drinking water through an unproved rinse (common practice, no source).

use coilside_core::action::Action;
use coilside_core::id::Letter;
use coilside_core::procedure::danger::Danger;
use coilside_core::procedure::gate::{Passage, allowed};
use coilside_core::procedure::library::built_in;
use coilside_core::screen::{Block, Notice, Screen, Tone};
use coilside_core::visit::event::Body;
use coilside_core::visit::fact::{Fact, Value};
use coilside_core::visit::state::{ExcursionEnd, Mark};
use coilside_tests::look::{field_block, next_step, notice_lines, words};
use coilside_tests::scene::Scene;

fn done(step: &str) -> Action {
    Action::Done { step: step.into() }
}

fn start(step: &str) -> Action {
    Action::Start { step: step.into() }
}

/// The action is refused: a notice with these words comes first, and nothing is written.
fn refused(scene: &mut Scene, action: &Action, tone: Tone, keys: &[&str]) -> Notice {
    let (events, before) = (scene.events().unwrap().len(), scene.visit().unwrap());
    let open = scene.field().opened(&scene.now()).unwrap().effects;
    let turn = scene.act(action).unwrap();
    assert_eq!(scene.events().unwrap().len(), events, "{action:?} wrote something");
    assert_eq!(scene.visit().unwrap(), before);
    assert_eq!(turn.effects, [], "{action:?} asked the shell for something");
    assert_eq!(scene.field().opened(&scene.now()).unwrap().effects, open);
    let notice = turn.screen.notices.first().unwrap_or_else(|| panic!("{action:?}: no notice")).clone();
    assert_eq!(notice.tone, tone, "{notice:?}");
    let lines = notice_lines(std::slice::from_ref(&notice));
    for key in keys {
        let text = words("en").get(key).unwrap_or_else(|| (*key).to_owned());
        assert!(lines.contains(&text), "{action:?}: “{text}” is not said in {lines:#?}");
    }
    notice
}

fn is_done(scene: &Scene, step: &str) -> bool {
    matches!(scene.run().unwrap().steps.get(step), Some(Mark::Done { .. }))
}

#[test]
fn acid_before_water_is_refused_and_water_then_acid_is_taken() {
    let mut scene = Scene::at_step("water-first", &[]).unwrap();
    let notice = refused(
        &mut scene,
        &done("add-acid"),
        Tone::Danger,
        &["danger-acid-before-water", "need-vessel-water", "need-loop-water"],
    );
    assert_eq!(notice.title, "Not yet: Pour the acid slowly into the water");
    assert!(notice.lines.iter().any(|line| line.contains("Acid would go in before water")), "{notice:?}");
    refused(&mut scene, &start("circulate-acid"), Tone::Danger, &["danger-acid-before-water", "need-vessel-acid-mix"]);
    scene.play_to("circulate-acid").unwrap();
    assert!(is_done(&scene, "water-first") && is_done(&scene, "add-acid"));
    let turn = scene.act(&start("circulate-acid")).unwrap();
    assert_eq!(turn.screen.notices, []);
    assert!(matches!(scene.run().unwrap().steps.get("circulate-acid"), Some(Mark::Running { .. })));
}

/// A mark set by mistake and taken back can be set again, also where what it did to the loop stays.
#[test]
fn the_steps_after_the_acid_can_be_marked_again_after_their_mark_was_taken_back() {
    let mut scene = Scene::at_step("add-acid", &[]).unwrap();
    for step in ["circulate-acid", "neutralise-bucket", "neutralise-loop", "rinse-loop", "close-ports"] {
        scene.play_to(step).unwrap();
        scene.play_until(|screen| next_step(screen) != Some(step) && screen.place == "now").unwrap();
        assert!(is_done(&scene, step), "{step}");
        scene.act(&Action::Undo { step: step.into() }).unwrap();
        assert!(!is_done(&scene, step), "{step}");
        scene.play_until(|screen| next_step(screen) != Some(step) && screen.place == "now").unwrap();
        assert!(is_done(&scene, step), "{step} could not be marked again");
    }
}

#[test]
fn a_pump_on_an_empty_loop_is_refused_and_on_a_full_one_it_runs() {
    let mut scene = Scene::at_step("connect-loop", &[]).unwrap();
    let notice = refused(&mut scene, &start("run-left"), Tone::Danger, &["danger-pump-dry", "need-loop-water"]);
    assert!(notice.lines.iter().any(|line| line.contains("The pump would run with the loop empty")), "{notice:?}");
    refused(&mut scene, &start("circulate-acid"), Tone::Danger, &["need-vessel-acid-mix", "danger-acid-before-water"]);
    scene.play_to("run-left").unwrap();
    assert_eq!(scene.act(&start("run-left")).unwrap().screen.notices, []);
    assert!(matches!(scene.run().unwrap().steps.get("run-left"), Some(Mark::Running { .. })));
}

#[test]
fn a_pump_on_a_loop_that_nobody_looked_at_is_refused() {
    let mut scene = Scene::at_step("fit-to-run", &[]).unwrap();
    scene.draft("skip:fit-to-run", "The casing is dented, I do not run it").unwrap();
    scene.act(&Action::Skip { step: "fit-to-run".into() }).unwrap();
    scene.play_to("run-found").unwrap();
    refused(&mut scene, &start("run-found"), Tone::Danger, &["danger-pump-dry", "need-loop-water", "need-covers-on"]);
}

#[test]
fn spray_on_bare_electrics_is_refused_and_on_covered_ones_it_is_taken() {
    let mut scene = Scene::at_step("cover-electrics", &[]).unwrap();
    for spray in [start("soak-coil"), done("rinse-coil")] {
        let notice = refused(
            &mut scene,
            &spray,
            Tone::Danger,
            &["danger-spray-bare", "danger-spray-hot", "need-electrics-covered"],
        );
        assert!(notice.lines.iter().any(|line| line == "Spray would hit electrics that are not covered."));
    }
    scene.play_to("soak-coil").unwrap();
    assert!(is_done(&scene, "cover-electrics"));
    assert_eq!(scene.act(&start("soak-coil")).unwrap().screen.notices, []);
}

#[test]
fn spray_with_the_power_not_proved_dead_is_refused() {
    let mut scene = Scene::at_step("lock-off", &[]).unwrap();
    refused(&mut scene, &start("soak-coil"), Tone::Danger, &["danger-spray-live", "need-supply-proved-dead"]);
}

#[test]
fn sealing_with_a_setting_away_from_home_is_refused_until_it_is_home() {
    let mut scene = Scene::at_step("schedule-home", &[]).unwrap();
    scene.draft("skip:schedule-home", "I do it at the very end").unwrap();
    scene.act(&Action::Skip { step: "schedule-home".into() }).unwrap();
    scene.play_until(|screen| screen.place == "leaving").unwrap();
    let notice = refused(&mut scene, &Action::Seal, Tone::Attention, &["refused-settings-away"]);
    assert_eq!(notice.title, "Not sealed: a setting is away from home");
    assert_eq!(notice.lines, ["Bring home: Timer and mode. Or say why it stays away."]);
    scene.draft("back:schedule", "ECO").unwrap();
    scene.act(&Action::BringHome { excursion: "schedule".into() }).unwrap();
    assert!(matches!(scene.run().unwrap().excursions.get("schedule").unwrap().end, ExcursionEnd::Home { .. }));
    scene.play_on().unwrap();
    assert!(scene.visit().unwrap().sealing.is_some());
}

#[test]
fn a_setting_that_stays_away_with_a_reason_seals_and_stands_in_the_record() {
    let mut scene = Scene::at_step("schedule-home", &[]).unwrap();
    scene.draft("left:schedule", "The owner wants the timer off until Friday").unwrap();
    scene.act(&Action::LeaveAway { excursion: "schedule".into() }).unwrap();
    scene.play_on().unwrap();
    let sealing = scene.visit().unwrap().sealing.unwrap();
    assert!(!sealing.complete);
    let line = "A setting left away schedule: The owner wants the timer off until Friday";
    assert_eq!(sealing.missing, [line]);
}

#[test]
fn power_on_with_covers_off_is_refused_and_on_a_closed_unit_it_is_taken() {
    let mut scene = Scene::at_step("clear-pipe", &[]).unwrap();
    let notice = refused(
        &mut scene,
        &done("power-on"),
        Tone::Danger,
        &["danger-power-on-unready", "need-covers-on", "need-fan-guard-on"],
    );
    assert!(notice.lines.iter().any(|line| line.starts_with("Power must not come on")), "{notice:?}");
    scene.play_to("power-on").unwrap();
    assert_eq!(scene.act(&done("power-on")).unwrap().screen.notices, []);
    assert!(is_done(&scene, "power-on"));
}

#[test]
fn the_valves_stay_shut_until_the_rinse_is_proved() {
    let mut scene = Scene::at_step("prove-rinse", &[]).unwrap();
    let notice = refused(
        &mut scene,
        &done("flush-loop"),
        Tone::Danger,
        &["danger-drinking-water-unproved", "need-rinse-check-proved"],
    );
    assert!(notice.lines.iter().any(|line| line.starts_with("The rinse is not proved")), "{notice:?}");
    scene.play_to("flush-loop").unwrap();
    assert_eq!(scene.act(&done("flush-loop")).unwrap().screen.notices, []);
}

#[test]
fn a_rinse_is_not_proved_without_its_reading_and_its_photograph() {
    let mut scene = Scene::at_step("prove-rinse", &[]).unwrap();
    let says = ["Read: pH of the rinse water", "Photograph: Proof of the rinse"];
    refused(&mut scene, &done("prove-rinse"), Tone::Attention, &says);
}

#[test]
fn a_waiting_time_that_is_not_over_is_refused_with_what_is_left() {
    let mut scene = Scene::at_step("soak-coil", &[]).unwrap();
    refused(&mut scene, &done("soak-coil"), Tone::Attention, &["missing-not-started"]);
    scene.act(&start("soak-coil")).unwrap();
    scene.clock.pass_ms(60_000);
    let notice = refused(&mut scene, &done("soak-coil"), Tone::Attention, &["Wait 4:00 more."]);
    assert_eq!(notice.buttons, [], "nothing that injures is offered as done");
    scene.clock.pass_ms(240_000 - 1);
    refused(&mut scene, &done("soak-coil"), Tone::Attention, &["Wait 0:01 more."]);
    scene.clock.pass_ms(1);
    assert_eq!(scene.act(&done("soak-coil")).unwrap().screen.notices, []);
}

#[test]
fn nothing_that_injures_can_be_overruled_or_left_out() {
    let pack = built_in().unwrap().remove(0).pack;
    let unit = Letter::from("A");
    for moment in ["approach", "lock-off", "cover-electrics", "water-first", "circulate-acid", "power-on"] {
        let mut scene = Scene::at_step(moment, &[]).unwrap();
        let before = scene.visit().unwrap();
        let run = before.run(&unit).unwrap();
        let mut dangers = 0;
        for (phase, step) in pack.steps() {
            for (passage, action) in
                [(Passage::Start, start(step.id.as_str())), (Passage::Done, done(step.id.as_str()))]
            {
                if allowed(&pack, phase, step, run, passage, &scene.now()).is_ok() {
                    continue;
                }
                let notice = scene.act(&action).unwrap().screen.notices.remove(0);
                dangers += usize::from(notice.tone == Tone::Danger);
                let offer = Action::Go { to: format!("happened:{}", step.id) };
                assert!(
                    notice.buttons.iter().all(|button| button.press == offer),
                    "at '{moment}', '{}' offers {:?}",
                    step.id,
                    notice.buttons
                );
            }
            if !step.may_skip && !run.is_behind(step.id.as_str()) {
                scene.draft(&format!("skip:{}", step.id), "No time for it").unwrap();
                let action = Action::Skip { step: step.id.0.clone() };
                refused(&mut scene, &action, Tone::Attention, &["refused-no-such"]);
            }
        }
        assert!(dangers > 0, "at '{moment}' nothing was dangerous");
        assert_eq!(scene.visit().unwrap(), before, "at '{moment}' something was written");
    }
}

#[test]
fn a_refusal_said_twice_under_one_id_is_the_same_notice_and_writes_nothing() {
    let mut scene = Scene::at_step("cover-electrics", &[]).unwrap();
    let events = scene.events().unwrap().len();
    let act = |scene: &Scene| scene.field().act("once", &start("soak-coil"), &scene.now()).unwrap();
    let first = act(&scene).screen;
    assert_eq!(act(&scene).screen, first);
    scene.reopen().unwrap();
    assert_eq!(act(&scene).screen, first, "also after the program was started anew");
    assert_eq!(scene.events().unwrap().len(), events);
}

fn screen_says(screen: &Screen, text: &str) -> bool {
    serde_json::to_string(screen).unwrap().contains(text)
}

#[test]
fn after_a_pause_supply_and_valves_are_not_known_and_a_look_brings_them_back() {
    let mut scene = Scene::at_step("soak-coil", &[]).unwrap();
    scene.clock.pass_ms(40 * 60_000);
    let screen = scene.screen().unwrap();
    assert!(screen_says(&screen, "You were away for a while"));
    let supply = screen.strip.iter().find(|live| live.label == "Power to the unit").unwrap();
    assert_eq!((supply.value.as_str(), supply.tone), ("not known: look again", Tone::Attention));
    let says = ["need-supply-proved-dead", "need-further-supplies-proved-dead", "danger-spray-live"];
    refused(&mut scene, &start("soak-coil"), Tone::Danger, &says);
    let pause = screen.notices.iter().find(|notice| notice.title == "You were away for a while").unwrap();
    assert!(pause.buttons.iter().any(|button| button.label == "Power to the unit: still proved dead"));
    for button in &pause.buttons {
        assert!(matches!(button.press, Action::Recheck { .. }), "{button:?}");
        scene.act(&button.press).unwrap();
    }
    assert!(!screen_says(&scene.screen().unwrap(), "You were away for a while"));
    assert_eq!(scene.act(&start("soak-coil")).unwrap().screen.notices, []);
}

#[test]
fn a_pause_in_which_a_photograph_came_is_still_a_pause() {
    let mut scene = Scene::at_step("soak-coil", &[]).unwrap();
    scene.clock.pass_ms(40 * 60_000);
    scene.shoot("", &coilside_tests::jpeg_of("a view after lunch")).unwrap();
    let says = ["need-supply-proved-dead", "danger-spray-live"];
    refused(&mut scene, &start("soak-coil"), Tone::Danger, &says);
    assert!(screen_says(&scene.screen().unwrap(), "You were away for a while"));
}

#[test]
fn standing_beside_a_waiting_time_is_no_pause() {
    let mut scene = Scene::at_step("wait-charge", &[]).unwrap();
    scene.act(&start("wait-charge")).unwrap();
    scene.clock.pass_ms(40 * 60_000);
    assert_eq!(scene.act(&done("wait-charge")).unwrap().screen.notices, []);
    assert_eq!(scene.act(&done("test-dead")).unwrap().screen.notices, []);
}

#[test]
fn the_last_mark_can_be_taken_back_and_both_stay_in_the_log() {
    let mut scene = Scene::at_step("mix-degreaser", &[]).unwrap();
    assert!(is_done(&scene, "brush-coil"));
    let undo = Action::Undo { step: "brush-coil".into() };
    assert!(scene.screen().unwrap().foot.iter().any(|button| button.press == undo), "the screen offers it");
    let events = scene.events().unwrap();
    scene.act(&undo).unwrap();
    let after = scene.events().unwrap();
    assert_eq!(after[..events.len()], events[..], "what was written stays");
    assert_eq!(after.len(), events.len() + 1);
    assert!(!is_done(&scene, "brush-coil"));
    // What the step had set is not known any more, and a gate that leans on it is shut.
    refused(&mut scene, &start("soak-coil"), Tone::Danger, &["danger-spray-hot", "need-coil-cold"]);
    let not_last = Action::Undo { step: "lock-off".into() };
    refused(&mut scene, &not_last, Tone::Attention, &["refused-no-such"]);
}

#[test]
fn a_danger_between_beginning_and_end_of_what_happened_is_recorded_too() {
    let mut scene = Scene::at_step("water-first", &[]).unwrap();
    scene.draft("happened:circulate-acid", "Acid poured straight into the empty bucket, pump on").unwrap();
    scene.act(&Action::Happened { step: "circulate-acid".into() }).unwrap();
    let Body::StepHappened { dangers, sets, .. } = scene.last_event().unwrap().body else {
        panic!("{:?}", scene.last_event());
    };
    assert!(dangers.contains(&Danger::AcidBeforeWater), "{dangers:?}");
    // At the end the acid is spent and the pump stands; that the rinse must be proved anew comes from the beginning.
    assert_eq!(sets.get(&Fact::Loop), Some(&Value::Spent));
    assert_eq!(sets.get(&Fact::ServicePump), Some(&Value::Stopped));
    assert_eq!(sets.get(&Fact::RinseCheck), Some(&Value::Unproved));
}

#[test]
fn a_rinse_that_was_not_measured_stays_unproved_whatever_is_told() {
    let mut scene = Scene::at_step("prove-rinse", &[]).unwrap();
    scene.draft("happened:prove-rinse", "Rinsed long, looked clean").unwrap();
    scene.act(&Action::Happened { step: "prove-rinse".into() }).unwrap();
    let Body::StepHappened { sets, clears, .. } = scene.last_event().unwrap().body else {
        panic!("{:?}", scene.last_event());
    };
    assert!(!sets.contains_key(&Fact::RinseCheck) && clears.contains(&Fact::RinseCheck), "{sets:?} {clears:?}");
    // So no drinking water may flow: the gate is shut until the step is taken back and measured.
    refused(&mut scene, &done("flush-loop"), Tone::Attention, &["need-rinse-check-proved"]);
    scene.act(&Action::Undo { step: "prove-rinse".into() }).unwrap();
    scene.go("now").unwrap();
    scene.play_to("flush-loop").unwrap();
    assert_eq!(scene.run().unwrap().facts.get(&Fact::RinseCheck), Some(&Value::Proved));
}

#[test]
fn what_happened_all_the_same_is_recorded_with_its_dangers_and_they_stand_on_the_screen() {
    let mut scene = Scene::at_step("shut-valves", &[]).unwrap();
    let notice = refused(&mut scene, &start("circulate-acid"), Tone::Danger, &["danger-acid-past-valves"]);
    let offer = notice.buttons.first().unwrap();
    assert_eq!(offer.label, "It already happened");
    assert_eq!(offer.press, Action::Go { to: "happened:circulate-acid".into() });
    let page = scene.act(&offer.press).unwrap().screen;
    let record = page.foot.first().unwrap();
    assert!(record.hold, "what cannot be taken back is held");
    assert_eq!(record.press, Action::Happened { step: "circulate-acid".into() });
    let events = scene.events().unwrap().len();
    let wordless = scene.act(&record.press).unwrap().screen;
    assert_eq!(scene.events().unwrap().len(), events, "no words, no event");
    assert!(format!("{wordless:?}").contains("Write a few words."));
    scene.draft("happened:circulate-acid", "The helper switched the pump on with acid in the bucket").unwrap();
    let after = scene.act(&record.press).unwrap().screen;
    let Body::StepHappened { step, words: said, dangers, sets, .. } = scene.last_event().unwrap().body else {
        panic!("{:?}", scene.last_event());
    };
    assert_eq!(
        (step.as_str(), said.as_str()),
        ("circulate-acid", "The helper switched the pump on with acid in the bucket")
    );
    let names: Vec<_> = dangers.iter().map(|danger| danger.name()).collect();
    for name in ["acid-past-valves", "acid-material", "acid-unvented", "drinking-water-unproved"] {
        assert!(names.contains(&name), "{name} is not among {names:?}");
    }
    assert!(!sets.is_empty());
    // The danger stands, with what to do, on every screen of the visit until it is over.
    for place in ["now", "readings", "leaving", "phase:exchanger"] {
        let screen = scene.go(place).unwrap();
        let title = words("en").text("danger-acid-past-valves");
        let standing = screen.notices.iter().find(|notice| notice.title == title).unwrap();
        assert_eq!(standing.tone, Tone::Danger);
        assert!(standing.lines.iter().any(|line| line.contains("stop the pump, drain it into the bucket")));
    }
    assert_eq!(after.place, "now");
    let seal = scene.act(&Action::Seal).unwrap().screen;
    assert_eq!(seal.notices.first().unwrap().title, words("en").text("refused-seal-danger"));
    assert_eq!(scene.visit().unwrap().sealing, None);
}

#[test]
fn taking_back_the_end_of_the_acid_does_not_forget_the_acid() {
    let mut scene = Scene::at_step("neutralise-bucket", &[]).unwrap();
    scene.act(&Action::Undo { step: "circulate-acid".into() }).unwrap();
    assert!(!scene.run().unwrap().is_behind("circulate-acid"));
    let strip = scene.screen().unwrap().strip;
    let water = strip.iter().find(|live| live.label == "Water loop").unwrap();
    assert_eq!((water.value.as_str(), water.tone), ("spent acid", Tone::Danger));
    let drain = words("en").text("make-safe-acid");
    assert!(screen_says(&scene.go("break-off").unwrap(), &drain), "breaking off says what to do with the acid");
    refused(&mut scene, &done("flush-loop"), Tone::Danger, &["danger-drinking-water-unproved"]);
}

#[test]
fn a_step_that_may_be_left_out_may_be_left_out_while_its_waiting_time_runs() {
    let mut scene = Scene::at_step("run-found", &[]).unwrap();
    scene.act(&start("run-found")).unwrap();
    scene.clock.pass_ms(180_000);
    let leave = Action::Go { to: "skip:run-found".into() };
    assert!(scene.screen().unwrap().foot.iter().any(|button| button.press == leave), "the screen offers it");
    scene.act(&leave).unwrap();
    scene.draft("skip:run-found", "It tripped after three minutes").unwrap();
    let turn = scene.act(&Action::Skip { step: "run-found".into() }).unwrap();
    assert_eq!(turn.screen.notices, []);
    assert!(matches!(scene.run().unwrap().steps.get("run-found"), Some(Mark::Skipped { .. })));
    refused(&mut scene, &Action::Skip { step: "run-found".into() }, Tone::Attention, &["missing-already-done"]);
}

#[test]
fn a_serial_number_that_is_not_the_registers_must_be_answered() {
    let mut scene = Scene::begun(&[]).unwrap();
    scene.play_until(|screen| field_block(screen, "read:serial").is_some()).unwrap();
    let question = |screen: &Screen| match field_block(screen, "read:serial") {
        Some(Block::TextEntry { question, .. }) => question.clone(),
        other => panic!("{other:?}"),
    };
    let asked = scene.enter("read:serial", "AB-1024").unwrap().screen;
    let told = question(&asked).unwrap();
    assert!(told.text.contains("AB-1024") && told.text.contains("AB-1042"), "{told:?}");
    assert!(!scene.run().unwrap().readings.contains_key("serial"), "nothing is taken before the answer");
    // A question that was open when the device died is still open.
    assert!(question(&scene.reopen().unwrap().screen).is_some());
    // Plates write hyphens and letters as they like.
    let same = scene.enter("read:serial", "ab 1042").unwrap().screen;
    assert!(question(&same).is_none());
    assert!(!scene.run().unwrap().readings["serial"].unusual);
    scene.enter("read:serial", "AB-1024").unwrap();
    scene.act(&Action::Confirm { field: "read:serial".into() }).unwrap();
    let taken = scene.run().unwrap().readings["serial"].clone();
    assert_eq!((taken.value.as_str(), taken.unusual), ("AB-1024", true), "the record says that it is another one");
}
