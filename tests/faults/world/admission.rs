//! Whom the model office lets in: codes, devices, tokens that end and tokens for scripts that do not.

use std::collections::BTreeMap;

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

use super::office::{Done, ModelOffice, No};
use super::parts::Reply;

const CODE_MS: i64 = 10 * 60_000;
const NONCE_MS: i64 = 5 * 60_000;
const TOKEN_MS: i64 = 12 * 3_600_000;
const WRONG_MOST: usize = 10;
const WRONG_MS: i64 = 60_000;

#[derive(Clone, Default)]
struct Device {
    key: Option<String>,
    revoked: bool,
}

/// What the office knows of devices.
#[derive(Clone, Default)]
pub(super) struct Admission {
    devices: BTreeMap<String, Device>,
    /// Whose a token is, and when it ends.
    tokens: BTreeMap<String, (String, i64)>,
    codes: BTreeMap<String, i64>,
    nonces: BTreeMap<String, (String, i64)>,
    wrong: Vec<i64>,
    number: u64,
}

/// What a compact JWS says. Its signature is not looked at here: the engine looked at its own before.
pub(super) fn said<T: DeserializeOwned>(jws: &str) -> Option<T> {
    serde_json::from_slice(&URL_SAFE_NO_PAD.decode(jws.split('.').nth(1)?).ok()?).ok()
}

impl Admission {
    pub(super) fn add_code(&mut self, code: &str, now_ms: i64) {
        self.codes.insert(code.to_owned(), now_ms);
    }

    /// A device with a token that never ends.
    pub(super) fn add_script(&mut self, token: &str) {
        self.number += 1;
        let device = self.number.to_string();
        self.devices.insert(device.clone(), Device::default());
        self.tokens.insert(token.to_owned(), (device, i64::MAX));
    }

    pub(super) fn revoke(&mut self, key: &str) {
        for device in self.devices.values_mut().filter(|device| device.key.as_deref() == Some(key)) {
            device.revoked = true;
        }
    }

    pub(super) fn key_of(&self, device: &str) -> Option<&String> {
        self.devices.get(device)?.key.as_ref()
    }

    /// The device that asks.
    pub(super) fn caller(&self, authorization: Option<&str>, now_ms: i64) -> Result<String, No> {
        let token = authorization.and_then(|text| text.strip_prefix("Bearer ")).unwrap_or_default();
        let known = self.tokens.get(token).filter(|(_, ends)| *ends > now_ms);
        match known.and_then(|(device, _)| Some((device, self.devices.get(device)?))) {
            None => Err(Reply::problem(401, "token", Value::Null).into()),
            Some((_, Device { revoked: true, .. })) => Err(Reply::problem(403, "revoked", Value::Null).into()),
            Some((device, _)) => Ok(device.clone()),
        }
    }

    fn give_token(&mut self, device: &str, now_ms: i64) -> (String, i64) {
        self.number += 1;
        let (token, ends) = (format!("token-{}", self.number), now_ms + TOKEN_MS);
        self.tokens.insert(token.clone(), (device.to_owned(), ends));
        (token, ends)
    }
}

#[derive(Deserialize)]
struct JoinIn {
    code: String,
    public_key: String,
}

#[derive(Deserialize)]
struct DeviceIn {
    public_key: String,
}

#[derive(Deserialize)]
struct TokenIn {
    jws: String,
}

#[derive(Deserialize)]
struct Proof {
    device: String,
    nonce: String,
}

fn read<T: DeserializeOwned>(body: &[u8]) -> Result<T, No> {
    serde_json::from_slice(body).map_err(|_| Reply::problem(400, "json", Value::Null).into())
}

