//! Writes every built-in pack's proof, and every broken pack with its proof, as JSON into a folder: for the second,
//! independent model in `tests/python/test_pack_model.py`.
//!
//! `cargo run -p coilside-core --example packs_for_python -- FOLDER`

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "for a test")]

#[path = "../tests/packs/mutants.rs"]
#[allow(dead_code, reason = "what is expected of a broken pack is for the test that replays it")]
mod mutants;

use std::path::Path;

use coilside_core::procedure::check::prove;
use coilside_core::procedure::library::built_in;
use coilside_core::procedure::pack::Pack;

fn write(folder: &Path, name: &str, pack: &Pack) {
    let told = serde_json::json!({ "pack": pack, "proof": prove(pack) });
    std::fs::write(folder.join(format!("{name}.json")), told.to_string()).expect("the folder can be written to");
}

fn main() {
    let folder = std::env::args().nth(1).expect("say which folder to write into");
    let folder = Path::new(&folder);
    let packs: Vec<Pack> = built_in().expect("the built-in packs").into_iter().map(|loaded| loaded.pack).collect();
    for pack in &packs {
        write(folder, &format!("built-in.{}", pack.pack), pack);
    }
    let sound = packs.iter().find(|pack| pack.pack == "add-on-water-heater").expect("the pack to break");
    for mutant in mutants::MUTANTS {
        let mut pack = sound.clone();
        (mutant.change)(&mut pack);
        write(folder, &format!("broken.{}", mutant.name), &pack);
    }
}
