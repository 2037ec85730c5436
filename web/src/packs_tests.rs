//! Packs out of a folder, in a shell that runs: over a real socket, with the core and its store.

use std::fs;
use std::path::Path;

use coilside_core::field::{Field, Setup};
use coilside_core::now::Now;
use coilside_core::round::{AssignedUnit, Assignment, Owner, Site};
use serde_json::{Value, json};
use tokio::sync::oneshot;

use crate::{FieldSettings, start};

/// An assignment of a unit whose procedure no program has built in.
fn assignment() -> Assignment {
    Assignment {
        id: "a1".into(),
        due: "2026-05-04".into(),
        reason: "Yearly service".into(),
        site: Site {
            name: "Mill house".into(),
            address: "1 Mill Lane".into(),
            latitude_deg: 1.5,
            longitude_deg: 2.5,
            note: String::new(),
        },
        owner: Owner { name: "A. Weaver".into(), phone: String::new(), language: "en".into() },
        units: vec![AssignedUnit {
            letter: "A".into(),
            unit: "U-1".into(),
            maker: "Invented".into(),
            model: "Box One".into(),
            serial: "B-1".into(),
            pack: "fresh-air-box".into(),
            ..AssignedUnit::default()
        }],
        ..Assignment::default()
    }
}

/// What the office would have handed out.
fn assign(folder: &Path) {
    let now = Now { utc_ms: 1_777_881_600_000, offset_min: 0, mono_ms: 0, mono_epoch: "before".into() };
    let setup = Setup {
        folder: folder.to_string_lossy().into_owned(),
        entropy: vec![7; 32],
        now,
        language: Some("en".into()),
        public_key: vec![4; 65],
    };
    Field::open(setup).unwrap().assigned(&[assignment()]).unwrap();
}

/// The page's calls.
struct Page {
    origin: String,
    token: String,
    acts: u32,
}

impl Page {
    fn post(&self, path: &str, body: &Value) -> Value {
        let answer = ureq::post(format!("{}{path}", self.origin))
            .header("X-Coilside-Token", &self.token)
            .header("Content-Type", "application/json")
            .send(body.to_string())
            .unwrap()
            .body_mut()
            .read_to_string()
            .unwrap();
        serde_json::from_str(&answer).unwrap()
    }

    fn open(address: &str) -> Page {
        let (origin, token) = address.split_once("/?t=").unwrap();
        let page = Page { origin: origin.to_owned(), token: token.to_owned(), acts: 0 };
        page.post("/door/open", &json!({ "window": "one" }));
        page
    }

    fn act(&mut self, action: &Value) -> Value {
        self.acts += 1;
        let body = json!({ "window": "one", "action_id": format!("act-{}", self.acts), "action": action });
        let turn = self.post("/door/act", &body);
        let asked = turn["effects"].to_string();
        assert!(!asked.contains("read-packs"), "the page is asked for what the process does: {asked}");
        turn["screen"].clone()
    }

    fn go(&mut self, to: &str) -> Value {
        self.act(&json!({ "do": "go", "to": to }))
    }

    /// Presses the button of the lower part that has these words.
    fn press(&mut self, screen: &Value, label: &str) -> Value {
        let buttons = screen["foot"].as_array().unwrap();
        let button = buttons.iter().find(|button| button["label"] == label).unwrap_or_else(|| panic!("no {label}"));
        self.act(&button["press"].clone())
    }
}

fn copy_pack(to: &Path) {
    let small = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/tests/packs/small");
    fs::create_dir_all(to).unwrap();
    for name in ["pack.toml", "en.ftl", "es.ftl"] {
        fs::copy(small.join(name), to.join(name)).unwrap();
    }
}

fn play(address: &str, packs: &Path) {
    let start = json!({ "do": "start-visit", "assignment": "a1" });
    let mut page = Page::open(address);
    let screen = page.act(&start);
    assert_eq!(screen["place"], "round");
    assert_eq!(screen["notices"][0]["title"], "The procedure “fresh-air-box” is not on this device.");

    let folder = packs.join("box");
    copy_pack(&folder);
    let screen = page.go("procedures");
    assert!(!screen.to_string().contains("Fresh-air box"), "nobody asked to read yet");
    let screen = page.press(&screen, "Read again");
    let table = screen["blocks"].as_array().unwrap().iter().find(|block| block["block"] == "table").unwrap();
    let row = table["rows"].as_array().unwrap().iter().find(|row| row[0] == "Fresh-air box").unwrap();
    assert_eq!((row[1].as_str(), row[2].as_str()), (Some("1.0.0"), folder.to_str()));

    let screen = page.act(&start);
    assert_eq!(screen["place"], "now");
    assert!(screen.to_string().contains("Look at the box and measure its air"), "{screen}");

    let toml = fs::read_to_string(folder.join("pack.toml")).unwrap();
    fs::write(folder.join("pack.toml"), toml.replacen("minutes = 3", "minuts = 3", 1)).unwrap();
    let line = 1 + toml.lines().position(|line| line == "minutes = 3").unwrap();
    let screen = page.go("procedures");
    let screen = page.press(&screen, "Read again");
    let text = screen.to_string();
    let refusal = format!("pack.toml:{line}:1: [[step]] has no field 'minuts'. Did you mean 'minutes'?");
    assert!(text.contains(&refusal), "not refused with “{refusal}”: {text}");
    assert!(screen["notices"][0]["title"].as_str().unwrap().contains("Refused: 1"), "{text}");
    let screen = page.go("now");
    assert!(screen.to_string().contains("Look at the box and measure its air"), "the visit keeps what it began with");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_pack_that_is_put_into_the_folder_of_a_running_shell_is_read_and_a_broken_one_is_refused_with_file_and_line()
{
    let (folder, packs) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    assign(folder.path());
    let settings = FieldSettings {
        folder: folder.path().into(),
        port: 0,
        office: None,
        device_token: None,
        rehearsal: false,
        packs: Some(packs.path().into()),
    };
    let running = start(settings).await.unwrap();
    let address = running.address().to_owned();
    let (stop, stopped) = oneshot::channel::<()>();
    let serving = tokio::spawn(running.until(async { stopped.await.unwrap_or_default() }));
    let packs_path = packs.path().to_owned();
    tokio::task::spawn_blocking(move || play(&address, &packs_path)).await.unwrap();
    stop.send(()).unwrap();
    serving.await.unwrap().unwrap();
}
