//! A core for the tests of this crate that remembers what it was asked, and a caller that goes through the whole router.

use std::{
    collections::BTreeMap,
    path::{Path, PathBuf},
    sync::{Arc, Mutex},
};

use axum::{
    body::Body,
    http::{HeaderMap, Method, Request, StatusCode, header},
};
use coilside_core::{
    action::Action,
    effect::{Effect, Outcome, Request as Asked},
    field::Handover,
    now::Now,
    procedure::read::PackFolder,
    screen::{Live, Screen, Tone, Turn},
    sync::{Network, SendRequest, SignAsked},
};
use serde_json::Value;
use tower::ServiceExt;

use crate::{
    address::Token,
    clock::Clock,
    core_door::CoreDoor,
    door::{Shell, router},
    key::DeviceKey,
    problem::Problem,
    summary::Summaries,
};

pub(crate) const TOKEN: &str = "a0a1a2a3a4a5a6a7";
/// The secret in the addresses of summaries.
pub(crate) const SUMMARY: &str = "c0c1c2c3c4c5c6c7";
pub(crate) const AUTHORITY: &str = "127.0.0.1:4000";

pub(crate) type Answered = (String, u16, Vec<u8>, Vec<(String, String)>);

pub(crate) struct StubCore {
    folder: PathBuf,
    acted: Mutex<Vec<String>>,
    outcomes: Mutex<Vec<(String, Outcome)>>,
    charge: Mutex<Option<u8>>,
    pub(crate) to_send: Mutex<Vec<SendRequest>>,
    pub(crate) network: Mutex<Option<Network>>,
    pub(crate) to_sign: Mutex<Option<SignAsked>>,
    pub(crate) signed: Mutex<Option<(String, String)>>,
    pub(crate) answers: Mutex<Vec<Answered>>,
}

impl StubCore {
    pub(crate) fn new(folder: &Path) -> Self {
        std::fs::create_dir_all(folder.join("incoming")).unwrap();
        let (acted, outcomes, charge, to_send, answers) = Default::default();
        let (network, to_sign, signed) = Default::default();
        Self { folder: folder.into(), acted, outcomes, charge, to_send, network, to_sign, signed, answers }
    }
}

fn turn(title: &str, effects: Vec<Effect>) -> Turn {
    let outbox = Live { label: "To the office".into(), value: "nothing".into(), tone: Tone::Quiet };
    Turn {
        screen: Screen {
            place: "round".into(),
            language: "en".into(),
            title: title.into(),
            subtitle: String::new(),
            unit: None,
            progress: None,
            strip: vec![],
            notices: vec![],
            blocks: vec![],
            foot: vec![],
            menu: vec![],
            outbox,
        },
        effects,
    }
}

impl CoreDoor for StubCore {
    fn opened(&self, _: Now) -> Result<Turn, Problem> {
        Ok(turn("opened", vec![]))
    }

    fn act(&self, action_id: String, action: Action, _: Now) -> Result<Turn, Problem> {
        self.acted.lock().unwrap().push(action_id);
        let effects = match action {
            Action::Seal => vec![
                Effect { id: "v/1/0".into(), request: Asked::SignBytes { bytes_base64: "aGFzaA==".into() } },
                Effect { id: "v/1/1".into(), request: Asked::Locate },
            ],
            _ => vec![],
        };
        Ok(turn("acted", effects))
    }

    fn done(&self, effect_id: String, outcome: Outcome, _: Now) -> Result<Turn, Problem> {
        self.outcomes.lock().unwrap().push((effect_id, outcome));
        Ok(turn("signed", vec![]))
    }

    fn screen(&self, _: Now) -> Result<Turn, Problem> {
        Ok(turn("screen", vec![]))
    }

    fn packs(&self, folders: Vec<PackFolder>, _: Now) -> Result<Turn, Problem> {
        let names: Vec<_> = folders.iter().flat_map(|folder| &folder.files).map(|file| file.name.as_str()).collect();
        Ok(turn(&format!("packs {}", names.join(" ")), vec![]))
    }

    fn charged(&self, percent: Option<u8>) {
        *self.charge.lock().unwrap() = percent;
    }

    fn words(&self) -> BTreeMap<String, String> {
        BTreeMap::from([("shell-menu".into(), "Menu </script>".into())])
    }

    fn incoming(&self, effect_id: &str) -> Result<PathBuf, Problem> {
        Ok(self.folder.join("incoming").join(effect_id.replace('/', "_")))
    }

