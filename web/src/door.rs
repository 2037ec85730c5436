//! The calls of the page, each handed to the core with the time.

use std::{
    collections::BTreeMap,
    path::{Path as FilePath, PathBuf},
    sync::{Arc, Mutex, PoisonError, Weak},
};

use axum::{
    Json, Router,
    extract::{FromRequestParts, Path, State, rejection::JsonRejection},
    http::{HeaderValue, header, request::Parts},
    middleware,
    response::{IntoResponse, Response},
    routing::{get, post, put},
};
use coilside_core::{
    action::Action,
    effect::{Effect, Outcome, Request},
    now::Now,
    procedure::read::PackFolder,
    screen::Turn,
    sync::{Link, Network},
};
use serde::Deserialize;
use tokio::sync::Notify;

use crate::{
    address::Token,
    clock::Clock,
    core_door::CoreDoor,
    guard, incoming,
    key::DeviceKey,
    pack_folder, pages,
    problem::Problem,
    summary::{self, Summaries},
    window::Holder,
};

/// How often signing may lead to signing within one call. Each seal asks once.
const SIGNATURES_MAX: usize = 8;

/// What all calls share.
#[derive(Clone)]
pub(crate) struct Shell(Arc<Inner>);

struct Inner {
    core: Arc<dyn CoreDoor>,
    /// Where packs beside the built-in ones lie.
    packs: Option<PathBuf>,
    clock: Clock,
    key: DeviceKey,
    token: Token,
    authority: String,
    summaries: Summaries,
    holder: Holder,
    hurry: Notify,
    /// The network as the page last told of it.
    link: Mutex<Link>,
}

impl Shell {
    /// `packs` is a folder of packs, if there is one. `authority` is what the page's address names: `127.0.0.1:PORT`.
    pub(crate) fn new(
        core: Arc<dyn CoreDoor>,
        packs: Option<PathBuf>,
        clock: Clock,
        key: DeviceKey,
        token: Token,
        authority: String,
        summaries: Summaries,
    ) -> Self {
        let holder = Holder::default();
        let (hurry, link) = (Notify::new(), Mutex::default());
        Self(Arc::new(Inner { core, packs, clock, key, token, authority, summaries, holder, hurry, link }))
    }

    /// Tells whether some call still holds the core.
    pub(crate) fn calls(&self) -> Weak<dyn CoreDoor> {
        Arc::downgrade(&self.0.core)
    }

    /// Reads the folder of packs, if there is one, and gives them to the core.
    pub(crate) async fn read_packs(&self) -> Result<(), Problem> {
        let inner = Arc::clone(&self.0);
        let Some(folder) = inner.packs.clone() else { return Ok(()) };
        self.ask(move |core, now| core.packs(packs_in(&folder), now).map(drop)).await
    }

    pub(crate) fn token(&self) -> &Token {
        &self.0.token
    }

    pub(crate) fn summaries(&self) -> &Summaries {
        &self.0.summaries
    }

    pub(crate) fn authority(&self) -> &str {
        &self.0.authority
    }

    /// What carries requests now.
    pub(crate) fn network(&self, office: bool) -> Network {
        let link = *self.0.link.lock().unwrap_or_else(PoisonError::into_inner);
        Network { link, office, ..Network::default() }
    }

    /// The device key's signature over bytes, base64.
    pub(crate) fn signature(&self, bytes: &[u8]) -> String {
        self.0.key.signature(bytes)
    }

    /// Waits until something was done that the office may have to hear of.
    pub(crate) async fn hurry(&self) {
        self.0.hurry.notified().await;
    }

    pub(crate) async fn words(&self) -> BTreeMap<String, String> {
        self.ask(|core, _| Ok(core.words())).await.unwrap_or_default()
    }

