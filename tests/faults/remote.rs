//! The core's door behind a local process that may die at any moment: every call is repeated until it is answered.

use std::cell::{Cell, RefCell};
use std::io::Read as _;
use std::time::{Duration, Instant};

use coilside_core::action::Action;
use coilside_core::effect::Outcome;
use coilside_core::now::Now;
use coilside_core::screen::Turn;
use coilside_office::demo::player::{Clock, PlayError, PlayedDoor};
use serde_json::{Value, json};

/// How long a process may stay away.
const PATIENCE: Duration = Duration::from_secs(60);

/// Between two presses, so that the visit lasts long enough for the kills to fall into it on a fast machine too.
const BETWEEN_PRESSES: Duration = Duration::from_millis(120);

/// The door of a local process.
pub(crate) struct Remote {
    address: String,
    token: String,
    agent: ureq::Agent,
    utc_ms: Cell<i64>,
    /// Called before each request goes out: the test kills there.
    pub(crate) before_call: RefCell<Box<dyn FnMut()>>,
    /// What was acknowledged: actions, and photographs by effect.
    pub(crate) acknowledged: RefCell<Vec<Action>>,
    /// How many calls had to be repeated.
    pub(crate) repeated: Cell<u32>,
}

impl Remote {
    /// The door at an address like `http://127.0.0.1:PORT/?t=TOKEN`.
    pub(crate) fn at(address: &str) -> Remote {
        let (origin, token) = address.split_once("/?t=").expect("the address holds a token");
        let config = ureq::Agent::config_builder()
            .timeout_global(Some(Duration::from_secs(10)))
            .http_status_as_error(false)
            .build();
        Remote {
            address: origin.to_owned(),
            token: token.to_owned(),
            agent: config.into(),
            utc_ms: Cell::new(0),
            before_call: RefCell::new(Box::new(|| {})),
            acknowledged: RefCell::new(Vec::new()),
            repeated: Cell::new(0),
        }
    }

    fn once(&self, method: &str, path: &str, body: &[u8], kind: &str) -> Result<(u16, Vec<u8>), String> {
        let request = ureq::http::Request::builder()
            .method(method)
            .uri(format!("{}{path}", self.address))
            .header("X-Coilside-Token", &self.token)
            .header("X-Coilside-Window", "test")
            .header("Content-Type", kind)
            .body(body)
            .map_err(|error| error.to_string())?;
        let mut answer = self.agent.run(request).map_err(|error| error.to_string())?;
        let told = answer.headers().get("x-coilside-utc-ms").and_then(|value| value.to_str().ok()?.parse().ok());
        self.utc_ms.set(told.unwrap_or(self.utc_ms.get()));
        let mut bytes = Vec::new();
        answer.body_mut().as_reader().read_to_end(&mut bytes).map_err(|error| error.to_string())?;
        Ok((answer.status().as_u16(), bytes))
    }

    /// Repeats a call under the same name until it is answered.
    fn call(&self, method: &str, path: &str, body: &[u8], kind: &str) -> Result<Vec<u8>, PlayError> {
        let since = Instant::now();
        loop {
            (self.before_call.borrow_mut())();
            match self.once(method, path, body, kind) {
                Ok((200..=299, bytes)) => return Ok(bytes),
                Ok((409, _)) => {
                    // A process that was started again does not know this window yet.
                    let _ = self.once("POST", "/door/open", br#"{"window":"test"}"#, "application/json");
                }
                Ok((status, bytes)) => {
                    let detail = String::from_utf8_lossy(&bytes).into_owned();
                    return Err(PlayError::Process(format!("{path}: {status} {detail}")));
                }
                Err(_) => std::thread::sleep(Duration::from_millis(15)),
            }
            self.repeated.set(self.repeated.get() + 1);
            assert!(since.elapsed() < PATIENCE, "the process stays away: {method} {path}");
        }
    }

    /// Lets the rehearsal's clock leap once. A process that was killed after it leapt and before it answered has leapt, and
    /// twice as long is another visit: one that somebody went away from.
    fn leap(&self, ms: i64) -> Result<(), PlayError> {
        let clock = || {
            self.call("GET", "/door/screen", b"", "text/plain")?;
            Ok::<i64, PlayError>(self.utc_ms.get())
        };
        let until = clock()? + ms;
        let body = json!({ "window": "test", "ms": ms }).to_string();
        while clock()? < until {
            let _ = self.once("POST", "/door/leap", body.as_bytes(), "application/json");
        }
        Ok(())
    }

    fn turn(&self, path: &str, body: &Value) -> Result<Turn, PlayError> {
        let bytes = self.call("POST", path, body.to_string().as_bytes(), "application/json")?;
        serde_json::from_slice(&bytes).map_err(|error| PlayError::Process(error.to_string()))
    }
}

impl PlayedDoor for Remote {
    fn opened(&self, _: &Now) -> Result<Turn, PlayError> {
        self.turn("/door/open", &json!({ "window": "test" }))
    }

    fn screen(&self, _: &Now) -> Result<Turn, PlayError> {
        let bytes = self.call("GET", "/door/screen", b"", "text/plain")?;
        serde_json::from_slice(&bytes).map_err(|error| PlayError::Process(error.to_string()))
    }

    fn act(&self, action_id: &str, action: &Action, _: &Now) -> Result<Turn, PlayError> {
        let turn = self.turn("/door/act", &json!({ "window": "test", "action_id": action_id, "action": action }))?;
        self.acknowledged.borrow_mut().push(action.clone());
        // A kill may have come between the action and this answer: what it asked for is handed out at opening.
        let mut turn = turn;
        turn.effects = self.opened(&Now { utc_ms: 0, offset_min: 0, mono_ms: 0, mono_epoch: String::new() })?.effects;
        Ok(turn)
    }

    fn done(&self, effect_id: &str, outcome: &Outcome, _: &Now) -> Result<Turn, PlayError> {
        self.turn("/door/done", &json!({ "window": "test", "effect_id": effect_id, "outcome": outcome }))
    }

    fn put_photograph(&self, effect_id: &str, bytes: &[u8]) -> Result<(), PlayError> {
        let name = effect_id.replace('/', "_");
        self.call("PUT", &format!("/door/incoming/{name}"), bytes, "application/octet-stream").map(drop)
    }

    fn utc_ms(&self, _: &Clock) -> i64 {
        self.utc_ms.get()
    }

    fn let_pass(&self, _: &mut Clock, ms: i64) {
        // Only waiting times are leapt over; the seconds between two presses are the real ones.
        if ms > 10_000 {
            self.leap(ms).expect("the rehearsal's clock leaps");
        } else {
            std::thread::sleep(BETWEEN_PRESSES);
        }
    }
}
