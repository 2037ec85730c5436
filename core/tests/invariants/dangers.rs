//! The core's own dangers, without any pack's gates: a pack that forgets every `needs` still cannot bring them about.
//!
//! Each forbidden state is one of the canon's; that acid goes into water, and not water into acid, and that spray needs
//! covered electrics, are common practice, no source.

use std::collections::{BTreeMap, BTreeSet};

use coilside_core::now::Now;
use coilside_core::procedure::danger::Danger;
use coilside_core::procedure::gate::{Missing, Passage, allowed};
use coilside_core::procedure::library::{LoadedPack, PackSource, load};
use coilside_core::visit::fact::{Fact, Facts, Holds};
use coilside_core::visit::state::Run;

/// A pack that knows no gates at all.
const BARE: &str = r#"
pack = "bare"
format = 1
version = "1"
[[phase]]
id = "only"
step = [
    { id = "mix", sets = ["vessel=acid-mix"] },
    { id = "circulate", starts = ["loop=acid"], sets = ["loop=spent"], dwell = { least-s = 1, most-s = 2 } },
    { id = "neutralise", sets = ["loop=neutraliser"] },
    { id = "pump", sets = ["service-pump=running"] },
    { id = "own-pump", sets = ["unit-pump=running"] },
    { id = "open-valves", sets = ["valves=open"] },
    { id = "shut-valves", sets = ["valves=shut"] },
    { id = "fill", sets = ["loop=water"] },
    { id = "open-water", acts = ["open-water"] },
    { id = "open-fitting", acts = ["open-fitting"] },
    { id = "gauges", acts = ["open-circuit"] },
    { id = "covers-off", sets = ["covers=off"] },
    { id = "guard-off", sets = ["fan-guard=off"] },
    { id = "power-on", sets = ["supply=on"], acts = ["energise"] },
    { id = "spray", acts = ["spray"] },
    { id = "insulation-test", acts = ["insulation-test"] },
    { id = "hand-over", acts = ["hand-over"] },
]
"#;

fn bare() -> LoadedPack {
    load(PackSource { toml: BARE.to_owned(), words: BTreeMap::new() }).unwrap()
}

fn facts(held: &str) -> Facts {
    held.split_whitespace().map(|text| text.parse::<Holds>().unwrap()).map(|holds| (holds.fact, holds.value)).collect()
}

/// Is the step allowed, and if not, by which dangers alone?
fn judge(step: &str, facts: Facts) -> Vec<Danger> {
    let pack = bare().pack;
    let (phase, step) = pack.step(step).unwrap();
    let run = Run { facts, ..Run::default() };
    let now = Now { utc_ms: 0, offset_min: 0, mono_ms: 0, mono_epoch: "boot".into() };
    let passage = if step.dwell.is_some() { Passage::Start } else { Passage::Done };
    match allowed(&pack, phase, step, &run, passage, &now) {
        Ok(_) => Vec::new(),
        Err(missing) => missing
            .into_iter()
            .map(|missing| match missing {
                Missing::Danger { danger } => danger,
                other => panic!("the bare pack has no gates, and yet: {other:?}"),
            })
            .collect(),
    }
}

/// The step is taken with these facts, and refused for the danger after each change: `fact=value`, or `-fact` for not known.
fn check(step: &str, good: &str, changes: &[(&str, Danger)]) -> BTreeSet<Danger> {
    assert_eq!(judge(step, facts(good)), [], "'{step}' with {good}");
    for (change, danger) in changes {
        let mut changed = facts(good);
        match change.strip_prefix('-') {
            Some(name) => assert!(changed.remove(&name.parse::<Fact>().unwrap()).is_some(), "{change}"),
            None => changed.extend(facts(change)),
        }
        let found = judge(step, changed);
        assert!(found.contains(danger), "'{step}' after {change}: {found:?} lacks {danger:?}");
    }
    changes.iter().map(|(_, danger)| *danger).collect()
}

const GEAR: &str = "eyes=protected hands=protected body=protected eyewash=at-hand";

