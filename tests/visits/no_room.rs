//! A full disk and a second program: nothing lost, a clear message, and the same action succeeds afterwards.

use std::path::Path;
use std::process::Command;
use std::time::{Duration, Instant};

use coilside_core::action::Action;
use coilside_core::effect::Outcome;
use coilside_core::field::{DoorError, Field};
use coilside_core::store::StoreError;
use coilside_core::store::shelf::ShelfError;
use coilside_core::visit::event::sha256;
use coilside_office::demo::player::Clock;
use coilside_tests::scene::Scene;
use coilside_tests::{MORNING_UTC_MS, Technician, assignment, jpeg_of, open};

/// Fills the database to its limit: a finding whose words no longer fit.
fn fill(scene: &mut Scene) {
    scene.field().limit_pages(1).unwrap();
    let words = "x".repeat(20_000);
    for n in 0..200 {
        match scene.draft(&format!("filler-{n}"), &words) {
            Ok(_) => {}
            Err(DoorError::Store(StoreError::Full)) => return,
            Err(error) => panic!("{error}"),
        }
    }
    panic!("the database never got full");
}

#[test]
fn a_full_database_loses_nothing_and_the_same_action_succeeds_when_there_is_room_again() {
    let mut scene = Scene::at_step("lock-off", &[]).unwrap();
    // So long that it needs pages of its own: what is small may still fit into those that are there.
    let finding = "Lagging torn at the elbow. ".repeat(1_500).trim().to_owned();
    scene.draft("finding", &finding).unwrap();
    scene.act(&Action::Choose { field: "severity".into(), option: "soon".into() }).unwrap();
    let (before, events) = (scene.screen().unwrap(), scene.events().unwrap());
    fill(&mut scene);
    let mut refused = None;
    for n in 0..2_000 {
        let id = format!("full-{n}");
        match scene.field().act(&id, &Action::Shoot { slot: String::new() }, &scene.now()) {
            Ok(_) => {}
            Err(error) => {
                refused = Some((id, error));
                break;
            }
        }
    }
    let (id, error) = refused.unwrap();
    assert!(matches!(error, DoorError::Store(StoreError::Full)), "{error:?}");
    let said = error.to_string();
    assert!(said.contains("no room left") && said.contains("nothing was lost"), "{said}");
    let add = |scene: &Scene| scene.field().act("add", &Action::AddFinding, &scene.now());
    assert!(matches!(add(&scene), Err(DoorError::Store(StoreError::Full))));
    assert_eq!(scene.events().unwrap(), events, "no half of it is written");
    let after = scene.screen().unwrap();
    assert_eq!((after.place, after.blocks, after.strip), (before.place, before.blocks, before.strip), "still served");
    assert_eq!(scene.run().unwrap().findings, []);
    // Room again.
    scene.field().limit_pages(1 << 30).unwrap();
    add(&scene).unwrap();
    assert_eq!(scene.run().unwrap().findings[0].text, finding);
    assert_eq!(scene.field().act(&id, &Action::Shoot { slot: String::new() }, &scene.now()).unwrap().effects.len(), 1);
    // And the same id does not do it twice.
    let count = scene.events().unwrap().len();
    add(&scene).unwrap();
    assert_eq!(scene.events().unwrap().len(), count);
    let stored = scene.events().unwrap();
    scene.reopen().unwrap();
    assert_eq!(scene.events().unwrap(), stored);
}

/// A small disk of its own, gone with the test.
struct SmallDisk(tempfile::TempDir);

impl SmallDisk {
    fn mounted(bytes: &str) -> SmallDisk {
        let folder = tempfile::tempdir().unwrap();
        let size = format!("size={bytes}");
        let output = Command::new("mount")
            .args(["-t", "tmpfs", "-o", &size, "tmpfs"])
            .arg(folder.path())
            .output()
            .unwrap_or_else(|error| panic!("this test needs the program 'mount': {error}"));
        assert!(
            output.status.success(),
            "this test needs to mount a small tmpfs: run it as root (CAP_SYS_ADMIN). mount says: {}",
            String::from_utf8_lossy(&output.stderr)
        );
        SmallDisk(folder)
    }

    fn path(&self) -> &Path {
        self.0.path()
    }
}

impl Drop for SmallDisk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg("-l").arg(self.path()).status();
    }
}

/// Fills a disk to the last byte; the file to remove again is returned.
fn fill_disk(disk: &Path) -> std::path::PathBuf {
    let path = disk.join("filler");
    let mut file = std::fs::File::create(&path).unwrap();
    let chunk = vec![7_u8; 4096];
    while std::io::Write::write_all(&mut file, &chunk).is_ok() {}
    path
}

