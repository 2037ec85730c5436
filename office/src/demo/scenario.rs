//! The invented village of the demo. No person, maker, brand or place in it is real.

use coilside_core::effect::PlaceFix;
use coilside_core::round::{
    Accreditation, AssignedUnit, Assignment, OwnInstrument, Owner, PastReading, Site, Technician,
};

/// Whom owners call.
pub(super) const CONTACT: &str = "Warm Water Round, Lower Weir · 555 0142";

/// A visit of the past: its assignment, when, and what was read.
pub(super) struct Past {
    /// What was assigned then.
    pub(super) assignment: Assignment,
    /// How many days before today.
    pub(super) days_ago: i64,
    /// Answers and readings: field and text.
    pub(super) answers: &'static [(&'static str, &'static str)],
    /// The picture's year, so that each year's pictures differ.
    pub(super) year: u32,
    /// A finding: severity and words.
    pub(super) finding: Option<(&'static str, &'static str)>,
    /// The customer signed: name and strokes, as a shell keeps them.
    pub(super) signed: Option<(&'static str, &'static str)>,
}

/// A scrawl of nobody's.
const SCRAWL: &str = r#"{"width":1200,"height":480,"strokes":[[[150,330],[165,250],[185,185],[210,150],[235,155],[250,190],[245,235],[215,258],[185,262],[225,275],[262,318],[285,330],[305,300],[325,252],[338,240],[342,272],[350,318],[372,320],[400,268],[420,250],[428,290],[442,330]],[[520,330],[535,240],[555,150],[570,140],[590,220],[615,305],[630,300],[650,215],[678,140],[690,170],[705,270],[722,330],[750,300],[780,268],[800,290],[820,330],[860,310],[900,290],[960,300],[1040,322]],[[1062,330]]]}"#;

const MILL: (&str, &str, f64, f64, &str) =
    ("Mill House", "1 Mill Lane, Lower Weir", 1.234_5, 2.345_6, "Isolator behind the shed door. The dog is friendly.");
const HARBOUR: (&str, &str, f64, f64, &str) = (
    "Harbour Guest House",
    "7 Quay Steps, Lower Weir",
    1.238_1,
    2.351_2,
    "Ring at the kitchen. Unit on the flat roof: take the ladder.",
);

fn site(of: (&str, &str, f64, f64, &str)) -> Site {
    let (name, address, latitude_deg, longitude_deg, note) = of;
    Site { name: name.into(), address: address.into(), latitude_deg, longitude_deg, note: note.into() }
}

fn unit(name: &str, maker: &str, model: &str, serial: &str, history: Vec<PastReading>) -> AssignedUnit {
    AssignedUnit {
        letter: "A".into(),
        unit: name.into(),
        maker: maker.into(),
        model: model.into(),
        serial: serial.into(),
        pack: "add-on-water-heater".into(),
        history,
        ..AssignedUnit::default()
    }
}

fn mill(history: Vec<PastReading>) -> AssignedUnit {
    unit("LW-0001", "Tarnwick", "Add-On 9", "TW9-20417", history)
}

fn mill_owner() -> Owner {
    Owner { name: "Edda Marsh".into(), phone: "555 0107".into(), language: "en".into() }
}

fn assignment(id: &str, due: &str, reason: &str, site: Site, owner: Owner, unit: AssignedUnit) -> Assignment {
    let (id, due, reason) = (id.into(), due.into(), reason.into());
    Assignment { id, due, reason, site, owner, units: vec![unit], ..Assignment::default() }
}

/// The visit that is ready to do. `due` is today, `last` the day of the last visit, ISO 8601.
pub(super) fn ready(due: &str, last: &str) -> Assignment {
    let past = |reading: &str, value: &str, unit: &str| PastReading {
        reading: reading.into(),
        value: value.into(),
        unit: unit.into(),
        date: last.into(),
    };
    let history = vec![
        past("air-on-found", "17.5", "Cel"),
        past("air-off-found", "12.0", "Cel"),
        past("water-in-found", "38.5", "Cel"),
        past("water-out-found", "42.5", "Cel"),
        past("flow-found", "9.5", "L/min"),
        past("power-found", "940", "W"),
        past("insulation", "180.0", "MOhm"),
        past("supply-ph", "7.4", "[pH]"),
    ];
    let unit = AssignedUnit { refrigerant: Some("R290".into()), ..mill(history) };
    assignment("LW-0001-next", due, "Yearly service", site(MILL), mill_owner(), unit)
}

/// The visits in history, the oldest first. `day` gives the ISO day so many days ago.
pub(super) fn history(day: impl Fn(i64) -> String) -> Vec<Past> {
    let harbour_owner = Owner { name: "Ruy Calder".into(), phone: "555 0119".into(), language: "es".into() };
    let harbour = unit("LW-0002", "Ovelle", "Roofbox 12", "OV-88-3120", Vec::new());
    let (mill_days, harbour_days) = (371, 63);
    let mill_past =
        assignment("LW-0001-last", &day(mill_days), "Yearly service", site(MILL), mill_owner(), mill(Vec::new()));
    vec![
        Past {
            assignment: mill_past,
            days_ago: mill_days,
            answers: MILL_ANSWERS,
            year: 1,
            finding: Some(("note", "Two fins bent at the lower left corner, combed straight.")),
            signed: Some(("Edda Marsh", SCRAWL)),
        },
        Past {
            assignment: assignment(
                "LW-0002-first",
                &day(harbour_days),
                "First service",
                site(HARBOUR),
                harbour_owner,
                harbour,
            ),
            days_ago: harbour_days,
            answers: HARBOUR_ANSWERS,
            year: 2,
            finding: Some((
                "soon",
                "Abrazadera de la tubería de desagüe floja. Apretada; cambiarla en la próxima visita.",
            )),
            signed: None,
        },
    ]
}

