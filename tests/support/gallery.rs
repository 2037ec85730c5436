//! Ten visits whose summaries are looked at: every pack, complete and broken off, unsafe, two units, long names, both
//! languages, both systems of units. Everything in them is invented.

use coilside_core::action::Action;
use coilside_core::effect::{Outcome, Request};
use coilside_core::field::Handover;
use coilside_core::round::{AssignedUnit, Assignment, PastReading, Terms};
use coilside_office::demo::player::Answers as _;

use crate::scene::{Scene, SceneError};
use crate::{ADD_ON, DRAWN, Technician, assignment_of};

/// A summary with its name in the gallery.
pub struct Hung {
    /// The name.
    pub name: &'static str,
    /// What is handed over.
    pub handed: Handover,
}

/// How a visit of the gallery goes.
#[derive(Clone, Copy, Default)]
struct Plan {
    name: &'static str,
    pack: &'static str,
    language: &'static str,
    us_units: bool,
    long_names: bool,
    two_units: bool,
    history: bool,
    covered: bool,
    /// Answers that differ.
    other: &'static [(&'static str, &'static str)],
    /// Severity and words of what is found.
    found: Option<(&'static str, &'static str)>,
    /// A step that is left out, with the reason.
    skipped: Option<(&'static str, &'static str)>,
    /// The customer signs by this name; an empty one is drawn alone.
    signed: Option<&'static str>,
    /// Broken off when this step is next, with the reason.
    broken_off: Option<(&'static str, &'static str)>,
}

const PLANS: [Plan; 10] = [
    Plan {
        name: "01-add-on",
        pack: ADD_ON,
        language: "en",
        history: true,
        covered: true,
        signed: Some("Edda Marsh"),
        ..NONE
    },
    Plan {
        name: "02-tank",
        pack: "tank-water-heater",
        language: "en",
        found: Some(("soon", "The anode is nearly used up. Change it at the next service.")),
        ..NONE
    },
    Plan {
        name: "03-r744-spanish",
        pack: "split-r744-water-heater",
        language: "es",
        covered: true,
        signed: Some(""),
        ..NONE
    },
    Plan { name: "04-r290-us", pack: "monobloc-r290", language: "en", us_units: true, ..NONE },
    Plan {
        name: "05-pool-spanish",
        pack: "pool-heater",
        language: "es",
        found: Some(("note", "Tapa del filtro con una grieta pequeña")),
        ..NONE
    },
    Plan {
        name: "06-broken-off",
        pack: ADD_ON,
        language: "en",
        broken_off: Some(("covers-off", "A thunderstorm came up")),
        ..NONE
    },
    Plan {
        name: "07-unsafe",
        pack: ADD_ON,
        language: "en",
        found: Some(("unsafe", "The earth wire at the unit is broken off. An electrician must mend it first.")),
        broken_off: Some(("lock-off", "The earth wire is broken")),
        ..NONE
    },
    Plan {
        name: "08-two-units",
        pack: ADD_ON,
        language: "en",
        two_units: true,
        found: Some(("note", "Two fins bent, combed straight.")),
        ..NONE
    },
    Plan {
        name: "09-long-names-us",
        pack: "tank-water-heater",
        language: "en",
        us_units: true,
        long_names: true,
        covered: true,
        signed: Some("Wilhelmina Featherstonehaugh-Cholmondeley of the Old Customs House and Ropewalk"),
        found: Some(("soon", LONG)),
        ..NONE
    },
    Plan {
        name: "10-left-out-spanish",
        pack: ADD_ON,
        language: "es",
        history: true,
        other: &[("condition:reheat", "pending"), ("condition:coil", "coated"), ("condition:sea", "near")],
        skipped: Some(("insulation-test", "El motor estaba tapado por una viga")),
        ..NONE
    },
];

const NONE: Plan = Plan {
    name: "",
    pack: ADD_ON,
    language: "en",
    us_units: false,
    long_names: false,
    two_units: false,
    history: false,
    covered: false,
    other: &[],
    found: None,
    skipped: None,
    signed: None,
    broken_off: None,
};

const LONG: &str = "The pipe from the safety valve ends behind the washing machine, where nobody can see whether it drips. It should end over \
    an open funnel that can be seen from the door; the present one is pushed into the drain without any gap, so that dirty water could be \
    drawn back. Ask a plumber for https://an-invented-address.example/very/long/path/without/any/space/in/it/at/all before the summer.";

/// All of them.
///
/// # Errors
/// Where a visit does not go as planned.
pub fn gallery() -> Result<Vec<Hung>, SceneError> {
    PLANS.iter().map(hang).collect()
}

