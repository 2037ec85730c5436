//! Writes a sample record file, vouched for by a sample office, for readers that are not ours: `sample_record FILE`.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "an example for tests")]

#[path = "../tests/record/bench.rs"]
mod bench;

fn main() {
    let file = std::env::args().nth(1).expect("say where to write it");
    let mut visit = bench::Visit::signed_by("Edda Marsh");
    visit.addendum("The owner telephoned: the noise is gone.");
    visit.seal(bench::DEVICE);
    visit.vouch(bench::OFFICE, bench::DEVICE);
    std::fs::write(&file, visit.file()).expect("it can be written there");
}
