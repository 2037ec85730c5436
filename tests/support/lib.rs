//! What the whole-visit and fault tests share: an invented assignment, a person's answers, a key.

pub mod gallery;
pub mod look;
pub mod scene;
pub mod texts;

use std::collections::BTreeMap;
use std::io::Cursor;
use std::path::Path;
use std::sync::{Mutex, PoisonError};

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use coilside_core::effect::PlaceFix;
use coilside_core::field::{DoorError, Field, Setup};
use coilside_core::now::Now;
use coilside_core::round::{AssignedUnit, Assignment, Owner, PastReading, Site};
use coilside_office::demo::photograph;
use coilside_office::demo::player::Answers;
use image::codecs::jpeg::JpegEncoder;
use p256::ecdsa::signature::Signer as _;
use p256::ecdsa::{Signature, SigningKey};

/// 2026-05-04 08:00 UTC, a Monday.
pub const MORNING_UTC_MS: i64 = 1_777_881_600_000;

/// The pack that most tests play.
pub const ADD_ON: &str = "add-on-water-heater";

/// A signature as a shell keeps it: two strokes and a dot.
pub const DRAWN: &str = r#"{"width":1200,"height":480,"strokes":[[[150,330],[180,180],[230,150],[250,230],[190,260],[260,330],[330,240],[350,320],[420,250],[440,330]],[[520,330],[560,140],[620,300],[680,140],[720,330],[780,270],[820,330],[900,290],[1040,320]],[[1060,330]]]}"#;

/// A technician who answers everything.
pub struct Technician {
    key: Option<SigningKey>,
    /// The pack of the unit that stands before them.
    pub pack: String,
    /// Answers that differ from the usual ones: field and answer.
    pub other: Vec<(String, String)>,
    /// Takes photographs as the demo draws them, with time and place in them; else small ones without.
    pub draws: bool,
}

impl Default for Technician {
    fn default() -> Self {
        Technician {
            key: SigningKey::from_slice(&[11; 32]).ok(),
            pack: ADD_ON.to_owned(),
            other: Vec::new(),
            draws: false,
        }
    }
}

impl Technician {
    /// One who answers some questions otherwise.
    #[must_use]
    pub fn who_says(other: &[(&str, &str)]) -> Technician {
        Technician::at(ADD_ON, other)
    }

    /// One at a unit of another kind.
    #[must_use]
    pub fn at(pack: &str, other: &[(&str, &str)]) -> Technician {
        let other = other.iter().map(|(field, answer)| ((*field).to_owned(), (*answer).to_owned())).collect();
        Technician { pack: pack.to_owned(), other, ..Technician::default() }
    }

    /// Another one, at a device with a key of its own.
    #[must_use]
    pub fn with_key(secret: u8) -> Technician {
        Technician { key: SigningKey::from_slice(&[secret; 32]).ok(), ..Technician::default() }
    }

    /// The public key, SEC1 uncompressed.
    #[must_use]
    pub fn public_key(&self) -> Vec<u8> {
        self.key.as_ref().map(|key| key.verifying_key().to_sec1_point(false).as_bytes().to_vec()).unwrap_or_default()
    }

    fn otherwise(&self, field: &str) -> Option<String> {
        self.other.iter().find(|(known, _)| known == field).map(|(_, answer)| answer.clone())
    }
}

impl Answers for Technician {
    fn typed(&self, field: &str) -> Option<String> {
        if let Some(other) = self.otherwise(field) {
            return Some(other);
        }
        let text = match field {
            "read:serial" => "AB-1042",
            "read:controller-serial" => "C-77",
            "read:air-on-found" | "read:air-on-left" => "18,5",
            "read:air-off-found" => "13.0",
            "read:air-off-left" => "11.5",
            "read:water-in-found" | "read:water-in-left" => "40.0",
            "read:water-out-found" => "43.0",
            "read:water-out-left" => "45.0",
            "read:flow-found" => "9.0",
            "read:flow-left" => "10.0",
            "read:power-found" | "read:power-left" => "980",
            "read:tank-found" => "42.0",
            "read:loop-temperature" => "24.0",
            "read:supply-ph" | "read:rinse-ph" | "read:bucket-ph" => "7.4",
            "read:acid-ph-early" => "1.2",
            "read:acid-ph-end" => "1.9",
            "read:supply-conductivity" | "read:rinse-conductivity" => "410",
            "read:supply-hardness" => "180",
            "read:supply-alkalinity" => "150",
            "read:water-use" => "180",
            // One label said in its three ways: 1 to 10, and 1 to 20 for the neutraliser.
            "read:cleaner-percent" | "read:descaler-percent" => "9.1",
            "read:cleaner-dose" | "read:descaler-dose" => "100",
            "read:neutraliser-percent" => "4.8",
            "read:neutraliser-dose" => "50",
            "read:glycol-parts" => "1.9",
            "read:insulation" => "120",
            "read:winding-temperature" => "24.0",
            "read:capacitance" => "24.7",
            "read:capacitance-label" => "25",
            "home:schedule" | "back:schedule" => "ECO",
            "away:schedule" => "BOOST",
            _ if field.starts_with("home:") || field.starts_with("back:") => "55 °C",
            _ if field.starts_with("away:") => "40 °C",
            _ => return field.strip_prefix("read:").map(|id| likely(&self.pack, id)),
        };
        Some(text.to_owned())
    }

