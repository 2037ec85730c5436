//! What each pack is for: the dangers of its own machine are refused, and its visit ends as the machine must be left.
//!
//! The orders are those of the trade (common practice, no source), the forbidden states those of `procedure/danger.rs`.

use coilside_core::action::Action;
use coilside_core::procedure::pack::{ChemicalKind, Pack};
use coilside_core::screen::Tone;
use coilside_core::visit::fact::{Fact, Holds, Value};
use coilside_tests::ADD_ON;
use coilside_tests::look::{next_step, notice_lines, pack, packs, words};
use coilside_tests::scene::Scene;

const TANK: &str = "tank-water-heater";
const R744: &str = "split-r744-water-heater";
const R290: &str = "monobloc-r290";
const POOL: &str = "pool-heater";

fn at(pack: &str, step: &str, other: &[(&str, &str)]) -> Scene {
    let mut scene = Scene::before_of(pack, other).unwrap();
    scene.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
    scene.play_to(step).unwrap();
    scene
}

/// The step is not let through, these words say why, and nothing is written.
fn refused(scene: &mut Scene, step: &str, keys: &[&str]) {
    let events = scene.events().unwrap().len();
    let has_wait = pack(&scene.technician.pack).pack.step(step).unwrap().1.dwell.is_some();
    let action = if has_wait { Action::Start { step: step.into() } } else { Action::Done { step: step.into() } };
    let screen = scene.act(&action).unwrap().screen;
    assert_eq!(scene.events().unwrap().len(), events, "'{step}' wrote something");
    let lines = notice_lines(&screen.notices);
    for key in keys {
        let text = words("en").text(key);
        assert!(lines.contains(&text), "'{step}': “{text}” is not said in {lines:#?}");
    }
}

fn fact(scene: &Scene, fact: Fact) -> Option<Value> {
    scene.run().unwrap().facts.get(&fact).copied()
}

#[test]
fn an_anode_is_not_loosened_under_pressure_or_hot() {
    let mut scene = at(TANK, "cool-tank", &[]);
    let unready = ["danger-fitting-opened-unready", "need-fitting-pressure-relieved", "need-fitting-heat-cold"];
    refused(&mut scene, "anode", &unready);
    // 48 °C is unusual and confirmed: it still is not cold.
    scene.enter("read:fitting-temperature", "48").unwrap();
    scene.act(&Action::Confirm { field: "read:fitting-temperature".into() }).unwrap();
    refused(&mut scene, "cool-tank", &["missing-fitting-not-cold"]);
    scene.enter("read:fitting-temperature", "22").unwrap();
    scene.play_to("relieve").unwrap();
    refused(&mut scene, "anode", &["danger-fitting-opened-unready", "need-fitting-pressure-relieved"]);
    scene.play_to("anode").unwrap();
    scene.play_to("refill").unwrap();
}

#[test]
fn a_drained_cylinder_gets_no_power_before_it_is_full_again() {
    let mut scene = at(TANK, "refill", &[("condition:element", "due")]);
    assert_eq!(fact(&scene, Fact::Tank), Some(Value::NotFull));
    refused(&mut scene, "power-on", &["danger-element-tank-not-full", "need-tank-full", "need-valves-open"]);
    scene.play_to("power-on").unwrap();
    assert_eq!(fact(&scene, Fact::Tank), Some(Value::Full));
}

#[test]
fn where_there_is_nothing_to_descale_no_acid_comes_along_and_none_is_allowed() {
    let acid = |holds: &Holds| matches!(holds.value, Value::Acid | Value::AcidMix | Value::Allowed);
    for name in [TANK, R290] {
        let Pack { chemicals, .. } = &pack(name).pack;
        assert!(!chemicals.is_empty() && chemicals.iter().all(|known| known.kind != ChemicalKind::Acid), "{name}");
        assert!(!pack(name).pack.steps().any(|(_, step)| step.sets.iter().chain(&step.starts).any(acid)), "{name}");
        let scene = at(name, "settings-found", &[]);
        assert_eq!(fact(&scene, Fact::ExchangerAcid), Some(Value::Forbidden), "{name}");
    }
}

