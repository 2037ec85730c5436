//! Starts the browser shell and keeps it running.

use std::{future::Future, path::PathBuf, sync::Arc, time::Duration};

use coilside_core::{
    field::{DoorError, Field, Setup},
    store::StoreError,
};
use tokio::{net::TcpListener, task::JoinHandle};

use crate::{
    address::{self, Token},
    clock::Clock,
    door::{Shell, router},
    error::FieldError,
    incoming,
    key::DeviceKey,
    lock::FolderLock,
    problem::Problem,
    rehearsal::Rehearsal,
    sender::{self, Office},
    summary::Summaries,
};

/// How to run the browser shell.
#[derive(Clone, Debug)]
pub struct FieldSettings {
    /// Where the visits, the photographs and the device's key lie. Made if it is not there.
    pub folder: PathBuf,
    /// The port on 127.0.0.1; 0 for the one of the last time, or any.
    pub port: u16,
    /// The office's address, `https://office.example`. None: the one that the device joined, or nothing is sent. An office that
    /// was joined goes before this one.
    pub office: Option<String>,
    /// What that office gave this device to be known by.
    pub device_token: Option<String>,
    /// A rehearsal: waiting times can be leapt over, and the record says so. Never for a real visit.
    pub rehearsal: bool,
    /// A folder of packs beside the built-in ones, each a folder in it; read at the start and on demand.
    pub packs: Option<PathBuf>,
}

/// Opens the folder, listens, and tells the address and the key's warning on the terminal; serves until Ctrl-C.
///
/// # Errors
/// What kept it from starting or from going on, with what to do.
pub async fn serve(settings: FieldSettings) -> Result<(), FieldError> {
    let running = start(settings).await?;
    println!("{}", running.warning());
    println!("Open this address in a browser on this computer: {}", running.address());
    running
        .until(async {
            // Where Ctrl-C cannot be heard, the process is ended from outside: nothing acknowledged is lost by that.
            if tokio::signal::ctrl_c().await.is_err() {
                std::future::pending::<()>().await;
            }
        })
        .await
}

/// Opens the folder and listens on 127.0.0.1.
///
/// # Errors
/// What kept it from starting, with what to do.
pub async fn start(settings: FieldSettings) -> Result<Running, FieldError> {
    let FieldSettings { folder, port, office, device_token, rehearsal, packs } = settings;
    let summaries = Summaries::of(office.clone(), Token::new()?);
    let office = Office::new(office.as_deref(), device_token)?;
    let lock = FolderLock::take(&folder)?;
    let key = DeviceKey::of(&folder)?;
    let warning = key.warning();
    let rehearsal = rehearsal.then(|| Rehearsal::of(&folder));
    let clock = Clock::of_this_machine(format!("process-{}", hex(&random::<16>()?)), rehearsal);
    incoming::sweep(&folder.join("incoming")).map_err(|why| FieldError::of_folder(&folder, why))?;
    let setup = Setup {
        folder: folder.to_string_lossy().into_owned(),
        entropy: random::<64>()?.to_vec(),
        now: clock.now(),
        language: language_of_the_system(),
        public_key: key.public(),
    };
    let core = open(&setup).await.map_err(|why| FieldError::Core { folder: folder.clone(), why: why.to_string() })?;
    let (listener, at, token) = address::listen(&folder, port).await?;
    let address = format!("http://{at}/?t={}", token.text());
    let shell = Shell::new(Arc::new(core), packs, clock, key, token, at.to_string(), summaries);
    let failed =
        |why: Problem| FieldError::Core { folder: folder.clone(), why: format!("{}. {}", why.title, why.detail) };
    shell.read_packs().await.map_err(failed)?;
    // A seal whose signature a kill came before is signed now, before any page asks.
    shell.turn(|core, now| core.opened(now)).await.map_err(failed)?;
    Ok(Running { listener, shell, office, address, warning, _lock: lock })
}

/// Opens the core. The folder's lock is ours: whoever has its store open still is just letting go of it.
async fn open(setup: &Setup) -> Result<Field, DoorError> {
    for _ in 0..OPEN_MAX_MS / LAST_CALLS_LOOK_MS {
        match Field::open(setup.clone()) {
            Err(DoorError::Store(StoreError::InUse)) => {
                tokio::time::sleep(Duration::from_millis(LAST_CALLS_LOOK_MS)).await;
            }
            opened => return opened,
        }
    }
    Field::open(setup.clone())
}

fn random<const N: usize>() -> Result<[u8; N], FieldError> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).map_err(|why| FieldError::Random(why.to_string()))?;
    Ok(bytes)
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// The language that the system is set to, as `es` of `es_CL.UTF-8`. None where it names none.
fn language_of_the_system() -> Option<String> {
    let set = ["LC_ALL", "LC_MESSAGES", "LANG"]
        .iter()
        .find_map(|name| std::env::var(name).ok().filter(|set| !set.is_empty()))?;
    let language = set.split(['_', '.', '-', '@']).next()?.to_ascii_lowercase();
    (language.len() == 2).then_some(language)
}