    /// Calls the core where waiting for the disk holds up nobody.
    pub(crate) async fn ask<T: Send + 'static>(
        &self,
        call: impl FnOnce(&dyn CoreDoor, Now) -> Result<T, Problem> + Send + 'static,
    ) -> Result<T, Problem> {
        let inner = Arc::clone(&self.0);
        tokio::task::spawn_blocking(move || call(inner.core.as_ref(), inner.clock.now()))
            .await
            .unwrap_or_else(|why| Err(Problem::inside(why.to_string())))
    }

    /// The same for a call that changes something. What the core then asks of this process and not of the page is done
    /// here: packs are read, and what is to be signed is signed by the key that never leaves this process.
    pub(crate) async fn turn(
        &self,
        call: impl FnOnce(&dyn CoreDoor, Now) -> Result<Turn, Problem> + Send + 'static,
    ) -> Result<Turn, Problem> {
        let inner = Arc::clone(&self.0);
        let turn = tokio::task::spawn_blocking(move || {
            let core = inner.core.as_ref();
            let turn = call(core, inner.clock.now())?;
            let turn = answer_reading(core, inner.packs.as_deref(), &inner.clock, turn)?;
            answer_signing(core, &inner.key, &inner.clock, turn)
        })
        .await
        .unwrap_or_else(|why| Err(Problem::inside(why.to_string())))?;
        self.0.hurry.notify_one();
        Ok(self.0.summaries.addressed(turn))
    }
}

/// Reads the folder of packs where `turn` asks for it. Without a folder there is nothing to hand in.
fn answer_reading(core: &dyn CoreDoor, folder: Option<&FilePath>, clock: &Clock, turn: Turn) -> Result<Turn, Problem> {
    let Turn { screen, mut effects } = turn;
    let asked = effects.len();
    effects.retain(|effect| effect.request != Request::ReadPacks);
    match folder {
        Some(folder) if effects.len() < asked => {
            let next = core.packs(packs_in(folder), clock.now())?;
            effects.extend(next.effects.into_iter().filter(|effect| effect.request != Request::ReadPacks));
            Ok(Turn { screen: next.screen, effects })
        }
        _ => Ok(Turn { screen, effects }),
    }
}

/// The packs in a folder. One that cannot be read stands for itself, so that the core lists it with what is missing.
fn packs_in(folder: &FilePath) -> Vec<PackFolder> {
    pack_folder::all_in(folder)
        .unwrap_or_else(|_| vec![PackFolder { from: folder.display().to_string(), files: Vec::new() }])
}

/// Signs what `turn` asks for. The answers' screens are newer, so the last one is shown.
fn answer_signing(core: &dyn CoreDoor, key: &DeviceKey, clock: &Clock, turn: Turn) -> Result<Turn, Problem> {
    let Turn { mut screen, effects } = turn;
    let (mut to_sign, mut for_page) = parted(effects);
    for _ in 0..SIGNATURES_MAX {
        let Some((id, bytes)) = to_sign.pop() else { break };
        let next = core.done(id, key.sign(&bytes), clock.now())?;
        screen = next.screen;
        let (more, others) = parted(next.effects);
        to_sign.extend(more);
        for_page.extend(others);
    }
    Ok(Turn { screen, effects: for_page })
}

fn parted(effects: Vec<Effect>) -> (Vec<(String, String)>, Vec<Effect>) {
    let (mut to_sign, mut others) = (Vec::new(), Vec::new());
    for effect in effects {
        match effect.request {
            Request::SignBytes { bytes_base64 } => to_sign.push((effect.id, bytes_base64)),
            request => others.push(Effect { id: effect.id, request }),
        }
    }
    (to_sign, others)
}

/// All addresses of the process.
pub(crate) fn router(shell: Shell) -> Router {
    let door = Router::new()
        .route("/open", post(open))
        .route("/act", post(act))
        .route("/done", post(done))
        .route("/screen", get(screen))
        .route("/words", get(words))
        .route("/charge", post(charge))
        .route("/network", post(network))
        .route("/leap", post(leap))
        .route("/incoming/{name}", put(incoming::put))
        .route("/preview/{digest}", get(preview))
        .fallback(|| async { Problem::unknown() })
        .layer(middleware::map_response_with_state(shell.clone(), tell_time))
        .route_layer(middleware::from_fn_with_state(shell.clone(), guard::token));
    Router::new()
        .route("/", get(pages::index))
        .route("/summary/{secret}/{name}", get(summary::file))
        .nest("/door", door)
        .route("/{*path}", get(pages::file))
        .fallback(|| async { Problem::unknown() })
        .layer(middleware::from_fn_with_state(shell.clone(), guard::origin))
        .with_state(shell)
}