    fn chosen(&self, field: &str) -> Option<String> {
        if let Some(other) = self.otherwise(field) {
            return Some(other);
        }
        let option = match field {
            "condition:first-service" => "no",
            "condition:coil" => "plain",
            "condition:sea" => "far",
            "condition:casing" => "metal",
            "condition:exchanger" => "stainless",
            "condition:descaler" => "citric",
            "condition:reheat" => "reached",
            _ => "",
        };
        let condition = look::pack(&self.pack).pack.condition(field.strip_prefix("condition:").unwrap_or_default())?;
        let known = |id: &str| condition.options.iter().find(|known| known.id == id);
        known(option).or(condition.options.first()).map(|option| option.id.clone())
    }

    fn photograph(&self, slot: &str, now: &Now) -> Vec<u8> {
        match self.place().filter(|_| self.draws) {
            Some(place) => drawn(slot, now, place),
            None => jpeg_of(slot),
        }
    }

    fn place(&self) -> Option<PlaceFix> {
        Some(PlaceFix { latitude_deg: 1.5, longitude_deg: 2.5, accuracy_m: 8.0, age_ms: 500 })
    }

    fn sign(&self, bytes_base64: &str) -> String {
        let bytes = STANDARD.decode(bytes_base64).unwrap_or_default();
        let signature: Option<Signature> = self.key.as_ref().map(|key| key.sign(&bytes));
        signature.map(|signature| STANDARD.encode(signature.to_der())).unwrap_or_default()
    }
}

/// What a reading of a pack would likely be: what the pack presets, or the middle of what is usual.
fn likely(pack: &str, id: &str) -> String {
    let Some(reading) = look::pack(pack).pack.reading(id) else { return "20".to_owned() };
    if let Some(preset) = &reading.preset {
        return preset.clone();
    }
    let number = |text: &String| text.parse::<f64>().ok();
    match reading.usual.as_ref().and_then(|[from, to]| number(from).zip(number(to))) {
        Some((from, to)) => format!("{:.*}", usize::from(reading.decimals), f64::midpoint(from, to)),
        None => "20".to_owned(),
    }
}

/// A photograph as the demo draws it. Drawn once a slot: it takes a while, and the first time in it does for all.
fn drawn(slot: &str, now: &Now, place: PlaceFix) -> Vec<u8> {
    static DRAWN: Mutex<BTreeMap<String, Vec<u8>>> = Mutex::new(BTreeMap::new());
    let mut drawn = DRAWN.lock().unwrap_or_else(PoisonError::into_inner);
    let draw = || photograph(slot, &["INVENTED", "MODEL ONE", "AB-1042"], 1, now, place);
    drawn.entry(slot.to_owned()).or_insert_with(draw).clone()
}

/// A small picture whose bytes depend on a name.
#[must_use]
pub fn jpeg_of(name: &str) -> Vec<u8> {
    let seed = name.bytes().fold(7_u32, |sum, byte| sum.wrapping_mul(31).wrapping_add(u32::from(byte)));
    let picture = image::RgbImage::from_fn(24, 16, |x, y| {
        let value = seed.wrapping_add(x * 3).wrapping_add(y * 5);
        image::Rgb([(value % 256) as u8, (value / 3 % 256) as u8, (value / 7 % 256) as u8])
    });
    let mut bytes = Cursor::new(Vec::new());
    // Encoding into memory does not fail; an empty file would be refused and fail the test that uses it.
    let _ = JpegEncoder::new_with_quality(&mut bytes, 90).encode_image(&picture);
    bytes.into_inner()
}

/// An assignment with one unit of the add-on kind.
#[must_use]
pub fn assignment(id: &str) -> Assignment {
    assignment_of(id, ADD_ON)
}

/// What flows in the circuit of such a unit, where the pack is for one refrigerant only.
fn flows_in(pack: &str) -> Option<&'static str> {
    match pack {
        "monobloc-r290" => Some("R290"),
        "split-r744-water-heater" => Some("R744"),
        _ => None,
    }
}

/// An assignment with one unit that is served by a pack.
#[must_use]
pub fn assignment_of(id: &str, pack: &str) -> Assignment {
    let past = PastReading {
        reading: "air-on-found".into(),
        value: "17.0".into(),
        unit: "Cel".into(),
        date: "2025-05-05".into(),
    };
    Assignment {
        id: id.to_owned(),
        due: "2026-05-04".into(),
        reason: "Yearly service".into(),
        site: Site {
            name: "Mill house".into(),
            address: "1 Mill Lane, Lower Weir".into(),
            latitude_deg: 1.5,
            longitude_deg: 2.5,
            note: "Isolator behind the shed door.".into(),
        },
        owner: Owner { name: "A. Weaver".into(), phone: "555 0100".into(), language: "en".into() },
        units: vec![AssignedUnit {
            letter: "A".into(),
            unit: "U-1".into(),
            maker: "Invented".into(),
            model: "Model One".into(),
            serial: "AB-1042".into(),
            pack: pack.into(),
            refrigerant: flows_in(pack).map(Into::into),
            history: vec![past],
            ..AssignedUnit::default()
        }],
        ..Assignment::default()
    }
}

/// A folder of its own, in memory where the system has such a place: a visit syncs hundreds of times.
///
/// # Errors
/// Where no folder can be made.
pub fn folder() -> std::io::Result<tempfile::TempDir> {
    let memory = Path::new("/dev/shm");
    if memory.is_dir() { tempfile::tempdir_in(memory) } else { tempfile::tempdir() }
}

/// Opens a door in a folder.
///
/// # Errors
/// Where it cannot be opened.
pub fn open(folder: &Path, now: &Now, technician: &Technician) -> Result<Field, DoorError> {
    Field::open(Setup {
        folder: folder.to_string_lossy().into_owned(),
        entropy: vec![42; 32],
        now: now.clone(),
        language: None,
        public_key: technician.public_key(),
    })
}
