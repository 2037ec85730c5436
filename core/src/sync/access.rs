//! How the office knows this device: where it joined, and a token that lasts a few hours and is renewed by a signature. The
//! core holds no key: what is to be signed is asked of the shell.

use serde::{Deserialize, Serialize};
use serde_json::{Value, json};

use super::answer::{Answer, Meaning};
use super::request::Draft;
use crate::now::Now;
use crate::record::jws::{self, JwsError};

/// What a token's JWS is, in its protected header.
const TYP: &str = "coilside-token+json";
/// For whom it is meant.
const AUDIENCE: &str = "coilside-office";
/// A token is renewed so long before its end, milliseconds.
const AHEAD_MS: i64 = 5 * 60_000;
/// A token that seems to end at once is not renewed by the clock again within this time, milliseconds: the clock may be wrong.
const AGAIN_MS: i64 = 30 * 60_000;
/// The longest token or nonce.
const SECRET_BYTES_MAX: usize = 1_024;

/// Where this device joined, and as whom.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Access {
    /// The office's address, without a slash at the end.
    pub office: String,
    /// The device's name there: a string or a number, as the office wrote it.
    pub device: Value,
    /// The token; empty before the first.
    pub token: String,
    /// Until when it holds, UTC milliseconds by the office's clock.
    pub expires_utc_ms: i64,
}

/// A fresh token.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
pub struct Token {
    /// The token.
    pub token: String,
    /// Until when it holds, UTC milliseconds by the office's clock.
    pub expires_utc_ms: i64,
}

/// What the shell is asked to sign with the device's key (ECDSA P-256 with SHA-256), for a token.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SignAsked {
    /// To be handed back with the signature.
    pub id: String,
    /// The bytes to sign.
    pub bytes: Vec<u8>,
}

/// How far a new token is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
enum Renewal {
    /// Not begun.
    #[default]
    Rests,
    /// This is to be signed.
    Sign { id: String, input: String },
    /// This goes to the office.
    Send { jws: String },
}

/// A token and how it is renewed. Forgotten at a restart, but for the access itself.
#[derive(Debug, Default)]
pub(super) struct Renewing {
    renewal: Renewal,
    /// The office turned the token down.
    wanted: bool,
    /// When the last one came.
    came: Option<Now>,
    asked: u64,
}

impl Renewing {
    /// Whether a new token must come before anything else goes out. `ahead_ms` is how far the office's clock is ahead.
    pub(super) fn is_due(&self, access: &Access, ahead_ms: i64, now: &Now) -> bool {
        let ends = access.expires_utc_ms.saturating_sub(ahead_ms).saturating_sub(now.utc_ms) < AHEAD_MS;
        let rested = self.came.as_ref().is_none_or(|came| now.since(came).longest_ms > AGAIN_MS);
        self.wanted || access.token.is_empty() || (ends && rested)
    }

    /// Nothing of it is under way.
    pub(super) fn rests(&self) -> bool {
        self.renewal == Renewal::Rests
    }

    /// The request that brings it on; none while a signature is awaited.
    pub(super) fn draft(&self, access: &Access) -> Option<(bool, Draft)> {
        match &self.renewal {
            Renewal::Rests => {
                let device = access.device.as_str().map_or_else(|| access.device.to_string(), str::to_owned);
                Some((false, Draft::get(format!("/api/v1/token?device={device}"))))
            }
            Renewal::Sign { .. } => None,
            Renewal::Send { jws } => Some((true, Draft::json("POST", "/api/v1/token", &json!({ "jws": jws })))),
        }
    }

    /// Another token is wanted, from the beginning.
    pub(super) fn want(&mut self) {
        self.wanted = true;
        self.renewal = Renewal::Rests;
    }

    /// Nothing of it goes on.
    pub(super) fn rest(&mut self) {
        self.renewal = Renewal::Rests;
    }

    /// The office gave something to sign.
    pub(super) fn nonce(&mut self, access: &Access, nonce: &str) {
        let said = json!({ "aud": AUDIENCE, "device": access.device, "nonce": nonce });
        self.asked += 1;
        self.renewal = match jws::signing_input(TYP, &said) {
            Ok(input) => Renewal::Sign { id: format!("token/{}", self.asked), input },
            Err(_) => Renewal::Rests,
        };
    }

    pub(super) fn asked(&self) -> Option<SignAsked> {
        match &self.renewal {
            Renewal::Sign { id, input } => Some(SignAsked { id: id.clone(), bytes: input.clone().into_bytes() }),
            _ => None,
        }
    }

    /// Takes a signature, base64 of DER or of raw r‖s. One that nobody asked for changes nothing.
    pub(super) fn signed(&mut self, id: &str, signature_base64: &str, public_key: &[u8]) -> Result<(), JwsError> {
        if let Renewal::Sign { id: asked, input } = &self.renewal
            && asked == id
        {
            self.renewal = Renewal::Send { jws: jws::close(input, signature_base64, public_key)? };
        }
        Ok(())
    }

    /// It has come.
    pub(super) fn came(&mut self, now: &Now) {
        *self = Renewing { came: Some(now.clone()), asked: self.asked, ..Renewing::default() };
    }
}

/// Whether a text can stand in a header, as a token does.
pub(super) fn is_plain(text: &str) -> bool {
    !text.is_empty() && text.len() <= SECRET_BYTES_MAX && text.bytes().all(|byte| byte.is_ascii_graphic())
}

/// Whether a device's name can stand in an address.
pub(super) fn is_name(device: &Value) -> bool {
    let plain = |text: &str| {
        (1..=80).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'_'))
    };
    device.as_str().map_or_else(|| device.is_u64(), plain)
}

#[derive(Deserialize)]
struct Nonce {
    nonce: String,
}

pub(super) fn nonce(answer: &Answer<'_>) -> Option<Meaning> {
    let nonce = answer.json::<Nonce>().filter(|_| answer.status == 200)?;
    is_plain(&nonce.nonce).then_some(Meaning::Nonce(nonce.nonce))
}

pub(super) fn token(answer: &Answer<'_>) -> Option<Meaning> {
    let token = answer.json::<Token>().filter(|_| answer.status == 200)?;
    is_plain(&token.token).then_some(Meaning::Token(token))
}