#[test]
fn acid_needs_water_first_shut_valves_a_vent_gear_cold_and_the_right_metal() {
    let good = format!(
        "{GEAR} loop=water vessel=acid-mix valves=proved-shut loop-vent=vented loop-heat=cold supply=proved-dead \
         heat-sources=locked-out exchanger-acid=allowed alkali-residue=none"
    );
    check(
        "circulate",
        &good,
        &[
            ("loop=empty", Danger::AcidBeforeWater),
            ("-loop", Danger::AcidBeforeWater),
            ("valves=shut", Danger::AcidPastValves),
            ("valves=open", Danger::AcidPastValves),
            ("valves=open", Danger::DrinkingWaterUnproved),
            ("-valves", Danger::AcidPastValves),
            ("loop-vent=closed", Danger::AcidUnvented),
            ("-loop-vent", Danger::AcidUnvented),
            ("loop-heat=hot", Danger::AcidHot),
            ("-loop-heat", Danger::AcidHot),
            ("supply=on heat-sources=enabled", Danger::AcidHot),
            ("exchanger-acid=forbidden", Danger::AcidMaterial),
            ("-exchanger-acid", Danger::AcidMaterial),
        ],
    );
    let mix = format!("{GEAR} vessel=water alkali-residue=none");
    check(
        "mix",
        &mix,
        &[
            ("vessel=empty", Danger::AcidBeforeWater),
            ("-vessel", Danger::AcidBeforeWater),
            ("eyes=bare", Danger::AcidUnprotected),
            ("-eyes", Danger::AcidUnprotected),
            ("-hands", Danger::AcidUnprotected),
            ("-body", Danger::AcidUnprotected),
            ("eyewash=absent", Danger::AcidUnprotected),
            ("alkali-residue=present", Danger::AcidBesideAlkali),
            ("-alkali-residue", Danger::AcidBesideAlkali),
        ],
    );
}

#[test]
fn a_danger_that_stands_already_does_not_forbid_the_way_out_of_it() {
    // Spent acid, and nobody knows how the valves stand: shutting them and neutralising are the way out.
    let standing = facts("loop=spent vessel=acid-mix supply=proved-dead loop-vent=vented rinse-check=unproved");
    assert_eq!(judge("shut-valves", standing), []);
    assert_eq!(judge("neutralise", standing), []);
    // What brings the danger about is no way out of it, however long it stands already.
    let opened = judge("open-valves", standing);
    assert!(opened.contains(&Danger::DrinkingWaterUnproved) && opened.contains(&Danger::AcidPastValves), "{opened:?}");
    assert!(judge("circulate", standing).contains(&Danger::AcidPastValves), "no more acid on top of it");
    assert!(judge("pump", facts("unit-pump=running")).contains(&Danger::PumpDry), "no second pump on a dry loop");
    let live = facts("supply=on covers=off loop=water tank=full gas=clear");
    assert!(
        judge("power-on", facts("supply=off covers=off tank=not-full further-supplies=on"))
            .contains(&Danger::ElementTankNotFull)
    );
    assert!(!judge("shut-valves", live).contains(&Danger::CoversOffLive), "what it does not touch it may do");
}

#[test]
fn the_valves_do_not_open_on_a_loop_that_nobody_looked_into() {
    assert_eq!(judge("open-valves", facts("valves=shut")), [Danger::DrinkingWaterUnproved]);
    assert_eq!(judge("open-valves", facts("loop=water valves=shut")), []);
}

