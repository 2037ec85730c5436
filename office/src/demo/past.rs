//! One visit of the demo's history: played through the core's own door, then delivered.

use std::path::Path;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use coilside_core::action::Action;
use coilside_core::effect::PlaceFix;
use coilside_core::field::{Field, Setup};
use coilside_core::now::Now;
use coilside_core::visit::decide::{INK_FIELD, NAME_FIELD};
use p256::ecdsa::signature::Signer as _;
use p256::ecdsa::{Signature, SigningKey};

use super::player::{Answers, Clock, Player};
use super::scenario::{Past, fix};
use super::{DemoError, camera, deliver, draw};
use crate::office::Office;

const DAY_MS: i64 = 86_400_000;

/// Plays a visit of the past in a folder and delivers it to the office.
pub(super) async fn play(
    office: &Office,
    folder: &Path,
    past: &Past,
    now_utc_ms: i64,
    token: &str,
) -> Result<(), DemoError> {
    let mut random = [0_u8; 64];
    getrandom::fill(&mut random).map_err(|error| DemoError::Setup(error.to_string()))?;
    let (entropy, seed) = random.split_at(32);
    let key = SigningKey::from_slice(seed).map_err(|error| DemoError::Setup(error.to_string()))?;
    // Nine in the morning of that day.
    let start = (now_utc_ms - past.days_ago * DAY_MS).div_euclid(DAY_MS) * DAY_MS + 9 * 3_600_000;
    let mut clock = Clock::at(start, 0);
    let field = Field::open(Setup {
        folder: folder.to_string_lossy().into_owned(),
        entropy: entropy.to_vec(),
        now: clock.now(),
        language: Some(past.assignment.owner.language.clone()),
        public_key: key.verifying_key().to_sec1_point(false).as_bytes().to_vec(),
    })?;
    field.assigned(std::slice::from_ref(&past.assignment))?;
    let technician = PastTechnician { past, key };
    {
        let mut player = Player::new(&field, clock.clone(), &technician, "demo")?;
        player.act(&Action::StartVisit { assignment: past.assignment.id.clone() })?;
        if let Some((severity, words)) = past.finding {
            player.act(&Action::Draft { field: "finding".into(), text: words.into() })?;
            player.act(&Action::Choose { field: "severity".into(), option: severity.into() })?;
            player.act(&Action::AddFinding)?;
        }
        if let Some((name, strokes)) = past.signed {
            while player.screen().place != "leaving" {
                player.go_on()?;
            }
            player.act(&Action::Choose { field: "customer".into(), option: "present".into() })?;
            player.act(&Action::Draft { field: NAME_FIELD.into(), text: name.into() })?;
            player.act(&Action::Draft { field: INK_FIELD.into(), text: strokes.into() })?;
            player.act(&Action::Sign { drawn: true })?;
        }
        player.play()?;
        clock = player.clock.clone();
    }
    deliver(&field, office, &mut clock, token).await?;
    Ok(())
}

struct PastTechnician<'a> {
    past: &'a Past,
    key: SigningKey,
}

impl Answers for PastTechnician<'_> {
    fn typed(&self, field: &str) -> Option<String> {
        self.past.answers.iter().find(|(known, _)| *known == field).map(|(_, text)| (*text).to_owned())
    }

    fn chosen(&self, field: &str) -> Option<String> {
        self.typed(field)
    }

    fn photograph(&self, slot: &str, now: &Now) -> Vec<u8> {
        let unit = self.past.assignment.units.first();
        let (maker, model, serial) =
            unit.map(|unit| (unit.maker.as_str(), unit.model.as_str(), unit.serial.as_str())).unwrap_or_default();
        let home = self.typed("home:set-point").unwrap_or_default();
        let lines: Vec<&str> = match slot {
            "settings-before" | "settings-after" | "display-left" => vec!["HOT WATER", "SET", &home],
            "tag" => vec!["DO NOT", "SWITCH ON", "I. FALLOW"],
            _ => vec![maker, model, serial, "230 V  50 Hz", "R290 0.15 kg"],
        };
        camera::shoot(&draw::photograph(slot, &lines, self.past.year), now, fix(&self.past.assignment.site))
    }

    fn place(&self) -> Option<PlaceFix> {
        Some(fix(&self.past.assignment.site))
    }

    fn sign(&self, bytes_base64: &str) -> String {
        let bytes = STANDARD.decode(bytes_base64).unwrap_or_default();
        let signature: Signature = self.key.sign(&bytes);
        STANDARD.encode(signature.to_bytes())
    }
}
