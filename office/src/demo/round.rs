//! The day of the demo: five visits in the village. One is past due within its days of grace, one is a first service, one
//! has a time agreed, one stands without terms and with questions open, and all have what past visits said.

use coilside_core::round::{Appointment, AssignedUnit, Assignment, OpenFinding, PastReading, Site, Spot, Terms};
use coilside_core::visit::event::Severity;

use super::scenario;

/// The packs of the five units, in the order below.
const PACKS: [&str; 5] = ["add-on-water-heater"; 5];
/// Where the van stands in the morning: the yard of the firm.
const YARD: Spot = Spot { latitude_deg: 1.228_0, longitude_deg: 2.338_0 };
/// Minutes on site of earlier visits in the village. Made up, and plausible.
const PAST_MINUTES: [u32; 6] = [148, 131, 165, 139, 172, 144];
/// Days ago of the five visits to the mill house: four years.
const MILL_DAYS_AGO: [i64; 5] = [1831, 1466, 1101, 736, 371];

/// The visits of today. `day` gives the ISO day so many days ago (below zero: ahead), `minute` is the minute since midnight.
pub(super) fn due(day: impl Fn(i64) -> String, minute: u32) -> Vec<Assignment> {
    let [mill, bakery, school, inn, cottage] = PACKS;
    vec![
        at_mill(&day, mill),
        Assignment {
            planned: Some(day(0)),
            ..visit(
                "LW-0003-first",
                &day(-22),
                "First service",
                (
                    "Weir Bakery",
                    "3 Oven Row, Lower Weir",
                    1.241_7,
                    2.349_0,
                    "Unit behind the flour store. Hot pipes at knee height.",
                ),
                ("Tomas Reed", "555 0123"),
                AssignedUnit {
                    in_service: Some(day(160)),
                    known: known(&[("coil", "coated"), ("exchanger", "stainless")]),
                    ..unit("LW-0003", "Ovelle", "Roofbox 12", "OV-90-0044", bakery)
                },
            )
        },
        Assignment {
            appointment: Some(agreed(&day(0), minute)),
            ..visit(
                "LW-0004-next",
                &day(-15),
                "Yearly service",
                (
                    "Weir School",
                    "12 Chapel Hill, Lower Weir",
                    1.262_4,
                    2.331_5,
                    "Ask for the caretaker. Not during the break.",
                ),
                ("Lena Holt", "555 0131"),
                AssignedUnit {
                    in_service: Some(day(1080)),
                    last_service: Some(day(350)),
                    known: known(&[("coil", "plain"), ("exchanger", "copper")]),
                    ..unit("LW-0004", "Tarnwick", "Add-On 14", "TW14-3381", school)
                },
            )
        },
        visit(
            "LW-0005-next",
            &day(14),
            "Yearly service",
            ("Ferry Inn", "1 Ferry Road, Upper Weir", 1.279_3, 2.372_2, "Steep ladder to the roof. Take two slings."),
            ("Ana Duarte", "555 0148"),
            AssignedUnit {
                in_service: Some(day(800)),
                last_service: Some(day(379)),
                known: known(&[("coil", "plain"), ("exchanger", "no-acid")]),
                findings: vec![OpenFinding {
                    severity: Severity::Soon,
                    text: "Insulation of the hot pipe torn over half a metre.".into(),
                    date: day(379),
                }],
                ..unit("LW-0005", "Ovelle", "Roofbox 9", "OV-71-5520", inn)
            },
        ),
        visit(
            "LW-0006-next",
            &day(0),
            "Weak hot water",
            ("Quay Cottage", "2 Quay Steps, Lower Weir", 1.238_9, 2.352_6, ""),
            ("Pia Lund", "555 0155"),
            AssignedUnit { terms: None, ..unit("LW-0006", "Tarnwick", "Add-On 9", "TW9-18802", cottage) },
        ),
    ]
}

/// The mill house, whose story the demo tells: four years of it.
fn at_mill(day: &impl Fn(i64) -> String, pack: &str) -> Assignment {
    let last = day(371);
    let mut assignment = scenario::ready(&day(6), &last);
    assignment.start = Some(YARD);
    for unit in &mut assignment.units {
        unit.history = mill_history(day);
        unit.pack = pack.into();
        unit.in_service = Some(day(1990));
        unit.last_service = Some(last.clone());
        unit.known = known(&[("coil", "plain"), ("sea", "far"), ("casing", "metal"), ("exchanger", "stainless")]);
        unit.terms = Some(terms());
        unit.past_minutes = PAST_MINUTES.to_vec();
        unit.findings = vec![OpenFinding {
            severity: Severity::Note,
            text: "Two fins bent at the lower left corner, combed straight.".into(),
            date: last.clone(),
        }];
    }
    assignment
}