/// Who does the round, with their own instruments. `day` gives the ISO day so many days ago. The pH meter's calibration
/// lapsed a month ago.
pub(super) fn technician(day: impl Fn(i64) -> String) -> Technician {
    let coming = |days: i64| day(-days);
    let own = |kind: &str, name: &str, serial: &str, error_limit: &str, until: String| OwnInstrument {
        kind: kind.into(),
        name: name.into(),
        serial: serial.into(),
        error_limit: error_limit.into(),
        calibrated_until: until,
    };
    Technician {
        name: "Ines Fallow".into(),
        instruments: vec![
            own("pipe-thermometer", "Clamp thermometer, yellow", "CT-1107", "0.5", coming(200)),
            own("air-thermometer", "Air probe", "AP-0312", "0.3", coming(200)),
            own("power-meter", "Power clamp", "PC-2290", "20", coming(90)),
            own("ph-meter", "Pocket pH meter", "PH-0458", "0.1", day(30)),
        ],
        accreditations: vec![
            Accreditation {
                name: "Refrigerant circuits, category I".into(),
                number: "RC-40217".into(),
                valid_until: coming(400),
            },
            Accreditation {
                name: "Electrical work on water heaters".into(),
                number: "EW-1183".into(),
                valid_until: coming(25),
            },
        ],
    }
}

/// Where a site of the demo lies, as a phone would measure it.
pub(super) fn fix(site: &Site) -> PlaceFix {
    PlaceFix {
        latitude_deg: site.latitude_deg + 0.000_03,
        longitude_deg: site.longitude_deg - 0.000_02,
        accuracy_m: 6.0,
        age_ms: 800,
    }
}

/// What the technician read at the mill house. Made up, and plausible.
const MILL_ANSWERS: &[(&str, &str)] = &[
    ("condition:first-service", "no"),
    ("condition:coil", "plain"),
    ("condition:sea", "far"),
    ("condition:casing", "metal"),
    ("condition:exchanger", "stainless"),
    ("condition:descaler", "citric"),
    ("condition:certificate", "no"),
    ("condition:reheat", "reached"),
    ("read:serial", "TW9-20417"),
    ("read:controller-serial", "TC-5512"),
    ("read:air-on-found", "17.5"),
    ("read:air-off-found", "12.0"),
    ("read:water-in-found", "38.5"),
    ("read:water-out-found", "42.5"),
    ("read:flow-found", "9.5"),
    ("read:power-found", "940"),
    ("read:tank-found", "41.0"),
    ("read:loop-temperature", "22.0"),
    ("read:supply-ph", "7.4"),
    ("read:supply-conductivity", "480"),
    ("read:supply-hardness", "210"),
    ("read:supply-alkalinity", "185"),
    ("read:water-use", "160"),
    ("read:rinse-conductivity", "486"),
    ("read:acid-ph-early", "1.3"),
    ("read:acid-ph-end", "2.0"),
    ("read:bucket-ph", "7.6"),
    ("read:rinse-ph", "7.4"),
    ("read:insulation", "180.0"),
    ("read:air-on-left", "18.0"),
    ("read:air-off-left", "10.5"),
    ("read:water-in-left", "39.0"),
    ("read:water-out-left", "45.0"),
    ("read:flow-left", "10.5"),
    ("read:power-left", "960"),
    ("read:tank-left", "44.0"),
    ("read:tap-hot", "46.5"),
    ("home:set-point", "55 °C"),
    ("away:set-point", "40 °C"),
    ("back:set-point", "55 °C"),
    ("home:schedule", "06:00–22:00"),
    ("away:schedule", "always on"),
    ("back:schedule", "06:00–22:00"),
];

/// What the technician read at the guest house.
const HARBOUR_ANSWERS: &[(&str, &str)] = &[
    ("condition:first-service", "yes"),
    ("condition:coil", "coated"),
    ("condition:sea", "near"),
    ("condition:casing", "plastic"),
    ("condition:exchanger", "no-acid"),
    ("condition:certificate", "no"),
    ("condition:reheat", "pending"),
    ("read:serial", "OV-88-3120"),
    ("read:controller-serial", "OC-0912"),
    ("read:air-on-found", "24.0"),
    ("read:air-off-found", "18.5"),
    ("read:water-in-found", "44.0"),
    ("read:water-out-found", "48.5"),
    ("read:flow-found", "12.0"),
    ("read:power-found", "1310"),
    ("read:tank-found", "46.0"),
    ("read:loop-temperature", "26.0"),
    ("read:supply-ph", "7.8"),
    ("read:supply-conductivity", "620"),
    ("read:supply-hardness", "260"),
    ("read:supply-alkalinity", "210"),
    ("read:water-use", "900"),
    ("read:rinse-conductivity", "624"),
    ("read:rinse-ph", "7.8"),
    ("read:insulation", "95.0"),
    ("read:air-on-left", "24.5"),
    ("read:air-off-left", "18.0"),
    ("read:water-in-left", "44.5"),
    ("read:water-out-left", "49.5"),
    ("read:flow-left", "12.0"),
    ("read:power-left", "1290"),
    ("read:tank-left", "47.5"),
    ("read:tap-hot", "48.0"),
    ("home:set-point", "58 °C"),
    ("away:set-point", "40 °C"),
    ("back:set-point", "58 °C"),
    ("home:schedule", "00:00–24:00"),
    ("away:schedule", "always on"),
    ("back:schedule", "00:00–24:00"),
];