/// The window that a call without a JSON body names in `X-Coilside-Window`, admitted.
pub(crate) struct Admitted;

impl FromRequestParts<Shell> for Admitted {
    type Rejection = Problem;

    async fn from_request_parts(parts: &mut Parts, shell: &Shell) -> Result<Self, Problem> {
        let window = parts.headers.get("x-coilside-window").and_then(|value| value.to_str().ok()).unwrap_or_default();
        admit(shell, window).map(|()| Self)
    }
}

fn admit(shell: &Shell, window: &str) -> Result<(), Problem> {
    if shell.0.holder.admits(window) { Ok(()) } else { Err(Problem::elsewhere()) }
}

type Body<T> = Result<Json<T>, JsonRejection>;

fn read<T>(body: Body<T>) -> Result<T, Problem> {
    body.map(|Json(value)| value).map_err(|why| Problem::malformed(why.body_text()))
}

#[derive(Deserialize)]
struct Open {
    window: String,
}

async fn open(State(shell): State<Shell>, body: Body<Open>) -> Result<Json<Turn>, Problem> {
    let Open { window } = read(body)?;
    if window.is_empty() {
        return Err(Problem::malformed("the window has no name"));
    }
    shell.0.holder.take(&window);
    shell.turn(|core, now| core.opened(now)).await.map(Json)
}

#[derive(Deserialize)]
struct Charge {
    window: String,
    /// Per cent; none while the device charges.
    percent: Option<u8>,
}

/// The device's charge changed.
async fn charge(State(shell): State<Shell>, body: Body<Charge>) -> Result<Json<Turn>, Problem> {
    let Charge { window, percent } = read(body)?;
    admit(&shell, &window)?;
    let told = move |core: &dyn CoreDoor, now| {
        core.charged(percent);
        core.screen(now)
    };
    shell.ask(told).await.map(Json)
}

#[derive(Deserialize)]
struct Carried {
    window: String,
    /// The network is paid by what goes over it, or the person wants to save.
    metered: bool,
}

/// What carries requests changed.
async fn network(State(shell): State<Shell>, body: Body<Carried>) -> Result<Json<Turn>, Problem> {
    let Carried { window, metered } = read(body)?;
    admit(&shell, &window)?;
    let link = if metered { Link::Metered } else { Link::Unmetered };
    *shell.0.link.lock().unwrap_or_else(PoisonError::into_inner) = link;
    shell.turn(|core, now| core.screen(now)).await.map(Json)
}

#[derive(Deserialize)]
struct Act {
    window: String,
    action_id: String,
    action: Action,
}

async fn act(State(shell): State<Shell>, body: Body<Act>) -> Result<Json<Turn>, Problem> {
    let Act { window, action_id, action } = read(body)?;
    admit(&shell, &window)?;
    shell.turn(move |core, now| core.act(action_id, action, now)).await.map(Json)
}

#[derive(Deserialize)]
struct Done {
    window: String,
    effect_id: String,
    outcome: Outcome,
}

async fn done(State(shell): State<Shell>, body: Body<Done>) -> Result<Json<Turn>, Problem> {
    let Done { window, effect_id, outcome } = read(body)?;
    admit(&shell, &window)?;
    shell.turn(move |core, now| core.done(effect_id, outcome, now)).await.map(Json)
}

async fn screen(State(shell): State<Shell>, _: Admitted) -> Result<Json<Turn>, Problem> {
    shell.ask(|core, now| core.screen(now)).await.map(|turn| Json(shell.summaries().addressed(turn)))
}

async fn words(State(shell): State<Shell>) -> Json<BTreeMap<String, String>> {
    Json(shell.words().await)
}

#[derive(Deserialize)]
struct Leap {
    window: String,
    ms: i64,
}