impl ModelOffice {
    pub(super) fn join(&mut self, body: &[u8], now_ms: i64) -> Done {
        let sent: JoinIn = read(body)?;
        let admission = &self.tables.admission;
        let wrong: Vec<i64> = admission.wrong.iter().copied().filter(|at| *at > now_ms - WRONG_MS).collect();
        if let Some(oldest) = wrong.len().checked_sub(WRONG_MOST).and_then(|at| wrong.get(at)) {
            let after_s = (oldest + WRONG_MS - now_ms).clamp(0, WRONG_MS) / 1_000 + 1;
            return Ok(Reply::problem(429, "join-code", Value::Null).with("Retry-After", after_s));
        }
        if admission.codes.get(&sent.code).is_none_or(|made| *made <= now_ms - CODE_MS) {
            self.commit(|tables| tables.admission.wrong.push(now_ms))?;
            return Ok(Reply::problem(403, "join-code", Value::Null));
        }
        let mut told = Value::Null;
        self.commit(|tables| {
            let admission = &mut tables.admission;
            admission.codes.remove(&sent.code);
            let known = admission.devices.iter().find(|(_, known)| known.key.as_ref() == Some(&sent.public_key));
            let device = known.map(|(device, _)| device.clone()).unwrap_or_else(|| {
                admission.number += 1;
                admission.number.to_string()
            });
            admission.tokens.retain(|_, (whose, _)| *whose != device);
            admission.devices.insert(device.clone(), Device { key: Some(sent.public_key), revoked: false });
            let (token, ends) = admission.give_token(&device, now_ms);
            told = json!({ "device": device, "token": token, "expires_utc_ms": ends });
        })?;
        Ok(Reply::json(201, &told))
    }

    pub(super) fn nonce(&mut self, device: &str, now_ms: i64) -> Done {
        let unknown = || Reply::problem(401, "token", Value::Null);
        match self.tables.admission.devices.get(device) {
            None => return Ok(unknown()),
            Some(Device { revoked: true, .. }) => return Ok(Reply::problem(403, "revoked", Value::Null)),
            Some(Device { key: None, .. }) => return Ok(unknown()),
            Some(_) => {}
        }
        let mut nonce = String::new();
        self.note(|tables| {
            tables.admission.number += 1;
            nonce = format!("nonce-{}", tables.admission.number);
            tables.admission.nonces.insert(nonce.clone(), (device.to_owned(), now_ms + NONCE_MS));
        })?;
        Ok(Reply::json(200, &json!({ "nonce": nonce, "expires_utc_ms": now_ms + NONCE_MS })))
    }

    pub(super) fn token(&mut self, body: &[u8], now_ms: i64) -> Done {
        let sent: TokenIn = read(body)?;
        let Some(proof) = said::<Proof>(&sent.jws) else { return Ok(Reply::problem(422, "proof", Value::Null)) };
        let unknown = Reply::problem(401, "token", Value::Null);
        let admission = &self.tables.admission;
        match admission.devices.get(&proof.device) {
            None => return Ok(unknown),
            Some(Device { revoked: true, .. }) => return Ok(Reply::problem(403, "revoked", Value::Null)),
            Some(_) => {}
        }
        let holds = admission.nonces.get(&proof.nonce);
        if holds.is_none_or(|(whose, ends)| *whose != proof.device || *ends <= now_ms) {
            return Ok(unknown);
        }
        let mut told = Value::Null;
        self.commit(|tables| {
            tables.admission.nonces.remove(&proof.nonce);
            let (token, ends) = tables.admission.give_token(&proof.device, now_ms);
            told = json!({ "token": token, "expires_utc_ms": ends });
        })?;
        Ok(Reply::json(200, &told))
    }

    pub(super) fn register(&mut self, device: &str, body: &[u8]) -> Done {
        let sent: DeviceIn = read(body)?;
        match self.tables.admission.key_of(device) {
            Some(key) if *key != sent.public_key => return Ok(Reply::problem(409, "other-key", Value::Null)),
            Some(_) => {}
            None => self.commit(|tables| {
                if let Some(device) = tables.admission.devices.get_mut(device) {
                    device.key = Some(sent.public_key);
                }
            })?,
        }
        Ok(Reply::json(200, &json!({ "known": true })))
    }
}
