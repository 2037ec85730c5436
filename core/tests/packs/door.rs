//! Packs from outside at the door: which of two is used, what waits for one, what is kept.

use coilside_core::action::Action;
use coilside_core::effect::Request;
use coilside_core::field::{Field, Setup};
use coilside_core::now::Now;
use coilside_core::procedure::read::PackFolder;
use coilside_core::round::{AssignedUnit, Assignment, Owner, Site};
use coilside_core::screen::{Block, Screen, Turn};

use super::{small, small_with};

struct Door {
    field: Field,
    acts: u32,
    _folder: tempfile::TempDir,
}

fn now() -> Now {
    Now { utc_ms: 1_777_881_600_000, offset_min: 0, mono_ms: 5, mono_epoch: "here".into() }
}

impl Door {
    fn open() -> Door {
        let folder = tempfile::tempdir().unwrap();
        let setup = Setup {
            folder: folder.path().to_string_lossy().into_owned(),
            entropy: vec![7; 32],
            now: now(),
            language: None,
            public_key: vec![4; 65],
        };
        let field = Field::open(setup).unwrap();
        field.assigned(&[assignment("a1"), assignment("a2")]).unwrap();
        Door { field, acts: 0, _folder: folder }
    }

    fn act(&mut self, action: &Action) -> Turn {
        self.acts += 1;
        self.field.act(&format!("act-{}", self.acts), action, &now()).unwrap()
    }

    fn start(&mut self, assignment: &str) -> Turn {
        self.act(&Action::StartVisit { assignment: assignment.into() })
    }

    fn packs(&self, folders: &[PackFolder]) -> Turn {
        self.field.packs(folders, &now()).unwrap()
    }

    fn procedures(&mut self) -> String {
        written(&self.act(&Action::Go { to: "procedures".into() }).screen)
    }
}

/// A screen's words, a line each.
fn written(screen: &Screen) -> String {
    let mut lines = Vec::new();
    for block in &screen.blocks {
        match block {
            Block::Text { text, .. } => lines.push(text.clone()),
            Block::Table { rows, .. } => lines.extend(rows.iter().map(|row| row.join(" | "))),
            Block::Step { title, .. } => lines.push(title.clone()),
            _ => {}
        }
    }
    lines.join("\n")
}

fn assignment(id: &str) -> Assignment {
    let unit = AssignedUnit {
        letter: "A".into(),
        unit: "U-1".into(),
        maker: "Invented".into(),
        model: "Box One".into(),
        serial: "B-1".into(),
        pack: "fresh-air-box".into(),
        refrigerant: None,
        history: Vec::new(),
    };
    Assignment {
        id: id.into(),
        due: "2026-05-04".into(),
        reason: "Yearly service".into(),
        site: Site {
            name: format!("House {id}"),
            address: String::new(),
            latitude_deg: 1.5,
            longitude_deg: 2.5,
            note: String::new(),
        },
        owner: Owner { name: "A. Weaver".into(), phone: String::new(), language: "en".into() },
        units: vec![unit],
        shares: None,
    }
}

/// The smallest pack in another version and folder, with its first step called otherwise.
fn version(version: &str, from: &str) -> PackFolder {
    let mut folder = small_with("pack.toml", "version = \"1.0.0\"", &format!("version = \"{version}\""));
    folder.from = from.into();
    let words = folder.files.iter_mut().find(|file| file.name == "en.ftl").unwrap();
    let text = String::from_utf8(words.bytes.clone()).unwrap();
    words.bytes = text.replace("Look at the box and", &format!("Look at the box ({version}) and")).into_bytes();
    folder
}

#[test]
fn a_visit_whose_pack_is_missing_asks_for_it_and_begins_once_it_is_there() {
    let mut door = Door::open();
    let turn = door.start("a1");
    assert_eq!(turn.screen.place, "round");
    assert!(turn.screen.notices[0].title.contains("“fresh-air-box”"), "{:?}", turn.screen.notices);
    assert_eq!(turn.effects.iter().map(|effect| &effect.request).collect::<Vec<_>>(), [&Request::ReadPacks]);
    let turn = door.packs(&[]);
    assert_eq!(turn.screen.place, "round", "still not there");

    door.start("a1");
    let turn = door.packs(&[small()]);
    assert_eq!(turn.screen.place, "now");
    assert!(written(&turn.screen).contains("Look at the box and measure its air"), "{}", written(&turn.screen));
    assert!(turn.screen.notices.is_empty(), "{:?}", turn.screen.notices);
    assert_eq!(turn.effects.iter().map(|effect| &effect.request).collect::<Vec<_>>(), [&Request::Locate]);
}