/// In a rehearsal: leaps over a waiting time.
async fn leap(State(shell): State<Shell>, body: Body<Leap>) -> Result<Json<Turn>, Problem> {
    let Leap { window, ms } = read(body)?;
    admit(&shell, &window)?;
    match shell.0.clock.leap(ms) {
        Ok(true) => shell.ask(|core, now| core.screen(now)).await.map(|turn| Json(shell.summaries().addressed(turn))),
        Ok(false) => Err(Problem::unknown()),
        Err(why) => Err(Problem::inside(why.to_string())),
    }
}

/// Tells the page the time by which the core goes, and whether this is a rehearsal.
async fn tell_time(State(shell): State<Shell>, mut answer: Response) -> Response {
    let clock = &shell.0.clock;
    answer.headers_mut().insert("x-coilside-utc-ms", HeaderValue::from(clock.now().utc_ms));
    if clock.is_rehearsal() {
        answer.headers_mut().insert("x-coilside-rehearsal", HeaderValue::from_static("1"));
    }
    answer
}

async fn preview(State(shell): State<Shell>, Path(digest): Path<String>) -> Result<Response, Problem> {
    if digest.len() != 64 || !digest.bytes().all(|byte| byte.is_ascii_hexdigit()) {
        return Err(Problem::unknown());
    }
    let path = shell.ask(move |core, _| core.preview(&digest)).await?;
    let bytes = tokio::fs::read(path).await.map_err(|_| Problem::unknown())?;
    Ok(([(header::CONTENT_TYPE, "image/jpeg")], bytes).into_response())
}

#[cfg(test)]
mod tests {
    use axum::http::{Method, StatusCode};
    use serde_json::{Value, json};

    use super::*;
    use crate::stub::{Caller, TOKEN};

    #[tokio::test]
    async fn every_call_of_the_door_wants_the_token() {
        let caller = Caller::new();
        for (method, path) in [
            (Method::POST, "/door/open"),
            (Method::POST, "/door/act"),
            (Method::POST, "/door/done"),
            (Method::GET, "/door/screen"),
            (Method::GET, "/door/words"),
            (Method::PUT, "/door/incoming/v_1_0"),
            (Method::GET, "/door/preview/00"),
        ] {
            let bare = caller.bare(method.clone(), path).await;
            assert_eq!(bare.status, StatusCode::UNAUTHORIZED, "{path} without a token");
            let wrong = caller.with(method, path, &[("x-coilside-token", &TOKEN.replace('a', "b"))], "").await;
            assert_eq!(wrong.status, StatusCode::UNAUTHORIZED, "{path} with a wrong token");
        }
    }

    #[tokio::test]
    async fn a_second_window_takes_over_and_the_first_is_told() {
        let caller = Caller::new();
        let act = |window: &str, id: &str| json!({ "window": window, "action_id": id, "action": { "do": "go", "to": "round" } });
        assert_eq!(caller.post("/door/open", json!({ "window": "one" })).await.status, StatusCode::OK);
        assert_eq!(caller.post("/door/act", act("two", "a")).await.status, StatusCode::CONFLICT);
        assert_eq!(caller.post("/door/open", json!({ "window": "two" })).await.status, StatusCode::OK);
        let told = caller.post("/door/act", act("one", "b")).await;
        assert_eq!(told.status, StatusCode::CONFLICT);
        assert_eq!(told.json()["type"], "/problem/elsewhere");
        assert_eq!(caller.get_as("one", "/door/screen").await.status, StatusCode::CONFLICT);
        assert_eq!(caller.get_as("two", "/door/screen").await.status, StatusCode::OK);
        assert_eq!(caller.acted(), Vec::<String>::new(), "nothing of the refused calls reached the core");
        assert_eq!(caller.post("/door/open", json!({ "window": "one" })).await.status, StatusCode::OK);
        assert_eq!(caller.post("/door/act", act("one", "b")).await.status, StatusCode::OK);
        assert_eq!(caller.acted(), ["b"]);
    }

