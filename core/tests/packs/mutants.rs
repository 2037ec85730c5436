//! Packs that are broken on purpose: a built-in pack with one thing changed, each of them something that a writer of packs
//! could forget or get wrong. What each leads to is one of the canon's forbidden states, a trap, or a step that is dead.

use coilside_core::procedure::check::Fault;
use coilside_core::procedure::danger::Danger;
use coilside_core::procedure::pack::{Pack, Step};
use coilside_core::visit::fact::{Fact, Holds};

/// A broken pack, and what the checker must say of it.
pub(crate) struct Mutant {
    pub(crate) name: &'static str,
    pub(crate) change: fn(&mut Pack),
    pub(crate) expect: Expect,
}

/// What must be among the counter-examples.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Expect {
    Unguarded(&'static str, Danger),
    Outside(&'static str, Danger),
    Answer(Danger),
    Trap,
    Left(&'static str),
    Away(&'static str),
    Dead(&'static str),
}

impl Expect {
    pub(crate) fn is_met(self, fault: &Fault) -> bool {
        match (self, fault) {
            (Expect::Unguarded(id, danger), Fault::Unguarded { step, dangers, .. })
            | (Expect::Outside(id, danger), Fault::Outside { step, dangers, .. }) => {
                step.as_str() == id && dangers.contains(&danger)
            }
            (Expect::Answer(danger), Fault::Answer { dangers, .. }) => dangers.contains(&danger),
            (Expect::Trap, Fault::Trap { .. }) => true,
            (Expect::Left(left), Fault::Left { facts, .. }) => facts.contains(&left.parse().unwrap()),
            (Expect::Away(id), Fault::Away { excursion }) => excursion.as_str() == id,
            (Expect::Dead(id), Fault::Dead { step }) => step.as_str() == id,
            _ => false,
        }
    }
}

fn step<'a>(pack: &'a mut Pack, id: &str) -> &'a mut Step {
    pack.phases.iter_mut().flat_map(|phase| &mut phase.steps).find(|step| step.id.as_str() == id).unwrap()
}

fn steps(pack: &mut Pack) -> impl Iterator<Item = &mut Step> {
    pack.phases.iter_mut().flat_map(|phase| &mut phase.steps)
}

/// The step no longer needs these facts.
fn no_need(pack: &mut Pack, id: &str, facts: &[&str]) {
    for text in facts {
        let holds: Holds = text.parse().unwrap();
        let needs = &mut step(pack, id).needs;
        assert!(needs.contains(&holds), "{id} does not need {text}");
        needs.retain(|needs| *needs != holds);
    }
}

/// No step needs this fact any more.
fn nobody_needs(pack: &mut Pack, text: &str) {
    let holds: Holds = text.parse().unwrap();
    assert!(steps(pack).any(|step| step.needs.contains(&holds)), "nobody needs {text}");
    steps(pack).for_each(|step| step.needs.retain(|needs| *needs != holds));
}

/// The step no longer sets these facts.
fn no_set(pack: &mut Pack, id: &str, facts: &[&str]) {
    for text in facts {
        let holds: Holds = text.parse().unwrap();
        let step = step(pack, id);
        assert!(step.sets.contains(&holds) || step.starts.contains(&holds), "{id} does not set {text}");
        step.sets.retain(|sets| *sets != holds);
        step.starts.retain(|sets| *sets != holds);
    }
}

fn set(pack: &mut Pack, id: &str, text: &str) {
    let holds: Holds = text.parse().unwrap();
    let sets = &mut step(pack, id).sets;
    sets.retain(|sets| sets.fact != holds.fact);
    sets.push(holds);
}

fn after(pack: &mut Pack, id: &str, after: &[&str]) {
    step(pack, id).after = after.iter().map(|id| (*id).into()).collect();
}

fn phase_after(pack: &mut Pack, id: &str, after: &[&str]) {
    let phase = pack.phases.iter_mut().find(|phase| phase.id.as_str() == id).unwrap();
    phase.after = after.iter().map(|id| (*id).into()).collect();
}

macro_rules! mutants {
    ($( $name:literal => $expect:expr, |$pack:ident| $change:block )+) => {
        /// Every broken pack.
        pub(crate) const MUTANTS: &[Mutant] = &[
            $( Mutant { name: $name, expect: $expect, change: |$pack: &mut Pack| $change }, )+
        ];
    };
}

use Danger as D;
use Expect::{Away, Dead, Left, Outside, Trap, Unguarded};

mutants! {
    // A gate removed.
    "acid-needs-no-valves" => Unguarded("circulate-acid", D::AcidPastValves), |pack| {
        no_need(pack, "circulate-acid", &["valves=proved-shut"]);
    }
    "acid-needs-no-cold-loop-and-none-was-measured" => Unguarded("circulate-acid", D::AcidHot), |pack| {
        nobody_needs(pack, "loop-heat=cold");
        no_set(pack, "shut-valves", &["loop-heat=cold"]);
        step(pack, "leak-test").acts.clear();
    }
    "a-hot-loop-is-opened" => Unguarded("leak-test", D::OpenedHot), |pack| {
        nobody_needs(pack, "loop-heat=cold");
        no_set(pack, "shut-valves", &["loop-heat=cold"]);
    }
    "covers-off-needs-no-gas-reading" => Unguarded("covers-off", D::OpenedInGas), |pack| {
        no_need(pack, "covers-off", &["gas=clear"]);
    }
    "covers-off-needs-no-proof" => Unguarded("covers-off", D::CoversOffLive), |pack| {
        no_need(pack, "covers-off", &["supply=proved-dead", "further-supplies=proved-dead"]);
        after(pack, "covers-off", &["wait-charge"]);
    }
    "charge-need-not-be-waited-out" => Unguarded("covers-off", D::CoversOffLive), |pack| {
        step(pack, "wait-charge").may_skip = true;
        no_need(pack, "covers-off", &["stored-charge=waited-out"]);
    }
    "spray-needs-no-dead-supply" => Unguarded("soak-coil", D::SprayLive), |pack| {
        no_need(pack, "soak-coil", &["supply=proved-dead"]);
    }
    "spray-needs-no-cover" => Unguarded("soak-coil", D::SprayBare), |pack| {
        step(pack, "cover-electrics").may_skip = true;
        no_need(pack, "soak-coil", &["electrics=covered"]);
    }
    "insulation-test-needs-nothing-unplugged" => Unguarded("insulation-test", D::InsulationTestUnready), |pack| {
        no_need(pack, "insulation-test", &["electronics=disconnected"]);
    }
    "the-bucket-needs-no-lock-out" => Unguarded("neutralise-bucket", D::LiquidChangedLive), |pack| {
        no_need(pack, "neutralise-bucket", &["heat-sources=locked-out"]);
    }
    "flush-needs-no-proof-of-the-rinse" => Unguarded("flush-loop", D::DrinkingWaterUnproved), |pack| {
        no_need(pack, "flush-loop", &["rinse-check=proved"]);
        after(pack, "flush-loop", &[]);
    }
    "hand-over-needs-no-check" => Unguarded("tell-owner", D::HandOverUnchecked), |pack| {
        no_need(pack, "tell-owner", &["scald-check=done"]);
        after(pack, "tell-owner", &[]);
    }
    // An answer changed on the way opens what the order alone kept shut.
    "acid-needs-no-water" => Unguarded("add-acid", D::AcidBeforeWater), |pack| {
        no_need(pack, "add-acid", &["vessel=water", "loop=water"]);
    }
    // An `after` removed, or wrong.
    "acid-comes-after-nothing" => Unguarded("add-acid", D::AcidBeforeWater), |pack| {
        no_need(pack, "add-acid", &["vessel=water", "loop=water"]);
        after(pack, "match-descaler", &[]);
    }
    "electrics-come-after-nothing" => Trap, |pack| {
        phase_after(pack, "electrics", &["isolate"]);
    }
    "two-steps-wait-for-each-other" => Trap, |pack| {
        after(pack, "lock-off", &["covers-off"]);
    }
    "rinse-comes-after-nothing" => Unguarded("rinse-loop", D::DrinkingWaterUnproved), |pack| {
        after(pack, "rinse-loop", &[]);
        no_need(pack, "rinse-loop", &["valves=proved-shut"]);
    }
    // A fact set wrongly, or not at all.
    "nobody-vents-the-loop" => Unguarded("circulate-acid", D::AcidUnvented), |pack| {
        no_set(pack, "leak-test", &["loop-vent=vented"]);
        nobody_needs(pack, "loop-vent=vented");
    }
    "no-eyewash" => Unguarded("add-acid", D::AcidUnprotected), |pack| {
        no_set(pack, "gear-on", &["eyewash=at-hand"]);
        nobody_needs(pack, "eyewash=at-hand");
    }
    "the-metal-is-not-matched" => Unguarded("circulate-acid", D::AcidMaterial), |pack| {
        no_set(pack, "match-descaler", &["exchanger-acid=allowed"]);
        nobody_needs(pack, "exchanger-acid=allowed");
    }
    "alkali-is-not-rinsed-away" => Unguarded("add-acid", D::AcidBesideAlkali), |pack| {
        no_set(pack, "match-descaler", &["alkali-residue=none"]);
        nobody_needs(pack, "alkali-residue=none");
    }
    "no-protection-against-backflow" => Unguarded("water-first", D::BackflowUnprotected), |pack| {
        no_set(pack, "connect-loop", &["backflow=protected"]);
        nobody_needs(pack, "backflow=protected");
    }
    "the-pump-runs-on-while-the-loop-is-drained" => Unguarded("neutralise-bucket", D::PumpDry), |pack| {
        no_set(pack, "circulate-acid", &["service-pump=stopped"]);
        no_need(pack, "neutralise-bucket", &["service-pump=stopped"]);
    }
    "the-coil-is-never-cold" => Unguarded("soak-coil", D::SprayHot), |pack| {
        no_set(pack, "brush-coil", &["coil=cold"]);
        nobody_needs(pack, "coil=cold");
    }
    "the-earth-is-never-looked-at" => Unguarded("power-on", D::PowerOnUnready), |pack| {
        no_set(pack, "terminals", &["earth=on"]);
        nobody_needs(pack, "earth=on");
    }
    "power-without-a-gas-reading" => Unguarded("power-on", D::PowerOnGas), |pack| {
        no_set(pack, "close-unit", &["gas=clear"]);
        no_need(pack, "power-on", &["gas=clear"]);
    }
    "the-guard-comes-off-too-early" => Unguarded("lock-off", D::GuardOffLive), |pack| {
        set(pack, "lock-off", "fan-guard=off");
    }
    "the-sheet-stays-over-the-coil" => Unguarded("power-on", D::CompressorNoAir), |pack| {
        set(pack, "cover-electrics", "air-path=blocked");
    }
    "rinse-water-stays-in-the-loop" => Unguarded("power-on", D::CompressorNoWater), |pack| {
        set(pack, "flush-loop", "loop=rinse");
        nobody_needs(pack, "loop=water");
    }
    "the-tank-is-not-full" => Unguarded("power-on", D::ElementTankNotFull), |pack| {
        set(pack, "flush-loop", "tank=not-full");
        nobody_needs(pack, "tank=full");
    }
    "valves-shut-while-heat-may-come" => Unguarded("run-left", D::LoopShutWithHeat), |pack| {
        let starts: Holds = "valves=shut".parse().unwrap();
        step(pack, "run-left").starts.push(starts);
    }
    // A trap.
    "the-leak-test-proves-nothing" => Trap, |pack| {
        no_set(pack, "leak-test", &["valves=proved-shut"]);
    }
    "the-rinse-is-never-proved" => Trap, |pack| {
        no_set(pack, "prove-rinse", &["rinse-check=proved"]);
    }
    "the-room-is-forgotten" => Trap, |pack| {
        step(pack, "shut-valves").clears.push(Fact::Room);
    }
    "nobody-asks-about-the-coil" => Trap, |pack| {
        step(pack, "know-unit").asks.retain(|asked| asked.as_str() != "coil");
    }
    // Left behind at the end.
    "electronics-stay-unplugged" => Left("electronics=disconnected"), |pack| {
        no_set(pack, "terminals", &["electronics=connected"]);
        nobody_needs(pack, "electronics=connected");
    }
    "the-schedule-never-comes-home" => Away("schedule"), |pack| {
        step(pack, "schedule-home").homes = None;
    }
    // What can come to pass unseen.
    "no-lock-and-the-supply-comes-back" => Outside("shut-early", D::LoopShutWithHeat), |pack| {
        no_set(pack, "lock-off", &["tag=tagged", "heat-sources=locked-out"]);
        let isolate = pack.phases.iter_mut().find(|phase| phase.id.as_str() == "isolate").unwrap();
        isolate.steps.push(Step {
            id: "shut-early".into(),
            after: vec!["lock-off".into()],
            sets: vec!["valves=shut".parse().unwrap()],
            ..Step::default()
        });
    }
    "a-valve-passes-while-the-loop-is-rinsed" => Outside("rinse-loop", D::DrinkingWaterUnproved), |pack| {
        set(pack, "leak-test", "valves=shut");
        for id in ["connect-loop", "water-first", "rinse-loop"] {
            no_need(pack, id, &["valves=proved-shut"]);
        }
    }
    // A step that nobody ever comes to.
    "a-step-needs-what-never-is" => Dead("unplug-electronics"), |pack| {
        let never: Holds = "dampness=damp".parse().unwrap();
        step(pack, "unplug-electronics").needs = vec![never];
    }
    // An answer that brings danger.
    "an-answer-opens-the-covers" => Expect::Answer(D::CoversOffLive), |pack| {
        let condition = pack.conditions.iter_mut().find(|condition| condition.id.as_str() == "casing").unwrap();
        condition.options[1].sets.push("covers=off".parse().unwrap());
    }
}