struct OnSmallDisk {
    field: Field,
    clock: Clock,
    disk: SmallDisk,
    technician: Technician,
}

impl OnSmallDisk {
    fn begun() -> OnSmallDisk {
        let (disk, technician) = (SmallDisk::mounted("8m"), Technician::default());
        let clock = Clock::at(MORNING_UTC_MS, 120);
        let field = open(disk.path(), &clock.now(), &technician).unwrap();
        field.assigned(&[assignment("a1")]).unwrap();
        field.act("begin", &Action::StartVisit { assignment: "a1".into() }, &clock.now()).unwrap();
        OnSmallDisk { field, clock, disk, technician }
    }
}

#[test]
fn a_photograph_on_a_full_disk_stays_where_it_is_and_is_taken_when_there_is_room() {
    let small = OnSmallDisk::begun();
    let now = small.clock.now();
    let visit = small.field.current_visit().unwrap();
    let effect = small.field.act("shoot", &Action::Shoot { slot: "nameplate".into() }, &now).unwrap().effects.remove(0);
    // A picture of a realistic length; the appended bytes stand for the camera's own notes behind the picture.
    let mut picture = jpeg_of("nameplate");
    picture.extend(std::iter::repeat_n(0xff, 60_000));
    picture.extend([0xff, 0xd9]);
    let incoming = small.field.incoming(&effect.id).unwrap();
    std::fs::write(&incoming, &picture).unwrap();
    let events = small.field.events(&visit).unwrap();
    let filler = fill_disk(small.disk.path());
    let outcome = Outcome::Photo { place: None };
    let error = small.field.done(&effect.id, &outcome, &now).unwrap_err();
    assert!(matches!(error, DoorError::Shelf(ShelfError::Full { .. })), "{error:?}");
    assert!(error.to_string().contains("nothing was lost"), "{error}");
    assert_eq!(std::fs::read(&incoming).unwrap(), picture, "the file lies where it was put");
    assert_eq!(small.field.events(&visit).unwrap(), events);
    assert_eq!(small.field.screen(&now).unwrap().screen.place, "now", "the screen is still served");
    assert!(small.field.opened(&now).unwrap().effects.contains(&effect), "the request is still open");
    std::fs::remove_file(filler).unwrap();
    small.field.done(&effect.id, &outcome, &now).unwrap();
    assert_eq!(std::fs::read(small.field.original(&sha256(&picture))).unwrap(), picture);
    assert!(!incoming.exists());
    assert_eq!(small.field.events(&visit).unwrap().len(), events.len() + 1);
}

#[test]
fn an_app_killed_on_a_full_disk_opens_again_and_takes_the_photograph_in_later() {
    let mut small = OnSmallDisk::begun();
    let now = small.clock.now();
    let visit = small.field.current_visit().unwrap();
    let effect = small.field.act("shoot", &Action::Shoot { slot: "nameplate".into() }, &now).unwrap().effects.remove(0);
    let mut picture = jpeg_of("nameplate");
    picture.extend(std::iter::repeat_n(0xff, 60_000));
    picture.extend([0xff, 0xd9]);
    let incoming = small.field.incoming(&effect.id).unwrap();
    std::fs::write(&incoming, &picture).unwrap();
    drop(small.field);
    let filler = fill_disk(small.disk.path());
    small.field = open(small.disk.path(), &now, &small.technician).unwrap();
    assert_eq!(small.field.screen(&now).unwrap().screen.place, "now");
    assert_eq!(std::fs::read(&incoming).unwrap(), picture);
    drop(small.field);
    std::fs::remove_file(filler).unwrap();
    small.field = open(small.disk.path(), &now, &small.technician).unwrap();
    assert_eq!(std::fs::read(small.field.original(&sha256(&picture))).unwrap(), picture);
    let last = small.field.events(&visit).unwrap().pop().unwrap();
    assert!(String::from_utf8(last).unwrap().contains("photo-taken"));
}

#[test]
fn a_second_window_on_the_same_folder_is_told_at_once_that_it_is_in_use() {
    let mut scene = Scene::begun(&[]).unwrap();
    for _ in ["in a new folder", "in one that was there"] {
        let before = Instant::now();
        let error = open(scene.folder.path(), &scene.now(), &scene.technician).map(|_| ()).unwrap_err();
        assert!(matches!(error, DoorError::Store(StoreError::InUse)), "{error:?}");
        assert_eq!(error.to_string(), "another program has this folder open; close it first");
        assert!(before.elapsed() < Duration::from_secs(2), "it took {:?}", before.elapsed());
        // The first one goes on as if nothing had been.
        assert_eq!(scene.screen().unwrap().place, "now");
        scene.draft("finding", "Still mine").unwrap();
        scene.reopen().unwrap();
    }
}