    #[tokio::test]
    async fn what_is_to_be_signed_is_signed_here_and_never_reaches_the_page() {
        let caller = Caller::new();
        let seal = json!({ "window": "one", "action_id": "s", "action": { "do": "seal" } });
        let answer = caller.post("/door/act", seal).await;
        assert_eq!(answer.status, StatusCode::OK);
        let asked: Vec<Value> = answer.json()["effects"].as_array().unwrap().clone();
        assert_eq!(asked.len(), 1, "{asked:?}");
        assert_eq!(asked[0]["request"]["ask"], "locate");
        assert_eq!(answer.json()["screen"]["title"], "signed");
        assert!(matches!(caller.outcomes().as_slice(), [(id, Outcome::Signature { .. })] if id == "v/1/0"));
    }

    #[tokio::test]
    async fn the_charge_reaches_the_core_from_the_window_that_holds_the_door() {
        let caller = Caller::new();
        caller.post("/door/open", json!({ "window": "one" })).await;
        let charge = |window: &str, percent: Value| json!({ "window": window, "percent": percent });
        assert_eq!(caller.post("/door/charge", charge("two", json!(50))).await.status, StatusCode::CONFLICT);
        assert_eq!(caller.post("/door/charge", charge("one", json!(-1))).await.status, StatusCode::BAD_REQUEST);
        assert_eq!(caller.charge(), None);
        assert_eq!(caller.post("/door/charge", charge("one", json!(8))).await.json()["screen"]["title"], "screen");
        assert_eq!(caller.charge(), Some(8));
        caller.post("/door/charge", charge("one", Value::Null)).await;
        assert_eq!(caller.charge(), None, "it charges");
    }

    #[tokio::test]
    async fn a_network_that_is_paid_for_is_told_to_the_core() {
        let caller = Caller::new();
        assert_eq!(caller.network().link, Link::Unmetered, "nothing is known of it yet");
        for (metered, link) in [(true, Link::Metered), (false, Link::Unmetered)] {
            let told = caller.post("/door/network", json!({ "window": "one", "metered": metered })).await;
            assert_eq!((told.status, caller.network().link), (StatusCode::OK, link));
        }
        let other = caller.post("/door/network", json!({ "window": "two", "metered": true })).await;
        assert_eq!((other.status, caller.network().link), (StatusCode::CONFLICT, Link::Unmetered));
    }

    #[tokio::test]
    async fn a_call_that_cannot_be_read_says_so() {
        let caller = Caller::new();
        let answer =
            caller.post("/door/act", json!({ "window": "one", "action_id": "x", "action": { "do": "fly" } })).await;
        assert_eq!((answer.status, &answer.json()["type"]), (StatusCode::BAD_REQUEST, &json!("/problem/malformed")));
    }

    #[tokio::test]
    async fn the_page_comes_with_its_words_and_its_policy() {
        let caller = Caller::new();
        let page = caller.bare(Method::GET, "/").await;
        assert_eq!(page.status, StatusCode::OK);
        assert!(page.text().contains(r#"{"shell-menu":"Menu \u003c/script>"}"#), "{}", page.text());
        let policy = page.header("content-security-policy");
        assert!(policy.starts_with("default-src 'none'; script-src 'self';") && !policy.contains("unsafe"), "{policy}");
        assert_eq!(page.header("cache-control"), "no-store");
        assert_eq!(page.header("x-content-type-options"), "nosniff");
        assert_eq!(page.header("referrer-policy"), "no-referrer");
        assert_eq!(
            caller.bare(Method::GET, "/blocks/all.js").await.header("content-type"),
            "text/javascript; charset=utf-8"
        );
        assert_eq!(caller.bare(Method::GET, "/../Cargo.toml").await.status, StatusCode::NOT_FOUND);
    }

    #[tokio::test]
    async fn a_preview_is_found_by_its_digest_and_by_nothing_else() {
        let caller = Caller::new();
        let digest = "ab".repeat(32);
        let there = caller.get_as("one", &format!("/door/preview/{digest}")).await;
        assert_eq!(
            (there.status, there.header("content-type"), there.bytes.as_slice()),
            (StatusCode::OK, "image/jpeg", b"jpeg".as_slice())
        );
        assert_eq!(caller.get_as("one", "/door/preview/..%2F..%2Fdevice-key.pem").await.status, StatusCode::NOT_FOUND);
    }
}
