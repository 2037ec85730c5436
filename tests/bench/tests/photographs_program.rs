//! The program that takes in photographs for the checks in Python answers each of them, the refused one too.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

use std::io::Write as _;
use std::process::{Command, Stdio};

#[test]
fn each_file_has_its_line_and_a_refused_one_says_why() {
    let folder = tempfile::tempdir().unwrap();
    let picture = folder.path().join("picture.png");
    image::GrayImage::from_pixel(300, 200, image::Luma([90])).save(&picture).unwrap();
    let text = folder.path().join("text.jpg");
    std::fs::write(&text, "no picture").unwrap();
    let mut program = Command::new(env!("CARGO_BIN_EXE_photographs"))
        .arg(folder.path().join("shelf"))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let names = format!("{}\n{}\n", picture.display(), text.display());
    program.stdin.take().unwrap().write_all(names.as_bytes()).unwrap();
    let told = program.wait_with_output().unwrap();
    assert!(told.status.success());
    let lines = String::from_utf8(told.stdout).unwrap();
    let lines: Vec<serde_json::Value> = lines.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    assert_eq!(lines.len(), 2);
    assert_eq!((&lines[0]["media"], &lines[0]["facts"]["width"]), (&"image/png".into(), &300.into()));
    assert!(lines[0]["held_kb"].as_u64().unwrap() > 0);
    assert!(lines[1]["refused"].as_str().unwrap().contains("not a picture"));
}
