//! `coilside check-pack`, as the command's own function and as the program.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "tests")]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use coilside_office::check_pack::{CheckError, CheckPack, check};

fn small() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/tests/packs/small")
}

/// The smallest pack in a folder of its own, with something replaced.
fn small_with(from: &str, to: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for name in ["pack.toml", "en.ftl", "es.ftl"] {
        let text = fs::read_to_string(small().join(name)).unwrap();
        fs::write(folder.path().join(name), text.replace(from, to)).unwrap();
    }
    folder
}

fn told(folders: &[&Path], language: &str, svg: Option<PathBuf>) -> (bool, String) {
    let mut out = Vec::new();
    let folders = folders.iter().map(|path| (*path).to_owned()).collect();
    let good = check(&CheckPack { folders, language: language.into(), svg }, &mut out).unwrap();
    (good, String::from_utf8(out).unwrap())
}

#[test]
fn a_sound_pack_is_proved_and_its_content_listed() {
    let (good, text) = told(&[&small()], "en", None);
    assert!(good, "{text}");
    assert!(text.starts_with("Fresh-air box 1.0.0 · "), "{text}");
    let has = |line: &str| assert!(text.lines().any(|one| one.trim() == line), "no “{line}” in:\n{text}");
    has("Phases: 3. Steps: 8.");
    has("Photographs (2):");
    has("Filter before (filter-before)");
    has("Air from the box, as found (air-found), -40 … 60 °C");
    has("Soap water (soap-water)");
    has("Mild soap (mild-soap)");
    has("1 × Paper filter (paper-filter)");
    has("Bucket (bucket)");
    has("Settings changed: none");
    // By hand from pack.toml: 5+3+2+2+3+2+5 minutes with paper; 5+3+2+5+3+2+5 and 300 s to 1800 s of soaking if washable.
    has("Time: 22 min to 55 min of handwork and waiting, by the answers.");
    has("Good packs: 1 of 1.");
    let proved = text.lines().find(|line| line.starts_with("Proved: ")).unwrap_or_else(|| panic!("{text}"));
    let numbers: Vec<u64> = proved
        .split(|c: char| !c.is_ascii_digit() && c != '\u{202f}')
        .filter_map(|part| part.replace('\u{202f}', "").parse().ok())
        .collect();
    assert!(numbers.len() == 3 && numbers.iter().all(|number| *number > 1), "{proved}");
    assert!(numbers[1] > numbers[0] && numbers[2] == 2, "more ways than states, and two sets of answers: {proved}");
}

#[test]
fn it_is_told_in_spanish_too_without_a_bare_key() {
    let (good, text) = told(&[&small()], "es", None);
    assert!(good && text.contains("Caja de aire fresco 1.0.0") && text.contains("Lecturas (4):"), "{text}");
    for family in ["check-", "proof-", "fault-", "{ $"] {
        assert!(!text.replace("check_pack", "").contains(family), "{family}: {text}");
    }
}

#[test]
fn a_broken_pack_is_told_with_folder_file_line_and_column() {
    let folder = small_with("kind = \"neutral\"", "kind = \"neutrel\"");
    let (good, text) = told(&[folder.path(), &small()], "en", None);
    assert!(!good);
    let place = folder.path().join("pack.toml:59:8");
    let line = format!("{}: fault: 'kind' knows no 'neutrel'.\n    Did you mean 'neutral'?", place.display());
    assert!(text.contains(&line), "{text}");
    assert!(text.contains("Good packs: 1 of 2."), "{text}");
}

#[test]
fn a_pack_with_a_way_into_danger_is_told_step_by_step() {
    // The lock comes off before the filter is back, and then the covers come off with nothing proved dead.
    let folder = small_with("cautions = [\"fan\"]\nminutes = 2", "cautions = [\"fan\", \"sharp\"]\nminutes = 2");
    let toml = fs::read_to_string(folder.path().join("pack.toml")).unwrap();
    fs::write(
        folder.path().join("pack.toml"),
        toml.replace("sets = [\"tag=untagged\"]", "sets = [\"tag=untagged\", \"covers=off\"]"),
    )
    .unwrap();
    let (good, text) = told(&[folder.path()], "en", None);
    assert!(!good, "{text}");
    let told = text.split("NOT SAFE, 1: ").nth(1).unwrap_or_else(|| panic!("{text}"));
    assert!(told.contains("Covers would be off while a supply is not proved dead"), "{told}");
    assert!(told.contains("The shortest way there:\n   1. "), "{told}");
    assert!(told.contains("Do “Switch the box off, lock it, tag it” (lock)."), "{told}");
}

#[test]
fn plain_files_are_left_aside_and_no_folder_at_all_is_an_error() {
    let file = small().join("pack.toml");
    let (good, text) = told(&[&file, &small()], "en", None);
    assert!(good && text.contains("Good packs: 1 of 1."), "{text}");
    let none = CheckPack { folders: vec![file], language: "en".into(), svg: None };
    assert!(matches!(check(&none, &mut Vec::new()), Err(CheckError::NoFolder)));
}

#[test]
fn the_drawing_shows_every_step_and_says_in_words_what_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let (_, text) = told(&[&small()], "en", Some(folder.path().join("box.svg")));
    assert!(text.contains("box.svg"), "{text}");
    let svg = fs::read_to_string(folder.path().join("box.svg")).unwrap();
    assert!(svg.contains("role=\"img\"") && svg.contains("aria-labelledby=\"graph-title graph-desc\""));
    assert!(svg.contains("<title id=\"graph-title\">Phases and steps of Fresh-air box</title>"));
    assert!(svg.contains("prefers-color-scheme:dark"));
    for step in ["look", "lock", "draw-filter", "soak-filter", "change-filter", "put-back", "unlock", "read-left"] {
        assert!(svg.contains(&format!(">{step}")), "no {step}");
    }
    assert_eq!(svg.matches("<rect class=\"step").count(), 8);
    assert_eq!(svg.matches("step when").count(), 2, "two of them hang on an answer");
    assert_eq!(svg.matches("class=\"hazard\"").count(), 1);
    assert_eq!(svg.matches("<circle class=\"clock\"").count(), 1);
    // Between phases 2; lock → draw → soak, change → put back → unlock 6.
    assert_eq!(svg.matches("class=\"arrow\"").count(), 8);
    // Every opened element is closed: as many starts as ends, in order.
    let mut open: Vec<&str> = Vec::new();
    for tag in svg.split('<').skip(1).map(|rest| rest.split('>').next().unwrap()) {
        if let Some(name) = tag.strip_prefix('/') {
            assert_eq!(open.pop(), Some(name));
        } else if !tag.ends_with('/') {
            open.push(tag.split(' ').next().unwrap());
        }
    }
    assert!(open.is_empty(), "{open:?}");
}

#[test]
fn the_program_ends_with_code_0_only_if_all_are_good() {
    let program = env!("CARGO_BIN_EXE_coilside");
    let good = Command::new(program).arg("check-pack").arg(small()).output().unwrap();
    assert!(good.status.success(), "{}", String::from_utf8_lossy(&good.stdout));
    let broken = small_with("format = 1", "format = 7");
    let bad = Command::new(program).arg("check-pack").arg(small()).arg(broken.path()).output().unwrap();
    assert_eq!(bad.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&bad.stderr).contains("not every pack is good"));
}