/// A browser shell that listens.
pub struct Running {
    listener: TcpListener,
    shell: Shell,
    office: Office,
    address: String,
    warning: String,
    _lock: FolderLock,
}

impl Running {
    /// What to open in the browser, with its token: `http://127.0.0.1:PORT/?t=…`.
    #[must_use]
    pub fn address(&self) -> &str {
        &self.address
    }

    /// What the person who started the process should know about its key.
    #[must_use]
    pub fn warning(&self) -> &str {
        &self.warning
    }

    /// Serves until `stop`.
    ///
    /// # Errors
    /// The listener failed.
    pub async fn until(self, stop: impl Future<Output = ()> + Send + 'static) -> Result<(), FieldError> {
        let calls = self.shell.calls();
        let sending = Sending(tokio::spawn(sender::run(self.shell.clone(), self.office)));
        let ended = axum::serve(self.listener, router(self.shell)).with_graceful_shutdown(stop).await;
        sending.stop().await;
        // The folder is let go with the last call: whoever opens it next must not find it open still.
        for _ in 0..LAST_CALLS_MAX_MS / LAST_CALLS_LOOK_MS {
            if calls.upgrade().is_none() {
                break;
            }
            tokio::time::sleep(Duration::from_millis(LAST_CALLS_LOOK_MS)).await;
        }
        ended.map_err(FieldError::Ended)
    }
}

/// How long a started process waits for the store, milliseconds.
const OPEN_MAX_MS: u64 = 1_000;
/// How long an ended process waits for calls that are still under way, and how often it looks, milliseconds.
const LAST_CALLS_MAX_MS: u64 = 5_000;
const LAST_CALLS_LOOK_MS: u64 = 10;

/// Stops with the process's serving.
struct Sending(JoinHandle<()>);

impl Sending {
    /// Stops, and comes back when nothing of it is left.
    async fn stop(mut self) {
        self.0.abort();
        let _ = (&mut self.0).await;
    }
}

impl Drop for Sending {
    fn drop(&mut self) {
        self.0.abort();
    }
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};
    use tokio::sync::oneshot;

    use super::*;

    fn settings(folder: &std::path::Path) -> FieldSettings {
        FieldSettings {
            folder: folder.into(),
            port: 0,
            office: None,
            device_token: None,
            rehearsal: false,
            packs: None,
        }
    }

    /// What a browser does first, over a real socket: the page, then the door.
    fn visit(address: &str) -> (String, Value) {
        let (origin, token) = address.split_once("/?t=").unwrap();
        let page = ureq::get(format!("{origin}/")).call().unwrap().body_mut().read_to_string().unwrap();
        let opened = ureq::post(format!("{origin}/door/open"))
            .header("X-Coilside-Token", token)
            .header("Content-Type", "application/json")
            .send(json!({ "window": "one" }).to_string())
            .unwrap()
            .body_mut()
            .read_to_string()
            .unwrap();
        (page, serde_json::from_str(&opened).unwrap())
    }

    #[tokio::test(flavor = "multi_thread")]
    async fn the_page_and_the_core_answer_and_a_restart_keeps_address_and_key() {
        let folder = tempfile::tempdir().unwrap();
        let mut seen = Vec::new();
        for _ in 0..2 {
            let running = start(settings(folder.path())).await.unwrap();
            let address = running.address().to_owned();
            assert!(address.starts_with("http://127.0.0.1:"), "{address}");
            assert!(running.warning().contains("device-key.pem"));
            let (stop, stopped) = oneshot::channel::<()>();
            let serving = tokio::spawn(running.until(async { stopped.await.unwrap_or_default() }));
            let asked = address.clone();
            let (page, turn) = tokio::task::spawn_blocking(move || visit(&asked)).await.unwrap();
            assert!(page.contains("\"shell-menu\":"), "the page carries its words");
            assert_eq!(turn["screen"]["place"], "round");
            stop.send(()).unwrap();
            serving.await.unwrap().unwrap();
            seen.push((address, std::fs::read(folder.path().join("device-key.pem")).unwrap()));
        }
        assert_eq!(seen[0], seen[1]);
    }

    #[tokio::test]
    async fn a_second_start_on_the_folder_says_that_it_is_open() {
        let folder = tempfile::tempdir().unwrap();
        let _running = start(settings(folder.path())).await.unwrap();
        let Err(why) = start(settings(folder.path())).await else { panic!("started twice") };
        assert!(matches!(why, FieldError::AlreadyOpen { .. }), "{why}");
    }
}