#[test]
fn whoever_went_on_to_something_else_is_not_thrown_into_a_visit_later() {
    let mut door = Door::open();
    door.start("a1");
    door.act(&Action::Go { to: "settings".into() });
    assert_eq!(door.packs(&[small()]).screen.place, "settings");
}

#[test]
fn a_later_version_is_for_new_runs_and_a_run_that_began_keeps_its_own() {
    let mut door = Door::open();
    door.packs(&[version("1.0.0", "packs/one")]);
    let first = door.start("a1");
    assert!(written(&first.screen).contains("(1.0.0)"));
    let still = door.packs(&[version("1.1.0", "packs/one")]);
    assert!(written(&still.screen).contains("(1.0.0)"), "{}", written(&still.screen));
    door.act(&Action::Go { to: "round".into() });
    assert!(written(&door.start("a2").screen).contains("(1.1.0)"));
}

#[test]
fn of_two_folders_with_one_pack_the_later_version_is_used_and_the_other_refused() {
    let mut door = Door::open();
    door.packs(&[version("1.2.0", "packs/old"), version("1.10.0", "packs/new")]);
    let told = door.procedures();
    assert!(told.contains("Fresh-air box | 1.10.0 | packs/new"), "{told}");
    assert!(
        told.contains("Read from packs/old\npack.toml: fresh-air-box is there in version 1.10.0, which is later."),
        "{told}"
    );
    door.packs(&[version("1.2.0", "packs/one"), version("1.2.0", "packs/two")]);
    let told = door.procedures();
    assert!(told.contains("fresh-air-box 1.2.0 is there in another folder too."), "{told}");
}

#[test]
fn an_older_version_of_a_built_in_pack_is_refused_and_a_later_one_used() {
    let mut door = Door::open();
    let mut folder = super::folder(&super::here("packs/add-on-water-heater"));
    folder.from = "packs/heater".into();
    let toml = folder.files.iter().position(|file| file.name == "pack.toml").unwrap();
    let text = String::from_utf8(folder.files[toml].bytes.clone()).unwrap();
    let own = text.lines().find(|line| line.starts_with("version")).unwrap().to_owned();
    folder.files[toml].bytes = text.replace(&own, "version = \"0.0.1\"").into_bytes();
    door.packs(std::slice::from_ref(&folder));
    let told = door.procedures();
    assert!(told.contains("add-on-water-heater is there in version"), "{told}");
    folder.files[toml].bytes = text.replace(&own, "version = \"99.0.0\"").into_bytes();
    door.packs(&[folder]);
    let told = door.procedures();
    assert!(told.contains("| 99.0.0 | packs/heater"), "{told}");
    assert_eq!(told.matches("Add-on water heater").count(), 1, "{told}");
}

#[test]
fn a_pack_that_is_taken_away_or_broken_is_not_there_for_new_runs() {
    let mut door = Door::open();
    door.packs(&[small()]);
    assert!(door.procedures().contains("Fresh-air box"));
    door.packs(&[small_with("pack.toml", "sets = [\"tag=tagged\"]", "sets = [\"tag=hung\"]")]);
    let told = door.procedures();
    assert!(told.contains("pack.toml:90:9: The fact 'tag' has no value 'hung'."), "{told}");
    assert_eq!(door.start("a1").screen.place, "procedures");
    door.packs(&[]);
    assert!(!door.procedures().contains("Fresh-air box"));
}

#[test]
fn the_refusals_are_told_in_the_language_of_the_person() {
    let mut door = Door::open();
    door.act(&Action::Set { setting: "language".into(), value: "es".into() });
    door.packs(&[small_with(
        "pack.toml",
        "minutes = 3\n\n[[phase.step]]\nid = \"draw",
        "minuts = 3\n\n[[phase.step]]\nid = \"draw",
    )]);
    let told = door.procedures();
    assert!(told.contains("Caja de aire fresco 1.0.0"), "{told}");
    assert!(told.contains("[[step]] no tiene el campo «minuts». ¿Era «minutes»?"), "{told}");
}

#[test]
fn a_shell_without_a_folder_says_so() {
    let mut door = Door::open();
    let screen = door.act(&Action::Go { to: "procedures".into() }).screen;
    assert!(written(&screen).contains("started without a folder of procedures"));
    assert!(screen.foot.iter().all(|button| button.press != Action::ReadPacks));
}