#[test]
fn at_a_pool_acid_waits_until_the_chlorine_is_flushed_away() {
    let mut scene = at(POOL, "flush-chlorine", &[]);
    refused(&mut scene, "add-acid", &["danger-acid-beside-alkali", "need-alkali-residue-none"]);
    refused(&mut scene, "circulate-acid", &["danger-acid-beside-alkali", "need-alkali-residue-none"]);
    scene.play_to("circulate-acid").unwrap();
    assert_eq!(fact(&scene, Fact::AlkaliResidue), Some(Value::None));
    let dosing = &scene.run().unwrap().excursions;
    assert!(dosing.contains_key("dosing"), "chlorinator and dosing are noted as away: {dosing:?}");
}

#[test]
fn a_pool_heater_left_for_the_winter_is_drained_shut_and_never_switched_on() {
    let mut scene = at(POOL, "tell-owner-winter", &[("condition:season", "winter")]);
    scene.play_on().unwrap();
    let run = scene.run().unwrap();
    for (fact, value) in [
        (Fact::Loop, Value::Empty),
        (Fact::Valves, Value::ProvedShut),
        (Fact::LoopVent, Value::Vented),
        (Fact::Supply, Value::ProvedDead),
        (Fact::Covers, Value::On),
    ] {
        assert_eq!(run.facts.get(&fact), Some(&value), "{fact:?}");
    }
    assert!(!run.steps.contains_key("power-on") && run.excursions.is_empty());
}

#[test]
fn no_pack_leads_the_uncertified_to_a_circuit() {
    for loaded in packs() {
        let name = &loaded.pack.pack;
        let mut scene = at(name, "lock-off", &[("condition:certificate", "no")]);
        let (steps, pressures) = {
            let run = scene.run().unwrap();
            (run.steps.contains_key("gauges-found"), run.readings.contains_key("low-pressure-found"))
        };
        assert!(!steps && !pressures, "{name}");
        refused(&mut scene, "gauges-found", &["missing-not-for-this-unit"]);
    }
}

#[test]
fn r744_is_read_in_kilopascal_far_above_a_hundred_bar() {
    let mut scene = at(R744, "gauges-found", &[]);
    scene.enter("read:high-pressure-found", "11800").unwrap();
    let taken = scene.run().unwrap().readings["high-pressure-found"].clone();
    assert_eq!((taken.value.as_str(), taken.measure.as_str(), taken.unusual), ("11800", "kPa", false));
    scene.enter("read:high-pressure-found", "16001").unwrap();
    assert_eq!(scene.run().unwrap().readings["high-pressure-found"].value, "11800", "no gauge shows more than 160 bar");
    let shown = format!("{:?}", scene.screen().unwrap().blocks);
    assert!(shown.contains("high-pressure") && shown.contains("suffocation"), "{shown}");
}

#[test]
fn a_monobloc_is_opened_only_after_the_detector_and_with_sparks_kept_away() {
    let mut scene = at(R290, "approach", &[]);
    let first = ["need-gas-clear", "need-ignition-sources-kept-away"];
    for step in ["zone", "indoor-vents"] {
        refused(&mut scene, step, &first);
    }
    refused(&mut scene, "covers-off", &["danger-opened-in-gas", first[0], first[1]]);
    scene.play_to("covers-off").unwrap();
    // Over lunch the detector's reading grows old: it is read again before the cover comes off.
    scene.clock.pass_ms(45 * 60_000);
    refused(&mut scene, "covers-off", &["danger-opened-in-gas", "need-gas-clear"]);
}

#[test]
fn the_tap_is_measured_only_where_taps_hang_at_the_unit() {
    for (answer, wanted) in [("yes", true), ("no", false)] {
        let mut scene = at(R290, "tell-owner", &[("condition:drinking-water", answer)]);
        let run = scene.run().unwrap();
        assert_eq!(run.readings.contains_key("tap-hot"), wanted);
        let wanted = if wanted { Value::Done } else { Value::NotNeeded };
        assert_eq!(run.facts.get(&Fact::ScaldCheck), Some(&wanted));
        scene.play_on().unwrap();
        assert!(scene.visit().unwrap().sealing.unwrap().complete, "{answer}");
    }
}