#[test]
fn every_danger_of_the_canon_is_refused_by_the_core_alone() {
    let acid = format!(
        "{GEAR} loop=water valves=proved-shut loop-vent=vented loop-heat=cold supply=proved-dead exchanger-acid=allowed \
         alkali-residue=none"
    );
    let power =
        "covers=on earth=on fan-guard=on dampness=dry gas=clear loop=water tank=full supply=off loop-vent=vented";
    let mut refused = BTreeSet::new();
    let mut add = |step: &str, good: &str, changes: &[(&str, Danger)]| refused.extend(check(step, good, changes));
    add(
        "circulate",
        &acid,
        &[
            ("-valves", Danger::AcidPastValves),
            ("-loop", Danger::AcidBeforeWater),
            ("-loop-vent", Danger::AcidUnvented),
            ("-eyes", Danger::AcidUnprotected),
            ("-loop-heat", Danger::AcidHot),
            ("-exchanger-acid", Danger::AcidMaterial),
            ("-alkali-residue", Danger::AcidBesideAlkali),
        ],
    );
    add(
        "open-valves",
        "loop=rinse rinse-check=proved valves=proved-shut",
        &[
            ("rinse-check=unproved", Danger::DrinkingWaterUnproved),
            ("-rinse-check", Danger::DrinkingWaterUnproved),
            ("loop=neutraliser", Danger::DrinkingWaterUnproved),
            ("loop=spent", Danger::DrinkingWaterUnproved),
        ],
    );
    add(
        "fill",
        "loop=empty backflow=protected supply=proved-dead",
        &[
            ("backflow=open", Danger::BackflowUnprotected),
            ("-backflow", Danger::BackflowUnprotected),
            ("supply=on", Danger::LiquidChangedLive),
            ("-supply", Danger::LiquidChangedLive),
        ],
    );
    for pump in ["pump", "own-pump"] {
        add(pump, "loop=water", &[("loop=empty", Danger::PumpDry), ("-loop", Danger::PumpDry)]);
    }
    add(
        "shut-valves",
        "loop=water valves=open supply=on loop-vent=vented",
        &[("loop-vent=closed", Danger::LoopShutWithHeat), ("-loop-vent", Danger::LoopShutWithHeat)],
    );
    add("open-water", "loop-heat=cold", &[("loop-heat=hot", Danger::OpenedHot), ("-loop-heat", Danger::OpenedHot)]);
    add(
        "open-fitting",
        "fitting-pressure=relieved fitting-heat=cold",
        &[
            ("fitting-pressure=present", Danger::FittingOpenedUnready),
            ("-fitting-pressure", Danger::FittingOpenedUnready),
            ("fitting-heat=hot", Danger::FittingOpenedUnready),
            ("-fitting-heat", Danger::FittingOpenedUnready),
        ],
    );
    add(
        "gauges",
        "certificate=held",
        &[("certificate=none", Danger::CircuitUncertified), ("-certificate", Danger::CircuitUncertified)],
    );
    add(
        "guard-off",
        "supply=proved-dead fan-guard=on",
        &[("supply=off", Danger::GuardOffLive), ("-supply", Danger::GuardOffLive)],
    );
    add(
        "covers-off",
        "supply=proved-dead further-supplies=proved-dead stored-charge=waited-out gas=clear covers=on",
        &[
            ("gas=alarm", Danger::OpenedInGas),
            ("-gas", Danger::OpenedInGas),
            ("ignition-sources=present", Danger::OpenedInGas),
            ("supply=off", Danger::CoversOffLive),
            ("-supply", Danger::CoversOffLive),
            ("further-supplies=off", Danger::CoversOffLive),
            ("-further-supplies", Danger::CoversOffLive),
            ("stored-charge=present", Danger::CoversOffLive),
            ("-stored-charge", Danger::CoversOffLive),
        ],
    );
    add(
        "power-on",
        power,
        &[
            ("covers=off", Danger::PowerOnUnready),
            ("-covers", Danger::PowerOnUnready),
            ("earth=off", Danger::PowerOnUnready),
            ("-earth", Danger::PowerOnUnready),
            ("fan-guard=off", Danger::PowerOnUnready),
            ("dampness=damp", Danger::PowerOnUnready),
            ("-dampness", Danger::PowerOnUnready),
            ("gas=alarm", Danger::PowerOnGas),
            ("-gas", Danger::PowerOnGas),
            ("tank=not-full", Danger::ElementTankNotFull),
            ("loop=rinse", Danger::CompressorNoWater),
            ("loop=empty", Danger::CompressorNoWater),
            ("air-path=blocked", Danger::CompressorNoAir),
        ],
    );
    add(
        "spray",
        "supply=proved-dead electrics=covered coil=cold",
        &[
            ("supply=off", Danger::SprayLive),
            ("-supply", Danger::SprayLive),
            ("electrics=bare", Danger::SprayBare),
            ("-electrics", Danger::SprayBare),
            ("coil=hot", Danger::SprayHot),
            ("-coil", Danger::SprayHot),
        ],
    );
    add(
        "insulation-test",
        "electronics=disconnected supply=proved-dead",
        &[
            ("electronics=connected", Danger::InsulationTestUnready),
            ("-electronics", Danger::InsulationTestUnready),
            ("-supply", Danger::InsulationTestUnready),
        ],
    );
    add(
        "hand-over",
        "scald-check=done reheat=reached",
        &[
            ("scald-check=open", Danger::HandOverUnchecked),
            ("-scald-check", Danger::HandOverUnchecked),
            ("-reheat", Danger::HandOverUnchecked),
        ],
    );
    // These two are of findings and of a break-off, not of facts and acts: `mechanics` tries them.
    let elsewhere = [Danger::HandOverUnsafe, Danger::LeftUntagged];
    let all: BTreeSet<Danger> = Danger::ALL.iter().copied().filter(|danger| !elsewhere.contains(danger)).collect();
    assert_eq!(refused, all, "a danger of the canon is not tried here");
}