    fn preview(&self, _: &str) -> Result<PathBuf, Problem> {
        let path = self.folder.join("preview.jpg");
        std::fs::write(&path, "jpeg").unwrap();
        Ok(path)
    }

    fn handover(&self, _: Option<&str>) -> Result<Handover, Problem> {
        Err(Problem::unknown())
    }

    fn next_sign(&self) -> Option<SignAsked> {
        self.to_sign.lock().unwrap().clone()
    }

    fn signed(&self, id: &str, signature_base64: &str) -> Result<(), Problem> {
        *self.signed.lock().unwrap() = Some((id.into(), signature_base64.into()));
        Ok(())
    }

    fn next_requests(&self, network: Network, _: Now) -> Result<Vec<SendRequest>, Problem> {
        *self.network.lock().unwrap() = Some(network);
        Ok(std::mem::take(&mut *self.to_send.lock().unwrap()))
    }

    fn answered(
        &self,
        id: String,
        status: u16,
        body: Vec<u8>,
        headers: Vec<(String, String)>,
        _: Now,
    ) -> Result<(), Problem> {
        self.answers.lock().unwrap().push((id, status, body, headers));
        Ok(())
    }
}

pub(crate) fn shell(core: Arc<StubCore>) -> Shell {
    let key = DeviceKey::of(&core.folder).unwrap();
    let packs = Some(core.folder.join("packs"));
    let clock = Clock::of_this_machine("test".into(), None);
    Shell::new(core, packs, clock, key, Token::of(TOKEN), AUTHORITY.into(), Summaries::of(None, Token::of(SUMMARY)))
}

pub(crate) struct Caller {
    folder: tempfile::TempDir,
    incoming: PathBuf,
    core: Arc<StubCore>,
    shell: Shell,
}

pub(crate) struct Answer {
    pub(crate) status: StatusCode,
    pub(crate) bytes: Vec<u8>,
    headers: HeaderMap,
}

impl Answer {
    pub(crate) fn json(&self) -> Value {
        serde_json::from_slice(&self.bytes).unwrap()
    }

    pub(crate) fn text(&self) -> &str {
        std::str::from_utf8(&self.bytes).unwrap()
    }

    pub(crate) fn header(&self, name: &str) -> &str {
        self.headers[name].to_str().unwrap()
    }
}

impl Caller {
    pub(crate) fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let core = Arc::new(StubCore::new(folder.path()));
        Self { incoming: folder.path().join("incoming"), shell: shell(core.clone()), folder, core }
    }

    pub(crate) async fn with(
        &self,
        method: Method,
        path: &str,
        headers: &[(&str, &str)],
        body: impl Into<Body>,
    ) -> Answer {
        assert!(self.folder.path().exists());
        let mut request = Request::builder().method(method).uri(path);
        if !headers.iter().any(|(name, _)| *name == "host") {
            request = request.header(header::HOST, AUTHORITY);
        }
        for (name, value) in headers {
            request = request.header(*name, *value);
        }
        let response = router(self.shell.clone()).oneshot(request.body(body.into()).unwrap()).await.unwrap();
        let (parts, body) = response.into_parts();
        let bytes = axum::body::to_bytes(body, usize::MAX).await.unwrap().to_vec();
        Answer { status: parts.status, bytes, headers: parts.headers }
    }

    pub(crate) async fn bare(&self, method: Method, path: &str) -> Answer {
        self.with(method, path, &[], "").await
    }

    pub(crate) async fn get_as(&self, window: &str, path: &str) -> Answer {
        self.with(Method::GET, path, &[("x-coilside-token", TOKEN), ("x-coilside-window", window)], "").await
    }

    pub(crate) async fn post(&self, path: &str, body: Value) -> Answer {
        let headers = [("x-coilside-token", TOKEN), ("content-type", "application/json")];
        self.with(Method::POST, path, &headers, body.to_string()).await
    }

    pub(crate) fn incoming(&self) -> &Path {
        &self.incoming
    }

    pub(crate) fn charge(&self) -> Option<u8> {
        *self.core.charge.lock().unwrap()
    }

    /// The network as the core would be told of it now.
    pub(crate) fn network(&self) -> Network {
        self.shell.network(true)
    }

    pub(crate) fn acted(&self) -> Vec<String> {
        self.core.acted.lock().unwrap().clone()
    }

    pub(crate) fn outcomes(&self) -> Vec<(String, Outcome)> {
        self.core.outcomes.lock().unwrap().clone()
    }
}