fn hang(plan: &Plan) -> Result<Hung, SceneError> {
    let mut technician = Technician::at(plan.pack, plan.other);
    technician.draws = true;
    let mut scene = Scene::of(technician, assignment(plan))?;
    scene.act(&Action::StartVisit { assignment: "a1".into() })?;
    if let Some((severity, words)) = plan.found {
        scene.draft("finding", words)?;
        scene.act(&Action::Choose { field: "severity".into(), option: severity.into() })?;
        scene.act(&Action::AddFinding)?;
    }
    if let Some((step, reason)) = plan.skipped {
        scene.play_to(step)?;
        scene.draft(&format!("skip:{step}"), reason)?;
        scene.act(&Action::Skip { step: step.into() })?;
    }
    match plan.broken_off {
        Some((step, reason)) => {
            scene.play_to(step)?;
            break_off(&mut scene, reason)?;
        }
        None if plan.two_units => {
            scene.play_until(|screen| screen.place == "leaving")?;
            scene.go("unit:B")?;
            scene.go("now")?;
            scene.play_on()?;
        }
        None => {
            sign(&mut scene, plan)?;
            scene.play_on()?;
        }
    }
    if plan.us_units {
        scene.act(&Action::Set { setting: "units".into(), value: "us".into() })?;
    }
    let handed = scene.field().handover(Some("https://office.lower-weir.example"))?;
    Ok(Hung { name: plan.name, handed })
}

/// The customer signs at the end of the visit.
fn sign(scene: &mut Scene, plan: &Plan) -> Result<(), SceneError> {
    let Some(name) = plan.signed else { return Ok(()) };
    scene.play_until(|screen| screen.place == "leaving")?;
    scene.act(&Action::Choose { field: "customer".into(), option: "present".into() })?;
    scene.draft("customer-name", name)?;
    scene.draft("ink:customer", DRAWN)?;
    scene.act(&Action::Sign { drawn: true })?;
    Ok(())
}

fn break_off(scene: &mut Scene, reason: &str) -> Result<(), SceneError> {
    scene.go("break-off")?;
    scene.draft("break-off", reason)?;
    scene.act(&Action::BreakOff)?;
    let turn = scene.act(&Action::Seal)?;
    for effect in turn.effects {
        if let Request::SignBytes { bytes_base64 } = &effect.request {
            let base64 = scene.technician.sign(bytes_base64);
            scene.done(&effect.id, &Outcome::Signature { base64 })?;
        }
    }
    Ok(())
}

fn assignment(plan: &Plan) -> Assignment {
    let mut assignment = assignment_of("a1", plan.pack);
    plan.language.clone_into(&mut assignment.owner.language);
    if plan.long_names {
        "The Old Customs House and Ropewalk, Apartments above the Fish Market, Second Staircase"
            .clone_into(&mut assignment.site.name);
    }
    for unit in &mut assignment.units {
        if plan.long_names {
            unit.maker = "Tarnwick-Weatherstone Thermodynamics of Upper Weir".into();
            unit.model = "Cylinder-Heat-Pump-300-Litres-With-Second-Coil".into();
        }
        if plan.history {
            unit.history = years();
        }
        if plan.covered {
            unit.terms = Some(terms());
            unit.last_service = Some("2025-05-05".into());
        }
    }
    if plan.two_units {
        let first = assignment.units.first().cloned().unwrap_or_default();
        let second = AssignedUnit { letter: "B".into(), unit: "U-2".into(), ..first };
        assignment.units.push(second);
        assignment.shares = Some(Vec::new());
    }
    assignment
}

fn terms() -> Terms {
    Terms {
        id: "five-years".into(),
        name: "Maker's five years".into(),
        interval_months: 12,
        grace_days: 30,
        first_within_months: None,
        accreditations: vec!["Refrigerant circuits, category I".into()],
        shots: vec!["coil-after".into()],
        readings: vec!["insulation".into()],
    }
}

/// Six years of a loop that slowly closes up, and of insulation that stays.
fn years() -> Vec<PastReading> {
    let dates = ["2020-05-04", "2021-05-10", "2022-05-02", "2023-05-08", "2024-05-06", "2025-05-05"];
    let of = |reading: &str, unit: &str, values: [&str; 6]| {
        dates
            .into_iter()
            .zip(values)
            .map(move |(date, value)| PastReading {
                reading: reading.to_owned(),
                value: value.to_owned(),
                unit: unit.to_owned(),
                date: date.to_owned(),
            })
            .collect::<Vec<_>>()
    };
    let flow = of("flow-found", "L/min", ["10.6", "10.4", "10.1", "9.9", "9.6", "9.3"]);
    let insulation = of("insulation", "MOhm", ["180.0", "150.0", "190.0", "120.0", "170.0", "140.0"]);
    flow.into_iter().chain(insulation).collect()
}