/// What five visits read at the mill house, the oldest first. The flow falls and the insulation creeps down.
fn mill_history(day: &impl Fn(i64) -> String) -> Vec<PastReading> {
    let rows: [(&str, &str, [&str; 5]); 14] = [
        ("air-on-found", "Cel", ["16.0", "18.5", "15.5", "19.0", "17.5"]),
        ("air-off-found", "Cel", ["10.0", "12.5", "9.5", "13.0", "12.0"]),
        ("water-in-found", "Cel", ["38.0", "39.5", "38.5", "39.0", "38.5"]),
        ("water-out-found", "Cel", ["42.8", "44.1", "42.9", "43.2", "42.5"]),
        ("flow-found", "L/min", ["11.4", "11.0", "10.6", "10.1", "9.5"]),
        ("power-found", "W", ["925", "955", "930", "960", "940"]),
        ("insulation", "MOhm", ["310.0", "265.0", "240.0", "215.0", "180.0"]),
        ("supply-ph", "[pH]", ["7.3", "7.5", "7.4", "7.4", "7.4"]),
        ("supply-conductivity", "uS/cm", ["470", "495", "460", "488", "480"]),
        ("supply-hardness", "mg/L", ["205", "215", "200", "212", "210"]),
        ("supply-alkalinity", "mg/L", ["180", "190", "178", "188", "185"]),
        ("water-use", "L", ["150", "150", "160", "160", "160"]),
        ("water-out-left", "Cel", ["45.2", "46.0", "44.8", "45.6", "45.0"]),
        ("flow-left", "L/min", ["11.5", "11.2", "11.0", "10.9", "10.5"]),
    ];
    MILL_DAYS_AGO
        .iter()
        .enumerate()
        .flat_map(|(year, days_ago)| {
            let date = day(*days_ago);
            rows.iter().filter_map(move |(reading, unit, values)| {
                Some(PastReading {
                    reading: (*reading).into(),
                    value: (*values.get(year)?).into(),
                    unit: (*unit).into(),
                    date: date.clone(),
                })
            })
        })
        .collect()
}

/// Invented terms of cover.
fn terms() -> Terms {
    Terms {
        id: "weir-five".into(),
        name: "Weir Five Years".into(),
        interval_months: 12,
        grace_days: 30,
        first_within_months: Some(6),
        accreditations: vec!["Electrical work on water heaters".into()],
        shots: vec!["nameplate".into(), "coil-before".into(), "coil-after".into()],
        readings: vec!["insulation".into(), "tap-hot".into()],
    }
}

/// Half an hour on the half hour, some two and a half hours from now, within the day.
fn agreed(day: &str, minute: u32) -> Appointment {
    let from = ((minute.max(8 * 60) + 150).div_ceil(30) * 30).min(23 * 60);
    let clock = |minute: u32| format!("{:02}:{:02}", minute / 60, minute % 60);
    Appointment { day: day.into(), from: clock(from), until: clock(from + 30) }
}

fn unit(name: &str, maker: &str, model: &str, serial: &str, pack: &str) -> AssignedUnit {
    AssignedUnit {
        letter: "A".into(),
        unit: name.into(),
        maker: maker.into(),
        model: model.into(),
        serial: serial.into(),
        pack: pack.into(),
        terms: Some(terms()),
        past_minutes: PAST_MINUTES.to_vec(),
        ..AssignedUnit::default()
    }
}

fn known(answers: &[(&str, &str)]) -> std::collections::BTreeMap<String, String> {
    answers.iter().map(|(condition, answer)| ((*condition).to_owned(), (*answer).to_owned())).collect()
}

fn visit(
    id: &str,
    due: &str,
    reason: &str,
    site: (&str, &str, f64, f64, &str),
    owner: (&str, &str),
    unit: AssignedUnit,
) -> Assignment {
    let (name, address, latitude_deg, longitude_deg, note) = site;
    let mut assignment = scenario::ready(due, due);
    assignment.id = id.into();
    assignment.reason = reason.into();
    assignment.site =
        Site { name: name.into(), address: address.into(), latitude_deg, longitude_deg, note: note.into() };
    (assignment.owner.name, assignment.owner.phone) = (owner.0.into(), owner.1.into());
    assignment.start = Some(YARD);
    assignment.units = vec![unit];
    assignment
}