#[test]
fn heat_is_worked_out_of_water_and_never_of_glycol() {
    for (filling, wanted) in [("water", true), ("glycol", false)] {
        let mut scene = at(R290, "tell-owner", &[("condition:filling", filling)]);
        let shown = format!("{:?}", scene.go("readings").unwrap().blocks);
        assert_eq!(shown.contains("Heat to the water"), wanted, "{filling}");
    }
}

/// Facts of the trade as check values, all of them common practice, no source: 2 L of water before 200 mL of acid, 20 minutes of
/// circulation and 5 of neutralising for a small exchanger; a degreaser 1 to 10 in 10 to 15 L with 5 minutes of soak; the lance
/// 100 mm from the fins.
#[test]
fn the_packs_begin_with_the_figures_of_the_trade() {
    let preset = |name: &str, id: &str| -> f64 {
        pack(name).pack.reading(id).unwrap().preset.as_ref().unwrap().parse().unwrap()
    };
    let least_s = |name: &str, step: &str| pack(name).pack.step(step).unwrap().1.dwell.unwrap().least_s;
    for name in [ADD_ON, R744] {
        let (parts, total_l) = (preset(name, "descaler-parts"), preset(name, "descaler-volume"));
        let acid_l = total_l / (parts + 1.0);
        assert!((acid_l - 0.2).abs() < 1e-9 && (total_l - acid_l - 2.0).abs() < 1e-9, "{name}: {acid_l} L of acid");
    }
    for name in [ADD_ON, R744, POOL] {
        assert_eq!((least_s(name, "circulate-acid"), least_s(name, "neutralise-loop")), (20 * 60, 5 * 60), "{name}");
    }
    for loaded in packs() {
        let name = &loaded.pack.pack;
        assert!((preset(name, "cleaner-parts") - 10.0).abs() < 1e-9, "{name}");
        assert!((10.0..=15.0).contains(&preset(name, "cleaner-volume")), "{name}");
        assert_eq!(least_s(name, "soak-coil"), 5 * 60, "{name}");
        for words in loaded.source.words.values() {
            let rinse = words.split("step-rinse-coil =").nth(1).unwrap();
            assert!(rinse.split("\nstep-").next().unwrap().contains("100 mm"), "{name}");
        }
    }
}

/// What a step needs it does not change: else a mark that was taken back by mistake could not be set again. One does: whether
/// water is in the bucket must be asked before acid, as the exchanger's answer may have changed since.
#[test]
fn no_step_of_a_pack_needs_what_it_changes_itself() {
    for loaded in packs() {
        for (_, step) in loaded.pack.steps().filter(|(_, step)| step.id.as_str() != "add-acid") {
            let changed = |fact: Fact| {
                step.sets.iter().chain(&step.starts).any(|holds| holds.fact == fact) || step.clears.contains(&fact)
            };
            for needs in &step.needs {
                assert!(!changed(needs.fact), "{}: '{}' needs {needs}", loaded.pack.pack, step.id);
            }
        }
    }
}

/// A mark taken back right after it was set can be set again, at every step of every pack but one: acid that is in the bucket
/// stays there, so the way on from there is the truth, that it already happened.
#[test]
fn every_mark_of_every_pack_can_be_taken_back_and_set_again() {
    for loaded in packs() {
        let name = &loaded.pack.pack;
        let mut scene = Scene::before_of(name, &[]).unwrap();
        scene.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
        let mut undone = Vec::new();
        while let Some(step) = next_step(&scene.screen().unwrap()).map(str::to_owned) {
            scene.play_until(|screen| next_step(screen) != Some(&step)).unwrap();
            if undone.contains(&step) || step == "add-acid" {
                continue;
            }
            let turn = scene.act(&Action::Undo { step: step.clone() }).unwrap();
            let said = turn.screen.notices.iter().filter(|notice| notice.tone == Tone::Danger).count();
            assert_eq!(said, 0, "{name}: '{step}' {:?}", turn.screen.notices);
            undone.push(step);
        }
        assert!(undone.len() > 35, "{name}: only {} marks were taken back", undone.len());
        scene.play_on().unwrap();
        assert!(scene.visit().unwrap().sealing.unwrap().complete, "{name}");
    }
}
